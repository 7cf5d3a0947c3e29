//! Editions made by editing the demo rulebook in memory.

use oxyfolio::compare::{Change, Comparison, compare_over};
use oxyfolio::compile::{edition::Edition, source::Sources};

/// A text and what it is replaced with; it stands in exactly one place of the book.
pub type Edit<'a> = (&'a str, &'a str);

pub fn edition(edits: &[Edit<'_>]) -> Edition {
    Edition::of(chapters(edits)).unwrap_or_else(|rejected| panic!("{}", rejected.render(false)))
}

pub fn chapters(edits: &[Edit<'_>]) -> Sources {
    for (old, _) in edits {
        let count: usize = oxyfolio::CHAPTERS
            .iter()
            .map(|(_, text)| text.matches(old).count())
            .sum();
        assert_eq!(count, 1, "the book must hold {old:?} exactly once");
    }
    let mut sources = Sources::default();
    for (name, text) in oxyfolio::CHAPTERS {
        let edited = edits
            .iter()
            .fold((*text).to_owned(), |text, (old, new)| text.replace(old, new));
        sources.add((*name).into(), (*name).into(), edited);
    }
    sources
}

/// From the demo to the demo with edits, over a few set-ups.
pub fn compared(edits: &[Edit<'_>]) -> Comparison {
    compare_over(&edition(&[]), &edition(edits), 5_000)
}

/// A change in a line, with the rule it is about.
pub fn line(change: &Change) -> String {
    format!("{} {}: {change}", change.kind, change.id)
}

pub fn lines(edits: &[Edit<'_>]) -> Vec<String> {
    compared(edits).changes.iter().map(line).collect()
}
