//! Abbreviations that the book never writes out.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    super::{source::Span, yaml::Value},
    Lint, Room,
    places::{self, RuleRef},
};

/// An abbreviation that is used and never written out.
pub const ABBREVIATION_NOT_EXPLAINED: Lint = Lint::note("abbreviation-not-explained");

/// Written with two capitals or more, and known to whoever can read a gauge.
const COMMON: [&str; 3] = ["MPa", "OK", "UTC"];

/// The shortest and the longest abbreviation, in characters.
const LENGTH: core::ops::RangeInclusive<usize> = 2..=6;

pub fn look(room: &mut Room<'_>) {
    let (prose, rules, sources) = (room.prose, room.places, room.sources);
    let mut seen = Seen::default();
    for stretch in &prose.stretches {
        seen.text(&stretch.text, |at| {
            (stretch.span(sources, at), stretch.at.owners(rules))
        });
    }
    for (rule, written) in rules.all() {
        places::texts(written, &mut |_, node| {
            if let Value::Text { text, verbatim } = &node.value {
                seen.text(text, |at| {
                    let span = verbatim.map_or(node.span, |start| {
                        sources.span(node.span.file, start + at.start..start + at.end)
                    });
                    (span, vec![rule, RuleRef::AGENCY])
                });
            }
        });
    }
    let Seen { mut first, explained } = seen;
    first.retain(|word, _| !explained.contains(word));
    if first.is_empty() {
        return;
    }
    // A word in capitals that is also written small is only loud.
    let small: BTreeMap<String, String> = first
        .keys()
        .map(|word| (word.to_lowercase(), word.clone()))
        .collect();
    let mut loud = BTreeSet::new();
    for stretch in &prose.stretches {
        for (at, _) in tokens(&stretch.text) {
            if let Some(word) = stretch.text.get(at).and_then(|word| small.get(word)) {
                loud.insert(word.clone());
            }
        }
    }
    for (word, (at, owners)) in first {
        if !loud.contains(&word) {
            room.find(
                ABBREVIATION_NOT_EXPLAINED,
                &owners,
                at,
                format!("found `{word}`, which the book never writes out"),
            )
            .hint(format!(
                "write it out once, with `({word})` behind it, or in a list as `{word}: …`"
            ));
        }
    }
}

#[derive(Default)]
struct Seen {
    /// Where each stands first.
    first: BTreeMap<String, (Span, Vec<RuleRef>)>,
    explained: BTreeSet<String>,
}

impl Seen {
    fn text(&mut self, text: &str, place: impl Fn(core::ops::Range<usize>) -> (Span, Vec<RuleRef>)) {
        for (at, capitals) in tokens(text) {
            if capitals < 2 {
                continue;
            }
            let written = text.get(at.clone()).unwrap_or("");
            let Some(word) = abbreviation(written) else {
                continue;
            };
            let before = text.get(..at.start).unwrap_or("");
            let after = text.get(at.end..).unwrap_or("");
            if explains(&word, before, after) {
                self.explained.insert(word);
            } else if !self.explained.contains(&word) {
                let (span, owners) = place(at);
                let earlier = self.first.get(&word).is_some_and(|(first, _)| *first <= span);
                if !earlier {
                    self.first.insert(word, (span, owners));
                }
            }
        }
    }
}

/// The words of a text, with how many capitals each has.
fn tokens(text: &str) -> impl Iterator<Item = (core::ops::Range<usize>, usize)> {
    let mut at = 0;
    core::iter::from_fn(move || {
        let rest = text.get(at..)?;
        let start = at + rest.find(char::is_alphanumeric)?;
        let rest = text.get(start..)?;
        let length = rest.find(|c: char| !c.is_alphanumeric()).unwrap_or(rest.len());
        at = start + length;
        let capitals = rest.get(..length)?.chars().filter(|c| c.is_uppercase()).count();
        Some((start..at, capitals))
    })
}

/// A word as an abbreviation, or none: its plural's `s` taken off, small figures made plain.
fn abbreviation(word: &str) -> Option<String> {
    let word = word.strip_suffix('s').unwrap_or(word);
    if !word.starts_with(char::is_alphabetic) || !LENGTH.contains(&word.chars().count()) {
        return None;
    }
    let roman = word.chars().all(|c| "IVXLC".contains(c));
    if roman || COMMON.contains(&word) {
        return None;
    }
    let plain = |c: char| match c {
        '₀'..='₉' => char::from_u32(u32::from(c) - u32::from('₀') + u32::from('0')).unwrap_or(c),
        c => c,
    };
    Some(word.chars().map(plain).collect())
}

/// Whether a text explains an abbreviation where it stands: `written out (ABC)`, `ABC (as bold words)`, `ABC: …`.
fn explains(word: &str, before: &str, after: &str) -> bool {
    let in_brackets = before.ends_with('(') && before.len() > 1 && after.starts_with([')', ',', ';']);
    let listed = before.trim().is_empty()
        && [":", " –", " —", " means ", " stands for "]
            .iter()
            .any(|sign| after.starts_with(sign));
    let written_out = after.strip_prefix(" (").is_some_and(|rest| {
        let inside = rest.split(')').next().unwrap_or("");
        let initials = inside.split_whitespace().filter_map(|word| word.chars().next());
        let mut wanted = word.chars().filter(|c| c.is_uppercase()).peekable();
        for initial in initials {
            if wanted
                .peek()
                .is_some_and(|c| initial.to_uppercase().eq(c.to_uppercase()))
            {
                wanted.next();
            }
        }
        wanted.peek().is_none()
    });
    // A cell of a table that holds nothing else is the head of its row.
    let alone = before.trim().is_empty() && after.trim().is_empty();
    in_brackets || listed || written_out || alone
}
