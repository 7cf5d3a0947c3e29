//! Conversions.

use oxyfolio::quantity::{
    Gauge, LITRES_PER_CUBIC_FOOT, Pressure, PressureUnit, STANDARD_ATMOSPHERE_PA, Temperature,
    TemperatureUnit, Volume,
};

use super::facts::fact;
use super::support::{agree, bar, psi};

#[test]
fn one_psi_is_6894_757_pascals() {
    let fact = fact("u-psi");
    assert!(agree(psi(1.0).as_pascals(), fact.number(), 1e-15), "{fact}");
}

#[test]
fn one_bar_is_100_000_pascals() {
    let fact = fact("u-bar-def");
    assert!(agree(bar(1.0).as_pascals(), fact.number(), 1e-15), "{fact}");
}

#[test]
fn one_bar_is_14_5038_psi() {
    // The first source's ninth digit is off: 14.503773773 by the definitions of both units.
    for (row, digits) in [("u-bar-psi", 1e-7), ("u-bar-psi-txt", 1e-5)] {
        let fact = fact(row);
        assert!(
            agree(bar(1.0).as_psi(), fact.number(), digits),
            "found {}: {fact}",
            bar(1.0).as_psi()
        );
    }
    assert!((psi(200.0).as_bar() - 13.7895).abs() < 1e-4, "{}", fact("u-psi"));
}

#[test]
fn units_chosen_at_run_time_are_the_same_units() {
    let reading = psi(2000.0);
    for (unit, found) in [
        (PressureUnit::Psi, 2000.0),
        (PressureUnit::Bar, 137.895_145_863),
        (PressureUnit::Kpa, 13_789.514_586_3),
        (PressureUnit::Mpa, 13.789_514_586_3),
    ] {
        assert!(
            agree(reading.as_unit(unit), found, 1e-11),
            "{unit:?}: {}",
            fact("u-psi")
        );
        let back = Pressure::<Gauge>::in_unit(found, unit).unwrap();
        assert!(agree(back.as_psi(), 2000.0, 1e-11), "{unit:?}: {}", fact("u-psi"));
    }
}

#[test]
fn an_atmosphere_is_101_325_pascals_between_gauge_and_absolute() {
    let fact = fact("u-atm");
    assert!(agree(STANDARD_ATMOSPHERE_PA, fact.number(), 1e-15), "{fact}");
    let empty = Pressure::<Gauge>::ZERO.to_absolute();
    assert!(agree(empty.as_pascals(), fact.number(), 1e-15), "{fact}");
}

#[test]
fn a_cubic_foot_is_28_3168_litres() {
    let (exact, rounded) = (fact("u-ft3"), fact("fac-ft3-litres"));
    assert!(agree(LITRES_PER_CUBIC_FOOT, exact.number(), 1e-15), "{exact}");
    assert!(agree(LITRES_PER_CUBIC_FOOT, rounded.number(), 1e-3), "{rounded}");
    let one = Volume::cubic_feet(1.0).unwrap().as_litres();
    assert!(agree(one, exact.number(), 1e-15), "{exact}");
}

#[test]
fn fahrenheit_and_celsius_meet_at_the_fixed_points() {
    for (fahrenheit, row) in [
        (-40.0, "u-f-equal"),
        (32.0, "u-f-ice"),
        (70.0, "u-f-room"),
        (98.6, "u-f-body"),
        (212.0, "u-f-boil"),
    ] {
        let fact = fact(row);
        let read = Temperature::fahrenheit(fahrenheit).unwrap();
        assert!((read.as_celsius() - fact.number()).abs() < 0.005, "{fact}");
        assert!((read.as_fahrenheit() - fahrenheit).abs() < 1e-9, "{fact}");
        let back = Temperature::celsius(fact.number()).unwrap();
        assert!((back.as_fahrenheit() - fahrenheit).abs() < 0.01, "{fact}");
    }
    let boiling = Temperature::celsius(100.0).unwrap();
    assert_eq!(TemperatureUnit::Fahrenheit.show(boiling).to_string(), "212 °F");
}
