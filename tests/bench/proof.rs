//! How long the proof of step orders takes: the demo rulebook, and a procedure of 24 steps with little ordering.
//!
//! Run by hand: `cargo bench --bench proof`.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, missing_docs)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, List, Procedure, Rulebook, Step, StepId, Text};
use oxyfolio::compile::proof::unsafe_orders;

/// A rulebook whose only procedure has these steps.
fn book(steps: Vec<Step>) -> Rulebook {
    let procedure = Procedure {
        steps: List::from(steps),
        follows: List::fixed(&[]),
        begins_with: List::fixed(&[]),
        ends_safe: false,
        ..RULEBOOK.procedures[0].clone()
    };
    Rulebook {
        procedures: List::from(vec![procedure]),
        ..RULEBOOK.clone()
    }
}

fn step(number: usize, action: Action, after: &[u16]) -> Step {
    let after: Vec<StepId> = after.iter().copied().map(StepId).collect();
    Step {
        id: Text::from(format!("step-{number}")),
        action,
        after: List::from(after),
        ..RULEBOOK.procedures[0].steps[0].clone()
    }
}

/// Fits, gives and takes off again, with the order that safety needs and twelve steps that may stand anywhere.
fn loose() -> Rulebook {
    use Action as A;
    let chain = [
        A::ClearOutlet,
        A::InspectWasher,
        A::SeatRegulator,
        A::TightenRegulator,
        A::ZeroFlow,
        A::OpenCylinder,
        A::ConnectDevice,
        A::SetFlow,
        A::FillReservoir,
        A::PlaceDevice,
        A::RemoveDevice,
        A::CloseCylinder,
    ];
    let free = [
        A::LayCylinderDown,
        A::PutOnGloves,
        A::CheckPins,
        A::ExplainToPatient,
        A::InspectWasher,
        A::WriteDown,
    ];
    let mut steps: Vec<Step> = Vec::new();
    for (number, action) in chain.into_iter().enumerate() {
        let before = u16::try_from(number).unwrap();
        let after: &[u16] = &[before.wrapping_sub(1)];
        steps.push(step(number, action, if number == 0 { &[] } else { after }));
    }
    for number in 12..24 {
        steps.push(step(number, free[number % free.len()], &[]));
    }
    book(steps)
}

/// Twenty-four steps that each change the equipment and may stand in any order at all.
fn unordered() -> Rulebook {
    let actions = [
        Action::LayCylinderDown,
        Action::SecureCylinder,
        Action::InspectWasher,
        Action::ZeroFlow,
    ];
    book(
        (0..24)
            .map(|number| step(number, actions[number % actions.len()], &[]))
            .collect(),
    )
}

fn proofs(criterion: &mut Criterion) {
    let (loose, unordered) = (loose(), unordered());
    criterion.bench_function("proof of the demo rulebook", |bench| {
        bench.iter(|| unsafe_orders(black_box(&RULEBOOK)))
    });
    criterion.bench_function("proof of 24 steps, half of them free", |bench| {
        bench.iter(|| unsafe_orders(black_box(&loose)));
    });
    let mut slow = criterion.benchmark_group("slow");
    slow.sample_size(10);
    slow.bench_function("proof of 24 steps in any order", |bench| {
        bench.iter(|| unsafe_orders(black_box(&unordered)))
    });
}

criterion_group!(benches, proofs);
criterion_main!(benches);
