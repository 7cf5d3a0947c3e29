//! Transport plans: sums done by hand, laws, the optimum against trying everything, the program, the chart.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;

#[path = "plan/brute.rs"]
mod brute;
#[path = "plan/laws.rs"]
mod laws;
#[path = "plan/mended.rs"]
mod mended;
#[path = "plan/mistakes.rs"]
mod mistakes;
#[path = "plan/order.rs"]
mod order;
#[path = "plan/program.rs"]
mod program;
#[path = "plan/support.rs"]
mod support;
#[path = "plan/worked.rs"]
mod worked;
