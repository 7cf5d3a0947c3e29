#![doc = include_str!("guide.md")]
#![cfg_attr(not(feature = "std"), no_std)]
#![forbid(unsafe_code)]
// The library alone: what tests do is theirs.
#![cfg_attr(
    not(test),
    deny(
        clippy::missing_errors_doc,
        clippy::missing_panics_doc,
        clippy::must_use_candidate,
        clippy::return_self_not_must_use,
        clippy::string_slice,
        clippy::unreachable,
        missing_debug_implementations
    )
)]

#[cfg(feature = "alloc")]
extern crate alloc;
// Generated tables name this crate; inside it they need the same name.
extern crate self as oxyfolio;

#[cfg_attr(feature = "alloc", path = "storage/owned.rs")]
#[cfg_attr(not(feature = "alloc"), path = "storage/fixed.rs")]
mod storage;

pub mod book;
mod builtin;
#[cfg(feature = "cards")]
pub mod cards;
pub mod check;
#[cfg(feature = "cli")]
pub mod cli;
#[cfg(feature = "compare")]
pub mod compare;
#[cfg(feature = "compile")]
pub mod compile;
#[cfg(feature = "desk")]
pub mod desk;
#[cfg(feature = "std")]
pub mod drill;
pub mod equipment;
#[cfg(feature = "serde")]
pub mod exchange;
pub mod guard;
#[cfg(all(doc, feature = "compare"))]
#[doc = include_str!("limits.md")]
pub mod limits {}
#[cfg(feature = "alloc")]
pub mod lookup;
pub mod oxygen;
pub mod quantity;
#[cfg(feature = "records")]
pub mod records;
#[cfg(feature = "std")]
mod rounding;

#[cfg(feature = "compile")]
pub use builtin::CHAPTERS;
pub use builtin::{
    RULEBOOK, TABLES, card, condition, connection, cylinder, device, group, hazard, policy, procedure, target,
};

/// The examples of README.md, which show the reader of rulebooks too.
#[cfg(all(doctest, feature = "compile"))]
#[doc = include_str!("../README.md")]
pub struct Readme;
