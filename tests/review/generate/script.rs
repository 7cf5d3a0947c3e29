//! Writes a run line by line: what each step records, and when.
//!
//! Gauge readings are only marked here (a reading of zero); which cylinder it is and what it reads follows from the gas used,
//! when the whole run is known.

use oxyfolio::book::{Action, DeviceId, ProcedureId, Saturation, Target};
use oxyfolio::check::review::{Event, Moment};
use oxyfolio::quantity::{Flow, Percent, Pressure};
use oxyfolio::{condition, procedure};

use super::rng::Rng;
use super::{Mark, order};

pub const SECOND: i64 = 1_000;
pub const MINUTE: i64 = 60_000;

/// A clean run changes something, or reads a good value, this long after a reading outside the target: well inside the five
/// minutes of every target it uses.
const ANSWERED_WITHIN: i64 = 210 * SECOND;

/// Where a reading would lie now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    Low,
    Inside,
    High,
}

pub struct Patient {
    pub target: &'static Target,
    /// Below this reading a hazard of its own begins, that no clean run enters.
    pub never_below: f64,
}

pub struct Script<'r> {
    pub rng: &'r mut Rng,
    pub now: i64,
    pub offset_minutes: i16,
    /// Seconds between two steps.
    pub pace: (f64, f64),
    pub events: Vec<Event>,
    pub marks: Vec<Mark>,
    pub patient: Option<Patient>,
    pub device: DeviceId,
    pub flow: f64,
    pub reading: Reading,
    pub on_patient: bool,
    /// When the first reading outside the target was written, unless something was changed or a good one came since.
    pub outside_since: Option<i64>,
    pub block: usize,
}

pub fn flow(litres_per_minute: f64) -> Flow {
    Flow::litres_per_minute(litres_per_minute).unwrap()
}

/// A reading that is filled in when the gas is known.
pub const TO_BE_READ: Option<Pressure<oxyfolio::quantity::Gauge>> = Some(Pressure::ZERO);

impl Script<'_> {
    pub fn wait(&mut self, low_seconds: f64, high_seconds: f64) {
        self.now += self.rng.between(low_seconds, high_seconds) as i64 * SECOND;
    }

    /// Waits, but not so long that a reading outside the target stays without an answer.
    pub fn wait_for_answer(&mut self, low_seconds: f64, high_seconds: f64) {
        let before = self.now;
        self.wait(low_seconds, high_seconds);
        if let Some(since) = self.outside_since {
            let latest = since + ANSWERED_WITHIN;
            assert!(latest > before, "a clean run was too slow to answer");
            self.now = self.now.min(latest);
        }
    }

    fn moment(&self) -> Moment {
        Moment::new(self.now, self.offset_minutes)
    }

    pub fn push(&mut self, event: Event, mark: Mark) {
        if event.spo2.is_some() {
            match self.reading {
                Reading::Inside => self.outside_since = None,
                _ if self.outside_since.is_none() => self.outside_since = Some(self.now),
                _ => {}
            }
        }
        self.events.push(Event {
            at: Some(self.moment()),
            ..event
        });
        self.marks.push(mark);
    }

    /// Something done while the patient is on oxygen.
    pub fn look(&mut self, event: Event) {
        let block = self.block;
        self.push(event, Mark::Care { block });
    }

    pub fn spo2(&mut self) -> Option<Percent> {
        let Patient { target, never_below } = self.patient.as_ref()?;
        let Saturation::Range(range) = target.saturation else {
            // Nobody is guided by it, and it looks normal.
            return Some(Percent::new(self.rng.whole(95, 100) as f64).unwrap());
        };
        let low = range.low.value().unwrap().as_percent();
        let high = range.high.value().unwrap().as_percent();
        let (from, to) = match self.reading {
            Reading::Low => ((low - 5.0).max(*never_below), low - 1.0),
            Reading::Inside => (low, high),
            Reading::High => (high + 1.0, (high + 3.0).min(100.0)),
        };
        Some(Percent::new(self.rng.whole(from as i64, to as i64) as f64).unwrap())
    }

    /// A whole procedure, in a random order that the book allows.
    pub fn perform(&mut self, id: ProcedureId) {
        self.block += 1;
        let procedure = order::procedure(id);
        for step in order::random(self.rng, procedure) {
            let (low, high) = self.pace;
            self.wait(low, high);
            let event = self.step(id, procedure.steps[step].action);
            let block = self.block;
            self.push(
                event,
                Mark::Step {
                    procedure: id,
                    step,
                    block,
                },
            );
        }
    }

    /// What a step records. The action that changes something says so; what else is written stays true after it.
    fn step(&mut self, id: ProcedureId, action: Action) -> Event {
        let mut event = Event {
            action: Some(action),
            ..Event::default()
        };
        let gives = [
            procedure::APPLY_RESERVOIR_MASK,
            procedure::APPLY_CANNULA,
            procedure::GIVE_BY_OTHER_MASK,
            procedure::VENTILATE_BY_HAND,
        ]
        .contains(&id);
        match action {
            Action::FetchCylinder => event.cylinder = super::bottles::TO_BE_NAMED,
            Action::CheckLabel if id == procedure::CHECK_CYLINDER => {
                event.cylinder = super::bottles::TO_BE_NAMED;
            }
            // At a change the old device is still on when the new one is chosen: it is named when it is connected.
            Action::ChooseDevice if id != procedure::CHANGE_DEVICE && self.says_early(id) => {
                event.device = Some(self.device);
            }
            Action::ConnectDevice => event.device = Some(self.device),
            Action::SetFlow => {
                event.flow = Some(flow(self.flow));
                self.outside_since = None;
            }
            Action::ZeroFlow if self.rng.chance(0.3) => event.flow = Some(Flow::ZERO),
            Action::ReadGauge => event.pressure = TO_BE_READ,
            Action::PlaceDevice => {
                self.on_patient = true;
                if self.rng.chance(0.3) {
                    event.device = Some(self.device);
                    event.flow = Some(flow(self.flow));
                }
                if self.rng.chance(0.4) && self.reading == Reading::Low {
                    self.reading = Reading::Inside;
                }
            }
            Action::RemoveDevice => self.on_patient = false,
            Action::WatchPatient => event.spo2 = self.spo2(),
            // Before oxygen a reading is written only where it doesn't hold things up; see `care`.
            Action::AssessPatient if id != procedure::MAKE_READY && self.rng.chance(0.7) => {
                event.spo2 = self.spo2();
            }
            Action::WriteDown if gives || id == procedure::CHANGE_DEVICE => {
                if self.rng.chance(0.6) {
                    event.device = Some(self.device);
                    event.flow = Some(flow(self.flow));
                    event.pressure = TO_BE_READ;
                }
                event.spo2 = self.spo2();
            }
            Action::WriteDown if id == procedure::REMOVE_DEVICE => event.spo2 = self.spo2(),
            _ => {}
        }
        event
    }

    fn says_early(&mut self, id: ProcedureId) -> bool {
        let target = self.patient.as_ref().map(|patient| patient.target);
        let carbon_monoxide =
            target.is_some_and(|target| target.condition == Some(condition::CARBON_MONOXIDE));
        carbon_monoxide || id == procedure::GIVE_BY_OTHER_MASK || self.rng.chance(0.7)
    }
}
