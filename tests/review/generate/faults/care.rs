//! Faults of flow, device and saturation while the patient is on oxygen.

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, DeviceId, HazardId, Saturation};
use oxyfolio::quantity::Percent;
use oxyfolio::{condition, device, group, hazard};

use super::super::bottles::{read_gauges, trace};
use super::super::rng::Rng;
use super::super::script::{MINUTE, SECOND, flow};
use super::super::{Expected, Generated};
use super::{changes_oxygen, device_at, expected, hazard, of_device, of_target};

type Found = Option<Vec<Expected>>;

/// Lines where a flow is set at which the patient then stays for two minutes at least, and the device.
fn set_flows(run: &Generated) -> Vec<(usize, DeviceId)> {
    let traces = trace(run);
    let lines = (0..run.events.len()).filter(|line| run.events[*line].action == Some(Action::SetFlow));
    lines
        .filter_map(|line| {
            let from = (line..run.events.len()).find(|later| traces[*later].on_patient)?;
            let until = (line + 1..run.events.len()).find(|later| {
                matches!(
                    run.events[*later].action,
                    Some(Action::SetFlow | Action::ZeroFlow | Action::RemoveDevice)
                )
            })?;
            let stays = until > from && run.millis(until) - run.millis(from) >= 2 * MINUTE;
            stays.then_some((line, device_at(run, line)?))
        })
        .collect()
}

/// Sets another flow at a line, and writes it wherever it is written again.
fn set_another(run: &mut Generated, line: usize, litres: f64) {
    for (index, event) in run.events.iter_mut().enumerate().skip(line) {
        if index > line && matches!(event.action, Some(Action::SetFlow | Action::ZeroFlow)) {
            break;
        }
        if event.flow.is_some() {
            event.flow = Some(flow(litres));
        }
    }
}

fn wrong_flow(
    run: &mut Generated,
    rng: &mut Rng,
    suits: impl Fn(DeviceId) -> bool,
    litres: impl Fn(f64, f64) -> f64,
) -> Option<DeviceId> {
    let lines: Vec<(usize, DeviceId)> = set_flows(run)
        .into_iter()
        .filter(|(_, device)| suits(*device))
        .collect();
    if lines.is_empty() {
        return None;
    }
    let (line, device) = *rng.pick(&lines);
    let range = RULEBOOK.device(device).unwrap().flow_for(run.group?);
    let low = range.low.value()?.as_litres_per_minute();
    let high = range.high.value()?.as_litres_per_minute();
    set_another(run, line, litres(low, high));
    read_gauges(run, rng, |_| 0.0)?;
    Some(device)
}

fn half_of_least(low: f64, _: f64) -> f64 {
    low * 0.5
}

fn above_most(_: f64, high: f64) -> f64 {
    (high * 1.3).ceil() + 1.0
}

pub fn flow_too_low(run: &mut Generated, rng: &mut Rng) -> Found {
    let device = wrong_flow(run, rng, |_| true, half_of_least)?;
    Some(vec![expected("flow-too-low", vec![of_device(device)])])
}

pub fn flow_too_high(run: &mut Generated, rng: &mut Rng) -> Found {
    let device = wrong_flow(run, rng, |_| true, above_most)?;
    Some(vec![expected("flow-too-high", vec![of_device(device)])])
}

fn has_reservoir(id: DeviceId) -> bool {
    RULEBOOK.device(id).unwrap().reservoir
}

fn flow_hazard(
    run: &mut Generated,
    rng: &mut Rng,
    id: HazardId,
    suits: fn(DeviceId) -> bool,
    litres: fn(f64, f64) -> f64,
) -> Found {
    wrong_flow(run, rng, suits, litres)?;
    Some(vec![hazard(id)])
}

pub fn hazard_reservoir_flow(run: &mut Generated, rng: &mut Rng) -> Found {
    flow_hazard(
        run,
        rng,
        hazard::RESERVOIR_FLOW_TOO_LOW,
        has_reservoir,
        half_of_least,
    )
}

pub fn hazard_flow_too_low(run: &mut Generated, rng: &mut Rng) -> Found {
    flow_hazard(
        run,
        rng,
        hazard::FLOW_TOO_LOW,
        |id| !has_reservoir(id),
        half_of_least,
    )
}

pub fn hazard_cannula_too_high(run: &mut Generated, rng: &mut Rng) -> Found {
    let suits = |id| id == device::NASAL_CANNULA;
    flow_hazard(run, rng, hazard::CANNULA_FLOW_TOO_HIGH, suits, above_most)
}

pub fn hazard_cannula_uncomfortable(run: &mut Generated, rng: &mut Rng) -> Found {
    let suits = |id| id == device::NASAL_CANNULA;
    flow_hazard(run, rng, hazard::CANNULA_UNCOMFORTABLE, suits, |_, _| 6.0)
}

pub fn hazard_flow_too_high(run: &mut Generated, rng: &mut Rng) -> Found {
    let suits = |id| id != device::NASAL_CANNULA;
    flow_hazard(run, rng, hazard::FLOW_TOO_HIGH, suits, above_most)
}

/// Another device of the same procedure, not made for the group, is on the patient all the time.
pub fn device_does_not_fit(run: &mut Generated, rng: &mut Rng) -> Found {
    let group = run.group?;
    let named: Vec<DeviceId> = run.events.iter().filter_map(|event| event.device).collect();
    let old = *named.first()?;
    let (_, _) = super::care_line(run, rng)?;
    let same_kind = RULEBOOK
        .procedures
        .iter()
        .find(|procedure| procedure.devices.contains(&old))?;
    let others: Vec<DeviceId> = same_kind
        .devices
        .iter()
        .copied()
        .filter(|id| !RULEBOOK.device(*id).unwrap().fits(group))
        .collect();
    if others.is_empty() {
        return None;
    }
    let new = *rng.pick(&others);
    for event in &mut run.events {
        if event.device == Some(old) {
            event.device = Some(new);
        }
    }
    Some(vec![expected("device-does-not-fit", vec![of_device(new)])])
}

/// A patient from a fire, with a device that gives too little.
pub fn carbon_monoxide(run: &mut Generated, rng: &mut Rng) -> Found {
    let (line, _) = super::care_line(run, rng)?;
    let device = device_at(run, line)?;
    if device == device::NON_REBREATHER || device == device::BAG_VALVE_MASK {
        return None;
    }
    run.conditions = Some(vec![condition::CARBON_MONOXIDE]);
    Some(vec![hazard(hazard::CARBON_MONOXIDE_LOW_OXYGEN)])
}

/// Readings outside the target for eight minutes at least, with nothing changed.
fn outside(run: &mut Generated, rng: &mut Rng, values: (i64, i64)) -> Option<()> {
    const LONG: i64 = 8 * MINUTE;
    let traces = trace(run);
    // Readings on oxygen, in stretches between two changes of it.
    let mut stretches: Vec<Vec<usize>> = vec![Vec::new()];
    for (line, event) in run.events.iter().enumerate() {
        if changes_oxygen(event.action) {
            stretches.push(Vec::new());
        } else if event.spo2.is_some() && traces[line].on_patient {
            stretches.last_mut()?.push(line);
        }
    }
    stretches.retain(|lines| lines.len() >= 2);
    if stretches.is_empty() {
        return None;
    }
    let lines = rng.pick(&stretches).clone();
    let (first, last) = (*lines.first()?, *lines.last()?);
    let missing = LONG - (run.millis(last) - run.millis(first));
    if missing > 0 {
        run.delay(last, missing + 30 * SECOND);
        read_gauges(run, rng, |_| 0.0)?;
    }
    for line in lines {
        run.events[line].spo2 = Some(Percent::new(rng.whole(values.0, values.1) as f64).unwrap());
    }
    Some(())
}

fn aim(run: &Generated) -> Option<(i64, i64)> {
    let Saturation::Range(range) = RULEBOOK.target(run.target?)?.saturation else {
        return None;
    };
    let whole = |limit: Option<Percent>| limit.map(|limit| limit.as_percent() as i64);
    Some((whole(range.low.value())?, whole(range.high.value())?))
}

pub fn target_missed(run: &mut Generated, rng: &mut Rng) -> Found {
    let (low, _) = aim(run)?;
    outside(run, rng, (low - 4, low - 2))?;
    Some(vec![expected("target-missed", vec![of_target(run.target?)])])
}

pub fn target_exceeded(run: &mut Generated, rng: &mut Rng) -> Found {
    let (_, high) = aim(run)?;
    outside(run, rng, (high + 1, (high + 4).min(100)))?;
    Some(vec![expected("target-exceeded", vec![of_target(run.target?)])])
}

pub fn co2_too_much(run: &mut Generated, rng: &mut Rng) -> Found {
    if !run.conditions.as_ref()?.contains(&condition::RETAINS_CO2) {
        return None;
    }
    let (_, high) = aim(run)?;
    outside(run, rng, (high + 1, (high + 5).min(100)))?;
    Some(vec![hazard(hazard::CO2_TOO_MUCH_OXYGEN)])
}

pub fn very_low(run: &mut Generated, rng: &mut Rng) -> Found {
    aim(run)?;
    let retains = run.conditions.as_ref()?.contains(&condition::RETAINS_CO2);
    if run.group? == group::ADULT && retains {
        return None;
    }
    let traces = trace(run);
    let readings: Vec<usize> = (0..run.events.len())
        .filter(|line| run.events[*line].spo2.is_some() && traces[*line].on_patient)
        .collect();
    if readings.is_empty() {
        return None;
    }
    run.events[*rng.pick(&readings)].spo2 = Some(Percent::new(rng.whole(68, 80) as f64).unwrap());
    Some(vec![hazard(hazard::VERY_LOW_SATURATION)])
}
