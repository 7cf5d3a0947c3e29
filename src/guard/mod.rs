//! Evaluates guards over what was observed.
//!
//! Kleene's three values: what was not recorded is unknown, and a guard that depends on it is unknown too, unless the
//! rest decides it. An unknown is never a pass, and learning more never turns an answer round.
//!
//! There are several ways to an answer, and the tests hold them together: [`evaluate`] walks the operations of any guard;
//! the compiled-in book brings each of its guards as a function of its own, and all of them as look-ups
//! ([`hazard::Guards`](crate::hazard)); and [`Lookup`](crate::lookup) makes look-ups of a book read at run time. Who takes an
//! [`Evaluator`] works with any of them.
//!
#![doc = include_str!("speed.md")]

mod broken;
pub mod compare;
mod evaluate;
mod evaluator;
mod inputs;
pub mod mask;
mod observed;
mod row;
mod set;
mod truth;

pub use broken::Broken;
pub use evaluate::evaluate;
pub use evaluator::Evaluator;
pub use inputs::Inputs;
pub use observed::{Facts, Observed};
pub use row::{MAX_CONDITIONS, Row};
pub use set::{HazardSet, Hazards};
pub use truth::Truth;
