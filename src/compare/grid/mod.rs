//! Set-ups all over the field, and which of them the two books judge otherwise.
//!
//! Every value is taken from the limits of both books: at them, just below and just above. All combinations are far too
//! many, so they are numbered, and visited at a fixed step that spreads evenly over them; the same two books are always asked
//! the same set-ups, whichever of them is the old one.

mod axes;
mod judge;
mod smallest;

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::Serialize;

use self::{
    axes::Axes,
    judge::{Judge, Judged},
};
use crate::book::Rulebook;

/// How many set-ups are asked.
pub const SETUPS: u32 = 100_000;

/// How the set-ups of the grid are judged.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Grid {
    /// How many set-ups both books were asked.
    pub setups: u32,
    /// How many of them have other findings now.
    pub changed: u32,
    /// How many have another verdict, from which to which.
    pub verdicts: Vec<VerdictChange>,
    /// The findings that appear or go, each with its smallest example; the most frequent first.
    pub kinds: Vec<GridChange>,
}

/// What a set-up comes to: its gravest finding.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Nothing is wrong.
    #[default]
    InOrder,
    /// Something could not be checked.
    NotChecked,
    /// Something is to be put right.
    Warning,
    /// Do not go on.
    Stop,
}

impl Verdict {
    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::InOrder => "in order",
            Self::NotChecked => "could not be judged",
            Self::Warning => "warning",
            Self::Stop => "stop",
        }
    }
}

/// How many set-ups went from one verdict to another.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct VerdictChange {
    /// By the old book.
    pub was: Verdict,
    /// By the new book.
    pub is: Verdict,
    /// How many.
    pub setups: u32,
}

/// Whether a finding is new or no more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Comes {
    /// Only the new book finds it.
    Appears,
    /// Only the old book finds it.
    Goes,
}

impl Comes {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Appears => "appears",
            Self::Goes => "goes",
        }
    }
}

/// A finding that appears or goes.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct GridChange {
    /// Whether it appears or goes.
    pub comes: Comes,
    /// `stop`, `warn`, `unknown` or `note`.
    pub level: &'static str,
    /// The finding's code.
    pub code: &'static str,
    /// The kind of its rule.
    pub kind: &'static str,
    /// The id of its rule.
    pub id: String,
    /// In how many set-ups.
    pub setups: u32,
    /// A set-up in which it does, with nothing in it that doesn't matter.
    pub example: Example,
}

impl GridChange {
    /// The level, as it is told to people.
    #[must_use]
    pub fn level_words(&self) -> &'static str {
        if self.level == "unknown" {
            "could not be judged:"
        } else {
            self.level
        }
    }
}

/// A set-up in which a finding appears or goes.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Example {
    /// The set-up in words.
    pub setup: String,
    /// What is found, in the words of the book that finds it.
    pub message: String,
    /// The device's id.
    pub device: String,
    /// The flow in L/min.
    pub flow_lpm: f64,
    /// The group's id; null where it doesn't matter.
    pub group: Option<String>,
    /// The conditions' ids; null where they don't matter.
    pub conditions: Option<Vec<String>>,
    /// The time since birth in minutes; null where it doesn't matter.
    pub since_birth_minutes: Option<f64>,
    /// The saturation in percent; null where it doesn't matter.
    pub spo2_percent: Option<f64>,
    /// The cylinder's id; null where it doesn't matter.
    pub cylinder: Option<String>,
    /// The gauge reading; null where it doesn't matter.
    pub pressure: Option<String>,
    /// The cylinder's temperature in °C; null where it doesn't matter.
    pub temperature_c: Option<f64>,
    /// The minutes wanted; null where they don't matter.
    pub minutes_wanted: Option<f64>,
    /// What was seen of equipment or surroundings; null where it doesn't matter.
    pub seen: Option<String>,
}

/// A finding as it is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Key<'b> {
    level: crate::check::Level,
    code: &'static str,
    kind: crate::book::Kind,
    id: &'b str,
}

struct Count {
    setups: u32,
    first: u64,
}

pub(super) fn grid(old: &Rulebook, new: &Rulebook, most: u32) -> Grid {
    let axes = Axes::of(old, new);
    let all = axes.all();
    let setups = u32::try_from(all).unwrap_or(u32::MAX).min(most);
    let step = if u64::from(setups) == all { 1 } else { step(all) };
    let (before, now) = (Judge::new(old), Judge::new(new));
    let mut changed = 0;
    let mut verdicts: BTreeMap<(Verdict, Verdict), u32> = BTreeMap::new();
    let mut kinds: BTreeMap<(Comes, Key<'_>), Count> = BTreeMap::new();
    let (mut was, mut is) = (Judged::default(), Judged::default());
    for index in 0..setups {
        let number = u128::from(index) * u128::from(step) % u128::from(all.max(1));
        let number = u64::try_from(number).unwrap_or(0);
        let Some(point) = axes.point(number) else {
            continue;
        };
        before.judge(&point, &mut was);
        now.judge(&point, &mut is);
        if was.findings == is.findings {
            continue;
        }
        changed += 1;
        if was.verdict != is.verdict {
            *verdicts.entry((was.verdict, is.verdict)).or_default() += 1;
        }
        let only = |one: &Judged<'_>, other: &Judged<'_>, key: &Key<'_>| {
            one.findings.contains(key) && !other.findings.contains(key)
        };
        for (comes, one, other) in [(Comes::Appears, &is, &was), (Comes::Goes, &was, &is)] {
            for key in one.findings.iter().filter(|key| only(one, other, key)) {
                let count = kinds.entry((comes, *key)).or_insert(Count {
                    setups: 0,
                    first: number,
                });
                count.setups += 1;
            }
        }
    }
    let mut kinds: Vec<GridChange> = kinds
        .into_iter()
        .filter_map(|((comes, key), count)| {
            let point = axes.point(count.first)?;
            Some(GridChange {
                comes,
                level: key.level.code(),
                code: key.code,
                kind: key.kind.word(),
                id: key.id.to_owned(),
                setups: count.setups,
                example: smallest::example(&before, &now, comes, &key, point)?,
            })
        })
        .collect();
    kinds.sort_by_key(|kind| core::cmp::Reverse(kind.setups));
    Grid {
        setups,
        changed,
        verdicts: verdicts
            .into_iter()
            .map(|((was, is), setups)| VerdictChange { was, is, setups })
            .collect(),
        kinds,
    }
}

/// A step through `all` numbers that visits each once before it comes back, and spreads the first of them evenly: the
/// golden section of them, without a common divisor.
fn step(all: u64) -> u64 {
    let golden = u128::from(all) * 618_034 / 1_000_000;
    let mut step = u64::try_from(golden).unwrap_or(1).max(1);
    while common_divisor(step, all) != 1 {
        step += 1;
    }
    step
}

const fn common_divisor(mut one: u64, mut other: u64) -> u64 {
    while other != 0 {
        (one, other) = (other, one % other);
    }
    one
}
