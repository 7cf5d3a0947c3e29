//! Values that nobody has decided yet: `undecided`, or `undecided (what to write)`.
//!
//! A fresh rulebook holds them where a medical director must choose. Each is an error with its place until it is filled, and
//! nothing else is said of it: what depends on it is looked at when it is there.

use super::{
    diagnostic::{self, Diagnostics},
    yaml::{Node, Value},
};

/// The mark.
pub const UNDECIDED: &str = "undecided";

/// What is to be written in place of a mark; empty where the mark doesn't say. `None` for every other text.
///
/// ```
/// use oxyfolio::compile::undecided::what_to_write;
///
/// assert_eq!(what_to_write("undecided (the least flow, as 1 L/min)"), Some("the least flow, as 1 L/min"));
/// assert_eq!(what_to_write("undecided"), Some(""));
/// assert_eq!(what_to_write("1 L/min"), None);
/// assert_eq!(what_to_write("undecided patients wait"), None);
/// ```
#[must_use]
pub fn what_to_write(text: &str) -> Option<&str> {
    let rest = text.trim().strip_prefix(UNDECIDED)?.trim_start();
    if rest.is_empty() {
        return Some("");
    }
    let inside = rest.strip_prefix('(')?.strip_suffix(')')?;
    Some(inside.trim())
}

/// Whether a value is a mark.
pub(super) fn is_mark(node: &Node) -> bool {
    matches!(&node.value, Value::Text { text, .. } if what_to_write(text).is_some())
}

/// Reports every mark in a rule.
pub(super) fn report(node: &Node, found: &mut Diagnostics) {
    match &node.value {
        Value::Text { text, .. } => {
            let Some(what) = what_to_write(text) else {
                return;
            };
            let error = found.error(diagnostic::UNDECIDED, node.span, "this value is not decided yet");
            if what.is_empty() {
                error.hint("write the value in place of `undecided`");
            } else {
                error.hint(format!("write in its place: {what}"));
            }
        }
        Value::List(items) => items.iter().for_each(|item| report(item, found)),
        Value::Mapping(entries) => entries.iter().for_each(|entry| report(&entry.value, found)),
    }
}
