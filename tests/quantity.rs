//! Quantities as they are printed and compared. The expected texts are written by hand, the comparisons follow from the unit
//! psi as NIST Special Publication 811 has it (1 psi = 6894.757 Pa, so 1 L/psi is 14.5038 L/bar).
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

use oxyfolio::quantity::{
    Factor, Gauge, Limit, Number, Pressure, PressureUnit, Range, Side, Temperature, TemperatureUnit, Time,
    TimeUnit,
};

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

#[test]
fn units_are_written_as_the_standards_write_them() {
    // NIST Special Publication 811: psi, bar, kPa, MPa, °C, °F.
    for (unit, written) in [
        (PressureUnit::Psi, "psi"),
        (PressureUnit::Bar, "bar"),
        (PressureUnit::Kpa, "kPa"),
        (PressureUnit::Mpa, "MPa"),
    ] {
        assert_eq!((unit.symbol(), unit.to_string()), (written, written.to_owned()));
    }
    let warm = Temperature::celsius(20.0).unwrap();
    for (unit, written, shown) in [
        (TemperatureUnit::Celsius, "°C", "20 °C"),
        (TemperatureUnit::Fahrenheit, "°F", "68 °F"),
    ] {
        assert_eq!(
            (unit.symbol(), unit.show(warm).to_string()),
            (written, shown.to_owned())
        );
    }
}

#[test]
fn an_end_belongs_to_a_range_or_is_left_out_of_it() {
    let litres = |value| oxyfolio::quantity::Flow::litres_per_minute(value).unwrap();
    let (low, high) = (litres(6.0), litres(10.0));
    let sides = |range: Range<_>| [5.9, 6.0, 6.1, 9.9, 10.0, 10.1].map(|value| range.side(litres(value)));
    use Side::{Above, Below, Inside};
    for (low, high, expected, words) in [
        (
            Limit::Included(low),
            Limit::Included(high),
            [Below, Inside, Inside, Inside, Inside, Above],
            "6 to 10 L/min",
        ),
        (
            Limit::Excluded(low),
            Limit::Excluded(high),
            [Below, Below, Inside, Inside, Above, Above],
            "6 to 10 L/min",
        ),
        (
            Limit::Excluded(low),
            Limit::None,
            [Below, Below, Inside, Inside, Inside, Inside],
            "over 6 L/min",
        ),
        (
            Limit::None,
            Limit::Excluded(high),
            [Inside, Inside, Inside, Inside, Above, Above],
            "under 10 L/min",
        ),
    ] {
        let range = Range { low, high };
        assert_eq!(sides(range), expected, "{range}");
        assert_eq!(range.to_string(), words);
        assert_eq!(range.holds(litres(6.0)), expected[1] == Inside);
    }
}

/// A year of the Julian calendar has 365.25 days, and a month here is a twelfth of one.
#[test]
fn times_of_every_unit_are_so_many_minutes_and_end_at_120_years() {
    for (unit, minutes, most) in [
        (TimeUnit::Second, 1.0 / 60.0, 3_786_912_000.0),
        (TimeUnit::Minute, 1.0, 63_115_200.0),
        (TimeUnit::Hour, 60.0, 1_051_920.0),
        (TimeUnit::Day, 1_440.0, 43_830.0),
        (TimeUnit::Month, 43_830.0, 1_440.0),
        (TimeUnit::Year, 525_960.0, 120.0),
    ] {
        let one = Time::of(1.0, unit).unwrap();
        assert!((one.as_minutes() - minutes).abs() < 1e-9, "{one}");
        assert_eq!(
            Time::of(most, unit).unwrap(),
            Time::of(120.0, TimeUnit::Year).unwrap()
        );
        let refused = Time::of(most * 1.001, unit).unwrap_err();
        assert!(
            refused
                .to_string()
                .starts_with("expected a time from 0 to 63115200 min"),
            "{refused}"
        );
        assert!(Time::of(-1.0, unit).is_err());
    }
}

#[test]
fn what_is_out_of_bounds_is_told_to_programmers_as_to_anybody() {
    let refused = Temperature::celsius(130.0).unwrap_err();
    let words = "expected a temperature from -60 to 120 °C, found 130 °C";
    assert_eq!(refused.to_string(), words);
    assert_eq!(format!("{refused:?}"), format!("OutOfBounds({words})"));
}
