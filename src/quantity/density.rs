//! Density of a gas.

use super::{bounds, scalar::scalar};

scalar! {
    /// A density, in kilograms per cubic metre.
    ///
    /// ```
    /// use oxyfolio::quantity::Density;
    /// assert_eq!(Density::kilograms_per_cubic_metre(1.429)?.to_string(), "1.429 kg/m³");
    /// assert!(Density::kilograms_per_cubic_metre(-1.0).is_err());
    /// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
    /// ```
    Density, bounds::DENSITY, "kg/m³",
    /// From kilograms per cubic metre, 0 to 1400.
    new kilograms_per_cubic_metre,
    /// In kilograms per cubic metre.
    get as_kilograms_per_cubic_metre
}
