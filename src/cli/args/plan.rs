//! What `plan` can be asked.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use crate::check::plan::Order;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio plan transfer.yaml
  oxyfolio plan transfer.yaml --add E --add vehicle --chart transfer.svg

A plan file, in YAML or JSON (pressures in psi, bar or kPa):
  name: Lakeside ward to Hilltop hospital
  temperature: 20 °C
  cylinders:
    - {size: E, pressure: 2000 psi, count: 2}
  legs:
    - {name: ward, time: 8 min, device: non-rebreather, flow: 15 L/min}
    - name: on the road
      time: 20 min
      delay: 4 min
      temperature: -5 °C
      patients:
        - {device: nasal-cannula, flow: 2 L/min}
        - {drive-gas: 6 L/min}

All patients of a leg are on one supply. drive-gas is what a gas-driven ventilator or CPAP device \
uses beside the flow. Cylinders are changed at the rulebook's change-over pressure while another is \
left; the last may be used to the residual pressure. The planning margin is added to every leg.

Exit code: 0 enough with the margin, 1 not or not to be relied on, 2 could not run.";

/// Options of `plan`.
#[derive(Debug, Args)]
pub struct Plan {
    /// The plan, YAML or JSON: legs and cylinders
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Which cylinder comes first: fewest-changes or emptiest-first
    #[arg(long, value_enum, default_value_t = OrderArg::FewestChanges, hide_possible_values = true)]
    pub order: OrderArg,
    /// Say how many full cylinders of a size (or portable, vehicle) would make it enough; may be repeated
    #[arg(long, value_name = "SIZE")]
    pub add: Vec<String>,
    /// Draw what is left against time, as SVG
    #[arg(long, value_name = "FILE")]
    pub chart: Option<PathBuf>,
}

/// An order on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum OrderArg {
    /// The one with the most usable gas first
    FewestChanges,
    /// The one with the least usable gas first
    EmptiestFirst,
}

impl From<OrderArg> for Order {
    fn from(order: OrderArg) -> Self {
        match order {
            OrderArg::FewestChanges => Self::FewestChanges,
            OrderArg::EmptiestFirst => Self::EmptiestFirst,
        }
    }
}
