//! What a hazard can observe of the equipment model, and which devices stand for all.

use std::collections::{BTreeMap, BTreeSet};

use crate::book::{
    DeviceId, Fact, GroupId, GuardOp, Hazard, HazardId, Measure, Operand, Procedure, Rulebook, Severity,
    Value,
};
use crate::equipment::State;
use crate::guard::{Facts, Observed, Truth, evaluate};
use crate::quantity::Flow;

/// The equipment, and which device is on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Scene {
    /// The equipment.
    pub state: State,
    /// The device, while one is connected.
    pub device: Option<DeviceId>,
}

/// The rulebook's `stop` hazards, asked of scenes; each scene is asked once.
#[derive(Debug)]
pub struct World<'b> {
    book: &'b Rulebook,
    stops: Vec<(HazardId, &'b Hazard)>,
    asked: BTreeMap<Scene, Option<HazardId>>,
    /// The devices that a `stop` hazard names.
    named: BTreeSet<DeviceId>,
    /// The groups that a `stop` hazard names.
    named_groups: BTreeSet<GroupId>,
    /// Whether a `stop` hazard compares the flow with more than nothing.
    flow_matters: bool,
    /// One of each kind of device in the whole book.
    unlike: Vec<DeviceId>,
    /// How many more states may be looked at in the whole book.
    left: usize,
}

/// What tells one device from another.
type Likeness = (bool, Option<DeviceId>, Vec<(Option<GroupId>, u64)>);

/// The most states looked at in all procedures of a book together.
const MAX_STATES_IN_A_BOOK: usize = 3_000_000;

impl<'b> World<'b> {
    /// A rulebook's world.
    #[must_use]
    pub fn new(book: &'b Rulebook) -> Self {
        let stops: Vec<(HazardId, &Hazard)> = book
            .hazards
            .iter()
            .zip(0_u16..)
            .filter(|(hazard, _)| hazard.severity == Severity::Stop)
            .map(|(hazard, index)| (HazardId(index), hazard))
            .collect();
        let ops = stops.iter().flat_map(|(_, hazard)| &hazard.never.ops);
        let named = ops
            .filter_map(|op| match op {
                GuardOp::DeviceIs(device) => Some(*device),
                _ => None,
            })
            .collect();
        let ops = || stops.iter().flat_map(|(_, hazard)| &hazard.never.ops);
        let named_groups = ops()
            .filter_map(|op| match op {
                GuardOp::GroupIs(group) => Some(*group),
                _ => None,
            })
            .collect();
        let flow_matters = ops().any(|op| match op {
            GuardOp::Compare(Measure::Flow, _, Operand::Value(Value::Flow(flow))) => *flow != Flow::ZERO,
            // A usual flow lies within its own device's and group's limits whatever it is.
            GuardOp::Compare(Measure::Flow, _, Operand::DeviceLeastFlow | Operand::DeviceMostFlow) => false,
            GuardOp::Compare(Measure::Flow, ..) | GuardOp::Within(Measure::Flow, _) => true,
            _ => false,
        });
        let mut world = Self {
            book,
            stops,
            asked: BTreeMap::new(),
            named,
            named_groups,
            flow_matters,
            unlike: Vec::new(),
            left: MAX_STATES_IN_A_BOOK,
        };
        let all: Vec<DeviceId> = (0_u16..)
            .zip(&book.devices)
            .map(|(index, _)| DeviceId(index))
            .collect();
        world.unlike = world.unlike_of(&all);
        world
    }

    /// Takes one state off what may be looked at; `false` when nothing is left.
    pub fn spend(&mut self) -> bool {
        let some = self.left > 0;
        self.left = self.left.saturating_sub(1);
        some
    }

    /// The first `stop` hazard that is surely there. What the model doesn't tell is unknown and counts as not there:
    /// it doesn't depend on the order of steps.
    pub fn hazard(&mut self, scene: Scene) -> Option<HazardId> {
        if let Some(known) = self.asked.get(&scene) {
            return *known;
        }
        // For every patient the device fits: a hazard for one group is a hazard, and an exception for one doesn't help
        // the others.
        let found = self.groups_for(scene).into_iter().find_map(|group| {
            let observed = self.observed(scene, group);
            self.stops
                .iter()
                .find(|(_, hazard)| evaluate(&hazard.never, self.book, &observed) == Truth::True)
                .map(|(id, _)| *id)
        });
        self.asked.insert(scene, found);
        found
    }

    /// Every hazard of the book that is surely there, for a patient no hazard makes an exception for.
    #[must_use]
    pub fn all_hazards(&self, scene: Scene) -> Vec<HazardId> {
        let device = scene.device.and_then(|id| self.book.device(id));
        let group = device.and_then(|device| self.group_for(&device.fits));
        let observed = self.observed(scene, group);
        (0_u16..)
            .zip(&self.book.hazards)
            .filter(|(_, hazard)| evaluate(&hazard.never, self.book, &observed) == Truth::True)
            .map(|(index, _)| HazardId(index))
            .collect()
    }

    fn groups_for(&self, scene: Scene) -> Vec<Option<GroupId>> {
        match scene.device.and_then(|id| self.book.device(id)) {
            Some(device) if !device.fits.is_empty() => device.fits.iter().copied().map(Some).collect(),
            _ => (0_u16..)
                .zip(&self.book.groups)
                .map(|(index, _)| Some(GroupId(index)))
                .collect(),
        }
    }

    fn observed(&self, scene: Scene, group: Option<GroupId>) -> Observed<'static> {
        let device = scene.device.and_then(|id| self.book.device(id));
        // A flow that is on is the usual one: whether a flow is right is the set-up check's question.
        let usual = device.map(|device| group.map_or(device.usual, |group| device.usual_for(group)));
        let flow = if scene.state.flow_on {
            usual
        } else {
            Some(Flow::ZERO)
        };
        let mut facts = Facts::default();
        for fact in Fact::ALL {
            if let Some(holds) = scene.state.fact(*fact) {
                facts = facts.with(*fact, holds);
            }
        }
        Observed {
            flow,
            device: scene.device,
            group,
            facts,
            ..Observed::default()
        }
    }

    /// The group for which a case is played: the first that the device fits and no `stop` hazard names.
    fn group_for(&self, fits: &[GroupId]) -> Option<GroupId> {
        let named = |group: GroupId| {
            self.stops
                .iter()
                .any(|(_, hazard)| hazard.never.ops.contains(&GuardOp::GroupIs(group)))
        };
        fits.iter()
            .copied()
            .find(|group| !named(*group))
            .or_else(|| fits.first().copied())
    }

    /// The devices for which a procedure is walked. Devices between which no `stop` hazard can tell the difference are
    /// walked once.
    #[must_use]
    pub fn devices_for(&self, procedure: &Procedure) -> Vec<DeviceId> {
        if procedure.devices.is_empty() {
            return self.unlike.clone();
        }
        self.unlike_of(&procedure.devices)
    }

    /// One device of each kind that the hazards can tell apart.
    fn unlike_of(&self, devices: &[DeviceId]) -> Vec<DeviceId> {
        let mut seen: BTreeSet<Likeness> = BTreeSet::new();
        devices
            .iter()
            .copied()
            .filter(|id| seen.insert(self.likeness(*id)))
            .collect()
    }

    /// What the hazards can tell of a device: whether it has a reservoir, which it is if one of them names it, the groups
    /// they name that it fits and whether it fits others, and its usual flows where a hazard asks for more than none.
    fn likeness(&self, id: DeviceId) -> Likeness {
        let device = self.book.device(id);
        let mut by_group: Vec<(Option<GroupId>, u64)> = Vec::new();
        for group in device.map_or(&[][..], |device| &device.fits) {
            let flow = device.map_or(0.0, |device| device.usual_for(*group).as_litres_per_minute());
            by_group.push((
                self.named_groups.contains(group).then_some(*group),
                if self.flow_matters { flow.to_bits() } else { 0 },
            ));
        }
        by_group.sort_unstable();
        by_group.dedup();
        (
            device.is_some_and(|device| device.reservoir),
            self.named.contains(&id).then_some(id),
            by_group,
        )
    }
}
