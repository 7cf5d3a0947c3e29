//! What the program can be asked. The options of each command have a file of their own.

mod answer;
mod cards;
mod check;
mod compare;
mod desk;
mod drill;
mod duration;
mod new;
mod plan;
mod review;
mod setup;
mod shell;
mod stock;

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

pub use answer::Answer;
pub use cards::Cards;
pub use check::Check;
pub use compare::Compare;
pub use desk::Desk;
pub use drill::Drill;
pub use duration::Duration;
pub use new::New;
#[cfg(test)]
pub use new::PressureArg;
pub use plan::{OrderArg, Plan};
pub use review::Review;
pub use setup::Setup;
pub use shell::{Completions, Manual};
pub use stock::{DUE_WITHIN, Stock};

use crate::book::{Date, InvalidDate, OfficePaper};

/// Checks an oxygen-therapy rulebook, prints its pocket cards, checks a set-up, says how long the gas lasts, plans a transport,
/// looks at the cylinders in stock, reviews run records and compares editions.
#[derive(Debug, Parser)]
#[command(
    name = "oxyfolio",
    version,
    arg_required_else_help = true,
    after_help = "\
Start here:
  oxyfolio new our-rules                begin a rulebook of your own
  oxyfolio check --rules rules          is the rulebook in order?
  oxyfolio cards --out my-cards         print the pocket cards
  oxyfolio duration --cylinder D --pressure \"1500 psi\" --flow \"15 L/min\"

Without --rules the demo rulebook of an invented agency is used. Every number is given with its unit.

Exit code: 0 nothing wrong, 1 findings or errors in the rulebook, 2 could not run, 3 lines of records that \
could not be read, 141 whatever read the answer stopped reading.

Local protocol and medical direction come first. Training and reference aid: not a medical device, not a \
substitute for licensed judgement."
)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
    /// Options of every command.
    #[command(flatten)]
    pub asked: Asked,
}

/// Options of every command, as asked for.
#[derive(Debug, Args)]
pub struct Asked {
    /// The folder of the rulebook's chapters [default: the demo rulebook in the program]
    #[arg(long, value_name = "DIR", global = true, display_order = 90)]
    pub rules: Option<PathBuf>,
    /// How to answer: text or json; ndjson (review), csv (review, drill), sarif (check)
    #[arg(
        long,
        value_enum,
        default_value_t = AskedFormat::Text,
        global = true,
        display_order = 91,
        hide_possible_values = true
    )]
    pub format: AskedFormat,
}

/// How to answer, as asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum AskedFormat {
    /// For people.
    Text,
    /// For programs.
    Json,
    /// For programs that take a line at a time.
    Ndjson,
    /// For spreadsheets.
    Csv,
    /// For editors and CI.
    Sarif,
}

/// Options of every command.
#[derive(Debug)]
pub struct Common {
    /// The folder that holds the rulebook's chapters; none for the rulebook in this program.
    pub rules: Option<PathBuf>,
    /// How to answer.
    pub format: Format,
}

impl Asked {
    /// The options as every command knows them, and the format as it was asked for: some only one command answers in.
    pub fn split(self) -> (Common, AskedFormat) {
        let format = match self.format {
            AskedFormat::Json => Format::Json,
            _ => Format::Text,
        };
        let common = Common {
            rules: self.rules,
            format,
        };
        (common, self.format)
    }
}

/// How to answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Format {
    /// For people.
    Text,
    /// For programs.
    Json,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Begin a rulebook: every value that you must decide is marked
    #[command(after_help = new::HELP)]
    New(New),
    /// Check a rulebook: every error at once, and what to write instead
    #[command(after_help = check::HELP)]
    Check(Check),
    /// Print pocket cards, check-off sheets, inspection log and poster
    #[command(after_help = cards::HELP)]
    Cards(Cards),
    /// Compare editions: what does an edit mean, before it is signed?
    #[command(after_help = compare::HELP)]
    Compare(Compare),
    /// Show the rulebook as a page here that follows each save
    #[command(after_help = desk::HELP)]
    Desk(Desk),
    /// Say how many minutes a cylinder lasts, or what minutes need
    #[command(after_help = duration::HELP)]
    Duration(Duration),
    /// Check a set-up: device, flow, patient, cylinder
    #[command(after_help = setup::HELP)]
    Setup(Setup),
    /// Plan a transport: is the gas enough, and when is what changed?
    #[command(after_help = plan::HELP)]
    Plan(Plan),
    /// Look at cylinders in stock: what to swap or test, minutes on hand
    #[command(after_help = stock::HELP)]
    Stock(Stock),
    /// Make practice sheets with answers, for those who learn and teach
    #[command(after_help = drill::HELP)]
    Drill(Drill),
    /// Review run records: what went against the book?
    #[command(after_help = review::HELP)]
    Review(Review),
    /// Print what a shell needs to complete commands and options
    #[command(after_help = shell::COMPLETIONS)]
    Completions(Completions),
    /// Write manual pages
    #[command(after_help = shell::MANUAL)]
    Manual(Manual),
    /// Answer other programs: one request a line, one answer a line
    #[command(after_help = answer::HELP)]
    Answer(Answer),
}

/// A sheet of office paper on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum SheetArg {
    /// 210 x 297 mm
    A4,
    /// 8.5 x 11 in
    Letter,
}

impl From<SheetArg> for OfficePaper {
    fn from(paper: SheetArg) -> Self {
        match paper {
            SheetArg::A4 => Self::A4,
            SheetArg::Letter => Self::Letter,
        }
    }
}

fn day(text: &str) -> Result<Date, InvalidDate> {
    text.parse()
}
