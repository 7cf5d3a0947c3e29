//! What several answers hold.

use schemars::JsonSchema;
use serde::Serialize;

use crate::book::{self, Cited, Kind, Rulebook};
use crate::check;

/// Writes an enum whose variants are those of the library's, named in kebab-case.
macro_rules! words {
    ($(#[$about:meta])* $name:ident of $from:ty { $($variant:ident),+ $(,)? }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, ::serde::Serialize, ::schemars::JsonSchema)]
        #[serde(rename_all = "kebab-case")]
        pub enum $name {
            $($variant),+
        }

        impl From<$from> for $name {
            fn from(word: $from) -> Self {
                match word {
                    $(<$from>::$variant => Self::$variant),+
                }
            }
        }
    };
}
pub(super) use words;

words! {
    /// All but `note` make the answer's `ok` false: an unknown is never a pass.
    Level of check::Level { Stop, Warn, Unknown, Note }
}

/// A day, YYYY-MM-DD.
#[derive(Clone, Copy, Debug, JsonSchema)]
pub struct Day(
    #[schemars(with = "String", regex(pattern = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"), extend("format" = "date"))]
    pub book::Date,
);

impl Serialize for Day {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

/// The rulebook that was asked.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Book<'b> {
    /// Whose it is.
    agency: &'b str,
    edition: &'b str,
    effective: Day,
    /// The day by which it is to be looked through.
    review: Day,
    /// SHA-256 of the chapters.
    #[schemars(regex(pattern = "^[0-9a-f]{64}$"))]
    digest: &'b str,
    /// As printed on cards.
    #[schemars(regex(pattern = "^[A-Z0-9]{4}-[A-Z0-9]{4}$"))]
    short_digest: &'b str,
}

impl<'b> Book<'b> {
    /// Tells which book it is.
    pub fn of(book: &'b Rulebook) -> Self {
        let agency = &book.agency;
        Self {
            agency: &agency.rule.name,
            edition: &agency.edition,
            effective: Day(agency.effective),
            review: Day(agency.review),
            digest: &book.digest,
            short_digest: &book.short_digest,
        }
    }
}

/// A rule and its place, as findings quote it.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Rule<'b> {
    /// Its kind: device, hazard, policy …
    kind: &'static str,
    /// The name other rules use.
    id: &'b str,
    /// The name people use.
    name: &'b str,
    chapter: &'b str,
    /// The heading above it.
    heading: &'b str,
    /// The chapter's file.
    file: &'b str,
    /// Its line, from 1.
    #[schemars(range(min = 1))]
    line: u32,
}

impl<'b> Rule<'b> {
    /// Quotes a rule.
    pub fn of(kind: Kind, rule: impl Into<Cited<'b>>) -> Self {
        let rule = rule.into();
        let place = rule.place();
        Self {
            kind: kind.word(),
            id: rule.id(),
            name: rule.name(),
            chapter: place.chapter,
            heading: place.heading,
            file: place.file,
            line: place.line,
        }
    }
}
