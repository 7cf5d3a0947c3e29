//! How far the table's density is from the equation's, in every cell: the map in the module's documentation, and the two
//! bounds that the minutes rely on.

use oxyfolio::oxygen::{DENSITY_ERROR, MARGIN};

use super::{density, reference::Isotherm};

const DOCUMENTED: &str = include_str!("../../src/oxygen/mod.rs");
/// Places within a cell, in each direction.
const PLACES: u32 = 8;
const STEP: f64 = 5.0;
const MOST_BAR: f64 = 301.01325;
const WARM: [f64; 6] = [-40.0, -20.0, 0.0, 20.0, 40.0, 60.0];
const DENSE: [f64; 6] = [0.0, 50.0, 100.0, 150.0, 200.0, 302.0];

/// The greatest errors found, in shares of the equation's value.
#[derive(Default)]
struct Found {
    /// By temperature and pressure.
    map: [[f64; 5]; 5],
    density: f64,
    /// Of the difference of two densities at one temperature.
    difference: f64,
}

fn band(value: f64, ends: &[f64; 6]) -> usize {
    (0..5).rev().find(|index| value >= ends[*index]).unwrap()
}

fn found() -> Found {
    let mut found = Found::default();
    for row in 0..=20 * PLACES {
        let celsius = -40.0 + f64::from(row) * STEP / f64::from(PLACES);
        let isotherm = Isotherm::celsius(celsius);
        let mut last = (0.0, 0.0);
        for column in 1..=61 * PLACES {
            let bar = (f64::from(column) * STEP / f64::from(PLACES)).min(MOST_BAR);
            let here = (density(bar, celsius), isotherm.density(bar));
            let error = (here.0 / here.1 - 1.0).abs();
            let cell = &mut found.map[band(celsius.min(59.9), &WARM)][band(bar, &DENSE)];
            *cell = cell.max(error);
            found.density = found.density.max(error);
            let (ours, theirs) = (here.0 - last.0, here.1 - last.1);
            found.difference = found.difference.max((ours / theirs - 1.0).abs());
            last = here;
            if bar >= MOST_BAR {
                break;
            }
        }
    }
    found
}

/// The map as it is printed: parts in a million, rounded up to a tenth.
fn printed(map: &[[f64; 5]; 5]) -> Vec<String> {
    let line = |(row, cells): (usize, &[f64; 5])| {
        let cells = cells.map(|cell| format!("{:.1}", (cell * 1e7).ceil() / 10.0));
        format!(
            "//! | {} to {} | {} |",
            WARM[row],
            WARM[row + 1],
            cells.join(" | ")
        )
    };
    map.iter().enumerate().map(line).collect()
}

#[test]
fn the_map_of_errors_is_the_documented_one_and_within_the_bounds() {
    let found = found();
    let lines = printed(&found.map);
    for line in &lines {
        assert!(DOCUMENTED.contains(line), "the map is\n{}", lines.join("\n"));
    }
    // Half as much again as was found, for what lies between the places looked at.
    assert!(1.5 * found.density < DENSITY_ERROR, "{}", found.density);
    // Any difference is made up of differences between neighbours, so it is no worse than the worst of them.
    assert!(found.difference < 3e-5, "{}", found.difference);
    assert!(
        2.0 * found.difference + 2.0 * found.density < MARGIN,
        "{}",
        found.difference
    );
}
