//! Numbers as they are shown: rounded to a part of one, toward what promises less.
//!
//! A billionth is given, so that 288 don't become 287.9 by binary rounding alone.

/// Rounded down to a part of one.
pub fn down(number: f64, steps: f64) -> f64 {
    (number * steps * (1.0 + 1e-9)).floor() / steps
}

/// Rounded up to a part of one.
#[cfg(feature = "cards")]
pub fn up(number: f64, steps: f64) -> f64 {
    (number * steps * (1.0 - 1e-9)).ceil() / steps
}
