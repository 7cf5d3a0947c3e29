//! Any bytes as run records, packed or not: every line is read or told and counted, every finding is a whole line, and neither
//! packing nor threads change what is found.

use std::{fs, io::Write as _, path::Path};

use flate2::{Compression, write::GzEncoder};
use oxyfolio::{
    RULEBOOK,
    book::Rulebook,
    check::review::Reviewer,
    records::run::{Input, MOST_BAD, Options, Tally, Written, review},
};
use serde_json::Value;

use super::now_and_then;

static BOOK: &Rulebook = &RULEBOOK;

/// The first byte says whether the file's name ends in `.csv`; the rest is the file.
pub fn run(bytes: &[u8]) {
    let Some((first, bytes)) = bytes.split_first() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a temporary folder");
    let name = if first % 2 == 1 { "runs.csv" } else { "runs.ndjson" };
    let path = folder.path().join(name);
    fs::write(&path, bytes).expect("a file is written");
    let (tally, out) = pass(&path, 1, Written::Lines);
    let is_packed = bytes.starts_with(&[0x1f, 0x8b])
        || matches!(
            bytes,
            [0x28, 0xb5, 0x2f, 0xfd, ..] | [0x50..=0x5f, 0x2a, 0x4d, 0x18, ..]
        );
    if is_packed {
        lines(&tally, &out, u64::MAX);
    } else {
        // Without a head no row can be read, and nothing else keeps a file that isn't packed from being read to its end.
        let is_headless = |why: &str| why.starts_with("cannot be read from line ");
        assert!(
            tally
                .failed
                .iter()
                .all(|(_, why)| is_headless(why) && tally.runs + tally.bad_lines == 0),
            "{:?}",
            tally.failed
        );
        let count = bytes.split(|byte| *byte == b'\n').count();
        lines(&tally, &out, count as u64);
        counted(bytes, &tally);
        if now_and_then(bytes, 8) {
            fs::write(&path, packed(bytes)).expect("a file is written");
            let (of_packed, same) = pass(&path, 1, Written::Lines);
            assert_eq!(out, same, "packed");
            assert_eq!(
                (tally.runs, tally.bad_lines),
                (of_packed.runs, of_packed.bad_lines)
            );
            fs::write(&path, bytes).expect("a file is written");
        }
    }
    if now_and_then(bytes, 32) {
        assert_eq!(out, pass(&path, 2, Written::Lines).1, "two threads");
    }
    if now_and_then(bytes, 4) {
        rows(&pass(&path, 1, Written::Csv).1, tally.levels.all());
    }
}

fn pass(path: &Path, threads: usize, written: Written) -> (Tally<'static>, String) {
    let options = Options {
        threads,
        written,
        crews: true,
        ..Options::default()
    };
    let mut out = Vec::new();
    let inputs = [Input::named(path)];
    let tally =
        review(BOOK, &Reviewer::new(BOOK), &inputs, &options, &mut out).expect("a file that is there");
    (tally, String::from_utf8(out).expect("findings are UTF-8"))
}

fn packed(bytes: &[u8]) -> Vec<u8> {
    let mut packer = GzEncoder::new(Vec::new(), Compression::fast());
    packer.write_all(bytes).expect("memory takes it");
    packer.finish().expect("memory takes it")
}

/// Every finding is one whole line of JSON, inside the file, and as many as were counted.
fn lines(tally: &Tally<'_>, out: &str, most: u64) {
    assert!(out.is_empty() || out.ends_with('\n'));
    let mut found = 0;
    for line in out.lines() {
        let finding: Value = serde_json::from_str(line).unwrap_or_else(|error| panic!("{error}: {line}"));
        let number = |key: &str| finding[key].as_u64();
        assert!(!finding["code"].as_str().expect("a code").is_empty());
        assert!(!finding["message"].as_str().expect("words").is_empty());
        assert!(
            ["stop", "warn", "unknown", "note"].contains(&finding["level"].as_str().expect("a level")),
            "{line}"
        );
        assert!(
            number("line").is_none_or(|line| (1..=most).contains(&line)),
            "{line}"
        );
        assert!(number("column").is_none_or(|column| column >= 1), "{line}");
        assert!(number("event").is_none_or(|event| event >= 1), "{line}");
        found += 1;
    }
    assert_eq!(found, tally.levels.all());
    assert!(tally.runs_wrong <= tally.runs);
    assert_eq!(tally.bad.len() as u64, tally.bad_lines.min(MOST_BAD as u64));
    for bad in &tally.bad {
        assert!(
            (1..=most).contains(&bad.line) && bad.column >= 1 && !bad.message.is_empty(),
            "{bad:?}"
        );
    }
}

/// Of JSON, every line with something on it is a run or a line that is told. `serde_json` says which is which.
fn counted(bytes: &[u8], tally: &Tally<'_>) {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let mut lines = bytes
        .split(|byte| *byte == b'\n')
        .filter(|line| !line.iter().all(u8::is_ascii_whitespace))
        .peekable();
    let begins = |line: &&[u8]| line.iter().find(|byte| !byte.is_ascii_whitespace()) == Some(&b'{');
    if !lines.peek().is_some_and(begins) {
        return;
    }
    let (mut all, mut least, mut most) = (0, 0, 0);
    for line in lines {
        all += 1;
        match serde_json::from_slice::<Value>(line) {
            Ok(value) => {
                least += u64::from(!value.is_object());
                most += u64::from(!value.is_object() || is_deep(line));
            }
            // A number too large for a float is no error of form here.
            Err(error) => {
                let is_form = !error.to_string().contains("out of range");
                least += u64::from(is_form);
                most += 1;
            }
        }
    }
    assert_eq!(tally.runs + tally.bad_lines, all);
    assert!(
        (least..=most).contains(&tally.bad_lines),
        "{} of {least} to {most}",
        tally.bad_lines
    );
}

/// Whether lists and objects may be inside each other deeper than the reader takes.
fn is_deep(line: &[u8]) -> bool {
    line.iter().filter(|byte| matches!(byte, b'[' | b'{')).count() > 8
}

/// The CSV of findings is taken by the `csv` crate: all rows as wide as the head, a row for each finding.
fn rows(out: &str, findings: u64) {
    let mut reader = csv::Reader::from_reader(out.as_bytes());
    let mut rows = 0;
    for row in reader.records() {
        let row = row.unwrap_or_else(|error| panic!("{error}: {out}"));
        assert!(row.iter().next().is_some());
        rows += 1;
    }
    assert_eq!(rows, findings);
    assert!(out.ends_with("\n"));
}
