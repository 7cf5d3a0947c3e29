//! What only several rules together can get wrong: ages that leave a gap, two targets for the same patient, two gases
//! with the same pins.

use super::{super::diagnostic::Diagnostics, Raw};
use crate::book::{Connection, Group, Kind, Target};
use crate::quantity::Limit;

/// Checks the rules that were read; `None` for a kind in which one could not be.
pub fn check(
    groups: Option<&[Group]>,
    connections: Option<&[Connection]>,
    targets: Option<&[Target]>,
    raws: &[Raw],
    found: &mut Diagnostics,
) {
    ages(groups.unwrap_or(&[]), raws, found);
    pins(connections.unwrap_or(&[]), raws, found);
    // A condition that could not be read would make twins of two targets.
    if !found.has_errors() {
        twins(targets.unwrap_or(&[]), raws, found);
    }
}

/// Every age has one group.
fn ages(groups: &[Group], raws: &[Raw], found: &mut Diagnostics) {
    let mut order: Vec<(usize, &Group)> = groups.iter().enumerate().collect();
    order.sort_by(|(_, a), (_, b)| {
        a.age
            .low
            .value()
            .partial_cmp(&b.age.low.value())
            .unwrap_or(core::cmp::Ordering::Equal)
    });
    for pair in order.windows(2) {
        let &[(low, younger), (high, older)] = pair else {
            continue;
        };
        let meets = match (younger.age.high, older.age.low) {
            (Limit::Excluded(end), Limit::Included(start)) => end == start,
            _ => false,
        };
        if let (false, Some(at)) = (meets, nth(raws, Kind::Group, high, "age")) {
            let error = found.error(
                "ages-do-not-meet",
                at,
                format!(
                    "expected `{}` to begin where `{}` ends, found {} after {}",
                    older.rule.id, younger.rule.id, older.age, younger.age
                ),
            );
            if let Some(other) = nth(raws, Kind::Group, low, "age") {
                error.label(other, "the younger group is here");
            }
            error.hint("every age belongs to one group: let one begin where the other ends");
        }
    }
}

/// Pins tell gases apart.
fn pins(connections: &[Connection], raws: &[Raw], found: &mut Diagnostics) {
    for (index, one) in connections.iter().enumerate() {
        let twin = connections
            .iter()
            .take(index)
            .position(|other| !one.pins.is_empty() && other.pins == one.pins && other.gas != one.gas);
        if let Some(twin) = twin
            && let Some(at) = nth(raws, Kind::Connection, index, "pins")
        {
            let error = found.error(
                "same-pins",
                at,
                format!("found the pins of another gas for {}", one.gas),
            );
            if let Some(other) = nth(raws, Kind::Connection, twin, "pins") {
                error.label(other, "the same pins are here");
            }
            error.hint("pins are there to tell gases apart: check both against the standard");
        }
    }
}

/// A patient has one target.
fn twins(targets: &[Target], raws: &[Raw], found: &mut Diagnostics) {
    for (index, one) in targets.iter().enumerate() {
        let twin = targets.iter().take(index).position(|other| {
            other.condition == one.condition
                && other.minute_of_life == one.minute_of_life
                && other.groups.iter().any(|group| one.groups.contains(group))
        });
        if let Some(twin) = twin
            && let Some(at) = nth(raws, Kind::Target, index, "groups")
        {
            let error = found.error(
                "second-target",
                at,
                "found a second target for the same group and condition",
            );
            if let Some(other) = nth(raws, Kind::Target, twin, "groups") {
                error.label(other, "the first is here");
            }
            error.hint("give one of them a `condition`, or take the group out of one");
        }
    }
}

/// Where a key's value stands in the nth rule of a kind.
fn nth(raws: &[Raw], kind: Kind, index: usize, key: &str) -> Option<super::Span> {
    let raw = raws.iter().filter(|raw| raw.kind == kind).nth(index)?;
    match &raw.node.value {
        super::Value::Mapping(entries) => entries
            .iter()
            .find(|entry| entry.key == key)
            .map(|entry| entry.value.span),
        _ => None,
    }
}
