//! Follows a record along the procedures of the book as long as nothing is wrong with its steps.
//!
//! A record doesn't say which procedure a step belongs to, so every reading of it that the book allows is kept beside the
//! others. While one is left the steps are in order. When none is left, or none is complete at the end,
//! [`explain`](super::explain) finds the reading that needs the fewest excuses. Most records never come there.

use alloc::vec::Vec;

use super::{
    chart::{Bag, Chart, Plan, Steps, members, one},
    explain::Done,
};

/// No more readings than this are kept; a record that allows more is looked at by the slower way.
const MOST: usize = 48;

/// One reading of the record so far.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Reading {
    /// The procedure with which the record began.
    first: u16,
    /// The procedure that goes on.
    procedure: u16,
    /// Its steps that were done.
    done: Steps,
}

/// The readings that are left.
#[derive(Debug, Default)]
pub struct Readings {
    left: Vec<Reading>,
    next: Vec<Reading>,
    begun: bool,
    lost: bool,
}

impl Readings {
    /// Begins a new record.
    pub fn clear(&mut self) {
        self.left.clear();
        self.begun = false;
        self.lost = false;
    }

    /// Takes in what was done.
    pub fn follow(&mut self, chart: &Chart<'_>, done: &Done) {
        if self.lost {
            return;
        }
        self.next.clear();
        if self.begun {
            for reading in &self.left {
                let Some(plan) = chart.plan(reading.procedure) else {
                    continue;
                };
                if let Some(after) = goes_on(chart, plan, reading.done, done) {
                    let after = Reading {
                        done: after,
                        ..*reading
                    };
                    keep(&mut self.next, after);
                }
                if plan.critical(done.bag) & !reading.done == 0 {
                    for &follower in plan.entered_by(done.action) {
                        enter(&mut self.next, chart, reading.first, follower, done);
                    }
                }
            }
        } else {
            for (procedure, _) in chart.all() {
                enter(&mut self.next, chart, procedure, procedure, done);
            }
        }
        self.begun = true;
        self.lost = self.next.is_empty() || self.next.len() >= MOST;
        core::mem::swap(&mut self.left, &mut self.next);
    }

    /// The procedure with which the record began, when its steps are in order and none is missing.
    pub fn complete(&self, chart: &Chart<'_>, bag: Bag) -> Option<u16> {
        if self.lost {
            return None;
        }
        let complete = |reading: &&Reading| {
            chart
                .plan(reading.procedure)
                .is_some_and(|plan| plan.critical(bag) & !reading.done == 0)
        };
        self.left.iter().find(complete).map(|reading| reading.first)
    }
}

/// A reading once; how it began makes no difference to how it goes on, and the first in the book is kept.
fn keep(readings: &mut Vec<Reading>, reading: Reading) {
    let same = |other: &Reading| other.procedure == reading.procedure && other.done == reading.done;
    if readings.len() < MOST && !readings.iter().any(same) {
        readings.push(reading);
    }
}

fn enter(readings: &mut Vec<Reading>, chart: &Chart<'_>, first: u16, procedure: u16, done: &Done) {
    let Some(plan) = chart.plan(procedure) else {
        return;
    };
    if let Some(step) = next_step(plan, 0, done) {
        let done = one(step);
        keep(
            readings,
            Reading {
                first,
                procedure,
                done,
            },
        );
    }
}

/// The steps done after an action within the procedure; `None` when it has no place in it.
fn goes_on(chart: &Chart<'_>, plan: &Plan<'_>, before: Steps, done: &Done) -> Option<Steps> {
    if let Some(step) = next_step(plan, before, done) {
        return Some(before | one(step));
    }
    // Done again, or a look that belongs to no step: neither is ever wrong.
    let doing = plan.doing(done.action);
    let again = doing & before != 0;
    (again || (doing == 0 && chart.is_harmless(done.action))).then_some(before)
}

/// The first step that does this and may be done now: what is critical before it is done, and nothing that comes after it.
fn next_step(plan: &Plan<'_>, before: Steps, done: &Done) -> Option<usize> {
    if !plan.is_for(done.device) {
        return None;
    }
    let critical = plan.critical(done.bag);
    members(plan.doing(done.action) & !before)
        .find(|step| plan.before(*step) & critical & !before == 0 && plan.later(*step) & before == 0)
}
