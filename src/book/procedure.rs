//! Procedures: steps in a partial order.

use super::{Action, DeviceId, Fact, HazardId, List, ProcedureId, Rule, StepId, Text};

/// A procedure.
#[derive(Clone, Debug, PartialEq)]
pub struct Procedure {
    /// Name, place and reason.
    pub rule: Rule,
    /// What it is for.
    pub purpose: Text,
    /// Who may do it.
    pub who: Text,
    /// When not to.
    pub not_when: List<Text>,
    /// The devices it is for; all of them where the list is empty.
    pub devices: List<DeviceId>,
    /// The procedures it may come after: it begins as they end.
    pub follows: List<ProcedureId>,
    /// What holds at the start when it comes after none; everything else is as put away.
    pub begins_with: List<(Fact, bool)>,
    /// Whether it ends with the cylinder closed and the regulator not pressurised.
    pub ends_safe: bool,
    /// The steps, in an order the partial order allows.
    pub steps: List<Step>,
}

/// One step.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The name other steps use.
    pub id: Text,
    /// What is done to the equipment or the patient.
    pub action: Action,
    /// The instruction.
    pub say: Text,
    /// The reason.
    pub why: Text,
    /// The steps that must be done before this one.
    pub after: List<StepId>,
    /// Whether leaving it out fails the procedure.
    pub critical: bool,
    /// The hazards that it is there to prevent.
    pub prevents: List<HazardId>,
    /// The line on which it stands in its chapter, counted from 1.
    pub line: u32,
}
