//! Writes a guard's operations as they would be typed.

use super::{
    Signs, infix,
    vocabulary::{COMPARISONS, DEVICE_IS, GROUP_IS, NAMED_VALUES},
    written,
};
use crate::book::{GuardOp, Operand, Rulebook, Value};
use crate::quantity::{
    Flow, Gauge, Limit, Number, Percent, Pressure, PressureUnit, Range, Temperature, Time,
};

const WORDS: Signs = Signs {
    not: "not ",
    and: " and ",
    or: " or ",
};

/// Writes a guard's operations in the book's language, so that [`read`](super::read) gives the same operations again.
///
/// None for what can't be typed, which only a table written by hand can hold: operations that aren't well formed, a name
/// of another book, a range that leaves out one of two ends.
///
/// ```
/// use oxyfolio::compile::guard::print;
/// use oxyfolio::{RULEBOOK, hazard};
/// let guard = &RULEBOOK.hazard(hazard::NO_FLOW_ON_PATIENT).unwrap().never;
/// assert_eq!(print(&guard.ops, &RULEBOOK).as_deref(), Some(guard.text.as_str()));
/// ```
#[must_use]
pub fn print(ops: &[GuardOp], book: &Rulebook) -> Option<String> {
    infix(ops, &WORDS, |op| leaf(op, book))
}

fn leaf(op: &GuardOp, book: &Rulebook) -> Option<String> {
    Some(match op {
        GuardOp::Compare(measure, comparison, operand) => {
            let (sign, _) = COMPARISONS.iter().find(|(_, known)| known == comparison)?;
            format!("{} {sign} {}", measure.words(), self::operand(operand, book)?)
        }
        GuardOp::Within(measure, range) => format!("{} in {}", measure.words(), value(range)?),
        GuardOp::Fact(fact) => fact.words().to_owned(),
        GuardOp::DeviceIs(id) => format!("{DEVICE_IS} {}", book.device(*id)?.rule.id),
        GuardOp::GroupIs(id) => format!("{GROUP_IS} {}", book.group(*id)?.rule.id),
        GuardOp::HasCondition(id) => book.condition(*id)?.id.to_string(),
        GuardOp::Not | GuardOp::And | GuardOp::Or => return None,
    })
}

fn operand(operand: &Operand, book: &Rulebook) -> Option<String> {
    Some(match operand {
        Operand::Value(quantity) => value(quantity)?,
        Operand::Measure(measure) => measure.words().to_owned(),
        Operand::Policy(id) => book.policy(*id)?.rule.id.to_string(),
        Operand::PolicyLow(id) => format!("{}.low", book.policy(*id)?.rule.id),
        Operand::PolicyHigh(id) => format!("{}.high", book.policy(*id)?.rule.id),
        Operand::TargetLow | Operand::TargetHigh | Operand::DeviceLeastFlow | Operand::DeviceMostFlow => {
            let named = NAMED_VALUES.iter().find(|value| value.operand == *operand)?;
            named.words.to_owned()
        }
    })
}

/// A quantity or range, written so that it reads back to the same bits.
fn value(value: &Value) -> Option<String> {
    match value {
        Value::Flow(flow) => flow.typed(),
        Value::Pressure(pressure) => pressure.typed(),
        Value::Temperature(temperature) => temperature.typed(),
        Value::Percent(share) => share.typed(),
        Value::Time(time) => time.typed(),
        Value::FlowRange(range) => typed_range(range),
        Value::PressureRange(range) => typed_range(range),
        Value::TemperatureRange(range) => typed_range(range),
        Value::PercentRange(range) => typed_range(range),
        Value::TimeRange(range) => typed_range(range),
        Value::Volume(_) | Value::Factor(_) | Value::Ratio(_) => None,
    }
}

fn typed_range<Q: Typed>(range: &Range<Q>) -> Option<String> {
    Some(match (range.low, range.high) {
        (Limit::Included(low), Limit::Included(high)) => format!("{} to {}", low.typed()?, high.typed()?),
        (Limit::Included(low), Limit::None) => format!("at least {}", low.typed()?),
        (Limit::Excluded(low), Limit::None) => format!("over {}", low.typed()?),
        (Limit::None, Limit::Included(high)) => format!("at most {}", high.typed()?),
        (Limit::None, Limit::Excluded(high)) => format!("under {}", high.typed()?),
        _ => return None,
    })
}

/// A quantity that can be typed.
trait Typed: written::Measure + PartialEq {
    /// The quantity as a number in each unit it may have been typed in, likeliest first.
    fn numbers(self) -> Vec<(f64, &'static str)>;

    /// A spelling that reads back to this very quantity: with few decimals in the likeliest unit, else the shortest.
    fn typed(self) -> Option<String> {
        let units = self.numbers();
        let reads_back = |text: &String| written::one::<Self>(text).is_ok_and(|read| read == self);
        let mut plain = units
            .iter()
            .map(|(number, unit)| format!("{} {unit}", Number(*number)));
        plain.find(reads_back).or_else(|| {
            // The division by a unit may be out by the last bit.
            let exact = units.iter().flat_map(|(number, unit)| {
                [*number, number.next_up(), number.next_down()].map(|number| format!("{number} {unit}"))
            });
            exact.filter(reads_back).min_by_key(String::len)
        })
    }
}

impl Typed for Flow {
    fn numbers(self) -> Vec<(f64, &'static str)> {
        let flow = self.as_litres_per_minute();
        vec![(flow, "L/min"), (flow * 1000.0, "mL/min")]
    }
}

impl Typed for Pressure<Gauge> {
    fn numbers(self) -> Vec<(f64, &'static str)> {
        let units = [
            PressureUnit::Psi,
            PressureUnit::Bar,
            PressureUnit::Kpa,
            PressureUnit::Mpa,
        ];
        units.map(|unit| (self.as_unit(unit), unit.symbol())).to_vec()
    }
}

impl Typed for Temperature {
    fn numbers(self) -> Vec<(f64, &'static str)> {
        vec![(self.as_celsius(), "°C"), (self.as_fahrenheit(), "°F")]
    }
}

impl Typed for Percent {
    fn numbers(self) -> Vec<(f64, &'static str)> {
        vec![(self.as_percent(), "%")]
    }
}

impl Typed for Time {
    fn numbers(self) -> Vec<(f64, &'static str)> {
        let (amount, _) = self.written();
        let text = self.to_string();
        let unit = ["s", "min", "h", "day", "days", "month", "months", "year", "years"]
            .into_iter()
            .find(|unit| text.ends_with(&format!(" {unit}")));
        unit.map(|unit| (amount, unit)).into_iter().collect()
    }
}
