//! Delivery devices.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        written::{self, Measure},
        yaml::{Entry, Node},
    },
    Raw, Scope, rule,
};
use crate::book::{Device, GroupFlow, GroupId, List};
use crate::quantity::{Flow, Limit, Percent, Range};

const KEYS: Keys = Keys {
    of: "device",
    required: &[
        "id",
        "name",
        "flow",
        "usual",
        "oxygen",
        "fits",
        "reservoir",
        "chosen-when",
        "unsafe-when",
        "too-low",
        "too-high",
    ],
    optional: &[
        "also",
        "air-for",
        "ventilates",
        "oxygen-by-flow",
        "flow-for",
        "usual-for",
        "entrains",
    ],
};

/// Reads a device.
pub fn read(raw: &Raw, scope: &Scope<'_>, found: &mut Diagnostics) -> Option<Device> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "name", found);
    let also = fields.list("also", found, fields::texts);
    let flow: Option<Range<Flow>> = fields.read("flow", found, closed_range);
    let usual: Option<Flow> = fields.read("usual", found, fields::quantity);
    let oxygen = fields.read("oxygen", found, fraction_range);
    let oxygen_by_flow = fields.list("oxygen-by-flow", found, |node, found| by_flow(node, flow, found));
    let fits = fields.read("fits", found, |node, found| {
        fields::each(node, found, |item, found| {
            scope.names.groups.reference(item, found, GroupId)
        })
    });
    let group_flows = group_flows(&fields, scope, fits.as_ref(), flow, usual, found);
    let air_for = fields.list("air-for", found, |node, found| {
        fields::each(node, found, |item, found| {
            scope.names.groups.reference(item, found, GroupId)
        })
    });
    let ventilates = fields.maybe("ventilates", found, fields::yes_or_no);
    let reservoir = fields.read("reservoir", found, fields::yes_or_no);
    let entrains = fields.maybe("entrains", found, |node, found| {
        fields::written_as(node, found, written::ratio)
    });
    let chosen_when = fields.read("chosen-when", found, fields::text);
    let unsafe_when = fields.read("unsafe-when", found, fields::texts);
    let too_low = fields.read("too-low", found, fields::text);
    let too_high = fields.read("too-high", found, fields::text);
    if let (Some(flow), Some(usual), Some(node)) = (flow, usual, fields.get("usual")) {
        inside(node, "usual flow", usual, flow, found);
    }
    Some(Device {
        rule: rule?,
        also: also?,
        flow: flow?,
        usual: usual?,
        oxygen: oxygen?,
        oxygen_by_flow: oxygen_by_flow?,
        fits: fits?,
        group_flows: group_flows?,
        air_for: air_for?,
        ventilates: ventilates?.unwrap_or(false),
        reservoir: reservoir?,
        entrains: entrains?,
        chosen_when: chosen_when?,
        unsafe_when: unsafe_when?,
        too_low: too_low?,
        too_high: too_high?,
    })
}

/// A range with both ends: a device without a greatest flow could never be checked.
fn closed_range<Q: Measure>(node: &Node, found: &mut Diagnostics) -> Option<Range<Q>> {
    let range: Range<Q> = fields::range(node, found)?;
    if matches!((range.low, range.high), (Limit::Included(_), Limit::Included(_))) {
        return Some(range);
    }
    found
        .error(
            "open-range",
            node.span,
            "expected a range with a least and a greatest value",
        )
        .hint("write `LOW to HIGH UNIT`");
    None
}

fn fraction_range(node: &Node, found: &mut Diagnostics) -> Option<Range<Percent>> {
    let range: Range<Percent> = closed_range(node, found)?;
    let most = range.high.value().map_or(0.0, Percent::as_percent);
    let least = range.low.value().map_or(0.0, Percent::as_percent);
    if most <= 100.0 && least >= 21.0 {
        return Some(range);
    }
    found
        .error(
            "not-a-fraction",
            node.span,
            format!("expected an oxygen fraction from 21 to 100 %, found {range}"),
        )
        .hint("air itself holds 21 %");
    None
}

fn by_flow(node: &Node, flow: Option<Range<Flow>>, found: &mut Diagnostics) -> Option<List<(Flow, Percent)>> {
    let entries = fields::pairs(node, found)?;
    let mut rows: Vec<(Flow, Percent)> = Vec::new();
    for entry in entries {
        let key = key_node(entry);
        let at: Option<Flow> = fields::quantity(&key, found);
        let share: Option<Percent> = fields::quantity(&entry.value, found);
        if let (Some(at), Some(range)) = (at, flow) {
            inside(&key, "flow", at, range, found);
        }
        if let (Some(at), Some((last, _))) = (at, rows.last())
            && at <= *last
        {
            found
                .error(
                    "not-rising",
                    key.span,
                    format!("expected a flow above {last}, found {at}"),
                )
                .hint("list flows from low to high");
        }
        if let (Some(at), Some(share)) = (at, share) {
            rows.push((at, share));
        }
    }
    (rows.len() == entries.len()).then(|| List::from(rows))
}

fn group_flows(
    fields: &Fields<'_>,
    scope: &Scope<'_>,
    fits: Option<&List<GroupId>>,
    general: Option<Range<Flow>>,
    usual: Option<Flow>,
    found: &mut Diagnostics,
) -> Option<List<GroupFlow>> {
    let group = |entry: &Entry, found: &mut Diagnostics| {
        let group = scope
            .names
            .groups
            .resolve(&entry.key, entry.key_span, found, GroupId)?;
        if fits.is_some_and(|fits| !fits.contains(&group)) {
            found
                .error(
                    "group-not-fitted",
                    entry.key_span,
                    format!("expected a group named in `fits`, found `{}`", entry.key),
                )
                .hint(format!("add `{}` to `fits`, or take it out here", entry.key));
        }
        Some(group)
    };
    let entries = |key: &str, found: &mut Diagnostics| match fields.get(key) {
        None => Some(&[][..]),
        Some(node) => fields::pairs(node, found),
    };
    let mut limits: Vec<(GroupId, Range<Flow>)> = Vec::new();
    let mut usuals: Vec<(GroupId, Flow)> = Vec::new();
    let mut misread: Vec<GroupId> = Vec::new();
    let mut all_read = true;
    for entry in entries("flow-for", found)? {
        let named = group(entry, found);
        match closed_range(&entry.value, found) {
            Some(range) => limits.extend(named.map(|named| (named, range))),
            None => {
                all_read = false;
                misread.extend(named);
            }
        }
    }
    for entry in entries("usual-for", found)? {
        let named = group(entry, found);
        let flow = fields::quantity(&entry.value, found);
        all_read &= flow.is_some();
        usuals.extend(named.zip(flow));
    }
    let mut groups: Vec<GroupId> = limits
        .iter()
        .map(|(group, _)| *group)
        .chain(usuals.iter().map(|(group, _)| *group))
        .collect();
    groups.sort_unstable();
    groups.dedup();
    let of = |group| limits.iter().find(|(named, _)| *named == group);
    let usual_of = |group| usuals.iter().find(|(named, _)| *named == group);
    let mut flows = Vec::new();
    for group in groups {
        let flow = of(group).map(|(_, range)| *range).or(general)?;
        let usual = usual_of(group).map(|(_, flow)| *flow).or(usual)?;
        let node = fields.get("usual-for").or_else(|| fields.get("flow-for"))?;
        // Against a range that can't be read nothing is judged, and the device's own isn't meant.
        if !misread.contains(&group) {
            inside(node, "usual flow of the group", usual, flow, found);
        }
        flows.push(GroupFlow { group, flow, usual });
    }
    // Nothing is judged by a device of which a part could not be read.
    all_read.then(|| List::from(flows))
}

/// A mapping's key as a node, for values written as keys.
fn key_node(entry: &Entry) -> Node {
    Node {
        span: entry.key_span,
        value: super::Value::Text {
            text: entry.key.clone(),
            verbatim: Some(entry.key_span.start),
        },
    }
}

fn inside(node: &Node, what: &str, flow: Flow, range: Range<Flow>, found: &mut Diagnostics) {
    if !range.holds(flow) {
        found
            .error(
                "outside-flow-range",
                node.span,
                format!("expected a {what} within {range}, found {flow}"),
            )
            .hint("change this flow, or the range");
    }
}
