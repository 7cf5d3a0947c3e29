//! Saturation targets: one for each patient, rising with a newborn's minutes, each ladder rising in oxygen.

use std::collections::BTreeMap;

use super::{
    Lint, Room,
    oxygen::{self, ALIKE},
    places::RuleRef,
};
use crate::book::{DeviceFlow, GroupId, Kind, Rulebook, Saturation, Target};
use crate::quantity::{Number, Percent, Range, Time};

/// A target that the checker can't come to.
pub const TARGET_NEVER_CHOSEN: Lint = Lint::error("target-never-chosen");
/// A newborn's targets, not in the order of their minutes.
pub const MINUTES_NOT_IN_ORDER: Lint = Lint::note("minutes-not-in-order");
/// A newborn's target that aims lower than the one of the minutes before.
pub const TARGET_FALLS: Lint = Lint::error("target-falls");
/// A range that no oximeter can keep to.
pub const TARGET_NARROW: Lint = Lint::note("target-narrow");
/// A rung that gives less oxygen than the one below it.
pub const LADDER_NOT_RISING: Lint = Lint::error("ladder-not-rising");
/// A rung that stands on its ladder twice.
pub const RUNG_REPEATED: Lint = Lint::error("rung-repeated");
/// An urgent start with less oxygen than the ordinary one.
pub const URGENT_START_WEAKER: Lint = Lint::error("urgent-start-weaker");

/// The narrowest range, in per cent points: an oximeter is no finer.
const NARROWEST: f64 = 2.0;

pub fn look(room: &mut Room<'_>) {
    for index in 0..room.book.targets.len() {
        if let Some(target) = room.book.targets.get(index) {
            narrow(room, place(index), target);
            ladder(room, place(index), target);
            urgent(room, place(index), target);
        }
    }
    never_chosen(room);
    newborn(room);
}

const fn place(index: usize) -> RuleRef {
    RuleRef {
        kind: Kind::Target,
        index,
    }
}

fn range(target: &Target) -> Option<(f64, f64)> {
    let Saturation::Range(Range { low, high }) = target.saturation else {
        return None;
    };
    let low = low.value().map_or(0.0, Percent::as_percent);
    Some((low, high.value().map_or(100.0, Percent::as_percent)))
}

fn narrow(room: &mut Room<'_>, rule: RuleRef, target: &Target) {
    if let (Saturation::Range(written), Some((low, high))) = (target.saturation, range(target))
        && high - low < NARROWEST
    {
        let at = room.places.value(rule, "saturation");
        room.find(
            TARGET_NARROW,
            &[rule],
            at,
            format!("expected a range of at least {NARROWEST} points, found {written}"),
        )
        .hint("an oximeter is no finer: the crew would step up and down without end");
    }
}

fn ladder(room: &mut Room<'_>, rule: RuleRef, target: &Target) {
    let book = room.book;
    let mut seen: BTreeMap<(u16, u64), usize> = BTreeMap::new();
    for (index, rung) in target.ladder.iter().enumerate() {
        let at = room.places.item(rule, "ladder", index);
        let key = (rung.device.0, rung.flow.as_litres_per_minute().to_bits());
        if let Some(first) = seen.insert(key, index) {
            let other = room.places.item(rule, "ladder", first);
            room.find(RUNG_REPEATED, &[rule], at, "found the same rung a second time")
                .label(other, "the first is here")
                .hint("take one of them out: going up would not give more");
            continue;
        }
        let Some(below) = index.checked_sub(1).and_then(|below| target.ladder.get(below)) else {
            continue;
        };
        let (Some(less), Some(more)) = (oxygen::of(book, *below), oxygen::of(book, *rung)) else {
            continue;
        };
        let rises = if below.device == rung.device {
            rung.flow > below.flow
        } else {
            more >= less - ALIKE
        };
        if !rises {
            let other = room.places.item(rule, "ladder", index - 1);
            let message = if below.device == rung.device {
                format!("expected a flow above {}, found {}", below.flow, rung.flow)
            } else {
                format!(
                    "expected a rung with more oxygen, found about {} %",
                    rounded(more)
                )
            };
            room.find(LADDER_NOT_RISING, &[rule], at, message)
                .label(other, format!("this one gives about {} %", rounded(less)))
                .hint("order the rungs from least to most oxygen: the checker climbs one at a time");
        }
    }
}

/// A share as it is spoken of: whole per cent.
fn rounded(share: f64) -> Number {
    Number((share + 0.5).floor())
}

fn urgent(room: &mut Room<'_>, rule: RuleRef, target: &Target) {
    let Some(urgent) = target.urgent else {
        return;
    };
    let share = |rung: DeviceFlow| oxygen::of(room.book, rung);
    if let (Some(usual), Some(fast)) = (share(target.start), share(urgent.start))
        && fast + ALIKE < usual
    {
        let at = room.places.value(rule, "urgent-start");
        let other = room.places.value(rule, "start");
        room.find(
            URGENT_START_WEAKER,
            &[rule],
            at,
            format!(
                "expected an urgent start with at least the oxygen of the start, found about {} %",
                rounded(fast)
            ),
        )
        .label(other, format!("the start gives about {} %", rounded(usual)))
        .hint("a patient below `urgent-below` gets more oxygen, not less");
    }
}

/// The checker chooses a condition's target whatever the minute, and among general ones by the minute of life.
fn never_chosen(room: &mut Room<'_>) {
    let book = room.book;
    let mut timed: BTreeMap<GroupId, usize> = BTreeMap::new();
    let mut of_condition: BTreeMap<(GroupId, u16), usize> = BTreeMap::new();
    for (index, target) in book.targets.iter().enumerate() {
        for group in &target.groups {
            match (target.condition, target.minute_of_life) {
                (None, Some(_)) => {
                    timed.entry(*group).or_insert(index);
                }
                (None, None) => {}
                (Some(condition), _) => {
                    let first = *of_condition.entry((*group, condition.0)).or_insert(index);
                    if first != index {
                        let at = room.places.value(place(index), "condition");
                        let other = room.places.value(place(first), "condition");
                        room.find(
                            TARGET_NEVER_CHOSEN,
                            &[place(index), place(first)],
                            at,
                            "found a second target for a condition, told apart by the minute of life only",
                        )
                        .label(other, "the first is here")
                        .hint("minutes tell general targets apart; give one of these another condition");
                        break;
                    }
                }
            }
        }
    }
    for (index, target) in book.targets.iter().enumerate() {
        if target.condition.is_some() || target.minute_of_life.is_some() {
            continue;
        }
        let other = target
            .groups
            .iter()
            .find_map(|group| timed.get(group).map(|other| (*group, *other)));
        let Some((group, other)) = other else {
            continue;
        };
        let name = book.group(group).map_or("", |group| &*group.rule.id);
        let at = room.places.of(place(index));
        let label = room.places.value(place(other), "minute-of-life");
        room.find(
            TARGET_NEVER_CHOSEN,
            &[place(index), place(other)],
            at,
            format!("expected a `minute-of-life`, as other targets of the group `{name}` have one"),
        )
        .label(label, "this one has it")
        .hint("add the minute from which it holds: without one it is never chosen for the group");
    }
}

fn newborn(room: &mut Room<'_>) {
    let book = room.book;
    let mut groups: BTreeMap<GroupId, Vec<usize>> = BTreeMap::new();
    for (index, target) in book.targets.iter().enumerate() {
        if target.condition.is_none() && target.minute_of_life.is_some() {
            for group in &target.groups {
                groups.entry(*group).or_default().push(index);
            }
        }
    }
    let mut reported = std::collections::BTreeSet::new();
    for (_, mut timed) in groups {
        let from = |index: usize| minute(book, index);
        for pair in timed.windows(2) {
            if let &[earlier, later] = pair
                && from(later) < from(earlier)
                && reported.insert((MINUTES_NOT_IN_ORDER.name, earlier, later))
            {
                let at = room.places.value(place(later), "minute-of-life");
                let other = room.places.value(place(earlier), "minute-of-life");
                room.find(
                    MINUTES_NOT_IN_ORDER,
                    &[place(later), place(earlier)],
                    at,
                    "found a target for earlier minutes after one for later minutes",
                )
                .label(other, "the later minutes are here")
                .hint("put them in order: a reader takes the last for the latest");
            }
        }
        timed.sort_by(|a, b| from(*a).total_cmp(&from(*b)));
        for pair in timed.windows(2) {
            let &[earlier, later] = pair else {
                continue;
            };
            let ranges = |index: usize| book.targets.get(index).and_then(range);
            if let (Some(before), Some(after)) = (ranges(earlier), ranges(later))
                && (after.0 < before.0 || after.1 < before.1)
                && reported.insert((TARGET_FALLS.name, earlier, later))
            {
                let at = room.places.value(place(later), "saturation");
                let other = room.places.value(place(earlier), "saturation");
                room.find(
                    TARGET_FALLS,
                    &[place(later), place(earlier)],
                    at,
                    "expected a target that rises with the minutes of life, found one that falls",
                )
                .label(other, "the minutes before aim at this")
                .hint("a newborn's saturation rises: check both ranges and both minutes");
            }
        }
    }
}

fn minute(book: &Rulebook, index: usize) -> f64 {
    let target = book.targets.get(index);
    target
        .and_then(|target| target.minute_of_life)
        .map_or(0.0, Time::as_minutes)
}
