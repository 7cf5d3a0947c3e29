//! Where comparisons with a number change their answer.

use crate::book::Comparison;
use crate::guard::{Truth, compare::compare};

/// The least number that counts as equal to this one, and the least above it that doesn't any more. Two numbers that
/// only rounding keeps apart count as equal, so a comparison changes its answer at these, not at the number itself.
pub(super) fn near(number: f64) -> [f64; 2] {
    if number < 0.0 {
        // The greatest that is still equal becomes the least, and the other way round.
        let [from, past] = near(-number);
        return [-(past.next_down()), (-from).next_up()];
    }
    let equal =
        |bits: u64| compare(Some(f64::from_bits(bits)), Comparison::Equal, Some(number)) == Truth::True;
    // Among numbers of one sign, bits are in the order of the numbers.
    let number = number.abs();
    let at = number.to_bits();
    let below = (number * (1.0 - 1e-8)).to_bits();
    let above = (number * (1.0 + 1e-8)).next_up().to_bits();
    let from = first(below, at, equal);
    let past = first(at, above, |bits| !equal(bits));
    [f64::from_bits(from), f64::from_bits(past)]
}

/// The first between the two at which it holds, as from there on it does up to the last.
fn first(low: u64, high: u64, holds: impl Fn(u64) -> bool) -> u64 {
    let (mut low, mut high) = (low, high);
    while low < high {
        let middle = low + (high - low) / 2;
        if holds(middle) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    low
}
