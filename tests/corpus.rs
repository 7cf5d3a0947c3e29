//! What fuzzing kept, tried again without an engine: every input of `tests/fuzz/corpus/` goes through its target's entry function.
//!
//! The inputs are those that between them reached all the code that was reached; `tests/fuzz/corpus.py` tells how they are
//! written. A line may be added by hand.
#![cfg(feature = "cli")]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

#[path = "fuzz/entries/mod.rs"]
mod entries;

use std::{
    fs,
    panic::{AssertUnwindSafe, catch_unwind, resume_unwind},
    path::Path,
};

/// The bytes of a line of a corpus.
fn bytes(line: &str) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut rest = line.bytes();
    while let Some(byte) = rest.next() {
        bytes.push(match byte {
            b'\\' => match rest.next().expect("a sign after the backslash") {
                b'n' => b'\n',
                b'r' => b'\r',
                b't' => b'\t',
                b'\\' => b'\\',
                b'x' => {
                    let digits = [rest.next().unwrap(), rest.next().unwrap()];
                    u8::from_str_radix(std::str::from_utf8(&digits).unwrap(), 16).unwrap()
                }
                other => panic!("a backslash before {:?} in {line:?}", char::from(other)),
            },
            byte => byte,
        });
    }
    bytes
}

/// Tries a target's corpus; the input that fails is told.
fn tried(target: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/fuzz/corpus/{target}.txt"));
    let corpus = fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let (_, entry) = entries::ALL.iter().find(|(name, _)| *name == target).unwrap();
    let mut count = 0;
    for line in corpus.lines() {
        let bytes = bytes(line);
        if let Err(reason) = catch_unwind(AssertUnwindSafe(|| entry(&bytes))) {
            eprintln!("{target}: this input fails: {line}");
            resume_unwind(reason);
        }
        count += 1;
    }
    assert!(count >= 10, "{target} has {count} inputs");
}

macro_rules! corpora {
    ($($target:ident)+) => {
        $(
            #[test]
            fn $target() {
                tried(stringify!($target));
            }
        )+

        #[test]
        fn every_target_is_tried_and_every_corpus_is_a_targets() {
            let tried = [$(stringify!($target)),+];
            assert_eq!(entries::ALL.map(|(name, _)| name), tried);
            let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fuzz");
            let mut bytes = 0;
            for (sub, end) in [("corpus", ".txt"), ("targets", ".rs")] {
                let entries = fs::read_dir(folder.join(sub)).unwrap().map(Result::unwrap);
                let mut names: Vec<String> = entries
                    .map(|entry| {
                        bytes += entry.metadata().unwrap().len();
                        entry.file_name().into_string().unwrap()
                    })
                    .collect();
                names.sort();
                assert_eq!(names, tried.map(|name| format!("{name}{end}")), "{sub}");
            }
            assert!(bytes < 1_000_000, "the corpora have {bytes} bytes: minimise them");
        }
    };
}

corpora! {
    answer code compare desk guards plan quantities reader review shown stock yaml
}
