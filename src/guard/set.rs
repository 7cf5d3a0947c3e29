//! Sets of hazards, a bit for each.

use core::{
    fmt,
    ops::{BitAnd, BitAndAssign, BitOr, BitOrAssign, Sub, SubAssign},
};

use crate::book::HazardId;

const WORDS: usize = 4;
const BITS: u16 = 64;

/// A set of a rulebook's hazards, in the order of the book.
///
/// It takes 32 bytes and never allocates. No book has more hazards than it holds: the reader refuses one that does.
///
/// ```
/// use oxyfolio::guard::HazardSet;
/// use oxyfolio::hazard;
///
/// let handling = HazardSet::EMPTY.with(hazard::FLAME_NEAR).with(hazard::GREASE_NEAR);
/// let seen = HazardSet::EMPTY.with(hazard::FLAME_NEAR).with(hazard::NO_FLOW_ON_PATIENT);
/// assert!((handling & seen).iter().eq([hazard::FLAME_NEAR]));
/// assert_eq!((handling | seen).len(), 3);
/// assert!((seen - handling).contains(hazard::NO_FLOW_ON_PATIENT));
/// ```
#[derive(Clone, Copy, Default, PartialEq, Eq, Hash)]
pub struct HazardSet([u64; WORDS]);

impl HazardSet {
    /// The most hazards it holds, and a book may have.
    pub const CAPACITY: usize = WORDS * BITS as usize;

    /// No hazard.
    pub const EMPTY: Self = Self([0; WORDS]);

    /// The hazards whose bits are set: the first 64 in the first word, from its lowest bit on.
    #[must_use]
    pub const fn from_words(words: [u64; WORDS]) -> Self {
        Self(words)
    }

    /// The bits, as [`from_words`](Self::from_words) takes them.
    #[inline]
    #[must_use]
    pub const fn words(self) -> [u64; WORDS] {
        self.0
    }

    /// The first so many hazards of a book; all it can hold, where that is less.
    #[must_use]
    pub const fn first(count: usize) -> Self {
        const fn word(count: usize, before: usize) -> u64 {
            match count.saturating_sub(before) {
                0 => 0,
                more if more >= BITS as usize => u64::MAX,
                some => (1 << some) - 1,
            }
        }
        Self([
            word(count, 0),
            word(count, 64),
            word(count, 128),
            word(count, 192),
        ])
    }

    /// The lowest so many bits of a word, as the hazards from `first` on.
    #[inline]
    pub(super) const fn page(first: u16, hazards: u8, bits: u64) -> Self {
        const fn word(bits: u128, first: u16, place: u16) -> u64 {
            // The bits begin in a word and may end in the next.
            match place.wrapping_sub(first / BITS) {
                0 => bits as u64,
                1 => (bits >> 64) as u64,
                _ => 0,
            }
        }
        let bits = bits & Self::first(hazards as usize).0[0];
        let bits = (bits as u128) << (first % BITS);
        Self([
            word(bits, first, 0),
            word(bits, first, 1),
            word(bits, first, 2),
            word(bits, first, 3),
        ])
    }

    /// A hazard's bit; no bit for an identifier past [`CAPACITY`](Self::CAPACITY), which
    /// belongs to no book.
    #[inline]
    const fn bit(hazard: HazardId) -> [u64; WORDS] {
        const fn word(hazard: HazardId, place: u16) -> u64 {
            if hazard.0 / BITS == place {
                1 << (hazard.0 % BITS)
            } else {
                0
            }
        }
        [word(hazard, 0), word(hazard, 1), word(hazard, 2), word(hazard, 3)]
    }

    /// With one hazard more; an identifier past [`CAPACITY`](Self::CAPACITY) belongs to no book and adds nothing.
    #[inline]
    #[must_use]
    pub const fn with(self, hazard: HazardId) -> Self {
        self.union(Self(Self::bit(hazard)))
    }

    /// Without one hazard.
    #[inline]
    #[must_use]
    pub const fn without(self, hazard: HazardId) -> Self {
        self.difference(Self(Self::bit(hazard)))
    }

    /// Whether a hazard is in it.
    #[inline]
    #[must_use]
    pub const fn contains(self, hazard: HazardId) -> bool {
        !self.intersection(Self(Self::bit(hazard))).is_empty()
    }

    /// Whether no hazard is in it.
    #[inline]
    #[must_use]
    pub const fn is_empty(self) -> bool {
        let [a, b, c, d] = self.0;
        a | b | c | d == 0
    }

    /// How many hazards are in it.
    #[inline]
    #[must_use]
    pub const fn len(self) -> usize {
        let [a, b, c, d] = self.0;
        (a.count_ones() + b.count_ones() + c.count_ones() + d.count_ones()) as usize
    }

    /// Hazards that are in either; also written `|`.
    #[inline]
    #[must_use]
    pub const fn union(self, other: Self) -> Self {
        let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
        Self([a | e, b | f, c | g, d | h])
    }

    /// Hazards that are in both; also written `&`.
    #[inline]
    #[must_use]
    pub const fn intersection(self, other: Self) -> Self {
        let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
        Self([a & e, b & f, c & g, d & h])
    }

    /// Hazards that are in this and not in the other; also written `-`. There is no complement, because a set doesn't
    /// know how many hazards its book has: take it from [`first`](Self::first).
    #[inline]
    #[must_use]
    pub const fn difference(self, other: Self) -> Self {
        let ([a, b, c, d], [e, f, g, h]) = (self.0, other.0);
        Self([a & !e, b & !f, c & !g, d & !h])
    }

    /// Each hazard, in the order of the book.
    #[inline]
    #[must_use]
    pub const fn iter(self) -> Hazards {
        Hazards(self.0)
    }
}

macro_rules! operators {
    ($($operator:ident $function:ident, $assign:ident $assigned:ident: $does:ident;)+) => {$(
        impl $operator for HazardSet {
            type Output = Self;
            #[inline]
            fn $function(self, other: Self) -> Self {
                self.$does(other)
            }
        }

        impl $assign for HazardSet {
            fn $assigned(&mut self, other: Self) {
                *self = self.$does(other);
            }
        }
    )+};
}

operators! {
    BitOr bitor, BitOrAssign bitor_assign: union;
    BitAnd bitand, BitAndAssign bitand_assign: intersection;
    Sub sub, SubAssign sub_assign: difference;
}

impl FromIterator<HazardId> for HazardSet {
    fn from_iter<I: IntoIterator<Item = HazardId>>(hazards: I) -> Self {
        hazards.into_iter().fold(Self::EMPTY, Self::with)
    }
}

impl Extend<HazardId> for HazardSet {
    fn extend<I: IntoIterator<Item = HazardId>>(&mut self, hazards: I) {
        *self |= hazards.into_iter().collect();
    }
}

impl IntoIterator for HazardSet {
    type Item = HazardId;
    type IntoIter = Hazards;
    fn into_iter(self) -> Hazards {
        self.iter()
    }
}

impl fmt::Debug for HazardSet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_set().entries(self.iter().map(|hazard| hazard.0)).finish()
    }
}

/// The hazards of a [`HazardSet`], in the order of the book.
#[derive(Clone, Debug)]
pub struct Hazards([u64; WORDS]);

impl Iterator for Hazards {
    type Item = HazardId;

    #[inline]
    fn next(&mut self) -> Option<HazardId> {
        let (place, word) = (0..).zip(&mut self.0).find(|(_, word)| **word != 0)?;
        // Less than 64.
        let bit = word.trailing_zeros() as u16;
        *word &= *word - 1;
        Some(HazardId(place * BITS + bit))
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        let left = HazardSet(self.0).len();
        (left, Some(left))
    }
}

impl ExactSizeIterator for Hazards {}
