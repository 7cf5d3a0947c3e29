//! Which saturation target holds for a patient, and which rung of its ladder comes next.

use super::{super::finding::Missing, Setup};
use crate::book::{DeviceFlow, GroupId, Rules, Saturation, TargetId, TargetRules};

/// A target with its name.
type Named<T> = (TargetId, T);

/// The one target for the patient's group, conditions and age. A condition's target goes before the general one.
pub fn choose<'b, R: Rules<'b>>(rules: R, setup: &Setup<'_>) -> Result<Named<R::Target>, Missing> {
    let group = setup.group.ok_or(Missing::Group)?;
    let conditions = setup.conditions.ok_or(Missing::Conditions)?;
    let for_group = || rules.targets().filter(move |(_, target)| target.is_for(group));
    let has = |target: R::Target| {
        target
            .condition()
            .is_some_and(|condition| conditions.contains(&condition))
    };
    let specific = || for_group().filter(|(_, target)| has(*target));
    // A reading that can't be trusted outranks every number.
    if let Some(untrusted) = specific().find(|(_, target)| target.saturation() == Saturation::NotReliable) {
        return Ok(untrusted);
    }
    // A condition the book has no target for in this group is not the same as no condition.
    if conditions
        .iter()
        .any(|condition| !for_group().any(|(_, target)| target.condition() == Some(*condition)))
    {
        return Err(Missing::ConditionTarget);
    }
    let gives_way = |target: R::Target| {
        specific().any(|(_, other)| {
            target
                .condition()
                .is_some_and(|condition| other.outranks(condition))
        })
    };
    let mut left = specific().filter(|(_, target)| !gives_way(*target));
    if let Some((id, first)) = left.next() {
        // Differences the book doesn't settle are for a person to settle.
        if left.any(|(_, other)| other.saturation() != first.saturation()) {
            return Err(Missing::OneTarget);
        }
        return Ok((id, first));
    }
    if specific().next().is_some() {
        // Targets that outrank each other in a ring.
        return Err(Missing::OneTarget);
    }
    general(rules, setup, group)
}

/// The group's general target, whatever the conditions.
pub fn general<'b, R: Rules<'b>>(
    rules: R,
    setup: &Setup<'_>,
    group: GroupId,
) -> Result<Named<R::Target>, Missing> {
    let general = || {
        rules
            .targets()
            .filter(move |(_, target)| target.is_for(group) && target.condition().is_none())
    };
    let timed = general().any(|(_, target)| target.minute_of_life().is_some());
    if !timed {
        return general().next().ok_or(Missing::Target);
    }
    let age = setup.minute_of_life.ok_or(Missing::MinuteOfLife)?;
    let mut best: Option<Named<R::Target>> = None;
    for (id, target) in general() {
        let Some(from) = target.minute_of_life().filter(|from| *from <= age) else {
            continue;
        };
        if best
            .and_then(|(_, best)| best.minute_of_life())
            .is_none_or(|so_far| from > so_far)
        {
            best = Some((id, target));
        }
    }
    best.ok_or(Missing::Target)
}

/// The first rung that gives more: above the set-up's own rung, or the first of more flow or another device.
pub fn rung_above(ladder: &[DeviceFlow], current: DeviceFlow) -> Option<DeviceFlow> {
    let place = place_on_ladder(ladder, current)?;
    ladder.get(place + 1).copied()
}

/// The rung below the set-up's own.
pub fn rung_below(ladder: &[DeviceFlow], current: DeviceFlow) -> Option<DeviceFlow> {
    let place = place_on_ladder(ladder, current)?;
    ladder.get(place.checked_sub(1)?).copied()
}

/// The last rung of the same device with at most the same flow; a device not on the ladder has no place.
fn place_on_ladder(ladder: &[DeviceFlow], current: DeviceFlow) -> Option<usize> {
    ladder
        .iter()
        .rposition(|rung| rung.device == current.device && rung.flow <= current.flow)
}
