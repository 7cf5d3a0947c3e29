//! Two rules of which a crew can keep only one: a hazard that forbids what a device, a ladder or a target recommends.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    Lint, Room,
    guards::{HAZARD_ALWAYS_FIRES, NOT_DECIDED},
    places::RuleRef,
};
use crate::book::{
    ConditionId, Device, DeviceFlow, DeviceId, Fact, GroupId, GuardOp, Hazard, HazardId, Measure, Operand,
    PolicyId, Rulebook, Saturation, Severity, TargetId, Value,
};
use crate::guard::{Facts, Observed, Truth, evaluate};
use crate::quantity::{Flow, Percent, Pressure, Range, Temperature, Time};

/// A hazard that is there when a crew does what the book recommends.
pub const HAZARD_FORBIDS_RECOMMENDED: Lint = Lint::error("hazard-forbids-recommended");
/// A hazard that is there at a saturation the book aims at.
pub const TARGET_FORBIDDEN: Lint = Lint::error("target-forbidden");
/// A flow policy about a device that the device can't have.
pub const POLICY_OUTSIDE_DEVICE: Lint = Lint::error("policy-outside-device");

pub fn look(room: &mut Room<'_>) {
    recommended(room);
    policies(room);
}

/// What the book recommends: a device at a flow for a group, perhaps for a condition and a saturation.
struct Advice {
    of: RuleRef,
    key: Key,
    set: DeviceFlow,
    group: GroupId,
    conditions: Vec<ConditionId>,
    target: Option<Range<Percent>>,
}

/// Where it is recommended.
#[derive(Clone, Copy, PartialEq)]
enum Key {
    Usual,
    Start,
    UrgentStart,
    Rung(usize),
}

fn advice(book: &Rulebook) -> Vec<Advice> {
    let mut all = Vec::new();
    for (id, device) in (0_u16..)
        .zip(&book.devices)
        .map(|(index, device)| (DeviceId(index), device))
    {
        for group in &device.fits {
            all.push(Advice {
                of: id.into(),
                key: Key::Usual,
                set: DeviceFlow {
                    device: id,
                    flow: device.usual_for(*group),
                },
                group: *group,
                conditions: Vec::new(),
                target: None,
            });
        }
    }
    for (index, target) in (0_u16..).zip(&book.targets) {
        let rungs = target
            .ladder
            .iter()
            .enumerate()
            .map(|(index, rung)| (Key::Rung(index), *rung));
        let starts = [
            Some((Key::Start, target.start)),
            target.urgent.map(|urgent| (Key::UrgentStart, urgent.start)),
        ];
        for (key, set) in starts.into_iter().flatten().chain(rungs) {
            for group in &target.groups {
                all.push(Advice {
                    of: TargetId(index).into(),
                    key,
                    set,
                    group: *group,
                    conditions: target.condition.into_iter().collect(),
                    target: match target.saturation {
                        // At an urgent start the saturation is low, and hazards say so.
                        Saturation::Range(range) if key != Key::UrgentStart => Some(range),
                        _ => None,
                    },
                });
            }
        }
    }
    all
}

/// A set-up with everything in order: only what the book recommends is still open.
fn in_order(book: &Rulebook) -> Observed<'static> {
    let facts = Fact::ALL.iter().fold(Facts::default(), |facts, fact| match fact {
        Fact::DeviceOnPatient
        | Fact::ReservoirFilled
        | Fact::CylinderOpen
        | Fact::CylinderSecured
        | Fact::OutletClear
        | Fact::WasherFitted
        | Fact::RegulatorSeated
        | Fact::RegulatorPressurised => facts.with(*fact, true),
        Fact::CylinderStandingFree | Fact::FlameNear | Fact::GreaseNear => facts.with(*fact, false),
        // Either will do.
        _ => facts,
    });
    let full = book
        .cylinders
        .iter()
        .map(|cylinder| cylinder.contents.at.as_pascals());
    let range = book.policies.use_temperature;
    let middle = f64::midpoint(
        range.low.value().map_or(0.0, Temperature::as_celsius),
        range.high.value().map_or(40.0, Temperature::as_celsius),
    );
    Observed {
        pressure: Some(Pressure::tabled(full.fold(0.0, f64::max))),
        temperature: Temperature::celsius(middle).ok(),
        minutes_left: Time::minutes(24.0 * 60.0).ok(),
        minutes_wanted: Time::minutes(60.0).ok(),
        facts,
        ..Observed::default()
    }
}

/// All that is recommended, and where each device and each condition stands in it.
struct Advised {
    all: Vec<Advice>,
    by_device: BTreeMap<DeviceId, Vec<usize>>,
    by_condition: BTreeMap<ConditionId, Vec<usize>>,
    /// A set-up with everything in order.
    base: Observed<'static>,
}

impl Advised {
    fn of(book: &Rulebook) -> Self {
        let all = advice(book);
        let mut by_device: BTreeMap<_, Vec<usize>> = BTreeMap::new();
        let mut by_condition: BTreeMap<_, Vec<usize>> = BTreeMap::new();
        for (index, advice) in all.iter().enumerate() {
            by_device.entry(advice.set.device).or_default().push(index);
            for condition in &advice.conditions {
                by_condition.entry(*condition).or_default().push(index);
            }
        }
        Self {
            all,
            by_device,
            by_condition,
            base: in_order(book),
        }
    }

    /// What a hazard may concern. In a long book most hazards speak of one device or one condition, and only what is
    /// recommended with those has to be tried.
    fn concerned(&self, book: &Rulebook, hazard: &Hazard) -> Vec<usize> {
        let cannot_be = |observed: Observed<'_>| evaluate(&hazard.never, book, &observed) == Truth::False;
        let (mut devices, mut conditions) = (BTreeSet::new(), BTreeSet::new());
        for op in &hazard.never.ops {
            match op {
                GuardOp::DeviceIs(id) => {
                    devices.insert(*id);
                }
                GuardOp::HasCondition(id) => {
                    conditions.insert(*id);
                }
                _ => {}
            }
        }
        let places: BTreeSet<usize> = if !conditions.is_empty()
            && cannot_be(Observed {
                conditions: Some(&[]),
                ..self.base
            }) {
            let own = conditions.iter().filter_map(|id| self.by_condition.get(id));
            own.flatten().copied().collect()
        } else if !devices.is_empty()
            // With the flow unknown, devices that aren't named differ in their reservoirs only.
            && [true, false].into_iter().all(|reservoir| {
                let other = (0_u16..).zip(&book.devices).find(|(index, device)| {
                    device.reservoir == reservoir && !devices.contains(&DeviceId(*index))
                });
                other.is_none_or(|(index, _)| {
                    cannot_be(Observed {
                        device: Some(DeviceId(index)),
                        ..self.base
                    })
                })
            })
        {
            let own = devices.iter().filter_map(|id| self.by_device.get(id));
            own.flatten().copied().collect()
        } else {
            return (0..self.all.len()).collect();
        };
        places.into_iter().collect()
    }
}

fn recommended(room: &mut Room<'_>) {
    let book = room.book;
    let advised = Advised::of(book);
    // A hazard that is always there forbids everything; that was said once.
    let always = room
        .findings
        .iter()
        .filter(|finding| finding.diagnostic.code == HAZARD_ALWAYS_FIRES.name);
    let always: BTreeSet<RuleRef> = always
        .flat_map(|finding| finding.owners.iter().copied())
        .collect();
    for (index, hazard) in (0_u16..).zip(&book.hazards) {
        let id = HazardId(index);
        if always.contains(&id.into())
            || hazard.severity < Severity::Warn
            || evaluate(&hazard.never, book, &advised.base) == Truth::False
        {
            continue;
        }
        if !against(room, id, hazard, &advised) {
            let at = room.places.value(id.into(), "never");
            room.find(
                NOT_DECIDED,
                &[id.into()],
                at,
                "the book is too long to try this hazard against all it recommends",
            )
            .hint("nothing is wrong: this was not looked at");
        }
    }
}

/// Tries one hazard against what is recommended; gives whether there was time for all of it.
fn against(room: &mut Room<'_>, id: HazardId, hazard: &Hazard, advised: &Advised) -> bool {
    let book = room.book;
    let mut reported: Option<(RuleRef, Lint)> = None;
    for advice in advised
        .concerned(book, hazard)
        .into_iter()
        .filter_map(|index| advised.all.get(index))
    {
        if room.evaluations == 0 {
            return false;
        }
        let observed = Observed {
            flow: Some(advice.set.flow),
            device: Some(advice.set.device),
            group: Some(advice.group),
            conditions: Some(&advice.conditions),
            target: advice.target,
            ..advised.base
        };
        let mut there = |spo2: Option<Percent>| {
            room.evaluations = room.evaluations.saturating_sub(1);
            evaluate(&hazard.never, book, &Observed { spo2, ..observed })
        };
        let lint = match there(None) {
            Truth::False => continue,
            Truth::True => HAZARD_FORBIDS_RECOMMENDED,
            Truth::Unknown if aimed_at(advice.target).any(|spo2| there(Some(spo2)) == Truth::True) => {
                TARGET_FORBIDDEN
            }
            Truth::Unknown => continue,
        };
        // One finding for a rule is enough: its other groups and rungs say the same.
        if reported != Some((advice.of, lint)) {
            report(room, lint, id, advice);
        }
        reported = Some((advice.of, lint));
    }
    true
}

/// The ends and the middle of a target.
fn aimed_at(target: Option<Range<Percent>>) -> impl Iterator<Item = Percent> {
    target.into_iter().flat_map(|range| {
        let low = range.low.value().map_or(0.0, Percent::as_percent);
        let high = range.high.value().map_or(100.0, Percent::as_percent);
        [low, f64::midpoint(low, high), high].map(Percent::tabled)
    })
}

fn report(room: &mut Room<'_>, lint: Lint, hazard: HazardId, advice: &Advice) {
    let book = room.book;
    let at = room.places.value(hazard.into(), "never");
    let group = book.group(advice.group).map_or("", |group| &*group.rule.id);
    let device = book
        .device(advice.set.device)
        .map_or("", |device| &*device.rule.id);
    if lint == TARGET_FORBIDDEN {
        let other = room.places.value(advice.of, "saturation");
        room.find(
            lint,
            &[hazard.into(), advice.of],
            at,
            "expected a hazard that is not there in the target, found one that is",
        )
        .label(other, format!("the target of the group `{group}`"))
        .hint("a crew can't keep both: change the numbers of one, or leave the group out of the hazard");
        return;
    }
    let (other, words) = match advice.key {
        Key::Usual => (
            room.places.for_group(advice.of, ("usual-for", "usual"), group),
            "the usual flow",
        ),
        Key::Start => (room.places.value(advice.of, "start"), "the start"),
        Key::UrgentStart => (room.places.value(advice.of, "urgent-start"), "the urgent start"),
        Key::Rung(index) => (room.places.item(advice.of, "ladder", index), "a rung"),
    };
    room.find(
        lint,
        &[hazard.into(), advice.of],
        at,
        format!(
            "this forbids what the book recommends: `{device} at {}` for the group `{group}`",
            advice.set.flow
        ),
    )
    .label(other, words)
    .hint("a crew can't keep both: change one of the numbers, or say in the hazard what it leaves out");
}

/// A flow policy that a hazard compares with the flow of one device lies within what that device can have.
fn policies(room: &mut Room<'_>) {
    let book = room.book;
    for (index, hazard) in (0_u16..).zip(&book.hazards) {
        let compared = hazard.never.ops.iter().filter_map(|op| match op {
            GuardOp::Compare(Measure::Flow, _, Operand::Policy(id)) => Some(*id),
            _ => None,
        });
        let compared: Vec<PolicyId> = compared.collect();
        if compared.is_empty() {
            continue;
        }
        for device in devices_spoken_of(hazard) {
            for policy in &compared {
                outside(room, HazardId(index), device, *policy);
            }
        }
    }
}

/// The devices a guard asks for, and not those it leaves out.
fn devices_spoken_of(hazard: &Hazard) -> Vec<DeviceId> {
    let mut stack: Vec<Vec<(DeviceId, bool)>> = Vec::new();
    for op in &hazard.never.ops {
        match op {
            GuardOp::DeviceIs(id) => stack.push(vec![(*id, true)]),
            GuardOp::Not => {
                for (_, wanted) in stack.last_mut().into_iter().flatten() {
                    *wanted = !*wanted;
                }
            }
            GuardOp::And | GuardOp::Or => {
                let top = stack.pop().unwrap_or_default();
                if let Some(below) = stack.last_mut() {
                    below.extend(top);
                }
            }
            _ => stack.push(Vec::new()),
        }
    }
    let spoken = stack.into_iter().flatten().filter(|(_, wanted)| *wanted);
    spoken.map(|(id, _)| id).collect()
}

fn outside(room: &mut Room<'_>, hazard: HazardId, device_id: DeviceId, policy_id: PolicyId) {
    let book = room.book;
    let (Some(device), Some(policy)) = (book.device(device_id), book.policy(policy_id)) else {
        return;
    };
    let Value::Flow(flow) = policy.value else {
        return;
    };
    let (least, most) = limits(device);
    let number = flow.as_litres_per_minute();
    if (least..=most).contains(&number) {
        return;
    }
    let at = room.places.value(policy_id.into(), "value");
    let other = room.places.value(device_id.into(), "flow");
    let used = room.places.value(hazard.into(), "never");
    room.find(
        POLICY_OUTSIDE_DEVICE,
        &[policy_id.into(), hazard.into(), device_id.into()],
        at,
        format!(
            "expected a flow that `{}` can have, {}, found {flow}",
            device.rule.id, device.flow
        ),
    )
    .label(other, "the device's limits")
    .label(used, "the two are compared here")
    .hint("change the policy or the device's range: one of them is wrong");
}

/// The least and most flow in any group.
fn limits(device: &Device) -> (f64, f64) {
    let ranges = core::iter::once(device.flow).chain(device.group_flows.iter().map(|limits| limits.flow));
    ranges.fold((f64::INFINITY, 0.0), |(least, most), range| {
        let low = range.low.value().map_or(0.0, Flow::as_litres_per_minute);
        let high = range
            .high
            .value()
            .map_or(f64::INFINITY, Flow::as_litres_per_minute);
        (least.min(low), f64::max(most, high))
    })
}
