//! Cylinders and their connections.

use serde::Serialize;

use super::{Body, Maker, figures::gauge_unit};
use crate::book::{ConnectionId, CylinderId};

/// A cylinder size.
#[derive(Clone, Debug, Serialize)]
pub struct CylinderRow {
    /// Its name, water capacity, contents, service pressure, factor and connection.
    pub cells: Vec<String>,
}

/// A connection.
#[derive(Clone, Debug, Serialize)]
pub struct ConnectionRow {
    /// Its gas.
    pub gas: String,
    /// What tells it from others: pins, thread, number.
    pub known_by: String,
    /// Whether an oxygen set may be fitted: `fits` or `NEVER`.
    pub oxygen_set: String,
    /// Whether it must never be mated.
    pub never: bool,
}

impl Maker<'_> {
    pub(super) fn cylinder_facts(&self, cylinders: &[CylinderId], connections: &[ConnectionId]) -> Body {
        let cylinder = |id: &CylinderId| {
            let cylinder = self.book.cylinder(*id)?;
            let at = [cylinder.contents.at, cylinder.service_pressure];
            let unit = gauge_unit(self.book.agency.pressure_unit, cylinder, at.into_iter());
            let connection = self.book.connection(cylinder.connection)?;
            Some(CylinderRow {
                cells: vec![
                    cylinder.rule.name.to_string(),
                    cylinder.water_capacity.to_string(),
                    format!(
                        "{}, {}",
                        cylinder.contents.volume,
                        unit.show(cylinder.contents.at)
                    ),
                    unit.show(cylinder.service_pressure).to_string(),
                    cylinder.factor.to_string(),
                    connection
                        .number
                        .as_ref()
                        .map_or_else(|| connection.rule.name.to_string(), ToString::to_string),
                ],
            })
        };
        let connection = |id: &ConnectionId| {
            let connection = self.book.connection(*id)?;
            let pins: Vec<String> = connection.pins.iter().map(ToString::to_string).collect();
            let pins = (!pins.is_empty()).then(|| self.messages.with("pins", &[("pins", &pins.join("-"))]));
            let others = [&connection.thread, &connection.number].into_iter().flatten();
            let known: Vec<String> = pins.into_iter().chain(others.map(ToString::to_string)).collect();
            Some(ConnectionRow {
                gas: connection.gas.to_string(),
                known_by: known.join(" · "),
                oxygen_set: self
                    .messages
                    .get(if connection.may_be_mated { "fits" } else { "never" }),
                never: !connection.may_be_mated,
            })
        };
        Body::Cylinders {
            cylinders: cylinders.iter().filter_map(cylinder).collect(),
            connections: connections.iter().filter_map(connection).collect(),
        }
    }
}
