//! The answer of `plan`.

use schemars::JsonSchema;
use serde::Serialize;

use super::parts::words;
use crate::check::plan;

words! {
    /// Which cylinder comes first.
    Order of plan::Order { FewestChanges, EmptiestFirst }
}

/// Whether the gas on board is enough, and how it is used. Legs and cylinders count from 1, in the order of the plan.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Plan<'b> {
    /// Enough with the margin, and no cylinder is filled above its limit.
    pub ok: bool,
    pub name: Option<&'b str>,
    /// With the planning margin.
    pub enough: bool,
    pub enough_without_margin: bool,
    #[schemars(range(min = 0))]
    pub planning_margin_percent: f64,
    /// With the margin.
    #[schemars(range(min = 0))]
    pub needed_litres: f64,
    #[schemars(range(min = 0))]
    pub needed_minutes: f64,
    /// Without it.
    #[schemars(range(min = 0))]
    pub expected_litres: f64,
    #[schemars(range(min = 0))]
    pub expected_minutes: f64,
    #[schemars(range(min = 0))]
    pub spare_litres: f64,
    /// Beyond the margin, at the last flow, rounded down; 0 when it isn't enough.
    pub spare_minutes: u32,
    #[schemars(range(min = 0))]
    pub short_litres: f64,
    /// What lacks with the margin, rounded up; 0 when it is enough.
    pub short_minutes: u32,
    /// Where the gas runs out with the margin; minutes are lengthened by it.
    pub breaks: Option<Break<'b>>,
    pub breaks_without_margin: Option<Break<'b>>,
    pub order: Order,
    #[schemars(range(min = 0))]
    pub change_over_psi: f64,
    #[schemars(range(min = 0))]
    pub residual_psi: f64,
    /// May be used to the residual pressure, once no other is left.
    #[schemars(range(min = 1))]
    pub last_cylinder: usize,
    /// At which the gauges are taken as read.
    pub temperature_c: f64,
    pub temperature_assumed: bool,
    /// In the time expected, to where the gas runs out.
    pub segments: Vec<Segment<'b>>,
    pub change_overs: Vec<ChangeOver>,
    /// What is left in each at the end of the time expected, or when the gas runs out.
    #[schemars(length(min = 1))]
    pub cylinders: Vec<Left<'b>>,
    /// For each size of `--add`.
    pub add: Vec<Added<'b>>,
    /// What speaks against the plan besides its gas.
    pub plan_cautions: Vec<String>,
    /// The chart's file, where one was asked for.
    pub chart: Option<String>,
}

/// Where the gas runs out.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Break<'b> {
    #[schemars(range(min = 1))]
    pub leg: usize,
    pub name: &'b str,
    #[schemars(range(min = 0))]
    pub at_minutes: f64,
}

/// A stretch of time with one leg and one cylinder.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Segment<'b> {
    #[schemars(range(min = 1))]
    pub leg: usize,
    /// The leg's.
    pub name: &'b str,
    #[schemars(range(min = 0))]
    pub from_minutes: f64,
    #[schemars(range(min = 0))]
    pub to_minutes: f64,
    /// Null where no gas is used.
    #[schemars(range(min = 1))]
    pub cylinder: Option<usize>,
    #[schemars(range(min = 0))]
    pub flow_lpm: f64,
    #[schemars(range(min = 0))]
    pub pressure_before_psi: Option<f64>,
    #[schemars(range(min = 0))]
    pub pressure_before_bar: Option<f64>,
    #[schemars(range(min = 0))]
    pub pressure_after_psi: Option<f64>,
    #[schemars(range(min = 0))]
    pub pressure_after_bar: Option<f64>,
    /// Of all cylinders, afterwards.
    #[schemars(range(min = 0))]
    pub usable_litres: f64,
}

/// One cylinder changed for another.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct ChangeOver {
    #[schemars(range(min = 0))]
    pub at_minutes: f64,
    #[schemars(range(min = 1))]
    pub leg: usize,
    #[schemars(range(min = 1))]
    pub from_cylinder: usize,
    #[schemars(range(min = 1))]
    pub to_cylinder: usize,
}

/// What is left in a cylinder.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Left<'b> {
    #[schemars(range(min = 1))]
    pub cylinder: usize,
    pub size: &'b str,
    /// The naming system that the size belongs to.
    pub series: &'b str,
    #[schemars(range(min = 0))]
    pub used_litres: f64,
    #[schemars(range(min = 0))]
    pub pressure_psi: f64,
    #[schemars(range(min = 0))]
    pub pressure_bar: f64,
    #[schemars(range(min = 0))]
    pub usable_litres: f64,
}

/// How many full cylinders of a size would make it enough.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Added<'b> {
    pub size: &'b str,
    #[schemars(range(min = 0))]
    pub full_psi: f64,
    /// Null when not even 100 make it enough.
    pub fewest: Option<usize>,
}
