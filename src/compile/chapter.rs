//! Finds the rule blocks of a chapter: the fenced blocks that begin with `yaml KIND`, with the heading above each
//! and the prose that gives its reason.
//!
//! A rule that is not seen is the worst thing that can happen here, so whatever could hide one is an error: a fence
//! left open, a fence inside a list or a quotation, a kind that is misspelled.

use std::ops::Range;

use pulldown_cmark::{CodeBlockKind, Event, Options, Parser, Tag, TagEnd};

use super::{
    diagnostic::Diagnostics,
    fence::{CLOSE, CLOSE_OR_BEGIN, Fence, MOVE_AND_CLOSE},
    source::{FileId, Sources, Span},
    suggest::nearest,
};
use crate::book::Kind;

/// The longest heading, in bytes. Every rule below it carries it.
pub const MAX_HEADING: usize = 500;

/// The longest reason, in bytes. Every rule of the block carries it.
pub const MAX_REASON: usize = 8_000;

/// A rule block, still as text.
#[derive(Clone, Debug)]
pub struct Block {
    /// What kind of rule it holds.
    pub kind: Kind,
    /// The chapter it stands in.
    pub file: FileId,
    /// Where the opening fence is.
    pub fence: Range<usize>,
    /// Where its YAML is.
    pub body: Range<usize>,
    /// The chapter's title.
    pub chapter: String,
    /// The nearest heading above.
    pub heading: String,
    /// The paragraphs between the last heading or block and this one.
    pub rationale: String,
}

/// Finds the rule blocks of one chapter.
pub fn blocks(sources: &Sources, file: FileId, found: &mut Diagnostics) -> Vec<Block> {
    Walk {
        sources,
        file,
        text: sources.text(file),
        found,
        blocks: Vec::new(),
        title: None,
        heading: None,
        rationale: Vec::new(),
        depth: 0,
    }
    .run()
}

struct Walk<'a> {
    sources: &'a Sources,
    file: FileId,
    text: &'a str,
    found: &'a mut Diagnostics,
    blocks: Vec<Block>,
    title: Option<String>,
    heading: Option<String>,
    rationale: Vec<String>,
    depth: usize,
}

impl Walk<'_> {
    fn run(mut self) -> Vec<Block> {
        let mut prose: Option<String> = None;
        let parser = Parser::new_ext(self.text, Options::ENABLE_TABLES).into_offset_iter();
        for (event, range) in parser {
            if self.found.is_full() {
                break;
            }
            match event {
                Event::Start(Tag::Heading { .. } | Tag::Paragraph) => prose = Some(String::new()),
                Event::End(TagEnd::Heading(_)) => {
                    let heading = self.heading(prose.take().unwrap_or_default(), range);
                    self.title.get_or_insert_with(|| heading.clone());
                    self.heading = Some(heading);
                    self.rationale.clear();
                }
                Event::End(TagEnd::Paragraph) => {
                    self.rationale.extend(prose.take());
                    self.lost_rule(range, "ordinary text");
                }
                Event::Start(Tag::CodeBlock(CodeBlockKind::Indented)) => {
                    self.lost_rule(range, "an indented block");
                }
                Event::Text(words) | Event::Code(words) => {
                    if let Some(prose) = &mut prose {
                        prose.push_str(&words);
                    }
                }
                Event::SoftBreak | Event::HardBreak => {
                    if let Some(prose) = &mut prose {
                        prose.push(' ');
                    }
                }
                Event::Start(Tag::CodeBlock(CodeBlockKind::Fenced(info))) => {
                    self.fenced(&info, range);
                }
                Event::Start(Tag::List(_) | Tag::BlockQuote(_)) => self.depth += 1,
                Event::End(TagEnd::List(_) | TagEnd::BlockQuote(_)) => {
                    self.depth = self.depth.saturating_sub(1);
                }
                Event::Html(_) => self.lost_rule(range, "HTML"),
                _ => {}
            }
        }
        self.blocks
    }

    fn heading(&mut self, mut heading: String, range: Range<usize>) -> String {
        if heading.len() > MAX_HEADING {
            let at = self.sources.span(self.file, range);
            self.found
                .error(
                    "heading-too-long",
                    at,
                    format!(
                        "expected a heading of at most {MAX_HEADING} bytes, found {}",
                        heading.len()
                    ),
                )
                .hint("end the heading sooner, and write the rest as a paragraph");
            heading.truncate(heading.floor_char_boundary(MAX_HEADING));
        }
        heading
    }

    fn reason(&mut self, fence: Span) -> String {
        let mut reason = self.rationale.join("\n\n");
        if reason.len() > MAX_REASON {
            self.found
                .error(
                    "reason-too-long",
                    fence,
                    format!(
                        "expected a reason of at most {MAX_REASON} bytes above this block, found {}",
                        reason.len()
                    ),
                )
                .hint("put a heading before the paragraphs that give the reason");
            reason.clear();
        }
        reason
    }

    fn fenced(&mut self, info: &str, range: Range<usize>) {
        let fence = Fence::measure(self.text, range);
        let body = self.text.get(fence.body.clone()).unwrap_or("");
        let errors = self.found.count();
        let Some(kind) = self.rule_kind(info, &fence) else {
            self.prose_fence(&fence);
            if self.found.count() == errors
                && !matches!(info.trim(), "text" | "markdown")
                && names_an_id(body)
            {
                let opening = self.sources.span(self.file, fence.opening.clone());
                self.found
                    .error(
                        "unknown-kind",
                        opening,
                        "this block looks like a rule, and nothing says of which kind",
                    )
                    .hint("begin it with ```yaml and a kind, such as ```yaml device, or with ```text for an example");
            }
            if self.found.count() > errors {
                self.leave_unread(body, &Kind::ALL);
            }
            return;
        };
        let opening = self.sources.span(self.file, fence.opening.clone());
        if let Some(inner) = fence.inner_fence(self.text, 3) {
            let inner = self.sources.span(self.file, inner);
            self.found
                .error(
                    "unclosed-fence",
                    opening,
                    "this block is not closed before another begins",
                )
                .label(inner, "the next fence is here")
                .hint(CLOSE);
        } else if !fence.closed {
            self.found
                .error("unclosed-fence", opening, "this block is never closed")
                .hint(if fence.at_line_start {
                    CLOSE
                } else {
                    MOVE_AND_CLOSE
                });
        } else if self.depth > 0 || !fence.at_line_start {
            self.found
                .error(
                    "nested-rule",
                    opening,
                    "expected the rule block at the start of a line, found it inside a list, a quotation or an indent",
                )
                .hint("move the block to the left margin");
        } else {
            let chapter = self.title.clone().unwrap_or_else(|| self.file_stem());
            let rationale = self.reason(opening);
            self.blocks.push(Block {
                kind,
                file: self.file,
                fence: fence.opening.clone(),
                body: fence.body,
                heading: self.heading.clone().unwrap_or_else(|| chapter.clone()),
                chapter,
                rationale,
            });
        }
        if self.found.count() > errors {
            self.leave_unread(body, &[kind]);
        }
        self.rationale.clear();
    }

    /// A rule that is not read may be of one of these kinds: nothing is called missing because of it.
    fn leave_unread(&mut self, block: &str, kinds: &[Kind]) {
        self.found.leave_unread(block);
        kinds.iter().for_each(|kind| self.found.leave_unread_kind(*kind));
    }

    /// The kind of rule a fence announces; reports a fence that seems to mean a rule and isn't one.
    fn rule_kind(&mut self, info: &str, fence: &Fence) -> Option<Kind> {
        let words: Vec<&str> = info.split_whitespace().collect();
        let known = Kind::ALL.map(Kind::word);
        let exact = |word: &str| Kind::ALL.into_iter().find(|kind| kind.word() == word);
        match *words.as_slice() {
            ["yaml", word] => {
                let kind = exact(word);
                if kind.is_none() {
                    let span = self.info_span(fence, word);
                    let error = self.found.error(
                        "unknown-kind",
                        span,
                        format!("expected a kind of rule, found `{word}`"),
                    );
                    match nearest(word, known) {
                        Some(near) => error.hint(format!("did you mean `{near}`?")),
                        None => error.hint(format!("the kinds are {}", known.join(", "))),
                    };
                }
                kind
            }
            ["yaml", word, extra, ..] if exact(word).is_some() => {
                let span = self.info_span(fence, extra);
                self.found
                    .error(
                        "unknown-kind",
                        span,
                        format!("expected nothing after the kind of rule, found `{extra}`"),
                    )
                    .hint(format!("write `yaml {word}` and nothing after it"));
                exact(word)
            }
            [first, ..] if first != "yaml" => {
                let lowered = info.to_lowercase();
                let meant = lowered
                    .split(|c: char| !c.is_alphanumeric())
                    .find_map(exact)
                    .filter(|_| lowered.starts_with('y') || lowered.starts_with("json"));
                if let Some(kind) = meant {
                    let span = self.info_span(fence, first);
                    self.found
                        .error(
                            "unknown-kind",
                            span,
                            format!("expected `yaml {kind}`, found `{}`", info.trim()),
                        )
                        .hint(format!(
                            "write `yaml {kind}` for a rule, or `text` for an example"
                        ));
                }
                None
            }
            _ => None,
        }
    }

    /// A fence that holds no rule must not swallow one.
    fn prose_fence(&mut self, fence: &Fence) {
        let opening = self.sources.span(self.file, fence.opening.clone());
        if let Some(inner) = fence.inner_fence(self.text, fence.ticks)
            && self
                .text
                .get(inner.clone())
                .is_some_and(|line| line.contains("yaml "))
        {
            let inner = self.sources.span(self.file, inner);
            self.found
                .error(
                    "unclosed-fence",
                    opening,
                    "this block is not closed before a rule begins",
                )
                .label(inner, "this rule would be lost")
                .hint(CLOSE_OR_BEGIN);
        } else if !fence.closed {
            self.found
                .error("unclosed-fence", opening, "this block is never closed")
                .hint(CLOSE_OR_BEGIN);
        }
    }

    /// A rule that Markdown takes for something else must not vanish.
    fn lost_rule(&mut self, range: Range<usize>, what: &str) {
        let mut start = range.start;
        let text = self.text;
        for line in text.get(range.clone()).unwrap_or("").split_inclusive('\n') {
            if announces_rule(line) {
                let at = self.sources.span(self.file, start..start + line.trim_end().len());
                self.found
                    .error(
                        "hidden-rule",
                        at,
                        format!("this rule stands in {what} and is not read"),
                    )
                    .hint("put it between lines of three backticks, at the left margin, or delete it");
                let rest = text.get(start..).unwrap_or("");
                self.leave_unread(rest.split("\n\n").next().unwrap_or(""), &Kind::ALL);
                return;
            }
            start += line.len();
        }
    }

    fn info_span(&self, fence: &Fence, word: &str) -> Span {
        let line = self.text.get(fence.opening.clone()).unwrap_or("");
        let start = fence.opening.start + line.find(word).unwrap_or(0);
        self.sources.span(self.file, start..start + word.len())
    }

    fn file_stem(&self) -> String {
        let name = self.sources.get(self.file).map_or("", |file| &file.name);
        name.trim_end_matches(".md").to_owned()
    }
}

/// Whether a line is meant to open a rule block: `` ``yaml device``, `<!-- ```yaml device`.
pub(super) fn announces_rule(line: &str) -> bool {
    let marks: &[char] = &['`', '~', '\'', '´', '’'];
    let Some((before, after)) = line.split_once("yaml ") else {
        return false;
    };
    let kind = after.split_whitespace().next().unwrap_or("");
    let before = before.trim_end_matches(' ');
    let count = before.chars().rev().take_while(|c| marks.contains(c)).count();
    count >= 2 && Kind::ALL.into_iter().any(|known| known.word() == kind)
}

/// Whether a block's text has a line that gives an id.
fn names_an_id(body: &str) -> bool {
    body.lines()
        .any(|line| line.starts_with("id: ") || line.starts_with("- id: "))
}
