//! What every rule has: a name, a place in the book and a reason.

use core::fmt;

use super::{CitedPlace, Text};

/// The kinds of rule, as they are written after `yaml` on a fence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Kind {
    /// Who publishes the book.
    Agency,
    /// A patient group.
    Group,
    /// A delivery device.
    Device,
    /// A cylinder size.
    Cylinder,
    /// A connection between cylinder and regulator.
    Connection,
    /// A named quantity.
    Policy,
    /// A saturation target.
    Target,
    /// A procedure.
    Procedure,
    /// A hazard.
    Hazard,
    /// A pocket card.
    Card,
    /// A worked case.
    Case,
}

impl Kind {
    /// Every kind, in the order of the documentation.
    pub const ALL: [Self; 11] = [
        Self::Agency,
        Self::Group,
        Self::Device,
        Self::Cylinder,
        Self::Connection,
        Self::Policy,
        Self::Target,
        Self::Procedure,
        Self::Hazard,
        Self::Card,
        Self::Case,
    ];

    /// The word used in the book.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Agency => "agency",
            Self::Group => "group",
            Self::Device => "device",
            Self::Cylinder => "cylinder",
            Self::Connection => "connection",
            Self::Policy => "policy",
            Self::Target => "target",
            Self::Procedure => "procedure",
            Self::Hazard => "hazard",
            Self::Card => "card",
            Self::Case => "case",
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

/// Where a rule stands in the book.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The chapter's title.
    pub chapter: Text,
    /// The nearest heading above the rule; the chapter's title where there is no other.
    pub heading: Text,
    /// The chapter's file name.
    pub file: Text,
    /// The line of the rule's first key, counted from 1.
    pub line: u32,
}

impl Place {
    /// The same, as a finding cites it.
    #[must_use]
    pub fn cited(&self) -> CitedPlace<'_> {
        CitedPlace {
            chapter: &self.chapter,
            heading: &self.heading,
            file: &self.file,
            line: self.line,
        }
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.cited().fmt(f)
    }
}

/// The part common to all rules.
#[derive(Clone, Debug, PartialEq)]
pub struct Rule {
    /// The name other rules use.
    pub id: Text,
    /// The name people use.
    pub name: Text,
    /// Where it stands.
    pub place: Place,
    /// The prose between the last heading or block and the rule: why it is so.
    pub rationale: Text,
}
