//! How long a long stock list takes, against a bare reading of the same bytes. `cargo bench --bench stock` fails when it
//! misses a target; then criterion measures the same more closely.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

use std::{fmt::Write as _, hint::black_box, time::Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use oxyfolio::RULEBOOK;
use oxyfolio::book::Date;
use oxyfolio::check::stock::{Report, Stocked, Terms};
use oxyfolio::records::stock;

/// The most that reading and checking 10,000 cylinders may take, in milliseconds.
const TARGET: f64 = 500.0;
/// The most that a row may take in a list of 10,000 against one in a list of 1,000.
const LINEAR: f64 = 2.0;

fn list(rows: usize) -> String {
    let mut text = "serial,size,pressure_psi,tested,marks,location\n".to_owned();
    for row in 0..rows {
        let (reading, month, place) = (row * 37 % 2300, row % 12 + 1, row % 40);
        writeln!(
            text,
            "LV-{row},D,{reading},{}-{month:02},plus,\"Post {place}, shelf\"",
            2020 + row % 6
        )
        .unwrap();
    }
    text
}

fn looked_at(text: &str) {
    let listed = stock::read(&RULEBOOK, "list.csv", text.as_bytes()).unwrap();
    assert_eq!(listed.not_read, 0);
    let stock: Vec<Stocked> = listed.rows.into_iter().map(|row| row.stocked).collect();
    let terms = Terms::on(Date::new(2026, 11, 25).unwrap());
    black_box(Report::of(&RULEBOOK, &stock, &terms)).unwrap();
}

fn bare(text: &str) {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    for record in reader.records() {
        black_box(record).unwrap();
    }
}

fn milliseconds(mut run: impl FnMut()) -> f64 {
    let once = |_| {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64() * 1e3
    };
    (0..20).map(once).fold(f64::INFINITY, f64::min)
}

fn lists(criterion: &mut Criterion) {
    let (short, long) = (list(1_000), list(10_000));
    // Without optimisation the figures say nothing.
    if !cfg!(debug_assertions) {
        let found = milliseconds(|| looked_at(&long));
        println!("a list of 10,000 cylinders, read and checked: {found:.1} ms; target {TARGET} ms");
        assert!(found <= TARGET, "it takes {found:.1} ms, target {TARGET} ms");
        let linear = found / 10.0 / milliseconds(|| looked_at(&short));
        println!("time for each row, 10,000 against 1,000: {linear:.2}; target {LINEAR}");
        assert!(
            linear <= LINEAR,
            "each row takes {linear:.2} times as long, target {LINEAR}"
        );
        let ratio = found / milliseconds(|| bare(&long));
        println!("against a bare reading of the same rows: {ratio:.0} times");
    }
    criterion.bench_function("stock, 1,000 cylinders", |bencher| {
        bencher.iter(|| looked_at(&short))
    });
}

criterion_group!(benches, lists);
criterion_main!(benches);
