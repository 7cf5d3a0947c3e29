//! The JSON answers are what their schemas say, whatever the rulebook.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;

#[path = "json/commands.rs"]
mod commands;

use std::{
    fs,
    path::{Path, PathBuf},
};

use common::{json, oxyfolio};
use serde_json::{Value, json as value};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/schemas")
}

fn schema(name: &str) -> Value {
    let path = folder().join(format!("{name}.schema.json"));
    serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap()
}

/// A validator that checks formats too, and refuses a format it doesn't know.
fn validator(name: &str) -> jsonschema::Validator {
    jsonschema::draft202012::options()
        .should_validate_formats(true)
        .should_ignore_unknown_formats(false)
        .build(&schema(name))
        .unwrap()
}

fn holds(name: &str, answer: &Value) {
    let wrong: Vec<String> = validator(name)
        .iter_errors(answer)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect();
    assert!(wrong.is_empty(), "{wrong:#?}\n{answer:#}");
}

/// `OXYFOLIO_SCHEMAS=write` writes them anew.
#[test]
fn the_schemas_are_what_the_types_make() {
    let schemas = oxyfolio::cli::schemas();
    for (name, made) in &schemas {
        let path = folder().join(format!("{name}.schema.json"));
        if std::env::var_os("OXYFOLIO_SCHEMAS").is_some_and(|said| said == "write") {
            fs::write(&path, made).unwrap();
        }
        let kept = fs::read_to_string(&path).unwrap();
        assert!(
            kept == *made,
            "{name}: OXYFOLIO_SCHEMAS=write cargo test --test json"
        );
        assert!(jsonschema::draft202012::meta::is_valid(&schema(name)), "{name}");
    }
    // None is left over of a command that is gone.
    for entry in fs::read_dir(folder()).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let Some(name) = name.strip_suffix(".schema.json") else {
            continue;
        };
        let is_made = schemas.iter().any(|(made, _)| *made == name);
        assert!(is_made || name == "sarif-2.1.0", "{name}");
    }
}

#[test]
fn an_accepted_rulebook() {
    let rules = common::rules();
    for arguments in [&["check"][..], &["check", "--rules", rules.to_str().unwrap()]] {
        let (code, answer) = json(arguments);
        assert_eq!((code, &answer["ok"]), (0, &Value::Bool(true)));
        assert_eq!(answer["complete"], true);
        holds("check", &answer);
    }
}

#[test]
fn what_no_case_would_notice() {
    let rules = common::rules();
    let (code, answer) = json(&["check", "--uncovered", "--rules", rules.to_str().unwrap()]);
    assert_eq!((code, &answer["uncovered"]), (0, &value!([])));
    holds("check", &answer);
}

#[test]
fn an_accepted_rulebook_with_notes() {
    let copy = common::copy_of_rules();
    let annex = "# Annex\n\n```yaml policy\nid: our-own\nname: Our own\nvalue: 5 min\n```\n";
    fs::write(copy.path().join("90-annex.md"), annex).unwrap();
    let (code, answer) = json(&["check", "--rules", copy.path().to_str().unwrap()]);
    assert_eq!(code, 0, "{answer:#}");
    assert_eq!(answer["diagnostics"][0]["code"], "no-rationale");
    holds("check", &answer);
}

#[test]
fn rulebooks_with_errors() {
    let copy = common::copy_of_rules();
    let annex = "# Annex\n\nWhy.\n\n```yaml policy\nid: fill-limit\nname: Ours °C\nvalue: 5 mins\n```\n";
    fs::write(copy.path().join("90-annex.md"), annex).unwrap();
    let empty = tempfile::tempdir().unwrap();
    for (folder, code) in [(copy.path(), "duplicate-id"), (empty.path(), "no-chapters")] {
        let (status, answer) = json(&["check", "--rules", folder.to_str().unwrap()]);
        assert_eq!((status, &answer["ok"]), (1, &Value::Bool(false)));
        let found = answer["diagnostics"].as_array().unwrap();
        assert!(found.iter().any(|found| found["code"] == code), "{answer:#}");
        holds("check", &answer);
    }
}

#[test]
fn the_schemas_refuse_what_a_program_could_not_use() {
    let code = &*oxyfolio::RULEBOOK.short_digest;
    for (command, words) in [
        ("cards", &["--matches", code][..]),
        ("check", &[]),
        (
            "duration",
            &["--cylinder", "D", "--pressure", "1500 psi", "--flow", "2 L/min"],
        ),
        ("plan", &["tests/plans/transfer.yaml"]),
        ("drill", &["--seed", "3"]),
        ("review", &["tests/runs/clean.ndjson"]),
        ("setup", &["--device", "nasal-cannula", "--flow", "2 L/min"]),
        ("stock", &["tests/stock/in-order.csv", "--today", "2026-11-25"]),
    ] {
        let (_, answer) = json(&[&[command], words].concat());
        holds(command, &answer);
        let validator = validator(command);
        for (key, value) in answer.as_object().unwrap() {
            let mut lacking = answer.clone();
            lacking.as_object_mut().unwrap().remove(key);
            assert!(!validator.is_valid(&lacking), "{command} without {key}");
            // Everything has a type, and a list or an object is none that stands for another.
            let mut other = answer.clone();
            other[key] = if value.is_array() {
                value!({"a": 1})
            } else {
                value!([[]])
            };
            assert!(!validator.is_valid(&other), "{command} with another {key}");
        }
        let mut more = answer.clone();
        more["more"] = value!(1);
        assert!(!validator.is_valid(&more), "{command} with more");
        let mut no_day = answer.clone();
        no_day["book"]["effective"] = value!("2026-02-30");
        assert!(!validator.is_valid(&no_day), "{command}: formats are checked");
    }
}

#[test]
fn piped_answers_have_no_escape_codes() {
    let copy = common::copy_of_rules();
    let annex = "# Annex\n\n```yaml policy\nid: our-own\nname: Our own\nvalue: 5 mins\n```\n";
    fs::write(copy.path().join("90-annex.md"), annex).unwrap();
    let folder = copy.path().to_str().unwrap();
    for arguments in [
        &["check"][..],
        &["check", "--rules", folder],
        &["check", "--rules", folder, "--format", "json"],
        &["check", "--rules", folder, "--format", "sarif"],
        &[
            "duration",
            "--cylinder",
            "X",
            "--pressure",
            "1 psi",
            "--flow",
            "1 L/min",
        ],
    ] {
        let output = oxyfolio(arguments);
        for bytes in [output.stdout, output.stderr] {
            assert!(!bytes.contains(&0x1b), "{arguments:?}");
        }
    }
}

#[test]
fn the_same_book_gets_the_same_bytes_every_time() {
    let copy = common::copy_of_rules();
    for (name, text) in [
        (
            "05-a.md",
            "# A\n\n```yaml devise\n```\n\n```yaml policy\nid: a\n```\n",
        ),
        ("90-b.md", "# B\n\n```yaml policy\nid: a\nvalue: x\n```\n"),
    ] {
        fs::write(copy.path().join(name), text).unwrap();
    }
    for format in ["text", "json", "sarif"] {
        let arguments = [
            "check",
            "--rules",
            copy.path().to_str().unwrap(),
            "--format",
            format,
        ];
        let first = oxyfolio(&arguments).stdout;
        assert!(first.len() > 500);
        for _ in 0..5 {
            assert!(oxyfolio(&arguments).stdout == first, "{format}");
        }
    }
}

#[test]
fn errors_come_in_the_order_of_the_book() {
    let copy = common::copy_of_rules();
    for name in ["90-z.md", "05-a.md"] {
        let block = "```yaml policy\nid: x y\nvalue: 1 psy\nnmae: b\n```\n";
        fs::write(copy.path().join(name), format!("# A\n\n{block}\n{block}")).unwrap();
    }
    let (_, answer) = json(&["check", "--rules", copy.path().to_str().unwrap()]);
    let places: Vec<(String, u64, u64)> = answer["diagnostics"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|found| !found["place"].is_null())
        .map(|found| {
            let place = &found["place"];
            let number = |key: &str| place[key].as_u64().unwrap();
            let file = place["file"].as_str().unwrap().to_owned();
            (file, number("line"), number("column"))
        })
        .collect();
    assert!(places.len() > 10, "{answer:#}");
    assert!(places.is_sorted(), "{places:#?}");
}
