//! Pressures, with what they are measured against in the type.

use core::{fmt, marker::PhantomData};

use super::{Number, OutOfBounds, Quantity, bounds};

/// Pascals in a pound-force per square inch: 0.45359237 × 9.80665 / 0.0254², exact (NIST SP 811).
const PASCALS_PER_PSI: f64 = 6_894.757_293_168_361;
const PASCALS_PER_BAR: f64 = 100_000.0;
const PASCALS_PER_KPA: f64 = 1_000.0;
const PASCALS_PER_MPA: f64 = 1_000_000.0;
/// One standard atmosphere in pascals (10th CGPM, 1954).
pub const STANDARD_ATMOSPHERE_PA: f64 = 101_325.0;

/// Marks a pressure above that of the surrounding air, as a gauge shows it.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Eq)]
pub enum Gauge {}

/// Marks a pressure above vacuum.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Eq)]
pub enum Absolute {}

/// A pressure measured against `Reference`: [`Gauge`] or [`Absolute`].
///
/// ```
/// use oxyfolio::quantity::{Gauge, Pressure};
/// let reading = Pressure::<Gauge>::psi(2000.0)?;
/// assert_eq!(reading.to_string(), "2000 psi");
/// assert_eq!(reading.as_bar().round(), 138.0);
/// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
/// ```
///
/// The two kinds don't mix; see [what the compiler refuses](crate::quantity#what-the-compiler-refuses).
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Pressure<Reference> {
    pascals: f64,
    reference: PhantomData<Reference>,
}

impl<Reference> Pressure<Reference> {
    /// For generated tables, whose numbers were checked when they were made.
    #[doc(hidden)]
    #[must_use]
    pub const fn tabled(pascals: f64) -> Self {
        Self {
            pascals,
            reference: PhantomData,
        }
    }

    /// In pascals.
    #[must_use]
    pub const fn as_pascals(self) -> f64
    where
        Reference: Copy,
    {
        self.pascals
    }

    /// In pounds per square inch.
    #[must_use]
    pub const fn as_psi(self) -> f64
    where
        Reference: Copy,
    {
        self.pascals / PASCALS_PER_PSI
    }

    /// In bar.
    #[must_use]
    pub const fn as_bar(self) -> f64
    where
        Reference: Copy,
    {
        self.pascals / PASCALS_PER_BAR
    }

    /// In a unit chosen at run time.
    #[must_use]
    pub const fn as_unit(self, unit: PressureUnit) -> f64
    where
        Reference: Copy,
    {
        self.pascals / unit.pascals()
    }
}

impl Pressure<Gauge> {
    /// No pressure above the surrounding air.
    pub const ZERO: Self = Self::tabled(0.0);

    const fn from_pascals(pascals: f64) -> Result<Self, OutOfBounds> {
        match bounds::GAUGE_PRESSURE.accept(pascals / PASCALS_PER_BAR) {
            Ok(_) => Ok(Self::tabled(pascals)),
            Err(error) => Err(error),
        }
    }

    /// From a gauge reading in pounds per square inch.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite, negative or above 310 bar.
    pub const fn psi(value: f64) -> Result<Self, OutOfBounds> {
        Self::from_pascals(value * PASCALS_PER_PSI)
    }

    /// From a gauge reading in bar.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite, negative or above 310 bar.
    pub const fn bar(value: f64) -> Result<Self, OutOfBounds> {
        Self::from_pascals(value * PASCALS_PER_BAR)
    }

    /// From a gauge reading in a unit chosen at run time.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite, negative or above 310 bar.
    pub const fn in_unit(value: f64, unit: PressureUnit) -> Result<Self, OutOfBounds> {
        Self::from_pascals(value * unit.pascals())
    }

    /// The same pressure above vacuum, under one standard atmosphere.
    #[must_use]
    pub const fn to_absolute(self) -> Pressure<Absolute> {
        Pressure::tabled(self.pascals + STANDARD_ATMOSPHERE_PA)
    }
}

impl Pressure<Absolute> {
    /// From a pressure above vacuum in bar.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite, negative or above 311.1 bar.
    pub const fn absolute_bar(value: f64) -> Result<Self, OutOfBounds> {
        match bounds::ABSOLUTE_PRESSURE.accept(value) {
            Ok(value) => Ok(Self::tabled(value * PASCALS_PER_BAR)),
            Err(error) => Err(error),
        }
    }
}

impl Pressure<Gauge> {
    /// A reading is a whole number in the unit it was taken in: bar when it is whole in bar alone, else psi.
    pub(crate) fn reading_unit(self) -> PressureUnit {
        if !is_whole(self.as_psi()) && is_whole(self.as_bar() * 10.0) {
            PressureUnit::Bar
        } else {
            PressureUnit::Psi
        }
    }
}

impl Quantity for Pressure<Gauge> {
    fn fmt_before(&self, other: &Self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.reading_unit();
        if unit == other.reading_unit() {
            write!(f, "{}", Number(self.as_unit(unit)))
        } else {
            fmt::Display::fmt(self, f)
        }
    }
}

impl fmt::Display for Pressure<Gauge> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.reading_unit().show(*self))
    }
}

fn is_whole(value: f64) -> bool {
    let nearest = (value + 0.5) as u64 as f64;
    (value - nearest).abs() < 1e-6
}

/// The unit in which pressures are read and printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum PressureUnit {
    /// Pounds per square inch.
    Psi,
    /// Bar.
    Bar,
    /// Kilopascals.
    Kpa,
    /// Megapascals.
    Mpa,
}

impl PressureUnit {
    /// How the unit is written.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Psi => "psi",
            Self::Bar => "bar",
            Self::Kpa => "kPa",
            Self::Mpa => "MPa",
        }
    }

    const fn pascals(self) -> f64 {
        match self {
            Self::Psi => PASCALS_PER_PSI,
            Self::Bar => PASCALS_PER_BAR,
            Self::Kpa => PASCALS_PER_KPA,
            Self::Mpa => PASCALS_PER_MPA,
        }
    }

    /// Prints a gauge pressure in this unit.
    #[must_use]
    pub const fn show(self, pressure: Pressure<Gauge>) -> ShownPressure {
        ShownPressure { pressure, unit: self }
    }
}

impl fmt::Display for PressureUnit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.symbol())
    }
}

/// A gauge pressure to be printed in a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShownPressure {
    pressure: Pressure<Gauge>,
    unit: PressureUnit,
}

impl fmt::Display for ShownPressure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{} {}",
            Number(self.pressure.as_unit(self.unit)),
            self.unit.symbol()
        )
    }
}
