//! What `drill` can be asked.

use std::{ffi::OsString, path::PathBuf};

use clap::{Args, ValueEnum};

use super::SheetArg;
use crate::drill::{Difficulty, Kind};

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio drill --seed 12 --sheet practice.pdf --answers answers.pdf
  oxyfolio drill --seed 12 --kind duration --level easy --count 20
  oxyfolio drill --seed 12 --format csv > flash-cards.csv

The same seed and book give the same sheet. Of steps, any order that the book allows is right. In a \
set-up or a log exactly one thing is wrong. Every answer is worked out by the checker. CSV has a \
question and its answer in each row, for flash cards.

Exit code: 0 made, 1 the book has no exercise of a kind and level that was asked for, 2 could not \
run.";

/// Options of `drill`.
#[derive(Debug, Args)]
pub struct Drill {
    /// The number that decides which exercises they are
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    pub seed: u64,
    /// How many exercises, 1 to 200
    #[arg(long, value_name = "NUMBER", default_value_t = 12, value_parser = clap::value_parser!(u16).range(1..=200))]
    pub count: u16,
    /// Only this kind: duration, order, setup or log; may be given more than once
    #[arg(long, value_enum, hide_possible_values = true)]
    pub kind: Vec<KindArg>,
    /// All of one level: easy, medium or hard [default: from easy to hard]
    #[arg(long, value_enum, hide_possible_values = true)]
    pub level: Option<LevelArg>,
    /// Print the practice sheet, as PDF
    #[arg(long, value_name = "FILE.pdf")]
    pub sheet: Option<PathBuf>,
    /// Print the answer sheet, as PDF
    #[arg(long, value_name = "FILE.pdf")]
    pub answers: Option<PathBuf>,
    /// The sheets' paper: a4 or letter
    #[arg(long, value_enum, default_value_t = SheetArg::A4, hide_possible_values = true)]
    pub paper: SheetArg,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
}

/// A kind of exercise on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum KindArg {
    /// How long the gas lasts
    Duration,
    /// Steps in order
    Order,
    /// A set-up with one thing wrong
    Setup,
    /// A log with one thing wrong
    Log,
}

impl From<KindArg> for Kind {
    fn from(kind: KindArg) -> Self {
        match kind {
            KindArg::Duration => Self::Duration,
            KindArg::Order => Self::Order,
            KindArg::Setup => Self::Setup,
            KindArg::Log => Self::Log,
        }
    }
}

/// A level on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum LevelArg {
    /// One thought
    Easy,
    /// Two
    Medium,
    /// Several
    Hard,
}

impl From<LevelArg> for Difficulty {
    fn from(level: LevelArg) -> Self {
        match level {
            LevelArg::Easy => Self::Easy,
            LevelArg::Medium => Self::Medium,
            LevelArg::Hard => Self::Hard,
        }
    }
}
