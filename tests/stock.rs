//! Cylinders in stock: tests and fillings against published rules, minutes against sums, the order of swapping, mistakes in
//! the list, hostile lists, the program, and the sheet taken apart again. The sheet needs typst and Debian's poppler-utils;
//! a machine without them fails.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;
#[allow(dead_code)]
#[path = "cards/pdf.rs"]
mod pdf;
#[path = "cards/words.rs"]
mod words;

#[path = "stock/dates.rs"]
mod dates;
#[path = "stock/filling.rs"]
mod filling;
#[path = "stock/hostile.rs"]
mod hostile;
#[path = "stock/mended.rs"]
mod mended;
#[path = "stock/minutes.rs"]
mod minutes;
#[path = "stock/mistakes.rs"]
mod mistakes;
#[path = "stock/order.rs"]
mod order;
#[path = "stock/program.rs"]
mod program;
#[path = "stock/said.rs"]
mod said;
#[path = "stock/sheet.rs"]
mod sheet;
#[path = "stock/support.rs"]
mod support;
