//! A rulebook as it is compared with another edition: the typed book, and beside it the texts as they were written and the
//! worked cases.
//!
//! The language grows, and so do the checks. An old edition that was in order when it was signed may no longer pass; it is
//! read all the same, as far as it can be, and what had to be left out is told.

use std::path::Path;

use super::{
    Compiled, Rejected, cases, chapter, compile_with,
    diagnostic::{Diagnostic, Diagnostics, Level},
    digest::Digest,
    folder,
    resolve::{self, Raw},
    source::Sources,
    yaml::{Node, Value},
};
use crate::book::{Kind, Place, Rulebook};

/// How often rules are left out before an edition counts as unreadable: rules that name each other fall one after the
/// other.
const MOST_ROUNDS: usize = 20;

/// An edition, ready to be compared.
#[derive(Debug)]
pub struct Edition {
    /// The typed rulebook, without what is in [`left_out`](Self::left_out).
    pub book: Rulebook,
    /// The chapters it was read from.
    pub sources: Sources,
    /// Why it would not pass `check` today; empty where it would.
    pub problems: Vec<Diagnostic>,
    /// How many more there were than are kept.
    pub omitted: usize,
    /// Rules that can't be read today, and rules that name them.
    pub left_out: Vec<LeftOut>,
    raws: Vec<Raw>,
}

/// A rule that had to be left out.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftOut {
    /// What kind of rule it is.
    pub kind: Kind,
    /// Its id, where it has one.
    pub id: Option<String>,
    /// Where it stands.
    pub place: Place,
}

impl Edition {
    /// Reads an edition from its folder.
    ///
    /// # Errors
    ///
    /// [`Rejected`] with every error, when no rulebook is left of it.
    ///
    /// ```
    /// use oxyfolio::compile::edition::Edition;
    ///
    /// let edition = Edition::load("rules".as_ref()).unwrap();
    /// assert!(edition.problems.is_empty());
    /// assert!(edition.cases().count() > 400);
    /// ```
    pub fn load(folder: &Path) -> Result<Self, Box<Rejected>> {
        let (sources, found) = folder::chapters(folder);
        Self::read(sources, found)
    }

    /// Reads an edition from chapters already in memory.
    ///
    /// # Errors
    ///
    /// [`Rejected`] with every error, when no rulebook is left of it.
    pub fn of(sources: Sources) -> Result<Self, Box<Rejected>> {
        Self::read(sources, Diagnostics::default())
    }

    fn read(sources: Sources, found: Diagnostics) -> Result<Self, Box<Rejected>> {
        // A chapter that can't be read at all may hold anything: nothing is compared without it.
        let unread = found.has_errors();
        match compile_with(sources, found) {
            Ok(compiled) => Ok(Self::sound(compiled)),
            Err(rejected) if unread => Err(rejected),
            Err(rejected) => Self::rest(rejected),
        }
    }

    fn sound(compiled: Compiled) -> Self {
        let raws = raw_rules(&compiled.sources);
        Self {
            book: compiled.book,
            sources: compiled.sources,
            problems: Vec::new(),
            omitted: 0,
            left_out: Vec::new(),
            raws,
        }
    }

    /// What is left of an edition with errors.
    fn rest(rejected: Box<Rejected>) -> Result<Self, Box<Rejected>> {
        let mut raws = raw_rules(&rejected.sources);
        let digest = Digest::of(&rejected.sources);
        let mut left_out = Vec::new();
        for _ in 0..MOST_ROUNDS {
            let mut found = Diagnostics::default();
            let book = resolve::build(&raws, &rejected.sources, &digest, &mut found);
            if let Some(book) = book {
                let Rejected {
                    sources,
                    diagnostics,
                    omitted,
                    ..
                } = *rejected;
                let is_error = |found: &Diagnostic| found.level == Level::Error;
                return Ok(Self {
                    book,
                    sources,
                    problems: diagnostics.into_iter().filter(is_error).collect(),
                    omitted,
                    left_out,
                    raws,
                });
            }
            let wrong: Vec<_> = found
                .into_sorted()
                .into_iter()
                .filter(|found| found.level == Level::Error)
                .filter_map(|found| found.span)
                .collect();
            let is_wrong = |raw: &Raw| {
                wrong.iter().any(|span| {
                    span.file == raw.node.span.file
                        && span.start < raw.node.span.end
                        && raw.node.span.start < span.end
                })
            };
            let (out, rest): (Vec<Raw>, Vec<Raw>) = raws.into_iter().partition(is_wrong);
            if out.is_empty() {
                return Err(rejected);
            }
            left_out.extend(out.into_iter().map(|raw| LeftOut {
                kind: raw.kind,
                id: resolve::id_of(&raw).map(str::to_owned),
                place: raw.place,
            }));
            raws = rest;
        }
        Err(rejected)
    }

    /// The texts at a path of keys in a rule as they were written, with the names of the values they quote (`{…}`). A key
    /// `#id` picks the item of a list that has this id. Empty where there is nothing.
    #[must_use]
    pub fn texts(&self, kind: Kind, id: &str, path: &[&str]) -> Vec<&str> {
        let rule = self.raws.iter().find(|raw| {
            raw.kind == kind && (kind == Kind::Agency || resolve::id_of(raw).is_some_and(|own| own == id))
        });
        let mut texts = Vec::new();
        if let Some(node) = rule.and_then(|raw| at(&raw.node, path)) {
            collect(node, &mut texts);
        }
        texts
    }

    /// Its worked cases that ask something: set-ups and steps, in the order of the book.
    pub fn cases(&self) -> impl Iterator<Item = Case<'_>> {
        self.raws
            .iter()
            .filter(|raw| raw.kind == Kind::Case && (has(raw, "setup") || has(raw, "procedure")))
            .map(|raw| Case { raw })
    }
}

/// A worked case.
#[derive(Clone, Copy, Debug)]
pub struct Case<'e> {
    raw: &'e Raw,
}

impl<'e> Case<'e> {
    /// Its id; empty where it has none.
    #[must_use]
    pub fn id(&self) -> &'e str {
        resolve::id_of(self.raw).unwrap_or("")
    }

    /// Where it stands.
    #[must_use]
    pub const fn place(&self) -> &'e Place {
        &self.raw.place
    }

    /// Whether another case asks the same, whatever it expects.
    #[must_use]
    pub fn asks_as(&self, other: &Case<'_>) -> bool {
        ["setup", "procedure", "steps", "device", "begins-with"]
            .iter()
            .all(
                |key| match (at(&self.raw.node, &[key]), at(&other.raw.node, &[key])) {
                    (Some(one), Some(other)) => same(one, other),
                    (one, other) => one.is_none() && other.is_none(),
                },
            )
    }

    /// What a book says of it, one thing after the other, whatever the case expects: its findings, what else goes wrong, its
    /// minutes. Empty where nothing is wrong.
    ///
    /// # Errors
    ///
    /// The reason why the book can't be asked: it has no such device, say.
    pub fn asked(&self, book: &Rulebook) -> Result<Vec<String>, String> {
        cases::outcome(book, self.raw).unwrap_or_else(|| Err("the case asks nothing".to_owned()))
    }
}

fn raw_rules(sources: &Sources) -> Vec<Raw> {
    // What is wrong was found when the book was compiled.
    let mut found = Diagnostics::default();
    let mut blocks = Vec::new();
    for (file, _) in sources.iter() {
        blocks.extend(chapter::blocks(sources, file, &mut found));
    }
    resolve::raw_rules(&blocks, sources, &mut found)
}

fn has(raw: &Raw, key: &str) -> bool {
    at(&raw.node, &[key]).is_some()
}

fn at<'n>(node: &'n Node, path: &[&str]) -> Option<&'n Node> {
    let Some((key, rest)) = path.split_first() else {
        return Some(node);
    };
    let next = match (&node.value, key.strip_prefix('#')) {
        (Value::Mapping(entries), None) => {
            &entries.iter().find(|entry| entry.key == *key)?.value
        }
        (Value::List(items), Some(id)) => items.iter().find(|item| {
            matches!(at(item, &["id"]), Some(Node { value: Value::Text { text, .. }, .. }) if text == id)
        })?,
        // A list of one may be written without its dash.
        (_, Some(_)) => node,
        _ => return None,
    };
    at(next, rest)
}

fn collect<'n>(node: &'n Node, texts: &mut Vec<&'n str>) {
    match &node.value {
        Value::Text { text, .. } => texts.push(text),
        Value::List(items) => items.iter().for_each(|item| collect(item, texts)),
        Value::Mapping(entries) => entries.iter().for_each(|entry| collect(&entry.value, texts)),
    }
}

/// The same values, wherever they stand.
fn same(one: &Node, other: &Node) -> bool {
    match (&one.value, &other.value) {
        (Value::Text { text: one, .. }, Value::Text { text: other, .. }) => one == other,
        (Value::List(one), Value::List(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(one, other)| same(one, other))
        }
        (Value::Mapping(one), Value::Mapping(other)) => {
            one.len() == other.len()
                && one
                    .iter()
                    .zip(other)
                    .all(|(one, other)| one.key == other.key && same(&one.value, &other.value))
        }
        _ => false,
    }
}
