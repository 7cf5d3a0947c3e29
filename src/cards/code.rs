//! The short code on a card: read from a hand or over a radio, and compared with rulebooks.

use crate::book::Rulebook;
use crate::compile::digest::ALPHABET;

/// Letters and digits of a code, without the hyphen.
const LENGTH: usize = 8;

/// A code as it was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Code(String);

/// Why a text is no code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum InvalidCode {
    /// A sign that no code has.
    Sign(char),
    /// Too few or too many letters and digits.
    Length(usize),
}

impl core::fmt::Display for InvalidCode {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Sign(sign) => {
                let known: String = ALPHABET.iter().map(|sign| char::from(*sign)).collect();
                write!(f, "a code has no `{sign}`, only {known}: read it again")
            }
            Self::Length(found) => write!(
                f,
                "expected {LENGTH} letters and digits as on the card, found {found}"
            ),
        }
    }
}

impl core::error::Error for InvalidCode {}

impl core::str::FromStr for Code {
    type Err = InvalidCode;

    /// Reads a code, or the text of a card's QR code, which begins with it. Capitals, spaces and hyphens don't matter.
    fn from_str(text: &str) -> Result<Self, InvalidCode> {
        // The QR code's text goes on after a line break.
        let line = text.trim().lines().next().unwrap_or("");
        let signs: Vec<char> = line
            .chars()
            .filter(|sign| !sign.is_whitespace() && *sign != '-')
            .map(|sign| sign.to_ascii_uppercase())
            .collect();
        let known = |sign: char| u8::try_from(sign).is_ok_and(|sign| ALPHABET.contains(&sign));
        if let Some(sign) = signs.iter().find(|sign| !known(**sign)) {
            return Err(InvalidCode::Sign(*sign));
        }
        if signs.len() != LENGTH {
            return Err(InvalidCode::Length(signs.len()));
        }
        let (first, second) = signs.split_at(LENGTH / 2);
        let word = |signs: &[char]| signs.iter().collect::<String>();
        Ok(Self(format!("{}-{}", word(first), word(second))))
    }
}

impl core::fmt::Display for Code {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.0)
    }
}

impl Code {
    /// Whether cards printed from this book carry the code.
    #[must_use]
    pub fn belongs_to(&self, book: &Rulebook) -> bool {
        self.0 == *book.short_digest
    }
}
