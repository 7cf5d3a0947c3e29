//! One change, and how changes are gathered.

use core::fmt;

use schemars::JsonSchema;
use serde::Serialize;

use crate::book::{Kind, Rule};
use crate::compile::edition::Edition;

/// Whether the book is stricter now.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    /// More is found wrong, less gas is counted on, or less is left to choose.
    Stricter,
    /// Less is found wrong, more gas is counted on, or more is left to choose.
    Looser,
    /// Neither, or both.
    Other,
}

impl Direction {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Stricter => "stricter",
            Self::Looser => "looser",
            Self::Other => "other",
        }
    }

    /// The direction of the change the other way.
    #[must_use]
    pub const fn reversed(self) -> Self {
        match self {
            Self::Stricter => Self::Looser,
            Self::Looser => Self::Stricter,
            Self::Other => Self::Other,
        }
    }

    /// Stricter when something rose and more of it is stricter.
    pub(super) fn of<T: PartialOrd>(old: &T, new: &T, sense: Sense) -> Self {
        let rose = match old.partial_cmp(new) {
            Some(core::cmp::Ordering::Less) => true,
            Some(core::cmp::Ordering::Greater) => false,
            _ => return Self::Other,
        };
        match (sense, rose) {
            (Sense::Neither, _) => Self::Other,
            (Sense::MoreIsStricter, true) | (Sense::LessIsStricter, false) => Self::Stricter,
            (Sense::MoreIsStricter, false) | (Sense::LessIsStricter, true) => Self::Looser,
        }
    }
}

/// What a limit means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sense {
    /// The higher it is, the stricter the book.
    MoreIsStricter,
    /// The lower it is, the stricter the book.
    LessIsStricter,
    /// Neither.
    Neither,
}

impl Sense {
    pub(super) const fn turned(self) -> Self {
        match self {
            Self::MoreIsStricter => Self::LessIsStricter,
            Self::LessIsStricter => Self::MoreIsStricter,
            Self::Neither => Self::Neither,
        }
    }
}

/// Where a rule stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Place {
    /// The chapter's title.
    pub chapter: String,
    /// The nearest heading.
    pub heading: String,
    /// The chapter's file name.
    pub file: String,
    /// The line, counted from 1.
    pub line: u32,
}

impl From<&crate::book::Place> for Place {
    fn from(place: &crate::book::Place) -> Self {
        Self {
            chapter: place.chapter.to_string(),
            heading: place.heading.to_string(),
            file: place.file.to_string(),
            line: place.line,
        }
    }
}

/// One thing that changed in a rule.
///
/// The change the other way has `was` and `is` exchanged and the direction reversed; nothing else tells the two apart.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Change {
    /// The rule's kind.
    pub kind: &'static str,
    /// The rule's id.
    pub id: String,
    /// The rule's name in the new edition; in the old one where it was removed.
    pub name: String,
    /// Where the rule stands in the new edition; in the old one where it was removed.
    pub place: Place,
    /// What changed; empty where the rule itself was added or removed.
    pub what: String,
    /// What it was; null where there was nothing.
    pub was: Option<String>,
    /// What it is now; null where there is nothing.
    pub is: Option<String>,
    /// Whether the book is stricter now.
    pub direction: Direction,
    /// Whether only words changed, and no value, order or choice.
    pub wording: bool,
}

impl fmt::Display for Change {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let what = if self.what.is_empty() { "rule" } else { &self.what };
        match (&self.was, &self.is) {
            (Some(was), Some(is)) => write!(f, "{what}: {was} → {is}")?,
            (None, Some(is)) => write!(f, "{what} added: {is}")?,
            (Some(was), None) => write!(f, "{what} removed: {was}")?,
            (None, None) => f.write_str(what)?,
        }
        match self.direction {
            Direction::Other => Ok(()),
            direction => write!(f, " ({})", direction.word()),
        }
    }
}

impl Change {
    /// The change in a line: of texts longer than `whole` characters, what differs, with a few words around it.
    ///
    /// ```
    /// # use oxyfolio::compare::{Change, Direction, Place};
    /// # let place = Place { chapter: String::new(), heading: String::new(), file: String::new(), line: 1 };
    /// let sentence = |device| Some(format!("Turn the flow to zero before you take {device} off the patient, and wait."));
    /// let change = Change {
    ///     what: "step `off`, why".to_owned(),
    ///     was: sentence("the mask"),
    ///     is: sentence("any device"),
    /// #   kind: "procedure", id: String::new(), name: String::new(), place, direction: Direction::Other, wording: true,
    /// };
    /// assert_eq!(
    ///     change.in_short(40),
    ///     "step `off`, why: “… zero before you take the mask off the patient, and …” → \
    ///      “… zero before you take any device off the patient, and …”"
    /// );
    /// ```
    #[must_use]
    pub fn in_short(&self, whole: usize) -> String {
        let long = |text: &Option<String>| text.as_ref().is_some_and(|text| text.chars().count() > whole);
        if !long(&self.was) && !long(&self.is) {
            return self.to_string();
        }
        let (was, is) = match (&self.was, &self.is) {
            (Some(was), Some(is)) => {
                let (was, is) = apart(was, is);
                (Some(was), Some(is))
            }
            (was, is) => (was.clone(), is.clone()),
        };
        // What differs may itself be long.
        let cut = |text: Option<String>| text.map(|text| cut(text, whole * 2));
        Self {
            was: cut(was),
            is: cut(is),
            ..self.clone()
        }
        .to_string()
    }
}

/// A rule of which a number changed and the reason didn't.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
pub struct Reason {
    /// The rule's kind.
    pub kind: &'static str,
    /// The rule's id.
    pub id: String,
    /// The rule's name in the new edition.
    pub name: String,
    /// Old values that stand in the reason still.
    pub still_says: Vec<String>,
}

impl Reason {
    /// The reminder, in a sentence.
    #[must_use]
    pub fn words(&self) -> String {
        let still = match self.still_says.as_slice() {
            [] => String::new(),
            said => format!(" It still says {}.", said.join(" and ")),
        };
        format!("the reason above it was not changed: read it, does it still hold?{still}")
    }

    /// Whether it is of the rule in which this changed.
    #[must_use]
    pub fn is_of(&self, change: &Change) -> bool {
        (self.kind, &self.id) == (change.kind, &change.id)
    }

    /// Of a rule in both editions, with what changed in it; none where nothing is to be read again.
    fn of(kind: Kind, old: &Rule, new: &Rule, changes: &[Change]) -> Option<Self> {
        if new.rationale.is_empty() || old.rationale != new.rationale {
            return None;
        }
        let has_number = |text: &Option<String>| {
            text.as_ref()
                .is_some_and(|text| text.contains(|c: char| c.is_ascii_digit()))
        };
        let numbers = || {
            changes
                .iter()
                .filter(|change| !change.wording && has_number(&change.was) && has_number(&change.is))
        };
        numbers().next()?;
        let mut still_says: Vec<String> = Vec::new();
        for was in numbers().filter_map(|change| change.was.clone()) {
            if holds(&new.rationale, &was) && !still_says.contains(&was) {
                still_says.push(was);
            }
        }
        Some(Self {
            kind: kind.word(),
            id: new.id.to_string(),
            name: new.name.to_string(),
            still_says,
        })
    }
}

/// Whether a value stands in a text, and not as the end of a longer number.
fn holds(text: &str, value: &str) -> bool {
    text.match_indices(value).any(|(at, _)| {
        let before = text.get(..at).and_then(|head| head.chars().next_back());
        let after = text.get(at + value.len()..).and_then(|rest| rest.chars().next());
        !before.is_some_and(|c| c.is_ascii_digit() || c == '.') && !after.is_some_and(char::is_alphanumeric)
    })
}

/// Where two texts differ, with a few words around it.
fn apart(one: &str, other: &str) -> (String, String) {
    const AROUND: usize = 4;
    let (a, b): (Vec<&str>, Vec<&str>) = (
        one.split_whitespace().collect(),
        other.split_whitespace().collect(),
    );
    let same = |(one, other): &(&&str, &&str)| one == other;
    let head = a.iter().zip(&b).take_while(same).count();
    let most = a.len().min(b.len()) - head;
    let tail = a
        .iter()
        .rev()
        .zip(b.iter().rev())
        .take(most)
        .take_while(same)
        .count();
    let part = |words: &[&str]| {
        let from = head.saturating_sub(AROUND);
        let to = (words.len() - tail + AROUND).min(words.len());
        let text = words.get(from..to).unwrap_or_default().join(" ");
        let before = if from > 0 { "… " } else { "" };
        let after = if to < words.len() { " …" } else { "" };
        format!("“{before}{text}{after}”")
    };
    (part(&a), part(&b))
}

fn cut(text: String, most: usize) -> String {
    match text.char_indices().nth(most) {
        Some((at, _)) => format!("{} …", text.get(..at).unwrap_or("").trim_end()),
        None => text,
    }
}

/// The changes found so far, and the two editions they are found in.
pub(super) struct Changes<'e> {
    pub(super) old: &'e Edition,
    pub(super) new: &'e Edition,
    pub(super) found: Vec<Change>,
    pub(super) reasons: Vec<Reason>,
    /// The rule looked at.
    at: Option<(Kind, &'e Rule)>,
}

impl<'e> Changes<'e> {
    pub(super) const fn new(old: &'e Edition, new: &'e Edition) -> Self {
        Self {
            old,
            new,
            found: Vec::new(),
            reasons: Vec::new(),
            at: None,
        }
    }

    /// What is told from now on is about this rule.
    pub(super) const fn about(&mut self, kind: Kind, rule: &'e Rule) {
        self.at = Some((kind, rule));
    }

    /// Remembers the reason of a rule of which a number changed since there were so many changes.
    pub(super) fn remind(&mut self, old: &Rule, since: usize) {
        if let Some((kind, new)) = self.at {
            let changes = self.found.get(since..).unwrap_or_default();
            self.reasons.extend(Reason::of(kind, old, new, changes));
        }
    }

    /// The kind and id of the rule looked at.
    pub(super) fn rule(&self) -> Option<(Kind, &'e Rule)> {
        self.at
    }

    /// Tells a change.
    pub(super) fn tell(
        &mut self,
        what: impl Into<String>,
        was: Option<String>,
        is: Option<String>,
        direction: Direction,
    ) {
        self.push(what.into(), was, is, direction, false);
    }

    /// Tells a change of words.
    pub(super) fn reworded(&mut self, what: impl Into<String>, was: Option<String>, is: Option<String>) {
        self.push(what.into(), was, is, Direction::Other, true);
    }

    fn push(
        &mut self,
        what: String,
        was: Option<String>,
        is: Option<String>,
        direction: Direction,
        wording: bool,
    ) {
        let Some((kind, rule)) = self.at else {
            return;
        };
        self.found.push(Change {
            kind: kind.word(),
            id: rule.id.to_string(),
            name: rule.name.to_string(),
            place: Place::from(&rule.place),
            what,
            was,
            is,
            direction,
            wording,
        });
    }

    /// Tells a value that changed, as it prints.
    pub(super) fn value<T: PartialEq + PartialOrd + fmt::Display>(
        &mut self,
        what: impl Into<String>,
        old: &T,
        new: &T,
        sense: Sense,
    ) {
        if old != new {
            self.tell(
                what,
                Some(old.to_string()),
                Some(new.to_string()),
                Direction::of(old, new, sense),
            );
        }
    }

    /// Tells a text that changed and has no direction: a choice, a name, a date.
    pub(super) fn plain(&mut self, what: impl Into<String>, old: &str, new: &str) {
        if old != new {
            let some = |text: &str| (!text.is_empty()).then(|| text.to_owned());
            self.tell(what, some(old), some(new), Direction::Other);
        }
    }

    /// Tells a yes or no that changed.
    pub(super) fn yes_or_no(&mut self, what: &str, old: bool, new: bool, sense: Sense) {
        if old != new {
            let word = |yes: bool| Some(if yes { "yes" } else { "no" }.to_owned());
            self.tell(what, word(old), word(new), Direction::of(&old, &new, sense));
        }
    }

    /// Tells what was added to a set and what was taken out of it.
    pub(super) fn set(&mut self, what: &str, old: &[String], new: &[String], more: Sense) {
        for gone in old.iter().filter(|item| !new.contains(item)) {
            self.tell(what, Some(gone.clone()), None, Direction::of(&1, &0, more));
        }
        for added in new.iter().filter(|item| !old.contains(item)) {
            self.tell(what, None, Some(added.clone()), Direction::of(&0, &1, more));
        }
    }

    /// The same of a list whose order matters too.
    pub(super) fn list(&mut self, what: &str, old: &[String], new: &[String], more: Sense) {
        self.set(what, old, new, more);
        let kept = |one: &[String], other: &[String]| {
            one.iter()
                .filter(|item| other.contains(item))
                .cloned()
                .collect::<Vec<_>>()
        };
        let (was, is) = (kept(old, new), kept(new, old));
        if was != is {
            self.tell(
                format!("order of {what}"),
                Some(was.join(", ")),
                Some(is.join(", ")),
                Direction::Other,
            );
        }
    }
}
