//! The form: the reader against `serde_json`, CSV against NDJSON, and CSV against the `csv` crate.

use oxyfolio::RULEBOOK;
use oxyfolio::records::run::{Names, Options, RunBuffer, Written};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::support::{file, findings, pass};

/// Whether the reader takes a line.
fn takes(line: &str) -> bool {
    let names = Names::new(&RULEBOOK);
    RunBuffer::new().read_json(line.as_bytes(), 1, &names).is_ok()
}

/// JSON of any shape, as text: spaces, escapes, all kinds of numbers.
fn any_json() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        (-1e9..1e9_f64).prop_map(Value::from),
        any::<String>().prop_map(Value::from),
    ];
    leaf.prop_recursive(4, 24, 5, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..5).prop_map(Value::from),
            prop::collection::vec((key(), inner), 0..5)
                .prop_map(|fields| Value::Object(fields.into_iter().collect())),
        ]
    })
}

fn key() -> impl Strategy<Value = String> {
    prop_oneof![
        prop::sample::select(vec![
            "run",
            "group",
            "conditions",
            "events",
            "at",
            "do",
            "flow_lpm",
            "device",
            "by",
            "pressure_psi"
        ])
        .prop_map(str::to_owned),
        any::<String>(),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_json_object_can_be_read(fields in prop::collection::vec((key(), any_json()), 0..6), pretty: bool) {
        let value = Value::Object(fields.into_iter().collect());
        let text = if pretty { serde_json::to_string_pretty(&value) } else { serde_json::to_string(&value) }.unwrap();
        prop_assert!(takes(&text), "{}", text);
    }

    #[test]
    fn what_serde_json_refuses_is_refused_and_what_it_takes_is_taken(
        fields in prop::collection::vec((key(), any_json()), 1..4),
        at: prop::sample::Index,
        change in prop_oneof![
            Just(String::new()),
            "[\\[\\]{},:\"\\\\0-9eE.+\\- ntf]".prop_map(String::from),
        ],
    ) {
        let value = Value::Object(fields.into_iter().collect());
        let text = serde_json::to_string(&value).unwrap();
        let signs: Vec<char> = text.chars().collect();
        let at = at.index(signs.len());
        let mut broken: String = signs[..at].iter().collect();
        broken.push_str(&change);
        broken.extend(&signs[at + 1..]);
        // What a key twice means is not a matter of form.
        let theirs = serde_json::from_str::<Value>(&broken);
        // A number too large for a float is outside of every range here, and an error of form there.
        let too_large = theirs.as_ref().is_err_and(|error| error.to_string().contains("out of range"));
        prop_assert!(too_large || takes(&broken) == theirs.is_ok_and(|value| value.is_object()), "{}", broken);
    }

    #[test]
    fn a_number_is_the_number_that_serde_json_reads(number in "-?(0|[1-9][0-9]{0,11})(\\.[0-9]{1,12})?([eE][+-]?[0-9]{1,2})?") {
        let line = format!(r#"{{"run":"A","temperature_c":{number}}}"#);
        let names = Names::new(&RULEBOOK);
        let mut buffer = RunBuffer::new();
        buffer.read_json(line.as_bytes(), 1, &names).unwrap();
        let theirs: f64 = serde_json::from_str(&number).unwrap();
        let read = buffer.run().temperature.map(|temperature| temperature.as_celsius());
        if (-60.0..=120.0).contains(&theirs) {
            // serde_json without its feature `float_roundtrip` may be off by the last bit.
            prop_assert!((read.unwrap() - theirs).abs() <= 1e-13 * theirs.abs());
            prop_assert_eq!(read, number.parse().ok());
        } else {
            prop_assert_eq!(read, None);
        }
    }

    #[test]
    fn a_text_is_the_text_that_serde_json_reads(name in any::<String>()) {
        let fit = !name.trim().is_empty() && name.len() <= 100;
        let mut buffer = RunBuffer::new();
        let names = Names::new(&RULEBOOK);
        for line in [json!({"run": &name}).to_string(), escaped(&name)] {
            buffer.read_json(line.as_bytes(), 1, &names).unwrap();
            if let Some(read) = buffer.name() {
                prop_assert_eq!(read, name.trim());
            } else {
                prop_assert!(!fit || name.chars().any(|sign| sign.is_control() || !sign.is_ascii()));
            }
        }
    }

    #[test]
    fn csv_says_what_ndjson_says(runs in prop::collection::vec(run(), 1..6), semicolons: bool) {
        let lines: Vec<String> = runs.iter().enumerate().map(|(number, run)| run.json(number)).collect();
        let rows: Vec<String> = runs.iter().enumerate().flat_map(|(number, run)| run.rows(number)).collect();
        let head = "run,group,conditions,temperature_c,at,do,cylinder,pressure_psi,pressure_bar,flow_lpm,device,spo2_percent,by";
        let mut csv = format!("{head}\n{}\n", rows.join("\n"));
        if semicolons {
            csv = csv.replace(',', ";");
        }
        let (one, by_json) = findings("a.ndjson", lines.join("\n"));
        let (other, by_csv) = findings("a.csv", csv);
        let bare = |found: Vec<Value>| -> Vec<Value> {
            let without = |mut finding: Value| {
                for key in ["file", "line", "column"] {
                    finding[key] = Value::Null;
                }
                finding
            };
            let mut all: Vec<Value> = found.into_iter().map(without).collect();
            // Fields of an event come in another order.
            all.sort_by_key(Value::to_string);
            all
        };
        prop_assert_eq!(bare(by_json), bare(by_csv));
        prop_assert_eq!((one.runs, one.events, one.levels), (other.runs, other.events, other.levels));
        prop_assert_eq!((one.first, one.last), (other.first, other.last));
    }
}

/// Every character as an escape.
fn escaped(name: &str) -> String {
    let units: Vec<String> = name.encode_utf16().map(|unit| format!("\\u{unit:04x}")).collect();
    format!(r#"{{"run": "{}"}}"#, units.concat())
}

#[derive(Clone, Debug)]
struct Run {
    group: Option<&'static str>,
    conditions: Option<Vec<&'static str>>,
    temperature: Option<i32>,
    events: Vec<Event>,
}

#[derive(Clone, Debug)]
struct Event {
    second: Option<u8>,
    action: Option<&'static str>,
    flow: Option<f64>,
    bar: Option<u16>,
    device: Option<&'static str>,
    spo2: Option<u8>,
    by: Option<&'static str>,
}

fn run() -> impl Strategy<Value = Run> {
    let maybe = |words: &'static [&'static str]| prop::option::of(prop::sample::select(words));
    let event = (
        prop::option::of(0..60_u8),
        maybe(&["set-flow", "place-device", "dance", "read-gauge"]),
        prop::option::of((0..1300_u16).prop_map(|tenths| f64::from(tenths) / 10.0)),
        prop::option::of(0..330_u16),
        maybe(&["nasal-cannula", "NRB", "mask", "non-rebreather"]),
        prop::option::of(80..110_u8),
        maybe(&["crew-1", "crew-2"]),
    )
        .prop_map(|(second, action, flow, bar, device, spo2, by)| Event {
            second,
            action,
            flow,
            bar,
            device,
            spo2,
            by,
        });
    (
        maybe(&["adult", "Child", "elder"]),
        prop::option::of(prop::sample::subsequence(
            vec!["retains-co2", "carbon-monoxide", "drowsy"],
            0..3,
        )),
        prop::option::of(-70..130_i32),
        prop::collection::vec(event, 1..6),
    )
        .prop_map(|(group, conditions, temperature, events)| Run {
            group,
            conditions,
            temperature,
            events,
        })
}

impl Event {
    fn at(&self) -> Option<String> {
        self.second
            .map(|second| format!("2026-03-01T14:05:{second:02}+01:00"))
    }
}

impl Run {
    fn json(&self, number: usize) -> String {
        let event = |event: &Event| {
            json!({
                "at": event.at(), "do": event.action, "flow_lpm": event.flow, "pressure_bar": event.bar,
                "device": event.device, "spo2_percent": event.spo2, "by": event.by,
            })
        };
        json!({
            "run": format!("R{number}"), "group": self.group, "conditions": self.conditions,
            "temperature_c": self.temperature, "events": self.events.iter().map(event).collect::<Vec<_>>(),
        })
        .to_string()
    }

    fn rows(&self, number: usize) -> Vec<String> {
        fn cell(value: Option<impl ToString>) -> String {
            value.map(|value| value.to_string()).unwrap_or_default()
        }
        let conditions = self.conditions.as_ref().map(|list| match list.as_slice() {
            [] => "none".to_owned(),
            // In quotes, so that either separator may be used.
            list => format!("\"{}\"", list.join(";")),
        });
        let row = |event: &Event| {
            format!(
                "R{number},{},{},{},{},{},,,{},{},{},{},{}",
                cell(self.group),
                cell(conditions.clone()),
                cell(self.temperature),
                cell(event.at()),
                cell(event.action),
                cell(event.bar),
                cell(event.flow),
                cell(event.device),
                cell(event.spo2),
                cell(event.by)
            )
        };
        self.events.iter().map(row).collect()
    }
}

#[test]
fn written_csv_is_read_by_the_csv_crate() {
    let (_folder, path) = file(
        "a.ndjson",
        "{\"run\": \"A, \\\"B\\\"; C\", \"group\": \"adlut\"}\n[]\n",
    );
    let options = Options {
        written: Written::Csv,
        threads: 1,
        ..Options::default()
    };
    let (tally, out) = pass(&[path], &options);
    let mut reader = csv::Reader::from_reader(out.as_bytes());
    assert_eq!(reader.headers().unwrap().len(), 22);
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(rows.len() as u64, tally.levels.all());
    assert_eq!(&rows[0][0], "A, \"B\"; C");
    assert_eq!((&rows[0][6], &rows[0][7]), ("name-unknown", "unknown"));
    assert_eq!(&rows[0][21], &*RULEBOOK.short_digest);
}

#[test]
fn names_go_by_id_name_or_another_name_in_capitals_or_not() {
    let names = Names::new(&RULEBOOK);
    let mut buffer = RunBuffer::new();
    for (written, id) in [
        ("non-rebreather", "non-rebreather"),
        ("NON-REBREATHER", "non-rebreather"),
        ("Non-rebreather mask", "non-rebreather"),
        ("nrb", "non-rebreather"),
        ("BVM", "bag-valve-mask"),
    ] {
        let line = json!({"run": "A", "events": [{"device": written}]}).to_string();
        buffer.read_json(line.as_bytes(), 1, &names).unwrap();
        assert_eq!(
            buffer.run().events[0].device,
            RULEBOOK.find_device(id),
            "{written}"
        );
    }
    // Every id of the book finds its own.
    for (table, key) in [
        (RULEBOOK.devices.len(), "device"),
        (RULEBOOK.cylinders.len(), "cylinder"),
    ] {
        for index in 0..table {
            let id = match key {
                "device" => &RULEBOOK.devices[index].rule.id,
                _ => &RULEBOOK.cylinders[index].rule.id,
            };
            let line = json!({"run": "A", "events": [{key: &**id}]}).to_string();
            buffer.read_json(line.as_bytes(), 1, &names).unwrap();
            let event = buffer.run().events[0];
            let found = event
                .device
                .map(|id| id.index())
                .or(event.cylinder.map(|id| id.index()));
            assert_eq!(found, Some(index), "{id:?}");
        }
    }
}
