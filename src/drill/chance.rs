//! Chance that is the same every time: SplitMix64 (G. Steele, D. Lea, C. Flood, "Fast splittable pseudorandom number
//! generators", OOPSLA 2014). Written here, in a few lines, so that a sheet printed last year can be printed again, whatever
//! a library has changed since.

#[cfg(test)]
use alloc::vec::Vec;

pub struct Chance(u64);

impl Chance {
    /// For one exercise of a sheet.
    pub const fn new(seed: u64, place: u16) -> Self {
        let mut chance = Self(seed);
        // Neighbouring seeds must not give the same exercises one place further on.
        let mixed = chance.next();
        Self(mixed ^ (place as u64).wrapping_mul(0xd1b5_4a32_d192_ed03))
    }

    const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A whole number from 0 to below `end`; 0 where that is 0.
    pub fn below(&mut self, end: usize) -> usize {
        let end = u64::try_from(end).unwrap_or(u64::MAX).max(1);
        usize::try_from(self.next() % end).unwrap_or(0)
    }

    /// A whole number in a range, both ends in it.
    pub fn within(&mut self, least: i32, most: i32) -> i32 {
        let width = usize::try_from(i64::from(most) - i64::from(least) + 1).unwrap_or(1);
        least.saturating_add(i32::try_from(self.below(width)).unwrap_or(0))
    }

    /// One of several.
    pub fn pick<'a, T>(&mut self, of: &'a [T]) -> Option<&'a T> {
        of.get(self.below(of.len()))
    }

    /// In another order (Fisher and Yates).
    pub fn shuffle<T>(&mut self, of: &mut [T]) {
        for place in (1..of.len()).rev() {
            let other = self.below(place + 1);
            of.swap(place, other);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first numbers from seed 0, as the authors' own program prints them (the reference in Java's `SplittableRandom`
    /// and in the xoshiro authors' splitmix64.c; from memory).
    #[test]
    fn numbers_are_those_of_splitmix64() {
        let mut chance = Chance(0);
        assert_eq!(
            [chance.next(), chance.next(), chance.next()],
            [
                0xe220_a839_7b1d_cdaf,
                0x6e78_9e6a_a1b9_65f4,
                0x06c4_5d18_8009_454f
            ]
        );
    }

    #[test]
    fn a_range_has_both_its_ends() {
        let mut chance = Chance::new(3, 0);
        let mut seen: Vec<i32> = (0..500).map(|_| chance.within(-2, 2)).collect();
        seen.sort_unstable();
        seen.dedup();
        assert_eq!(seen, [-2, -1, 0, 1, 2]);
        assert_eq!(chance.within(4, 4), 4);
        assert_eq!(chance.pick::<u8>(&[]), None);
    }
}
