//! The desk over plain HTTP: who may ask, what is shown, what an edit does, and that nothing is written.
//!
//! In a real browser it is tested by `tests/desk/browser/run`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;
#[path = "common/decided.rs"]
mod decided;
#[path = "common/repository.rs"]
mod repository;

#[path = "desk/cards.rs"]
mod cards;
#[path = "desk/follow.rs"]
mod follow;
#[path = "desk/gate.rs"]
mod gate;
#[path = "desk/hostile.rs"]
mod hostile;
#[path = "desk/order.rs"]
mod order;
#[path = "desk/program.rs"]
mod program;
#[path = "desk/since.rs"]
mod since;
#[path = "desk/support.rs"]
mod support;
#[path = "desk/trial.rs"]
mod trial;
#[path = "desk/words.rs"]
mod words;
