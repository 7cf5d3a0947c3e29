//! What a set-up's saturation leads to: the next rung of the ladder, and what is said where no target can be chosen. The
//! ladders are read off chapter 6 of the demonstration's book.

use oxyfolio::book::{ConditionId, DeviceId, GroupId};
use oxyfolio::check::{About, Finding, Level, Setup, check_setup};
use oxyfolio::device::{BAG_VALVE_MASK, BLOW_BY, NASAL_CANNULA, NON_REBREATHER, SIMPLE_MASK};
use oxyfolio::quantity::{Percent, Time};
use oxyfolio::{RULEBOOK, condition, group};

use super::flow;

fn setup(
    group: GroupId,
    conditions: &[ConditionId],
    (device, litres): (DeviceId, f64),
    spo2: f64,
) -> Setup<'_> {
    Setup::new(device, flow(litres))
        .group(group)
        .conditions(conditions)
        .spo2(Percent::new(spo2).unwrap())
}

fn found(setup: &Setup<'_>) -> Vec<Finding<'static>> {
    let mut all = Vec::new();
    check_setup(&RULEBOOK, setup, |finding| all.push(finding)).unwrap();
    all
}

/// Of a saturation outside the target: the level, the device and flow to go to, and the words.
type Told = (Level, Option<(DeviceId, f64)>, String);

fn target(setup: &Setup<'_>) -> Option<Told> {
    found(setup).into_iter().find_map(|finding| match finding.about {
        About::BelowTarget { next, .. } | About::AboveTarget { next, .. } => {
            let next = next.map(|next| (next.device, next.flow.as_litres_per_minute()));
            Some((finding.level, next, finding.to_string()))
        }
        _ => None,
    })
}

/// One rung up or down from the rung a set-up stands on: the last of its device with no more flow.
#[test]
fn the_next_rung_is_the_ladders() {
    const NONE: &[ConditionId] = &[];
    for (at, spo2, next) in [
        ((NASAL_CANNULA, 2.0), 92.0, Some((NASAL_CANNULA, 4.0))),
        ((NASAL_CANNULA, 3.0), 92.0, Some((NASAL_CANNULA, 4.0))),
        ((NASAL_CANNULA, 4.0), 92.0, Some((SIMPLE_MASK, 6.0))),
        ((SIMPLE_MASK, 8.0), 92.0, Some((SIMPLE_MASK, 10.0))),
        ((SIMPLE_MASK, 10.0), 92.0, Some((NON_REBREATHER, 15.0))),
        // The top of the ladder, and what is below its first rung or not on it at all.
        ((NON_REBREATHER, 15.0), 92.0, None),
        ((NASAL_CANNULA, 1.0), 92.0, None),
        ((NON_REBREATHER, 12.0), 92.0, None),
        ((BLOW_BY, 8.0), 92.0, None),
        ((NON_REBREATHER, 15.0), 99.0, Some((SIMPLE_MASK, 10.0))),
        ((SIMPLE_MASK, 10.0), 99.0, Some((SIMPLE_MASK, 6.0))),
        ((SIMPLE_MASK, 6.0), 99.0, Some((NASAL_CANNULA, 4.0))),
        ((NASAL_CANNULA, 4.0), 99.0, Some((NASAL_CANNULA, 2.0))),
        ((NASAL_CANNULA, 2.0), 99.0, None),
        ((BLOW_BY, 8.0), 99.0, None),
    ] {
        let (level, found, words) = target(&setup(group::ADULT, NONE, at, spo2)).expect("out of the target");
        assert_eq!(found, next, "at {at:?} with {spo2} %");
        assert_eq!(level, Level::Warn);
        assert_eq!(words.contains("; next: "), next.is_some(), "{words}");
    }
    let (_, _, words) = target(&setup(group::ADULT, NONE, (NASAL_CANNULA, 4.0), 92.0)).unwrap();
    assert_eq!(
        words,
        "the saturation of 92 % is below the target of 94 to 98 %; next: simple mask at 6 L/min"
    );
    let (_, _, words) = target(&setup(group::ADULT, NONE, (NASAL_CANNULA, 2.0), 99.0)).unwrap();
    assert_eq!(words, "the saturation of 99 % is above the target of 94 to 98 %");
}

/// Below 85 % an adult goes straight to high oxygen; who has it already goes on up the ladder.
#[test]
fn very_low_goes_straight_to_the_urgent_start() {
    const NONE: &[ConditionId] = &[];
    for (at, spo2, level, next) in [
        (
            (NASAL_CANNULA, 2.0),
            84.9,
            Level::Stop,
            Some((NON_REBREATHER, 15.0)),
        ),
        (
            (NASAL_CANNULA, 2.0),
            85.0,
            Level::Warn,
            Some((NASAL_CANNULA, 4.0)),
        ),
        ((NON_REBREATHER, 15.0), 84.9, Level::Stop, None),
    ] {
        let (found, place, _) = target(&setup(group::ADULT, NONE, at, spo2)).expect("below");
        assert_eq!((found, place), (level, next), "at {at:?} with {spo2} %");
    }
}

/// A patient ventilated by hand is not moved to a mask that only gives gas, whatever the ladder says; one on a mask may be
/// ventilated.
#[test]
fn who_is_ventilated_by_hand_stays_so() {
    const ROSC: &[ConditionId] = &[condition::RETURN_OF_CIRCULATION];
    const ILL: &[ConditionId] = &[condition::CRITICAL_ILLNESS];
    let (level, next, words) = target(&setup(group::ADULT, ROSC, (BAG_VALVE_MASK, 15.0), 99.0)).unwrap();
    assert_eq!((level, next), (Level::Warn, None));
    assert!(
        words.ends_with("; go on ventilating by hand, with less oxygen as local protocol says"),
        "{words}"
    );
    let (level, next, words) = target(&setup(group::ADULT, ROSC, (BAG_VALVE_MASK, 15.0), 92.0)).unwrap();
    assert_eq!((level, next), (Level::Warn, None));
    assert!(
        words.ends_with("; go on ventilating by hand; check seal, chest, airway and supply"),
        "{words}"
    );
    let (_, next, words) = target(&setup(group::ADULT, ILL, (NON_REBREATHER, 15.0), 92.0)).unwrap();
    assert_eq!(next, Some((BAG_VALVE_MASK, 15.0)));
    assert!(
        words.ends_with("; next: bag-valve-mask with reservoir at 15 L/min"),
        "{words}"
    );
}

/// The book has a heart-attack target for adults only. A child with one has no target; a very low reading is a stop all the
/// same, from below 85 % on as for any child, and nothing is said of stepping up or down.
#[test]
fn without_a_target_for_the_condition_a_very_low_reading_is_still_told() {
    const HEART: &[ConditionId] = &[condition::HEART_ATTACK];
    for (spo2, level) in [
        (70.0, Some(Level::Stop)),
        (84.9, Some(Level::Stop)),
        (85.0, None),
        (90.0, None),
        (96.0, None),
        (99.0, None),
    ] {
        let child = setup(group::CHILD, HEART, (NASAL_CANNULA, 2.0), spo2);
        let told = target(&child);
        assert_eq!(told.as_ref().map(|(level, ..)| *level), level, "{spo2} %");
        assert!(told.is_none_or(|(_, next, _)| next.is_none()));
        let codes: Vec<&str> = found(&child).iter().map(Finding::code).collect();
        assert!(codes.contains(&"no-target-for-condition"), "{codes:?}");
    }
}

/// In the first minutes of life the book has no line of "very low"; there what is below the range warns. At 5 minutes the
/// range is 80 to 85 %.
#[test]
fn a_newborn_with_a_condition_the_book_doesnt_know_is_still_looked_after() {
    const HEART: &[ConditionId] = &[condition::HEART_ATTACK];
    for (spo2, level) in [
        (79.0, Some(Level::Warn)),
        (80.0, None),
        (83.0, None),
        (85.0, None),
        (95.0, None),
    ] {
        let baby =
            setup(group::NEWBORN, HEART, (BLOW_BY, 5.0), spo2).minute_of_life(Time::minutes(5.0).unwrap());
        let told = target(&baby);
        assert_eq!(
            told.map(|(level, next, _)| (level, next)),
            level.map(|level| (level, None)),
            "{spo2} %"
        );
    }
}

/// Two conditions whose targets differ are for a person to settle: by one of them, 83 % is not even very low. The general
/// target, which holds for neither, is not held against the patient.
#[test]
fn where_two_targets_differ_neither_is_judged_by() {
    const BOTH: &[ConditionId] = &[condition::RETAINS_CO2, condition::HEART_ATTACK];
    let torn = setup(group::ADULT, BOTH, (NON_REBREATHER, 15.0), 83.0);
    let codes: Vec<&str> = found(&torn).iter().map(Finding::code).collect();
    assert!(codes.contains(&"several-targets"), "{codes:?}");
    assert_eq!(target(&torn), None);
}

/// More than 100 % is no saturation: said once, and nothing judged by it.
#[test]
fn a_reading_that_can_be_none_is_told_and_not_judged_by() {
    const NONE: &[ConditionId] = &[];
    for (spo2, told) in [(100.0, false), (101.0, true), (196.0, true)] {
        let all = found(&setup(group::ADULT, NONE, (NASAL_CANNULA, 2.0), spo2));
        let unbelievable: Vec<String> = all
            .iter()
            .filter(|finding| finding.code() == "saturation-out-of-bounds")
            .map(|finding| format!("{}: {finding}", finding.level))
            .collect();
        if told {
            let words = format!(
                "could not be checked: whether the target is met: expected a saturation from 0 to 100 %, found {spo2} %"
            );
            assert_eq!(unbelievable, [words]);
        } else {
            assert_eq!(unbelievable, [""; 0]);
        }
        let codes: Vec<&str> = all.iter().map(Finding::code).collect();
        assert_eq!(codes.contains(&"above-target"), !told, "{codes:?}");
        assert!(!codes.contains(&"saturation-not-given"), "{codes:?}");
    }
}
