//! The units and their spellings, and which quantity each belongs to.

use crate::quantity::{
    Factor, Flow, Gauge, OutOfBounds, Percent, Pressure, PressureUnit, Temperature, Time, TimeUnit, Volume,
};

/// The kinds of quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Dimension {
    /// Flow.
    Flow,
    /// Gauge pressure.
    Pressure,
    /// Volume.
    Volume,
    /// Cylinder factor.
    Factor,
    /// Temperature.
    Temperature,
    /// Share.
    Percent,
    /// Time.
    Time,
}

impl Dimension {
    /// The quantity with its usual unit, for a message.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Flow => "a flow in L/min",
            Self::Pressure => "a pressure in psi or bar",
            Self::Volume => "a volume in L",
            Self::Factor => "a cylinder factor in L/psi or L/bar",
            Self::Temperature => "a temperature in °C or °F",
            Self::Percent => "a share in %",
            Self::Time => "a time in min, h, days, months or years",
        }
    }
}

/// A unit of one of the quantities.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unit {
    FlowLitres,
    FlowMillilitres,
    Pressure(PressureUnit),
    Litres,
    CubicFeet,
    Factor(PressureUnit),
    Celsius,
    Fahrenheit,
    Percent,
    Time(TimeUnit),
}

/// Accepted spellings of units.
pub const UNITS: &[(&str, Unit)] = &[
    ("L/min", Unit::FlowLitres),
    ("mL/min", Unit::FlowMillilitres),
    ("psi", Unit::Pressure(PressureUnit::Psi)),
    ("bar", Unit::Pressure(PressureUnit::Bar)),
    ("kPa", Unit::Pressure(PressureUnit::Kpa)),
    ("MPa", Unit::Pressure(PressureUnit::Mpa)),
    ("L", Unit::Litres),
    ("ft3", Unit::CubicFeet),
    ("ft³", Unit::CubicFeet),
    ("L/psi", Unit::Factor(PressureUnit::Psi)),
    ("L/bar", Unit::Factor(PressureUnit::Bar)),
    ("°C", Unit::Celsius),
    ("°F", Unit::Fahrenheit),
    ("%", Unit::Percent),
    ("s", Unit::Time(TimeUnit::Second)),
    ("min", Unit::Time(TimeUnit::Minute)),
    ("h", Unit::Time(TimeUnit::Hour)),
    ("day", Unit::Time(TimeUnit::Day)),
    ("days", Unit::Time(TimeUnit::Day)),
    ("month", Unit::Time(TimeUnit::Month)),
    ("months", Unit::Time(TimeUnit::Month)),
    ("year", Unit::Time(TimeUnit::Year)),
    ("years", Unit::Time(TimeUnit::Year)),
];

/// Spellings in use elsewhere, and what to write here.
pub const OTHER_SPELLINGS: &[(&str, &str)] = &[
    ("lpm", "L/min"),
    ("l/min", "L/min"),
    ("l/minute", "L/min"),
    ("l/m", "L/min"),
    ("litres/min", "L/min"),
    ("liters/min", "L/min"),
    ("psig", "psi"),
    ("c", "°C"),
    ("f", "°F"),
    ("percent", "%"),
    ("minute", "min"),
    ("minutes", "min"),
    ("mins", "min"),
    ("hr", "h"),
    ("hrs", "h"),
    ("hour", "h"),
    ("hours", "h"),
    ("sec", "s"),
    ("seconds", "s"),
    ("litre", "L"),
    ("litres", "L"),
    ("liter", "L"),
    ("liters", "L"),
    ("yr", "years"),
    ("yrs", "years"),
    ("week", "days"),
    ("weeks", "days"),
];

impl Unit {
    /// The kind of quantity it measures.
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::FlowLitres | Self::FlowMillilitres => Dimension::Flow,
            Self::Pressure(_) => Dimension::Pressure,
            Self::Litres | Self::CubicFeet => Dimension::Volume,
            Self::Factor(_) => Dimension::Factor,
            Self::Celsius | Self::Fahrenheit => Dimension::Temperature,
            Self::Percent => Dimension::Percent,
            Self::Time(_) => Dimension::Time,
        }
    }
}

/// A quantity that can be read from text.
pub trait Measure: Copy + PartialOrd {
    /// Its kind.
    const DIMENSION: Dimension;

    /// From a number and a unit of its dimension.
    #[doc(hidden)]
    fn from_written(number: f64, unit: &str) -> Option<Result<Self, OutOfBounds>>;
}

macro_rules! measures {
    ($($name:ty, $dimension:ident { $($unit:pat => $make:expr,)+ })*) => {$(
        impl Measure for $name {
            const DIMENSION: Dimension = Dimension::$dimension;

            fn from_written(number: f64, unit: &str) -> Option<Result<Self, OutOfBounds>> {
                let (_, unit) = UNITS.iter().find(|(spelling, _)| *spelling == unit)?;
                match *unit {
                    $($unit => Some(($make)(number)),)+
                    _ => None,
                }
            }
        }
    )*};
}

measures! {
    Flow, Flow {
        Unit::FlowLitres => Flow::litres_per_minute,
        Unit::FlowMillilitres => |ml| Flow::litres_per_minute(ml / 1000.0),
    }
    Pressure<Gauge>, Pressure {
        Unit::Pressure(unit) => |number| Pressure::<Gauge>::in_unit(number, unit),
    }
    Volume, Volume {
        Unit::Litres => Volume::litres,
        Unit::CubicFeet => Volume::cubic_feet,
    }
    Factor, Factor {
        Unit::Factor(per) => |number| Factor::litres_per(number, per),
    }
    Temperature, Temperature {
        Unit::Celsius => Temperature::celsius,
        Unit::Fahrenheit => Temperature::fahrenheit,
    }
    Percent, Percent {
        Unit::Percent => Percent::new,
    }
    Time, Time {
        Unit::Time(unit) => |number| Time::of(number, unit),
    }
}
