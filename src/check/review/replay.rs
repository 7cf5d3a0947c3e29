//! The replay of one run: time passes, gas is used, things are done; and at every event the book is asked.

use alloc::vec::Vec;

use super::{
    aim::{Aim, Given, target_of},
    asking::{Asked, Stretch},
    closing::Blanks,
    finding::{About, Fault, Finding, NotRecorded, Scene},
    happens::OutOfRange,
    ledger::{Ledger, Tolerance},
    record::{Event, Moment, Run},
    reviewer::Notes,
    watch::{Kinds, Watch},
};
use crate::book::{Action, Cylinder, Device, DeviceId, Fact, Kind, Rule, Rulebook};
use crate::check::{Level, Missing};
use crate::equipment::{Known, Loss, Refusal};
use crate::guard::{Evaluator, Row};
use crate::quantity::Flow;

/// A line this much earlier than the one before has the date of the day before.
const PAST_MIDNIGHT_MINUTES: f64 = 12.0 * 60.0;
/// No run pauses so long: the clock was set.
const JUMP_MINUTES: f64 = 12.0 * 60.0;
const DAY_MINUTES: f64 = 24.0 * 60.0;
const DAY_MILLIS: i64 = 86_400_000;

/// Whether an event says the same as the one before.
pub fn is_duplicate(events: &[Event], place: usize) -> bool {
    match place
        .checked_sub(1)
        .and_then(|before| Some((events.get(before)?, events.get(place)?)))
    {
        // By a clock that tells minutes only, two readings may well be the same.
        Some((before, event)) => {
            // Mostly the first of these tells.
            event.at == before.at
                && event
                    .at
                    .is_some_and(|at| event.action.is_some() || !at.is_whole_minute())
                && event == before
        }
        None => false,
    }
}

/// A run being replayed.
pub struct Replay<'n, 'b, E> {
    pub(super) book: &'b Rulebook,
    pub(super) evaluator: &'n E,
    pub(super) kinds: &'n Kinds,
    pub(super) run: &'n Run<'n>,
    pub(super) watch: Watch<'n, 'b>,
    pub(super) ledger: Ledger<'b>,
    pub(super) aim: Option<Aim<'b>>,
    pub(super) no_target: Option<Missing>,
    /// How long the patient may be off the target before something is changed, in minutes.
    pub(super) recheck: f64,
    pub(super) known_before: &'n mut Vec<Known>,
    pub(super) times: &'n mut Vec<Option<Moment>>,
    pub(super) refused: &'n mut Vec<(u32, Action, Refusal)>,
    pub(super) known: Known,
    pub(super) flow: Option<Flow>,
    pub(super) device: Option<&'b Device>,
    pub(super) device_id: Option<DeviceId>,
    /// A device chosen while another is worn.
    pub(super) chosen: Option<(DeviceId, &'b Device)>,
    pub(super) spare: Option<Option<&'b Cylinder>>,
    pub(super) row: Row,
    pub(super) asked: Asked,
    /// The time that passed before this event with gas flowing.
    pub(super) stretch: Option<Stretch>,
    pub(super) last: Option<Moment>,
    pub(super) now: Option<Moment>,
    pub(super) shift: i64,
    pub(super) event: u32,
    pub(super) out_of_range: Option<OutOfRange<'b>>,
    /// By the sum the gas ended too early; told unless a reading says otherwise.
    pub(super) ran_out: Option<(About<'b>, u32, Option<Moment>)>,
    pub(super) blanks: Blanks,
    /// Whether a device was on the patient at some time.
    pub(super) gave: bool,
    pub(super) spo2_on_oxygen: bool,
    pub(super) readings: bool,
    pub(super) actions: bool,
    /// Without any action recorded, a flow is taken to be to the patient.
    pub(super) assumed_on_patient: bool,
}

impl<'n, 'b, E: Evaluator<'b>> Replay<'n, 'b, E> {
    pub fn new(
        book: &'b Rulebook,
        evaluator: &'n E,
        kinds: &'n Kinds,
        tolerance: Tolerance,
        run: &'n Run<'n>,
        notes: &'n mut Notes<'b>,
    ) -> Self {
        let target = target_of(book, run);
        let aim = target.ok().and_then(Aim::new);
        let mut row = Row::UNKNOWN;
        row.set_group(run.group);
        row.set_conditions(run.conditions);
        row.set_temperature(run.temperature);
        row.set_target(aim.as_ref().map(Aim::range));
        let actions = run.events.iter().any(|event| event.action.is_some());
        Self {
            book,
            evaluator,
            kinds,
            run,
            watch: Watch::new(book, kinds, &mut notes.entered, &mut notes.found),
            ledger: Ledger::new(book, tolerance, run.temperature),
            recheck: target.map_or(0.0, |target| target.recheck.as_minutes()),
            no_target: target.err(),
            aim,
            known_before: &mut notes.known,
            times: &mut notes.times,
            refused: &mut notes.refused,
            known: Known::NOTHING,
            flow: None,
            device: None,
            device_id: None,
            chosen: None,
            spare: None,
            row,
            asked: Asked::default(),
            stretch: None,
            last: None,
            now: None,
            shift: 0,
            event: 0,
            out_of_range: None,
            ran_out: None,
            blanks: Blanks::default(),
            gave: false,
            spo2_on_oxygen: false,
            readings: false,
            actions,
            assumed_on_patient: !actions,
        }
    }

    /// Replays the run from what is known at its start.
    pub fn play(mut self, start: Known) {
        self.known = start;
        let events = self.run.events;
        for (place, event) in events.iter().enumerate() {
            self.event = u32::try_from(place).unwrap_or(u32::MAX);
            self.known_before.push(self.known);
            if is_duplicate(events, place) {
                self.fault(Fault::Duplicate);
                self.times.push(self.now);
                continue;
            }
            let before = self.given();
            self.stretch = None;
            self.clock(event);
            self.times.push(self.now);
            self.happens(event, before);
        }
        self.end();
    }

    // Time.

    /// Lets the time pass to an event's.
    fn clock(&mut self, event: &Event) {
        let Some(at) = event.at else {
            self.blanks.add(NotRecorded::Times);
            self.now = None;
            // What changes at an unknown time spoils the sum of gas.
            if event.action.is_some() || event.flow.is_some() {
                self.ledger.lose();
            }
            return;
        };
        let mut at = at.plus_millis(self.shift);
        self.now = Some(at);
        let Some(last) = self.last else {
            self.last = Some(at);
            return;
        };
        let mut minutes = at.minutes_since(last);
        if minutes <= -PAST_MIDNIGHT_MINUTES && minutes > -DAY_MINUTES {
            self.fault(Fault::PastMidnight);
            self.shift += DAY_MILLIS;
            at = at.plus_millis(DAY_MILLIS);
            self.now = Some(at);
            minutes += DAY_MINUTES;
        }
        if minutes < 0.0 {
            self.fault(Fault::OutOfOrder);
            self.ledger.lose();
            return;
        }
        if minutes > JUMP_MINUTES {
            let hours = (minutes / 6.0) as u32;
            self.fault(Fault::Jump {
                hours: f64::from(hours) / 10.0,
            });
            self.ledger.lose();
            self.last = Some(at);
            return;
        }
        if minutes > 0.0 {
            self.pass(last, at, minutes);
        }
        self.last = Some(at);
    }

    fn pass(&mut self, from: Moment, to: Moment, minutes: f64) {
        if let Some(aim) = &mut self.aim {
            aim.pass(to);
        }
        self.watch.pass(to, self.recheck);
        if self.known.fact(Fact::CylinderOpen) == Some(false) {
            self.ledger.pass(minutes, 0.0);
            if self.known.fact(Fact::RegulatorPressurised) != Some(false) {
                // A regulator holds next to nothing: a flow that is on runs it out at once.
                self.known = match self.flow() {
                    Some(Flow::ZERO) => self.known,
                    Some(_) => self.known.run_out(Loss::Flow),
                    None => self.known.may_run_out(Loss::Flow),
                };
            }
            return;
        }
        let Some(flow) = self.flow() else {
            self.ledger.lose();
            return;
        };
        let flow = flow.as_litres_per_minute();
        self.ledger.pass(minutes, flow);
        if flow > 0.0 && self.ledger.is_kept() {
            let litres = flow * minutes;
            self.stretch = Some(Stretch {
                from,
                minutes,
                litres,
            });
        }
    }

    // What is known.

    /// The flow, as far as it is known.
    pub(super) fn flow(&self) -> Option<Flow> {
        match self.known.flow_on() {
            Some(false) => Some(Flow::ZERO),
            _ => self.flow,
        }
    }

    pub(super) fn given(&self) -> Given {
        let on_patient = if self.assumed_on_patient {
            self.flow.map(|flow| flow > Flow::ZERO)
        } else {
            self.known.fact(Fact::DeviceOnPatient)
        };
        Given {
            device: self.device_id,
            flow: self.flow(),
            on_patient,
        }
    }

    pub(super) fn scene(&self) -> Scene<'b> {
        let given = self.given();
        Scene {
            device: self.device,
            on_patient: given.on_patient,
            flow: given.flow,
            open: self.known.fact(Fact::CylinderOpen),
            pressurised: self.known.fact(Fact::RegulatorPressurised),
            pressure: self.ledger.pressure(),
        }
    }

    // Findings.

    pub(super) fn policy(&self, id: &str) -> (Kind, &'b Rule) {
        match self.book.policies.find(id) {
            Some(policy) => (Kind::Policy, &policy.rule),
            None => (Kind::Agency, &self.book.agency.rule),
        }
    }

    pub(super) fn fault(&mut self, fault: Fault) {
        let rule = &self.book.agency.rule;
        self.find(Level::Unknown, Kind::Agency, rule, About::Record(fault));
    }

    pub(super) fn find(&mut self, level: Level, kind: Kind, rule: &'b Rule, about: About<'b>) {
        self.found(level, kind, rule, about, Some(self.event), self.now, None);
    }

    #[allow(clippy::too_many_arguments)]
    pub(super) fn found(
        &mut self,
        level: Level,
        kind: Kind,
        rule: &'b Rule,
        about: About<'b>,
        event: Option<u32>,
        from: Option<Moment>,
        until: Option<Moment>,
    ) {
        self.watch.found.push(Finding {
            level,
            kind,
            rule,
            about,
            event,
            from,
            until,
            pressure_unit: self.book.agency.pressure_unit,
        });
    }
}
