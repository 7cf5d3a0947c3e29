//! When a gauge misleads.

use crate::oxygen::{Contents, OutsideDomain};
use crate::quantity::{Gauge, Pressure, Temperature, Volume};

/// What a reading at some temperature says to somebody who takes it for one at 70 °F.
///
/// ```
/// use oxyfolio::check::duration::GaugeReading;
/// use oxyfolio::quantity::{Pressure, Temperature};
/// let reading = Pressure::psi(1500.0)?;
/// let at = |celsius| GaugeReading::of(reading, Temperature::celsius(celsius)?);
/// assert_eq!(at(-10.0), Ok(GaugeReading::Low));
/// assert_eq!(at(21.0), Ok(GaugeReading::Fair));
/// assert_eq!(at(50.0), Ok(GaugeReading::High));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GaugeReading {
    /// The gas is within 5 % of what the same reading means at 70 °F.
    Fair,
    /// The cylinder is cold and holds more than the gauge seems to say.
    Low,
    /// The cylinder is hot and holds less than the gauge seems to say.
    High,
}

impl GaugeReading {
    /// How much more or less gas than at 70 °F goes unmentioned: a gauge is no finer.
    pub const FAIR_WITHIN: f64 = 0.05;

    /// Judges a reading at a temperature.
    ///
    /// # Errors
    ///
    /// [`OutsideDomain`] where the density of oxygen isn't known.
    pub fn of(pressure: Pressure<Gauge>, temperature: Temperature) -> Result<Self, OutsideDomain> {
        let litre = Volume::tabled(1.0);
        let held = Contents::new(litre, temperature)?.at(pressure)?;
        let seeming = Contents::new(litre, Temperature::tabled(21.11))?.at(pressure)?;
        Ok(if held > seeming * (1.0 + Self::FAIR_WITHIN) {
            Self::Low
        } else if held < seeming * (1.0 - Self::FAIR_WITHIN) {
            Self::High
        } else {
            Self::Fair
        })
    }

    /// A stable name: `fair`, `reads-low` or `reads-high`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fair => "fair",
            Self::Low => "reads-low",
            Self::High => "reads-high",
        }
    }

    /// What to tell the crew; nothing where the gauge is fair.
    #[must_use]
    pub const fn sentence(self) -> Option<&'static str> {
        match self {
            Self::Fair => None,
            Self::Low => {
                Some("the cylinder is cold: the gauge reads low, and it holds more than the reading says")
            }
            Self::High => {
                Some("the cylinder is hot: the gauge reads high, and it holds less than the reading says")
            }
        }
    }
}
