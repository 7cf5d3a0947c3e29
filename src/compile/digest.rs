//! The rulebook's digest: which text a card was printed from.
//!
//! SHA-256 over the chapters' names and texts. Line ends are made alike first, so that the same book has the same
//! digest on every machine. The short form is read aloud over a radio: its letters and digits can't be taken for
//! one another in print.

use sha2::{Digest as _, Sha256};

use super::source::Sources;

/// The letters and digits of short codes. Without 0 O, 1 I L, 2 Z, 5 S, 8 B, U V: those look alike in a bad light.
pub const ALPHABET: &[u8; 23] = b"ACDEFGHJKMNPQRTWXY34679";
const SHORT_LENGTH: usize = 8;

/// A rulebook's digest.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Digest([u8; 32]);

impl Digest {
    /// The digest of all chapters.
    #[must_use]
    pub fn of(sources: &Sources) -> Self {
        let mut hasher = Sha256::new();
        for (_, source) in sources.iter() {
            let text = source.text.replace("\r\n", "\n");
            // Lengths keep "ab" + "c" apart from "a" + "bc".
            for part in [&source.name, &text] {
                hasher.update((part.len() as u64).to_be_bytes());
                hasher.update(part.as_bytes());
            }
        }
        Self(hasher.finalize().into())
    }

    /// All of it, in hexadecimal.
    #[must_use]
    pub fn full(&self) -> String {
        self.0.iter().map(|byte| format!("{byte:02x}")).collect()
    }

    /// Two groups of four letters and digits.
    #[must_use]
    pub fn short(&self) -> String {
        let mut rest = self
            .0
            .iter()
            .take(16)
            .fold(0_u128, |sum, byte| (sum << 8) | u128::from(*byte));
        let mut short = String::new();
        for place in 0..SHORT_LENGTH {
            if place == SHORT_LENGTH / 2 {
                short.push('-');
            }
            let base = ALPHABET.len() as u128;
            let letter = usize::try_from(rest % base).unwrap_or(0);
            short.extend(ALPHABET.get(letter).map(|letter| char::from(*letter)));
            rest /= base;
        }
        short
    }
}
