//! Steps that can come before what they rely on.

use super::order::Order;
use crate::book::Procedure;
use crate::equipment::{Reliance, relies_on};

/// A step that can come before one it relies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooEarly {
    /// The step.
    pub step: usize,
    /// The one it relies on.
    pub on: usize,
}

/// Every step of a procedure that can come before one it relies on.
pub fn too_early(procedure: &Procedure, order: &Order) -> Vec<TooEarly> {
    let mut found = Vec::new();
    for (step, later) in procedure.steps.iter().enumerate() {
        for (action, reliance) in relies_on(later.action) {
            let looks: Vec<usize> = procedure
                .steps
                .iter()
                .enumerate()
                .filter(|(other, earlier)| *other != step && earlier.action == *action)
                .map(|(other, _)| other)
                .collect();
            let good = |look: &usize| match reliance {
                Reliance::First => order.is_before(*look, step),
                Reliance::Ordered => order.are_ordered(*look, step),
            };
            if let Some(first) = looks.first()
                && !looks.iter().any(good)
            {
                found.push(TooEarly { step, on: *first });
            }
        }
    }
    found
}
