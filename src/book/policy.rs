//! Policies: the agency's named quantities.

use core::fmt;

use super::{List, Rule, Text};
use crate::quantity::{Factor, Flow, Gauge, Percent, Pressure, Range, Ratio, Temperature, Time, Volume};

/// A named quantity.
#[derive(Clone, Debug, PartialEq)]
pub struct Policy {
    /// Name, place and reason.
    pub rule: Rule,
    /// The quantity.
    pub value: Value,
    /// What else to know.
    pub note: Option<Text>,
}

/// A quantity of any kind, or a range of one.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Value {
    /// A flow.
    Flow(Flow),
    /// A gauge pressure.
    Pressure(Pressure<Gauge>),
    /// A volume.
    Volume(Volume),
    /// A cylinder factor.
    Factor(Factor),
    /// A temperature.
    Temperature(Temperature),
    /// A share.
    Percent(Percent),
    /// A span of time.
    Time(Time),
    /// An air-entrainment ratio.
    Ratio(Ratio),
    /// A range of flow.
    FlowRange(Range<Flow>),
    /// A range of gauge pressure.
    PressureRange(Range<Pressure<Gauge>>),
    /// A range of temperature.
    TemperatureRange(Range<Temperature>),
    /// A range of shares.
    PercentRange(Range<Percent>),
    /// A range of time.
    TimeRange(Range<Time>),
}

impl fmt::Display for Value {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Flow(value) => value.fmt(f),
            Self::Pressure(value) => value.fmt(f),
            Self::Volume(value) => value.fmt(f),
            Self::Factor(value) => value.fmt(f),
            Self::Temperature(value) => value.fmt(f),
            Self::Percent(value) => value.fmt(f),
            Self::Time(value) => value.fmt(f),
            Self::Ratio(value) => value.fmt(f),
            Self::FlowRange(value) => value.fmt(f),
            Self::PressureRange(value) => value.fmt(f),
            Self::TemperatureRange(value) => value.fmt(f),
            Self::PercentRange(value) => value.fmt(f),
            Self::TimeRange(value) => value.fmt(f),
        }
    }
}

/// The agency's policies: those the checker needs, each in its kind of quantity, and the whole list.
#[derive(Clone, Debug, PartialEq)]
pub struct Policies {
    /// All policies, in the order of the book.
    pub all: List<Policy>,
    /// Gas below this pressure is never counted on.
    pub residual_pressure: Pressure<Gauge>,
    /// The cylinder is changed at this reading.
    pub change_over_pressure: Pressure<Gauge>,
    /// A cylinder below this reading does not go into service.
    pub in_service_minimum: Pressure<Gauge>,
    /// Added to the time wanted when planning.
    pub planning_margin: Percent,
    /// The most a cylinder may be filled to, as a share of its service pressure.
    pub fill_limit: Percent,
    /// How long a cylinder may be used after its test.
    pub requalification_interval: Time,
    /// Temperatures at which cylinders are stored.
    pub storage_temperature: Range<Temperature>,
    /// Temperatures at which cylinders are used.
    pub use_temperature: Range<Temperature>,
}

impl Policies {
    /// Finds a policy by its identifier.
    #[must_use]
    pub fn find(&self, id: &str) -> Option<&Policy> {
        self.all.iter().find(|policy| &*policy.rule.id == id)
    }
}
