//! Volumes: of gas at 1 atm and 70 °F, and of water that fills a cylinder.

use super::{OutOfBounds, bounds, scalar::scalar};

/// Litres in a cubic foot, exact: 1 ft = 0.3048 m (NIST SP 811).
pub const LITRES_PER_CUBIC_FOOT: f64 = 28.316_846_592;

scalar! {
    /// A volume, in litres.
    ///
    /// ```
    /// use oxyfolio::quantity::Volume;
    /// assert_eq!(Volume::cubic_feet(22.0)?.to_string(), "622.9706 L");
    /// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
    /// ```
    Volume, bounds::VOLUME, "L",
    /// From litres, 0 to 100,000.
    new litres,
    /// In litres.
    get as_litres
}

impl Volume {
    /// From cubic feet.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite or outside the bounds.
    pub const fn cubic_feet(value: f64) -> Result<Self, OutOfBounds> {
        Self::litres(value * LITRES_PER_CUBIC_FOOT)
    }
}
