//! The factor method against the real gas.
//!
//! `oxygen-density.csv` gives density and compressibility of pure oxygen; between its rows the compressibility is taken
//! on a straight line, which is within a few parts in ten thousand.

use oxyfolio::RULEBOOK;
use oxyfolio::book::Cylinder;
use oxyfolio::quantity::{Gauge, Pressure};

use super::facts::fact;
use super::support::{agree, ends, psi};

const TABLE: &str = include_str!("oxygen-density.csv");
const SOURCE: &str = "oxygen-density.csv (equation of state of Schmidt and Wagner 1985)";

/// 70 °F, at which gas volumes and service pressures are stated.
const ROOM_C: f64 = 21.11;
const ICE_K: f64 = 273.15;
const ATMOSPHERE_BAR: f64 = 1.01325;
/// Molar gas constant in L·bar/(mol·K), from the SI of 2019.
const GAS_CONSTANT: f64 = 0.083_144_626;
/// Molar mass of oxygen in g/mol.
const MOLAR_MASS: f64 = 31.9988;

struct Row {
    celsius: f64,
    bar: f64,
    density: f64,
    compressibility: f64,
}

fn rows() -> Vec<Row> {
    let mut lines = TABLE.lines().filter(|line| !line.starts_with('#'));
    assert_eq!(
        lines.next(),
        Some("temperature_c,pressure_bar_abs,density_kg_m3,compressibility")
    );
    lines
        .map(|line| {
            let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
            let [celsius, bar, density, compressibility] = cells[..] else {
                panic!("expected four cells, found {line}");
            };
            Row {
                celsius,
                bar,
                density,
                compressibility,
            }
        })
        .collect()
}

fn compressibility(celsius: f64, bar: f64) -> f64 {
    let rows: Vec<Row> = rows()
        .into_iter()
        .filter(|row| (row.celsius - celsius).abs() < 1e-9)
        .collect();
    let pair = rows
        .windows(2)
        .find(|pair| pair[0].bar <= bar && bar <= pair[1].bar)
        .unwrap_or_else(|| panic!("no rows round {celsius} °C and {bar} bar in {SOURCE}"));
    let share = (bar - pair[0].bar) / (pair[1].bar - pair[0].bar);
    pair[0].compressibility + share * (pair[1].compressibility - pair[0].compressibility)
}

/// Litres at 1 atm and 70 °F held by each litre of water capacity at a gauge pressure and a temperature.
fn volumes(celsius: f64, reading: Pressure<Gauge>) -> f64 {
    let bar = reading.to_absolute().as_bar();
    let room = compressibility(ROOM_C, ATMOSPHERE_BAR);
    bar / ATMOSPHERE_BAR * room / compressibility(celsius, bar) * (ROOM_C + ICE_K) / (celsius + ICE_K)
}

fn real_contents(cylinder: &Cylinder, celsius: f64, reading: Pressure<Gauge>) -> f64 {
    cylinder.water_capacity.as_litres() * volumes(celsius, reading)
}

/// Readings from just above the residual to the pressure at which the contents are stated.
fn readings(cylinder: &Cylinder) -> impl Iterator<Item = Pressure<Gauge>> {
    let full = cylinder.contents.at.as_psi();
    (3..=29)
        .map(|step| f64::from(step) * 100.0)
        .filter(move |reading| *reading < full)
        .chain([full])
        .map(psi)
}

#[test]
fn the_density_table_agrees_with_itself() {
    let rows = rows();
    assert_eq!(rows.len(), 14 * 15, "{SOURCE}");
    for row in &rows {
        let molar = row.density / MOLAR_MASS;
        let product = row.compressibility * molar * GAS_CONSTANT * (row.celsius + ICE_K);
        assert!(
            agree(product, row.bar, 1e-4),
            "{} °C, {} bar: {product} in {SOURCE}",
            row.celsius,
            row.bar
        );
    }
}

#[test]
fn the_density_table_gives_the_computed_points() {
    let density = fact("o2-d-21_11");
    let found = rows()
        .into_iter()
        .find(|row| (row.celsius - ROOM_C).abs() < 1e-9 && (row.bar - ATMOSPHERE_BAR).abs() < 1e-9)
        .unwrap()
        .density;
    assert!(agree(found, density.number(), 1e-5), "{found}: {density}");
    let z = fact("o2-z2200");
    let found = compressibility(ROOM_C, psi(2200.0).to_absolute().as_bar());
    assert!(agree(found, z.number(), 5e-4), "{found}: {z}");
    for (reading, row) in [(2200.0, "o2-v2200"), (2000.0, "o2-v2000")] {
        let fact = fact(row);
        let found = volumes(ROOM_C, psi(reading));
        assert!(agree(found, fact.number(), 5e-4), "{found}: {fact}");
    }
}

#[test]
fn stated_contents_are_the_real_gas_in_the_water_capacity_within_8_percent() {
    for cylinder in &RULEBOOK.cylinders {
        let stated = cylinder.contents.volume.as_litres();
        let real = real_contents(cylinder, ROOM_C, cylinder.contents.at);
        assert!(
            agree(stated, real, 0.08),
            "{} states {stated} L at {}, the real gas is {real} L: {SOURCE}",
            cylinder.rule.id,
            cylinder.contents.at
        );
    }
}

#[test]
fn a_full_cylinder_by_its_factor_promises_at_most_3_percent_above_the_real_gas() {
    for cylinder in &RULEBOOK.cylinders {
        let by_factor = cylinder.factor.contents(cylinder.contents.at).as_litres();
        let real = real_contents(cylinder, ROOM_C, cylinder.contents.at);
        assert!(
            by_factor <= real * 1.03,
            "{}: {by_factor} L by the factor, {real} L of real gas: {SOURCE}",
            cylinder.rule.id
        );
    }
}

/// Gas above the residual, by the factor and really.
fn usable(cylinder: &Cylinder, celsius: f64, reading: Pressure<Gauge>) -> (f64, f64) {
    let residual = RULEBOOK.policies.residual_pressure;
    let by_factor = |at| cylinder.factor.contents(at).as_litres();
    let real = |at| real_contents(cylinder, celsius, at);
    (
        by_factor(reading) - by_factor(residual),
        real(reading) - real(residual),
    )
}

#[test]
fn at_70_f_the_gas_above_the_residual_is_promised_within_5_percent() {
    for cylinder in &RULEBOOK.cylinders {
        for reading in readings(cylinder) {
            let (promised, real) = usable(cylinder, ROOM_C, reading);
            assert!(
                promised <= real * 1.05,
                "{} at {reading}: {promised} L promised, {real} L above the residual: {SOURCE}",
                cylinder.rule.id
            );
        }
    }
}

#[test]
fn at_70_f_the_cylinder_holds_all_that_is_promised_even_without_the_residual() {
    for cylinder in &RULEBOOK.cylinders {
        for reading in readings(cylinder) {
            let (promised, _) = usable(cylinder, ROOM_C, reading);
            let held = real_contents(cylinder, ROOM_C, reading);
            assert!(
                promised < held,
                "{} at {reading}: {promised} L promised, {held} L in the cylinder: {SOURCE}",
                cylinder.rule.id
            );
        }
    }
}

#[test]
fn in_the_cold_a_reading_promises_less_than_the_gas_there_is() {
    let (coldest, _) = ends(RULEBOOK.policies.use_temperature);
    for cylinder in &RULEBOOK.cylinders {
        for reading in readings(cylinder) {
            let (promised, real) = usable(cylinder, coldest.as_celsius(), reading);
            assert!(
                promised <= real,
                "{} at {reading} and {coldest}: {promised} L promised, {real} L real: {SOURCE}",
                cylinder.rule.id
            );
        }
    }
}

/// A warm cylinder reads high. The table is extrapolated above 27 °C, so this is a check of size, not of the digit.
#[test]
fn the_planning_margin_covers_a_reading_in_the_greatest_heat_of_use() {
    let (_, hottest) = ends(RULEBOOK.policies.use_temperature);
    let margin = 1.0 + RULEBOOK.policies.planning_margin.as_percent() / 100.0;
    for cylinder in &RULEBOOK.cylinders {
        for reading in readings(cylinder) {
            let (promised, real) = usable(cylinder, hottest.as_celsius(), reading);
            assert!(
                promised <= real * margin,
                "{} at {reading} and {hottest}: {promised} L promised, {real} L real: {SOURCE}",
                cylinder.rule.id
            );
        }
    }
}
