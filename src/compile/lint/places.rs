//! Where the rules of a book stand, and the values of each.

use super::{
    super::{
        fields,
        source::{FileId, Span},
        yaml::{Entry, Node, Value},
    },
    Allowed,
};
use crate::book::{
    CardId, ConnectionId, CylinderId, DeviceId, GroupId, HazardId, Kind, PolicyId, ProcedureId, TargetId,
};

/// A rule as it stands in its block.
#[derive(Clone, Debug)]
pub struct Written {
    /// What kind of rule it is.
    pub kind: Kind,
    /// Its keys and values, without `allow`.
    pub node: Node,
    /// What it allows.
    pub allowed: Vec<Allowed>,
}

/// Names a rule of any kind by its place in its table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct RuleRef {
    /// The rule's kind.
    pub kind: Kind,
    /// Its place in the kind's table.
    pub index: usize,
}

impl RuleRef {
    /// The agency, which speaks for the book as a whole.
    pub const AGENCY: Self = Self {
        kind: Kind::Agency,
        index: 0,
    };
}

macro_rules! refs {
    ($($id:ident $kind:ident,)+) => {$(
        impl From<$id> for RuleRef {
            fn from(id: $id) -> Self {
                Self { kind: Kind::$kind, index: id.index() }
            }
        }
    )+};
}

refs! {
    GroupId Group,
    DeviceId Device,
    CylinderId Cylinder,
    ConnectionId Connection,
    PolicyId Policy,
    TargetId Target,
    ProcedureId Procedure,
    HazardId Hazard,
    CardId Card,
}

/// Every rule of the book by kind and place in its table.
#[derive(Clone, Debug, Default)]
pub struct Places {
    kinds: [Vec<Written>; Kind::ALL.len()],
    /// Every rule by the place where its mapping begins.
    order: Vec<(Span, RuleRef)>,
}

impl Places {
    /// From the rules in the order of the book.
    pub fn new(rules: impl Iterator<Item = Written>) -> Self {
        let mut places = Self::default();
        for written in rules {
            let kind = written.kind;
            let Some(table) = places.kinds.get_mut(kind as usize) else {
                continue;
            };
            let index = table.len();
            places.order.push((written.node.span, RuleRef { kind, index }));
            table.push(written);
        }
        places.order.sort_unstable();
        places
    }

    /// A rule as it is written.
    #[must_use]
    pub fn written(&self, rule: RuleRef) -> Option<&Written> {
        self.kinds.get(rule.kind as usize)?.get(rule.index)
    }

    /// Every rule, kind by kind.
    pub fn all(&self) -> impl Iterator<Item = (RuleRef, &Written)> {
        Kind::ALL.into_iter().flat_map(|kind| {
            let table = self.kinds.get(kind as usize);
            table
                .into_iter()
                .flatten()
                .enumerate()
                .map(move |(index, written)| (RuleRef { kind, index }, written))
        })
    }

    /// The rules that stand in a stretch of a chapter.
    pub fn within(&self, file: FileId, stretch: core::ops::Range<usize>) -> impl Iterator<Item = RuleRef> {
        let from = self
            .order
            .partition_point(|(span, _)| (span.file, span.start) < (file, stretch.start));
        self.order
            .iter()
            .skip(from)
            .take_while(move |(span, _)| span.file == file && span.start < stretch.end)
            .map(|(_, rule)| *rule)
    }

    /// Where a rule's name stands: its id, the agency's name.
    #[must_use]
    pub fn of(&self, rule: RuleRef) -> Span {
        let key = if rule.kind == Kind::Agency { "name" } else { "id" };
        self.value(rule, key)
    }

    /// A key's value.
    #[must_use]
    pub fn node(&self, rule: RuleRef, key: &str) -> Option<&Node> {
        Some(&entry(&self.written(rule)?.node, key)?.value)
    }

    /// Where a key's value stands; the whole rule when the key isn't there.
    #[must_use]
    pub fn value(&self, rule: RuleRef, key: &str) -> Span {
        match (self.node(rule, key), self.written(rule)) {
            (Some(node), _) => node.span,
            (None, Some(written)) => written.node.span,
            // Only a rule of another book has no place.
            (None, None) => self.order.first().map_or(
                Span {
                    file: FileId(0),
                    start: 0,
                    end: 0,
                },
                |(span, _)| *span,
            ),
        }
    }

    /// Where an item of a key's list stands.
    #[must_use]
    pub fn item(&self, rule: RuleRef, key: &str, index: usize) -> Span {
        self.node(rule, key)
            .and_then(|node| fields::items(node).get(index))
            .map_or_else(|| self.value(rule, key), |item| item.span)
    }

    /// Where the value of an entry of a key's mapping stands.
    #[must_use]
    pub fn entry(&self, rule: RuleRef, key: &str, index: usize) -> Span {
        let entry = self.node(rule, key).and_then(|node| match &node.value {
            Value::Mapping(entries) => entries.get(index),
            _ => None,
        });
        entry.map_or_else(|| self.value(rule, key), |entry| entry.value.span)
    }

    /// Where a key's value for one group stands in `flow-for` or `usual-for`; the general key's otherwise.
    #[must_use]
    pub fn for_group(&self, rule: RuleRef, keys: (&str, &str), group: &str) -> Span {
        let own = self.node(rule, keys.0).and_then(|node| entry(node, group));
        own.map_or_else(|| self.value(rule, keys.1), |entry| entry.value.span)
    }
}

fn entry<'a>(node: &'a Node, key: &str) -> Option<&'a Entry> {
    match &node.value {
        Value::Mapping(entries) => entries.iter().find(|entry| entry.key == key),
        _ => None,
    }
}

/// Visits every text of a rule that people read, with the key it belongs to.
pub fn texts<'a>(written: &'a Written, visit: &mut impl FnMut(&'static str, &'a Node)) {
    walk(&written.node, None, written.kind, visit);
}

/// The keys whose texts people read.
const SENTENCES: [&str; 22] = [
    "name",
    "also",
    "series",
    "gas",
    "thread",
    "number",
    "note",
    "notes",
    "title",
    "purpose",
    "who",
    "not-when",
    "say",
    "do",
    "why",
    "chosen-when",
    "unsafe-when",
    "too-low",
    "too-high",
    "step-up",
    "step-down",
    "condition-name",
];

fn walk<'a>(
    node: &'a Node,
    key: Option<&'static str>,
    kind: Kind,
    visit: &mut impl FnMut(&'static str, &'a Node),
) {
    match &node.value {
        Value::Text { .. } => {
            if let Some(key) = key {
                visit(key, node);
            }
        }
        Value::List(items) => {
            for item in items {
                walk(item, key, kind, visit);
            }
        }
        Value::Mapping(entries) => {
            for entry in entries {
                let key = match kind {
                    // Names of an agency, a place and a person.
                    Kind::Agency => (entry.key == "disclaimers").then_some("disclaimers"),
                    _ => SENTENCES.into_iter().find(|key| *key == entry.key),
                };
                walk(&entry.value, key, kind, visit);
            }
        }
    }
}
