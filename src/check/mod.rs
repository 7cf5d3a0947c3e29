//! The checker: asks the rulebook about a set-up, and works out how long the gas lasts.
//!
//! Findings go to a visitor one by one, and borrow the rule they are about. Nothing here allocates but [`plan`] and
//! [`stock`], which need the feature `alloc`.

pub mod duration;
mod finding;
#[cfg(feature = "alloc")]
pub mod plan;
#[cfg(feature = "alloc")]
pub mod review;
pub(crate) mod setup;
#[cfg(feature = "alloc")]
pub mod stock;

pub use finding::{About, Finding, Level, Missing};
pub use setup::{NotChecked, NotThisBook, Setup, check_setup};
