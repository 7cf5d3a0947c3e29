//! Orders of steps that the book allows.

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Procedure, ProcedureId};

use super::rng::Rng;

pub fn procedure(id: ProcedureId) -> &'static Procedure {
    RULEBOOK.procedure(id).unwrap()
}

/// The steps of a procedure in a random order that `after` allows, by their places in the book.
pub fn random(rng: &mut Rng, procedure: &Procedure) -> Vec<usize> {
    let mut order: Vec<usize> = Vec::with_capacity(procedure.steps.len());
    while order.len() < procedure.steps.len() {
        let ready: Vec<usize> = (0..procedure.steps.len())
            .filter(|step| {
                let after = &procedure.steps[*step].after;
                !order.contains(step) && after.iter().all(|first| order.contains(&first.index()))
            })
            .collect();
        order.push(*rng.pick(&ready));
    }
    order
}
