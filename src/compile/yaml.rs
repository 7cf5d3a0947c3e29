//! Reads the YAML of a rule block into a tree in which every value knows its place in the chapter.
//!
//! This is the only module that touches the YAML library. It reads the library's events rather than through serde:
//! serde stops at the first wrong value and turns `0.10` into a number before anyone can see how it was written; the
//! tree keeps all values as text, with byte-exact places, so that every mistake of a block is reported at once.
//! Positions inside the fence become positions in the chapter here, and nowhere else.

use std::collections::BTreeMap;

use granit_parser::{Event, Parser, ScalarStyle, ScanError};

use super::{
    chapter::Block,
    diagnostic::Diagnostics,
    render::is_hidden,
    source::{FileId, Sources, Span},
    unreadable::{self, Slip, is_odd_blank},
};
use crate::book::Kind;

/// How deep lists and mappings may nest; the rulebook language needs four.
pub const MAX_DEPTH: usize = 16;

/// How many keys, values and lists one block may hold.
pub const MAX_NODES: usize = 10_000;

/// The longest value, in bytes.
pub const MAX_VALUE: usize = 10_000;

/// A value with its place.
#[derive(Clone, Debug)]
pub struct Node {
    /// Where it stands in the chapter.
    pub span: Span,
    /// What it is.
    pub value: Value,
}

/// What a value is.
#[derive(Clone, Debug)]
pub enum Value {
    /// Text, as the reader meant it.
    Text {
        /// With escapes resolved and lines folded.
        text: String,
        /// Where the text's first byte stands in the chapter, when each byte of it stands there as it is.
        verbatim: Option<usize>,
    },
    /// A list.
    List(Vec<Node>),
    /// Keys and values, in the order written.
    Mapping(Vec<Entry>),
}

/// A key with its value.
#[derive(Clone, Debug)]
pub struct Entry {
    /// The key.
    pub key: String,
    /// Where the key stands.
    pub key_span: Span,
    /// The value.
    pub value: Node,
}

/// Reads a block's YAML; `None` when it can't be read, which is then reported.
pub fn read(block: &Block, sources: &Sources, found: &mut Diagnostics) -> Option<Node> {
    if found.is_full() {
        return None;
    }
    let text = sources.text(block.file).get(block.body.clone())?;
    let mut reader = Reader {
        text,
        block,
        sources,
        found,
        parser: Parser::new_from_str(text),
        depth: 0,
        nodes: 0,
    };
    let slips = unreadable::odd_blanks(text);
    let node = if slips.is_empty() {
        reader.document()
    } else {
        slips.into_iter().for_each(|slip| reader.slip(slip));
        None
    };
    if node.is_none() {
        found.leave_unread(text);
    }
    node
}

/// Reads a whole file that is YAML; `None` when it can't be read, which is then reported.
pub fn read_whole(file: FileId, sources: &Sources, found: &mut Diagnostics) -> Option<Node> {
    let all = 0..sources.text(file).len();
    let block = Block {
        kind: Kind::Agency,
        file,
        fence: 0..0,
        body: all,
        chapter: String::new(),
        heading: String::new(),
        rationale: String::new(),
    };
    read(&block, sources, found)
}

struct Reader<'a> {
    text: &'a str,
    block: &'a Block,
    sources: &'a Sources,
    found: &'a mut Diagnostics,
    parser: Parser<'a, granit_parser::StrInput<'a>>,
    depth: usize,
    nodes: usize,
}

type YamlSpan = granit_parser::Span;

impl<'a> Reader<'a> {
    fn document(&mut self) -> Option<Node> {
        loop {
            let (event, span) = self.next()?;
            match event {
                Event::StreamStart | Event::DocumentStart(..) => {}
                Event::StreamEnd | Event::DocumentEnd => {
                    let fence = self.sources.span(self.block.file, self.block.fence.clone());
                    self.found
                        .error("empty-block", fence, "expected a rule, found an empty block")
                        .hint("write the rule's keys and values between the fences");
                    return None;
                }
                event => {
                    let node = self.node(event, span)?;
                    return self.nothing_follows().then_some(node);
                }
            }
        }
    }

    /// After the rule only the end may come: a second document would be lost.
    fn nothing_follows(&mut self) -> bool {
        loop {
            match self.next() {
                Some((Event::StreamEnd, _)) => return true,
                Some((Event::DocumentEnd, _)) => {}
                Some((_, span)) => {
                    let at = self.place(span);
                    self.found
                        .error(
                            "two-documents",
                            at,
                            "expected the end of the block, found another rule after `---` or `...`",
                        )
                        .hint("put each rule in a block of its own, or make a list of them");
                    return false;
                }
                None => return false,
            }
        }
    }

    /// The next event that isn't a comment.
    fn next(&mut self) -> Option<(Event<'a>, YamlSpan)> {
        match self.parser.next_event()? {
            Ok((event, span)) => Some((event, span)),
            Err(error) => {
                self.unreadable(&error);
                None
            }
        }
    }

    fn node(&mut self, event: Event<'a>, span: YamlSpan) -> Option<Node> {
        let at = self.place(span);
        let (anchor, tagged) = match &event {
            Event::Scalar(_, _, anchor, tag)
            | Event::SequenceStart(_, anchor, tag)
            | Event::MappingStart(_, anchor, tag) => (*anchor != 0, tag.is_some()),
            _ => (true, false),
        };
        if anchor || tagged {
            self.found
                .error(
                    "yaml-shorthand",
                    at,
                    "expected plain text, found a YAML anchor, alias or tag",
                )
                .hint("write the value out; put text that begins with `&`, `*` or `!` in quotes");
            return None;
        }
        self.nodes += 1;
        if self.nodes > MAX_NODES {
            self.found
                .error(
                    "block-too-long",
                    at,
                    format!("expected at most {MAX_NODES} keys and values in a block, found more"),
                )
                .hint("put the rules into several blocks");
            return None;
        }
        self.depth += 1;
        if self.depth > MAX_DEPTH {
            self.found
                .error(
                    "nested-too-deep",
                    at,
                    format!("expected at most {MAX_DEPTH} levels of lists, found more"),
                )
                .hint("take out brackets that hold nothing but another list");
            return None;
        }
        let node = match event {
            Event::Scalar(text, style, ..) => {
                if style == ScalarStyle::Plain && self.is_cut_short(span)
                    || self.is_misquoted(&text, style, at)
                {
                    return None;
                }
                self.check_text(&text, at);
                // Pasted from a word processor. In a value it can mean nothing but a space.
                let text = if text.contains(is_odd_blank) {
                    text.replace(is_odd_blank, " ").into()
                } else {
                    text
                };
                // `key:` with nothing after it is nothing, however the library spells it.
                let text = if span.byte_range().is_some_and(|range| range.is_empty()) {
                    "".into()
                } else {
                    text
                };
                let verbatim = self.verbatim(&text, style, span);
                Some(Node {
                    span: at,
                    value: Value::Text {
                        text: text.trim_end().to_owned(),
                        verbatim,
                    },
                })
            }
            Event::SequenceStart(..) => self.list(at),
            _ => self.mapping(at),
        };
        self.depth -= 1;
        node
    }

    /// ` #` in bare text begins a YAML comment: the rest of the line would be lost without a word.
    fn is_cut_short(&mut self, span: YamlSpan) -> bool {
        let end = span.byte_range().map_or(0, |range| range.end);
        let rest = self.text.get(end..).unwrap_or("");
        let comment = rest.trim_start_matches([' ', '\t']);
        let gap = rest.len() - comment.len();
        if gap == 0 || !comment.starts_with('#') {
            return false;
        }
        let comment = comment.lines().next().unwrap_or("");
        let start = self.block.body.start + end + gap;
        let at = self
            .sources
            .span(self.block.file, start..start + comment.trim_end().len());
        self.found
            .error(
                "cut-short",
                at,
                "found `#` after a value: what follows it would not be read",
            )
            .hint("put text that holds `#` in quotes, and remarks in the prose");
        true
    }

    /// A quotation mark was lost at the end of a text, or at its beginning.
    fn is_misquoted(&mut self, text: &str, style: ScalarStyle, at: Span) -> bool {
        let (message, hint, at) = if style == ScalarStyle::Plain {
            if !unreadable::stray_quotation(text) {
                return false;
            }
            let end = self.sources.span(at.file, at.end.saturating_sub(1)..at.end);
            (
                "this quotation mark was never opened",
                "open the quotation mark at the beginning of its text, or delete this one",
                end,
            )
        } else {
            let raw = self.sources.text(at.file).get(at.start..at.end).unwrap_or("");
            if !matches!(style, ScalarStyle::SingleQuoted | ScalarStyle::DoubleQuoted)
                || !unreadable::takes_in_keys(raw)
            {
                return false;
            }
            (
                "this quotation mark is not closed before the next keys",
                "close the quotation mark at the end of its text",
                self.sources.span(at.file, at.start..at.start + 1),
            )
        };
        self.found.error("unreadable-yaml", at, message).hint(hint);
        true
    }

    /// A value goes to a terminal and onto cards: it must show as it was meant.
    fn check_text(&mut self, text: &str, at: Span) {
        if text.len() > MAX_VALUE {
            self.found
                .error(
                    "value-too-long",
                    at,
                    format!(
                        "expected a value of at most {MAX_VALUE} bytes, found {}",
                        text.len()
                    ),
                )
                .hint("say it in fewer words, or in the prose");
        }
        // What moves or turns the text was reported when the chapter's lines were checked, and ended the reading. Here it is
        // what does no harm in prose, or stands in the text as an escape.
        if let Some(hidden) = text.chars().find(|c| is_hidden(*c)) {
            let raw = self.sources.text(at.file).get(at.start..at.end).unwrap_or("");
            let (at, hint) = match raw.find(hidden) {
                Some(byte) => {
                    let start = at.start + byte;
                    let place = self.sources.span(at.file, start..start + hidden.len_utf8());
                    (
                        place,
                        "delete the character: it can't be seen; typing the value anew may be easiest",
                    )
                }
                None => (at, "take the escape out of the text"),
            };
            self.found
                .error(
                    "hidden-character",
                    at,
                    format!(
                        "expected text that shows as it is written, found the character U+{:04X}",
                        u32::from(hidden)
                    ),
                )
                .hint(hint);
        }
    }

    fn list(&mut self, at: Span) -> Option<Node> {
        let mut items = Vec::new();
        loop {
            match self.next()? {
                (Event::SequenceEnd, end) => {
                    return Some(Node {
                        span: self.until(at, end),
                        value: Value::List(items),
                    });
                }
                (event, span) => items.push(self.node(event, span)?),
            }
        }
    }

    fn mapping(&mut self, at: Span) -> Option<Node> {
        let mut entries: Vec<Entry> = Vec::new();
        let mut given: BTreeMap<String, Span> = BTreeMap::new();
        loop {
            let key = match self.next()? {
                (Event::MappingEnd, end) => {
                    return Some(Node {
                        span: self.until(at, end),
                        value: Value::Mapping(entries),
                    });
                }
                (event, span) => self.node(event, span)?,
            };
            let raw = self.sources.text(key.span.file).get(key.span.start..key.span.end);
            if let Some(at) = raw.and_then(|raw| raw.find(is_odd_blank)) {
                let at = key.span.start - self.block.body.start + at;
                self.slip(unreadable::odd_blank(self.text, at));
                return None;
            }
            let (event, span) = self.next()?;
            let value = self.node(event, span)?;
            let Value::Text { text, .. } = key.value else {
                self.found
                    .error(
                        "key-not-text",
                        key.span,
                        "expected a key, found a list or mapping",
                    )
                    .hint("write `key: value`, with one word as the key");
                return None;
            };
            if let Some(first) = given.get(&text).copied() {
                self.found
                    .error("duplicate-key", key.span, format!("found `{text}` a second time"))
                    .label(first, "first given here")
                    .hint("keep one of the two");
                continue;
            }
            given.insert(text.clone(), key.span);
            entries.push(Entry {
                key: text,
                key_span: key.span,
                value,
            });
        }
    }

    fn place(&self, span: YamlSpan) -> Span {
        let mut range = span.byte_range().unwrap_or(0..0);
        // A folded text ends with the line ends and the indent before the next key.
        if let Some(text) = self.text.get(range.clone()) {
            range.end = range.start + text.trim_end().len();
        }
        let start = self.block.body.start;
        self.sources
            .span(self.block.file, start + range.start..start + range.end)
    }

    fn until(&self, start: Span, end: YamlSpan) -> Span {
        let end = end.byte_range().map_or(0, |range| range.end);
        let inside = self.text.get(..end).map_or(end, |text| text.trim_end().len());
        let end = self.block.body.start + inside;
        self.sources
            .span(self.block.file, start.start..end.max(start.start + 1))
    }

    /// Where the text's first byte stands, when the source holds the very same bytes.
    fn verbatim(&self, text: &str, style: ScalarStyle, span: YamlSpan) -> Option<usize> {
        let range = span.byte_range()?;
        let quote = usize::from(style != ScalarStyle::Plain);
        let start = range.start + quote;
        let same = self.text.get(start..start + text.len())? == text;
        same.then_some(self.block.body.start + start)
    }

    fn unreadable(&mut self, error: &ScanError) {
        let stop = error.marker().byte_offset().unwrap_or(0);
        self.slip(unreadable::why(self.text, stop, &error.info()));
    }

    fn slip(&mut self, slip: Slip) {
        let start = self.block.body.start;
        let at = self
            .sources
            .span(self.block.file, start + slip.at.start..start + slip.at.end);
        self.found.error(slip.code, at, slip.message).hint(slip.hint);
    }
}
