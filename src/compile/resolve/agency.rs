//! The agency: exactly one.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        written::Units,
        yaml::Value,
    },
    Raw,
};
use crate::book::{Agency, Kind, Language, OfficePaper, Rule, Text};
use crate::quantity::{PressureUnit, TemperatureUnit};

const KEYS: Keys = Keys {
    of: "agency",
    required: &[
        "name",
        "place",
        "medical-director",
        "edition",
        "effective",
        "review",
        "signed-off",
        "pressure-unit",
        "temperature-unit",
    ],
    optional: &["language", "paper", "disclaimers"],
};

const PRESSURE_UNITS: [(&str, PressureUnit); 3] = [
    ("psi", PressureUnit::Psi),
    ("bar", PressureUnit::Bar),
    ("kPa", PressureUnit::Kpa),
];

const TEMPERATURE_UNITS: [(&str, TemperatureUnit); 2] = [
    ("°C", TemperatureUnit::Celsius),
    ("°F", TemperatureUnit::Fahrenheit),
];

/// The agency's units, as far as they can be read: what is wrong elsewhere is told in them.
pub fn units(raws: &[Raw]) -> Units {
    let mut silent = Diagnostics::default();
    let agency = raws.iter().find(|raw| raw.kind == Kind::Agency);
    let value = |key: &str| match &agency?.node.value {
        Value::Mapping(entries) => entries.iter().find(|entry| entry.key == key),
        _ => None,
    };
    let mut read = Units::default();
    if let Some(entry) = value("pressure-unit") {
        read.pressure = fields::word(&entry.value, &mut silent, "unit", &PRESSURE_UNITS);
    }
    if let Some(entry) = value("temperature-unit") {
        read.temperature = fields::word(&entry.value, &mut silent, "unit", &TEMPERATURE_UNITS);
    }
    read
}

/// Reads the agency; none or a second one is an error.
pub fn the_one(raws: &[Raw], found: &mut Diagnostics) -> Option<Agency> {
    let mut agencies = raws.iter().filter(|raw| raw.kind == Kind::Agency);
    let Some(first) = agencies.next() else {
        if found.is_unread_kind(Kind::Agency) {
            return None;
        }
        found
            .book_error("missing-kind", "expected an agency, found none")
            .hint("add a block that begins with ```yaml agency");
        return None;
    };
    for second in agencies {
        found
            .error("second-agency", second.node.span, "found a second agency")
            .label(first.node.span, "the first is here")
            .hint("a rulebook belongs to one agency: keep one of the two");
    }
    read(first, found)
}

fn read(raw: &Raw, found: &mut Diagnostics) -> Option<Agency> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let name = fields.read("name", found, fields::text);
    let location = fields.read("place", found, fields::text);
    let medical_director = fields.read("medical-director", found, fields::text);
    let edition = fields.read("edition", found, fields::text);
    let effective = fields.read("effective", found, fields::date);
    let review = fields.read("review", found, fields::date);
    let signed_off = fields.read("signed-off", found, fields::date);
    let pressure_unit = fields.read("pressure-unit", found, |node, found| {
        fields::word(node, found, "unit", &PRESSURE_UNITS)
    });
    let temperature_unit = fields.read("temperature-unit", found, |node, found| {
        fields::word(node, found, "unit", &TEMPERATURE_UNITS)
    });
    let language = fields.maybe("language", found, |node, found| {
        fields::word(
            node,
            found,
            "language",
            &Language::ALL.map(|language| (language.word(), language)),
        )
    });
    let paper = fields.maybe("paper", found, |node, found| {
        fields::word(
            node,
            found,
            "paper",
            &OfficePaper::ALL.map(|paper| (paper.word(), paper)),
        )
    });
    let disclaimers = fields.list("disclaimers", found, fields::texts);
    if let (Some(effective), Some(review)) = (effective, review)
        && review <= effective
        && let Some(node) = fields.get("review")
    {
        found
            .error(
                "review-not-after-effective",
                node.span,
                format!("expected a review date after {effective}, found {review}"),
            )
            .hint("the book is reviewed after it takes effect");
    }
    Some(Agency {
        rule: Rule {
            id: Text::fixed("agency"),
            name: name?,
            place: raw.place.clone(),
            rationale: raw.rationale.clone(),
        },
        location: location?,
        medical_director: medical_director?,
        edition: edition?,
        effective: effective?,
        review: review?,
        signed_off: signed_off?,
        pressure_unit: pressure_unit?,
        temperature_unit: temperature_unit?,
        language: language?.unwrap_or(Language::English),
        paper: paper?.unwrap_or(OfficePaper::A4),
        disclaimers: disclaimers?,
    })
}
