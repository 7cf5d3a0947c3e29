//! Since the last edition: the desk says what `compare` says.

use oxyfolio::compare::{
    Comes, compare,
    edition::{Where, read},
};
use oxyfolio::desk::Options;

use super::{
    common,
    repository::Repository,
    support::{as_written, open, open_with},
};

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
    let desk = open(rules.path());
    for (with, words) in [
        ("no-such-folder", "cannot read the folder `no-such-folder`"),
        ("git:HEAD", "is in no git repository"),
        ("git:--help", "can't be compared"),
    ] {
        let page = as_written(&desk.page(&format!("/since?with={with}")));
        assert!(page.contains(words), "{with}: {page}");
    }
    assert!(desk.page("/since").contains("Choose the edition"));
}

/// The last edition is the one in git: its revisions are offered, and one of them is compared with the folder as it is.
#[test]
fn a_revision_of_the_repository_is_compared_with_the_folder() {
    const REASON: &str = "So we plan for half as much again as the";
    let repository = Repository::new();
    let rules = repository.rules();
    let desk = open_with(Options {
        rules: Some(rules.clone()),
        since: Some("git:HEAD".to_owned()),
        ..Options::default()
    });
    let page = desk.page("/since");
    assert!(
        page.contains("Nothing changed in what the rulebook says."),
        "{page}"
    );
    // Both revisions are offered, the last one first.
    common::edit(
        &rules,
        CHAPTER,
        "usual: 15 L/min\noxygen: 60",
        "usual: 12 L/min\noxygen: 60",
    );
    repository.commit("two");
    let page = desk.wait_for("/since", |page| page.contains(" two</li>"));
    assert!(page.find(" two</li>") < page.find(" one</li>"), "{page}");
    // An edit that is saved and not committed, against the last revision and against the first.
    common::edit(
        &rules,
        "10-how-long-it-lasts.md",
        "value: 50 %\n",
        "value: 75 %\n",
    );
    let page = desk.wait_for("/since", |page| page.contains("value: 50 % → 75 % (stricter)"));
    assert!(!page.contains("usual flow: 15 L/min → 12 L/min"), "{page}");
    assert!(
        page.contains("The reason above it was not changed: read it, does it still hold?"),
        "{page}"
    );
    assert!(
        page.contains(
            "<code>e-for-a-journey-of-26</code>: only the new book says warn policy planning-margin"
        ),
        "{page}"
    );
    let page = desk.page("/since?with=git:one");
    for change in ["value: 50 % → 75 % (stricter)", "usual flow: 15 L/min → 12 L/min"] {
        assert!(page.contains(change), "{change}: {page}");
    }
    // The reason is put right, and the reminder goes.
    common::edit(
        &rules,
        "10-how-long-it-lasts.md",
        REASON,
        "So we plan for three quarters more than the",
    );
    let page = desk.wait_for("/since", |page| page.contains("three quarters more than"));
    assert!(!page.contains("The reason above it was not changed"), "{page}");
    assert!(as_written(&desk.page("/since?with=git:three")).contains("has no revision `three`"));
}
