//! Random damage to the demonstration: whatever is deleted, doubled, swapped or typed over, the compiler answers, soon
//! and with places that exist.

use std::time::{Duration, Instant};

use oxyfolio::compile::{diagnostic::Diagnostic, render::render, source::Sources};

use crate::book::{compiled, demo};

/// Damaged chapters compiled alone; it is the reading of blocks that they try.
const ALONE: usize = 3000;
/// Damaged chapters compiled with all others; these try the references between chapters.
const TOGETHER: usize = 120;
/// More than a hundred times what a compilation takes.
const SOON: Duration = Duration::from_secs(10);

/// What a slipping hand or a careless paste brings into a text.
const TYPED: [&str; 28] = [
    "`",
    "```",
    "~~~",
    "\n",
    "\r",
    "\t",
    ":",
    ": ",
    "- ",
    "#",
    " #",
    "\"",
    "'",
    "[",
    "]",
    "{",
    "}",
    "&a ",
    "*a",
    "!",
    "|",
    ">",
    "%",
    "---\n",
    "\0",
    "\u{FEFF}",
    "é°—",
    "(((((((((((((((((",
];

/// A small generator with a fixed seed, so that a failure can be repeated.
struct Dice(u64);

impl Dice {
    /// A number below `sides`.
    fn roll(&mut self, sides: usize) -> usize {
        // Constants of a 64-bit linear congruential generator; the high bits are the good ones.
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % sides.max(1)
    }

    fn place(&mut self, text: &str) -> usize {
        let at = self.roll(text.len() + 1);
        text.floor_char_boundary(at)
    }
}

fn damage(text: &str, dice: &mut Dice) -> String {
    let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
    let (one, other) = (dice.roll(lines.len()), dice.roll(lines.len()));
    match dice.roll(8) {
        0 => {
            lines.remove(one);
        }
        1 => lines.insert(one, lines[one]),
        2 => lines.swap(one, other),
        3 => lines.insert(one, lines[other]),
        4 => {
            // A stretch is cut out.
            let (from, to) = (dice.place(text), dice.place(text));
            let to = to.max(from).min(from + dice.roll(300));
            let to = text.ceil_char_boundary(to);
            return format!("{}{}", &text[..from], &text[to..]);
        }
        5 => {
            let at = dice.place(text);
            return format!("{}{}{}", &text[..at], TYPED[dice.roll(TYPED.len())], &text[at..]);
        }
        6 => {
            // One character is typed over.
            let at = dice.place(text);
            let rest = text[at..].chars().skip(1).collect::<String>();
            return format!("{}{}{rest}", &text[..at], TYPED[dice.roll(TYPED.len())]);
        }
        _ => {
            // Two neighbours change places.
            let mut chars: Vec<char> = text.chars().collect();
            let at = dice.roll(chars.len() - 1);
            chars.swap(at, at + 1);
            return chars.into_iter().collect();
        }
    }
    lines.concat()
}

/// Every place lies in its chapter, on whole characters, and can be drawn.
fn check(diagnostics: &[Diagnostic], sources: &Sources) {
    for diagnostic in diagnostics {
        let labels = diagnostic.labels.iter().map(|(span, _)| *span);
        for span in diagnostic.span.into_iter().chain(labels) {
            let text = sources.text(span.file);
            assert!(
                text.get(span.start..span.end).is_some(),
                "{span:?} of {diagnostic:?}"
            );
            assert!(span.start < span.end || text.is_empty(), "{diagnostic:?}");
        }
    }
    // Drawing is slower than reading, and mistakes of a kind are drawn alike.
    let mut codes = Vec::new();
    for diagnostic in diagnostics {
        if !codes.contains(&diagnostic.code) {
            codes.push(diagnostic.code);
            assert!(render(diagnostic, sources, false).contains(diagnostic.code));
        }
    }
}

fn compile_and_check(chapters: &[(String, String)]) {
    let begin = Instant::now();
    match compiled(chapters) {
        Ok(compiled) => check(&compiled.notes, &compiled.sources),
        Err(rejected) => {
            assert!(!rejected.diagnostics.is_empty());
            check(&rejected.diagnostics, &rejected.sources);
        }
    }
    assert!(begin.elapsed() < SOON, "{:?}", begin.elapsed());
}

#[test]
fn no_damage_to_a_chapter_stops_the_compiler() {
    let chapters = demo();
    let mut dice = Dice(2026);
    for _ in 0..ALONE {
        let (name, text) = &chapters[dice.roll(chapters.len())];
        let mut text = damage(text, &mut dice);
        if dice.roll(4) == 0 {
            text = damage(&text, &mut dice);
        }
        compile_and_check(&[(name.clone(), text)]);
    }
}

#[test]
fn no_damage_to_the_book_stops_the_compiler() {
    let chapters = demo();
    let mut dice = Dice(1101);
    for _ in 0..TOGETHER {
        let mut chapters = chapters.clone();
        let index = dice.roll(chapters.len());
        let damaged = damage(&chapters[index].1, &mut dice);
        chapters[index].1 = damaged;
        compile_and_check(&chapters);
    }
}
