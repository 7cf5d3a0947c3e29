//! Policies: those the checker needs must be there, in the right kind of quantity.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        suggest::nearest,
        written::{self, Dimension, Wanted},
    },
    Raw, rule,
};
use crate::book::{Kind, List, Policies, Policy, Value};

const KEYS: Keys = Keys {
    of: "policy",
    required: &["id", "name", "value"],
    optional: &["note"],
};

/// How long the test of a cylinder with a star holds: read by the check of stock.
const STAR_INTERVAL: &str = "star-requalification-interval";
/// How far a gauge may be off, for the review of records.
const GAUGE_TOLERANCE: &str = "gauge-tolerance";
/// How far a flowmeter may be off.
const FLOW_TOLERANCE: &str = "flow-tolerance";

/// Reads a policy.
pub fn read(raw: &Raw, found: &mut Diagnostics) -> Option<Policy> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "name", found);
    let value = fields.read("value", found, |node, found| {
        let id = super::id_of(raw).unwrap_or("");
        fields::written_as(node, found, |text| {
            written::any(text).map_err(|mistake| match wanted(id) {
                Some(wanted) => mistake.wanting(text, wanted),
                None => mistake,
            })
        })
    });
    let note = fields.maybe("note", found, fields::text);
    Some(Policy {
        rule: rule?,
        value: value?,
        note: note?,
    })
}

/// What quantity a policy is that the checker knows by name.
fn wanted(id: &str) -> Option<Wanted> {
    let (dimension, is_range) = match id {
        "residual-pressure" | "change-over-pressure" | "in-service-minimum" | GAUGE_TOLERANCE => {
            (Dimension::Pressure, false)
        }
        "planning-margin" | "fill-limit" | FLOW_TOLERANCE => (Dimension::Percent, false),
        "requalification-interval" | STAR_INTERVAL => (Dimension::Time, false),
        "storage-temperature" | "use-temperature" => (Dimension::Temperature, true),
        _ => return None,
    };
    Some(Wanted { dimension, is_range })
}

/// Gathers the policies, with those the checker needs by name.
pub fn gather(
    policies: Option<Vec<Policy>>,
    raws: &[Raw],
    has_unread: bool,
    found: &mut Diagnostics,
) -> Option<Policies> {
    let policies = policies?;
    let mut needed = Needed {
        policies: &policies,
        raws,
        may_be_there: has_unread || found.is_unread_kind(Kind::Policy),
        found,
    };
    let residual_pressure = needed.value("residual-pressure", "a pressure", |value| match value {
        Value::Pressure(pressure) => Some(pressure),
        _ => None,
    });
    let change_over_pressure = needed.value("change-over-pressure", "a pressure", |value| match value {
        Value::Pressure(pressure) => Some(pressure),
        _ => None,
    });
    let in_service_minimum = needed.value("in-service-minimum", "a pressure", |value| match value {
        Value::Pressure(pressure) => Some(pressure),
        _ => None,
    });
    let planning_margin = needed.value("planning-margin", "a share in %", |value| match value {
        Value::Percent(share) => Some(share),
        _ => None,
    });
    let fill_limit = needed.value("fill-limit", "a share in %", |value| match value {
        Value::Percent(share) => Some(share),
        _ => None,
    });
    let requalification_interval = needed.value("requalification-interval", "a time", |value| match value {
        Value::Time(time) => Some(time),
        _ => None,
    });
    let storage_temperature =
        needed.value(
            "storage-temperature",
            "a range of temperature",
            |value| match value {
                Value::TemperatureRange(range) => Some(range),
                _ => None,
            },
        );
    let use_temperature = needed.value("use-temperature", "a range of temperature", |value| match value {
        Value::TemperatureRange(range) => Some(range),
        _ => None,
    });
    // A book may do without these, but where they are, they are of their kind.
    if policies.iter().any(|policy| &*policy.rule.id == STAR_INTERVAL) {
        needed.value(STAR_INTERVAL, "a time", |value| match value {
            Value::Time(time) => Some(time),
            _ => None,
        });
    }
    if policies.iter().any(|policy| &*policy.rule.id == GAUGE_TOLERANCE) {
        needed.value(GAUGE_TOLERANCE, "a pressure", |value| match value {
            Value::Pressure(pressure) => Some(pressure),
            _ => None,
        });
    }
    if policies.iter().any(|policy| &*policy.rule.id == FLOW_TOLERANCE) {
        needed.value(FLOW_TOLERANCE, "a share in %", |value| match value {
            Value::Percent(share) => Some(share),
            _ => None,
        });
    }
    if let (Some(residual), Some(change), Some(minimum)) =
        (residual_pressure, change_over_pressure, in_service_minimum)
    {
        needed.rising("residual-pressure", residual, "change-over-pressure", change);
        needed.rising("change-over-pressure", change, "in-service-minimum", minimum);
    }
    Some(Policies {
        residual_pressure: residual_pressure?,
        change_over_pressure: change_over_pressure?,
        in_service_minimum: in_service_minimum?,
        planning_margin: planning_margin?,
        fill_limit: fill_limit?,
        requalification_interval: requalification_interval?,
        storage_temperature: storage_temperature?,
        use_temperature: use_temperature?,
        all: List::from(policies),
    })
}

struct Needed<'a> {
    policies: &'a [Policy],
    raws: &'a [Raw],
    /// Whether there is a policy whose id can't be read: it may be the one that is missing.
    may_be_there: bool,
    found: &'a mut Diagnostics,
}

impl Needed<'_> {
    fn value<T>(&mut self, id: &str, what: &str, take: impl FnOnce(Value) -> Option<T>) -> Option<T> {
        let Some(policy) = self.policies.iter().find(|policy| &*policy.rule.id == id) else {
            if self.may_be_there || self.found.is_unread(id) {
                return None;
            }
            let error = self.found.book_error(
                "missing-policy",
                format!("expected the policy `{id}` ({what}), found none"),
            );
            match nearest(id, self.policies.iter().map(|policy| &*policy.rule.id)) {
                Some(near) => error.hint(format!("should `{near}` be called `{id}`?")),
                None => error.hint(format!(
                    "add a block that begins with ```yaml policy and `id: {id}`"
                )),
            };
            return None;
        };
        let taken = take(policy.value);
        if taken.is_none()
            && let Some(node) = self.value_node(id)
        {
            let span = node.span;
            self.found
                .error(
                    "wrong-unit",
                    span,
                    format!("`{id}` is {what}, found {}", policy.value),
                )
                .hint(format!("write {what}"));
        }
        taken
    }

    /// The three pressures must not be mixed up: residual, then change-over, then the in-service minimum.
    fn rising<T: PartialOrd + core::fmt::Display>(&mut self, low_id: &str, low: T, high_id: &str, high: T) {
        if low <= high {
            return;
        }
        if let Some(node) = self.value_node(low_id).map(|node| node.span) {
            let other = self.value_node(high_id).map(|node| node.span);
            let error = self.found.error(
                "pressures-not-rising",
                node,
                format!("expected `{low_id}` to be at most `{high_id}`, {high}, found {low}"),
            );
            if let Some(other) = other {
                error.label(other, format!("`{high_id}` is here"));
            }
            error.hint("lower this one, or raise the other");
        }
    }

    fn value_node(&self, id: &str) -> Option<&super::Node> {
        let policy = self.policies.iter().position(|policy| &*policy.rule.id == id)?;
        let raw = self
            .raws
            .iter()
            .filter(|raw| raw.kind == Kind::Policy)
            .nth(policy)?;
        match &raw.node.value {
            super::Value::Mapping(entries) => entries
                .iter()
                .find(|entry| entry.key == "value")
                .map(|entry| &entry.value),
            _ => None,
        }
    }
}
