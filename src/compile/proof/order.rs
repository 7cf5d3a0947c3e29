//! A procedure's partial order, closed over: which steps come before which in every order.

use crate::book::{Procedure, StepId};

/// The most steps a procedure may have to be proved.
pub const MAX_STEPS: usize = 64;

/// A set of steps.
pub type Steps = u64;

/// The steps that must come before each step, directly or through others.
#[derive(Clone, Debug)]
pub struct Order {
    before: Vec<Steps>,
}

/// A step as a set of one.
pub const fn one(step: usize) -> Steps {
    1 << step
}

impl Order {
    /// The order of a procedure, with one more pair (`later` after `earlier`) when asked. `None` for a procedure
    /// with more than [`MAX_STEPS`] steps, or a pair that closes a ring.
    pub fn new(procedure: &Procedure, more: Option<(usize, usize)>) -> Option<Self> {
        if procedure.steps.len() > MAX_STEPS {
            return None;
        }
        let mut before: Vec<Steps> = procedure
            .steps
            .iter()
            .map(|step| {
                step.after
                    .iter()
                    .fold(0, |set, StepId(earlier)| set | one(usize::from(*earlier)))
            })
            .collect();
        if let Some((later, earlier)) = more {
            *before.get_mut(later)? |= one(earlier);
        }
        // As often as there are steps is enough for any chain of them.
        for _ in 0..before.len() {
            let closed: Vec<Steps> = before
                .iter()
                .map(|set| members(*set).fold(*set, |all, step| all | before.get(step).copied().unwrap_or(0)))
                .collect();
            if closed == before {
                break;
            }
            before = closed;
        }
        let ring = before.iter().enumerate().any(|(step, set)| set & one(step) != 0);
        (!ring).then_some(Self { before })
    }

    /// The steps that come before a step in every order.
    pub fn before(&self, step: usize) -> Steps {
        self.before.get(step).copied().unwrap_or(0)
    }

    /// Whether `earlier` comes before `later` in every order.
    pub fn is_before(&self, earlier: usize, later: usize) -> bool {
        self.before(later) & one(earlier) != 0
    }

    /// Whether one of two steps comes before the other in every order.
    pub fn are_ordered(&self, a: usize, b: usize) -> bool {
        self.is_before(a, b) || self.is_before(b, a)
    }
}

/// The steps of a set, in the order of the page.
pub fn members(set: Steps) -> impl Iterator<Item = usize> {
    (0..MAX_STEPS).filter(move |step| set & one(*step) != 0)
}
