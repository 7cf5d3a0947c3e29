//! A cylinder as the sum needs it, and the sum in every direction.

use super::{
    Bound, Duration, GaugeReading, NoDuration, USUAL_TEMPERATURE,
    method::{Drain, density_held, density_method, drain, factor_method, is_positive},
};
use crate::book::{Cylinder, CylinderId, Rulebook, Rules};
use crate::oxygen;
use crate::quantity::{Factor, Flow, Gauge, Pressure, Temperature, Volume, bounds};

/// A cylinder, its temperature, and the pressure below which its gas isn't counted.
///
/// ```
/// use oxyfolio::check::duration::Supply;
/// use oxyfolio::quantity::{Factor, Flow, Gauge, Pressure, Temperature, Volume};
///
/// // A cylinder of which only the stamp is known: 4.6 L of water.
/// let supply = Supply::new(Volume::litres(4.6)?, Pressure::psi(200.0)?);
/// let (reading, flow) = (Pressure::psi(2000.0)?, Flow::litres_per_minute(10.0)?);
/// assert_eq!(supply.lasts(reading, flow)?.minutes, 60);
///
/// // Turned round: the reading, and the flow, for 45 minutes.
/// let least = supply.pressure_for(45, flow)?;
/// assert_eq!(least.as_psi().ceil(), 1550.0);
/// let most = supply.flow_for(reading, 45)?;
/// assert_eq!((most.as_litres_per_minute() * 10.0).floor() / 10.0, 13.4);
/// assert_eq!(supply.lasts(reading, most)?.minutes, 45);
///
/// // When the gauge will show 500 psi.
/// let change = supply.residual(Pressure::psi(500.0)?);
/// assert_eq!(change.lasts(reading, flow)?.minutes, 50);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Supply {
    water_capacity: Volume,
    factor: Option<Factor>,
    temperature: Temperature,
    residual: Pressure<Gauge>,
}

impl Supply {
    /// A cylinder of a water capacity at 21 °C (70 °F), without a factor.
    pub const fn new(water_capacity: Volume, residual: Pressure<Gauge>) -> Self {
        Self {
            water_capacity,
            factor: None,
            temperature: USUAL_TEMPERATURE,
            residual,
        }
    }

    /// A cylinder of the book at 21 °C (70 °F), with its factor and the book's residual pressure.
    pub const fn of(book: &Rulebook, cylinder: &Cylinder) -> Self {
        Self::new(cylinder.water_capacity, book.policies.residual_pressure).factor(cylinder.factor)
    }

    /// The same of a size by its name, from a book or from the tables that a program checks by; `None` when the identifier
    /// is another book's.
    ///
    /// ```
    /// use oxyfolio::check::duration::Supply;
    /// use oxyfolio::quantity::{Flow, Pressure};
    /// use oxyfolio::{RULEBOOK, TABLES, cylinder};
    ///
    /// let d = Supply::of_size(&TABLES, cylinder::D).ok_or("another book's cylinder")?;
    /// assert_eq!(d.lasts(Pressure::psi(1000.0)?, Flow::litres_per_minute(1.0)?)?.minutes, 125);
    /// assert_eq!(Supply::of_size(&RULEBOOK, cylinder::D), Some(d));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn of_size<'b>(rules: impl Rules<'b>, cylinder: CylinderId) -> Option<Self> {
        let size = rules.cylinder(cylinder)?;
        let supply = Self::new(size.water_capacity, rules.limits().residual_pressure);
        Some(supply.factor(size.factor))
    }

    /// With a factor.
    pub const fn factor(mut self, factor: Factor) -> Self {
        self.factor = Some(factor);
        self
    }

    /// At another temperature.
    pub const fn temperature(mut self, temperature: Temperature) -> Self {
        self.temperature = temperature;
        self
    }

    /// With another residual pressure: the one at which the cylinder is changed, for instance.
    pub const fn residual(mut self, residual: Pressure<Gauge>) -> Self {
        self.residual = residual;
        self
    }

    /// How long it lasts at a flow: the lower of both methods, in whole minutes, rounded down.
    ///
    /// At or below the residual pressure it lasts 0 minutes.
    ///
    /// # Errors
    ///
    /// [`NoDuration`] when the flow, the water capacity or the factor is zero, when the density of oxygen isn't known at
    /// the temperature, the reading or the residual ([`oxygen`](crate::oxygen): -40 to 60 °C, to 300 bar), and when the
    /// gas would last longer than 120 years.
    pub fn lasts(&self, pressure: Pressure<Gauge>, flow: Flow) -> Result<Duration, NoDuration> {
        self.drained(pressure, drain(flow, Flow::ZERO)?)
    }

    /// How long it lasts at a flow and a leak together. Without a flow: how long until the leak has emptied it.
    ///
    /// # Errors
    ///
    /// [`NoDuration`] as [`lasts`](Self::lasts); when flow and leak are both zero.
    ///
    /// ```
    /// use oxyfolio::check::duration::Supply;
    /// use oxyfolio::quantity::{Flow, Pressure, Volume};
    /// let supply = Supply::new(Volume::litres(4.6)?, Pressure::psi(200.0)?);
    /// let (reading, leak) = (Pressure::psi(2000.0)?, Flow::litres_per_minute(0.5)?);
    /// assert_eq!(supply.lasts_leaking(reading, Flow::ZERO, leak)?.minutes, 1207);
    /// assert_eq!(supply.lasts_leaking(reading, Flow::litres_per_minute(10.0)?, leak)?.minutes, 57);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn lasts_leaking(
        &self,
        pressure: Pressure<Gauge>,
        flow: Flow,
        leak: Flow,
    ) -> Result<Duration, NoDuration> {
        self.drained(pressure, drain(flow, leak)?)
    }

    /// Whole minutes at a flow, the lower of both methods, where it is known already how many litres are held at the reading and
    /// at the residual pressure: for who asks often, and draws the gas down meanwhile.
    ///
    /// # Errors
    ///
    /// [`NoDuration`] as [`lasts`](Self::lasts), but for the density.
    pub fn minutes_of(
        &self,
        (held, kept): (f64, f64),
        pressure: Pressure<Gauge>,
        flow: Flow,
    ) -> Result<u32, NoDuration> {
        let drain = drain(flow, Flow::ZERO)?;
        let by_density = density_held(held, kept, drain)?;
        match self.factor {
            None => Ok(by_density.minutes),
            Some(factor) => {
                let by_factor = factor_method(factor, pressure, self.residual, drain)?;
                Ok(by_factor.minutes.min(by_density.minutes))
            }
        }
    }

    fn drained(&self, pressure: Pressure<Gauge>, drain: Drain) -> Result<Duration, NoDuration> {
        let (by_density, free) = density_method(
            self.water_capacity,
            pressure,
            self.residual,
            self.temperature,
            drain,
        )?;
        let by_factor = match self.factor {
            None => None,
            Some(factor) => Some(factor_method(factor, pressure, self.residual, drain)?),
        };
        let (bound, usable, minutes) = match by_factor {
            Some(by_factor) if by_factor.usable < by_density.usable => (
                Bound::Factor,
                by_factor.usable,
                by_factor.minutes.min(by_density.minutes),
            ),
            Some(by_factor) => (
                Bound::Density,
                by_density.usable,
                by_density.minutes.min(by_factor.minutes),
            ),
            None => (Bound::Density, by_density.usable, by_density.minutes),
        };
        Ok(Duration {
            minutes,
            bound,
            by_density,
            by_factor,
            free,
            usable,
            temperature: self.temperature,
            gauge: GaugeReading::of(pressure, self.temperature)?,
        })
    }

    /// The least reading from which it lasts a number of minutes at a flow. [`lasts`](Self::lasts) at it gives that number
    /// or more.
    ///
    /// Whether the cylinder may be filled so far isn't asked here. To print it, round it **up**.
    ///
    /// # Errors
    ///
    /// [`NoDuration`] as [`lasts`](Self::lasts); when no minutes are asked for; when 300 bar is not enough.
    pub fn pressure_for(&self, minutes: u32, flow: Flow) -> Result<Pressure<Gauge>, NoDuration> {
        self.pressure_for_leaking(minutes, flow, Flow::ZERO)
    }

    /// The same with a leak.
    ///
    /// # Errors
    ///
    /// [`NoDuration`] as [`pressure_for`](Self::pressure_for).
    pub fn pressure_for_leaking(
        &self,
        minutes: u32,
        flow: Flow,
        leak: Flow,
    ) -> Result<Pressure<Gauge>, NoDuration> {
        if minutes == 0 {
            return Err(NoDuration::NoMinutes);
        }
        let drain = drain(flow, leak)?;
        // So little flow that a full cylinder lasts for ever is enough too.
        let enough = |pressure| match self.drained(pressure, drain) {
            Ok(lasts) => Ok(lasts.minutes >= minutes),
            Err(NoDuration::TooLong) => Ok(true),
            Err(other) => Err(other),
        };
        let highest = Pressure::tabled(oxygen::GAUGE_PRESSURE.most * 1e5);
        let (mut low, mut high) = (self.residual, highest);
        if !enough(high)? {
            return Err(NoDuration::NeverEnough);
        }
        // The high end is always enough, the low one never. After 60 halvings they are as near as two numbers can be.
        for _ in 0..60 {
            let middle = Pressure::tabled((low.as_pascals() + high.as_pascals()) / 2.0);
            if enough(middle)? {
                high = middle;
            } else {
                low = middle;
            }
        }
        // A trillionth more, which a change of units and back can take away.
        Ok(Pressure::tabled(
            (high.as_pascals() * (1.0 + 1e-12)).min(highest.as_pascals()),
        ))
    }

    /// The greatest flow at which a reading lasts a number of minutes, at most the 120 L/min that a flow may have.
    /// [`lasts`](Self::lasts) at it gives that number or more. To print it, round it **down**.
    ///
    /// # Errors
    ///
    /// [`NoDuration`] as [`lasts`](Self::lasts); when no minutes are asked for; when there is no gas above the residual
    /// pressure.
    pub fn flow_for(&self, pressure: Pressure<Gauge>, minutes: u32) -> Result<Flow, NoDuration> {
        if minutes == 0 {
            return Err(NoDuration::NoMinutes);
        }
        let most = Flow::tabled(bounds::FLOW.most);
        let at_most = self.lasts(pressure, most)?;
        if !is_positive(at_most.usable.as_litres()) {
            return Err(NoDuration::NothingLeft);
        }
        if at_most.minutes >= minutes {
            return Ok(most);
        }
        let mut per_minute = at_most.usable.as_litres() / f64::from(minutes);
        // Rounding can leave it a little too great; a billionth less is not.
        for _ in 0..4 {
            let flow = Flow::tabled(per_minute);
            match self.lasts(pressure, flow) {
                Ok(lasts) if lasts.minutes >= minutes => return Ok(flow),
                Ok(_) => per_minute *= 1.0 - 1e-9,
                Err(other) => return Err(other),
            }
        }
        Err(NoDuration::NothingLeft)
    }
}
