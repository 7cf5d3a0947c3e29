//! Litres in a cylinder, from the published table of densities by interpolation: no equation of state, nothing of the library.
//!
//! Density divided by pressure changes slowly, so that is what is interpolated: a cubic through the four nearest points, first
//! over temperature, then over pressure. Free gas is at 1 atm and 70 °F.

use std::sync::OnceLock;

const TABLE: &str = include_str!("../../published/oxygen-density.csv");
const ATMOSPHERE_BAR: f64 = 1.01325;
const FREE_CELSIUS: f64 = 21.11;
/// Pounds per square inch in a bar (NIST SP 811).
pub const PSI_PER_BAR: f64 = 14.503_773_8;
/// The temperatures of the table.
pub const DOMAIN_CELSIUS: (f64, f64) = (-40.0, 60.0);

struct Table {
    temperatures: Vec<f64>,
    pressures: Vec<f64>,
    /// kg/m³ for each bar, one row for each temperature.
    rows: Vec<Vec<f64>>,
}

fn table() -> &'static Table {
    static READ: OnceLock<Table> = OnceLock::new();
    READ.get_or_init(|| {
        let mut table = Table {
            temperatures: Vec::new(),
            pressures: Vec::new(),
            rows: Vec::new(),
        };
        for line in TABLE
            .lines()
            .filter(|line| line.starts_with(|c: char| c == '-' || c.is_ascii_digit()))
        {
            let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
            if table.temperatures.last() != Some(&cells[0]) {
                table.temperatures.push(cells[0]);
                table.rows.push(Vec::new());
            }
            if table.rows.len() == 1 {
                table.pressures.push(cells[1]);
            }
            table.rows.last_mut().unwrap().push(cells[2] / cells[1]);
        }
        assert!(table.rows.iter().all(|row| row.len() == table.pressures.len()));
        table
    })
}

/// The cubic through the four points nearest to `x`.
fn cubic(xs: &[f64], ys: impl Fn(usize) -> f64, x: f64) -> f64 {
    let right = xs.partition_point(|node| *node < x);
    let first = right.saturating_sub(2).min(xs.len() - 4);
    let mut sum = 0.0;
    for i in first..first + 4 {
        let mut term = ys(i);
        for j in first..first + 4 {
            if j != i {
                term *= (x - xs[j]) / (xs[i] - xs[j]);
            }
        }
        sum += term;
    }
    sum
}

/// Oxygen at one temperature.
#[derive(Clone, Debug)]
pub struct Oxygen {
    /// Litres of free gas for each litre and each bar, at the pressures of the table.
    row: Vec<f64>,
}

impl Oxygen {
    pub fn at(celsius: f64) -> Self {
        assert!((DOMAIN_CELSIUS.0..=DOMAIN_CELSIUS.1).contains(&celsius));
        let table = table();
        let warm = |celsius: f64, pressure: usize| {
            cubic(
                &table.temperatures,
                |temperature| table.rows[temperature][pressure],
                celsius,
            )
        };
        let free = warm(FREE_CELSIUS, 0) * ATMOSPHERE_BAR;
        Self {
            row: (0..table.pressures.len())
                .map(|pressure| warm(celsius, pressure) / free)
                .collect(),
        }
    }

    /// Litres of free gas in each litre of water capacity, at a gauge pressure in psi.
    pub fn litres(&self, psi: f64) -> f64 {
        let bar = psi / PSI_PER_BAR + ATMOSPHERE_BAR;
        cubic(&table().pressures, |pressure| self.row[pressure], bar) * bar
    }

    /// The gauge pressure in psi at which a litre of water capacity holds so many litres of free gas.
    pub fn psi(&self, litres: f64) -> f64 {
        // The gas law of an ideal gas is within 13 % up to 230 bar; what is left is found by false position.
        let (mut low, mut high) = (0.0, 4_300.0);
        let (mut at_low, mut at_high) = (self.litres(low) - litres, self.litres(high) - litres);
        if at_low >= 0.0 {
            return 0.0;
        }
        assert!(at_high > 0.0, "more gas than the table knows");
        for _ in 0..60 {
            let middle = (low + (high - low) * (-at_low / (at_high - at_low)))
                .clamp(low + 0.01 * (high - low), high - 0.01 * (high - low));
            let at_middle = self.litres(middle) - litres;
            if at_middle.abs() < 1e-7 || high - low < 1e-6 {
                return middle;
            }
            if at_middle < 0.0 {
                (low, at_low) = (middle, at_middle);
                at_high *= 0.5;
            } else {
                (high, at_high) = (middle, at_middle);
                at_low *= 0.5;
            }
        }
        0.5 * (low + high)
    }
}
