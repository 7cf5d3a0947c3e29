//! All hazards asked at once: each way to the answer gives what asking one by one gives.

use std::sync::LazyLock;

use oxyfolio::{
    RULEBOOK,
    book::{Fact, HazardId, Measure, Rulebook},
    guard::{Broken, Evaluator, HazardSet, Inputs, Observed, Row},
    hazard,
    lookup::Lookup,
};
use proptest::{
    collection::{btree_set, vec},
    prelude::*,
};

use crate::{
    random::{any_state, config, emitted},
    state::{State, state},
    tree::tree,
    world::{BOOK, book_of},
};

fn demo_state() -> impl Strategy<Value = State> {
    state(
        RULEBOOK.devices.len(),
        RULEBOOK.groups.len(),
        RULEBOOK.conditions.len(),
    )
}

static DEMO: LazyLock<Lookup<'static>> = LazyLock::new(|| Lookup::new(&RULEBOOK));
static RANDOM: LazyLock<Lookup<'static>> = LazyLock::new(|| Lookup::new(&BOOK));

/// Each hazard asked by itself.
pub fn one_by_one(book: &Rulebook, seen: &Observed<'_>) -> Broken {
    (0..u16::try_from(book.hazards.len()).unwrap())
        .map(HazardId)
        .fold(Broken::default(), |broken, id| {
            broken.with(id, Evaluator::evaluate(&book, id, seen))
        })
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_row_says_what_was_observed(state in any_state()) {
        let row = Row::from(&state.observed());
        let expected = one_by_one(&BOOK, &state.observed());
        prop_assert_eq!((&*BOOK).broken(&state.observed()), expected);
        prop_assert_eq!((&*BOOK).broken_row(&row), expected);
    }

    #[test]
    fn looked_up_is_asked_one_by_one(state in any_state()) {
        let seen = state.observed();
        let expected = one_by_one(&BOOK, &seen);
        prop_assert_eq!(RANDOM.broken(&seen), expected);
        prop_assert_eq!(RANDOM.broken_row(&Row::from(&seen)), expected);
        prop_assert_eq!(emitted::hazard::Guards.broken(&seen), expected);
        prop_assert_eq!(emitted::hazard::Guards.broken_row(&Row::from(&seen)), expected);
    }

    #[test]
    fn any_guard_looked_up_is_the_guard_walked(trees in vec(tree(), 1..80), state in any_state()) {
        let book = book_of(&trees);
        let lookup = Lookup::new(&book);
        let seen = state.observed();
        prop_assert_eq!(lookup.broken_row(&Row::from(&seen)), one_by_one(&book, &seen));
    }

    #[test]
    fn the_demonstration_looked_up_is_asked_one_by_one(state in demo_state()) {
        let seen = state.observed();
        let expected = one_by_one(&RULEBOOK, &seen);
        prop_assert_eq!(DEMO.broken(&seen), expected);
        prop_assert_eq!(hazard::Guards.broken(&seen), expected);
        prop_assert_eq!(hazard::Guards.broken_row(&Row::from(&seen)), expected);
    }

    #[test]
    fn only_what_a_guard_asks_can_change_its_answer(one in demo_state(), other in demo_state()) {
        let before = Row::from(&one.observed());
        let seen = other.observed();
        let mut changes: Vec<(Inputs, Row)> = Vec::new();
        let mut change = |input, set: &dyn Fn(&mut Row)| {
            let mut row = before;
            set(&mut row);
            changes.push((input, row));
        };
        change(Inputs::measure(Measure::Flow), &|row| row.set_flow(seen.flow));
        change(Inputs::measure(Measure::Pressure), &|row| row.set_pressure(seen.pressure));
        change(Inputs::measure(Measure::Temperature), &|row| row.set_temperature(seen.temperature));
        change(Inputs::measure(Measure::Spo2), &|row| row.set_spo2(seen.spo2));
        change(Inputs::measure(Measure::MinutesLeft), &|row| row.set_minutes_left(seen.minutes_left));
        change(Inputs::measure(Measure::MinutesWanted), &|row| row.set_minutes_wanted(seen.minutes_wanted));
        change(Inputs::DEVICE, &|row| row.set_device(seen.device));
        change(Inputs::GROUP, &|row| row.set_group(seen.group));
        change(Inputs::CONDITIONS, &|row| row.set_conditions(seen.conditions));
        change(Inputs::TARGET, &|row| row.set_target(seen.target));
        for fact in Fact::ALL.iter().filter(|fact| **fact != Fact::DeviceHasReservoir) {
            change(Inputs::fact(*fact), &|row| row.set_fact(*fact, seen.facts.get(*fact)));
        }
        let answer = hazard::Guards.broken_row(&before);
        for (input, row) in changes {
            let asking = hazard::Guards.hazards_that_ask(input);
            let others = HazardSet::first(RULEBOOK.hazards.len()) - asking;
            prop_assert_eq!(hazard::Guards.broken_row(&row).among(others), answer.among(others), "{:?}", input);
        }
    }

    #[test]
    fn a_set_holds_what_was_put_in(one in btree_set(0_u16..256, 0..40), other in btree_set(0_u16..256, 0..40)) {
        let set = |ids: &std::collections::BTreeSet<u16>| ids.iter().copied().map(HazardId).collect::<HazardSet>();
        let list = |set: HazardSet| set.iter().map(|id| id.0).collect::<Vec<_>>();
        let (a, b) = (set(&one), set(&other));
        prop_assert_eq!(list(a), one.iter().copied().collect::<Vec<_>>());
        prop_assert_eq!(list(a | b), one.union(&other).copied().collect::<Vec<_>>());
        prop_assert_eq!(list(a & b), one.intersection(&other).copied().collect::<Vec<_>>());
        prop_assert_eq!(list(a - b), one.difference(&other).copied().collect::<Vec<_>>());
        prop_assert_eq!(a.len(), one.len());
        prop_assert_eq!(a.iter().len(), one.len());
        prop_assert_eq!(a.is_empty(), one.is_empty());
        for id in 0..300 {
            prop_assert_eq!(a.contains(HazardId(id)), one.contains(&id));
            prop_assert!(!a.without(HazardId(id)).contains(HazardId(id)));
        }
        prop_assert_eq!(HazardSet::from_words(a.words()), a);
    }
}

#[test]
fn the_first_hazards_of_a_book() {
    for count in [0, 1, 29, 63, 64, 65, 128, 191, 192, 255, 256, 257] {
        let first = HazardSet::first(count);
        assert_eq!(first.len(), count.min(HazardSet::CAPACITY));
        assert!(first.iter().map(|id| usize::from(id.0)).eq(0..first.len()));
    }
}

#[test]
fn a_hazard_that_no_book_has_is_in_no_set() {
    for id in [256, 257, 320, u16::MAX] {
        assert!(HazardSet::EMPTY.with(HazardId(id)).is_empty());
        assert!(!HazardSet::first(usize::MAX).contains(HazardId(id)));
    }
}

#[test]
fn the_random_guards_are_looked_up_on_several_pages_and_some_are_walked() {
    assert!(RANDOM.pages().len() > 2);
    assert!((1..30).contains(&RANDOM.walked().len()), "{:?}", RANDOM.walked());
    assert_eq!(DEMO.pages().len(), 1);
    assert!(DEMO.walked().is_empty());
}
