//! How long the review of run records takes, against the parse alone: `serde_json` into plain typed structs. `cargo bench
//! --bench review` prints the figures and fails when the review takes more than 1.6 times the parse.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

use std::{borrow::Cow, fmt::Write as _, hint::black_box, time::Instant};

use oxyfolio::RULEBOOK;
use oxyfolio::book::Rulebook;
use oxyfolio::check::review::{Notes, Reviewer};
use oxyfolio::hazard;
use oxyfolio::records::run::{Input, Names, Options, RunBuffer, Written, review};

static BOOK: &Rulebook = &RULEBOOK;

/// The most that reading and reviewing may take, as a multiple of the parse.
const TARGET: f64 = 1.6;
const RUNS: usize = 4_000;

#[derive(serde::Deserialize)]
#[allow(dead_code)]
struct PlainRun<'a> {
    #[serde(borrow)]
    run: Option<Cow<'a, str>>,
    #[serde(borrow)]
    group: Option<Cow<'a, str>>,
    #[serde(borrow)]
    conditions: Option<Vec<&'a str>>,
    temperature_c: Option<f64>,
    #[serde(borrow)]
    events: Vec<PlainEvent<'a>>,
}

#[derive(serde::Deserialize)]
#[allow(dead_code)]
struct PlainEvent<'a> {
    at: Option<&'a str>,
    r#do: Option<&'a str>,
    cylinder: Option<&'a str>,
    pressure_psi: Option<f64>,
    pressure_bar: Option<f64>,
    flow_lpm: Option<f64>,
    device: Option<&'a str>,
    spo2_percent: Option<f64>,
    by: Option<&'a str>,
}

/// Runs as crews write them: steps in their order, readings while the oxygen goes on.
fn records() -> String {
    let steps = [
        r#""do":"fetch-cylinder","cylinder":"D""#,
        r#""do":"secure-cylinder""#,
        r#""do":"check-label""#,
        r#""do":"inspect-outlet""#,
        r#""do":"seat-regulator""#,
        r#""do":"tighten-regulator""#,
        r#""do":"open-cylinder","pressure_psi":1850"#,
        r#""do":"check-leaks""#,
        r#""do":"connect-device","device":"nasal-cannula""#,
        r#""do":"set-flow","flow_lpm":4"#,
        r#""do":"place-device","spo2_percent":91"#,
    ];
    let mut text = String::new();
    for run in 0..RUNS {
        write!(
            text,
            r#"{{"run":"LV-{run:06}","group":"adult","conditions":[],"temperature_c":{},"events":["#,
            10 + run % 15
        )
        .unwrap();
        for index in 0..28 {
            let said = match steps.get(index) {
                Some(step) => (*step).to_owned(),
                None => format!(
                    r#""do":"watch-patient","spo2_percent":{},"pressure_psi":{},"flow_lpm":4"#,
                    92 + index % 5,
                    1850 - 9 * index
                ),
            };
            let comma = if index == 0 { "" } else { "," };
            write!(
                text,
                r#"{comma}{{"at":"2026-03-{:02}T{:02}:{:02}:{:02}+01:00",{said},"by":"crew-{}"}}"#,
                1 + run % 28,
                run % 24,
                index,
                run % 60,
                run % 9
            )
            .unwrap();
        }
        text.push_str("]}\n");
    }
    text
}

/// The least seconds of several times, in turn so that a busy moment hits each.
fn least<const N: usize>(mut runs: [&mut dyn FnMut(); N]) -> [f64; N] {
    let mut least = [f64::INFINITY; N];
    for _ in 0..15 {
        for (run, least) in runs.iter_mut().zip(&mut least) {
            let start = Instant::now();
            run();
            *least = least.min(start.elapsed().as_secs_f64());
        }
    }
    least
}

fn main() {
    let text = records();
    let events = (RUNS * 28) as f64;
    let names = Names::new(BOOK);
    let (mut buffer, mut notes) = (RunBuffer::new(), Notes::default());
    let reviewer = Reviewer::new(hazard::Guards);
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a.ndjson");
    std::fs::write(&path, &text).unwrap();
    let inputs = [Input::File(path)];
    let options = Options {
        threads: 1,
        written: Written::Lines,
        ..Options::default()
    };
    let mut parse = || {
        for line in text.lines() {
            black_box(serde_json::from_str::<PlainRun<'_>>(line).unwrap());
        }
    };
    let mut read = || {
        for line in text.lines() {
            buffer.read_json(line.as_bytes(), 1, &names).unwrap();
            black_box(buffer.run());
        }
    };
    let mut other = RunBuffer::new();
    let mut both = || {
        for line in text.lines() {
            other.read_json(line.as_bytes(), 1, &names).unwrap();
            reviewer.review(&other.run(), &mut notes, |finding| {
                black_box(finding);
            });
        }
    };
    let mut found = 0;
    let mut whole = || {
        let mut out = Vec::new();
        let tally = review(BOOK, &reviewer, &inputs, &options, &mut out).unwrap();
        assert_eq!(tally.runs as usize, RUNS);
        found = tally.levels.all();
        black_box(out);
    };
    let [parse, read, both, whole] = least([&mut parse, &mut read, &mut both, &mut whole]);
    let per_event = |seconds: f64| seconds / events * 1e9;
    let megabytes = text.len() as f64 / 1e6;
    println!("{RUNS} runs, {events} events, {megabytes:.1} MB, one thread:");
    for (what, seconds) in [
        ("serde_json into typed structs", parse),
        ("reading", read),
        ("reading and review", both),
        ("the pass: file, reading, review, findings as NDJSON", whole),
    ] {
        println!(
            "{what}: {:.0} ns an event, {:.1} million events a second, {:.0} MB/s, {:.2} times the parse",
            per_event(seconds),
            events / seconds / 1e6,
            megabytes / seconds,
            seconds / parse
        );
    }
    println!("{found} findings");
    // Without optimisation the figures say nothing.
    if !cfg!(debug_assertions) {
        assert!(
            whole <= TARGET * parse,
            "the review takes {:.2} times the parse, target {TARGET}",
            whole / parse
        );
    }
}
