//! What several test programs need.
#![allow(dead_code)]

use std::{
    fs,
    path::{Path, PathBuf},
    process::{Command, Output},
};

/// The demo rulebook's folder.
pub fn rules() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("rules")
}

/// A copy of the demo rulebook that a test may edit.
pub fn copy_of_rules() -> tempfile::TempDir {
    let copy = tempfile::tempdir().expect("a temporary folder");
    for entry in fs::read_dir(rules()).expect("the demo rulebook") {
        let path = entry.expect("a chapter").path();
        let name = path.file_name().expect("a name");
        fs::copy(&path, copy.path().join(name)).expect("a copy of the chapter");
    }
    copy
}

/// A chapter without its worked cases, which are in the book to object to an edit.
pub fn without_cases(chapter: &str) -> String {
    let mut kept = String::new();
    let mut in_case = false;
    for line in chapter.split_inclusive('\n') {
        in_case |= line.trim_end() == "```yaml case";
        if !in_case {
            kept.push_str(line);
        }
        in_case &= line.trim_end() != "```";
    }
    kept
}

/// Replaces a text that stands in exactly one place of one chapter.
pub fn edit(folder: &Path, chapter: &str, old: &str, new: &str) {
    let path = folder.join(chapter);
    let text = fs::read_to_string(&path).expect("the chapter");
    assert_eq!(
        text.matches(old).count(),
        1,
        "{chapter} must hold {old:?} exactly once"
    );
    fs::write(&path, text.replace(old, new)).expect("the edited chapter");
}

/// Runs the program.
pub fn oxyfolio(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
        .args(arguments)
        .output()
        .expect("the program runs")
}

/// Runs the program and reads its JSON answer.
pub fn json(arguments: &[&str]) -> (i32, serde_json::Value) {
    let output = oxyfolio(&[arguments, &["--format", "json"]].concat());
    let text = String::from_utf8(output.stdout).expect("UTF-8");
    let value = serde_json::from_str(&text)
        .unwrap_or_else(|error| panic!("{error}: {text}{}", String::from_utf8_lossy(&output.stderr)));
    (output.status.code().expect("an exit code"), value)
}

/// Runs a program of the poppler tools; a machine without it fails the test.
pub fn poppler(program: &str, arguments: &[&str], file: &Path) -> String {
    let output = Command::new(program)
        .args(arguments)
        .arg(file)
        .arg("-")
        .output()
        .unwrap_or_else(|error| panic!("{program} is needed (Debian package poppler-utils): {error}"));
    assert!(
        output.status.success(),
        "{program}: {}",
        String::from_utf8_lossy(&output.stderr)
    );
    String::from_utf8(output.stdout).expect("UTF-8")
}
