//! The cards as they will print.

pub mod press;

use axum::{
    http::{HeaderValue, StatusCode, header},
    response::{IntoResponse as _, Response},
};
use maud::{Markup, html};

use super::{
    page::{Room, not_with_errors, numbered},
    query::{Query, escaped},
    reading::Reading,
    routes::{self, Desk, Page},
};
use crate::cards::{Form, data::Document};
use crate::compile::render::visible;

/// The documents of the set.
pub fn list(reading: &Reading) -> Page {
    let content = html! {
        h1 { "Cards" }
        div #cards data-part {
            @match reading.cards() {
                None => (not_with_errors("no cards can be printed")),
                Some(Err(error)) => p.wrong { (visible(&error.to_string())) },
                Some(Ok(documents)) => {
                    p {
                        "Each of these prints on the agency's paper. A card belongs to the text it was printed from: its code is "
                        span.code { (reading.short_digest) } "."
                    }
                    ul.documents {
                        @for (name, document) in documents {
                            li {
                                a href={ "/cards/" (escaped(name)) } { (called(document)) }
                                @let count = document.cards.len();
                                " " span.small { @if document.one_sided.is_some() { (numbered(count, "card")) } @else { (numbered(count, "sheet")) } }
                            }
                        }
                    }
                }
            }
        }
    };
    Page {
        title: "Cards".to_owned(),
        room: Room::Cards,
        content,
    }
}

/// A document's name for people, without the edition and code that stand on the page anyway.
fn called(document: &Document) -> String {
    let paper = document
        .paper
        .as_ref()
        .map_or(document.size.label, |paper| paper.label);
    let title = document.title.split(", ").next().unwrap_or("");
    format!("{}, on {paper}", visible(title))
}

fn named<'a>(documents: &'a [(String, Document)], name: &str) -> Option<&'a Document> {
    let mut named = documents.iter().filter(|(known, _)| known == name);
    named.next().map(|(_, document)| document)
}

/// The pages of a document; none where the set has no such document.
pub fn page(desk: &Desk, reading: &Reading, name: &str, _: &Query) -> Option<Page> {
    let mut title = name.to_owned();
    let shown = match reading.cards() {
        None => not_with_errors("no cards can be printed"),
        Some(Err(error)) => html! { p.wrong { (visible(&error.to_string())) } },
        Some(Ok(documents)) => {
            let document = named(documents, name)?;
            title = called(document);
            pages(desk, reading, name, document)
        }
    };
    let content = html! {
        p { a href="/cards" { "All cards and sheets" } }
        h1 { (visible(&title)) }
        div #pages data-part { (shown) }
    };
    Some(Page {
        title: format!("Cards: {}", visible(&title)),
        room: Room::Cards,
        content,
    })
}

fn pages(desk: &Desk, reading: &Reading, name: &str, document: &Document) -> Markup {
    match desk.press.pages(reading, name, Form::Svg, document) {
        Err(error) => html! {
            div.refusal {
                p { strong { "The cards can't be shown." } }
                p { (visible(&error.to_string())) }
            }
        },
        Ok(set) => {
            let paper = document.paper.as_ref().unwrap_or(&document.size);
            let (width, height) = (pixels(paper.width_mm), pixels(paper.height_mm));
            html! {
                p {
                    a.button href=(address(reading, name, "pdf")) { "Print: get the PDF" }
                    " Print at 100 % (“actual size”)."
                }
                ol.sheets {
                    @for number in 1..=set.len() {
                        li {
                            figure {
                                img src=(address(reading, name, &format!("{number}.svg"))) width=(width) height=(height)
                                    loading="lazy" alt={ "Page " (number) " of " (called(document)) "; the PDF has its text" };
                                figcaption { "Page " (number) " of " (set.len()) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Millimetres as CSS pixels, 96 to the inch.
fn pixels(millimetres: f64) -> f64 {
    (millimetres / 25.4 * 96.0).round()
}

/// The address of a file, with the text it belongs to, so that no browser shows an older one.
fn address(reading: &Reading, name: &str, ending: &str) -> String {
    format!("/print/{}.{}.{ending}", escaped(name), reading.short_digest)
}

/// A file: `NAME.CODE.pdf`, or a page as `NAME.CODE.3.svg`.
pub fn file(desk: &Desk, file: &str) -> Response {
    made(desk, file).unwrap_or_else(|| {
        let words =
            "There is no such card: the book may have been changed since. Load the page of the cards again.";
        (StatusCode::NOT_FOUND, words).into_response()
    })
}

fn made(desk: &Desk, file: &str) -> Option<Response> {
    let reading = desk.reading();
    let parts: Vec<&str> = file.split('.').collect();
    let (name, code, form, number) = match *parts.as_slice() {
        [name, code, "pdf"] => (name, code, Form::Pdf, 1),
        [name, code, number, "svg"] => (name, code, Form::Svg, number.parse::<usize>().ok()?),
        _ => return None,
    };
    if code != reading.short_digest {
        return None;
    }
    let document = named(reading.cards()?.ok()?, name)?;
    let set = match desk.press.pages(&reading, name, form, document) {
        Ok(set) => set,
        Err(error) => return Some((StatusCode::SERVICE_UNAVAILABLE, error.to_string()).into_response()),
    };
    let page = set.get(number.checked_sub(1)?)?.clone();
    if form == Form::Svg {
        return Some(routes::file("image/svg+xml", page));
    }
    let mut response = routes::file("application/pdf", page);
    let shown = HeaderValue::from_str(&format!("inline; filename=\"{name}-{code}.pdf\"")).ok()?;
    response.headers_mut().insert(header::CONTENT_DISPOSITION, shown);
    Some(response)
}
