//! Lines that mean harm: there is one answer to each that isn't empty, and the process goes on.

use proptest::prelude::*;
use serde_json::Value;

use super::answers;

/// Bytes of any kind, without line ends.
fn noise() -> impl Strategy<Value = Vec<u8>> {
    prop::collection::vec(any::<u8>().prop_filter("a line", |byte| *byte != b'\n'), 0..60)
}

/// A value as a program could write it, and as none should.
fn value() -> impl Strategy<Value = String> {
    prop_oneof![
        Just("null".to_owned()),
        Just("NaN".to_owned()),
        Just("-Infinity".to_owned()),
        Just("1e999".to_owned()),
        Just("-0".to_owned()),
        Just("9".repeat(500)),
        Just("\"\\ud800\"".to_owned()),
        Just("\"\\u0000\\u001b[31m\"".to_owned()),
        Just("\"15 L/min\"".to_owned()),
        Just("\"1500 psi\"".to_owned()),
        Just("\"D\"".to_owned()),
        Just("\"non-rebreather\"".to_owned()),
        Just(r#"{"cylinders": [{"size": "E", "pressure": "2000 psi"}], "legs": [{"name": "a", "time": "5 min", "flow": "1 L/min"}]}"#.to_owned()),
        Just(r#"{"cylinders": &a [*a], "legs": !!x {}}"#.to_owned()),
        Just(r#"{"a": 1, "a": 1, "cylinders": {}, "cylinders": []}"#.to_owned()),
        (1..3000_usize).prop_map(|deep| "[".repeat(deep)),
        (1..3000_usize).prop_map(|deep| "[".repeat(deep) + &"]".repeat(deep)),
        (1..3000_usize).prop_map(|deep| "{\"a\":".repeat(deep) + "1" + &"}".repeat(deep)),
        any::<f64>().prop_map(|number| number.to_string()),
        any::<String>().prop_map(|text| Value::from(text).to_string()),
        "[ -~]{0,30}",
    ]
}

fn name() -> impl Strategy<Value = String> {
    const KNOWN: &[&str] = &[
        "ask",
        "id",
        "cylinder",
        "pressure",
        "flow",
        "minutes",
        "temperature",
        "plan",
        "list",
        "add",
        "device",
        "condition",
        "spo2",
        "now",
        "order",
        "today",
        "uncovered",
        "",
    ];
    prop_oneof![
        8 => prop::sample::select(KNOWN).prop_map(str::to_owned),
        1 => any::<String>(),
    ]
}

fn asking() -> impl Strategy<Value = String> {
    prop::sample::select(&["book", "duration", "plan", "setup", "stock", "check", "chekc"][..])
        .prop_map(|ask| format!("\"ask\": \"{ask}\""))
}

fn request() -> impl Strategy<Value = Vec<u8>> {
    let field = (name(), value()).prop_map(|(name, value)| format!("{}: {value}", Value::from(name)));
    (
        prop::option::weighted(0.9, asking()),
        prop::collection::vec(field, 0..6),
    )
        .prop_map(|(ask, fields)| {
            let fields: Vec<String> = ask.into_iter().chain(fields).collect();
            format!("{{{}}}", fields.join(", ").replace('\n', " ")).into_bytes()
        })
}

fn line() -> impl Strategy<Value = Vec<u8>> {
    prop_oneof![1 => noise(), 4 => request(), 1 => (request(), noise()).prop_map(|(mut line, noise)| {
        line.truncate(line.len() / 2);
        line.extend(noise);
        line
    })]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_line_that_is_not_empty_is_answered_once(lines in prop::collection::vec(line(), 1..40)) {
        let input = lines.join(&b'\n');
        let expected: Vec<u64> = (1..)
            .zip(&lines)
            .filter(|(_, line)| !line.trim_ascii().is_empty())
            .map(|(number, _)| number)
            .collect();
        let told: Vec<u64> = answers(&input).iter().map(|answer| answer["line"].as_u64().unwrap()).collect();
        prop_assert_eq!(told, expected);
    }
}
