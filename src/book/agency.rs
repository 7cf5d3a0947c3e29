//! Who publishes the book.

use super::{Date, List, Rule, Text};
use crate::quantity::{PressureUnit, TemperatureUnit};

/// The two sentences that every card and every answer carries.
pub const ALWAYS_DISCLAIMERS: [&str; 2] = [
    "Local protocol and medical direction come first.",
    "Training and reference aid: not a medical device, not a substitute for licensed judgement.",
];

/// The cautions that go with anything about oxygen under pressure.
pub const ALWAYS_CAUTIONS: [&str; 3] = [
    "No flame, no smoking.",
    "No oil or grease.",
    "Never leave a cylinder standing free.",
];

/// The agency whose protocol this is, and the edition.
#[derive(Clone, Debug, PartialEq)]
pub struct Agency {
    /// Name, place and reason. The identifier is always `agency`.
    pub rule: Rule,
    /// Where the agency works.
    pub location: Text,
    /// Who signs the protocol.
    pub medical_director: Text,
    /// The edition's name.
    pub edition: Text,
    /// From when it holds.
    pub effective: Date,
    /// When it must be looked at again.
    pub review: Date,
    /// When the medical director signed it.
    pub signed_off: Date,
    /// The unit in which gauges read.
    pub pressure_unit: PressureUnit,
    /// The unit in which temperatures are read.
    pub temperature_unit: TemperatureUnit,
    /// The agency's own disclaimers, beside [`ALWAYS_DISCLAIMERS`].
    pub disclaimers: List<Text>,
}
