//! Every mistake in a record: its place, its code and what to write instead. The place is marked in the text: «so».

use oxyfolio::RULEBOOK;
use oxyfolio::check::review::Field;
use oxyfolio::records::run::{Names, RunBuffer};

use super::support::findings;

/// A text without its mark, and the byte and the character at which the mark stood.
fn marked(text: &str) -> (String, usize, usize) {
    let byte = text.find('«').expect("a mark");
    let column = text[..byte].chars().count() + 1;
    (text.replace(['«', '»'], ""), byte, column)
}

/// In an event: what stands there, the code, the field that is unknown from then on, and what the hint says.
const IN_EVENT: &[(&str, &str, Option<Field>, &str)] = &[
    (
        r#"«"pressure": 1500»"#,
        "unit-missing",
        Some(Field::Pressure),
        "pressure_psi",
    ),
    (
        r#"«"pressure_kPa": 9000»"#,
        "unit-missing",
        Some(Field::Pressure),
        "pressure_bar",
    ),
    (r#"«"flow": 15»"#, "unit-missing", Some(Field::Flow), "flow_lpm"),
    (
        r#"«"SpO2": 91»"#,
        "unit-missing",
        Some(Field::Spo2),
        "spo2_percent",
    ),
    (
        r#"«"devise": "blow-by"»"#,
        "field-misnamed",
        Some(Field::Device),
        "`device`",
    ),
    (r#"«"time": "09:00"»"#, "field-misnamed", Some(Field::At), "`at`"),
    (r#"«"crew": "crew-4"»"#, "field-misnamed", None, "`by`"),
    (r#"«"name_of_the_person": "x"»"#, "field-not-read", None, ""),
    (
        r#"«"group": "adult"»"#,
        "field-misplaced",
        None,
        "beside `events`",
    ),
    (
        r#""device": «"nasal-canula"»"#,
        "name-unknown",
        Some(Field::Device),
        "`nasal-cannula`",
    ),
    (
        r#""device": «"Alex Example"»"#,
        "name-unknown",
        Some(Field::Device),
        "the rulebook has",
    ),
    (
        r#""cylinder": «"Q"»"#,
        "name-unknown",
        Some(Field::Cylinder),
        "the rulebook has",
    ),
    (
        r#""do": «"set-flo"»"#,
        "name-unknown",
        Some(Field::Do),
        "`set-flow`",
    ),
    (
        r#""do": «"zzz"»"#,
        "name-unknown",
        Some(Field::Do),
        "as the rulebook's procedures do",
    ),
    (
        r#""flow_lpm": «400»"#,
        "value-out-of-range",
        Some(Field::Flow),
        "",
    ),
    (r#""flow_lpm": «-1»"#, "value-out-of-range", Some(Field::Flow), ""),
    (
        r#""flow_lpm": «1e999»"#,
        "value-out-of-range",
        Some(Field::Flow),
        "",
    ),
    (
        r#""flow_lpm": «"15"»"#,
        "value-type",
        Some(Field::Flow),
        "without quotes",
    ),
    (r#""flow_lpm": «[15]»"#, "value-type", Some(Field::Flow), ""),
    (r#""pressure_psi": «1500, "pressure_psi": 1600»"#, "", None, ""),
    (
        r#""pressure_psi": «5000»"#,
        "value-out-of-range",
        Some(Field::Pressure),
        "",
    ),
    (
        r#""pressure_bar": «311»"#,
        "value-out-of-range",
        Some(Field::Pressure),
        "",
    ),
    (
        r#""spo2_percent": «101»"#,
        "value-out-of-range",
        Some(Field::Spo2),
        "",
    ),
    (
        r#""spo2_percent": «0.91»"#,
        "saturation-fraction",
        Some(Field::Spo2),
        "91",
    ),
    (r#""spo2_percent": «true»"#, "value-type", Some(Field::Spo2), ""),
    (r#""device": «3»"#, "value-type", Some(Field::Device), ""),
    (
        r#""flow_lpm": 2, «"flow_lpm": 2»"#,
        "field-twice",
        Some(Field::Flow),
        "neither",
    ),
    (
        r#""at": «"2026-03-01T14:05:00"»"#,
        "time-unreadable",
        Some(Field::At),
        "offset",
    ),
    (
        r#""at": «"2026-03-01T14:05Z"»"#,
        "time-unreadable",
        Some(Field::At),
        "seconds",
    ),
    (
        r#""at": «"2026-02-29T14:05:00Z"»"#,
        "time-unreadable",
        Some(Field::At),
        "RFC 3339",
    ),
    (
        r#""at": «"yesterday"»"#,
        "time-unreadable",
        Some(Field::At),
        "RFC 3339",
    ),
    (r#""at": «1772370300»"#, "value-type", Some(Field::At), ""),
    (r#""by": «""»"#, "name-unfit", None, "1 to 100"),
    (r#""by": «"a\u0007b"»"#, "name-unfit", None, "control"),
];

#[test]
fn every_mistake_in_an_event_has_its_place_and_its_field_is_unknown() {
    let names = Names::new(&RULEBOOK);
    let mut buffer = RunBuffer::new();
    let mut seen = 0;
    for (written, code, field, hint) in IN_EVENT {
        if code.is_empty() {
            continue;
        }
        // Signs of two bytes before the mark: columns count characters.
        let text = format!(
            r#"{{"run": "Ärzte-1", "events": [{{"do": "write-down"}}, {{{written}}}, {{"do": "set-flow"}}]}}"#
        );
        let (line, byte, column) = marked(&text);
        buffer.read_json(line.as_bytes(), 7, &names).unwrap();
        let [problem] = buffer.problems() else {
            panic!("{written}: {:?}", buffer.problems());
        };
        assert_eq!(problem.code(), *code, "{written}");
        assert_eq!((problem.byte, problem.column), (byte, column), "{written}");
        assert_eq!((problem.line, problem.event), (7, Some(1)), "{written}");
        let said = problem.hint().unwrap_or_default();
        assert!(said.contains(hint), "{written}: {said}");
        // The rest of the run is there, and the field is not.
        let run = buffer.run();
        assert_eq!(run.events.len(), 3, "{written}");
        let event = run.events[1];
        let unreadable = oxyfolio::check::review::Unreadable::default();
        let wanted = field.map_or(unreadable, |field| unreadable.with(field));
        assert_eq!(event.unreadable, wanted, "{written}");
        match field {
            Some(Field::At) => assert_eq!(event.at, None),
            Some(Field::Do) => assert_eq!(event.action, None),
            Some(Field::Cylinder) => assert_eq!(event.cylinder, None),
            Some(Field::Pressure) => assert_eq!(event.pressure, None),
            Some(Field::Flow) => assert_eq!(event.flow, None),
            Some(Field::Device) => assert_eq!(event.device, None),
            Some(Field::Spo2) => assert_eq!(event.spo2, None),
            None => {}
        }
        assert!(run.events[2].action.is_some(), "{written}");
        seen += 1;
    }
    assert!(seen > 30);
}

#[test]
fn every_mistake_in_a_run_has_its_place() {
    let names = Names::new(&RULEBOOK);
    let mut buffer = RunBuffer::new();
    for (written, code, hint) in [
        (r#"«"temp_f": 70»"#, "unit-missing", "temperature_c"),
        (r#"«"temperature": 20»"#, "unit-missing", "temperature_c"),
        (r#""temperature_c": «200»"#, "value-out-of-range", ""),
        (r#""temperature_c": «"20 °C"»"#, "value-type", "point"),
        (r#""group": «"adlut"»"#, "name-unknown", "`adult`"),
        (r#""group": «7»"#, "value-type", ""),
        (
            r#""conditions": [«"retains-c02"»]"#,
            "name-unknown",
            "the rulebook has",
        ),
        (r#""conditions": «"none"»"#, "value-type", "[] for none"),
        (r#""conditions": [«null»]"#, "value-type", "list"),
        (r#"«"device": "blow-by"»"#, "field-misplaced", "in an event"),
        (
            r#""group": "adult", «"group": "child"»"#,
            "field-twice",
            "neither",
        ),
        (r#""events": «{}»"#, "value-type", "list of objects"),
    ] {
        let text = format!(r#"{{"run": "Ü", {written}}}"#);
        let (line, byte, column) = marked(&text);
        buffer.read_json(line.as_bytes(), 1, &names).unwrap();
        let [problem] = buffer.problems() else {
            panic!("{written}: {:?}", buffer.problems());
        };
        assert_eq!(
            (problem.code(), problem.byte, problem.column),
            (code, byte, column),
            "{written}"
        );
        assert_eq!(problem.event, None);
        let said = problem.hint().unwrap_or_default();
        assert!(said.contains(hint), "{written}: {said}");
        let run = buffer.run();
        assert_eq!((run.group, run.temperature), (None, None), "{written}");
        assert!(run.conditions.is_none(), "{written}");
    }
}

#[test]
fn one_unknown_condition_makes_all_unknown() {
    let names = Names::new(&RULEBOOK);
    let mut buffer = RunBuffer::new();
    let mut conditions = |list: &str| {
        let line = format!(r#"{{"run": "A", "conditions": {list}}}"#);
        buffer.read_json(line.as_bytes(), 1, &names).unwrap();
        buffer.run().conditions.map(<[_]>::len)
    };
    assert_eq!(conditions("[]"), Some(0));
    assert_eq!(conditions(r#"["retains-co2"]"#), Some(1));
    assert_eq!(conditions(r#"["retains-co2", "drowsy"]"#), None);
    assert_eq!(conditions("null"), None);
}

#[test]
fn two_pressures_must_be_one() {
    let names = Names::new(&RULEBOOK);
    let mut buffer = RunBuffer::new();
    let mut pressure = |fields: &str| {
        let line = format!(r#"{{"run": "A", "events": [{{{fields}}}]}}"#);
        buffer.read_json(line.as_bytes(), 1, &names).unwrap();
        let code = buffer.problems().first().map(|problem| problem.code());
        (
            buffer.run().events[0]
                .pressure
                .map(|pressure| pressure.as_psi().round()),
            code,
        )
    };
    // 103 bar is 1494 psi: within what a gauge can be read to, and the lower is taken.
    assert_eq!(
        pressure(r#""pressure_psi": 1500, "pressure_bar": 103"#),
        (Some(1494.0), None)
    );
    assert_eq!(
        pressure(r#""pressure_psi": 1500, "pressure_bar": 130"#),
        (None, Some("pressures-disagree"))
    );
    assert_eq!(
        pressure(r#""pressure_psi": "1500", "pressure_bar": 103"#),
        (None, Some("value-type"))
    );
    assert_eq!(
        pressure(r#""pressure_psi": null, "pressure_bar": 0"#),
        (Some(0.0), None)
    );
}

#[test]
fn what_was_written_is_never_repeated() {
    let secret = "Alex Example, 12 Mill Lane";
    let lines = [
        format!(
            r#"{{"run":"A","group":"{secret}","{secret}":"{secret}","conditions":["{secret}"],"events":[{{"{secret}":1,"do":"{secret}","device":"{secret}","cylinder":"{secret}","at":"{secret}","flow_lpm":"{secret}"}},"{secret}"]}}"#
        ),
        format!(r#"["{secret}"]"#),
        format!(r#"{{"{secret}"#),
        secret.to_owned(),
    ];
    let (tally, found) = findings("a.ndjson", lines.join("\n"));
    assert_eq!((tally.runs, tally.bad_lines), (1, 3));
    assert!(found.len() > 8);
    for finding in found {
        let text = finding.to_string();
        for part in ["Alex", "Example", "Mill", "12 "] {
            assert!(!text.contains(part), "{text}");
        }
    }
}

#[test]
fn lines_that_cannot_be_read_have_their_place_and_stop_nothing() {
    for (bad, code) in [
        (r#"{"run": "A", «»"#, "line-broken"),
        (r#"{"run": "A"} «x»"#, "line-broken"),
        (r#"{"run" «"A"}»"#, "line-broken"),
        (r#"{"run": «nul»}"#, "line-broken"),
        (r#"{"events": [{"flow_lpm": «01»}]}"#, "line-broken"),
        (r#"{"events": [{"flow_lpm": 1.«}»]}"#, "line-broken"),
        (r#"{"events": [{"flow_lpm": «.5»}]}"#, "line-broken"),
        (r#"{"run": "A«"#, "line-broken"),
        (r#"{"run": "A«\q»"}"#, "line-broken"),
        (r#"{"run": "Ä«\ud800»"}"#, "line-broken"),
        ("{\"run\": \"A«\t»\"}", "line-broken"),
        (r#"{"events": [{}«"#, "line-broken"),
        (r#"{"events": [{}, «]»}"#, "line-broken"),
        (r#"{"events": [{}],«}»"#, "line-broken"),
        (r"  «[1]»", "line-not-object"),
        (r"«17»", "line-not-object"),
    ] {
        let (line, _, column) = marked(bad);
        let text = format!("{{\"run\": \"first\"}}\n{line}\n{{\"run\": \"last\"}}\n");
        let (tally, found) = findings("a.ndjson", text);
        assert_eq!((tally.runs, tally.bad_lines), (2, 1), "{bad}");
        let told = found.iter().find(|found| found["code"] == code);
        let told = told.unwrap_or_else(|| panic!("{bad}: {found:#?}"));
        assert_eq!(
            (&told["line"], &told["column"]),
            (&2.into(), &column.into()),
            "{bad}: {told}"
        );
        assert_eq!(told["run"], serde_json::Value::Null);
        assert_eq!((tally.bad[0].line, tally.bad[0].column), (2, column));
    }
}

#[test]
fn more_mistakes_than_are_listed_are_counted() {
    let events = vec![r#"{"at": 1}"#; 130].join(",");
    let (_, found) = findings("a.ndjson", format!(r#"{{"run": "A", "events": [{events}]}}"#));
    let of = |code: &str| found.iter().filter(|found| found["code"] == code).count();
    assert_eq!((of("value-type"), of("problems-omitted")), (100, 1));
    let told = found
        .iter()
        .find(|found| found["code"] == "problems-omitted")
        .unwrap();
    assert!(told["message"].as_str().unwrap().starts_with("30 more"), "{told}");
}

#[test]
fn a_field_that_is_not_read_is_told_once_a_run() {
    let event = r#"{"note": "x", "vehicle": 3}"#;
    let (tally, found) = findings(
        "a.ndjson",
        format!(r#"{{"run": "A", "events": [{event}, {event}]}}"#),
    );
    assert_eq!(
        found
            .iter()
            .filter(|found| found["code"] == "field-not-read")
            .count(),
        1
    );
    assert_eq!(tally.levels.note, 1);
}

#[test]
fn mistakes_in_a_head_of_csv_are_told_once_for_the_file() {
    let text = "run,at,flow,do,vehicle,do\nA,2026-03-01T14:05:00Z,4,set-flow,3,set-flow\n";
    let (tally, found) = findings("a.csv", text);
    let told: Vec<_> = found
        .iter()
        .filter(|found| found["line"] == 1)
        .map(|found| (found["code"].as_str().unwrap(), found["column"].as_u64().unwrap()))
        .collect();
    assert_eq!(
        told,
        [("unit-missing", 8), ("field-not-read", 16), ("field-twice", 24)]
    );
    assert_eq!((tally.runs, tally.events), (1, 1));
}

#[test]
fn every_mistake_in_a_row_has_its_place() {
    let head = "run,group,conditions,temperature_c,at,do,cylinder,pressure_psi,pressure_bar,flow_lpm,device,spo2_percent,by";
    for (row, code) in [
        ("A,«adlut»,none,,,,,,,,,,", "name-unknown"),
        ("A,,«drowsy»,,,,,,,,,,", "name-unknown"),
        ("A,,,«warm»,,,,,,,,,", "value-type"),
        ("A,,,,«14:05»,,,,,,,,", "time-unreadable"),
        ("A,,,,,,,,,«\"12,5\"»,,,", "value-type"),
        ("A,,,,,,,,,«inf»,,,", "value-type"),
        ("A,,,,,,,,,,«\"ma\"\"sk\"»,,", "name-unknown"),
        ("A,,,,,,,,,,,«0.9»,", "saturation-fraction"),
        ("«A,,,»", "row-cells"),
        ("A,,,,,,,,,,,,«\"crew»", "line-broken"),
        ("A,,,,,,,,,,,,\"crew\"«4»", "line-broken"),
    ] {
        let (line, _, column) = marked(&format!("Ä,,,,,,,,,,,,\n{row}"));
        let column = column - "Ä,,,,,,,,,,,,\n".chars().count();
        let (_, found) = findings("a.csv", format!("{head}\r\n{}\r\n", line.replace('\n', "\r\n")));
        let told = found.iter().find(|found| found["code"] == code);
        let told = told.unwrap_or_else(|| panic!("{row}: {found:#?}"));
        assert_eq!(
            (&told["line"], &told["column"]),
            (&3.into(), &column.into()),
            "{row}: {told}"
        );
    }
}
