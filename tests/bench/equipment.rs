//! How long the equipment model takes for one event: a state, what is known, and the gas; beside one density.
//!
//! Run by hand: `cargo bench --bench equipment`.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, missing_docs)]

use std::hint::black_box;

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
    group.bench_function("what is known", |bench| {
        bench.iter(|| {
            let start = black_box(Known::NOTHING);
            RUN.iter()
                .fold(start, |known, action| known.after(*action).unwrap())
        });
    });
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
    let room = Temperature::celsius(10.0).unwrap();
    let (capacity, full) = (
        Volume::litres(2.9).unwrap(),
        Pressure::<Gauge>::psi(2000.0).unwrap(),
    );
    let gas = Gas::new(capacity, room, full).unwrap();
    let flow = Flow::litres_per_minute(10.0).unwrap();
    let later = gas.draw(flow, Flow::ZERO, Time::minutes(17.0).unwrap());
    criterion.bench_function("one density", |bench| {
        bench.iter(|| oxygen::density(black_box(full).to_absolute(), black_box(room)).unwrap());
    });
    criterion.bench_function("gas drawn", |bench| {
        bench.iter(|| {
            black_box(gas).draw(
                flow,
                Flow::ZERO,
                black_box(Time::tabled(17.0, oxyfolio::quantity::TimeUnit::Minute)),
            )
        });
    });
    criterion.bench_function("the reading now", |bench| {
        bench.iter(|| black_box(later).pressure());
    });
}

criterion_group!(benches, events, gas);
criterion_main!(benches);
