//! What to write instead, in the unit that belongs at the place: a flow in L/min, a pressure in the unit of the agency's gauges.

use super::{Dimension, Mistake};
use crate::quantity::{PressureUnit, TemperatureUnit};

/// The units of the agency, as far as they could be read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Units {
    /// Of its gauges.
    pub pressure: Option<PressureUnit>,
    /// Of its thermometers.
    pub temperature: Option<TemperatureUnit>,
}

/// What belongs at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// The kind of quantity.
    pub dimension: Dimension,
    /// Whether it is a range.
    pub is_range: bool,
}

impl Units {
    /// A number with the unit that belongs there, for a hint.
    fn with_unit(self, number: &str, dimension: Dimension) -> String {
        let one = |unit: &str| format!("write `{number} {unit}`");
        match (dimension, self.pressure, self.temperature) {
            (Dimension::Flow, ..) => one("L/min"),
            (Dimension::Volume, ..) => one("L"),
            (Dimension::Percent, ..) => one("%"),
            (Dimension::Pressure, Some(unit), _) => one(unit.symbol()),
            (Dimension::Pressure, None, _) => {
                format!("write `{number} psi` or `{number} bar`, as your gauges show it")
            }
            (Dimension::Factor, Some(PressureUnit::Psi), _) => one("L/psi"),
            (Dimension::Factor, Some(_), _) => one("L/bar"),
            (Dimension::Factor, None, _) => format!("write `{number} L/psi` or `{number} L/bar`"),
            (Dimension::Temperature, _, Some(TemperatureUnit::Celsius)) => one("°C"),
            (Dimension::Temperature, _, Some(TemperatureUnit::Fahrenheit)) => one("°F"),
            (Dimension::Temperature, _, None) => format!("write `{number} °C` or `{number} °F`"),
            (Dimension::Time, ..) => {
                format!("write `{number} min`, or another unit of time: `s`, `h`, `days`, `months`, `years`")
            }
        }
    }

    /// The kind of quantity in the unit that belongs there.
    fn words(self, dimension: Dimension) -> String {
        match (dimension, self.pressure, self.temperature) {
            (Dimension::Pressure, Some(unit), _) => format!("a pressure in {}", unit.symbol()),
            (Dimension::Factor, Some(PressureUnit::Psi), _) => "a cylinder factor in L/psi".to_owned(),
            (Dimension::Factor, Some(_), _) => "a cylinder factor in L/bar".to_owned(),
            (Dimension::Temperature, _, Some(TemperatureUnit::Celsius)) => "a temperature in °C".to_owned(),
            (Dimension::Temperature, _, Some(TemperatureUnit::Fahrenheit)) => {
                "a temperature in °F".to_owned()
            }
            _ => dimension.words().to_owned(),
        }
    }

    /// What may stand there, as an example. The numbers are round ones and nobody's limits.
    fn example(self, wanted: Wanted) -> String {
        let (low, high, unit) = match (wanted.dimension, self.pressure, self.temperature) {
            (Dimension::Flow, ..) => ("1", "10", "L/min"),
            (Dimension::Volume, ..) => ("1", "10", "L"),
            (Dimension::Percent, ..) => ("10", "90", "%"),
            (Dimension::Pressure, None | Some(PressureUnit::Psi), _) => ("100", "1000", "psi"),
            (Dimension::Pressure, Some(unit), _) => ("10", "100", unit.symbol()),
            (Dimension::Factor, None | Some(PressureUnit::Psi), _) => ("0.1", "1", "L/psi"),
            (Dimension::Factor, Some(_), _) => ("1", "10", "L/bar"),
            (Dimension::Temperature, _, Some(TemperatureUnit::Fahrenheit)) => ("10", "100", "°F"),
            (Dimension::Temperature, ..) => ("10", "50", "°C"),
            (Dimension::Time, ..) => ("1", "10", "min"),
        };
        if wanted.is_range {
            format!("write for example `{low} to {high} {unit}`")
        } else {
            format!("write for example `{high} {unit}`")
        }
    }
}

/// The advice of a mistake that any quantity could have; others say more of their own.
pub const ANY_EXAMPLE: &str = "write for example `10 L/min` or `94 to 98 %`";

impl Mistake {
    /// The same mistake where this is wanted.
    #[must_use]
    pub fn wanting(mut self, text: &str, wanted: Wanted) -> Self {
        // What is said of a hint here is said again in the agency's units by who knows them.
        if self.wanted.is_none() && self.is_advised_by_unit() {
            self.wanted = Some(wanted);
        }
        self.advise(text, Units::default());
        self
    }

    fn is_advised_by_unit(&self) -> bool {
        matches!(self.code, "missing-unit" | "wrong-unit")
            || self.code == "not-a-quantity" && self.hint.as_deref() == Some(ANY_EXAMPLE)
    }

    /// Says what to write in the agency's units; `text` is the one in which the mistake has its place.
    pub fn advise(&mut self, text: &str, units: Units) {
        let Some(wanted) = self.wanted else {
            return;
        };
        self.hint = Some(match self.code {
            "missing-unit" => {
                let number = text.get(self.at.clone()).unwrap_or("");
                units.with_unit(number, wanted.dimension)
            }
            "wrong-unit" => format!("write {}", units.words(wanted.dimension)),
            _ => units.example(wanted),
        });
    }
}

#[cfg(test)]
mod tests {
    use super::super::{one, range};
    use super::*;
    use crate::quantity::{Factor, Flow, Gauge, Percent, Pressure, Temperature, Time};

    /// The advice in the agency's units.
    fn advice(mut mistake: Mistake, text: &str, units: Units) -> String {
        mistake.advise(text, units);
        mistake.hint.unwrap_or_default()
    }

    #[test]
    fn the_unit_is_that_of_the_place() {
        let none = Units::default();
        let metric = Units {
            pressure: Some(PressureUnit::Bar),
            temperature: Some(TemperatureUnit::Fahrenheit),
        };
        let flow = one::<Flow>("8").unwrap_err();
        assert_eq!(advice(flow, "8", none), "write `8 L/min`");
        let share = range::<Percent>("94 to 98").unwrap_err();
        assert_eq!(advice(share, "94 to 98", none), "write `98 %`");
        let pressure = || one::<Pressure<Gauge>>("500").unwrap_err();
        assert_eq!(
            advice(pressure(), "500", none),
            "write `500 psi` or `500 bar`, as your gauges show it"
        );
        assert_eq!(advice(pressure(), "500", metric), "write `500 bar`");
        let factor = one::<Factor>("2").unwrap_err();
        assert_eq!(advice(factor, "2", metric), "write `2 L/bar`");
        let heat = one::<Temperature>("70").unwrap_err();
        assert_eq!(advice(heat, "70", metric), "write `70 °F`");
        let time = one::<Time>("5").unwrap_err();
        assert!(advice(time, "5", none).starts_with("write `5 min`, or another unit of time"));
        let wrong = one::<Pressure<Gauge>>("5 L/min").unwrap_err();
        assert_eq!(advice(wrong, "5 L/min", metric), "write a pressure in bar");
        let words = range::<Flow>("up to ten").unwrap_err();
        assert_eq!(
            advice(words, "up to ten", none),
            "write for example `1 to 10 L/min`"
        );
        // Advice that says more stays.
        let curly = one::<Flow>("“8” L/min").unwrap_err();
        assert!(advice(curly, "“8” L/min", metric).contains("curly"));
    }
}
