//! The answer of `new`. There is no edition yet to be told with it.

use schemars::JsonSchema;
use serde::Serialize;

use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS};

/// A rulebook was begun.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct New {
    /// It was.
    ok: bool,
    /// The chapters that were written.
    #[schemars(length(min = 1))]
    files: Vec<String>,
    /// How many values are to be decided; `check` lists them.
    undecided: usize,
    /// To be shown wherever the answer is shown.
    #[schemars(length(min = 2))]
    disclaimers: &'static [&'static str],
    /// To be shown wherever the answer is shown.
    #[schemars(length(min = 3))]
    cautions: &'static [&'static str],
}

impl New {
    /// With its chapters, and how many values are to be decided.
    pub const fn of(files: Vec<String>, undecided: usize) -> Self {
        Self {
            ok: true,
            files,
            undecided,
            disclaimers: &ALWAYS_DISCLAIMERS,
            cautions: &ALWAYS_CAUTIONS,
        }
    }
}
