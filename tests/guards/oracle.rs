//! What a guard should answer, worked out from its tree with tables of three-valued logic and whole numbers. It shares
//! no code with the library: neither the reading of the guard, nor the comparison, nor the logic.

use core::cmp::Ordering;

use oxyfolio::{
    book::{ConditionId, DeviceId, Fact, GroupId, Measure},
    guard::Truth,
};

use crate::{
    amount::Amount,
    state::State,
    tree::{Right, Tree},
    world::{BOOK, GROUPS, POLICIES},
};

/// No, perhaps, yes: an answer is the place of its word here.
const ANSWERS: [Truth; 3] = [Truth::False, Truth::Unknown, Truth::True];
const NO: usize = 0;
const PERHAPS: usize = 1;
const YES: usize = 2;

const NOT: [usize; 3] = [YES, PERHAPS, NO];
const AND: [[usize; 3]; 3] = [[NO, NO, NO], [NO, PERHAPS, PERHAPS], [NO, PERHAPS, YES]];
const OR: [[usize; 3]; 3] = [[NO, PERHAPS, YES], [PERHAPS, PERHAPS, YES], [YES, YES, YES]];

/// What the guard should answer.
pub fn expected(tree: &Tree, state: &State) -> Truth {
    ANSWERS[answer(tree, state)]
}

fn answer(tree: &Tree, state: &State) -> usize {
    match tree {
        Tree::Compare(measure, sign, right) => compare(*measure, sign, right, state),
        Tree::Within(measure, low, high, excluded) => within(*measure, *low, *high, *excluded, state),
        Tree::WithinPolicy(measure, policy) => {
            let policy = &POLICIES[*policy];
            within(*measure, policy.low, policy.high, policy.excluded, state)
        }
        Tree::Fact(Fact::DeviceHasReservoir) => known(state.device.map(|device| device == 2)),
        Tree::Fact(fact) => known(state.fact(*fact)),
        Tree::DeviceIs(device) => known(state.device.map(|used| usize::from(used) == *device)),
        Tree::GroupIs(group) => known(state.group.map(|own| usize::from(own) == *group)),
        Tree::Condition(condition) => {
            let id = ConditionId(u16::try_from(*condition).unwrap());
            known(state.conditions.as_ref().map(|all| all.contains(&id)))
        }
        Tree::Not(tree) => NOT[answer(tree, state)],
        Tree::And(left, right) => AND[answer(left, state)][answer(right, state)],
        Tree::Or(left, right) => OR[answer(left, state)][answer(right, state)],
    }
}

fn known(answer: Option<bool>) -> usize {
    match answer {
        None => PERHAPS,
        Some(false) => NO,
        Some(true) => YES,
    }
}

fn measured(measure: Measure, state: &State) -> Option<i128> {
    let amount = match measure {
        Measure::Flow => state.flow,
        Measure::Pressure => state.pressure,
        Measure::Temperature => state.temperature,
        Measure::Spo2 => state.spo2,
        Measure::MinutesLeft => state.minutes_left,
        Measure::MinutesWanted => state.minutes_wanted,
    };
    amount.map(Amount::exact)
}

fn compare(measure: Measure, sign: &str, right: &Right, state: &State) -> usize {
    let left = measured(measure, state);
    let with =
        |right: Option<i128>| known(left.zip(right).map(|(left, right)| holds(left.cmp(&right), sign)));
    match right {
        Right::Amount(amount) => with(Some(amount.exact())),
        Right::Measure(other) => with(measured(*other, state)),
        Right::Policy(policy) | Right::PolicyLow(policy) => with(POLICIES[*policy].low.map(Amount::exact)),
        Right::PolicyHigh(policy) => with(POLICIES[*policy].high.map(Amount::exact)),
        Right::TargetLow => with(state.target.and_then(|(low, _)| low).map(Amount::exact)),
        Right::TargetHigh => with(state.target.and_then(|(_, high)| high).map(Amount::exact)),
        Right::LeastFlow | Right::MostFlow => {
            let Some(device) = state.device else {
                return PERHAPS;
            };
            // A patient of unknown group belongs to one of them all the same.
            let groups: Vec<u16> = match state.group {
                Some(group) => vec![group],
                None => (0..u16::try_from(GROUPS.len()).unwrap()).collect(),
            };
            let answers: Vec<usize> = groups
                .into_iter()
                .map(|group| with(device_flow(device, group, *right == Right::LeastFlow)))
                .collect();
            if answers.iter().all(|answer| *answer == answers[0]) {
                answers[0]
            } else {
                PERHAPS
            }
        }
    }
}

fn device_flow(device: u16, group: u16, least: bool) -> Option<i128> {
    let range = BOOK.device(DeviceId(device)).unwrap().flow_for(GroupId(group));
    let end = if least { range.low } else { range.high };
    let litres = end.value()?.as_litres_per_minute();
    Some((litres * 10.0).round() as i128 * 1000)
}

fn holds(order: Ordering, sign: &str) -> bool {
    match sign {
        "=" => order == Ordering::Equal,
        "!=" => order != Ordering::Equal,
        "<" => order == Ordering::Less,
        "<=" => order != Ordering::Greater,
        ">" => order == Ordering::Greater,
        ">=" => order != Ordering::Less,
        _ => panic!("{sign}"),
    }
}

fn within(
    measure: Measure,
    low: Option<Amount>,
    high: Option<Amount>,
    excluded: bool,
    state: &State,
) -> usize {
    let Some(value) = measured(measure, state) else {
        return PERHAPS;
    };
    let above = low.is_none_or(|low| value > low.exact() || !excluded && value == low.exact());
    let below = high.is_none_or(|high| value < high.exact() || !excluded && value == high.exact());
    known(Some(above && below))
}
