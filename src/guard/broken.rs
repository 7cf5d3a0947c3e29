//! The answer for all hazards at once.

use super::{HazardSet, Truth, mask::Doubt};
use crate::book::HazardId;

/// Which hazards are there, and of which it can't be told. Those in neither set are surely not there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Broken {
    /// The hazards that are there.
    pub there: HazardSet,
    /// The hazards of which it can't be told from what was observed; an unknown is never a pass.
    pub unknown: HazardSet,
}

impl Broken {
    /// The answer for one hazard of the book.
    #[inline]
    #[must_use]
    pub const fn truth(&self, hazard: HazardId) -> Truth {
        if self.there.contains(hazard) {
            Truth::True
        } else if self.unknown.contains(hazard) {
            Truth::Unknown
        } else {
            Truth::False
        }
    }

    /// With the answer for a hazard of which nothing was said yet.
    #[inline]
    #[must_use]
    pub const fn with(self, hazard: HazardId, truth: Truth) -> Self {
        match truth {
            Truth::False => self,
            Truth::Unknown => Self {
                there: self.there,
                unknown: self.unknown.with(hazard),
            },
            Truth::True => Self {
                there: self.there.with(hazard),
                unknown: self.unknown,
            },
        }
    }

    /// With the answers for so many hazards of the book, from the first on: what their lines leave in doubt.
    #[inline]
    #[must_use]
    pub const fn with_page(self, first: u16, hazards: u8, doubt: Doubt) -> Self {
        Self {
            there: self.there.union(HazardSet::page(first, hazards, doubt.there())),
            unknown: self
                .unknown
                .union(HazardSet::page(first, hazards, doubt.unknown())),
        }
    }

    /// The answer for these hazards only.
    #[inline]
    #[must_use]
    pub const fn among(self, hazards: HazardSet) -> Self {
        Self {
            there: self.there.intersection(hazards),
            unknown: self.unknown.intersection(hazards),
        }
    }
}
