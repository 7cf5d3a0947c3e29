//! Delivery devices against what their kind needs.

use super::{Lint, Room};
use crate::book::{Device, DeviceId, Group};
use crate::quantity::{Flow, Number, Percent, Time, TimeUnit};

/// A reservoir bag that collapses on breathing in.
pub const RESERVOIR_STARVED: Lint = Lint::error("reservoir-starved");
/// A reservoir bag that may collapse in an adult.
pub const RESERVOIR_SCANT: Lint = Lint::note("reservoir-scant");
/// An entrainment ratio that doesn't mix to the stated share.
pub const ENTRAINMENT_RATIO: Lint = Lint::error("entrainment-ratio");
/// An entrainment mask whose total flow is less than a patient breathes in.
pub const TOTAL_FLOW_LOW: Lint = Lint::note("total-flow-low");
/// A table in which more flow gives less oxygen.
pub const OXYGEN_FALLS_WITH_FLOW: Lint = Lint::error("oxygen-falls-with-flow");
/// A table with a share outside the device's range.
pub const OXYGEN_OUTSIDE_RANGE: Lint = Lint::error("oxygen-outside-range");

/// The least flow any text accepts for a reservoir mask, in L/min ("not less than 6", a text for the wilderness).
const BAG_LEAST: f64 = 6.0;
/// The least flow commonly taught for an adult's reservoir mask, in L/min (BTS 2008: 10 to 15).
const BAG_USUAL: f64 = 10.0;
/// The total flow commonly asked of an entrainment mask, in L/min: about what an adult at rest breathes in at the
/// peak of a breath. Common practice; no single source.
const TOTAL_LEAST: f64 = 30.0;
/// Oxygen in air, in per cent, as the rounded ratios take it: 21 for a low share, 20 from 40 % on.
const AIR: f64 = 21.0;
/// How far the mixed share may be outside the stated range, in points: ratios are rounded.
const MIXED: f64 = 1.0;

pub fn look(room: &mut Room<'_>) {
    for (index, device) in (0_u16..).zip(&room.book.devices) {
        let id = DeviceId(index);
        reservoir(room, id, device);
        entrainment(room, id, device);
        by_flow(room, id, device);
    }
}

/// Whether a group holds patients of an age and older.
fn reaches(group: &Group, years: f64) -> bool {
    let age = Time::of(years, TimeUnit::Year).map_or(0.0, Time::as_minutes);
    group.age.high.value().is_none_or(|high| high.as_minutes() > age)
}

fn reservoir(room: &mut Room<'_>, id: DeviceId, device: &Device) {
    if !device.reservoir {
        return;
    }
    let book = room.book;
    let mut last = None;
    for group in &device.fits {
        let least = device.flow_for(*group).low.value().unwrap_or(Flow::ZERO);
        let Some(group) = book.group(*group) else {
            continue;
        };
        // The breath of a baby under a year is small, and so is its bag.
        let starved = least.as_litres_per_minute() < BAG_LEAST && reaches(group, 1.0);
        let scant = least.as_litres_per_minute() < BAG_USUAL && reaches(group, 16.0);
        let (lint, most) = match (starved, scant) {
            (true, _) => (RESERVOIR_STARVED, BAG_LEAST),
            (false, true) => (RESERVOIR_SCANT, BAG_USUAL),
            (false, false) => continue,
        };
        let at = room
            .places
            .for_group(id.into(), ("flow-for", "flow"), &group.rule.id);
        // Groups with the device's general range have one place.
        if last.replace((lint, at)) == Some((lint, at)) {
            continue;
        }
        room.find(
            lint,
            &[id.into()],
            at,
            format!(
                "expected a least flow of {} L/min or more for a reservoir in the group `{}`, found {least}",
                Number(most),
                group.rule.id
            ),
        )
        .hint("the bag must not collapse when the patient breathes in");
    }
}

fn entrainment(room: &mut Room<'_>, id: DeviceId, device: &Device) {
    let Some(ratio) = device.entrains else {
        return;
    };
    let parts = ratio.as_parts_of_air();
    let mixed = (100.0 + AIR * parts) / (1.0 + parts);
    let low = device.oxygen.low.value().map_or(0.0, Percent::as_percent);
    let high = device.oxygen.high.value().map_or(100.0, Percent::as_percent);
    let span = room.places.value(id.into(), "entrains");
    if !(low - MIXED..=high + MIXED).contains(&mixed) {
        let other = room.places.value(id.into(), "oxygen");
        let middle = f64::midpoint(low, high);
        // 20 in place of 21 is taught for the higher shares.
        let air = if middle >= 40.0 { 20.0 } else { AIR };
        let fitting = (100.0 - middle) / (middle - air).max(0.5);
        room.find(
            ENTRAINMENT_RATIO,
            &[id.into()],
            span,
            format!(
                "expected a ratio that mixes to {}, found {ratio}, which mixes to about {} %",
                device.oxygen,
                Number((mixed + 0.5).floor())
            ),
        )
        .label(other, "the share is given here")
        .hint(format!(
            "parts of air to one of oxygen are (100 − share) ÷ (share − {}): about {} to 1",
            Number(air),
            Number((fitting * 10.0 + 0.5).floor() / 10.0)
        ));
    }
    let book = room.book;
    for group in &device.fits {
        let usual = device.usual_for(*group);
        let total = usual.as_litres_per_minute() * (parts + 1.0);
        let Some(group) = book.group(*group).filter(|group| reaches(group, 16.0)) else {
            continue;
        };
        if total < TOTAL_LEAST - 1e-9 {
            let at = room
                .places
                .for_group(id.into(), ("usual-for", "usual"), &group.rule.id);
            room.find(
                TOTAL_FLOW_LOW,
                &[id.into()],
                at,
                format!(
                    "expected a total flow of {} L/min or more, found {} L/min at {usual}",
                    Number(TOTAL_LEAST),
                    Number(total)
                ),
            )
            .label(span, "the total is the oxygen flow times one more than this")
            .hint("a patient who breathes in faster draws room air and gets less than the share: raise the usual flow");
            break;
        }
    }
}

fn by_flow(room: &mut Room<'_>, id: DeviceId, device: &Device) {
    let mut before: Option<Percent> = None;
    for (index, (_, share)) in device.oxygen_by_flow.iter().enumerate() {
        let at = room.places.entry(id.into(), "oxygen-by-flow", index);
        if let Some(before) = before
            && *share < before
        {
            room.find(
                OXYGEN_FALLS_WITH_FLOW,
                &[id.into()],
                at,
                format!("expected at least {before} at more flow, found {share}"),
            )
            .hint("more flow gives no less oxygen: check the two rows");
        }
        if !device.oxygen.holds(*share) {
            let other = room.places.value(id.into(), "oxygen");
            room.find(
                OXYGEN_OUTSIDE_RANGE,
                &[id.into()],
                at,
                format!("expected a share within {}, found {share}", device.oxygen),
            )
            .label(other, "the range is given here")
            .hint("change this share, or the range");
        }
        before = Some(*share);
    }
}
