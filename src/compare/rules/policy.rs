//! Policies. What the checker does with those it knows says what is stricter; of others, the hazards that ask for them.

use super::{
    super::{
        change::{Changes, Direction, Sense},
        polarity::{self, End},
    },
    each,
    ends::{Inside, range},
};
use crate::book::{Kind, Policy, PolicyId, Rulebook, Value};

pub fn changes(changes: &mut Changes<'_>) {
    each(
        changes,
        Kind::Policy,
        |book| &book.policies.all,
        |policy| &policy.rule,
        |_, policy| {
            (
                format!("{}, {}", policy.rule.name, policy.value),
                Direction::Other,
            )
        },
        policy,
    );
}

fn policy(changes: &mut Changes<'_>, old: &Policy, new: &Policy) {
    if old.value != new.value {
        value(changes, old, new);
    }
    let note = |policy: &Policy| policy.note.as_ref().map_or_else(String::new, ToString::to_string);
    changes.text("note", &["note"], &note(old), &note(new));
}

fn value(changes: &mut Changes<'_>, old: &Policy, new: &Policy) {
    let id = &*new.rule.id;
    // What the checker does with it.
    let known = match id {
        "residual-pressure" | "change-over-pressure" | "in-service-minimum" | "planning-margin" => {
            Some(Sense::MoreIsStricter)
        }
        "fill-limit"
        | "requalification-interval"
        | "star-requalification-interval"
        | "gauge-tolerance"
        | "flow-tolerance" => Some(Sense::LessIsStricter),
        _ => None,
    };
    let whole = known.unwrap_or_else(|| asked(changes, id, End::Whole));
    let what = "value";
    let inside = match id {
        "storage-temperature" | "use-temperature" => Inside::Right,
        _ => Inside::Neither,
    };
    let before = changes.found.len();
    match (&old.value, &new.value) {
        (Value::Flow(old), Value::Flow(new)) => changes.value(what, old, new, whole),
        (Value::Pressure(old), Value::Pressure(new)) => changes.value(what, old, new, whole),
        (Value::Volume(old), Value::Volume(new)) => changes.value(what, old, new, whole),
        (Value::Factor(old), Value::Factor(new)) => changes.value(what, old, new, whole),
        (Value::Temperature(old), Value::Temperature(new)) => changes.value(what, old, new, whole),
        (Value::Percent(old), Value::Percent(new)) => changes.value(what, old, new, whole),
        (Value::Time(old), Value::Time(new)) => changes.value(what, old, new, whole),
        (Value::FlowRange(old), Value::FlowRange(new)) => range(changes, ENDS, *old, *new, inside),
        (Value::PressureRange(old), Value::PressureRange(new)) => range(changes, ENDS, *old, *new, inside),
        (Value::TemperatureRange(old), Value::TemperatureRange(new)) => {
            range(changes, ENDS, *old, *new, inside);
        }
        (Value::PercentRange(old), Value::PercentRange(new)) => range(changes, ENDS, *old, *new, inside),
        (Value::TimeRange(old), Value::TimeRange(new)) => range(changes, ENDS, *old, *new, inside),
        (old, new) => changes.plain(what, &old.to_string(), &new.to_string()),
    }
    // The ends of a range that only hazards ask for.
    let (low, high) = (asked(changes, id, End::Low), asked(changes, id, End::High));
    for (what, sense) in [(ENDS[0], low), (ENDS[1], high)] {
        let Some((was, is)) = ends(&old.value, &new.value, what == ENDS[0]) else {
            continue;
        };
        for change in changes.found.iter_mut().skip(before) {
            if change.what == what && inside == Inside::Neither {
                change.direction = Direction::of(&was, &is, sense);
            }
        }
    }
}

const ENDS: [&str; 2] = ["low end", "high end"];

/// What hazards of both books make of a policy that rises: told where they agree.
fn asked(changes: &Changes<'_>, id: &str, end: End) -> Sense {
    let of = |book: &Rulebook| {
        let place = book
            .policies
            .all
            .iter()
            .position(|policy| &*policy.rule.id == id)?;
        let id = u16::try_from(place).ok().map(PolicyId)?;
        Some(polarity::of_policy(book, id, end))
    };
    match (of(&changes.old.book), of(&changes.new.book)) {
        (Some(old), Some(new)) if old == new => new,
        // A book that doesn't ask has no say.
        (Some(Sense::Neither) | None, Some(sense)) | (Some(sense), Some(Sense::Neither) | None) => sense,
        _ => Sense::Neither,
    }
}

/// An end of two ranges of the same kind, as numbers.
fn ends(old: &Value, new: &Value, low: bool) -> Option<(f64, f64)> {
    macro_rules! end {
        ($range:expr, $get:ident) => {
            if low {
                $range.low.value()?.$get()
            } else {
                $range.high.value()?.$get()
            }
        };
    }
    Some(match (old, new) {
        (Value::FlowRange(old), Value::FlowRange(new)) => {
            (end!(old, as_litres_per_minute), end!(new, as_litres_per_minute))
        }
        (Value::PressureRange(old), Value::PressureRange(new)) => {
            (end!(old, as_pascals), end!(new, as_pascals))
        }
        (Value::TemperatureRange(old), Value::TemperatureRange(new)) => {
            (end!(old, as_celsius), end!(new, as_celsius))
        }
        (Value::PercentRange(old), Value::PercentRange(new)) => {
            (end!(old, as_percent), end!(new, as_percent))
        }
        (Value::TimeRange(old), Value::TimeRange(new)) => (end!(old, as_minutes), end!(new, as_minutes)),
        _ => return None,
    })
}
