//! One reading of the rulebook's folder: its chapters, its rules as written, what is wrong with it, and, where nothing
//! is, the book.

use std::{collections::BTreeMap, path::Path, sync::OnceLock};

use crate::CHAPTERS;
use crate::book::{Kind, Rulebook};
use crate::cards::{CardsError, Wanted, data::Document, documents};
use crate::compile::{
    Compiled, Rejected, ToDo,
    chapter::{self, Block},
    compile,
    diagnostic::{Diagnostic, Diagnostics, Level},
    digest::Digest,
    folder, lint,
    proof::{self, Unsafe},
    source::{FileId, Sources},
    undecided,
    yaml::{self, Node, Value},
};

/// What the desk shows until a file is saved.
#[derive(Debug)]
pub struct Reading {
    /// Counts the readings.
    pub number: u64,
    /// The chapters.
    pub sources: Sources,
    /// What is wrong, and what is worth attention, in the order of the book.
    pub diagnostics: Vec<Diagnostic>,
    /// How many more there were than are kept.
    pub omitted: usize,
    /// The book, where all of its rules could be read; with errors it is only for saying what is wrong.
    pub book: Option<Rulebook>,
    /// Whether the book has no errors.
    pub is_sound: bool,
    /// The digest of the chapters, in hexadecimal.
    pub digest: String,
    /// Its short form.
    pub short_digest: String,
    /// The rule blocks of each chapter.
    blocks: Vec<Vec<Written>>,
    /// In which chapter each rule stands.
    places: BTreeMap<(&'static str, String), FileId>,
    /// Found when they are first asked for.
    unsafe_orders: OnceLock<Vec<Unsafe>>,
    /// Made when they are first asked for.
    cards: OnceLock<Result<Vec<(String, Document)>, CardsError>>,
}

/// A rule block, and its keys and values where they can be read.
#[derive(Debug)]
pub struct Written {
    /// The block.
    pub block: Block,
    /// Its YAML.
    pub node: Option<Node>,
}

impl Written {
    /// Each rule of the block with its id; a rule of the kind `agency` has none.
    pub fn rules(&self) -> impl Iterator<Item = (&Node, Option<&str>)> {
        let rules = match self.node.as_ref().map(|node| &node.value) {
            Some(Value::List(rules)) => rules.as_slice(),
            _ => self.node.as_slice(),
        };
        rules.iter().map(|rule| (rule, text_of(rule, "id")))
    }
}

/// The text under a key of a mapping.
pub fn text_of<'a>(node: &'a Node, key: &str) -> Option<&'a str> {
    let Value::Mapping(entries) = &node.value else {
        return None;
    };
    let entry = entries.iter().find(|entry| entry.key == key)?;
    match &entry.value.value {
        Value::Text { text, .. } => Some(text),
        _ => None,
    }
}

impl Reading {
    /// Reads a folder; without one, the rulebook in this program.
    pub fn of(folder: Option<&Path>, number: u64) -> Self {
        let read = match folder {
            Some(folder) => folder::load(folder),
            None => {
                let mut sources = Sources::default();
                for (name, text) in CHAPTERS {
                    sources.add((*name).to_owned(), (*name).to_owned(), (*text).to_owned());
                }
                compile(sources)
            }
        };
        match read {
            Ok(compiled) => {
                let Compiled {
                    book,
                    sources,
                    notes,
                    omitted,
                    ..
                } = match lint::today() {
                    Some(today) => compiled.on(today),
                    None => compiled,
                };
                Self::new(number, sources, notes, omitted, Some(book), true)
            }
            Err(rejected) => {
                let Rejected {
                    sources,
                    diagnostics,
                    omitted,
                    unusable,
                } = *rejected;
                let book = unusable.map(|book| *book);
                Self::new(number, sources, diagnostics, omitted, book, false)
            }
        }
    }

    fn new(
        number: u64,
        sources: Sources,
        diagnostics: Vec<Diagnostic>,
        omitted: usize,
        book: Option<Rulebook>,
        is_sound: bool,
    ) -> Self {
        let digest = Digest::of(&sources);
        let mut places = BTreeMap::new();
        let mut blocks = Vec::new();
        for (file, _) in sources.iter() {
            // What is wrong has been found already; here only what can be read is wanted.
            let unread = || Diagnostics::default();
            let written: Vec<Written> = chapter::blocks(&sources, file, &mut unread())
                .into_iter()
                .map(|block| Written {
                    node: yaml::read(&block, &sources, &mut unread()),
                    block,
                })
                .collect();
            for one in &written {
                for (_, id) in one.rules() {
                    if let Some(id) = id {
                        let key = (one.block.kind.word(), id.to_owned());
                        places.entry(key).or_insert(file);
                    }
                }
            }
            blocks.push(written);
        }
        Self {
            number,
            diagnostics,
            omitted,
            book,
            is_sound,
            digest: digest.full(),
            short_digest: digest.short(),
            blocks,
            places,
            sources,
            unsafe_orders: OnceLock::new(),
            cards: OnceLock::new(),
        }
    }

    /// The book, where it has no errors and may be asked.
    pub fn sound_book(&self) -> Option<&Rulebook> {
        self.book.as_ref().filter(|_| self.is_sound)
    }

    /// The orders of steps that do harm; none where the rules can't all be read, or nothing is wrong.
    pub fn unsafe_orders(&self) -> &[Unsafe] {
        match &self.book {
            Some(book) if !self.is_sound => self.unsafe_orders.get_or_init(|| proof::unsafe_orders(book)),
            _ => &[],
        }
    }

    /// The documents of the set of cards, with their names; none while the book has errors.
    pub fn cards(&self) -> Option<Result<&[(String, Document)], &CardsError>> {
        let book = self.sound_book()?;
        let made = self.cards.get_or_init(|| documents(book, &Wanted::default()));
        Some(made.as_deref())
    }

    /// The rule blocks of a chapter.
    pub fn blocks(&self, file: FileId) -> &[Written] {
        self.blocks.get(file.0).map_or(&[], Vec::as_slice)
    }

    /// The rule blocks of all chapters.
    pub fn all_blocks(&self) -> impl Iterator<Item = &Written> {
        self.blocks.iter().flatten()
    }

    /// How much is to be done, in the book or in one chapter, and how many notes there are.
    pub fn count(&self, file: Option<FileId>) -> (ToDo, usize) {
        let here =
            |found: &&Diagnostic| file.is_none_or(|file| found.span.is_some_and(|span| span.file == file));
        let found = || self.diagnostics.iter().filter(here);
        let notes = found().filter(|found| found.level == Level::Note).count();
        let omitted = if file.is_none() { self.omitted } else { 0 };
        (ToDo::of(found(), omitted), notes)
    }

    /// The chapter in which a rule stands.
    pub fn place(&self, kind: Kind, id: &str) -> Option<FileId> {
        self.places.get(&(kind.word(), id.to_owned())).copied()
    }

    /// A rule as it is written.
    pub fn rule(&self, kind: Kind, id: &str) -> Option<&Node> {
        let blocks = self.blocks(self.place(kind, id)?).iter();
        blocks
            .filter(|written| written.block.kind == kind)
            .flat_map(Written::rules)
            .find(|(_, known)| *known == Some(id))
            .map(|(rule, _)| rule)
    }

    /// A chapter by its file name.
    pub fn chapter(&self, name: &str) -> Option<FileId> {
        let mut chapters = self.sources.iter();
        chapters
            .find(|(_, source)| source.name == name)
            .map(|(file, _)| file)
    }

    /// What a chapter is called: its first heading, or its file's name.
    pub fn title(&self, file: FileId) -> String {
        let text = self.sources.text(file);
        let heading = text.lines().find_map(|line| line.strip_prefix("# "));
        let name = || self.sources.get(file).map_or("", |source| &source.name);
        heading
            .map(|heading| heading.trim().trim_end_matches('#').trim())
            .filter(|heading| !heading.is_empty())
            .unwrap_or_else(|| name().trim_end_matches(".md"))
            .chars()
            .take(200)
            .collect()
    }

    /// What the block `agency` says under a key, for the head of a page: a mark says only that it is one.
    pub fn decided(&self, key: &str) -> Option<&str> {
        self.agency(key).map(|text| match undecided::what_to_write(text) {
            Some(_) => "not decided yet",
            None => text,
        })
    }

    /// What the block `agency` says under a key, as it is written: also known of a book with errors.
    pub fn agency(&self, key: &str) -> Option<&str> {
        let mut agencies = self
            .all_blocks()
            .filter(|written| written.block.kind == Kind::Agency);
        text_of(agencies.next()?.node.as_ref()?, key)
    }
}
