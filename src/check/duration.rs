//! How long the gas lasts, by the trade's factor method.
//!
//! minutes = (gauge pressure − residual pressure) × cylinder factor ÷ flow, rounded down. The result is whole minutes
//! because a crew acts on whole minutes, and down because an answer must never promise gas that isn't there.

use core::fmt;

use crate::book::{Cylinder, Rulebook};
use crate::quantity::{Factor, Flow, Gauge, Pressure, Volume};

/// Gas left above the residual pressure, and how long it lasts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duration {
    /// Whole minutes, rounded down.
    pub minutes: u32,
    /// The gas above the residual pressure.
    pub usable: Volume,
}

/// Why no duration can be given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoDuration {
    /// At no flow the gas is not used, so no time can be promised.
    NoFlow,
    /// The factor is zero or the table is another book's.
    NoFactor,
}

impl fmt::Display for NoDuration {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoFlow => "expected a flow above 0 L/min to work out a duration, found none",
            Self::NoFactor => "expected a cylinder factor above 0 to work out a duration, found none",
        })
    }
}

impl core::error::Error for NoDuration {}

/// How long a cylinder lasts at a flow, down to a residual pressure.
///
/// A cylinder at or below the residual pressure lasts 0 minutes.
///
/// # Errors
///
/// [`NoDuration`] when the flow or the factor is zero.
///
/// ```
/// use oxyfolio::check::duration::by_factor;
/// use oxyfolio::quantity::{Factor, Flow, Pressure};
///
/// // D cylinder, 2000 psi, residual 200 psi, 15 L/min.
/// let duration = by_factor(
///     Factor::litres_per_psi(0.16)?,
///     Pressure::psi(2000.0)?,
///     Pressure::psi(200.0)?,
///     Flow::litres_per_minute(15.0)?,
/// )?;
/// assert_eq!(duration.minutes, 19);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn by_factor(
    factor: Factor,
    pressure: Pressure<Gauge>,
    residual: Pressure<Gauge>,
    flow: Flow,
) -> Result<Duration, NoDuration> {
    if flow.as_litres_per_minute() <= 0.0 {
        return Err(NoDuration::NoFlow);
    }
    if factor.written().0 <= 0.0 {
        return Err(NoDuration::NoFactor);
    }
    let held = factor.contents(pressure).as_litres();
    let kept = factor.contents(residual).as_litres();
    let usable = (held - kept).max(0.0);
    Ok(Duration {
        minutes: whole_minutes(usable / flow.as_litres_per_minute()),
        usable: Volume::tabled(usable),
    })
}

/// How long a cylinder of the book lasts, down to the book's residual pressure.
///
/// # Errors
///
/// [`NoDuration`] when the flow is zero.
pub fn of_cylinder(
    book: &Rulebook,
    cylinder: &Cylinder,
    pressure: Pressure<Gauge>,
    flow: Flow,
) -> Result<Duration, NoDuration> {
    by_factor(cylinder.factor, pressure, book.policies.residual_pressure, flow)
}

/// Rounds minutes down. A number short of a whole minute by rounding alone (a billionth of itself, six
/// milliseconds in a hundred days) counts as that minute: 0.16 L/psi × 1800 psi ÷ 0.5 L/min is 576 min, not 575.
fn whole_minutes(minutes: f64) -> u32 {
    // `as` saturates, and takes a NaN to 0.
    (minutes * (1.0 + 1e-9)) as u32
}
