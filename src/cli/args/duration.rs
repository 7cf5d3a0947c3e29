//! What `duration` can be asked.

use clap::Args;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio duration --cylinder D --pressure \"1500 psi\" --flow \"15 L/min\"
  oxyfolio duration --cylinder metric-2-l --pressure \"120 bar\" \\
      --flow \"6 L/min\" --temperature \"-10 °C\" --now 14:05
  oxyfolio duration --water-capacity \"4.6 L\" --pressure \"1500 psi\" \\
      --leak \"0.5 L/min\"
  oxyfolio duration --cylinder D --flow \"15 L/min\" --minutes 15   (reading?)
  oxyfolio duration --cylinder D --pressure \"1500 psi\" --minutes 40    (flow?)

The gas above the residual pressure is worked out twice: by the density of real oxygen at the \
temperature, and by the cylinder's factor. The lower counts, divided by the flow and rounded down to \
whole minutes. Letters are US sizes: read what is stamped on the cylinder.

Exit code: 0 answered, 1 not enough for --minutes, or the rulebook has errors, 2 could not run.";

/// Options of `duration`.
#[derive(Debug, Args)]
pub struct Duration {
    /// The cylinder's size, as the rulebook names it: D, E, metric-2-l
    #[arg(long, value_name = "SIZE", required_unless_present = "water_capacity")]
    pub cylinder: Option<String>,
    /// The water that fills the cylinder, as stamped on it: "4.6 L"
    #[arg(long, value_name = "L", conflicts_with = "cylinder")]
    pub water_capacity: Option<String>,
    /// The factor of a cylinder that the rulebook lacks: "0.28 L/psi"
    #[arg(
        long,
        value_name = "L/PSI",
        requires = "water_capacity",
        conflicts_with = "cylinder"
    )]
    pub factor: Option<String>,
    /// The gauge reading: "1500 psi", "120 bar"
    #[arg(long)]
    pub pressure: Option<String>,
    /// The cylinder's temperature, -40 to 60 °C: "20 °C", "70 °F" [default: 21 °C]
    #[arg(long, value_name = "TEMP", allow_hyphen_values = true)]
    pub temperature: Option<String>,
    /// The flow: "15 L/min"
    #[arg(long)]
    pub flow: Option<String>,
    /// What leaks beside the flow, or alone: "0.5 L/min"
    #[arg(long, value_name = "FLOW")]
    pub leak: Option<String>,
    /// How long the gas must last, in minutes
    #[arg(long, value_name = "MINUTES")]
    pub minutes: Option<String>,
    /// The time of day, for the clock time of the change: 14:05
    #[arg(long, value_name = "HH:MM")]
    pub now: Option<String>,
    /// Gas below this reading isn't counted [default: the rulebook's residual pressure]
    #[arg(long, value_name = "PRESSURE")]
    pub residual: Option<String>,
}
