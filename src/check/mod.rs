//! The checker: asks the rulebook about a set-up, and works out how long the gas lasts.
//!
//! Findings go to a visitor one by one, and borrow the rule they are about; [`Findings`] keeps them without an allocator.
//! Nothing here allocates but what needs the feature `alloc`: [`Report`], [`plan`], [`review`] and [`stock`].

pub mod duration;
mod finding;
mod findings;
#[cfg(feature = "alloc")]
pub mod plan;
#[cfg(feature = "alloc")]
pub mod review;
pub(crate) mod setup;
#[cfg(feature = "alloc")]
pub mod stock;

pub use finding::{About, Finding, Level, Missing, Next};
pub use findings::Findings;
#[cfg(feature = "alloc")]
pub use setup::report::Report;
pub use setup::{NotChecked, NotJudged, NotThisBook, Setup, check_setup};
