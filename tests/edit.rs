//! One edit of the rulebook reaches the checker, the generated tables and the cards, with no other edit.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

mod common;

use std::path::Path;

use oxyfolio::book::{CardSize, Rulebook};
use oxyfolio::cards::{self, Wanted, data};
use oxyfolio::check::{Setup, check_setup};
use oxyfolio::compile::{Compiled, emit, folder};
use oxyfolio::quantity::Flow;

const CHAPTER: &str = "05-delivery-devices.md";
const OLD: &str = "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %";
const NEW: &str = "flow: 8 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %";

fn compiled(folder: &Path) -> Compiled {
    folder::load(folder).unwrap_or_else(|rejected| panic!("{}", rejected.render(false)))
}

/// What the checker says of a reservoir mask at 9 L/min.
fn codes(book: &Rulebook) -> Vec<String> {
    let device = book.find_device("non-rebreather").unwrap();
    let adult = book.find_group("adult").unwrap();
    let setup = Setup::new(device, Flow::litres_per_minute(9.0).unwrap()).group(adult);
    let mut codes = Vec::new();
    check_setup(book, &setup, |finding| codes.push(finding.code().to_owned())).unwrap();
    codes
}

fn device_row(book: &Rulebook) -> Vec<String> {
    let wanted = Wanted {
        sizes: vec![CardSize::Id1],
        ..Wanted::default()
    };
    let (_, document) = cards::documents(book, &wanted).unwrap().remove(0);
    let rows = document.cards.iter().find_map(|card| match &card.body {
        data::Body::Devices { rows, .. } => Some(rows.clone()),
        _ => None,
    });
    rows.unwrap()
        .into_iter()
        .find(|row| row[0] == "Non-rebreather mask")
        .unwrap()
}

fn step_text(book: &Rulebook) -> String {
    let procedure = book
        .procedure(book.find_procedure("apply-reservoir-mask").unwrap())
        .unwrap();
    let step = procedure
        .steps
        .iter()
        .find(|step| step.say.contains("Set the flow"))
        .unwrap();
    step.say.to_string()
}

/// Takes the worked cases out: they are in the book to object to such an edit, which is another test's business.
fn without_cases(folder: &Path) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap();
        std::fs::write(&path, common::without_cases(&text)).unwrap();
    }
}

#[test]
fn one_flow_limit_changes_checker_table_and_cards() {
    let copy = common::copy_of_rules();
    without_cases(copy.path());
    let before = compiled(copy.path());
    common::edit(copy.path(), CHAPTER, OLD, NEW);
    let after = compiled(copy.path());

    assert!(codes(&before.book).contains(&"flow-too-low".to_owned()));
    assert!(!codes(&after.book).contains(&"flow-too-low".to_owned()));

    let (old_table, new_table) = (emit::rust(&before.book), emit::rust(&after.book));
    assert_ne!(old_table, new_table);
    let least = "Limit::Included(::oxyfolio::quantity::Flow::tabled(8.0)), high: ::oxyfolio::quantity::Limit::Included(::oxyfolio::quantity::Flow::tabled(15.0)) }";
    let times = |table: &str| table.matches(least).count();
    // In the whole book, and in what checks ask of it.
    assert_eq!(times(&new_table), times(&old_table) + 2);

    assert_eq!(device_row(&before.book)[1], "10–15");
    assert_eq!(device_row(&after.book)[1], "8–15");
    assert!(step_text(&before.book).contains("never below 10 L/min"));
    assert!(step_text(&after.book).contains("never below 8 L/min"));

    assert_ne!(
        before.book.short_digest, after.book.short_digest,
        "the card in the hand is another edition"
    );
}

#[test]
fn compiled_in_rulebook_is_the_one_in_rules() {
    let read = compiled(&common::rules());
    assert_eq!(read.book, oxyfolio::RULEBOOK);
}

#[test]
fn generated_table_is_the_same_every_time() {
    let (first, second) = (compiled(&common::rules()), compiled(&common::rules()));
    assert_eq!(emit::rust(&first.book), emit::rust(&second.book));
}

#[test]
fn digest_sees_every_letter_and_no_line_ends() {
    let copy = common::copy_of_rules();
    let before = compiled(copy.path()).book.digest;
    let path = copy.path().join(CHAPTER);
    let text = std::fs::read_to_string(&path).unwrap();
    std::fs::write(&path, text.replace('\n', "\r\n")).unwrap();
    assert_eq!(compiled(copy.path()).book.digest, before);
    std::fs::write(&path, text + "x").unwrap();
    assert_ne!(compiled(copy.path()).book.digest, before);
}
