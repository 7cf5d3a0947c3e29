//! The mutants as `cargo mutants --list --json` tells them.

use serde::Deserialize;

#[derive(Clone, Debug, Deserialize)]
pub struct Mutant {
    pub file: String,
    pub genre: String,
    pub name: String,
    pub replacement: String,
    pub span: Span,
    /// Nothing for what stands in a constant.
    pub function: Option<serde_json::Value>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
pub struct Span {
    pub start: At,
    pub end: At,
}

/// Line and column from 1; columns count characters.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct At {
    pub line: usize,
    pub column: usize,
}

impl At {
    /// The byte of a text.
    pub fn byte(self, text: &str) -> usize {
        let before: usize = text.split_inclusive('\n').take(self.line - 1).map(str::len).sum();
        let line = &text[before..];
        before
            + line
                .char_indices()
                .nth(self.column - 1)
                .map_or(line.len(), |(at, _)| at)
    }
}
