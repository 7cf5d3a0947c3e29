//! Finds the book's names fast: each name is looked up in a table made once.

use crate::book::{Action, ConditionId, CylinderId, DeviceId, GroupId, Rule, Rulebook};
use crate::compile::suggest::{listed, nearest};

/// Nothing longer is a name.
const LONGEST: usize = 64;

/// The names that a record may hold, of one book. A group, device or cylinder goes by its id, its name or another of its
/// names, in capitals or not; an action and a condition by its id.
#[derive(Debug)]
pub struct Names<'b> {
    pub(super) groups: Table<'b, GroupId>,
    pub(super) conditions: Table<'b, ConditionId>,
    pub(super) cylinders: Table<'b, CylinderId>,
    pub(super) devices: Table<'b, DeviceId>,
    pub(super) actions: Table<'b, Action>,
}

impl<'b> Names<'b> {
    /// Those of a book.
    #[must_use]
    pub fn new(book: &'b Rulebook) -> Self {
        fn named<'b, I: Copy>(
            rules: impl Iterator<Item = (&'b Rule, &'b [crate::book::Text])>,
            id: fn(u16) -> I,
        ) -> Table<'b, I> {
            let mut table = Table::default();
            let rules: Vec<_> = (0..).map(id).zip(rules).collect();
            for (id, (rule, _)) in &rules {
                table.known.push(&rule.id);
                table.add(&rule.id, *id);
            }
            for (id, (rule, _)) in &rules {
                table.add(&rule.name, *id);
            }
            for (id, (_, also)) in &rules {
                for name in *also {
                    table.add(name, *id);
                }
            }
            table.done()
        }
        let mut conditions = Table::default();
        for (index, condition) in (0..).zip(book.conditions.iter()) {
            conditions.known.push(&condition.id);
            conditions.add(&condition.id, ConditionId(index));
        }
        let mut actions = Table::default();
        for action in Action::ALL {
            actions.known.push(action.word());
            actions.add(action.word(), *action);
        }
        Self {
            groups: named(book.groups.iter().map(|group| (&group.rule, &[][..])), GroupId),
            conditions: conditions.done(),
            cylinders: named(
                book.cylinders
                    .iter()
                    .map(|cylinder| (&cylinder.rule, &*cylinder.also)),
                CylinderId,
            ),
            devices: named(
                book.devices.iter().map(|device| (&device.rule, &*device.also)),
                DeviceId,
            ),
            actions: actions.done(),
        }
    }
}

/// Names of one kind: open addressing, at most half full.
#[derive(Debug)]
pub(super) struct Table<'b, I> {
    slots: Vec<Option<u16>>,
    entries: Vec<(&'b str, I)>,
    known: Vec<&'b str>,
    listed: String,
}

impl<I> Default for Table<'_, I> {
    fn default() -> Self {
        Self {
            slots: Vec::new(),
            entries: Vec::new(),
            known: Vec::new(),
            listed: String::new(),
        }
    }
}

impl<'b, I: Copy> Table<'b, I> {
    fn add(&mut self, name: &'b str, id: I) {
        self.entries.push((name, id));
    }

    fn done(mut self) -> Self {
        // A table of few names lists them all; 40 actions are no help.
        const MOST_LISTED: usize = 24;
        let size = (self.entries.len() * 2).next_power_of_two().max(2);
        self.slots = vec![None; size];
        for (index, (name, _)) in (0..).zip(&self.entries) {
            let mut at = hash(name) & (size - 1);
            while let Some(slot) = self.slots.get_mut(at) {
                if slot.is_none() {
                    *slot = Some(index);
                    break;
                }
                at = (at + 1) & (size - 1);
            }
        }
        if self.known.len() <= MOST_LISTED {
            self.listed = listed(self.known.iter().copied(), "or");
        }
        self
    }

    /// What goes by a name: as it is written before in capitals or not, an id before a name before another name.
    #[inline]
    pub fn find(&self, name: &str) -> Option<I> {
        if name.len() > LONGEST {
            return None;
        }
        let mut best: Option<(u16, I)> = None;
        let mut at = hash(name) & (self.slots.len() - 1);
        while let Some(Some(index)) = self.slots.get(at) {
            if let Some((known, id)) = self.entries.get(usize::from(*index)) {
                if *known == name {
                    return Some(*id);
                }
                if known.eq_ignore_ascii_case(name) && best.is_none_or(|(first, _)| *index < first) {
                    best = Some((*index, *id));
                }
            }
            at = (at + 1) & (self.slots.len() - 1);
        }
        best.map(|(_, id)| id)
    }

    /// A known name like this one.
    pub fn near(&self, name: &str) -> Option<&'b str> {
        nearest(name.trim(), self.known.iter().copied())
    }

    /// Every known name in a sentence; empty where they are many.
    pub fn listed(&self) -> &str {
        &self.listed
    }
}

/// The same for small letters and capitals: of the length, the first eight bytes and the last eight.
#[inline]
fn hash(name: &str) -> usize {
    /// What makes a capital small; what it does to other bytes doesn't matter here.
    const SMALL: u64 = 0x2020_2020_2020_2020;
    let bytes = name.as_bytes();
    let (first, last) = match (bytes.first_chunk(), bytes.last_chunk()) {
        (Some(first), Some(last)) => (u64::from_le_bytes(*first), u64::from_le_bytes(*last)),
        _ => (bytes.iter().fold(0, |all, byte| all << 8 | u64::from(*byte)), 0),
    };
    let mixed = (first | SMALL)
        .wrapping_mul(0x9e37_79b9_7f4a_7c15)
        .wrapping_add((last | SMALL).rotate_left(29))
        .wrapping_add(bytes.len() as u64)
        .wrapping_mul(0xbf58_476d_1ce4_e5b9);
    (mixed >> 32) as usize
}
