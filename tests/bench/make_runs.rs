//! Prints made-up runs, one line of JSON each, for measuring: `cargo bench --bench make_runs -- RUNS [csv] > FILE`.
//!
//! Every second run has one thing wrong with it. The same number gives the same file.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

#[path = "../review/generate.rs"]
mod generate;

use std::io::{BufWriter, ErrorKind, Write, stdout};

use generate::{CSV_HEADER, Generated};

fn main() {
    // Cargo adds `--bench`, which says nothing here.
    let arguments: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| word != "--bench")
        .collect();
    let Some(runs) = arguments.first().and_then(|number| number.parse::<u64>().ok()) else {
        eprintln!("how many runs? `cargo bench --bench make_runs -- RUNS [csv] > FILE`");
        return;
    };
    let csv = arguments.get(1).is_some_and(|form| form == "csv");
    match print(runs, csv) {
        Ok(events) => eprintln!("{runs} runs, {events} events"),
        Err(error) if error.kind() == ErrorKind::BrokenPipe => {}
        Err(error) => panic!("{error}"),
    }
}

fn print(runs: u64, csv: bool) -> std::io::Result<usize> {
    let mut out = BufWriter::new(stdout().lock());
    let mut events = 0;
    if csv {
        writeln!(out, "{CSV_HEADER}")?;
    }
    for seed in 0..runs {
        let mut run = if seed % 2 == 0 {
            Generated::clean(seed)
        } else {
            Generated::faulty(seed / 2)
        };
        run.run = format!("run-{seed:07}");
        events += run.events.len();
        if csv {
            out.write_all(run.csv().as_bytes())?;
        } else {
            writeln!(out, "{}", run.ndjson())?;
        }
    }
    out.flush()?;
    Ok(events)
}
