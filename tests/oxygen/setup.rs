//! A set-up's minutes go by its temperature.

use oxyfolio::check::duration::of_cylinder_at;
use oxyfolio::check::{About, Finding, Level, Missing, Setup, check_setup};
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
