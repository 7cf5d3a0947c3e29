//! What is wrong with a rulebook, as plain data. Drawing it is [`render`](super::render)'s work.

use std::collections::BTreeSet;

use super::{source::Span, written::Units};
use crate::book::Kind;

/// How serious a diagnostic is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// The rulebook can't be used.
    Error,
    /// Worth the editor's attention; the rulebook can be used.
    Note,
}

/// One thing to put right.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Diagnostic {
    /// A stable name in kebab-case.
    pub code: &'static str,
    /// How serious it is.
    pub level: Level,
    /// What is wrong.
    pub message: String,
    /// Where; none when it concerns the book as a whole.
    pub span: Option<Span>,
    /// Further places that matter, with what they are.
    pub labels: Vec<(Span, String)>,
    /// What to write instead.
    pub hints: Vec<String>,
}

impl Diagnostic {
    /// Whether it is no mistake, but a value that somebody has still to decide.
    #[must_use]
    pub fn is_undecided(&self) -> bool {
        self.code == UNDECIDED
    }

    /// Points at a further place.
    pub fn label(&mut self, span: Span, words: impl Into<String>) -> &mut Self {
        self.labels.push((span, shortened(words.into())));
        self
    }

    /// Says what to write instead.
    pub fn hint(&mut self, words: impl Into<String>) -> &mut Self {
        self.hints.push(shortened(words.into()));
        self
    }
}

/// The code of a value that is still marked as undecided.
pub const UNDECIDED: &str = "undecided";

/// As many errors are kept, and as many notes. Reading stops when there are more errors: so broken a book is no
/// rulebook, and neither time nor memory may depend on how broken it is.
pub const MAX_KEPT: usize = 1_000;

/// The longest message, label or hint, in bytes; a longer one lost its middle.
pub const MAX_WORDS: usize = 1_000;

/// Everything found in one reading.
#[derive(Clone, Debug, Default)]
pub struct Diagnostics {
    /// The agency's units, for what to write instead.
    pub(in crate::compile) units: Units,
    found: Vec<Diagnostic>,
    errors: usize,
    others: usize,
    /// Takes what is said of a diagnostic that isn't kept.
    last: Option<Diagnostic>,
    /// Ids that stand in blocks which could not be read: one report for the block is enough.
    unread: BTreeSet<String>,
    /// Kinds of which a block could not be read: a rule of that kind may be there.
    unread_kinds: BTreeSet<Kind>,
}

impl Diagnostics {
    /// Adds an error at a place.
    pub fn error(&mut self, code: &'static str, span: Span, message: impl Into<String>) -> &mut Diagnostic {
        self.push(code, Level::Error, Some(span), message.into())
    }

    /// Adds an error about the book as a whole.
    pub fn book_error(&mut self, code: &'static str, message: impl Into<String>) -> &mut Diagnostic {
        self.push(code, Level::Error, None, message.into())
    }

    /// Adds a note at a place.
    pub fn note(&mut self, code: &'static str, span: Span, message: impl Into<String>) -> &mut Diagnostic {
        self.push(code, Level::Note, Some(span), message.into())
    }

    /// Adds a note about the book as a whole.
    pub fn book_note(&mut self, code: &'static str, message: impl Into<String>) -> &mut Diagnostic {
        self.push(code, Level::Note, None, message.into())
    }

    fn push(
        &mut self,
        code: &'static str,
        level: Level,
        span: Option<Span>,
        message: String,
    ) -> &mut Diagnostic {
        let diagnostic = Diagnostic {
            code,
            level,
            message: shortened(message),
            span,
            labels: Vec::new(),
            hints: Vec::new(),
        };
        let count = match level {
            Level::Error => &mut self.errors,
            _ => &mut self.others,
        };
        *count += 1;
        if *count > MAX_KEPT {
            return self.last.insert(diagnostic);
        }
        self.found.push_mut(diagnostic)
    }

    /// How many there are.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.errors + self.others
    }

    /// Remembers the ids of a block that could not be read, so that references to them aren't reported as well.
    pub fn leave_unread(&mut self, block: &str) {
        for line in block.lines() {
            let line = line.trim_start().trim_start_matches("- ").trim_start();
            let name = ["id:", "condition:"]
                .iter()
                .find_map(|key| line.strip_prefix(key));
            if let Some(name) = name {
                self.leave_unread_id(name.trim().trim_matches(['"', '\'']));
            }
        }
    }

    /// Remembers one such id.
    pub fn leave_unread_id(&mut self, id: &str) {
        self.unread.insert(id.to_owned());
    }

    /// Remembers that a block of a kind could not be read.
    pub fn leave_unread_kind(&mut self, kind: Kind) {
        self.unread_kinds.insert(kind);
    }

    /// Whether a block of a kind could not be read.
    #[must_use]
    pub fn is_unread_kind(&self, kind: Kind) -> bool {
        self.unread_kinds.contains(&kind)
    }

    /// Whether an id stands in a block that could not be read.
    #[must_use]
    pub fn is_unread(&self, id: &str) -> bool {
        self.unread.contains(id)
    }

    /// Whether there is at least one error.
    #[must_use]
    pub fn has_errors(&self) -> bool {
        self.errors > 0
    }

    /// Whether there are so many errors that reading on is of no use.
    #[must_use]
    pub const fn is_full(&self) -> bool {
        self.errors > MAX_KEPT
    }

    /// How many were found and not kept.
    #[must_use]
    pub const fn omitted(&self) -> usize {
        self.errors.saturating_sub(MAX_KEPT) + self.others.saturating_sub(MAX_KEPT)
    }

    /// All of them, in the order of the book; what concerns the book as a whole comes last.
    #[must_use]
    pub fn into_sorted(mut self) -> Vec<Diagnostic> {
        self.found
            .sort_by_key(|found| (found.span.is_none(), found.span, found.level, found.code));
        self.found
    }
}

/// Words without their middle, when they quote a text so long that nobody would read on.
fn shortened(words: String) -> String {
    if words.len() <= MAX_WORDS {
        return words;
    }
    let head = words.floor_char_boundary(MAX_WORDS * 2 / 3);
    let tail = words.ceil_char_boundary(words.len() - MAX_WORDS / 4);
    let part = |range: core::ops::Range<usize>| words.get(range).unwrap_or("");
    format!("{} … {}", part(0..head), part(tail..words.len()))
}
