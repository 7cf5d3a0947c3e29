//! Search: every part of every chapter that has all the words.

use std::ops::Range;

use maud::{Markup, html};

use super::{
    chapter,
    page::{Room, numbered},
    query::{Query, escaped},
    reading::Reading,
    routes::Page,
};
use crate::compile::render::visible;

/// As many parts are shown.
const MOST: usize = 100;

/// Around a word that was found, in bytes.
const AROUND: usize = 120;

/// The longest text that is looked for.
const LONGEST: usize = 200;

/// What was found.
pub fn page(reading: &Reading, query: &Query) -> Page {
    let asked = query.get("q").unwrap_or("");
    let asked = asked.get(..asked.floor_char_boundary(LONGEST)).unwrap_or(asked);
    let words: Vec<String> = asked.split_whitespace().map(str::to_lowercase).collect();
    let found = if words.is_empty() {
        Vec::new()
    } else {
        find(reading, &words)
    };
    let content = html! {
        h1 { "Search" }
        div #found data-part {
            @if words.is_empty() {
                p { "Write one or more words in the search box: the parts of the book that have all of them are listed." }
            } @else {
                p {
                    (numbered(found.len().min(MOST), "part")) " of the book with " strong { (visible(asked)) }
                    @if found.len() > MOST { ", and more" } "."
                }
                ol.found {
                    @for one in found.iter().take(MOST) {
                        li {
                            p { a href=(one.address) { (visible(&one.title)) } " " span.small { "line " (one.line) } }
                            p.excerpt { (excerpt(&one.text, &words)) }
                        }
                    }
                }
            }
        }
    };
    Page {
        title: format!("Search: {}", visible(asked)),
        room: Room::None,
        content,
    }
}

struct Found {
    title: String,
    address: String,
    line: usize,
    text: String,
}

fn find(reading: &Reading, words: &[String]) -> Vec<Found> {
    let mut all = Vec::new();
    for (file, source) in reading.sources.iter() {
        let title = reading.title(file);
        let mut heading = String::new();
        for section in chapter::sections(reading, file) {
            let end = section.range.end.min(source.text.len());
            let text = source.text.get(section.range.start..end).unwrap_or("").trim();
            if let Some(words) = text.strip_prefix('#') {
                heading = words.trim_matches(['#', ' ']).to_owned();
            }
            let lowered = text.to_lowercase();
            if !words.iter().all(|word| lowered.contains(word.as_str())) {
                continue;
            }
            let at = reading
                .sources
                .span(file, section.range.start..section.range.start + 1);
            all.push(Found {
                title: if heading == title || heading.is_empty() {
                    title.clone()
                } else {
                    format!("{title} › {heading}")
                },
                address: format!("/chapter/{}#{}", escaped(&source.name), section.id),
                line: reading.sources.line_column(at).line,
                text: in_a_line(text),
            });
            if all.len() > MOST {
                return all;
            }
        }
    }
    all
}

/// A rule block's lines, without those that begin and end it, one after the other as they are read; prose as it is.
fn in_a_line(text: &str) -> String {
    if !text.starts_with("```") {
        return text.to_owned();
    }
    let lines: Vec<&str> = text
        .lines()
        .map(|line| line.trim().trim_start_matches("- "))
        .filter(|line| !line.is_empty() && !line.starts_with("```"))
        .collect();
    lines.join(" · ")
}

/// The text around the first word, with the words marked; no word is cut where it begins.
fn excerpt(text: &str, words: &[String]) -> Markup {
    let marks = marks(text, words);
    let first = marks.first().map_or(0, |mark| mark.start);
    let from = text.floor_char_boundary(first.saturating_sub(AROUND));
    let cut = text.get(from..first).and_then(|before| before.find(' '));
    let from = from + cut.filter(|_| from > 0).map_or(0, |space| space + 1);
    let to = text.ceil_char_boundary((first + AROUND * 2).min(text.len()));
    let part = |range: Range<usize>| visible(text.get(range).unwrap_or(""));
    let mut at = from;
    let mut parts = Vec::new();
    for mark in marks {
        if mark.start >= at && mark.end <= to {
            parts.push((at..mark.start, false));
            at = mark.end;
            parts.push((mark, true));
        }
    }
    parts.push((at..to, false));
    html! {
        @if from > 0 { "… " }
        @for (range, is_marked) in parts {
            @if is_marked { mark { (part(range)) } } @else { (part(range)) }
        }
        @if to < text.len() { " …" }
    }
}

/// Where the words stand, in order. A letter may change its length when it is made small, so each place is looked at.
fn marks(text: &str, words: &[String]) -> Vec<Range<usize>> {
    let mut marks = Vec::new();
    let starts: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
    for start in starts {
        let rest = text.get(start..).unwrap_or("");
        for word in words {
            let length: usize = rest.chars().take(word.chars().count()).map(char::len_utf8).sum();
            if length > 0
                && rest
                    .get(..length)
                    .is_some_and(|part| part.to_lowercase() == *word)
            {
                marks.push(start..start + length);
                break;
            }
        }
        if marks.len() > 200 {
            break;
        }
    }
    marks
}
