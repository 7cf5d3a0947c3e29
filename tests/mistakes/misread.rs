//! One value that can't be read, or one key that is misspelled, is one mistake: nothing is called missing or unknown elsewhere
//! because of it.

use oxyfolio::{
    book::OfficePaper,
    compile::{diagnostic::Level, skeleton::Start},
    quantity::{PressureUnit, TemperatureUnit},
};

use crate::{
    book::{compiled, mistakes},
    decided::filled,
};

/// What stands in the place of a value.
const SCRIBBLES: [&str; 3] = ["???", "", "[[?], ?]"];

/// Said of what a value means, not of what is there: any text is a connection's gas.
const MEANT: [&str; 2] = ["case-failed", "only-oxygen-may-be-mated"];

/// A small book in order.
fn book() -> Vec<(String, String)> {
    let start = Start::new(
        "Upper Vale",
        PressureUnit::Psi,
        TemperatureUnit::Celsius,
        OfficePaper::A4,
    );
    let chapters = start.unwrap().chapters();
    chapters
        .into_iter()
        .map(|(name, text)| (name.to_owned(), filled(&text, None)))
        .collect()
}

/// Whether a line gives a key; the key and its value. What a case says nothing names.
fn key_of(line: &str) -> Option<(&str, &str)> {
    let (head, value) = line.split_once(": ")?;
    let key = head.trim_start_matches([' ', '-']);
    key.bytes()
        .all(|byte| byte.is_ascii_lowercase() || byte == b'-')
        .then_some((head, value))
}

/// Compiles the book with each line that gives a key replaced, and tells what is said of other lines.
fn said_elsewhere(edits: impl Fn(&str, &str) -> Vec<String>) -> (usize, Vec<String>) {
    let (mut tried, mut elsewhere) = (0, Vec::new());
    let book = book();
    for (index, (name, text)) in book.iter().enumerate() {
        let lines: Vec<&str> = text.lines().collect();
        let mut in_rule = false;
        for (number, line) in lines.iter().enumerate() {
            if line.starts_with("```") {
                in_rule = line.starts_with("```yaml ") && *line != "```yaml case";
                continue;
            }
            let Some((head, value)) = key_of(line).filter(|_| in_rule) else {
                continue;
            };
            for edited in edits(head, value) {
                let mut lines = lines.clone();
                lines[number] = &edited;
                let mut chapters = book.clone();
                chapters[index].1 = lines.join("\n") + "\n";
                let Err(rejected) = compiled(&chapters) else {
                    continue;
                };
                tried += 1;
                for found in &rejected.diagnostics {
                    let here = found.span.is_some_and(|span| {
                        let source = rejected.sources.get(span.file).unwrap();
                        source.name == *name && rejected.sources.line_column(span).line == number + 1
                    });
                    if found.level == Level::Error && !here && !MEANT.contains(&found.code) {
                        elsewhere.push(format!("{name}:{} {edited:?}: {}", number + 1, found.message));
                    }
                }
            }
        }
    }
    (tried, elsewhere)
}

#[test]
fn a_misread_value_is_told_once_and_where_it_stands() {
    let (tried, elsewhere) = said_elsewhere(|head, _| {
        SCRIBBLES
            .iter()
            .map(|scribble| format!("{head}: {scribble}"))
            .collect()
    });
    assert!(tried > 300, "{tried}");
    assert_eq!(elsewhere, Vec::<String>::new());
}

#[test]
fn a_misspelled_key_is_told_once_and_where_it_stands() {
    let (tried, elsewhere) = said_elsewhere(|head, value| vec![format!("{head}x: {value}")]);
    assert!(tried > 150, "{tried}");
    assert_eq!(elsewhere, Vec::<String>::new());
}

mistakes! {
    recheck_misread_and_quoted [Marked("not-a-quantity")] {
        "06-saturation-targets.md": "try without, and watch.\"\nrecheck: 5 min" => "try without, and watch.\"\nrecheck: ‹five› minutes",
    }
    flow_of_a_group_misread [Marked("missing-unit")] {
        "05-delivery-devices.md": "  newborn: 0.5 to 1 L/min" => "  newborn: 0.5 to ‹1›",
    }
    condition_misspelled_and_named [Marked("unknown-key")] {
        "06-saturation-targets.md": "condition: stroke\ncondition-name" => "‹conditon›: stroke\ncondition-name",
    }
    half_of_a_pair_misspelled [Marked("unknown-key")] {
        "06-saturation-targets.md": "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: 94 to 98 %\nstart: nasal-cannula at 2 L/min\nurgent-below: 85 %"
            => "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: 94 to 98 %\nstart: nasal-cannula at 2 L/min\n‹urgent-belw›: 85 %",
    }
    only_agency_unreadable [Marked("unreadable-yaml")] {
        "01-about-this-book.md": "effective: 2026-11-01" => "‹\t›effective: 2026-11-01",
    }
}
