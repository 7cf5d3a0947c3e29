//! Physical quantities with their units in the type.
//!
//! A flow can't be compared with a pressure, and a gauge pressure can't be taken for an absolute one: the compiler
//! refuses. Every quantity is a finite number inside the bounds declared once in [`bounds`]; the constructors say
//! what was wrong otherwise. Nothing here allocates.

pub mod bounds;
mod density;
mod factor;
mod flow;
mod number;
mod percent;
mod pressure;
mod range;
mod ratio;
mod scalar;
mod temperature;
mod time;
mod volume;

pub use bounds::{Bounds, OutOfBounds};
pub use density::Density;
pub use factor::Factor;
pub use flow::Flow;
pub use number::Number;
pub use percent::Percent;
pub use pressure::{Absolute, Gauge, Pressure, PressureUnit, STANDARD_ATMOSPHERE_PA};
pub use range::{Limit, Quantity, Range, Side};
pub use ratio::Ratio;
pub use temperature::{Temperature, TemperatureUnit};
pub use time::{Time, TimeUnit};
pub use volume::{LITRES_PER_CUBIC_FOOT, Volume};
