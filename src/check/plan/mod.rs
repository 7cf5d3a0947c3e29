//! A transport: legs, patients, cylinders on board. Is the gas enough, which cylinder is on when, and when is it changed?
//!
//! ```
//! use oxyfolio::check::plan::{Answer, Leg, OnBoard, Order, Plan, Use};
//! use oxyfolio::quantity::{Flow, Pressure, Time};
//! use oxyfolio::{RULEBOOK, cylinder, device};
//!
//! let mask = Use::device(device::NON_REBREATHER, Flow::litres_per_minute(15.0)?);
//! let plan = Plan::new()
//!     .leg(Leg::new("ward to vehicle", Time::minutes(8.0)?).uses(mask))
//!     .leg(Leg::new("on the road", Time::minutes(20.0)?).delay(Time::minutes(4.0)?).uses(mask))
//!     .cylinder(OnBoard::new(cylinder::E, Pressure::psi(2000.0)?))
//!     .cylinder(OnBoard::new(cylinder::E, Pressure::psi(2000.0)?));
//! let answer = Answer::to(&RULEBOOK, &plan, Order::FewestChanges)?;
//! // 32 min and the book's margin of 50 %: 48 min at 15 L/min are 720 L. By factor one cylinder gives
//! // (2000 - 500) x 0.28 = 420 L down to the change-over pressure, the last (2000 - 200) x 0.28 = 504 L.
//! assert!(answer.enough);
//! assert_eq!(answer.needed_litres.round(), 720.0);
//! assert_eq!(answer.spare_minutes, 13);
//! assert_eq!(answer.change_overs.len(), 1);
//! assert_eq!(answer.change_overs[0].at_minutes.round(), 28.0);
//! // One alone is not; one more is the least that makes it so.
//! let short = Plan { cylinders: plan.cylinders[..1].to_vec(), ..plan };
//! let answer = Answer::to(&RULEBOOK, &short, Order::FewestChanges)?;
//! assert!(!answer.enough);
//! assert_eq!(oxyfolio::check::plan::fewest_to_add(&RULEBOOK, &short, Order::FewestChanges, cylinder::E)?, Some(1));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # The rules of a plan
//!
//! - The **time** of a leg and its delay are taken together, and the book's planning margin is added to them. The plan is
//!   enough when the gas lasts through all legs so lengthened. Which cylinder is on when, and what is left, is told for the
//!   time expected, without the margin.
//! - All patients of a leg breathe from **one supply**: their flows and what drives their ventilators are added up.
//! - A cylinder is **changed at the book's change-over pressure** while another is left. The last of them may be used to the
//!   residual pressure. What a changed cylinder still holds below the change-over pressure is not counted again.
//! - A cylinder at or below the change-over pressure is of use only as the last one.
//! - **Gas** is the lower of density and factor, as in [`duration`](super::duration). What a cylinder holds is worked out at
//!   the temperature at which its gauge was read, what must stay in it at the leg's. When nobody says at which temperature
//!   the gauges were read, it is the hottest of the plan and at least 21 °C: a hot cylinder holds less.
//! - Everything rounds to the safe side: gas and minutes to spare down, what lacks up.
//!
//! # Which order is best?
//!
//! [`Order::FewestChanges`] puts on the cylinder with the most usable gas, and leaves for the end the one that gains most
//! from being used to the residual pressure, where that is needed. At one temperature no other order needs fewer changes or
//! lasts longer. [`Order::EmptiestFirst`] uses up what is half empty, at the price of more changes.

mod add;
mod answer;
mod gas;
mod walk;

use alloc::{borrow::ToOwned as _, string::String, vec::Vec};
use core::fmt;

pub use add::{MOST_ADDED, fewest_to_add};
pub use answer::{Answer, Break, Caution, ChangeOver, Left, Segment};

use crate::book::{CylinderId, DeviceId};
use crate::oxygen::OutsideDomain;
use crate::quantity::{Flow, Gauge, Pressure, Temperature, Time};

/// In which order the cylinders are used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// The one with the most usable gas first.
    FewestChanges,
    /// The one with the least usable gas first.
    EmptiestFirst,
}

impl Order {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::FewestChanges => "fewest-changes",
            Self::EmptiestFirst => "emptiest-first",
        }
    }
}

/// A transport to be planned.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    /// Its legs, in order.
    pub legs: Vec<Leg>,
    /// The cylinders on board, one by one.
    pub cylinders: Vec<OnBoard>,
    /// The temperature at which the gauges were read, where it is known.
    pub read_at: Option<Temperature>,
}

impl Plan {
    /// No legs and no cylinders.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            legs: Vec::new(),
            cylinders: Vec::new(),
            read_at: None,
        }
    }

    /// With a further leg.
    #[must_use]
    pub fn leg(mut self, leg: Leg) -> Self {
        self.legs.push(leg);
        self
    }

    /// With a further cylinder.
    #[must_use]
    pub fn cylinder(mut self, cylinder: OnBoard) -> Self {
        self.cylinders.push(cylinder);
        self
    }

    /// With the temperature at which the gauges were read.
    #[must_use]
    pub const fn read_at(mut self, temperature: Temperature) -> Self {
        self.read_at = Some(temperature);
        self
    }
}

/// A part of the transport during which flow and temperature stay the same.
#[derive(Clone, Debug, PartialEq)]
pub struct Leg {
    /// What the crew calls it.
    pub name: String,
    /// How long it takes.
    pub time: Time,
    /// The delay to be expected.
    pub delay: Time,
    /// The temperature around the cylinders, where it is known.
    pub temperature: Option<Temperature>,
    /// What the patients use, one by one.
    pub uses: Vec<Use>,
}

impl Leg {
    /// A leg without delay on which no gas is used.
    #[must_use]
    pub fn new(name: &str, time: Time) -> Self {
        Self {
            name: name.to_owned(),
            time,
            delay: Time::ZERO,
            temperature: None,
            uses: Vec::new(),
        }
    }

    /// With a delay to be expected.
    #[must_use]
    pub const fn delay(mut self, delay: Time) -> Self {
        self.delay = delay;
        self
    }

    /// At a temperature.
    #[must_use]
    pub const fn temperature(mut self, temperature: Temperature) -> Self {
        self.temperature = Some(temperature);
        self
    }

    /// With a further patient.
    #[must_use]
    pub fn uses(mut self, patient: Use) -> Self {
        self.uses.push(patient);
        self
    }

    /// What all patients use together, in litres a minute.
    #[must_use]
    pub fn litres_per_minute(&self) -> f64 {
        let each =
            |patient: &Use| patient.flow.as_litres_per_minute() + patient.drive_gas.as_litres_per_minute();
        self.uses.iter().map(each).sum()
    }

    /// The time and the delay together.
    #[must_use]
    pub fn minutes(&self) -> f64 {
        self.time.as_minutes() + self.delay.as_minutes()
    }
}

/// What one patient uses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Use {
    /// The device, where the book has it.
    pub device: Option<DeviceId>,
    /// The flow set.
    pub flow: Flow,
    /// What a ventilator or a CPAP device uses to drive it, beside the flow.
    pub drive_gas: Flow,
}

impl Use {
    /// A device at a flow.
    #[must_use]
    pub const fn device(device: DeviceId, flow: Flow) -> Self {
        Self {
            device: Some(device),
            flow,
            drive_gas: Flow::ZERO,
        }
    }

    /// Nothing but what drives a device.
    #[must_use]
    pub const fn driven(drive_gas: Flow) -> Self {
        Self {
            device: None,
            flow: Flow::ZERO,
            drive_gas,
        }
    }
}

/// A cylinder on board.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnBoard {
    /// Its size.
    pub size: CylinderId,
    /// What its gauge shows.
    pub pressure: Pressure<Gauge>,
}

impl OnBoard {
    /// A cylinder at a reading.
    #[must_use]
    pub const fn new(size: CylinderId, pressure: Pressure<Gauge>) -> Self {
        Self { size, pressure }
    }
}

/// Why there is no answer to a plan.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoPlan {
    /// It has no legs.
    NoLegs,
    /// It has no cylinders.
    NoCylinders,
    /// No gas is used on any leg.
    NoFlow,
    /// An identifier belongs to another rulebook.
    NotThisBook,
    /// The density of oxygen isn't known at a reading or a temperature.
    OutsideDomain(OutsideDomain),
}

impl From<OutsideDomain> for NoPlan {
    fn from(outside: OutsideDomain) -> Self {
        Self::OutsideDomain(outside)
    }
}

impl fmt::Display for NoPlan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoLegs => "expected a plan with at least one leg, found none",
            Self::NoCylinders => "expected a plan with at least one cylinder, found none",
            Self::NoFlow => "expected a leg on which gas flows for some time, found none",
            Self::NotThisBook => "expected identifiers of this rulebook, found one of another",
            Self::OutsideDomain(outside) => return outside.fmt(f),
        })
    }
}

impl core::error::Error for NoPlan {}
