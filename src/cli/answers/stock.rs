//! The answer of `stock`.

use schemars::JsonSchema;
use serde::Serialize;

use super::{
    diagnostic::Told,
    parts::{Day, Level, Rule, words},
};
use crate::check::stock;

words! {
    /// Why a cylinder is to be swapped, the most pressing first. All but `test-due` keep its gas from being counted.
    Reason of stock::Reason {
        Unsafe,
        PastTest,
        TestUnknown,
        BelowResidual,
        ReadingUnknown,
        ChangeOver,
        BelowInServiceMinimum,
        ListedTwice,
        TestDue,
    }
}

/// What is to be said of a stock of cylinders.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Stock<'b> {
    /// Nothing against the book was found, and every row could be read.
    pub ok: bool,
    /// The list's path.
    pub list: &'b str,
    /// The day on which tests were judged.
    pub today: Day,
    /// With its unit.
    pub due_within: String,
    pub temperature_c: f64,
    pub temperature_assumed: bool,
    pub rows_read: usize,
    pub rows_not_read: usize,
    /// Mistakes in the rows that could not be read, and notes.
    #[schemars(length(max = 2000))]
    pub diagnostics: Vec<Told>,
    /// False when more was found than is listed: at most 1,000 errors are, and as many notes.
    pub complete: bool,
    pub cylinders: Vec<Cylinder<'b>>,
    /// About all cylinders together.
    pub findings: Vec<Finding<'b>>,
    /// The rules that something was found against, each once.
    pub rules: Vec<FoundAgainst<'b>>,
    /// In the order in which to do it.
    pub swap: Vec<Swap<'b>>,
    /// By location, in the order of the list.
    pub on_hand: Vec<OnHand<'b>>,
    pub on_hand_in_all: OnHand<'b>,
    #[schemars(range(min = 0))]
    pub residual_psi: f64,
    /// The inspection sheet's file, where one was asked for.
    pub sheet: Option<String>,
}

/// A cylinder of the list.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields, rename = "StockCylinder")]
pub struct Cylinder<'b> {
    /// Of the list.
    #[schemars(range(min = 1))]
    pub line: usize,
    #[schemars(length(min = 1))]
    pub serial: &'b str,
    pub size: &'b str,
    /// The naming system that the size belongs to.
    pub series: &'b str,
    /// Empty where it was not given.
    pub location: &'b str,
    #[schemars(range(min = 0))]
    pub pressure_psi: Option<f64>,
    #[schemars(range(min = 0))]
    pub pressure_bar: Option<f64>,
    pub tested: Option<Month>,
    pub due: Option<Month>,
    pub marks: Vec<Mark>,
    #[schemars(range(min = 0))]
    pub filled_at_most_psi: f64,
    #[schemars(range(min = 0))]
    pub filled_at_most_bar: f64,
    #[schemars(range(min = 0))]
    pub usable_litres: Option<f64>,
    /// Whether its gas is counted as on hand.
    pub counted: bool,
    pub reasons: Vec<Reason>,
    pub findings: Vec<Finding<'b>>,
}

/// A month, YYYY-MM.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Month(#[schemars(regex(pattern = r"^[0-9]{4,5}-[0-9]{2}$"))] pub String);

/// What is stamped on a cylinder.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Mark {
    Plus,
    Star,
    Aluminium,
}

/// Something to be said.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields, rename = "StockFinding")]
pub struct Finding<'b> {
    /// Stable: a program may look for it.
    #[schemars(regex(pattern = "^[a-z0-9]+(-[a-z0-9]+)*$"))]
    code: &'static str,
    level: Level,
    /// For people; may change.
    #[schemars(length(min = 1))]
    message: String,
    rule: Rule<'b>,
}

impl<'b> Finding<'b> {
    /// For programs.
    pub fn of(finding: &stock::Finding<'b>) -> Self {
        Self {
            code: finding.code(),
            level: finding.level.into(),
            message: finding.to_string(),
            rule: Rule::of(finding.kind, finding.rule),
        }
    }
}

/// A rule that something was found against.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct FoundAgainst<'b> {
    /// Its kind: cylinder, policy …
    pub kind: &'static str,
    pub id: &'b str,
    /// Of a policy, with its unit.
    pub value: Option<String>,
    pub note: Option<&'b str>,
    /// The paragraphs above it.
    pub rationale: &'b str,
}

/// A cylinder to be swapped.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Swap<'b> {
    /// Its place in `cylinders`, from 1.
    #[schemars(range(min = 1))]
    pub cylinder: usize,
    #[schemars(range(min = 1))]
    pub line: usize,
    pub serial: &'b str,
    pub location: &'b str,
    #[schemars(length(min = 1))]
    pub reasons: Vec<Reason>,
}

/// The gas on hand at a place.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct OnHand<'b> {
    /// Empty where it was not given, and for all together.
    pub location: &'b str,
    pub counted: usize,
    pub not_counted: usize,
    #[schemars(range(min = 0))]
    pub usable_litres: f64,
    pub minutes: Vec<DeviceMinutes<'b>>,
}

/// How long it lasts with a device.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct DeviceMinutes<'b> {
    pub device: &'b str,
    /// Its usual flow.
    #[schemars(range(min = 0))]
    pub flow_lpm: f64,
    /// Whole minutes at that flow, each cylinder rounded down; null where the device's usual flow is 0.
    pub minutes: Option<u64>,
}
