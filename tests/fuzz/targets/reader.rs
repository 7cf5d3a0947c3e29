//! Any bytes as chapters: reading, drawing what is wrong and writing Rust never panic, and answers keep their limits.
#![no_main]

use libfuzzer_sys::fuzz_target;
use oxyfolio::{
    CHAPTERS,
    compile::{
        compile,
        diagnostic::{MAX_KEPT, MAX_WORDS},
        drawn, emit,
        source::{Sources, Span},
    },
};

/// Ends a chapter. Stands in no chapter that is accepted.
const END: char = '\u{c}';

fuzz_target!(|bytes: &[u8]| {
    let Some((first, bytes)) = bytes.split_first() else {
        return;
    };
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    let mut sources = Sources::default();
    // Some of the books stand on the demonstration, so that what refers to its rules is read to the end.
    if first % 8 == 0 {
        for (name, text) in CHAPTERS {
            sources.add((*name).to_owned(), (*name).to_owned(), (*text).to_owned());
        }
    }
    for (number, text) in text.split(END).enumerate() {
        let name = format!("fuzz-{number}.md");
        sources.add(name.clone(), name, text.to_owned());
    }
    let (sources, diagnostics) = match compile(sources) {
        Ok(compiled) => {
            assert!(emit::rust(&compiled.book).contains("RULEBOOK"));
            (compiled.sources, compiled.notes)
        }
        Err(rejected) => {
            assert!(!rejected.diagnostics.is_empty(), "rejected without a reason");
            (rejected.sources, rejected.diagnostics)
        }
    };
    assert!(diagnostics.len() <= 2 * MAX_KEPT);
    for found in &diagnostics {
        assert!(found.message.len() <= MAX_WORDS + 10 && !found.message.is_empty());
        let labels = found.labels.iter().map(|(span, _)| *span);
        for span in found.span.into_iter().chain(labels) {
            placed(span, &sources);
        }
    }
    drawn(&diagnostics, 0, &sources, true);
});

/// A place is inside its chapter, on characters, and its line and column are those counted from the start.
fn placed(span: Span, sources: &Sources) {
    let text = sources.text(span.file);
    assert!(
        span.start < span.end
            || text
                .get(span.start..)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with('\n'))
    );
    assert!(text.get(span.start..span.end).is_some(), "{span:?}");
    let head = &text[..span.start];
    let line_start = head.rfind('\n').map_or(0, |newline| newline + 1);
    let at = sources.line_column(span);
    assert_eq!(at.line, head.matches('\n').count() + 1);
    assert_eq!(at.column, head[line_start..].chars().count() + 1);
}
