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

use std::{fs, path::Path};

use common::{json, oxyfolio};
use serde_json::Value;

fn schema(name: &str) -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/schemas/{name}.schema.json"));
    serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap()
}

fn holds(name: &str, answer: &Value) {
    let validator = jsonschema::draft202012::options().build(&schema(name)).unwrap();
    let wrong: Vec<String> = validator
        .iter_errors(answer)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect();
    assert!(wrong.is_empty(), "{wrong:#?}\n{answer:#}");
}

#[test]
fn every_schema_is_a_schema() {
    for name in ["check", "setup", "duration", "plan", "stock", "cards"] {
        assert!(jsonschema::draft202012::meta::is_valid(&schema(name)), "{name}");
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
    assert_eq!((code, &answer["uncovered"]), (0, &serde_json::json!([])));
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
fn the_schema_refuses_what_a_program_could_not_use() {
    let (_, answer) = json(&["check"]);
    let validator = jsonschema::draft202012::options()
        .build(&schema("check"))
        .unwrap();
    for key in ["ok", "diagnostics", "cautions", "book"] {
        let mut lacking = answer.clone();
        lacking.as_object_mut().unwrap().remove(key);
        assert!(!validator.is_valid(&lacking), "{key}");
    }
}

#[test]
fn setup_duration_and_rejected_books_of_other_commands() {
    let duration = [
        "duration",
        "--cylinder",
        "D",
        "--pressure",
        "1500 psi",
        "--flow",
        "15 L/min",
    ];
    holds("duration", &json(&duration).1);
    for flow in ["2 L/min", "9 L/min"] {
        holds(
            "setup",
            &json(&["setup", "--device", "nasal-cannula", "--flow", flow]).1,
        );
    }
    let empty = tempfile::tempdir().unwrap();
    let (status, answer) = json(&[&duration[..], &["--rules", empty.path().to_str().unwrap()]].concat());
    assert_eq!(status, 1);
    holds("check", &answer);
}

#[test]
fn plans() {
    let plan = |name: &str| format!("{}/tests/plans/{name}", env!("CARGO_MANIFEST_DIR"));
    for (name, status) in [("transfer.yaml", 0), ("short.json", 1)] {
        let (code, answer) = json(&["plan", &plan(name), "--add", "portable", "--add", "M"]);
        assert_eq!(code, status);
        holds("plan", &answer);
        assert!(answer["add"].as_array().unwrap().len() > 3);
    }
    // A file with mistakes is answered like a book with mistakes.
    let (code, answer) = json(&["plan", concat!(env!("CARGO_MANIFEST_DIR"), "/Cargo.toml")]);
    assert_eq!((code, &answer["ok"]), (2, &Value::Bool(false)));
    holds("check", &answer);
}

#[test]
fn stocks() {
    let list = |name: &str| format!("{}/tests/stock/{name}", env!("CARGO_MANIFEST_DIR"));
    for (name, status) in [("larkmere.csv", 1), ("in-order.csv", 0), ("mistakes.csv", 3)] {
        let (code, answer) = json(&["stock", &list(name), "--today", "2026-11-25"]);
        assert_eq!((code, &answer["ok"]), (status, &Value::Bool(status == 0)));
        holds("stock", &answer);
    }
    // A list of which no row can be read is answered like a book with mistakes.
    let (code, answer) = json(&["stock", concat!(env!("CARGO_MANIFEST_DIR"), "/Cargo.toml")]);
    assert_eq!((code, &answer["ok"]), (2, &Value::Bool(false)));
    holds("check", &answer);
}

#[test]
fn cards() {
    let out = tempfile::tempdir().unwrap();
    let arguments = [
        "cards",
        "--size",
        "a6",
        "--paper",
        "a4",
        "--out",
        out.path().to_str().unwrap(),
    ];
    let (status, answer) = json(&arguments);
    assert_eq!(status, 0);
    holds("cards", &answer);
    let rules = common::rules();
    let code = &*oxyfolio::RULEBOOK.short_digest;
    for (code, status) in [(code, 0), ("AAAA-AAAA", 1)] {
        let (ended, answer) = json(&["cards", "--matches", code, "--older", rules.to_str().unwrap()]);
        assert_eq!(ended, status);
        holds("cards", &answer);
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
