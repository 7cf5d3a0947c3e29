//! Walks a guard's operations.

use super::{
    Observed, Truth,
    compare::{Comparable, compare, ends, in_range, number},
};
use crate::book::{Fact, Guard, GuardOp, MAX_GUARD_DEPTH, Measure, Operand, Rulebook};
use crate::quantity::{Flow, Percent, Pressure, Temperature, Time};

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
    match op {
        GuardOp::Compare(measure, comparison, operand) => {
            let left = measured(*measure, observed);
            let against = |right| compare(left, *comparison, right);
            match operand {
                Operand::DeviceLeastFlow => {
                    observed.device_flow(book, |limits| against(limits.low.value().map(Flow::number)))
                }
                Operand::DeviceMostFlow => {
                    observed.device_flow(book, |limits| against(limits.high.value().map(Flow::number)))
                }
                operand => against(operand_value(*operand, book, observed)),
            }
        }
        GuardOp::Within(measure, range) => in_range(measured(*measure, observed), range),
        GuardOp::Fact(Fact::DeviceHasReservoir) => observed.device_has_reservoir(book),
        GuardOp::Fact(fact) => observed.fact(*fact),
        GuardOp::DeviceIs(id) => observed.device_is(*id),
        GuardOp::GroupIs(id) => observed.group_is(*id),
        GuardOp::HasCondition(id) => observed.has_condition(*id),
        GuardOp::Not | GuardOp::And | GuardOp::Or => Truth::Unknown,
    }
}

/// What was measured, as a bare number in the unit guards are compared in.
fn measured(measure: Measure, observed: &Observed<'_>) -> Option<f64> {
    match measure {
        Measure::Flow => observed.flow.map(Flow::number),
        Measure::Pressure => observed.pressure.map(Pressure::number),
        Measure::Temperature => observed.temperature.map(Temperature::number),
        Measure::Spo2 => observed.saturation().map(Percent::number),
        Measure::MinutesLeft => observed.minutes_left.map(Time::number),
        Measure::MinutesWanted => observed.minutes_wanted.map(Time::number),
    }
}

fn operand_value(operand: Operand, book: &Rulebook, observed: &Observed<'_>) -> Option<f64> {
    match operand {
        Operand::Value(value) => number(&value),
        Operand::Measure(measure) => measured(measure, observed),
        Operand::Policy(id) => number(&book.policy(id)?.value),
        Operand::PolicyLow(id) => ends(&book.policy(id)?.value)?.0,
        Operand::PolicyHigh(id) => ends(&book.policy(id)?.value)?.1,
        Operand::TargetLow => observed.target_low().map(Percent::number),
        Operand::TargetHigh => observed.target_high().map(Percent::number),
        // Of several limits, not of one number.
        Operand::DeviceLeastFlow | Operand::DeviceMostFlow => None,
    }
}
