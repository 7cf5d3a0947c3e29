//! Conversions, against the crate `uom` and NIST Special Publication 811.

use oxyfolio::quantity::{
    Density, Flow, Gauge, Pressure, PressureUnit, STANDARD_ATMOSPHERE_PA, Temperature, Time, TimeUnit, Volume,
};
use uom::si::{
    f64::{
        MassDensity, Pressure as UomPressure, ThermodynamicTemperature, Time as UomTime, Volume as UomVolume,
    },
    mass_density::kilogram_per_cubic_meter,
    pressure::{atmosphere, bar as uom_bar, kilopascal, megapascal, pascal, psi as uom_psi},
    thermodynamic_temperature::{degree_celsius, degree_fahrenheit},
    time::{day, hour, minute, second},
    volume::{cubic_foot, liter},
};

use super::{bar, psi};

fn agree(found: f64, expected: f64, digits: f64) {
    assert!(
        (found - expected).abs() <= expected.abs() * digits,
        "{found} against {expected}"
    );
}

#[test]
fn pressures_are_uoms() {
    for value in [0.5, 14.7, 200.0, 2015.0, 2216.5, 4350.0] {
        let theirs = UomPressure::new::<uom_psi>(value);
        // uom holds psi with seven digits.
        agree(psi(value).as_pascals(), theirs.get::<pascal>(), 1e-6);
        let theirs = UomPressure::new::<pascal>(psi(value).as_pascals());
        for (unit, expected) in [
            (PressureUnit::Bar, theirs.get::<uom_bar>()),
            (PressureUnit::Kpa, theirs.get::<kilopascal>()),
            (PressureUnit::Mpa, theirs.get::<megapascal>()),
        ] {
            agree(psi(value).as_unit(unit), expected, 1e-14);
        }
    }
    let one = UomPressure::new::<atmosphere>(1.0);
    agree(STANDARD_ATMOSPHERE_PA, one.get::<pascal>(), 1e-15);
    let theirs = UomPressure::new::<uom_bar>(200.0) + one;
    agree(
        bar(200.0).to_absolute().as_pascals(),
        theirs.get::<pascal>(),
        1e-15,
    );
}

#[test]
fn temperatures_are_uoms() {
    for value in [-40.0, -4.0, 32.0, 70.0, 98.6, 140.0] {
        let theirs = ThermodynamicTemperature::new::<degree_fahrenheit>(value);
        let ours = Temperature::fahrenheit(value).unwrap();
        assert!(
            (ours.as_celsius() - theirs.get::<degree_celsius>()).abs() < 1e-10,
            "{value} °F"
        );
        assert!((ours.as_fahrenheit() - value).abs() < 1e-12, "{value} °F");
    }
}

#[test]
fn volumes_times_and_densities_are_uoms() {
    for value in [0.5, 22.0, 244.0] {
        let theirs = UomVolume::new::<cubic_foot>(value).get::<liter>();
        agree(Volume::cubic_feet(value).unwrap().as_litres(), theirs, 1e-6);
        let theirs = UomTime::new::<hour>(value).get::<minute>();
        agree(
            Time::of(value, TimeUnit::Hour).unwrap().as_minutes(),
            theirs,
            1e-14,
        );
        let theirs = UomTime::new::<day>(value).get::<minute>();
        agree(
            Time::of(value, TimeUnit::Day).unwrap().as_minutes(),
            theirs,
            1e-14,
        );
        let theirs = UomTime::new::<second>(value).get::<minute>();
        agree(
            Time::of(value, TimeUnit::Second).unwrap().as_minutes(),
            theirs,
            1e-14,
        );
        let theirs = MassDensity::new::<kilogram_per_cubic_meter>(value);
        let ours = Density::kilograms_per_cubic_metre(value).unwrap();
        agree(
            ours.as_kilograms_per_cubic_metre(),
            theirs.get::<kilogram_per_cubic_meter>(),
            1e-15,
        );
    }
}

/// NIST SP 811 (2008), appendix B.8, from memory: the factors as printed, to their digits.
#[test]
fn conversions_are_those_of_nist_sp_811() {
    // Pound-force per square inch (psi) to pascal: 6.894 757 E+03.
    agree(psi(1.0).as_pascals(), 6.894_757e3, 1e-7);
    // Bar to pascal: 1.0 E+05. Atmosphere, standard, to pascal: 1.013 25 E+05.
    agree(bar(1.0).as_pascals(), 1.0e5, 1e-15);
    agree(
        Pressure::<Gauge>::ZERO.to_absolute().as_pascals(),
        1.01325e5,
        1e-15,
    );
    // Cubic foot to cubic metre: 2.831 685 E-02.
    agree(
        Volume::cubic_feet(1.0).unwrap().as_litres() / 1e3,
        2.831_685e-2,
        2e-7,
    );
    // Degree Fahrenheit to degree Celsius: t/°C = (t/°F - 32)/1.8.
    agree(
        Temperature::fahrenheit(70.0).unwrap().as_celsius(),
        38.0 / 1.8,
        1e-15,
    );
    // Cubic foot per minute to cubic metre per second: 4.719 474 E-04, here as 28.316 85 L/min.
    let cubic_foot_per_minute =
        Flow::litres_per_minute(Volume::cubic_feet(1.0).unwrap().as_litres()).unwrap();
    agree(
        cubic_foot_per_minute.as_litres_per_minute() / 6e4,
        4.719_474e-4,
        2e-7,
    );
}
