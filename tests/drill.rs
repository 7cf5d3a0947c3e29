//! Practice sheets: every answer is found again by another way than the checker's own.
//!
//! Sources: minutes by the published density table (`tests/published/oxygen-density.csv`, CoolProp) and the factor method of
//! the trade; limits, fits and the order of steps by reading the chapters' text line by line (`drill/chapters.rs`), without
//! the project's reader.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

#[path = "drill/answers.rs"]
mod answers;
#[path = "drill/chapters.rs"]
mod chapters;
mod common;
#[allow(dead_code)]
#[path = "review/generate/gas.rs"]
mod gas;
#[path = "drill/sheets.rs"]
mod sheets;
