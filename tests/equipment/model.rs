//! The whole state space that can come about from put away, under all actions and with gas running out at any time.

use oxyfolio::book::Action;
use oxyfolio::equipment::{Bottle, Regulator, State};

use super::{
    invariants::LAWS,
    states::{Move, changes, reachable, tally},
};

/// How many states can come about, and how many changes there are between them; the page tells them.
pub const STATES: usize = 1_484;
pub const CHANGES: usize = 10_934;

#[test]
fn the_state_space_has_its_size() {
    assert_eq!((reachable().len(), changes().count()), (STATES, CHANGES));
}

#[test]
fn every_law_holds_in_every_state_that_can_come_about() {
    let states = reachable();
    for (says, holds) in LAWS {
        for state in &states {
            assert!(holds(*state), "{says} {state:?}");
        }
    }
}

#[test]
fn every_law_says_something() {
    // Of the states that can be written down each law forbids some that all other laws allow.
    use super::states::{WRITABLE, writable};
    for (place, (says, holds)) in LAWS.iter().enumerate() {
        let alone = (0..WRITABLE).map(writable).any(|state| {
            let others = LAWS.iter().enumerate().filter(|(other, _)| *other != place);
            !holds(state) && others.clone().all(|(_, (_, other))| other(state))
        });
        assert!(alone, "{says}");
    }
}

#[test]
fn every_action_that_concerns_the_equipment_is_done_somewhere() {
    let states = reachable();
    for action in Action::ALL.iter().filter(|action| State::concerns(**action)) {
        assert!(
            states.iter().any(|state| state.after(*action).is_ok()),
            "{action}"
        );
    }
    // And each changes something, but for those that only need.
    let seen = tally(changes().filter_map(|(_, by, _)| match by {
        Move::Does(action) => Some(action.word()),
        Move::RunsOut(_) => None,
    }));
    let still: Vec<&str> = Action::ALL
        .iter()
        .filter(|action| State::concerns(**action) && !seen.contains_key(action.word()))
        .map(|action| action.word())
        .collect();
    assert_eq!(
        still,
        ["check-leaks", "read-gauge", "cap-outlet", "dispose-device"]
    );
}

#[test]
fn pressure_begins_only_by_opening_and_ends_only_by_bleeding_or_running_out() {
    for (was, by, is) in changes() {
        if was.pressurised && !is.pressurised {
            assert!(
                matches!(by, Move::Does(Action::BleedRegulator) | Move::RunsOut(_)),
                "{by:?}"
            );
        }
        if !was.pressurised && is.pressurised {
            assert_eq!(by, Move::Does(Action::OpenCylinder));
        }
    }
}

/// Whether the cylinder in use is another one afterwards.
fn changes_cylinder(was: State, by: Move) -> bool {
    match by {
        Move::Does(Action::FetchCylinder) => was.regulator == Regulator::Off,
        Move::Does(Action::RemoveRegulator) => was.spare.is_some(),
        _ => false,
    }
}

#[test]
fn gas_never_grows_but_by_changing_the_cylinder() {
    let mut emptied = 0;
    for (was, by, is) in changes() {
        if was.cylinder.empty && !is.cylinder.empty {
            assert!(changes_cylinder(was, by), "{by:?} from {was:?}");
        }
        if !was.cylinder.empty && is.cylinder.empty {
            assert!(matches!(by, Move::RunsOut(_)), "{by:?}");
            assert!(was.cylinder.open);
            emptied += 1;
        }
    }
    assert!(emptied > 0);
}

#[test]
fn the_valve_is_moved_only_by_opening_closing_and_changing() {
    for (was, by, is) in changes() {
        match (was.cylinder.open, is.cylinder.open) {
            (false, true) => assert_eq!(by, Move::Does(Action::OpenCylinder)),
            (true, false) => assert!(
                by == Move::Does(Action::CloseCylinder) || changes_cylinder(was, by),
                "{by:?}"
            ),
            _ => {}
        }
    }
}

#[test]
fn no_state_is_a_trap() {
    // From every state that can come about a safe end can be reached by actions alone.
    let states = reachable();
    let mut safe: std::collections::BTreeSet<State> = states
        .iter()
        .copied()
        .filter(|state| state.unsafe_end().is_none())
        .collect();
    let all: Vec<(State, State)> = changes()
        .filter(|(_, by, _)| matches!(by, Move::Does(_)))
        .map(|(was, _, is)| (was, is))
        .collect();
    loop {
        let before = safe.len();
        let more: Vec<State> = all
            .iter()
            .filter(|(was, is)| safe.contains(is) && !safe.contains(was))
            .map(|(was, _)| *was)
            .collect();
        safe.extend(more);
        if safe.len() == before {
            break;
        }
    }
    assert_eq!(safe.len(), states.len(), "no state is a trap");
}

#[test]
fn a_fetched_cylinder_is_closed_held_and_taken_to_hold_gas() {
    let found = State::PUT_AWAY.after(Action::FetchCylinder).unwrap().cylinder;
    let Bottle { open, empty, .. } = found;
    assert!(!open && !empty);
}
