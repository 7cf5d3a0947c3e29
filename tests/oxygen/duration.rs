//! Minutes against the equation of state: never one more, and never much fewer.

use oxyfolio::RULEBOOK;
use oxyfolio::check::duration::{
    Bound, GaugeReading, Supply, USUAL_TEMPERATURE, by_density, by_factor, of_cylinder,
};
use oxyfolio::quantity::{Factor, Flow};
use proptest::prelude::*;

use super::{
    bar, celsius, flow, litres, psi,
    reference::{Isotherm, held},
};

/// Litres between two readings in bar, by the equation.
fn equation(water: f64, reading: f64, residual: f64, temperature: f64) -> f64 {
    let isotherm = Isotherm::celsius(temperature);
    water * (held(&isotherm, reading) - held(&isotherm, residual)).max(0.0)
}

/// How much below the equation the gas may be taken before it is rounded to minutes: asked were 3 %.
const SHORT: f64 = 0.000_2;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn by_density_never_a_minute_more_than_the_equation_and_hardly_less_gas(
        water in 0.2..60.0_f64,
        reading in 0.0..=300.0_f64,
        share in 0.0..1.0_f64,
        temperature in -40.0..=60.0_f64,
        litres_per_minute in 0.02..120.0_f64,
    ) {
        let residual = reading * share;
        let found = by_density(
            litres(water), bar(reading), bar(residual), celsius(temperature), flow(litres_per_minute),
        ).unwrap();
        let truth = equation(water, reading, residual, temperature);
        prop_assert!(f64::from(found.minutes) <= (truth / litres_per_minute).floor());
        prop_assert!(found.usable.as_litres() <= truth);
        // A hair of the whole contents for the digits of the two numbers that are taken from each other.
        let hair = 1e-11 * equation(water, reading, 0.0, temperature);
        prop_assert!(found.usable.as_litres() >= truth * (1.0 - SHORT) - hair);
    }

    #[test]
    fn the_answer_is_the_lower_of_both_and_never_more_than_the_equation(
        cylinder in 0..RULEBOOK.cylinders.len(),
        reading in 0.0..=300.0_f64,
        temperature in -40.0..=60.0_f64,
        litres_per_minute in 0.02..120.0_f64,
    ) {
        let cylinder = &RULEBOOK.cylinders[cylinder];
        let supply = Supply::of(&RULEBOOK, cylinder).temperature(celsius(temperature));
        let found = supply.lasts(bar(reading), flow(litres_per_minute)).unwrap();
        let residual = RULEBOOK.policies.residual_pressure;
        let factor = by_factor(cylinder.factor, bar(reading), residual, flow(litres_per_minute)).unwrap();
        prop_assert_eq!(found.by_factor, Some(factor));
        prop_assert_eq!(found.minutes, found.by_density.minutes.min(factor.minutes));
        let lower = found.by_density.usable.as_litres().min(factor.usable.as_litres());
        prop_assert_eq!(found.usable.as_litres(), lower);
        let water = cylinder.water_capacity.as_litres();
        let truth = equation(water, reading, residual.as_bar(), temperature);
        prop_assert!(f64::from(found.minutes) <= (truth / litres_per_minute).floor());
        if found.bound == Bound::Density {
            prop_assert!(found.usable.as_litres() >= truth * (1.0 - SHORT) - 1e-9);
        }
        let whole = water * held(&Isotherm::celsius(temperature), reading);
        prop_assert!(found.free.as_litres() <= whole);
        prop_assert!(found.free.as_litres() >= whole * (1.0 - SHORT));
    }
}

/// Every cell of the domain that a crew may meet, at round readings and flows: no minute too many anywhere.
#[test]
fn round_readings_never_promise_a_minute_too_many() {
    let mut answers = 0_u32;
    for temperature in [-40.0, -20.0, 0.0, 15.0, 21.0, 21.11, 35.0, 50.0, 60.0] {
        let isotherm = Isotherm::celsius(temperature);
        let kept = held(&isotherm, psi(200.0).as_bar());
        for step in 2..=87_u32 {
            let reading = psi(f64::from(step) * 50.0);
            let usable = (held(&isotherm, reading.as_bar()) - kept).max(0.0);
            for water in [1.0, 2.2, 4.6, 43.0] {
                let supply = Supply::new(litres(water), psi(200.0)).temperature(celsius(temperature));
                for litres_per_minute in [0.25, 1.0, 2.0, 6.0, 10.0, 15.0, 25.0] {
                    let found = supply.lasts(reading, flow(litres_per_minute)).unwrap();
                    let truth = usable * water / litres_per_minute;
                    let case = format!("{temperature} °C, {reading}, {water} L, {litres_per_minute} L/min");
                    assert!(f64::from(found.minutes) <= truth.floor(), "{case}: {truth}");
                    assert!(
                        f64::from(found.minutes) >= (truth * (1.0 - SHORT)).floor(),
                        "{case}: {truth}"
                    );
                    answers += 1;
                }
            }
        }
    }
    assert_eq!(answers, 9 * 86 * 4 * 7);
}

#[test]
fn without_a_temperature_it_is_21_c() {
    assert_eq!(USUAL_TEMPERATURE.as_celsius(), 21.0);
    for cylinder in &RULEBOOK.cylinders {
        let told = Supply::of(&RULEBOOK, cylinder).temperature(celsius(21.0));
        for reading in [250.0, 1000.0, 2000.0] {
            assert_eq!(
                of_cylinder(&RULEBOOK, cylinder, psi(reading), flow(10.0)),
                told.lasts(psi(reading), flow(10.0))
            );
        }
    }
}

#[test]
fn a_hot_cylinder_is_bound_by_density_and_a_cold_one_by_factor() {
    // D by its figures in textbooks: 0.16 L/psi, and 2.2 L of water.
    let d = Supply::new(litres(2.2), psi(200.0)).factor(Factor::litres_per_psi(0.16).unwrap());
    let lasts = |temperature| {
        d.temperature(celsius(temperature))
            .lasts(psi(2000.0), flow(0.5))
            .unwrap()
    };
    let (hot, cold) = (lasts(55.0), lasts(-20.0));
    assert_eq!((cold.bound, cold.minutes), (Bound::Factor, 576));
    assert_eq!(hot.bound, Bound::Density);
    // 2.2 L of the reference's gas between 2000 and 200 psi at 55 °C: 248.56 L.
    assert_eq!(hot.minutes, 497);
    assert_eq!(hot.by_factor.unwrap().minutes, 576);
}

/// A gauge misleads where the gas differs by more than 5 % from that at 21.11 °C; where that begins is looked for in the
/// reference.
#[test]
fn a_gauge_misleads_from_five_percent_of_the_references_gas() {
    for reading in [30.0, 100.0, 200.0] {
        let fair = held(&Isotherm::celsius(21.11), reading);
        let gas = |temperature: f64| held(&Isotherm::celsius(temperature), reading);
        let judged = |temperature: f64| GaugeReading::of(bar(reading), celsius(temperature)).unwrap();
        for tenth in -400..=600_i32 {
            let temperature = f64::from(tenth) / 10.0;
            let share = gas(temperature) / fair;
            // What lies within the table's error of the border may be told either way.
            if (share - 1.05).abs() < 2e-5 || (share - 0.95).abs() < 2e-5 {
                continue;
            }
            let expected = match share {
                share if share > 1.05 => GaugeReading::Low,
                share if share < 0.95 => GaugeReading::High,
                _ => GaugeReading::Fair,
            };
            assert_eq!(
                judged(temperature),
                expected,
                "{reading} bar, {temperature} °C: {share}"
            );
        }
    }
}

/// By hand: 1 L/psi × (1200 - 200) psi = 1000 L by the factor; the water capacity is so great that the factor is the lower.
#[test]
fn flow_and_leak_are_added() {
    let supply = Supply::new(litres(60.0), psi(200.0)).factor(Factor::litres_per_psi(1.0).unwrap());
    let lasts = |litres_per_minute, leak| {
        supply
            .lasts_leaking(psi(1200.0), flow(litres_per_minute), flow(leak))
            .map(|found| found.minutes)
    };
    assert_eq!(lasts(4.0, 1.0), Ok(200));
    assert_eq!(lasts(0.0, 2.0), Ok(500));
    assert_eq!(lasts(8.0, 0.0), Ok(125));
    assert!(lasts(0.0, 0.0).is_err());
    // The other way: 200 min at 4 and 1 L/min take 1000 L, hence 1200 psi.
    let needed = supply
        .pressure_for_leaking(200, flow(4.0), flow(1.0))
        .unwrap()
        .as_psi();
    assert!((needed - 1200.0).abs() < 1e-5, "{needed}");
    let greatest = supply.flow_for(psi(1200.0), 200).unwrap().as_litres_per_minute();
    assert!((greatest - 5.0).abs() < 1e-6, "{greatest}");
    assert!(supply.pressure_for(0, flow(4.0)).is_err());
    assert!(supply.flow_for(psi(1200.0), 0).is_err());
    assert!(supply.flow_for(psi(200.0), 10).is_err());
    // 1000 L in 8 min are 125 L/min; no flow is above 120 L/min.
    assert_eq!(
        supply.flow_for(psi(1200.0), 8),
        Ok(Flow::litres_per_minute(120.0).unwrap())
    );
}
