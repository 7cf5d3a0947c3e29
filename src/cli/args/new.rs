//! What `new` can be asked.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::SheetArg;
use crate::quantity::{PressureUnit, TemperatureUnit};

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio new our-rules
  oxyfolio new our-rules --agency \"Upper Vale Ambulance\" --pressure bar \\
      --temperature celsius

On a terminal it asks for what isn't given. The new rulebook holds what follows from the equipment, \
and no clinical figure: every value that must be decided is marked, and `oxyfolio check --rules \
our-rules` lists each with its place and what to write. It is no protocol until a licensed medical \
director has decided, read and signed it.

Put the value in the place of `undecided (…)`; the quotation marks may stay, except round a list.

Nothing is ever overwritten. Exit code: 0 written, 2 could not run.";

/// Options of `new`.
#[derive(Debug, Args)]
pub struct New {
    /// The folder for the chapters: one that isn't there, or is empty
    #[arg(value_name = "DIR")]
    pub folder: PathBuf,
    /// The agency's name
    #[arg(long, value_name = "NAME")]
    pub agency: Option<String>,
    /// The unit in which gauges are read: psi, bar or kPa
    #[arg(long, value_enum, ignore_case = true, hide_possible_values = true)]
    pub pressure: Option<PressureArg>,
    /// The unit in which temperatures are read: celsius or fahrenheit
    #[arg(long, value_enum, ignore_case = true, hide_possible_values = true)]
    pub temperature: Option<TemperatureArg>,
    /// The agency's paper: a4 or letter
    #[arg(long, value_enum, ignore_case = true, default_value_t = SheetArg::A4, hide_possible_values = true)]
    pub paper: SheetArg,
}

/// A unit of pressure on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum PressureArg {
    /// Pounds per square inch
    Psi,
    /// Bar
    Bar,
    /// Kilopascals
    #[value(name = "kPa")]
    Kpa,
}

impl From<PressureArg> for PressureUnit {
    fn from(unit: PressureArg) -> Self {
        match unit {
            PressureArg::Psi => Self::Psi,
            PressureArg::Bar => Self::Bar,
            PressureArg::Kpa => Self::Kpa,
        }
    }
}

/// A unit of temperature on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum TemperatureArg {
    /// Degrees Celsius
    #[value(alias = "C", alias = "°C")]
    Celsius,
    /// Degrees Fahrenheit
    #[value(alias = "F", alias = "°F")]
    Fahrenheit,
}

impl From<TemperatureArg> for TemperatureUnit {
    fn from(unit: TemperatureArg) -> Self {
        match unit {
            TemperatureArg::Celsius => Self::Celsius,
            TemperatureArg::Fahrenheit => Self::Fahrenheit,
        }
    }
}
