//! From the blocks of all chapters to the typed rulebook: names first, then policies, then everything else.
//!
//! A file for each kind of rule. Every rule is read to its end whatever is wrong with it or with others, so that an
//! editor sees all mistakes at once.

mod agency;
mod card;
mod connection;
mod cylinder;
mod device;
mod group;
mod hazard;
mod policy;
mod procedure;
mod proved;
mod target;
mod together;

use super::{
    chapter::Block,
    diagnostic::Diagnostics,
    digest::Digest,
    fields::{self, Fields},
    lint::{self, Allowed, Places, Written},
    names::Names,
    quoted::Quotable,
    source::{Sources, Span},
    undecided,
    yaml::{self, Entry, Node, Value},
};
use crate::book::{Condition, Kind, List, Place, Policy, Rule, Rulebook, Text};
use crate::guard::HazardSet;

/// The most rules a book may hold.
pub const MAX_RULES: usize = 20_000;

/// A rule as it stands in its block.
#[derive(Clone, Debug)]
pub(in crate::compile) struct Raw {
    /// What kind of rule it is.
    pub(in crate::compile) kind: Kind,
    /// Its keys and values.
    pub(in crate::compile) node: Node,
    pub(in crate::compile) place: Place,
    rationale: Text,
    allowed: Vec<Allowed>,
}

impl Raw {
    /// What lints need of it.
    fn written(self) -> Written {
        Written {
            kind: self.kind,
            node: self.node,
            allowed: self.allowed,
        }
    }
}

/// What rules are read against.
struct Scope<'a> {
    sources: &'a Sources,
    names: Names,
}

/// Builds the rulebook from the rules of all blocks; `None` when there were errors, which have then been reported.
pub(in crate::compile) fn build(
    raws: &[Raw],
    sources: &Sources,
    digest: &Digest,
    found: &mut Diagnostics,
) -> Option<Rulebook> {
    let mut scope = Scope {
        sources,
        names: Names::default(),
    };
    found.units = agency::units(raws);
    collect_names(raws, &mut scope.names, found);
    let conditions = target::conditions(raws, &mut scope.names, found);

    let agency = agency::the_one(raws, found);
    let groups = every(raws, Kind::Group, |raw| group::read(raw, found));
    let connections = every(raws, Kind::Connection, |raw| connection::read(raw, found));
    let policies = every(raws, Kind::Policy, |raw| {
        let policy = policy::read(raw, found);
        if policy.is_none() {
            found.leave_unread_id(id_of(raw).unwrap_or(""));
        }
        policy
    });
    // One unreadable policy must not hide the mistakes in all guards.
    let readable: Vec<Policy> = match &policies {
        Some(policies) => policies.clone(),
        None => raws
            .iter()
            .filter(|raw| raw.kind == Kind::Policy)
            .filter_map(|raw| policy::read(raw, &mut Diagnostics::default()))
            .collect(),
    };
    let devices = every(raws, Kind::Device, |raw| device::read(raw, &scope, found));
    let cylinders = every(raws, Kind::Cylinder, |raw| {
        cylinder::read(raw, &scope, connections.as_deref(), found)
    });
    let quotable = match (&policies, &devices) {
        (Some(policies), Some(devices)) => Some(Quotable {
            policies,
            devices,
            target: None,
        }),
        _ => None,
    };
    let quotable = quotable.as_ref();
    let targets = every(raws, Kind::Target, |raw| {
        target::read(raw, &scope, quotable, found)
    });
    let procedures = every(raws, Kind::Procedure, |raw| {
        procedure::read(raw, &scope, quotable, found)
    });
    let hazards = every(raws, Kind::Hazard, |raw| {
        hazard::read(raw, &scope, &readable, quotable, found)
    });
    let cards = every(raws, Kind::Card, |raw| card::read(raw, &scope, quotable, found));
    let policies = policy::gather(policies, raws, scope.names.policies.has_unread(), found);
    together::check(
        groups.as_deref(),
        connections.as_deref(),
        targets.as_deref(),
        raws,
        found,
    );
    report_missing_kinds(raws, found);

    if found.has_errors() {
        return None;
    }
    Some(Rulebook {
        agency: agency?,
        digest: Text::from(digest.full()),
        short_digest: Text::from(digest.short()),
        groups: List::from(groups?),
        devices: List::from(devices?),
        cylinders: List::from(cylinders?),
        connections: List::from(connections?),
        policies: policies?,
        conditions: List::<Condition>::from(conditions),
        targets: List::from(targets?),
        procedures: List::from(procedures?),
        hazards: List::from(hazards?),
        cards: List::from(cards?),
    })
}

/// The places of the rules a book was built from, for lints.
pub(in crate::compile) fn places(raws: Vec<Raw>) -> Places {
    Places::new(raws.into_iter().map(Raw::written))
}

/// Proves the order of steps, at the places of the rules a book was built from.
pub(in crate::compile) fn prove(book: &Rulebook, raws: &[Raw], found: &mut Diagnostics) {
    proved::report(book, raws, found);
}

/// Reads every rule of a kind; `None` when one of them is wrong.
fn every<T>(raws: &[Raw], kind: Kind, mut read: impl FnMut(&Raw) -> Option<T>) -> Option<Vec<T>> {
    let of_kind = raws.iter().filter(|raw| raw.kind == kind);
    let read: Vec<Option<T>> = of_kind.map(&mut read).collect();
    read.into_iter().collect()
}

/// The id as it is written, for a rule that could not be read.
pub(in crate::compile) fn id_of(raw: &Raw) -> Option<&str> {
    let Value::Mapping(entries) = &raw.node.value else {
        return None;
    };
    match &entries.iter().find(|entry| entry.key == "id")?.value.value {
        Value::Text { text, .. } => Some(text),
        _ => None,
    }
}

/// Reads the YAML of every block.
pub(in crate::compile) fn raw_rules(
    blocks: &[Block],
    sources: &Sources,
    found: &mut Diagnostics,
) -> Vec<Raw> {
    let mut raws = Vec::new();
    for block in blocks {
        let Some(node) = yaml::read(block, sources, found) else {
            found.leave_unread_kind(block.kind);
            continue;
        };
        undecided::report(&node, found);
        if block.rationale.is_empty() {
            let fence = sources.span(block.file, block.fence.clone());
            found
                .note(
                    "no-rationale",
                    fence,
                    format!("this {} has no reason above it", block.kind),
                )
                .hint("write a sentence before the block: findings quote it");
        }
        let file = sources.get(block.file).map_or("", |file| &file.name);
        let mut raw = |mut node: Node| Raw {
            kind: block.kind,
            allowed: lint::take(&mut node, found),
            place: Place {
                chapter: Text::from(block.chapter.clone()),
                heading: Text::from(block.heading.clone()),
                file: Text::from(file.to_owned()),
                line: line_of(sources, node.span),
            },
            rationale: Text::from(block.rationale.clone()),
            node,
        };
        match node.value {
            Value::List(items) if !items.is_empty() => raws.extend(items.into_iter().map(raw)),
            _ => raws.push(raw(node)),
        }
        if raws.len() > MAX_RULES {
            let fence = sources.span(block.file, block.fence.clone());
            found
                .error(
                    "too-many-rules",
                    fence,
                    format!("expected at most {MAX_RULES} rules in a book, found more"),
                )
                .hint("read a folder that holds one rulebook");
            break;
        }
    }
    raws
}

fn line_of(sources: &Sources, span: Span) -> u32 {
    u32::try_from(sources.line_column(span).line).unwrap_or(u32::MAX)
}

/// Gives every rule its place in its kind's table.
///
/// After a missing or doubled id the places no longer match the rules; no rulebook is built then, and until the
/// errors are gone rules look each other up by id only.
fn collect_names(raws: &[Raw], names: &mut Names, found: &mut Diagnostics) {
    if let Some(raw) = raws
        .iter()
        .filter(|raw| raw.kind == Kind::Hazard)
        .nth(HazardSet::CAPACITY)
    {
        let message = format!(
            "expected at most {} hazards in a book, found more",
            HazardSet::CAPACITY
        );
        found
            .error("too-many-hazards", raw.node.span, message)
            .hint("join hazards that say and ask the same with `or`, or take out those that repeat another");
    }
    for raw in raws {
        let Some(table) = names.table(raw.kind) else {
            continue;
        };
        let entry = match &raw.node.value {
            Value::Mapping(entries) => entries.iter().find(|entry| entry.key == "id"),
            _ => None,
        };
        // A rule without an id is told where the rule is read.
        let Some(Entry { value: node, .. }) = entry else {
            table.leave_unread();
            continue;
        };
        match fields::id(node, found) {
            Some(id) => {
                if raw.kind == Kind::Policy {
                    super::guard::refuse_reserved(id, node.span, found);
                }
                table.add(id, node.span, found);
            }
            None if meant_id(node).is_none() => table.leave_unread(),
            None => {}
        }
    }
}

/// What an id that can't be read is most likely meant to be.
fn meant_id(node: &Node) -> Option<String> {
    match &node.value {
        Value::Text { text, .. } if !undecided::is_mark(node) => fields::id_like(text),
        _ => None,
    }
}

/// The part common to all rules. Mistakes in the id were reported when names were collected.
fn rule(raw: &Raw, fields: &Fields<'_>, name_key: &str, found: &mut Diagnostics) -> Option<Rule> {
    let name = fields.read(name_key, found, fields::text);
    let id = fields
        .get("id")
        .and_then(|node| fields::id(node, &mut Diagnostics::default()))
        .map(|id| Text::from(id.to_owned()));
    Some(Rule {
        id: id?,
        name: name?,
        place: raw.place.clone(),
        rationale: raw.rationale.clone(),
    })
}

/// A book without any device, say, would pass every check without checking anything.
fn report_missing_kinds(raws: &[Raw], found: &mut Diagnostics) {
    for kind in Kind::ALL {
        // The agency and the policies have messages of their own.
        if matches!(kind, Kind::Agency | Kind::Policy | Kind::Case)
            || found.is_unread_kind(kind)
            || raws.iter().any(|raw| raw.kind == kind)
        {
            continue;
        }
        found
            .book_error(
                "missing-kind",
                format!("expected at least one {kind}, found none"),
            )
            .hint(format!("add a block that begins with ```yaml {kind}"));
    }
}
