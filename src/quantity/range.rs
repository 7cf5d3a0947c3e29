//! Ranges of a quantity: flow limits, saturation targets, ages.

use core::fmt;

/// One end of a [`Range`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Limit<Q> {
    /// No limit at this end.
    None,
    /// Up to this value, the value itself included.
    Included(Q),
    /// Up to this value, the value itself left out.
    Excluded(Q),
}

impl<Q: Copy> Limit<Q> {
    /// The value at this end, where there is one.
    #[must_use]
    pub const fn value(self) -> Option<Q> {
        match self {
            Self::None => None,
            Self::Included(value) | Self::Excluded(value) => Some(value),
        }
    }
}

/// Where a value stands against a [`Range`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Below the range.
    Below,
    /// In the range.
    Inside,
    /// Above the range.
    Above,
}

/// From a low to a high limit.
///
/// ```
/// use oxyfolio::quantity::{Flow, Range};
/// let range = Range::between(Flow::litres_per_minute(10.0)?, Flow::litres_per_minute(15.0)?);
/// assert_eq!(range.to_string(), "10 to 15 L/min");
/// assert!(range.holds(Flow::litres_per_minute(15.0)?));
/// assert!(!range.holds(Flow::litres_per_minute(9.9)?));
/// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range<Q> {
    /// The lower end.
    pub low: Limit<Q>,
    /// The upper end.
    pub high: Limit<Q>,
}

impl<Q: Copy> Range<Q> {
    /// From `low` to `high`, both included.
    #[must_use]
    pub const fn between(low: Q, high: Q) -> Self {
        Self {
            low: Limit::Included(low),
            high: Limit::Included(high),
        }
    }
}

impl<Q: Copy + PartialOrd> Range<Q> {
    /// Where a value stands.
    #[must_use]
    pub fn side(&self, value: Q) -> Side {
        let low_enough = match self.low {
            Limit::None => true,
            Limit::Included(low) => value >= low,
            Limit::Excluded(low) => value > low,
        };
        let high_enough = match self.high {
            Limit::None => true,
            Limit::Included(high) => value <= high,
            Limit::Excluded(high) => value < high,
        };
        match (low_enough, high_enough) {
            (false, _) => Side::Below,
            (true, false) => Side::Above,
            (true, true) => Side::Inside,
        }
    }

    /// Whether a value is in the range.
    #[must_use]
    pub fn holds(&self, value: Q) -> bool {
        self.side(value) == Side::Inside
    }
}

/// A quantity whose unit can be said once for both ends of a range.
pub trait Quantity: fmt::Display {
    /// Writes the number alone, when `other` has the same unit; otherwise the number with its unit.
    ///
    /// # Errors
    ///
    /// As [`fmt::Display`]: only when the writer fails.
    fn fmt_before(&self, other: &Self, f: &mut fmt::Formatter<'_>) -> fmt::Result;
}

impl<Q: Quantity> fmt::Display for Range<Q> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (&self.low, &self.high) {
            (Limit::None, Limit::None) => f.write_str("any"),
            (Limit::Included(low), Limit::None) => write!(f, "at least {low}"),
            (Limit::Excluded(low), Limit::None) => write!(f, "over {low}"),
            (Limit::None, Limit::Included(high)) => write!(f, "at most {high}"),
            (Limit::None, Limit::Excluded(high)) => write!(f, "under {high}"),
            (Limit::Included(low) | Limit::Excluded(low), Limit::Included(high) | Limit::Excluded(high)) => {
                low.fmt_before(high, f)?;
                write!(f, " to {high}")
            }
        }
    }
}
