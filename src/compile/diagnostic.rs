//! What is wrong with a rulebook, as plain data. Drawing it is [`render`](super::render)'s work.

use super::source::Span;

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
    /// Points at a further place.
    pub fn label(&mut self, span: Span, words: impl Into<String>) -> &mut Self {
        self.labels.push((span, words.into()));
        self
    }

    /// Says what to write instead.
    pub fn hint(&mut self, words: impl Into<String>) -> &mut Self {
        self.hints.push(words.into());
        self
    }
}

/// Everything found in one reading.
#[derive(Clone, Debug, Default)]
pub struct Diagnostics {
    found: Vec<Diagnostic>,
    /// Ids that stand in blocks which could not be read: one report for the block is enough.
    unread: Vec<String>,
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

    fn push(
        &mut self,
        code: &'static str,
        level: Level,
        span: Option<Span>,
        message: String,
    ) -> &mut Diagnostic {
        self.found.push_mut(Diagnostic {
            code,
            level,
            message,
            span,
            labels: Vec::new(),
            hints: Vec::new(),
        })
    }

    /// How many there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.found.len()
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
        self.unread.push(id.to_owned());
    }

    /// Whether an id stands in a block that could not be read.
    #[must_use]
    pub fn is_unread(&self, id: &str) -> bool {
        self.unread.iter().any(|unread| unread == id)
    }

    /// Whether there is at least one error.
    #[must_use]
    pub fn has_errors(&self) -> bool {
        self.found.iter().any(|found| found.level == Level::Error)
    }

    /// All of them, in the order of the book; what concerns the book as a whole comes last.
    #[must_use]
    pub fn into_sorted(mut self) -> Vec<Diagnostic> {
        self.found
            .sort_by_key(|found| (found.span.is_none(), found.span, found.level, found.code));
        self.found
    }
}
