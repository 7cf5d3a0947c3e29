//! Saturation targets.

use super::{ConditionId, DeviceFlow, GroupId, List, Rule, Text};
use crate::quantity::{Percent, Range, Time};

/// A condition that changes a patient's target.
#[derive(Clone, Debug, PartialEq)]
pub struct Condition {
    /// The name other rules use.
    pub id: Text,
    /// The name people use.
    pub name: Text,
}

/// A saturation target for a group or condition.
#[derive(Clone, Debug, PartialEq)]
pub struct Target {
    /// Name, place and reason.
    pub rule: Rule,
    /// The groups it is for.
    pub groups: List<GroupId>,
    /// The condition it is for; none for the group's general target.
    pub condition: Option<ConditionId>,
    /// Conditions whose targets give way to this one.
    pub outranks: List<ConditionId>,
    /// The time since birth from which it holds.
    pub minute_of_life: Option<Time>,
    /// What saturation is aimed at.
    pub saturation: Saturation,
    /// The device and flow to start with.
    pub start: DeviceFlow,
    /// What to start with instead when the saturation is very low.
    pub urgent: Option<Urgent>,
    /// Devices and flows from least to most oxygen.
    pub ladder: List<DeviceFlow>,
    /// When and how to give more.
    pub step_up: Text,
    /// When and how to give less.
    pub step_down: Text,
    /// Look again within this time.
    pub recheck: Time,
}

/// What saturation is aimed at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Saturation {
    /// A range of SpO₂.
    Range(Range<Percent>),
    /// The reading can't be trusted and doesn't guide treatment.
    NotReliable,
}

/// A start for the very ill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Urgent {
    /// Below this saturation.
    pub below: Percent,
    /// Start with this.
    pub start: DeviceFlow,
}
