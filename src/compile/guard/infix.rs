//! From postfix operations to an expression with its operators between their operands.

use crate::book::GuardOp;

/// How the operators are written, with the spaces round them.
pub struct Signs {
    pub not: &'static str,
    pub and: &'static str,
    pub or: &'static str,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Joined {
    /// A single condition, or one turned round.
    Single,
    By(GuardSign),
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum GuardSign {
    And,
    Or,
}

/// Writes operations as an expression, with a bracket wherever it is needed to read the same operations back, and
/// where `and` meets `or`. None for operations that aren't well formed, or a leaf that can't be written.
pub fn infix(
    ops: &[GuardOp],
    signs: &Signs,
    mut leaf: impl FnMut(&GuardOp) -> Option<String>,
) -> Option<String> {
    let mut stack: Vec<(String, Joined)> = Vec::new();
    for op in ops {
        let sign = match op {
            GuardOp::Not => {
                let (text, joined) = stack.pop()?;
                let text = bracketed(text, joined != Joined::Single);
                stack.push((format!("{}{text}", signs.not), Joined::Single));
                continue;
            }
            GuardOp::And => GuardSign::And,
            GuardOp::Or => GuardSign::Or,
            single => {
                stack.push((leaf(single)?, Joined::Single));
                continue;
            }
        };
        let (right, right_joined) = stack.pop()?;
        let (left, left_joined) = stack.pop()?;
        // A chain of one operator is read from the left.
        let mut text = bracketed(left, ![Joined::Single, Joined::By(sign)].contains(&left_joined));
        text.push_str(match sign {
            GuardSign::And => signs.and,
            GuardSign::Or => signs.or,
        });
        text.push_str(&bracketed(right, right_joined != Joined::Single));
        stack.push((text, Joined::By(sign)));
    }
    let (text, _) = stack.pop()?;
    stack.is_empty().then_some(text)
}

fn bracketed(text: String, needed: bool) -> String {
    if needed { format!("({text})") } else { text }
}
