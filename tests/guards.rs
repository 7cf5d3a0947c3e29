//! Guards: what is read, interpreted, printed and emitted as Rust agrees with tables of three-valued logic.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

#[cfg(test)]
#[path = "guards/all_at_once.rs"]
mod all_at_once;
#[cfg(test)]
#[path = "guards/amount.rs"]
mod amount;
#[cfg(test)]
#[path = "guards/borders.rs"]
mod borders;
#[cfg(test)]
#[path = "guards/demo.rs"]
mod demo;
#[cfg(test)]
#[path = "guards/hints.rs"]
mod hints;
#[cfg(test)]
#[path = "guards/inputs.rs"]
mod inputs;
#[cfg(test)]
#[path = "guards/language.rs"]
mod language;
#[cfg(test)]
#[path = "guards/laws.rs"]
mod laws;
#[cfg(test)]
#[path = "guards/oracle.rs"]
mod oracle;
#[cfg(test)]
#[path = "guards/printed.rs"]
mod printed;
#[cfg(test)]
#[path = "guards/random.rs"]
mod random;
#[cfg(test)]
#[path = "guards/recorded.rs"]
mod recorded;
#[cfg(test)]
#[path = "guards/state.rs"]
mod state;
#[cfg(test)]
#[path = "guards/tables.rs"]
mod tables;

#[path = "guards/tree.rs"]
mod tree;
#[cfg(test)]
#[path = "guards/world.rs"]
mod world;
