//! The equipment as a small, pure state machine: the one place where physical meaning lives.
//!
//! A [`State`] is the cylinder in use, a spare brought beside it, the regulator, the flow, the device and the patient.
//! One table ([`row`]) says of each [`Action`](crate::book::Action) of a step what it needs and what it does; from it
//! follow [`State::after`] and, where not everything is recorded, [`Known::after`]. Some actions are looks: they change
//! nothing, and other actions rely on them ([`relies_on`]).
//!
//! An [`Outfit`] is a state with the [`Gas`] in its cylinders, for which time passes.
//!
//! It knows no rulebook: hazards are the book's, and are asked of a state's facts.
//!
#![doc = include_str!("transitions.md")]

mod end;
mod gas;
mod known;
mod observed;
mod outfit;
mod part;
mod reliance;
mod state;
mod table;
mod transition;

pub use end::End;
pub use gas::Gas;
pub use known::Known;
pub use outfit::{Given, Outfit, REGULATOR_SPACE};
pub use part::{Part, Values};
pub use reliance::{Reliance, relies_on};
pub use state::{Bottle, Holding, Regulator, State};
pub use table::{Case, Effect, Loss, Need, row, run_out};
pub use transition::Refusal;
