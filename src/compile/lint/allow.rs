//! The key `allow`, which any rule may have: what a lint would say of the rule, and why it may stay so.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields,
        source::Span,
        suggest::nearest,
        yaml::{Node, Value},
    },
    LINTS,
};

/// The key.
pub const ALLOW: &str = "allow";

/// One lint that a rule allows.
#[derive(Clone, Debug)]
pub struct Allowed {
    /// The lint's name.
    pub lint: &'static str,
    /// Where its name stands.
    pub at: Span,
    /// Why it may stay so.
    pub reason: String,
}

/// Takes `allow` out of a rule's mapping, and reports lints that nobody knows and reasons left out.
pub fn take(node: &mut Node, found: &mut Diagnostics) -> Vec<Allowed> {
    let Value::Mapping(entries) = &mut node.value else {
        return Vec::new();
    };
    let Some(place) = entries.iter().position(|entry| entry.key == ALLOW) else {
        return Vec::new();
    };
    let entry = entries.remove(place);
    let Some(pairs) = fields::pairs(&entry.value, found) else {
        return Vec::new();
    };
    let mut allowed = Vec::new();
    for pair in pairs {
        let reason = fields::plain(&pair.value, found).map(str::to_owned);
        let known = LINTS.iter().find(|lint| lint.name == pair.key);
        if let (Some(lint), Some(reason)) = (known, &reason) {
            allowed.push(Allowed {
                lint: lint.name,
                at: pair.key_span,
                reason: reason.clone(),
            });
        }
        if known.is_none() {
            let error = found.error(
                "unknown-lint",
                pair.key_span,
                format!("expected the name of a lint, found `{}`", pair.key),
            );
            match nearest(&pair.key, LINTS.iter().map(|lint| lint.name)) {
                Some(near) => error.hint(format!("did you mean `{near}`?")),
                None => error.hint("write the name that stands in the brackets of the message"),
            };
        }
    }
    allowed
}
