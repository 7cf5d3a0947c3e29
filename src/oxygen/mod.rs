//! How dense real oxygen is, and how many litres of it a cylinder holds.
//!
//! | | |
//! | --- | --- |
//! | domain | -40 to 60 °C; 0 to 300 bar on a gauge, which is 0 to 301.01325 bar above vacuum |
//! | outside | [`OutsideDomain`], never a number |
//! | reference | the equation of state of Schmidt and Wagner, Fluid Phase Equilibria 19 (1985) 175-200 |
//! | density against the reference | within 0.001 %; see the map below |
//! | difference of two densities at one temperature | within 0.003 % of itself |
//! | reference against oxygen | 0.1 % in density, by its authors |
//!
//! **The equation is fitted from the freezing line to 300 K (27 °C). Above that, to 60 °C, it is extrapolated**, by the
//! reference library as here.
//!
//! ```
//! use oxyfolio::oxygen;
//! use oxyfolio::quantity::{Gauge, Pressure, Temperature, Volume};
//!
//! let room = Temperature::celsius(21.11)?;
//! let reading = Pressure::<Gauge>::psi(2200.0)?;
//! // Each litre of a cylinder holds 160.6 litres of gas at 2200 psi.
//! let held = oxygen::free_gas(Volume::litres(1.0)?, reading, room)?;
//! assert!((held.as_litres() - 160.62).abs() < 0.01);
//!
//! // A warm one at the same reading holds less.
//! let hot = oxygen::free_gas(Volume::litres(1.0)?, reading, Temperature::celsius(50.0)?)?;
//! assert!(hot < held);
//!
//! // Too hot to be known.
//! let refused = oxygen::free_gas(Volume::litres(1.0)?, reading, Temperature::celsius(61.0)?).unwrap_err();
//! assert_eq!(
//!     refused.to_string(),
//!     "expected a temperature (for the density of oxygen) from -40 to 60 °C, found 61 °C"
//! );
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # How
//!
//! While the library is compiled, the compiler solves the equation for density over pressure at every 5 bar and 5 °C
//! (`equation.rs`, `table.rs`). When the program runs, sixteen numbers of that table are weighed (Lagrange's cubic in both
//! directions). No number of the table was written by hand or copied from another program.
//!
//! **Why not the ideal gas law?** At 2200 psi and 70 °F a cylinder holds 6.6 % more than the law says, and at -20 °C 16 %
//! more. Set to agree when full, the law promises 4 % too much of what stands above a residual of 200 psi at 500 psi.
//!
//! **Why not the equation itself, when the program runs?** It has 32 terms with powers and exponentials, has to be solved
//! for density, and the library without features has no mathematical functions. The table takes a few billionths of a
//! second and is within the equation's own uncertainty by a factor of a hundred.
//!
//! **Why is the table made by the compiler, and not by `build.rs`?** `build.rs` works out minutes itself, for the worked
//! cases of the rulebook, so it would need what it is about to make. And the compiler computes in software, in the same
//! way on every machine.
//!
//! # The map of errors
//!
//! The greatest error of the density against the equation, in parts in a million, found at 8 × 8 places within each cell
//! of the table (`tests/oxygen/error.rs` finds them again and fails when one is exceeded):
//!
//! | °C | 0 to 50 bar | 50 to 100 | 100 to 150 | 150 to 200 | 200 to 301 |
//! | --- | --- | --- | --- | --- | --- |
//! | -40 to -20 | 1.1 | 4.0 | 5.2 | 4.5 | 1.2 |
//! | -20 to 0 | 0.5 | 1.5 | 2.1 | 2.0 | 1.2 |
//! | 0 to 20 | 0.3 | 0.7 | 1.0 | 1.0 | 0.8 |
//! | 20 to 40 | 0.2 | 0.4 | 0.5 | 0.5 | 0.5 |
//! | 40 to 60 | 0.2 | 0.2 | 0.3 | 0.3 | 0.3 |
//!
//! A cubic's error within a cell is smooth, with one or few waves, so places an eighth of a cell apart can't step over
//! a peak; [`DENSITY_ERROR`] and [`MARGIN`] leave room besides.

mod domain;
mod equation;
mod table;

pub use domain::{GAUGE_PRESSURE, OutsideDomain, PRESSURE, TEMPERATURE};

use crate::quantity::{
    Absolute, Density, Gauge, Pressure, STANDARD_ATMOSPHERE_PA, Temperature, Volume, bounds,
};
use table::Row;

/// The density of free gas: at 1 atm and 70 °F, taken as 21.11 °C. By the equation 1.32614(5) kg/m³.
///
/// 70 °F is 21.111… °C; the trade's rounding gives the gas a density greater by four parts in a million, hence fewer
/// litres, which is the safe side.
pub const FREE_DENSITY: Density = Density::tabled(equation::density(
    STANDARD_ATMOSPHERE_PA,
    equation::ICE_POINT + 21.11,
));

/// The density is within this share of the reference, everywhere in the domain.
pub const DENSITY_ERROR: f64 = 1e-5;

/// Taken off a content that is promised to somebody: one part in ten thousand.
///
/// The difference of two densities at one temperature is within 0.003 % of that of the reference, and the density
/// itself within [`DENSITY_ERROR`]. So gas less this share is never more than the reference has, with room for a
/// reference that takes 70 °F, the gas constant or the unit psi a digit otherwise.
pub const MARGIN: f64 = 1e-4;

/// The density of oxygen at a pressure above vacuum and a temperature.
///
/// # Errors
///
/// [`OutsideDomain`] below -40 °C, above 60 °C, and above 301.01325 bar.
///
/// ```
/// use oxyfolio::oxygen::density;
/// use oxyfolio::quantity::{Absolute, Pressure, Temperature};
/// let found = density(Pressure::absolute_bar(138.0)?, Temperature::celsius(0.0)?)?;
/// assert_eq!(found.to_string(), "214.4328 kg/m³");
/// assert!(density(Pressure::absolute_bar(305.0)?, Temperature::celsius(0.0)?).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn density(pressure: Pressure<Absolute>, temperature: Temperature) -> Result<Density, OutsideDomain> {
    let row = Row::at(domain::temperature(temperature)?);
    Ok(Density::tabled(row.density(domain::absolute(pressure)?)))
}

/// The gas that a cylinder of a water capacity holds at a gauge reading and a temperature, in litres at 1 atm and 70 °F.
///
/// All of it is counted, with what stays in the cylinder at a reading of 0. The reading is taken to be above one standard
/// atmosphere.
///
/// # Errors
///
/// [`OutsideDomain`] below -40 °C, above 60 °C, above a reading of 300 bar, and when there are more litres than
/// [`Volume`] takes.
///
/// ```
/// use oxyfolio::oxygen::free_gas;
/// use oxyfolio::quantity::{Gauge, Pressure, Temperature, Volume};
/// let open = free_gas(Volume::litres(2.2)?, Pressure::<Gauge>::ZERO, Temperature::celsius(21.11)?)?;
/// assert_eq!(open.to_string(), "2.2 L");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn free_gas(
    water_capacity: Volume,
    pressure: Pressure<Gauge>,
    temperature: Temperature,
) -> Result<Volume, OutsideDomain> {
    Ok(Volume::litres(
        Contents::new(water_capacity, temperature)?.at(pressure)?,
    )?)
}

/// A cylinder at one temperature, to be asked at several readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Contents {
    litres_per_density: f64,
    row: Row,
}

impl Contents {
    /// A cylinder of a water capacity at a temperature.
    pub fn new(water_capacity: Volume, temperature: Temperature) -> Result<Self, OutsideDomain> {
        let litres = bounds::VOLUME.accept(water_capacity.as_litres())?;
        Ok(Self {
            litres_per_density: litres / FREE_DENSITY.as_kilograms_per_cubic_metre(),
            row: Row::at(domain::temperature(temperature)?),
        })
    }

    /// Litres at 1 atm and 70 °F held at a reading, as [`free_gas`] counts them.
    pub fn at(self, pressure: Pressure<Gauge>) -> Result<f64, OutsideDomain> {
        Ok(self.row.density(domain::gauge(pressure)?) * self.litres_per_density)
    }
}
