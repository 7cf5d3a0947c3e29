//! The equipment with the gas in it: what actions and time do to both.

use super::{Gas, Loss, Refusal, Regulator, State};
use crate::book::Action;
use crate::quantity::{Flow, Gauge, Pressure, Time};

/// The space in a regulator that stands under the cylinder's pressure, in litres.
///
/// Common practice, no source: some cubic centimetres with the gauge. It decides how soon a regulator behind a closed
/// valve has run out, and how much gas is lost by bleeding it.
pub const REGULATOR_SPACE: f64 = 0.01;

/// A [`State`] with the gas in its cylinders, the flow that is set, and a leak.
///
/// Pressure ends only by bleeding, or by the flow or a leak running the regulator out. Gas never grows but by changing
/// the cylinder.
///
/// What the model leaves out: the little that is lost when an outlet is blown clear; a leak of a closed valve.
///
/// ```
/// use oxyfolio::book::Action;
/// use oxyfolio::equipment::{Gas, Given, Outfit, State};
/// use oxyfolio::quantity::{Flow, Pressure, Temperature, Time, Volume};
///
/// let gas = Gas::new(Volume::litres(2.9)?, Temperature::celsius(21.11)?, Pressure::psi(500.0)?)?;
/// let mut outfit = Outfit::new(State::PUT_AWAY, gas, Flow::ZERO);
/// for action in [Action::SeatRegulator, Action::TightenRegulator, Action::OpenCylinder] {
///     outfit = outfit.act(action, Given::Nothing)?;
/// }
/// outfit = outfit.act(Action::SetFlow, Given::Flow(Flow::litres_per_minute(10.0)?))?;
/// let later = outfit.pass(Time::minutes(5.0)?);
/// assert_eq!(later.gas().pressure().as_psi().floor(), 253.0);
/// assert!(later.state().pressurised);
/// // After another quarter of an hour nothing is left, and nothing is under pressure.
/// let dry = later.pass(Time::minutes(15.0)?);
/// assert!(dry.state().cylinder.empty && !dry.state().pressurised);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outfit {
    state: State,
    gas: Gas,
    spare: Option<Gas>,
    flow: Flow,
    leak: Flow,
    /// What the regulator holds above a reading of zero while the valve is closed, in litres.
    held_back: f64,
}

/// What an action needs to be told besides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Given {
    /// Nothing.
    Nothing,
    /// The flow that is set.
    Flow(Flow),
    /// The gas in the cylinder that is brought.
    Cylinder(Gas),
}

impl Outfit {
    /// A state with the gas in its cylinder and the flow that its regulator is set to.
    ///
    /// Whether the flow is on, and whether the cylinder is empty, follows from them. A spare in the state is taken to be
    /// empty: one that holds gas is [brought](Action::FetchCylinder).
    #[must_use]
    pub const fn new(mut state: State, gas: Gas, flow: Flow) -> Self {
        state.flow_on = flow.as_litres_per_minute() > 0.0;
        state.cylinder.empty = gas.is_empty();
        if let Some(spare) = &mut state.spare {
            spare.empty = true;
        }
        if gas.is_empty() && state.cylinder.open {
            state = state.run_out(Loss::Leak);
        }
        Self {
            state,
            gas,
            spare: None,
            flow,
            leak: Flow::ZERO,
            held_back: if state.pressurised {
                gas.share(REGULATOR_SPACE)
            } else {
                0.0
            },
        }
    }

    /// With a leak of the regulator, its washer or its tubing from now on: gas is lost wherever there is pressure.
    #[must_use]
    pub const fn leaking(mut self, leak: Flow) -> Self {
        self.leak = leak;
        self
    }

    /// The state.
    #[must_use]
    pub const fn state(self) -> State {
        self.state
    }

    /// The gas in the cylinder in use.
    #[must_use]
    pub const fn gas(self) -> Gas {
        self.gas
    }

    /// What flows to the device now.
    #[must_use]
    pub const fn flow(self) -> Flow {
        if self.state.flow_on && self.state.pressurised {
            self.flow
        } else {
            Flow::ZERO
        }
    }

    /// What the gauge of the regulator shows: nothing without pressure; `None` behind a closed valve, where what is left
    /// in the regulator isn't measured well enough to be told.
    #[must_use]
    pub fn reading(self) -> Option<Pressure<Gauge>> {
        match (self.state.pressurised, self.state.cylinder.open) {
            (false, _) => Some(Pressure::ZERO),
            (true, true) => Some(self.gas.pressure()),
            (true, false) => None,
        }
    }

    /// After an action, as [`State::after`]. A cylinder that is brought comes with its gas; a flow is set to an amount.
    ///
    /// # Errors
    ///
    /// [`Refusal`] as [`State::after`]; when a flow is set and none above zero is given; when a cylinder is brought and
    /// its gas isn't given.
    pub const fn act(self, action: Action, given: Given) -> Result<Self, Refusal> {
        let state = match self.state.after(action) {
            Ok(state) => state,
            Err(refusal) => return Err(refusal),
        };
        let mut next = Self { state, ..self };
        match action {
            Action::SetFlow => match given {
                Given::Flow(flow) if flow.as_litres_per_minute() > 0.0 => next.flow = flow,
                _ => return Err(Refusal("no flow above zero is given")),
            },
            Action::ZeroFlow => next.flow = Flow::ZERO,
            Action::FetchCylinder => {
                let Given::Cylinder(gas) = given else {
                    return Err(Refusal("the gas of the cylinder that is brought is not given"));
                };
                if matches!(state.regulator, Regulator::Off) {
                    next.gas = gas;
                    next.state.cylinder.empty = gas.is_empty();
                } else {
                    next.spare = Some(gas);
                    if let Some(spare) = &mut next.state.spare {
                        spare.empty = gas.is_empty();
                    }
                }
            }
            Action::OpenCylinder if state.pressurised && !self.state.cylinder.open => next = next.filled(),
            Action::CloseCylinder if state.pressurised && self.state.cylinder.open => {
                next.held_back = self.gas.share(REGULATOR_SPACE);
            }
            Action::BleedRegulator => next.held_back = 0.0,
            Action::RemoveRegulator if self.state.spare.is_some() => {
                next.gas = match self.spare {
                    Some(gas) => gas,
                    None => self.gas.emptied(),
                };
                next.spare = None;
            }
            _ => {}
        }
        Ok(next)
    }

    /// The regulator has filled from the cylinder.
    const fn filled(mut self) -> Self {
        let lacks = self.gas.share(REGULATOR_SPACE) - self.held_back;
        if lacks > 0.0 {
            self.gas = self.gas.less(lacks);
        }
        self.held_back = 0.0;
        self
    }

    /// After a time in which nothing is done.
    ///
    /// Gas flows while the flow is on, and leaks, wherever there is pressure. An open valve with nothing on it lets all
    /// gas go in no time worth counting.
    #[must_use]
    pub const fn pass(mut self, time: Time) -> Self {
        let (flow, leak) = (self.flow(), self.leak);
        let lost = (flow.as_litres_per_minute() + leak.as_litres_per_minute()) * time.as_minutes();
        let open = self.state.cylinder.open;
        let out = if open && matches!(self.state.regulator, Regulator::Off) {
            if time.as_minutes() > 0.0 {
                self.gas = self.gas.emptied();
            }
            self.gas.is_empty()
        } else if !self.state.pressurised {
            false
        } else if open {
            self.gas = self.gas.draw(flow, leak, time);
            self.gas.is_empty()
        } else {
            self.held_back -= lost;
            lost > 0.0 && self.held_back <= 0.0
        };
        if out {
            self.held_back = 0.0;
            self.state = self.state.run_out(if leak.as_litres_per_minute() > 0.0 {
                Loss::Leak
            } else {
                Loss::Flow
            });
        }
        self
    }
}
