//! Shares in per cent: oxygen fraction, saturation, margins.

use super::{bounds, scalar::scalar};

scalar! {
    /// A share in per cent: an oxygen fraction, an oxygen saturation (SpO₂), a margin.
    ///
    /// ```
    /// use oxyfolio::quantity::Percent;
    /// assert_eq!(Percent::new(94.0)?.to_string(), "94 %");
    /// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
    /// ```
    Percent, bounds::PERCENT, "%",
    /// From per cent, 0 to 300.
    new new,
    /// In per cent.
    get as_percent
}

impl Percent {
    /// Whether it can be an oxygen saturation: at most 100 %, see [`bounds::SATURATION`].
    ///
    /// ```
    /// use oxyfolio::quantity::Percent;
    /// assert!(Percent::new(100.0)?.is_saturation());
    /// assert!(!Percent::new(100.5)?.is_saturation());
    /// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
    /// ```
    #[inline]
    #[must_use]
    pub const fn is_saturation(self) -> bool {
        bounds::SATURATION.accept(self.0).is_ok()
    }
}
