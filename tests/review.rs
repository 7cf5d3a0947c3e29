//! The review of runs against made-up ones: 5,000 with nothing wrong, 5,000 with one thing wrong; and the making of them
//! checked for itself.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "alloc")]

#[path = "review/again.rs"]
mod again;
#[path = "review/clock.rs"]
mod clock;
#[path = "review/differential.rs"]
mod differential;
#[cfg(feature = "compile")]
#[path = "review/drawn.rs"]
mod drawn;
#[path = "review/generate.rs"]
mod generate;
#[path = "review/made.rs"]
mod made;
#[path = "review/patient.rs"]
mod patient;
#[path = "review/readings.rs"]
mod readings;
#[path = "review/refused.rs"]
mod refused;
#[path = "review/steps.rs"]
mod steps;
#[path = "review/told.rs"]
mod told;
#[path = "review/words.rs"]
mod words;
#[path = "review/worked.rs"]
mod worked;
