//! The answer where mistakes keep a file from being used.

use std::io::Write;

use super::{
    CannotRun, Outcome,
    answers::{Frame, diagnostic},
    args::Format,
    reader::aside,
    words,
};
use crate::book::Rulebook;
use crate::compile::Rejected;

/// Tells why a file can't be used; `closing` is the last line of a text answer.
pub fn reject(
    book: &Rulebook,
    rejected: &Rejected,
    closing: &str,
    format: Format,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    match format {
        Format::Text => {
            aside(format_args!("{}{closing}\n", rejected.render(true)));
        }
        Format::Json => words::json(out, &Frame::of(book).round(diagnostic::Rejected::of(rejected)))?,
    }
    Ok(Outcome::CouldNotRun)
}
