//! What is wrong with the book, in the words of `check`.

use maud::{Markup, html};

use super::{
    chapter,
    page::{Room, worded},
    reading::Reading,
    routes::{Desk, Page},
};
use crate::compile::{
    MAX_DRAWN,
    diagnostic::{Diagnostic, Level},
    render::visible,
    suggest::counted,
};

/// All problems on one page.
pub fn page(_: &Desk, reading: &Reading) -> Page {
    let content = html! {
        h1 { "Problems" }
        div #problems data-part {
            @if reading.diagnostics.is_empty() {
                p { "Nothing is wrong, and nothing is worth a second look." }
            }
            @let (undecided, others): (Vec<_>, Vec<_>) = reading.diagnostics.iter().partition(|found| found.is_undecided());
            @let room = MAX_DRAWN.saturating_sub(others.len());
            @if !undecided.is_empty() {
                h2 { "To decide" }
                p {
                    (counted(undecided.len(), "value is", "values are"))
                    " still marked. Write the value in place of the mark, and save."
                }
                @for found in undecided.iter().take(room) { (one(found, reading, true)) }
                @if !others.is_empty() { h2 { "To put right or to look at" } }
            }
            @for found in others.iter().take(MAX_DRAWN) { (one(found, reading, true)) }
            @let more = reading.diagnostics.len().saturating_sub(MAX_DRAWN);
            @if reading.omitted > 0 { p { "… and more than " (more) " more" } }
            @else if more > 0 { p { "… and " (more) " more" } }
        }
    };
    Page {
        title: "Problems".to_owned(),
        room: Room::Problems,
        content,
    }
}

/// Problems that concern the book as a whole.
pub fn of_the_book(reading: &Reading) -> Markup {
    html! {
        @for found in reading.diagnostics.iter().filter(|found| found.span.is_none()) {
            (one(found, reading, false))
        }
    }
}

/// What it is, as `check` prints it, and the class of its looks.
fn word(found: &Diagnostic) -> (&'static str, &'static str) {
    match found.level {
        Level::Error if found.is_undecided() => ("to decide", "undecided"),
        Level::Error => ("error", "error"),
        Level::Note => ("note", "note"),
    }
}

/// One problem: what is wrong, where, and what to write instead.
pub fn one(found: &Diagnostic, reading: &Reading, with_source: bool) -> Markup {
    let (word, class) = word(found);
    html! {
        div class={ "problem " (class) } {
            p.what { strong { (word) } " " (worded(&found.message)) " " code { "[" (found.code) "]" } }
            @if let Some(span) = found.span {
                @let at = reading.sources.line_column(span);
                p.where {
                    a href=(chapter::address(reading, span)) {
                        @if with_source { (visible(&reading.title(span.file))) ", " }
                        "line " (at.line) ", column " (at.column)
                    }
                }
                @if with_source { (chapter::source::around(reading, found)) }
            }
            @for (span, words) in &found.labels {
                p.label {
                    (worded(words)) ": "
                    a href=(chapter::address(reading, *span)) {
                        (visible(&reading.title(span.file))) ", line " (reading.sources.line_column(*span).line)
                    }
                }
            }
            @for hint in &found.hints { p.hint { span.help { "help: " } (lines(hint)) } }
        }
    }
}

/// A hint may be an order of steps, a line for each.
fn lines(text: &str) -> Markup {
    html! {
        @for (index, line) in text.lines().enumerate() {
            @if index > 0 { br; }
            (worded(line))
        }
    }
}
