//! Kleene's strong three-valued logic.

use core::ops::{BitAnd, BitOr, Not};

/// Yes, no, or not known.
///
/// ```
/// use oxyfolio::guard::Truth;
/// assert_eq!(Truth::Unknown & Truth::False, Truth::False);
/// assert_eq!(Truth::Unknown & Truth::True, Truth::Unknown);
/// assert_eq!(Truth::Unknown | Truth::True, Truth::True);
/// assert_eq!(!Truth::Unknown, Truth::Unknown);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Truth {
    /// No.
    False,
    /// Not known.
    Unknown,
    /// Yes.
    True,
}

impl From<Option<bool>> for Truth {
    fn from(known: Option<bool>) -> Self {
        match known {
            None => Self::Unknown,
            Some(true) => Self::True,
            Some(false) => Self::False,
        }
    }
}

impl BitAnd for Truth {
    type Output = Self;
    fn bitand(self, other: Self) -> Self {
        match (self, other) {
            (Self::False, _) | (_, Self::False) => Self::False,
            (Self::True, Self::True) => Self::True,
            _ => Self::Unknown,
        }
    }
}

impl BitOr for Truth {
    type Output = Self;
    fn bitor(self, other: Self) -> Self {
        match (self, other) {
            (Self::True, _) | (_, Self::True) => Self::True,
            (Self::False, Self::False) => Self::False,
            _ => Self::Unknown,
        }
    }
}

impl Not for Truth {
    type Output = Self;
    fn not(self) -> Self {
        match self {
            Self::False => Self::True,
            Self::Unknown => Self::Unknown,
            Self::True => Self::False,
        }
    }
}
