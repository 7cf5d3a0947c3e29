//! What steps are said to prevent, against the equipment model: the written order is played without the step.

use std::collections::BTreeSet;

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, DeviceId, HazardId, Procedure};
use oxyfolio::compile::proof::{Scene, World};
use oxyfolio::equipment::State;

fn device(procedure: &Procedure) -> DeviceId {
    let usual = RULEBOOK.find_device("non-rebreather").unwrap();
    procedure.devices.last().copied().unwrap_or(usual)
}

/// Plays the steps as written, but one, up to the first that the equipment refuses: the hazards of each state.
fn play(
    procedure: &Procedure,
    mut scene: Scene,
    without: Option<usize>,
    world: &World<'_>,
) -> (Scene, Vec<BTreeSet<u16>>) {
    let mut found = Vec::new();
    for (index, step) in procedure.steps.iter().enumerate() {
        if Some(index) == without {
            continue;
        }
        let Ok(state) = scene.state.after(step.action) else {
            break;
        };
        scene.state = state;
        match step.action {
            Action::ConnectDevice => scene.device = Some(device(procedure)),
            Action::DisconnectDevice => scene.device = None,
            _ => {}
        }
        found.push(world.all_hazards(scene).iter().map(|HazardId(id)| *id).collect());
    }
    (scene, found)
}

/// As the first procedure that it follows ends, played as written.
fn beginning(procedure: &Procedure, world: &World<'_>) -> Scene {
    match procedure.follows.first().and_then(|id| RULEBOOK.procedure(*id)) {
        Some(before) => play(before, beginning(before, world), None, world).0,
        None => {
            let state = State::beginning(&procedure.begins_with);
            Scene { state, device: None }
        }
    }
}

#[test]
fn what_a_critical_step_left_out_leads_to_is_what_it_is_said_to_prevent() {
    let world = World::new(&RULEBOOK);
    let (mut led, mut missing) = (0, Vec::new());
    for procedure in &RULEBOOK.procedures {
        let start = beginning(procedure, &world);
        let always: BTreeSet<u16> = play(procedure, start, None, &world)
            .1
            .into_iter()
            .flatten()
            .collect();
        for (index, step) in procedure.steps.iter().enumerate() {
            if !step.critical {
                continue;
            }
            let (_, states) = play(procedure, start, Some(index), &world);
            // Where it first goes wrong, one of the hazards there is the one that the step names; others may come of it.
            let first = states
                .iter()
                .map(|found| found.difference(&always).copied().collect::<Vec<u16>>())
                .find(|new| !new.is_empty());
            let Some(new) = first else {
                continue;
            };
            led += 1;
            if !new
                .iter()
                .any(|hazard| step.prevents.contains(&HazardId(*hazard)))
            {
                let names: Vec<&str> = new
                    .iter()
                    .map(|id| &*RULEBOOK.hazard(HazardId(*id)).unwrap().rule.id)
                    .collect();
                missing.push(format!("{} {}: {names:?}", procedure.rule.id, step.id));
            }
        }
    }
    assert!(led > 5, "the model sees some of it: {led}");
    assert!(missing.is_empty(), "{missing:#?}");
}

#[test]
fn only_critical_steps_are_said_to_prevent_a_hazard_and_none_names_one_twice() {
    for procedure in &RULEBOOK.procedures {
        for step in &procedure.steps {
            let ids: BTreeSet<u16> = step.prevents.iter().map(|HazardId(id)| *id).collect();
            assert_eq!(
                ids.len(),
                step.prevents.len(),
                "{} {}",
                procedure.rule.id,
                step.id
            );
            assert!(
                step.critical || ids.is_empty(),
                "{} {}",
                procedure.rule.id,
                step.id
            );
        }
    }
}
