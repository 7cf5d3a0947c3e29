//! How long the equipment model takes for one event: a state, beside the transitions written by hand; what is known, and
//! the gas, beside one density. `cargo bench --bench equipment` fails when a ratio misses its target.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, missing_docs)]

#[path = "../equipment/second.rs"]
mod second;

use std::{hint::black_box, time::Instant};

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use oxyfolio::book::{Action as A, Fact};
use oxyfolio::equipment::{Gas, Known, State};
use oxyfolio::oxygen;
use oxyfolio::quantity::{Flow, Gauge, Pressure, Temperature, Time, Volume};

/// From fetching a cylinder to putting it away.
const RUN: [A; 18] = [
    A::SecureCylinder,
    A::ClearOutlet,
    A::InspectWasher,
    A::SeatRegulator,
    A::TightenRegulator,
    A::ZeroFlow,
    A::OpenCylinder,
    A::ReadGauge,
    A::ConnectDevice,
    A::SetFlow,
    A::FillReservoir,
    A::PlaceDevice,
    A::RemoveDevice,
    A::DisconnectDevice,
    A::CloseCylinder,
    A::BleedRegulator,
    A::ZeroFlow,
    A::StowCylinder,
];

/// The most that one event of what is known, and one reading, may take, in densities of oxygen.
const TARGETS: (f64, f64) = (4.0, 20.0);
const CALLS: u32 = 1_000_000;

/// Seconds for a million calls; the best of five runs, since others share the machine.
fn measured<T>(call: impl Fn() -> T) -> f64 {
    let run = |_| {
        let start = Instant::now();
        for _ in 0..CALLS {
            black_box(call());
        }
        start.elapsed().as_secs_f64()
    };
    (0..5).map(run).fold(f64::INFINITY, f64::min)
}

fn known_run() -> Known {
    let start = black_box(Known::NOTHING);
    RUN.iter()
        .fold(start, |known, action| known.after(*action).unwrap())
}

fn ratios(_: &mut Criterion) {
    // Without optimisation the figures say nothing.
    if cfg!(debug_assertions) {
        return;
    }
    let (room, full, later) = cylinder();
    let density = measured(|| oxygen::density(black_box(full).to_absolute(), black_box(room)).unwrap());
    let known = measured(known_run) / RUN.len() as f64 / density;
    let reading = measured(|| black_box(later).pressure()) / density;
    let state = measured(|| {
        let start = black_box(State::PUT_AWAY);
        RUN.iter()
            .fold(start, |state, action| state.after(*action).unwrap())
    });
    let by_hand = measured(|| {
        let start = black_box(State::PUT_AWAY);
        RUN.iter()
            .fold(start, |state, action| second::after(state, *action).unwrap())
    });
    println!(
        "one event of what is known: {known:.1} densities; target {}",
        TARGETS.0
    );
    println!("the reading now: {reading:.1} densities; target {}", TARGETS.1);
    println!(
        "one event of a state: {:.1} times as long as by hand",
        state / by_hand
    );
    assert!(known <= TARGETS.0 && reading <= TARGETS.1, "a target is missed");
}

/// A temperature, a full cylinder's reading, and its gas after a while.
fn cylinder() -> (Temperature, Pressure<Gauge>, Gas) {
    let room = Temperature::celsius(10.0).unwrap();
    let (capacity, full) = (
        Volume::litres(2.9).unwrap(),
        Pressure::<Gauge>::psi(2000.0).unwrap(),
    );
    let gas = Gas::new(capacity, room, full).unwrap();
    let flow = Flow::litres_per_minute(10.0).unwrap();
    (
        room,
        full,
        gas.draw(flow, Flow::ZERO, Time::minutes(17.0).unwrap()),
    )
}

fn events(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("events");
    group.throughput(Throughput::Elements(RUN.len() as u64));
    group.bench_function("a state", |bench| {
        bench.iter(|| {
            let start = black_box(State::PUT_AWAY);
            RUN.iter()
                .fold(start, |state, action| state.after(*action).unwrap())
        });
    });
    group.bench_function("what is known", |bench| bench.iter(known_run));
    group.finish();
    let known = Known::NOTHING.after(A::SetFlow).unwrap();
    criterion.bench_function("all facts of what is known", |bench| {
        bench.iter(|| {
            let known = black_box(known);
            Fact::ALL
                .iter()
                .filter(|fact| known.fact(**fact).is_some())
                .count()
        });
    });
}

fn gas(criterion: &mut Criterion) {
    let (room, full, later) = cylinder();
    criterion.bench_function("one density", |bench| {
        bench.iter(|| oxygen::density(black_box(full).to_absolute(), black_box(room)).unwrap());
    });
    criterion.bench_function("the reading now", |bench| {
        bench.iter(|| black_box(later).pressure());
    });
}

criterion_group!(benches, ratios, events, gas);
criterion_main!(benches);
