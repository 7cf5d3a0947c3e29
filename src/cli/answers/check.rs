//! The answer of `check`.

use schemars::JsonSchema;
use serde::Serialize;

use super::diagnostic::Told;
use crate::compile::suggest::counted;

/// A rulebook that can be used.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Check {
    #[schemars(extend("const" = true))]
    pub ok: bool,
    pub counts: Counts,
    /// In the order of the book.
    #[schemars(
        length(max = 2000),
        extend("not" = { "contains": { "properties": { "level": { "const": "error" } } } })
    )]
    pub diagnostics: Vec<Told>,
    /// False when there are more notes than are listed: at most 1,000 are.
    pub complete: bool,
    /// With `--uncovered`: what no worked case would notice changing.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Vec<Uncovered>")]
    pub uncovered: Option<Vec<Uncovered>>,
}

/// How many there are of each kind.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Counts {
    pub chapters: usize,
    pub groups: usize,
    pub devices: usize,
    pub cylinders: usize,
    pub connections: usize,
    pub policies: usize,
    pub targets: usize,
    pub procedures: usize,
    /// Of all procedures together.
    pub steps: usize,
    pub hazards: usize,
    pub cards: usize,
}

impl Counts {
    /// Each with its word, in the order in which they are told.
    pub fn words(&self) -> Vec<String> {
        vec![
            counted(self.chapters, "chapter", "chapters"),
            counted(self.groups, "group", "groups"),
            counted(self.devices, "device", "devices"),
            counted(self.cylinders, "cylinder", "cylinders"),
            counted(self.connections, "connection", "connections"),
            counted(self.policies, "policy", "policies"),
            counted(self.targets, "target", "targets"),
            counted(self.procedures, "procedure", "procedures"),
            counted(self.steps, "step", "steps"),
            counted(self.hazards, "hazard", "hazards"),
            counted(self.cards, "card", "cards"),
        ]
    }
}

/// A number, a hazard or an `after` that no worked case would notice changing.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Uncovered {
    pub file: String,
    #[schemars(range(min = 1))]
    pub line: usize,
    /// In Unicode code points, from 1.
    #[schemars(range(min = 1))]
    pub column: usize,
    pub what: String,
}
