//! Devices at a glance.

use super::{Body, Maker};
use crate::book::{Device, DeviceId, GroupId, Language};
use crate::quantity::{Flow, Number, Range};

impl Maker<'_> {
    /// A row for the groups that share the general limits, then one for each group with limits of its own.
    pub(super) fn device_table(&self, devices: &[DeviceId]) -> Body {
        let row = |device: &Device, flow: Range<Flow>, usual: Flow, groups: &[GroupId]| {
            vec![
                device.rule.name.to_string(),
                self.flow_range(flow),
                Number(usual.as_litres_per_minute()).to_string(),
                self.numbers(device.oxygen, |share| share.as_percent()),
                self.group_names(groups),
            ]
        };
        let rows_of = |device: &Device| {
            let own = |group: &GroupId| device.group_flows.iter().any(|limits| limits.group == *group);
            let general: Vec<GroupId> = device.fits.iter().copied().filter(|group| !own(group)).collect();
            let first = (!general.is_empty()).then(|| row(device, device.flow, device.usual, &general));
            // In the order in which the book names the groups that the device fits.
            let mut own: Vec<_> = device.group_flows.iter().collect();
            own.sort_by_key(|limits| device.fits.iter().position(|group| *group == limits.group));
            let others = own
                .into_iter()
                .map(|limits| row(device, limits.flow, limits.usual, &[limits.group]));
            first.into_iter().chain(others).collect::<Vec<_>>()
        };
        Body::Devices {
            columns: ["device", "flow", "usual", "oxygen-about", "for"]
                .map(|key| self.messages.get(key))
                .to_vec(),
            units: ["", "L/min", "L/min", "%", ""].map(str::to_owned).to_vec(),
            rows: devices
                .iter()
                .filter_map(|id| self.book.device(*id))
                .flat_map(rows_of)
                .collect(),
        }
    }

    fn group_names(&self, groups: &[GroupId]) -> String {
        let names: Vec<String> = groups
            .iter()
            .filter_map(|id| self.book.group(*id))
            // In German a noun keeps its capital wherever it stands.
            .map(|group| match self.book.agency.language {
                Language::English => group.rule.name.to_lowercase(),
                Language::German => group.rule.name.to_string(),
            })
            .collect();
        names.join(", ")
    }
}
