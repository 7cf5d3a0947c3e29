//! A line of `oxyfolio answer`.

use schemars::JsonSchema;
use serde::Serialize;
use serde_json::value::RawValue;

use super::{Answer, Frame, book, check, duration, plan, setup, stock};

/// A line of answer, as its schema has it.
#[expect(
    dead_code,
    reason = "made for its schema: the answer is written as the command wrote it"
)]
#[derive(Debug, JsonSchema)]
#[schemars(untagged, inline)]
pub enum Line<'b> {
    /// A request that was answered.
    Answered(Box<Answered<'b>>),
    /// A line that could not be used.
    Refused(Refused<'b>),
}

/// A request that was answered.
#[expect(dead_code, reason = "made for its schema")]
#[derive(Debug, JsonSchema)]
#[schemars(deny_unknown_fields, inline)]
pub struct Answered<'b> {
    #[schemars(flatten)]
    about: About<'b>,
    /// The exit code that the command itself has for this: 0 nothing wrong, 1 findings, 2 mistakes in the plan or list, 3 some rows
    /// that could not be read.
    #[schemars(range(min = 0, max = 3))]
    exit: u8,
    #[schemars(flatten)]
    answer: Told<'b>,
}

/// What was asked, and what that command answers.
#[expect(dead_code, reason = "made for its schema")]
#[derive(Debug, JsonSchema)]
#[schemars(tag = "ask", content = "answer", rename_all = "lowercase")]
pub enum Told<'b> {
    Book(super::Framed<'b, book::Names<'b>>),
    Check(Answer<'b, check::Check>),
    Duration(Answer<'b, duration::Duration<'b>>),
    Plan(Answer<'b, plan::Plan<'b>>),
    Setup(Answer<'b, setup::Setup<'b>>),
    Stock(Answer<'b, stock::Stock<'b>>),
}

/// Which request it is the answer to.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
pub struct About<'r> {
    /// The line of the request, from 1; empty lines count.
    #[schemars(range(min = 1))]
    pub line: u64,
    /// The request's `id`, as it was written; null where there was none.
    #[schemars(with = "Id")]
    pub id: Option<&'r RawValue>,
}

/// The name of a request.
#[expect(dead_code, reason = "made for its schema")]
#[derive(Debug, JsonSchema)]
#[schemars(untagged, inline)]
pub enum Id {
    Text(String),
    Number(f64),
    None(()),
}

/// An answer as it is written.
#[derive(Debug, Serialize)]
pub struct Written<'r> {
    #[serde(flatten)]
    pub about: About<'r>,
    pub ask: &'static str,
    pub exit: u8,
    pub answer: &'r RawValue,
}

/// A line that could not be used.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields, inline)]
pub struct Refused<'b> {
    #[serde(flatten)]
    pub about: About<'b>,
    #[schemars(extend("const" = 2))]
    pub exit: u8,
    /// Every mistake, in the order of the line.
    #[schemars(length(min = 1, max = 20))]
    pub errors: Vec<Mistake>,
    /// False when there are more mistakes than are listed.
    pub complete: bool,
    #[serde(flatten)]
    pub frame: Frame<'b>,
}

/// A mistake in a request.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Mistake {
    /// The field; null where the mistake is in none, or in more than one.
    pub field: Option<String>,
    /// Where in the line, in Unicode code points from 1.
    #[schemars(range(min = 1))]
    pub column: usize,
    /// What is wrong and what to write instead; for people, may change.
    #[schemars(length(min = 1))]
    pub message: String,
}
