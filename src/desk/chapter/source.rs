//! The text of a rule as it is written, with line numbers and with what is wrong in it marked.

use std::ops::Range;

use maud::{Markup, html};

use super::super::reading::Reading;
use crate::compile::{
    diagnostic::Diagnostic,
    render::visible,
    source::{FileId, Span},
};

/// As many lines of a long rule are shown beside a problem.
const MOST_LINES: usize = 12;

/// The longest line that is shown whole, in bytes.
const MOST_LINE: usize = 2_000;

/// The lines of a stretch of a chapter.
pub fn lines(reading: &Reading, file: FileId, range: Range<usize>) -> Markup {
    let text = reading.sources.text(file);
    let marks = marks(reading, file, &range);
    let mut start = range.start;
    let lines = text.get(range.clone()).unwrap_or("").split_inclusive('\n');
    let placed: Vec<(usize, &str)> = lines
        .map(|line| {
            start += line.len();
            (start - line.len(), line)
        })
        .collect();
    let first = reading
        .sources
        .line_column(Span {
            file,
            start: range.start,
            end: range.end,
        })
        .line;
    html! {
        pre.source-text { code {
            @for (number, (at, line)) in (first..).zip(placed) {
                span.line { span.number { (number) } (marked(line, at, &marks)) }
            }
        } }
    }
}

/// The lines that a problem is about.
pub fn around(reading: &Reading, found: &Diagnostic) -> Markup {
    let Some(span) = found.span else {
        return html! {};
    };
    let text = reading.sources.text(span.file);
    let from = reading.sources.line_start(span.file, span.start);
    let rest = text.get(from..).unwrap_or("");
    let wanted = span.end.saturating_sub(from);
    let mut end = 0;
    for line in rest.split_inclusive('\n').take(MOST_LINES) {
        end += line.len();
        if end >= wanted {
            break;
        }
    }
    lines(reading, span.file, from..from + end)
}

/// Where something is marked within a stretch: in order, none within another.
fn marks(reading: &Reading, file: FileId, range: &Range<usize>) -> Vec<Range<usize>> {
    let mut marks: Vec<Range<usize>> = reading
        .diagnostics
        .iter()
        .flat_map(|found| {
            found
                .span
                .into_iter()
                .chain(found.labels.iter().map(|(span, _)| *span))
        })
        .filter(|span| span.file == file && span.start < range.end && span.end > range.start)
        .map(|span| span.start..span.end)
        .collect();
    marks.sort_by_key(|mark| (mark.start, mark.end));
    let mut apart: Vec<Range<usize>> = Vec::new();
    for mark in marks {
        match apart.last_mut() {
            Some(last) if mark.start <= last.end => last.end = last.end.max(mark.end),
            _ => apart.push(mark),
        }
    }
    apart
}

/// A line with its marks; the end of a line that is far too long is left out.
fn marked(line: &str, start: usize, marks: &[Range<usize>]) -> Markup {
    let line = line.trim_end_matches(['\n', '\r']);
    let shown = line.get(..line.floor_char_boundary(MOST_LINE)).unwrap_or(line);
    let end = start + shown.len();
    let part = |range: Range<usize>| {
        let from = shown.floor_char_boundary(range.start.saturating_sub(start));
        let to = shown.ceil_char_boundary(range.end.saturating_sub(start).min(shown.len()));
        visible(shown.get(from..to).unwrap_or(""))
    };
    let mut at = start;
    let mut parts = Vec::new();
    for mark in marks {
        if mark.start < end && mark.end > start {
            let from = mark.start.max(at);
            parts.push((at..from, false));
            at = mark.end.min(end).max(from);
            parts.push((from..at, true));
        }
    }
    parts.push((at..end, false));
    html! {
        @for (range, is_marked) in parts {
            @if is_marked { mark { (part(range)) } } @else { (part(range)) }
        }
        @if shown.len() < line.len() { " …" }
        "\n"
    }
}
