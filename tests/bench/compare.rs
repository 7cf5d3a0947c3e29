//! How long two editions take to compare. `cargo bench --bench compare` prints it and fails when it misses its target; then
//! criterion measures the same more closely.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

use std::{hint::black_box, time::Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use oxyfolio::compare::{SETUPS, compare, compare_over};
use oxyfolio::compile::{edition::Edition, source::Sources};

/// The most that a comparison with all its set-ups may take, in milliseconds.
const TARGET: f64 = 1_000.0;

fn edition(edit: impl Fn(&str) -> String) -> Edition {
    let mut sources = Sources::default();
    for (name, text) in oxyfolio::CHAPTERS {
        sources.add((*name).to_owned(), (*name).to_owned(), edit(text));
    }
    Edition::of(sources).unwrap()
}

fn comparisons(criterion: &mut Criterion) {
    let old = edition(str::to_owned);
    // An edit that reaches a quarter of the set-ups.
    let new = edition(|text| text.replace("value: 200 psi\n", "value: 300 psi\n"));
    assert_eq!(compare_over(&old, &new, 1_000).grid.setups, 1_000);
    // Without optimisation the figure says nothing.
    if !cfg!(debug_assertions) {
        let once = |_| {
            let start = Instant::now();
            assert!(black_box(compare(&old, &new)).grid.changed > 0);
            start.elapsed().as_secs_f64() * 1e3
        };
        let found = (0..5).map(once).fold(f64::INFINITY, f64::min);
        println!("two editions over {SETUPS} set-ups: {found:.0} ms; target {TARGET} ms");
        assert!(
            found <= TARGET,
            "a comparison takes {found:.0} ms, target {TARGET} ms"
        );
    }
    let mut group = criterion.benchmark_group("compare");
    group.sample_size(10);
    group.bench_function("10,000 set-ups", |bencher| {
        bencher.iter(|| black_box(compare_over(&old, &new, 10_000)));
    });
    group.finish();
}

criterion_group!(benches, comparisons);
criterion_main!(benches);
