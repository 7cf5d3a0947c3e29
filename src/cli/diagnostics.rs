//! The answer where mistakes keep a file from being used.

use std::io::Write;

use super::{
    CannotRun, Outcome,
    answers::{Frame, diagnostic},
    args::Format,
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
            anstream::eprint!("{}", rejected.render(true));
            anstream::eprintln!("{closing}");
        }
        Format::Json => words::json(out, &Frame::of(book).round(diagnostic::Rejected::of(rejected)))?,
    }
    Ok(Outcome::CouldNotRun)
}
