//! Figures of an exercise: flows, saturations and readings as they occur.

use super::chance::Chance;
use crate::book::{Device, GroupId, Rulebook, Saturation};
use crate::quantity::{Flow, Gauge, Percent, Pressure, PressureUnit, Range};

/// In what steps a gauge is read, in a unit.
pub const fn step(unit: PressureUnit) -> f64 {
    match unit {
        PressureUnit::Psi => 10.0,
        PressureUnit::Bar => 1.0,
        PressureUnit::Kpa => 100.0,
        PressureUnit::Mpa => 0.1,
    }
}

/// A pressure as a gauge is read.
pub fn reading_in(unit: PressureUnit, pressure: f64) -> Option<Pressure<Gauge>> {
    let step = step(unit);
    Pressure::in_unit((pressure / step).round() * step, unit).ok()
}

/// A whole flow within a range, or the usual one where it holds no whole flow above zero.
pub fn whole_flow(range: Range<Flow>, usual: Flow, chance: &mut Chance) -> Option<Flow> {
    let end = |end: Option<Flow>| end.map(Flow::as_litres_per_minute);
    let (least, most) = (end(range.low.value())?, end(range.high.value())?);
    let whole = f64::from(chance.within(least.ceil() as i32, most.floor() as i32));
    let flow = Flow::litres_per_minute(whole).ok();
    flow.filter(|flow| range.holds(*flow) && *flow > Flow::ZERO)
        .or_else(|| (usual > Flow::ZERO).then_some(usual))
}

/// A flow of a device for a group.
pub fn flow_of(device: &Device, group: GroupId, chance: &mut Chance) -> Option<Flow> {
    whole_flow(device.flow_for(group), device.usual_for(group), chance)
}

/// A saturation within the group's general target.
pub fn aimed_at(book: &Rulebook, group: GroupId, chance: &mut Chance) -> Option<Percent> {
    let target = book
        .targets
        .iter()
        .find(|target| target.groups.contains(&group) && target.condition.is_none())?;
    match target.saturation {
        Saturation::Range(range) => {
            let least = range.low.value().map_or(94.0, Percent::as_percent).ceil() as i32;
            let most = range.high.value().map_or(99.0, Percent::as_percent).floor() as i32;
            Percent::new(f64::from(chance.within(least, most))).ok()
        }
        Saturation::NotReliable => None,
    }
}
