//! The trade's cylinder factor: litres of gas for each unit of gauge pressure.

use core::fmt;

use super::{Gauge, Number, OutOfBounds, Pressure, PressureUnit, Volume, bounds};

/// Litres of gas (at 1 atm and 70 °F) for each unit of gauge pressure.
///
/// ```
/// use oxyfolio::quantity::{Factor, Pressure};
/// let factor = Factor::litres_per_psi(0.16)?;
/// let litres = factor.contents(Pressure::psi(1800.0)?);
/// assert_eq!(litres.to_string(), "288 L");
/// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factor {
    litres: f64,
    per: PressureUnit,
}

impl Factor {
    /// From litres per psi, 0 to 100.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite or outside the bounds.
    pub const fn litres_per_psi(litres: f64) -> Result<Self, OutOfBounds> {
        Self::litres_per(litres, PressureUnit::Psi)
    }

    /// From litres per bar, up to 100 L/psi.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite or outside the bounds.
    pub const fn litres_per_bar(litres: f64) -> Result<Self, OutOfBounds> {
        Self::litres_per(litres, PressureUnit::Bar)
    }

    /// From litres for each unit of a pressure unit chosen at run time.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite or outside the bounds.
    pub const fn litres_per(litres: f64, per: PressureUnit) -> Result<Self, OutOfBounds> {
        let factor = Self { litres, per };
        match bounds::FACTOR.accept(factor.as_litres_per(PressureUnit::Psi)) {
            Ok(_) => Ok(factor),
            Err(error) => Err(error),
        }
    }

    /// For generated tables, whose numbers were checked when they were made.
    #[doc(hidden)]
    #[must_use]
    pub const fn tabled(litres: f64, per: PressureUnit) -> Self {
        Self { litres, per }
    }

    /// The number as written, and the pressure unit it was written for.
    #[must_use]
    pub const fn written(self) -> (f64, PressureUnit) {
        (self.litres, self.per)
    }

    /// In litres for each unit of `unit`.
    #[must_use]
    pub const fn as_litres_per(self, unit: PressureUnit) -> f64 {
        // One psi of pressure, asked in the factor's own unit and back.
        let one: Pressure<Gauge> = match Pressure::in_unit(1.0, unit) {
            Ok(one) => one,
            Err(_) => Pressure::ZERO,
        };
        self.litres * one.as_unit(self.per)
    }

    /// Litres of gas held at a gauge pressure, by the factor method.
    #[must_use]
    pub const fn contents(self, pressure: Pressure<Gauge>) -> Volume {
        Volume::tabled(self.litres * pressure.as_unit(self.per))
    }
}

impl PartialOrd for Factor {
    fn partial_cmp(&self, other: &Self) -> Option<core::cmp::Ordering> {
        self.as_litres_per(PressureUnit::Psi)
            .partial_cmp(&other.as_litres_per(PressureUnit::Psi))
    }
}

impl fmt::Display for Factor {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} L/{}", Number(self.litres), self.per.symbol())
    }
}
