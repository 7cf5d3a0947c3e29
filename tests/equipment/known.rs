//! What is known of the equipment, against the states it stands for.

use std::sync::LazyLock;

use oxyfolio::book::{Action, Fact};
use oxyfolio::equipment::{End, Known, Loss, Part, State};
use proptest::prelude::*;

use super::states::{WRITABLE, reachable, writable};

static REACHABLE: LazyLock<Vec<State>> = LazyLock::new(|| reachable().into_iter().collect());

#[test]
fn known_exactly_is_the_state_itself() {
    for state in (0..WRITABLE).map(writable) {
        let known = Known::exactly(state);
        for action in Action::ALL {
            assert_eq!(known.after(*action), state.after(*action).map(Known::exactly));
        }
        for by in Loss::ALL {
            assert_eq!(known.run_out(*by), Known::exactly(state.run_out(*by)));
        }
        let end = state.unsafe_end().map_or(End::Safe, End::Unsafe);
        assert_eq!(known.end(), end);
        assert_eq!(known.unrecorded().count(), 0);
    }
}

#[test]
fn what_was_done_must_have_been_possible() {
    // From nothing known, what an action teaches is what every state in which it is possible has in common.
    for action in Action::ALL {
        let known = Known::NOTHING.after(*action).unwrap();
        let mut seen: Option<Known> = None;
        for state in (0..WRITABLE).map(writable) {
            if let Ok(next) = state.after(*action) {
                assert!(known.allows(next), "{action} in {state:?}");
                let next = Known::exactly(next);
                seen = Some(seen.map_or(next, |seen| seen.or(next)));
            }
        }
        // And no more is held possible than that, part by part.
        let seen = seen.unwrap();
        for fact in Fact::ALL {
            assert_eq!(known.fact(*fact), seen.fact(*fact), "{action}, {fact:?}");
        }
        assert_eq!(known, seen, "{action}");
    }
}

/// What is known when one of some states is the one, and perhaps parts are forgotten.
fn some_known() -> impl Strategy<Value = Known> {
    let states = proptest::collection::vec(0..REACHABLE.len(), 1..5);
    let forgotten = proptest::sample::subsequence(Part::ALL, 0..4);
    (states, forgotten).prop_map(|(numbers, forgotten)| {
        let states: Vec<State> = numbers.into_iter().map(|number| REACHABLE[number]).collect();
        let known = states
            .iter()
            .skip(1)
            .fold(Known::exactly(states[0]), |known, state| {
                known.or(Known::exactly(*state))
            });
        forgotten.into_iter().fold(known, Known::forget)
    })
}

/// Every reachable state that is possible.
fn possible(known: Known) -> impl Iterator<Item = &'static State> {
    REACHABLE.iter().filter(move |state| known.allows(**state))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_state_is_lost_by_an_action(known in some_known()) {
        for action in Action::ALL {
            let next = known.after(*action);
            let mut any = false;
            for state in possible(known) {
                if let Ok(state) = state.after(*action) {
                    any = true;
                    prop_assert!(next.is_ok_and(|next| next.allows(state)), "{action} in {state:?}");
                }
            }
            // Refused only where every possible state refuses it.
            prop_assert!(next.is_ok() || !any, "{action}");
        }
    }

    #[test]
    fn no_state_is_lost_by_time(known in some_known()) {
        for by in Loss::ALL {
            for state in possible(known) {
                prop_assert!(known.run_out(*by).allows(state.run_out(*by)));
                prop_assert!(known.may_run_out(*by).allows(*state));
                prop_assert!(known.may_run_out(*by).allows(state.run_out(*by)));
            }
        }
    }

    #[test]
    fn a_fact_is_told_only_where_all_agree(known in some_known()) {
        for fact in Fact::ALL {
            let (yes, no) = (known.facts().0 >> *fact as u32 & 1, known.facts().1 >> *fact as u32 & 1);
            prop_assert_eq!(known.fact(*fact), (yes + no == 1).then_some(yes == 1));
            if let Some(holds) = known.fact(*fact) {
                for state in possible(known) {
                    // A washer nobody looked at may be good.
                    prop_assert!(state.fact(*fact) == Some(holds));
                }
            }
        }
    }

    #[test]
    fn an_end_is_told_only_where_all_agree(known in some_known()) {
        for state in possible(known) {
            match known.end() {
                End::Safe => prop_assert_eq!(state.unsafe_end(), None),
                End::Unsafe(_) => prop_assert!(state.unsafe_end().is_some()),
                End::Unknown(what) => prop_assert_eq!(known.unrecorded().next(), Some(what)),
            }
        }
    }

    #[test]
    fn what_was_seen_is_known(known in some_known(), holds: bool) {
        for fact in Fact::ALL {
            let Some(seen) = known.with(*fact, holds) else {
                prop_assert_eq!(State::PUT_AWAY.with(*fact, holds), None);
                continue;
            };
            let wanted = match fact {
                Fact::WasherFitted if !holds => None,
                _ => Some(holds),
            };
            prop_assert_eq!(seen.fact(*fact), wanted, "{:?}", fact);
            // Seen again, nothing more is learnt.
            prop_assert_eq!(seen.with(*fact, holds), Some(seen));
            // No state that agrees is lost, but where it isn't said which cylinder stands free.
            if (*fact, holds) != (Fact::CylinderStandingFree, true) {
                for state in possible(known) {
                    let agrees = state.fact(*fact) == wanted
                        && (*fact != Fact::WasherFitted || state.washer_good == holds);
                    prop_assert!(!agrees || seen.allows(*state), "{fact:?} {holds} {state:?}");
                }
            }
        }
    }

    #[test]
    fn what_was_recorded_is_known(known in some_known(), on: bool) {
        prop_assert_eq!(known.gauge(on).fact(Fact::RegulatorPressurised), Some(on));
        if on {
            prop_assert_eq!(known.gauge(on).fact(Fact::RegulatorSeated), Some(true));
        } else {
            prop_assert_eq!(known.device(on).fact(Fact::DeviceOnPatient), Some(false));
            prop_assert_eq!(known.flow(on).fact(Fact::ReservoirFilled), Some(false));
        }
        // A part that is forgotten is unknown; what was possible still is.
        for part in Part::ALL {
            prop_assert_eq!(known.forget(*part).or(known), known.forget(*part));
        }
    }
}

#[test]
fn a_log_that_begins_in_the_middle_teaches_as_it_goes() {
    let known = Known::NOTHING;
    assert_eq!(
        known.end(),
        End::Unknown("whether the device is off the patient was not recorded")
    );
    assert_eq!(known.unrecorded().count(), 6);
    let known = known.after(Action::FillReservoir).unwrap();
    assert_eq!(known.fact(Fact::CylinderOpen), Some(true));
    assert_eq!(known.fact(Fact::DeviceOnPatient), None);
    let known = known.after(Action::PlaceDevice).unwrap();
    assert_eq!(known.end(), End::Unsafe("the device is still on the patient"));
    let known = known.after(Action::RemoveDevice).unwrap();
    let known = known.after(Action::CloseCylinder).unwrap();
    assert_eq!(known.end(), End::Unsafe("the regulator is left under pressure"));
    // It stood a while with the flow on: it may have run out, and then it can be taken off.
    let waited = known.may_run_out(Loss::Flow);
    assert_eq!(waited.fact(Fact::RegulatorPressurised), None);
    assert!(known.after(Action::RemoveRegulator).is_err());
    let off = waited.after(Action::RemoveRegulator).unwrap();
    assert_eq!(off.fact(Fact::RegulatorPressurised), Some(false));
    let known = known.after(Action::BleedRegulator).unwrap();
    assert_eq!(known.end(), End::Unsafe("the flow is left turned on"));
    let known = known.after(Action::ZeroFlow).unwrap();
    assert_eq!(
        known.end(),
        End::Unknown("whether the cylinder is kept from falling was not recorded")
    );
    let known = known.after(Action::StowCylinder).unwrap();
    assert_eq!(known.end(), End::Safe);
}
