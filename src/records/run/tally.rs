//! Counts of what was found: by rule, by month, by crew.

use std::collections::BTreeMap;

use super::write::Said;
use crate::book::{Kind, Rule};
use crate::check::{Level, review::Moment};

/// The most months or crews that are counted apart; the rest are counted together.
pub const MOST_GROUPS: usize = 1_000;
/// The most lines that could not be read and are listed.
pub const MOST_BAD: usize = 20;

/// By what runs are grouped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Grouping {
    /// By the rule a finding is about.
    #[default]
    Rule,
    /// By the month of the run's first time.
    Month,
    /// By crew: of a finding who did the event, else who is named first.
    Crew,
}

/// Counts of a pass over records.
#[derive(Debug, Default)]
pub struct Tally<'b> {
    /// Runs read.
    pub runs: u64,
    /// Events read.
    pub events: u64,
    /// Lines that could not be read.
    pub bad_lines: u64,
    /// Findings by level.
    pub levels: Levels,
    /// Runs with a finding that says more than a note.
    pub runs_wrong: u64,
    /// The earliest time written.
    pub first: Option<Moment>,
    /// The latest time written.
    pub last: Option<Moment>,
    /// Findings by rule and code, in the order in which they were first found.
    pub rows: Vec<Row<'b>>,
    /// By year and month; `None` for runs without a time.
    pub months: Groups<(i64, u8)>,
    /// By crew, where it was asked for; `None` for runs without one.
    pub crews: Groups<String>,
    /// The first lines that could not be read.
    pub bad: Vec<BadNote>,
    /// Files that could not be read to their end, and why.
    pub failed: Vec<(String, String)>,
    serial: u64,
}

/// Numbers of findings by level.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Levels {
    /// Stops.
    pub stop: u64,
    /// Warnings.
    pub warn: u64,
    /// What could not be checked.
    pub unknown: u64,
    /// Notes.
    pub note: u64,
}

impl Levels {
    fn add(&mut self, level: Level, count: u64) {
        *match level {
            Level::Stop => &mut self.stop,
            Level::Warn => &mut self.warn,
            Level::Unknown => &mut self.unknown,
            Level::Note => &mut self.note,
        } += count;
    }

    fn merge(&mut self, other: Self) {
        self.stop += other.stop;
        self.warn += other.warn;
        self.unknown += other.unknown;
        self.note += other.note;
    }

    /// All of them.
    #[must_use]
    pub const fn all(&self) -> u64 {
        self.wrong() + self.note
    }

    /// Those that say more than a note.
    #[must_use]
    pub const fn wrong(&self) -> u64 {
        self.stop + self.warn + self.unknown
    }
}

/// Findings of one kind about one rule.
#[derive(Clone, Debug)]
pub struct Row<'b> {
    /// The rule's kind.
    pub kind: Kind,
    /// The rule.
    pub rule: &'b Rule,
    /// What was found.
    pub code: &'static str,
    /// How serious it is.
    pub level: Level,
    /// How many.
    pub findings: u64,
    /// In how many runs.
    pub runs: u64,
    /// The first of them.
    pub first: Example,
    last_run: u64,
}

/// One finding, to show what a row of the table is about.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Example {
    /// The run's name, or its pseudonym.
    pub run: Option<String>,
    /// The file.
    pub file: Option<String>,
    /// The line.
    pub line: Option<u64>,
    /// When it began.
    pub from: Option<Moment>,
    /// What was found.
    pub message: String,
    /// What to do about it, where it is said.
    pub remedy: Option<String>,
}

/// A line that could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadNote {
    /// The file, or that it is standard input.
    pub file: String,
    /// The line, from 1.
    pub line: u64,
    /// The character, from 1.
    pub column: usize,
    /// Why, and what to write.
    pub message: String,
}

/// Runs and findings of one group.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct GroupSum {
    /// Runs.
    pub runs: u64,
    /// Findings.
    pub levels: Levels,
}

/// The groups of a run or a finding.
#[derive(Clone, Copy, Debug)]
pub(super) struct Group<'a> {
    pub month: Option<(i64, u8)>,
    /// `None` where crews aren't counted.
    pub crew: Option<Option<&'a str>>,
}

/// A bounded number of groups.
#[derive(Clone, Debug)]
pub struct Groups<K> {
    /// The groups, in order.
    pub known: BTreeMap<Option<K>, GroupSum>,
    /// All others.
    pub others: GroupSum,
}

impl<K> Default for Groups<K> {
    fn default() -> Self {
        Self {
            known: BTreeMap::new(),
            others: GroupSum::default(),
        }
    }
}

impl<K: Ord> Groups<K> {
    fn of(&mut self, key: Option<K>) -> &mut GroupSum {
        if self.known.len() >= MOST_GROUPS && !self.known.contains_key(&key) {
            return &mut self.others;
        }
        self.known.entry(key).or_default()
    }

    fn merge(&mut self, other: &mut Self) {
        while let Some((key, sum)) = other.known.pop_first() {
            self.of(key).add(sum);
        }
        self.others.add(other.others);
        other.others = GroupSum::default();
    }
}

impl GroupSum {
    fn add(&mut self, other: Self) {
        self.runs += other.runs;
        self.levels.merge(other.levels);
    }
}

impl<'b> Tally<'b> {
    /// Empties it, and keeps its room.
    pub(super) fn clear(&mut self) {
        let mut rows = core::mem::take(&mut self.rows);
        rows.clear();
        *self = Self {
            rows,
            ..Self::default()
        };
    }

    /// Counts a run.
    pub(super) fn begin_run(&mut self, events: usize, group: Group<'_>) {
        self.serial += 1;
        self.runs += 1;
        self.events += events as u64;
        self.in_groups(group, |sum| sum.runs += 1);
    }

    fn in_groups(&mut self, group: Group<'_>, count: impl Fn(&mut GroupSum)) {
        count(self.months.of(group.month));
        if let Some(crew) = group.crew {
            count(self.crews.of(crew.map(str::to_owned)));
        }
    }

    /// Says that the next finding is of another run, which was counted before.
    pub(super) const fn again(&mut self) {
        self.serial += 1;
    }

    /// Counts the times of a run.
    pub(super) fn span(&mut self, times: impl Iterator<Item = Moment>) {
        for at in times {
            if self.first.is_none_or(|first| at < first) {
                self.first = Some(at);
            }
            if self.last.is_none_or(|last| at > last) {
                self.last = Some(at);
            }
        }
    }

    /// Counts a finding of the run begun last; of none where it has no group.
    pub(super) fn finding(&mut self, said: &Said<'_, 'b>, group: Option<Group<'_>>) {
        self.levels.add(said.level, 1);
        if let Some(group) = group {
            self.in_groups(group, |sum| sum.levels.add(said.level, 1));
        }
        let serial = self.serial;
        match self.row(said.rule, said.code, said.level) {
            Some(row) => {
                row.findings += 1;
                row.runs += u64::from(row.last_run != serial);
                row.last_run = serial;
            }
            None => self.rows.push(Row {
                kind: said.kind,
                rule: said.rule,
                code: said.code,
                level: said.level,
                findings: 1,
                runs: 1,
                first: Example {
                    run: said.run.map(str::to_owned),
                    file: said.file.map(str::to_owned),
                    line: said.line,
                    from: said.from,
                    message: said.message.to_string(),
                    remedy: said.remedy.map(str::to_owned),
                },
                last_run: serial,
            }),
        }
    }

    fn row(&mut self, rule: &Rule, code: &str, level: Level) -> Option<&mut Row<'b>> {
        self.rows
            .iter_mut()
            .find(|row| core::ptr::eq(row.rule, rule) && row.level == level && row.code == code)
    }

    /// Adds what came next, and empties it.
    pub(super) fn merge(&mut self, next: &mut Self) {
        self.runs += next.runs;
        self.events += next.events;
        self.bad_lines += next.bad_lines;
        self.runs_wrong += next.runs_wrong;
        self.levels.merge(next.levels);
        self.span([next.first, next.last].into_iter().flatten());
        self.months.merge(&mut next.months);
        self.crews.merge(&mut next.crews);
        for row in next.rows.drain(..) {
            match self.row(row.rule, row.code, row.level) {
                Some(known) => {
                    known.findings += row.findings;
                    known.runs += row.runs;
                }
                None => self.rows.push(Row {
                    last_run: u64::MAX,
                    ..row
                }),
            }
        }
        let room = MOST_BAD.saturating_sub(self.bad.len());
        self.bad.extend(next.bad.drain(..).take(room));
        next.clear();
    }

    /// The rows, the gravest first, then the most frequent, then by rule.
    #[must_use]
    pub fn by_rule(&self) -> Vec<&Row<'b>> {
        let mut rows: Vec<&Row<'b>> = self.rows.iter().collect();
        rows.sort_by(|one, other| {
            other
                .level
                .cmp(&one.level)
                .then(other.findings.cmp(&one.findings))
                .then_with(|| one.rule.id.cmp(&other.rule.id))
                .then_with(|| one.code.cmp(other.code))
        });
        rows
    }
}
