//! What `compare` can be asked.

use std::{ffi::OsString, path::PathBuf};

use clap::Args;

use super::SheetArg;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio compare last-years-rules rules
  oxyfolio compare git:HEAD --rules rules      (since the last commit)
  oxyfolio compare git:v1 git:v2 --rules rules
  oxyfolio compare git:HEAD --rules rules --report edit.pdf --paper letter

Told are limits that are stricter or looser, steps that may now be done in another order, minutes that \
move, worked cases that come out otherwise, cards to be printed anew, and how many of 100,000 generated \
set-ups are judged otherwise, with the smallest example of each kind.

An edition is a folder of chapters, or git:REV, the rulebook's folder as it was at that revision. An \
old edition that no longer passes `check` is compared as far as it can be read. Stricter: more is \
found wrong, less gas is counted on, or less is left to choose. The report is for the medical \
director to sign.

Exit code: 0 nothing changed, 1 something changed, 2 could not run.";

/// Options of `compare`.
#[derive(Debug, Args)]
pub struct Compare {
    /// The old edition: a folder, or git:REV
    #[arg(required_unless_present = "schema")]
    pub old: Option<String>,
    /// The new edition: a folder, or git:REV [default: the folder of --rules]
    pub new: Option<String>,
    /// Also set what changed on a page for sign-off, as PDF
    #[arg(long, value_name = "FILE")]
    pub report: Option<PathBuf>,
    /// The paper of the report: a4 or letter [default: the agency's paper]
    #[arg(long, value_enum, requires = "report", hide_possible_values = true)]
    pub paper: Option<SheetArg>,
    /// Print the JSON Schema of the answer and end
    #[arg(long, exclusive = true)]
    pub schema: bool,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
}
