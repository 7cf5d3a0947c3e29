//! What the lints find in the demonstration rulebook after a small edit, and that they find nothing in it as it is.
//!
//! The place of a finding is marked in the new text with `‹` and `›`, so nobody counts lines or columns.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

mod common;

#[cfg(test)]
#[path = "lints/allow.rs"]
mod allow;
#[cfg(test)]
#[path = "lints/book.rs"]
mod book;
#[cfg(test)]
#[path = "lints/by_hand.rs"]
mod by_hand;
#[cfg(test)]
#[path = "lints/contradictions.rs"]
mod contradictions;
#[cfg(test)]
#[path = "lints/dates.rs"]
mod dates;
#[cfg(test)]
#[path = "lints/equipment.rs"]
mod equipment;
#[cfg(test)]
#[path = "common/followed.rs"]
mod followed;
#[cfg(test)]
#[path = "lints/page.rs"]
mod page;
#[cfg(test)]
#[path = "lints/patients.rs"]
mod patients;
#[cfg(test)]
#[path = "lints/texts.rs"]
mod texts;
#[cfg(test)]
#[path = "lints/unused.rs"]
mod unused;
