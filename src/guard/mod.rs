//! Evaluates guards over what was observed.
//!
//! Kleene's three values: what was not recorded is unknown, and a guard that depends on it is unknown too, unless the
//! rest decides it. An unknown is never a pass, and learning more never turns an answer round.
//!
//! There are two ways to an answer, and the tests hold them together: [`evaluate`] walks the operations of any guard,
//! and the compiled-in book brings each of its guards as a function of its own ([`hazard::Guards`](crate::hazard)).
//! Who takes an [`Evaluator`] works with either.

mod broken;
pub mod compare;
mod evaluate;
mod evaluator;
mod inputs;
mod observed;
mod row;
mod set;
mod truth;

pub use broken::Broken;
pub use evaluate::{depends_on_equipment, evaluate};
pub use evaluator::Evaluator;
pub use inputs::Inputs;
pub use observed::{Facts, Observed};
pub use row::{MAX_CONDITIONS, Row};
pub use set::{HazardSet, Hazards};
pub use truth::Truth;
