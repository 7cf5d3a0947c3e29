//! Asks the book's hazards about what is now, as seldom as the answer allows.
//!
//! An answer can't change while nothing it asks for does. Pressure and minutes fall all the time; but between two of the
//! numbers that the book's guards compare them with, they change no answer either. So it is worked out how much gas must
//! still be left for all answers to stay as they are, and only when there is less are pressure and minutes worked out anew.

use super::{
    aim::Given,
    record::Moment,
    replay::Replay,
    watch::{Kinds, Seen},
};
use crate::book::{DeviceId, Fact};
use crate::equipment::Known;
use crate::guard::{Evaluator, Facts, HazardSet};
use crate::quantity::{Flow, Gauge, Pressure};

/// To find when a hazard was entered between two events, the time between them is halved so often.
const HALVINGS: u32 = 12;

/// A stretch of time with gas flowing.
#[derive(Clone, Copy, Debug)]
pub struct Stretch {
    pub from: Moment,
    pub minutes: f64,
    pub litres: f64,
}

/// What was asked last.
#[derive(Clone, Copy, Debug, Default)]
pub struct Asked {
    known: Option<Known>,
    flow: Option<Flow>,
    device: Option<DeviceId>,
    on_patient: Option<bool>,
    gas: Gas,
    /// Something else changed since.
    again: bool,
}

/// What was worked out of the gas.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
enum Gas {
    #[default]
    Unknown,
    /// What was read, and nothing is kept.
    Told(Option<Pressure<Gauge>>),
    /// Right until the ledger is another, the flow is another, or less than so much is left.
    Until {
        page: u32,
        flow: Option<Flow>,
        litres: f64,
    },
}

impl Asked {
    /// Something in the row was changed by hand.
    pub const fn renew(&mut self) {
        self.again = true;
    }
}

impl<'b, E: Evaluator<'b>> Replay<'_, 'b, E> {
    /// Asks the hazards of a set about what is now.
    pub(super) fn ask(&mut self, given: &Given, among: HazardSet) {
        let mut changed = core::mem::take(&mut self.asked.again);
        if self.asked.known != Some(self.known) || self.asked.on_patient != given.on_patient {
            changed = true;
            self.asked.known = Some(self.known);
            self.asked.on_patient = given.on_patient;
            self.row.set_facts(self.facts(given));
        }
        if self.asked.flow != given.flow || self.asked.device != self.device_id {
            changed = true;
            (self.asked.flow, self.asked.device) = (given.flow, self.device_id);
            self.row.set_flow(given.flow);
            self.row.set_device(self.device_id);
        }
        changed |= self.gas(given.flow);
        if !changed {
            return;
        }
        // What is not asked for now is asked for next.
        self.asked.again = among.len() < self.book.hazards.len();
        let broken = self.evaluator.broken_row(&self.row);
        if given.on_patient == Some(true) {
            self.watch.untold(broken.unknown);
        }
        let (entered, gone) = self.watch.changes(broken, among);
        if entered.is_empty() && gone.is_empty() {
            return;
        }
        let scene = self.scene();
        let mut seen = Seen {
            event: self.event,
            at: self.now,
            scene,
        };
        let by_time = match self.stretch {
            Some(stretch) => {
                let by_time = entered & (self.kinds.gas - self.kinds.patient);
                self.crossed(by_time, stretch, seen);
                by_time
            }
            None => HazardSet::EMPTY,
        };
        seen.scene = scene;
        self.watch.enter(entered - by_time, &seen);
        self.watch.leave(gone, self.now);
    }

    fn facts(&self, given: &Given) -> Facts {
        let (holds, holds_not) = self.known.facts();
        let facts = Facts::of(holds, holds_not);
        match given.on_patient {
            Some(on) if self.assumed_on_patient => facts.with(Fact::DeviceOnPatient, on),
            _ => facts,
        }
    }

    /// Hazards that came with the gas used: when, within the stretch.
    fn crossed(&mut self, hazards: HazardSet, stretch: Stretch, seen: Seen<'b>) {
        let row = self.row;
        for hazard in hazards {
            // Halved, not solved: any guard may stand behind it.
            let (mut early, mut late) = (0.0, 1.0);
            for _ in 0..HALVINGS {
                let middle = f64::midpoint(early, late);
                let then = self.ledger.before(stretch.litres * (1.0 - middle)).unzip();
                self.set_gas(then.0, then.1);
                if self.evaluator.broken_row(&self.row).there.contains(hazard) {
                    late = middle;
                } else {
                    early = middle;
                }
            }
            let (pressure, _) = self.ledger.before(stretch.litres * (1.0 - late)).unzip();
            let mut seen = seen;
            seen.at = Some(
                stretch
                    .from
                    .plus_millis((late * stretch.minutes * 60_000.0) as i64),
            );
            seen.scene.pressure = pressure;
            self.watch.enter(HazardSet::EMPTY.with(hazard), &seen);
        }
        self.row = row;
    }

    /// Works out pressure and minutes where an answer may depend on it. Whether it did.
    fn gas(&mut self, flow: Option<Flow>) -> bool {
        let page = self.ledger.page();
        let Some(left) = self.ledger.litres() else {
            // A reading without a size, or none that still counts.
            let told = Gas::Told(self.ledger.pressure());
            let same = self.asked.gas == told;
            if !same {
                self.asked.gas = told;
                self.set_gas(self.ledger.pressure(), None);
            }
            return !same;
        };
        if let Gas::Until {
            page: of,
            flow: at,
            litres,
        } = self.asked.gas
            && of == page
            && at == flow
            && left > litres
        {
            return false;
        }
        let pressure = self.ledger.pressure();
        self.set_gas(pressure, Some(left));
        let litres = pressure.map_or(f64::INFINITY, |pressure| {
            self.kinds
                .next_level(pressure, left, flow, |level| self.ledger.held(level))
        });
        self.asked.gas = Gas::Until { page, flow, litres };
        true
    }

    fn set_gas(&mut self, pressure: Option<Pressure<Gauge>>, litres: Option<f64>) {
        self.row.set_pressure(pressure);
        if self.kinds.minutes_left {
            let flow = self.flow().filter(|flow| *flow > Flow::ZERO);
            let left = pressure
                .zip(litres)
                .zip(flow)
                .and_then(|((pressure, litres), flow)| self.ledger.minutes_left(pressure, litres, flow));
            self.row.set_minutes_left(left);
        }
    }
}

impl Kinds {
    /// How many litres must be left for pressure and minutes to stay between the same two numbers of the book's guards.
    /// `held` gives what the cylinder holds at a pressure.
    fn next_level(
        &self,
        pressure: Pressure<Gauge>,
        left: f64,
        flow: Option<Flow>,
        held: impl Fn(Level) -> Option<f64>,
    ) -> f64 {
        if self.any_number {
            return f64::INFINITY;
        }
        let mut most = 0.0;
        let below = self
            .pressures
            .iter()
            .filter(|level| **level <= pressure.as_pascals());
        if let Some(level) = below.copied().reduce(f64::max) {
            most = held(Level::Pressure(Pressure::tabled(level))).unwrap_or(f64::INFINITY);
        }
        if let Some(flow) = flow.filter(|flow| *flow > Flow::ZERO) {
            for minutes in &self.minutes {
                let level = |minutes: f64| {
                    let litres = minutes * flow.as_litres_per_minute();
                    held(Level::Usable(litres)).unwrap_or(f64::INFINITY)
                };
                // Whole minutes: at 15 the answer of "at most 15" changes when less than 16 are left.
                let over = level(*minutes + 1.0);
                let level = if over <= left { over } else { level(*minutes) };
                if level <= left && level > most {
                    most = level;
                }
            }
        }
        // A hair more, so that rounding never steps over a number.
        most * (1.0 + 1e-6)
    }
}

/// A point down to which gas is used.
#[derive(Clone, Copy, Debug)]
pub enum Level {
    /// A reading.
    Pressure(Pressure<Gauge>),
    /// So many usable litres left, by the lower of both methods.
    Usable(f64),
}
