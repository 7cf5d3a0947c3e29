//! Evaluates guards over what was observed.
//!
//! Kleene's three values: what was not recorded is unknown, and a guard that depends on it is unknown too, unless the
//! rest decides it. An unknown is never a pass.

mod evaluate;
mod observed;
mod truth;

pub use evaluate::{depends_on_equipment, evaluate};
pub use observed::{Facts, Observed};
pub use truth::Truth;
