//! The answer of `setup`.

use schemars::JsonSchema;
use serde::Serialize;

use super::parts::{Level, Rule};
use crate::check;

/// What is to be said of a set-up.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Setup<'b> {
    /// Nothing against the book was found, and everything could be checked.
    pub ok: bool,
    /// As it was asked for.
    pub device: String,
    #[schemars(range(min = 0))]
    pub flow_lpm: f64,
    /// The gravest first.
    pub findings: Vec<Finding<'b>>,
    /// What a set-up can't show: to be looked at by eye.
    pub hazards_not_judged: Vec<&'b str>,
}

/// Something to be said of it.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Finding<'b> {
    /// Stable: a program may look for it.
    #[schemars(regex(pattern = "^[a-z0-9]+(-[a-z0-9]+)*$"))]
    code: &'static str,
    level: Level,
    /// For people; may change.
    #[schemars(length(min = 1))]
    message: String,
    /// What to do, where the book says it.
    remedy: Option<&'b str>,
    rule: ReasonedRule<'b>,
}

/// A rule, its place and its reason.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct ReasonedRule<'b> {
    #[serde(flatten)]
    rule: Rule<'b>,
    /// The paragraphs above it.
    rationale: &'b str,
}

impl<'b> Finding<'b> {
    /// For programs.
    pub fn of(finding: &check::Finding<'b>) -> Self {
        Self {
            code: finding.code(),
            level: finding.level.into(),
            message: finding.to_string(),
            remedy: finding.remedy(),
            rule: ReasonedRule {
                rule: Rule::of(finding.kind, finding.rule),
                rationale: finding.rule.rationale(),
            },
        }
    }
}
