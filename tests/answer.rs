//! `oxyfolio answer`: one request a line, one answer a line, whatever the line.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;

#[path = "answer/clients.rs"]
mod clients;
#[path = "answer/hostile.rs"]
mod hostile;
#[path = "answer/mistakes.rs"]
mod mistakes;

use std::{
    fs,
    io::{BufRead as _, BufReader, Write as _},
    path::Path,
    process::{Child, Command, Output, Stdio},
};

use common::oxyfolio;
use serde_json::{Value, json};

fn start(arguments: &[&str]) -> Child {
    Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
        .arg("answer")
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

/// Everything the process says to an input.
fn said(arguments: &[&str], input: &[u8]) -> Output {
    let mut child = start(arguments);
    let mut stdin = child.stdin.take().unwrap();
    let input = input.to_vec();
    let writer = std::thread::spawn(move || stdin.write_all(&input));
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap().unwrap();
    output
}

fn validator(name: &str) -> jsonschema::Validator {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/schemas/{name}.schema.json"));
    let schema: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    jsonschema::draft202012::options()
        .should_validate_formats(true)
        .should_ignore_unknown_formats(false)
        .build(&schema)
        .unwrap()
}

fn errors(validator: &jsonschema::Validator, value: &Value) -> Vec<String> {
    let told = |error: jsonschema::ValidationError<'_>| format!("{}: {error}", error.instance_path());
    validator.iter_errors(value).map(told).collect()
}

/// The lines that answer an input, each held against the schema.
fn answers(input: &[u8]) -> Vec<Value> {
    let output = said(&[], input);
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stderr.is_empty());
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(text.is_empty() || text.ends_with('\n'));
    let schema = validator("answer");
    text.lines()
        .map(|line| {
            let answer: Value = serde_json::from_str(line).unwrap();
            let wrong = errors(&schema, &answer);
            assert!(wrong.is_empty(), "{wrong:#?}\n{line}");
            answer
        })
        .collect()
}

/// The one answer to one request.
fn answer(request: &str) -> Value {
    let mut answers = answers(request.as_bytes());
    assert_eq!(answers.len(), 1, "{request}");
    answers.remove(0)
}

/// Takes line breaks and indents out of JSON, and nothing else.
fn on_one_line(pretty: &str) -> String {
    pretty
        .lines()
        .map(|line| line.trim_start().replacen("\": ", "\":", 1))
        .collect()
}

/// Requests, and the arguments of the command that answers the same.
fn requests() -> Vec<(Value, Vec<String>, i32)> {
    let words = |words: &str| words.split('|').map(str::to_owned).collect::<Vec<_>>();
    let plan = |name: &str| fs::read_to_string(format!("tests/plans/{name}")).unwrap();
    let short: Value = serde_json::from_str(&plan("short.json")).unwrap();
    vec![
        (
            json!({"ask": "duration", "cylinder": "D", "pressure": "1500 psi", "flow": "15 L/min"}),
            words("duration|--cylinder|D|--pressure|1500 psi|--flow|15 L/min"),
            0,
        ),
        (
            json!({"ask": "duration", "water-capacity": "4.6 L", "factor": "0.28 L/psi", "pressure": "1500 psi",
                   "temperature": "-10 °C", "leak": "0.5 L/min", "minutes": 4000, "now": "23:50", "residual": "100 psi"}),
            words(
                "duration|--water-capacity|4.6 L|--factor|0.28 L/psi|--pressure|1500 psi|--temperature|-10 °C\
                   |--leak|0.5 L/min|--minutes|4000|--now|23:50|--residual|100 psi",
            ),
            1,
        ),
        (
            json!({"ask": "setup", "device": "nasal-cannula", "flow": "8 L/min", "cylinder": null}),
            words("setup|--device|nasal-cannula|--flow|8 L/min"),
            1,
        ),
        (
            json!({"ask": "setup", "device": "nasal-cannula", "flow": "2 L/min", "group": "newborn",
                   "condition": ["retains-co2", "stroke"], "since-birth": "3 min", "spo2": "91 %", "cylinder": "D",
                   "pressure": "1500 psi", "temperature": "20 °C", "minutes": "40 min"}),
            words(
                "setup|--device|nasal-cannula|--flow|2 L/min|--group|newborn|--condition|retains-co2|--condition|stroke\
                   |--since-birth|3 min|--spo2|91 %|--cylinder|D|--pressure|1500 psi|--temperature|20 °C|--minutes|40 min",
            ),
            1,
        ),
        (
            json!({"ask": "plan", "plan": short, "add": ["portable", "M"], "order": "emptiest-first"}),
            words("plan|tests/plans/short.json|--add|portable|--add|M|--order|emptiest-first"),
            1,
        ),
        (
            json!({"ask": "check", "uncovered": true, "today": "2026-11-25"}),
            words("check|--uncovered|--today|2026-11-25"),
            0,
        ),
    ]
}

#[test]
fn answers_are_the_bytes_of_the_commands() {
    for (request, mut words, code) in requests() {
        words.extend(["--format".to_owned(), "json".to_owned()]);
        let words: Vec<&str> = words.iter().map(String::as_str).collect();
        let command = oxyfolio(&words);
        assert_eq!(command.status.code(), Some(code), "{request}");
        let line = said(&[], request.to_string().as_bytes()).stdout;
        let expected = format!(
            "{{\"line\":1,\"id\":null,\"ask\":{},\"exit\":{code},\"answer\":{}}}\n",
            request["ask"],
            on_one_line(core::str::from_utf8(&command.stdout).unwrap())
        );
        assert!(
            line == expected.as_bytes(),
            "{request}\n{expected}\n{}",
            String::from_utf8_lossy(&line)
        );
    }
}

#[test]
fn a_list_of_cylinders_is_asked_as_its_text() {
    for (name, exit) in [("larkmere", 1), ("in-order", 0), ("mistakes", 3)] {
        let path = format!("tests/stock/{name}.csv");
        let list = fs::read_to_string(&path).unwrap();
        let request = json!({"ask": "stock", "list": list, "today": "2026-11-25", "due-within": "3 months", "temperature": "21 °C"});
        let told = answer(&request.to_string());
        let words = [
            "stock",
            &path,
            "--today",
            "2026-11-25",
            "--due-within",
            "3 months",
            "--temperature",
            "21 °C",
        ];
        let (code, mut expected) = common::json(&words);
        assert_eq!((&told["exit"], code), (&json!(exit), exit), "{name}");
        expected["list"] = "request".into();
        for diagnostic in expected["diagnostics"].as_array_mut().unwrap() {
            diagnostic["place"]["file"] = "request".into();
        }
        assert_eq!(told["answer"], expected, "{name}");
    }
    assert_eq!(answer(r#"{"ask": "stock", "list": "no list"}"#)["exit"], 2);
}

#[test]
fn requests_are_what_their_schema_says_and_so_are_mistakes() {
    let schema = validator("answer-request");
    for (request, _, _) in requests() {
        assert!(errors(&schema, &request).is_empty(), "{request}");
    }
    for request in [
        json!({"ask": "book", "id": "a"}),
        json!({"ask": "check"}),
        json!({"ask": "stock", "list": "", "id": 7}),
        json!({"ask": "setup", "device": "x", "flow": "1 L/min", "condition": "none"}),
    ] {
        assert!(errors(&schema, &request).is_empty(), "{request}");
    }
    // What the schema refuses, the program refuses.
    for request in [
        json!([]),
        json!({}),
        json!({"ask": "bok"}),
        json!({"ask": 1}),
        json!({"ask": "book", "id": []}),
        json!({"ask": "book", "flow": "1 L/min"}),
        json!({"ask": "check", "uncovered": "yes"}),
        json!({"ask": "setup", "flow": "1 L/min"}),
        json!({"ask": "setup", "device": null, "flow": "1 L/min"}),
        json!({"ask": "setup", "device": "nasal-cannula", "flow": 2}),
        json!({"ask": "duration", "pressure": "1500 psi", "flow": "1 L/min"}),
        json!({"ask": "duration", "cylinder": "D", "water-capacity": "2 L", "pressure": "1 psi", "flow": "1 L/min"}),
        json!({"ask": "duration", "cylinder": "D", "factor": "0.2 L/psi", "pressure": "1 psi", "flow": "1 L/min"}),
        json!({"ask": "plan"}),
        json!({"ask": "plan", "plan": "a.yaml"}),
        json!({"ask": "plan", "plan": {"legs": []}}),
        json!({"ask": "plan", "plan": {"cylinders": [], "legs": []}, "order": "best"}),
        json!({"ask": "stock", "list": 1}),
    ] {
        assert!(!schema.is_valid(&request), "{request}");
        assert_eq!(answer(&request.to_string())["exit"], 2, "{request}");
    }
}

#[test]
fn lines_are_answered_in_order_and_bad_ones_end_nothing() {
    let good = r#"{"ask": "book", "id": 1}"#;
    let long = format!("{{\"ask\": \"book\", \"id\": \"{}\"}}", "x".repeat(2_000_000));
    let mut input = format!("\u{FEFF}{good}\r\n\n  \t\n{long}\n").into_bytes();
    input.extend_from_slice(b"\"\xC2\xB0\" \xFF\n");
    input.extend_from_slice(b"{\"ask\": \"book\"} {}\nnull\n{\"ask\": NaN}\n");
    // The last line needs no end.
    input.extend_from_slice(good.as_bytes());
    let told = answers(&input);
    let seen: Vec<(u64, u64)> = told
        .iter()
        .map(|answer| (answer["line"].as_u64().unwrap(), answer["exit"].as_u64().unwrap()))
        .collect();
    assert_eq!(seen, [(1, 0), (4, 2), (5, 2), (6, 2), (7, 2), (8, 2), (9, 0)]);
    let errors: Vec<(u64, &str)> = told
        .iter()
        .filter_map(|answer| answer["errors"].get(0))
        .map(|error| {
            (
                error["column"].as_u64().unwrap(),
                error["message"].as_str().unwrap(),
            )
        })
        .collect();
    for ((column, message), (expected, words)) in errors.iter().zip([
        (1_048_577, "expected at most 1048576 bytes in a line"),
        (5, "expected text in UTF-8"),
        (17, "the line is no JSON: trailing characters"),
        (4, "expected an object"),
        (9, "the line is no JSON"),
    ]) {
        assert!(message.contains(words), "{message}");
        assert_eq!(*column, expected, "{message}");
    }
    assert!(answers(b"").is_empty() && answers(b"\n\n \n").is_empty());
}

#[test]
fn each_answer_comes_before_the_next_request_and_the_book_is_read_once() {
    let copy = common::copy_of_rules();
    let mut child = start(&["--rules", copy.path().to_str().unwrap()]);
    let (mut stdin, mut stdout) = (
        child.stdin.take().unwrap(),
        BufReader::new(child.stdout.take().unwrap()),
    );
    for id in ["1", "12345678901234567890123.50", "\"a\\u00b0\""] {
        writeln!(stdin, r#"{{"id": {id}, "ask": "check", "today": "2026-11-25"}}"#).unwrap();
        let mut line = String::new();
        stdout.read_line(&mut line).unwrap();
        // As it was written.
        assert!(line.contains(&format!("\"id\":{id},")), "{line}");
        assert!(line.contains(&*oxyfolio::RULEBOOK.digest), "{line}");
        for entry in fs::read_dir(copy.path()).unwrap() {
            fs::remove_file(entry.unwrap().path()).unwrap();
        }
    }
    drop(stdin);
    assert_eq!(child.wait().unwrap().code(), Some(0));
}

#[test]
fn a_rulebook_with_errors_answers_nothing() {
    let empty = tempfile::tempdir().unwrap();
    let output = said(&["--rules", empty.path().to_str().unwrap()], b"");
    assert_eq!(output.status.code(), Some(1));
    assert!(output.stdout.is_empty());
    assert!(String::from_utf8(output.stderr).unwrap().contains("no-chapters"));
}

#[test]
fn who_stops_reading_ends_it_quietly() {
    let mut child = start(&[]);
    drop(child.stdout.take());
    let mut stdin = child.stdin.take().unwrap();
    // The process may be gone before the last line.
    let _ = (0..1000).try_for_each(|_| stdin.write_all(b"{\"ask\": \"book\"}\n"));
    drop(stdin);
    let output = child.wait_with_output().unwrap();
    assert_eq!((output.status.code(), output.stderr.len()), (Some(141), 0));
}

#[test]
fn the_schemas_are_printed() {
    let printed: Value = serde_json::from_slice(&oxyfolio(&["answer", "--schema"]).stdout).unwrap();
    for (key, name) in [("request", "answer-request"), ("answer", "answer")] {
        let kept = fs::read_to_string(format!("tests/schemas/{name}.schema.json")).unwrap();
        assert_eq!(
            printed[key],
            serde_json::from_str::<Value>(&kept).unwrap(),
            "{name}"
        );
    }
}
