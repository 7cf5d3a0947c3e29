//! Review of a run's record against the book: what was done, read and set, replayed in time.
//!
//! A [`Run`] is what a crew wrote down. The [`Reviewer`] lets it happen again on the equipment model
//! ([`equipment::Known`](crate::equipment::Known)), uses up the gas, follows the steps along the book's procedures, and asks
//! the book's hazards at every event. Each [`Finding`] quotes the rule it is about.
//!
//! # What is looked for
//!
//! | code | what it says | rule |
//! | --- | --- | --- |
//! | `hazard` | a hazard was entered: when, how long, and what the equipment was like | the hazard |
//! | `flow-too-low`, `flow-too-high` | the flow was outside the device's range with the device on the patient | the device |
//! | `device-does-not-fit` | the device put on isn't made for the patient's group | the device |
//! | `reservoir-not-filled` | a device with a bag was put on before the bag was filled | the device |
//! | `target-missed`, `target-exceeded` | the saturation stayed out of the target, and nothing was changed within the book's time | the target |
//! | `step-too-early`, `step-skipped` | a step before one that comes first; a critical step that isn't in the record | the procedure's step |
//! | `step-out-of-place`, `procedure-does-not-follow` | something done, or a procedure begun, where the book doesn't have it | the procedure |
//! | `step-refused` | the equipment doesn't allow what was recorded, or it would do harm | the procedure |
//! | `unsafe-end` | at the end the cylinder is open, the regulator under pressure, the flow on, or the device on the patient | the procedure that ends safe |
//! | `pressure-fell-too-fast`, `pressure-fell-too-slow` | two readings that the flow doesn't explain, with the leak or the size that would | the cylinder |
//! | `below-residual` | a reading below the residual pressure with the device on the patient | the policy |
//! | `would-run-out` | by the last reading and the flow since, the gas ended before it was stopped or changed | the policy |
//! | `…-not-recorded`, `no-target`, `hazard-unknown` | what could not be checked | what it would have been checked by |
//! | `time-…`, `event-duplicate` | lines out of order, past midnight with the old date, after a jump of the clock, or twice | the agency |
//!
//! # How it is judged
//!
//! **What was not recorded is unknown**, and is told as such. At the start nothing is known of the equipment, unless the
//! record begins with a procedure that follows none: then it begins as the book lets that procedure begin. What was done
//! must have been possible, and so a record that begins in the middle teaches how things were.
//!
//! **Steps.** A record doesn't say which procedure a step belongs to. Every reading of it that the book allows is followed;
//! when none is left, the one that needs the fewest excuses is told. A look more than the book asks for, and a step done
//! again, are never wrong. A critical step that is missing is a finding; where what it does was so already, only a note, but a
//! look that is missing never is one. A step that isn't critical may be left out.
//!
//! **The patient's saturation.** That it is low is nobody's fault. A hazard that asks for the saturation, and a target, are
//! found only where the reading was out for longer than the target's time without a change of oxygen in the right direction.
//! Where no target can be chosen such a hazard is told at once.
//!
//! **Gas** is drawn down from the last reading by the flow set ([`equipment::Gas`](crate::equipment::Gas)), so that hazards of
//! pressure and minutes are told at the time they came, though nobody read the gauge then. Readings of a closed cylinder say
//! nothing of it, and are not used. How far readings may be off stands in `ledger.rs`, and in the book as `gauge-tolerance` and
//! `flow-tolerance`.
//!
//! **Never told** from a record are hazards about flames and grease near the oxygen, for which records have no place.
//!
//! **A record without any action** (`do`) is read as a list of readings: a flow above zero is taken to be to the patient.
//! Steps and equipment could then not be checked, and that is said.

mod aim;
mod asking;
mod chart;
mod closing;
mod explain;
mod finding;
mod follow;
mod happens;
mod ledger;
mod record;
mod replay;
mod reviewer;
mod watch;
mod words;

pub use finding::{About, Fault, Finding, Mismatch, NotRecorded, Scene};
pub use record::{Event, Field, Moment, Run, Unreadable};
pub use reviewer::{Notes, Reviewer};
