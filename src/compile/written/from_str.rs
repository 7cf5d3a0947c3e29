//! `str::parse` for quantities: the spellings of the rulebook, for programs.

use core::str::FromStr;

use super::{Mistake, one, range, ratio};
use crate::quantity::{Factor, Flow, Gauge, Percent, Pressure, Range, Ratio, Temperature, Time, Volume};

macro_rules! from_str {
    ($($name:ty, $path:literal, $written:literal, $bad:literal, $says:literal;)+) => {$(
        /// Reads what people write, by the spellings of [the language page](crate::compile::language).
        ///
        /// ```
        /// use oxyfolio::quantity::*;
        #[doc = concat!("let read: ", $path, " = ", stringify!($written), ".parse()?;")]
        #[doc = concat!("assert_eq!(read.to_string(), ", stringify!($written), ");")]
        #[doc = concat!("let mistake = ", stringify!($bad), ".parse::<", $path, ">().unwrap_err();")]
        #[doc = concat!("assert_eq!(mistake.to_string(), ", stringify!($says), ");")]
        /// # Ok::<(), oxyfolio::compile::written::Mistake>(())
        /// ```
        impl FromStr for $name {
            type Err = Mistake;

            fn from_str(text: &str) -> Result<Self, Mistake> {
                one(text)
            }
        }
    )+};
}

from_str! {
    Flow, "Flow", "15 L/min", "15 psi",
        "expected a flow in L/min, found a pressure in psi or bar (write a flow in L/min)";
    Pressure<Gauge>, "Pressure<Gauge>", "2000 psi", "2000",
        "expected a unit after 2000 (write `2000 psi` or `2000 bar`, as your gauges show it)";
    Volume, "Volume", "4.6 L", "4.6 °C",
        "expected a volume in L, found a temperature in °C or °F (write a volume in L)";
    Factor, "Factor", "0.16 L/psi", "0.16 L",
        "expected a cylinder factor in L/psi or L/bar, found a volume in L (write a cylinder factor in L/psi or L/bar)";
    Temperature, "Temperature", "-20 °C", "-200 °C",
        "expected a temperature from -60 to 120 °C, found -200 °C (beyond the coldest ambulance bay and the hottest closed vehicle)";
    Percent, "Percent", "94 %", "94 to 98 %",
        "expected a share in %, found a range (write one number with its unit)";
    Time, "Time", "5 years", "5 %",
        "expected a time in min, h, days, months or years, found a share in % (write a time in min, h, days, months or years)";
}

/// Reads parts of air to one of oxygen: `25 to 1`.
///
/// ```
/// use oxyfolio::quantity::Ratio;
/// assert_eq!("25 to 1".parse::<Ratio>().unwrap().as_parts_of_air(), 25.0);
/// assert!("25".parse::<Ratio>().is_err());
/// ```
impl FromStr for Ratio {
    type Err = Mistake;

    fn from_str(text: &str) -> Result<Self, Mistake> {
        ratio(text)
    }
}

/// Reads a range: `10 to 15 L/min`, `at least 94 %`, `under 88 %`.
///
/// ```
/// use oxyfolio::quantity::{Flow, Range};
/// let range: Range<Flow> = "10 to 15 L/min".parse()?;
/// assert!(range.holds("12 L/min".parse()?));
/// let mistake = "15 to 10 L/min".parse::<Range<Flow>>().unwrap_err();
/// assert_eq!((mistake.code, mistake.at), ("reversed-range", 0..14));
/// # Ok::<(), oxyfolio::compile::written::Mistake>(())
/// ```
impl<Q: super::Measure> FromStr for Range<Q> {
    type Err = Mistake;

    fn from_str(text: &str) -> Result<Self, Mistake> {
        range(text)
    }
}
