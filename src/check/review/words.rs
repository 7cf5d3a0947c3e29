//! Findings in words.

use core::fmt;

use super::finding::{About, Fault, Finding, Mismatch, NotRecorded, Scene};
use crate::check::finding::words::{Lower, does_not_fit, flow_is_too};
use crate::quantity::{Number, PressureUnit};

/// The finding in a sentence.
impl fmt::Display for Finding<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.pressure_unit;
        match self.about {
            About::Hazard { hazard, scene } => write!(f, "{} ({})", hazard.say, Shown(&scene, unit)),
            About::FlowTooLow { device, flow, range } => flow_is_too(f, "low", flow, &device.rule.name, range),
            About::FlowTooHigh { device, flow, range } => flow_is_too(f, "high", flow, &device.rule.name, range),
            About::DeviceDoesNotFit { device, group } => does_not_fit(f, &device.rule.name, &group.rule.name),
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

impl NotRecorded {
    pub(super) const fn words(self) -> &'static str {
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
