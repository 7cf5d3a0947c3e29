//! The answer of `review`.

use schemars::JsonSchema;
use serde::Serialize;

use super::parts::Level;
use crate::records::run::{self, schema::Finding};

/// What was found in records. The findings are written while they are found, the rest behind them.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Review<'b> {
    /// In the order of the input.
    pub findings: Vec<Finding>,
    #[serde(flatten)]
    pub rest: Rest<'b>,
}

/// What stands behind the findings.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Rest<'b> {
    /// Nothing against the book was found, everything could be checked, and every line and file was read.
    pub ok: bool,
    pub summary: Summary<'b>,
}

/// The findings counted.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Summary<'b> {
    pub runs: u64,
    pub runs_with_findings: u64,
    pub events: u64,
    /// Lines that could not be read; what is wrong with them is told on standard error.
    pub bad_lines: u64,
    pub findings: Levels,
    /// The first time recorded (RFC 3339).
    #[schemars(extend("format" = "date-time"))]
    pub first: Option<String>,
    #[schemars(extend("format" = "date-time"))]
    pub last: Option<String>,
    /// Files that could not be read to their end.
    pub failed: Vec<Failed<'b>>,
    #[serde(flatten)]
    pub by: By<'b>,
}

/// The table of `--by`.
#[derive(Debug, Serialize, JsonSchema)]
pub enum By<'b> {
    #[serde(rename = "by_rule")]
    Rule(Vec<ByRule<'b>>),
    /// Months as YYYY-MM.
    #[serde(rename = "by_month")]
    Month(Vec<Group>),
    #[serde(rename = "by_crew")]
    Crew(Vec<Group>),
}

/// How many of each level.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Levels {
    pub stop: u64,
    pub warn: u64,
    pub unknown: u64,
    pub note: u64,
}

impl From<&run::Levels> for Levels {
    fn from(levels: &run::Levels) -> Self {
        Self {
            stop: levels.stop,
            warn: levels.warn,
            unknown: levels.unknown,
            note: levels.note,
        }
    }
}

/// A file that could not be read to its end.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Failed<'b> {
    pub file: &'b str,
    pub why: &'b str,
}

/// The findings of one kind against one rule.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct ByRule<'b> {
    pub rule: RuleName<'b>,
    /// What was found.
    #[schemars(regex(pattern = "^[a-z0-9]+(-[a-z0-9]+)*$"))]
    pub code: &'static str,
    pub level: Level,
    pub findings: u64,
    /// In how many runs.
    pub runs: u64,
}

/// A rule's name.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct RuleName<'b> {
    pub kind: &'static str,
    pub id: &'b str,
}

/// The findings of a month or a crew.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Group {
    /// Null where it was not recorded.
    pub group: Option<String>,
    pub runs: u64,
    pub findings: Levels,
}
