//! Walks a guard's operations.

use super::{Observed, Truth};
use crate::book::{Comparison, Fact, Guard, GuardOp, MAX_GUARD_DEPTH, Measure, Operand, Rulebook, Value};
use crate::quantity::{Limit, Range};

/// Whether a guard holds for what was observed.
///
/// A guard that isn't well formed (only a table written by hand can hold one) is unknown.
#[must_use]
pub fn evaluate(guard: &Guard, book: &Rulebook, observed: &Observed<'_>) -> Truth {
    let mut stack = Stack::default();
    for op in &guard.ops {
        let value = match op {
            GuardOp::Not => !stack.pop(),
            GuardOp::And => stack.pop() & stack.pop(),
            GuardOp::Or => stack.pop() | stack.pop(),
            single => leaf(single, book, observed),
        };
        stack.push(value);
    }
    stack.result()
}

/// Whether a guard speaks of the state of equipment or surroundings, beyond what a set-up tells.
#[must_use]
pub fn depends_on_equipment(guard: &Guard) -> bool {
    guard.ops.iter().any(|op| {
        matches!(op, GuardOp::Fact(fact) if !matches!(fact, Fact::DeviceOnPatient | Fact::DeviceHasReservoir))
    })
}

#[derive(Default)]
struct Stack {
    values: [Option<Truth>; MAX_GUARD_DEPTH],
    height: usize,
}

impl Stack {
    fn push(&mut self, value: Truth) {
        if let Some(place) = self.values.get_mut(self.height) {
            *place = Some(value);
        }
        self.height += 1;
    }

    fn pop(&mut self) -> Truth {
        self.height = self.height.saturating_sub(1);
        self.values
            .get_mut(self.height)
            .and_then(Option::take)
            .unwrap_or(Truth::Unknown)
    }

    fn result(mut self) -> Truth {
        if self.height == 1 {
            self.pop()
        } else {
            Truth::Unknown
        }
    }
}

fn leaf(op: &GuardOp, book: &Rulebook, observed: &Observed<'_>) -> Truth {
    let known: Option<bool> = match op {
        GuardOp::Compare(measure, comparison, operand) => {
            let left = measured(*measure, observed);
            let right = operand_value(*operand, book, observed);
            left.zip(right)
                .map(|(left, right)| compare(left, *comparison, right))
        }
        GuardOp::Within(measure, range) => {
            measured(*measure, observed).and_then(|value| within(value, range))
        }
        GuardOp::Fact(Fact::DeviceHasReservoir) => observed
            .device
            .and_then(|device| book.device(device))
            .map(|device| device.reservoir),
        GuardOp::Fact(fact) => observed.facts.get(*fact),
        GuardOp::DeviceIs(id) => observed.device.map(|device| device == *id),
        GuardOp::GroupIs(id) => observed.group.map(|group| group == *id),
        GuardOp::HasCondition(id) => observed.conditions.map(|conditions| conditions.contains(id)),
        GuardOp::Not | GuardOp::And | GuardOp::Or => None,
    };
    known.into()
}

/// What was measured, as a bare number in the unit guards are compared in.
fn measured(measure: Measure, observed: &Observed<'_>) -> Option<f64> {
    match measure {
        Measure::Flow => observed.flow.map(|flow| flow.as_litres_per_minute()),
        Measure::Pressure => observed.pressure.map(|pressure| pressure.as_pascals()),
        Measure::Temperature => observed.temperature.map(|temperature| temperature.as_celsius()),
        Measure::Spo2 => observed.spo2.map(|spo2| spo2.as_percent()),
        Measure::MinutesLeft => observed.minutes_left.map(|time| time.as_minutes()),
        Measure::MinutesWanted => observed.minutes_wanted.map(|time| time.as_minutes()),
    }
}

fn operand_value(operand: Operand, book: &Rulebook, observed: &Observed<'_>) -> Option<f64> {
    let device_flow = || {
        let device = book.device(observed.device?)?;
        Some(match observed.group {
            Some(group) => device.flow_for(group),
            None => device.flow,
        })
    };
    match operand {
        Operand::Value(value) => number(&value),
        Operand::Measure(measure) => measured(measure, observed),
        Operand::Policy(id) => number(&book.policy(id)?.value),
        Operand::PolicyLow(id) => ends(&book.policy(id)?.value)?.low.value(),
        Operand::PolicyHigh(id) => ends(&book.policy(id)?.value)?.high.value(),
        Operand::TargetLow => observed.target?.low.value().map(|low| low.as_percent()),
        Operand::TargetHigh => observed.target?.high.value().map(|high| high.as_percent()),
        Operand::DeviceLeastFlow => device_flow()?.low.value().map(|low| low.as_litres_per_minute()),
        Operand::DeviceMostFlow => device_flow()?
            .high
            .value()
            .map(|high| high.as_litres_per_minute()),
    }
}

/// A quantity as a bare number, in the units of [`measured`].
fn number(value: &Value) -> Option<f64> {
    match value {
        Value::Flow(flow) => Some(flow.as_litres_per_minute()),
        Value::Pressure(pressure) => Some(pressure.as_pascals()),
        Value::Temperature(temperature) => Some(temperature.as_celsius()),
        Value::Percent(share) => Some(share.as_percent()),
        Value::Time(time) => Some(time.as_minutes()),
        _ => None,
    }
}

fn within(value: f64, range: &Value) -> Option<bool> {
    Some(ends(range)?.holds(value))
}

/// The ends of a range as bare numbers, in the units of [`measured`].
fn ends(range: &Value) -> Option<Range<f64>> {
    Some(match range {
        Value::FlowRange(range) => bare(range, |flow| flow.as_litres_per_minute()),
        Value::PressureRange(range) => bare(range, |pressure| pressure.as_pascals()),
        Value::TemperatureRange(range) => bare(range, |temperature| temperature.as_celsius()),
        Value::PercentRange(range) => bare(range, |share| share.as_percent()),
        Value::TimeRange(range) => bare(range, |time| time.as_minutes()),
        _ => return None,
    })
}

fn bare<Q: Copy>(range: &Range<Q>, number: impl Fn(Q) -> f64) -> Range<f64> {
    Range {
        low: limit(range.low, &number),
        high: limit(range.high, &number),
    }
}

fn limit<Q: Copy>(limit: Limit<Q>, number: impl Fn(Q) -> f64) -> Limit<f64> {
    match limit {
        Limit::None => Limit::None,
        Limit::Included(value) => Limit::Included(number(value)),
        Limit::Excluded(value) => Limit::Excluded(number(value)),
    }
}

fn compare(left: f64, comparison: Comparison, right: f64) -> bool {
    // 29 psi and 2 bar-turned-psi should be equal when only rounding keeps them apart.
    let close = (left - right).abs() <= 1e-9 * left.abs().max(right.abs());
    match comparison {
        Comparison::Equal => close,
        Comparison::NotEqual => !close,
        Comparison::Less => left < right && !close,
        Comparison::AtMost => left <= right || close,
        Comparison::Greater => left > right && !close,
        Comparison::AtLeast => left >= right || close,
    }
}
