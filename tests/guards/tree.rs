//! Random guards as trees, and how they are written.

use oxyfolio::book::{Fact, Measure};
use proptest::{prelude::*, sample::select};

use crate::{
    amount::{Amount, Kind, amount, kind},
    world::{CONDITIONS, DEVICES, GROUPS, POLICIES},
};

/// A guard.
#[derive(Clone, Debug, PartialEq)]
pub enum Tree {
    Compare(Measure, &'static str, Right),
    /// From, to, and whether the one end there is is left out.
    Within(Measure, Option<Amount>, Option<Amount>, bool),
    WithinPolicy(Measure, usize),
    Fact(Fact),
    DeviceIs(usize),
    GroupIs(usize),
    Condition(usize),
    Not(Box<Tree>),
    And(Box<Tree>, Box<Tree>),
    Or(Box<Tree>, Box<Tree>),
}

/// What is compared with.
#[derive(Clone, Debug, PartialEq)]
pub enum Right {
    Amount(Amount),
    Measure(Measure),
    Policy(usize),
    PolicyLow(usize),
    PolicyHigh(usize),
    TargetLow,
    TargetHigh,
    LeastFlow,
    MostFlow,
}

/// Where brackets stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Brackets {
    /// Where they are needed.
    Few,
    /// Round every condition and every pair.
    Many,
}

impl Tree {
    /// As it is written.
    pub fn text(&self) -> String {
        self.written(Brackets::Few)
    }

    pub fn written(&self, brackets: Brackets) -> String {
        let inner = |tree: &Self, needed: bool| {
            let text = tree.written(brackets);
            if needed || brackets == Brackets::Many {
                format!("({text})")
            } else {
                text
            }
        };
        let joined = |tree: &Self| matches!(tree, Self::And(..) | Self::Or(..));
        match self {
            Self::Compare(measure, sign, right) => format!("{} {sign} {}", measure.words(), right.text()),
            Self::Within(measure, low, high, excluded) => {
                let range = match (low, high, excluded) {
                    (Some(low), Some(high), _) => format!("{low} to {high}"),
                    (Some(low), None, false) => format!("at least {low}"),
                    (Some(low), None, true) => format!("over {low}"),
                    (None, Some(high), false) => format!("at most {high}"),
                    (None, Some(high), true) => format!("under {high}"),
                    (None, None, _) => unreachable!("no range"),
                };
                format!("{} in {range}", measure.words())
            }
            Self::WithinPolicy(measure, policy) => format!("{} in {}", measure.words(), POLICIES[*policy].id),
            Self::Fact(fact) => fact.words().to_owned(),
            Self::DeviceIs(device) => format!("device is {}", DEVICES[*device]),
            Self::GroupIs(group) => format!("group is {}", GROUPS[*group]),
            Self::Condition(condition) => CONDITIONS[*condition].to_owned(),
            Self::Not(tree) => format!("not {}", inner(tree, joined(tree))),
            Self::And(left, right) => {
                format!(
                    "{} and {}",
                    inner(left, matches!(**left, Self::Or(..))),
                    inner(right, joined(right))
                )
            }
            Self::Or(left, right) => {
                format!(
                    "{} or {}",
                    inner(left, matches!(**left, Self::And(..))),
                    inner(right, joined(right))
                )
            }
        }
    }

    pub fn not(self) -> Self {
        Self::Not(Box::new(self))
    }

    pub fn and(self, other: Self) -> Self {
        Self::And(Box::new(self), Box::new(other))
    }

    pub fn or(self, other: Self) -> Self {
        Self::Or(Box::new(self), Box::new(other))
    }
}

impl Right {
    fn text(&self) -> String {
        match self {
            Self::Amount(amount) => amount.to_string(),
            Self::Measure(measure) => measure.words().to_owned(),
            Self::Policy(policy) => POLICIES[*policy].id.to_owned(),
            Self::PolicyLow(policy) => format!("{}.low", POLICIES[*policy].id),
            Self::PolicyHigh(policy) => format!("{}.high", POLICIES[*policy].id),
            Self::TargetLow => "target.low".to_owned(),
            Self::TargetHigh => "target.high".to_owned(),
            Self::LeastFlow => "device.least-flow".to_owned(),
            Self::MostFlow => "device.most-flow".to_owned(),
        }
    }
}

fn right(measure: Measure) -> BoxedStrategy<Right> {
    let kind = kind(measure);
    let mut named = Vec::new();
    for (index, policy) in POLICIES
        .iter()
        .enumerate()
        .filter(|(_, policy)| policy.kind == kind)
    {
        if !policy.is_range {
            named.push(Right::Policy(index));
            continue;
        }
        named.extend(policy.low.map(|_| Right::PolicyLow(index)));
        named.extend(policy.high.map(|_| Right::PolicyHigh(index)));
    }
    match measure {
        Measure::Flow => named.extend([Right::LeastFlow, Right::MostFlow]),
        Measure::Spo2 => named.extend([Right::TargetLow, Right::TargetHigh]),
        Measure::MinutesLeft => named.push(Right::Measure(Measure::MinutesWanted)),
        Measure::MinutesWanted => named.push(Right::Measure(Measure::MinutesLeft)),
        Measure::Pressure | Measure::Temperature => {}
    }
    prop_oneof![amount(kind).prop_map(Right::Amount), select(named)].boxed()
}

fn measure() -> impl Strategy<Value = Measure> {
    select(Measure::ALL)
}

/// A comparison with one quantity: what is measured, a sign, the quantity.
pub fn comparison() -> impl Strategy<Value = (Measure, Right)> {
    measure().prop_flat_map(|measure| (Just(measure), right(measure)))
}

/// What is measured, and a range from low to high.
pub fn both_ends() -> impl Strategy<Value = (Measure, Amount, Amount)> {
    measure().prop_flat_map(|measure| {
        let ends = (amount(kind(measure)), amount(kind(measure)));
        ends.prop_map(move |(one, other)| {
            if one.exact() <= other.exact() {
                (measure, one, other)
            } else {
                (measure, other, one)
            }
        })
    })
}

fn single() -> impl Strategy<Value = Tree> {
    let signs = select(&["=", "!=", "<", "<=", ">", ">="][..]);
    let compare =
        (comparison(), signs).prop_map(|((measure, right), sign)| Tree::Compare(measure, sign, right));
    let within =
        both_ends().prop_map(|(measure, low, high)| Tree::Within(measure, Some(low), Some(high), false));
    let half = measure().prop_flat_map(|measure| {
        (amount(kind(measure)), any::<bool>(), any::<bool>()).prop_map(move |(end, low, excluded)| {
            Tree::Within(measure, low.then_some(end), (!low).then_some(end), excluded)
        })
    });
    let ranges: Vec<Tree> = Measure::ALL
        .iter()
        .flat_map(|&measure| {
            let of_kind = move |kind_of: Kind| kind_of == kind(measure);
            let ranges = POLICIES.iter().enumerate();
            ranges
                .filter(move |(_, policy)| policy.is_range && of_kind(policy.kind))
                .map(move |(index, _)| Tree::WithinPolicy(measure, index))
        })
        .collect();
    prop_oneof![
        8 => compare,
        1 => within,
        1 => half,
        1 => select(ranges),
        4 => select(Fact::ALL).prop_map(Tree::Fact),
        2 => (0..DEVICES.len()).prop_map(Tree::DeviceIs),
        1 => (0..GROUPS.len()).prop_map(Tree::GroupIs),
        1 => (0..CONDITIONS.len()).prop_map(Tree::Condition),
    ]
}

/// A guard of a few conditions.
pub fn tree() -> BoxedStrategy<Tree> {
    single()
        .prop_recursive(5, 12, 2, |inner| {
            prop_oneof![
                inner.clone().prop_map(Tree::not),
                (inner.clone(), inner.clone()).prop_map(|(left, right)| left.and(right)),
                (inner.clone(), inner).prop_map(|(left, right)| left.or(right)),
            ]
        })
        .boxed()
}
