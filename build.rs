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

use std::{env, fmt::Write as _, fs, path::Path, process::ExitCode};

fn main() -> ExitCode {
    println!("cargo::rerun-if-changed=rules");
    println!("cargo::rerun-if-changed=src/book");
    println!("cargo::rerun-if-changed=src/check");
    println!("cargo::rerun-if-changed=src/compile");
    println!("cargo::rerun-if-changed=src/equipment");
    println!("cargo::rerun-if-changed=src/guard");
    println!("cargo::rerun-if-changed=src/lookup");
    println!("cargo::rerun-if-changed=src/oxygen");
    println!("cargo::rerun-if-changed=src/quantity");
    println!("cargo::rerun-if-changed=src/storage");
    let Some(out) = env::var_os("OUT_DIR") else {
        eprintln!("error: expected the variable OUT_DIR from Cargo, found none");
        return ExitCode::FAILURE;
    };
    let compiled = match compile::folder::load(Path::new("rules")) {
        Ok(compiled) => compiled,
        Err(rejected) => {
            // Cargo shows what a build script that fails wrote to standard error.
            eprint!("{}", rejected.render(false));
            eprintln!("the rulebook in rules/ has errors, so the library was not built");
            return ExitCode::FAILURE;
        }
    };
    let tables = compile::emit::rust(&compiled.book);
    let mut chapters = String::from("&[\n");
    for (_, source) in compiled.sources.iter() {
        // Writing to a String cannot fail.
        let _ = writeln!(chapters, "    ({:?}, {:?}),", source.name, source.text);
    }
    chapters.push_str("]\n");
    let out = Path::new(&out);
    for (name, text) in [("rulebook.rs", tables), ("chapters.rs", chapters)] {
        if let Err(error) = fs::write(out.join(name), text) {
            eprintln!("error: cannot write {name}: {error}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}
