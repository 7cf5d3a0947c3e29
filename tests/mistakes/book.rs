//! A copy of the demonstration rulebook to make mistakes in, and the comparison with what is expected of them.

use oxyfolio::{
    CHAPTERS,
    compile::{Compiled, Rejected, compile, diagnostic::Diagnostic, source::Sources},
};

/// One slip of the pen. `find` stands exactly once in the chapter. `write` takes its place, with `‹` and `›` around
/// what the error should underline; an edit may also leave the text alone and only mark it.
pub struct Edit {
    pub chapter: &'static str,
    pub find: &'static str,
    pub write: &'static str,
}

/// An error that must be there.
#[derive(Clone, Copy)]
pub enum Expected {
    /// At the next mark.
    Marked(&'static str),
    /// About the book as a whole.
    Book(&'static str),
    /// Once or more where no mark is: what follows from the mistake elsewhere.
    Follows(&'static str),
}

pub use Expected::{Book, Follows, Marked};

/// Errors that follow from others are drawn up to this many.
const DRAWN: usize = 2;

/// Declares a test for each mistake: its name, the errors in the order of the book, and the edits.
macro_rules! mistakes {
    ($($name:ident [$($error:expr),+ $(,)?] { $($chapter:literal: $find:literal => $write:literal),+ $(,)? })+) => {$(
        #[test]
        fn $name() {
            #[allow(unused_imports)]
            use crate::book::{Book, Edit, Follows, Marked};
            let edits = [$(Edit { chapter: $chapter, find: $find, write: $write }),+];
            crate::book::check(stringify!($name), &edits, &[$($error),+]);
        }
    )+};
}
pub(crate) use mistakes;

/// The demonstration's chapters: name and text.
pub fn demo() -> Vec<(String, String)> {
    let owned = |(name, text): &(&str, &str)| ((*name).to_owned(), (*text).to_owned());
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

/// Makes the edits, compiles, and compares the errors with those expected.
pub fn check(name: &str, edits: &[Edit], expected: &[Expected]) {
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
    let rejected = match compiled(&chapters) {
        Err(rejected) => rejected,
        Ok(_) => panic!("the compiler sees no mistake"),
    };
    let marks = expected.iter().filter(|error| matches!(error, Marked(_))).count();
    assert_eq!(marks, places.len(), "as many marks as errors that are marked");
    let mut marked = places.iter();
    let wanted: Vec<String> = expected
        .iter()
        .map(|error| match error {
            Marked(code) => format!("{code} {}", marked.next().unwrap()),
            Book(code) => format!("{code} in the book"),
            Follows(code) => format!("{code} elsewhere"),
        })
        .collect();
    let mut found: Vec<String> = Vec::new();
    let mut pointed_at = Vec::new();
    for diagnostic in &rejected.diagnostics {
        let place = match diagnostic.span {
            None => "in the book".to_owned(),
            Some(_) => place(diagnostic, &rejected.sources),
        };
        let known = diagnostic.span.is_none() || places.contains(&place);
        if known {
            pointed_at.push(diagnostic);
        }
        let elsewhere = format!("{} elsewhere", diagnostic.code);
        if known || !wanted.contains(&elsewhere) {
            found.push(format!("{} {place}", diagnostic.code));
        } else if found.last() != Some(&elsewhere) {
            found.push(elsewhere);
        }
    }
    assert_eq!(found, wanted, "\n{}", rejected.render(false));
    // Where the error spans a whole rule, no mark is worth its trouble: it is the first.
    if pointed_at.is_empty() {
        pointed_at.extend(rejected.diagnostics.first());
    }
    let all = (rejected.diagnostics.as_slice(), &rejected.sources);
    crate::followed::tried(name, &chapters, all, &pointed_at, &crate::by_hand::DEEDS);
    snapshot(name, *rejected, places.len());
}

/// Compares what a person sees with the snapshot: the errors that are marked and the first few that follow.
pub fn snapshot(name: &str, mut rejected: Rejected, marked: usize) {
    let all = rejected.diagnostics.len();
    rejected.diagnostics.truncate(marked + DRAWN);
    let mut drawn = without_lines(&rejected.render(false));
    let more = all - rejected.diagnostics.len();
    if more > 0 {
        drawn += "\n… and more\n";
    }
    insta::with_settings!({ omit_expression => true, prepend_module_to_snapshot => false }, {
        insta::assert_snapshot!(name, drawn);
    });
}

/// Puts `LL` for the numbers of lines: a new paragraph in a chapter is no other message. The lines are compared
/// through the marks.
fn without_lines(drawn: &str) -> String {
    let line = |line: &str| {
        let rest = line.trim_start();
        let bar = rest.trim_start_matches(|c: char| c.is_ascii_digit());
        if rest.starts_with("--> ") || rest.starts_with("::: ") {
            let mut parts: Vec<&str> = rest.rsplitn(3, ':').collect();
            if let [_, line, _] = parts.as_mut_slice() {
                *line = "LL";
            }
            parts.reverse();
            format!("  {}", parts.join(":"))
        } else if bar.starts_with(" |") && bar != rest {
            format!("LL{bar}")
        } else if rest.starts_with('|') || rest.starts_with("= ") {
            format!("   {rest}")
        } else {
            line.to_owned()
        }
    };
    drawn.lines().map(|text| line(text) + "\n").collect()
}

/// Takes the marks out of a chapter; gives the places they were around.
fn take_marks(name: &str, text: &mut String) -> Vec<String> {
    let mut places = Vec::new();
    while let Some(start) = text.find('‹') {
        text.replace_range(start..start + '‹'.len_utf8(), "");
        let end = text[start..]
            .find('›')
            .expect("every ‹ in a new text is followed by a ›")
            + start;
        text.replace_range(end..end + '›'.len_utf8(), "");
        places.push(described(name, text, start, end));
    }
    places
}

fn place(diagnostic: &Diagnostic, sources: &Sources) -> String {
    let span = diagnostic.span.expect("an error with a place");
    let source = sources.get(span.file).expect("a chapter of the book");
    let shown = sources.line_column(span);
    let described = described(&source.name, &source.text, span.start, span.end);
    // The compiler's own line and column must be those that are counted here.
    assert!(
        described.contains(&format!(":{}:{} ", shown.line, shown.column)),
        "{described}"
    );
    described
}

/// `05-delivery-devices.md:36:7 "10 to 15"`, counted anew.
fn described(name: &str, text: &str, start: usize, end: usize) -> String {
    let line = text[..start].split('\n').count();
    let column = text[..start].chars().rev().take_while(|c| *c != '\n').count() + 1;
    format!("{name}:{line}:{column} {:?}", &text[start..end])
}
