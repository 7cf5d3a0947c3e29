//! Pressures, filling, tests, temperatures and the margin.

use oxyfolio::RULEBOOK;
use oxyfolio::book::Value;
use oxyfolio::check::{About, Setup};
use oxyfolio::cylinder::{D, E};
use oxyfolio::device::NON_REBREATHER;
use oxyfolio::policy::{FILL_LIMIT, LEAK_TEST_ALLOWANCE, LEAK_TEST_TIME, LINE_PRESSURE};
use oxyfolio::quantity::{Time, TimeUnit};

use super::facts::fact;
use super::support::{agree, ends, findings, flow, percent, policy, psi};

#[test]
fn residual_is_200_psi() {
    let residual = RULEBOOK.policies.residual_pressure;
    for row in ["resid-200-aaos", "resid-200-out"] {
        let fact = fact(row);
        assert!(
            agree(residual.as_psi(), fact.number(), 1e-9),
            "{residual}: {fact}"
        );
    }
    let empty = fact("resid-150-kkk");
    assert!(residual > psi(empty.number()), "{residual}: {empty}");
}

#[test]
fn change_over_is_500_psi() {
    let change_over = RULEBOOK.policies.change_over_pressure;
    for row in ["resid-500-or", "resid-500-wi", "resid-500-fd"] {
        let fact = fact(row);
        assert!(
            agree(change_over.as_psi(), fact.number(), 1e-9),
            "{change_over}: {fact}"
        );
    }
}

#[test]
fn three_pressures_are_three_pressures() {
    let policies = &RULEBOOK.policies;
    assert!(
        policies.residual_pressure < policies.change_over_pressure
            && policies.change_over_pressure < policies.in_service_minimum,
        "{}, {}, {}: {} and {}",
        policies.residual_pressure,
        policies.change_over_pressure,
        policies.in_service_minimum,
        fact("resid-200-aaos"),
        fact("resid-500-or")
    );
}

#[test]
fn a_cylinder_in_service_is_never_below_what_state_rules_ask() {
    for row in ["resid-500-or", "resid-500-wi"] {
        let fact = fact(row);
        let least = RULEBOOK.policies.in_service_minimum;
        assert!(least >= psi(fact.number()), "{least}: {fact}");
    }
}

/// What the checker says of a reading on an E.
fn said_of(reading: f64) -> Vec<&'static str> {
    let setup = Setup::new(NON_REBREATHER, flow(15.0))
        .cylinder(E)
        .pressure(psi(reading));
    findings(&setup)
        .iter()
        .filter(|finding| {
            matches!(
                finding.about,
                About::BelowResidual { .. }
                    | About::ChangeCylinder { .. }
                    | About::BelowInServiceMinimum { .. }
                    | About::Overfilled { .. }
            )
        })
        .map(oxyfolio::check::Finding::code)
        .collect()
}

#[test]
fn the_checker_speaks_at_the_published_pressures() {
    let (residual, change_over) = (fact("resid-200-aaos"), fact("resid-500-or"));
    assert_eq!(said_of(residual.number() - 1.0), ["below-residual"], "{residual}");
    assert_eq!(
        said_of(residual.number() + 1.0),
        ["change-cylinder"],
        "{residual}"
    );
    assert_eq!(
        said_of(change_over.number()),
        ["change-cylinder"],
        "{change_over}"
    );
    assert_eq!(
        said_of(change_over.number() + 1.0),
        ["below-in-service-minimum"],
        "{change_over}"
    );
    assert!(said_of(2000.0).is_empty(), "{change_over}");
}

#[test]
fn the_checker_speaks_above_the_pressure_of_a_plus_mark() {
    let plus = fact("steel-2216");
    assert!(said_of(plus.number() - 0.5).is_empty(), "{plus}");
    assert_eq!(said_of(plus.number() + 0.5), ["overfilled"], "{plus}");
}

#[test]
fn fill_limit_is_a_tenth_over_and_only_with_a_plus() {
    for row in ["cfr-plus", "cfr-plus-hbk"] {
        let fact = fact(row);
        let limit = RULEBOOK.policies.fill_limit;
        assert_eq!(limit, percent(100.0 + fact.number()), "{fact}");
        let note = policy(FILL_LIMIT).note.as_deref().unwrap_or("");
        assert!(
            note.contains("plus") && note.contains("latest") && note.contains("100 %"),
            "the note `{note}` does not say for which cylinders: {fact}"
        );
    }
}

#[test]
fn cylinders_are_tested_at_least_every_5_years() {
    for row in ["cfr-3al-least", "cfr-3aa-least"] {
        let fact = fact(row);
        let interval = RULEBOOK.policies.requalification_interval;
        let published = Time::of(fact.number(), TimeUnit::Year).unwrap();
        assert_eq!(interval.written(), published.written(), "{interval}: {fact}");
    }
}

#[test]
fn cylinders_stay_below_the_heat_limits_of_the_codes() {
    let fact = fact("temp-heat");
    let (least, _) = fact.range();
    for range in [
        RULEBOOK.policies.use_temperature,
        RULEBOOK.policies.storage_temperature,
    ] {
        let (_, high) = ends(range);
        assert!(high.as_celsius() < least, "up to {high}: {fact}");
    }
}

#[test]
fn cylinders_are_kept_wherever_they_are_used() {
    let (used, kept) = (
        RULEBOOK.policies.use_temperature,
        RULEBOOK.policies.storage_temperature,
    );
    let (low, high) = ends(used);
    assert!(
        kept.holds(low) && kept.holds(high),
        "used at {used}, kept at {kept}: {}",
        fact("temp-heat")
    );
}

#[test]
fn line_pressure_is_50_give_or_take_5() {
    let Value::PressureRange(range) = policy(LINE_PRESSURE).value else {
        panic!("expected a range of pressure");
    };
    let (low, high) = ends(range);
    for row in ["line-wi", "line-kkk"] {
        let fact = fact(row);
        let (least, most) = fact.range();
        assert!(
            agree(low.as_psi(), least, 1e-9) && agree(high.as_psi(), most, 1e-9),
            "{range}: {fact}"
        );
    }
}

#[test]
fn leak_test_is_100_psi_in_90_seconds() {
    let (fall, time) = (fact("leak-psi"), fact("leak-s"));
    let Value::Pressure(allowed) = policy(LEAK_TEST_ALLOWANCE).value else {
        panic!("expected a pressure");
    };
    let Value::Time(length) = policy(LEAK_TEST_TIME).value else {
        panic!("expected a time");
    };
    assert!(agree(allowed.as_psi(), fall.number(), 1e-9), "{allowed}: {fall}");
    assert_eq!(length.written(), (time.number(), TimeUnit::Second), "{time}");
}

#[test]
fn planning_adds_half_as_much_again() {
    let fact = fact("cp-reserve");
    let margin = RULEBOOK.policies.planning_margin;
    assert_eq!(margin, percent(fact.number()), "{fact}");
    // An E that lasts 39 minutes is enough for 26 and not for 27.
    let short = |minutes: f64| {
        let setup = Setup::new(NON_REBREATHER, flow(10.0))
            .cylinder(E)
            .pressure(psi(1600.0))
            .minutes_wanted(Time::minutes(minutes).unwrap());
        findings(&setup)
            .iter()
            .any(|finding| matches!(finding.about, About::NoMargin { .. } | About::TooShort { .. }))
    };
    assert!(!short(26.0) && short(27.0), "{fact}");
}

#[test]
fn a_cylinder_that_ends_before_the_journey_stops_the_crew() {
    let fact = fact("wx-d-2000-15");
    let setup = Setup::new(NON_REBREATHER, flow(15.0))
        .cylinder(D)
        .pressure(psi(2000.0))
        .minutes_wanted(Time::minutes(20.0).unwrap());
    assert!(
        findings(&setup)
            .iter()
            .any(|finding| matches!(finding.about, About::TooShort { minutes_left: 19, .. })),
        "20 minutes were wanted: {fact}"
    );
}

#[cfg(feature = "compile")]
#[test]
fn the_chapter_on_handling_gives_the_distances_of_the_codes() {
    let (_, text) = oxyfolio::CHAPTERS
        .iter()
        .find(|(name, _)| name.starts_with("02-"))
        .unwrap();
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let (far, wall, fire) = (fact("osha-dist"), fact("osha-wall-h"), fact("osha-wall-t"));
    assert_eq!(fire.number(), 30.0, "written as half an hour: {fire}");
    let storage = format!(
        "{} feet between stored oxygen and fuel gas or anything that burns, or for a wall at least {} feet high that \
         resists fire for half an hour",
        far.value, wall.value
    );
    assert!(
        text.contains(&storage),
        "expected `{storage}`: {far}, {wall} and {fire}"
    );
    let sprinklers = fact("nfpa-5");
    let other = format!("{} feet if the room has sprinklers", sprinklers.value);
    assert!(text.contains(&other), "expected `{other}`: {sprinklers}");
    assert!(text.contains("Your fire code decides"), "{far} and {sprinklers}");
}
