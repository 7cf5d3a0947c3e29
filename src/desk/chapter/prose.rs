//! Prose as HTML, part by part: each paragraph, heading, list, table or rule block of a chapter is a part of its own,
//! so that problems can stand beside it and a change replaces no more than it must.
//!
//! A chapter is text, not a program: HTML in it is shown as it is written, links lead only to chapters of the book, and
//! pictures are named and not fetched.

use std::{collections::BTreeMap, ops::Range};

use maud::{Markup, PreEscaped};
use pulldown_cmark::{Alignment, CodeBlockKind, Event, HeadingLevel, Options, Parser, Tag, TagEnd};

use super::super::{query::escaped, reading::Reading};
use super::rule;
use crate::compile::render::is_hidden;
use crate::compile::source::FileId;

/// A part of a chapter.
pub struct Section {
    /// Its name within the page; depends on its text alone, so that it stays when others change.
    pub id: String,
    /// Where it stands, up to the next one.
    pub range: Range<usize>,
    /// Whether it is the chapter's title.
    pub is_title: bool,
    /// How it is shown.
    pub html: Markup,
}

/// The parts of a chapter.
pub fn sections(reading: &Reading, file: FileId) -> Vec<Section> {
    let outline = outline(reading, file);
    let text = reading.sources.text(file);
    let mut writer = Writer {
        reading,
        out: String::new(),
        heads: false,
        alignments: Vec::new(),
        column: 0,
        links: Vec::new(),
        in_image: 0,
    };
    let mut made = outline.into_iter();
    let mut sections: Vec<Section> = Vec::new();
    let mut depth = 0_usize;
    let mut is_title = false;
    let mut has_title = false;
    let mut skipping = false;
    for (event, range) in Parser::new_ext(text, Options::ENABLE_TABLES).into_offset_iter() {
        let is_top = depth == 0;
        match &event {
            Event::Start(tag) => {
                if is_top {
                    is_title = matches!(
                        tag,
                        Tag::Heading {
                            level: HeadingLevel::H1,
                            ..
                        }
                    ) && !has_title;
                    has_title |= is_title;
                    if let Tag::CodeBlock(CodeBlockKind::Fenced(_)) = tag
                        && let Some(written) = reading
                            .blocks(file)
                            .iter()
                            .find(|written| written.block.fence.start == range.start)
                    {
                        skipping = true;
                        writer.out.push_str(&rule::shown(reading, written).into_string());
                    }
                }
                depth += 1;
            }
            Event::End(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
        if !skipping {
            writer.event(event, text.get(range).unwrap_or(""));
        }
        if depth == 0 {
            skipping = false;
            let html = PreEscaped(core::mem::take(&mut writer.out));
            if let Some((range, id)) = made.next() {
                sections.push(Section {
                    id,
                    range,
                    is_title,
                    html,
                });
            }
            is_title = false;
        }
    }
    sections
}

/// Where the parts of a chapter stand, with their names.
pub fn outline(reading: &Reading, file: FileId) -> Vec<(Range<usize>, String)> {
    let text = reading.sources.text(file);
    let mut starts: Vec<(Range<usize>, String)> = Vec::new();
    let mut seen: BTreeMap<u64, usize> = BTreeMap::new();
    let mut depth = 0_usize;
    for (event, range) in Parser::new_ext(text, Options::ENABLE_TABLES).into_offset_iter() {
        let is_top = depth == 0;
        match event {
            Event::Start(_) => depth += 1,
            Event::End(_) => {
                depth = depth.saturating_sub(1);
                continue;
            }
            _ => {}
        }
        if is_top {
            let key = fingerprint(text.get(range.clone()).unwrap_or(""));
            let times = seen.entry(key).or_default();
            *times += 1;
            let id = if *times == 1 {
                format!("part-{key:016x}")
            } else {
                format!("part-{key:016x}-{times}")
            };
            starts.push((range, id));
        }
    }
    // Each part reaches to the next, so that no place is in none.
    let ends: Vec<usize> = starts
        .iter()
        .skip(1)
        .map(|(range, _)| range.start)
        .chain([usize::MAX])
        .collect();
    for (index, ((range, _), end)) in starts.iter_mut().zip(ends).enumerate() {
        *range = if index == 0 { 0..end } else { range.start..end };
    }
    starts
}

/// FNV-1a, 64 bits: names a part by its text.
fn fingerprint(text: &str) -> u64 {
    text.trim_end().bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

struct Writer<'a> {
    reading: &'a Reading,
    out: String,
    heads: bool,
    alignments: Vec<Alignment>,
    column: usize,
    links: Vec<Option<String>>,
    in_image: usize,
}

impl Writer<'_> {
    fn event(&mut self, event: Event<'_>, source: &str) {
        match event {
            Event::Start(tag) => self.start(tag),
            Event::End(tag) => self.end(tag),
            Event::Text(words) => self.text(&words),
            Event::Code(words) => {
                self.out.push_str("<code>");
                self.text(&words);
                self.out.push_str("</code>");
            }
            // Shown as it is written.
            Event::Html(words) | Event::InlineHtml(words) => self.text(&words),
            Event::SoftBreak => self.out.push('\n'),
            Event::HardBreak => self.out.push_str("<br>"),
            Event::Rule => self.out.push_str("<hr>"),
            _ => self.text(source),
        }
    }

    fn start(&mut self, tag: Tag<'_>) {
        let opening = match tag {
            Tag::Paragraph => "<p>",
            Tag::Heading { level, .. } => {
                self.out.push_str(&format!("<{level}>"));
                return;
            }
            Tag::BlockQuote(_) => "<blockquote>",
            Tag::CodeBlock(_) => "<pre><code>",
            Tag::HtmlBlock => "<pre class=\"as-written\"><code>",
            Tag::List(Some(first)) => {
                self.out.push_str(&format!("<ol start=\"{first}\">"));
                return;
            }
            Tag::List(None) => "<ul>",
            Tag::Item => "<li>",
            Tag::Table(alignments) => {
                self.alignments = alignments;
                "<table>"
            }
            Tag::TableHead => {
                self.heads = true;
                self.column = 0;
                "<thead><tr>"
            }
            Tag::TableRow => {
                self.column = 0;
                "<tr>"
            }
            Tag::TableCell => {
                let class = match self.alignments.get(self.column) {
                    Some(Alignment::Right) => " class=\"right\"",
                    Some(Alignment::Center) => " class=\"centre\"",
                    _ => "",
                };
                self.column += 1;
                let cell = if self.heads { "th scope=\"col\"" } else { "td" };
                self.out.push_str(&format!("<{cell}{class}>"));
                return;
            }
            Tag::Emphasis => "<em>",
            Tag::Strong => "<strong>",
            Tag::Link { dest_url, .. } => {
                match chapter_link(self.reading, &dest_url) {
                    Some(address) => {
                        self.out.push_str(&format!("<a href=\"{address}\">"));
                        self.links.push(None);
                    }
                    None => self.links.push(Some(dest_url.into_string())),
                }
                return;
            }
            Tag::Image { dest_url, .. } => {
                self.in_image += 1;
                self.out.push_str("<span class=\"picture\">picture: ");
                self.links.push(Some(dest_url.into_string()));
                return;
            }
            _ => "",
        };
        self.out.push_str(opening);
    }

    fn end(&mut self, tag: TagEnd) {
        let closing = match tag {
            TagEnd::Paragraph => "</p>",
            TagEnd::Heading(level) => {
                self.out.push_str(&format!("</{level}>"));
                return;
            }
            TagEnd::BlockQuote(_) => "</blockquote>",
            TagEnd::CodeBlock | TagEnd::HtmlBlock => "</code></pre>",
            TagEnd::List(true) => "</ol>",
            TagEnd::List(false) => "</ul>",
            TagEnd::Item => "</li>",
            TagEnd::Table => "</tbody></table>",
            TagEnd::TableHead => {
                self.heads = false;
                "</tr></thead><tbody>"
            }
            TagEnd::TableRow => "</tr>",
            TagEnd::TableCell => {
                if self.heads {
                    "</th>"
                } else {
                    "</td>"
                }
            }
            TagEnd::Emphasis => "</em>",
            TagEnd::Strong => "</strong>",
            TagEnd::Link => {
                match self.links.pop().flatten() {
                    // Where it would lead is told, and nothing leads there.
                    Some(address) => {
                        self.out.push_str(" <span class=\"away\">(");
                        self.text(&address);
                        self.out.push_str(")</span>");
                    }
                    None => self.out.push_str("</a>"),
                }
                return;
            }
            TagEnd::Image => {
                let address = self.links.pop().flatten().unwrap_or_default();
                self.out.push_str(" <span class=\"away\">(");
                self.text(&address);
                self.out.push_str(")</span></span>");
                self.in_image = self.in_image.saturating_sub(1);
                return;
            }
            _ => "",
        };
        self.out.push_str(closing);
    }

    fn text(&mut self, text: &str) {
        for c in text.chars() {
            match c {
                '&' => self.out.push_str("&amp;"),
                '<' => self.out.push_str("&lt;"),
                '>' => self.out.push_str("&gt;"),
                '"' => self.out.push_str("&quot;"),
                '\'' => self.out.push_str("&#39;"),
                // What isn't seen, or turns the text around it, is shown for what it is.
                c if is_hidden(c) => self.out.extend(c.escape_unicode()),
                c => self.out.push(c),
            }
        }
    }
}

/// A link to a chapter of the book, as an address; none for any other.
fn chapter_link(reading: &Reading, link: &str) -> Option<String> {
    let name = link.split('#').next().unwrap_or("");
    let name = name.strip_prefix("./").unwrap_or(name);
    let name = form_urlencoded_name(name);
    reading.chapter(&name)?;
    Some(format!("/chapter/{}", escaped(&name)))
}

/// A file name in a link may have its spaces escaped.
fn form_urlencoded_name(name: &str) -> String {
    name.replace("%20", " ")
}
