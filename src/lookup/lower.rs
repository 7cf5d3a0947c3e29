//! From a guard's operations to lines, each of which needs all its answers.
//!
//! Every guard can be written with "and" and "not" alone, and in Kleene's logic too that changes no answer: `a or b` is
//! `not (not a and not b)`, and `not not a` is `a`. What stands under a "not" becomes a line of its own.

use alloc::{vec, vec::Vec};

use crate::book::{
    Comparison, ConditionId, DeviceId, Fact, GroupId, GuardOp, Measure, Operand, PolicyId, Rulebook, Value,
};
use crate::guard::{MAX_CONDITIONS, compare};

/// A question with one answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Question {
    /// Something measured against a quantity that the book names.
    Level(Measure, Comparison, f64),
    /// Something measured in a range that the book names.
    Within(Measure, Value),
    /// Two numbers that are observed.
    Pair(Observation, Comparison, Observation),
    /// Something measured against the least or the greatest flow of the device.
    DeviceFlow(Measure, Comparison, End),
    /// A yes-or-no observation.
    Fact(Fact),
    /// Which device.
    Device(DeviceId),
    /// Whether the device has a reservoir.
    Reservoir,
    /// Which group.
    Group(GroupId),
    /// A condition of the patient.
    Condition(ConditionId),
    /// Nothing that could be answered; only a table written by hand holds such a thing.
    Nothing,
}

/// A number that is observed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Observation {
    /// What is measured.
    Measured(Measure),
    /// The low end of the saturation aimed at.
    TargetLow,
    /// The high end of the saturation aimed at.
    TargetHigh,
}

/// An end of a device's flow limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The least flow.
    Least,
    /// The greatest flow.
    Most,
}

/// What must all be so.
#[derive(Clone, Debug, Default)]
pub(super) struct Line {
    /// Questions, and whether the answer must be yes.
    pub(super) answers: Vec<(Question, bool)>,
    /// Lines before this one that must not be so.
    pub(super) not: Vec<usize>,
}

/// A part of a guard while its operations are walked: a line, or the contrary of one.
struct Part {
    line: Line,
    contrary: bool,
}

impl Part {
    fn not(mut self) -> Self {
        if let ([(_, yes)], []) = (self.line.answers.as_mut_slice(), self.line.not.as_slice()) {
            *yes = !*yes;
        } else {
            self.contrary = !self.contrary;
        }
        self
    }
}

/// The lines of a guard; the last is the guard itself. `None` when it isn't well formed.
pub(super) fn lines(ops: &[GuardOp], book: &Rulebook) -> Option<Vec<Line>> {
    let mut lines = Vec::new();
    let mut stack: Vec<Part> = Vec::new();
    for op in ops {
        let part = match op {
            GuardOp::Not => stack.pop()?.not(),
            GuardOp::And => {
                let (right, left) = (stack.pop()?, stack.pop()?);
                both(left, right, &mut lines)
            }
            GuardOp::Or => {
                let (right, left) = (stack.pop()?, stack.pop()?);
                both(left.not(), right.not(), &mut lines).not()
            }
            single => Part {
                line: Line {
                    answers: vec![question(single, book)],
                    not: Vec::new(),
                },
                contrary: false,
            },
        };
        stack.push(part);
        if stack.len() > crate::book::MAX_GUARD_DEPTH {
            return None;
        }
    }
    let whole = upright(stack.pop()?, &mut lines);
    lines.push(whole);
    stack.is_empty().then_some(lines)
}

fn both(left: Part, right: Part, lines: &mut Vec<Line>) -> Part {
    let (mut line, right) = (upright(left, lines), upright(right, lines));
    line.answers.extend(right.answers);
    line.not.extend(right.not);
    Part {
        line,
        contrary: false,
    }
}

/// A line that says what the part says.
fn upright(part: Part, lines: &mut Vec<Line>) -> Line {
    if !part.contrary {
        return part.line;
    }
    // The contrary of a contrary.
    if part.line.answers.is_empty()
        && part.line.not.len() == 1
        && part.line.not.last() == lines.len().checked_sub(1).as_ref()
    {
        return lines.pop().unwrap_or_default();
    }
    lines.push(part.line);
    Line {
        answers: Vec::new(),
        not: vec![lines.len() - 1],
    }
}

/// The question of an operation that stands for one answer, and the answer it needs.
fn question(op: &GuardOp, book: &Rulebook) -> (Question, bool) {
    let needed = match op {
        GuardOp::Compare(measure, comparison, operand) => {
            return compared(*measure, *comparison, *operand, book).unwrap_or((Question::Nothing, true));
        }
        GuardOp::Within(measure, range) => Question::Within(*measure, *range),
        GuardOp::Fact(Fact::DeviceHasReservoir) => Question::Reservoir,
        GuardOp::Fact(fact) => Question::Fact(*fact),
        GuardOp::DeviceIs(id) => Question::Device(*id),
        GuardOp::GroupIs(id) => Question::Group(*id),
        GuardOp::HasCondition(id) if id.index() < MAX_CONDITIONS => Question::Condition(*id),
        GuardOp::HasCondition(_) | GuardOp::Not | GuardOp::And | GuardOp::Or => Question::Nothing,
    };
    (needed, true)
}

/// A comparison by three signs: the others are their contraries.
fn compared(
    measure: Measure,
    comparison: Comparison,
    operand: Operand,
    book: &Rulebook,
) -> Option<(Question, bool)> {
    let (comparison, yes) = match comparison {
        Comparison::Less | Comparison::Greater | Comparison::Equal => (comparison, true),
        Comparison::AtLeast => (Comparison::Less, false),
        Comparison::AtMost => (Comparison::Greater, false),
        Comparison::NotEqual => (Comparison::Equal, false),
    };
    let level = |number: Option<f64>| {
        let number = number.filter(|number| number.is_finite())?;
        Some(Question::Level(measure, comparison, number))
    };
    let pair = |other| Some(Question::Pair(Observation::Measured(measure), comparison, other));
    let policy = |id: PolicyId| Some(&book.policy(id)?.value);
    let question = match operand {
        Operand::Value(value) => level(compare::number(&value)),
        Operand::Policy(id) => level(compare::number(policy(id)?)),
        Operand::PolicyLow(id) => level(compare::ends(policy(id)?)?.0),
        Operand::PolicyHigh(id) => level(compare::ends(policy(id)?)?.1),
        Operand::Measure(other) => pair(Observation::Measured(other)),
        Operand::TargetLow => pair(Observation::TargetLow),
        Operand::TargetHigh => pair(Observation::TargetHigh),
        Operand::DeviceLeastFlow => Some(Question::DeviceFlow(measure, comparison, End::Least)),
        Operand::DeviceMostFlow => Some(Question::DeviceFlow(measure, comparison, End::Most)),
    };
    Some((question?, yes))
}
