//! The generated set-ups: as many as are asked for, spread over the field, and what is said of them holds.

use oxyfolio::check::{Setup, check_setup};
use oxyfolio::compare::{Comes, GridChange, SETUPS, compare, compare_over};
use oxyfolio::quantity::{Flow, Percent, Pressure, Temperature, Time};

use crate::books::edition;

const EDIT: (&str, &str) = (
    "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %",
    "flow: 10.5 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %",
);

#[test]
fn a_hundred_thousand_set_ups() {
    let (old, new) = (edition(&[]), edition(&[("value: 200 psi\n", "value: 300 psi\n")]));
    let grid = compare(&old, &new).grid;
    assert_eq!(grid.setups, SETUPS);
    assert!((90_000..=110_000).contains(&grid.setups));
    // The same books are asked the same, whatever the day and the machine.
    insta::assert_snapshot!(format!(
        "{} changed, {} another verdict",
        grid.changed,
        grid.verdicts.iter().map(|change| change.setups).sum::<u32>()
    ));
    let appears = |code| {
        let mut kinds = grid.kinds.iter();
        kinds
            .find(|kind| kind.comes == Comes::Appears && kind.code == code)
            .unwrap()
    };
    let residual = appears("below-residual");
    assert_eq!(residual.example.pressure.as_deref(), Some("299 psi"));
    assert_eq!(
        (&residual.example.cylinder, &residual.example.group),
        (&None, &None)
    );
}

/// Asks both books about the examples once more, by another way than the comparison's own.
#[test]
fn the_examples_hold() {
    let (old, new) = (edition(&[]), edition(&[EDIT, ("value: 50 %\n", "value: 75 %\n")]));
    let grid = compare_over(&old, &new, 20_000).grid;
    assert!(grid.kinds.len() > 3, "{:?}", grid.kinds);
    for kind in &grid.kinds {
        let found = [&old.book, &new.book].map(|book| finds(book, kind));
        let expected = match kind.comes {
            Comes::Appears => [false, true],
            Comes::Goes => [true, false],
        };
        assert_eq!(found, expected, "{kind:?}");
    }
}

fn finds(book: &oxyfolio::book::Rulebook, kind: &GridChange) -> bool {
    let example = &kind.example;
    let conditions: Option<Vec<_>> = example
        .conditions
        .as_ref()
        .map(|all| all.iter().map(|id| book.find_condition(id).unwrap()).collect());
    let device = book.find_device(&example.device).unwrap();
    let mut setup = Setup::new(device, Flow::litres_per_minute(example.flow_lpm).unwrap());
    if let Some(group) = &example.group {
        setup = setup.group(book.find_group(group).unwrap());
    }
    if let Some(conditions) = &conditions {
        setup = setup.conditions(conditions);
    }
    if let Some(minutes) = example.since_birth_minutes {
        setup = setup.minute_of_life(Time::minutes(minutes).unwrap());
    }
    if let Some(spo2) = example.spo2_percent {
        setup = setup.spo2(Percent::new(spo2).unwrap());
    }
    if let Some(cylinder) = &example.cylinder {
        setup = setup.cylinder(book.find_cylinder(cylinder).unwrap());
    }
    if let Some(pressure) = &example.pressure {
        let psi: f64 = pressure.trim_end_matches(" psi").parse().unwrap();
        setup = setup.pressure(Pressure::psi(psi).unwrap());
    }
    if let Some(temperature) = example.temperature_c {
        setup = setup.temperature(Temperature::celsius(temperature).unwrap());
    }
    if let Some(minutes) = example.minutes_wanted {
        setup = setup.minutes_wanted(Time::minutes(minutes).unwrap());
    }
    if let Some(seen) = &example.seen {
        let (words, holds) = seen
            .strip_prefix("not ")
            .map_or((&**seen, true), |words| (words, false));
        let fact = oxyfolio::book::Fact::ALL
            .iter()
            .find(|fact| fact.words() == words)
            .unwrap();
        setup = setup.observed(*fact, holds);
    }
    let mut found = false;
    check_setup(book, &setup, |finding| {
        found |= finding.code() == kind.code
            && finding.rule.id() == &*kind.id
            && finding.level.code() == kind.level;
    })
    .unwrap();
    found
}
