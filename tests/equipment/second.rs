//! The transitions written a second time, by hand, without the table.

use oxyfolio::book::Action;
use oxyfolio::equipment::{Bottle, Holding, Regulator, State};

const STANDING: &str = "the cylinder stands free";
const NOTHING: &str = "no gas is left to blow the outlet clear with";

fn refuse(why: &'static str) -> Result<State, &'static str> {
    Err(why)
}

fn held(mut state: State, holding: Holding) -> State {
    state.cylinder.holding = holding;
    if let Some(spare) = &mut state.spare {
        spare.holding = holding;
    }
    state
}

fn gas_at_regulator(state: &State) -> bool {
    state.cylinder.open && state.pressurised && state.regulator == Regulator::Tight
}

/// The state after an action, or the words of the refusal.
pub fn after(state: State, action: Action) -> Result<State, &'static str> {
    let mut next = state;
    let fitted = !matches!(state.regulator, Regulator::Off);
    match action {
        Action::FetchCylinder => {
            let fetched = Bottle {
                holding: Holding::InHand,
                open: false,
                outlet_clear: false,
                empty: false,
            };
            if fitted {
                next.spare = Some(fetched);
            } else {
                next.cylinder = fetched;
            }
        }
        Action::SecureCylinder => next = held(state, Holding::Secured),
        Action::LayCylinderDown => next = held(state, Holding::LaidDown),
        Action::ClearOutlet => match state.spare {
            Some(spare) if matches!(spare.holding, Holding::StandingFree) => return refuse(STANDING),
            Some(spare) if spare.empty => return refuse(NOTHING),
            Some(spare) => {
                next.spare = Some(Bottle {
                    outlet_clear: true,
                    ..spare
                })
            }
            None if fitted => return refuse("a regulator is on the outlet that is to be blown clear"),
            None if matches!(state.cylinder.holding, Holding::StandingFree) => return refuse(STANDING),
            None if state.cylinder.empty => return refuse(NOTHING),
            None => next.cylinder.outlet_clear = true,
        },
        Action::InspectWasher => next.washer_good = true,
        Action::SeatRegulator if fitted => return refuse("a regulator is on the cylinder already"),
        Action::SeatRegulator if state.cylinder.open => return refuse("the valve is open"),
        Action::SeatRegulator if !state.washer_good => {
            return refuse("nobody has looked at the washer since the regulator was off");
        }
        Action::SeatRegulator => next.regulator = Regulator::Seated,
        Action::TightenRegulator if !fitted => return refuse("there is no regulator on the cylinder"),
        Action::TightenRegulator if state.pressurised => return refuse("the regulator is under pressure"),
        Action::TightenRegulator => next.regulator = Regulator::Tight,
        Action::ZeroFlow => {
            next.flow_on = false;
            next.reservoir_filled = false;
        }
        Action::OpenCylinder if matches!(state.cylinder.holding, Holding::StandingFree) => {
            return refuse(STANDING);
        }
        Action::OpenCylinder if matches!(state.regulator, Regulator::Seated) => {
            return refuse("the regulator is not tightened");
        }
        Action::OpenCylinder if fitted && state.flow_on && !state.cylinder.open => {
            return refuse("the flow is not at zero");
        }
        Action::OpenCylinder => {
            next.cylinder.open = true;
            next.pressurised = state.pressurised || (fitted && !state.cylinder.empty);
        }
        Action::ReadGauge
            if !(state.pressurised || state.cylinder.empty && state.cylinder.open && fitted) =>
        {
            return refuse("the gauge shows nothing: the valve has not been opened");
        }
        Action::CheckLeaks if !state.pressurised => {
            return refuse("nothing can leak: the valve has not been opened");
        }
        Action::ConnectDevice if state.device_connected => return refuse("a device is connected already"),
        Action::ConnectDevice => {
            next.device_connected = true;
            next.reservoir_filled = false;
        }
        Action::SetFlow if !gas_at_regulator(&state) => {
            return refuse("no gas can flow: the regulator is not on an open cylinder");
        }
        Action::SetFlow => next.flow_on = true,
        Action::FillReservoir if !(state.device_connected && state.flow_on && gas_at_regulator(&state)) => {
            return refuse("no gas flows to the reservoir");
        }
        Action::FillReservoir => next.reservoir_filled = true,
        Action::PlaceDevice if !state.device_connected => return refuse("the device is not connected"),
        Action::PlaceDevice => next.on_patient = true,
        Action::RemoveDevice => next.on_patient = false,
        Action::DisconnectDevice if state.on_patient => return refuse("the device is on the patient"),
        Action::DisconnectDevice => {
            next.device_connected = false;
            next.reservoir_filled = false;
        }
        Action::DisposeDevice if state.on_patient || state.device_connected => {
            return refuse("the device is still in use");
        }
        Action::CloseCylinder => next.cylinder.open = false,
        Action::BleedRegulator if state.cylinder.open => {
            return refuse("the valve is open: bleeding would empty the cylinder");
        }
        Action::BleedRegulator => {
            next.pressurised = false;
            // It is bled through the flow.
            next.flow_on = state.flow_on || fitted;
            next.reservoir_filled = false;
        }
        Action::RemoveRegulator if state.pressurised => return refuse("the regulator is under pressure"),
        Action::RemoveRegulator if state.cylinder.open => return refuse("the valve is open"),
        Action::RemoveRegulator => {
            next.regulator = Regulator::Off;
            next.washer_good = false;
            match state.spare {
                Some(spare) => {
                    next.cylinder = spare;
                    next.spare = None;
                }
                None => next.cylinder.outlet_clear = false,
            }
        }
        Action::CapOutlet if fitted => return refuse("a regulator is on the outlet"),
        Action::StowCylinder if state.cylinder.open => return refuse("the valve is open"),
        Action::StowCylinder if state.pressurised => return refuse("the regulator is under pressure"),
        Action::StowCylinder => next = held(state, Holding::Secured),
        _ => {}
    }
    Ok(next)
}
