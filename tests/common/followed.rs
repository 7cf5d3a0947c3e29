//! Every hint tried: whoever does literally what it says is rid of what was found, and has made no other mistake.
//!
//! A hint that holds the text to write is applied where the mistake is underlined. What other hints ask of a person is done by
//! hand, mistake by mistake; a mistake whose hints nobody has tried fails its test.

use oxyfolio::compile::{
    compile,
    diagnostic::{Diagnostic, Level},
    render::render,
    source::Sources,
};

/// One mistake's name, and what is typed: a text that stands once in the mistaken book, and what takes its place.
pub type Deed = (&'static str, &'static [(&'static str, &'static str)]);

/// As many of a list of names are tried, from its beginning.
const TRIED: usize = 2;

/// These are looked for only where rules could be read, and between them: nobody could see them before.
const LATER: [&str; 6] = [
    "case-failed",
    "hazard-forbids-recommended",
    "outside-flow-range",
    "step-too-early",
    "target-forbidden",
    "unsafe-order",
];

/// Chapters given by name and text, and what is found in them.
struct Looked<'a> {
    name: &'a str,
    chapters: &'a [(String, String)],
    found: &'a [Diagnostic],
    sources: &'a Sources,
}

/// What is to be written in the place of what is underlined: one text, or one of several.
enum Asks {
    /// This text, which must leave the book without new mistakes.
    This(String),
    /// One of these: each must be understood, if not fit.
    OneOf(Vec<String>),
    /// Something only a person can do.
    Person,
}

fn asks(hint: &str) -> Asks {
    let texts: Vec<String> = hint.split('`').skip(1).step_by(2).map(str::to_owned).collect();
    let placeholder = |text: &String| {
        ["LOW", "UNIT", "…", "key: value"]
            .iter()
            .any(|part| text.contains(part))
    };
    // The words around the texts.
    let words: Vec<&str> = hint.split('`').step_by(2).collect();
    let (first, rest) = words.split_first().unwrap();
    let is_list = rest
        .iter()
        .all(|words| ["", ", ", " or ", " and "].contains(words) || words.ends_with(" more"));
    match *first {
        _ if texts.is_empty() || texts.iter().any(placeholder) => Asks::Person,
        "write " if texts.len() == 1 && rest == [""] => Asks::This(texts[0].clone()),
        "did you mean " if rest == ["?"] => Asks::This(texts[0].clone()),
        "write "
        | "write one of "
        | "its steps are "
        | "the book defines "
        | "the rule gives "
        | "a case can speak of "
        | "the keys are "
        | "a guard can speak of "
            if is_list =>
        {
            Asks::OneOf(texts)
        }
        _ => Asks::Person,
    }
}

/// What was found with what it underlines, without its place.
fn known(diagnostic: &Diagnostic, sources: &Sources) -> String {
    let span = diagnostic.span.and_then(|span| {
        let source = sources.get(span.file)?;
        Some(format!(
            "{} {:?}",
            source.name,
            &source.text[span.start..span.end]
        ))
    });
    format!("{} {span:?}", diagnostic.code)
}

/// What is found in chapters.
fn found(chapters: &[(String, String)]) -> (Vec<Diagnostic>, Sources) {
    let mut sources = Sources::default();
    for (name, text) in chapters {
        sources.add(name.clone(), format!("rules/{name}"), text.clone());
    }
    match compile(sources) {
        Ok(compiled) => (compiled.notes, compiled.sources),
        Err(rejected) => (rejected.diagnostics, rejected.sources),
    }
}

fn drawn(found: &[Diagnostic], sources: &Sources) -> String {
    found
        .iter()
        .map(|one| render(one, sources, false) + "\n")
        .collect()
}

/// Tries the hints of some of what was found.
pub fn tried(
    name: &str,
    chapters: &[(String, String)],
    (found, sources): (&[Diagnostic], &Sources),
    pointed_at: &[&Diagnostic],
    deeds: &[&[Deed]],
) {
    let looked = Looked {
        name,
        chapters,
        found,
        sources,
    };
    let mut persons = Vec::new();
    for diagnostic in pointed_at {
        assert!(
            !diagnostic.hints.is_empty(),
            "{name}: nothing says what to write instead\n{}",
            drawn(found, sources)
        );
        for hint in &diagnostic.hints {
            match asks(hint) {
                Asks::This(text) => looked.follow(diagnostic, &text, true),
                Asks::OneOf(texts) => {
                    for text in texts.iter().take(TRIED) {
                        looked.follow(diagnostic, text, false);
                    }
                }
                Asks::Person => persons.push(known(diagnostic, sources)),
            }
        }
    }
    let deed = deeds
        .iter()
        .flat_map(|deeds| deeds.iter())
        .find(|(mistake, _)| *mistake == name);
    match deed {
        Some((_, deed)) => looked.by_hand(&persons, deed),
        None => assert!(
            persons.is_empty(),
            "{name}: nobody has tried its hints\n{}",
            drawn(found, sources)
        ),
    }
}

/// What is done about mistakes that no test in this folder makes.
pub fn strays(deeds: &[&[Deed]], folder: &str) -> Vec<&'static str> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let texts: String = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.is_file())
        .map(|path| std::fs::read_to_string(path).unwrap())
        .collect();
    let made = |name: &str| texts.contains(&format!("    {name} ["));
    deeds
        .iter()
        .flat_map(|deeds| deeds.iter())
        .map(|(name, _)| *name)
        .filter(|name| !made(name))
        .collect()
}

impl Looked<'_> {
    /// Writes a text where the mistake is underlined.
    fn follow(&self, diagnostic: &Diagnostic, text: &str, alone: bool) {
        let span = diagnostic.span.expect("a hint to write something has a place");
        let source = self.sources.get(span.file).expect("a chapter");
        let mut mended = self.chapters.to_vec();
        let (_, chapter) = mended.iter_mut().find(|(name, _)| *name == source.name).unwrap();
        // Words are not run together.
        let touches = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
        let before = touches(chapter[..span.start].chars().next_back()) && touches(text.chars().next());
        let after = touches(chapter[span.end..].chars().next()) && touches(text.chars().next_back());
        let space = |is: bool| if is { " " } else { "" };
        chapter.replace_range(
            span.start..span.end,
            &format!("{}{text}{}", space(before), space(after)),
        );
        let (still, sources) = found(&mended);
        let gone = !still.iter().any(|other| {
            other.code == diagnostic.code
                && other.span.is_some_and(|other| {
                    sources.get(other.file).map(|source| &source.name) == Some(&source.name)
                        && other.start == span.start
                })
        });
        assert!(
            gone,
            "{}: {text:?} after {:?} leaves what was found\n{}",
            self.name,
            diagnostic.hints,
            drawn(&still, &sources)
        );
        if alone {
            self.no_new(&still, &sources);
        }
    }

    /// Notes count where a note is tried.
    fn no_new(&self, still: &[Diagnostic], sources: &Sources) {
        let notes = self.found.iter().any(|old| old.level == Level::Note);
        let old: Vec<String> = self.found.iter().map(|old| known(old, self.sources)).collect();
        for other in still {
            let counts = other.level == Level::Error && !LATER.contains(&other.code)
                || notes && !other.hints.iter().any(|hint| hint.starts_with("allowed: "));
            assert!(
                !counts || old.contains(&known(other, sources)),
                "{}: whoever follows the hint meets something else\n{}",
                self.name,
                drawn(still, sources)
            );
        }
    }

    /// Does what a person would; what was found and asks for it must be gone.
    fn by_hand(&self, persons: &[String], deed: &[(&str, &str)]) {
        let name = self.name;
        assert!(!persons.is_empty(), "{name}: nothing is left to do by hand");
        let mut mended = self.chapters.to_vec();
        for (find, write) in deed {
            let mut places: Vec<&mut String> = mended
                .iter_mut()
                .map(|(_, text)| text)
                .filter(|text| text.contains(find))
                .collect();
            assert_eq!(places.len(), 1, "{name}: chapters with {find:?}");
            assert_eq!(places[0].matches(find).count(), 1, "{name}: {find:?}");
            *places[0] = places[0].replacen(find, write, 1);
        }
        let (still, sources) = found(&mended);
        let gone = !still
            .iter()
            .any(|other| persons.contains(&known(other, &sources)));
        assert!(
            gone,
            "{name}: what was done leaves what was found\n{}",
            drawn(&still, &sources)
        );
        self.no_new(&still, &sources);
    }
}
