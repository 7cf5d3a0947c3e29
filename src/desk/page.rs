//! What every page has about its content: whose book it is and which edition, the ways to the other pages, and the
//! words that no page goes without.

use maud::{DOCTYPE, Markup, html};

use super::{
    reading::Reading,
    routes::{Desk, Page},
};
use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS};
use crate::compile::{ToDo, render::visible};

/// The parts of the site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Room {
    /// The chapters.
    Book,
    /// What is wrong.
    Problems,
    /// The orders of steps.
    Orders,
    /// Try a set-up.
    Trial,
    /// The cards.
    Cards,
    /// What changed.
    Since,
    /// No part of it.
    None,
}

const ROOMS: [(Room, &str, &str); 6] = [
    (Room::Book, "/", "Book"),
    (Room::Problems, "/problems", "Problems"),
    (Room::Orders, "/orders", "Order of steps"),
    (Room::Trial, "/try", "Try a set-up"),
    (Room::Cards, "/cards", "Cards"),
    (Room::Since, "/since", "Since the last edition"),
];

/// A page as it is sent.
pub fn framed(desk: &Desk, reading: &Reading, page: &Page) -> Markup {
    let agency = reading.agency("name").map(visible);
    let agency = agency
        .as_deref()
        .unwrap_or("A rulebook whose agency can't be read");
    html! {
        (DOCTYPE)
        html lang="en" data-reading=(reading.number) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (page.title) " – " (agency) }
                link rel="stylesheet" href="/desk.css";
                link rel="icon" href="/icon.svg" type="image/svg+xml";
                script src="/desk.js" defer {}
            }
            body {
                a.skip href="#content" { "Skip to the content" }
                header.top {
                    div.whose #whose data-part {
                        p.agency { a href="/" { (agency) } }
                        (edition(reading))
                    }
                    nav aria-label="Pages" {
                        ul.rooms #rooms data-part {
                            @for (room, address, name) in ROOMS {
                                li {
                                    a href=(address) aria-current=[(room == page.room).then_some("page")] {
                                        (name)
                                        @if room == Room::Problems { " " (count(reading)) }
                                    }
                                }
                            }
                        }
                    }
                    form.search action="/search" role="search" {
                        label for="search-box" { "Search the book" }
                        input #search-box type="search" name="q" autocomplete="off";
                        button type="submit" { "Search" }
                    }
                }
                p.state #state role="status" data-part { (state(reading)) }
                main #content tabindex="-1" {
                    (page.content)
                }
                footer #foot data-part {
                    @for line in ALWAYS_DISCLAIMERS { p { (line) } }
                    @if let Some(book) = &reading.book {
                        @for line in &*book.agency.disclaimers { p { (visible(line)) } }
                    }
                    p.cautions { (ALWAYS_CAUTIONS.join(" ")) }
                    p.small {
                        "Digest of the text "
                        span.digest { (reading.digest) }
                        @if !desk.folder().is_empty() { ". Read from " (visible(&desk.folder())) }
                        ". This page only shows the book: change it in an editor."
                    }
                }
            }
        }
    }
}

/// The edition as it is written, also of a book with errors: then with a word of warning.
fn edition(reading: &Reading) -> Markup {
    let says = |key: &str| reading.decided(key).map(visible).unwrap_or("not readable".into());
    html! {
        p.edition {
            "Edition " (says("edition")) ", effective " (says("effective")) ", review " (says("review"))
            " · book " span.code { (reading.short_digest) }
            @if !reading.is_sound {
                @let word = if reading.count(None).0.errors > 0 { "has errors" } else { "not yet decided" };
                " · " strong { (word) ": not to be signed or printed" }
            }
        }
    }
}

fn count(reading: &Reading) -> Markup {
    counted(reading.count(None))
}

/// How much is to be done, as a mark beside a name.
pub fn counted((to_do, notes): (ToDo, usize)) -> Markup {
    html! {
        @if to_do.undecided > 0 { span.count.undecided { (to_do.undecided) " to decide" } " " }
        @if to_do.errors > 0 { span.count.error { (numbered(to_do.errors, "error")) } }
        @else if notes > 0 && to_do.undecided == 0 { span.count { (numbered(notes, "note")) } }
    }
}

/// The state of the book in a sentence.
fn state(reading: &Reading) -> Markup {
    let (to_do, notes) = reading.count(None);
    html! {
        @if to_do.is_any() {
            a href="/problems" { (to_do) }
            ": the rulebook can't be used " (to_do.until()) "."
        } @else if notes > 0 {
            "No errors. "
            a href="/problems" { (numbered(notes, "note")) }
            " to look at."
        } @else {
            "No errors."
        }
    }
}

/// `1 error`, `2 errors`.
pub fn numbered(count: usize, word: &str) -> String {
    if count == 1 {
        format!("1 {word}")
    } else {
        format!("{count} {word}s")
    }
}

/// What stands in place of an answer that a book that can't be used can't give.
pub fn not_with_errors(reading: &Reading, what: &str) -> Markup {
    let (to_do, _) = reading.count(None);
    html! {
        div.refusal {
            @if to_do.errors > 0 {
                p { strong { "The rulebook has errors, so " (what) "." } }
                p { a href="/problems" { "See what is wrong" } " and put it right in the file; this page follows by itself." }
            } @else {
                p { strong { "Not every value of the rulebook is decided yet, so " (what) "." } }
                p { a href="/problems" { "See what is to be decided" } " and write it in the file; this page follows by itself." }
            }
        }
    }
}

/// Words of the checker: what they quote is set as code, as the book's own words are.
pub fn worded(text: &str) -> Markup {
    let paired = text.matches('`').count().is_multiple_of(2);
    html! {
        @if paired {
            @for (index, part) in text.split('`').enumerate() {
                @if !index.is_multiple_of(2) { code { (visible(part)) } } @else { (visible(part)) }
            }
        } @else { (visible(text)) }
    }
}
