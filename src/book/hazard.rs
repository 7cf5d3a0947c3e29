//! Hazards: states that must never be.

use super::{Guard, Rule, Severity, Text};

/// A state of equipment and patient that must never be.
#[derive(Clone, Debug, PartialEq)]
pub struct Hazard {
    /// Name, place and reason.
    pub rule: Rule,
    /// When the hazard is there.
    pub never: Guard,
    /// How bad it is.
    pub severity: Severity,
    /// What is wrong.
    pub say: Text,
    /// What to do.
    pub remedy: Text,
}
