//! The typed rulebook: what the chapters say, with every name, unit and number resolved.
//!
//! The tables are plain data that can be `const`, so the rulebook compiled into a program costs nothing at run time
//! and one read from a folder has the same type. Nothing in this room knows Markdown or YAML.

mod action;
mod agency;
mod card;
mod cited;
mod connection;
mod cylinder;
mod date;
mod device;
mod group;
mod guard;
mod hazard;
mod id;
mod policy;
mod procedure;
mod rule;
mod rulebook;
mod rules;
mod severity;
#[doc(hidden)]
pub mod tables;
mod target;
mod text;

pub use action::Action;
pub use agency::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS, Agency, Language, OfficePaper};
pub use card::{Card, CardSize, Layout};
pub(crate) use cited::Words;
pub use cited::{Cited, CitedPlace};
pub use connection::Connection;
pub use cylinder::{Contents, Cylinder, CylinderUse};
pub use date::{Date, InvalidDate};
pub use device::{Device, DeviceFlow, GroupFlow};
pub use group::Group;
pub use guard::{Comparison, Fact, Guard, GuardOp, MAX_GUARD_DEPTH, Measure, Operand};
pub use hazard::Hazard;
pub use id::{
    CardId, ConditionId, ConnectionId, CylinderId, DeviceId, GroupId, HazardId, PolicyId, ProcedureId,
    StepId, TargetId,
};
pub use policy::{Policies, Policy, Value};
pub use procedure::{Procedure, Step};
pub use rule::{Kind, Place, Rule};
pub use rulebook::Rulebook;
pub use rules::{CheckedPolicy, CylinderLimits, DeviceRules, Limits, Rules, Subject, TargetRules};
pub use severity::Severity;
pub use tables::Tables;
pub use target::{Condition, Saturation, Target, Urgent};
pub use text::{List, Text};
