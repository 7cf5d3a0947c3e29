//! Density over pressure at every 5 °C and 5 bar, made by the compiler from the [equation](super::equation), and the
//! value between.

use super::equation::{ICE_POINT, Isotherm};

/// Degrees between two rows, and bar between two columns.
const STEP: f64 = 5.0;
/// The first row's temperature in °C. The rows go one step beyond the domain at both ends, so that every temperature in
/// it lies between the two middle ones of four rows.
const FIRST_CELSIUS: f64 = -45.0;
/// Rows from -45 to 65 °C.
const ROWS: usize = 23;
/// Columns from 0 to 305 bar.
const COLUMNS: usize = 62;
const PASCALS_PER_BAR: f64 = 100_000.0;

/// In kg/m³ for each bar.
static TABLE: [[f64; COLUMNS]; ROWS] = made();

// Some three million steps of the compiler; the lint asks whether that many are meant.
#[allow(
    long_running_const_eval,
    clippy::indexing_slicing,
    reason = "evaluated by the compiler only, which refuses to build with an index out of range"
)]
const fn made() -> [[f64; COLUMNS]; ROWS] {
    let mut table = [[0.0; COLUMNS]; ROWS];
    let mut row = 0;
    while row < ROWS {
        let isotherm = Isotherm::at(ICE_POINT + FIRST_CELSIUS + STEP * row as f64);
        let mut near = 0.0;
        let mut column = 0;
        while column < COLUMNS {
            near = isotherm.density_per_pascal(STEP * column as f64 * PASCALS_PER_BAR, near);
            table[row][column] = near * PASCALS_PER_BAR;
            column += 1;
        }
        row += 1;
    }
    table
}

/// Where a value lies in the table: the first of four nodes, and the weight of each.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Place {
    first: usize,
    weights: [f64; 4],
}

impl Place {
    /// `at` in steps from the first of `nodes` nodes; the four nearest are taken, at the ends the last four.
    const fn new(at: f64, nodes: usize) -> Self {
        // `as` takes what is below 0, or no number, to 0.
        let below = at as usize;
        let (wanted, last) = (below.saturating_sub(1), nodes - 4);
        let first = if wanted < last { wanted } else { last };
        let s = at - first as f64;
        let (a, b, c) = (s - 1.0, s - 2.0, s - 3.0);
        // Lagrange's weights for nodes at 0, 1, 2 and 3.
        let weights = [
            a * b * c * (-1.0 / 6.0),
            s * b * c * 0.5,
            s * a * c * -0.5,
            s * a * b * (1.0 / 6.0),
        ];
        Self { first, weights }
    }

    /// The weighted sum of the four nodes.
    fn of(self, nodes: [f64; 4]) -> f64 {
        let ([w, x, y, z], [a, b, c, d]) = (self.weights, nodes);
        (w * a + x * b) + (y * c + z * d)
    }
}

/// A temperature in the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row(Place);

impl Row {
    /// The place of a temperature of the domain.
    pub const fn at(celsius: f64) -> Self {
        Self(Place::new((celsius - FIRST_CELSIUS) / STEP, ROWS))
    }

    /// Density in kg/m³ at a pressure of the domain.
    pub fn density(self, pascals: f64) -> f64 {
        let bar = pascals / PASCALS_PER_BAR;
        let column = Place::new(bar / STEP, COLUMNS);
        let at = |row: &[f64; COLUMNS]| row.get(column.first..)?.first_chunk::<4>().copied();
        let rows = TABLE.get(self.0.first..).and_then(|rows| rows.first_chunk::<4>());
        // A place always has four nodes; were it not so, no gas would be promised.
        let Some([a, b, c, d]) = rows else { return 0.0 };
        let (Some(a), Some(b), Some(c), Some(d)) = (at(a), at(b), at(c), at(d)) else {
            return 0.0;
        };
        self.0
            .of([column.of(a), column.of(b), column.of(c), column.of(d)])
            * bar
    }
}
