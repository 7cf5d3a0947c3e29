//! What an observation teaches beside itself, and in which words what is known is told.

use oxyfolio::book::{Action, Fact};
use oxyfolio::equipment::{Bottle, Holding, Known, Part, Regulator, State};

fn words(known: Known, part: Part) -> Vec<&'static str> {
    known.words(part).collect()
}

fn seen(known: Known, fact: Fact, holds: bool) -> Known {
    known.with(fact, holds).unwrap()
}

const SPARE: Bottle = Bottle {
    holding: Holding::InHand,
    open: false,
    outlet_clear: false,
    empty: false,
};

/// In use on the patient: everything on, everything open.
const IN_USE: State = State {
    cylinder: Bottle {
        open: true,
        outlet_clear: true,
        ..State::PUT_AWAY.cylinder
    },
    regulator: Regulator::Tight,
    pressurised: true,
    device_connected: true,
    on_patient: true,
    reservoir_filled: true,
    ..State::PUT_AWAY
};

#[test]
fn every_value_that_is_possible_is_told_and_no_other() {
    for (part, all, put_away) in [
        (
            Part::Holding,
            &[
                "stands free",
                "is in a hand or its carrier",
                "is secured",
                "lies on its side",
            ][..],
            "is secured",
        ),
        (Part::Valve, &["is closed", "is open"], "is closed"),
        (
            Part::Outlet,
            &["has not been blown clear", "has been blown clear"],
            "has not been blown clear",
        ),
        (Part::Contents, &["has run empty", "holds gas"], "holds gas"),
        (
            Part::Spare,
            &[
                "stands free",
                "is in a hand or its carrier",
                "is secured",
                "lies on its side",
                "is not there",
            ],
            "is not there",
        ),
        (
            Part::Regulator,
            &["is off the cylinder", "is seated but not tight", "is tight"],
            "is off the cylinder",
        ),
        (Part::Flow, &["is at zero", "is on"], "is on"),
        (
            Part::Patient,
            &["is off the patient", "is on the patient"],
            "is off the patient",
        ),
    ] {
        assert_eq!(words(Known::NOTHING, part), all, "{part:?}");
        assert_eq!(
            words(Known::exactly(State::PUT_AWAY), part),
            [put_away],
            "{part:?}"
        );
    }
    let told = format!("{:?}", Known::exactly(State::PUT_AWAY).forget(Part::Valve));
    assert!(
        told.starts_with(r#"{Holding: ["is secured"], Valve: ["is closed", "is open"], Outlet: ["#),
        "{told}"
    );
    assert!(told.ends_with(r#"Patient: ["is off the patient"]}"#), "{told}");
}

#[test]
fn values_of_a_part_have_its_words() {
    let first = oxyfolio::equipment::row(Action::FetchCylinder)[0].when[0];
    assert_eq!(first.part(), Part::Regulator);
    assert_eq!(first.words().collect::<Vec<_>>(), ["is off the cylinder"]);
    // Fitted is one of two values.
    let fitted = oxyfolio::equipment::row(Action::TightenRegulator)[0].needs[0].of;
    assert_eq!(
        fitted.words().collect::<Vec<_>>(),
        ["is seated but not tight", "is tight"]
    );
}

#[test]
fn whether_the_flow_is_on_is_told_where_it_is_known() {
    assert_eq!(Known::NOTHING.flow_on(), None);
    assert_eq!(Known::NOTHING.flow(true).flow_on(), Some(true));
    assert_eq!(Known::NOTHING.flow(false).flow_on(), Some(false));
    assert_eq!(Known::exactly(IN_USE).flow_on(), Some(true));
    let zero = Known::exactly(IN_USE).after(Action::ZeroFlow).unwrap();
    assert_eq!(zero.flow_on(), Some(false));
    assert_eq!(zero.or(Known::exactly(IN_USE)).flow_on(), None);
}

#[test]
fn what_cannot_be_otherwise_is_learnt_too() {
    let nothing = Known::NOTHING;
    // A device on the patient is connected, and so is one with a full reservoir; gas flows into that.
    let worn = seen(nothing, Fact::DeviceOnPatient, true);
    assert_eq!(words(worn, Part::Device), ["is connected"]);
    let full = seen(nothing, Fact::ReservoirFilled, true);
    assert_eq!(words(full, Part::Device), ["is connected"]);
    assert_eq!(full.flow_on(), Some(true));
    // Pressure is in a regulator that is on the cylinder; without it no reservoir is full.
    let pressed = seen(nothing, Fact::RegulatorPressurised, true);
    assert_eq!(pressed.fact(Fact::RegulatorSeated), Some(true));
    let bled = seen(Known::exactly(IN_USE), Fact::RegulatorPressurised, false);
    assert_eq!(bled.fact(Fact::ReservoirFilled), Some(false));
    // Off the cylinder nothing is under pressure.
    let off = seen(Known::exactly(IN_USE), Fact::RegulatorSeated, false);
    assert_eq!(off.fact(Fact::RegulatorPressurised), Some(false));
    assert_eq!(off.fact(Fact::ReservoirFilled), Some(false));
    assert_eq!(off.fact(Fact::OutletClear), Some(false));
    let off = seen(nothing, Fact::RegulatorSeated, false);
    assert_eq!(off.fact(Fact::RegulatorPressurised), Some(false));
    assert_eq!(words(off, Part::Outlet).len(), 2);
}

#[test]
fn a_regulator_that_came_on_unseen_says_nothing_of_outlet_and_washer() {
    let away = Known::exactly(State::PUT_AWAY);
    for on in [
        seen(away, Fact::RegulatorSeated, true),
        seen(away, Fact::RegulatorPressurised, true),
        away.gauge(true),
    ] {
        assert_eq!(on.fact(Fact::RegulatorSeated), Some(true));
        assert_eq!(words(on, Part::Outlet).len(), 2);
        assert_eq!(words(on, Part::Washer).len(), 2);
    }
    // Where it was known to be on, nothing is forgotten.
    let on = seen(Known::exactly(IN_USE), Fact::RegulatorSeated, true);
    assert_eq!(on, Known::exactly(IN_USE));
}

#[test]
fn a_cylinder_standing_free_is_the_one_in_use_where_it_can_be() {
    let free = |known| seen(known, Fact::CylinderStandingFree, true);
    // Of both it can be either: the one in use.
    assert_eq!(words(free(Known::NOTHING), Part::Holding), ["stands free"]);
    assert_eq!(words(free(Known::NOTHING), Part::Spare).len(), 5);
    // The one in use is surely secured, and there may be a spare: the spare.
    let secured = Known::exactly(IN_USE).forget(Part::Spare);
    assert_eq!(words(free(secured), Part::Holding), ["is secured"]);
    assert_eq!(words(free(secured), Part::Spare), ["stands free"]);
    // There is no spare: what was seen outranks what was thought.
    assert_eq!(
        words(free(Known::exactly(IN_USE)), Part::Holding),
        ["stands free"]
    );
    assert_eq!(words(free(Known::exactly(IN_USE)), Part::Spare), ["is not there"]);
}

#[test]
fn a_gauge_at_zero_empties_an_open_cylinder_under_a_regulator_and_no_other() {
    let contents = |known: Known| words(known.gauge(false), Part::Contents);
    let open = Known::exactly(IN_USE);
    assert_eq!(contents(open), ["has run empty"]);
    // The valve may be closed; or the regulator may be off: the gauge says nothing of the cylinder.
    assert_eq!(contents(open.forget(Part::Valve)), ["holds gas"]);
    assert_eq!(contents(open.forget(Part::Regulator)), ["holds gas"]);
    assert_eq!(contents(Known::NOTHING), ["has run empty", "holds gas"]);
}

#[test]
fn with_the_spare_goes_all_that_is_told_of_it() {
    let with_spare = Known::exactly(State {
        spare: Some(SPARE),
        ..IN_USE
    });
    let forgotten = with_spare.forget(Part::Spare);
    for (part, values) in [
        (Part::Spare, 5),
        (Part::SpareValve, 2),
        (Part::SpareOutlet, 2),
        (Part::SpareContents, 2),
        (Part::Holding, 1),
    ] {
        assert_eq!(words(forgotten, part).len(), values, "{part:?}");
    }
    assert_eq!(
        words(with_spare.forget(Part::SpareOutlet), Part::SpareOutlet).len(),
        2
    );
    assert_eq!(words(with_spare.forget(Part::SpareOutlet), Part::Spare).len(), 1);
}

/// Perhaps there is a second cylinder, and then it stands free.
fn perhaps_a_spare_standing_free(state: State) -> Known {
    let spare = Bottle {
        holding: Holding::StandingFree,
        ..SPARE
    };
    Known::exactly(state).or(Known::exactly(State {
        spare: Some(spare),
        ..state
    }))
}

#[test]
fn who_blew_an_outlet_clear_had_no_spare_standing_free() {
    let known = perhaps_a_spare_standing_free(State::PUT_AWAY);
    let after = known.after(Action::ClearOutlet).unwrap();
    assert_eq!(words(after, Part::Spare), ["is not there"]);
    assert_eq!(after.fact(Fact::OutletClear), Some(true));
}

#[test]
fn where_nothing_is_possible_the_first_reason_is_told() {
    let refused = perhaps_a_spare_standing_free(IN_USE)
        .after(Action::ClearOutlet)
        .unwrap_err();
    assert_eq!(
        refused.to_string(),
        "a regulator is on the outlet that is to be blown clear"
    );
}

#[test]
fn a_state_said_to_be_so_has_what_belongs_to_it() {
    let said = |fact, holds| State::PUT_AWAY.with(fact, holds).unwrap();
    assert!(said(Fact::DeviceOnPatient, true).device_connected);
    assert!(!said(Fact::DeviceOnPatient, false).device_connected);
    let unseen = State {
        washer_good: false,
        ..State::PUT_AWAY
    };
    assert!(unseen.with(Fact::RegulatorSeated, true).unwrap().washer_good);
    assert!(!unseen.with(Fact::RegulatorSeated, false).unwrap().washer_good);
    assert!(said(Fact::RegulatorSeated, false).washer_good);
    let connected = State {
        device_connected: true,
        ..State::PUT_AWAY
    };
    assert!(
        connected
            .with(Fact::DeviceOnPatient, false)
            .unwrap()
            .device_connected
    );
}
