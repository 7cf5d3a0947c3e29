//! Random states of equipment and patient, in which anything may be unknown.

use oxyfolio::{
    book::{ConditionId, DeviceId, Fact, GroupId},
    guard::{Facts, Observed},
    quantity::{Limit, Percent, Range},
};
use proptest::{collection::vec, option, prelude::*, sample::subsequence};

use crate::amount::{Amount, Kind, amount};

/// What was observed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct State {
    pub flow: Option<Amount>,
    pub pressure: Option<Amount>,
    pub temperature: Option<Amount>,
    pub spo2: Option<Amount>,
    pub minutes_left: Option<Amount>,
    pub minutes_wanted: Option<Amount>,
    pub device: Option<u16>,
    pub group: Option<u16>,
    pub conditions: Option<Vec<ConditionId>>,
    /// The target's low and high end, where it has them.
    pub target: Option<(Option<Amount>, Option<Amount>)>,
    /// In the order of [`Fact::ALL`].
    pub facts: Vec<Option<bool>>,
}

impl State {
    /// As the library takes it.
    pub fn observed(&self) -> Observed<'_> {
        let facts = Fact::ALL.iter().zip(&self.facts);
        Observed {
            flow: self.flow.map(Amount::read),
            pressure: self.pressure.map(Amount::read),
            temperature: self.temperature.map(Amount::read),
            spo2: self.spo2.map(Amount::read),
            minutes_left: self.minutes_left.map(Amount::read),
            minutes_wanted: self.minutes_wanted.map(Amount::read),
            device: self.device.map(DeviceId),
            group: self.group.map(GroupId),
            conditions: self.conditions.as_deref(),
            target: self.target.map(|(low, high)| Range {
                low: limit(low),
                high: limit(high),
            }),
            facts: facts.fold(Facts::default(), |facts, (fact, holds)| match holds {
                Some(holds) => facts.with(*fact, *holds),
                None => facts,
            }),
        }
    }

    pub fn fact(&self, fact: Fact) -> Option<bool> {
        let place = Fact::ALL.iter().position(|known| *known == fact).unwrap();
        self.facts.get(place).copied().flatten()
    }

    /// The same state, with some observations forgotten.
    pub fn forgetting(&self, forgotten: &[bool; OBSERVATIONS]) -> Self {
        let mut forgotten = forgotten.iter().copied();
        let mut keep = || !forgotten.next().unwrap();
        Self {
            flow: self.flow.filter(|_| keep()),
            pressure: self.pressure.filter(|_| keep()),
            temperature: self.temperature.filter(|_| keep()),
            spo2: self.spo2.filter(|_| keep()),
            minutes_left: self.minutes_left.filter(|_| keep()),
            minutes_wanted: self.minutes_wanted.filter(|_| keep()),
            device: self.device.filter(|_| keep()),
            group: self.group.filter(|_| keep()),
            conditions: self.conditions.clone().filter(|_| keep()),
            target: self.target.filter(|_| keep()),
            facts: self.facts.iter().map(|fact| fact.filter(|_| keep())).collect(),
        }
    }
}

/// How many observations a state has.
pub const OBSERVATIONS: usize = 10 + Fact::ALL.len();

fn limit(end: Option<Amount>) -> Limit<Percent> {
    end.map_or(Limit::None, |end| Limit::Included(end.read()))
}

/// A state of a book with so many devices, groups and conditions. Any observation is unknown now and then.
pub fn state(devices: usize, groups: usize, conditions: usize) -> impl Strategy<Value = State> {
    let known = |kind| option::weighted(0.8, amount(kind));
    let id = |count: usize| option::weighted(0.8, 0..u16::try_from(count).unwrap());
    let all: Vec<ConditionId> = (0..u16::try_from(conditions).unwrap()).map(ConditionId).collect();
    let target = (
        option::weighted(0.9, amount(Kind::Share)),
        option::weighted(0.9, amount(Kind::Share)),
    );
    let measured = (
        known(Kind::Flow),
        known(Kind::Pressure),
        known(Kind::Temperature),
        known(Kind::Share),
        known(Kind::Time),
        known(Kind::Time),
    );
    let patient = (
        id(devices),
        id(groups),
        option::weighted(0.8, subsequence(all, 0..=conditions)),
        option::weighted(0.8, target),
    );
    let facts = vec(option::weighted(0.8, any::<bool>()), Fact::ALL.len());
    (measured, patient, facts).prop_map(
        |(
            (flow, pressure, temperature, spo2, minutes_left, minutes_wanted),
            (device, group, conditions, target),
            facts,
        )| State {
            flow,
            pressure,
            temperature,
            spo2,
            minutes_left,
            minutes_wanted,
            device,
            group,
            conditions,
            target,
            facts,
        },
    )
}
