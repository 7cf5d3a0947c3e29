//! The reviewer: what it needs of a book, made once, and the review of one run after the other.

use alloc::vec::Vec;

use super::{
    chart::{Bag, Chart, Plan},
    explain::{Done, Excuse, Explainer},
    finding::{About, Finding, NotRecorded},
    follow::Readings,
    ledger::Tolerance,
    record::{Field, Moment, Run},
    replay::{self, Replay},
    watch::{Entered, Kinds},
};
use crate::book::{Action, Kind, ProcedureId, Rule, Rulebook, Step};
use crate::check::Level;
use crate::equipment::{Known, Refusal, State, row};
use crate::guard::Evaluator;

/// Reviews runs against one book. Made once; may be shared between threads, each with [`Notes`] of its own.
///
/// ```
/// use oxyfolio::book::Action;
/// use oxyfolio::check::review::{Event, Moment, Notes, Reviewer, Run};
/// use oxyfolio::quantity::Flow;
/// use oxyfolio::{device, group, hazard};
///
/// let at = |minute: i64| Some(Moment::new(minute * 60_000, 0));
/// let (mask, flow) = (Some(device::NON_REBREATHER), Some(Flow::litres_per_minute(15.0)?));
/// let events = [
///     Event { at: at(0), action: Some(Action::ConnectDevice), device: mask, ..Event::default() },
///     Event { at: at(1), action: Some(Action::SetFlow), flow, ..Event::default() },
///     // On the patient, and nobody filled the bag.
///     Event { at: at(2), action: Some(Action::PlaceDevice), ..Event::default() },
/// ];
/// let run = Run { group: Some(group::ADULT), conditions: Some(&[]), temperature: None, events: &events };
/// let reviewer = Reviewer::new(hazard::Guards);
/// let mut codes = Vec::new();
/// reviewer.review(&run, &mut Notes::default(), |finding| codes.push(finding.code()));
/// assert!(codes.contains(&"reservoir-not-filled"));
/// // How much gas there was, nobody wrote down: that is told, not passed.
/// assert!(codes.contains(&"pressure-not-recorded"));
/// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
/// ```
#[derive(Debug)]
pub struct Reviewer<'b, E> {
    evaluator: E,
    chart: Chart<'b>,
    kinds: Kinds,
    tolerance: Tolerance,
}

/// What a reviewer notes while it reads a run; kept from run to run, so that nothing is allocated for each.
#[derive(Debug, Default)]
pub struct Notes<'b> {
    pub(super) found: Vec<Finding<'b>>,
    pub(super) entered: Vec<Option<Entered<'b>>>,
    /// What was known before each event.
    pub(super) known: Vec<Known>,
    /// The time of each event, put right where that is possible.
    pub(super) times: Vec<Option<Moment>>,
    pub(super) refused: Vec<(u32, Action, Refusal)>,
    done: Vec<Done>,
    readings: Readings<'b>,
    explainer: Explainer,
    excuses: Vec<(u32, Excuse)>,
}

impl<'b, E: Evaluator<'b>> Reviewer<'b, E> {
    /// A reviewer for the book of an evaluator.
    pub fn new(evaluator: E) -> Self {
        let book = evaluator.book();
        Self {
            chart: Chart::new(book),
            kinds: Kinds::of(&evaluator),
            tolerance: Tolerance::of(&book.policies),
            evaluator,
        }
    }

    /// The book.
    pub fn book(&self) -> &'b Rulebook {
        self.evaluator.book()
    }

    /// Reviews one run. Findings come in the order of the events at which they began; those about the whole run last.
    pub fn review(&self, run: &Run<'_>, notes: &mut Notes<'b>, mut visit: impl FnMut(Finding<'b>)) {
        let book = self.book();
        notes.found.clear();
        notes.known.clear();
        notes.times.clear();
        notes.refused.clear();
        if run.events.is_empty() {
            notes.found.push(self.not_recorded(NotRecorded::Events));
        } else {
            let first = self.follow(run, notes);
            let begins = first.and_then(|first| book.procedure(ProcedureId(first)));
            let start = match begins {
                Some(procedure) if procedure.follows.is_empty() => {
                    Known::exactly(State::beginning(&procedure.begins_with))
                }
                _ => Known::NOTHING,
            };
            let in_order = first.is_some() && notes.excuses.is_empty();
            Replay::new(book, &self.evaluator, &self.kinds, self.tolerance, run, notes).play(start);
            if !in_order || !notes.refused.is_empty() {
                self.tell_steps(notes, in_order);
            }
        }
        // Stable: what is seen at one event stays in the order in which it is looked for.
        notes
            .found
            .sort_by_key(|finding| finding.event.unwrap_or(u32::MAX));
        for finding in &notes.found {
            visit(*finding);
        }
    }

    /// Reads the steps, first the quick way, then, where something is wrong, the thorough one. Gives the procedure with
    /// which the record begins.
    fn follow(&self, run: &Run<'_>, notes: &mut Notes<'b>) -> Option<u16> {
        notes.readings.begin(&self.chart);
        notes.done.clear();
        notes.excuses.clear();
        let mut bag = Bag::May;
        for (event, one) in (0_u32..).zip(run.events) {
            let Some(action) = one
                .action
                .filter(|_| !replay::is_duplicate(run.events, event as usize))
            else {
                continue;
            };
            let device = one.device;
            if let Some(device) = device.and_then(|id| self.book().device(id)) {
                bag = if device.reservoir { Bag::May } else { Bag::None };
            } else if one.unreadable.has(Field::Device) {
                bag = Bag::May;
            }
            let done = Done {
                event,
                action,
                device,
                bag,
            };
            notes.readings.follow(&self.chart, &done);
            notes.done.push(done);
        }
        if notes.done.is_empty() {
            return None;
        }
        if let Some(first) = notes.readings.complete(&self.chart, bag) {
            return Some(first);
        }
        let excuses = &mut notes.excuses;
        notes
            .explainer
            .explain(&self.chart, &notes.done, |event, excuse| {
                excuses.push((event, excuse))
            })
    }

    /// Findings about steps, once it is known how the equipment was at each of them.
    fn tell_steps(&self, notes: &mut Notes<'b>, in_order: bool) {
        if in_order {
            // Only to know to which procedure a refused step belongs.
            notes.explainer.explain(&self.chart, &notes.done, |_, _| {});
        }
        for place in 0..notes.excuses.len() {
            if let Some(&(event, excuse)) = notes.excuses.get(place)
                && let Some((level, plan, about)) = self.excuse(notes, event, excuse)
            {
                self.step_finding(notes, level, plan, about, event);
            }
        }
        for place in 0..notes.refused.len() {
            let Some(&(event, action, refusal)) = notes.refused.get(place) else {
                continue;
            };
            let read = notes.done.iter().position(|done| done.event == event);
            let procedure = read.and_then(|read| notes.explainer.belongs.get(read));
            if let Some(plan) = procedure.and_then(|procedure| self.chart.plan(*procedure)) {
                self.step_finding(
                    notes,
                    Level::Warn,
                    plan,
                    About::Refused { action, refusal },
                    event,
                );
            }
        }
    }

    fn step_finding(
        &self,
        notes: &mut Notes<'b>,
        level: Level,
        plan: &Plan<'b>,
        about: About<'b>,
        event: u32,
    ) {
        notes.found.push(Finding {
            level,
            kind: Kind::Procedure,
            rule: &plan.procedure.rule,
            about,
            event: Some(event),
            from: notes.times.get(event as usize).copied().flatten(),
            until: None,
            pressure_unit: self.book().agency.pressure_unit,
        });
    }

    fn excuse(&self, notes: &Notes<'b>, event: u32, excuse: Excuse) -> Option<(Level, &Plan<'b>, About<'b>)> {
        Some(match excuse {
            Excuse::TooEarly {
                procedure,
                step,
                first,
            } => {
                let plan = self.chart.plan(procedure)?;
                let (step, first) = (plan.step(step)?, plan.step(first)?);
                let procedure = plan.procedure;
                (
                    Level::Warn,
                    plan,
                    About::TooEarly {
                        procedure,
                        step,
                        first,
                    },
                )
            }
            Excuse::Skipped { procedure, step } => {
                let plan = self.chart.plan(procedure)?;
                let step = plan.step(step)?;
                let already_so = already_so(notes, event, step);
                let about = About::Skipped {
                    procedure: plan.procedure,
                    step,
                    already_so,
                };
                let level = if already_so { Level::Note } else { Level::Warn };
                (level, plan, about)
            }
            Excuse::OutOfPlace { procedure, action } => {
                let plan = self.chart.plan(procedure)?;
                let procedure = plan.procedure;
                (Level::Warn, plan, About::OutOfPlace { procedure, action })
            }
            Excuse::DoesNotFollow { procedure, before } => {
                let plan = self.chart.plan(procedure)?;
                let (procedure, before) = (plan.procedure, self.chart.plan(before)?.procedure);
                (Level::Warn, plan, About::DoesNotFollow { procedure, before })
            }
        })
    }

    fn not_recorded(&self, what: NotRecorded) -> Finding<'b> {
        let book = self.book();
        let rule: &'b Rule = &book.agency.rule;
        Finding {
            level: Level::Unknown,
            kind: Kind::Agency,
            rule,
            about: About::NotRecorded(what),
            event: None,
            from: None,
            until: None,
            pressure_unit: book.agency.pressure_unit,
        }
    }
}

/// Whether a step that is missing would have changed nothing: what it does was so already, and is known to have been. A look does
/// nothing to the equipment, and what it would have shown nobody knows.
fn already_so(notes: &Notes<'_>, event: u32, step: &Step) -> bool {
    row(step.action).iter().any(|case| !case.does.is_empty())
        && notes.known.get(event as usize).is_some_and(|before| {
            let same = before.after(step.action) == Ok(*before);
            same && before.state().is_some()
        })
}
