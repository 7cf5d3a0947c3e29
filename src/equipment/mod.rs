//! The equipment as a small, pure state machine: the one place where physical meaning lives.
//!
//! A [`State`] is the cylinder in use, a spare brought beside it, the regulator, the flow, the device and the patient.
//! Each [`Action`](crate::book::Action) of a step has a precondition and an effect ([`State::after`]). Some actions are
//! looks: they change nothing, and other actions rely on them ([`relies_on`]).
//!
//! It knows no rulebook: hazards are the book's, and are asked of a state's facts.

mod reliance;
mod state;
mod transition;

pub use reliance::{Reliance, relies_on};
pub use state::{Bottle, Holding, Regulator, State};
pub use transition::Refusal;
