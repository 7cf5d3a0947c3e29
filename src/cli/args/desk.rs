//! What `desk` can be asked.

use std::ffi::OsString;

use clap::Args;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio desk --rules rules
  oxyfolio desk --rules rules --since git:HEAD
  oxyfolio desk --rules rules --since last-years-rules --port 8080

Open the address it prints in a browser on this machine; nothing outside the machine can reach it. \
Change the chapters in any editor: the page follows each save. The desk only shows the rulebook and \
never writes it. Ctrl-C ends it.

Book: the chapters, each rule as a table or as ordered steps with its source on demand, and what is wrong \
in the margin where it stands, in the words of `check`; a book with errors is shown too.
Order of steps: each procedure as a diagram and in words; an order that isn't safe is walked to the step \
that does harm.
Try a set-up: device, flow, patient, cylinder; findings and minutes with the rule quoted. The address \
holds the question.
Cards: as they will print, beside those of the last edition, with the PDF.
Since the last edition: what your edit means before you sign it.

Exit code: 0 ended with Ctrl-C, 2 could not run.";

/// Options of `desk`.
#[derive(Debug, Args)]
pub struct Desk {
    /// The port to listen on [default: any that is free]
    #[arg(long, value_name = "PORT", default_value_t = 0, hide_default_value = true)]
    pub port: u16,
    /// The last edition, to compare with: a folder, or git:REV of the rulebook's repository
    #[arg(long, value_name = "DIR|git:REV")]
    pub since: Option<String>,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
    /// How many seconds it may take for each document
    #[arg(long, value_name = "SECONDS", default_value_t = 60, value_parser = clap::value_parser!(u64).range(1..=3600))]
    pub time_limit: u64,
}
