//! What the tests of records need.

use std::{fs, path::PathBuf};

use oxyfolio::RULEBOOK;
use oxyfolio::book::Rulebook;
use oxyfolio::check::review::Reviewer;
use oxyfolio::records::run::{Input, Options, Tally, review};

/// A folder with a file in it.
pub fn file(name: &str, bytes: impl AsRef<[u8]>) -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(name);
    fs::write(&path, bytes).unwrap();
    (folder, path)
}

/// Reviews files against the demo rulebook.
pub fn pass(paths: &[PathBuf], options: &Options<'_>) -> (Tally<'static>, String) {
    static BOOK: &Rulebook = &RULEBOOK;
    let inputs: Vec<Input> = paths.iter().map(|path| Input::named(path)).collect();
    let mut out = Vec::new();
    let tally = review(BOOK, &Reviewer::new(BOOK), &inputs, options, &mut out).unwrap();
    (tally, String::from_utf8(out).unwrap())
}

/// Reviews a file of one thread's work; its findings as JSON.
pub fn findings(name: &str, bytes: impl AsRef<[u8]>) -> (Tally<'static>, Vec<serde_json::Value>) {
    let (_folder, path) = file(name, bytes);
    let options = Options {
        threads: 1,
        ..Options::default()
    };
    let (tally, out) = pass(&[path], &options);
    let lines = out.lines().map(|line| serde_json::from_str(line).unwrap());
    (tally, lines.collect())
}

/// A run that is right in every field.
pub fn run(number: u32, events: u32) -> String {
    let event = |index: u32| {
        format!(
            r#"{{"at":"2026-03-{:02}T14:{:02}:{:02}+01:00","do":"set-flow","cylinder":"D","pressure_psi":{},"flow_lpm":{},"device":"non-rebreather","spo2_percent":{},"by":"crew-{}"}}"#,
            1 + number % 28,
            index / 60 % 60,
            index % 60,
            2000 - index % 1500,
            10 + index % 5,
            90 + index % 8,
            number % 7
        )
    };
    let events: Vec<String> = (0..events).map(event).collect();
    format!(
        r#"{{"run":"LV-{number:05}","group":"adult","conditions":[],"temperature_c":18,"events":[{}]}}"#,
        events.join(",")
    )
}
