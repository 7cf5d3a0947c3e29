//! Broken and hostile input: never a crash, never a wait, never all the memory, and always a sentence that says what is
//! wrong. The limits are those of the language page, read from its table.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;

#[path = "hostile/answers.rs"]
mod answers;
#[path = "hostile/bombs.rs"]
mod bombs;
#[path = "hostile/files.rs"]
mod files;
#[path = "hostile/limits.rs"]
mod limits;

use std::{sync::mpsc, thread, time::Duration};

use oxyfolio::compile::{Compiled, Rejected, compile, source::Sources};

/// Runs in another thread and gives its answer; takes longer than anything here ever should, and the test fails.
fn in_time<T: Send + 'static>(what: &str, run: impl FnOnce() -> T + Send + 'static) -> T {
    let (sender, receiver) = mpsc::channel();
    thread::spawn(move || sender.send(run()));
    match receiver.recv_timeout(Duration::from_secs(30)) {
        Ok(answer) => answer,
        Err(error) => panic!("{what}: {error}"),
    }
}

/// Compiles one chapter, and draws what is wrong with it.
fn read(what: &str, text: String) -> Result<Compiled, (Box<Rejected>, String)> {
    in_time(what, move || {
        let mut sources = Sources::default();
        sources.add("a.md".to_owned(), "a.md".to_owned(), text);
        compile(sources).map_err(|rejected| {
            let drawn = rejected.render(false);
            (rejected, drawn)
        })
    })
}

/// The codes of what is wrong with a chapter, each once; a lone chapter always lacks something.
fn codes(what: &str, text: String) -> Vec<&'static str> {
    let (rejected, drawn) = read(what, text).expect_err(what);
    assert!(drawn.len() < 300_000, "{what}: {} bytes", drawn.len());
    let mut codes: Vec<_> = rejected.diagnostics.iter().map(|found| found.code).collect();
    codes.sort_unstable();
    codes.dedup();
    codes
}

/// A chapter with one rule block.
fn block(kind: &str, yaml: &str) -> String {
    format!("# A\n\nWhy.\n\n```yaml {kind}\n{yaml}\n```\n")
}
