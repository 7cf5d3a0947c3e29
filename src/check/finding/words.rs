//! Findings in words.

use core::fmt::{self, Write as _};

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
        if let (Some(first), Some(second)) = (characters.next(), characters.clone().next())
            && is_small(second)
            && let Some(small) = small(first)
        {
            f.write_char(small)?;
            return f.write_str(characters.as_str());
        }
        f.write_str(self.0)
    }
}

/// The small letter of a capital, in the Latin, Greek, Cyrillic and Armenian alphabets; of others names stay as they are. The
/// standard library's own table knows them all, and adds 13 KiB to a program.
const fn small(capital: char) -> Option<char> {
    let code = capital as u32;
    let by = match code {
        0x41..=0x5A | 0xC0..=0xD6 | 0xD8..=0xDE | 0x391..=0x3A1 | 0x3A3..=0x3AB | 0x410..=0x42F => 0x20,
        0x100..=0x12F | 0x132..=0x137 | 0x14A..=0x177 | 0x1E00..=0x1E95 | 0x1EA0..=0x1EFF
            if code & 1 == 0 =>
        {
            1
        }
        0x139..=0x148 | 0x179..=0x17E if code & 1 == 1 => 1,
        0x388..=0x38A => 0x25,
        0x400..=0x40F => 0x50,
        0x531..=0x556 => 0x30,
        _ => return None,
    };
    char::from_u32(code + by)
}

/// Whether it is a small letter of these alphabets.
const fn is_small(letter: char) -> bool {
    match letter as u32 {
        0x61..=0x7A | 0xDF..=0xF6 | 0xF8..=0xFF | 0x3AC..=0x3CE | 0x430..=0x45F | 0x561..=0x587 => true,
        0x100..=0x12F | 0x131..=0x177 | 0x179..=0x17E | 0x1E00..=0x1E9D | 0x1EA0..=0x1EFF => {
            small(letter).is_none()
        }
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use std::string::ToString as _;

    use super::*;

    /// Against the standard library's table.
    #[test]
    fn small_letters_are_those_of_unicode() {
        for character in '\0'..=char::MAX {
            if let Some(small) = small(character) {
                assert!(character.to_lowercase().eq([small]), "{character:?}");
            }
            assert!(!is_small(character) || character.is_lowercase(), "{character:?}");
        }
        let known = "AÄÆÉŐŁŠŻÑØŒĐČΓΩΈЖЯЁԲỆ";
        assert!(known.chars().all(|letter| small(letter).is_some()));
        assert!(known.chars().flat_map(char::to_lowercase).all(is_small));
    }

    #[test]
    fn a_name_in_a_sentence_begins_small_unless_it_is_letters() {
        for (name, inside) in [
            ("Simple mask", "simple mask"),
            ("Überdruckmaske", "überdruckmaske"),
            ("Šesť litrov", "šesť litrov"),
            ("Ёмкость", "ёмкость"),
            ("BVM", "BVM"),
            ("D cylinder", "D cylinder"),
            ("2-litre bag", "2-litre bag"),
            ("M", "M"),
            ("", ""),
            ("mask", "mask"),
            ("ßa", "ßa"),
        ] {
            assert_eq!(Lower(name).to_string(), inside);
        }
    }
}
