//! Pocket cards.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        names::Table,
        quoted::Quotable,
        written::Measure,
        yaml::Node,
    },
    Raw, Scope, rule,
};
use crate::book::{
    Card, CardSize, ConnectionId, CylinderId, DeviceId, HazardId, Layout, List, ProcedureId, TargetId,
};

const KEYS: Keys = Keys {
    of: "card",
    required: &["id", "title", "layout"],
    optional: &[
        "sizes",
        "devices",
        "targets",
        "cylinders",
        "connections",
        "pressures",
        "flows",
        "procedures",
        "hazards",
        "items",
        "notes",
    ],
};

/// The layouts: the keys each needs, and those it may have.
const LAYOUTS: [(&str, &[&str], &[&str]); 11] = [
    ("devices", &["sizes", "devices"], &[]),
    ("targets", &["sizes", "targets"], &[]),
    ("newborn", &["sizes", "targets"], &[]),
    ("durations", &["sizes", "cylinders", "pressures"], &["flows"]),
    ("cylinders", &["sizes", "cylinders", "connections"], &[]),
    ("steps", &["sizes", "procedures"], &[]),
    ("checklist", &["sizes", "items"], &[]),
    ("cautions", &["sizes", "hazards"], &[]),
    ("check-off", &["procedures"], &[]),
    ("log", &["cylinders", "items"], &[]),
    ("poster", &["procedures"], &[]),
];

/// Reads a card.
pub fn read(
    raw: &Raw,
    scope: &Scope<'_>,
    quotable: Option<&Quotable<'_>>,
    found: &mut Diagnostics,
) -> Option<Card> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "title", found);
    let layout = fields.read("layout", found, |node, found| {
        fields::word(
            node,
            found,
            "layout",
            &LAYOUTS.map(|(word, needed, allowed)| (word, (word, needed, allowed))),
        )
    });
    let sizes = fields.list("sizes", found, |node, found| {
        fields::each(node, found, |item, found| {
            fields::word(
                item,
                found,
                "size",
                &CardSize::ALL.map(|size| (size.label(), size)),
            )
        })
    });
    let mut quoting = |key| {
        fields.list(key, found, |node, found| {
            fields::each(node, found, |item, found| fields::quoting(item, quotable, found))
        })
    };
    let notes = quoting("notes");
    let items = quoting("items");
    let names = &scope.names;
    let devices = ids(&fields, "devices", &names.devices, DeviceId, found);
    let targets = ids(&fields, "targets", &names.targets, TargetId, found);
    let connections = ids(&fields, "connections", &names.connections, ConnectionId, found);
    let cylinders = ids(&fields, "cylinders", &names.cylinders, CylinderId, found);
    let procedures = ids(&fields, "procedures", &names.procedures, ProcedureId, found);
    let hazards = ids(&fields, "hazards", &names.hazards, HazardId, found);
    let pressures = fields.list("pressures", found, |node, found| {
        ordered(node, "high to low", |a, b| a > b, found)
    });
    let flows = fields.list("flows", found, |node, found| {
        ordered(node, "low to high", |a, b| a < b, found)
    });

    let (word, needed, allowed) = layout?;
    let own = ["id", "title", "layout", "notes"];
    for key in KEYS.optional.iter().filter(|key| !own.contains(key)) {
        match (needed.contains(key), fields.get(key)) {
            (true, None) if !fields.has(key) => {
                found
                    .error("missing-key", fields.span, format!("this card lacks `{key}`"))
                    .hint(format!("a card with the layout `{word}` needs it"));
            }
            (false, Some(node)) if !allowed.contains(key) => {
                found
                    .error(
                        "unused-key",
                        node.span,
                        format!("a card with the layout `{word}` shows no `{key}`"),
                    )
                    .hint("take it out, or change the layout");
            }
            _ => {}
        }
    }
    let layout = match word {
        "devices" => Layout::Devices { devices: devices? },
        "targets" => Layout::Targets { targets: targets? },
        "newborn" => Layout::Newborn { targets: targets? },
        "durations" => Layout::Durations {
            cylinders: cylinders?,
            pressures: pressures?,
            flows: flows?,
        },
        "cylinders" => Layout::Cylinders {
            cylinders: cylinders?,
            connections: connections?,
        },
        "steps" => Layout::Steps {
            procedures: procedures?,
        },
        "checklist" => Layout::Checklist { items: items? },
        "check-off" => Layout::CheckOff {
            procedures: procedures?,
        },
        "log" => Layout::Log {
            cylinders: cylinders?,
            items: items?,
        },
        "poster" => Layout::Poster {
            procedures: procedures?,
        },
        _ => Layout::Cautions { hazards: hazards? },
    };
    Some(Card {
        rule: rule?,
        layout,
        sizes: sizes?,
        notes: notes?,
    })
}

fn ids<Id: Clone>(
    fields: &Fields<'_>,
    key: &str,
    table: &Table,
    make: fn(u16) -> Id,
    found: &mut Diagnostics,
) -> Option<List<Id>> {
    fields.list(key, found, |node, found| {
        fields::each(node, found, |item, found| table.reference(item, found, make))
    })
}

/// A list of quantities in a strict order.
fn ordered<Q: Measure + core::fmt::Display>(
    node: &Node,
    order: &str,
    in_order: fn(Q, Q) -> bool,
    found: &mut Diagnostics,
) -> Option<List<Q>> {
    let list: List<Q> = fields::each(node, found, fields::quantity)?;
    let items = fields::items(node);
    for (pair, item) in list.windows(2).zip(items.iter().skip(1)) {
        if let &[first, second] = pair
            && !in_order(first, second)
        {
            found
                .error(
                    "not-in-order",
                    item.span,
                    format!("expected values from {order}, found {second} after {first}"),
                )
                .hint("put them in order, each once");
        }
    }
    Some(list)
}
