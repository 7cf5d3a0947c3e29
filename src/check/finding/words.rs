//! Findings in words.

use core::fmt;

use super::{About, Finding, Next};
use crate::book::Words;
use crate::quantity::{Flow, Range};

/// The finding in a sentence.
impl fmt::Display for Finding<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.pressure_unit;
        match self.about {
            About::FlowTooLow { flow, range, .. } => flow_is_too(f, "low", flow, self.rule.name(), range),
            About::FlowTooHigh { flow, range, .. } => flow_is_too(f, "high", flow, self.rule.name(), range),
            About::DeviceDoesNotFit { group, .. } => does_not_fit(f, self.rule.name(), group),
            About::BelowResidual { pressure, residual } => write!(
                f,
                "the gauge reads {}, below the residual pressure of {}: treat the cylinder as empty",
                unit.show(pressure),
                unit.show(residual)
            ),
            About::ChangeCylinder {
                pressure,
                change_over,
            } => write!(
                f,
                "the gauge reads {}: change the cylinder at {}",
                unit.show(pressure),
                unit.show(change_over)
            ),
            About::BelowInServiceMinimum { pressure, minimum } => write!(
                f,
                "the gauge reads {}, below the in-service minimum of {}",
                unit.show(pressure),
                unit.show(minimum)
            ),
            About::Overfilled { pressure, most } => write!(
                f,
                "the gauge reads {}, above the {} this size may be filled to: overfilled, hot, or the wrong size",
                unit.show(pressure),
                unit.show(most)
            ),
            About::AboveServicePressure { pressure, service } => write!(
                f,
                "the gauge reads {}, above the service pressure of {}: right only for a cylinder marked for it, or a warm one",
                unit.show(pressure),
                unit.show(service)
            ),
            About::OutsideUseTemperature { temperature, range } => {
                write!(f, "{temperature} is outside the temperature of use, {range}")
            }
            About::TooShort { minutes_left, wanted } => write!(
                f,
                "the gas lasts {minutes_left} min, and {} min are wanted",
                crate::quantity::Number(wanted)
            ),
            About::NoMargin {
                minutes_left,
                with_margin,
            } => write!(
                f,
                "the gas lasts {minutes_left} min, short of the {} min wanted with the planning margin",
                crate::quantity::Number(with_margin)
            ),
            About::GaugeMisleads { gauge, temperature } => {
                write!(
                    f,
                    "at {temperature} {}",
                    gauge.sentence().unwrap_or("the gauge is fair")
                )
            }
            About::MinutesLeft { minutes_left } => write!(f, "the gas lasts {minutes_left} min"),
            About::BelowTarget {
                spo2,
                range,
                next,
                ventilated,
                ..
            } => {
                write!(f, "the saturation of {spo2} is below the target of {range}")?;
                then(
                    f,
                    next,
                    ventilated,
                    "go on ventilating by hand; check seal, chest, airway and supply",
                )
            }
            About::AboveTarget {
                spo2,
                range,
                next,
                ventilated,
                ..
            } => {
                write!(f, "the saturation of {spo2} is above the target of {range}")?;
                then(
                    f,
                    next,
                    ventilated,
                    "go on ventilating by hand, with less oxygen as local protocol says",
                )
            }
            About::SaturationOutOfBounds(error) => write!(f, "whether the target is met: {error}"),
            About::SaturationNotReliable { .. } => write!(
                f,
                "the saturation can't be trusted here ({}): it does not guide the flow",
                Lower(self.rule.name())
            ),
            About::Hazard(_) => f.write_str(self.rule.words(Words::First)),
            About::Missing(missing) => f.write_str(missing.words()),
            About::HazardUnknown(_) => {
                write!(
                    f,
                    "{}: {}",
                    Lower(self.rule.name()),
                    self.rule.words(Words::Third)
                )
            }
        }
    }
}

/// What comes next: a device and flow, or, for a patient ventilated by hand, to go on.
fn then(f: &mut fmt::Formatter<'_>, next: Option<Next<'_>>, ventilated: bool, go_on: &str) -> fmt::Result {
    match next {
        Some(Next { rule, flow, .. }) => write!(f, "; next: {} at {flow}", Lower(rule.name())),
        None if ventilated => write!(f, "; {go_on}"),
        None => Ok(()),
    }
}

/// A flow outside the device's range, in the words of every check.
pub(in crate::check) fn flow_is_too(
    f: &mut fmt::Formatter<'_>,
    much: &str,
    flow: Flow,
    device: &str,
    range: Range<Flow>,
) -> fmt::Result {
    let device = Lower(device);
    write!(f, "{flow} is too {much} for the {device}: the book says {range}")
}

/// A device that isn't made for the patient's group, in the words of every check.
pub(in crate::check) fn does_not_fit(f: &mut fmt::Formatter<'_>, device: &str, group: &str) -> fmt::Result {
    let device = Lower(device);
    write!(f, "the {device} does not fit the group {}", Lower(group))
}

/// A name inside a sentence: its first letter small, unless the second is a capital too or there is none.
pub(in crate::check) struct Lower<'a>(pub(in crate::check) &'a str);

impl fmt::Display for Lower<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut characters = self.0.chars();
        match (characters.next(), characters.clone().next()) {
            (Some(first), Some(second)) if second.is_lowercase() => {
                write!(f, "{}{}", first.to_lowercase(), characters.as_str())
            }
            _ => f.write_str(self.0),
        }
    }
}
