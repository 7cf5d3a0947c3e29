//! Walks every order of one procedure, breadth first, with equal states merged.

use std::collections::{BTreeSet, HashMap};

use super::{
    order::{Order, Steps, members, one},
    world::{Scene, World},
};
use crate::book::{Action, DeviceId, HazardId, Procedure};
use crate::equipment::{Refusal, State};

/// The most states looked at in one walk; beyond it the procedure is too loosely ordered to be proved.
pub const MAX_STATES: usize = 1_000_000;

/// What went wrong in a walk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// A `stop` hazard was reached.
    Hazard(HazardId),
    /// An action's precondition didn't hold.
    Refused(Refusal),
    /// All steps were done and the end is not safe.
    UnsafeEnd(&'static str),
    /// There were more states than can be looked at.
    TooManyOrders,
}

/// What a walk found.
pub enum Walked {
    /// Every order is safe; these are the scenes in which the procedure can end.
    Safe(BTreeSet<Scene>),
    /// The shortest order that isn't: its steps, the last of which did it.
    Unsafe(Vec<usize>, Fault),
}

struct Node {
    done: Steps,
    scene: Scene,
    step: usize,
    parent: usize,
}

/// Walks a procedure from one scene. `connects` is the device that a step connects.
pub fn walk(
    procedure: &Procedure,
    order: &Order,
    start: Scene,
    connects: DeviceId,
    world: &mut World<'_>,
) -> Walked {
    let actions: Vec<Action> = procedure.steps.iter().map(|step| step.action).collect();
    // Steps that change nothing can stand anywhere `after` lets them: only their order for others matters, and the
    // order is closed over.
    let matter: Steps = members_of(&actions, State::concerns);
    let before: Vec<Steps> = (0..actions.len())
        .map(|step| order.before(step) & matter)
        .collect();
    let mut nodes = vec![Node {
        done: 0,
        scene: start,
        step: usize::MAX,
        parent: usize::MAX,
    }];
    let mut seen: HashMap<(Steps, Scene), ()> = HashMap::new();
    seen.insert((0, start), ());
    let mut ends = BTreeSet::new();
    let mut at = 0;
    while let Some(node) = nodes.get(at) {
        let (done, scene) = (node.done, node.scene);
        if done == matter {
            if procedure.ends_safe
                && let Some(why) = scene.state.unsafe_end()
            {
                return Walked::Unsafe(path(&nodes, at, None), Fault::UnsafeEnd(why));
            }
            ends.insert(scene);
        }
        for step in members(matter & !done) {
            if before.get(step).is_none_or(|before| before & !done != 0) {
                continue;
            }
            let Some(action) = actions.get(step).copied() else {
                continue;
            };
            let next = match scene.state.after(action) {
                Ok(state) => Scene {
                    state,
                    device: device_after(action, scene.device, connects),
                },
                Err(refusal) => {
                    return Walked::Unsafe(path(&nodes, at, Some(step)), Fault::Refused(refusal));
                }
            };
            if next != scene
                && let Some(hazard) = world.hazard(next)
            {
                return Walked::Unsafe(path(&nodes, at, Some(step)), Fault::Hazard(hazard));
            }
            let done = done | one(step);
            if seen.insert((done, next), ()).is_none() {
                nodes.push(Node {
                    done,
                    scene: next,
                    step,
                    parent: at,
                });
            }
        }
        if nodes.len() > MAX_STATES || !world.spend() {
            return Walked::Unsafe(Vec::new(), Fault::TooManyOrders);
        }
        at += 1;
    }
    Walked::Safe(ends)
}

/// Whether a step can be done in any order at all, going round the steps that are refused.
pub fn ever_possible(
    procedure: &Procedure,
    order: &Order,
    start: Scene,
    connects: DeviceId,
    wanted: usize,
) -> bool {
    let all: Steps = (0..procedure.steps.len()).fold(0, |set, step| set | one(step));
    let mut waiting = vec![(0, start)];
    let mut seen: HashMap<(Steps, Scene), ()> = HashMap::new();
    while let Some((done, scene)) = waiting.pop() {
        for step in members(all & !done) {
            let Some(action) = procedure.steps.get(step).map(|step| step.action) else {
                continue;
            };
            if order.before(step) & !done != 0 {
                continue;
            }
            let Ok(state) = scene.state.after(action) else {
                continue;
            };
            if step == wanted {
                return true;
            }
            let next = (
                done | one(step),
                Scene {
                    state,
                    device: device_after(action, scene.device, connects),
                },
            );
            if seen.insert(next, ()).is_none() {
                waiting.push(next);
            }
        }
        if seen.len() > MAX_STATES {
            // Not known: it is reported as a step that comes too early, which it does.
            return true;
        }
    }
    false
}

fn members_of(actions: &[Action], wanted: impl Fn(Action) -> bool) -> Steps {
    actions
        .iter()
        .enumerate()
        .filter(|(_, action)| wanted(**action))
        .fold(0, |set, (step, _)| set | one(step))
}

const fn device_after(action: Action, device: Option<DeviceId>, connects: DeviceId) -> Option<DeviceId> {
    match action {
        Action::ConnectDevice => Some(connects),
        Action::DisconnectDevice => None,
        _ => device,
    }
}

fn path(nodes: &[Node], end: usize, last: Option<usize>) -> Vec<usize> {
    let mut steps: Vec<usize> = last.into_iter().collect();
    let mut at = end;
    while let Some(node) = nodes.get(at) {
        if node.step != usize::MAX {
            steps.push(node.step);
        }
        at = node.parent;
    }
    steps.reverse();
    steps
}
