//! A page: the look-ups of some neighbouring hazards, whose lines fit into a word.

use alloc::vec::Vec;

use super::lower::{End, Observation};
use crate::book::{Comparison, Measure};
use crate::guard::{
    Row,
    mask::{ByThree, Doubt, Sign, answer, steps_between},
};

/// The tables of a page. A table of what no guard on the page asks is empty or left out.
#[derive(Clone, Debug, Default)]
pub struct Page {
    /// The place of its first hazard in the book.
    pub first: u16,
    /// How many hazards it has; the lines from there on are parts of guards.
    pub hazards: u8,
    /// The doubt that nothing observed can take away.
    pub always: Doubt,
    /// What is measured.
    pub levels: Vec<Levels>,
    /// By the device.
    pub devices: Vec<Doubt>,
    /// By the group.
    pub groups: Vec<Doubt>,
    /// Yes-or-no observations, three by three.
    pub facts: Vec<Threes>,
    /// Conditions, three by three.
    pub conditions: Vec<Threes>,
    /// Comparisons of two observed numbers.
    pub pairs: Vec<Pair>,
    /// Comparisons with the flow limits of devices.
    pub limits: Vec<Limits>,
    /// From a line to a later one that needs that it is not so; in an order in which the first of both is ready.
    pub links: Vec<(u8, u8)>,
}

/// The doubts by what is measured.
#[derive(Clone, Debug)]
pub struct Levels {
    /// What is measured.
    pub measure: Measure,
    /// Where the answer of some guard changes, in rising order; below all of them only what isn't a number.
    pub steps: Vec<f64>,
    /// One more than there are steps.
    pub doubts: Vec<Doubt>,
}

/// The doubts by three yes-or-no questions.
#[derive(Clone, Debug)]
pub struct Threes {
    /// The first of the three bits.
    pub shift: u32,
    /// What made the table, for the emitter.
    pub signs: [Sign; 3],
    /// By the three answers.
    pub doubts: ByThree,
}

/// The doubts by the answer to a comparison.
#[derive(Clone, Debug)]
pub struct Pair {
    /// The left side.
    pub left: Observation,
    /// How: less, greater or equal.
    pub comparison: Comparison,
    /// The right side.
    pub right: Observation,
    /// Not known, yes, no; the last is never reached.
    pub doubts: [Doubt; 4],
}

/// The doubts by what is measured against an end of the device's flow limits.
#[derive(Clone, Debug)]
pub struct Limits {
    /// What is measured.
    pub measure: Measure,
    /// How: less or greater.
    pub comparison: Comparison,
    /// The end of the limits.
    pub end: End,
    /// For each place of a device, for each place of a group: where the answer becomes unknown, and known again.
    pub steps: Vec<[f64; 2]>,
    /// Not known, below both steps, between them, above.
    pub doubts: [Doubt; 4],
}

/// Neither step is ever told apart from what isn't known.
pub(super) const NO_LIMIT: [f64; 2] = [f64::NEG_INFINITY, f64::INFINITY];

impl Page {
    /// What can't be told of each line.
    pub(super) fn doubt(&self, row: &Row, devices: u32, groups: u32) -> Doubt {
        let mut doubt = self.always;
        for levels in &self.levels {
            doubt = doubt.and(levels.doubt(row.number(levels.measure)));
        }
        let (yes, no) = (u64::from(row.facts().yes()), u64::from(row.facts().no()));
        for threes in &self.facts {
            doubt = doubt.and(threes.doubts.doubt(yes, no, threes.shift));
        }
        for threes in &self.conditions {
            doubt = doubt.and(threes.doubts.doubt(row.has(), row.has_not(), threes.shift));
        }
        let (device, group) = (row.device_place(devices), row.group_place(groups));
        doubt = doubt.and(at(&self.devices, device)).and(at(&self.groups, group));
        for pair in &self.pairs {
            let answer = answer(pair.left.of(row), pair.comparison, pair.right.of(row));
            doubt = doubt.and(at(&pair.doubts, answer));
        }
        let place = device * (groups as usize + 2) + group;
        for limits in &self.limits {
            let [low, high] = limits.steps.get(place).copied().unwrap_or(NO_LIMIT);
            let number = row.number(limits.measure);
            doubt = doubt.and(at(&limits.doubts, steps_between(number, [low, high])));
        }
        for (from, to) in &self.links {
            doubt = doubt.link(*from, *to);
        }
        doubt
    }
}

impl Levels {
    fn doubt(&self, number: f64) -> Doubt {
        let reached = self.steps.iter().map(|step| usize::from(number >= *step)).sum();
        at(&self.doubts, reached)
    }
}

impl Observation {
    const fn of(self, row: &Row) -> f64 {
        match self {
            Self::Measured(measure) => row.number(measure),
            Self::TargetLow => row.target_low(),
            Self::TargetHigh => row.target_high(),
        }
    }
}

fn at(doubts: &[Doubt], place: usize) -> Doubt {
    doubts.get(place).copied().unwrap_or(Doubt::NONE)
}
