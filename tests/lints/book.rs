//! A copy of the demonstration rulebook to edit, and the comparison of what is found with what is expected.

use oxyfolio::{
    CHAPTERS,
    compile::{
        Compiled, Rejected, compile,
        diagnostic::{Diagnostic, Level},
        render,
        source::Sources,
    },
};

/// One edit. `find` stands exactly once in the chapter; `write` takes its place, with `‹` and `›` around what is to be
/// underlined.
pub struct Edit {
    pub chapter: &'static str,
    pub find: &'static str,
    pub write: &'static str,
}

/// Declares a test for each finding: its name, what is expected in the order of the book, and the edits.
macro_rules! findings {
    ($($name:ident [$($lint:literal),* $(,)?] { $($chapter:literal: $find:literal => $write:literal),+ $(,)? })+) => {$(
        #[test]
        fn $name() {
            use crate::book::Edit;
            let edits = [$(Edit { chapter: $chapter, find: $find, write: $write }),+];
            crate::book::check(stringify!($name), &edits, &[$($lint),*]);
        }
    )+};
}
pub(crate) use findings;

/// The demonstration's chapters: name and text, without the worked cases, which object to most edits.
pub fn demo() -> Vec<(String, String)> {
    let owned = |(name, text): &(&str, &str)| ((*name).to_owned(), crate::common::without_cases(text));
    CHAPTERS.iter().map(owned).collect()
}

/// Compiles chapters given by name and text.
pub fn compiled(chapters: &[(String, String)]) -> Result<Compiled, Box<Rejected>> {
    let mut sources = Sources::default();
    for (name, text) in chapters {
        sources.add(name.clone(), format!("rules/{name}"), text.clone());
    }
    compile(sources)
}

/// All that is found in chapters, without what the demonstration allows; with the sources to draw it.
pub fn found(chapters: &[(String, String)]) -> (Vec<Diagnostic>, Sources) {
    let (mut found, sources) = match compiled(chapters) {
        Ok(compiled) => (compiled.notes, compiled.sources),
        Err(rejected) => (rejected.diagnostics, rejected.sources),
    };
    found.retain(|diagnostic| !is_allowed(diagnostic));
    (found, sources)
}

/// Whether a finding is allowed in the book.
pub fn is_allowed(diagnostic: &Diagnostic) -> bool {
    diagnostic.level == Level::Note && diagnostic.hints.iter().any(|hint| hint.starts_with("allowed: "))
}

/// The demonstration with edits; gives the marked places too.
pub fn edited(edits: &[Edit]) -> (Vec<(String, String)>, Vec<String>) {
    let mut chapters = demo();
    for edit in edits {
        let (_, text) = chapters
            .iter_mut()
            .find(|(name, _)| name == edit.chapter)
            .unwrap_or_else(|| panic!("no chapter is called {}", edit.chapter));
        let count = text.matches(edit.find).count();
        assert_eq!(
            count, 1,
            "found {count} times in {}: {:?}",
            edit.chapter, edit.find
        );
        *text = text.replacen(edit.find, edit.write, 1);
    }
    let mut places = Vec::new();
    for (name, text) in &mut chapters {
        places.extend(take_marks(name, text));
    }
    (chapters, places)
}

/// Makes the edits and compares every finding with those expected: each lint at its mark, in the order of the book.
pub fn check(name: &str, edits: &[Edit], expected: &[&str]) {
    let (chapters, places) = edited(edits);
    let (found, sources) = found(&chapters);
    let wanted: Vec<String> = expected
        .iter()
        .zip(&places)
        .map(|(lint, place)| format!("{lint} {place}"))
        .collect();
    assert_eq!(expected.len(), places.len(), "as many marks as findings");
    let said: Vec<String> = found
        .iter()
        .map(|diagnostic| format!("{} {}", diagnostic.code, place(diagnostic, &sources)))
        .collect();
    assert_eq!(said, wanted, "\n{}", drawn(&found, &sources));
    let pointed_at: Vec<&Diagnostic> = found.iter().collect();
    crate::followed::tried(
        name,
        &chapters,
        (&found, &sources),
        &pointed_at,
        &[crate::by_hand::DEEDS],
    );
    snapshot(name, &found, &sources);
}

/// Compares what a person sees with the snapshot; nothing found has none.
pub fn snapshot(name: &str, found: &[Diagnostic], sources: &Sources) {
    if found.is_empty() {
        return;
    }
    insta::with_settings!({ omit_expression => true, prepend_module_to_snapshot => false }, {
        insta::assert_snapshot!(name, drawn(found, sources));
    });
}

/// What a person sees, without the numbers of lines: a new paragraph in a chapter is no other finding.
fn drawn(found: &[Diagnostic], sources: &Sources) -> String {
    let mut drawn = String::new();
    for diagnostic in found {
        for line in render::render(diagnostic, sources, false).lines() {
            let rest = line.trim_start();
            let bar = rest.trim_start_matches(|c: char| c.is_ascii_digit());
            if let Some((path, _)) = rest.split_once(".md:") {
                drawn += &format!("  {path}.md\n");
            } else if bar.starts_with(" |") && bar != rest {
                drawn += &format!("LL{bar}\n");
            } else if rest.starts_with('|') || rest.starts_with("= ") {
                drawn += &format!("   {rest}\n");
            } else {
                drawn += &format!("{line}\n");
            }
        }
        drawn.push('\n');
    }
    drawn
}

/// Takes the marks out of a chapter; gives the places they were around.
fn take_marks(name: &str, text: &mut String) -> Vec<String> {
    let mut places = Vec::new();
    while let Some(start) = text.find('‹') {
        text.replace_range(start..start + '‹'.len_utf8(), "");
        let end = text[start..].find('›').expect("every ‹ is followed by a ›") + start;
        text.replace_range(end..end + '›'.len_utf8(), "");
        places.push(described(name, text, start, end));
    }
    places
}

fn place(diagnostic: &Diagnostic, sources: &Sources) -> String {
    let span = diagnostic.span.expect("a finding with a place");
    let source = sources.get(span.file).expect("a chapter of the book");
    described(&source.name, &source.text, span.start, span.end)
}

/// `05-delivery-devices.md:36:7 "10 to 15"`, counted anew.
fn described(name: &str, text: &str, start: usize, end: usize) -> String {
    let line = text[..start].split('\n').count();
    let column = text[..start].chars().rev().take_while(|c| *c != '\n').count() + 1;
    format!("{name}:{line}:{column} {:?}", &text[start..end])
}
