//! Actions and time on the equipment with its gas.

use oxyfolio::book::Action;
use oxyfolio::equipment::{Gas, Given, Known, Loss, Outfit, Part, REGULATOR_SPACE, Regulator, State};
use oxyfolio::quantity::{Flow, Gauge, Pressure, Temperature, Time, Volume};
use proptest::prelude::*;

use super::{
    invariants,
    states::{WRITABLE, writable},
};

fn cylinder(psi: f64) -> Gas {
    Gas::new(
        Volume::litres(2.9).unwrap(),
        Temperature::celsius(10.0).unwrap(),
        Pressure::psi(psi).unwrap(),
    )
    .unwrap()
}

fn flow(litres: f64) -> Flow {
    Flow::litres_per_minute(litres).unwrap()
}

fn minutes(minutes: f64) -> Time {
    Time::minutes(minutes).unwrap()
}

/// A cylinder open under a tight regulator, flow at zero.
fn open(psi: f64) -> Outfit {
    let mut outfit = Outfit::new(State::PUT_AWAY, cylinder(psi), Flow::ZERO);
    for action in [
        Action::SeatRegulator,
        Action::TightenRegulator,
        Action::OpenCylinder,
    ] {
        outfit = outfit.act(action, Given::Nothing).unwrap();
    }
    outfit
}

#[test]
fn nothing_flows_while_the_flow_is_at_zero() {
    let outfit = open(2000.0);
    assert_eq!(outfit.pass(minutes(600.0)), outfit);
    // Opening has filled the regulator: a hundredth of a litre of 2.9 L.
    let reading = outfit.reading().unwrap().as_psi();
    assert!(reading > 1990.0 && reading < 1994.0, "{reading}");
}

#[test]
fn a_leak_takes_gas_while_there_is_pressure() {
    let outfit = open(2000.0).leaking(flow(0.5));
    let later = outfit.pass(minutes(60.0));
    assert!((outfit.gas().litres() - later.gas().litres() - 30.0).abs() < 1e-9);
    // Behind a closed valve the regulator runs out: some litre and a half at half a litre a minute.
    let closed = outfit.act(Action::CloseCylinder, Given::Nothing).unwrap();
    assert_eq!(closed.reading(), None);
    assert!(closed.pass(minutes(1.0)).state().pressurised);
    let out = closed.pass(minutes(5.0));
    assert!(!out.state().pressurised);
    assert_eq!(out.reading(), Some(Pressure::ZERO));
    assert_eq!(out.gas(), closed.gas(), "the cylinder itself is closed");
}

#[test]
fn with_a_closed_valve_the_flow_runs_the_regulator_out() {
    let giving = open(2000.0)
        .act(Action::SetFlow, Given::Flow(flow(10.0)))
        .unwrap();
    let closed = giving.act(Action::CloseCylinder, Given::Nothing).unwrap();
    assert_eq!(closed.flow(), flow(10.0));
    assert!(closed.act(Action::RemoveRegulator, Given::Nothing).is_err());
    let waited = closed.pass(minutes(0.5));
    assert_eq!(waited.flow(), Flow::ZERO);
    let off = waited.act(Action::RemoveRegulator, Given::Nothing).unwrap();
    assert_eq!(off.state().regulator, Regulator::Off);
}

#[test]
fn an_empty_cylinder_puts_nothing_under_pressure() {
    let mut giving = open(300.0).act(Action::SetFlow, Given::Flow(flow(15.0))).unwrap();
    giving = giving.pass(minutes(30.0));
    assert!(giving.state().cylinder.empty && giving.state().cylinder.open);
    assert!(!giving.state().pressurised);
    assert_eq!(giving.gas().pressure(), Pressure::<Gauge>::ZERO);
    // The gauge can be read: it shows zero. No flow can be set, and opening it again gives no pressure.
    let read = giving.act(Action::ReadGauge, Given::Nothing).unwrap();
    assert_eq!(read.reading(), Some(Pressure::ZERO));
    assert!(giving.act(Action::SetFlow, Given::Flow(flow(15.0))).is_err());
    let again = giving.act(Action::OpenCylinder, Given::Nothing).unwrap();
    assert!(!again.state().pressurised);
    // A full one takes its place.
    let mut changed = giving;
    for (action, given) in [
        (Action::CloseCylinder, Given::Nothing),
        (Action::FetchCylinder, Given::Cylinder(cylinder(2000.0))),
        (Action::BleedRegulator, Given::Nothing),
        (Action::ZeroFlow, Given::Nothing),
        (Action::RemoveRegulator, Given::Nothing),
        (Action::InspectWasher, Given::Nothing),
        (Action::SeatRegulator, Given::Nothing),
        (Action::TightenRegulator, Given::Nothing),
        (Action::OpenCylinder, Given::Nothing),
    ] {
        changed = changed.act(action, given).unwrap();
    }
    assert!(changed.state().pressurised && !changed.state().cylinder.empty);
    assert!(changed.reading().unwrap().as_psi() > 1990.0);
}

#[test]
fn amounts_must_be_given() {
    let outfit = open(2000.0);
    for given in [
        Given::Nothing,
        Given::Flow(Flow::ZERO),
        Given::Cylinder(cylinder(1.0)),
    ] {
        let refusal = outfit.act(Action::SetFlow, given).unwrap_err();
        assert_eq!(refusal.to_string(), "no flow above zero is given");
    }
    let refusal = outfit.act(Action::FetchCylinder, Given::Nothing).unwrap_err();
    assert_eq!(
        refusal.to_string(),
        "the gas of the cylinder that is brought is not given"
    );
}

fn act(outfit: Outfit, action: Action) -> Outfit {
    outfit.act(action, Given::Nothing).unwrap()
}

/// At one temperature a gas fills two spaces in proportion to their size (Boyle's law): so much for each litre here and there.
#[test]
fn a_regulator_fills_to_the_pressure_of_the_cylinder() {
    let (before, after) = (cylinder(2000.0), open(2000.0).gas());
    let taken = before.litres() - after.litres();
    assert!(
        (taken / REGULATOR_SPACE - after.usable_litres() / 2.9).abs() < 1e-9,
        "{taken}"
    );
}

#[test]
fn a_valve_turned_again_takes_and_gives_nothing() {
    let outfit = open(2000.0);
    // Opened again, or closed and opened at once: the regulator is full already.
    assert_eq!(act(outfit, Action::OpenCylinder), outfit);
    let closed = act(outfit, Action::CloseCylinder);
    let again = act(closed, Action::OpenCylinder);
    assert!((again.gas().litres() - outfit.gas().litres()).abs() < 1e-9);
    // With nothing on it no regulator is filled.
    let away = Outfit::new(State::PUT_AWAY, cylinder(2000.0), Flow::ZERO);
    let blown = act(act(away, Action::OpenCylinder), Action::CloseCylinder);
    assert_eq!(blown.gas(), away.gas());
    // And what a valve holds back that was opened without a regulator is no gas that the regulator has.
    let mut fitted = blown;
    for action in [
        Action::SeatRegulator,
        Action::TightenRegulator,
        Action::OpenCylinder,
    ] {
        fitted = act(fitted, action);
    }
    assert_eq!(fitted.gas(), outfit.gas());
}

#[test]
fn closing_a_closed_valve_does_not_fill_the_regulator() {
    let leaking = act(open(2000.0), Action::CloseCylinder).leaking(flow(0.5));
    // A hundredth of a litre at 2000 psi is some litre and a half: three minutes at half a litre a minute.
    let waited = leaking.pass(minutes(2.0));
    let again = act(waited, Action::CloseCylinder);
    assert!(again.state().pressurised && !again.pass(minutes(1.5)).state().pressurised);
    assert_eq!(again, waited);
}

#[test]
fn a_flow_turned_on_and_off_at_once_leaves_all_as_it_was() {
    let outfit = open(2000.0);
    let on = outfit.act(Action::SetFlow, Given::Flow(flow(15.0))).unwrap();
    assert_ne!(on, outfit);
    assert_eq!(act(on, Action::ZeroFlow), outfit);
}

#[test]
fn time_alone_does_nothing_but_through_an_open_valve_with_nothing_on_it() {
    for psi in [0.0, 2000.0] {
        let gas = cylinder(psi);
        for state in (0..WRITABLE).map(writable) {
            let outfit = Outfit::new(state, gas, Flow::ZERO);
            let later = outfit.pass(minutes(60.0));
            if state.cylinder.open && state.regulator == Regulator::Off {
                // The cylinder is empty, and that is all.
                let mut empty = outfit.state();
                empty.cylinder.empty = true;
                assert!(later.gas().is_empty());
                assert_eq!(later.state(), empty);
            } else {
                assert_eq!(later, outfit, "{state:?}");
            }
            // No time is no time, though a valve leaks.
            let leaking = outfit.leaking(flow(0.5));
            if !state.cylinder.open {
                assert_eq!(leaking.pass(Time::ZERO), leaking, "{state:?}");
            }
        }
    }
}

#[derive(Clone, Copy, Debug)]
enum Event {
    Act(Action, f64),
    Pass(f64),
    Leak(f64),
}

fn events() -> impl Strategy<Value = Vec<Event>> {
    let actions: Vec<Action> = Action::ALL
        .iter()
        .copied()
        .filter(|action| State::concerns(*action))
        .collect();
    let act = (proptest::sample::select(actions), 0.0..25.0_f64)
        .prop_map(|(action, amount)| Event::Act(action, amount));
    let pass = prop_oneof![Just(0.0), 0.0..0.2_f64, 0.0..60.0_f64].prop_map(Event::Pass);
    let leak = prop_oneof![Just(0.0), 0.0..2.0_f64].prop_map(Event::Leak);
    proptest::collection::vec(prop_oneof![8 => act, 3 => pass, 1 => leak], 1..80)
}

fn step(outfit: Outfit, event: Event) -> Option<Outfit> {
    match event {
        Event::Act(action, amount) => {
            let given = match action {
                Action::SetFlow => Given::Flow(flow(amount)),
                Action::FetchCylinder => Given::Cylinder(cylinder((amount - 2.0).max(0.0) * 90.0)),
                _ => Given::Nothing,
            };
            outfit.act(action, given).ok()
        }
        Event::Pass(time) => Some(outfit.pass(minutes(time))),
        Event::Leak(leak) => Some(outfit.leaking(flow(leak))),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn actions_and_time_in_any_order(begun in 0.0..2200.0_f64, events in events(), early: bool) {
        // Half of them begin with a cylinder in use, which random actions seldom reach.
        let mut outfit = if early { Outfit::new(State::PUT_AWAY, cylinder(begun), Flow::ZERO) } else { open(begun + 1.0) };
        let mut known = Known::NOTHING;
        for event in events {
            let Some(next) = step(outfit, event) else { continue };
            let (was, is) = (outfit.state(), next.state());
            prop_assert!(invariants::broken(is).is_none(), "{:?} {:?}", invariants::broken(is), event);
            let changed = match event {
                Event::Act(Action::FetchCylinder, _) => was.regulator == Regulator::Off,
                Event::Act(Action::RemoveRegulator, _) => was.spare.is_some(),
                _ => false,
            };
            // Gas never grows but by changing the cylinder.
            prop_assert!(changed || next.gas().litres() <= outfit.gas().litres());
            prop_assert_eq!(is.cylinder.empty, next.gas().is_empty());
            prop_assert_eq!(is.pressurised && is.cylinder.open, next.reading().is_some_and(|reading| reading > Pressure::ZERO));
            // Pressure ends only by bleeding, or by running out while something drains it.
            if was.pressurised && !is.pressurised {
                match event {
                    Event::Act(action, _) => prop_assert_eq!(action, Action::BleedRegulator),
                    Event::Pass(time) => prop_assert!(time > 0.0),
                    Event::Leak(_) => prop_assert!(false, "a leak needs time"),
                }
            }
            if let Event::Pass(time) = event {
                // With no flow and no leak, time changes nothing, but for an open valve with nothing on it.
                let blows = was.cylinder.open && was.regulator == Regulator::Off;
                if time == 0.0 { prop_assert_eq!(next, outfit) }
                // Two halves are the whole.
                let halves = outfit.pass(minutes(time / 2.0)).pass(minutes(time / 2.0));
                prop_assert!((halves.gas().litres() - next.gas().litres()).abs() < 1e-9 || blows);
            }
            // What a record of it would teach allows what came about, from a beginning nobody wrote down.
            known = match event {
                Event::Act(action, _) => known.after(action).unwrap(),
                Event::Pass(_) => known.may_run_out(Loss::Flow).may_run_out(Loss::Leak),
                Event::Leak(_) => known,
            };
            // Whether a cylinder that is brought holds gas, a record doesn't tell.
            if matches!(event, Event::Act(Action::FetchCylinder, _)) {
                known = known.forget(Part::Contents).forget(Part::SpareContents);
            }
            prop_assert!(known.allows(is), "{event:?}: {known:?} {is:?}");
            outfit = next;
        }
    }
}
