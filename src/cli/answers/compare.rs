//! The answer of `compare`.

use schemars::JsonSchema;
use serde::Serialize;

use crate::cards::reprint::Reprint;
use crate::compare::Comparison;

/// What changed from one edition to another; the edition told with it is the new one.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Compare {
    /// Nothing changed.
    pub ok: bool,
    #[serde(flatten)]
    pub comparison: Comparison,
    /// The cards and sheets of either edition.
    pub cards: Vec<Reprint>,
}
