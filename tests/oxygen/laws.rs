//! Laws that hold in the whole domain.

use oxyfolio::check::duration::{NoDuration, Supply, by_factor};
use oxyfolio::quantity::{Factor, Flow, Gauge, Pressure, Temperature, Volume};
use proptest::prelude::*;

use super::{bar, celsius, density, flow, litres, psi};

/// A cylinder, with or without a factor.
fn supplies() -> impl Strategy<Value = Supply> {
    let factor = proptest::option::of(0.1..60.0_f64);
    (0.2..60.0_f64, factor, -40.0..=60.0_f64, 0.0..100.0_f64).prop_map(
        |(water, factor, temperature, residual)| {
            let supply = Supply::new(litres(water), bar(residual)).temperature(celsius(temperature));
            factor.map_or(supply, |factor| {
                supply.factor(Factor::litres_per_bar(factor).unwrap())
            })
        },
    )
}

fn minutes(supply: &Supply, reading: f64, litres_per_minute: f64) -> u32 {
    supply
        .lasts(bar(reading), flow(litres_per_minute))
        .unwrap()
        .minutes
}

fn ordered(a: f64, b: f64) -> (f64, f64) {
    (a.min(b), a.max(b))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn more_pressure_is_never_thinner(
        temperature in -40.0..=60.0_f64, a in 0.0..=301.0_f64, b in 0.0..=301.0_f64, near in 1e-9..1e-3_f64,
    ) {
        let (low, high) = ordered(a, b);
        prop_assert!(density(low, temperature) <= density(high, temperature));
        prop_assert!(density(low * (1.0 - near), temperature) <= density(low, temperature));
    }

    #[test]
    fn a_warmer_gas_is_never_denser(
        pressure in 0.0..=301.0_f64, a in -40.0..=60.0_f64, b in -40.0..=60.0_f64,
    ) {
        let (cold, hot) = ordered(a, b);
        prop_assert!(density(pressure, hot) <= density(pressure, cold));
    }

    #[test]
    fn more_pressure_never_lasts_shorter(
        supply in supplies(), a in 0.0..=300.0_f64, b in 0.0..=300.0_f64, litres_per_minute in 0.05..120.0_f64,
    ) {
        let (low, high) = ordered(a, b);
        prop_assert!(minutes(&supply, low, litres_per_minute) <= minutes(&supply, high, litres_per_minute));
    }

    #[test]
    fn more_flow_never_lasts_longer(
        supply in supplies(), reading in 0.0..=300.0_f64, a in 0.05..120.0_f64, b in 0.05..120.0_f64,
    ) {
        let (low, high) = ordered(a, b);
        prop_assert!(minutes(&supply, reading, low) >= minutes(&supply, reading, high));
    }

    #[test]
    fn more_residual_never_lasts_longer(
        supply in supplies(), reading in 0.0..=300.0_f64, a in 0.0..=300.0_f64, b in 0.0..=300.0_f64,
        litres_per_minute in 0.05..120.0_f64,
    ) {
        let (low, high) = ordered(a, b);
        let kept = |residual| minutes(&supply.residual(bar(residual)), reading, litres_per_minute);
        prop_assert!(kept(low) >= kept(high));
    }

    #[test]
    fn a_leak_counts_as_flow(
        supply in supplies(), reading in 0.0..=300.0_f64, used in 0.0..60.0_f64, leak in 0.05..60.0_f64,
    ) {
        let both = supply.lasts_leaking(bar(reading), flow(used), flow(leak)).unwrap();
        prop_assert_eq!(both.minutes, minutes(&supply, reading, used + leak));
        let alone = supply.lasts_leaking(bar(reading), Flow::ZERO, flow(leak)).unwrap();
        prop_assert_eq!(alone.minutes, minutes(&supply, reading, leak));
    }

    #[test]
    fn a_reading_found_for_some_minutes_lasts_them_and_a_lower_one_does_not(
        supply in supplies(), wanted in 1..600_u32, litres_per_minute in 0.05..60.0_f64,
    ) {
        match supply.pressure_for(wanted, flow(litres_per_minute)) {
            Ok(least) => {
                prop_assert!(minutes(&supply, least.as_bar(), litres_per_minute) >= wanted);
                prop_assert!(minutes(&supply, least.as_bar() * (1.0 - 1e-9), litres_per_minute) < wanted);
            }
            Err(error) => {
                prop_assert_eq!(error, NoDuration::NeverEnough);
                prop_assert!(minutes(&supply, 300.0, litres_per_minute) < wanted);
            }
        }
    }

    #[test]
    fn a_flow_found_for_some_minutes_lasts_them_and_a_greater_one_does_not(
        supply in supplies(), reading in 0.0..=300.0_f64, wanted in 1..600_u32,
    ) {
        match supply.flow_for(bar(reading), wanted) {
            Ok(most) => {
                let most = most.as_litres_per_minute();
                prop_assert!(minutes(&supply, reading, most) >= wanted);
                prop_assert!(most == 120.0 || minutes(&supply, reading, most * (1.0 + 1e-8)) < wanted);
            }
            Err(error) => {
                prop_assert_eq!(error, NoDuration::NothingLeft);
                prop_assert_eq!(minutes(&supply, reading, 0.05), 0);
            }
        }
    }
}

fn d() -> Supply {
    Supply::new(litres(2.2), psi(200.0)).factor(Factor::litres_per_psi(0.16).unwrap())
}

#[test]
fn nothing_above_the_residual_is_an_honest_zero() {
    for reading in [0.0, 100.0, 200.0] {
        let found = d().lasts(psi(reading), flow(15.0)).unwrap();
        assert_eq!(
            (found.minutes, found.usable.as_litres()),
            (0, 0.0),
            "{reading} psi"
        );
    }
    assert_eq!(d().flow_for(psi(200.0), 10), Err(NoDuration::NothingLeft));
}

#[test]
fn what_has_no_answer_is_an_error() {
    let reading = psi(2000.0);
    assert_eq!(d().lasts(reading, Flow::ZERO), Err(NoDuration::NoFlow));
    assert_eq!(
        d().lasts_leaking(reading, Flow::ZERO, Flow::ZERO),
        Err(NoDuration::NoFlow)
    );
    assert_eq!(d().pressure_for(0, flow(1.0)), Err(NoDuration::NoMinutes));
    assert_eq!(d().pressure_for(10, Flow::ZERO), Err(NoDuration::NoFlow));
    assert_eq!(d().flow_for(reading, 0), Err(NoDuration::NoMinutes));
    assert_eq!(d().lasts(reading, flow(1e-9)), Err(NoDuration::TooLong));
    assert_eq!(d().pressure_for(10_000, flow(15.0)), Err(NoDuration::NeverEnough));
    let empty = Supply::new(litres(0.0), psi(200.0));
    assert_eq!(empty.lasts(reading, flow(1.0)), Err(NoDuration::NoWaterCapacity));
    let no_factor = d().factor(Factor::litres_per_psi(0.0).unwrap());
    assert_eq!(no_factor.lasts(reading, flow(1.0)), Err(NoDuration::NoFactor));
    for outside in [
        d().temperature(celsius(-41.0)).lasts(reading, flow(1.0)),
        d().temperature(celsius(61.0)).lasts(reading, flow(1.0)),
        d().lasts(bar(301.0), flow(1.0)),
        d().residual(bar(301.0)).lasts(reading, flow(1.0)),
    ] {
        assert!(
            matches!(outside, Err(NoDuration::OutsideDomain(_))),
            "{outside:?}"
        );
    }
}

#[test]
fn what_is_no_number_never_becomes_minutes() {
    for wrong in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1e9, 1e300] {
        let (reading, gas) = (Pressure::<Gauge>::tabled(wrong), Flow::tabled(wrong));
        let honest = |found: Result<u32, NoDuration>| found.is_err() || found == Ok(0);
        let minutes = |supply: Supply, reading, flow| supply.lasts(reading, flow).map(|found| found.minutes);
        assert!(honest(minutes(d(), reading, flow(1.0))), "{wrong} as a reading");
        assert!(honest(minutes(d(), psi(2000.0), gas)), "{wrong} as a flow");
        assert!(
            honest(minutes(d().residual(reading), psi(2000.0), flow(1.0))),
            "{wrong} as a residual"
        );
        assert!(
            honest(minutes(
                d().temperature(Temperature::tabled(wrong)),
                psi(2000.0),
                flow(1.0)
            )),
            "{wrong} as a temperature"
        );
        let water = Supply::new(Volume::tabled(wrong), psi(200.0));
        assert!(
            honest(minutes(water, psi(2000.0), flow(1.0))),
            "{wrong} as a water capacity"
        );
        let factor = Factor::tabled(wrong, oxyfolio::quantity::PressureUnit::Psi);
        let by_factor = by_factor(factor, psi(2000.0), psi(200.0), flow(1.0));
        assert!(
            honest(by_factor.map(|found| found.minutes)),
            "{wrong} as a factor"
        );
    }
}
