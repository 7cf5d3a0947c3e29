//! The whole book.

use super::{
    Agency, Card, CardId, Condition, ConditionId, Connection, ConnectionId, Cylinder, CylinderId,
    CylinderLimits, Device, DeviceId, Group, GroupId, Hazard, HazardId, List, Policies, Policy, PolicyId,
    Procedure, ProcedureId, Target, TargetId, Text,
};
use crate::quantity::{Gauge, Pressure};

/// A rulebook: every rule, in the order of the book.
#[derive(Clone, Debug, PartialEq)]
pub struct Rulebook {
    /// Who publishes it, and which edition it is.
    pub agency: Agency,
    /// SHA-256 of the chapters, in hexadecimal.
    pub digest: Text,
    /// The digest's short form, printed on cards: two groups of four letters and digits.
    pub short_digest: Text,
    /// Patient groups.
    pub groups: List<Group>,
    /// Delivery devices.
    pub devices: List<Device>,
    /// Cylinder sizes.
    pub cylinders: List<Cylinder>,
    /// Connections.
    pub connections: List<Connection>,
    /// Policies.
    pub policies: Policies,
    /// Conditions named by the targets.
    pub conditions: List<Condition>,
    /// Saturation targets.
    pub targets: List<Target>,
    /// Procedures.
    pub procedures: List<Procedure>,
    /// Hazards.
    pub hazards: List<Hazard>,
    /// Cards.
    pub cards: List<Card>,
}

macro_rules! tables {
    ($($list:ident $item:ident $id:ident $get:ident $find:ident $what:literal,)+) => {
        impl Rulebook {$(
            #[doc = concat!("The ", $what, " with this identifier; `None` when the identifier is another book's.")]
            #[must_use]
            pub fn $get(&self, id: $id) -> Option<&$item> {
                self.$list.get(id.index())
            }

            #[doc = concat!("Finds a ", $what, " by the name other rules use.")]
            #[must_use]
            pub fn $find(&self, id: &str) -> Option<$id> {
                let index = self.$list.iter().position(|item| &*item.rule.id == id)?;
                u16::try_from(index).ok().map($id)
            }
        )+}
    };
}

tables! {
    groups Group GroupId group find_group "group",
    devices Device DeviceId device find_device "device",
    cylinders Cylinder CylinderId cylinder find_cylinder "cylinder",
    connections Connection ConnectionId connection find_connection "connection",
    targets Target TargetId target find_target "target",
    procedures Procedure ProcedureId procedure find_procedure "procedure",
    hazards Hazard HazardId hazard find_hazard "hazard",
    cards Card CardId card find_card "card",
}

impl Rulebook {
    /// The highest reading to which a size may be filled: its own limit, or the policy's, of its service pressure.
    #[must_use]
    pub fn filled_at_most(&self, cylinder: &Cylinder) -> Pressure<Gauge> {
        CylinderLimits::from(cylinder).filled_at_most(self.policies.fill_limit)
    }

    /// The policy with this identifier; `None` when the identifier is another book's.
    #[must_use]
    pub fn policy(&self, id: PolicyId) -> Option<&Policy> {
        self.policies.all.get(id.index())
    }

    /// The condition with this identifier; `None` when the identifier is another book's.
    #[must_use]
    pub fn condition(&self, id: ConditionId) -> Option<&Condition> {
        self.conditions.get(id.index())
    }

    /// Finds a condition by the name other rules use.
    #[must_use]
    pub fn find_condition(&self, id: &str) -> Option<ConditionId> {
        let index = self.conditions.iter().position(|item| &*item.id == id)?;
        u16::try_from(index).ok().map(ConditionId)
    }
}
