//! A chapter as a page: its prose, its rules as tables or steps with their source, its problems in the margin.

mod names;
mod prose;
pub mod quoted;
mod rule;
pub mod source;

use maud::{Markup, html};

use super::{contents, page::Room, problems, query::escaped, reading::Reading, routes::Page};
use crate::book::Kind;
use crate::compile::{
    render::visible,
    source::{FileId, Span},
};

pub use names::anchor;
pub use prose::{Section, sections};

/// The page of a chapter; none when there is no such chapter.
pub fn page(reading: &Reading, name: &str) -> Option<Page> {
    let file = reading.chapter(name)?;
    let title = reading.title(file);
    let sections = sections(reading, file);
    let has_title = sections.iter().any(|section| section.is_title);
    let content = html! {
        div.chapter {
            nav.beside #chapters aria-label="Chapters" data-part {
                (contents::contents(reading, Some(file)))
            }
            article #chapter data-list {
                @if !has_title {
                    section.part #untitled data-part { div.words { h1 { (visible(&title)) } } }
                }
                @for section in &sections {
                    (shown(section, reading, file))
                }
            }
        }
        (turn(reading, file))
    };
    Some(Page {
        title: visible(&title).into_owned(),
        room: Room::Book,
        content,
    })
}

fn shown(section: &Section, reading: &Reading, file: FileId) -> Markup {
    let here: Vec<_> = reading
        .diagnostics
        .iter()
        .filter(|found| {
            found
                .span
                .is_some_and(|span| span.file == file && section.range.contains(&span.start))
        })
        .collect();
    html! {
        section.part #(section.id) data-part {
            div.words { (section.html) }
            @if !here.is_empty() {
                div.margin role="note" aria-label="Problems here" {
                    @for found in here { (problems::one(found, reading, false)) }
                }
            }
        }
    }
}

/// To the chapters before and after.
fn turn(reading: &Reading, file: FileId) -> Markup {
    let beside = |other: Option<usize>, word: &str| {
        let other = other
            .map(FileId)
            .and_then(|other| Some((other, reading.sources.get(other)?)));
        html! {
            @if let Some((other, source)) = other {
                a href={ "/chapter/" (escaped(&source.name)) } { (word) ": " (visible(&reading.title(other))) }
            }
        }
    };
    html! {
        nav.turn #turn aria-label="Next and previous chapter" data-part {
            (beside(file.0.checked_sub(1), "Before"))
            (beside(file.0.checked_add(1), "Next"))
        }
    }
}

/// The address of a place in the book: the part of the chapter in which it stands.
pub fn address(reading: &Reading, span: Span) -> String {
    let name = reading
        .sources
        .get(span.file)
        .map_or("", |source| source.name.as_str());
    let sections = prose::outline(reading, span.file);
    let id = sections
        .iter()
        .find(|(range, _)| range.contains(&span.start))
        .map_or("", |(_, id)| id);
    format!("/chapter/{}#{id}", escaped(name))
}

/// The address of a rule; none for a rule that the book doesn't have.
pub fn rule_address(reading: &Reading, kind: Kind, id: &str) -> Option<String> {
    let file = reading.place(kind, id)?;
    let source = reading.sources.get(file)?;
    Some(format!("/chapter/{}#{}", escaped(&source.name), anchor(kind, id)))
}
