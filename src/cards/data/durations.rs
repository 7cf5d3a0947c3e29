//! Minutes left by pressure and flow.

use serde::Serialize;

use super::{
    Body, Maker,
    figures::{gauge_unit, rounded_up},
};
use crate::book::{Cylinder, Rulebook};
use crate::check::duration;
use crate::quantity::{Flow, Gauge, Number, Pressure};

/// One pressure with its minutes.
#[derive(Clone, Debug, Serialize)]
pub struct DurationRow {
    /// The gauge pressure.
    pub pressure: String,
    /// Whole minutes for each flow.
    pub minutes: Vec<String>,
    /// A warning about this pressure; empty where there is none.
    pub mark: String,
}

impl Maker<'_> {
    pub(super) fn duration_table(
        &self,
        cylinder: &Cylinder,
        pressures: &[Pressure<Gauge>],
        flows: &[Flow],
    ) -> Body {
        let policies = &self.book.policies;
        let unit = gauge_unit(
            self.book.agency.pressure_unit,
            cylinder,
            pressures.iter().copied(),
        );
        let flows = if flows.is_empty() {
            device_flows(self.book)
        } else {
            flows.to_vec()
        };
        let row = |pressure: Pressure<Gauge>| DurationRow {
            pressure: Number(pressure.as_unit(unit)).to_string(),
            minutes: flows
                .iter()
                .map(
                    |flow| match duration::of_cylinder(self.book, cylinder, pressure, *flow) {
                        Ok(duration) => duration.minutes.to_string(),
                        Err(_) => "?".to_owned(),
                    },
                )
                .collect(),
            mark: if pressure <= policies.change_over_pressure {
                self.messages.get("change-now")
            } else if pressure < policies.in_service_minimum {
                self.messages.get("below-minimum")
            } else {
                String::new()
            },
        };
        let temperature = self
            .book
            .agency
            .temperature_unit
            .show(duration::USUAL_TEMPERATURE);
        Body::Durations {
            cylinder: cylinder.rule.name.to_string(),
            facts: self.messages.with(
                "facts",
                &[
                    ("contents", &cylinder.contents.volume.to_string()),
                    ("pressure", &unit.show(cylinder.contents.at).to_string()),
                    ("factor", &cylinder.factor.to_string()),
                ],
            ),
            pressure_unit: unit.symbol().to_owned(),
            flow_unit: "L/min".to_owned(),
            flows: flows
                .iter()
                .map(|flow| Number(flow.as_litres_per_minute()).to_string())
                .collect(),
            rows: pressures.iter().copied().map(row).collect(),
            basis: self.messages.with(
                "basis",
                &[
                    ("temperature", &temperature.to_string()),
                    (
                        "residual",
                        &unit
                            .show(rounded_up(policies.residual_pressure, unit))
                            .to_string(),
                    ),
                ],
            ),
        }
    }
}

/// The flows that the book's devices are set to: the ends of their ranges and what is usual. The smaller flows of single
/// groups have no column: at a lower flow the gas lasts longer than the lowest column says.
fn device_flows(book: &Rulebook) -> Vec<Flow> {
    let mut flows: Vec<Flow> = book
        .devices
        .iter()
        .flat_map(|device| {
            [
                device.flow.low.value(),
                device.flow.high.value(),
                Some(device.usual),
            ]
        })
        .flatten()
        .filter(|flow| *flow > Flow::ZERO)
        .collect();
    flows.sort_by(|a, b| a.as_litres_per_minute().total_cmp(&b.as_litres_per_minute()));
    flows.dedup();
    flows
}
