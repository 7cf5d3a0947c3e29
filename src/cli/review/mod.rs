//! `oxyfolio review`.

mod progress;
mod text;
mod whole;

use std::{
    fs,
    io::{self, Write},
};

use super::{
    CannotRun, Outcome,
    answers::{
        Frame,
        review::{self as told, By},
    },
    args::{AskedFormat, Common, Review},
    book,
    reader::{Reader, aside},
};
use whole::Whole;

use crate::book::Rulebook;
use crate::cards::{self, glyphs};
use crate::check::review::Reviewer;
use crate::compile::suggest::counted;
use crate::guard::Evaluator;
use crate::lookup::Lookup;
use crate::records::run::{self, GroupSum, Grouping, Groups, Input, Options, Pseudonyms, Tally, Written};
use crate::{RULEBOOK, hazard};

/// Reviews run records.
pub fn run(
    command: &Review,
    common: &Common,
    asked: AskedFormat,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    if command.schema {
        out.write_all(run::schema::RUN.as_bytes())?;
        return Ok(Outcome::Fine);
    }
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    let job = Job {
        command,
        asked,
        pseudonyms: pseudonyms(command)?,
    };
    if common.rules.is_none() {
        // The guards of the book compiled in are functions.
        job.review(&RULEBOOK, &Reviewer::new(hazard::Guards), out)
    } else {
        // A book read at run time is asked by look-ups too.
        let guards = Lookup::new(&book);
        job.review(&book, &Reviewer::new(&guards), out)
    }
}

fn pseudonyms(command: &Review) -> Result<Option<Pseudonyms>, CannotRun> {
    let Some(path) = &command.pseudonymise else {
        return Ok(None);
    };
    let told = |why: &dyn core::fmt::Display| CannotRun(format!("--pseudonymise {}: {why}", path.display()));
    let key = fs::read(path).map_err(|error| told(&error))?;
    Pseudonyms::new(&key).map(Some).map_err(|unfit| told(&unfit))
}

struct Job<'j> {
    command: &'j Review,
    asked: AskedFormat,
    pseudonyms: Option<Pseudonyms>,
}

impl Job<'_> {
    fn review<'b, E: Evaluator<'b> + Sync>(
        &self,
        book: &'b Rulebook,
        reviewer: &Reviewer<'b, E>,
        out: &mut dyn Write,
    ) -> Result<Outcome, CannotRun> {
        let command = self.command;
        let inputs: Vec<Input> = command.files.iter().map(|path| Input::named(path)).collect();
        if inputs.iter().filter(|input| **input == Input::Standard).count() > 1 {
            return Err(CannotRun(
                "expected standard input once, found `-` twice".to_owned(),
            ));
        }
        // Asked for before the long work, not after it.
        let typst = match &command.report {
            Some(_) => Some(cards::typst::Program::find(&command.typst)?),
            None => None,
        };
        let by = Grouping::from(command.by);
        let options = Options {
            threads: command.threads.map_or(0, usize::from),
            written: match self.asked {
                AskedFormat::Json => Written::List,
                AskedFormat::Ndjson => Written::Lines,
                AskedFormat::Csv => Written::Csv,
                AskedFormat::Text | AskedFormat::Sarif => Written::Not,
            },
            pseudonyms: self.pseudonyms.as_ref(),
            crews: by == Grouping::Crew,
            watch: progress::start(&inputs),
        };
        // Lines for programs go past what takes colours out.
        let mut lines = Whole::new(Reader(io::stdout().lock()));
        whole::end_between_lines()
            .map_err(|error| CannotRun(format!("cannot wait for an interrupt: {error}")))?;
        if self.asked == AskedFormat::Json {
            lines.write_all(b"{\"findings\": [")?;
        }
        let reviewed = run::review(book, reviewer, &inputs, &options, &mut lines);
        progress::stop();
        let tally = match reviewed {
            Ok(tally) => tally,
            Err(error) => {
                // A file that can't be opened is told before anything else: half an answer is not written.
                return Err(error.into());
            }
        };
        match self.asked {
            AskedFormat::Json => self.frame(book, &tally, by, &mut lines)?,
            AskedFormat::Ndjson | AskedFormat::Csv => {}
            AskedFormat::Text | AskedFormat::Sarif => text::print(book, &tally, by, inputs.len(), out)?,
        }
        lines.flush()?;
        self.to_standard_error(&tally);
        if let (Some(path), Some(typst)) = (&command.report, typst) {
            let page = cards::review::Page::new(book, &tally, inputs.len(), command.paper.into());
            cards::review::print(&page, book, &typst, path)?;
            if self.asked == AskedFormat::Text {
                writeln!(out, "\nwrote {}", path.display())?;
            }
        }
        Ok(if !tally.failed.is_empty() {
            Outcome::CouldNotRun
        } else if command.exit_0 {
            Outcome::Fine
        } else if tally.bad_lines > 0 {
            Outcome::SomeUnread
        } else if tally.levels.wrong() > 0 {
            Outcome::Findings
        } else {
            Outcome::Fine
        })
    }

    /// What could not be read, where the answer is for programs; a text answer holds it itself.
    fn to_standard_error(&self, tally: &Tally<'_>) {
        if self.asked != AskedFormat::Text {
            for bad in &tally.bad {
                let file = glyphs::visible(&bad.file);
                aside(format_args!(
                    "{file}:{}:{}: {}\n",
                    bad.line, bad.column, bad.message
                ));
            }
            let more = tally.bad_lines - tally.bad.len() as u64;
            if more > 0 {
                let more = counted(more, "more line", "more lines");
                aside(format_args!("{more} could not be read\n"));
            }
        }
        for (file, why) in &tally.failed {
            aside(format_args!("error: {} {why}\n", glyphs::visible(file)));
        }
    }

    /// What stands behind the list of findings.
    fn frame(
        &self,
        book: &Rulebook,
        tally: &Tally<'_>,
        by: Grouping,
        out: &mut dyn Write,
    ) -> Result<(), CannotRun> {
        let summary = told::Summary {
            runs: tally.runs,
            runs_with_findings: tally.runs_wrong,
            events: tally.events,
            bad_lines: tally.bad_lines,
            findings: (&tally.levels).into(),
            first: tally.first.map(|at| at.to_string()),
            last: tally.last.map(|at| at.to_string()),
            failed: tally
                .failed
                .iter()
                .map(|(file, why)| told::Failed { file, why })
                .collect(),
            by: match by {
                Grouping::Rule => By::Rule(rules(tally)),
                Grouping::Month => By::Month(grouped(&tally.months, |(year, month)| {
                    format!("{year:04}-{month:02}")
                })),
                Grouping::Crew => By::Crew(grouped(&tally.crews, String::clone)),
            },
        };
        let ok = tally.levels.wrong() == 0 && tally.bad_lines == 0 && tally.failed.is_empty();
        let answer = serde_json::to_value(Frame::of(book).round(told::Rest { ok, summary }))?;
        let text = serde_json::to_string_pretty(&answer)?;
        writeln!(out, "\n],{}", text.strip_prefix('{').unwrap_or(&text))?;
        Ok(())
    }
}

fn rules<'b>(tally: &Tally<'b>) -> Vec<told::ByRule<'b>> {
    let rows = tally.by_rule();
    rows.iter()
        .map(|row| told::ByRule {
            rule: told::RuleName {
                kind: row.kind.word(),
                id: &row.rule.id,
            },
            code: row.code,
            level: row.level.into(),
            findings: row.findings,
            runs: row.runs,
        })
        .collect()
}

fn grouped<K>(groups: &Groups<K>, shown: impl Fn(&K) -> String) -> Vec<told::Group> {
    let object = |group: Option<String>, sum: &GroupSum| told::Group {
        group,
        runs: sum.runs,
        findings: (&sum.levels).into(),
    };
    let mut all: Vec<told::Group> = groups
        .known
        .iter()
        .map(|(key, sum)| object(key.as_ref().map(&shown), sum))
        .collect();
    if groups.others != GroupSum::default() {
        all.push(object(Some("others".to_owned()), &groups.others));
    }
    all
}
