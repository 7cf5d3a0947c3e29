//! Findings that the book allows.

use oxyfolio::compile::diagnostic::Level;

use crate::book::{Edit, compiled, demo, edited, findings, found, is_allowed, snapshot};

#[test]
fn the_demonstration_has_no_findings() {
    let found = compiled(&demo())
        .unwrap_or_else(|rejected| panic!("{}", rejected.render(false)))
        .notes;
    let codes: Vec<&str> = found.iter().map(|found| found.code).collect();
    assert!(codes.is_empty(), "{codes:?}");
}

findings! {
    allow_that_allows_nothing ["unused-allow"] {
        "03-cylinders-and-connections.md": "  name: Oxygen large-cylinder thread\n"
            => "  name: Oxygen large-cylinder thread\n  allow:\n    ‹connection-never-used›: \"No longer so.\"\n",
    }
    allow_without_a_reason ["not-text"] {
        "03-cylinders-and-connections.md": "  name: Oxygen large-cylinder thread\n"
            => "  name: Oxygen large-cylinder thread\n  allow:\n    connection-never-used: ‹\"\"›\n",
    }
    allow_of_a_lint_misspelled ["unknown-lint"] {
        "03-cylinders-and-connections.md": "  name: Oxygen large-cylinder thread\n"
            => "  name: Oxygen large-cylinder thread\n  allow:\n    ‹connection-never-use›: \"No cylinder has it.\"\n",
    }
    allow_of_a_lint_that_nobody_knows ["unknown-lint"] {
        "03-cylinders-and-connections.md": "  name: Oxygen large-cylinder thread\n"
            => "  name: Oxygen large-cylinder thread\n  allow:\n    ‹everything›: \"It is right.\"\n",
    }
    allow_misspelled ["unknown-key"] {
        "03-cylinders-and-connections.md": "  name: Oxygen large-cylinder thread\n"
            => "  name: Oxygen large-cylinder thread\n  ‹alow›:\n    connection-never-used: \"No cylinder has it.\"\n",
    }
    allow_as_a_list ["not-a-mapping"] {
        "03-cylinders-and-connections.md": "  name: Oxygen large-cylinder thread\n"
            => "  name: Oxygen large-cylinder thread\n  allow: ‹[connection-never-used]›\n",
    }
}

#[test]
fn an_error_that_is_allowed_becomes_a_note_with_its_reason() {
    let edit = Edit {
        chapter: "05-delivery-devices.md",
        find: "  3 L/min: 32 %\n",
        write: "  3 L/min: 26 %\nallow:\n  oxygen-falls-with-flow: \"Measured so.\"\n",
    };
    // The mapping of flows must stay whole.
    let after = Edit {
        chapter: "05-delivery-devices.md",
        find: "  4 L/min: 36 %\n  5 L/min: 40 %\n  6 L/min: 44 %\n",
        write: "",
    };
    let (chapters, _) = edited(&[edit, after]);
    let mut compiled = compiled(&chapters).unwrap_or_else(|rejected| panic!("{}", rejected.render(false)));
    compiled
        .notes
        .retain(|note| note.code == "oxygen-falls-with-flow");
    assert_eq!(compiled.notes.len(), 1);
    assert_eq!(compiled.notes[0].level, Level::Note);
    assert!(is_allowed(&compiled.notes[0]));
    assert_eq!(compiled.notes[0].hints, ["allowed: Measured so."]);
    snapshot("an_error_that_is_allowed", &compiled.notes, &compiled.sources);
}

#[test]
fn prose_is_allowed_by_the_rule_it_gives_reasons_for_and_by_the_agency() {
    let used = Edit {
        chapter: "06-saturation-targets.md",
        find: "Ask in that order, then go up.",
        write: "Ask for the ECG, then go up.",
    };
    let by_rule = Edit {
        chapter: "06-saturation-targets.md",
        find: "- id: below-target\n",
        write: "- id: below-target\n  allow:\n    abbreviation-not-explained: \"Every crew knows it.\"\n",
    };
    let by_agency = Edit {
        chapter: "01-about-this-book.md",
        find: "edition: \"1\"\n",
        write: "edition: \"1\"\nallow:\n  abbreviation-not-explained: \"Every crew knows it.\"\n",
    };
    let elsewhere = Edit {
        chapter: "06-saturation-targets.md",
        find: "id: co2-too-much-oxygen\n",
        write: "id: co2-too-much-oxygen\nallow:\n  abbreviation-not-explained: \"Every crew knows it.\"\n",
    };
    let again = || Edit { ..used };
    let codes =
        |edits: &[Edit]| -> Vec<&str> { found(&edited(edits).0).0.iter().map(|found| found.code).collect() };
    assert!(codes(&[again(), by_rule]).is_empty());
    assert!(codes(&[again(), by_agency]).is_empty());
    assert_eq!(
        codes(&[again(), elsewhere]),
        ["abbreviation-not-explained", "unused-allow"]
    );
}
