//! Values quoted in texts: `never below {non-rebreather.least-flow}`.
//!
//! A number that a rule already holds is quoted rather than written a second time, so that a text can't go on saying
//! what the rule no longer says.

use core::ops::Range as Bytes;

use super::{suggest::nearest, written::Mistake};
use crate::book::{Device, Policy};

/// What can be quoted.
#[derive(Clone, Copy)]
pub struct Quotable<'a> {
    /// The policies, by id.
    pub policies: &'a [Policy],
    /// The devices, for `DEVICE.least-flow`, `DEVICE.most-flow` and `DEVICE.usual-flow`.
    pub devices: &'a [Device],
    /// The target whose text this is, for `target.low`, `target.high` and `target.recheck`.
    pub target: Option<&'a OwnTarget>,
}

/// A number that a text may quote, as it prints.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Part {
    /// It is there.
    Value(String),
    /// It stands there and can't be read, which has been reported.
    Misread,
    /// It is not there.
    Absent,
}

/// The numbers of a target that its texts may quote.
#[derive(Clone, Debug)]
pub struct OwnTarget {
    /// The least saturation aimed at.
    pub low: Part,
    /// The most.
    pub high: Part,
    /// Look again within this time.
    pub recheck: Part,
    /// Below this the start is another.
    pub urgent_below: Part,
}

/// A part of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece<'t> {
    /// As it is written.
    Text(&'t str),
    /// The name of a value, and where it stands with its braces.
    Quoted(&'t str, Bytes<usize>),
}

/// Takes a text apart at its braces.
///
/// # Errors
///
/// [`Mistake`] at a brace that isn't closed.
pub fn pieces(text: &str) -> Result<Vec<Piece<'_>>, Mistake> {
    let mut pieces = Vec::new();
    let mut at = 0;
    while let Some(open) = text
        .get(at..)
        .and_then(|rest| rest.find(['{', '}']))
        .map(|found| at + found)
    {
        pieces.push(Piece::Text(text.get(at..open).unwrap_or("")));
        let inside = text.get(open + 1..).unwrap_or("");
        let close = inside
            .find('}')
            .filter(|_| text.get(open..).is_some_and(|rest| rest.starts_with('{')));
        let Some(close) = close else {
            return Err(
                Mistake::new("unclosed-quotation", open..open + 1, "this brace has no partner")
                    .hint("write a quoted value as `{residual-pressure}`; no other braces are used"),
            );
        };
        let name = inside.get(..close).unwrap_or("").trim();
        pieces.push(Piece::Quoted(name, open..open + close + 2));
        at = open + close + 2;
    }
    pieces.push(Piece::Text(text.get(at..).unwrap_or("")));
    Ok(pieces)
}

/// Fills in every `{name}` of a text; `None` where one of the values can't be read, which has been reported.
///
/// # Errors
///
/// [`Mistake`] at a name that isn't known, or a brace that isn't closed.
pub fn fill(text: &str, quotable: &Quotable<'_>) -> Result<Option<String>, Mistake> {
    let mut filled = Some(String::new());
    for piece in pieces(text)? {
        let part = match piece {
            Piece::Text(text) => Part::Value(text.to_owned()),
            Piece::Quoted(name, at) => match quotable.value(name) {
                Part::Absent => return Err(quotable.unknown(name, at)),
                part => part,
            },
        };
        match (part, &mut filled) {
            (Part::Value(value), Some(filled)) => filled.push_str(&value),
            _ => filled = None,
        }
    }
    Ok(filled)
}

impl Quotable<'_> {
    /// The value of a name.
    pub fn value(&self, name: &str) -> Part {
        if let Some(policy) = self.policies.iter().find(|policy| &*policy.rule.id == name) {
            return Part::Value(policy.value.to_string());
        }
        let Some((owner, part)) = name.rsplit_once('.') else {
            return Part::Absent;
        };
        if owner == "target" {
            let part = self.target.and_then(|target| match part {
                "low" => Some(&target.low),
                "high" => Some(&target.high),
                "recheck" => Some(&target.recheck),
                "urgent-below" => Some(&target.urgent_below),
                _ => None,
            });
            return part.cloned().unwrap_or(Part::Absent);
        }
        let flow = self
            .devices
            .iter()
            .find(|device| &*device.rule.id == owner)
            .and_then(|device| match part {
                "least-flow" => device.flow.low.value(),
                "most-flow" => device.flow.high.value(),
                "usual-flow" => Some(device.usual),
                _ => None,
            });
        flow.map_or(Part::Absent, |flow| Part::Value(flow.to_string()))
    }

    fn unknown(&self, name: &str, at: Bytes<usize>) -> Mistake {
        let mut known: Vec<String> = self
            .policies
            .iter()
            .map(|policy| policy.rule.id.to_string())
            .collect();
        for device in self.devices {
            for part in ["least-flow", "most-flow", "usual-flow"] {
                known.push(format!("{}.{part}", device.rule.id));
            }
        }
        if self.target.is_some() {
            let parts = ["low", "high", "recheck", "urgent-below"].map(|part| format!("target.{part}"));
            // What this target lacks is not suggested for itself.
            known.extend(parts.into_iter().filter(|part| self.value(part) != Part::Absent));
        }
        Mistake::new(
            "unknown-name",
            at,
            format!("expected the name of a value, found `{name}`"),
        )
        .hint(match nearest(name, known.iter().map(String::as_str)) {
            Some(near) => format!("did you mean `{{{near}}}`?"),
            None => {
                "write the id of a policy, or a device's id with `.least-flow`, `.most-flow` or `.usual-flow`"
                    .to_owned()
            }
        })
    }
}
