//! All procedures, each begun in every scene in which one it follows can end.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    order::{MAX_STEPS, Order, members},
    relying,
    walk::{Fault, Walked, ever_possible, walk},
    world::{Scene, World},
};
use crate::book::{DeviceId, HazardId, Procedure, ProcedureId, Rulebook, StepId};
use crate::equipment::State;

/// An order that a procedure allows and that isn't safe.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unsafe {
    /// The procedure.
    pub procedure: ProcedureId,
    /// The procedure it was begun after, where it matters.
    pub follows: Option<ProcedureId>,
    /// The device with which it was walked, where a device is on.
    pub device: Option<DeviceId>,
    /// What the equipment was like before the first step; none where the order alone shows what is wrong.
    pub begun: Option<State>,
    /// The steps in the order that shows it; the last one did it.
    pub steps: Vec<StepId>,
    /// What is wrong.
    pub wrong: Wrong,
    /// The pair that would forbid it: the first step is to be `after` the second.
    pub forbid: Option<(StepId, StepId)>,
}

/// What is wrong with an order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wrong {
    /// A `stop` hazard is reached.
    Hazard(HazardId),
    /// The last step can't or mustn't be done then.
    Refused(String),
    /// The last step can't be done in any order.
    NeverPossible(String),
    /// The procedure promises a safe end and ends otherwise.
    UnsafeEnd(&'static str),
    /// The last step comes before a step it relies on.
    TooEarly(StepId),
    /// It begins in a state that a `stop` hazard forbids.
    BeginsWith(HazardId),
    /// It begins only after procedures that never begin.
    NeverBegins,
    /// There are too many orders to look at all.
    TooManyOrders,
    /// There are more steps than can be proved.
    TooManySteps,
}

/// Every procedure's shortest unsafe order, and every step that can come before one it relies on.
pub fn unsafe_orders(book: &Rulebook) -> Vec<Unsafe> {
    let mut found = Vec::new();
    for (id, procedure) in procedures(book) {
        match Order::new(procedure, None) {
            None => found.push(Unsafe {
                procedure: id,
                follows: None,
                device: None,
                begun: None,
                steps: Vec::new(),
                wrong: Wrong::TooManySteps,
                forbid: None,
            }),
            Some(order) => {
                for early in relying::too_early(procedure, &order) {
                    let mut steps: Vec<StepId> =
                        members(order.before(early.step) & !super::order::one(early.on))
                            .map(step_id)
                            .collect();
                    steps.push(step_id(early.step));
                    found.push(Unsafe {
                        procedure: id,
                        follows: None,
                        device: None,
                        begun: None,
                        steps,
                        wrong: Wrong::TooEarly(step_id(early.on)),
                        forbid: Some((step_id(early.step), step_id(early.on))),
                    });
                }
            }
        }
    }
    found.extend(walk_all(book));
    found.sort_by_key(|one| (one.procedure, one.steps.last().copied(), one.steps.len()));
    found
}

/// The `after` lines that say what others already say: the step, and the step it names needlessly.
#[must_use]
pub fn redundant(procedure: &Procedure) -> Vec<(StepId, StepId)> {
    let Some(order) = Order::new(procedure, None) else {
        return Vec::new();
    };
    let mut found = Vec::new();
    for (index, step) in procedure.steps.iter().enumerate() {
        for named in &step.after {
            let through_another = step
                .after
                .iter()
                .any(|other| other != named && order.is_before(usize::from(named.0), usize::from(other.0)));
            if through_another {
                found.push((step_id(index), *named));
            }
        }
    }
    found
}

fn procedures(book: &Rulebook) -> impl Iterator<Item = (ProcedureId, &Procedure)> {
    (0_u16..).map(ProcedureId).zip(&book.procedures)
}

/// Steps of a proved procedure number at most [`MAX_STEPS`].
fn step_id(step: usize) -> StepId {
    StepId(u16::try_from(step.min(MAX_STEPS)).unwrap_or(u16::MAX))
}

/// The walk of every procedure from every scene it can begin in; scenes are passed on until there are no new ones.
fn walk_all(book: &Rulebook) -> Vec<Unsafe> {
    let mut world = World::new(book);
    let mut begun: BTreeSet<(ProcedureId, Scene)> = BTreeSet::new();
    let mut waiting: Vec<(ProcedureId, Scene, Option<ProcedureId>)> = Vec::new();
    let mut unsafe_ones: BTreeMap<ProcedureId, Unsafe> = BTreeMap::new();
    for (id, procedure) in procedures(book) {
        if procedure.follows.is_empty() || !procedure.begins_with.is_empty() {
            for scene in first_scenes(procedure, &world) {
                if let Some(hazard) = world.hazard(scene) {
                    unsafe_ones.entry(id).or_insert_with(|| Unsafe {
                        procedure: id,
                        follows: None,
                        device: scene.device,
                        begun: Some(scene.state),
                        steps: Vec::new(),
                        wrong: Wrong::BeginsWith(hazard),
                        forbid: None,
                    });
                }
                waiting.push((id, scene, None));
            }
        }
    }
    while let Some((id, scene, follows)) = waiting.pop() {
        if !begun.insert((id, scene)) || unsafe_ones.contains_key(&id) {
            continue;
        }
        let Some(procedure) = book.procedure(id) else {
            continue;
        };
        let Some(order) = Order::new(procedure, None) else {
            continue;
        };
        for connects in world.devices_for(procedure) {
            match walk(procedure, &order, scene, connects, &mut world) {
                Walked::Safe(ends) => {
                    for (next, _) in procedures(book).filter(|(_, next)| next.follows.contains(&id)) {
                        waiting.extend(ends.iter().map(|end| (next, *end, Some(id))));
                    }
                }
                Walked::Unsafe(steps, fault) => {
                    let forbid = forbid(procedure, scene, connects, &steps, &mut world);
                    let shown = with_all_before(&order, &steps);
                    let one = Unsafe {
                        procedure: id,
                        follows,
                        device: scene.device.or(Some(connects)),
                        begun: Some(scene.state),
                        steps: shown.into_iter().map(step_id).collect(),
                        wrong: match fault {
                            Fault::Hazard(hazard) => Wrong::Hazard(hazard),
                            Fault::Refused(refusal) => {
                                let last = steps.last().copied().unwrap_or_default();
                                if ever_possible(procedure, &order, scene, connects, last) {
                                    Wrong::Refused(refusal.to_string())
                                } else {
                                    Wrong::NeverPossible(refusal.to_string())
                                }
                            }
                            Fault::UnsafeEnd(why) => Wrong::UnsafeEnd(why),
                            Fault::TooManyOrders => Wrong::TooManyOrders,
                        },
                        forbid: forbid.map(|(later, earlier)| (step_id(later), step_id(earlier))),
                    };
                    unsafe_ones.insert(id, one);
                    break;
                }
            }
        }
    }
    let begun: BTreeSet<ProcedureId> = begun.into_iter().map(|(id, _)| id).collect();
    for (id, _) in procedures(book) {
        if !begun.contains(&id) && follows_itself(book, id) {
            unsafe_ones.entry(id).or_insert_with(|| Unsafe {
                procedure: id,
                follows: None,
                device: None,
                begun: None,
                steps: Vec::new(),
                wrong: Wrong::NeverBegins,
                forbid: None,
            });
        }
    }
    unsafe_ones.into_values().collect()
}

/// Whether a procedure comes after itself, directly or through others.
fn follows_itself(book: &Rulebook, id: ProcedureId) -> bool {
    let followed = |id: ProcedureId| book.procedure(id).map_or(&[][..], |procedure| &procedure.follows);
    let mut waiting: Vec<ProcedureId> = followed(id).to_vec();
    let mut seen = BTreeSet::new();
    while let Some(next) = waiting.pop() {
        if next == id {
            return true;
        }
        if seen.insert(next) {
            waiting.extend(followed(next));
        }
    }
    false
}

/// The scenes in which a procedure begins when it comes after none: with a device connected, one for each device.
fn first_scenes(procedure: &Procedure, world: &World<'_>) -> Vec<Scene> {
    let first = first_scene(procedure);
    if !first.state.device_connected {
        return vec![first];
    }
    let devices = world.devices_for(procedure);
    devices
        .into_iter()
        .map(|device| Scene {
            device: Some(device),
            ..first
        })
        .collect()
}

fn first_scene(procedure: &Procedure) -> Scene {
    let state = State::beginning(&procedure.begins_with);
    Scene { state, device: None }
}

/// The walked steps with those in between that change nothing but must come before.
fn with_all_before(order: &Order, steps: &[usize]) -> Vec<usize> {
    let mut shown: Vec<usize> = Vec::new();
    for &step in steps {
        for earlier in members(order.before(step)) {
            if !shown.contains(&earlier) && !steps.contains(&earlier) {
                shown.push(earlier);
            }
        }
        shown.push(step);
    }
    shown
}

/// The first pair of steps whose order would forbid the fault, where one pair is enough.
fn forbid(
    procedure: &Procedure,
    scene: Scene,
    connects: DeviceId,
    steps: &[usize],
    world: &mut World<'_>,
) -> Option<(usize, usize)> {
    let order = Order::new(procedure, None)?;
    let place = |step: usize| steps.iter().position(|done| *done == step);
    let mut half = None;
    // The step that did it is looked at first, then those before it.
    for &later in steps.iter().rev() {
        for earlier in 0..procedure.steps.len() {
            let wrong_way_round = place(earlier).is_none_or(|at| Some(at) > place(later));
            if earlier == later || !wrong_way_round || order.are_ordered(earlier, later) {
                continue;
            }
            let Some(more) = Order::new(procedure, Some((later, earlier))) else {
                continue;
            };
            match walk(procedure, &more, scene, connects, world) {
                Walked::Safe(_) => return Some((later, earlier)),
                Walked::Unsafe(other, _) if other != steps && other.last() != steps.last() => {
                    half = half.or(Some((later, earlier)));
                }
                Walked::Unsafe(..) => {}
            }
        }
    }
    half
}
