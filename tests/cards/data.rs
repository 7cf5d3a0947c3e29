//! What each card and sheet is set from, a snapshot for each. `INSTA_UPDATE=always cargo test --test cards data` accepts.

use std::collections::BTreeSet;

use serde_json::Value;

use super::printed::printed;

/// JSON for reading: what fits on a line stands on one.
fn readable(value: &Value, indent: usize) -> String {
    let short = value.to_string();
    if short.len() + indent <= 110 {
        return short;
    }
    let pad = " ".repeat(indent + 2);
    let lines: Vec<String> = match value {
        Value::Array(items) => items
            .iter()
            .map(|item| format!("{pad}{}", readable(item, indent + 2)))
            .collect(),
        Value::Object(fields) => fields
            .iter()
            .map(|(key, item)| format!("{pad}\"{key}\": {}", readable(item, indent + 2)))
            .collect(),
        _ => return short,
    };
    let (open, close) = if value.is_array() { ('[', ']') } else { ('{', '}') };
    format!("{open}\n{}\n{}{close}", lines.join(",\n"), " ".repeat(indent))
}

#[test]
fn the_data_of_every_card_and_sheet_is_as_it_was_accepted() {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path("data");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    let _settings = settings.bind_to_scope();
    let mut names = BTreeSet::new();
    for document in [
        "cards-id-1-alone",
        "check-off-letter",
        "inspection-log-letter",
        "shut-down-poster-tabloid",
    ] {
        for card in &printed()[document].document.cards {
            let mut data = serde_json::to_value(card).unwrap();
            // The code changes with every letter of the book and is read back from the page elsewhere; so does the line.
            for changing in ["qr", "place"] {
                data.as_object_mut().unwrap().remove(changing);
            }
            let kind = if document.starts_with("check-off") {
                "check-off-"
            } else {
                ""
            };
            // Several cards may come of one rule, such as one for each cylinder.
            let name = (1..)
                .map(|number| match number {
                    1 => format!("{kind}{}", card.id),
                    number => format!("{kind}{}-{number}", card.id),
                })
                .find(|name| !names.contains(name))
                .unwrap();
            insta::assert_snapshot!(name.clone(), readable(&data, 0));
            names.insert(name);
        }
    }
    assert!(names.len() > 30, "{names:?}");
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cards/data");
    for entry in std::fs::read_dir(folder).unwrap() {
        let file = entry.unwrap().file_name().into_string().unwrap();
        let name = file.split('.').next().unwrap();
        assert!(names.contains(name), "{file} is of no card: delete it");
    }
}
