//! Temperatures of gas, cylinders and surroundings.

use core::fmt;

use super::{Number, OutOfBounds, bounds, scalar::scalar};

scalar! {
    /// A temperature, kept in degrees Celsius.
    ///
    /// ```
    /// use oxyfolio::quantity::Temperature;
    /// assert_eq!(Temperature::fahrenheit(14.0)?.as_celsius(), -10.0);
    /// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
    /// ```
    Temperature, bounds::TEMPERATURE, "°C",
    /// From degrees Celsius, −60 to 120.
    new celsius,
    /// In degrees Celsius.
    get as_celsius
}

impl Temperature {
    /// From degrees Fahrenheit.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite or outside the bounds.
    pub const fn fahrenheit(value: f64) -> Result<Self, OutOfBounds> {
        Self::celsius((value - 32.0) * 5.0 / 9.0)
    }

    /// In degrees Fahrenheit.
    #[must_use]
    pub const fn as_fahrenheit(self) -> f64 {
        self.as_celsius() * 9.0 / 5.0 + 32.0
    }
}

/// The unit in which an agency reads temperatures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TemperatureUnit {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

impl TemperatureUnit {
    /// How the unit is written.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
        }
    }

    /// Prints a temperature in this unit.
    #[must_use]
    pub const fn show(self, temperature: Temperature) -> ShownTemperature {
        ShownTemperature {
            temperature,
            unit: self,
        }
    }
}

/// A temperature to be printed in a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShownTemperature {
    temperature: Temperature,
    unit: TemperatureUnit,
}

impl fmt::Display for ShownTemperature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.unit {
            TemperatureUnit::Celsius => write!(f, "{}", self.temperature),
            TemperatureUnit::Fahrenheit => {
                write!(f, "{} °F", Number(self.temperature.as_fahrenheit()))
            }
        }
    }
}
