//! Saturation targets, as the book states them and as the checker answers.

use oxyfolio::book::{ConditionId, GroupId, Saturation, TargetId, Urgent, Value};
use oxyfolio::check::{About, Setup};
use oxyfolio::device::{BAG_VALVE_MASK, BLOW_BY, NON_REBREATHER};
use oxyfolio::quantity::Time;
use oxyfolio::{RULEBOOK, condition, group, policy, target as book};

use super::facts::{Fact, fact};
use super::support::{device, findings, flow, percent, percent_ends, policy as rule, target};

fn saturation(id: TargetId) -> (f64, f64) {
    match target(id).saturation {
        Saturation::Range(range) => percent_ends(range),
        Saturation::NotReliable => panic!("expected a range for {}", target(id).rule.id),
    }
}

#[derive(Debug, PartialEq)]
enum Answer {
    Below,
    Inside,
    Above,
    NotReliable,
}

/// What the checker says of a saturation.
fn answer(group: GroupId, conditions: &[ConditionId], minute: Option<f64>, spo2: f64) -> Answer {
    let mut setup = Setup::new(NON_REBREATHER, flow(15.0))
        .group(group)
        .conditions(conditions)
        .spo2(percent(spo2));
    if let Some(minute) = minute {
        setup = setup.minute_of_life(Time::minutes(minute).unwrap());
    }
    let mut answer = Answer::Inside;
    for finding in findings(&setup) {
        match finding.about {
            About::BelowTarget { .. } => answer = Answer::Below,
            About::AboveTarget { .. } => answer = Answer::Above,
            About::SaturationNotReliable { .. } => answer = Answer::NotReliable,
            About::Missing(missing) if finding.kind == oxyfolio::book::Kind::Agency => {
                // The cylinder is not given here; a target that is not found would be.
                assert_eq!(missing, oxyfolio::check::Missing::Cylinder, "no target holds");
            }
            _ => {}
        }
    }
    answer
}

/// Asserts that the checker answers with exactly the published range.
fn assert_answers(fact: &Fact, group: GroupId, conditions: &[ConditionId], minute: Option<f64>) {
    let (low, high) = fact.range();
    for (spo2, expected) in [
        (low - 1.0, Answer::Below),
        (low, Answer::Inside),
        (high, Answer::Inside),
        (high + 1.0, Answer::Above),
    ] {
        assert_eq!(
            answer(group, conditions, minute, spo2),
            expected,
            "{spo2} % at minute {minute:?}: {fact}"
        );
    }
}

#[test]
fn adults_94_to_98() {
    for row in ["sat-bts", "sat-aarc-adult", "sat-nasemso"] {
        let fact = fact(row);
        assert_eq!(saturation(book::ADULT_GENERAL), fact.range(), "{fact}");
        assert_answers(&fact, group::ADULT, &[], None);
    }
}

#[test]
fn adults_who_retain_carbon_dioxide_88_to_92() {
    for row in ["sat-bts-copd", "sat-aarc-copd"] {
        let fact = fact(row);
        assert_eq!(saturation(book::ADULT_RETAINS_CO2), fact.range(), "{fact}");
        assert_answers(&fact, group::ADULT, &[condition::RETAINS_CO2], None);
    }
}

#[test]
fn critical_illness_starts_with_a_reservoir_mask_at_15() {
    let first = fact("sat-bts-crit");
    let start = target(book::CRITICAL_ILLNESS).start;
    assert_eq!(
        (start.device, start.flow),
        (NON_REBREATHER, flow(first.number())),
        "{first}"
    );
    let aim = fact("sat-bts-copd-crit");
    assert_eq!(saturation(book::CRITICAL_ILLNESS), aim.range(), "{aim}");
    assert_answers(&aim, group::ADULT, &[condition::CRITICAL_ILLNESS], None);
}

#[test]
fn an_adult_below_85_starts_with_a_reservoir_mask_at_15() {
    let (below, first) = (fact("sat-bts-85"), fact("dev-resv-bts17"));
    let Some(Urgent { below: line, start }) = target(book::ADULT_GENERAL).urgent else {
        panic!("expected an urgent start: {below}");
    };
    assert_eq!(line, percent(below.number()), "{below}");
    assert_eq!(
        (start.device, start.flow),
        (NON_REBREATHER, flow(first.number())),
        "{first}"
    );
    assert_eq!(
        rule(policy::URGENT_SATURATION).value,
        Value::Percent(line),
        "{below}"
    );
}

#[test]
fn carbon_monoxide_makes_the_reading_unreliable() {
    let fact = fact("sat-bts-co");
    assert_eq!(
        target(book::CARBON_MONOXIDE).saturation,
        Saturation::NotReliable,
        "{fact}"
    );
    for spo2 in [70.0, 88.0, 96.0, 100.0] {
        for group in [group::ADULT, group::CHILD, group::INFANT] {
            assert_eq!(
                answer(group, &[condition::CARBON_MONOXIDE], None, spo2),
                Answer::NotReliable,
                "{spo2} %: {fact}"
            );
            // Another condition does not bring the number back.
            for other in [condition::RETAINS_CO2, condition::CRITICAL_ILLNESS] {
                assert_eq!(
                    answer(group, &[other, condition::CARBON_MONOXIDE], None, spo2),
                    Answer::NotReliable,
                    "{spo2} % with {other:?}: {fact}"
                );
            }
        }
    }
    let start = target(book::CARBON_MONOXIDE).start;
    assert_eq!((start.device, start.flow), (NON_REBREATHER, flow(15.0)), "{fact}");
    for rung in &target(book::CARBON_MONOXIDE).ladder {
        assert!(
            [NON_REBREATHER, BAG_VALVE_MASK].contains(&rung.device),
            "as much oxygen as possible: {fact}"
        );
    }
}

#[test]
fn after_the_circulation_returns_94_to_98_and_not_below() {
    for row in ["sat-rosc-erc10", "sat-rosc-erc21"] {
        let fact = fact(row);
        assert_eq!(
            saturation(book::ADULT_RETURN_OF_CIRCULATION),
            fact.range(),
            "{fact}"
        );
        assert_answers(&fact, group::ADULT, &[condition::RETURN_OF_CIRCULATION], None);
    }
    let (low, _) = saturation(book::ADULT_RETURN_OF_CIRCULATION);
    let (least, worse) = (fact("sat-rosc-aha10"), fact("sat-exact-low"));
    assert!(low >= least.number(), "from {low} %: {least}");
    assert!(low >= worse.range().1, "from {low} %: {worse}");
}

#[test]
fn a_heart_attack_gets_oxygen_only_below_90() {
    let (low, high) = saturation(book::ADULT_HEART_ATTACK);
    for row in ["sat-stemi-esc", "sat-ami-trial"] {
        let fact = fact(row);
        assert_eq!(low, fact.number(), "{fact}");
    }
    // Above the start, the general aim is the ceiling.
    let general = fact("sat-bts");
    assert!(high <= general.range().1, "to {high} %: {general}");
}

/// Each minute of life with its row.
const MINUTES: [(f64, TargetId, &str); 6] = [
    (1.0, book::NEWBORN_1_MIN, "neo-aha-1"),
    (2.0, book::NEWBORN_2_MIN, "neo-aha-2"),
    (3.0, book::NEWBORN_3_MIN, "neo-aha-3"),
    (4.0, book::NEWBORN_4_MIN, "neo-aha-4"),
    (5.0, book::NEWBORN_5_MIN, "neo-aha-5"),
    (10.0, book::NEWBORN_10_MIN, "neo-aha-10"),
];

#[test]
fn newborn_by_minute_of_life() {
    for (minute, id, row) in MINUTES {
        let fact = fact(row);
        assert_eq!(saturation(id), fact.range(), "{fact}");
        assert_eq!(
            target(id).minute_of_life.map(Time::as_minutes),
            Some(minute),
            "{fact}"
        );
        assert_answers(&fact, group::NEWBORN, &[], Some(minute));
        // A range holds from its minute until the next.
        assert_answers(&fact, group::NEWBORN, &[], Some(minute + 0.9));
    }
    assert_answers(&fact("neo-aha-5"), group::NEWBORN, &[], Some(9.5));
}

#[test]
fn newborn_single_values_of_another_guideline_lie_in_the_ranges() {
    for (id, row) in [
        (book::NEWBORN_2_MIN, "neo-erc-2"),
        (book::NEWBORN_5_MIN, "neo-erc-5"),
        (book::NEWBORN_10_MIN, "neo-erc-10"),
    ] {
        let fact = fact(row);
        let (low, high) = saturation(id);
        assert!(
            low <= fact.number() && fact.number() <= high,
            "{low} to {high} %: {fact}"
        );
    }
}

#[test]
fn a_newborn_is_never_started_on_pure_oxygen() {
    let fact = fact("neo-fio2-aha");
    for (_, id, _) in MINUTES {
        let target = target(id);
        let start = device(target.start.device);
        assert_eq!(target.start.device, BLOW_BY, "{}: {fact}", target.rule.id);
        assert!(
            !start.oxygen.holds(percent(fact.number())),
            "{} starts with {}: {fact}",
            target.rule.id,
            start.oxygen
        );
        assert!(target.urgent.is_none(), "{}: {fact}", target.rule.id);
    }
    for (_, id, _) in &MINUTES[..4] {
        let step_up = &target(*id).step_up;
        assert!(step_up.starts_with("Air first"), "`{step_up}`: {fact}");
    }
}

#[test]
fn a_newborn_range_never_falls_with_time() {
    let ranges: Vec<(f64, f64)> = MINUTES.iter().map(|(_, id, _)| saturation(*id)).collect();
    for pair in ranges.windows(2) {
        assert!(
            pair[1].0 > pair[0].0 && pair[1].1 > pair[0].1,
            "{pair:?}: {}",
            fact("neo-aha-1")
        );
    }
}

#[test]
fn no_target_but_that_of_a_newborn_aims_below_88() {
    let fact = fact("sat-bts-copd");
    for target in &RULEBOOK.targets {
        let Saturation::Range(range) = target.saturation else {
            continue;
        };
        let (low, high) = percent_ends(range);
        if !target.groups.contains(&group::NEWBORN) {
            assert!(
                low >= fact.range().0 && high <= 98.0,
                "{} aims at {range}: {fact}",
                target.rule.id
            );
        }
    }
}
