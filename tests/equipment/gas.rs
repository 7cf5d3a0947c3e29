//! The gas left in a cylinder, against densities of the reference library and against the sum for durations.

use oxyfolio::check::duration::by_density;
use oxyfolio::equipment::Gas;
use oxyfolio::oxygen::{FREE_DENSITY, free_gas};
use oxyfolio::quantity::{
    Flow, Gauge, Pressure, STANDARD_ATMOSPHERE_PA, Temperature, Time, TimeUnit, Volume,
};
use proptest::prelude::*;

/// CoolProp 8.0.0, as its first line says.
const REFERENCE: &str = include_str!("../oxygen/density.csv");

/// Takes so many litres, by a flow of 60 L/min: a litre a second.
fn take(gas: Gas, litres: f64) -> Gas {
    let flow = Flow::litres_per_minute(60.0).unwrap();
    gas.draw(flow, Flow::ZERO, Time::of(litres, TimeUnit::Second).unwrap())
}

fn psi(value: f64) -> Pressure<Gauge> {
    Pressure::psi(value).unwrap()
}

#[test]
fn a_cylinder_drawn_down_shows_what_the_reference_says() {
    // For each temperature a cylinder of 10 L at the greatest reading of the file is drawn down by the difference of
    // the reference's densities; what it shows then must be the reference's pressure.
    let mut rows: Vec<[f64; 3]> = Vec::new();
    for line in REFERENCE
        .lines()
        .filter(|line| line.starts_with(|c: char| c == '-' || c.is_ascii_digit()))
    {
        let numbers: Vec<f64> = line.split(',').map(|number| number.parse().unwrap()).collect();
        rows.push([numbers[0], numbers[1], numbers[2]]);
    }
    let (mut asked, mut worst) = (0, 0.0_f64);
    let atmosphere = STANDARD_ATMOSPHERE_PA / 100_000.0;
    for first in &rows {
        let same: Vec<&[f64; 3]> = rows.iter().filter(|row| row[0] == first[0]).collect();
        let full = same
            .iter()
            .filter(|row| row[1] <= 300.0)
            .max_by(|a, b| a[1].total_cmp(&b[1]))
            .unwrap();
        if first[1] <= atmosphere || first[1] >= full[1] {
            continue;
        }
        let gas = Gas::new(
            Volume::litres(10.0).unwrap(),
            Temperature::celsius(first[0]).unwrap(),
            Pressure::<Gauge>::bar(full[1] - atmosphere).unwrap(),
        )
        .unwrap();
        let litres = 10.0 * (full[2] - first[2]) / FREE_DENSITY.as_kilograms_per_cubic_metre();
        let shown = take(gas, litres).pressure().as_bar();
        worst = worst.max((shown - (first[1] - atmosphere)).abs());
        asked += 1;
    }
    assert!(asked > 1000, "{asked} rows were asked");
    // Two hundredths of a psi; a density is within one part in a hundred thousand.
    assert!(worst < 0.0014, "{worst} bar");
}

#[test]
fn half_of_the_gas_is_gone_sooner_than_half_of_the_reading() {
    // A sum by hand: CoolProp 8.0.0 at 0 °C has 214.433 kg/m³ at 138 bar (the doctest of `oxygen::density`).
    // A cylinder of 1 L at 136.98675 bar on the gauge holds 214.433 / 1.32614 = 161.697 L.
    let reading = Pressure::<Gauge>::bar(138.0 - 1.01325).unwrap();
    let gas = Gas::new(
        Volume::litres(1.0).unwrap(),
        Temperature::celsius(0.0).unwrap(),
        reading,
    )
    .unwrap();
    assert!((gas.litres() - 161.697).abs() < 0.002);
    let half = take(gas, gas.litres() / 2.0);
    assert!(half.pressure().as_bar() > 136.98675 / 2.0);
}

fn cylinders() -> impl Strategy<Value = (Volume, Temperature, Pressure<Gauge>)> {
    (0.2..50.0, -40.0..60.0, 0.0..300.0).prop_map(|(litres, celsius, bar)| {
        (
            Volume::litres(litres).unwrap(),
            Temperature::celsius(celsius).unwrap(),
            Pressure::<Gauge>::bar(bar).unwrap(),
        )
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_reading_holds_what_is_left_and_never_more(
        (capacity, temperature, full) in cylinders(), share in 0.0..1.0_f64,
    ) {
        let gas = Gas::new(capacity, temperature, full).unwrap();
        prop_assert_eq!(gas.pressure(), full);
        let left = take(gas, share * gas.litres());
        let shown = left.pressure();
        let held = |at: Pressure<Gauge>| free_gas(capacity, at, temperature).unwrap().as_litres();
        prop_assert!(held(shown) <= left.litres(), "never above the truth");
        let more = Pressure::<Gauge>::psi(shown.as_psi() + 0.01).unwrap();
        prop_assert!(more > full || held(more) > left.litres(), "within a hundredth of a psi");
    }

    #[test]
    fn less_gas_never_shows_more((capacity, temperature, full) in cylinders(), litres in 0.0..0.2_f64) {
        let mut gas = Gas::new(capacity, temperature, full).unwrap();
        for _ in 0..20 {
            let next = take(gas, litres);
            prop_assert!(next.litres() <= gas.litres());
            prop_assert!(next.pressure() <= gas.pressure());
            gas = next;
        }
    }

    #[test]
    fn a_flow_and_a_leak_take_what_both_are(
        (capacity, temperature, full) in cylinders(),
        flow in 0.0..60.0_f64, leak in 0.0..60.0_f64, minutes in 0.0..200.0_f64,
    ) {
        let gas = Gas::new(capacity, temperature, full).unwrap();
        let rate = |value: f64| Flow::litres_per_minute(value).unwrap();
        let drawn = gas.draw(rate(flow), rate(leak), Time::minutes(minutes).unwrap());
        let wanted = (gas.usable_litres() - (flow + leak) * minutes).max(0.0);
        prop_assert!((drawn.usable_litres() - wanted).abs() < 1e-9 * gas.litres());
        prop_assert_eq!(drawn.is_empty(), drawn.pressure() == Pressure::ZERO && drawn.usable_litres() <= 0.0);
    }

    #[test]
    fn it_lasts_as_long_as_the_sum_for_durations_says(
        (capacity, temperature, full) in cylinders(), until in 0.0..300.0_f64, flow in 0.25..25.0_f64,
    ) {
        let gas = Gas::new(capacity, temperature, full).unwrap();
        let (until, flow) = (Pressure::<Gauge>::bar(until).unwrap(), Flow::litres_per_minute(flow).unwrap());
        let lasts = gas.lasts(until, flow, Flow::ZERO).unwrap();
        let minutes = by_density(capacity, full, until, temperature, flow).unwrap().minutes;
        prop_assert!((lasts.as_minutes() - f64::from(minutes)) > -1e-6);
        prop_assert!((lasts.as_minutes() - f64::from(minutes)) < 1.0 + 1e-6);
        // And then the gauge shows that, or a little more.
        let then = gas.draw(flow, Flow::ZERO, lasts).pressure();
        prop_assert!(until > full || then.as_psi() > until.as_psi() - 0.01);
        // Later on it never lasts longer than what is left of that time.
        let half = Time::minutes(lasts.as_minutes() / 2.0).unwrap();
        let rest = gas.draw(flow, Flow::ZERO, half).lasts(until, flow, Flow::ZERO).unwrap();
        prop_assert!(rest.as_minutes() <= half.as_minutes() + 1e-6);
    }
}

/// The reading is worked out in steps of 10 Pa and is never more than one below the truth, however little was drawn.
#[test]
fn a_reading_is_less_by_a_step_at_the_most() {
    let (one, step) = (Volume::litres(3.0).unwrap(), 0.0015);
    for number in 0..4_000_u32 {
        let full = Pressure::<Gauge>::bar(0.5 + f64::from(number) * 0.0737).unwrap();
        let temperature = Temperature::celsius(-40.0 + f64::from(number % 100)).unwrap();
        let gas = Gas::new(one, temperature, full).unwrap();
        // From a millionth of the gas to nearly all of it.
        for drawn in [1e-9, 1e-6, 1e-4, 0.01, 0.3, 0.9] {
            let left = take(gas, drawn * gas.usable_litres());
            let shown = left.pressure();
            let above = Pressure::<Gauge>::psi(shown.as_psi() + step).unwrap();
            assert!(gas.held_at(shown).unwrap() <= left.litres());
            assert!(
                above > full || gas.held_at(above).unwrap() > left.litres(),
                "{full} less {drawn}"
            );
        }
    }
}

#[test]
fn what_is_not_known_is_no_number() {
    let (one, room) = (Volume::litres(1.0).unwrap(), Temperature::celsius(20.0).unwrap());
    let gas = |celsius: f64, bar: f64| {
        Gas::new(
            one,
            Temperature::celsius(celsius).unwrap(),
            Pressure::<Gauge>::bar(bar).unwrap(),
        )
    };
    assert!(gas(-41.0, 100.0).is_err());
    assert!(gas(61.0, 100.0).is_err());
    assert!(gas(20.0, 301.0).is_err());
    let gas = Gas::new(one, room, psi(2000.0)).unwrap();
    // Nothing is drawn; or for longer than time is counted.
    assert_eq!(gas.lasts(psi(200.0), Flow::ZERO, Flow::ZERO), None);
    assert_eq!(
        gas.lasts(psi(200.0), Flow::litres_per_minute(1e-9).unwrap(), Flow::ZERO),
        None
    );
    let flow = Flow::litres_per_minute(4.0).unwrap();
    assert_eq!(
        gas.lasts(Pressure::<Gauge>::bar(305.0).unwrap(), flow, Flow::ZERO),
        None
    );
    assert_eq!(gas.lasts(psi(2000.0), flow, Flow::ZERO), Some(Time::ZERO));
    // A cylinder of no size holds nothing, and shows its reading until the end of time.
    let none = Gas::new(Volume::litres(0.0).unwrap(), room, psi(2000.0)).unwrap();
    assert!(none.is_empty());
}
