//! Reads a transport plan from YAML or JSON, which is YAML too: one grammar for both.
//!
//! ```yaml
//! name: Lakeside ward to Hilltop hospital
//! # when the gauges were read
//! temperature: 20 °C
//! cylinders:
//!   - {size: E, pressure: 2000 psi, count: 2}
//! legs:
//!   - name: ward to vehicle
//!     time: 8 min
//!     device: non-rebreather
//!     flow: 15 L/min
//!   - name: on the road
//!     time: 20 min
//!     delay: 4 min
//!     temperature: -5 °C
//!     patients:
//!       - {device: non-rebreather, flow: 15 L/min}
//!       - {drive-gas: 6 L/min}
//! ```
//!
//! (A remark on a line of its own is passed over; one after a value is an error, as everywhere in the book.)
//!
//! | key | | value |
//! | --- | --- | --- |
//! | `name` | | what the transport is called |
//! | `temperature` | | of the cylinders when their gauges were read; without it the hottest of the plan, at least 21 °C |
//! | `cylinders` | must | one or a list, up to [`MAX_CYLINDERS`] in all |
//! | `cylinders: size` | must | as the book names it: id, name or other name |
//! | `cylinders: pressure` | must | the gauge reading |
//! | `cylinders: count` | | how many alike; 1 |
//! | `legs` | must | one or a list, up to [`MAX_LEGS`] |
//! | `legs: name` | must | what the crew calls it |
//! | `legs: time` | must | how long it takes, up to 10 days |
//! | `legs: delay` | | the delay to be expected, up to 10 days |
//! | `legs: temperature` | | around the cylinders |
//! | `device`, `flow`, `drive-gas` | one of the last two | of a leg with one patient, or of each of its `patients` |
//! | `patients` | | one or a list, all on one supply |
//!
//! `drive-gas` is what a gas-driven ventilator or CPAP device uses beside the flow, as its maker or a measurement says.

use super::{
    Rejected,
    diagnostic::Diagnostics,
    fields::{self, Fields, Keys},
    lines,
    source::{FileId, Sources},
    suggest::nearest,
    undecided,
    yaml::{self, Node},
};
use crate::book::{CylinderId, DeviceId, List, Rule, Rulebook, Text};
use crate::check::plan::{Leg, OnBoard, Plan, Use};
use crate::oxygen;
use crate::quantity::{Bounds, Flow, Gauge, Pressure, Temperature, Time};

/// As many cylinders may be on board.
pub const MAX_CYLINDERS: usize = 100;

/// As many legs may a plan have.
pub const MAX_LEGS: usize = 100;

/// As many patients may be on one supply.
const MAX_PATIENTS: usize = 100;

/// The longest time of a leg, in minutes: 10 days.
const LONGEST: f64 = 10.0 * 24.0 * 60.0;

/// A plan as it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Transport {
    /// What it is called.
    pub name: Option<String>,
    /// Legs and cylinders.
    pub plan: Plan,
}

const PLAN: Keys = Keys {
    of: "plan",
    required: &["cylinders", "legs"],
    optional: &["name", "temperature"],
};
const CYLINDER: Keys = Keys {
    of: "cylinder",
    required: &["size", "pressure"],
    optional: &["count"],
};
const LEG: Keys = Keys {
    of: "leg",
    required: &["name", "time"],
    optional: &["delay", "temperature", "device", "flow", "drive-gas", "patients"],
};
const PATIENT: Keys = Keys {
    of: "patient",
    required: &[],
    optional: &["flow", "device", "drive-gas"],
};

/// Reads a plan for a book. The path stands in what is said about mistakes.
///
/// # Errors
///
/// [`Rejected`] with every mistake of the plan and its place.
///
/// ```
/// use oxyfolio::{RULEBOOK, compile::transport};
/// let text = "cylinders: {size: E, pressure: 2000}\nlegs: {name: road, time: 5 min, flow: 4 L/min}\n";
/// let rejected = transport::read(&RULEBOOK, "plan.yaml", text).unwrap_err();
/// assert!(rejected.render(false).contains("plan.yaml:1:32"), "{}", rejected.render(false));
///
/// let read = transport::read(&RULEBOOK, "plan.yaml", &text.replace("2000", "2000 psi")).unwrap();
/// assert_eq!(read.plan.legs[0].litres_per_minute(), 4.0);
/// ```
pub fn read(book: &Rulebook, path: &str, text: &str) -> Result<Transport, Box<Rejected>> {
    let mut sources = Sources::default();
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    let file = sources.add(path.to_owned(), path.to_owned(), text.to_owned());
    let mut found = Diagnostics::default();
    let read = plan(book, &sources, file, &mut found);
    match read.filter(|_| !found.has_errors()) {
        Some(transport) => Ok(transport),
        None => Err(Box::new(Rejected {
            sources,
            omitted: found.omitted(),
            diagnostics: found.into_sorted(),
            unusable: None,
        })),
    }
}

fn plan(book: &Rulebook, sources: &Sources, file: FileId, found: &mut Diagnostics) -> Option<Transport> {
    let text = sources.text(file);
    let is_bare = |line: &str| line.trim().is_empty() || line.trim_start().starts_with('#');
    if text.lines().all(is_bare) {
        found
            .error(
                "empty-plan",
                sources.span(file, 0..0),
                "expected a plan, found nothing",
            )
            .hint("write `cylinders:` and `legs:`, each with a list");
        return None;
    }
    lines::check(sources, file, found);
    if found.has_errors() {
        return None;
    }
    let node = yaml::read_whole(file, sources, found)?;
    // The readers of values say nothing of a mark.
    undecided::report(&node, found);
    let fields = Fields::of(&node, &PLAN, found)?;
    let name = fields.maybe("name", found, fields::plain);
    let read_at = fields.maybe("temperature", found, temperature);
    let cylinders = fields.read("cylinders", found, |node, found| cylinders(book, node, found));
    let legs = fields.read("legs", found, |node, found| {
        counted("legs", MAX_LEGS, node, found)?;
        fields::each(node, found, |node, found| leg(book, node, found))
    });
    let used = legs.as_ref().is_none_or(|legs| {
        legs.iter()
            .any(|leg| leg.litres_per_minute() > 0.0 && leg.minutes() > 0.0)
    });
    if !used && let Some(node) = fields.get("legs") {
        found
            .error(
                "no-flow",
                node.span,
                "expected a leg on which gas flows for some time, found none",
            )
            .hint("write the `flow` or the `drive-gas` of each leg");
    }
    Some(Transport {
        name: name?.map(str::to_owned),
        plan: Plan {
            legs: legs?.to_vec(),
            cylinders: cylinders?,
            read_at: read_at?,
        },
    })
}

const SPLIT: &str = "split the plan, and carry what is left of one part into the next";

/// Refuses a list that is too long.
fn counted(what: &str, most: usize, node: &Node, found: &mut Diagnostics) -> Option<()> {
    let count = fields::items(node).len();
    if count <= most {
        return Some(());
    }
    found
        .error(
            "too-many",
            node.span,
            format!("expected at most {most} {what}, found {count}"),
        )
        .hint(SPLIT);
    None
}

fn cylinders(book: &Rulebook, node: &Node, found: &mut Diagnostics) -> Option<Vec<OnBoard>> {
    let groups = fields::each(node, found, |node, found| cylinder(book, node, found))?;
    let all: usize = groups.iter().map(|(_, count)| count).sum();
    if all > MAX_CYLINDERS {
        found
            .error(
                "too-many",
                node.span,
                format!("expected at most {MAX_CYLINDERS} cylinders, found {all}"),
            )
            .hint(SPLIT);
        return None;
    }
    let each = |(one, count): &(OnBoard, usize)| core::iter::repeat_n(*one, *count);
    Some(groups.iter().flat_map(each).collect())
}

fn cylinder(book: &Rulebook, node: &Node, found: &mut Diagnostics) -> Option<(OnBoard, usize)> {
    let fields = Fields::of(node, &CYLINDER, found)?;
    let size = fields.read("size", found, |node, found| {
        let rules = book.cylinders.iter().map(|one| (&one.rule, Some(&one.also)));
        named("cylinder", rules, node, found).map(CylinderId)
    });
    let pressure = fields.read("pressure", found, pressure);
    let count = fields.maybe("count", found, count);
    Some((OnBoard::new(size?, pressure?), count?.unwrap_or(1)))
}

fn leg(book: &Rulebook, node: &Node, found: &mut Diagnostics) -> Option<Leg> {
    let fields = Fields::of(node, &LEG, found)?;
    let name = fields.read("name", found, fields::plain);
    let time = fields.read("time", found, time);
    let delay = fields.maybe("delay", found, self::time);
    let temperature = fields.maybe("temperature", found, temperature);
    let own = ["device", "flow", "drive-gas"]
        .iter()
        .find_map(|key| fields.get(key).map(|node| (key, node.span)));
    let uses = match (fields.get("patients"), own) {
        (Some(node), None) => counted("patients", MAX_PATIENTS, node, found).and_then(|()| {
            fields::each(node, found, |node, found| {
                let fields = Fields::of(node, &PATIENT, found)?;
                patient(book, &fields, found)
            })
        }),
        (Some(_), Some((key, span))) => {
            found
                .error(
                    "two-ways",
                    span,
                    format!("expected `patients` or `{key}`, found both on one leg"),
                )
                .hint("write each patient's device and flow under `patients`");
            None
        }
        (None, _) => patient(book, &fields, found).map(|one| List::from(vec![one])),
    };
    Some(Leg {
        name: name?.to_owned(),
        time: time?,
        delay: delay?.unwrap_or(Time::ZERO),
        temperature: temperature?,
        uses: uses?.to_vec(),
    })
}

fn patient(book: &Rulebook, fields: &Fields<'_>, found: &mut Diagnostics) -> Option<Use> {
    let device = fields.maybe("device", found, |node, found| {
        let rules = book.devices.iter().map(|one| (&one.rule, Some(&one.also)));
        named("device", rules, node, found).map(DeviceId)
    });
    let flow: Option<Option<Flow>> = fields.maybe("flow", found, fields::quantity);
    let drive_gas: Option<Option<Flow>> = fields.maybe("drive-gas", found, fields::quantity);
    let lacks = match (fields.get("device"), fields.get("flow"), fields.get("drive-gas")) {
        (Some(device), None, None) => Some((device.span, "a device")),
        (None, None, None) => Some((fields.span, "nothing that uses gas")),
        _ => None,
    };
    if let Some((span, what)) = lacks {
        found
            .error(
                "missing-flow",
                span,
                format!("expected a `flow` or a `drive-gas`, found {what} without either"),
            )
            .hint("write `flow: 2 L/min`; where no gas is used, `flow: 0 L/min`");
        return None;
    }
    Some(Use {
        device: device?,
        flow: flow?.unwrap_or(Flow::ZERO),
        drive_gas: drive_gas?.unwrap_or(Flow::ZERO),
    })
}

/// Finds a rule by its id, its name or another of its names.
fn named<'a>(
    what: &str,
    rules: impl Iterator<Item = (&'a Rule, Option<&'a List<Text>>)> + Clone,
    node: &Node,
    found: &mut Diagnostics,
) -> Option<u16> {
    let name = fields::plain(node, found)?;
    let same = |known: &str| known.eq_ignore_ascii_case(name);
    let index = rules
        .clone()
        .position(|(rule, _)| same(&rule.id))
        .or_else(|| rules.clone().position(|(rule, _)| same(&rule.name)))
        .or_else(|| {
            rules
                .clone()
                .position(|(_, also)| also.is_some_and(|also| also.iter().any(|other| same(other))))
        });
    if let Some(index) = index {
        return u16::try_from(index).ok();
    }
    let ids = rules.map(|(rule, _)| &*rule.id);
    let error = found.error(
        "unknown-name",
        node.span,
        format!("expected a {what} of the rulebook, found `{name}`"),
    );
    match nearest(name, ids.clone()) {
        Some(near) => error.hint(format!("did you mean `{near}`?")),
        None => error.hint(format!("the rulebook has {}", super::suggest::listed(ids, "and"))),
    };
    None
}

fn count(node: &Node, found: &mut Diagnostics) -> Option<usize> {
    let text = fields::plain(node, found)?;
    let count = text.parse().ok().filter(|count| {
        (1..=MAX_CYLINDERS).contains(count) && text.bytes().all(|byte| byte.is_ascii_digit())
    });
    if count.is_none() {
        found
            .error(
                "not-a-count",
                node.span,
                format!("expected a whole number from 1 to {MAX_CYLINDERS}, found `{text}`"),
            )
            .hint("write how many cylinders of this size have this reading: `count: 2`");
    }
    count
}

fn time(node: &Node, found: &mut Diagnostics) -> Option<Time> {
    let time: Time = fields::quantity(node, found)?;
    if time.as_minutes() <= LONGEST {
        return Some(time);
    }
    found
        .error(
            "out-of-bounds",
            node.span,
            format!("expected a leg of at most 10 days, found {time}"),
        )
        .hint("split the plan where cylinders are exchanged");
    None
}

fn pressure(node: &Node, found: &mut Diagnostics) -> Option<Pressure<Gauge>> {
    let pressure: Pressure<Gauge> = fields::quantity(node, found)?;
    known(&oxygen::GAUGE_PRESSURE, pressure.as_bar(), node, found).then_some(pressure)
}

fn temperature(node: &Node, found: &mut Diagnostics) -> Option<Temperature> {
    let temperature: Temperature = fields::quantity(node, found)?;
    known(&oxygen::TEMPERATURE, temperature.as_celsius(), node, found).then_some(temperature)
}

/// Whether the density of oxygen is known there.
fn known(bounds: &'static Bounds, value: f64, node: &Node, found: &mut Diagnostics) -> bool {
    match bounds.accept(value) {
        Ok(_) => true,
        Err(missed) => {
            found
                .error("out-of-bounds", node.span, missed.to_string())
                .hint(missed.bounds.reason);
            false
        }
    }
}
