//! Draws diagnostics in the manner of the Rust compiler, with the library it draws with.
//!
//! That library reads all the source it is given, and a chapter may be long and have many errors: it gets the lines
//! that matter and no others. What would garble a terminal is written as an escape.

use std::{borrow::Cow, ops::Range};

use annotate_snippets::{Annotation, AnnotationKind, Group, Level as Drawn, Origin, Renderer, Snippet};

use super::{
    diagnostic::{Diagnostic, Level},
    source::{FileId, Sources, Span},
};

/// The most source, in bytes, that goes into one drawing; what stands further apart is drawn apart.
const MOST_SOURCE: usize = 64 * 1024;

/// The longest line, in bytes, that is drawn whole; of a longer one only what stands around a place.
const MOST_LINE: usize = 2_000;

/// How much of a line too long to be drawn is shown before a place and after it, in bytes.
const AROUND: usize = 240;

/// Draws one diagnostic, with colours for a terminal or without.
#[must_use]
pub fn render(diagnostic: &Diagnostic, sources: &Sources, colour: bool) -> String {
    let level = match diagnostic.level {
        Level::Error if diagnostic.is_undecided() => Drawn::WARNING.with_name("to decide"),
        Level::Error => Drawn::ERROR,
        Level::Note => Drawn::NOTE,
    };
    let title = level
        .primary_title(visible(&diagnostic.message))
        .id(diagnostic.code);
    let mut group = Group::with_title(title);
    let parts = parts(diagnostic, sources);
    let windows: Vec<Window<'_>> = parts.iter().map(|part| Window::of(part, sources)).collect();
    for (part, window) in parts.iter().zip(&windows) {
        let path = sources
            .get(part.file)
            .map_or(Cow::Borrowed(""), |source| visible(&source.path));
        let mut snippet = Snippet::source(&*window.text)
            .line_start(window.line)
            .fold(true)
            .annotations(part.places.iter().map(|place| window.annotation(place)));
        if window.is_verbatim {
            snippet = snippet.path(path);
        } else {
            // The library would count the column in the text it is given.
            let at = sources.line_column(part.first());
            group = group.element(Origin::path(path).line(at.line).char_column(at.column));
        }
        group = group.element(snippet);
    }
    for hint in &diagnostic.hints {
        group = group.element(Drawn::HELP.message(visible(hint)));
    }
    let renderer = if colour {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    renderer.render(&[group])
}

/// A place with the words beside it; none beside the place of the diagnostic itself.
struct Marked<'a> {
    span: Span,
    words: Option<&'a str>,
}

/// Places of one chapter that are drawn together.
struct Part<'a> {
    file: FileId,
    places: Vec<Marked<'a>>,
    /// The lines that hold them, whole.
    lines: Range<usize>,
    /// Whether those are too long to be drawn.
    is_cut: bool,
}

impl Part<'_> {
    fn first(&self) -> Span {
        let nowhere = Span {
            file: self.file,
            start: 0,
            end: 0,
        };
        self.places.first().map_or(nowhere, |place| place.span)
    }
}

/// The diagnostic's own place with all that is near it, then the other chapters in the order of the book.
fn parts<'a>(diagnostic: &'a Diagnostic, sources: &Sources) -> Vec<Part<'a>> {
    let Some(own) = diagnostic.span else {
        return Vec::new();
    };
    let mut labels: Vec<&(Span, String)> = diagnostic.labels.iter().collect();
    labels.sort_by_key(|(span, _)| (span.file != own.file, span.file));
    let labels = labels.into_iter().map(|(span, words)| Marked {
        span: *span,
        words: Some(words),
    });
    let mut parts: Vec<Part<'a>> = Vec::new();
    for mut place in core::iter::once(Marked {
        span: own,
        words: None,
    })
    .chain(labels)
    {
        let text = sources.text(place.span.file);
        if place.span.end - place.span.start > MOST_SOURCE {
            // Its first line says where it is.
            place.span.end = end_of_line(text, place.span.start);
        }
        let from = sources.line_start(place.span.file, place.span.start);
        let lines = from..end_of_line(text, place.span.end);
        let is_long = |lines: &Range<usize>| {
            lines.len() > MOST_SOURCE
                || text
                    .get(lines.clone())
                    .is_some_and(|lines| lines.lines().any(|line| line.len() > MOST_LINE))
        };
        let near = parts.iter_mut().find_map(|part| {
            let both = part.lines.start.min(lines.start)..part.lines.end.max(lines.end);
            (part.file == place.span.file && !is_long(&both)).then_some((part, both))
        });
        match near {
            Some((part, both)) => {
                part.places.push(place);
                part.lines = both;
            }
            None => parts.push(Part {
                file: place.span.file,
                places: vec![place],
                is_cut: is_long(&lines),
                lines,
            }),
        }
    }
    parts
}

fn end_of_line(text: &str, place: usize) -> usize {
    let rest = text.get(place..).unwrap_or("");
    place + rest.find('\n').map_or(rest.len(), |newline| newline + 1)
}

/// The source of a drawing.
struct Window<'a> {
    text: Cow<'a, str>,
    /// The number of its first line.
    line: usize,
    /// Where it starts in the chapter.
    start: usize,
    /// Whether it is whole lines of the chapter, as they are.
    is_verbatim: bool,
    /// Bytes added before the bytes that follow a place in the chapter.
    added: Vec<(usize, usize)>,
}

impl<'a> Window<'a> {
    fn of(part: &Part<'_>, sources: &'a Sources) -> Self {
        let text = sources.text(part.file);
        let mut range = part.lines.clone();
        if part.is_cut {
            let at = part.first();
            let before = text.floor_char_boundary(at.start.saturating_sub(AROUND));
            let after = text.ceil_char_boundary(at.end.min(at.start + AROUND) + AROUND);
            range = range.start.max(before)..range.end.min(after);
        }
        let shown = text.get(range.clone()).unwrap_or("");
        // The drawing library has signs of its own for the control characters of ASCII.
        let (shown, added) = escaped(shown, range.start, |c| is_hidden(c) && !c.is_ascii());
        Self {
            is_verbatim: !part.is_cut && added.is_empty(),
            text: shown,
            line: sources
                .line_column(Span {
                    file: part.file,
                    start: range.start,
                    end: range.end,
                })
                .line,
            start: range.start,
            added,
        }
    }

    fn annotation<'w>(&'w self, place: &Marked<'w>) -> Annotation<'w> {
        let at = |byte: usize| {
            let added: usize = self
                .added
                .iter()
                .take_while(|(before, _)| *before < byte)
                .map(|(_, bytes)| bytes)
                .sum();
            let byte = byte.saturating_sub(self.start) + added;
            self.text.floor_char_boundary(byte)
        };
        let span = at(place.span.start)..at(place.span.end);
        match place.words {
            None => AnnotationKind::Primary.span(span),
            Some(words) => AnnotationKind::Context.span(span).label(visible(words)),
        }
    }
}

/// Whether a character would move the cursor, change the terminal, turn the text around or not be seen at all.
#[must_use]
pub fn is_hidden(c: char) -> bool {
    c.is_control() && !matches!(c, '\n' | '\r' | '\t')
        || turns_text(c)
        || matches!(
            c,
            '\u{AD}' | '\u{200B}'..='\u{200D}' | '\u{2028}' | '\u{2029}' | '\u{2060}' | '\u{FEFF}'
        )
}

/// Whether a character changes the direction in which the text around it is shown.
#[must_use]
pub const fn turns_text(c: char) -> bool {
    matches!(c, '\u{61C}' | '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

/// Words for a terminal: what can't be shown is written as an escape.
#[must_use]
pub fn visible(text: &str) -> Cow<'_, str> {
    escaped(text, 0, |c| is_hidden(c) || matches!(c, '\r' | '\t')).0
}

/// Writes some characters as escapes; gives the places after which bytes were added, and how many.
fn escaped(
    text: &str,
    start: usize,
    is_escaped: impl Fn(char) -> bool,
) -> (Cow<'_, str>, Vec<(usize, usize)>) {
    if !text.contains(&is_escaped) {
        return (Cow::Borrowed(text), Vec::new());
    }
    let mut shown = String::new();
    let mut added = Vec::new();
    for (at, c) in text.char_indices() {
        if is_escaped(c) {
            let escape = c.escape_unicode().to_string();
            added.push((start + at, escape.len() - c.len_utf8()));
            shown.push_str(&escape);
        } else {
            shown.push(c);
        }
    }
    (Cow::Owned(shown), added)
}
