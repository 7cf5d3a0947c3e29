//! A set-up's minutes go by its temperature.

use oxyfolio::check::duration::of_cylinder_at;
use oxyfolio::check::{About, Finding, Findings, Level, Missing, NotThisBook, Setup, check_setup};
use oxyfolio::quantity::Temperature;
use oxyfolio::{RULEBOOK, cylinder, device, group};

use super::{bar, celsius, flow, psi};

fn findings(temperature: Option<Temperature>, bar_of: f64) -> Vec<Finding<'static>> {
    let mut setup = Setup::new(device::NON_REBREATHER, flow(15.0))
        .group(group::ADULT)
        .cylinder(cylinder::D)
        .pressure(bar(bar_of));
    if let Some(temperature) = temperature {
        setup = setup.temperature(temperature);
    }
    let mut found = Vec::new();
    check_setup(&RULEBOOK, &setup, |finding| found.push(finding)).unwrap();
    found
}

fn minutes(found: &[Finding<'_>]) -> Option<u32> {
    found.iter().find_map(|finding| match finding.about {
        About::MinutesLeft { minutes_left } => Some(minutes_left),
        _ => None,
    })
}

#[test]
fn a_hot_cylinder_lasts_shorter_and_its_gauge_is_noted() {
    let d = RULEBOOK.cylinder(cylinder::D).unwrap();
    let reading = psi(2000.0);
    let hot = findings(Some(celsius(50.0)), reading.as_bar());
    let expected = of_cylinder_at(&RULEBOOK, d, reading, celsius(50.0), flow(15.0)).unwrap();
    assert_eq!(minutes(&hot), Some(expected.minutes));
    // 253.6 L of real gas at 50 °C, 288.7 L at 21 °C (CoolProp 8.0.0); 288 L by factor.
    assert_eq!(minutes(&hot), Some(16));
    assert_eq!(minutes(&findings(None, reading.as_bar())), Some(19));
    let note = hot
        .iter()
        .find(|finding| finding.code() == "gauge-misleads")
        .unwrap();
    assert_eq!(note.level, Level::Note);
    assert!(
        note.to_string()
            .starts_with("at 50 °C the cylinder is hot: the gauge reads high")
    );
    let fair = findings(Some(celsius(18.0)), reading.as_bar());
    assert!(fair.iter().all(|finding| finding.code() != "gauge-misleads"));
}

#[test]
fn where_the_density_is_not_known_the_minutes_are_unknown_and_not_a_pass() {
    for (temperature, reading) in [(-45.0, 100.0), (65.0, 100.0), (20.0, 305.0)] {
        let found = findings(Some(celsius(temperature)), reading);
        assert_eq!(minutes(&found), None, "{temperature} °C, {reading} bar");
        let unknown = found
            .iter()
            .find(|finding| finding.about == About::Missing(Missing::Density))
            .unwrap();
        assert_eq!(
            (unknown.level, unknown.code()),
            (Level::Unknown, "density-not-known")
        );
        // A hazard that asks for the minutes left is not passed either.
        assert!(
            found
                .iter()
                .any(|finding| finding.code() == "hazard-unknown" && finding.rule.id() == "call-for-more")
        );
    }
}

/// Whether a set-up may be called in order: what is a note alone may, what could not be checked may not.
#[test]
fn only_notes_leave_a_set_up_in_order() {
    for (level, wrong) in [
        (Level::Note, false),
        (Level::Unknown, true),
        (Level::Warn, true),
        (Level::Stop, true),
    ] {
        assert_eq!(level.is_wrong(), wrong, "{level}");
    }
    let at = |litres_per_minute| {
        Setup::new(device::NON_REBREATHER, flow(litres_per_minute))
            .group(group::ADULT)
            .cylinder(cylinder::D)
            .pressure(psi(2000.0))
    };
    // 6 L/min lets the bag collapse: the book begins at 10 (tests/published).
    for (setup, at_least) in [(at(15.0), false), (at(6.0), true)] {
        let (mut few, mut all) = (Findings::<4>::new(), Vec::new());
        check_setup(&RULEBOOK, &setup, |finding| {
            few.push(finding);
            all.push(finding.level);
        })
        .unwrap();
        assert_eq!(few.is_wrong(), all.iter().any(|level| *level != Level::Note));
        assert!(!at_least || few.is_wrong());
    }
    let (mut others, mut note) = (Findings::<4>::new(), Findings::<4>::new());
    assert!(!others.is_wrong());
    for finding in findings(Some(celsius(50.0)), 120.0) {
        match finding.level {
            Level::Note => note.push(finding),
            _ => others.push(finding),
        }
    }
    assert!(note.worst().is_some() && !note.is_wrong());
    assert_eq!(others.is_wrong(), others.worst().is_some());
}

#[test]
fn what_is_of_another_book_is_refused_whatever_it_is() {
    let sound = Setup::new(device::NON_REBREATHER, flow(15.0));
    let refused = |setup: Setup<'_>| check_setup(&RULEBOOK, &setup, |_| ()).err();
    assert_eq!(refused(sound), None);
    let no_group = oxyfolio::book::GroupId(u16::MAX);
    let no_cylinder = oxyfolio::book::CylinderId(u16::MAX);
    let no_condition = [oxyfolio::book::ConditionId(u16::MAX)];
    assert_eq!(refused(sound.group(no_group)), Some(NotThisBook));
    assert_eq!(refused(sound.cylinder(no_cylinder)), Some(NotThisBook));
    assert_eq!(refused(sound.conditions(&no_condition)), Some(NotThisBook));
}
