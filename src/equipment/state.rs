//! What the equipment is like at one moment.

use super::{End, Known};
use crate::book::Fact;

/// How a cylinder is kept from falling.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Holding {
    /// Nothing holds it: it stands on its base.
    StandingFree,
    /// Held in a hand or by its carrier.
    InHand,
    /// Strapped or racked.
    Secured,
    /// Lying on its side.
    LaidDown,
}

/// A cylinder with its valve and outlet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Bottle {
    /// How it is kept from falling.
    pub holding: Holding,
    /// Whether its valve is open.
    pub open: bool,
    /// Whether its outlet was blown clear since a regulator was last on it.
    pub outlet_clear: bool,
    /// Whether it has run empty. One that is brought is taken to hold gas, until the gas is known to have run out.
    pub empty: bool,
}

/// Where the regulator is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Regulator {
    /// Not on the cylinder.
    Off,
    /// On the outlet, not yet tightened.
    Seated,
    /// On the outlet and tight.
    Tight,
}

/// The equipment and the patient at one moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct State {
    /// The cylinder in use, or to be used.
    pub cylinder: Bottle,
    /// A second cylinder brought while the first is in use; it takes the first one's place when the regulator is moved.
    pub spare: Option<Bottle>,
    /// Where the regulator is.
    pub regulator: Regulator,
    /// Whether the washer was looked at since the regulator was last off.
    pub washer_good: bool,
    /// Whether there is gas under pressure in the regulator.
    pub pressurised: bool,
    /// Whether the flow is turned on; on a regulator nobody has looked at it may be.
    pub flow_on: bool,
    /// Whether a device's tubing is on the regulator's outlet.
    pub device_connected: bool,
    /// Whether the device's reservoir bag is full.
    pub reservoir_filled: bool,
    /// Whether the device is on the patient.
    pub on_patient: bool,
}

impl State {
    /// Put away: a closed, secured cylinder, nothing on it, and a regulator whose flow nobody has looked at yet. Its
    /// washer is taken to be good until the regulator has been off a cylinder.
    pub const PUT_AWAY: Self = Self {
        cylinder: Bottle {
            holding: Holding::Secured,
            open: false,
            outlet_clear: false,
            empty: false,
        },
        spare: None,
        regulator: Regulator::Off,
        washer_good: true,
        pressurised: false,
        flow_on: true,
        device_connected: false,
        reservoir_filled: false,
        on_patient: false,
    };

    /// Put away, but for what is said to hold or not to hold. What a state doesn't hold is passed over.
    #[must_use]
    pub fn beginning(with: &[(Fact, bool)]) -> Self {
        with.iter().fold(Self::PUT_AWAY, |state, (fact, holds)| {
            state.with(*fact, *holds).unwrap_or(state)
        })
    }

    /// What a guard can observe of this state; `None` for what a state doesn't tell.
    #[must_use]
    pub const fn fact(&self, fact: Fact) -> Option<bool> {
        Known::exactly(*self).fact(fact)
    }

    /// This state with a fact made true or false; `None` where the state doesn't hold that fact.
    ///
    /// A regulator that is said to be on is tight, on a clear outlet with a good washer.
    #[must_use]
    pub const fn with(mut self, fact: Fact, holds: bool) -> Option<Self> {
        match fact {
            Fact::DeviceOnPatient => {
                self.on_patient = holds;
                self.device_connected = self.device_connected || holds;
            }
            Fact::ReservoirFilled => self.reservoir_filled = holds,
            Fact::CylinderOpen => self.cylinder.open = holds,
            Fact::CylinderSecured => {
                self.cylinder.holding = if holds {
                    Holding::Secured
                } else {
                    Holding::StandingFree
                }
            }
            Fact::CylinderLaidDown => {
                self.cylinder.holding = if holds {
                    Holding::LaidDown
                } else {
                    Holding::StandingFree
                };
            }
            Fact::CylinderStandingFree => {
                self.cylinder.holding = if holds {
                    Holding::StandingFree
                } else {
                    Holding::Secured
                };
            }
            Fact::OutletClear => self.cylinder.outlet_clear = holds,
            Fact::WasherFitted => self.washer_good = holds,
            Fact::RegulatorSeated => {
                self.regulator = if holds { Regulator::Tight } else { Regulator::Off };
                self.cylinder.outlet_clear = holds;
                self.washer_good = self.washer_good || holds;
            }
            Fact::RegulatorPressurised => self.pressurised = holds,
            Fact::DeviceHasReservoir | Fact::FlameNear | Fact::GreaseNear => return None,
        }
        Some(self)
    }

    /// Why this is no safe end; `None` when it is one: off the patient, valve closed, nothing under pressure, flow at
    /// zero, nothing standing free.
    #[must_use]
    pub const fn unsafe_end(&self) -> Option<&'static str> {
        match Known::exactly(*self).end() {
            End::Unsafe(why) => Some(why),
            // Of a state nothing is unknown.
            End::Safe | End::Unknown(_) => None,
        }
    }
}
