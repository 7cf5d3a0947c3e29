//! How a number is printed: at most four decimals, no trailing zeros, a point.

use core::fmt;

/// Prints a number as people write it: `0.16`, `2200`, `-20`.
///
/// ```
/// use oxyfolio::quantity::Number;
/// assert_eq!(Number(2200.0000000000005).to_string(), "2200");
/// assert_eq!(Number(0.16).to_string(), "0.16");
/// assert_eq!(Number(-17.7778).to_string(), "-17.7778");
/// assert_eq!(Number(-0.00001).to_string(), "0");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Number(pub f64);

const DECIMALS: usize = 4;
const SCALE: f64 = 10_000.0;

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let magnitude = self.0.abs();
        // Larger numbers have no four decimals to lose; the standard form is exact enough.
        if !magnitude.is_finite() || magnitude >= 1e14 {
            return write!(f, "{}", self.0);
        }
        let scaled = (magnitude * SCALE + 0.5) as u64;
        if self.0 < 0.0 && scaled > 0 {
            f.write_str("-")?;
        }
        let (whole, mut fraction) = (scaled / SCALE as u64, scaled % SCALE as u64);
        write!(f, "{whole}")?;
        if fraction > 0 {
            let mut width = DECIMALS;
            while fraction % 10 == 0 {
                fraction /= 10;
                width -= 1;
            }
            write!(f, ".{fraction:0width$}")?;
        }
        Ok(())
    }
}
