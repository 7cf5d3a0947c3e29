//! A rule as findings cite it, wherever its book is kept.

use core::fmt;

use super::{
    Device, Hazard, Rule, Target,
    tables::{RuleRow, Tables},
};

/// A rule that a finding is about: its name, its place in the book and its reason.
///
/// It reads the same whether the rule stands in a [`Rulebook`](super::Rulebook) or in the [`Tables`] that a check needs of one.
///
/// ```
/// use oxyfolio::book::{Rules, Subject};
/// use oxyfolio::{RULEBOOK, TABLES, device};
///
/// let mask = Subject::Device(device::SIMPLE_MASK);
/// let rule = (&RULEBOOK).cite(mask);
/// assert_eq!((rule.id(), rule.name()), ("simple-mask", "Simple mask"));
/// assert_eq!(rule.place().file, "05-delivery-devices.md");
/// assert!(rule.rationale().starts_with("A middle step."));
/// assert_eq!((&TABLES).cite(mask), rule);
/// ```
#[derive(Clone, Copy)]
pub struct Cited<'b>(Source<'b>);

#[derive(Clone, Copy)]
enum Source<'b> {
    Rule(&'b Rule),
    Device(&'b Device),
    Target(&'b Target),
    Hazard(&'b Hazard),
    Tabled(&'b Tables, &'b RuleRow),
}

/// The words a rule has beside its name and its reason; which they are, its kind says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Words {
    /// Of a device: below its least flow. Of a target: when to step up. Of a hazard: what is wrong.
    First,
    /// Of a device: above its most flow. Of a target: when to step down. Of a hazard: what to do.
    Second,
    /// Of a hazard: its guard, as it is written.
    Third,
}

impl<'b> Cited<'b> {
    pub(super) const fn tabled(tables: &'b Tables, row: &'b RuleRow) -> Self {
        Self(Source::Tabled(tables, row))
    }

    /// A rule of a whole book.
    #[must_use]
    pub const fn of(rule: &'b Rule) -> Self {
        Self(Source::Rule(rule))
    }

    /// The name other rules use.
    #[must_use]
    pub fn id(&self) -> &'b str {
        match self.rule() {
            Ok(rule) => &rule.id,
            Err((tables, row)) => tables.part(row.id),
        }
    }

    /// The name people use.
    #[must_use]
    pub fn name(&self) -> &'b str {
        match self.rule() {
            Ok(rule) => &rule.name,
            Err((tables, row)) => tables.part(row.name),
        }
    }

    /// Where it stands.
    #[must_use]
    pub fn place(&self) -> CitedPlace<'b> {
        match self.rule() {
            Ok(rule) => rule.place.cited(),
            Err((tables, row)) => tables.place(row),
        }
    }

    /// The prose between the last heading or block and the rule: why it is so. Empty where there is none.
    #[must_use]
    pub fn rationale(&self) -> &'b str {
        match self.rule() {
            Ok(rule) => &rule.rationale,
            Err((tables, row)) => tables.rationale(row),
        }
    }

    /// Words of the rule; empty where its kind has none.
    pub(crate) fn words(&self, which: Words) -> &'b str {
        match (self.0, which) {
            (Source::Device(device), Words::First) => &device.too_low,
            (Source::Device(device), Words::Second) => &device.too_high,
            (Source::Target(target), Words::First) => &target.step_up,
            (Source::Target(target), Words::Second) => &target.step_down,
            (Source::Hazard(hazard), Words::First) => &hazard.say,
            (Source::Hazard(hazard), Words::Second) => &hazard.remedy,
            (Source::Hazard(hazard), Words::Third) => &hazard.never.text,
            (Source::Tabled(tables, row), which) => {
                let [first, second, third] = row.words;
                tables.part(match which {
                    Words::First => first,
                    Words::Second => second,
                    Words::Third => third,
                })
            }
            _ => "",
        }
    }

    fn rule(&self) -> Result<&'b Rule, (&'b Tables, &'b RuleRow)> {
        match self.0 {
            Source::Rule(rule) => Ok(rule),
            Source::Device(device) => Ok(&device.rule),
            Source::Target(target) => Ok(&target.rule),
            Source::Hazard(hazard) => Ok(&hazard.rule),
            Source::Tabled(tables, row) => Err((tables, row)),
        }
    }
}

impl<'b> From<&'b Rule> for Cited<'b> {
    fn from(rule: &'b Rule) -> Self {
        Self::of(rule)
    }
}

impl<'b> From<&'b Device> for Cited<'b> {
    fn from(device: &'b Device) -> Self {
        Self(Source::Device(device))
    }
}

impl<'b> From<&'b Target> for Cited<'b> {
    fn from(target: &'b Target) -> Self {
        Self(Source::Target(target))
    }
}

impl<'b> From<&'b Hazard> for Cited<'b> {
    fn from(hazard: &'b Hazard) -> Self {
        Self(Source::Hazard(hazard))
    }
}

/// Whether both say the same, wherever they are kept.
impl PartialEq for Cited<'_> {
    fn eq(&self, other: &Self) -> bool {
        let said = |rule: &Self| (rule.id(), rule.name(), rule.place(), rule.rationale());
        said(self) == said(other)
    }
}

impl fmt::Debug for Cited<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Cited")
            .field("id", &self.id())
            .field("place", &self.place())
            .finish_non_exhaustive()
    }
}

/// Where a rule stands in the book, as it is cited.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CitedPlace<'b> {
    /// The chapter's title.
    pub chapter: &'b str,
    /// The nearest heading above the rule; the chapter's title where there is no other.
    pub heading: &'b str,
    /// The chapter's file name.
    pub file: &'b str,
    /// The line of the rule's first key, counted from 1.
    pub line: u32,
}

impl fmt::Display for CitedPlace<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.chapter)?;
        if self.heading != self.chapter {
            write!(f, " › {}", self.heading)?;
        }
        write!(f, " ({}:{})", self.file, self.line)
    }
}
