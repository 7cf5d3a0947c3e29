//! Places of diagnostics: inside their file, on characters, and with the line and column that counting from the start gives.

use oxyfolio::compile::{
    diagnostic::{Diagnostic, MAX_KEPT, MAX_WORDS},
    drawn,
    source::{Sources, Span},
    written::Mistake,
};

use super::now_and_then;

/// Diagnostics have words and places, not without end, and can be drawn.
pub fn check(diagnostics: &[Diagnostic], sources: &Sources) {
    assert!(diagnostics.len() <= 2 * MAX_KEPT);
    for found in diagnostics {
        assert!(!found.code.is_empty() && !found.message.is_empty());
        // One that lost its middle says so in some bytes more.
        let words = found
            .hints
            .iter()
            .chain(found.labels.iter().map(|(_, words)| words));
        for words in words.chain([&found.message]) {
            assert!(words.len() <= MAX_WORDS + 10, "{words}");
        }
        let labels = found.labels.iter().map(|(span, _)| *span);
        for span in found.span.into_iter().chain(labels) {
            placed(span, sources);
        }
    }
    // Most of the time would go into drawing.
    let text = sources.iter().last().map_or("", |(_, source)| &source.text);
    if now_and_then(text.as_bytes(), 8) {
        let text = drawn(diagnostics, 0, sources, true);
        assert_eq!(text.is_empty(), diagnostics.is_empty());
    }
}

fn placed(span: Span, sources: &Sources) {
    let text = sources.text(span.file);
    let is_at_line_end = text
        .get(span.start..)
        .is_some_and(|rest| rest.is_empty() || rest.starts_with('\n'));
    assert!(span.start < span.end || is_at_line_end, "{span:?}");
    assert!(text.get(span.start..span.end).is_some(), "{span:?}");
    let head = &text[..span.start];
    let line_start = head.rfind('\n').map_or(0, |newline| newline + 1);
    let at = sources.line_column(span);
    assert_eq!(at.line, head.matches('\n').count() + 1);
    assert_eq!(at.column, head[line_start..].chars().count() + 1);
}

/// A mistake points into its text, and has words.
pub fn inside(text: &str, mistake: &Mistake) {
    assert!(!mistake.message.is_empty() && !mistake.code.is_empty());
    assert!(text.get(mistake.at.clone()).is_some(), "{text:?}: {mistake:?}");
}
