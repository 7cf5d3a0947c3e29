//! The answers of each command: nothing wrong, findings, and what can't be used.

use serde_json::Value;

use super::{common, holds};
use crate::common::{json, oxyfolio};

/// Asks with words between which a bar stands, for they may hold spaces.
fn asked(command: &str, words: &str) -> (i32, Value) {
    let mut arguments = vec![command];
    arguments.extend(words.split('|'));
    let (code, answer) = json(&arguments);
    holds(command, &answer);
    (code, answer)
}

#[test]
fn setups() {
    let (code, answer) = asked("setup", "--device|nasal-cannula|--flow|9 L/min");
    assert_eq!((code, &answer["ok"]), (1, &Value::Bool(false)));
    let levels: Vec<&Value> = answer["findings"].as_array().unwrap().iter().collect();
    assert!(levels.iter().any(|found| found["level"] == "unknown"));
    let (_, answer) = asked(
        "setup",
        "--device|non-rebreather|--flow|15 L/min|--group|adult|--condition|none|--spo2|80 %|--cylinder|D\
         |--pressure|2900 psi|--temperature|55 °C|--minutes|600",
    );
    assert!(answer["findings"].as_array().unwrap().len() > 1, "{answer:#}");
}

#[test]
fn durations() {
    for (words, code, question) in [
        (
            "--cylinder|D|--pressure|1500 psi|--flow|15 L/min|--now|23:50",
            0,
            "minutes",
        ),
        ("--cylinder|D|--pressure|1 psi|--flow|15 L/min", 0, "minutes"),
        (
            "--cylinder|D|--pressure|2900 psi|--leak|1 L/min|--minutes|10",
            1,
            "minutes",
        ),
        (
            "--cylinder|D|--pressure|2000 psi|--flow|0.5 L/min|--temperature|55 °C",
            0,
            "minutes",
        ),
        (
            "--cylinder|D|--pressure|2000 psi|--flow|0.5 L/min|--temperature|-30 °C",
            0,
            "minutes",
        ),
        (
            "--water-capacity|4.6 L|--pressure|1500 psi|--flow|2 L/min|--now|00:00",
            0,
            "minutes",
        ),
        ("--cylinder|D|--flow|15 L/min|--minutes|15", 0, "pressure"),
        ("--cylinder|D|--flow|15 L/min|--minutes|1500", 1, "pressure"),
        (
            "--water-capacity|4.6 L|--factor|0.28 L/psi|--pressure|1500 psi|--minutes|40",
            0,
            "flow",
        ),
    ] {
        let (status, answer) = asked("duration", words);
        assert_eq!(
            (status, &answer["question"]),
            (code, &Value::from(question)),
            "{words}"
        );
    }
}

#[test]
fn a_rulebook_with_errors_is_told_alike_by_every_command() {
    let empty = tempfile::tempdir().unwrap();
    let rules = empty.path().to_str().unwrap();
    for (command, words) in [
        ("check", ""),
        ("cards", "--matches|AAAA-AAAA|"),
        ("duration", "--cylinder|D|--pressure|1 psi|--flow|1 L/min|"),
        ("plan", "tests/plans/transfer.yaml|"),
        ("drill", ""),
        ("review", "tests/runs/clean.ndjson|"),
        ("setup", "--device|nasal-cannula|--flow|9 L/min|"),
        ("stock", "tests/stock/in-order.csv|"),
    ] {
        let (code, answer) = asked(command, &format!("{words}--rules|{rules}"));
        assert_eq!((code, &answer["ok"]), (1, &Value::Bool(false)), "{command}");
        assert_eq!(answer["diagnostics"][0]["code"], "no-chapters");
        assert_eq!(answer.as_object().unwrap().len(), 3, "{answer:#}");
    }
}

#[test]
fn drills() {
    for kind in ["duration", "order", "setup", "log"] {
        for level in ["easy", "medium", "hard"] {
            let (_, answer) = asked("drill", &format!("--kind|{kind}|--level|{level}|--count|3"));
            assert_eq!(answer["exercises"][0]["kind"], kind);
        }
    }
}

#[test]
fn reviews() {
    for (by, key) in [("rule", "by_rule"), ("month", "by_month"), ("crew", "by_crew")] {
        let files = "tests/runs/faults.ndjson|tests/runs/clean.ndjson|tests/runs/sparse.ndjson";
        let (code, answer) = asked("review", &format!("--by|{by}|{files}"));
        assert_eq!(code, 3);
        assert!(answer["summary"][key].as_array().unwrap().len() > 1, "{key}");
        assert!(answer["findings"].as_array().unwrap().len() > 10);
    }
    // Nothing half-written where a file can't be read.
    let output = oxyfolio(&["review", "tests/runs/no-such-file.ndjson", "--format", "json"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
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
    // A file with mistakes is answered like a book with mistakes, but the book is known.
    let (code, answer) = json(&["plan", concat!(env!("CARGO_MANIFEST_DIR"), "/Cargo.toml")]);
    assert_eq!((code, &answer["ok"]), (2, &Value::Bool(false)));
    holds("plan", &answer);
    assert_eq!(answer["edition"], "1");
}

#[test]
fn stocks() {
    let list = |name: &str| format!("{}/tests/stock/{name}", env!("CARGO_MANIFEST_DIR"));
    for (name, status) in [("larkmere.csv", 1), ("in-order.csv", 0), ("mistakes.csv", 3)] {
        let (code, answer) = json(&["stock", &list(name), "--today", "2026-11-25"]);
        assert_eq!((code, &answer["ok"]), (status, &Value::Bool(status == 0)));
        holds("stock", &answer);
    }
    // A list of which no row can be read is answered like a book with mistakes, but the book is known.
    let (code, answer) = json(&["stock", concat!(env!("CARGO_MANIFEST_DIR"), "/Cargo.toml")]);
    assert_eq!((code, &answer["ok"]), (2, &Value::Bool(false)));
    holds("stock", &answer);
    assert_eq!(answer["edition"], "1");
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
