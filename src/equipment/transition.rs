//! What each action needs and does.
//!
//! Actions that only look, say or write have no entry: they change nothing and are never refused.

use core::fmt;

use super::{Bottle, Holding, Regulator, State};
use crate::book::Action;

/// Why an action can't or mustn't be done in a state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Refusal(&'static str);

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

impl core::error::Error for Refusal {}

impl State {
    /// Whether an action concerns the equipment at all; the others change no state and are never refused.
    #[must_use]
    pub const fn concerns(action: Action) -> bool {
        matches!(
            action,
            Action::FetchCylinder
                | Action::SecureCylinder
                | Action::LayCylinderDown
                | Action::ClearOutlet
                | Action::InspectWasher
                | Action::SeatRegulator
                | Action::TightenRegulator
                | Action::ZeroFlow
                | Action::OpenCylinder
                | Action::ReadGauge
                | Action::CheckLeaks
                | Action::ConnectDevice
                | Action::SetFlow
                | Action::FillReservoir
                | Action::PlaceDevice
                | Action::RemoveDevice
                | Action::DisconnectDevice
                | Action::DisposeDevice
                | Action::CloseCylinder
                | Action::BleedRegulator
                | Action::RemoveRegulator
                | Action::CapOutlet
                | Action::StowCylinder
        )
    }

    /// The state after an action.
    ///
    /// # Errors
    ///
    /// [`Refusal`] when the action's precondition doesn't hold: it would do harm, or can't be done.
    ///
    /// ```
    /// use oxyfolio::book::Action;
    /// use oxyfolio::equipment::State;
    ///
    /// let state = State::PUT_AWAY;
    /// // A regulator that isn't there can't be tightened.
    /// assert!(state.after(Action::TightenRegulator).is_err());
    /// let cleared = state.after(Action::ClearOutlet)?;
    /// assert!(cleared.cylinder.outlet_clear);
    /// # Ok::<(), oxyfolio::equipment::Refusal>(())
    /// ```
    pub const fn after(self, action: Action) -> Result<Self, Refusal> {
        let mut next = self;
        let fitted = !matches!(self.regulator, Regulator::Off);
        match action {
            Action::FetchCylinder => {
                let fetched = Bottle {
                    holding: Holding::InHand,
                    open: false,
                    outlet_clear: false,
                };
                if fitted {
                    next.spare = Some(fetched);
                } else {
                    next.cylinder = fetched;
                }
            }
            Action::SecureCylinder => next = self.held(Holding::Secured),
            Action::LayCylinderDown => next = self.held(Holding::LaidDown),
            Action::ClearOutlet => match self.spare {
                Some(spare) if matches!(spare.holding, Holding::StandingFree) => return refuse(STANDING),
                Some(spare) => {
                    next.spare = Some(Bottle {
                        outlet_clear: true,
                        ..spare
                    })
                }
                None if fitted => return refuse("a regulator is on the outlet that is to be blown clear"),
                None if matches!(self.cylinder.holding, Holding::StandingFree) => return refuse(STANDING),
                None => next.cylinder.outlet_clear = true,
            },
            Action::InspectWasher => next.washer_good = true,
            Action::SeatRegulator if fitted => return refuse("a regulator is on the cylinder already"),
            Action::SeatRegulator if self.cylinder.open => return refuse("the valve is open"),
            Action::SeatRegulator if !self.washer_good => {
                return refuse("nobody has looked at the washer since the regulator was off");
            }
            Action::SeatRegulator => next.regulator = Regulator::Seated,
            Action::TightenRegulator if !fitted => return refuse("there is no regulator on the cylinder"),
            Action::TightenRegulator if self.pressurised => return refuse("the regulator is under pressure"),
            Action::TightenRegulator => next.regulator = Regulator::Tight,
            Action::ZeroFlow => {
                next.flow_on = false;
                next.reservoir_filled = false;
            }
            Action::OpenCylinder if matches!(self.cylinder.holding, Holding::StandingFree) => {
                return refuse(STANDING);
            }
            Action::OpenCylinder if matches!(self.regulator, Regulator::Seated) => {
                return refuse("the regulator is not tightened");
            }
            Action::OpenCylinder if fitted && self.flow_on && !self.cylinder.open => {
                return refuse("the flow is not at zero");
            }
            Action::OpenCylinder => {
                next.cylinder.open = true;
                next.pressurised = self.pressurised || fitted;
            }
            Action::ReadGauge if !self.pressurised => {
                return refuse("the gauge shows nothing: the valve has not been opened");
            }
            Action::CheckLeaks if !self.pressurised => {
                return refuse("nothing can leak: the valve has not been opened");
            }
            Action::ConnectDevice if self.device_connected => return refuse("a device is connected already"),
            Action::ConnectDevice => {
                next.device_connected = true;
                next.reservoir_filled = false;
            }
            Action::SetFlow if !self.gas_at_regulator() => {
                return refuse("no gas can flow: the regulator is not on an open cylinder");
            }
            Action::SetFlow => next.flow_on = true,
            Action::FillReservoir if !(self.device_connected && self.flow_on && self.gas_at_regulator()) => {
                return refuse("no gas flows to the reservoir");
            }
            Action::FillReservoir => next.reservoir_filled = true,
            Action::PlaceDevice if !self.device_connected => return refuse("the device is not connected"),
            Action::PlaceDevice => next.on_patient = true,
            Action::RemoveDevice => next.on_patient = false,
            Action::DisconnectDevice if self.on_patient => return refuse("the device is on the patient"),
            Action::DisconnectDevice => {
                next.device_connected = false;
                next.reservoir_filled = false;
            }
            Action::DisposeDevice if self.on_patient || self.device_connected => {
                return refuse("the device is still in use");
            }
            Action::CloseCylinder => next.cylinder.open = false,
            Action::BleedRegulator if self.cylinder.open => {
                return refuse("the valve is open: bleeding would empty the cylinder");
            }
            Action::BleedRegulator => {
                next.pressurised = false;
                // It is bled through the flow.
                next.flow_on = self.flow_on || fitted;
                next.reservoir_filled = false;
            }
            Action::RemoveRegulator if self.pressurised => return refuse("the regulator is under pressure"),
            Action::RemoveRegulator if self.cylinder.open => return refuse("the valve is open"),
            Action::RemoveRegulator => {
                next.regulator = Regulator::Off;
                next.washer_good = false;
                match self.spare {
                    Some(spare) => {
                        next.cylinder = spare;
                        next.spare = None;
                    }
                    None => next.cylinder.outlet_clear = false,
                }
            }
            Action::CapOutlet if fitted => return refuse("a regulator is on the outlet"),
            Action::StowCylinder if self.cylinder.open => return refuse("the valve is open"),
            Action::StowCylinder if self.pressurised => return refuse("the regulator is under pressure"),
            Action::StowCylinder => next = self.held(Holding::Secured),
            _ => {}
        }
        Ok(next)
    }

    const fn held(mut self, holding: Holding) -> Self {
        self.cylinder.holding = holding;
        if let Some(spare) = self.spare {
            self.spare = Some(Bottle { holding, ..spare });
        }
        self
    }

    const fn gas_at_regulator(&self) -> bool {
        self.cylinder.open && self.pressurised && matches!(self.regulator, Regulator::Tight)
    }
}

const STANDING: &str = "the cylinder stands free";

const fn refuse(why: &'static str) -> Result<State, Refusal> {
    Err(Refusal(why))
}
