//! The gas left in one cylinder, as it is used up.

use crate::oxygen::{Contents, MARGIN, OutsideDomain};
use crate::quantity::{Flow, Gauge, Pressure, Temperature, Time, Volume};

/// The gas left in one cylinder. It never grows.
///
/// Contents are those of real oxygen at the cylinder's temperature ([`crate::oxygen`]), in litres at 1 atm and 70 °F.
///
/// ```
/// use oxyfolio::equipment::Gas;
/// use oxyfolio::quantity::{Flow, Pressure, Temperature, Time, Volume};
///
/// let (room, reading) = (Temperature::celsius(21.11)?, Pressure::psi(2000.0)?);
/// let gas = Gas::new(Volume::litres(2.9)?, room, reading)?;
/// let flow = Flow::litres_per_minute(10.0)?;
/// let later = gas.draw(flow, Flow::ZERO, Time::minutes(20.0)?);
/// assert!((gas.litres() - later.litres() - 200.0).abs() < 1e-9);
/// assert_eq!(later.pressure().as_psi().floor(), 1068.0);
/// // How long until the gauge shows 200 psi.
/// let left = later.lasts(Pressure::psi(200.0)?, flow, Flow::ZERO).unwrap();
/// assert_eq!(left.as_minutes().floor(), 18.0);
/// // Too hot for the density of oxygen to be known.
/// assert!(Gas::new(Volume::litres(2.9)?, Temperature::celsius(61.0)?, reading).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gas {
    contents: Contents,
    capacity: f64,
    begun_at: Pressure<Gauge>,
    begun_with: f64,
    at_zero: f64,
    litres: f64,
}

/// Readings are worked out in steps of so many pascals, 0.0015 psi.
const STEP: f64 = 10.0;
/// The most steps taken towards a reading; some four or five are usual.
const MOST_STEPS: u32 = 80;

impl Gas {
    /// The gas in a cylinder of a water capacity, at a temperature, by its gauge.
    ///
    /// # Errors
    ///
    /// [`OutsideDomain`] below -40 °C, above 60 °C, and above a reading of 300 bar.
    pub fn new(
        water_capacity: Volume,
        temperature: Temperature,
        reading: Pressure<Gauge>,
    ) -> Result<Self, OutsideDomain> {
        let contents = Contents::new(water_capacity, temperature)?;
        let litres = contents.at(reading)?;
        Ok(Self {
            contents,
            capacity: water_capacity.as_litres(),
            begun_at: reading,
            begun_with: litres,
            at_zero: contents.at(Pressure::ZERO)?,
            litres,
        })
    }

    /// All the gas there is, with what stays at a reading of zero, in litres at 1 atm and 70 °F.
    #[must_use]
    pub const fn litres(self) -> f64 {
        self.litres
    }

    /// The gas that can still flow out, in litres at 1 atm and 70 °F.
    #[must_use]
    pub const fn usable_litres(self) -> f64 {
        self.litres - self.at_zero
    }

    /// Whether none is left that could flow out: the gauge shows zero.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        self.litres <= self.at_zero
    }

    /// What is left after a flow and a leak over a time. What stays in a cylinder at a reading of zero doesn't flow out.
    #[must_use]
    pub const fn draw(self, flow: Flow, leak: Flow, time: Time) -> Self {
        self.less(drain(flow, leak) * time.as_minutes())
    }

    /// Nothing left above a reading of zero.
    #[must_use]
    pub const fn emptied(self) -> Self {
        self.less(self.litres)
    }

    pub(crate) const fn less(mut self, litres: f64) -> Self {
        let left = self.litres - litres;
        // Written so that it never grows, and that what is no number leaves nothing.
        if left > self.at_zero {
            if left < self.litres {
                self.litres = left;
            }
        } else if self.litres > self.at_zero {
            self.litres = self.at_zero;
        }
        self
    }

    /// How much of the gas goes into a space that is opened to the cylinder, above a reading of zero.
    pub(super) const fn share(self, space: f64) -> f64 {
        self.usable_litres() * (space / (self.capacity + space))
    }

    /// What the gauge shows now: never more than the truth, and less by 0.0015 psi at the most.
    ///
    /// Until some is drawn it is the reading it was made with.
    #[must_use]
    pub fn pressure(self) -> Pressure<Gauge> {
        self.sought().0
    }

    /// What the gauge shows now, and the steps taken to find it.
    fn sought(self) -> (Pressure<Gauge>, u32) {
        if self.litres >= self.begun_with {
            return (self.begun_at, 0);
        }
        if self.is_empty() {
            return (Pressure::ZERO, 0);
        }
        // Held at `low` is at most what is left, at `high` at least that. Steps are whole, so the answer depends on the
        // litres alone, and less gas never shows more.
        let (mut low, mut held_low) = (0.0, self.at_zero);
        let (mut high, mut held_high) = (steps_up(self.begun_at), self.begun_with);
        let mut next = secant(low, held_low, high, held_high, self.litres);
        let mut step = 0;
        while high - low > 1.0 && step < MOST_STEPS {
            // Between the two; from the ninth step on halfway.
            let middle = whole((low + high) / 2.0);
            let at = if step < 8 && next > low && next < high {
                next
            } else {
                middle
            };
            let held = self.held(at);
            let (was, held_was) = if held <= self.litres {
                let was = (low, held_low);
                (low, held_low) = (at, held);
                was
            } else {
                let was = (high, held_high);
                (high, held_high) = (at, held);
                was
            };
            // The line through the last two points. Rounded down, it can end on the last one only where that holds too little:
            // the step beyond is asked.
            next = secant(was, held_was, at, held, self.litres);
            if next == at {
                next += 1.0;
            }
            step += 1;
        }
        (Pressure::tabled(low * STEP), step)
    }

    /// How long until the gauge shows a reading, at a flow and a leak; never longer than the reference has it.
    ///
    /// No time when it shows that or less already. `None` when nothing is drawn, when the reading is above 300 bar, and
    /// beyond 120 years.
    #[must_use]
    pub fn lasts(self, until: Pressure<Gauge>, flow: Flow, leak: Flow) -> Option<Time> {
        let held = self.contents.at(until).ok()?;
        // The margin is that of the whole cylinder, however little of it is left.
        let above = (self.litres - held) - MARGIN * (self.begun_with - held);
        match drain(flow, leak) {
            drain if drain > 0.0 && above > 0.0 => Time::minutes(above / drain).ok(),
            drain if drain > 0.0 => Some(Time::ZERO),
            _ => None,
        }
    }

    /// Litres at 1 atm and 70 °F that the same cylinder holds at a reading and the same temperature; `None` above 300 bar, where
    /// the density of oxygen isn't known.
    #[must_use]
    pub fn held_at(self, reading: Pressure<Gauge>) -> Option<f64> {
        self.contents.at(reading).ok()
    }

    /// Litres held at a reading in steps.
    fn held(self, steps: f64) -> f64 {
        // Never above the first reading, so always known; were it not, less pressure would be told.
        self.contents
            .at(Pressure::tabled(steps * STEP))
            .unwrap_or(f64::INFINITY)
    }
}

/// Litres a minute that a flow and a leak take.
const fn drain(flow: Flow, leak: Flow) -> f64 {
    flow.as_litres_per_minute() + leak.as_litres_per_minute()
}

/// The whole steps not below a reading.
fn steps_up(reading: Pressure<Gauge>) -> f64 {
    whole(reading.as_pascals() / STEP) + 1.0
}

/// The whole number below one that isn't negative and far below 2^53.
const fn whole(number: f64) -> f64 {
    number as u64 as f64
}

/// The whole step where the line through two points reaches what is wanted.
fn secant(a: f64, held_a: f64, b: f64, held_b: f64, wanted: f64) -> f64 {
    whole(a + (wanted - held_a) * ((b - a) / (held_b - held_a)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The most steps to a reading, and those to a hundred readings, where such shares of the gas are left.
    fn steps(left: &[f64]) -> (u32, u32) {
        let (mut readings, mut steps, mut most) = (0, 0, 0);
        for celsius in (-40..=60).step_by(4) {
            for bar in (5..=300).step_by(5) {
                let gas = Gas::new(
                    Volume::tabled(2.9),
                    Temperature::tabled(f64::from(celsius)),
                    Pressure::tabled(f64::from(bar) * 1e5),
                )
                .unwrap();
                for share in left {
                    let (_, taken) = gas.less(gas.usable_litres() * (1.0 - share)).sought();
                    most = most.max(taken);
                    steps += taken;
                    readings += 1;
                }
            }
        }
        (most, 100 * steps / readings)
    }

    /// Whichever way the steps go, they end at the same reading: only their number tells whether they go well.
    #[test]
    fn a_reading_is_found_in_few_steps() {
        let usual: [f64; 19] = core::array::from_fn(|place| (place + 1) as f64 / 20.0);
        let nearly_none = [1e-9, 1e-7, 1e-6, 1e-5, 1e-4];
        let nearly_all = nearly_none.map(|drawn| 1.0 - drawn);
        // Halving alone would take 22 steps of every full cylinder.
        for (left, most, of_hundred) in [
            (&usual[..], 7, 460),
            (&nearly_none[..], 13, 525),
            (&nearly_all[..], 22, 730),
        ] {
            let found = steps(left);
            assert!(found.0 <= most && found.1 <= of_hundred, "{found:?}");
            assert!(found.1 > 400, "steps are counted");
        }
    }
}
