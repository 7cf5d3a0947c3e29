//! The order of steps, as far as `after` forces it.

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, Procedure, Step};
use oxyfolio::procedure::{
    APPLY_RESERVOIR_MASK, CHANGE_OVER_CYLINDER, CHECK_CYLINDER, FIT_REGULATOR, REMOVE_DEVICE, SHUT_DOWN,
};

use super::facts::fact;
use super::support::procedure;

/// Whether a step must be done before another: the transitive closure of `after`.
fn forced(procedure: &Procedure, first: usize, then: usize) -> bool {
    let mut waiting: Vec<usize> = vec![then];
    let mut seen = vec![false; procedure.steps.len()];
    while let Some(step) = waiting.pop() {
        for before in &procedure.steps[step].after {
            let before = before.index();
            if before == first {
                return true;
            }
            if !seen[before] {
                seen[before] = true;
                waiting.push(before);
            }
        }
    }
    false
}

fn places(procedure: &Procedure, action: Action) -> Vec<usize> {
    procedure
        .steps
        .iter()
        .enumerate()
        .filter(|(_, step)| step.action == action)
        .map(|(place, _)| place)
        .collect()
}

/// Whether every step of an action has a step of another action that must come before it.
fn always_before(procedure: &Procedure, first: Action, then: Action) -> bool {
    let firsts = places(procedure, first);
    places(procedure, then)
        .into_iter()
        .all(|then| firsts.iter().any(|first| forced(procedure, *first, then)))
}

fn has(procedure: &Procedure, action: Action) -> bool {
    !places(procedure, action).is_empty()
}

/// Asserts a chain of actions in one procedure, which must have them all.
fn assert_chain(procedure: &Procedure, row: &str, chain: &[Action]) {
    let fact = fact(row);
    for action in chain {
        assert!(
            has(procedure, *action),
            "{} has no step {action}: {fact}",
            procedure.rule.id
        );
    }
    for pair in chain.windows(2) {
        assert!(
            always_before(procedure, pair[0], pair[1]),
            "{}: nothing forces {} before {}: {fact}",
            procedure.rule.id,
            pair[0],
            pair[1]
        );
    }
}

/// Asserts an order in every procedure that has both actions, and that at least `least` procedures have.
fn assert_everywhere(row: &str, first: Action, then: Action, least: usize) {
    let both: Vec<&Procedure> = RULEBOOK
        .procedures
        .iter()
        .filter(|procedure| has(procedure, first) && has(procedure, then))
        .collect();
    assert!(
        both.len() >= least,
        "{} procedures have {first} and {then}: {}",
        both.len(),
        fact(row)
    );
    for procedure in both {
        assert_chain(procedure, row, &[first, then]);
    }
}

fn steps(action: Action) -> impl Iterator<Item = &'static Step> {
    RULEBOOK
        .procedures
        .iter()
        .flat_map(|procedure| procedure.steps.iter())
        .filter(move |step| step.action == action)
}

#[test]
fn shut_down_is_close_bleed_zero_off() {
    assert_chain(
        procedure(SHUT_DOWN),
        "cp-shut-down",
        &[
            Action::CloseCylinder,
            Action::BleedRegulator,
            Action::ZeroFlow,
            Action::RemoveRegulator,
        ],
    );
}

#[test]
fn shut_down_begins_when_the_device_is_off() {
    assert_chain(
        procedure(SHUT_DOWN),
        "cp-off-zero",
        &[Action::RemoveDevice, Action::CloseCylinder],
    );
}

#[test]
fn a_regulator_comes_off_closed_and_bled_in_every_procedure() {
    assert_everywhere("cp-shut-down", Action::CloseCylinder, Action::RemoveRegulator, 2);
    assert_everywhere("cp-shut-down", Action::BleedRegulator, Action::RemoveRegulator, 2);
    assert_everywhere("cp-shut-down", Action::CloseCylinder, Action::BleedRegulator, 4);
    for procedure in RULEBOOK
        .procedures
        .iter()
        .filter(|one| has(one, Action::RemoveRegulator))
    {
        assert!(has(procedure, Action::BleedRegulator), "{}", procedure.rule.id);
    }
}

#[test]
fn a_bleed_is_followed_by_zero_flow() {
    let fact = fact("cp-shut-down");
    for procedure in &RULEBOOK.procedures {
        for bleed in places(procedure, Action::BleedRegulator) {
            assert!(
                places(procedure, Action::ZeroFlow)
                    .iter()
                    .any(|zero| forced(procedure, bleed, *zero)),
                "{}: the flow stays open after the bleed: {fact}",
                procedure.rule.id
            );
        }
    }
}

#[test]
fn the_device_comes_off_before_the_flow_goes_to_zero() {
    assert_chain(
        procedure(REMOVE_DEVICE),
        "cp-off-zero",
        &[Action::RemoveDevice, Action::ZeroFlow],
    );
    assert_everywhere("cp-off-zero", Action::RemoveDevice, Action::ZeroFlow, 3);
}

#[test]
fn the_bag_is_filled_before_the_mask_goes_on() {
    assert_chain(
        procedure(APPLY_RESERVOIR_MASK),
        "step-fill",
        &[Action::SetFlow, Action::FillReservoir, Action::PlaceDevice],
    );
    assert_everywhere("step-fill", Action::FillReservoir, Action::PlaceDevice, 4);
}

#[test]
fn the_flow_is_set_before_the_device_goes_on() {
    assert_everywhere("cp-set-place", Action::SetFlow, Action::PlaceDevice, 6);
}

#[test]
fn the_outlet_is_cleared_before_the_regulator_is_seated() {
    let fit = procedure(FIT_REGULATOR);
    assert_chain(
        fit,
        "step-crack",
        &[Action::InspectOutlet, Action::ClearOutlet, Action::SeatRegulator],
    );
    assert_everywhere("step-crack", Action::ClearOutlet, Action::SeatRegulator, 2);
    for procedure in RULEBOOK
        .procedures
        .iter()
        .filter(|one| has(one, Action::SeatRegulator))
    {
        assert!(
            has(procedure, Action::ClearOutlet),
            "{} seats a regulator and clears no outlet: {}",
            procedure.rule.id,
            fact("step-crack")
        );
    }
}

#[test]
fn the_flow_is_at_zero_before_the_cylinder_is_opened() {
    let fact = fact("cp-zero-open");
    for id in [FIT_REGULATOR, CHANGE_OVER_CYLINDER, CHECK_CYLINDER] {
        assert_chain(
            procedure(id),
            "cp-zero-open",
            &[Action::ZeroFlow, Action::OpenCylinder],
        );
    }
    for procedure in RULEBOOK
        .procedures
        .iter()
        .filter(|one| has(one, Action::OpenCylinder))
    {
        assert!(has(procedure, Action::ZeroFlow), "{}: {fact}", procedure.rule.id);
    }
    for step in steps(Action::OpenCylinder) {
        assert!(
            step.say.to_lowercase().contains("slowly"),
            "`{}`: {fact}",
            step.say
        );
    }
}

#[test]
fn the_regulator_is_seated_and_tight_before_the_cylinder_is_opened() {
    assert_chain(
        procedure(FIT_REGULATOR),
        "step-crack",
        &[
            Action::SeatRegulator,
            Action::TightenRegulator,
            Action::OpenCylinder,
        ],
    );
    assert_everywhere("step-crack", Action::TightenRegulator, Action::OpenCylinder, 3);
}

#[test]
fn the_gauge_is_read_after_opening() {
    assert_everywhere("cp-read-open", Action::OpenCylinder, Action::ReadGauge, 3);
}

#[test]
fn the_gauge_is_read_before_closing_at_the_end() {
    assert_chain(
        procedure(SHUT_DOWN),
        "cp-read-open",
        &[Action::ReadGauge, Action::CloseCylinder],
    );
}

#[test]
fn the_cylinder_is_secured_before_its_valve_is_touched() {
    for (then, least) in [
        (Action::ClearOutlet, 2),
        (Action::OpenCylinder, 3),
        (Action::RemoveRegulator, 2),
    ] {
        assert_everywhere("cp-secure", Action::SecureCylinder, then, least);
    }
    let shut_down = procedure(SHUT_DOWN);
    assert_chain(
        shut_down,
        "cp-secure",
        &[Action::SecureCylinder, Action::CloseCylinder],
    );
}

#[test]
fn a_regulator_is_tightened_by_hand() {
    let fact = fact("fda-gasket");
    assert!(steps(Action::TightenRegulator).count() >= 3, "{fact}");
    for step in steps(Action::TightenRegulator) {
        assert!(step.say.contains(fact.value), "`{}`: {fact}", step.say);
    }
}

#[test]
fn a_yoke_has_one_washer_and_never_two() {
    let fact = fact("cp-one-washer");
    assert!(steps(Action::InspectWasher).count() >= 2, "{fact}");
    for step in steps(Action::InspectWasher) {
        assert!(step.say.contains("Never two"), "`{}`: {fact}", step.say);
    }
    assert_everywhere("cp-one-washer", Action::InspectWasher, Action::SeatRegulator, 2);
}

#[test]
fn a_procedure_that_opens_and_ends_safe_also_closes_and_bleeds() {
    for procedure in RULEBOOK.procedures.iter().filter(|one| one.ends_safe) {
        for open in places(procedure, Action::OpenCylinder) {
            for action in [Action::CloseCylinder, Action::BleedRegulator] {
                assert!(
                    places(procedure, action)
                        .iter()
                        .any(|after| forced(procedure, open, *after)),
                    "{}: nothing forces {action} after opening: {}",
                    procedure.rule.id,
                    fact("cp-shut-down")
                );
            }
        }
    }
}
