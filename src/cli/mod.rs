//! The program: a thin face on the library. Each command has a file of its own.
//!
//! Exit codes: 0 when nothing is wrong, 1 with findings or errors in the rulebook, 2 when the command could not run, 3 when
//! some rows or lines of records could not be read, 141 when nobody reads the answer any more (`reader.rs`).

mod answer;
mod answers;
mod args;
mod book;
mod cards;
mod check;
mod compare;
mod desk;
mod diagnostics;
mod drill;
mod duration;
mod new;
mod plan;
mod reader;
mod review;
mod sarif;
mod setup;
mod shell;
mod stock;
mod tip;
mod words;

use std::{io::Write, process::ExitCode};

use clap::Parser as _;

use crate::cards::glyphs;
pub use answer::answer_lines;
pub use answers::schemas;
use args::{Arguments, AskedFormat, Command};
use reader::{Reader, aside};

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Outcome {
    /// Nothing is wrong.
    Fine,
    /// There are findings, or errors in the rulebook.
    Findings,
    /// Some rows or lines of records could not be read; what is wrong with them was printed, and the others were looked at.
    SomeUnread,
    /// What was given could not be used, and the reasons were printed.
    CouldNotRun,
}

impl Outcome {
    /// The exit code.
    const fn code(self) -> u8 {
        match self {
            Self::Fine => 0,
            Self::Findings => 1,
            Self::CouldNotRun => 2,
            Self::SomeUnread => 3,
        }
    }
}

/// Why a command could not run, in a sentence.
struct CannotRun(String);

impl<E: core::fmt::Display> From<E> for CannotRun {
    fn from(error: E) -> Self {
        Self(error.to_string())
    }
}

/// Runs the program with the arguments it was started with.
#[must_use]
pub fn run() -> ExitCode {
    let arguments = Arguments::try_parse().unwrap_or_else(|error| tip::with_tip(error).exit());
    let (common, asked) = arguments.asked.split();
    let mut out = Reader(anstream::stdout().lock());
    let is_drill = matches!(arguments.command, Command::Drill(_));
    let outcome = match &arguments.command {
        Command::Check(command) if asked == AskedFormat::Sarif => sarif::run(command, &common, &mut out),
        _ if asked == AskedFormat::Sarif => Err(CannotRun(
            "--format sarif: only `check` answers in SARIF; write text or json".to_owned(),
        )),
        Command::Review(command) => review::run(command, &common, asked, &mut out),
        _ if asked == AskedFormat::Ndjson || (asked == AskedFormat::Csv && !is_drill) => Err(CannotRun(
            "--format ndjson: only `review` answers so, csv: only `review` and `drill`; write text or json"
                .to_owned(),
        )),
        Command::Drill(command) => drill::run(command, &common, asked, &mut out),
        Command::Check(command) => check::run(command, &common, &mut out),
        Command::Answer(command) => answer::run(command, &common),
        Command::Cards(command) => cards::run(command, &common, &mut out),
        Command::Compare(command) => compare::run(command, &common, &mut out),
        Command::New(command) => new::run(command, &common, &mut out),
        Command::Desk(command) => desk::run(command, &common, &mut out),
        Command::Duration(command) => duration::run(command, &common, &mut out),
        Command::Plan(command) => plan::run(command, &common, &mut out),
        Command::Completions(command) => shell::completions(command, &mut out),
        Command::Manual(command) => shell::manual(command, &mut out),
        Command::Setup(command) => setup::run(command, &common, &mut out),
        Command::Stock(command) => stock::run(command, &common, &mut out),
    };
    let outcome = outcome.and_then(|outcome| {
        out.flush()?;
        Ok(outcome)
    });
    match outcome {
        Ok(outcome) => ExitCode::from(outcome.code()),
        Err(_) if reader::is_gone() => ExitCode::from(reader::GONE),
        Err(CannotRun(reason)) => {
            // A name in it may hold a line break or an escape: nothing of it may drive the terminal.
            aside(format_args!("error: {}\n", glyphs::visible(&reason)));
            ExitCode::from(2)
        }
    }
}
