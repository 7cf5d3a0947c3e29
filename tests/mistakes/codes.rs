//! No code without a hint that was tried: whoever adds an error or a note adds the mistake that leads to it, and mends it as the
//! hint says.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
};

use oxyfolio::compile::lint::LINTS;

/// What stands before a code where something is found.
const BEFORE: [&str; 7] = [
    "error(",
    "note(",
    "Mistake::new(",
    "Problem::new(",
    "Self::new(",
    "code:",
    "UNDECIDED: &str =",
];

fn files(folder: &str) -> Vec<PathBuf> {
    let mut files = Vec::new();
    let mut folders = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                files.push(path);
            }
        }
    }
    files
}

fn is_code(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-')
}

/// The text without comments and with one space for any white space, up to its unit tests.
fn plain(text: &str) -> String {
    let text = text.split("#[cfg(test)]\nmod tests").next().unwrap();
    text.lines()
        .map(str::trim)
        .filter(|line| !line.starts_with("//"))
        .flat_map(str::split_whitespace)
        .collect::<Vec<_>>()
        .join(" ")
}

/// Literals like a code, with what stands before each.
fn literals(text: &str) -> Vec<(&str, &str)> {
    let mut found = Vec::new();
    for (at, _) in text.match_indices('"') {
        let inside = &text[at + 1..];
        if let Some((code, _)) = inside.split_once('"')
            && is_code(code)
        {
            found.push((text[..at].trim_end(), code));
        }
    }
    found
}

/// Every code of the compiler, with the file that has it.
fn codes() -> BTreeMap<String, String> {
    let mut codes = BTreeMap::new();
    for lint in &LINTS {
        codes.insert(lint.name.to_owned(), "lint".to_owned());
    }
    for path in files("src/compile") {
        let text = plain(&fs::read_to_string(&path).unwrap());
        for (before, code) in literals(&text) {
            // What the proof found is told by pairs of code and message.
            let is_pair = path.ends_with("resolve/proved.rs") && before.ends_with('(');
            if is_pair || BEFORE.iter().any(|words| before.ends_with(words)) {
                codes.insert(code.to_owned(), path.display().to_string());
            }
        }
    }
    codes
}

/// The codes whose hints are tried by a test.
fn tried() -> BTreeSet<String> {
    let mut tried = BTreeSet::new();
    // Where a mark is, and the first of what has none.
    for path in files("tests/mistakes") {
        let text = plain(&fs::read_to_string(&path).unwrap());
        let whole = ["folder_mended", "generated"]
            .iter()
            .any(|name| path.file_stem().is_some_and(|stem| stem == *name));
        for (before, code) in literals(&text) {
            if whole
                || ["Marked(", "Book(", "[Follows("]
                    .iter()
                    .any(|words| before.ends_with(words))
            {
                tried.insert(code.to_owned());
            }
        }
    }
    for name in [
        "allow",
        "contradictions",
        "dates",
        "equipment",
        "patients",
        "texts",
        "unused",
    ] {
        let text =
            fs::read_to_string(format!("{}/tests/lints/{name}.rs", env!("CARGO_MANIFEST_DIR"))).unwrap();
        tried.extend(literals(&text).into_iter().map(|(_, code)| code.to_owned()));
    }
    for (_, code) in literals(&plain(include_str!("../plan/mended.rs"))) {
        tried.insert(code.to_owned());
    }
    // Limits: `tests/hostile/limits.rs` goes back to each of them, which is what their hints ask for.
    let page = include_str!("../../src/compile/language.md");
    let (_, limits) = page.split_once("\n## Limits\n").unwrap();
    for row in limits.lines().filter(|row| row.starts_with("| ")) {
        tried.extend(row.split('`').nth(1).map(str::to_owned));
    }
    tried
}

#[test]
fn the_hint_of_every_code_is_tried() {
    let (codes, tried) = (codes(), tried());
    assert!(codes.len() > 140, "{}: {:?}", codes.len(), codes.keys());
    let missing: Vec<_> = codes.iter().filter(|(code, _)| !tried.contains(*code)).collect();
    assert!(missing.is_empty(), "nobody has tried the hints of {missing:#?}");
}

/// A code that the tests know and the search doesn't would be one of a kind that slips through it.
#[test]
fn the_search_finds_every_code_that_tests_know() {
    let codes = codes();
    for path in files("tests/mistakes") {
        let text = plain(&fs::read_to_string(&path).unwrap());
        for (before, code) in literals(&text) {
            if ["Marked(", "Book(", "Follows("]
                .iter()
                .any(|words| before.ends_with(words))
            {
                assert!(codes.contains_key(code), "{code}");
            }
        }
    }
}

#[test]
fn whatever_is_done_by_hand_is_done_about_a_mistake() {
    assert_eq!(
        crate::followed::strays(&crate::by_hand::DEEDS, "tests/mistakes"),
        Vec::<&str>::new()
    );
}
