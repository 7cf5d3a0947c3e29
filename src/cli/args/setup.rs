//! What `setup` can be asked.

use clap::Args;

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio setup --device non-rebreather --flow \"15 L/min\" --group adult
  oxyfolio setup --device nasal-cannula --flow \"2 L/min\" --group adult \\
      --condition none --spo2 \"91 %\" --cylinder D --pressure \"1500 psi\" \\
      --temperature \"20 °C\" --minutes 40

What is not given can't be checked, and the answer says so. Findings quote the rule, its place in \
the book and its reason.

Exit code: 0 nothing wrong, 1 findings, or something could not be checked, 2 could not run.";

/// Options of `setup`.
#[derive(Debug, Args)]
pub struct Setup {
    /// The device, as the rulebook names it: nasal-cannula, non-rebreather
    #[arg(long)]
    pub device: String,
    /// The flow: "2 L/min"
    #[arg(long)]
    pub flow: String,
    /// The patient's group: adult, child, infant, newborn
    #[arg(long)]
    pub group: Option<String>,
    /// A condition of the patient (retains-co2), or none; may be repeated
    #[arg(long, value_name = "NAME")]
    pub condition: Vec<String>,
    /// The time since birth, for a newborn: "3 min", "2 days"
    #[arg(long, value_name = "TIME")]
    pub since_birth: Option<String>,
    /// The oxygen saturation: "91 %"
    #[arg(long, value_name = "SHARE")]
    pub spo2: Option<String>,
    /// The cylinder's size, as the rulebook names it
    #[arg(long, value_name = "SIZE")]
    pub cylinder: Option<String>,
    /// The gauge reading: "1500 psi", "120 bar"
    #[arg(long)]
    pub pressure: Option<String>,
    /// The cylinder's temperature, -40 to 60 °C: "20 °C", "70 °F"
    #[arg(long, value_name = "TEMP", allow_hyphen_values = true)]
    pub temperature: Option<String>,
    /// How long the gas must last, in minutes
    #[arg(long, value_name = "MINUTES")]
    pub minutes: Option<String>,
}
