//! What a review finds: plain data that quotes the rule it is about.

use core::fmt;

use super::record::Moment;
use crate::book::{Action, Cylinder, Device, Group, Hazard, Kind, Place, Procedure, Rule, Step, Target};
use crate::check::{Level, finding::Lower};
use crate::equipment::Refusal;
use crate::quantity::{Flow, Gauge, Number, Percent, Pressure, PressureUnit, Range, Time};

/// One finding about a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finding<'b> {
    /// How serious it is.
    pub level: Level,
    /// The rule's kind.
    pub kind: Kind,
    /// The rule: its name, its place and its reason.
    pub rule: &'b Rule,
    /// What was found.
    pub about: About<'b>,
    /// The event at which it began or was seen, counted from 0; none for what concerns the whole run.
    pub event: Option<u32>,
    /// When it began, where the record tells.
    pub from: Option<Moment>,
    /// When it ended; none where it lasted to the end of the record, or is of no length.
    pub until: Option<Moment>,
    /// The unit in which pressures are printed.
    pub pressure_unit: PressureUnit,
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum About<'b> {
    /// A hazard was entered.
    Hazard {
        /// The hazard.
        hazard: &'b Hazard,
        /// What the equipment was like.
        scene: Scene<'b>,
    },
    /// The flow was below the device's range while the device was on the patient.
    FlowTooLow {
        /// The device.
        device: &'b Device,
        /// The flow set.
        flow: Flow,
        /// The range for the patient's group.
        range: Range<Flow>,
    },
    /// The flow was above the device's range while the device was on the patient.
    FlowTooHigh {
        /// The device.
        device: &'b Device,
        /// The flow set.
        flow: Flow,
        /// The range for the patient's group.
        range: Range<Flow>,
    },
    /// The device put on the patient isn't made for the patient's group.
    DeviceDoesNotFit {
        /// The device.
        device: &'b Device,
        /// The group.
        group: &'b Group,
    },
    /// The saturation stayed below the target, and nothing was changed within the book's time.
    TargetMissed {
        /// The first such reading.
        spo2: Percent,
        /// The target.
        target: &'b Target,
        /// What is aimed at.
        range: Range<Percent>,
    },
    /// The saturation stayed above the target on oxygen, and nothing was changed within the book's time.
    TargetExceeded {
        /// The first such reading.
        spo2: Percent,
        /// The target.
        target: &'b Target,
        /// What is aimed at.
        range: Range<Percent>,
    },
    /// A step was done before one that comes first.
    TooEarly {
        /// The procedure.
        procedure: &'b Procedure,
        /// The step done too early.
        step: &'b Step,
        /// The step that comes first, and was done later.
        first: &'b Step,
    },
    /// A critical step isn't in the record.
    Skipped {
        /// The procedure.
        procedure: &'b Procedure,
        /// The step.
        step: &'b Step,
        /// Whether what it does was so already: then it changes nothing.
        already_so: bool,
    },
    /// Something was done that is no step of the procedure that goes on, nor of what may follow it.
    OutOfPlace {
        /// The procedure that went on.
        procedure: &'b Procedure,
        /// What was done.
        action: Action,
    },
    /// A procedure was begun after one that it doesn't follow.
    DoesNotFollow {
        /// The procedure begun.
        procedure: &'b Procedure,
        /// The procedure before it.
        before: &'b Procedure,
    },
    /// The equipment doesn't allow what was recorded, or it would do harm.
    Refused {
        /// What was done.
        action: Action,
        /// Why not.
        refusal: Refusal,
    },
    /// A device with a reservoir bag was put on before the bag was filled.
    ReservoirNotFilled {
        /// The device.
        device: &'b Device,
    },
    /// How the record ends isn't safe.
    UnsafeEnd {
        /// Why.
        why: &'static str,
    },
    /// The pressure fell faster than the flow explains.
    FellTooFast(Mismatch<'b>),
    /// The pressure fell slower than the flow explains, or rose.
    FellTooSlow(Mismatch<'b>),
    /// The reading was below the pressure whose gas is never counted on, with the device on the patient.
    BelowResidual {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The policy.
        residual: Pressure<Gauge>,
    },
    /// By its last reading and the flow since, the cylinder was below the residual pressure before the oxygen was stopped or
    /// the cylinder changed.
    WouldRunOut {
        /// The last reading.
        pressure: Pressure<Gauge>,
        /// How long before the end it would have been.
        short: Time,
    },
    /// Something could not be checked because it was not recorded.
    NotRecorded(NotRecorded),
    /// Whether a hazard was there can't be told from the record.
    HazardUnknown(&'b Hazard),
    /// Something is wrong with the times or the lines of the record.
    Record(Fault),
}

/// What the equipment was like when something was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scene<'b> {
    /// The device connected, where it is known.
    pub device: Option<&'b Device>,
    /// Whether it was on the patient.
    pub on_patient: Option<bool>,
    /// The flow set.
    pub flow: Option<Flow>,
    /// Whether the valve was open.
    pub open: Option<bool>,
    /// Whether the regulator was under pressure.
    pub pressurised: Option<bool>,
    /// The pressure, read or reckoned from the last reading and the flow since.
    pub pressure: Option<Pressure<Gauge>>,
}

/// Two readings that the flow between them doesn't explain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mismatch<'b> {
    /// The cylinder written down.
    pub cylinder: &'b Cylinder,
    /// The reading before.
    pub before: Pressure<Gauge>,
    /// The reading after.
    pub after: Pressure<Gauge>,
    /// Minutes between them.
    pub minutes: f64,
    /// Litres used by the readings, at 1 atm and 70 °F; negative where the pressure rose.
    pub used: f64,
    /// Litres used by the flow.
    pub expected: f64,
    /// How many litres the two may differ: gauge, flowmeter and clock.
    pub uncertainty: f64,
    /// The size that would explain it, where another of the book's does.
    pub would_fit: Option<&'b Cylinder>,
}

impl Mismatch<'_> {
    /// The leak that would explain it, in L/min, and how far off that may be; nothing for a pressure that fell too slowly.
    #[must_use]
    pub fn leak(&self) -> Option<(f64, f64)> {
        let more = self.used - self.expected;
        (more > 0.0 && self.minutes > 0.0).then(|| (more / self.minutes, self.uncertainty / self.minutes))
    }
}

/// What was not recorded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum NotRecorded {
    /// Any event.
    Events,
    /// What was done.
    Actions,
    /// Times.
    Times,
    /// The patient's group.
    Group,
    /// The patient's conditions.
    Conditions,
    /// The minutes of life, for which records have no place.
    MinuteOfLife,
    /// The book has no target, or more than one, for this patient.
    Target,
    /// The device.
    Device,
    /// The flow.
    Flow,
    /// The cylinder's size.
    Cylinder,
    /// A gauge reading.
    Pressure,
    /// A saturation.
    Spo2,
    /// The cylinder's temperature.
    Temperature,
    /// Whether the reservoir was filled.
    Reservoir,
    /// How it ended.
    End,
    /// The density of oxygen at such a temperature or pressure is not known.
    Density,
}

/// What is wrong with the lines of a record.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Fault {
    /// A line is earlier than the one before.
    OutOfOrder,
    /// A line is about a day earlier than the one before: past midnight with the old date. It was taken as a day later.
    PastMidnight,
    /// A line is so much later than the one before that the clock was set, or the date is wrong.
    Jump {
        /// How much later.
        hours: f64,
    },
    /// A line says the same as the one before; it was counted once.
    Duplicate,
}

impl Finding<'_> {
    /// A stable name in kebab-case for what was found. Which rule it is, `rule` says.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self.about {
            About::Hazard { .. } => "hazard",
            About::FlowTooLow { .. } => "flow-too-low",
            About::FlowTooHigh { .. } => "flow-too-high",
            About::DeviceDoesNotFit { .. } => "device-does-not-fit",
            About::TargetMissed { .. } => "target-missed",
            About::TargetExceeded { .. } => "target-exceeded",
            About::TooEarly { .. } => "step-too-early",
            About::Skipped { .. } => "step-skipped",
            About::OutOfPlace { .. } => "step-out-of-place",
            About::DoesNotFollow { .. } => "procedure-does-not-follow",
            About::Refused { .. } => "step-refused",
            About::ReservoirNotFilled { .. } => "reservoir-not-filled",
            About::UnsafeEnd { .. } => "unsafe-end",
            About::FellTooFast(_) => "pressure-fell-too-fast",
            About::FellTooSlow(_) => "pressure-fell-too-slow",
            About::BelowResidual { .. } => "below-residual",
            About::WouldRunOut { .. } => "would-run-out",
            About::NotRecorded(what) => what.code(),
            About::HazardUnknown(_) => "hazard-unknown",
            About::Record(fault) => fault.code(),
        }
    }

    /// What to do, where the book says it.
    #[must_use]
    pub fn remedy(&self) -> Option<&str> {
        match self.about {
            About::FlowTooLow { device, .. } => Some(&device.too_low),
            About::FlowTooHigh { device, .. } => Some(&device.too_high),
            About::TargetMissed { target, .. } => Some(&target.step_up),
            About::TargetExceeded { target, .. } => Some(&target.step_down),
            About::Hazard { hazard, .. } => Some(&hazard.remedy),
            About::Skipped { step, .. } | About::TooEarly { first: step, .. } => Some(&step.why),
            _ => None,
        }
    }

    /// The line of the rule: a step's own line, else the rule's first.
    #[must_use]
    pub const fn line(&self) -> u32 {
        match self.about {
            About::Skipped { step, .. } | About::TooEarly { step, .. } => step.line,
            _ => self.place().line,
        }
    }

    /// The place of the rule in the book.
    #[must_use]
    pub const fn place(&self) -> &Place {
        &self.rule.place
    }

    /// How long it lasted, in minutes, where the record tells when it began and ended.
    #[must_use]
    pub fn minutes(&self) -> Option<f64> {
        Some(self.until?.minutes_since(self.from?))
    }
}

impl NotRecorded {
    const fn code(self) -> &'static str {
        match self {
            Self::Events => "events-not-recorded",
            Self::Actions => "actions-not-recorded",
            Self::Times => "times-not-recorded",
            Self::Group => "group-not-recorded",
            Self::Conditions => "conditions-not-recorded",
            Self::MinuteOfLife => "minute-of-life-not-recorded",
            Self::Target => "no-target",
            Self::Device => "device-not-recorded",
            Self::Flow => "flow-not-recorded",
            Self::Cylinder => "cylinder-not-recorded",
            Self::Pressure => "pressure-not-recorded",
            Self::Spo2 => "saturation-not-recorded",
            Self::Temperature => "temperature-not-recorded",
            Self::Reservoir => "reservoir-not-recorded",
            Self::End => "end-not-recorded",
            Self::Density => "density-not-known",
        }
    }

    const fn words(self) -> &'static str {
        match self {
            Self::Events => "nothing could be checked: the run has no events",
            Self::Actions => "steps and equipment could not be checked: no event says what was done",
            Self::Times => {
                "how long things lasted and how much gas was used could not be checked: times are missing"
            }
            Self::Group => {
                "whether the device fits and which limits and target hold could not be checked: the patient's group was \
                 not recorded"
            }
            Self::Conditions => {
                "whether the target was met could not be checked: the patient's conditions were not recorded (write an \
                 empty list where there are none)"
            }
            Self::MinuteOfLife => {
                "whether the target was met could not be checked: it depends on the minutes of life, and records have no \
                 place for them"
            }
            Self::Target => {
                "whether the target was met could not be checked: the book has none, or more than one, for this patient"
            }
            Self::Device => "flow and fit could not be checked: the device on the patient was not recorded",
            Self::Flow => "flow and gas could not be checked: the flow to the patient was not recorded",
            Self::Cylinder => "the gas could not be checked: the cylinder's size was not recorded",
            Self::Pressure => {
                "the gas could not be checked: no gauge reading was recorded with the cylinder in use"
            }
            Self::Spo2 => {
                "whether the target was met could not be checked: no saturation was recorded on oxygen"
            }
            Self::Temperature => {
                "whether the cylinder was too cold or too hot could not be checked: its temperature was not recorded, and \
                 gas is reckoned at 21 °C"
            }
            Self::Reservoir => "whether the bag was filled before the device was put on was not recorded",
            Self::End => "whether the equipment was left safe was not recorded",
            Self::Density => {
                "the gas could not be checked: the density of oxygen is known from -40 to 60 °C and to 300 bar only"
            }
        }
    }
}

impl Fault {
    const fn code(self) -> &'static str {
        match self {
            Self::OutOfOrder => "time-out-of-order",
            Self::PastMidnight => "time-past-midnight",
            Self::Jump { .. } => "time-jump",
            Self::Duplicate => "event-duplicate",
        }
    }
}

/// The finding in a sentence.
impl fmt::Display for Finding<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.pressure_unit;
        match self.about {
            About::Hazard { hazard, scene } => write!(f, "{} ({})", hazard.say, Shown(&scene, unit)),
            About::FlowTooLow { device, flow, range } => write!(
                f,
                "{flow} is too low for the {}: the book says {range}",
                Lower(&device.rule.name)
            ),
            About::FlowTooHigh { device, flow, range } => write!(
                f,
                "{flow} is too high for the {}: the book says {range}",
                Lower(&device.rule.name)
            ),
            About::DeviceDoesNotFit { device, group } => write!(
                f,
                "the {} does not fit the group {}",
                Lower(&device.rule.name),
                Lower(&group.rule.name)
            ),
            About::TargetMissed { spo2, target, range } => write!(
                f,
                "the saturation of {spo2} was below the target of {range}, and nothing was changed within {}",
                target.recheck
            ),
            About::TargetExceeded { spo2, target, range } => write!(
                f,
                "the saturation of {spo2} was above the target of {range}, and nothing was changed within {}",
                target.recheck
            ),
            About::TooEarly { step, first, .. } => {
                write!(f, "`{}` ({}) was done before `{}` ({})", step.id, step.action, first.id, first.action)
            }
            About::Skipped { step, already_so, .. } => {
                write!(
                    f,
                    "the critical step `{}` ({}) is not in the record: left out, or not written down",
                    step.id, step.action
                )?;
                if already_so {
                    f.write_str("; by the record it was so already")?;
                }
                Ok(())
            }
            About::OutOfPlace { procedure, action } => write!(
                f,
                "`{action}` is no step of `{}`, nor of a procedure that may follow it",
                procedure.rule.id
            ),
            About::DoesNotFollow { procedure, before } => write!(
                f,
                "`{}` was begun after `{}`, which it does not follow",
                procedure.rule.id, before.rule.id
            ),
            About::Refused { action, refusal } => write!(f, "`{action}`: {refusal}"),
            About::ReservoirNotFilled { device } => write!(
                f,
                "the {} was put on before its bag was filled",
                Lower(&device.rule.name)
            ),
            About::UnsafeEnd { why } => write!(f, "at the end of the record {why}"),
            About::FellTooFast(mismatch) => mismatch.fmt("faster", unit, f),
            About::FellTooSlow(mismatch) => mismatch.fmt("slower", unit, f),
            About::BelowResidual { pressure, residual } => write!(
                f,
                "the gauge read {}, below the residual pressure of {}, with the device on the patient",
                unit.show(pressure),
                unit.show(residual)
            ),
            About::WouldRunOut { pressure, short } => write!(
                f,
                "from the last reading of {} the gas above the residual pressure would have ended {short} before the \
                 oxygen was stopped",
                unit.show(pressure)
            ),
            About::NotRecorded(what) => f.write_str(what.words()),
            About::HazardUnknown(hazard) => write!(
                f,
                "whether this hazard was there can't be told from the record: {}: {}",
                Lower(&hazard.rule.name),
                hazard.never.text
            ),
            About::Record(Fault::OutOfOrder) => {
                f.write_str("this line is earlier than the one before; nothing is reckoned across it")
            }
            About::Record(Fault::PastMidnight) => f.write_str(
                "this line is about a day earlier than the one before: past midnight with the old date; taken as a day \
                 later",
            ),
            About::Record(Fault::Jump { hours }) => write!(
                f,
                "this line is {} h later than the one before: the clock was set or the date is wrong; nothing is reckoned \
                 across it",
                Number(hours)
            ),
            About::Record(Fault::Duplicate) => {
                f.write_str("this line says the same as the one before; it was counted once")
            }
        }
    }
}

impl Mismatch<'_> {
    fn fmt(&self, how: &str, unit: PressureUnit, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "from {} to {} in {} min the pressure fell {how} than the flow explains: by the readings {} L of a {} were \
             used, by the flow {} L, and they may differ by {} L",
            unit.show(self.before),
            unit.show(self.after),
            nearest(self.minutes, 1.0),
            nearest(self.used, 1.0),
            self.cylinder.rule.name,
            nearest(self.expected, 1.0),
            nearest(self.uncertainty, 1.0),
        )?;
        if let Some((leak, about)) = self.leak() {
            write!(
                f,
                "; a leak of {} ± {} L/min",
                nearest(leak, 10.0),
                nearest(about, 10.0)
            )?;
            f.write_str(", another size, a wrong reading or a flow not written down")?;
        } else {
            f.write_str(
                "; another size, a wrong reading, a cylinder changed or a flow not given all the time",
            )?;
        }
        match self.would_fit {
            Some(other) => write!(f, "; a {} would fit", other.rule.name),
            None => Ok(()),
        }
    }
}

/// A scene in words: what is known of it.
struct Shown<'a, 'b>(&'a Scene<'b>, PressureUnit);

impl fmt::Display for Shown<'_, '_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(scene, unit) = self;
        match scene.device {
            Some(device) => write!(f, "{}", Lower(&device.rule.name))?,
            None => f.write_str("no device known")?,
        }
        f.write_str(match scene.on_patient {
            Some(true) => " on the patient",
            Some(false) => " not on the patient",
            None => ", on the patient or not",
        })?;
        match scene.flow {
            Some(flow) => write!(f, ", flow {flow}")?,
            None => f.write_str(", flow not known")?,
        }
        f.write_str(match scene.open {
            Some(true) => ", valve open",
            Some(false) => ", valve closed",
            None => ", valve not known",
        })?;
        f.write_str(match scene.pressurised {
            Some(true) => ", regulator under pressure",
            Some(false) => ", regulator without pressure",
            None => "",
        })?;
        match scene.pressure {
            Some(pressure) => {
                let steps = match unit {
                    PressureUnit::Psi | PressureUnit::Kpa => 1.0,
                    PressureUnit::Bar => 10.0,
                    PressureUnit::Mpa => 100.0,
                };
                write!(
                    f,
                    ", about {} {}",
                    nearest(pressure.as_unit(*unit), steps),
                    unit.symbol()
                )
            }
            None => Ok(()),
        }
    }
}

/// A number to the nearest part of one. The library without an operating system can't round.
fn nearest(number: f64, parts: f64) -> Number {
    let half = if number < 0.0 { -0.5 } else { 0.5 };
    // `as` cuts towards zero.
    Number((number * parts + half) as i64 as f64 / parts)
}
