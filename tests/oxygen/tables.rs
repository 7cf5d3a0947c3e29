//! The library against tables computed by the reference library.

use oxyfolio::oxygen::{DENSITY_ERROR, FREE_DENSITY, free_gas};

use super::{celsius, density, litres, psi, reference};

/// At the temperatures and pressures of the brief: 14 by 15 points.
const COARSE: &str = include_str!("../published/oxygen-density.csv");
/// Between the points of the library's own table, and at the edges of the domain: 42 by 52 points.
const FINE: &str = include_str!("density.csv");

/// What was asked of the density.
const ASKED: f64 = 0.002;

/// °C, bar above vacuum, kg/m³.
fn rows(table: &str) -> Vec<[f64; 3]> {
    let rows = table.lines().filter(|line| !line.starts_with('#')).skip(1);
    rows.map(|line| {
        let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
        [cells[0], cells[1], cells[2]]
    })
    .collect()
}

/// The greatest error, and where it is.
fn greatest(rows: &[[f64; 3]], of: impl Fn(f64, f64) -> f64) -> (f64, [f64; 3]) {
    let error = |[celsius, bar, expected]: &[f64; 3]| (of(*bar, *celsius) / expected - 1.0).abs();
    let worst = rows.iter().map(|row| (error(row), *row));
    worst.max_by(|(a, _), (b, _)| a.total_cmp(b)).unwrap()
}

#[test]
fn every_row_of_both_tables_is_met() {
    // The tables are rounded at their sixth and ninth digits.
    for (table, count, rounding) in [(COARSE, 14 * 15, 1e-6), (FINE, 42 * 52, 1e-9)] {
        let rows = rows(table);
        assert_eq!(rows.len(), count);
        let (error, row) = greatest(&rows, density);
        assert!(error < ASKED, "{error} at {row:?}");
        assert!(error < DENSITY_ERROR + rounding, "{error} at {row:?}");
    }
}

#[test]
fn the_second_writing_of_the_equation_gives_the_tables_too() {
    let own = |bar: f64, celsius: f64| reference::Isotherm::celsius(celsius).density(bar);
    for (table, rounding) in [(COARSE, 1e-6), (FINE, 6e-9)] {
        let (error, row) = greatest(&rows(table), own);
        assert!(error < rounding, "{error} at {row:?}");
    }
}

#[test]
fn free_gas_is_gas_at_1_atm_and_70_f() {
    let found = FREE_DENSITY.as_kilograms_per_cubic_metre();
    let (bar, celsius) = reference::FREE;
    let expected = reference::Isotherm::celsius(celsius).density(bar);
    assert!((found / expected - 1.0).abs() < 1e-12, "{found}, {expected}");
    assert_eq!(format!("{found:.4}"), "1.3261");
    // 70 °F to all its digits gives a smaller density, hence more litres: not the safe side.
    let exact = reference::Isotherm::celsius((70.0 - 32.0) / 1.8).density(bar);
    assert!(exact < found && exact > found * (1.0 - 5e-6));
}

#[test]
fn a_litre_of_cylinder_holds_the_computed_volumes() {
    // Computed with CoolProp 8.0.0 at 21.11 °C.
    for (reading, volumes) in [(2200.0, 160.62), (2015.0, 147.03), (2000.0, 145.92)] {
        let found = free_gas(litres(1.0), psi(reading), celsius(21.11)).unwrap();
        assert!(
            (found.as_litres() - volumes).abs() < 0.006,
            "{found} at {reading} psi"
        );
    }
}
