//! How long one answer takes. `cargo bench --bench duration` fails when a whole duration misses its target; then criterion
//! measures the same more closely.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

use std::{hint::black_box, time::Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use oxyfolio::check::duration::Supply;
use oxyfolio::oxygen;
use oxyfolio::quantity::{Flow, Gauge, Pressure, Temperature};
use oxyfolio::{RULEBOOK, cylinder};

/// The most that a whole duration may take, in nanoseconds.
const TARGET: f64 = 150.0;
const CALLS: u32 = 2_000_000;

fn flow() -> Flow {
    Flow::litres_per_minute(10.0).unwrap()
}

fn supply() -> Supply {
    let temperature = Temperature::celsius(-7.0).unwrap();
    Supply::of(&RULEBOOK, RULEBOOK.cylinder(cylinder::D).unwrap()).temperature(temperature)
}

/// Readings from 200 to 2000 psi, so that no answer can be foretold.
fn reading(call: u32) -> Pressure<Gauge> {
    Pressure::psi(f64::from(200 + call % 1800)).unwrap()
}

/// Nanoseconds for each call; the best of five runs, since others share the machine.
fn measured() -> f64 {
    let supply = supply();
    let run = |_| {
        let start = Instant::now();
        for call in 0..CALLS {
            black_box(black_box(&supply).lasts(black_box(reading(call)), black_box(flow()))).unwrap();
        }
        start.elapsed().as_secs_f64() * 1e9 / f64::from(CALLS)
    };
    (0..5).map(run).fold(f64::INFINITY, f64::min)
}

fn durations(criterion: &mut Criterion) {
    // Without optimisation the figure says nothing.
    if !cfg!(debug_assertions) {
        let found = measured();
        println!("one duration: {found:.0} ns; target {TARGET} ns");
        assert!(
            found <= TARGET,
            "one duration takes {found:.0} ns, target {TARGET} ns"
        );
    }
    let supply = supply();
    criterion.bench_function("duration", |bencher| {
        bencher.iter(|| black_box(&supply).lasts(black_box(reading(1300)), black_box(flow())));
    });
    criterion.bench_function("density", |bencher| {
        let (pressure, temperature) = (reading(1300).to_absolute(), Temperature::celsius(-7.0).unwrap());
        bencher.iter(|| oxygen::density(black_box(pressure), black_box(temperature)));
    });
    criterion.bench_function("reading needed", |bencher| {
        bencher.iter(|| black_box(&supply).pressure_for(black_box(20), black_box(flow())));
    });
}

criterion_group!(benches, durations);
criterion_main!(benches);
