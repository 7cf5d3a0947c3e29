//! What a review finds: plain data that quotes the rule it is about.

use super::record::Moment;
use crate::book::{Action, Cylinder, Device, Group, Hazard, Kind, Place, Procedure, Rule, Step, Target};
use crate::check::Level;
use crate::equipment::Refusal;
use crate::quantity::{Flow, Gauge, Percent, Pressure, PressureUnit, Range, Time};

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
