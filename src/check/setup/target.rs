//! Which saturation target holds for a patient, and which rung of its ladder comes next.

use super::{super::finding::Missing, Setup};
use crate::book::{DeviceFlow, GroupId, Rulebook, Saturation, Target};

/// The one target for the patient's group, conditions and age. A condition's target goes before the general one.
pub fn choose<'b>(book: &'b Rulebook, setup: &Setup<'_>) -> Result<&'b Target, Missing> {
    let group = setup.group.ok_or(Missing::Group)?;
    let conditions = setup.conditions.ok_or(Missing::Conditions)?;
    let for_group = || {
        book.targets
            .iter()
            .filter(move |target| target.groups.contains(&group))
    };
    let has = |target: &Target| {
        target
            .condition
            .is_some_and(|condition| conditions.contains(&condition))
    };
    let specific = || for_group().filter(|target| has(target));
    // A reading that can't be trusted outranks every number.
    if let Some(untrusted) = specific().find(|target| target.saturation == Saturation::NotReliable) {
        return Ok(untrusted);
    }
    // A condition the book has no target for in this group is not the same as no condition.
    if conditions
        .iter()
        .any(|condition| !for_group().any(|target| target.condition == Some(*condition)))
    {
        return Err(Missing::ConditionTarget);
    }
    let gives_way = |target: &Target| {
        specific().any(|other| {
            target
                .condition
                .is_some_and(|condition| other.outranks.contains(&condition))
        })
    };
    let mut left = specific().filter(|target| !gives_way(target));
    if let Some(first) = left.next() {
        // Differences the book doesn't settle are for a person to settle.
        if left.any(|other| other.saturation != first.saturation) {
            return Err(Missing::OneTarget);
        }
        return Ok(first);
    }
    if specific().next().is_some() {
        // Targets that outrank each other in a ring.
        return Err(Missing::OneTarget);
    }
    general(book, setup, group)
}

/// The group's general target, whatever the conditions.
pub fn general<'b>(book: &'b Rulebook, setup: &Setup<'_>, group: GroupId) -> Result<&'b Target, Missing> {
    let general = || {
        book.targets
            .iter()
            .filter(move |target| target.groups.contains(&group) && target.condition.is_none())
    };
    let timed = general().any(|target| target.minute_of_life.is_some());
    if !timed {
        return general().next().ok_or(Missing::Target);
    }
    let age = setup.minute_of_life.ok_or(Missing::MinuteOfLife)?;
    let mut best: Option<&Target> = None;
    for target in general() {
        let Some(from) = target.minute_of_life.filter(|from| *from <= age) else {
            continue;
        };
        if best
            .and_then(|best| best.minute_of_life)
            .is_none_or(|so_far| from > so_far)
        {
            best = Some(target);
        }
    }
    best.ok_or(Missing::Target)
}

/// The first rung that gives more: above the set-up's own rung, or the first of more flow or another device.
pub fn rung_above(target: &Target, current: DeviceFlow) -> Option<DeviceFlow> {
    let place = place_on_ladder(target, current)?;
    target.ladder.get(place + 1).copied()
}

/// The rung below the set-up's own.
pub fn rung_below(target: &Target, current: DeviceFlow) -> Option<DeviceFlow> {
    let place = place_on_ladder(target, current)?;
    target.ladder.get(place.checked_sub(1)?).copied()
}

/// The last rung of the same device with at most the same flow; a device not on the ladder has no place.
fn place_on_ladder(target: &Target, current: DeviceFlow) -> Option<usize> {
    target
        .ladder
        .iter()
        .rposition(|rung| rung.device == current.device && rung.flow <= current.flow)
}
