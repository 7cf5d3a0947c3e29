//! What is told of requests that can't be used, and of plans.

use serde_json::{Value, json};

use super::answer;

#[test]
fn every_mistake_of_a_request_is_told_with_its_column() {
    // The columns are found by their values, which stand once in the line.
    for (line, expected) in [
        (
            r#"{"id": "°1", "ask": "duration", "cylinder": "DD", "pressure": "15 psy", "flow": 15, "flwo": true, "now": "25:00"}"#,
            &[
                ("cylinder", r#""DD""#, "the rulebook has no `DD`"),
                ("pressure", r#""15 psy""#, "write `psi`"),
                (
                    "flow",
                    "15,",
                    "expected a text, found a number; write the flow, as in \"15 L/min\"",
                ),
                ("flwo", "true", "did you mean `flow`?"),
                ("now", r#""25:00""#, "a time from 00:00 to 23:59"),
            ][..],
        ),
        (
            r#"{"ask": "setpu"}"#,
            &[("ask", r#""setpu""#, "did you mean `setup`?")],
        ),
        (
            r#"{"ask": "book", "ask": "check"}"#,
            &[("ask", r#""check""#, "write it once")],
        ),
        (
            r#"{"ask": "setup", "device": "nasal-cannula", "flow": "2 L/min", "spo2": "101 %"}"#,
            &[("spo2", r#""101 %""#, "spo2: expected at most 100 %, found 101 %")],
        ),
        (
            r#"{"ask": "duration", "cylinder": "D", "pressure": "1500 psi", "now": "15:00"}"#,
            &[("now", r#""15:00""#, "now needs pressure and flow or leak")],
        ),
        (
            r#"{"ask": "check", "today": "2026-02-30"}"#,
            &[("today", r#""2026-02-30""#, "2026-02-30")],
        ),
        (
            r#"{"ask": "book", "id": {"a": 1}}"#,
            &[("id", r#"{"a": 1}"#, "expected a text or a finite number")],
        ),
        (
            r#"{"ask": "book", "id": 1e999}"#,
            &[("id", "1e999", "expected a text or a finite number")],
        ),
        (
            r#"{"ask": "setup", "device": "\ud800", "flow": "2 L/min"}"#,
            &[("device", r#""\ud800""#, "surrogate")],
        ),
    ] {
        let told = answer(line);
        assert_eq!(
            (&told["exit"], &told["complete"], &told["edition"]),
            (&json!(2), &json!(true), &json!("1"))
        );
        let errors = told["errors"].as_array().unwrap();
        assert_eq!(errors.len(), expected.len(), "{told:#}");
        for (error, (field, value, words)) in errors.iter().zip(expected) {
            let byte = line.find(&format!(": {value}")).unwrap() + 2;
            let column = line[..byte].chars().count() + 1;
            assert_eq!(
                (&error["field"], &error["column"]),
                (&json!(field), &json!(column)),
                "{error:#}"
            );
            assert!(error["message"].as_str().unwrap().contains(words), "{error:#}");
        }
    }
    let told = answer(r#"{"id": "a", "ask": "setup"}"#);
    let fields: Vec<&Value> = told["errors"]
        .as_array()
        .unwrap()
        .iter()
        .map(|error| &error["field"])
        .collect();
    assert_eq!(
        (&told["id"], fields),
        (&json!("a"), vec![&json!("device"), &json!("flow")])
    );
}

#[test]
fn mistakes_of_a_plan_have_the_columns_of_the_line() {
    let line = r#"{"id": "°", "ask": "plan", "plan": {"cylinders": {"size": "\u0045", "pressure": "2000"},
        "legs": {"name": "\ud83d\ude00", "time": "5 mins", "flow": "4 L/min"}}}"#
        .replace("\n        ", " ");
    let told = answer(&line);
    assert_eq!(told["exit"], 2);
    let found = told["answer"]["diagnostics"].as_array().unwrap();
    let columns: Vec<u64> = found
        .iter()
        .map(|found| found["place"]["column"].as_u64().unwrap())
        .collect();
    let expected =
        ["2000\"", "5 mins"].map(|value| line[..line.find(value).unwrap()].chars().count() as u64 + 1);
    // The first is told where the number is, the second where its unit is.
    assert_eq!(columns, [expected[0], expected[1] + 2], "{found:#?}");
}

#[test]
fn what_other_programs_escape_in_a_plan_is_read_as_it_is_meant() {
    // json.dumps of Python writes what isn't ASCII as \u escapes, signs beyond the first plane as two.
    let line =
        r#"{"ask": "plan", "plan": {"name": "\ud83d\ude91 \u00b0 \/ \" \\ \t.", "cylinders": {"size": "E",
        "pressure": "2000 psi"}, "legs": {"name": "road", "time": "5 min", "flow": "4 L/min"}}}"#
            .replace("\n        ", " ");
    let told = answer(&line);
    assert_eq!(told["answer"]["name"], "\u{1F691} ° / \" \\ \t.", "{told:#}");
}
