//! What `review` can be asked.

use std::{ffi::OsString, path::PathBuf};

use clap::{Args, ValueEnum};

use super::SheetArg;
use crate::records::run::Grouping;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio review march.ndjson april.csv.gz
  oxyfolio review --by month --report year.pdf 2026-*.ndjson.zst
  oxyfolio review --format ndjson - < runs.ndjson > findings.ndjson

A record is NDJSON, one run a line, or CSV, one event a row below a head; packed with gzip or zstd \
or not (here broken to fit, there on one line):
  {\"run\": \"A-17\", \"group\": \"adult\", \"conditions\": [], \"events\": [{\"at\":
   \"2026-03-01T14:05:00Z\", \"do\": \"set-flow\", \"flow_lpm\": 15, \"by\": \"crew-4\"}]}
  run,group,conditions,temperature_c,at,do,cylinder,pressure_psi,pressure_bar,
   flow_lpm,device,spo2_percent,by

Write no patient's name: there is no field for it. Of a record's own words only the names of runs \
and crews are repeated, and --pseudonymise hides those. What was not recorded or can't be understood \
is reported as such, never as a pass. Findings come in the order of the input; those of standard \
input name the run and no line.

Exit code: 0 nothing wrong, 1 findings, 2 could not run or could not read a file to its end, 3 lines \
that could not be read, with or without findings.";

/// Options of `review`.
#[derive(Debug, Args)]
pub struct Review {
    /// The records; - for standard input
    #[arg(value_name = "FILE", required_unless_present = "schema")]
    pub files: Vec<PathBuf>,
    /// By what the table is: rule, month or crew
    #[arg(long, value_enum, default_value_t = ByArg::Rule, hide_possible_values = true)]
    pub by: ByArg,
    /// Write a one-page summary with charts
    #[arg(long, value_name = "FILE.pdf")]
    pub report: Option<PathBuf>,
    /// The paper of the summary, a4 or letter
    #[arg(long, value_enum, default_value_t = SheetArg::A4, hide_possible_values = true)]
    pub paper: SheetArg,
    /// Hide names of runs and crews behind a hash with the secret key in this file, 16 bytes or more
    #[arg(long, value_name = "FILE")]
    pub pseudonymise: Option<PathBuf>,
    /// How many threads review [default: as many as the machine has]
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u16).range(1..=1024))]
    pub threads: Option<u16>,
    /// Exit with 0 for findings and unread lines too, for pipelines that stop at any other code
    #[arg(long)]
    pub exit_0: bool,
    /// Print the JSON Schema of a run
    #[arg(long)]
    pub schema: bool,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
}

/// A grouping on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum ByArg {
    /// By the rule
    Rule,
    /// By the month of the run's first time
    Month,
    /// By crew
    Crew,
}

impl From<ByArg> for Grouping {
    fn from(by: ByArg) -> Self {
        match by {
            ByArg::Rule => Self::Rule,
            ByArg::Month => Self::Month,
            ByArg::Crew => Self::Crew,
        }
    }
}
