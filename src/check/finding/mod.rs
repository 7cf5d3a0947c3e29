//! What the checker finds: plain data that quotes the rule it is about.

pub(super) mod words;

use core::fmt;

use super::duration::GaugeReading;
use crate::book::{Cited, DeviceId, HazardId, Kind, Severity, TargetId, Words};
use crate::quantity::{Flow, Gauge, OutOfBounds, Percent, Pressure, PressureUnit, Range, Temperature};

/// How serious a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Worth knowing; nothing is wrong.
    Note,
    /// It could not be checked.
    Unknown,
    /// To be put right.
    Warn,
    /// Do not go on.
    Stop,
}

impl Level {
    /// The word printed before the finding.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Unknown => "could not be checked",
            Self::Warn => "warning",
            Self::Stop => "stop",
        }
    }

    /// The word that stands for it in answers for programs.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Unknown => "unknown",
            Self::Warn => "warn",
            Self::Stop => "stop",
        }
    }

    /// Whether the set-up may not be called in order.
    #[must_use]
    pub const fn is_wrong(self) -> bool {
        !matches!(self, Self::Note)
    }
}

impl fmt::Display for Level {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

impl From<Severity> for Level {
    fn from(severity: Severity) -> Self {
        match severity {
            Severity::Note => Self::Note,
            Severity::Warn => Self::Warn,
            Severity::Stop => Self::Stop,
        }
    }
}

/// One finding, with the rule it is about.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Finding<'b> {
    /// How serious it is.
    pub level: Level,
    /// The rule's kind.
    pub kind: Kind,
    /// The rule: its name, its place and its reason.
    pub rule: Cited<'b>,
    /// What was found.
    pub about: About<'b>,
    /// The unit in which pressures are printed.
    pub pressure_unit: PressureUnit,
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum About<'b> {
    /// The flow is below the device's range.
    FlowTooLow {
        /// The device.
        device: DeviceId,
        /// The flow set.
        flow: Flow,
        /// The range for the patient's group.
        range: Range<Flow>,
    },
    /// The flow is above the device's range.
    FlowTooHigh {
        /// The device.
        device: DeviceId,
        /// The flow set.
        flow: Flow,
        /// The range for the patient's group.
        range: Range<Flow>,
    },
    /// The device isn't made for the patient's group.
    DeviceDoesNotFit {
        /// The device.
        device: DeviceId,
        /// The group's name.
        group: &'b str,
    },
    /// The reading is below the pressure whose gas is never counted on.
    BelowResidual {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The policy.
        residual: Pressure<Gauge>,
    },
    /// The reading is at or below the pressure at which the cylinder is changed.
    ChangeCylinder {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The policy.
        change_over: Pressure<Gauge>,
    },
    /// The reading is below the least for going into service.
    BelowInServiceMinimum {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The policy.
        minimum: Pressure<Gauge>,
    },
    /// The reading is above what the cylinder may be filled to.
    Overfilled {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The most it may be filled to.
        most: Pressure<Gauge>,
    },
    /// The reading is above the service pressure, and within what some cylinders may be filled to.
    AboveServicePressure {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The service pressure.
        service: Pressure<Gauge>,
    },
    /// The temperature is outside that of use.
    OutsideUseTemperature {
        /// The temperature.
        temperature: Temperature,
        /// The range of use.
        range: Range<Temperature>,
    },
    /// The gas doesn't last as long as wanted.
    TooShort {
        /// How long it lasts.
        minutes_left: u32,
        /// How long it must last.
        wanted: f64,
    },
    /// The gas lasts as long as wanted, without the planning margin.
    NoMargin {
        /// How long it lasts.
        minutes_left: u32,
        /// How long it must last, with the margin.
        with_margin: f64,
    },
    /// The cylinder is so cold or hot that the reading says too little or too much.
    GaugeMisleads {
        /// Whether it reads low or high.
        gauge: GaugeReading,
        /// The cylinder's temperature.
        temperature: Temperature,
    },
    /// How long the gas lasts.
    MinutesLeft {
        /// Whole minutes.
        minutes_left: u32,
    },
    /// The saturation is below the target.
    BelowTarget {
        /// The saturation.
        spo2: Percent,
        /// The target.
        target: TargetId,
        /// What is aimed at.
        range: Range<Percent>,
        /// The device and flow to go to, where the book names one.
        next: Option<Next<'b>>,
        /// Whether the patient is ventilated by hand.
        ventilated: bool,
    },
    /// The saturation is above the target.
    AboveTarget {
        /// The saturation.
        spo2: Percent,
        /// The target.
        target: TargetId,
        /// What is aimed at.
        range: Range<Percent>,
        /// The device and flow to go to, where the book names one.
        next: Option<Next<'b>>,
        /// Whether the patient is ventilated by hand.
        ventilated: bool,
    },
    /// What was given as the saturation can't be one; nothing was judged by it.
    SaturationOutOfBounds(OutOfBounds),
    /// The reading doesn't guide treatment in this condition.
    SaturationNotReliable {
        /// The target.
        target: TargetId,
    },
    /// A hazard is there.
    Hazard(HazardId),
    /// Something needed for a check was not given.
    Missing(Missing),
    /// Whether a hazard is there depends on something that was not given.
    HazardUnknown(HazardId),
}

/// The device and flow to go to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Next<'b> {
    /// The device.
    pub device: DeviceId,
    /// Its rule.
    pub rule: Cited<'b>,
    /// Its flow.
    pub flow: Flow,
}

/// What was not given, or is not in the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Missing {
    /// The patient's group.
    Group,
    /// The cylinder.
    Cylinder,
    /// The gauge reading.
    Pressure,
    /// The temperature.
    Temperature,
    /// The density of oxygen at so low or high a temperature, or so high a pressure.
    Density,
    /// How long the gas must last.
    MinutesWanted,
    /// The saturation.
    Saturation,
    /// The patient's conditions.
    Conditions,
    /// The time since birth.
    MinuteOfLife,
    /// The book has no target for this patient.
    Target,
    /// The book has no target for one of the patient's conditions in this group.
    ConditionTarget,
    /// More than one of the patient's conditions has a target, and they differ.
    OneTarget,
}

impl fmt::Display for Missing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl Missing {
    /// Whether it kept a target from being chosen.
    #[must_use]
    pub const fn is_about_target(self) -> bool {
        matches!(
            self,
            Self::Conditions
                | Self::MinuteOfLife
                | Self::Target
                | Self::ConditionTarget
                | Self::OneTarget
                | Self::Group
        )
    }

    const fn words(self) -> &'static str {
        match self {
            Self::Group => {
                "whether the device fits, and which limits and target hold: the patient's group was not given"
            }
            Self::Cylinder => "how long the gas lasts: no cylinder was given",
            Self::Pressure => "how long the gas lasts: no gauge reading was given",
            Self::Temperature => {
                "whether the cylinder is too cold or too hot: no temperature was given, and minutes are worked out for 21 °C"
            }
            Self::Density => {
                "how long the gas lasts: the density of oxygen is known from -40 to 60 °C and to 300 bar only"
            }
            Self::MinutesWanted => "whether the gas lasts long enough: the minutes wanted were not given",
            Self::Saturation => "whether the target is met: no saturation was given",
            Self::Conditions => "which target holds: the patient's conditions were not given",
            Self::MinuteOfLife => "which target holds: the time since birth was not given",
            Self::Target => {
                "whether the target is met: the book has none for this group and these conditions"
            }
            Self::ConditionTarget => {
                "which target holds: the book has none for one of these conditions in this group; ask medical direction"
            }
            Self::OneTarget => "which target holds: the book has different ones for these conditions",
        }
    }

    const fn code(self) -> &'static str {
        match self {
            Self::Group => "group-not-given",
            Self::Cylinder => "cylinder-not-given",
            Self::Pressure => "pressure-not-given",
            Self::Temperature => "temperature-not-given",
            Self::Density => "density-not-known",
            Self::MinutesWanted => "minutes-wanted-not-given",
            Self::Saturation => "saturation-not-given",
            Self::Conditions => "conditions-not-given",
            Self::MinuteOfLife => "minute-of-life-not-given",
            Self::Target => "no-target",
            Self::ConditionTarget => "no-target-for-condition",
            Self::OneTarget => "several-targets",
        }
    }
}

impl<'b> Finding<'b> {
    /// A stable name in kebab-case for what was found. Which hazard it is, the rule says.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self.about {
            About::FlowTooLow { .. } => "flow-too-low",
            About::FlowTooHigh { .. } => "flow-too-high",
            About::DeviceDoesNotFit { .. } => "device-does-not-fit",
            About::BelowResidual { .. } => "below-residual",
            About::ChangeCylinder { .. } => "change-cylinder",
            About::BelowInServiceMinimum { .. } => "below-in-service-minimum",
            About::Overfilled { .. } => "overfilled",
            About::AboveServicePressure { .. } => "above-service-pressure",
            About::OutsideUseTemperature { .. } => "outside-use-temperature",
            About::TooShort { .. } => "too-short",
            About::NoMargin { .. } => "no-margin",
            About::GaugeMisleads { .. } => "gauge-misleads",
            About::MinutesLeft { .. } => "minutes-left",
            About::BelowTarget { .. } => "below-target",
            About::AboveTarget { .. } => "above-target",
            About::SaturationOutOfBounds(_) => "saturation-out-of-bounds",
            About::SaturationNotReliable { .. } => "saturation-not-reliable",
            About::Missing(missing) => missing.code(),
            About::Hazard(_) => "hazard",
            About::HazardUnknown(_) => "hazard-unknown",
        }
    }

    /// What to do, where the book says it.
    #[must_use]
    pub fn remedy(&self) -> Option<&'b str> {
        match self.about {
            About::FlowTooLow { .. } | About::BelowTarget { .. } => Some(Words::First),
            About::FlowTooHigh { .. } | About::AboveTarget { .. } => Some(Words::Second),
            About::Hazard(_) | About::HazardUnknown(_) => Some(Words::Second),
            _ => None,
        }
        .map(|words| self.rule.words(words))
    }
}
