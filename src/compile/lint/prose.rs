//! The chapters' prose in stretches of running text, with the place of every byte, and the rule each gives reasons for.

use std::{
    collections::{BTreeMap, BTreeSet},
    ops::Range,
};

use pulldown_cmark::{Event, Options, Parser, Tag, TagEnd};

use super::{
    super::{
        chapter::Block,
        source::{FileId, Sources, Span},
    },
    Places,
    places::RuleRef,
};

/// Running text without a break: a heading, a paragraph, an item of a list, a cell of a table.
#[derive(Debug)]
pub struct Stretch {
    /// Where it stands.
    pub at: Stand,
    /// Its words, without marks of emphasis; code is left out.
    pub text: String,
    /// The words in marks of code.
    pub code: Vec<String>,
    /// Where the text's parts begin, in it and in the chapter.
    parts: Vec<(usize, usize)>,
}

/// The place of a stretch among the rules.
#[derive(Clone, Debug)]
pub struct Stand {
    /// The chapter.
    pub file: FileId,
    /// The rule block that follows under the same heading, with nothing but prose between.
    pub block: Option<Range<usize>>,
}

/// A link.
#[derive(Debug)]
pub struct Link {
    /// Where it stands among the rules.
    pub at: Stand,
    /// Where it is.
    pub span: Span,
    /// Where it leads.
    pub to: String,
}

/// The prose of a whole book.
#[derive(Debug, Default)]
pub struct Prose {
    /// In the order of the book.
    pub stretches: Vec<Stretch>,
    /// In the order of the book.
    pub links: Vec<Link>,
    /// What `#…` can lead to, chapter by chapter.
    pub anchors: Vec<BTreeSet<String>>,
}

impl Stand {
    /// The rules that may allow what is found here: those it gives reasons for, and the agency.
    pub fn owners(&self, places: &Places) -> Vec<RuleRef> {
        let block = self.block.clone().unwrap_or(0..0);
        let mut owners: Vec<RuleRef> = places.within(self.file, block).collect();
        owners.push(RuleRef::AGENCY);
        owners
    }

    /// Whether it gives the reasons for a rule.
    pub fn gives_reasons_for(&self, rule: Span) -> bool {
        self.file == rule.file
            && self
                .block
                .as_ref()
                .is_some_and(|block| block.contains(&rule.start))
    }
}

impl Stretch {
    /// Where a part of the text stands in the chapter.
    pub fn span(&self, sources: &Sources, part: Range<usize>) -> Span {
        let place = |at: usize| {
            let index = self.parts.partition_point(|(start, _)| *start <= at);
            let (start, source) = index
                .checked_sub(1)
                .and_then(|index| self.parts.get(index))
                .unwrap_or(&(0, 0));
            source + at.saturating_sub(*start)
        };
        let last = part.end.saturating_sub(1).max(part.start);
        sources.span(self.at.file, place(part.start)..place(last) + 1)
    }
}

impl Prose {
    /// Reads the prose of every chapter.
    pub fn read(sources: &Sources, blocks: &[Block]) -> Self {
        let mut prose = Self::default();
        let mut rules: BTreeMap<(FileId, usize), usize> = BTreeMap::new();
        for block in blocks {
            rules.insert((block.file, block.fence.start), block.body.end);
        }
        for (file, source) in sources.iter() {
            let first = (prose.stretches.len(), prose.links.len());
            let mut walk = Walk {
                prose: &mut prose,
                sources,
                file,
                open: None,
                waiting: first,
                anchors: BTreeSet::new(),
                taken: BTreeMap::new(),
            };
            walk.chapter(&source.text, &rules);
            let anchors = walk.anchors;
            prose.anchors.push(anchors);
        }
        prose
    }
}

struct Walk<'a> {
    prose: &'a mut Prose,
    sources: &'a Sources,
    file: FileId,
    open: Option<Stretch>,
    /// How many stretches and links belong to no later rule.
    waiting: (usize, usize),
    anchors: BTreeSet<String>,
    /// How often a heading's anchor was given.
    taken: BTreeMap<String, usize>,
}

impl Walk<'_> {
    fn chapter(&mut self, text: &str, rules: &BTreeMap<(FileId, usize), usize>) {
        let mut fenced = false;
        for (event, range) in Parser::new_ext(text, Options::ENABLE_TABLES).into_offset_iter() {
            match event {
                Event::Start(Tag::CodeBlock(_)) => {
                    self.close();
                    fenced = true;
                    if let Some(end) = rules.get(&(self.file, range.start)) {
                        self.rule(range.start..*end);
                    }
                }
                Event::End(TagEnd::CodeBlock) => fenced = false,
                _ if fenced => {}
                Event::Text(words) => self.words(&words, range.start),
                Event::Code(words) => {
                    self.words(" ", range.start);
                    if let Some(open) = &mut self.open {
                        open.code.push(words.into_string());
                    }
                }
                Event::SoftBreak | Event::HardBreak => self.words(" ", range.start),
                Event::Start(Tag::Link { dest_url, .. }) => {
                    let link = Link {
                        at: self.stand(),
                        span: self.sources.span(self.file, range),
                        to: dest_url.into_string(),
                    };
                    self.prose.links.push(link);
                }
                Event::Start(Tag::Emphasis | Tag::Strong | Tag::Image { .. })
                | Event::End(TagEnd::Emphasis | TagEnd::Strong | TagEnd::Image | TagEnd::Link) => {}
                Event::End(TagEnd::Heading(_)) => self.heading(),
                Event::Start(_) | Event::End(_) | Event::Rule => self.close(),
                _ => {}
            }
        }
        self.close();
    }

    const fn stand(&self) -> Stand {
        Stand {
            file: self.file,
            block: None,
        }
    }

    fn words(&mut self, words: &str, source: usize) {
        let stand = self.stand();
        let open = self.open.get_or_insert_with(|| Stretch {
            at: stand,
            text: String::new(),
            code: Vec::new(),
            parts: Vec::new(),
        });
        open.parts.push((open.text.len(), source));
        open.text.push_str(words);
    }

    fn close(&mut self) {
        self.prose.stretches.extend(self.open.take());
    }

    /// A heading begins a new matter: what stood above it gives no reason for what follows.
    fn heading(&mut self) {
        if let Some(open) = &self.open {
            let anchor = anchor(&open.text);
            let times = self.taken.entry(anchor.clone()).or_insert(0);
            let own = if *times == 0 {
                anchor
            } else {
                format!("{anchor}-{times}")
            };
            *times += 1;
            self.anchors.insert(own);
        }
        self.close();
        self.waiting = (self.prose.stretches.len(), self.prose.links.len());
    }

    fn rule(&mut self, block: Range<usize>) {
        for stretch in self.prose.stretches.iter_mut().skip(self.waiting.0) {
            stretch.at.block = Some(block.clone());
        }
        for link in self.prose.links.iter_mut().skip(self.waiting.1) {
            link.at.block = Some(block.clone());
        }
        self.waiting = (self.prose.stretches.len(), self.prose.links.len());
    }
}

/// What a link to a heading is written as, in the manner of the common Markdown renderers: lower case, hyphens for
/// spaces, no other signs.
fn anchor(heading: &str) -> String {
    let mut anchor = String::new();
    for c in heading.trim().chars().flat_map(char::to_lowercase) {
        if c.is_alphanumeric() || c == '-' || c == '_' {
            anchor.push(c);
        } else if c == ' ' {
            anchor.push('-');
        }
    }
    anchor
}
