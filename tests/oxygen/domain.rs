//! The edges: an answer up to them, an error beyond, never a number.

use oxyfolio::oxygen::{self, free_gas};
use oxyfolio::quantity::{Absolute, Gauge, Pressure, Temperature, Volume};

use super::{absolute, bar, celsius, litres};

#[test]
fn the_edges_belong_to_the_domain() {
    for temperature in [-40.0, 60.0] {
        for pressure in [0.0, 300.0, 301.01325] {
            oxygen::density(absolute(pressure), celsius(temperature)).unwrap();
        }
        for reading in [0.0, 300.0] {
            free_gas(litres(1.0), bar(reading), celsius(temperature)).unwrap();
        }
    }
    let nothing = oxygen::density(absolute(0.0), celsius(20.0)).unwrap();
    assert_eq!(nothing.as_kilograms_per_cubic_metre(), 0.0);
}

#[test]
fn beyond_the_edges_there_is_an_error_that_names_them() {
    for (pressure, temperature, words) in [
        (1.0, -40.01, "from -40 to 60 °C, found -40.01 °C"),
        (1.0, 60.01, "from -40 to 60 °C, found 60.01 °C"),
        (301.02, 20.0, "from 0 to 301.0133 bar, found 301.02 bar"),
        (311.0, 20.0, "from 0 to 301.0133 bar, found 311 bar"),
    ] {
        let said = oxygen::density(absolute(pressure), celsius(temperature))
            .unwrap_err()
            .to_string();
        assert!(said.contains("for the density of oxygen"), "{said}");
        assert!(said.ends_with(words), "{said}");
    }
    let said = free_gas(litres(1.0), bar(305.0), celsius(20.0))
        .unwrap_err()
        .to_string();
    assert!(said.ends_with("from 0 to 300 bar, found 305 bar"), "{said}");
}

#[test]
fn more_gas_than_a_volume_takes_is_an_error() {
    let said = free_gas(litres(1000.0), bar(200.0), celsius(20.0))
        .unwrap_err()
        .to_string();
    assert!(said.starts_with("expected a volume from 0 to 100000 L"), "{said}");
}

#[test]
fn what_is_no_number_is_refused_even_unchecked() {
    for wrong in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1e300, 1e300] {
        let (pressure, reading) = (
            Pressure::<Absolute>::tabled(wrong),
            Pressure::<Gauge>::tabled(wrong),
        );
        assert!(oxygen::density(pressure, celsius(20.0)).is_err(), "{wrong}");
        assert!(
            oxygen::density(absolute(1.0), Temperature::tabled(wrong)).is_err(),
            "{wrong}"
        );
        assert!(free_gas(litres(1.0), reading, celsius(20.0)).is_err(), "{wrong}");
        assert!(
            free_gas(Volume::tabled(wrong), bar(1.0), celsius(20.0)).is_err(),
            "{wrong}"
        );
    }
}
