//! The steps of a book's procedures as sets, made once, so that a record can be followed with a few operations an event.

use alloc::{vec, vec::Vec};

use crate::book::{Action, DeviceId, Procedure, ProcedureId, Rulebook, Step, StepId};
use crate::equipment::row;

/// A set of steps of one procedure. A book whose procedures have more steps is refused when it is read.
pub type Steps = u64;

/// The procedures of a book.
#[derive(Debug)]
pub struct Chart<'b> {
    book: &'b Rulebook,
    plans: Vec<Plan<'b>>,
    /// The kind of no device named, of each device of the book, and of one that isn't the book's. Between devices of one
    /// kind the procedures make no difference.
    alike: Vec<usize>,
    /// How many kinds there are.
    kinds: usize,
    /// By action, whether it is harmless wherever it is done.
    harmless: Vec<bool>,
}

/// One procedure.
#[derive(Debug)]
pub struct Plan<'b> {
    /// The procedure.
    pub procedure: &'b Procedure,
    /// The procedures that may come after it.
    pub followers: Vec<u16>,
    /// Those of them that have a step of an action, by action.
    entered_by: Vec<Vec<u16>>,
    /// The steps that may not be left out.
    critical: Steps,
    /// The steps that fill a reservoir bag.
    fills: Steps,
    /// The steps that do an action, by action.
    by_action: Vec<Steps>,
    /// The steps that come before each step, directly or through others.
    before: Vec<Steps>,
    /// The steps that come after each step, directly or through others.
    later: Vec<Steps>,
}

/// Whether the device last named has a reservoir bag to be filled.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Bag {
    /// It surely has none.
    None,
    /// It has, or nobody knows.
    #[default]
    May,
}

/// A step as a set of one; none beyond the last that a set holds.
pub fn one(step: usize) -> Steps {
    u32::try_from(step)
        .ok()
        .and_then(|step| 1_u64.checked_shl(step))
        .unwrap_or(0)
}

/// The steps of a set, in the order of the page.
pub fn members(mut set: Steps) -> impl Iterator<Item = usize> {
    core::iter::from_fn(move || {
        let step = set.trailing_zeros();
        set &= set.wrapping_sub(1);
        (step < Steps::BITS).then_some(step as usize)
    })
}

impl<'b> Chart<'b> {
    /// The chart of a book.
    pub fn new(book: &'b Rulebook) -> Self {
        let plans: Vec<_> = (0_u16..)
            .map(ProcedureId)
            .zip(&book.procedures)
            .map(|(id, procedure)| Plan::new(book, id, procedure))
            .collect();
        let mut kinds: Vec<Vec<bool>> = Vec::new();
        let named = (0_u16..).map(DeviceId).take(book.devices.len()).map(Some);
        let not_of_the_book = Some(DeviceId(u16::MAX));
        let alike = core::iter::once(None)
            .chain(named)
            .chain([not_of_the_book])
            .map(|device| {
                let kind: Vec<bool> = plans.iter().map(|plan: &Plan<'_>| plan.is_for(device)).collect();
                kinds.iter().position(|other| *other == kind).unwrap_or_else(|| {
                    kinds.push(kind);
                    kinds.len() - 1
                })
            })
            .collect();
        let steps = || book.procedures.iter().flat_map(|procedure| &procedure.steps);
        let harmless = Action::ALL.iter().map(|action| {
            // A look changes nothing; and of what is in no procedure the book doesn't say where it belongs.
            let is_look = row(*action).iter().all(|case| case.does.is_empty());
            is_look || !steps().any(|step| step.action == *action)
        });
        Self {
            book,
            plans,
            alike,
            kinds: kinds.len(),
            harmless: harmless.collect(),
        }
    }

    /// The book.
    pub const fn book(&self) -> &'b Rulebook {
        self.book
    }

    /// How many different things can be done, as far as the order of steps goes.
    pub const fn things_done(&self) -> usize {
        Action::ALL.len() * self.kinds * 2
    }

    /// The number of a thing done, below [`things_done`](Self::things_done).
    pub fn thing(&self, action: Action, device: Option<DeviceId>, bag: Bag) -> usize {
        let place = device.map_or(0, |device| device.index() + 1);
        let kind = self.alike.get(place).or(self.alike.last()).copied().unwrap_or(0);
        (action as usize * self.kinds + kind) * 2 + usize::from(bag == Bag::May)
    }

    /// Whether an action that is no step of the procedure that goes on is harmless: only a look, or in no procedure at all.
    pub fn is_harmless(&self, action: Action) -> bool {
        self.harmless.get(action as usize).copied().unwrap_or(false)
    }

    /// A procedure's plan.
    pub fn plan(&self, procedure: u16) -> Option<&Plan<'b>> {
        self.plans.get(usize::from(procedure))
    }

    /// All of them, with their numbers.
    pub fn all(&self) -> impl Iterator<Item = (u16, &Plan<'b>)> {
        (0_u16..).zip(&self.plans)
    }
}

impl<'b> Plan<'b> {
    fn new(book: &'b Rulebook, id: ProcedureId, procedure: &'b Procedure) -> Self {
        let steps = &procedure.steps;
        let mut by_action = vec![0; Action::ALL.len()];
        let (mut critical, mut fills) = (0, 0);
        let mut before: Vec<Steps> = Vec::with_capacity(steps.len());
        for (place, step) in steps.iter().enumerate() {
            if let Some(set) = by_action.get_mut(step.action as usize) {
                *set |= one(place);
            }
            if step.critical {
                critical |= one(place);
            }
            if step.action == Action::FillReservoir {
                fills |= one(place);
            }
            before.push(
                step.after
                    .iter()
                    .fold(0, |set, StepId(earlier)| set | one(usize::from(*earlier))),
            );
        }
        // As often as there are steps is enough for any chain of them.
        for _ in 0..steps.len() {
            let closed: Vec<Steps> = before
                .iter()
                .map(|set| members(*set).fold(*set, |all, step| all | before.get(step).copied().unwrap_or(0)))
                .collect();
            before = closed;
        }
        let later = (0..steps.len())
            .map(|step| {
                let after = before.iter().enumerate().filter(|(_, set)| *set & one(step) != 0);
                after.fold(0, |all, (later, _)| all | one(later))
            })
            .collect();
        let followers: Vec<u16> = (0_u16..)
            .zip(&book.procedures)
            // What may be done may be done again: a device is changed, and changed once more.
            .filter(|(next, procedure)| procedure.follows.contains(&id) || *next == id.0)
            .map(|(next, _)| next)
            .collect();
        let has = |follower: &u16, action: &Action| {
            let procedure = book.procedures.get(usize::from(*follower));
            procedure.is_some_and(|procedure| procedure.steps.iter().any(|step| step.action == *action))
        };
        let entered_by = Action::ALL
            .iter()
            .map(|action| {
                followers
                    .iter()
                    .copied()
                    .filter(|next| has(next, action))
                    .collect()
            })
            .collect();
        Self {
            procedure,
            followers,
            entered_by,
            critical,
            fills,
            by_action,
            before,
            later,
        }
    }

    /// The critical steps; with a device that has no bag, but those that would fill it.
    pub fn critical(&self, bag: Bag) -> Steps {
        match bag {
            Bag::None => self.critical & !self.fills,
            Bag::May => self.critical,
        }
    }

    /// The procedures that may come after it and have a step that does this.
    pub fn entered_by(&self, action: Action) -> &[u16] {
        self.entered_by.get(action as usize).map_or(&[], Vec::as_slice)
    }

    /// The steps that do this.
    pub fn doing(&self, action: Action) -> Steps {
        self.by_action.get(action as usize).copied().unwrap_or(0)
    }

    /// The steps that come before a step.
    pub fn before(&self, step: usize) -> Steps {
        self.before.get(step).copied().unwrap_or(0)
    }

    /// The steps that come after a step.
    pub fn later(&self, step: usize) -> Steps {
        self.later.get(step).copied().unwrap_or(0)
    }

    /// A step.
    pub fn step(&self, step: usize) -> Option<&'b Step> {
        self.procedure.steps.get(step)
    }

    /// Whether it is for this device; what isn't known is no reason against it.
    pub fn is_for(&self, device: Option<DeviceId>) -> bool {
        let devices = &self.procedure.devices;
        devices.is_empty() || device.is_none_or(|device| devices.contains(&device))
    }
}
