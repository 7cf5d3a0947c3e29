//! Cylinder sizes.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        written,
    },
    Raw, Scope, rule,
};
use crate::book::{Connection, ConnectionId, Contents, Cylinder, CylinderUse};
use crate::quantity::{Factor, Gauge, Pressure, Volume};

const KEYS: Keys = Keys {
    of: "cylinder",
    required: &[
        "id",
        "name",
        "series",
        "use",
        "water-capacity",
        "contents",
        "service-pressure",
        "factor",
        "connection",
    ],
    optional: &["also", "fill-limit"],
};

/// Reads a cylinder size.
pub fn read(
    raw: &Raw,
    scope: &Scope<'_>,
    connections: Option<&[Connection]>,
    found: &mut Diagnostics,
) -> Option<Cylinder> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "name", found);
    let also = fields.list("also", found, fields::texts);
    let series = fields.read("series", found, fields::text);
    let used = fields.read("use", found, |node, found| {
        fields::word(
            node,
            found,
            "word",
            &[
                ("portable", CylinderUse::Portable),
                ("vehicle", CylinderUse::Vehicle),
                ("either", CylinderUse::Either),
            ],
        )
    });
    let water_capacity: Option<Volume> = fields.read("water-capacity", found, fields::quantity);
    let contents = fields.read("contents", found, |node, found| {
        fields::written_as(node, found, |text| {
            let (volume, at, start) = written::split_at(text, "350 L at 2200 psi")?;
            Ok(Contents {
                volume: written::one(volume)?,
                at: written::one(at).map_err(|mistake| mistake.shifted(start))?,
            })
        })
    });
    let service_pressure: Option<Pressure<Gauge>> = fields.read("service-pressure", found, fields::quantity);
    let fill_limit = fields.maybe("fill-limit", found, fields::quantity);
    let factor: Option<Factor> = fields.read("factor", found, fields::quantity);
    let connection = fields.read("connection", found, |node, found| {
        let id = scope.names.connections.reference(node, found, ConnectionId)?;
        let named = scope.names.connections.names().nth(id.index());
        if let Some(connection) = connections
            .unwrap_or(&[])
            .iter()
            .find(|connection| Some(&*connection.rule.id) == named)
            && !connection.may_be_mated
        {
            found
                .error(
                    "connection-not-mated",
                    node.span,
                    format!(
                        "expected a connection that may be mated, found `{}`",
                        connection.rule.id
                    ),
                )
                .hint("name oxygen's connection");
        }
        Some(id)
    });
    for (key, value) in [
        ("water-capacity", water_capacity.map(Volume::as_litres)),
        ("service-pressure", service_pressure.map(Pressure::as_pascals)),
        ("factor", factor.map(|factor| factor.written().0)),
        ("contents", contents.map(|contents| contents.volume.as_litres())),
        ("contents", contents.map(|contents| contents.at.as_pascals())),
    ] {
        if value == Some(0.0)
            && let Some(node) = fields.get(key)
        {
            found
                .error(
                    "zero-size",
                    node.span,
                    format!("expected more than nothing for `{key}`, found 0"),
                )
                .hint("write what the maker states");
        }
    }
    if let (Some(contents), Some(factor), Some(node)) = (contents, factor, fields.get("factor")) {
        let (stated, counted) = (
            contents.volume.as_litres(),
            factor.contents(contents.at).as_litres(),
        );
        // Rounded factors lean low; one that counts more than the cylinder holds promises minutes that aren't there.
        if stated > 0.0 && !(0.9 * stated..=1.02 * stated).contains(&counted) {
            let error = found.error(
                "factor-and-contents-disagree",
                node.span,
                format!(
                    "expected a factor that gives about {stated:.0} L at {}, found one that gives {counted:.0} L",
                    contents.at
                ),
            );
            if let Some(other) = fields.get("contents") {
                error.label(other.span, "the contents are given here");
            }
            error.hint("the factor is the contents divided by their pressure, in its own unit; check both");
        }
    }
    if let (Some(contents), Some(water), Some(node)) =
        (contents, water_capacity, fields.get("water-capacity"))
    {
        let (stated, plain) = (
            contents.volume.as_litres(),
            water.as_litres() * contents.at.as_bar(),
        );
        if stated > 0.0 && plain > 0.0 && !(0.85 * plain..=1.15 * plain).contains(&stated) {
            let error = found.error(
                "water-capacity-and-contents-disagree",
                node.span,
                format!("expected a water capacity that holds about {stated:.0} L at {}, found one that holds about {plain:.0} L", contents.at),
            );
            if let Some(other) = fields.get("contents") {
                error.label(other.span, "the contents are given here");
            }
            error.hint("litres of water times the pressure in bar is about the litres of oxygen; check both");
        }
    }
    Some(Cylinder {
        rule: rule?,
        also: also?,
        series: series?,
        used: used?,
        water_capacity: water_capacity?,
        contents: contents?,
        service_pressure: service_pressure?,
        fill_limit: fill_limit?,
        factor: factor?,
        connection: connection?,
    })
}
