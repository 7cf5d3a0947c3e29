//! Follows a record along the procedures of the book as long as nothing is wrong with its steps.
//!
//! A record doesn't say which procedure a step belongs to, so every reading of it that the book allows is kept beside the
//! others. While one is left the steps are in order. When none is left, or none is complete at the end,
//! [`explain`](super::explain) finds the reading that needs the fewest excuses. Most records never come there.
//!
//! Records are much alike, so the same few sets of readings come again and again. Each is kept once it was met, with what
//! follows it by each thing done; a step met before is then one look into a table.

use alloc::{collections::BTreeMap, vec::Vec};

use super::{
    chart::{Bag, Chart, Plan, Steps, members, one},
    explain::Done,
};
use crate::book::Rulebook;

/// No more readings than this are kept; a record that allows more is looked at by the slower way.
const MOST: usize = 48;
/// So many sets of readings are kept; then all are forgotten but the one that is left.
const SETS: usize = 16384;

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

/// The number of a set of readings.
type SetId = u16;
/// No reading is left.
const LOST: SetId = 0;
/// Nothing was done yet.
const BEGINNING: SetId = 1;
/// What follows has not been worked out yet.
const UNKNOWN: SetId = SetId::MAX;

/// The readings that are left.
#[derive(Debug)]
pub struct Readings<'b> {
    /// How many sets are kept before all are forgotten.
    room: usize,
    /// The book whose sets are kept.
    book: Option<&'b Rulebook>,
    left: SetId,
    /// All sets, one after the other.
    readings: Vec<Reading>,
    /// Where each set ends in `readings`.
    ends: Vec<usize>,
    /// The set of each mark, which tells most sets apart at a glance.
    marks: BTreeMap<u64, SetId>,
    /// For each set, which follows it by each thing done.
    follows: Vec<SetId>,
    next: Vec<Reading>,
}

impl Default for Readings<'_> {
    fn default() -> Self {
        Self::with_room(SETS)
    }
}

impl<'b> Readings<'b> {
    const fn with_room(room: usize) -> Self {
        Self {
            room,
            book: None,
            left: LOST,
            readings: Vec::new(),
            ends: Vec::new(),
            marks: BTreeMap::new(),
            follows: Vec::new(),
            next: Vec::new(),
        }
    }

    /// Begins a new record.
    pub fn begin(&mut self, chart: &Chart<'b>) {
        if !self.book.is_some_and(|book| core::ptr::eq(book, chart.book())) {
            self.book = Some(chart.book());
            self.forget(chart);
        }
        self.left = BEGINNING;
    }

    fn forget(&mut self, chart: &Chart<'_>) {
        self.readings.clear();
        self.ends.clear();
        self.marks.clear();
        self.follows.clear();
        self.next.clear();
        // LOST and BEGINNING, which hold no readings.
        for _ in [LOST, BEGINNING] {
            self.add(chart, 0);
        }
    }

    fn add(&mut self, chart: &Chart<'_>, mark: u64) -> SetId {
        let id = SetId::try_from(self.ends.len()).unwrap_or(LOST);
        self.readings.extend_from_slice(&self.next);
        self.ends.push(self.readings.len());
        self.marks.entry(mark).or_insert(id);
        self.follows
            .resize(self.follows.len() + chart.things_done(), UNKNOWN);
        id
    }

    fn set(&self, id: SetId) -> &[Reading] {
        let id = usize::from(id);
        let start = id.checked_sub(1).and_then(|before| self.ends.get(before));
        let end = self.ends.get(id).copied().unwrap_or(0);
        self.readings.get(start.copied().unwrap_or(0)..end).unwrap_or(&[])
    }

    /// Takes in what was done.
    pub fn follow(&mut self, chart: &Chart<'_>, done: &Done) {
        if self.left == LOST {
            return;
        }
        let thing = chart.thing(done.action, done.device, done.bag);
        let known = self.follows.get(self.place(chart, thing)).copied();
        self.left = known.filter(|known| *known != UNKNOWN).unwrap_or_else(|| {
            self.make_room(chart);
            self.work_out(chart, done);
            let after = self.number(chart);
            let place = self.place(chart, thing);
            if let Some(follows) = self.follows.get_mut(place) {
                *follows = after;
            }
            after
        });
    }

    /// Where it is kept what follows the set that is left by a thing done.
    const fn place(&self, chart: &Chart<'_>, thing: usize) -> usize {
        self.left as usize * chart.things_done() + thing
    }

    /// Forgets all sets but the one that is left, when there are too many.
    fn make_room(&mut self, chart: &Chart<'_>) {
        if self.ends.len() < self.room {
            return;
        }
        let mut left = core::mem::take(&mut self.next);
        left.clear();
        left.extend_from_slice(self.set(self.left));
        self.forget(chart);
        if self.left != BEGINNING {
            self.next = left;
            self.left = self.number(chart);
        }
    }

    /// The readings after this was done.
    fn work_out(&mut self, chart: &Chart<'_>, done: &Done) {
        let mut next = core::mem::take(&mut self.next);
        next.clear();
        if self.left == BEGINNING {
            for (procedure, _) in chart.all() {
                enter(&mut next, chart, procedure, procedure, done);
            }
        }
        for reading in self.set(self.left) {
            let Some(plan) = chart.plan(reading.procedure) else {
                continue;
            };
            if let Some(after) = goes_on(chart, plan, reading.done, done) {
                let after = Reading {
                    done: after,
                    ..*reading
                };
                keep(&mut next, after);
            }
            if plan.critical(done.bag) & !reading.done == 0 {
                for &follower in plan.entered_by(done.action) {
                    enter(&mut next, chart, reading.first, follower, done);
                }
            }
        }
        self.next = next;
    }

    /// The number of the set in `next`, which is kept if it is new.
    fn number(&mut self, chart: &Chart<'_>) -> SetId {
        if self.next.is_empty() || self.next.len() >= MOST {
            return LOST;
        }
        let mark = self.next.iter().fold(0_u64, |mark, reading| {
            let which = u64::from(reading.first) << 16 | u64::from(reading.procedure);
            (mark ^ reading.done ^ which.rotate_left(40))
                .wrapping_mul(0x9e37_79b9_7f4a_7c15)
                .rotate_left(29)
        });
        match self.marks.get(&mark) {
            Some(&id) if self.set(id) == self.next => id,
            _ => self.add(chart, mark),
        }
    }

    /// The procedure with which the record began, when its steps are in order and none is missing.
    pub fn complete(&self, chart: &Chart<'_>, bag: Bag) -> Option<u16> {
        let complete = |reading: &&Reading| {
            chart
                .plan(reading.procedure)
                .is_some_and(|plan| plan.critical(bag) & !reading.done == 0)
        };
        self.set(self.left)
            .iter()
            .find(complete)
            .map(|reading| reading.first)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{Action, DeviceId};

    /// Records of anything at all, by a plain generator (Knuth's constants for 64 bits), with as much room as there is and
    /// with hardly any: what is left, and what is complete, must be the same after every step.
    #[test]
    fn what_is_forgotten_makes_no_difference() {
        let book = &crate::RULEBOOK;
        let chart = Chart::new(book);
        let mut seed = 7_u64;
        let mut any = |most: usize| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (seed >> 33) as usize % most
        };
        let (mut roomy, mut narrow) = (Readings::default(), Readings::with_room(3));
        let (mut went_on, mut forgot) = (0, 0);
        for _ in 0..500 {
            roomy.begin(&chart);
            narrow.begin(&chart);
            for event in 0..60 {
                // Steps of the book in its own order go on for long; one in eight is any other.
                let procedure = &book.procedures[any(book.procedures.len())];
                for step in &procedure.steps {
                    let action = if any(8) == 0 {
                        Action::ALL[any(Action::ALL.len())]
                    } else {
                        step.action
                    };
                    let device = DeviceId(u16::try_from(any(book.devices.len())).unwrap());
                    let done = Done {
                        event,
                        action,
                        device: Some(device),
                        bag: Bag::May,
                    };
                    let kept = narrow.ends.len();
                    roomy.follow(&chart, &done);
                    narrow.follow(&chart, &done);
                    forgot += usize::from(narrow.ends.len() < kept);
                    went_on += usize::from(roomy.left != LOST);
                    assert!(narrow.ends.len() <= 4);
                    assert_eq!(roomy.set(roomy.left), narrow.set(narrow.left));
                    for bag in [Bag::May, Bag::None] {
                        assert_eq!(roomy.complete(&chart, bag), narrow.complete(&chart, bag));
                    }
                }
                if roomy.left == LOST {
                    break;
                }
            }
        }
        assert!(
            went_on > 1_000 && forgot > 100,
            "{went_on} steps, forgotten {forgot} times"
        );
    }
}
