//! Since the last edition: the desk says what `compare` says.

use oxyfolio::compare::{
    Comes, compare,
    edition::{Where, read},
};
use oxyfolio::desk::Options;

use super::{common, support::open_with};

const CHAPTER: &str = "05-delivery-devices.md";
const OLD: &str = "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %";
const NEW: &str = "flow: 12 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %";

#[test]
fn the_page_says_what_compare_says() {
    // The old edition has errors today, as one that a director takes back may have; the new one has none.
    let old = common::copy_of_rules();
    common::edit(old.path(), CHAPTER, OLD, NEW);
    let rules = common::rules();
    let desk = open_with(Options {
        rules: Some(rules.clone()),
        since: Some(old.path().display().to_string()),
        ..Options::default()
    });
    let page = desk.page("/since");
    let before = read(&Where::Folder(old.path().to_owned()), &rules).unwrap();
    let after = read(&Where::Folder(rules.clone()), &rules).unwrap();
    let comparison = compare(&before, &after);
    assert!(!comparison.changes.is_empty() && comparison.grid.changed > 0);
    let escaped = |text: String| {
        text.replace('&', "&amp;")
            .replace('<', "&lt;")
            .replace('>', "&gt;")
            .replace('"', "&quot;")
    };
    for change in &comparison.changes {
        let words = escaped(change.in_short(400));
        assert!(page.contains(&words), "{words}: {page}");
    }
    for kind in &comparison.grid.kinds {
        assert!(
            page.contains(&escaped(kind.example.message.clone())),
            "{}",
            kind.example.message
        );
    }
    assert!(page.contains(&comparison.grid.changed.to_string()));
    // Each example can be tried: what appears is then found, and what goes is not.
    let links = page
        .split("href=\"")
        .map(|rest| rest.split('"').next().unwrap())
        .filter(|link| link.starts_with("/try?"));
    let mut tried = 0;
    for (link, kind) in links.zip(&comparison.grid.kinds) {
        let answer = desk.page(&link.replace("&amp;", "&"));
        assert!(!answer.contains("Not yet asked"), "{link}: {answer}");
        if kind.example.seen.is_none() && kind.comes == Comes::Appears {
            let message = escaped(kind.example.message.clone());
            assert!(answer.contains(&message), "{link}: {message}");
        }
        tried += 1;
    }
    assert_eq!(tried, comparison.grid.kinds.len());
}

#[test]
fn an_edition_that_cannot_be_read_is_told() {
    let rules = common::copy_of_rules();
    let desk = super::support::open(rules.path());
    for (with, words) in [
        ("no-such-folder", "cannot read the folder `no-such-folder`"),
        ("git:HEAD", "is in no git repository"),
        ("git:--help", "can't be compared"),
    ] {
        let page = desk.page(&format!("/since?with={with}"));
        assert!(page.contains(words), "{with}: {page}");
    }
    assert!(desk.page("/since").contains("Choose the edition"));
}
