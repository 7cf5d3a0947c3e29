//! The page of the lints is true: every lint is on it, with its level, and every example shows what it says.

use std::collections::BTreeSet;

use oxyfolio::compile::{diagnostic::Level, lint::LINTS};

use crate::book::{demo, found};

const PAGE: &str = include_str!("../../src/compile/lint/lints.md");

/// Name, level and examples of each lint on the page.
fn sections() -> Vec<(&'static str, &'static str, Vec<&'static str>)> {
    let mut sections = Vec::new();
    for section in PAGE.split("\n## `").skip(1) {
        let (name, rest) = section.split_once("` (").expect("a name and a level");
        let (level, rest) = rest.split_once(")\n").expect("a level");
        let rest = rest.split("\n# ").next().unwrap();
        let examples = rest
            .split("```diff\n")
            .skip(1)
            .map(|example| example.split("```").next().unwrap());
        sections.push((name, level, examples.collect()));
    }
    sections
}

#[test]
fn every_lint_is_on_the_page_in_order_with_its_level() {
    let on_page: Vec<(&str, &str)> = sections()
        .iter()
        .map(|(name, level, _)| (*name, *level))
        .collect();
    let level = |level| match level {
        Level::Error => "error",
        Level::Note => "note",
    };
    let lints: Vec<(&str, &str)> = LINTS.iter().map(|lint| (lint.name, level(lint.level))).collect();
    assert_eq!(on_page, lints);
    let names: BTreeSet<&str> = LINTS.iter().map(|lint| lint.name).collect();
    assert_eq!(names.len(), LINTS.len());
}

#[test]
fn every_example_of_the_page_shows_what_it_says() {
    let needs_the_day = ["review-passed", "not-yet-effective", "signed-in-future"];
    for (name, level, examples) in sections() {
        assert_eq!(examples.is_empty(), needs_the_day.contains(&name), "{name}");
        for example in examples {
            let mut chapters = demo();
            for hunk in example.split("@@\n") {
                apply(hunk, &mut chapters);
            }
            let (found, _) = found(&chapters);
            let shown = found.iter().find(|found| found.code == name);
            let codes: Vec<&str> = found.iter().map(|found| found.code).collect();
            let shown = shown.unwrap_or_else(|| panic!("{name}: {codes:?}"));
            assert_eq!(shown.level == Level::Error, level == "error", "{name}");
        }
    }
}

/// Makes an edit written as a diff: its old lines stand in one place of the book, or it is made in the first.
fn apply(hunk: &str, chapters: &mut [(String, String)]) {
    let side = |gone: char| -> String {
        let lines = hunk.lines().filter(|line| !line.starts_with(gone));
        lines
            .map(|line| format!("{}\n", line.get(1..).unwrap_or("")))
            .collect()
    };
    let (old, new) = (side('+'), side('-'));
    let (_, text) = chapters
        .iter_mut()
        .find(|(_, text)| text.contains(&old))
        .unwrap_or_else(|| panic!("{old}"));
    *text = text.replacen(&old, &new, 1);
}

#[test]
fn whatever_is_done_by_hand_is_done_about_a_finding() {
    assert_eq!(
        crate::followed::strays(&[crate::by_hand::DEEDS], "tests/lints"),
        Vec::<&str>::new()
    );
}
