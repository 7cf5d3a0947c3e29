//! The front page: what the book holds.

use maud::{Markup, html};

use super::{
    page::{Room, counted},
    problems,
    query::escaped,
    reading::Reading,
    routes::{Desk, Page},
};
use crate::compile::{render::visible, source::FileId};

/// The front page.
pub fn page(_: &Desk, reading: &Reading) -> Page {
    let says = |key: &str| reading.decided(key).map(visible);
    let content = html! {
        div #front data-part {
            h1 { (says("name").unwrap_or("Rulebook".into())) }
            @if let Some(place) = says("place") { p.lead { (place) } }
            dl.facts {
                @for (word, key) in [
                    ("Edition", "edition"), ("Effective", "effective"), ("Review", "review"),
                    ("Signed off", "signed-off"), ("Medical director", "medical-director"),
                ] {
                    @if let Some(value) = says(key) { dt { (word) } dd { (value) } }
                }
            }
        }
        div #contents data-part {
            (problems::of_the_book(reading))
            h2 { "Contents" }
            (contents(reading, None))
        }
        h2 { "What to do here" }
        ul.ways {
            li { "Change a chapter in any editor and save it. The page that is open here follows at once." }
            li { a href="/problems" { "Problems" } " lists what is wrong, in the words of " code { "oxyfolio check" } ", with what to write instead." }
            li { a href="/orders" { "Order of steps" } " draws each procedure, and walks through an order that isn't safe." }
            li { a href="/try" { "Try a set-up" } " asks the book about a device, a flow, a patient and a cylinder." }
            li { a href="/cards" { "Cards" } " shows the cards as they will print." }
            li { a href="/since" { "Since the last edition" } " tells what an edit means before you sign it: limits, steps, minutes, worked cases and set-ups that come out otherwise." }
        }
    };
    Page {
        title: "Contents".to_owned(),
        room: Room::Book,
        content,
    }
}

/// The list of chapters, with how much there is to look at in each.
pub fn contents(reading: &Reading, here: Option<FileId>) -> Markup {
    html! {
        ol.contents {
            @for (file, source) in reading.sources.iter() {
                li {
                    a href={ "/chapter/" (escaped(&source.name)) } aria-current=[(here == Some(file)).then_some("page")] {
                        (visible(&reading.title(file)))
                    }
                    " " (counted(reading.count(Some(file))))
                }
            }
        }
    }
}
