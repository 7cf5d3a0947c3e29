//! What a case expects, and how it compares with what came out.

use std::collections::BTreeSet;

use super::super::{
    diagnostic::Diagnostics,
    fields,
    resolve::Raw,
    source::Span,
    suggest::{instead, listed, nearest},
    yaml::{Node, Value},
};
use crate::book::{Kind, Rulebook};

/// The words that expect nothing to be found.
pub const NO_FINDING: &str = "no finding";

/// Whether a case expects nothing at all.
pub fn is_no_finding(node: &Node) -> bool {
    matches!(&node.value, Value::Text { text, .. } if text == NO_FINDING)
}

/// Reports an expectation that expects nothing: such a case could not fail.
pub fn something(node: &Node, found: &mut Diagnostics) {
    if matches!(&node.value, Value::Mapping(entries) if entries.is_empty()) {
        found
            .error(
                "case-expects-nothing",
                node.span,
                "expected something that could fail, found nothing",
            )
            .hint("write `no finding`, or what should come out");
    }
}

/// A finding as a case names it: `stop device nasal-cannula`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Named {
    /// `stop`, `warn` or `note`.
    pub level: String,
    /// The rule's kind.
    pub kind: Kind,
    /// The rule's id.
    pub id: String,
}

impl core::fmt::Display for Named {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{} {} {}", self.level, self.kind, self.id)
    }
}

/// Where one of a text's words stands, counted from 0: what a hint says to write takes the place of that word alone.
pub fn place_of_word(node: &Node, count: usize) -> Span {
    let Value::Text { text, .. } = &node.value else {
        return node.span;
    };
    let mut end = 0;
    for (number, word) in text.split_whitespace().enumerate() {
        let start = text
            .get(end..)
            .and_then(|rest| rest.find(word))
            .map_or(end, |at| end + at);
        end = start + word.len();
        if number == count {
            return fields::place_in(node, &(start..end));
        }
    }
    node.span
}

/// Reads a finding's name; a rule that isn't in the book is an error.
pub fn named(node: &Node, book: &Rulebook, found: &mut Diagnostics) -> Option<Named> {
    let text = fields::plain(node, found)?;
    let words: Vec<&str> = text.split_whitespace().collect();
    let [level, kind, id] = words.as_slice() else {
        found
            .error(
                "not-a-finding",
                node.span,
                format!("expected a level, a kind and an id, found `{text}`"),
            )
            .hint("write for example `stop device nasal-cannula`");
        return None;
    };
    if !["stop", "warn", "note"].contains(level) {
        found
            .error(
                "not-a-finding",
                place_of_word(node, 0),
                format!("expected the level `stop`, `warn` or `note`, found `{level}`"),
            )
            .hint("write `stop`, `warn` or `note`");
        return None;
    }
    let kind = rule_kind(kind, place_of_word(node, 1), found)?;
    known(kind, id, place_of_word(node, 2), book, found)?;
    Some(Named {
        level: (*level).to_owned(),
        kind,
        id: (*id).to_owned(),
    })
}

/// A kind by its word.
pub fn rule_kind(word: &str, at: Span, found: &mut Diagnostics) -> Option<Kind> {
    let kind = Kind::ALL
        .into_iter()
        .find(|kind| kind.word() == word && *kind != Kind::Case);
    if kind.is_none() {
        let error = found.error(
            "unknown-kind",
            at,
            format!("expected a kind of rule, found `{word}`"),
        );
        match nearest(word, Kind::ALL.map(Kind::word)) {
            Some(near) => error.hint(format!("did you mean `{near}`?")),
            None => error.hint(format!(
                "the kinds are {}",
                listed(Kind::ALL.map(Kind::word), "and")
            )),
        };
    }
    kind
}

/// Whether the book has a rule; reports one it hasn't.
pub fn known(kind: Kind, id: &str, at: Span, book: &Rulebook, found: &mut Diagnostics) -> Option<()> {
    let ids: Vec<&str> = ids(kind, book);
    if ids.contains(&id) {
        return Some(());
    }
    found
        .error(
            "unknown-name",
            at,
            format!("expected the id of a {kind}, found `{id}`"),
        )
        .hint(instead(id, ids, "the book defines"));
    None
}

fn ids(kind: Kind, book: &Rulebook) -> Vec<&str> {
    match kind {
        Kind::Agency => vec![&*book.agency.rule.id],
        Kind::Group => book.groups.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Device => book.devices.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Cylinder => book.cylinders.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Connection => book.connections.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Policy => book.policies.all.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Target => book.targets.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Procedure => book.procedures.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Hazard => book.hazards.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Card => book.cards.iter().map(|rule| &*rule.rule.id).collect(),
        Kind::Case => Vec::new(),
    }
}

/// Compares two sets of findings; a difference is an error that points at the rules it is about.
pub fn compare(
    at: Span,
    expected: &BTreeSet<Named>,
    actual: &BTreeSet<Named>,
    raws: &[Raw],
    found: &mut Diagnostics,
) {
    if expected == actual {
        return;
    }
    let list = |set: &BTreeSet<Named>| {
        if set.is_empty() {
            NO_FINDING.to_owned()
        } else {
            listed_all(set.iter().map(ToString::to_string))
        }
    };
    let missing: Vec<&Named> = expected.difference(actual).collect();
    let extra: Vec<&Named> = actual.difference(expected).collect();
    let error = found.error(
        "case-failed",
        at,
        format!(
            "this case fails: expected {}, found {}",
            list(expected),
            list(actual)
        ),
    );
    for (named, what) in missing
        .iter()
        .map(|named| (*named, "expected, and not found"))
        .chain(extra.iter().map(|named| (*named, "found, and not expected")))
    {
        if let Some(place) = place_of(named.kind, &named.id, raws) {
            error.label(place, format!("{named}: {what}"));
        }
    }
    let plain: Vec<String> = actual.iter().map(ToString::to_string).collect();
    error.hint(if plain.is_empty() {
        "correct the rule; or, where the new answer is right, move the case to just beyond the new limit, or write `no finding` in it".to_owned()
    } else {
        format!(
            "correct the rule; or, where the new answer is right, write in the case `findings: [{}]`",
            plain.join(", ")
        )
    });
}

fn listed_all(items: impl Iterator<Item = String>) -> String {
    items
        .map(|item| format!("`{item}`"))
        .collect::<Vec<_>>()
        .join(", ")
}

/// Where a rule's id stands.
pub fn place_of(kind: Kind, id: &str, raws: &[Raw]) -> Option<Span> {
    let raw = raw_of(kind, id, raws)?;
    match &raw.node.value {
        Value::Mapping(entries) => entries
            .iter()
            .find(|entry| entry.key == "id")
            .map(|entry| entry.value.span)
            .or(Some(raw.node.span)),
        _ => Some(raw.node.span),
    }
}

/// A rule as it stands in its block.
pub fn raw_of<'a>(kind: Kind, id: &str, raws: &'a [Raw]) -> Option<&'a Raw> {
    raws.iter().find(|raw| {
        raw.kind == kind
            && (kind == Kind::Agency
                || matches!(&raw.node.value, Value::Mapping(entries)
                    if entries.iter().any(|entry| entry.key == "id"
                        && matches!(&entry.value.value, Value::Text { text, .. } if text == id))))
    })
}
