//! The answers of `cards`.

use schemars::JsonSchema;
use serde::Serialize;

use super::parts::Book;

/// The files that were printed, or what is to be said of a code.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum Cards<'b> {
    /// The files.
    Printed(Printed),
    /// With `--matches`.
    Matched(Matched<'b>),
}

/// What was printed.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Printed {
    #[schemars(length(min = 1), inner(regex(pattern = r"\.(pdf|svg|png)$")))]
    pub files: Vec<String>,
}

/// Whether cards with a code belong to the rulebook.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Matched<'b> {
    /// The code that was asked about.
    #[schemars(regex(pattern = "^[A-Z0-9]{4}-[A-Z0-9]{4}$"))]
    pub code: String,
    /// Whether cards of this rulebook carry it.
    pub belongs: bool,
    /// The older rulebook whose cards carry it; null where none was given or none does.
    pub belongs_to_older: Option<Book<'b>>,
}
