//! Any text as a quantity: what was read is read again from its print, every reader tells the same, and a mistake points into the text.

use oxyfolio::book::Value;
use oxyfolio::compile::written::{self, Measure, Mistake};
use oxyfolio::quantity::{Factor, Flow, Gauge, Percent, Pressure, Ratio, Temperature, Time, Volume};

use super::places::inside;

/// Reads the bytes as every kind of quantity.
pub fn run(bytes: &[u8]) {
    // The reader of chapters gives out no longer value.
    let text = std::str::from_utf8(bytes).ok();
    let Some(text) = text.filter(|text| text.len() <= 10_000) else {
        return;
    };
    let any = written::any(text);
    match &any {
        Ok(value) => printed(text, value),
        Err(mistake) => inside(text, mistake),
    }
    let kinds = [
        one::<Flow>(text, &any, |value| matches!(value, Value::Flow(_))),
        one::<Pressure<Gauge>>(text, &any, |value| matches!(value, Value::Pressure(_))),
        one::<Volume>(text, &any, |value| matches!(value, Value::Volume(_))),
        one::<Factor>(text, &any, |value| matches!(value, Value::Factor(_))),
        one::<Temperature>(text, &any, |value| matches!(value, Value::Temperature(_))),
        one::<Percent>(text, &any, |value| matches!(value, Value::Percent(_))),
        one::<Time>(text, &any, |value| matches!(value, Value::Time(_))),
        range::<Flow>(text, &any, |value| matches!(value, Value::FlowRange(_))),
        range::<Pressure<Gauge>>(text, &any, |value| matches!(value, Value::PressureRange(_))),
        range::<Temperature>(text, &any, |value| matches!(value, Value::TemperatureRange(_))),
        range::<Percent>(text, &any, |value| matches!(value, Value::PercentRange(_))),
        range::<Time>(text, &any, |value| matches!(value, Value::TimeRange(_))),
        agreed(
            text,
            text.parse::<Ratio>().map(|ratio| ratio.to_string()),
            &any,
            |value| matches!(value, Value::Ratio(_)),
        ),
    ];
    let read = kinds.into_iter().filter(|read| *read).count();
    assert_eq!(read, usize::from(any.is_ok()), "{text:?}: {any:?}");
    if let Err(mistake) = written::saturation(text) {
        inside(text, &mistake);
    }
}

/// What was read prints as what is read as the same.
fn printed(text: &str, value: &Value) {
    let print = value.to_string();
    match written::any(&print) {
        // A unit that isn't the first one's is converted, and may differ in its last bit: the print doesn't.
        Ok(again) => assert_eq!(again.to_string(), print, "{text:?}"),
        Err(mistake) => panic!("{text:?} prints as {print:?}: {mistake}"),
    }
}

fn one<Q: Measure + core::fmt::Display>(
    text: &str,
    any: &Result<Value, Mistake>,
    is_it: fn(&Value) -> bool,
) -> bool {
    agreed(
        text,
        written::one::<Q>(text).map(|one| one.to_string()),
        any,
        is_it,
    )
}

fn range<Q: Measure>(text: &str, any: &Result<Value, Mistake>, is_it: fn(&Value) -> bool) -> bool
where
    oxyfolio::quantity::Range<Q>: core::fmt::Display,
{
    agreed(
        text,
        written::range::<Q>(text).map(|range| range.to_string()),
        any,
        is_it,
    )
}

/// Whether a reader of one kind took the text, which the reader of all kinds must then take for the same, and the other way round.
fn agreed(
    text: &str,
    read: Result<String, Mistake>,
    any: &Result<Value, Mistake>,
    is_it: fn(&Value) -> bool,
) -> bool {
    let of_all = any
        .as_ref()
        .ok()
        .filter(|value| is_it(value))
        .map(ToString::to_string);
    if let Err(mistake) = &read {
        inside(text, mistake);
    }
    assert_eq!(read.as_ref().ok(), of_all.as_ref(), "{text:?}: {read:?}");
    read.is_ok()
}
