//! How long the review of run records takes, against the parse alone: `serde_json` into plain typed structs, into such that
//! borrow every text from the line, and into a tree of values. `cargo bench --bench review` prints the figures and fails when
//! the review takes more than 1.6 times the first.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

#[path = "../review/generate.rs"]
mod generate;

use std::{borrow::Cow, hint::black_box, time::Instant};

use generate::Generated;

use oxyfolio::RULEBOOK;
use oxyfolio::book::Rulebook;
use oxyfolio::check::review::{Notes, Reviewer};
use oxyfolio::hazard;
use oxyfolio::records::run::{Input, Names, Options, RunBuffer, Written, review};

static BOOK: &Rulebook = &RULEBOOK;

/// The most that reading and reviewing may take on one thread, as a multiple of the parse into typed structs.
const TARGET: f64 = 1.6;
const RUNS: usize = 2_000;

#[derive(serde::Deserialize)]
#[allow(dead_code)]
struct BorrowedRun<'a> {
    #[serde(borrow)]
    run: Option<Cow<'a, str>>,
    #[serde(borrow)]
    group: Option<Cow<'a, str>>,
    #[serde(borrow)]
    conditions: Option<Vec<&'a str>>,
    temperature_c: Option<f64>,
    #[serde(borrow)]
    events: Vec<BorrowedEvent<'a>>,
}

#[derive(serde::Deserialize)]
#[allow(dead_code)]
struct BorrowedEvent<'a> {
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

/// The same as most programs write it, with texts of its own.
#[derive(serde::Deserialize)]
#[allow(dead_code)]
struct PlainRun {
    run: Option<String>,
    group: Option<String>,
    conditions: Option<Vec<String>>,
    temperature_c: Option<f64>,
    events: Vec<PlainEvent>,
}

#[derive(serde::Deserialize)]
#[allow(dead_code)]
struct PlainEvent {
    at: Option<String>,
    r#do: Option<String>,
    cylinder: Option<String>,
    pressure_psi: Option<f64>,
    pressure_bar: Option<f64>,
    flow_lpm: Option<f64>,
    device: Option<String>,
    spo2_percent: Option<f64>,
    by: Option<String>,
}

/// Made-up runs, as the tests have them; of faulty ones, each has one thing wrong.
fn records(faulty: bool) -> (String, usize) {
    let mut events = 0;
    let text = (0..RUNS as u64).map(|seed| {
        let run = if faulty && seed % 2 == 1 {
            Generated::faulty(seed / 2)
        } else {
            Generated::clean(seed)
        };
        events += run.events.len();
        run.ndjson() + "\n"
    });
    (text.collect(), events)
}

/// The least seconds of several times, in turn so that a busy moment hits each.
fn least<const N: usize>(mut runs: [&mut dyn FnMut(); N]) -> [f64; N] {
    let mut least = [f64::INFINITY; N];
    for _ in 0..7 {
        for (run, least) in runs.iter_mut().zip(&mut least) {
            let start = Instant::now();
            run();
            *least = least.min(start.elapsed().as_secs_f64());
        }
    }
    least
}

fn main() {
    measure(false);
    measure(true);
}

fn measure(faulty: bool) {
    let (text, events) = records(faulty);
    let events = events as f64;
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
    let mut borrowed = || {
        for line in text.lines() {
            black_box(serde_json::from_str::<BorrowedRun<'_>>(line)).ok();
        }
    };
    let mut parse = || {
        for line in text.lines() {
            black_box(serde_json::from_str::<PlainRun>(line)).ok();
        }
    };
    let mut tree = || {
        for line in text.lines() {
            black_box(serde_json::from_str::<serde_json::Value>(line)).ok();
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
    let on_all = Options {
        threads: 0,
        written: Written::Lines,
        ..Options::default()
    };
    let mut all_cores = || {
        let mut out = Vec::new();
        let tally = review(BOOK, &reviewer, &inputs, &on_all, &mut out).unwrap();
        assert_eq!(tally.runs as usize, RUNS);
        black_box(out);
    };
    let [borrowed, parse, tree, read, both, whole, all_cores] = least([
        &mut borrowed,
        &mut parse,
        &mut tree,
        &mut read,
        &mut both,
        &mut whole,
        &mut all_cores,
    ]);
    let per_event = |seconds: f64| seconds / events * 1e9;
    let megabytes = text.len() as f64 / 1e6;
    let which = if faulty {
        "every second with one fault"
    } else {
        "none with a fault"
    };
    println!("{RUNS} runs, {which}, {events} events, {megabytes:.1} MB, one thread:");
    for (what, seconds) in [
        ("serde_json into typed structs that borrow every text", borrowed),
        ("serde_json into typed structs", parse),
        ("serde_json into a tree of values", tree),
        ("reading", read),
        ("reading and review", both),
        ("the pass: file, reading, review, findings as NDJSON", whole),
        ("the pass on all cores", all_cores),
    ] {
        println!(
            "{what}: {:.0} ns an event, {:.1} million events a second, {:.0} MB/s, {:.2} times the parse, {:.2} times the borrowing one",
            per_event(seconds),
            events / seconds / 1e6,
            megabytes / seconds,
            seconds / parse,
            seconds / borrowed
        );
    }
    println!("{found} findings");
    // Without optimisation the figures say nothing.
    if !faulty && !cfg!(debug_assertions) {
        assert!(
            whole <= TARGET * parse,
            "the review takes {:.2} times the parse into typed structs, target {TARGET}",
            whole / parse
        );
    }
}
