//! Compiles the rulebook in `rules/` into the Rust tables that the library includes.
//!
//! The reader is the library's own: the same modules, taken in by path. An error in the rulebook stops the build with
//! the same words that `oxyfolio check` prints.

// Shared modules: the build uses a part of each.
#![allow(dead_code, unused_imports, missing_docs)]

extern crate alloc;

#[path = "src/book/mod.rs"]
mod book;
#[path = "src/check/mod.rs"]
mod check;
#[path = "src/compile/mod.rs"]
mod compile;
#[path = "src/equipment/mod.rs"]
mod equipment;
#[path = "src/guard/mod.rs"]
mod guard;
#[path = "src/lookup/mod.rs"]
mod lookup;
#[path = "src/oxygen/mod.rs"]
mod oxygen;
#[path = "src/quantity/mod.rs"]
mod quantity;
#[path = "src/storage/owned.rs"]
mod storage;

use std::process::ExitCode;

fn main() -> ExitCode {
    println!("cargo::rerun-if-changed=src/book");
    println!("cargo::rerun-if-changed=src/check");
    println!("cargo::rerun-if-changed=src/compile");
    println!("cargo::rerun-if-changed=src/equipment");
    println!("cargo::rerun-if-changed=src/guard");
    println!("cargo::rerun-if-changed=src/lookup");
    println!("cargo::rerun-if-changed=src/oxygen");
    println!("cargo::rerun-if-changed=src/quantity");
    println!("cargo::rerun-if-changed=src/storage");
    compile::build_script("rules")
}
