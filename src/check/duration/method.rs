//! Each of the two methods alone.

use super::NoDuration;
use crate::oxygen::{Contents, MARGIN};
use crate::quantity::{Factor, Flow, Gauge, Pressure, Temperature, Volume, bounds};

/// What one method says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Method {
    /// Whole minutes, rounded down.
    pub minutes: u32,
    /// The gas above the residual pressure.
    pub usable: Volume,
}

/// How long a cylinder lasts at a flow, down to a residual pressure, by the trade's factor method:
/// (reading − residual) × factor ÷ flow, rounded down.
///
/// A cylinder at or below the residual pressure lasts 0 minutes. The method alone can promise too much, in the heat most
/// of all; [`Supply::lasts`](super::Supply::lasts) gives the lower of both.
///
/// # Errors
///
/// [`NoDuration`] when the flow or the factor is zero, or the gas would last longer than 120 years.
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
) -> Result<Method, NoDuration> {
    factor_method(factor, pressure, residual, drain(flow, Flow::ZERO)?)
}

/// How long a cylinder of a water capacity lasts at a temperature and a flow, down to a residual pressure, by the density
/// of real oxygen: what it holds at the reading less what it holds at the residual, less the margin of one part in ten
/// thousand, ÷ flow, rounded down.
///
/// A cylinder at or below the residual pressure lasts 0 minutes.
///
/// # Errors
///
/// [`NoDuration`] when the flow or the water capacity is zero, the density isn't known at the reading, the residual or the
/// temperature ([`oxygen`](crate::oxygen)), or the gas would last longer than 120 years.
///
/// ```
/// use oxyfolio::check::duration::by_density;
/// use oxyfolio::quantity::{Flow, Gauge, Pressure, Temperature, Volume};
///
/// // A 2 L cylinder at 200 bar and 10 °C, residual 14 bar, 15 L/min.
/// let duration = by_density(
///     Volume::litres(2.0)?,
///     Pressure::<Gauge>::bar(200.0)?,
///     Pressure::<Gauge>::bar(14.0)?,
///     Temperature::celsius(10.0)?,
///     Flow::litres_per_minute(15.0)?,
/// )?;
/// assert_eq!(duration.minutes, 27);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn by_density(
    water_capacity: Volume,
    pressure: Pressure<Gauge>,
    residual: Pressure<Gauge>,
    temperature: Temperature,
    flow: Flow,
) -> Result<Method, NoDuration> {
    let drain = drain(flow, Flow::ZERO)?;
    density_method(water_capacity, pressure, residual, temperature, drain).map(|(method, _)| method)
}

/// Above zero; what is no number is not.
pub fn is_positive(number: f64) -> bool {
    number > 0.0
}

/// What leaves the cylinder, in L/min.
#[derive(Clone, Copy)]
pub struct Drain(f64);

/// A flow and a leak together.
pub fn drain(flow: Flow, leak: Flow) -> Result<Drain, NoDuration> {
    let both = flow.as_litres_per_minute() + leak.as_litres_per_minute();
    if is_positive(both) && both.is_finite() {
        Ok(Drain(both))
    } else {
        Err(NoDuration::NoFlow)
    }
}

pub fn factor_method(
    factor: Factor,
    pressure: Pressure<Gauge>,
    residual: Pressure<Gauge>,
    drain: Drain,
) -> Result<Method, NoDuration> {
    if !is_positive(factor.written().0) {
        return Err(NoDuration::NoFactor);
    }
    let held = factor.contents(pressure).as_litres();
    let kept = factor.contents(residual).as_litres();
    // A billionth, so that binary rounding doesn't take a whole minute: 576 min must not come out as 575.
    method((held - kept).max(0.0), 1.0 + 1e-9, drain)
}

/// The method, and all the gas in the cylinder in litres, less the margin.
pub fn density_method(
    water_capacity: Volume,
    pressure: Pressure<Gauge>,
    residual: Pressure<Gauge>,
    temperature: Temperature,
    drain: Drain,
) -> Result<(Method, Volume), NoDuration> {
    if !is_positive(water_capacity.as_litres()) {
        return Err(NoDuration::NoWaterCapacity);
    }
    let contents = Contents::new(water_capacity, temperature)?;
    let (held, kept) = (contents.at(pressure)?, contents.at(residual)?);
    let free =
        Volume::litres(held * (1.0 - MARGIN)).map_err(|missed| NoDuration::OutsideDomain(missed.into()))?;
    Ok((density_held(held, kept, drain)?, free))
}

/// The method for litres held now and those that are never counted on.
pub fn density_held(held: f64, kept: f64, drain: Drain) -> Result<Method, NoDuration> {
    method(((held - kept) * (1.0 - MARGIN)).max(0.0), 1.0, drain)
}

fn method(usable: f64, allowance: f64, Drain(per_minute): Drain) -> Result<Method, NoDuration> {
    let minutes = usable / per_minute * allowance;
    if minutes > bounds::TIME.most {
        return Err(NoDuration::TooLong);
    }
    Ok(Method {
        // `as` rounds down, and takes what is no number to 0.
        minutes: minutes as u32,
        usable: Volume::tabled(usable),
    })
}
