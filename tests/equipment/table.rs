//! The table against the transitions written by hand.

use oxyfolio::book::{Action, Fact};
use oxyfolio::equipment::{Known, State};

use super::{
    second,
    states::{WRITABLE, writable},
};

#[test]
fn every_action_from_every_state_is_what_a_second_hand_wrote() {
    let mut refused = 0_u32;
    for state in (0..WRITABLE).map(writable) {
        for action in Action::ALL {
            let found = state.after(*action).map_err(|refusal| refusal.words());
            assert_eq!(found, second::after(state, *action), "{action} in {state:?}");
            refused += u32::from(found.is_err());
        }
    }
    assert!(refused > 100_000, "refusals were seen");
}

#[test]
fn an_action_that_does_not_concern_the_equipment_changes_nothing() {
    let mut looks = 0;
    for action in Action::ALL.iter().filter(|action| !State::concerns(**action)) {
        looks += 1;
        for state in (0..WRITABLE).step_by(7).map(writable) {
            assert_eq!(state.after(*action), Ok(state));
            assert_eq!(Known::NOTHING.after(*action), Ok(Known::NOTHING));
        }
    }
    assert_eq!(looks, 17);
}

#[test]
fn every_state_can_be_written_as_known_and_read_again() {
    for number in 0..WRITABLE {
        let state = writable(number);
        assert_eq!(Known::exactly(state).state(), Some(state));
    }
    let mut all: Vec<State> = (0..WRITABLE).map(writable).collect();
    all.sort_unstable();
    all.dedup();
    assert_eq!(all.len() as u64, WRITABLE, "every number is another state");
}

#[test]
fn facts_are_those_of_the_fields() {
    use oxyfolio::equipment::{Holding, Regulator};
    for state in (0..WRITABLE).map(writable) {
        let stands = |holding| holding == Holding::StandingFree;
        let cylinder = state.cylinder;
        let wanted = |fact| match fact {
            Fact::DeviceOnPatient => Some(state.on_patient),
            Fact::ReservoirFilled => Some(state.reservoir_filled),
            Fact::CylinderOpen => Some(cylinder.open),
            Fact::CylinderSecured => Some([Holding::Secured, Holding::InHand].contains(&cylinder.holding)),
            Fact::CylinderLaidDown => Some(cylinder.holding == Holding::LaidDown),
            Fact::CylinderStandingFree => {
                Some(stands(cylinder.holding) || state.spare.is_some_and(|spare| stands(spare.holding)))
            }
            Fact::OutletClear => Some(cylinder.outlet_clear),
            Fact::WasherFitted => state.washer_good.then_some(true),
            Fact::RegulatorSeated => Some(state.regulator != Regulator::Off),
            Fact::RegulatorPressurised => Some(state.pressurised),
            Fact::DeviceHasReservoir | Fact::FlameNear | Fact::GreaseNear => None,
        };
        for fact in Fact::ALL {
            assert_eq!(state.fact(*fact), wanted(*fact), "{fact:?} in {state:?}");
            assert_eq!(Known::exactly(state).fact(*fact), wanted(*fact));
        }
    }
}
