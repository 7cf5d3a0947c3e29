//! What can go wrong around the program: disks that are full, folders that may not be written, runs that are killed or
//! interrupted, a broken typesetting program, odd clocks, locales and names. Each is made to happen.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(all(feature = "cli", unix))]

#[path = "failures/around.rs"]
mod around;
mod common;
#[path = "failures/output.rs"]
mod output;
#[path = "failures/stopped.rs"]
mod stopped;
#[path = "failures/typst.rs"]
mod typst;

use std::{
    collections::BTreeMap,
    fs,
    os::unix::fs::PermissionsExt as _,
    path::{Path, PathBuf},
    process::{Command, Output},
};

/// The program.
fn program() -> Command {
    Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
}

/// The program as a shell runs it: `"$@"` in the script stands for it and its arguments.
fn in_shell(script: &str, arguments: &[&str]) -> Command {
    let mut command = Command::new("sh");
    command
        .args(["-c", script, "sh", env!("CARGO_BIN_EXE_oxyfolio")])
        .args(arguments);
    command
}

/// What a run said of its failure: one sentence, with its exit code; never a panic.
fn refused(output: &Output) -> String {
    let said = String::from_utf8(output.stderr.clone()).unwrap();
    assert_eq!(output.status.code(), Some(2), "{said}");
    assert!(
        said.starts_with("error: ") && said.trim().lines().count() == 1,
        "{said}"
    );
    said
}

/// Every file of a folder.
fn files(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .map(|path| (path.clone(), fs::read(path).unwrap()))
        .collect()
}

/// A program in place of typst: it says its version, and then does what is given.
fn in_place_of_typst(folder: &Path, body: &str) -> String {
    let path = folder.join("typst-in-place");
    fs::write(
        &path,
        format!("#!/bin/sh\nif [ \"$1\" = --version ]; then echo 'typst 0.15.1 (x)'; exit 0; fi\nfor last; do :; done\n{body}\n"),
    )
    .unwrap();
    fs::set_permissions(&path, fs::Permissions::from_mode(0o755)).unwrap();
    path.to_str().unwrap().to_owned()
}
