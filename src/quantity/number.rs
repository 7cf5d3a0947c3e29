//! How a number is printed: at most four decimals, no trailing zeros, a point.

use core::fmt;

/// Prints a number as people write it: `0.16`, `2200`, `-20`. What no quantity can be, from ten million million million on, is
/// printed short: `1e300`.
///
/// ```
/// use oxyfolio::quantity::Number;
/// assert_eq!(Number(2200.0000000000005).to_string(), "2200");
/// assert_eq!(Number(0.16).to_string(), "0.16");
/// assert_eq!(Number(-17.7778).to_string(), "-17.7778");
/// assert_eq!(Number(-0.00001).to_string(), "0");
/// assert_eq!(Number(-1.5e300).to_string(), "-1.5e300");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Number(pub f64);

const DECIMALS: usize = 4;
const SCALE: f64 = 10_000.0;
/// From here on a number has no four decimals of its own.
const WHOLE: f64 = 9e11;

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Whole numbers only: the standard library's printing of others adds 12 KiB to a program.
        let magnitude = self.0.abs();
        if magnitude.is_nan() {
            return f.write_str("NaN");
        }
        let (shown, exponent) = short(magnitude);
        let scaled = if shown < WHOLE {
            (shown * SCALE + 0.5) as u64
        } else {
            0
        };
        if self.0 < 0.0 && (scaled > 0 || shown >= WHOLE) {
            f.write_str("-")?;
        }
        if magnitude.is_infinite() {
            return f.write_str("inf");
        }
        if shown >= WHOLE {
            return write!(f, "{}", shown as u64);
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
        if exponent > 0 {
            write!(f, "e{exponent}")?;
        }
        Ok(())
    }
}

/// A number too great to be written out, as one below 10 and the power of ten that it is times; other numbers as they are.
fn short(magnitude: f64) -> (f64, u32) {
    let (mut shown, mut exponent) = (magnitude, 0);
    if shown >= 1e19 && shown.is_finite() {
        while shown >= 10.0 {
            shown /= 10.0;
            exponent += 1;
        }
    }
    // 9.99999… would be printed as 10.
    if exponent > 0 && shown * SCALE + 0.5 >= 10.0 * SCALE {
        (1.0, exponent + 1)
    } else {
        (shown, exponent)
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use std::string::ToString as _;

    use super::Number;

    #[test]
    fn what_no_quantity_can_be_is_printed_short() {
        for (number, printed) in [
            (0.0, "0"),
            (-0.0, "0"),
            (899_999_999_999.5, "899999999999.5"),
            (99_999_999_999_999.0, "99999999999999"),
            (1e14, "100000000000000"),
            (-1e14, "-100000000000000"),
            (9_007_199_254_740_991.0, "9007199254740991"),
            (9e18, "9000000000000000000"),
            (1e19, "1e19"),
            (1e23, "1e23"),
            (-1.5e300, "-1.5e300"),
            (9.999_999_9e20, "1e21"),
            (1.234_567e20, "1.2346e20"),
            (f64::MAX, "1.7977e308"),
            (f64::INFINITY, "inf"),
            (f64::NEG_INFINITY, "-inf"),
            (f64::NAN, "NaN"),
        ] {
            assert_eq!(Number(number).to_string(), printed);
        }
    }
}
