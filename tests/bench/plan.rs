//! How long a large transport plan takes. `cargo bench --bench plan` fails when it misses its target; then criterion
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
use oxyfolio::check::plan::{Answer, Leg, OnBoard, Order, Plan, Use, fewest_to_add};
use oxyfolio::quantity::{Flow, Pressure, Temperature, Time};
use oxyfolio::{RULEBOOK, cylinder};

/// The most that a plan of 20 legs and 30 cylinders may take, in milliseconds.
const TARGET: f64 = 5.0;

/// Every leg at another flow and temperature, every cylinder at another reading: nothing can be kept from before.
fn large(minutes: f64) -> Plan {
    let sizes = [cylinder::D, cylinder::E, cylinder::METRIC_3_L];
    let mut plan = Plan::new();
    for leg in 0..20_u8 {
        let number = f64::from(leg);
        let flow = Flow::litres_per_minute(5.0 + number / 2.0).unwrap();
        plan = plan.leg(
            Leg::new("leg", Time::minutes(minutes).unwrap())
                .temperature(Temperature::celsius(10.0 - number).unwrap())
                .uses(Use::driven(flow)),
        );
    }
    for number in 0..30_u8 {
        let reading = Pressure::psi(700.0 + 40.0 * f64::from(number)).unwrap();
        plan = plan.cylinder(OnBoard::new(sizes[usize::from(number) % sizes.len()], reading));
    }
    plan
}

fn milliseconds(mut run: impl FnMut()) -> f64 {
    let once = |_| {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64() * 1e3
    };
    (0..50).map(once).fold(f64::INFINITY, f64::min)
}

fn plans(criterion: &mut Criterion) {
    // 20 legs of 12 min take most of what is on board; of 40 min they are too much.
    let (enough, short) = (large(12.0), large(40.0));
    let is_enough = |plan| Answer::to(&RULEBOOK, plan, Order::FewestChanges).unwrap().enough;
    assert!(is_enough(&enough) && !is_enough(&short));
    let answer = |plan: &Plan| {
        black_box(Answer::to(&RULEBOOK, black_box(plan), Order::FewestChanges)).unwrap();
    };
    // Without optimisation the figure says nothing.
    if !cfg!(debug_assertions) {
        for (what, plan) in [("enough", &enough), ("not enough", &short)] {
            let found = milliseconds(|| answer(plan));
            println!("a plan of 20 legs and 30 cylinders, {what}: {found:.2} ms; target {TARGET} ms");
            assert!(found <= TARGET, "a plan takes {found:.2} ms, target {TARGET} ms");
        }
        let added = milliseconds(|| {
            black_box(fewest_to_add(
                &RULEBOOK,
                &short,
                Order::FewestChanges,
                cylinder::E,
            ))
            .unwrap();
        });
        println!("the fewest cylinders to add to it: {added:.2} ms");
    }
    criterion.bench_function("plan, enough", |bencher| bencher.iter(|| answer(&enough)));
    criterion.bench_function("plan, not enough", |bencher| bencher.iter(|| answer(&short)));
}

criterion_group!(benches, plans);
criterion_main!(benches);
