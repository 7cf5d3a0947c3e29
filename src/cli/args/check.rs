//! What `check` can be asked.

use clap::Args;

use super::day;
use crate::book::Date;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio check --rules rules
  oxyfolio check --rules rules --uncovered
  oxyfolio check --rules rules --format sarif > rules.sarif

Edit a chapter, save it, check again. Flows are written in L/min, readings in psi, bar or kPa, \
temperatures in °C or °F; every number has its unit. SARIF (2.1.0) is for editors and CI. A rulebook \
without errors is not yet a signed protocol: that takes the medical director.

Exit code: 0 no errors, 1 errors (or, with --uncovered, something is left), 2 could not run.";

/// Options of `check`.
#[derive(Debug, Args)]
pub struct Check {
    /// Also list every number, hazard and `after` that no worked case would notice changing
    #[arg(long)]
    pub uncovered: bool,
    /// The day on which the edition's dates are judged, YYYY-MM-DD [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
}
