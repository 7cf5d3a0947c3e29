//! How long the whole set of cards and sheets takes, against the bare `typst compile` of the same documents.
//! `cargo bench --bench cards` fails when a target is missed. Needs typst.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

use std::{
    num::NonZero,
    path::{Path, PathBuf},
    process::{Command, Stdio},
    sync::atomic::{AtomicUsize, Ordering},
    thread,
    time::Instant,
};

use oxyfolio::RULEBOOK;
use oxyfolio::cards::{
    Form, Wanted, documents, print,
    typst::{Program, arguments, lay_out_cards},
};

/// The most our run may take, against typst alone.
const RATIO: f64 = 1.3;
/// The most that the demo's set may take, in seconds, on two idle cores.
const SECONDS: f64 = 3.0;

/// The documents, laid out once, each in a folder of its own.
fn laid_out(root: &Path) -> Vec<PathBuf> {
    documents(&RULEBOOK, &Wanted::default())
        .unwrap()
        .iter()
        .map(|(name, document)| {
            let folder = root.join(name);
            std::fs::create_dir(&folder).unwrap();
            lay_out_cards(&folder, document).unwrap();
            std::fs::create_dir(folder.join("made")).unwrap();
            folder
        })
        .collect()
}

/// typst alone, on as many documents at once as our run has.
fn bare(folders: &[PathBuf]) {
    let next = AtomicUsize::new(0);
    let workers = thread::available_parallelism().map_or(1, NonZero::get);
    thread::scope(|scope| {
        for _ in 0..workers {
            scope.spawn(|| {
                while let Some(folder) = folders.get(next.fetch_add(1, Ordering::Relaxed)) {
                    let status = Command::new("typst")
                        .args(arguments(folder, RULEBOOK.agency.effective, Form::Pdf))
                        .stdin(Stdio::null())
                        .stdout(Stdio::null())
                        .stderr(Stdio::null())
                        .status()
                        .unwrap();
                    assert!(status.success());
                }
            });
        }
    });
}

fn seconds(run: impl FnOnce()) -> f64 {
    let start = Instant::now();
    run();
    start.elapsed().as_secs_f64()
}

fn main() {
    // Cargo's tests also start benches; without optimisation the figure says nothing.
    if cfg!(debug_assertions) || !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let folders = laid_out(folder.path());
    let program = Program::find("typst").unwrap();
    let out = folder.path().join("out");
    let (mut ours, mut typst) = (f64::INFINITY, f64::INFINITY);
    // Turn about, so that what else the machine does falls on both.
    for _ in 0..5 {
        typst = typst.min(seconds(|| bare(&folders)));
        ours = ours.min(seconds(|| {
            print(&RULEBOOK, &Wanted::default(), &program, &out).unwrap();
        }));
    }
    println!(
        "{} documents: {ours:.2} s; typst alone {typst:.2} s; ratio {:.2}",
        folders.len(),
        ours / typst
    );
    assert!(ours <= RATIO * typst, "more than {RATIO} × typst alone");
    assert!(ours < SECONDS, "the demo's set takes more than {SECONDS} s");
}
