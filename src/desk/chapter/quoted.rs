//! Texts with the values they quote: `never below {non-rebreather.least-flow}` as people read it.
//!
//! Shown is the value as it is written where it stands, so that a book with mistakes elsewhere, or half decided, is
//! readable too. What isn't there yet is marked as missing.

use maud::{Markup, html};

use super::super::reading::{Reading, text_of};
use crate::book::Kind;
use crate::compile::{
    quoted::{Piece, pieces},
    render::visible,
    undecided, written,
    yaml::Node,
};
use crate::quantity::{Flow, Percent, Time};

/// Whether the texts under a key may quote values.
pub fn may_quote(kind: Kind, key: &str) -> bool {
    match kind {
        Kind::Procedure => matches!(key, "say" | "why"),
        Kind::Hazard => matches!(key, "say" | "do"),
        Kind::Target => matches!(key, "step-up" | "step-down"),
        Kind::Card => matches!(key, "notes" | "items"),
        _ => false,
    }
}

/// A text with its values; `rule` is the rule in which it stands.
pub fn filled(reading: &Reading, text: &str, rule: &Node) -> Markup {
    let Ok(pieces) = pieces(text) else {
        return html! { (visible(text)) };
    };
    html! {
        @for piece in pieces {
            @match piece {
                Piece::Text(text) => (visible(text)),
                Piece::Quoted(name, _) => (one(reading, name, rule)),
            }
        }
    }
}

/// The same as text alone.
pub fn plain(reading: &Reading, text: &str, rule: &Node) -> String {
    let Ok(pieces) = pieces(text) else {
        return text.to_owned();
    };
    let part = |piece| match piece {
        Piece::Text(text) => text.to_owned(),
        Piece::Quoted(name, _) => value(reading, name, rule).unwrap_or_else(|why| format!("[{why}: {name}]")),
    };
    pieces.into_iter().map(part).collect()
}

fn one(reading: &Reading, name: &str, rule: &Node) -> Markup {
    html! {
        @match value(reading, name, rule) {
            Ok(value) => span.quoted title={ "quoted from " (visible(name)) } { (visible(&value)) },
            Err(why) => span.missing { "[" (why) ": " (visible(name)) "]" },
        }
    }
}

const NOT_FILLED: &str = "not filled in yet";
const NOT_READABLE: &str = "can't be read";

/// The value of a name, as it prints; or why there is none.
fn value(reading: &Reading, name: &str, rule: &Node) -> Result<String, &'static str> {
    if let Some(policy) = reading.rule(Kind::Policy, name) {
        return read(policy, "value", |text| Some(written::any(text).ok()?.to_string()));
    }
    let (owner, part) = name.rsplit_once('.').ok_or(NOT_READABLE)?;
    if owner == "target" {
        let share = |share: Percent| share.to_string();
        return match part {
            "low" => read(rule, "saturation", |text| {
                written::range(text).ok()?.low.value().map(share)
            }),
            "high" => read(rule, "saturation", |text| {
                written::range(text).ok()?.high.value().map(share)
            }),
            "recheck" => read(rule, "recheck", |text| {
                written::one(text).ok().map(|time: Time| time.to_string())
            }),
            "urgent-below" => read(rule, "urgent-below", |text| written::one(text).ok().map(share)),
            _ => Err(NOT_READABLE),
        };
    }
    let device = reading.rule(Kind::Device, owner).ok_or(NOT_READABLE)?;
    let flow = |flow: Flow| flow.to_string();
    match part {
        "least-flow" => read(device, "flow", |text| {
            written::range(text).ok()?.low.value().map(flow)
        }),
        "most-flow" => read(device, "flow", |text| {
            written::range(text).ok()?.high.value().map(flow)
        }),
        "usual-flow" => read(device, "usual", |text| written::one(text).ok().map(flow)),
        _ => Err(NOT_READABLE),
    }
}

fn read(rule: &Node, key: &str, value: impl FnOnce(&str) -> Option<String>) -> Result<String, &'static str> {
    let text = text_of(rule, key).unwrap_or("");
    if text.is_empty() || undecided::what_to_write(text).is_some() {
        return Err(NOT_FILLED);
    }
    value(text).ok_or(NOT_READABLE)
}
