//! How long the gas lasts: worked examples in print, and laws that hold everywhere.
//!
//! The examples in print are of the factor method. The library's answer is the lower of it and the real gas, and never more
//! than the example.

use oxyfolio::RULEBOOK;
use oxyfolio::book::CylinderId;
use oxyfolio::check::duration::{Bound, NoDuration, Supply, by_density, by_factor, of_cylinder};
use oxyfolio::cylinder::*;
use oxyfolio::quantity::{Flow, Gauge, Pressure};

use super::facts::fact;
use super::support::{cylinder, flow, psi};

fn minutes(id: CylinderId, reading: f64, residual: f64, litres: f64) -> u32 {
    by_factor(cylinder(id).factor, psi(reading), psi(residual), flow(litres))
        .unwrap()
        .minutes
}

/// Asserts that the answer is the published number of minutes, rounded down.
fn assert_worked(row: &str, id: CylinderId, reading: f64, residual: f64, litres: f64) {
    let fact = fact(row);
    let found = minutes(id, reading, residual, litres);
    assert_eq!(f64::from(found), fact.number().floor(), "{fact}");
    let answer = Supply::of(&RULEBOOK, cylinder(id))
        .residual(psi(residual))
        .lasts(psi(reading), flow(litres))
        .unwrap();
    assert_eq!(answer.by_factor.unwrap().minutes, found, "{fact}");
    assert_eq!(answer.minutes, found.min(answer.by_density.minutes), "{fact}");
}

#[test]
fn worked_d_2000_psi_residual_200_half_a_litre_is_576_min() {
    assert_worked("wx-d-2000", D, 2000.0, 200.0, 0.5);
    assert_eq!(minutes(D, 2000.0, 200.0, 0.5), 576);
    // So full a cylinder holds a little more than the factor says, and the example is the answer too.
    let answer = of_cylinder(&RULEBOOK, cylinder(D), psi(2000.0), flow(0.5)).unwrap();
    assert_eq!((answer.minutes, answer.bound), (576, Bound::Factor));
}

#[test]
fn half_a_d_lasts_a_little_less_than_its_factor_says() {
    // By factor (1000 - 200) x 0.16 = 128 L; the real gas between the two readings is 125.8 L (CoolProp 8.0.0, 21 °C).
    let answer = of_cylinder(&RULEBOOK, cylinder(D), psi(1000.0), flow(0.5)).unwrap();
    assert_eq!((answer.minutes, answer.bound), (251, Bound::Density));
    assert_eq!(answer.by_factor.unwrap().minutes, 256);
}

#[test]
fn worked_d_2000_psi_at_15_l_min_is_19_min_and_16_to_500_psi() {
    assert_worked("wx-d-2000-15", D, 2000.0, 200.0, 15.0);
    assert_worked("wx-d-2000-15-500", D, 2000.0, 500.0, 15.0);
    assert_eq!(minutes(D, 2000.0, 200.0, 15.0), 19);
}

#[test]
fn worked_m_2000_psi_residual_200_at_10_l_min_is_280_min_and_not_281() {
    assert_worked("wx-m-2000", M, 2000.0, 200.0, 10.0);
    assert_eq!(minutes(M, 2000.0, 200.0, 10.0), 280);
}

#[test]
fn worked_e_1000_psi_no_residual_at_2_l_min_is_140_min() {
    assert_worked("wx-e-1000", E, 1000.0, 0.0, 2.0);
}

#[test]
fn worked_e_2200_psi_at_10_l_min_is_61_min_and_56_with_residual() {
    assert_worked("wx-e-2200-10", E, 2200.0, 0.0, 10.0);
    assert_worked("wx-e-2200-10-200", E, 2200.0, 200.0, 10.0);
}

#[test]
fn worked_h_2200_psi_residual_200_at_15_l_min_is_418_min() {
    assert_worked("wx-h-2200-15", H_K, 2200.0, 200.0, 15.0);
    assert_eq!(minutes(H_K, 2200.0, 200.0, 15.0), 418);
}

#[test]
fn a_full_d_promises_no_more_than_contents_over_flow() {
    let fact = fact("wx-d-full");
    for full in [2000.0, 2200.0] {
        let found = f64::from(minutes(D, full, 0.0, 10.0));
        assert!(
            found <= fact.number() && found >= fact.number() * 0.85,
            "{found} min from {full} psi: {fact}"
        );
    }
}

#[test]
fn at_500_of_2000_psi_a_quarter_is_left() {
    let fact = fact("wx-quarter");
    for cylinder in &RULEBOOK.cylinders {
        let held = |reading| cylinder.factor.contents(psi(reading)).as_litres();
        let share = held(500.0) / held(2000.0);
        assert!((share - fact.number()).abs() < 1e-12, "{share}: {fact}");
    }
}

/// The least reading by the formula, from the published factor.
fn least(factor: &str, wanted: f64, litres: f64) -> f64 {
    wanted * litres / fact(factor).number() + fact("resid-200-aaos").number()
}

#[test]
fn least_psi_for_the_minutes_that_virginia_asks() {
    for (row, id, factor, wanted) in [
        ("wx-va-d", D, "fac-sheet-d", 15_u32),
        ("wx-va-e", E, "fac-sheet-e", 15),
        ("wx-va-h", H_K, "fac-sheet-hk", 30),
    ] {
        let fact = fact(row);
        let lasts = |reading| minutes(id, reading, 200.0, 10.0);
        assert!(lasts(fact.number()) >= wanted, "at the published reading: {fact}");
        let formula = least(factor, f64::from(wanted), 10.0);
        assert!(
            formula <= fact.number() && formula > fact.number() - 15.0,
            "the formula gives {formula}: {fact}"
        );
        assert!(lasts(formula + 1.0) >= wanted, "1 psi above {formula}: {fact}");
        assert!(lasts(formula - 1.0) < wanted, "1 psi below {formula}: {fact}");
    }
}

#[test]
fn least_psi_for_an_m_is_393_because_the_sheet_rounded_down() {
    let fact = fact("wx-va-m");
    let formula = least("fac-sheet-m", 30.0, 10.0);
    assert!((formula - 392.3).abs() < 0.05, "{formula}: {fact}");
    assert!(minutes(M, fact.number() + 1.0, 200.0, 10.0) >= 30, "{fact}");
    // At the printed reading the gas is a fifth of a litre short, and the answer must not hide it.
    assert_eq!(minutes(M, fact.number(), 200.0, 10.0), 29, "{fact}");
}

#[test]
fn a_full_d_and_e_hold_the_portable_supply_that_virginia_asks() {
    let fact = fact("va-portable");
    for id in [D, E] {
        let usable = of_cylinder(&RULEBOOK, cylinder(id), psi(2000.0), flow(10.0))
            .unwrap()
            .usable;
        assert!(usable.as_litres() >= fact.number(), "{usable}: {fact}");
    }
}

#[test]
fn a_full_jumbo_d_at_15_l_min_lasts_about_half_an_hour_down_to_500_psi() {
    let fact = fact("cp-jumbo-d");
    for full in [2000.0, 2200.0] {
        let found = f64::from(minutes(JUMBO_D, full, 500.0, 15.0));
        assert!(fact.holds(found, 0.0), "{found} min from {full} psi: {fact}");
    }
}

#[test]
fn a_cylinder_of_the_book_is_reckoned_with_the_residual_of_the_book() {
    let fact = fact("resid-200-aaos");
    for cylinder in &RULEBOOK.cylinders {
        for reading in [150.0, 200.0, 500.0, 2000.0] {
            let of_book = of_cylinder(&RULEBOOK, cylinder, psi(reading), flow(10.0)).unwrap();
            let residual = psi(fact.number());
            let by_hand = by_factor(cylinder.factor, psi(reading), residual, flow(10.0));
            let case = format!("{} at {reading} psi: {fact}", cylinder.rule.id);
            assert_eq!(Ok(of_book.by_factor.unwrap()), by_hand, "{case}");
            let (water, temperature) = (cylinder.water_capacity, of_book.temperature);
            let by_hand = by_density(water, psi(reading), residual, temperature, flow(10.0));
            assert_eq!(Ok(of_book.by_density), by_hand, "{case}");
        }
    }
}

/// Readings, residuals and flows for the laws: round numbers and crooked ones, and both ends of what a gauge shows.
fn readings() -> impl Iterator<Item = f64> {
    (0..=60)
        .map(|step| f64::from(step) * 50.0)
        .chain([199.0, 199.999, 200.001, 333.3, 1137.5, 2216.5, 4351.0])
}
const RESIDUALS: [f64; 6] = [0.0, 100.0, 150.0, 200.0, 500.0, 1000.0];
const FLOWS: [f64; 12] = [0.1, 0.25, 0.5, 1.0, 2.0, 3.3, 6.0, 8.0, 10.0, 12.0, 15.0, 25.0];

/// What `whole_minutes` may add to reach a whole minute that rounding took away.
const ROUNDING: f64 = 1e-9;

#[test]
fn minutes_times_flow_never_exceed_the_gas_that_is_there() {
    let mut answers = 0_u32;
    for cylinder in &RULEBOOK.cylinders {
        for reading in readings() {
            for residual in RESIDUALS {
                for litres in FLOWS {
                    let answer =
                        by_factor(cylinder.factor, psi(reading), psi(residual), flow(litres)).unwrap();
                    let held = cylinder.factor.contents(psi(reading)).as_litres();
                    let kept = cylinder.factor.contents(psi(residual)).as_litres();
                    let used = f64::from(answer.minutes) * litres;
                    let case = format!(
                        "{} at {reading} psi, residual {residual} psi, {litres} L/min: {answer:?}",
                        cylinder.rule.id
                    );
                    let gas = answer.usable.as_litres();
                    assert!(used <= gas * (1.0 + ROUNDING), "more than usable: {case}");
                    assert!(
                        used <= (held - kept).max(0.0) * (1.0 + ROUNDING) + 1e-9,
                        "more than held: {case}"
                    );
                    // And no whole minute is lost.
                    assert!(used + litres > gas, "a minute short: {case}");
                    if reading <= residual {
                        assert_eq!(answer.minutes, 0, "below the residual: {case}");
                    }
                    answers += 1;
                }
            }
        }
    }
    assert_eq!(answers, 13 * 68 * 6 * 12, "every case was asked");
}

/// Asserts that the minutes never rise along a row of cases.
fn assert_never_rises(what: &str, minutes: impl Iterator<Item = u32>) {
    let mut last = u32::MAX;
    for next in minutes {
        assert!(next <= last, "{what}: {next} min after {last} min");
        last = next;
    }
}

fn sorted(mut values: Vec<f64>) -> Vec<f64> {
    values.sort_by(f64::total_cmp);
    values
}

#[test]
fn more_pressure_never_lasts_shorter() {
    let mut falling = sorted(readings().collect());
    falling.reverse();
    for cylinder in &RULEBOOK.cylinders {
        for litres in FLOWS {
            let what = format!("{} at {litres} L/min, falling pressure", cylinder.rule.id);
            let answers = falling.iter().map(|reading| {
                of_cylinder(&RULEBOOK, cylinder, psi(*reading), flow(litres))
                    .unwrap()
                    .minutes
            });
            assert_never_rises(&what, answers);
        }
    }
}

#[test]
fn more_flow_never_lasts_longer() {
    for cylinder in &RULEBOOK.cylinders {
        for reading in readings() {
            let what = format!("{} at {reading} psi, rising flow", cylinder.rule.id);
            let answers = FLOWS.iter().map(|litres| {
                of_cylinder(&RULEBOOK, cylinder, psi(reading), flow(*litres))
                    .unwrap()
                    .minutes
            });
            assert_never_rises(&what, answers);
        }
    }
}

#[test]
fn a_greater_residual_never_lasts_longer() {
    for cylinder in &RULEBOOK.cylinders {
        for reading in readings() {
            for litres in FLOWS {
                let what = format!(
                    "{} at {reading} psi and {litres} L/min, rising residual",
                    cylinder.rule.id
                );
                let answers = RESIDUALS.iter().map(|residual| {
                    by_factor(cylinder.factor, psi(reading), psi(*residual), flow(litres))
                        .unwrap()
                        .minutes
                });
                assert_never_rises(&what, answers);
            }
        }
    }
}

#[test]
fn no_flow_has_no_duration() {
    for cylinder in &RULEBOOK.cylinders {
        assert_eq!(
            of_cylinder(&RULEBOOK, cylinder, psi(2000.0), Flow::ZERO),
            Err(NoDuration::NoFlow),
            "{}",
            cylinder.rule.id
        );
    }
}

#[test]
fn an_empty_cylinder_lasts_no_time() {
    for cylinder in &RULEBOOK.cylinders {
        let answer = of_cylinder(&RULEBOOK, cylinder, Pressure::<Gauge>::ZERO, flow(0.1)).unwrap();
        assert_eq!((answer.minutes, answer.usable.as_litres()), (0, 0.0));
    }
}
