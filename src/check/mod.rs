//! The checker: asks the rulebook about a set-up, and works out how long the gas lasts.
//!
//! Nothing here allocates: findings go to a visitor one by one, and borrow the rule they are about.

pub mod duration;
mod finding;
mod setup;

pub use finding::{About, Finding, Level, Missing};
pub use setup::{NotChecked, NotThisBook, Setup, check_setup};
