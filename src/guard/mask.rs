//! Look-ups and bit operations: what guards that are asked all at once are made of.
//!
//! A guard is brought into a form that needs no branches: one or several *lines*, each a list of answers that must all
//! be yes. What can't be told of a line is two bits of a [`Doubt`]. Every observation leads to a place in a small table,
//! and what stands there is added with "or": the more is observed, the fewer bits. A line whose bit is in neither word is
//! surely so.
//!
//! ```
//! use oxyfolio::guard::mask::{Doubt, steps};
//!
//! // Line 0 is `flow >= 10`, line 1 is `flow < 6`: not known, below 6, from 6 on, from 10 on.
//! const TABLE: [Doubt; 4] =
//!     [Doubt::new(0b11, 0b00), Doubt::new(0b01, 0b01), Doubt::new(0b11, 0b11), Doubt::new(0b10, 0b10)];
//! let asked = |flow: f64| TABLE[steps(flow, &[f64::MIN, 6.0, 10.0])];
//! // Bits without a line stay clear in both words, so they are masked.
//! assert_eq!(asked(4.0).there() & 0b11, 0b10);
//! assert_eq!(asked(10.0).there() & 0b11, 0b01);
//! assert_eq!(asked(f64::NAN).unknown(), 0b11);
//! ```

use super::Truth;
use crate::book::Comparison;

/// What keeps each of 64 lines from being sure.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Doubt {
    /// The lines that can't be said to be so.
    pub not_sure: u64,
    /// The lines that are surely not so; they are among those that aren't sure.
    pub ruled_out: u64,
}

impl Doubt {
    /// No doubt about any line.
    pub const NONE: Self = Self::new(0, 0);

    /// From its two words.
    #[must_use]
    pub const fn new(not_sure: u64, ruled_out: u64) -> Self {
        Self { not_sure, ruled_out }
    }

    /// What an answer leaves of the lines that need a yes.
    #[must_use]
    pub const fn needed(lines: u64, answer: Truth) -> Self {
        match answer {
            Truth::True => Self::NONE,
            Truth::Unknown => Self::new(lines, 0),
            Truth::False => Self::new(lines, lines),
        }
    }

    /// This and another doubt.
    #[inline]
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self::new(self.not_sure | other.not_sure, self.ruled_out | other.ruled_out)
    }

    /// The doubt that line `from` leaves in line `to`, which needs that it is not so.
    #[inline]
    #[must_use]
    pub const fn link(self, from: u8, to: u8) -> Self {
        let not_sure = !self.ruled_out >> from & 1;
        let ruled_out = !self.not_sure >> from & 1;
        self.and(Self::new(not_sure << to, ruled_out << to))
    }

    /// The lines that are so.
    #[inline]
    #[must_use]
    pub const fn there(self) -> u64 {
        !self.not_sure
    }

    /// The lines of which it can't be told.
    #[inline]
    #[must_use]
    pub const fn unknown(self) -> u64 {
        self.not_sure & !self.ruled_out
    }
}

/// The lines that need a yes-or-no observation, and those that need its contrary.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sign {
    /// These need a yes.
    pub yes: u64,
    /// These need a no.
    pub no: u64,
}

impl Sign {
    /// No line asks.
    pub const NONE: Self = Self::new(0, 0);

    /// From its two words.
    #[must_use]
    pub const fn new(yes: u64, no: u64) -> Self {
        Self { yes, no }
    }

    /// What is left where it is known to be so, or that isn't known.
    const fn by_yes(self, yes: bool) -> Doubt {
        if yes {
            Doubt::new(self.no, self.no)
        } else {
            Doubt::new(self.yes, 0)
        }
    }

    /// What is left where it is known not to be so, or that isn't known.
    const fn by_no(self, no: bool) -> Doubt {
        if no {
            Doubt::new(self.yes, self.yes)
        } else {
            Doubt::new(self.no, 0)
        }
    }
}

/// The doubts by three yes-or-no questions. What a yes says and what a no says are added up, so that two small tables do for
/// every answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ByThree {
    yes: [Doubt; 8],
    no: [Doubt; 8],
}

/// The doubts by three yes-or-no questions.
#[must_use]
pub const fn by_three([first, second, third]: [Sign; 3]) -> ByThree {
    let (mut by_yes, mut by_no) = ([Doubt::NONE; 8], [Doubt::NONE; 8]);
    let (mut yes, mut no, mut place) = (by_yes.as_mut_slice(), by_no.as_mut_slice(), 0_u8);
    while let ([of_yes, more @ ..], [of_no, others @ ..]) = (yes, no) {
        let [a, b, c] = [place & 1 != 0, place & 2 != 0, place & 4 != 0];
        *of_yes = first.by_yes(a).and(second.by_yes(b)).and(third.by_yes(c));
        *of_no = first.by_no(a).and(second.by_no(b)).and(third.by_no(c));
        place += 1;
        (yes, no) = (more, others);
    }
    ByThree {
        yes: by_yes,
        no: by_no,
    }
}

impl ByThree {
    /// What three answers leave: those from bit `shift` on of the words that say yes and no. No bit is in both.
    #[inline]
    #[must_use]
    pub fn doubt(&self, yes: u64, no: u64, shift: u32) -> Doubt {
        let three = |answers: u64| (answers >> shift & 7) as usize;
        pick(&self.yes, three(yes)).and(pick(&self.no, three(no)))
    }
}

/// How many of the steps a number has reached; none when it isn't a number.
#[inline]
#[must_use]
pub fn steps<const N: usize>(number: f64, steps: &[f64; N]) -> usize {
    steps.iter().map(|step| usize::from(number >= *step)).sum()
}

/// How many of three steps a number has reached: being a number, and these two.
#[inline]
#[must_use]
pub fn steps_between(number: f64, [low, high]: [f64; 2]) -> usize {
    steps(number, &[f64::MIN, low, high])
}

/// Compares two numbers as guards do: 1 for yes, 2 for no, 0 when one isn't a number.
#[inline]
#[must_use]
pub fn answer(left: f64, comparison: Comparison, right: f64) -> usize {
    let (size, other) = (left.abs(), right.abs());
    let size = if size > other { size } else { other };
    let close = (left - right).abs() <= 1e-9 * size;
    let known = !left.is_nan() & !right.is_nan();
    let yes = match comparison {
        Comparison::Equal => close,
        Comparison::NotEqual => !close,
        Comparison::Less => (left < right) & !close,
        Comparison::AtMost => (left <= right) | close,
        Comparison::Greater => (left > right) & !close,
        Comparison::AtLeast => (left >= right) | close,
    };
    usize::from(known & yes) + 2 * usize::from(known & !yes)
}

/// What stands at a place of a table, whose length is a power of two; it begins anew past its end.
#[inline]
#[must_use]
pub fn pick<T: Copy + Default, const N: usize>(table: &[T; N], place: usize) -> T {
    table.get(place & (N - 1)).copied().unwrap_or_default()
}

/// A table made longer, so that its length is a power of two.
#[must_use]
pub const fn padded<T: Copy, const N: usize>(filled_with: T, items: &[T]) -> [T; N] {
    let mut table = [filled_with; N];
    let (mut rest, mut items) = (table.as_mut_slice(), items);
    while let ([place, more @ ..], [item, others @ ..]) = (rest, items) {
        *place = *item;
        (rest, items) = (more, others);
    }
    table
}
