//! The equipment model: its table, every state that can come about, and what is known when not all is recorded.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

#[path = "equipment/document.rs"]
mod document;
#[path = "equipment/gas.rs"]
mod gas;
#[path = "equipment/invariants.rs"]
mod invariants;
#[path = "equipment/known.rs"]
mod known;
#[path = "equipment/model.rs"]
mod model;
#[path = "equipment/outfit.rs"]
mod outfit;
#[path = "equipment/reliance.rs"]
mod reliance;
#[path = "equipment/second.rs"]
mod second;
#[path = "equipment/seen.rs"]
mod seen;
#[path = "equipment/states.rs"]
mod states;
#[path = "equipment/table.rs"]
mod table;
