//! The answers for programs, as types: what is written and its JSON Schema have one source.
//!
//! Each command's answer has a file of its own; what several of them hold is in `parts.rs`, what is said of mistakes in a file
//! in `diagnostic.rs`. Keys are written in the order of the alphabet, so that the order of fields here may change.

pub mod book;
pub mod cards;
pub mod check;
pub mod compare;
pub mod diagnostic;
pub mod drill;
pub mod duration;
pub mod line;
pub mod new;
pub mod parts;
pub mod plan;
pub mod review;
mod schema;
pub mod setup;
pub mod stock;

use schemars::JsonSchema;
use serde::Serialize;

pub use schema::{all as schemas, lines};

use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS, Rulebook};
use diagnostic::Rejected;
use parts::Book;

/// An answer with the words of every answer: the edition, the disclaimers, the cautions.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields, inline)]
pub struct Framed<'b, T> {
    #[serde(flatten)]
    answer: T,
    #[serde(flatten)]
    frame: Frame<'b>,
}

/// The words of every answer.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
pub struct Frame<'b> {
    /// The rulebook's edition.
    edition: &'b str,
    book: Book<'b>,
    /// To be shown wherever the answer is shown.
    #[schemars(length(min = 2))]
    disclaimers: &'static [&'static str],
    /// To be shown wherever the answer is shown.
    #[schemars(length(min = 3))]
    cautions: &'static [&'static str],
}

impl<'b> Frame<'b> {
    /// The words of a book.
    pub fn of(book: &'b Rulebook) -> Self {
        Self {
            edition: &book.agency.edition,
            book: Book::of(book),
            disclaimers: &ALWAYS_DISCLAIMERS,
            cautions: &ALWAYS_CAUTIONS,
        }
    }

    /// Puts them round an answer.
    pub const fn round<T>(self, answer: T) -> Framed<'b, T> {
        Framed { answer, frame: self }
    }
}

/// An answer, or why there is none.
#[expect(dead_code, reason = "made for its schema: each is written where it is known")]
#[derive(Debug, JsonSchema)]
#[schemars(untagged, inline)]
pub enum Answer<'b, T> {
    /// An answer.
    Given(Framed<'b, T>),
    /// The rulebook of `--rules`, the plan or the list has mistakes.
    Rejected(Framed<'b, Rejected>),
    /// The rulebook has mistakes; so there is no edition to be told.
    RejectedBook(Rejected),
}
