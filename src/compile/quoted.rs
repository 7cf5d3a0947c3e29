//! Values quoted in texts: `never below {non-rebreather.least-flow}`.
//!
//! A number that a rule already holds is quoted rather than written a second time, so that a text can't go on saying
//! what the rule no longer says.

use super::{suggest::nearest, written::Mistake};
use crate::book::{Device, Policy, Saturation};
use crate::quantity::{Percent, Range, Time};

/// What can be quoted.
#[derive(Clone, Copy)]
pub struct Quotable<'a> {
    /// The policies, by id.
    pub policies: &'a [Policy],
    /// The devices, for `DEVICE.least-flow`, `DEVICE.most-flow` and `DEVICE.usual-flow`.
    pub devices: &'a [Device],
    /// The target whose text this is, for `target.low`, `target.high` and `target.recheck`.
    pub target: Option<OwnTarget>,
}

/// The numbers of a target that its texts may quote.
#[derive(Clone, Copy)]
pub struct OwnTarget {
    /// What saturation is aimed at.
    pub saturation: Option<Range<Percent>>,
    /// Look again within this time.
    pub recheck: Option<Time>,
    /// Below this the start is another.
    pub urgent_below: Option<Percent>,
}

impl OwnTarget {
    /// From a target's parts, as far as they could be read.
    pub const fn new(
        saturation: Option<Saturation>,
        recheck: Option<Time>,
        urgent_below: Option<Percent>,
    ) -> Self {
        let saturation = match saturation {
            Some(Saturation::Range(range)) => Some(range),
            _ => None,
        };
        Self {
            saturation,
            recheck,
            urgent_below,
        }
    }
}

/// Fills in every `{name}` of a text.
///
/// # Errors
///
/// [`Mistake`] at a name that isn't known, or a brace that isn't closed.
pub fn fill(text: &str, quotable: &Quotable<'_>) -> Result<String, Mistake> {
    let mut filled = String::new();
    let mut at = 0;
    while let Some(open) = text
        .get(at..)
        .and_then(|rest| rest.find(['{', '}']))
        .map(|found| at + found)
    {
        filled.push_str(text.get(at..open).unwrap_or(""));
        let inside = text.get(open + 1..).unwrap_or("");
        let close = inside
            .find('}')
            .filter(|_| text.get(open..).is_some_and(|rest| rest.starts_with('{')));
        let Some(close) = close else {
            return Err(Mistake {
                code: "unclosed-quotation",
                at: open..open + 1,
                message: "this brace has no partner".to_owned(),
                hint: Some(
                    "write a quoted value as `{residual-pressure}`; no other braces are used".to_owned(),
                ),
            });
        };
        let name = inside.get(..close).unwrap_or("").trim();
        match quotable.value(name) {
            Some(value) => filled.push_str(&value),
            None => return Err(quotable.unknown(name, open..open + close + 2)),
        }
        at = open + close + 2;
    }
    filled.push_str(text.get(at..).unwrap_or(""));
    Ok(filled)
}

impl Quotable<'_> {
    fn value(&self, name: &str) -> Option<String> {
        if let Some(policy) = self.policies.iter().find(|policy| &*policy.rule.id == name) {
            return Some(policy.value.to_string());
        }
        let (owner, part) = name.rsplit_once('.')?;
        if owner == "target" {
            let target = self.target?;
            return match part {
                "low" => Some(target.saturation?.low.value()?.to_string()),
                "high" => Some(target.saturation?.high.value()?.to_string()),
                "recheck" => Some(target.recheck?.to_string()),
                "urgent-below" => Some(target.urgent_below?.to_string()),
                _ => None,
            };
        }
        let device = self.devices.iter().find(|device| &*device.rule.id == owner)?;
        match part {
            "least-flow" => Some(device.flow.low.value()?.to_string()),
            "most-flow" => Some(device.flow.high.value()?.to_string()),
            "usual-flow" => Some(device.usual.to_string()),
            _ => None,
        }
    }

    fn unknown(&self, name: &str, at: core::ops::Range<usize>) -> Mistake {
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
            known.extend(["low", "high", "recheck", "urgent-below"].map(|part| format!("target.{part}")));
        }
        Mistake {
            code: "unknown-name",
            at,
            message: format!("expected the name of a value, found `{name}`"),
            hint: Some(match nearest(name, known.iter().map(String::as_str)) {
                Some(near) => format!("did you mean `{{{near}}}`?"),
                None => "write the id of a policy, or a device's id with `.least-flow`, `.most-flow` or `.usual-flow`"
                    .to_owned(),
            }),
        }
    }
}
