//! How quantities are written on cards.

use super::Maker;
use crate::book::{Cylinder, DeviceFlow, DeviceId};
use crate::quantity::{Flow, Gauge, Limit, Number, Pressure, PressureUnit, Range};
use crate::rounding::up;

/// A pressure rounded up to a tenth of a unit, for a sentence: more kept back is the safe side.
pub fn rounded_up(pressure: Pressure<Gauge>, unit: PressureUnit) -> Pressure<Gauge> {
    Pressure::in_unit(up(pressure.as_unit(unit), 10.0), unit).unwrap_or(pressure)
}

/// Whether a pressure is a whole number in a unit.
pub fn is_whole(pressure: Pressure<Gauge>, unit: PressureUnit) -> bool {
    let value = pressure.as_unit(unit);
    (value - value.round()).abs() < 1e-6
}

/// The agency's unit where all pressures are whole numbers in it; otherwise the unit of the cylinder's own factor, which
/// is the unit of its gauge.
pub fn gauge_unit(
    agency: PressureUnit,
    cylinder: &Cylinder,
    mut pressures: impl Iterator<Item = Pressure<Gauge>> + Clone,
) -> PressureUnit {
    let own = cylinder.factor.written().1;
    if !pressures.clone().all(|pressure| is_whole(pressure, agency))
        && pressures.all(|pressure| is_whole(pressure, own))
    {
        own
    } else {
        agency
    }
}

impl Maker<'_> {
    /// `10–15`; one number where both ends are the same.
    pub(super) fn numbers<Q: Copy>(&self, range: Range<Q>, number: impl Fn(Q) -> f64) -> String {
        let end = |limit: Limit<Q>| limit.value().map(|value| Number(number(value)).to_string());
        match (end(range.low), end(range.high)) {
            (Some(low), Some(high)) if low == high => low,
            (Some(low), Some(high)) => format!("{low}–{high}"),
            (Some(low), None) => self.messages.with("at-least", &[("value", &low)]),
            (None, Some(high)) => self.messages.with("at-most", &[("value", &high)]),
            (None, None) => String::new(),
        }
    }

    pub(super) fn flow_range(&self, range: Range<Flow>) -> String {
        self.numbers(range, |flow| flow.as_litres_per_minute())
    }

    /// `nasal cannula at 2 L/min`, in the book's own name.
    pub(super) fn device_flow(&self, rung: DeviceFlow) -> String {
        self.messages.with(
            "at-flow",
            &[
                ("device", self.device_name(rung.device)),
                ("flow", &rung.flow.to_string()),
            ],
        )
    }

    pub(super) fn device_name(&self, device: DeviceId) -> &str {
        self.book.device(device).map_or("?", |device| &device.rule.name)
    }
}
