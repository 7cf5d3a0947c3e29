//! Names of rules: which key of a rule names what, and where that stands.

use maud::{Markup, html};

use super::super::{
    query::escaped,
    reading::{Reading, text_of},
};
use crate::book::Kind;
use crate::compile::render::visible;

/// The name of a rule within its chapter's page.
pub fn anchor(kind: Kind, id: &str) -> String {
    // A name in an address is escaped, and the element's own is the same text.
    format!("rule-{}-{}", kind.word(), escaped(id).replace('%', "_"))
}

/// What the texts under a key name, in a rule of a kind.
pub fn named_by(key: &str) -> Option<Kind> {
    Some(match key {
        "fits" | "groups" | "group" | "air-for" => Kind::Group,
        "device" | "devices" => Kind::Device,
        "cylinder" | "cylinders" => Kind::Cylinder,
        "connection" | "connections" => Kind::Connection,
        "hazard" | "hazards" | "prevents" => Kind::Hazard,
        "procedure" | "procedures" | "follows" => Kind::Procedure,
        "target" | "targets" => Kind::Target,
        _ => return None,
    })
}

/// A text, with a link where the key says that it is a name of a rule.
pub fn linked(reading: &Reading, key: &str, text: &str) -> Markup {
    // `nasal-cannula at 2 L/min`
    if matches!(key, "start" | "urgent-start" | "ladder")
        && let Some((name, flow)) = text.split_once(" at ")
    {
        return html! { (name_of(reading, Kind::Device, name.trim())) " at " (visible(flow)) };
    }
    // `device nasal-cannula`
    if key == "rule"
        && let Some((word, id)) = text.split_once(' ')
        && let Some(kind) = Kind::ALL.into_iter().find(|kind| kind.word() == word)
    {
        return html! { (word) " " (name_of(reading, kind, id.trim())) };
    }
    match named_by(key) {
        Some(kind) => name_of(reading, kind, text),
        None => html! { (visible(text)) },
    }
}

/// The name that people use for a rule, as a link to it; the text itself where there is no such rule.
pub fn name_of(reading: &Reading, kind: Kind, id: &str) -> Markup {
    let Some(address) = super::rule_address(reading, kind, id) else {
        return html! { (visible(id)) };
    };
    let name = reading.rule(kind, id).and_then(|rule| text_of(rule, "name"));
    html! { a href=(address) { (visible(name.unwrap_or(id))) } }
}
