//! Records with a mistake, mended as the hint says.

use oxyfolio::RULEBOOK;
use oxyfolio::records::run::{Names, RunBuffer};

/// The code, a field of an event as it was written, a part of the hint, and what is written by whoever follows it.
const IN_EVENT: &[(&str, &str, &str, &str)] = &[
    (
        "unit-missing",
        r#""pressure": 1500"#,
        "write `pressure_psi`",
        r#""pressure_psi": 1500"#,
    ),
    (
        "unit-missing",
        r#""flow": 15"#,
        "did you mean `flow_lpm`?",
        r#""flow_lpm": 15"#,
    ),
    (
        "unit-missing",
        r#""SpO2": 91"#,
        "did you mean `spo2_percent`?",
        r#""spo2_percent": 91"#,
    ),
    (
        "field-misnamed",
        r#""devise": "blow-by""#,
        "did you mean `device`?",
        r#""device": "blow-by""#,
    ),
    (
        "field-misplaced",
        r#""group": "adult""#,
        "write it beside `events`",
        "",
    ),
    (
        "name-unknown",
        r#""device": "nasal-canula""#,
        "did you mean `nasal-cannula`?",
        r#""device": "nasal-cannula""#,
    ),
    (
        "name-unknown",
        r#""device": "tent""#,
        "the rulebook has `nasal-cannula`",
        r#""device": "nasal-cannula""#,
    ),
    (
        "name-unknown",
        r#""do": "set-flo""#,
        "did you mean `set-flow`?",
        r#""do": "set-flow""#,
    ),
    (
        "name-unknown",
        r#""do": "zzz""#,
        "such as `set-flow`",
        r#""do": "set-flow""#,
    ),
    (
        "value-type",
        r#""flow_lpm": "15 L/min""#,
        "write the number alone",
        r#""flow_lpm": 15"#,
    ),
    (
        "saturation-fraction",
        r#""spo2_percent": 0.91"#,
        "write percent: 91, not 0.91",
        r#""spo2_percent": 91"#,
    ),
    (
        "field-twice",
        r#""flow_lpm": 2, "flow_lpm": 2"#,
        "write it once",
        r#""flow_lpm": 2"#,
    ),
    (
        "pressures-disagree",
        r#""pressure_psi": 1500, "pressure_bar": 130"#,
        "write one of them",
        r#""pressure_psi": 1500"#,
    ),
    (
        "time-unreadable",
        r#""at": "2026-03-01T14:05:00""#,
        "add the offset",
        r#""at": "2026-03-01T14:05:00+01:00""#,
    ),
    (
        "time-unreadable",
        r#""at": "2026-03-01T14:05Z""#,
        "write the seconds too",
        r#""at": "2026-03-01T14:05:00Z""#,
    ),
    (
        "time-unreadable",
        r#""at": "yesterday""#,
        "2026-03-01T14:05:00+01:00",
        r#""at": "2026-03-01T14:05:00+01:00""#,
    ),
    (
        "name-unfit",
        r#""by": "a\u0007b""#,
        "without control characters",
        r#""by": "ab""#,
    ),
];

/// The same of a run.
const IN_RUN: &[(&str, &str, &str, &str)] = &[
    (
        "unit-missing",
        r#""run": "A", "temperature": 20"#,
        "write `temperature_c`",
        r#""run": "A", "temperature_c": 20"#,
    ),
    (
        "name-unknown",
        r#""run": "A", "group": "adlut""#,
        "did you mean `adult`?",
        r#""run": "A", "group": "adult""#,
    ),
    (
        "name-unknown",
        r#""run": "A", "conditions": ["flu"]"#,
        "the rulebook has `retains-co2`",
        r#""run": "A", "conditions": ["retains-co2"]"#,
    ),
    (
        "value-type",
        r#""run": "A", "conditions": "none""#,
        "or [] for none",
        r#""run": "A", "conditions": []"#,
    ),
    (
        "value-type",
        r#""run": "A", "events": {}"#,
        "write a list of objects",
        r#""run": "A", "events": []"#,
    ),
    (
        "field-misplaced",
        r#""run": "A", "device": "blow-by""#,
        "write it in an event",
        r#""run": "A", "events": [{"device": "blow-by"}]"#,
    ),
    (
        "event-not-object",
        r#""run": "A", "events": ["set-flow"]"#,
        "`{\"at\": …, \"do\": …}`",
        r#""run": "A", "events": [{"do": "set-flow"}]"#,
    ),
    (
        "run-not-named",
        r#""group": "adult""#,
        "give each run a `run`",
        r#""run": "A", "group": "adult""#,
    ),
];

/// The codes and hints of a run's text.
fn told(line: &str) -> Vec<(&'static str, String)> {
    let names = Names::new(&RULEBOOK);
    let mut buffer = RunBuffer::new();
    buffer.read_json(line.as_bytes(), 1, &names).unwrap();
    buffer
        .problems()
        .iter()
        .map(|problem| (problem.code(), problem.hint().unwrap_or_default()))
        .collect()
}

#[test]
fn a_record_is_mended_as_its_hint_says() {
    let event = |field: &str| format!(r#"{{"run": "A", "events": [{{{field}}}]}}"#);
    let run = |fields: &str| format!("{{{fields}}}");
    let all = IN_EVENT
        .iter()
        .map(|(code, wrong, hint, right)| (code, event(wrong), hint, event(right)))
        .chain(
            IN_RUN
                .iter()
                .map(|(code, wrong, hint, right)| (code, run(wrong), hint, run(right))),
        );
    for (code, wrong, hint, right) in all {
        let said = told(&wrong);
        let [(found, words)] = said.as_slice() else {
            panic!("{wrong}: {said:?}");
        };
        assert_eq!(found, code, "{wrong}");
        assert!(words.contains(hint), "{wrong}: {words}");
        assert_eq!(told(&right), [], "{right}");
    }
}
