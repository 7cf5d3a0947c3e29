//! The equation of state of Schmidt and Wagner, in arithmetic that the compiler itself can do.
//!
//! Source: R. Schmidt and W. Wagner, "A new form of the equation of state for pure substances and its application to
//! oxygen", Fluid Phase Equilibria 19 (1985) 175-200. The coefficients, the gas constant and the reducing point were read
//! from the fluid data of the reference library CoolProp 8.0.0 (fluid `Oxygen`), which gives the same source.
//!
//! The residual part of the reduced Helmholtz energy is a sum of terms `n δ^d τ^t` and `n δ^d τ^t exp(-δ^l)` with δ the
//! reduced density and τ the inverse reduced temperature. Pressure and its slope follow from its derivatives with
//! respect to density:
//!
//! ```text
//! p      = ρ R T (1 + δ α_δ)
//! dp/dρ  =   R T (1 + 2 δ α_δ + δ² α_δδ)
//! ```
//!
//! Everything here is `const fn` over additions, multiplications and divisions, with no call of a mathematical library:
//! the result is the same on every machine. Nothing here runs in the program; the compiler evaluates it once, for the
//! [table](super::table).

#![allow(
    clippy::indexing_slicing,
    reason = "evaluated by the compiler only, which refuses to build with an index out of range"
)]

/// Kelvins at 0 °C.
pub const ICE_POINT: f64 = 273.15;
/// Reducing temperature, in kelvins.
const REDUCING_TEMPERATURE: f64 = 154.581;
/// Reducing density, in moles per cubic metre.
const REDUCING_DENSITY: f64 = 13_630.0;
/// The gas constant the equation was fitted with, in J/(mol·K). Not the later one of the SI.
const GAS_CONSTANT: f64 = 8.314_34;
/// Molar mass of oxygen, in kg/mol.
const MOLAR_MASS: f64 = 0.031_998_8;

/// `n δ^d τ^(half_t / 2)`, and `exp(-δ^l)` where `l` isn't 0.
struct Term {
    n: f64,
    d: usize,
    half_t: i32,
    l: usize,
}

const fn term(n: f64, d: usize, half_t: i32, l: usize) -> Term {
    Term { n, d, half_t, l }
}

/// The 32 terms in the order of the source.
const TERMS: [Term; 32] = [
    term(0.398_376_874_9, 1, 0, 0),
    term(-1.846_157_454, 1, 3, 0),
    term(0.418_347_319_7, 1, 5, 0),
    term(0.023_706_207_11, 2, -1, 0),
    term(0.097_717_305_73, 2, 3, 0),
    term(0.030_178_912_94, 2, 4, 0),
    term(0.022_733_532_12, 3, 0, 0),
    term(0.013_572_540_86, 3, 2, 0),
    term(-0.040_526_989_43, 3, 5, 0),
    term(0.000_545_462_851_5, 6, 0, 0),
    term(0.000_511_318_227_7, 7, 4, 0),
    term(2.953_466_883e-07, 7, 10, 0),
    term(-8.687_645_072e-05, 8, 4, 0),
    term(-0.212_708_258_9, 1, 10, 2),
    term(0.087_359_419_58, 1, 12, 2),
    term(0.127_550_919, 2, 7, 2),
    term(-0.090_677_010_64, 2, 11, 2),
    term(-0.035_400_842_06, 3, 6, 2),
    term(-0.036_232_780_59, 3, 14, 2),
    term(0.013_276_992_9, 5, 12, 2),
    term(-0.000_325_411_186_5, 6, 17, 2),
    term(-0.008_313_582_932, 7, 8, 2),
    term(0.002_124_570_559, 8, 13, 2),
    term(-0.000_832_520_623_2, 10, 11, 2),
    term(-2.626_173_276e-05, 2, 44, 4),
    term(0.002_599_581_482, 3, 22, 4),
    term(0.009_984_649_663, 3, 36, 4),
    term(0.002_199_923_153, 4, 22, 4),
    term(-0.025_913_504_86, 4, 46, 4),
    term(-0.125_963_084_8, 5, 34, 4),
    term(0.147_835_563_7, 5, 36, 4),
    term(-0.010_112_510_78, 5, 46, 4),
];

/// One more than the greatest power of the density.
const POWERS: usize = 11;

/// The equation at one temperature: what is left are three polynomials in the reduced density, alone, with
/// `exp(-δ²)` and with `exp(-δ⁴)`.
pub struct Isotherm {
    kelvin: f64,
    plain: [f64; POWERS],
    second: [f64; POWERS],
    fourth: [f64; POWERS],
}

impl Isotherm {
    /// The equation at a temperature in kelvins, above the critical one.
    pub const fn at(kelvin: f64) -> Self {
        let root = square_root(REDUCING_TEMPERATURE / kelvin);
        let (mut plain, mut second, mut fourth) = ([0.0; POWERS], [0.0; POWERS], [0.0; POWERS]);
        let mut i = 0;
        while i < TERMS.len() {
            let Term { n, d, half_t, l } = TERMS[i];
            let value = n * power(root, half_t);
            match l {
                0 => plain[d] += value,
                2 => second[d] += value,
                _ => fourth[d] += value,
            }
            i += 1;
        }
        Self {
            kelvin,
            plain,
            second,
            fourth,
        }
    }

    /// R T over the molar mass: pressure over density of the thin gas, in Pa/(kg/m³).
    const fn thin(&self) -> f64 {
        GAS_CONSTANT * self.kelvin / MOLAR_MASS
    }

    /// Pressure in pascals at a density in kg/m³, and its slope.
    const fn pressure(&self, density: f64) -> (f64, f64) {
        let delta = density / MOLAR_MASS / REDUCING_DENSITY;
        let (x2, x4) = (delta * delta, delta * delta * delta * delta);
        let (exp2, exp4) = (exp_of_minus(x2), exp_of_minus(x4));
        let (mut first, mut second) = (0.0, 0.0);
        let mut powered = 1.0;
        let mut d = 1;
        while d < POWERS {
            powered *= delta;
            let n = d as f64;
            let (a, b, c) = (
                self.plain[d] * powered,
                self.second[d] * powered * exp2,
                self.fourth[d] * powered * exp4,
            );
            let (b1, c1) = (n - 2.0 * x2, n - 4.0 * x4);
            first += n * a + b1 * b + c1 * c;
            second +=
                n * (n - 1.0) * a + (b1 * (b1 - 1.0) - 4.0 * x2) * b + (c1 * (c1 - 1.0) - 16.0 * x4) * c;
            d += 1;
        }
        let thin = self.thin();
        (
            density * thin * (1.0 + first),
            thin * (1.0 + 2.0 * first + second),
        )
    }

    /// Density over pressure, in kg/m³ for each pascal, at a pressure in pascals. At no pressure it is that of the thin
    /// gas. `near` is a first guess of it, 0 for none.
    ///
    /// Above the critical temperature pressure rises with density all the way, so that Newton's steps, at most
    /// [`STEPS`], end at the one density there is.
    pub const fn density_per_pascal(&self, pascals: f64, near: f64) -> f64 {
        if pascals <= 0.0 {
            return 1.0 / self.thin();
        }
        let mut density = if near > 0.0 {
            near * pascals
        } else {
            pascals / self.thin()
        };
        let mut step = 0;
        while step < STEPS {
            let (found, slope) = self.pressure(density);
            let change = (pascals - found) / slope;
            density += change;
            if change * change < 1e-28 * density * density {
                break;
            }
            step += 1;
        }
        assert!(step < STEPS, "the density was found");
        density / pascals
    }
}

/// The most steps taken to find a density. No more than are needed: were slope or guess a little wrong, it would take more,
/// and the compiler would refuse the table.
const STEPS: usize = 4;

/// Density in kg/m³ at a pressure in pascals and a temperature in kelvins.
pub const fn density(pascals: f64, kelvin: f64) -> f64 {
    Isotherm::at(kelvin).density_per_pascal(pascals, 0.0) * pascals
}

/// A whole power.
const fn power(base: f64, exponent: i32) -> f64 {
    let mut left = exponent.unsigned_abs();
    let (mut square, mut result) = (base, 1.0);
    while left > 0 {
        if left % 2 == 1 {
            result *= square;
        }
        square *= square;
        left /= 2;
    }
    if exponent < 0 { 1.0 / result } else { result }
}

/// The square root of a number between a quarter and 4, by Heron's rule.
const fn square_root(number: f64) -> f64 {
    let mut root = 1.0;
    let mut step = 0;
    while step < 8 {
        root = (root + number / root) / 2.0;
        step += 1;
    }
    root
}

/// e to the power of minus a number from 0 to 16: the series at a sixteenth of it, squared four times.
const fn exp_of_minus(number: f64) -> f64 {
    let x = -number / 16.0;
    let (mut sum, mut term) = (1.0, 1.0);
    let mut k = 1;
    while k <= 18 {
        term *= x / k as f64;
        sum += term;
        k += 1;
    }
    let twice = sum * sum;
    let fourth = twice * twice;
    let eighth = fourth * fourth;
    eighth * eighth
}
