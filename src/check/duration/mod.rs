//! How long the gas lasts.
//!
//! Two methods are worked out side by side, and **the lower answer is given**, in whole minutes, rounded down: an answer
//! must never promise gas that isn't there.
//!
//! - **Density**: what the water capacity holds of real oxygen at the reading and the temperature, less what it holds at
//!   the residual pressure and the same temperature ([`oxygen`](crate::oxygen)).
//! - **Factor**, the trade's: (reading − residual) × litres for each psi or bar. A cylinder without a factor goes by density
//!   alone.
//!
//! Litres are at 1 atm and 70 °F, for which flows are stated too. Which of the two bound the answer is said with it
//! ([`Bound`]).
//!
//! # How an answer stays on the safe side
//!
//! One part in ten thousand ([`MARGIN`](crate::oxygen::MARGIN)) is taken off the gas worked out by density. That is
//! more than it can differ from the equation of state it follows, so that after rounding down no answer exceeds the
//! equation's, not by one minute. By factor a number short of a whole minute by binary rounding alone (a billionth of it)
//! counts as that minute: 0.16 L/psi × 1800 psi ÷ 0.5 L/min is 576 min, not 575. By density there is no such allowance.
//!
//! The cylinder is taken to keep its temperature while it is used, and the gauge and the flowmeter to be right; the residual
//! and the planning margin of the book are there for what is not.
//!
//! # The question turned round
//!
//! [`Supply`] asks which reading or which flow gives the minutes wanted. Such an answer is put to the question itself
//! before it is given, and so is never short by a rounding.

mod method;
mod reading;
mod supply;

use core::fmt;

pub use method::{Method, by_density, by_factor};
pub use reading::GaugeReading;
pub use supply::Supply;

use crate::book::{Cylinder, Rulebook};
use crate::oxygen::OutsideDomain;
use crate::quantity::{Flow, Gauge, Pressure, Temperature, Volume};

/// The temperature that stands for "not known": 21 °C, the trade's 70 °F.
pub const USUAL_TEMPERATURE: Temperature = Temperature::tabled(21.0);

/// Which method gave the lower answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// The density of real oxygen.
    Density,
    /// The cylinder factor.
    Factor,
}

impl Bound {
    /// The word for it: `density` or `factor`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Density => "density",
            Self::Factor => "factor",
        }
    }
}

impl fmt::Display for Bound {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

/// Gas left above the residual pressure, and how long it lasts.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Duration {
    /// Whole minutes, rounded down: the lower of the two methods.
    pub minutes: u32,
    /// The method that gave them; by the gas they find usable, density where they find the same.
    pub bound: Bound,
    /// What is worked out by density.
    pub by_density: Method,
    /// What is worked out by factor, for a cylinder that has one.
    pub by_factor: Option<Method>,
    /// All the gas in the cylinder, by density, less its margin; some of it never leaves it.
    pub free: Volume,
    /// The gas above the residual pressure, by the method that bound.
    pub usable: Volume,
    /// The cylinder's temperature, known or assumed.
    pub temperature: Temperature,
    /// Whether the gauge misleads at this temperature.
    pub gauge: GaugeReading,
}

/// Why no duration can be given.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoDuration {
    /// At no flow the gas is not used, so no time can be promised.
    NoFlow,
    /// The factor is zero.
    NoFactor,
    /// The water capacity is zero.
    NoWaterCapacity,
    /// The density of oxygen isn't known at this reading or temperature.
    OutsideDomain(OutsideDomain),
    /// It would last longer than 120 years: the flow is no flow.
    TooLong,
    /// No minutes were asked for.
    NoMinutes,
    /// There is no gas above the residual pressure.
    NothingLeft,
    /// No reading up to 300 bar lasts so long.
    NeverEnough,
}

impl From<OutsideDomain> for NoDuration {
    fn from(outside: OutsideDomain) -> Self {
        Self::OutsideDomain(outside)
    }
}

impl fmt::Display for NoDuration {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoFlow => "expected a flow above 0 L/min to work out a duration, found none",
            Self::NoFactor => "expected a cylinder factor above 0 to work out a duration, found none",
            Self::NoWaterCapacity => "expected a water capacity above 0 L to work out a duration, found none",
            Self::OutsideDomain(outside) => return outside.fmt(f),
            Self::TooLong => "expected a flow that uses the gas within 120 years, found less",
            Self::NoMinutes => "expected at least 1 minute, found none",
            Self::NothingLeft => "expected a reading above the residual pressure, found no gas above it",
            Self::NeverEnough => {
                "expected minutes and a flow that this cylinder can give, found more than it holds at 300 bar"
            }
        })
    }
}

impl core::error::Error for NoDuration {}

/// How long a cylinder of the book lasts at 21 °C (70 °F), down to the book's residual pressure.
///
/// # Errors
///
/// [`NoDuration`] as [`Supply::lasts`].
///
/// ```
/// use oxyfolio::check::duration::{Bound, of_cylinder};
/// use oxyfolio::quantity::{Flow, Pressure};
/// use oxyfolio::{RULEBOOK, cylinder};
///
/// let d = RULEBOOK.cylinder(cylinder::D).ok_or("another book's cylinder")?;
/// let lasts = of_cylinder(&RULEBOOK, d, Pressure::psi(1000.0)?, Flow::litres_per_minute(1.0)?)?;
/// // The factor says 128: at this reading it is a little too hopeful.
/// assert_eq!((lasts.minutes, lasts.bound), (125, Bound::Density));
/// assert_eq!(lasts.by_factor.map(|factor| factor.minutes), Some(128));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn of_cylinder(
    book: &Rulebook,
    cylinder: &Cylinder,
    pressure: Pressure<Gauge>,
    flow: Flow,
) -> Result<Duration, NoDuration> {
    Supply::of(book, cylinder).lasts(pressure, flow)
}

/// How long a cylinder of the book lasts at a temperature, down to the book's residual pressure.
///
/// # Errors
///
/// [`NoDuration`] as [`Supply::lasts`].
///
/// ```
/// use oxyfolio::check::duration::{GaugeReading, of_cylinder_at};
/// use oxyfolio::quantity::{Flow, Pressure, Temperature};
/// use oxyfolio::{RULEBOOK, cylinder};
///
/// let d = RULEBOOK.cylinder(cylinder::D).ok_or("another book's cylinder")?;
/// let (reading, flow) = (Pressure::psi(2000.0)?, Flow::litres_per_minute(1.0)?);
/// let hot = of_cylinder_at(&RULEBOOK, d, reading, Temperature::celsius(50.0)?, flow)?;
/// assert_eq!((hot.minutes, hot.gauge), (253, GaugeReading::High));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn of_cylinder_at(
    book: &Rulebook,
    cylinder: &Cylinder,
    pressure: Pressure<Gauge>,
    temperature: Temperature,
    flow: Flow,
) -> Result<Duration, NoDuration> {
    Supply::of(book, cylinder)
        .temperature(temperature)
        .lasts(pressure, flow)
}
