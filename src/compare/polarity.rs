//! What a number in a guard means: whether the hazard is there more often when it rises.

use super::change::{Direction, Sense};
use crate::book::{Comparison, Guard, GuardOp, Operand, PolicyId, Rulebook, Value};

/// One end of a policy, or its whole value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    /// A policy that is no range.
    Whole,
    /// The low end of a range.
    Low,
    /// The high end of a range.
    High,
}

/// A question of a guard, with the sense in which its number counts.
#[derive(Clone, Copy, Debug)]
struct Leaf {
    op: GuardOp,
    sense: Sense,
}

/// Every question of a guard, in its order, with what it means that its number rises.
fn leaves(guard: &Guard) -> Vec<Leaf> {
    let mut leaves: Vec<Leaf> = Vec::new();
    // For every value on the stack, where its leaves begin.
    let mut stack: Vec<usize> = Vec::new();
    for op in &guard.ops {
        match op {
            GuardOp::Not => {
                let from = stack.last().copied().unwrap_or(0);
                for leaf in leaves.iter_mut().skip(from) {
                    leaf.sense = leaf.sense.turned();
                }
            }
            GuardOp::And | GuardOp::Or => {
                stack.pop();
            }
            leaf => {
                stack.push(leaves.len());
                let sense = match leaf {
                    GuardOp::Compare(_, Comparison::Less | Comparison::AtMost, _) => Sense::MoreIsStricter,
                    GuardOp::Compare(_, Comparison::Greater | Comparison::AtLeast, _) => {
                        Sense::LessIsStricter
                    }
                    _ => Sense::Neither,
                };
                leaves.push(Leaf { op: *leaf, sense });
            }
        }
    }
    leaves
}

/// What it means that a policy rises, where all hazards of the book that ask for it agree.
pub(super) fn of_policy(book: &Rulebook, id: PolicyId, end: End) -> Sense {
    let mut agreed = None;
    for leaf in book.hazards.iter().flat_map(|hazard| leaves(&hazard.never)) {
        let GuardOp::Compare(_, _, operand) = leaf.op else {
            continue;
        };
        let asks = match operand {
            Operand::Policy(other) => other == id && end == End::Whole,
            Operand::PolicyLow(other) => other == id && end == End::Low,
            Operand::PolicyHigh(other) => other == id && end == End::High,
            _ => false,
        };
        if !asks {
            continue;
        }
        match agreed {
            None => agreed = Some(leaf.sense),
            Some(sense) if sense == leaf.sense => {}
            Some(_) => return Sense::Neither,
        }
    }
    agreed.unwrap_or(Sense::Neither)
}

/// Whether two guards of two books ask the same, and if not, whether the new one is stricter: told where they differ in
/// nothing but numbers.
pub(super) fn between(
    old: &Guard,
    old_book: &Rulebook,
    new: &Guard,
    new_book: &Rulebook,
) -> Option<Direction> {
    let same_shape = old.ops.len() == new.ops.len()
        && old
            .ops
            .iter()
            .zip(&new.ops)
            .all(|(one, other)| shape(one, old_book) == shape(other, new_book));
    if !same_shape {
        return Some(Direction::Other);
    }
    let mut direction = None;
    for (one, other) in leaves(old).iter().zip(leaves(new)) {
        if value(&one.op) == value(&other.op) {
            continue;
        }
        let this = match (number(&one.op), number(&other.op)) {
            (Some(one), Some(new)) => Direction::of(&one, &new, other.sense),
            _ => Direction::Other,
        };
        match direction {
            None => direction = Some(this),
            Some(so_far) if so_far == this => {}
            Some(_) => direction = Some(Direction::Other),
        }
    }
    direction
}

/// An operation without its numbers, with the names of its rules.
fn shape(op: &GuardOp, book: &Rulebook) -> String {
    let policy = |id: PolicyId| book.policy(id).map_or("", |policy| &*policy.rule.id);
    match op {
        GuardOp::Compare(measure, comparison, operand) => {
            let operand = match operand {
                Operand::Value(_) => "a value".to_owned(),
                Operand::Policy(id) => policy(*id).to_owned(),
                Operand::PolicyLow(id) => format!("{} low", policy(*id)),
                Operand::PolicyHigh(id) => format!("{} high", policy(*id)),
                other => format!("{other:?}"),
            };
            format!("{measure:?} {comparison:?} {operand}")
        }
        GuardOp::Within(measure, _) => format!("{measure:?} within"),
        GuardOp::DeviceIs(id) => format!("device {}", book.device(*id).map_or("", |device| &device.rule.id)),
        GuardOp::GroupIs(id) => format!("group {}", book.group(*id).map_or("", |group| &group.rule.id)),
        GuardOp::HasCondition(id) => format!(
            "condition {}",
            book.condition(*id).map_or("", |condition| &condition.id)
        ),
        other => format!("{other:?}"),
    }
}

fn value(op: &GuardOp) -> Option<Value> {
    match op {
        GuardOp::Compare(_, _, Operand::Value(value)) | GuardOp::Within(_, value) => Some(*value),
        _ => None,
    }
}

/// A value that is compared, as a number to set beside another of its kind.
fn number(op: &GuardOp) -> Option<f64> {
    let GuardOp::Compare(_, _, Operand::Value(value)) = op else {
        return None;
    };
    match value {
        Value::Flow(value) => Some(value.as_litres_per_minute()),
        Value::Pressure(value) => Some(value.as_pascals()),
        Value::Temperature(value) => Some(value.as_celsius()),
        Value::Percent(value) => Some(value.as_percent()),
        Value::Time(value) => Some(value.as_minutes()),
        _ => None,
    }
}
