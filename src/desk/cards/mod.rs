//! The cards as they will print.

pub mod press;

use axum::{
    http::{HeaderValue, StatusCode, header},
    response::{IntoResponse as _, Response},
};
use maud::{Markup, html};

use super::{
    page::{Room, not_with_errors, numbered, worded},
    query::{Query, escaped},
    reading::Reading,
    routes::{self, Desk, Page},
    since,
};
use crate::cards::{Form, Wanted, data::Document, documents};
use crate::compile::render::visible;

/// The documents of the set.
pub fn list(desk: &Desk, reading: &Reading, query: &Query) -> Page {
    let with = since::chosen(desk, query);
    let content = html! {
        h1 { "Cards" }
        div #cards data-part {
            @match reading.cards() {
                None => (not_with_errors(reading, "no cards can be printed")),
                Some(Err(error)) => p.wrong { (worded(&error.to_string())) },
                Some(Ok(documents)) => {
                    p {
                        "Each of these prints on the agency's paper. A card belongs to the text it was printed from: its code is "
                        span.code { (reading.short_digest) } "."
                    }
                    ul.documents {
                        @for (name, document) in documents {
                            li {
                                a href=(with_old(&format!("/cards/{}", escaped(name)), with)) { (called(document)) }
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

/// An address that keeps the old edition that was chosen.
fn with_old(address: &str, with: Option<&str>) -> String {
    with.map_or_else(
        || address.to_owned(),
        |with| format!("{address}?with={}", escaped(with)),
    )
}

fn named<'a>(documents: &'a [(String, Document)], name: &str) -> Option<&'a Document> {
    let mut named = documents.iter().filter(|(known, _)| known == name);
    named.next().map(|(_, document)| document)
}

/// The pages of a document; none where the set has no such document.
pub fn page(desk: &Desk, reading: &Reading, name: &str, query: &Query) -> Option<Page> {
    let mut title = name.to_owned();
    let shown = match reading.cards() {
        None => not_with_errors(reading, "no cards can be printed"),
        Some(Err(error)) => html! { p.wrong { (worded(&error.to_string())) } },
        Some(Ok(documents)) => {
            let document = named(documents, name)?;
            title = called(document);
            pages(desk, reading, name, document, since::chosen(desk, query))
        }
    };
    let content = html! {
        p { a href=(with_old("/cards", since::chosen(desk, query))) { "All cards and sheets" } }
        h1 { (visible(&title)) }
        div #pages data-part { (shown) }
    };
    Some(Page {
        title: format!("Cards: {}", visible(&title)),
        room: Room::Cards,
        content,
    })
}

fn pages(desk: &Desk, reading: &Reading, name: &str, document: &Document, with: Option<&str>) -> Markup {
    let Some(book) = reading.sound_book() else {
        return not_with_errors(reading, "no cards can be printed");
    };
    let old = with.map(|with| old_pages(desk, name, with));
    match desk.press.pages(book, name, Form::Svg, document) {
        Err(error) => html! {
            div.refusal {
                p { strong { "The cards can't be shown." } }
                p { (worded(&error.to_string())) }
            }
        },
        Ok(set) => html! {
            p {
                a.button href=(address(&book.short_digest, name, "pdf")) { "Print: get the PDF" }
                " Print at 100 % (“actual size”)."
            }
            @match &old {
                Some(Ok(old)) => (both(name, document, &book.short_digest, set.len(), old)),
                Some(Err(error)) => {
                    p.wrong { "The cards of the last edition can't be shown: " (worded(error)) }
                    (alone(name, document, &book.short_digest, set.len()))
                }
                None => (alone(name, document, &book.short_digest, set.len())),
            }
        },
    }
}

fn alone(name: &str, document: &Document, code: &str, count: usize) -> Markup {
    html! {
        ol.sheets {
            @for number in 1..=count {
                li { (sheet(name, document, code, number, &format!("Page {number} of {count}"))) }
            }
        }
    }
}

/// The last edition's cards in their own document.
struct Old {
    edition: String,
    code: String,
    document: Document,
    count: usize,
}

fn old_pages(desk: &Desk, name: &str, with: &str) -> Result<Old, String> {
    let edition = since::old(desk, with)?;
    if !edition.problems.is_empty() || edition.omitted > 0 {
        return Err("`check` finds errors in it today".to_owned());
    }
    let book = &edition.book;
    let documents = documents(book, &Wanted::default()).map_err(|error| error.to_string())?;
    let document = named(&documents, name).ok_or("it has no such cards")?;
    let set = desk
        .press
        .pages(book, name, Form::Svg, document)
        .map_err(|error| error.to_string())?;
    Ok(Old {
        edition: book.agency.edition.to_string(),
        code: book.short_digest.to_string(),
        document: document.clone(),
        count: set.len(),
    })
}

/// Page beside page: the last edition on the left.
fn both(name: &str, document: &Document, code: &str, count: usize, old: &Old) -> Markup {
    html! {
        p { "On the left the cards of edition " (visible(&old.edition)) " (" span.code { (old.code) } "), on the right those of the text on the desk." }
        ol.sheets.both {
            @for number in 1..=count.max(old.count) {
                li.beside-old {
                    @if number <= old.count {
                        (sheet(name, &old.document, &old.code, number, &format!("Then, page {number} of {}", old.count)))
                    } @else { p { "There was no such page." } }
                    @if number <= count {
                        (sheet(name, document, code, number, &format!("Now, page {number} of {count}")))
                    } @else { p { "There is no such page any more." } }
                }
            }
        }
    }
}

fn sheet(name: &str, document: &Document, code: &str, number: usize, words: &str) -> Markup {
    let paper = document.paper.as_ref().unwrap_or(&document.size);
    html! {
        figure {
            img src=(address(code, name, &format!("{number}.svg"))) width=(pixels(paper.width_mm)) height=(pixels(paper.height_mm))
                loading="lazy" alt={ (words) ": " (called(document)) "; the PDF has its text" };
            figcaption { (words) }
        }
    }
}

/// Millimetres as CSS pixels, 96 to the inch.
fn pixels(millimetres: f64) -> f64 {
    (millimetres / 25.4 * 96.0).round()
}

/// The address of a file, with the text it belongs to, so that no browser shows an older one.
fn address(code: &str, name: &str, ending: &str) -> String {
    format!("/print/{}.{code}.{ending}", escaped(name))
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
    let set = if code == reading.short_digest {
        let document = named(reading.cards()?.ok()?, name)?;
        match desk.press.pages(reading.sound_book()?, name, form, document) {
            Ok(set) => set,
            Err(error) => return Some((StatusCode::SERVICE_UNAVAILABLE, error.to_string()).into_response()),
        }
    } else {
        // Of the last edition there are the pages that were shown beside these.
        desk.press.kept(code, name, form)?
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
