//! What `stock` can be asked.

use std::{ffi::OsString, path::PathBuf};

use clap::Args;

use super::{SheetArg, day};
use crate::book::Date;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio stock cylinders.csv --temperature \"4 °C\" --due-within \"6 months\"
  oxyfolio stock cylinders.csv --sheet inspection.pdf --paper letter
  some-other-program | oxyfolio stock - --format json

A list, in CSV: the first line names the columns, in any order.
  serial,size,pressure_psi,tested,marks,location
  LV-1041,D,2000,2024-03,plus,Station 1
  LV-1042,E,1900,2021-10,,\"Station 1, shelf 2\"
pressure_bar in place of pressure_psi, or both with one filled in each row. tested is the month of \
the last test. marks: plus, star, steel, aluminium, or none.

How long a test holds, the fill limits and the least readings are the rulebook's. A test is past \
when its month is over; in its month it is a warning. Minutes on hand are those of the cylinders fit \
for service, each device at its usual flow, down to the residual pressure, each cylinder rounded \
down.

Exit code: 0 nothing wrong, 1 findings, 2 could not run, 3 some rows could not be read (the others \
were looked at; there may be findings too).";

/// The time within which tests are told to be due, unless another is asked for.
pub const DUE_WITHIN: &str = "3 months";

/// Options of `stock`.
#[derive(Debug, Args)]
pub struct Stock {
    /// The list of cylinders, CSV; - for standard input
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// The day on which tests are judged, YYYY-MM-DD [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// Say which tests are due within this time: "3 months", "30 days"
    #[arg(long, value_name = "TIME", default_value = DUE_WITHIN)]
    pub due_within: String,
    /// The temperature at which the gauges were read, -40 to 60 °C: "20 °C", "70 °F" [default: 21 °C]
    #[arg(long, value_name = "TEMP", allow_hyphen_values = true)]
    pub temperature: Option<String>,
    /// Print an inspection sheet to take along, as PDF
    #[arg(long, value_name = "FILE")]
    pub sheet: Option<PathBuf>,
    /// The sheet's paper: a4 or letter
    #[arg(long, value_enum, default_value_t = SheetArg::A4, hide_possible_values = true)]
    pub paper: SheetArg,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
}
