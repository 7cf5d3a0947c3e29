//! Proves that every order of steps a procedure allows is safe.
//!
//! A procedure orders its steps only by `after`. For each procedure every order that `after` allows is walked on the
//! equipment model, breadth first, with equal states merged: so the first bad end found is the shortest. Procedures
//! that follow one another are proved as a chain: a procedure begins in every state in which one it follows can end.
//!
//! - `order`: the partial order, closed over.
//! - `world`: what a hazard can observe of the model; which devices stand for the others.
//! - `walk`: the breadth-first walk of one procedure.
//! - `chain`: all procedures, one after the other.
//! - `relying`: steps that come before what they rely on.

mod chain;
mod order;
mod relying;
mod walk;
mod world;

pub use chain::{Unsafe, Wrong, redundant, unsafe_orders};
pub use world::{Scene, World};
