//! `check --format sarif` against the schema of the standard, and the places in it against the text.
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

use common::oxyfolio;
use serde_json::Value;

const LANGUAGE_AS_PUBLISHED: &str = "^[a-zA-Z]{2}|^[a-zA-Z]{2}-[a-zA-Z]{2}]?$";
const LANGUAGE: &str = "^[a-zA-Z]{2}(-[a-zA-Z]{2})?$";

fn sarif(folder: &Path) -> (i32, Value) {
    let output = oxyfolio(&["check", "--rules", folder.to_str().unwrap(), "--format", "sarif"]);
    let log = serde_json::from_slice(&output.stdout).unwrap();
    valid(&log);
    (output.status.code().unwrap(), log)
}

fn valid(log: &Value) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/schemas/sarif-2.1.0.schema.json");
    // Two patterns of the standard's schema have a bracket too many, which the validator rightly refuses.
    let text = fs::read_to_string(path).unwrap();
    assert_eq!(text.matches(LANGUAGE_AS_PUBLISHED).count(), 2);
    let schema: Value = serde_json::from_str(&text.replace(LANGUAGE_AS_PUBLISHED, LANGUAGE)).unwrap();
    let validator = jsonschema::draft7::options()
        .should_validate_formats(true)
        .build(&schema)
        .unwrap();
    let wrong: Vec<String> = validator
        .iter_errors(log)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect();
    assert!(wrong.is_empty(), "{wrong:#?}\n{log:#}");
}

fn with_annex(text: &str) -> tempfile::TempDir {
    let copy = common::copy_of_rules();
    fs::write(copy.path().join("90-annex °.md"), text).unwrap();
    copy
}

#[test]
fn a_good_book_has_no_results_and_carries_the_cautions() {
    let (status, log) = sarif(&common::rules());
    assert_eq!(status, 0);
    let run = &log["runs"][0];
    assert_eq!(run["results"], Value::Array(Vec::new()));
    assert_eq!(run["tool"]["driver"]["name"], "oxyfolio");
    assert_eq!(run["tool"]["driver"]["version"], env!("CARGO_PKG_VERSION"));
    assert_eq!(run["properties"]["cautions"].as_array().unwrap().len(), 3);
    assert_eq!(run["properties"]["book"]["digest"].as_str().unwrap().len(), 64);
}

#[test]
fn a_result_has_its_rule_its_words_and_its_place() {
    let text = "# Annex °\n\nWhy.\n\n```yaml policy\nid: our-own\nname: \"½ °C 𝛼\"\nvalue: 5 psy\n```\n";
    let copy = with_annex(text);
    let (status, log) = sarif(copy.path());
    assert_eq!(status, 1);
    let run = &log["runs"][0];
    assert_eq!(run["columnKind"], "unicodeCodePoints");
    let result = &run["results"][0];
    assert_eq!(result["ruleId"], "unknown-unit");
    assert_eq!(result["level"], "error");
    let rule =
        &run["tool"]["driver"]["rules"][usize::try_from(result["ruleIndex"].as_u64().unwrap()).unwrap()];
    assert_eq!(rule["id"], "unknown-unit");
    let words = result["message"]["text"].as_str().unwrap();
    let help = rule["help"]["text"].as_str().unwrap();
    assert!(
        words.contains("\nhelp: ") && words.contains(help),
        "{words} | {help}"
    );
    let place = &result["locations"][0]["physicalLocation"];
    let uri = place["artifactLocation"]["uri"].as_str().unwrap();
    assert!(
        uri.starts_with("file:///") && uri.ends_with("/90-annex%20%C2%B0.md"),
        "{uri}"
    );
    let region = &place["region"];
    let number = |key: &str| usize::try_from(region[key].as_u64().unwrap()).unwrap();
    let line = text.lines().nth(number("startLine") - 1).unwrap();
    let marked: String = line
        .chars()
        .skip(number("startColumn") - 1)
        .take(number("endColumn") - number("startColumn"))
        .collect();
    assert_eq!(marked, "psy");
    assert_eq!(number("endLine"), number("startLine"));
}

#[test]
fn labels_are_related_locations() {
    let block = "Why.\n\n```yaml policy\nid: our-own\nname: A\nvalue: 5 min\n```\n\n";
    let copy = with_annex(&format!("# Annex\n\n{block}{block}"));
    let (_, log) = sarif(copy.path());
    let result = &log["runs"][0]["results"][0];
    assert_eq!(result["ruleId"], "duplicate-id");
    let related = &result["relatedLocations"][0];
    assert_eq!(related["message"]["text"], "first defined here");
    assert_eq!(related["physicalLocation"]["region"]["startLine"], 6);
}

#[test]
fn a_note_is_a_note_and_a_book_error_has_no_place() {
    let copy = with_annex("# Annex\n\n```yaml policy\nid: our-own\nname: A\nvalue: 5 min\n```\n");
    let (status, log) = sarif(copy.path());
    assert_eq!(status, 0);
    assert_eq!(log["runs"][0]["results"][0]["level"], "note");
    let empty = tempfile::tempdir().unwrap();
    let (status, log) = sarif(empty.path());
    assert_eq!(status, 1);
    assert_eq!(log["runs"][0]["results"][0]["ruleId"], "no-chapters");
    assert!(log["runs"][0]["results"][0].get("locations").is_none());
}

#[test]
fn the_built_in_book_answers_too() {
    let output = oxyfolio(&["check", "--format", "sarif"]);
    valid(&serde_json::from_slice(&output.stdout).unwrap());
}

#[test]
fn only_check_answers_in_sarif() {
    let duration = [
        "duration",
        "--cylinder",
        "D",
        "--pressure",
        "1500 psi",
        "--flow",
        "15 L/min",
    ];
    let setup = ["setup", "--device", "nasal-cannula", "--flow", "2 L/min"];
    for arguments in [&duration[..], &setup, &["cards"]] {
        let output = oxyfolio(&[arguments, &["--format", "sarif"]].concat());
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty());
        assert_eq!(
            String::from_utf8(output.stderr).unwrap(),
            "error: --format sarif: only `check` answers in SARIF; write text or json\n"
        );
    }
}
