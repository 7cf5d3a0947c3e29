//! Devices.

use super::{
    super::change::{Changes, Direction, Sense},
    each,
    ends::{Inside, range},
    ids, strings,
};
use crate::book::{Device, GroupId, Kind, Rulebook};

pub fn changes(changes: &mut Changes<'_>) {
    each(
        changes,
        Kind::Device,
        |book| &book.devices,
        |device| &device.rule,
        |_, device| (format!("{}, {}", device.rule.name, device.flow), Direction::Other),
        device,
    );
}

fn device(changes: &mut Changes<'_>, old: &Device, new: &Device) {
    let (old_book, new_book) = (&changes.old.book, &changes.new.book);
    range(
        changes,
        ["least flow", "most flow"],
        old.flow,
        new.flow,
        Inside::Right,
    );
    changes.value("usual flow", &old.usual, &new.usual, Sense::Neither);
    let own = |device: &Device, group: GroupId| device.group_flows.iter().any(|flow| flow.group == group);
    for group in &new_book.groups {
        let (Some(before), Some(now)) = (
            old_book.find_group(&group.rule.id),
            new_book.find_group(&group.rule.id),
        ) else {
            continue;
        };
        if !(old.fits(before) && new.fits(now)) || !(own(old, before) || own(new, now)) {
            continue;
        }
        let name = &group.rule.id;
        let (was, is) = (old.flow_for(before), new.flow_for(now));
        let ends = [format!("least flow for {name}"), format!("most flow for {name}")];
        // A group that has the general limits and keeps them was told with them.
        if own(old, before) == own(new, now) || was != old.flow || is != new.flow {
            range(changes, [&ends[0], &ends[1]], was, is, Inside::Right);
            changes.value(
                format!("usual flow for {name}"),
                &old.usual_for(before),
                &new.usual_for(now),
                Sense::Neither,
            );
        }
    }
    let groups =
        |book: &Rulebook, list: &[GroupId]| ids(list, |id| Some(book.group(id)?.rule.id.to_string()));
    changes.set(
        "group it fits",
        &groups(old_book, &old.fits),
        &groups(new_book, &new.fits),
        Sense::LessIsStricter,
    );
    changes.set(
        "group for whom no flow is right",
        &groups(old_book, &old.air_for),
        &groups(new_book, &new.air_for),
        Sense::LessIsStricter,
    );
    range(
        changes,
        ["least oxygen share", "most oxygen share"],
        old.oxygen,
        new.oxygen,
        Inside::Neither,
    );
    let by_flow = |device: &Device| -> Vec<String> {
        let rows = device.oxygen_by_flow.iter();
        rows.map(|(flow, share)| format!("{share} at {flow}")).collect()
    };
    changes.set("oxygen share", &by_flow(old), &by_flow(new), Sense::Neither);
    let ratio = |device: &Device| {
        device
            .entrains
            .map_or_else(String::new, |ratio| ratio.to_string())
    };
    changes.plain("air drawn in", &ratio(old), &ratio(new));
    changes.yes_or_no("reservoir", old.reservoir, new.reservoir, Sense::Neither);
    changes.yes_or_no("ventilates", old.ventilates, new.ventilates, Sense::Neither);
    changes.set(
        "other name",
        &strings(&old.also),
        &strings(&new.also),
        Sense::Neither,
    );
    changes.text(
        "when it is chosen",
        &["chosen-when"],
        &old.chosen_when,
        &new.chosen_when,
    );
    changes.texts(
        "what makes it unsafe",
        &["unsafe-when"],
        &old.unsafe_when,
        &new.unsafe_when,
    );
    changes.text("what is wrong below", &["too-low"], &old.too_low, &new.too_low);
    changes.text("what is wrong above", &["too-high"], &old.too_high, &new.too_high);
}
