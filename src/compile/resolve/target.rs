//! Saturation targets, and the conditions they name.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        names::Names,
        quoted::{OwnTarget, Part, Quotable},
        suggest::nearest,
        written,
        yaml::{Entry, Node, Value},
    },
    Raw, Scope, rule,
};
use crate::book::{
    Condition, ConditionId, Device, DeviceFlow, DeviceId, GroupId, Kind, Saturation, Target, Text, Urgent,
};
use crate::guard::MAX_CONDITIONS;
use crate::quantity::{Flow, Limit, Percent, Range, Time};

const KEYS: Keys = Keys {
    of: "target",
    required: &[
        "id",
        "name",
        "groups",
        "saturation",
        "start",
        "ladder",
        "step-up",
        "step-down",
        "recheck",
    ],
    optional: &[
        "condition",
        "condition-name",
        "outranks",
        "minute-of-life",
        "urgent-below",
        "urgent-start",
    ],
};

/// Collects the conditions that targets name.
pub fn conditions(raws: &[Raw], names: &mut Names, found: &mut Diagnostics) -> Vec<Condition> {
    let mut conditions: Vec<Condition> = Vec::new();
    for raw in raws.iter().filter(|raw| raw.kind == Kind::Target) {
        let Value::Mapping(entries) = &raw.node.value else {
            continue;
        };
        let get = |key: &str| entries.iter().find(|entry| entry.key == key);
        let is_misspelled = |wanted: &str| {
            let known = || KEYS.required.iter().chain(KEYS.optional).copied();
            let mut unknown = entries
                .iter()
                .filter(|entry| !known().any(|key| key == entry.key));
            unknown.any(|entry| nearest(&entry.key, known()) == Some(wanted))
        };
        let Some(Entry { value: node, .. }) = get("condition") else {
            if is_misspelled("condition") {
                names.conditions.leave_unread();
            } else if let Some(name) = get("condition-name") {
                found
                    .error(
                        "name-without-condition",
                        name.key_span,
                        "found a `condition-name` without a `condition`",
                    )
                    .hint("add `condition: …`, or take the name out");
            }
            continue;
        };
        let Some(id) = fields::id(node, found) else {
            if super::meant_id(node).is_none() {
                names.conditions.leave_unread();
            }
            continue;
        };
        let named = get("condition-name").and_then(|entry| fields::text(&entry.value, found));
        match names.conditions.index(id) {
            Some(index) => {
                let known = conditions.get(usize::from(index));
                if let (Some(named), Some(known)) = (named, known)
                    && named != known.name
                {
                    let first = names.conditions.span(usize::from(index));
                    let error = found.error(
                        "condition-renamed",
                        node.span,
                        format!("expected the name `{}` for `{id}`, found `{named}`", known.name),
                    );
                    if let Some(first) = first {
                        error.label(first, "first named here");
                    }
                    error.hint("name a condition once, or the same each time");
                }
            }
            None => {
                // The one that names it may be the one that can't be read.
                let may_be_named = names.conditions.has_unread() || is_misspelled("condition-name");
                if named.is_none() && get("condition-name").is_none() && !may_be_named {
                    found
                        .error(
                            "condition-not-named",
                            node.span,
                            format!("expected a name for the new condition `{id}`"),
                        )
                        .hint("add `condition-name: …` below it; or is the condition misspelled?");
                }
                super::super::guard::refuse_reserved(id, node.span, found);
                if conditions.len() == MAX_CONDITIONS {
                    let message =
                        format!("expected at most {MAX_CONDITIONS} conditions in a book, found more");
                    found
                        .error("too-many-conditions", node.span, message)
                        .hint("name only conditions that change a target or that a hazard asks for");
                }
                if names.conditions.add(id, node.span, found) {
                    conditions.push(Condition {
                        id: Text::from(id.to_owned()),
                        name: named.unwrap_or_else(|| Text::from(id.to_owned())),
                    });
                }
            }
        }
    }
    conditions
}

/// Reads a target.
pub fn read(
    raw: &Raw,
    scope: &Scope<'_>,
    quotable: Option<&Quotable<'_>>,
    found: &mut Diagnostics,
) -> Option<Target> {
    let devices = quotable.map(|quotable| quotable.devices);
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "name", found);
    let groups = fields.read("groups", found, |node, found| {
        fields::each(node, found, |item, found| {
            scope.names.groups.reference(item, found, GroupId)
        })
    });
    let condition = fields.maybe("condition", found, |node, _| match &node.value {
        Value::Text { text, .. } => scope.names.conditions.index(text).map(ConditionId),
        _ => None,
    });
    let outranks = fields.list("outranks", found, |node, found| {
        fields::each(node, found, |item, found| {
            scope.names.conditions.reference(item, found, ConditionId)
        })
    });
    if let Some(node) = fields.get("outranks")
        && !fields.has("condition")
    {
        found
            .error(
                "outranks-without-condition",
                node.span,
                "found `outranks` on a target without a condition",
            )
            .hint("a general target gives way to every condition's: take it out, or add `condition: …`");
    }
    let minute_of_life = fields.maybe("minute-of-life", found, fields::quantity);
    let saturation = fields.read("saturation", found, saturation);
    let rung =
        |node: &Node, found: &mut Diagnostics| device_flow(node, scope, devices, groups.as_deref(), found);
    let start = fields.read("start", found, rung);
    let ladder = fields.read("ladder", found, |node, found| fields::each(node, found, rung));
    let urgent_below: Option<Option<Percent>> = fields.maybe("urgent-below", found, fields::quantity);
    let urgent_start = fields.maybe("urgent-start", found, rung);
    let recheck = fields.read("recheck", found, fields::quantity);
    let part = |key: &str, value: Option<String>| match value {
        Some(value) => Part::Value(value),
        None if fields.has(key) => Part::Misread,
        None => Part::Absent,
    };
    let range = match saturation {
        Some(Saturation::Range(range)) => Some(range),
        _ => None,
    };
    let end = |limit: Limit<Percent>| limit.value().map(|share| share.to_string());
    let of_range = |value: Option<String>| match saturation {
        // The range is open at this end, or nothing is aimed at.
        Some(_) if value.is_none() => Part::Absent,
        _ => part("saturation", value),
    };
    let own = OwnTarget {
        low: of_range(range.and_then(|range| end(range.low))),
        high: of_range(range.and_then(|range| end(range.high))),
        recheck: part("recheck", recheck.map(|time: Time| time.to_string())),
        urgent_below: part(
            "urgent-below",
            urgent_below.flatten().map(|share| share.to_string()),
        ),
    };
    let quotable = quotable.map(|quotable| Quotable {
        target: Some(&own),
        ..*quotable
    });
    let quoting = |node, found: &mut Diagnostics| fields::quoting(node, quotable.as_ref(), found);
    let step_up = fields.read("step-up", found, quoting);
    let step_down = fields.read("step-down", found, quoting);
    for (one, other) in [("urgent-below", "urgent-start"), ("urgent-start", "urgent-below")] {
        if let Some(node) = fields.get(one)
            && !fields.has(other)
        {
            found
                .error(
                    "half-a-pair",
                    node.span,
                    format!("found `{one}` without `{other}`"),
                )
                .hint(format!("add `{other}: …`"));
        }
    }
    if let (Some(start), Some(ladder), Some(node)) = (start, &ladder, fields.get("start"))
        && !ladder.contains(&start)
    {
        found
            .error(
                "start-not-on-ladder",
                node.span,
                "expected the start to be one of the `ladder`",
            )
            .hint("add it to the ladder at its place, or start with one that is there");
    }
    if let (Some(Some(below)), Some(Saturation::Range(range)), Some(node)) =
        (urgent_below, saturation, fields.get("urgent-below"))
        && range.low.value().is_some_and(|low| below > low)
    {
        let error = found.error(
            "urgent-inside-target",
            node.span,
            format!("expected `urgent-below` to be at most the low end of {range}, found {below}"),
        );
        if let Some(other) = fields.get("saturation") {
            error.label(other.span, "the target is here");
        }
        error.hint("a reading inside the target is not urgent: check both numbers");
    }
    let urgent = urgent_below?
        .zip(urgent_start?)
        .map(|(below, start)| Urgent { below, start });
    Some(Target {
        rule: rule?,
        groups: groups?,
        condition: condition?,
        outranks: outranks?,
        minute_of_life: minute_of_life?,
        saturation: saturation?,
        start: start?,
        urgent,
        ladder: ladder?,
        step_up: step_up?,
        step_down: step_down?,
        recheck: recheck?,
    })
}

fn saturation(node: &Node, found: &mut Diagnostics) -> Option<Saturation> {
    if fields::plain(node, found)? == "not-reliable" {
        return Some(Saturation::NotReliable);
    }
    let range: Range<Percent> = fields::range(node, found)?;
    let most = range.high.value().or(range.low.value());
    if most.is_some_and(|most| most.as_percent() > 100.0) {
        found
            .error(
                "out-of-bounds",
                node.span,
                format!("expected a saturation of at most 100 %, found {range}"),
            )
            .hint("check the number: no oximeter shows more than 100 %");
        return None;
    }
    Some(Saturation::Range(range))
}

/// A device with its flow.
const EXAMPLE: &str = "nasal-cannula at 2 L/min";

/// Reads `nasal-cannula at 2 L/min`, within the device's limits for each of the groups.
fn device_flow(
    node: &Node,
    scope: &Scope<'_>,
    devices: Option<&[Device]>,
    groups: Option<&[GroupId]>,
    found: &mut Diagnostics,
) -> Option<DeviceFlow> {
    let text = fields::plain(node, found)?;
    let (name, flow, start) = match written::split_at(text, EXAMPLE) {
        Ok(parts) => parts,
        Err(mistake) => {
            let mistake = mistake.hint(format!("write the device's id, `at` and its flow: `{EXAMPLE}`"));
            fields::report(node, mistake, found);
            return None;
        }
    };
    let flow: Option<Flow> = match written::one(flow) {
        Ok(flow) => Some(flow),
        Err(mistake) => {
            fields::report(node, mistake.shifted(start), found);
            None
        }
    };
    let at = fields::place_in(node, &(0..name.len()));
    let device = scope.names.devices.resolve(name.trim(), at, found, DeviceId);
    let (device, flow) = (device?, flow?);
    if let Some(known) = devices
        .unwrap_or(&[])
        .iter()
        .find(|device| &*device.rule.id == name.trim())
    {
        for &group in groups.unwrap_or(&[]) {
            let group_name = scope.names.groups.names().nth(group.index()).unwrap_or("");
            if !known.fits(group) {
                found
                    .error(
                        "device-does-not-fit",
                        node.span,
                        format!(
                            "expected a device that fits the group `{group_name}`, found `{}`",
                            known.rule.id
                        ),
                    )
                    .hint("choose another device, or add the group to the device's `fits`");
            } else if !known.flow_for(group).holds(flow) {
                found
                    .error(
                        "outside-flow-range",
                        node.span,
                        format!(
                            "expected a flow within {} for the group `{group_name}`, found {flow}",
                            known.flow_for(group)
                        ),
                    )
                    .hint("change this flow, or the device's range");
            }
        }
    }
    Some(DeviceFlow { device, flow })
}
