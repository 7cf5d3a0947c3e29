//! Comparisons of what may be unknown: what guards written as Rust are made of.
//!
//! Both sides are quantities of one kind, so a flow can't meet a pressure. Two values that only rounding keeps apart
//! count as equal: 2000 psi is 13.78951… MPa, whichever way it was typed.
//!
//! ```
//! use oxyfolio::guard::{Truth, compare::{at_most, less, within}};
//! use oxyfolio::quantity::{Gauge, Percent, Pressure, Range};
//!
//! let gauge = Some(Pressure::<Gauge>::psi(200.0)?);
//! let residual = Some(Pressure::psi(200.0)?);
//! assert_eq!(at_most(gauge, residual), Truth::True);
//! assert_eq!(less(gauge, residual), Truth::False);
//! assert_eq!(less(gauge, None), Truth::Unknown);
//! let range = Range::between(Percent::new(94.0)?, Percent::new(98.0)?);
//! assert_eq!(within(None, range), Truth::Unknown);
//! # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
//! ```

use super::Truth;
use crate::book::{Comparison, Value};
use crate::quantity::{Flow, Gauge, Limit, Percent, Pressure, Range, Temperature, Time};

/// A quantity that guards compare.
pub trait Comparable: Copy {
    /// Its number, in the unit in which its kind is compared: L/min, Pa, °C, % or min.
    fn number(self) -> f64;
}

macro_rules! comparable {
    ($($name:ty, $number:ident;)+) => {$(
        impl Comparable for $name {
            #[inline]
            fn number(self) -> f64 {
                self.$number()
            }
        }
    )+};
}

comparable! {
    Flow, as_litres_per_minute;
    Pressure<Gauge>, as_pascals;
    Temperature, as_celsius;
    Percent, as_percent;
    Time, as_minutes;
}

macro_rules! comparisons {
    ($($name:ident $comparison:ident $words:literal;)+) => {$(
        #[doc = concat!("Whether the left side is ", $words, " the right; unknown when a side is.")]
        #[must_use]
        pub fn $name<Q: Comparable>(left: Option<Q>, right: Option<Q>) -> Truth {
            compare(left.map(Q::number), Comparison::$comparison, right.map(Q::number))
        }
    )+};
}

comparisons! {
    equal Equal "equal to";
    not_equal NotEqual "not equal to";
    less Less "less than";
    at_most AtMost "at most";
    greater Greater "greater than";
    at_least AtLeast "at least";
}

/// Whether a value lies in a range; unknown when the value is.
#[must_use]
pub fn within<Q: Comparable>(value: Option<Q>, range: Range<Q>) -> Truth {
    number_within(value.map(Q::number), &range)
}

/// Whether a number lies in a range, in the unit of [`Comparable::number`].
fn number_within<Q: Comparable>(value: Option<f64>, range: &Range<Q>) -> Truth {
    let unlimited = Truth::from(value.map(|_| true));
    let low = match range.low {
        Limit::None => unlimited,
        Limit::Included(low) => compare(value, Comparison::AtLeast, Some(low.number())),
        Limit::Excluded(low) => compare(value, Comparison::Greater, Some(low.number())),
    };
    let high = match range.high {
        Limit::None => unlimited,
        Limit::Included(high) => compare(value, Comparison::AtMost, Some(high.number())),
        Limit::Excluded(high) => compare(value, Comparison::Less, Some(high.number())),
    };
    low & high
}

/// Compares two numbers in the units of [`Comparable::number`].
pub(crate) fn compare(left: Option<f64>, comparison: Comparison, right: Option<f64>) -> Truth {
    let Some((left, right)) = left.zip(right) else {
        return Truth::Unknown;
    };
    let close = (left - right).abs() <= 1e-9 * left.abs().max(right.abs());
    Truth::from(Some(match comparison {
        Comparison::Equal => close,
        Comparison::NotEqual => !close,
        Comparison::Less => left < right && !close,
        Comparison::AtMost => left <= right || close,
        Comparison::Greater => left > right && !close,
        Comparison::AtLeast => left >= right || close,
    }))
}

/// A quantity as a bare number, in the units of [`Comparable::number`].
pub(crate) fn number(value: &Value) -> Option<f64> {
    match value {
        Value::Flow(flow) => Some(flow.number()),
        Value::Pressure(pressure) => Some(pressure.number()),
        Value::Temperature(temperature) => Some(temperature.number()),
        Value::Percent(share) => Some(share.number()),
        Value::Time(time) => Some(time.number()),
        _ => None,
    }
}

/// The ends of a range as bare numbers, in the units of [`Comparable::number`].
pub(crate) fn ends(range: &Value) -> Option<(Option<f64>, Option<f64>)> {
    fn of<Q: Comparable>(range: &Range<Q>) -> (Option<f64>, Option<f64>) {
        (
            range.low.value().map(Q::number),
            range.high.value().map(Q::number),
        )
    }
    Some(match range {
        Value::FlowRange(range) => of(range),
        Value::PressureRange(range) => of(range),
        Value::TemperatureRange(range) => of(range),
        Value::PercentRange(range) => of(range),
        Value::TimeRange(range) => of(range),
        _ => return None,
    })
}

/// Whether a number lies in a range of the book.
pub(crate) fn in_range(value: Option<f64>, range: &Value) -> Truth {
    match range {
        Value::FlowRange(range) => number_within(value, range),
        Value::PressureRange(range) => number_within(value, range),
        Value::TemperatureRange(range) => number_within(value, range),
        Value::PercentRange(range) => number_within(value, range),
        Value::TimeRange(range) => number_within(value, range),
        _ => Truth::Unknown,
    }
}
