//! What is said of mistakes in a rulebook, a plan or a list.

use schemars::JsonSchema;
use serde::Serialize;

use super::parts::words;
use crate::compile::{
    self,
    diagnostic::{self, Diagnostic},
    source::{Sources, Span},
};

words! {
    /// With an error the file can't be used.
    Severity of diagnostic::Level { Error, Note }
}

/// A stretch of a file. Lines and columns count from 1, columns in Unicode code points; the end is the column after the last
/// character.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Place {
    file: String,
    #[schemars(range(min = 1))]
    line: usize,
    #[schemars(range(min = 1))]
    column: usize,
    #[schemars(range(min = 1))]
    end_line: usize,
    #[schemars(range(min = 1))]
    end_column: usize,
}

impl Place {
    /// Where a span is.
    pub fn of(span: Span, sources: &Sources) -> Self {
        let start = sources.line_column(span);
        let end = sources.line_column(Span {
            start: span.end,
            ..span
        });
        Self {
            file: sources
                .get(span.file)
                .map_or_else(String::new, |source| source.path.clone()),
            line: start.line,
            column: start.column,
            end_line: end.line,
            end_column: end.column,
        }
    }
}

/// A further place that matters.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Label {
    place: Place,
    message: String,
}

/// One thing to put right, or worth knowing.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Told {
    /// Stable: a program may look for it.
    #[schemars(regex(pattern = "^[a-z0-9]+(-[a-z0-9]+)*$"))]
    code: &'static str,
    level: Severity,
    /// For people; may change.
    #[schemars(length(min = 1))]
    message: String,
    /// Null when the message concerns the file as a whole.
    place: Option<Place>,
    labels: Vec<Label>,
    /// What to write instead.
    hints: Vec<String>,
}

/// All of them, in the order of the file.
pub fn told(found: &[Diagnostic], sources: &Sources) -> Vec<Told> {
    found
        .iter()
        .map(|diagnostic| Told {
            code: diagnostic.code,
            level: diagnostic.level.into(),
            message: diagnostic.message.clone(),
            place: diagnostic.span.map(|span| Place::of(span, sources)),
            labels: diagnostic
                .labels
                .iter()
                .map(|(span, words)| Label {
                    place: Place::of(*span, sources),
                    message: words.clone(),
                })
                .collect(),
            hints: diagnostic.hints.clone(),
        })
        .collect()
}

/// A file with mistakes.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Rejected {
    #[schemars(extend("const" = false))]
    ok: bool,
    /// In the order of the file.
    #[schemars(
        length(min = 1, max = 2000),
        extend("contains" = { "properties": { "level": { "const": "error" } } })
    )]
    diagnostics: Vec<Told>,
    /// False when more was found than is listed: at most 1,000 errors are, and as many notes.
    complete: bool,
}

impl Rejected {
    /// Tells every mistake.
    pub fn of(rejected: &compile::Rejected) -> Self {
        Self {
            ok: false,
            diagnostics: told(&rejected.diagnostics, &rejected.sources),
            complete: rejected.omitted == 0,
        }
    }
}
