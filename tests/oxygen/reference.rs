//! The equation of state a second time, written from its formula and with the coefficients of `equation.csv`: what the
//! library is compared with between the points of the tables.
//!
//! α(δ, τ) = Σ n δ^d τ^t exp(-δ^l), without the exponential where l is 0; p = ρ R T (1 + δ ∂α/∂δ).

use std::sync::OnceLock;

const EQUATION: &str = include_str!("equation.csv");
/// Density of free gas: 1 atm and 21.11 °C.
pub const FREE: (f64, f64) = (1.01325, 21.11);

struct Equation {
    reducing_temperature: f64,
    reducing_density: f64,
    gas_constant: f64,
    molar_mass: f64,
    terms: Vec<[f64; 4]>,
}

fn numbers<const N: usize>(line: &str) -> [f64; N] {
    let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
    cells.try_into().unwrap()
}

fn equation() -> &'static Equation {
    static READ: OnceLock<Equation> = OnceLock::new();
    READ.get_or_init(|| {
        let mut lines = EQUATION.lines().filter(|line| !line.starts_with('#'));
        lines.next().unwrap();
        let [reducing_temperature, reducing_density, gas_constant, molar_mass] =
            numbers(lines.next().unwrap());
        assert_eq!(lines.next(), Some("n,d,t,l"));
        let terms: Vec<[f64; 4]> = lines.map(numbers).collect();
        assert_eq!(terms.len(), 32);
        Equation {
            reducing_temperature,
            reducing_density,
            gas_constant,
            molar_mass,
            terms,
        }
    })
}

/// The equation at one temperature.
pub struct Isotherm {
    kelvin: f64,
    /// n τ^t, d and l of each term.
    terms: Vec<(f64, i32, i32)>,
}

impl Isotherm {
    pub fn kelvin(kelvin: f64) -> Self {
        let tau = equation().reducing_temperature / kelvin;
        let terms = equation().terms.iter();
        Self {
            kelvin,
            terms: terms
                .map(|[n, d, t, l]| (n * tau.powf(*t), *d as i32, *l as i32))
                .collect(),
        }
    }

    pub fn celsius(celsius: f64) -> Self {
        Self::kelvin(celsius + 273.15)
    }

    /// Pressure in bar at a density in kg/m³.
    pub fn pressure(&self, density: f64) -> f64 {
        let equation = equation();
        let moles = density / equation.molar_mass;
        let delta = moles / equation.reducing_density;
        let term = |(n, d, l): &(f64, i32, i32)| {
            let (plain, l_power) = (n * delta.powi(*d), delta.powi(*l));
            if *l == 0 {
                plain * f64::from(*d)
            } else {
                plain * (-l_power).exp() * (f64::from(*d) - f64::from(*l) * l_power)
            }
        };
        let sum: f64 = self.terms.iter().map(term).sum();
        moles * equation.gas_constant * self.kelvin * (1.0 + sum) / 1e5
    }

    /// Density in kg/m³ at a pressure in bar above vacuum.
    pub fn density(&self, bar: f64) -> f64 {
        let thin = 1e5 * equation().molar_mass / (equation().gas_constant * self.kelvin);
        let mut density = bar * thin;
        for _ in 0..50 {
            let found = self.pressure(density);
            let step = density * 1e-5;
            let slope = (self.pressure(density + step) - self.pressure(density - step)) / (2.0 * step);
            let change = (bar - found) / slope;
            density += change;
            if change.abs() < 1e-13 * density {
                return density;
            }
        }
        panic!("no density at {bar} bar and {} K", self.kelvin);
    }
}

/// Litres of free gas in each litre of a cylinder, at a reading in bar.
pub fn held(isotherm: &Isotherm, reading: f64) -> f64 {
    static FREE_DENSITY: OnceLock<f64> = OnceLock::new();
    let free = FREE_DENSITY.get_or_init(|| Isotherm::celsius(FREE.1).density(FREE.0));
    isotherm.density(reading + 1.01325) / free
}

/// The reference is itself held to the tables of the NIST Chemistry WebBook (fluid data of oxygen, 0.02 MPa, vapour), far
/// colder than the library's domain: no point of theirs in it could be read.
#[test]
fn the_reference_gives_the_points_of_the_nist_webbook() {
    for (kelvin, published) in [
        (99.361, 0.77832),
        (104.361, 0.74059),
        (109.361, 0.70637),
        (124.361, 0.62049),
        (129.361, 0.59635),
    ] {
        let found = Isotherm::kelvin(kelvin).density(0.2);
        assert!(
            (found - published).abs() < 1e-5,
            "{kelvin} K: {found}, NIST {published}"
        );
    }
}
