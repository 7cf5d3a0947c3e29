//! Who publishes the book.

use super::{Date, List, Rule, Text};
use crate::quantity::{PressureUnit, TemperatureUnit};

/// The two sentences that every card and every answer carries.
pub const ALWAYS_DISCLAIMERS: [&str; 2] = [
    "Local protocol and medical direction come first.",
    "Training and reference aid: not a medical device, not a substitute for licensed judgement.",
];

/// The cautions that go with anything about oxygen under pressure.
pub const ALWAYS_CAUTIONS: [&str; 3] = [
    "No flame, no smoking.",
    "No oil or grease.",
    "Never leave a cylinder standing free.",
];

/// A language in which cards and sheets have words of their own: labels, disclaimers, cautions. What a rule says stays
/// as the book writes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Language {
    /// English.
    English,
    /// German.
    German,
}

impl Language {
    /// Every language.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// Its code of ISO 639-1, as it is written in the book.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }
}

/// The paper an office has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum OfficePaper {
    /// ISO 216 A4; posters on A3.
    A4,
    /// US Letter; posters on Tabloid.
    Letter,
}

impl OfficePaper {
    /// Both papers.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// How it is written in the book.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "Letter",
        }
    }
}

/// The agency whose protocol this is, and the edition.
#[derive(Clone, Debug, PartialEq)]
pub struct Agency {
    /// Name, place and reason. The identifier is always `agency`.
    pub rule: Rule,
    /// Where the agency works.
    pub location: Text,
    /// Who signs the protocol.
    pub medical_director: Text,
    /// The edition's name.
    pub edition: Text,
    /// From when it holds.
    pub effective: Date,
    /// When it must be looked at again.
    pub review: Date,
    /// When the medical director signed it.
    pub signed_off: Date,
    /// The unit in which gauges read.
    pub pressure_unit: PressureUnit,
    /// The unit in which temperatures are read.
    pub temperature_unit: TemperatureUnit,
    /// The language of the words that cards and sheets add to the book's own.
    pub language: Language,
    /// The paper for cards and sheets where nothing else is asked for.
    pub paper: OfficePaper,
    /// The agency's own disclaimers, beside [`ALWAYS_DISCLAIMERS`].
    pub disclaimers: List<Text>,
}
