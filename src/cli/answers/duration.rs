//! The three answers of `duration`.

use schemars::JsonSchema;
use serde::Serialize;

use crate::check::duration::{Bound, GaugeReading};

use super::parts::words;

/// Which of the three questions was asked, and its answer.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(tag = "question", rename_all = "lowercase")]
pub enum Duration<'b> {
    /// How long it lasts.
    Minutes(Minutes<'b>),
    /// The reading needed.
    Pressure(Pressure<'b>),
    /// The greatest flow.
    Flow(Flow<'b>),
}

words! {
    /// The method that gives the lower answer, which counts.
    BoundBy of Bound { Density, Factor }
}

/// Whether the gauge tells the truth about the gas.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Gauge {
    Fair,
    ReadsLow,
    ReadsHigh,
}

impl From<GaugeReading> for Gauge {
    fn from(reading: GaugeReading) -> Self {
        match reading {
            GaugeReading::Fair => Self::Fair,
            GaugeReading::Low => Self::ReadsLow,
            GaugeReading::High => Self::ReadsHigh,
        }
    }
}

/// What was asked about.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Asked<'b> {
    /// The size's id; null for one that was given by its water capacity.
    pub cylinder: Option<&'b str>,
    /// The naming system that its letter belongs to.
    pub series: Option<&'b str>,
    #[schemars(range(min = 0))]
    pub water_capacity_litres: f64,
    /// With its unit; null where none was given.
    pub factor: Option<String>,
    /// Gas below this reading isn't counted.
    #[schemars(range(min = 0))]
    pub residual_psi: f64,
    #[schemars(range(min = 0))]
    pub residual_bar: f64,
    #[schemars(range(min = -40, max = 60))]
    pub temperature_c: f64,
    /// 21 °C was taken because none was given.
    pub temperature_assumed: bool,
}

/// How long a reading lasts.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Minutes<'b> {
    #[serde(flatten)]
    pub asked: Asked<'b>,
    #[schemars(range(min = 0))]
    pub pressure_psi: f64,
    #[schemars(range(min = 0))]
    pub pressure_bar: f64,
    #[schemars(range(min = 0))]
    pub flow_lpm: f64,
    #[schemars(range(min = 0))]
    pub leak_lpm: f64,
    /// Whole minutes, rounded down: the lower of the two methods.
    pub minutes: u32,
    /// The whole contents at that pressure and temperature, by density, at 1 atm and 70 °F.
    #[schemars(range(min = 0))]
    pub free_litres: f64,
    /// What is above the residual pressure, by the method that counts.
    #[schemars(range(min = 0))]
    pub usable_litres: f64,
    pub by_density_minutes: u32,
    #[schemars(range(min = 0))]
    pub by_density_litres: f64,
    /// Null where no factor was given.
    pub by_factor_minutes: Option<u32>,
    #[schemars(range(min = 0))]
    pub by_factor_litres: Option<f64>,
    pub bound_by: BoundBy,
    pub gauge: Gauge,
    /// What to tell the crew about it.
    pub gauge_note: Option<&'static str>,
    pub change_cylinder_now: bool,
    /// The reading is above what this size may be filled to: nothing can be relied on.
    pub above_fill_limit: bool,
    /// The reading at which the cylinder is changed.
    #[schemars(range(min = 0))]
    pub change_over_psi: f64,
    pub change_over_minutes: u32,
    /// With `--now`, as a time of day.
    #[schemars(regex(pattern = r"^[0-9]{2}:[0-9]{2}( \([0-9]+ days? later\))?$"))]
    pub change_over_at: Option<String>,
    /// With `--now`, as a time of day: when it is at its residual.
    #[schemars(regex(pattern = r"^[0-9]{2}:[0-9]{2}( \([0-9]+ days? later\))?$"))]
    pub ends_at: Option<String>,
    pub minutes_wanted: Option<u32>,
    /// Without a planning margin; null where no minutes were asked for.
    pub enough: Option<bool>,
}

/// The reading that the minutes need.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Pressure<'b> {
    #[serde(flatten)]
    pub asked: Asked<'b>,
    #[schemars(range(min = 1))]
    pub minutes: u32,
    #[schemars(range(min = 0))]
    pub flow_lpm: f64,
    #[schemars(range(min = 0))]
    pub leak_lpm: f64,
    /// Rounded up; null where 300 bar is not enough.
    #[schemars(range(min = 0))]
    pub pressure_needed_psi: Option<f64>,
    #[schemars(range(min = 0))]
    pub pressure_needed_bar: Option<f64>,
    /// Whether this size may be filled so far.
    pub possible: bool,
    /// The most it may be filled to, where that is known.
    #[schemars(range(min = 0))]
    pub filled_at_most_psi: Option<f64>,
}

/// The greatest flow that lasts the minutes.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Flow<'b> {
    #[serde(flatten)]
    pub asked: Asked<'b>,
    #[schemars(range(min = 0))]
    pub pressure_psi: f64,
    #[schemars(range(min = 0))]
    pub pressure_bar: f64,
    #[schemars(range(min = 1))]
    pub minutes: u32,
    /// Rounded down. Not every device may be set to it: the book's limits come first.
    #[schemars(range(min = 0))]
    pub greatest_flow_lpm: f64,
    #[schemars(range(min = 0))]
    pub free_litres: f64,
    #[schemars(range(min = 0))]
    pub usable_litres: f64,
    pub bound_by: BoundBy,
    pub gauge: Gauge,
    /// What to tell the crew about it.
    pub gauge_note: Option<&'static str>,
    /// The reading is above what this size may be filled to: nothing can be relied on.
    pub above_fill_limit: bool,
}
