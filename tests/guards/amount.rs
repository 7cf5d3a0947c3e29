//! Quantities as people write them, compared exactly: whole numbers of a unit so small that every other divides into it.

use core::fmt;

use oxyfolio::{
    book::Measure,
    compile::written::{self, Measure as Written},
};
use proptest::{prelude::*, sample::select};

/// The kinds of quantity that guards compare.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    Flow,
    Pressure,
    Temperature,
    Share,
    Time,
}

pub const fn kind(measure: Measure) -> Kind {
    match measure {
        Measure::Flow => Kind::Flow,
        Measure::Pressure => Kind::Pressure,
        Measure::Temperature => Kind::Temperature,
        Measure::Spo2 => Kind::Share,
        Measure::MinutesLeft | Measure::MinutesWanted => Kind::Time,
    }
}

/// Tenths of a unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Amount {
    pub tenths: i64,
    pub unit: &'static str,
}

impl Amount {
    /// In the small unit of its kind.
    pub fn exact(self) -> i128 {
        let tenths = i128::from(self.tenths);
        match self.unit {
            "mL/min" => tenths,
            "L/min" => tenths * 1000,
            // By definition 6894.757293168361… Pa; a picopascal doesn't matter here.
            "psi" => tenths * 6_894_757_293_168_361,
            "kPa" => tenths * 1_000_000_000_000_000,
            "bar" => tenths * 100_000_000_000_000_000,
            "MPa" => tenths * 1_000_000_000_000_000_000,
            // Ninetieths of a degree Celsius.
            "°C" => tenths * 9,
            "°F" => (tenths - 320) * 5,
            "%" | "s" => tenths,
            "min" => tenths * 60,
            "h" => tenths * 3600,
            unit => panic!("{unit}"),
        }
    }

    /// As the library reads it.
    pub fn read<Q: Written>(self) -> Q {
        written::one(&self.to_string()).unwrap_or_else(|mistake| panic!("{self}: {mistake}"))
    }
}

impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.tenths < 0 { "-" } else { "" };
        let (whole, tenth) = (self.tenths.abs() / 10, self.tenths.abs() % 10);
        match tenth {
            0 => write!(f, "{sign}{whole} {}", self.unit),
            tenth => write!(f, "{sign}{whole}.{tenth} {}", self.unit),
        }
    }
}

/// Few numbers, so that what is compared is often equal; some are equal in different units.
pub fn amount(kind: Kind) -> BoxedStrategy<Amount> {
    let one = |unit: &'static str, tenths: &'static [i64]| {
        select(tenths)
            .prop_map(move |tenths| Amount { tenths, unit })
            .boxed()
    };
    match kind {
        Kind::Flow => prop_oneof![
            4 => one("L/min", &[0, 5, 10, 20, 25, 40, 60, 80, 100, 120, 150]),
            1 => one("mL/min", &[0, 5_000, 10_000, 25_000, 40_000]),
        ]
        .boxed(),
        Kind::Pressure => prop_oneof![
            one("psi", &[0, 2_000, 5_000, 10_000, 20_000]),
            one("bar", &[0, 500, 1_000, 1_370]),
            one("kPa", &[50_000, 100_000, 137_000]),
            one("MPa", &[50, 100, 137]),
        ]
        .boxed(),
        Kind::Temperature => prop_oneof![
            one("°C", &[-200, -100, 0, 100, 200, 400, 500]),
            one("°F", &[-40, 140, 320, 500, 680, 1_040]),
        ]
        .boxed(),
        Kind::Share => one("%", &[0, 850, 880, 881, 920, 940, 980, 1_000]),
        Kind::Time => prop_oneof![
            one("s", &[0, 900, 6_000]),
            one("min", &[0, 15, 100, 150, 600, 1_200]),
            one("h", &[0, 10, 15, 20]),
        ]
        .boxed(),
    }
}
