//! Run records: reading, mistakes, hostile input, the pass over files, and the program around it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;

#[path = "records/support.rs"]
mod support;

#[path = "records/form.rs"]
mod form;
#[path = "records/hostile.rs"]
mod hostile;
#[path = "records/mended.rs"]
mod mended;
#[path = "records/mistakes.rs"]
mod mistakes;
#[path = "records/pass.rs"]
mod pass;
#[path = "records/program.rs"]
mod program;
#[path = "records/schemas.rs"]
mod schemas;
#[path = "records/times.rs"]
mod times;
