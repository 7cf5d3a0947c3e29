//! Which kind of quantity stands where in a guard, and how deep it nests.

use core::ops::Range as Bytes;

use super::super::written::{Dimension, Mistake, Wanted};
use crate::book::{GuardOp, Measure, Value};
use crate::quantity::{Limit, Range};

/// The most values held at once.
pub fn depth(ops: &[GuardOp]) -> usize {
    let (mut held, mut most) = (0_usize, 0);
    for op in ops {
        match op {
            GuardOp::And | GuardOp::Or => held = held.saturating_sub(1),
            GuardOp::Not => {}
            _ => held += 1,
        }
        most = most.max(held);
    }
    most
}

/// The kind of quantity a measure is.
pub const fn dimension_of_measure(measure: Measure) -> Dimension {
    match measure {
        Measure::Flow => Dimension::Flow,
        Measure::Pressure => Dimension::Pressure,
        Measure::Temperature => Dimension::Temperature,
        Measure::Spo2 => Dimension::Percent,
        Measure::MinutesLeft | Measure::MinutesWanted => Dimension::Time,
    }
}

/// The kind of quantity a value is; none for a ratio.
pub const fn dimension_of(value: &Value) -> Option<Dimension> {
    Some(match value {
        Value::Flow(_) | Value::FlowRange(_) => Dimension::Flow,
        Value::Pressure(_) | Value::PressureRange(_) => Dimension::Pressure,
        Value::Volume(_) => Dimension::Volume,
        Value::Factor(_) => Dimension::Factor,
        Value::Temperature(_) | Value::TemperatureRange(_) => Dimension::Temperature,
        Value::Percent(_) | Value::PercentRange(_) => Dimension::Percent,
        Value::Time(_) | Value::TimeRange(_) => Dimension::Time,
        Value::Ratio(_) => return None,
    })
}

/// Whether a value is a range.
pub const fn is_range(value: &Value) -> bool {
    ends(value).is_some()
}

/// Refuses to compare a measure with another kind of quantity.
pub fn check_dimension(measure: Measure, found: Option<Dimension>, at: Bytes<usize>) -> Result<(), Mistake> {
    let expected = dimension_of_measure(measure);
    if found == Some(expected) {
        return Ok(());
    }
    Err(Mistake::new(
        "wrong-unit",
        at,
        format!(
            "`{}` is {}, found {}",
            measure.words(),
            expected.words(),
            found.map_or("a ratio", Dimension::words)
        ),
    )
    .wanting(
        "",
        Wanted {
            dimension: expected,
            is_range: false,
        },
    ))
}

/// Whether a range has a low and a high end; none for one quantity.
pub const fn ends(value: &Value) -> Option<(bool, bool)> {
    const fn of<Q>(range: &Range<Q>) -> (bool, bool) {
        let (low, high) = (&range.low, &range.high);
        (!matches!(low, Limit::None), !matches!(high, Limit::None))
    }
    Some(match value {
        Value::FlowRange(range) => of(range),
        Value::PressureRange(range) => of(range),
        Value::TemperatureRange(range) => of(range),
        Value::PercentRange(range) => of(range),
        Value::TimeRange(range) => of(range),
        _ => return None,
    })
}

/// Refuses a saturation above 100 %: a guard that speaks of one never holds, or always.
pub fn check_bounds(measure: Measure, value: &Value, at: Bytes<usize>) -> Result<(), Mistake> {
    let most = match value {
        Value::Percent(share) => Some(*share),
        Value::PercentRange(range) => range.high.value().or(range.low.value()),
        _ => None,
    };
    match most {
        Some(share) if matches!(measure, Measure::Spo2) && share.as_percent() > 100.0 => Err(Mistake::new(
            "out-of-bounds",
            at,
            format!("expected a saturation of at most 100 %, found {share}"),
        )
        .hint("check the number: no oximeter shows more than 100 %")),
        _ => Ok(()),
    }
}
