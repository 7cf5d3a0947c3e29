//! The edition's dates, with and without a clock.

use oxyfolio::{
    book::Date,
    compile::lint::{self, LINTS},
};

use crate::book::{Edit, compiled, demo, edited, findings, is_allowed, snapshot};

fn on(edits: &[Edit], year: u16, month: u8, day: u8) -> Vec<String> {
    let (chapters, _) = edited(edits);
    let compiled = compiled(&chapters).unwrap_or_else(|rejected| panic!("{}", rejected.render(false)));
    let mut dated = compiled.on(Date::new(year, month, day).unwrap());
    dated.notes.retain(|note| !is_allowed(note));
    snapshot(&format!("on_{year}_{month}_{day}"), &dated.notes, &dated.sources);
    let text = |span: oxyfolio::compile::source::Span| {
        dated.sources.text(span.file)[span.start..span.end].to_owned()
    };
    dated
        .notes
        .iter()
        .map(|note| format!("{} {}", note.code, text(note.span.unwrap())))
        .collect()
}

findings! {
    signed_after_it_took_effect ["signed-late"] {
        "01-about-this-book.md": "signed-off: 2026-10-20" => "signed-off: ‹2026-12-01›",
    }
}

#[test]
fn before_it_is_signed() {
    assert_eq!(
        on(&[], 2026, 10, 1),
        ["not-yet-effective 2026-11-01", "signed-in-future 2026-10-20"]
    );
}

#[test]
fn on_the_days_themselves_nothing_is_said() {
    assert!(on(&[], 2026, 11, 1).is_empty());
    assert!(on(&[], 2027, 11, 1).is_empty());
}

#[test]
fn after_the_review() {
    assert_eq!(on(&[], 2027, 11, 2), ["review-passed 2027-11-01"]);
}

/// What the hints ask for: the year put right, or new dates and a signature.
#[test]
fn new_dates_and_a_signature_end_it() {
    let dated = |signed: &'static str, effective: &'static str, review: &'static str| {
        [
            ("signed-off: 2026-10-20", signed),
            ("effective: 2026-11-01", effective),
            ("review: 2027-11-01", review),
        ]
        .map(|(find, write)| Edit {
            chapter: "01-about-this-book.md",
            find,
            write,
        })
    };
    let year = dated(
        "signed-off: 2025-10-20",
        "effective: 2025-11-01",
        "review: 2026-11-01",
    );
    let again = dated(
        "signed-off: 2027-10-20",
        "effective: 2027-11-01",
        "review: 2028-11-01",
    );
    for (code, (year, month, day), edits) in [
        ("signed-in-future", (2026, 10, 1), &year),
        ("not-yet-effective", (2026, 10, 1), &year),
        ("review-passed", (2027, 11, 2), &again),
    ] {
        let said = on(&[], year, month, day);
        assert!(said.iter().any(|said| said.starts_with(code)), "{said:?}");
        assert_eq!(on(edits, year, month, day), Vec::<String>::new(), "{code}");
    }
}

#[test]
fn what_depends_on_the_day_is_never_an_unused_allow() {
    let edit = Edit {
        chapter: "01-about-this-book.md",
        find: "edition: \"1\"\n",
        write: "edition: \"1\"\nallow:\n  review-passed: \"The new edition is being printed.\"\n",
    };
    let (chapters, _) = edited(&[edit]);
    let compiled = compiled(&chapters).unwrap();
    assert!(compiled.notes.iter().all(|note| note.code != "unused-allow"));
    let dated = compiled.on(Date::new(2030, 1, 1).unwrap());
    let note = dated
        .notes
        .iter()
        .find(|note| note.code == "review-passed")
        .unwrap();
    assert!(is_allowed(note));
}

#[test]
fn without_a_day_nothing_depends_on_the_clock() {
    let compiled = compiled(&demo()).unwrap();
    assert!(compiled.notes.iter().all(|note| !note.message.contains("today")));
}

#[test]
fn today_is_a_day_of_the_calendar() {
    let today = lint::today().unwrap();
    let now = std::time::SystemTime::now()
        .duration_since(std::time::UNIX_EPOCH)
        .unwrap()
        .as_secs();
    assert!(today.unix_seconds() <= now && now < today.unix_seconds() + 2 * 86_400);
    assert!(LINTS.iter().any(|lint| lint.name == "review-passed"));
}
