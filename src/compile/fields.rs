//! Takes typed values out of a rule's YAML, reporting every mistake and going on.
//!
//! A reader gives `None` when the value is missing or wrong; what was wrong has then been reported.

use super::{
    diagnostic::Diagnostics,
    lint::ALLOW,
    quoted::{self, Quotable},
    source::Span,
    suggest::{listed, nearest},
    undecided,
    written::{self, Measure, Mistake},
    yaml::{Entry, Node, Value},
};
use crate::book::{Date, List, Text};
use crate::quantity::Range;

/// The keys a mapping may and must have.
pub struct Keys {
    /// What the mapping describes, for messages.
    pub of: &'static str,
    /// Keys that must be there.
    pub required: &'static [&'static str],
    /// Keys that may be there.
    pub optional: &'static [&'static str],
}

/// The values of a mapping whose keys have been checked.
pub struct Fields<'a> {
    entries: &'a [Entry],
    /// Known keys that others seem to be misspellings of.
    meant: Vec<&'static str>,
    /// Where the mapping stands.
    pub span: Span,
}

impl<'a> Fields<'a> {
    /// Checks a mapping's keys.
    pub fn of(node: &'a Node, keys: &Keys, found: &mut Diagnostics) -> Option<Self> {
        if found.is_full() {
            return None;
        }
        let Value::Mapping(entries) = &node.value else {
            if undecided::is_mark(node) {
                return None;
            }
            found
                .error(
                    "not-a-mapping",
                    node.span,
                    format!("expected the keys of a {}, found {}", keys.of, kind_of(node)),
                )
                .hint(format!(
                    "write `key: value`, beginning with `{}: …`",
                    keys.required.first().unwrap_or(&"id")
                ));
            return None;
        };
        let known = || keys.required.iter().chain(keys.optional).copied();
        let mut meant: Vec<&'static str> = Vec::new();
        for entry in entries {
            if known().any(|key| key == entry.key) {
                continue;
            }
            // Any rule may have `allow`, which was taken out before; a step is no rule.
            let near = nearest(&entry.key, known().chain((keys.of != "step").then_some(ALLOW)));
            meant.extend(near);
            let error = found.error(
                "unknown-key",
                entry.key_span,
                format!("expected a key of a {}, found `{}`", keys.of, entry.key),
            );
            match near {
                Some(near) => error.hint(format!("did you mean `{near}`?")),
                None => error.hint(format!("the keys are {}", listed(known(), "and"))),
            };
        }
        let missing: Vec<&str> = keys
            .required
            .iter()
            .copied()
            .filter(|key| !entries.iter().any(|entry| entry.key == *key) && !meant.contains(key))
            .collect();
        if !missing.is_empty() {
            let at = entries.first().map_or(node.span, |entry| entry.key_span);
            found
                .error(
                    "missing-key",
                    at,
                    format!(
                        "this {} lacks {}",
                        keys.of,
                        listed(missing.iter().copied(), "and")
                    ),
                )
                .hint("add each as `key: value` at the same indent");
        }
        Some(Self {
            entries,
            meant,
            span: node.span,
        })
    }

    /// Whether a key is there, be it misspelled.
    pub fn has(&self, key: &str) -> bool {
        self.get(key).is_some() || self.meant.contains(&key)
    }

    /// A key's value.
    pub fn get(&self, key: &str) -> Option<&'a Node> {
        self.entries
            .iter()
            .find(|entry| entry.key == key)
            .map(|entry| &entry.value)
    }

    /// A key's value, read; `None` when the key isn't there.
    pub fn read<T>(
        &self,
        key: &str,
        found: &mut Diagnostics,
        reader: impl FnOnce(&'a Node, &mut Diagnostics) -> Option<T>,
    ) -> Option<T> {
        reader(self.get(key)?, found)
    }

    /// An optional key's value: `Some(None)` when the key isn't there, `None` when its value is wrong.
    pub fn maybe<T>(
        &self,
        key: &str,
        found: &mut Diagnostics,
        reader: impl FnOnce(&'a Node, &mut Diagnostics) -> Option<T>,
    ) -> Option<Option<T>> {
        match self.get(key) {
            None => Some(None),
            Some(node) => reader(node, found).map(Some),
        }
    }

    /// An optional list: empty when the key isn't there.
    pub fn list<T>(
        &self,
        key: &str,
        found: &mut Diagnostics,
        reader: impl FnOnce(&'a Node, &mut Diagnostics) -> Option<List<T>>,
    ) -> Option<List<T>> {
        self.maybe(key, found, reader)
            .map(|list| list.unwrap_or_else(|| List::fixed(&[])))
    }
}

fn kind_of(node: &Node) -> &'static str {
    match &node.value {
        Value::Text { text, .. } if text.is_empty() => "nothing",
        Value::Text { .. } => "text",
        Value::List(_) => "a list",
        Value::Mapping(_) => "keys and values",
    }
}

/// Where a part of a text stands in the chapter.
pub fn place_in(node: &Node, at: &core::ops::Range<usize>) -> Span {
    match &node.value {
        Value::Text {
            verbatim: Some(start),
            ..
        } => Span {
            file: node.span.file,
            start: start + at.start,
            end: start + at.end.max(at.start + 1),
        },
        _ => node.span,
    }
}

/// Reports a mistake inside a text.
pub fn report(node: &Node, mistake: Mistake, found: &mut Diagnostics) {
    if let Value::Text { text, .. } = &node.value
        && mistake.code.starts_with("unknown-")
        && text.get(mistake.at.clone()).is_some_and(|name| {
            // `{simple-mask.least-flow}` speaks of `simple-mask`.
            let name = name.trim_matches(['{', '}']);
            found.is_unread(name.split_once('.').map_or(name, |(id, _)| id))
        })
    {
        return;
    }
    let at = place_in(node, &mistake.at);
    let mut mistake = mistake;
    if let Value::Text { text, .. } = &node.value {
        mistake.advise(text, found.units);
    }
    let error = found.error(mistake.code, at, mistake.message);
    match mistake.hint {
        Some(hint) if hint == written::TAKE_OUT => {
            error.hint(format!("{hint}; remarks stand in the prose or in a `note`"));
        }
        Some(hint) => {
            error.hint(hint);
        }
        None => {}
    }
}

/// Text as written, not empty.
pub fn plain<'a>(node: &'a Node, found: &mut Diagnostics) -> Option<&'a str> {
    match &node.value {
        // Reported where the rule was read.
        Value::Text { .. } if undecided::is_mark(node) => None,
        Value::Text { text, .. } if !text.is_empty() => Some(text),
        _ => {
            found
                .error(
                    "not-text",
                    node.span,
                    format!("expected text, found {}", kind_of(node)),
                )
                .hint(match &node.value {
                    Value::Text { .. } => "write a value after the colon",
                    Value::List(_) => "write one text here, or put one that begins with a bracket in quotes",
                    Value::Mapping(_) => "put text that holds a colon, or begins with a brace, in quotes",
                });
            None
        }
    }
}

/// A sentence or two.
pub fn text(node: &Node, found: &mut Diagnostics) -> Option<Text> {
    plain(node, found).map(|text| Text::from(text.to_owned()))
}

/// A sentence or two that may quote values of the book.
pub fn quoting(node: &Node, quotable: Option<&Quotable<'_>>, found: &mut Diagnostics) -> Option<Text> {
    match quotable {
        // What could be quoted has errors of its own; this text is looked at when they are gone.
        None => text(node, found),
        Some(quotable) => written_as(node, found, |text| quoted::fill(text, quotable))?.map(Text::from),
    }
}

/// The items of a list; a single value is a list of one.
pub fn items(node: &Node) -> &[Node] {
    match &node.value {
        Value::List(items) => items,
        _ => core::slice::from_ref(node),
    }
}

/// Reads every item of a list; a single value is a list of one.
pub fn each<'a, T>(
    node: &'a Node,
    found: &mut Diagnostics,
    mut reader: impl FnMut(&'a Node, &mut Diagnostics) -> Option<T>,
) -> Option<List<T>> {
    let items = items(node);
    if items.is_empty() {
        found
            .error(
                "empty-list",
                node.span,
                "expected at least one, found an empty list",
            )
            .hint("fill the list, or take the key out");
        return None;
    }
    let read: Vec<T> = items.iter().filter_map(|item| reader(item, found)).collect();
    (read.len() == items.len()).then(|| List::from(read))
}

/// One text or a list of them.
pub fn texts(node: &Node, found: &mut Diagnostics) -> Option<List<Text>> {
    each(node, found, text)
}

/// Keys and values of a mapping with free keys.
pub fn pairs<'a>(node: &'a Node, found: &mut Diagnostics) -> Option<&'a [Entry]> {
    match &node.value {
        Value::Mapping(entries) => Some(entries),
        Value::Text { .. } if undecided::is_mark(node) => None,
        _ => {
            found
                .error(
                    "not-a-mapping",
                    node.span,
                    format!("expected keys and values, found {}", kind_of(node)),
                )
                .hint("write `key: value`, one a line, indented under the key");
            None
        }
    }
}

/// `yes` or `no`.
pub fn yes_or_no(node: &Node, found: &mut Diagnostics) -> Option<bool> {
    if let Value::Text { text, .. } = &node.value
        && let Some(meant) = match text.to_lowercase().as_str() {
            "true" | "y" | "on" => Some("yes"),
            "false" | "n" | "off" => Some("no"),
            _ => None,
        }
    {
        found
            .error(
                "unknown-word",
                node.span,
                format!("expected the word `yes` or `no`, found `{text}`"),
            )
            .hint(format!("write `{meant}`"));
        return None;
    }
    word(node, found, "word", &[("yes", true), ("no", false)])
}

/// One of a few words.
pub fn word<T: Copy>(node: &Node, found: &mut Diagnostics, what: &str, words: &[(&str, T)]) -> Option<T> {
    let text = plain(node, found)?;
    let known = || words.iter().map(|(word, _)| *word);
    if let Some((_, value)) = words.iter().find(|(word, _)| *word == text) {
        return Some(*value);
    }
    let error = found.error(
        "unknown-word",
        node.span,
        if words.len() <= 4 {
            format!("expected the {what} {}, found `{text}`", listed(known(), "or"))
        } else {
            format!("expected one of the words for the {what}, found `{text}`")
        },
    );
    match nearest(text, known()) {
        Some(near) => error.hint(format!("did you mean `{near}`?")),
        None => error.hint(format!("write {}", listed(known(), "or"))),
    };
    None
}

/// A quantity.
pub fn quantity<Q: Measure>(node: &Node, found: &mut Diagnostics) -> Option<Q> {
    written_as(node, found, written::one)
}

/// A range of a quantity.
pub fn range<Q: Measure>(node: &Node, found: &mut Diagnostics) -> Option<Range<Q>> {
    written_as(node, found, written::range)
}

/// Anything that is read from text.
pub fn written_as<T>(
    node: &Node,
    found: &mut Diagnostics,
    read: impl FnOnce(&str) -> Result<T, Mistake>,
) -> Option<T> {
    let text = plain(node, found)?;
    match read(text) {
        Ok(value) => Some(value),
        Err(mistake) => {
            report(node, mistake, found);
            None
        }
    }
}

/// A date, `YYYY-MM-DD`.
pub fn date(node: &Node, found: &mut Diagnostics) -> Option<Date> {
    let text = plain(node, found)?;
    let date: Option<Date> = text.parse().ok();
    if date.is_none() {
        found
            .error(
                "not-a-date",
                node.span,
                format!("expected a date, found `{text}`"),
            )
            .hint("write it as YYYY-MM-DD, a day that exists: 2026-11-01");
    }
    date
}

/// An identifier.
pub fn id<'a>(node: &'a Node, found: &mut Diagnostics) -> Option<&'a str> {
    let text = plain(node, found)?;
    let good = text.starts_with(|c: char| c.is_ascii_lowercase())
        && !text.ends_with('-')
        && !text.contains("--")
        && text
            .chars()
            .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-');
    if good {
        return Some(text);
    }
    let better = id_like(text);
    let error = found.error(
        "not-an-id",
        node.span,
        format!("expected lower-case words joined by hyphens, beginning with a letter, found `{text}`"),
    );
    match better {
        None => {
            error.hint("an id begins with a letter: `nasal-cannula`");
        }
        Some(better) => {
            error.hint(format!("write `{better}`"));
            found.leave_unread_id(&better);
        }
    }
    None
}

/// The id that a text is most likely meant to be.
pub fn id_like(text: &str) -> Option<String> {
    let mut better: String = text
        .to_lowercase()
        .chars()
        .map(|c| if c.is_ascii_alphanumeric() { c } else { '-' })
        .collect();
    while better.contains("--") {
        better = better.replace("--", "-");
    }
    let better = better.trim_matches(|c: char| c == '-' || c.is_ascii_digit());
    (!better.is_empty() && !text.starts_with(|c: char| c.is_ascii_digit())).then(|| better.to_owned())
}
