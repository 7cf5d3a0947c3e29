//! A case about a rule's figures: written down a second time, so that a slip of the pen in either is seen.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields},
        resolve::Raw,
        suggest::instead,
        written,
        yaml::{Node, Value},
    },
    expect,
};
use crate::book::{Kind, Rulebook};

/// Runs the case.
pub fn run(book: &Rulebook, fields: &Fields<'_>, raws: &[Raw], found: &mut Diagnostics) {
    let (Some(subject), Some(wanted)) = (fields.get("rule"), fields.get("expect")) else {
        return;
    };
    let Some(text) = fields::plain(subject, found) else {
        return;
    };
    let (kind, id) = text.split_once(' ').unwrap_or((text, "agency"));
    let Some(kind) = expect::rule_kind(kind, expect::place_of_word(subject, 0), found) else {
        return;
    };
    let id = id.trim();
    if kind != Kind::Agency
        && expect::known(kind, id, expect::place_of_word(subject, 1), book, found).is_none()
    {
        return;
    }
    let Some(raw) = expect::raw_of(kind, id, raws) else {
        return;
    };
    let Some(entries) = fields::pairs(wanted, found) else {
        return;
    };
    expect::something(wanted, found);
    let given = match &raw.node.value {
        Value::Mapping(keys) => keys.as_slice(),
        _ => &[],
    };
    for entry in entries {
        match given.iter().find(|key| key.key == entry.key) {
            None => {
                found
                    .error(
                        "unknown-key",
                        entry.key_span,
                        format!("expected a key of `{text}`, found `{}`", entry.key),
                    )
                    .label(raw.node.span, "the rule is here")
                    .hint(instead(
                        &entry.key,
                        given.iter().map(|key| &*key.key),
                        "the rule gives",
                    ));
            }
            Some(actual) => {
                if let Some((one, other)) = difference(&entry.value, &actual.value) {
                    found
                        .error(
                            "case-failed",
                            one.span,
                            format!("this case fails: expected {}, found {}", words(one), words(other)),
                        )
                        .label(other.span, "the rule says it here")
                        .hint("correct the rule, or, where the new figure is right, the case");
                }
            }
        }
    }
}

/// The first two values that differ.
fn difference<'a>(expected: &'a Node, actual: &'a Node) -> Option<(&'a Node, &'a Node)> {
    match (&expected.value, &actual.value) {
        (Value::Text { text: one, .. }, Value::Text { text: other, .. }) => {
            (!same_text(one, other)).then_some((expected, actual))
        }
        (Value::Mapping(wanted), Value::Mapping(keys)) => {
            if wanted.len() != keys.len() {
                return Some((expected, actual));
            }
            wanted.iter().zip(keys).find_map(|(one, other)| {
                if same_text(&one.key, &other.key) {
                    difference(&one.value, &other.value)
                } else {
                    Some((&one.value, &other.value))
                }
            })
        }
        (Value::List(wanted), Value::List(items)) => {
            if wanted.len() != items.len() {
                return Some((expected, actual));
            }
            wanted
                .iter()
                .zip(items)
                .find_map(|(one, other)| difference(one, other))
        }
        _ => Some((expected, actual)),
    }
}

/// The same words, or the same quantity in other words: `0.5 L/min` and `500 mL/min`.
fn same_text(one: &str, other: &str) -> bool {
    one == other || matches!((written::any(one), written::any(other)), (Ok(one), Ok(other)) if one == other)
}

fn words(node: &Node) -> String {
    match &node.value {
        Value::Text { text, .. } => format!("`{text}`"),
        Value::List(items) => format!("a list of {}", items.len()),
        Value::Mapping(entries) => format!("{} keys and values", entries.len()),
    }
}
