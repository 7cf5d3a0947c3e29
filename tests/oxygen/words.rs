//! What the checks of a set-up and of a duration say: the words a crew reads, the names a program goes by, and what the book
//! advises.

use oxyfolio::book::{ConditionId, Fact};
use oxyfolio::check::duration::{Bound, GaugeReading, NoDuration, Supply};
use oxyfolio::check::{About, Finding, Findings, Level, Missing, NotThisBook, Report, Setup, check_setup};
use oxyfolio::quantity::{Percent, Time};
use oxyfolio::{RULEBOOK, TABLES, condition, cylinder, device, group, hazard};

use super::{bar, celsius, flow, litres, psi};

fn minutes(value: f64) -> Time {
    Time::minutes(value).unwrap()
}

fn spo2(value: f64) -> Percent {
    Percent::new(value).unwrap()
}

/// Every finding of a set-up, by the book and, word for word, by the tables.
fn found(setup: &Setup<'_>) -> Vec<Finding<'static>> {
    let (mut all, mut same) = (Vec::new(), Vec::new());
    check_setup(&RULEBOOK, setup, |finding| all.push(finding)).unwrap();
    check_setup(hazard::Guards, setup, |finding| same.push(finding.to_string())).unwrap();
    assert_eq!(all.iter().map(ToString::to_string).collect::<Vec<_>>(), same);
    all
}

/// The words of the one finding with a code.
fn words(setup: &Setup<'_>, code: &str) -> String {
    let all = found(setup);
    let [finding] = all
        .iter()
        .filter(|finding| finding.code() == code)
        .collect::<Vec<_>>()[..]
    else {
        panic!("expected one {code} in {all:#?}")
    };
    finding.to_string()
}

#[test]
fn levels_and_bounds_have_a_word_for_people_and_one_for_programs() {
    for (level, word, code) in [
        (Level::Note, "note", "note"),
        (Level::Unknown, "could not be checked", "unknown"),
        (Level::Warn, "warning", "warn"),
        (Level::Stop, "stop", "stop"),
    ] {
        assert_eq!((level.word(), level.code()), (word, code));
        assert_eq!(level.to_string(), word);
    }
    for (bound, word) in [(Bound::Density, "density"), (Bound::Factor, "factor")] {
        assert_eq!(bound.word(), word);
        assert_eq!(bound.to_string(), word);
    }
    for (gauge, word, told) in [
        (GaugeReading::Fair, "fair", None),
        (GaugeReading::Low, "reads-low", Some("cold: the gauge reads low")),
        (
            GaugeReading::High,
            "reads-high",
            Some("hot: the gauge reads high"),
        ),
    ] {
        assert_eq!(gauge.word(), word);
        assert_eq!(gauge.sentence().is_some(), told.is_some());
        assert!(told.is_none_or(|told| gauge.sentence().unwrap().contains(told)));
    }
}

/// Why there is no duration: each case brought about, and what it asks for instead.
#[test]
fn no_duration_says_what_was_missing() {
    let supply = Supply::new(litres(2.0), bar(14.0));
    let none = supply.lasts(bar(100.0), flow(0.0));
    let nothing = Supply::new(litres(0.0), bar(14.0)).lasts(bar(100.0), flow(1.0));
    let factor = oxyfolio::quantity::Factor::litres_per_psi(0.0).unwrap();
    let no_factor = supply.factor(factor).lasts(bar(100.0), flow(1.0));
    let trickle = supply.lasts(bar(100.0), flow(1e-9));
    let dense = supply.lasts(bar(301.0), flow(1.0));
    for (error, words) in [
        (
            none,
            "expected a flow above 0 L/min to work out a duration, found none",
        ),
        (
            nothing,
            "expected a water capacity above 0 L to work out a duration, found none",
        ),
        (
            no_factor,
            "expected a cylinder factor above 0 to work out a duration, found none",
        ),
        (
            trickle,
            "expected a flow that uses the gas within 120 years, found less",
        ),
    ] {
        assert_eq!(error.unwrap_err().to_string(), words);
    }
    let NoDuration::OutsideDomain(outside) = dense.unwrap_err() else {
        panic!("301 bar is beyond what is known")
    };
    assert_eq!(
        NoDuration::OutsideDomain(outside).to_string(),
        outside.to_string()
    );
    assert!(outside.to_string().contains("301 bar"), "{outside}");
    for (error, words) in [
        (
            supply.pressure_for(0, flow(1.0)).unwrap_err(),
            "expected at least 1 minute, found none",
        ),
        (
            supply.flow_for(bar(14.0), 10).unwrap_err(),
            "expected a reading above the residual pressure, found no gas above it",
        ),
        (
            supply.pressure_for(600, flow(15.0)).unwrap_err(),
            "expected minutes and a flow that this cylinder can give, found more than it holds at 300 bar",
        ),
    ] {
        assert_eq!(error.to_string(), words);
    }
    assert_eq!(
        NotThisBook.to_string(),
        "expected identifiers of this rulebook, found one of another"
    );
}

/// What could not be checked: each with the set-up that brings it about, its name for programs and its words.
#[test]
fn what_was_not_given_is_named() {
    const NONE: &[ConditionId] = &[];
    const BOTH: &[ConditionId] = &[condition::RETAINS_CO2, condition::HEART_ATTACK];
    const HEART: &[ConditionId] = &[condition::HEART_ATTACK];
    let mask = Setup::new(device::NON_REBREATHER, flow(15.0));
    let adult = mask.group(group::ADULT).conditions(NONE);
    let full = adult.cylinder(cylinder::D).pressure(psi(2000.0));
    let baby = Setup::new(device::BLOW_BY, flow(5.0)).group(group::NEWBORN);
    for (setup, missing, code, said) in [
        (
            mask,
            Missing::Group,
            "group-not-given",
            "the patient's group was not given",
        ),
        (
            adult,
            Missing::Cylinder,
            "cylinder-not-given",
            "no cylinder was given",
        ),
        (
            adult.cylinder(cylinder::D),
            Missing::Pressure,
            "pressure-not-given",
            "no gauge reading was given",
        ),
        (
            adult,
            Missing::Temperature,
            "temperature-not-given",
            "minutes are worked out for 21 °C",
        ),
        (
            full.temperature(celsius(61.0)),
            Missing::Density,
            "density-not-known",
            "from -40 to 60 °C and to 300 bar",
        ),
        (
            full,
            Missing::MinutesWanted,
            "minutes-wanted-not-given",
            "the minutes wanted were not given",
        ),
        (
            adult,
            Missing::Saturation,
            "saturation-not-given",
            "no saturation was given",
        ),
        (
            mask.group(group::ADULT),
            Missing::Conditions,
            "conditions-not-given",
            "conditions were not given",
        ),
        (
            baby.conditions(NONE),
            Missing::MinuteOfLife,
            "minute-of-life-not-given",
            "the time since birth was not given",
        ),
        (
            baby.conditions(NONE).minute_of_life(minutes(0.5)),
            Missing::Target,
            "no-target",
            "the book has none for this group and these conditions",
        ),
        (
            mask.group(group::CHILD).conditions(HEART),
            Missing::ConditionTarget,
            "no-target-for-condition",
            "none for one of these conditions in this group; ask medical direction",
        ),
        (
            mask.group(group::ADULT).conditions(BOTH),
            Missing::OneTarget,
            "several-targets",
            "the book has different ones for these conditions",
        ),
    ] {
        let all = found(&setup);
        let finding = all
            .iter()
            .find(|finding| finding.about == About::Missing(missing))
            .unwrap_or_else(|| panic!("no {code} in {all:#?}"));
        assert_eq!((finding.level, finding.code()), (Level::Unknown, code));
        assert!(finding.to_string().contains(said), "{finding}");
        assert_eq!(finding.to_string(), missing.to_string());
        assert_eq!(finding.remedy(), None);
    }
}

/// What the book says to do stands with the finding: too little with the one, too much with the other.
#[test]
fn a_finding_carries_the_books_advice() {
    const NONE: &[ConditionId] = &[];
    let cannula = RULEBOOK.device(device::NASAL_CANNULA).unwrap();
    let adult = RULEBOOK.target(oxyfolio::target::ADULT_GENERAL).unwrap();
    let flame = RULEBOOK.hazard(oxyfolio::hazard::FLAME_NEAR).unwrap();
    let at = |litres| {
        Setup::new(device::NASAL_CANNULA, flow(litres))
            .group(group::ADULT)
            .conditions(NONE)
    };
    let advice = |setup: Setup<'_>, code: &str| {
        let all = found(&setup);
        let finding = all.iter().find(|finding| finding.code() == code);
        finding
            .unwrap_or_else(|| panic!("no {code} in {all:#?}"))
            .remedy()
            .map(str::to_owned)
    };
    for (setup, code, words) in [
        (at(0.5), "flow-too-low", &*cannula.too_low),
        (at(8.0), "flow-too-high", &*cannula.too_high),
        (at(2.0).spo2(spo2(90.0)), "below-target", &*adult.step_up),
        (at(2.0).spo2(spo2(99.0)), "above-target", &*adult.step_down),
        (at(2.0).observed(Fact::FlameNear, true), "hazard", &*flame.remedy),
    ] {
        assert!(!words.is_empty());
        assert_eq!(advice(setup, code).as_deref(), Some(words), "{code}");
    }
    // Whether it is there can't be told, and what to do against it is told all the same.
    let all = found(&at(2.0));
    let unknown = all.iter().filter(|finding| finding.code() == "hazard-unknown");
    let mut told = 0;
    for finding in unknown {
        let About::HazardUnknown(id) = finding.about else {
            panic!("{finding:?}")
        };
        assert_eq!(finding.remedy(), Some(&*RULEBOOK.hazard(id).unwrap().remedy));
        told += 1;
    }
    assert!(told > 0, "{all:#?}");
    assert_eq!(
        advice(
            at(2.0).cylinder(cylinder::D).pressure(psi(150.0)),
            "below-residual"
        ),
        None
    );
}

/// Sentences a crew reads, each about a limit of the demonstration's book.
#[test]
fn findings_read_as_sentences() {
    let mask = Setup::new(device::NON_REBREATHER, flow(6.0)).group(group::ADULT);
    assert_eq!(
        words(&mask, "flow-too-low"),
        "6 L/min is too low for the non-rebreather mask: the book says 10 to 15 L/min"
    );
    let cannula = Setup::new(device::NASAL_CANNULA, flow(8.0)).group(group::ADULT);
    assert_eq!(
        words(&cannula, "flow-too-high"),
        "8 L/min is too high for the nasal cannula: the book says 1 to 6 L/min"
    );
    let newborn = Setup::new(device::NON_REBREATHER, flow(10.0)).group(group::NEWBORN);
    assert_eq!(
        words(&newborn, "device-does-not-fit"),
        "the non-rebreather mask does not fit the group newborn"
    );
}

/// All that was found in one value, the gravest first.
#[test]
fn a_report_begins_with_the_gravest_and_keeps_the_minutes() {
    let low = Setup::new(device::NON_REBREATHER, flow(6.0))
        .group(group::ADULT)
        .cylinder(cylinder::D)
        .pressure(psi(2000.0));
    let report = Report::of(&RULEBOOK, &low).unwrap();
    assert_eq!((report.worst(), report.is_wrong()), (Some(Level::Stop), true));
    let d = Supply::of_size(&TABLES, cylinder::D).unwrap();
    let lasts = d.lasts(psi(2000.0), flow(6.0)).unwrap().minutes;
    assert!(lasts > 1);
    assert_eq!(report.minutes_left(), Some(lasts));
    let text = report.to_string();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), report.findings.len());
    assert!(
        lines[0].starts_with("stop: 6 L/min is too low") && lines[0].ends_with(" [flow-too-low]"),
        "{text}"
    );
    assert!(report.findings.is_sorted_by(|one, next| one.level >= next.level));
    // Without a cylinder no minutes, and they are not nought.
    let bare = Setup::new(device::NON_REBREATHER, flow(15.0)).group(group::ADULT);
    let report = Report::of(&RULEBOOK, &bare).unwrap();
    assert_eq!(report.minutes_left(), None);
    assert_eq!((report.worst(), report.is_wrong()), (Some(Level::Unknown), true));
    // An empty D at the residual: no minutes left is a number too.
    let empty = Report::of(&RULEBOOK, &low.pressure(psi(200.0))).unwrap();
    assert_eq!(empty.minutes_left(), Some(0));
}

/// With everything known and nothing wrong only notes are left, and they are no reason to hold back.
#[test]
fn a_set_up_with_nothing_but_notes_is_in_order() {
    const NONE: &[ConditionId] = &[];
    let sound = Setup::new(device::NASAL_CANNULA, flow(2.0))
        .group(group::ADULT)
        .conditions(NONE)
        .cylinder(cylinder::E)
        .pressure(psi(2000.0))
        .temperature(celsius(21.0))
        .minutes_wanted(minutes(60.0))
        .spo2(spo2(96.0));
    let report = Report::of(&RULEBOOK, &sound).unwrap();
    assert_eq!(
        (report.worst(), report.is_wrong()),
        (Some(Level::Note), false),
        "{report}"
    );
}

/// What finds no room is counted; what found it is not.
#[test]
fn findings_without_room_are_counted() {
    let setup = Setup::new(device::NON_REBREATHER, flow(6.0)).group(group::ADULT);
    let all = found(&setup);
    assert!(all.len() > 3, "{all:#?}");
    let (mut two, mut exact) = (Findings::<2>::new(), Findings::<64>::new());
    for finding in &all {
        two.push(*finding);
        exact.push(*finding);
    }
    assert_eq!((two.omitted(), two.iter().count()), (all.len() - 2, 2));
    assert_eq!((exact.omitted(), exact.iter().count()), (0, all.len()));
}

/// A size by its name is the size itself, in the book and in the tables.
#[test]
fn a_supply_by_the_name_of_a_size_is_that_of_the_size() {
    for (index, size) in (0_u16..).zip(&RULEBOOK.cylinders) {
        let id = oxyfolio::book::CylinderId(index);
        let supply = Supply::of(&RULEBOOK, size);
        assert_eq!(Supply::of_size(&RULEBOOK, id), Some(supply));
        assert_eq!(Supply::of_size(&TABLES, id), Some(supply));
    }
    let beyond = oxyfolio::book::CylinderId(u16::MAX);
    assert_eq!(Supply::of_size(&TABLES, beyond), None);
}

/// At the residual pressure both methods find nothing; where they find the same it is called density.
#[test]
fn at_the_residual_pressure_nothing_is_left_by_either_method() {
    for size in &RULEBOOK.cylinders {
        let residual = RULEBOOK.policies.residual_pressure;
        let lasts = Supply::of(&RULEBOOK, size).lasts(residual, flow(1.0)).unwrap();
        assert_eq!((lasts.minutes, lasts.bound), (0, Bound::Density));
        assert_eq!(lasts.by_factor.unwrap().usable, lasts.by_density.usable);
    }
}

/// The longest time there is, 120 years of 365¼ days, is still told; longer is no flow.
#[test]
fn a_hundred_and_twenty_years_to_the_minute_are_the_most() {
    const MOST: f64 = 63_115_200.0;
    let supply = Supply::new(litres(2.0), bar(14.0));
    let mut exact = 0;
    for reading in 30..=200 {
        let reading = bar(f64::from(reading));
        let usable = supply.lasts(reading, flow(1.0)).unwrap().usable.as_litres();
        let trickle = flow(usable / MOST);
        let lasts = supply.lasts(reading, trickle).map(|lasts| lasts.minutes);
        // Binary rounding leaves some of them a hair beside it.
        if usable / trickle.as_litres_per_minute() == MOST {
            assert_eq!(lasts, Ok(63_115_200));
            exact += 1;
        }
        assert_eq!(
            supply.lasts(reading, flow(usable / MOST * 0.999)),
            Err(NoDuration::TooLong)
        );
    }
    assert!(exact > 20, "{exact} came out exactly");
}
