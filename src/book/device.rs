//! Delivery devices: cannulas, masks, bags.

use super::{DeviceId, GroupId, List, Rule, Text};
use crate::quantity::{Flow, Percent, Range, Ratio};

/// A delivery device and its limits.
#[derive(Clone, Debug, PartialEq)]
pub struct Device {
    /// Name, place and reason.
    pub rule: Rule,
    /// Other names in use.
    pub also: List<Text>,
    /// The flows at which it may be used.
    pub flow: Range<Flow>,
    /// The flow usually set.
    pub usual: Flow,
    /// The oxygen fraction breathed, approximately.
    pub oxygen: Range<Percent>,
    /// The approximate oxygen fraction at named flows.
    pub oxygen_by_flow: List<(Flow, Percent)>,
    /// The groups it fits.
    pub fits: List<GroupId>,
    /// Limits of single groups, where they differ.
    pub group_flows: List<GroupFlow>,
    /// The groups for whom no flow at all is right: the device then gives air.
    pub air_for: List<GroupId>,
    /// Whether the patient is ventilated with it by hand: then no reading alone is a reason to change to a device that
    /// leaves the patient to breathe.
    pub ventilates: bool,
    /// Whether it has a reservoir bag, to be filled before use.
    pub reservoir: bool,
    /// Parts of air drawn in by one part of oxygen, for a mask that entrains.
    pub entrains: Option<Ratio>,
    /// When it is chosen.
    pub chosen_when: Text,
    /// What makes it unsafe.
    pub unsafe_when: List<Text>,
    /// What goes wrong below its least flow.
    pub too_low: Text,
    /// What goes wrong above its greatest flow.
    pub too_high: Text,
}

/// A device's limits for one group.
#[derive(Clone, Debug, PartialEq)]
pub struct GroupFlow {
    /// The group.
    pub group: GroupId,
    /// The flows at which it may be used for the group.
    pub flow: Range<Flow>,
    /// The flow usually set for the group.
    pub usual: Flow,
}

/// A device set to a flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeviceFlow {
    /// The device.
    pub device: DeviceId,
    /// Its flow.
    pub flow: Flow,
}

impl Device {
    /// Whether it fits a group.
    #[must_use]
    pub fn fits(&self, group: GroupId) -> bool {
        self.fits.contains(&group)
    }

    /// The flow limits for a group; the general ones where the book names no others.
    #[must_use]
    pub fn flow_for(&self, group: GroupId) -> Range<Flow> {
        self.group_flow(group).map_or(self.flow, |limits| limits.flow)
    }

    /// The flow usually set for a group.
    #[must_use]
    pub fn usual_for(&self, group: GroupId) -> Flow {
        self.group_flow(group).map_or(self.usual, |limits| limits.usual)
    }

    fn group_flow(&self, group: GroupId) -> Option<&GroupFlow> {
        self.group_flows.iter().find(|limits| limits.group == group)
    }
}
