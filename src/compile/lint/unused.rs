//! Rules that nothing uses.

use std::collections::{BTreeSet, HashMap, HashSet};

use super::{
    super::yaml::{Node, Value},
    Lint, Room,
    places::RuleRef,
};
use crate::book::{ConnectionId, DeviceFlow, DeviceId, GuardOp, Layout, Operand, PolicyId, Rule, Target};

/// A device that no crew is ever sent to.
pub const DEVICE_NOT_PLACED: Lint = Lint::note("device-not-placed");
/// A policy that neither the checker nor a rule nor the prose speaks of.
pub const POLICY_NEVER_READ: Lint = Lint::note("policy-never-read");
/// A connection for mating that no cylinder has and no prose names.
pub const CONNECTION_NEVER_USED: Lint = Lint::note("connection-never-used");

/// The policies the checker reads by name.
const NEEDED: [&str; 9] = [
    "residual-pressure",
    "change-over-pressure",
    "in-service-minimum",
    "planning-margin",
    "fill-limit",
    "requalification-interval",
    "star-requalification-interval",
    "storage-temperature",
    "use-temperature",
];

pub fn look(room: &mut Room<'_>) {
    let quoted = quoted(room);
    devices(room, &quoted);
    policies(room, &quoted);
    connections(room);
}

/// The names in braces of all texts, and of each the part before the point.
fn quoted(room: &Room<'_>) -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for (_, written) in room.places.all() {
        collect(&written.node, &mut names);
    }
    names
}

fn collect(node: &Node, names: &mut BTreeSet<String>) {
    match &node.value {
        Value::Text { text, .. } => {
            for part in text.split('{').skip(1) {
                let name = part.split('}').next().unwrap_or("").trim();
                names.insert(name.split('.').next().unwrap_or(name).to_owned());
            }
        }
        Value::List(items) => items.iter().for_each(|item| collect(item, names)),
        Value::Mapping(entries) => entries.iter().for_each(|entry| collect(&entry.value, names)),
    }
}

fn devices(room: &mut Room<'_>, quoted: &BTreeSet<String>) {
    let book = room.book;
    let mut placed: BTreeSet<DeviceId> = BTreeSet::new();
    for target in &book.targets {
        placed.extend(rungs(target).map(|rung| rung.device));
    }
    for card in &book.cards {
        if let Layout::Devices { devices } = &card.layout {
            placed.extend(devices.iter().copied());
        }
    }
    for procedure in &book.procedures {
        placed.extend(procedure.devices.iter().copied());
    }
    for (index, device) in (0_u16..).zip(&book.devices) {
        let id = DeviceId(index);
        if placed.contains(&id) || quoted.contains(&*device.rule.id) {
            continue;
        }
        let at = room.places.of(id.into());
        room.find(
            DEVICE_NOT_PLACED,
            &[id.into()],
            at,
            format!(
                "found `{}` on no ladder, in no procedure and on no card",
                device.rule.id
            ),
        )
        .hint("when does a crew take it? Put it on a ladder or a card, or take it out");
    }
}

fn rungs(target: &Target) -> impl Iterator<Item = DeviceFlow> {
    let urgent = target.urgent.map(|urgent| urgent.start);
    target.ladder.iter().copied().chain([target.start]).chain(urgent)
}

fn policies(room: &mut Room<'_>, quoted: &BTreeSet<String>) {
    let book = room.book;
    let mut read: BTreeSet<PolicyId> = BTreeSet::new();
    for op in book.hazards.iter().flat_map(|hazard| &hazard.never.ops) {
        if let GuardOp::Compare(
            _,
            _,
            Operand::Policy(id) | Operand::PolicyLow(id) | Operand::PolicyHigh(id),
        ) = op
        {
            read.insert(*id);
        }
    }
    // `in use-temperature` keeps the range and not the name: the guard's own words tell.
    let words: HashSet<&str> = book
        .hazards
        .iter()
        .filter(|hazard| {
            hazard
                .never
                .ops
                .iter()
                .any(|op| matches!(op, GuardOp::Within(..)))
        })
        .flat_map(|hazard| {
            hazard
                .never
                .text
                .split(|c: char| !c.is_alphanumeric() && c != '-')
        })
        .collect();
    let unread: Vec<PolicyId> = (0_u16..)
        .zip(&book.policies.all)
        .filter(|(index, policy)| {
            let id = &*policy.rule.id;
            let known = NEEDED.contains(&id) || words.contains(id) || quoted.contains(id);
            !known && !read.contains(&PolicyId(*index))
        })
        .map(|(index, _)| PolicyId(index))
        .collect();
    let rules = unread
        .into_iter()
        .map(|id| (id, book.policy(id).map(|policy| &policy.rule)));
    for id in not_named(room, rules) {
        let name = book.policy(id).map_or("", |policy| &*policy.rule.id);
        let at = room.places.of(id.into());
        room.find(
            POLICY_NEVER_READ,
            &[id.into()],
            at,
            format!(
                "found nothing that reads `{name}`: no guard, no quoted value, no prose but its own reason"
            ),
        )
        .hint("quote it in a step, name it in the prose where crews need it, or take it out");
    }
}

/// Those of the rules that no prose names, but for the reason of the rule itself.
fn not_named<'a, Id>(room: &Room<'a>, rules: impl Iterator<Item = (Id, Option<&'a Rule>)>) -> Vec<Id>
where
    Id: Copy + Ord + Into<RuleRef>,
{
    let (mut called, mut left) = (Called::default(), Vec::new());
    for (id, rule) in rules {
        if let Some(rule) = rule {
            called.add(id, rule);
            left.push(id);
        }
    }
    let mut named: BTreeSet<Id> = BTreeSet::new();
    for stretch in &room.prose.stretches {
        if named.len() == left.len() {
            break;
        }
        let code = stretch
            .code
            .iter()
            .filter_map(|code| called.by_name.get(code.as_str()));
        for id in called.in_text(&stretch.text).into_iter().chain(code).flatten() {
            if !stretch.at.gives_reasons_for(room.places.of((*id).into())) {
                named.insert(*id);
            }
        }
    }
    left.retain(|id| !named.contains(id));
    left
}

/// What rules are called, looked up by words, so that many cost no more than few.
struct Called<Id> {
    by_name: HashMap<String, Vec<Id>>,
    /// How many words the names have, by their first.
    lengths: HashMap<String, BTreeSet<usize>>,
}

impl<Id> Default for Called<Id> {
    fn default() -> Self {
        Self {
            by_name: HashMap::new(),
            lengths: HashMap::new(),
        }
    }
}

impl<Id: Copy> Called<Id> {
    fn add(&mut self, id: Id, rule: &Rule) {
        let (name, words) = plain(&rule.name);
        if let Some(first) = name.split(' ').next().filter(|first| !first.is_empty()) {
            self.lengths
                .entry(first.to_owned())
                .or_default()
                .insert(words.len());
            self.by_name.entry(name).or_default().push(id);
        }
        self.by_name.entry(rule.id.to_string()).or_default().push(id);
    }

    /// What is called by the names that stand in a text.
    fn in_text(&self, text: &str) -> Vec<&Vec<Id>> {
        let (text, starts) = plain(text);
        let end = |word: usize| starts.get(word).map_or(text.len(), |next| next.saturating_sub(1));
        let mut said = Vec::new();
        for (first, start) in starts.iter().enumerate() {
            let lengths = text
                .get(*start..end(first + 1))
                .and_then(|word| self.lengths.get(word));
            for length in lengths.into_iter().flatten() {
                let words = text.get(*start..end(first + length));
                said.extend(words.and_then(|words| self.by_name.get(words)));
            }
        }
        said
    }
}

/// Words in small letters with one space between, and where each begins.
fn plain(text: &str) -> (String, Vec<usize>) {
    let mut plain = String::with_capacity(text.len());
    let mut starts = Vec::new();
    for word in text
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
    {
        if !plain.is_empty() {
            plain.push(' ');
        }
        starts.push(plain.len());
        if word.bytes().all(|byte| byte.is_ascii_lowercase()) {
            plain.push_str(word);
        } else {
            plain.push_str(&word.to_lowercase());
        }
    }
    (plain, starts)
}

fn connections(room: &mut Room<'_>) {
    let book = room.book;
    let used: BTreeSet<ConnectionId> = book
        .cylinders
        .iter()
        .map(|cylinder| cylinder.connection)
        .collect();
    let spare = (0_u16..)
        .zip(&book.connections)
        .filter(|(index, connection)| connection.may_be_mated && !used.contains(&ConnectionId(*index)))
        .map(|(index, connection)| (ConnectionId(index), Some(&connection.rule)));
    for id in not_named(room, spare) {
        let name = book.connection(id).map_or("", |connection| &*connection.rule.id);
        let at = room.places.of(id.into());
        room.find(
            CONNECTION_NEVER_USED,
            &[id.into()],
            at,
            format!("found no cylinder with `{name}`, which may be mated"),
        )
        .hint("is a cylinder's `connection` wrong? One for outlets or hoses is named in the prose that speaks of them");
    }
}
