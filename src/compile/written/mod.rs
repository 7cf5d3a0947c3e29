//! Quantities as people write them: `10 to 15 L/min`, `under 88 %`, `350 L at 2200 psi`.
//!
//! The spellings are listed in [the language page](super::language). The grammar is nom's work; the messages are
//! ours, and each points at the number or the unit that is wrong.

mod advice;
mod from_str;
mod grammar;
mod mistake;
mod unit;

use core::ops::Range as Bytes;

pub use advice::{Units, Wanted};
pub use mistake::Mistake;
pub use unit::{Dimension, Measure};

use crate::book::Value;
use crate::quantity::{Limit, Percent, Range, Ratio, bounds};
use grammar::{Amount, Written, no_number, ratio_at_start, written};

/// Whether a word is the spelling of a unit.
#[must_use]
pub fn is_unit(word: &str) -> bool {
    unit::UNITS.iter().any(|(spelling, _)| *spelling == word)
}

/// Reads one quantity: `200 psi`.
///
/// # Errors
///
/// [`Mistake`] when the text is not a number with a unit of the right kind, within the quantity's bounds.
pub fn one<Q: Measure>(text: &str) -> Result<Q, Mistake> {
    let wanted = Wanted {
        dimension: Q::DIMENSION,
        is_range: false,
    };
    let read = whole(text).and_then(|written| match written {
        Written::One(amount) => measure(text, &amount),
        Written::Range(..) => Err(Mistake::new(
            "not-one-quantity",
            0..text.len(),
            format!("expected {}, found a range", Q::DIMENSION.words()),
        )
        .hint("write one number with its unit")),
    });
    read.map_err(|mistake| mistake.wanting(text, wanted))
}

/// Reads an oxygen saturation: `94 %`.
///
/// # Errors
///
/// [`Mistake`] when the text is not one share, from 0 to 100 %.
pub fn saturation(text: &str) -> Result<Percent, Mistake> {
    let share: Percent = one(text)?;
    match bounds::SATURATION.accept(share.as_percent()) {
        Ok(_) => Ok(share),
        Err(error) => {
            Err(Mistake::new("out-of-bounds", 0..text.len(), error.to_string()).hint(error.bounds.reason))
        }
    }
}

/// Reads a range of a quantity: `10 to 15 L/min`, `at least 94 %`.
///
/// # Errors
///
/// [`Mistake`] when the text is not a range of the right kind, running from low to high.
pub fn range<Q: Measure>(text: &str) -> Result<Range<Q>, Mistake> {
    let wanted = Wanted {
        dimension: Q::DIMENSION,
        is_range: true,
    };
    let read = whole(text).and_then(|written| match written {
        Written::Range(low, high) => bounded(text, &low, &high),
        Written::One(amount) => {
            let _: Q = measure(text, &amount)?;
            Err(Mistake::new(
                "not-a-range",
                0..text.len(),
                format!("expected a range, found the one quantity `{}`", text.trim()),
            )
            .hint("write `LOW to HIGH UNIT`, `at least …` or `at most …`"))
        }
    });
    read.map_err(|mistake| mistake.wanting(text, wanted))
}

/// Reads a quantity or range of any kind.
///
/// # Errors
///
/// [`Mistake`] when the text is no quantity.
pub fn any(text: &str) -> Result<Value, Mistake> {
    let (value, rest) = leading(text)?;
    nothing_left(text, rest).map(|()| value)
}

/// Reads a quantity or range at the start of a text; gives it with the place where it ends.
///
/// # Errors
///
/// [`Mistake`] when the text doesn't begin with a quantity.
pub fn leading(text: &str) -> Result<(Value, usize), Mistake> {
    if let Some(ratio) = ratio_at_start(text) {
        return ratio;
    }
    let (written, end) = written(text)?;
    let value = match written {
        Written::One(amount) => match amount.unit.dimension() {
            Dimension::Flow => Value::Flow(measure(text, &amount)?),
            Dimension::Pressure => Value::Pressure(measure(text, &amount)?),
            Dimension::Volume => Value::Volume(measure(text, &amount)?),
            Dimension::Factor => Value::Factor(measure(text, &amount)?),
            Dimension::Temperature => Value::Temperature(measure(text, &amount)?),
            Dimension::Percent => Value::Percent(measure(text, &amount)?),
            Dimension::Time => Value::Time(measure(text, &amount)?),
        },
        Written::Range(low, high) => {
            let first = match (&low, &high) {
                (Limit::Included(amount) | Limit::Excluded(amount), _)
                | (Limit::None, Limit::Included(amount) | Limit::Excluded(amount)) => amount,
                (Limit::None, Limit::None) => return Err(no_number(text, 0)),
            };
            match first.unit.dimension() {
                Dimension::Flow => Value::FlowRange(bounded(text, &low, &high)?),
                Dimension::Pressure => Value::PressureRange(bounded(text, &low, &high)?),
                Dimension::Temperature => Value::TemperatureRange(bounded(text, &low, &high)?),
                Dimension::Percent => Value::PercentRange(bounded(text, &low, &high)?),
                Dimension::Time => Value::TimeRange(bounded(text, &low, &high)?),
                Dimension::Volume | Dimension::Factor => {
                    return Err(Mistake::new(
                        "not-one-quantity",
                        0..text.len(),
                        format!("expected {}, found a range", first.unit.dimension().words()),
                    )
                    .hint("write one quantity"));
                }
            }
        }
    };
    Ok((value, end))
}

/// Reads a ratio of air to oxygen: `25 to 1`.
///
/// # Errors
///
/// [`Mistake`] when the text is not a number and `to 1`.
pub fn ratio(text: &str) -> Result<Ratio, Mistake> {
    match ratio_at_start(text) {
        Some(Ok((Value::Ratio(ratio), end))) => nothing_left(text, end).map(|()| ratio),
        Some(Err(mistake)) => Err(mistake),
        _ => Err(Mistake::new(
            "not-a-ratio",
            0..text.len(),
            format!("expected a ratio of air to oxygen, found `{}`", text.trim()),
        )
        .hint("write it with `to`, as in `25 to 1`")),
    }
}

/// Splits `A at B`, as in `350 L at 2200 psi`; gives both parts and where the second starts.
///
/// # Errors
///
/// [`Mistake`] when there is no ` at `.
pub fn split_at<'a>(text: &'a str, example: &str) -> Result<(&'a str, &'a str, usize), Mistake> {
    match text.split_once(" at ") {
        Some((first, second)) => Ok((first, second, first.len() + " at ".len())),
        None => Err(Mistake::new(
            "not-a-pair",
            0..text.len(),
            format!("expected two values joined by `at`, found `{}`", text.trim()),
        )
        .hint(format!("write both, with `at` between them: `{example}`"))),
    }
}

fn measure<Q: Measure>(text: &str, amount: &Amount) -> Result<Q, Mistake> {
    let unit = text.get(amount.unit_at.clone()).unwrap_or("");
    match Q::from_written(amount.number, unit) {
        Some(Ok(quantity)) => Ok(quantity),
        Some(Err(bounds)) => Err(
            Mistake::new("out-of-bounds", amount.number_at.clone(), bounds.to_string())
                .hint(bounds.bounds.reason),
        ),
        None => Err(Mistake::new(
            "wrong-unit",
            amount.unit_at.clone(),
            format!(
                "expected {}, found {}",
                Q::DIMENSION.words(),
                amount.unit.dimension().words()
            ),
        )
        .hint(format!("write {}", Q::DIMENSION.words()))),
    }
}

fn bounded<Q: Measure>(
    text: &str,
    low: &Limit<Box<Amount>>,
    high: &Limit<Box<Amount>>,
) -> Result<Range<Q>, Mistake> {
    let convert = |limit: &Limit<Box<Amount>>| -> Result<Limit<Q>, Mistake> {
        Ok(match limit {
            Limit::None => Limit::None,
            Limit::Included(amount) => Limit::Included(measure(text, amount)?),
            Limit::Excluded(amount) => Limit::Excluded(measure(text, amount)?),
        })
    };
    let range = Range {
        low: convert(low)?,
        high: convert(high)?,
    };
    if let (Limit::Included(from), Limit::Included(to)) = (low, high)
        && range.low.value() > range.high.value()
    {
        let piece = |at: &Bytes<usize>| text.get(at.clone()).unwrap_or("");
        let (from_text, to_text) = (piece(&from.number_at), piece(&to.number_at));
        let instead = if from.unit_at == to.unit_at {
            format!("{to_text} to {from_text} {}", piece(&to.unit_at))
        } else {
            format!(
                "{to_text} {} to {from_text} {}",
                piece(&to.unit_at),
                piece(&from.unit_at)
            )
        };
        return Err(Mistake::new(
            "reversed-range",
            from.number_at.start..to.unit_at.end,
            format!("expected a range from low to high, found {from_text} before {to_text}"),
        )
        .hint(format!("write `{instead}`")));
    }
    Ok(range)
}

fn whole(text: &str) -> Result<Written, Mistake> {
    let (written, end) = written(text)?;
    nothing_left(text, end).map(|()| written)
}

/// What to do with words after a quantity; a book has a place for them, a form or a command has none.
pub(super) const TAKE_OUT: &str = "take it out";

fn nothing_left(text: &str, end: usize) -> Result<(), Mistake> {
    let rest = text.get(end..).unwrap_or("");
    if rest.trim().is_empty() {
        return Ok(());
    }
    let start = end + rest.len() - rest.trim_start().len();
    // `6 L / min`, and `6 L /min`.
    let is_unit = rest.trim_start().starts_with('/');
    Err(Mistake::new(
        "unexpected-text",
        start..start + rest.trim().len(),
        format!("expected the end of the quantity, found `{}`", rest.trim()),
    )
    .hint(if is_unit {
        "write the unit without a space in it, as in `L/min`"
    } else {
        TAKE_OUT
    }))
}
