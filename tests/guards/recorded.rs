//! What is recorded twice, changed, or recorded of another book; sets of hazards word by word; numbers as close as rounding.

use oxyfolio::{
    book::{Comparison, ConditionId, Fact, HazardId},
    guard::{Facts, HazardSet, MAX_CONDITIONS, Row, Truth, compare, mask},
    quantity::{Flow, Limit, Percent, Range},
};

#[test]
fn an_observation_recorded_again_is_the_later_one() {
    for fact in Fact::ALL {
        for before in [false, true] {
            for after in [false, true] {
                let twice = Facts::NONE.with(*fact, before).with(*fact, after);
                assert_eq!(twice.get(*fact), Some(after), "{fact:?}: {before}, then {after}");
                assert_eq!(twice, Facts::NONE.with(*fact, after));
                assert_eq!(twice.without(*fact), Facts::NONE);
            }
        }
    }
}

#[test]
fn what_is_said_to_hold_and_not_to_hold_holds() {
    let of = |yes: u32, no: u32| Facts::of(yes, no).get(Fact::ALL[0]);
    assert_eq!(of(1, 1), Some(true));
    assert_eq!((of(1, 0), of(0, 1), of(0, 0)), (Some(true), Some(false), None));
}

#[test]
fn a_row_keeps_what_was_recorded_of_each_fact() {
    let mut row = Row::UNKNOWN;
    for (said, known) in [
        (Some(true), Some(true)),
        (Some(false), Some(false)),
        (None, None),
        (Some(true), Some(true)),
    ] {
        for fact in Fact::ALL {
            row.set_fact(*fact, said);
            assert_eq!(row.facts().get(*fact), known);
            assert_eq!(row.observed(|seen| seen.facts.get(*fact)), known);
        }
    }
}

#[test]
fn a_condition_named_twice_is_a_condition_and_one_past_all_is_none() {
    let last = ConditionId(MAX_CONDITIONS as u16 - 1);
    let past = ConditionId(MAX_CONDITIONS as u16);
    let (first, beyond) = (ConditionId(0), ConditionId(u16::MAX));
    let mut row = Row::UNKNOWN;
    for (named, has) in [
        (&[first, first][..], 1),
        (&[first, last, first, last], 1 | 1 << 63),
        (&[past, beyond], 0),
        (&[], 0),
    ] {
        row.set_conditions(Some(named));
        assert_eq!((row.has(), row.has_not()), (has, !has), "{named:?}");
        row.observed(|seen| {
            assert_eq!(seen.has_condition(first), Truth::from(Some(has & 1 != 0)));
            assert_eq!(seen.has_condition(last), Truth::from(Some(has >> 63 != 0)));
        });
    }
    row.set_conditions(None);
    assert_eq!((row.has(), row.has_not()), (0, 0));
    row.observed(|seen| assert_eq!(seen.has_condition(first), Truth::Unknown));
}

#[test]
fn a_target_with_one_end_is_a_target() {
    let share = |percent| Percent::new(percent).unwrap();
    let (low, high) = (Limit::Included(share(94.0)), Limit::Included(share(98.0)));
    let none = Limit::None;
    for (low, high, told) in [
        (low, none, true),
        (none, high, true),
        (low, high, true),
        (none, none, false),
    ] {
        let target = Range { low, high };
        let mut row = Row::UNKNOWN;
        row.set_target(Some(target));
        assert_eq!(row.observed(|seen| seen.target), Some(target).filter(|_| told));
    }
}

#[test]
fn a_set_is_empty_when_no_word_has_a_hazard() {
    assert!(HazardSet::EMPTY.is_empty());
    // The same place in each word of 64: two of them, or all four.
    let places = [0_u16, 64, 128, 192];
    for bits in 1..16_u32 {
        let chosen = || {
            (0..4)
                .filter(|place| bits >> place & 1 != 0)
                .map(|place| HazardId(places[place] + 5))
        };
        let set: HazardSet = chosen().collect();
        assert!(!set.is_empty() && set.len() == chosen().count(), "{bits:b}");
        assert!(set.iter().eq(chosen()));
        let mut extended = HazardSet::EMPTY.with(HazardId(1));
        extended.extend(chosen());
        assert_eq!(extended, set.with(HazardId(1)));
    }
    let set = HazardSet::EMPTY.with(HazardId(3)).with(HazardId(200));
    assert_eq!(format!("{set:?}"), "{3, 200}");
}

/// The look-ups' comparison and the walk's are written apart. Numbers are tried that differ by a billionth of themselves, as
/// near to that as numbers can be: there "equal" ends.
#[test]
fn both_ways_of_comparing_agree_where_equal_ends() {
    let mut differ = 0;
    for step in 0..20_000_u32 {
        let right = 1.0 + f64::from(step) * 3.1e-5;
        let nearly = right * (1.0 + 1e-9);
        for ulps in -2..=2_i64 {
            let left = f64::from_bits(nearly.to_bits().wrapping_add_signed(ulps));
            let flow = |litres| Some(Flow::litres_per_minute(litres).unwrap_or(Flow::tabled(litres)));
            for (left, right) in [(left, right), (right, left)] {
                for (comparison, walked) in [
                    (Comparison::Equal, compare::equal(flow(left), flow(right))),
                    (Comparison::NotEqual, compare::not_equal(flow(left), flow(right))),
                    (Comparison::Less, compare::less(flow(left), flow(right))),
                    (Comparison::AtMost, compare::at_most(flow(left), flow(right))),
                    (Comparison::Greater, compare::greater(flow(left), flow(right))),
                    (Comparison::AtLeast, compare::at_least(flow(left), flow(right))),
                ] {
                    let looked_up =
                        [Truth::Unknown, Truth::True, Truth::False][mask::answer(left, comparison, right)];
                    assert_eq!(looked_up, walked, "{left:e} {comparison:?} {right:e}");
                }
            }
            differ += u32::from(compare::equal(flow(left), flow(right)) == Truth::False);
        }
    }
    // On both sides of the end.
    assert!(differ > 20_000 && differ < 80_000, "{differ}");
}
