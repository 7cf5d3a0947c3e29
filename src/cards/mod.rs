//! Pocket cards: which numbers stand on them, and how they become PDF.
//!
//! [`data`] says what is printed, in strings that are ready to print; the templates in `cards/` set it; [`typst`] runs
//! the typesetting program in a private folder; [`output`] puts finished files in place, all or none. Nothing clinical
//! is worked out here: minutes come from the checker.

pub mod data;
mod format;
mod glyphs;
pub mod output;
#[cfg(feature = "records")]
pub mod review;
pub mod stock;
pub mod typst;

pub use format::{Paper, SIZES};

use std::path::{Path, PathBuf};

use crate::book::{CardSize, Rulebook};

/// Why no cards were made. The files that were there before are untouched.
#[derive(Debug)]
pub enum CardsError {
    /// The rulebook has no card in this size.
    NoCards(CardSize),
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
            Self::NoGlyph { sign, text } => write!(
                f,
                "cannot print `{sign}` (U+{:04X}): the card font has no such sign; it stands in \"{text}\"",
                *sign as u32
            ),
            Self::Typst(error) => error.fmt(f),
            Self::Output { path, error } => write!(f, "cannot write `{}`: {error}", path.display()),
        }
    }
}

impl std::error::Error for CardsError {}

/// Sets all cards of a rulebook, a file for each size and paper, and puts them into a folder.
///
/// Gives the files' paths. Either all files are new or, after an error, all are as they were.
///
/// # Errors
///
/// [`CardsError`] when a card can't be set or a file can't be written.
pub fn print(
    book: &Rulebook,
    sizes: &[CardSize],
    papers: &[Paper],
    typst: &typst::Program,
    folder: &Path,
) -> Result<Vec<PathBuf>, CardsError> {
    let mut jobs = Vec::new();
    for &size in sizes {
        for &paper in papers {
            let sheet = data::Sheet::new(book, size, paper);
            if sheet.cards.is_empty() {
                return Err(CardsError::NoCards(size));
            }
            glyphs::check(&sheet)?;
            jobs.push((format::file_name(size, paper), sheet));
        }
    }
    let made = std::thread::scope(|scope| {
        let running: Vec<_> = jobs
            .iter()
            .map(|(name, sheet)| {
                scope.spawn(move || typst.set(sheet, book.agency.effective).map(|pdf| (name, pdf)))
            })
            .collect();
        running
            .into_iter()
            .map(|job| job.join().unwrap_or(Err(typst::TypstError::Interrupted)))
            .collect::<Result<Vec<_>, _>>()
    })
    .map_err(CardsError::Typst)?;
    output::replace_all(folder, &made)
}
