//! Air-entrainment ratios.

use super::{bounds, scalar::scalar};

scalar! {
    /// Parts of air drawn in by one part of oxygen: 25 for a 24 % air-entrainment mask.
    ///
    /// ```
    /// use oxyfolio::quantity::Ratio;
    /// assert_eq!(Ratio::to_one(25.0)?.to_string(), "25 to 1");
    /// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
    /// ```
    Ratio, bounds::RATIO, "to 1",
    /// From the parts of air to one part of oxygen, 0 to 100.
    new to_one,
    /// The parts of air to one part of oxygen.
    get as_parts_of_air
}
