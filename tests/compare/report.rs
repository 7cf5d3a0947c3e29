//! The page for sign-off, taken apart again, and the cards to be printed anew.

use std::path::Path;

use oxyfolio::cards::reprint::{self, Why};

use crate::{books::edition, common};

fn printed(new: &Path, paper: &str) -> (String, usize) {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("edit.pdf");
    let rules = common::rules();
    let output = common::oxyfolio(&[
        "compare",
        rules.to_str().unwrap(),
        new.to_str().unwrap(),
        "--report",
        file.to_str().unwrap(),
        "--paper",
        paper,
    ]);
    assert_eq!(
        output.status.code(),
        Some(1),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let pages = lopdf::Document::load(&file).unwrap().get_pages().len();
    (common::poppler("pdftotext", &["-layout"], &file), pages)
}

#[test]
fn a_page_to_sign() {
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "10-how-long-it-lasts.md",
        "value: 200 psi\n",
        "value: 250 psi\n",
    );
    for paper in ["a4", "letter"] {
        let (text, pages) = printed(copy.path(), paper);
        assert_eq!(pages, 1, "{text}");
        for part in [
            "What this edit changes",
            "value: 200 psi → 250 psi",
            "STRICTER",
            "Name, licence",
            "Signature",
            "Date",
            "more: see the text of the comparison",
            "Local protocol and medical direction come first.",
            "page 1 of 1",
            "print the whole set, and collect the old one",
            "A number changed and the reason above it did not: read again whether it still holds, for policy Residual",
            "raise “edition”, set its dates",
        ] {
            assert!(text.contains(part), "{part}: {text}");
        }
    }
}

/// A single number that moves all minutes: the room that other rules would take is given to what follows from it.
#[test]
fn room_that_changed_rules_leave_is_used() {
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "10-how-long-it-lasts.md",
        "value: 200 psi\n",
        "value: 300 psi\n",
    );
    let (text, pages) = printed(copy.path(), "letter");
    assert_eq!(pages, 1, "{text}");
    let examples = text.matches("; for example ").count();
    let minutes = text.matches(" shorter, ").count();
    assert!(
        examples + minutes > 12,
        "{examples} examples and {minutes} cylinders: {text}"
    );
}

/// So many and so long changes that they can't all stand on a page: the others are counted, and nothing is cut.
#[test]
fn too_much_for_a_page_is_counted() {
    let copy = common::copy_of_rules();
    for entry in std::fs::read_dir(copy.path()).unwrap() {
        let path = entry.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap();
        let text = text.replace(
            "    why: \"",
            "    why: \"Because of this, as everybody knows, and of that: ",
        );
        let text = text
            .replace("  name: ", "  name: The ")
            .replace("name: The \"", "name: \"The ");
        std::fs::write(path, text).unwrap();
    }
    let (text, pages) = printed(copy.path(), "letter");
    assert!(pages <= 2, "{pages}");
    assert!(
        text.contains("Signature") && text.contains("more: see the text of the comparison"),
        "{text}"
    );
    assert!(text.contains(&format!("page {pages} of {pages}")), "{text}");
}

#[test]
fn only_cards_that_say_something_else_are_told() {
    let cards = |edits: &[crate::books::Edit<'_>]| {
        let cards = reprint::cards(&edition(&[]), &edition(edits)).unwrap();
        let other = cards.into_iter().filter(|card| card.why != Why::Same);
        other
            .map(|card| format!("{}: {}", card.title, card.why.words()))
            .collect::<Vec<_>>()
    };
    assert_eq!(cards(&[]), Vec::<String>::new());
    // Another edition and another date: every card has another code, and says the same.
    assert_eq!(
        cards(&[
            ("edition: \"1\"", "edition: \"2\""),
            ("review: 2027-11-01", "review: 2027-10-01")
        ]),
        Vec::<String>::new()
    );
    assert_eq!(
        cards(&[(
            "notes:\n  - \"Oximeter on the right hand",
            "notes:\n  - \"Oximeter on the right palm"
        )]),
        ["Newborn targets: changed"]
    );
    // The value is quoted in a step, and stands in a table.
    let changed = cards(&[(
        "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %",
        "flow: 10 to 15 L/min\nusual: 12 L/min\noxygen: 60 to 95 %",
    )]);
    assert!(
        changed.contains(&"Devices at a glance: changed".to_owned()),
        "{changed:?}"
    );
    assert!(
        changed.contains(&"Put on a reservoir mask: changed".to_owned()),
        "{changed:?}"
    );
    // The agency stands on every card.
    let all = cards(&[(
        "name: Larkmere Valley Ambulance Service",
        "name: Larkmere Ambulance Service",
    )]);
    assert!(all.len() > 30);
    let gone = cards(&[(
        "- id: make-ready\n  title: Make ready\n  layout: steps\n  sizes: [ID-1, 3 x 5 in, A7, A6]\n  procedures: [make-ready]\n",
        "",
    )]);
    assert_eq!(gone, ["Make ready: gone, to be collected"]);
}
