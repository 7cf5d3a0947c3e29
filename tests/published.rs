//! The demo rulebook and the library's answers against published facts.
//!
//! The facts stand in `published/facts.tsv`, each with its source and how it is known. A test is named after the fact it
//! checks, and its message names the row.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that cannot go on must fail"
)]

#[path = "published/connections.rs"]
mod connections;
#[path = "published/cylinders.rs"]
mod cylinders;
#[path = "published/devices.rs"]
mod devices;
#[path = "published/durations.rs"]
mod durations;
#[path = "published/entrainment.rs"]
mod entrainment;
#[path = "published/facts.rs"]
mod facts;
#[path = "published/policies.rs"]
mod policies;
#[path = "published/procedures.rs"]
mod procedures;
#[path = "published/real_gas.rs"]
mod real_gas;
#[path = "published/support.rs"]
mod support;
#[path = "published/targets.rs"]
mod targets;
#[path = "published/units.rs"]
mod units;
