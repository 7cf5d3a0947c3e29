//! Which hazards are there, since when, and in what scene they were entered.

use alloc::vec::Vec;

use super::{
    finding::{About, Finding, Scene},
    record::Moment,
};
use crate::book::{Fact, GuardOp, HazardId, Kind, Measure, Operand, Rulebook, Severity, Value};
use crate::guard::{Broken, Evaluator, HazardSet, Inputs};
use crate::quantity::{Pressure, Time};

/// What kinds of hazards a book has, for a review.
#[derive(Debug)]
pub struct Kinds {
    /// They speak of the patient's saturation: that it is low is nobody's fault, that it stays so may be.
    pub patient: HazardSet,
    /// They speak of the gas that is left.
    pub gas: HazardSet,
    /// They speak of the minutes wanted, which a record doesn't tell; at its end none are.
    pub at_end: HazardSet,
    /// They speak of what records have no place for.
    pub untold: HazardSet,
    /// They ask for something that is measured.
    pub measured: HazardSet,
    /// Whether any asks how long the gas lasts.
    pub minutes_left: bool,
    /// The pressures, in Pa, that guards compare the gauge's with.
    pub pressures: Vec<f64>,
    /// The minutes that guards compare the minutes left with.
    pub minutes: Vec<f64>,
    /// Whether a guard compares pressure or minutes with something that isn't one number.
    pub any_number: bool,
}

impl Kinds {
    /// The kinds of a book's hazards.
    pub fn of<'b>(evaluator: &impl Evaluator<'b>) -> Self {
        let asking = |inputs| evaluator.hazards_that_ask(inputs);
        let (left, wanted) = (
            Inputs::measure(Measure::MinutesLeft),
            Inputs::measure(Measure::MinutesWanted),
        );
        let book = evaluator.book();
        let mut kinds = Self {
            patient: asking(Inputs::measure(Measure::Spo2)),
            gas: asking(Inputs::measure(Measure::Pressure) | left),
            at_end: asking(wanted),
            untold: asking(Inputs::fact(Fact::FlameNear) | Inputs::fact(Fact::GreaseNear)),
            measured: asking(
                Measure::ALL
                    .iter()
                    .fold(Inputs::NONE, |all, one| all | Inputs::measure(*one)),
            ),
            minutes_left: !asking(left).is_empty(),
            pressures: Vec::new(),
            minutes: Vec::new(),
            any_number: false,
        };
        for op in book.hazards.iter().flat_map(|hazard| &hazard.never.ops) {
            kinds.numbers(book, op);
        }
        kinds
    }

    /// Takes in the numbers that a part of a guard compares pressure and minutes with.
    fn numbers(&mut self, book: &Rulebook, op: &GuardOp) {
        match op {
            // How long it must last a record doesn't tell; at its end, not at all.
            GuardOp::Compare(Measure::MinutesLeft, _, Operand::Measure(Measure::MinutesWanted))
            | GuardOp::Compare(Measure::MinutesWanted, _, Operand::Measure(Measure::MinutesLeft)) => {}
            GuardOp::Compare(Measure::Pressure | Measure::MinutesLeft, _, operand) => match operand {
                Operand::Value(value) => self.number(value),
                Operand::Policy(id) | Operand::PolicyLow(id) | Operand::PolicyHigh(id) => {
                    match book.policy(*id) {
                        Some(policy) => self.number(&policy.value),
                        None => self.any_number = true,
                    }
                }
                _ => self.any_number = true,
            },
            GuardOp::Compare(_, _, Operand::Measure(Measure::Pressure | Measure::MinutesLeft)) => {
                self.any_number = true;
            }
            GuardOp::Within(Measure::Pressure | Measure::MinutesLeft, value) => self.number(value),
            _ => {}
        }
    }

    fn number(&mut self, value: &Value) {
        match value {
            Value::Pressure(pressure) => self.pressures.push(pressure.as_pascals()),
            Value::PressureRange(range) => {
                let ends = [range.low.value(), range.high.value()];
                self.pressures
                    .extend(ends.into_iter().flatten().map(Pressure::as_pascals));
            }
            Value::Time(time) => self.minutes.push(time.as_minutes()),
            Value::TimeRange(range) => {
                let ends = [range.low.value(), range.high.value()];
                self.minutes
                    .extend(ends.into_iter().flatten().map(Time::as_minutes));
            }
            _ => self.any_number = true,
        }
    }
}

/// When a hazard was entered.
#[derive(Clone, Copy, Debug)]
pub struct Entered<'b> {
    event: u32,
    from: Option<Moment>,
    scene: Scene<'b>,
    /// Since the last change of oxygen.
    clock: Option<Moment>,
    too_long: bool,
}

/// The hazards of a run, while it is replayed.
#[derive(Debug)]
pub struct Watch<'n, 'b> {
    pub book: &'b Rulebook,
    pub kinds: &'n Kinds,
    /// One for each hazard of the book.
    pub entered: &'n mut Vec<Option<Entered<'b>>>,
    pub found: &'n mut Vec<Finding<'b>>,
    there: HazardSet,
    /// Never told while the device was on the patient.
    never_told: HazardSet,
    /// Not told at some time while it was.
    untold: HazardSet,
}

/// Where and when something is seen.
#[derive(Clone, Copy, Debug)]
pub struct Seen<'b> {
    pub event: u32,
    pub at: Option<Moment>,
    pub scene: Scene<'b>,
}

impl<'n, 'b> Watch<'n, 'b> {
    pub fn new(
        book: &'b Rulebook,
        kinds: &'n Kinds,
        entered: &'n mut Vec<Option<Entered<'b>>>,
        found: &'n mut Vec<Finding<'b>>,
    ) -> Self {
        entered.clear();
        entered.resize(book.hazards.len(), None);
        Self {
            book,
            kinds,
            entered,
            found,
            there: HazardSet::EMPTY,
            never_told: HazardSet::first(book.hazards.len()),
            untold: HazardSet::EMPTY,
        }
    }

    /// Which hazards of a set an answer says are entered, and which are left.
    pub fn changes(&self, broken: Broken, among: HazardSet) -> (HazardSet, HazardSet) {
        (
            (broken.there & among) - self.there,
            (self.there & among) - broken.there,
        )
    }

    /// Hazards are entered.
    pub fn enter(&mut self, hazards: HazardSet, seen: &Seen<'b>) {
        self.there |= hazards;
        for hazard in hazards {
            if let Some(place) = self.entered.get_mut(hazard.index()) {
                *place = Some(Entered {
                    event: seen.event,
                    from: seen.at,
                    scene: seen.scene,
                    clock: seen.at,
                    too_long: false,
                });
            }
        }
    }

    /// Hazards are left.
    pub fn leave(&mut self, hazards: HazardSet, at: Option<Moment>) {
        self.there -= hazards;
        for hazard in hazards {
            self.left(hazard, at);
        }
    }

    /// Which can't be told, with the device on the patient.
    pub fn untold(&mut self, unknown: HazardSet) {
        self.never_told &= unknown;
        self.untold |= unknown;
    }

    /// The hazards that could not be told while the device was on the patient. What is measured now and then is not known
    /// all the time; of hazards that ask for it, those that could never be told.
    pub fn not_told(&self) -> HazardSet {
        (self.untold - self.kinds.measured) | (self.untold & self.never_told)
    }

    /// The time has come to this moment, and no oxygen was changed so far.
    pub fn pass(&mut self, now: Moment, recheck: f64) {
        for hazard in self.there & self.kinds.patient {
            if let Some(Some(entered)) = self.entered.get_mut(hazard.index())
                && let Some(clock) = entered.clock
                && now.minutes_since(clock) > recheck
            {
                entered.too_long = true;
            }
        }
    }

    /// The oxygen was changed: what is still out of order with the patient has its time anew.
    pub fn changed(&mut self, now: Option<Moment>) {
        for hazard in self.there & self.kinds.patient {
            if let Some(Some(entered)) = self.entered.get_mut(hazard.index()) {
                entered.clock = now;
            }
        }
    }

    fn left(&mut self, id: HazardId, until: Option<Moment>) {
        let entered = self.entered.get_mut(id.index()).and_then(Option::take);
        let (Some(entered), Some(hazard)) = (entered, self.book.hazard(id)) else {
            return;
        };
        // The worst of them are told at once when the patient is on oxygen; before that, only what is left so.
        let at_once = hazard.severity == Severity::Stop && entered.scene.on_patient == Some(true);
        if self.kinds.patient.contains(id) && !entered.too_long && !at_once {
            return;
        }
        let scene = entered.scene;
        self.found.push(Finding {
            level: hazard.severity.into(),
            kind: Kind::Hazard,
            rule: &hazard.rule,
            about: About::Hazard { hazard, scene },
            event: Some(entered.event),
            from: entered.from,
            until,
            pressure_unit: self.book.agency.pressure_unit,
        });
    }

    /// The record ends: what is still there lasted to its end.
    pub fn end(&mut self) {
        for hazard in self.there {
            self.left(hazard, None);
        }
        self.there = HazardSet::EMPTY;
    }
}
