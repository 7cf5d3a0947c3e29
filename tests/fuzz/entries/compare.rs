//! Any text as a part of an old edition: it is read as far as it can be, is no other than itself, and can be compared with today's.

use std::sync::LazyLock;

use oxyfolio::{
    CHAPTERS,
    compare::{compare_over, edition::Where},
    compile::{edition::Edition, source::Sources},
};

use super::{END, chosen, demonstration, places};

static TODAY: LazyLock<Edition> = LazyLock::new(|| Edition::of(demonstration()).expect("the demonstration"));

/// The first byte says which of the demonstration's chapters the text stands in the place of, or beside which it stands alone.
pub fn run(bytes: &[u8]) {
    let Some((first, text)) = chosen(bytes) else {
        return;
    };
    let named = Where::from_words(text);
    assert_eq!(Where::from_words(&named.to_string()), named);
    let place = usize::from(first) % (CHAPTERS.len() + 1);
    let mut sources = Sources::default();
    if first < 128 {
        for (index, (name, old)) in CHAPTERS.iter().enumerate() {
            let text = if index == place { text } else { *old };
            sources.add((*name).to_owned(), (*name).to_owned(), text.to_owned());
        }
    } else {
        for (number, text) in text.split(END).enumerate() {
            let name = format!("old-{number}.md");
            sources.add(name.clone(), name, text.to_owned());
        }
    }
    match Edition::of(sources) {
        Ok(old) => {
            places::check(&old.problems, &old.sources);
            let same = compare_over(&old, &old, 50);
            assert!(same.is_empty(), "{same:?}");
            let there = compare_over(&old, &TODAY, 50);
            let back = compare_over(&TODAY, &old, 50);
            assert_eq!(there.is_empty(), back.is_empty());
            assert_eq!(there.changes.is_empty(), back.changes.is_empty());
            for told in [there, back] {
                let json = serde_json::to_string(&told).expect("a comparison can be written");
                assert!(json.starts_with('{'));
            }
        }
        Err(rejected) => {
            assert!(!rejected.diagnostics.is_empty(), "rejected without a reason");
            places::check(&rejected.diagnostics, &rejected.sources);
        }
    }
}
