//! Pocket cards and sheets: which numbers stand on them, and how they become PDF, SVG or PNG.
//!
//! [`data`] says what is printed, in strings that are ready to print, with words of our own from [`messages`]; [`impose`]
//! says where cards stand on paper; the templates in `cards/` set it; [`typst`] runs the typesetting program in a private
//! folder; [`output`] puts finished files in place, all or none. [`code`] reads the short code of a card back. Nothing
//! clinical is worked out here: minutes come from the checker.

pub mod code;
pub mod data;
pub mod drill;
pub mod format;
pub(crate) mod glyphs;
mod identity;
pub mod impose;
pub mod messages;
pub mod output;
mod plain;
pub mod qr;
#[cfg(feature = "compare")]
pub mod reprint;
#[cfg(feature = "records")]
pub mod review;
mod set;
#[cfg(feature = "compare")]
pub mod signoff;
pub mod stock;
pub mod typst;

pub use format::{Paper, SIZES};
pub use impose::{Backs, Shift};
pub use set::{Part, Wanted, documents, print};
pub use typst::Form;

use std::path::PathBuf;

use crate::book::CardSize;

/// Why no cards were made. The files that were there before are untouched.
#[derive(Debug)]
pub enum CardsError {
    /// The rulebook has no card in this size.
    NoCards(CardSize),
    /// The rulebook has nothing of what was asked for.
    Nothing,
    /// A card's name, agency and edition are longer than a QR code holds.
    TooLongForQr {
        /// The card's identifier.
        card: String,
    },
    /// A card doesn't fit on a paper even once.
    TooLarge {
        /// The card's size.
        size: CardSize,
        /// The paper's name.
        paper: &'static str,
    },
    /// The words of our own in the agency's language can't be read.
    Messages(String),
    /// The card font lacks a sign that a card needs.
    NoGlyph {
        /// The sign.
        sign: char,
        /// The text it stands in.
        text: String,
    },
    /// The typesetting program is missing, too old or failed.
    Typst(typst::TypstError),
    /// A file could not be written.
    Output {
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        error: std::io::Error,
    },
}

impl core::fmt::Display for CardsError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::NoCards(size) => write!(f, "the rulebook has no card in the size {}", size.label()),
            Self::Nothing => f.write_str("the rulebook has no such card or sheet"),
            Self::TooLongForQr { card } => write!(
                f,
                "cannot print the card `{card}`: its title, the agency's name and the edition are together longer than a QR code holds"
            ),
            Self::TooLarge { size, paper } => {
                write!(f, "a card of {} does not fit on {paper}", size.label())
            }
            Self::Messages(wrong) => write!(f, "cannot read the words of the agency's language: {wrong}"),
            Self::NoGlyph { sign, text } => write!(
                f,
                "cannot print `{}` (U+{:04X}): the card font has no such sign; it stands in \"{}\"",
                glyphs::visible(&sign.to_string()),
                *sign as u32,
                glyphs::visible(text)
            ),
            Self::Typst(error) => error.fmt(f),
            Self::Output { path, error } => write!(f, "cannot write `{}`: {error}", path.display()),
        }
    }
}

impl std::error::Error for CardsError {}

impl From<typst::TypstError> for CardsError {
    fn from(error: typst::TypstError) -> Self {
        Self::Typst(error)
    }
}
