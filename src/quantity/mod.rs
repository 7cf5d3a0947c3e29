//! Physical quantities with their units in the type.
//!
//! A flow can't be compared with a pressure, and a gauge pressure can't be taken for an absolute one: the compiler
//! refuses. Every quantity is a finite number inside the bounds declared once in [`bounds`]; the constructors say
//! what was wrong otherwise. Nothing here allocates.
//!
//! | quantity | made by | bounds |
//! | --- | --- | --- |
//! | [`Flow`] | [`litres_per_minute`](Flow::litres_per_minute) | 0 to 120 L/min |
//! | [`Pressure<Gauge>`](Pressure) | [`psi`](Pressure::psi), [`bar`](Pressure::bar), [`in_unit`](Pressure::in_unit) | 0 to 310 bar |
//! | [`Pressure<Absolute>`](Pressure) | [`to_absolute`](Pressure::to_absolute), [`absolute_bar`](Pressure::absolute_bar) | 0 to 311.1 bar |
//! | [`Volume`] | [`litres`](Volume::litres), [`cubic_feet`](Volume::cubic_feet) | 0 to 100,000 L |
//! | [`Factor`] | [`litres_per_psi`](Factor::litres_per_psi), [`litres_per_bar`](Factor::litres_per_bar) | 0 to 100 L/psi |
//! | [`Percent`] | [`new`](Percent::new) | 0 to 300 %; a saturation 0 to 100 % |
//! | [`Temperature`] | [`celsius`](Temperature::celsius), [`fahrenheit`](Temperature::fahrenheit) | −60 to 120 °C |
//! | [`Time`] | [`minutes`](Time::minutes), [`of`](Time::of) | 0 to 120 years |
//! | [`Ratio`] | [`to_one`](Ratio::to_one) | 0 to 100 to 1 |
//!
//! With the feature `compile` all of them are read from text too: `"8 L/min".parse::<Flow>()`.
//!
//! # What the compiler refuses
//!
//! Each example stands beside one that compiles and differs in the word that counts.
//!
//! A flow is no pressure:
//!
//! ```
//! use oxyfolio::quantity::{Flow, Pressure};
//! let (reading, limit) = (Pressure::psi(1500.0)?, Pressure::psi(200.0)?);
//! assert!(reading > limit);
//! # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
//! ```
//!
//! ```compile_fail,E0308
//! use oxyfolio::quantity::{Flow, Pressure};
//! let (reading, limit) = (Pressure::psi(1500.0)?, Flow::litres_per_minute(10.0)?);
//! assert!(reading > limit);
//! # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
//! ```
//!
//! A gauge's pressure is not one above vacuum:
//!
//! ```
//! use oxyfolio::quantity::Pressure;
//! assert!(Pressure::bar(1.0)?.to_absolute() > Pressure::absolute_bar(2.0)?);
//! # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
//! ```
//!
//! ```compile_fail,E0308
//! use oxyfolio::quantity::Pressure;
//! assert!(Pressure::bar(1.0)? > Pressure::absolute_bar(2.0)?);
//! # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
//! ```
//!
//! Where a gauge is read, nothing else is taken, and the flow can't be forgotten:
//!
//! ```
//! use oxyfolio::{check::Setup, device, quantity::{Flow, Pressure}};
//! let setup = Setup::new(device::NON_REBREATHER, Flow::litres_per_minute(15.0)?).pressure(Pressure::bar(100.0)?);
//! # let _ = setup;
//! # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
//! ```
//!
//! ```compile_fail,E0308
//! use oxyfolio::{check::Setup, device, quantity::{Flow, Pressure}};
//! let setup = Setup::new(device::NON_REBREATHER, Flow::litres_per_minute(15.0)?).pressure(Pressure::absolute_bar(100.0)?);
//! # let _ = setup;
//! # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
//! ```
//!
//! ```compile_fail,E0061
//! use oxyfolio::{check::Setup, device, quantity::{Flow, Pressure}};
//! let setup = Setup::new(device::NON_REBREATHER).pressure(Pressure::bar(100.0)?);
//! # let _ = setup;
//! # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
//! ```
//!
//! A number without a unit is nothing:
//!
//! ```compile_fail,E0308
//! use oxyfolio::{check::Setup, device};
//! let setup = Setup::new(device::NON_REBREATHER, 15.0);
//! ```
//!
//! A name of one kind of rule isn't one of another:
//!
//! ```
//! use oxyfolio::{RULEBOOK, cylinder, device};
//! assert!(RULEBOOK.cylinder(cylinder::D).is_some());
//! ```
//!
//! ```compile_fail,E0308
//! use oxyfolio::{RULEBOOK, cylinder, device};
//! assert!(RULEBOOK.cylinder(device::NON_REBREATHER).is_some());
//! ```
//!
//! And guards compare like with like:
//!
//! ```
//! use oxyfolio::guard::{Truth, compare::less};
//! use oxyfolio::quantity::{Flow, Pressure};
//! assert_eq!(less(Flow::litres_per_minute(5.0).ok(), Flow::litres_per_minute(6.0).ok()), Truth::True);
//! ```
//!
//! ```compile_fail,E0308
//! use oxyfolio::guard::{Truth, compare::less};
//! use oxyfolio::quantity::{Flow, Pressure};
//! assert_eq!(less(Flow::litres_per_minute(5.0).ok(), Pressure::psi(6.0).ok()), Truth::True);
//! ```

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
