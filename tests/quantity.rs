//! Quantities as they are printed and compared. The expected texts are written by hand, the comparisons follow from the unit
//! psi as NIST Special Publication 811 has it (1 psi = 6894.757 Pa, so 1 L/psi is 14.5038 L/bar).
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

use oxyfolio::quantity::{Factor, Gauge, Number, Pressure};

fn printed(number: f64) -> String {
    Number(number).to_string()
}

#[test]
fn a_number_has_four_decimals_at_most_and_no_zeros_at_its_end() {
    for (number, expected) in [
        (0.0, "0"),
        (-0.0, "0"),
        (-0.000_04, "0"),
        (-0.000_06, "-0.0001"),
        (0.05, "0.05"),
        (0.000_1, "0.0001"),
        (10.0, "10"),
        (1_000.1, "1000.1"),
        (2.999_96, "3"),
        (-17.777_78, "-17.7778"),
    ] {
        assert_eq!(printed(number), expected);
    }
}

#[test]
fn a_number_too_large_for_decimals_and_what_is_none_are_still_told() {
    assert_eq!(printed(f64::NAN), "NaN");
    assert_eq!(printed(f64::INFINITY), "inf");
    assert_eq!(printed(f64::NEG_INFINITY), "-inf");
    assert_eq!(printed(1e14), "100000000000000");
    assert_eq!(printed(-3e20), "-3e20");
}

#[test]
fn factors_are_printed_as_they_were_written() {
    assert_eq!(Factor::litres_per_psi(0.16).unwrap().to_string(), "0.16 L/psi");
    assert_eq!(Factor::litres_per_bar(2.32).unwrap().to_string(), "2.32 L/bar");
}

#[test]
fn factors_of_different_units_are_compared_by_what_they_mean() {
    // 0.16 L/psi is 2.3206 L/bar.
    let small = Factor::litres_per_psi(0.16).unwrap();
    assert!(small > Factor::litres_per_bar(2.32).unwrap());
    assert!(small < Factor::litres_per_bar(2.321).unwrap());
    assert!(Factor::litres_per_psi(0.28).unwrap() > Factor::litres_per_bar(2.321).unwrap());
}

#[test]
fn a_reading_is_printed_in_the_unit_in_which_it_is_a_round_number() {
    for (reading, expected) in [
        (Pressure::<Gauge>::psi(2_200.0), "2200 psi"),
        (Pressure::<Gauge>::bar(150.0), "150 bar"),
        (Pressure::<Gauge>::bar(12.5), "12.5 bar"),
        (Pressure::<Gauge>::bar(0.1), "0.1 bar"),
        // In neither: psi, which has the more digits.
        (Pressure::<Gauge>::bar(12.55), "182.0224 psi"),
        (Pressure::<Gauge>::psi(0.0), "0 psi"),
    ] {
        assert_eq!(reading.unwrap().to_string(), expected);
    }
}
