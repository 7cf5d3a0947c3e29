//! The answer of `drill`.

use schemars::JsonSchema;
use serde::Serialize;

use super::parts::words;
use crate::drill;

words! {
    /// The kind of an exercise.
    Kind of drill::Kind { Duration, Order, Setup, Log }
}

words! {
    /// How hard it is.
    Difficulty of drill::Difficulty { Easy, Medium, Hard }
}

/// Exercises with their answers.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Drill<'b> {
    /// The seed that gives them again with the same book.
    pub seed: u64,
    pub exercises: Vec<Exercise<'b>>,
    /// What the book gives no exercise for.
    pub missing: Vec<Missing>,
}

/// One exercise.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Exercise<'b> {
    pub kind: Kind,
    pub level: Difficulty,
    /// What is asked.
    #[schemars(length(min = 1))]
    pub question: &'b str,
    /// What is looked at.
    pub lines: Vec<Line<'b>>,
    #[schemars(length(min = 1))]
    pub answer: &'b str,
    /// How it comes about.
    pub working: &'b [String],
    /// Of steps: pairs of letters of which the first must come before the second.
    pub before: Option<Vec<(&'b str, &'b str)>>,
    /// The part that is wrong, of a set-up or log.
    pub wrong: Option<&'static str>,
    /// The rules behind it.
    pub rules: Vec<Cited<'b>>,
}

/// A line with the letter, name or time it goes by.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Line<'b> {
    pub label: &'b str,
    pub text: &'b str,
}

/// A rule and its place.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Cited<'b> {
    pub id: &'b str,
    pub name: &'b str,
    pub chapter: &'b str,
    pub heading: &'b str,
    pub file: &'b str,
    #[schemars(range(min = 1))]
    pub line: u32,
}

/// Exercises that were asked for and are not there.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Missing {
    pub kind: Kind,
    pub level: Difficulty,
    #[schemars(range(min = 1))]
    pub count: u16,
}
