//! Diagnostics as JSON, and the answer where they keep a file from being used.

use std::io::Write;

use serde_json::{Value, json};

use super::{CannotRun, Outcome, args::Format, words};
use crate::compile::{
    Rejected,
    diagnostic::{Diagnostic, Level},
    source::{Sources, Span},
};

/// Diagnostics for programs: lines and columns from 1, columns in characters.
pub fn objects(found: &[Diagnostic], sources: &Sources) -> Value {
    let place = |span: Span| {
        let start = sources.line_column(span);
        let end = sources.line_column(Span {
            start: span.end,
            ..span
        });
        json!({
            "file": sources.get(span.file).map(|source| &source.path),
            "line": start.line,
            "column": start.column,
            "end_line": end.line,
            "end_column": end.column,
        })
    };
    found
        .iter()
        .map(|diagnostic| {
            json!({
                "code": diagnostic.code,
                "level": match diagnostic.level {
                    Level::Error => "error",
                    Level::Note => "note",
                },
                "message": diagnostic.message,
                "place": diagnostic.span.map(place),
                "labels": diagnostic
                    .labels
                    .iter()
                    .map(|(span, words)| json!({ "place": place(*span), "message": words }))
                    .collect::<Vec<_>>(),
                "hints": diagnostic.hints,
            })
        })
        .collect()
}

/// Tells why a file can't be used; `closing` is the last line of a text answer.
pub fn reject(
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
        Format::Json => words::json(
            out,
            &json!({
                "ok": false,
                "diagnostics": objects(&rejected.diagnostics, &rejected.sources),
                "complete": rejected.omitted == 0,
            }),
        )?,
    }
    Ok(Outcome::CouldNotRun)
}
