//! Minutes that move by more than one.

use schemars::JsonSchema;
use serde::Serialize;

use crate::book::{Cylinder, Layout, Rulebook};
use crate::check::duration;
use crate::quantity::{Flow, Gauge, Pressure, Range};

/// The minutes of a cylinder that move.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Durations {
    /// The cylinder's id.
    pub cylinder: String,
    /// Its name in the new edition.
    pub name: String,
    /// How many readings and flows were asked.
    pub asked: usize,
    /// How many of them last more than a minute less.
    pub shorter: usize,
    /// How many of them last more than a minute longer.
    pub longer: usize,
    /// The one that moves most; of several the first.
    pub most: Moved,
}

/// Minutes that move.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Moved {
    /// The gauge reading.
    pub pressure: String,
    /// The flow.
    pub flow: String,
    /// How long it lasted by the old book.
    pub was_minutes: u32,
    /// How long it lasts by the new one.
    pub is_minutes: u32,
}

/// Asked are the readings that the duration cards of either book print, and the flows; where they print none, the least, usual
/// and most flows of the devices.
pub(super) fn durations(old: &Rulebook, new: &Rulebook) -> Vec<Durations> {
    let flows = flows(old, new);
    new.cylinders
        .iter()
        .filter_map(|cylinder| {
            let before = old.cylinder(old.find_cylinder(&cylinder.rule.id)?)?;
            of_cylinder(old, before, new, cylinder, &flows)
        })
        .collect()
}

fn of_cylinder(
    old: &Rulebook,
    before: &Cylinder,
    new: &Rulebook,
    now: &Cylinder,
    flows: &[Flow],
) -> Option<Durations> {
    let readings = readings(old, before, new, now);
    let minutes = |book: &Rulebook, cylinder: &Cylinder, reading, flow| {
        duration::of_cylinder(book, cylinder, reading, flow).map_or(0, |lasts| lasts.minutes)
    };
    let (mut shorter, mut longer) = (0, 0);
    let mut most: Option<(u32, Moved)> = None;
    for reading in &readings {
        for flow in flows {
            let was_minutes = minutes(old, before, *reading, *flow);
            let is_minutes = minutes(new, now, *reading, *flow);
            let by = was_minutes.abs_diff(is_minutes);
            if by <= 1 {
                continue;
            }
            if is_minutes < was_minutes {
                shorter += 1;
            } else {
                longer += 1;
            }
            if most.as_ref().is_none_or(|(so_far, _)| by > *so_far) {
                let moved = Moved {
                    pressure: reading.to_string(),
                    flow: flow.to_string(),
                    was_minutes,
                    is_minutes,
                };
                most = Some((by, moved));
            }
        }
    }
    most.map(|(_, most)| Durations {
        cylinder: now.rule.id.to_string(),
        name: now.rule.name.to_string(),
        asked: readings.len() * flows.len(),
        shorter,
        longer,
        most,
    })
}

fn readings(old: &Rulebook, before: &Cylinder, new: &Rulebook, now: &Cylinder) -> Vec<Pressure<Gauge>> {
    let mut readings = vec![before.service_pressure, now.service_pressure];
    for (book, id) in [(old, &before.rule.id), (new, &now.rule.id)] {
        for card in &book.cards {
            if let Layout::Durations {
                cylinders, pressures, ..
            } = &card.layout
                && book.find_cylinder(id).is_some_and(|id| cylinders.contains(&id))
            {
                readings.extend(pressures.iter().copied());
            }
        }
    }
    sorted(readings, |reading| reading.as_pascals())
}

fn flows(old: &Rulebook, new: &Rulebook) -> Vec<Flow> {
    let mut flows = Vec::new();
    for book in [old, new] {
        for card in &book.cards {
            if let Layout::Durations { flows: printed, .. } = &card.layout {
                flows.extend(printed.iter().copied());
            }
        }
        for device in &book.devices {
            flows.extend(ends(device.flow));
            flows.push(device.usual);
        }
    }
    flows.retain(|flow| *flow > Flow::ZERO);
    sorted(flows, |flow| flow.as_litres_per_minute())
}

/// The values at the ends of a range.
pub(super) fn ends<Q: Copy>(range: Range<Q>) -> impl Iterator<Item = Q> {
    range.low.value().into_iter().chain(range.high.value())
}

/// From low to high, each once.
pub(super) fn sorted<Q: Copy>(mut all: Vec<Q>, number: impl Fn(Q) -> f64) -> Vec<Q> {
    all.sort_by(|one, other| number(*one).total_cmp(&number(*other)));
    // Written in two units, the same value differs by a rounding.
    all.dedup_by(|one, other| (number(*one) - number(*other)).abs() <= 1e-9 * number(*other).abs());
    all
}
