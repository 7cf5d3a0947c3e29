//! What an edit of a rulebook means: two editions compared in clinical words, not in lines.
//!
//! - [`Change`]: one thing that changed in a rule, with its old and new value and whether the book is stricter now;
//! - `rules`, a file for each kind of rule, finds them;
//! - [`Durations`]: minutes that move; [`CaseChange`]: worked cases that come out otherwise; [`Grid`]: set-ups all over the
//!   field, generated from the limits of both books, and which of them are judged otherwise;
//! - [`edition`] reads an edition from a folder or from a git revision.
//!
//! Which cards must be printed anew is told by [`cards::reprint`](crate::cards::reprint), because it knows what is printed.
//!
//! Rules are matched by their ids. A rule with a new id is a rule removed and a rule added.

mod cases;
mod change;
mod durations;
pub mod edition;
mod grid;
mod order;
mod polarity;
mod rules;
mod words;

use schemars::JsonSchema;
use serde::Serialize;

pub use cases::{Asked, CaseChange};
pub use change::{Change, Direction, Place, Reason};
pub use durations::{Durations, Moved};
pub use grid::{Comes, Example, Grid, GridChange, SETUPS, Verdict, VerdictChange};

use crate::compile::edition::Edition;

/// What changed from one edition to another.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Comparison {
    /// The old edition.
    pub old: Side,
    /// The new edition.
    pub new: Side,
    /// What changed in the rules, kind by kind, in the order of the new book.
    pub changes: Vec<Change>,
    /// Rules of which a number changed and the reason above it didn't: whoever signs should read it again.
    pub reasons: Vec<Reason>,
    /// Minutes that move by more than one, by cylinder.
    pub durations: Vec<Durations>,
    /// Worked cases of either edition that come out otherwise.
    pub cases: Vec<CaseChange>,
    /// The set-ups that are judged otherwise.
    pub grid: Grid,
}

impl Comparison {
    /// What is to be said when two texts go by one edition's name: cards of both would look alike but for their code.
    #[must_use]
    pub fn one_name_for_two(&self) -> Option<String> {
        let is_so = self.old.edition == self.new.edition && self.old.digest != self.new.digest;
        is_so.then(|| {
            format!(
                "Both are called edition {}. A changed book is a new edition: raise `edition`, set its dates, and have it \
                 signed again.",
                self.new.edition
            )
        })
    }
}

/// One of the two editions.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Side {
    /// The agency's name.
    pub agency: String,
    /// The edition's name.
    pub edition: String,
    /// From when it holds, `YYYY-MM-DD`.
    pub effective: String,
    /// The rulebook's short code.
    pub code: String,
    /// SHA-256 of the chapters, in hexadecimal.
    pub digest: String,
    /// How many errors `check` finds in it today.
    pub errors: usize,
    /// Rules that can't be read today, and rules that name them: they were not compared.
    pub left_out: Vec<LeftOut>,
}

/// A rule that was not compared.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
pub struct LeftOut {
    /// What kind of rule it is.
    pub kind: &'static str,
    /// Its id; null where it has none that can be read.
    pub id: Option<String>,
    /// The chapter's file name.
    pub file: String,
    /// The line, counted from 1.
    pub line: u32,
}

impl Side {
    fn of(edition: &Edition) -> Self {
        let (book, agency) = (&edition.book, &edition.book.agency);
        Self {
            agency: agency.rule.name.to_string(),
            edition: agency.edition.to_string(),
            effective: agency.effective.to_string(),
            code: book.short_digest.to_string(),
            digest: book.digest.to_string(),
            errors: edition.problems.len() + edition.omitted,
            left_out: edition
                .left_out
                .iter()
                .map(|rule| LeftOut {
                    kind: rule.kind.word(),
                    id: rule.id.clone(),
                    file: rule.place.file.to_string(),
                    line: rule.place.line,
                })
                .collect(),
        }
    }
}

impl Comparison {
    /// Whether anything at all changed in what the rulebook says: rules, minutes, worked cases or judgements. Prose that is
    /// no rule's reason, and cards, are looked at elsewhere.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.changes.is_empty()
            && self.durations.is_empty()
            && self.cases.is_empty()
            && self.grid.changed == 0
    }
}

/// Compares two editions, with [`SETUPS`] generated set-ups.
///
/// ```
/// use oxyfolio::compare;
/// use oxyfolio::compile::{edition::Edition, source::Sources};
///
/// let chapters = |edit: fn(&str) -> String| {
///     let mut sources = Sources::default();
///     for (name, text) in oxyfolio::CHAPTERS {
///         sources.add((*name).into(), (*name).into(), edit(text));
///     }
///     Edition::of(sources).unwrap()
/// };
/// let old = chapters(|text| text.to_owned());
/// // The reservoir mask from 12 L/min on; the worked cases object, and the edition is compared all the same.
/// let new = chapters(|text| {
///     text.replace("flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60", "flow: 12 to 15 L/min\nusual: 15 L/min\noxygen: 60")
/// });
/// let comparison = compare::compare_over(&old, &new, 1_000);
/// let change = comparison.changes.iter().find(|change| change.what == "least flow").unwrap();
/// assert_eq!(change.to_string(), "least flow: 10 L/min → 12 L/min (stricter)");
/// assert!(comparison.grid.changed > 0);
/// ```
#[must_use]
pub fn compare(old: &Edition, new: &Edition) -> Comparison {
    compare_over(old, new, SETUPS)
}

/// Compares two editions with at most so many generated set-ups.
#[must_use]
pub fn compare_over(old: &Edition, new: &Edition, setups: u32) -> Comparison {
    let (changes, reasons) = rules::changes(old, new);
    Comparison {
        old: Side::of(old),
        new: Side::of(new),
        changes,
        reasons,
        durations: durations::durations(&old.book, &new.book),
        cases: cases::cases(old, new),
        grid: grid::grid(&old.book, &new.book, setups),
    }
}
