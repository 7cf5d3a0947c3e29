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
