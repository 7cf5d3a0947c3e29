//! What `check` can be asked.

use clap::Args;

use super::day;
use crate::book::Date;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio check --rules rules
  oxyfolio check --rules rules --format json
  oxyfolio check --rules rules --format sarif     (SARIF 2.1.0, for editors and CI)

Edit a chapter, save it, check again. A rulebook without errors is not yet a signed
protocol: that takes the medical director.";

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
