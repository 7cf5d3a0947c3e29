//! Oxygen flow in litres a minute.

use super::{bounds, scalar::scalar};

scalar! {
    /// Oxygen flow, in litres a minute.
    ///
    /// ```
    /// use oxyfolio::quantity::Flow;
    /// let flow = Flow::litres_per_minute(15.0)?;
    /// assert_eq!(flow.to_string(), "15 L/min");
    /// assert!(Flow::litres_per_minute(400.0).is_err());
    /// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
    /// ```
    Flow, bounds::FLOW, "L/min",
    /// From litres a minute, 0 to 120.
    new litres_per_minute,
    /// In litres a minute.
    get as_litres_per_minute
}

impl Flow {
    /// No flow.
    pub const ZERO: Self = Self::tabled(0.0);
}
