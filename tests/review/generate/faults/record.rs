//! What wasn't written down, and what is wrong with the times.

use oxyfolio::RULEBOOK;
use oxyfolio::book::Kind;
use oxyfolio::check::review::{Event, Field};
use oxyfolio::{condition, device, group, hazard, procedure};

use super::super::rng::Rng;
use super::super::script::MINUTE;
use super::super::written::offset_of;
use super::super::{Expected, Generated, Mark};
use super::{care_line, device_at, expected, of_hazard, step_line};

type Found = Option<Vec<Expected>>;

const DAY: i64 = 1_440 * MINUTE;

/// Expects a code; the book has no rule that something must be written, so any rule may be quoted.
fn code(code: &'static str) -> Found {
    Some(vec![expected(code, vec![])])
}

/// Takes one field out of every line; nothing when no line has it, or nobody was on oxygen.
fn strip(
    run: &mut Generated,
    rng: &mut Rng,
    has: impl Fn(&Event) -> bool,
    take: impl Fn(&mut Event),
) -> Option<()> {
    care_line(run, rng)?;
    if !run.events.iter().any(has) {
        return None;
    }
    run.events.iter_mut().for_each(take);
    Some(())
}

pub fn no_events(run: &mut Generated, _: &mut Rng) -> Found {
    run.events.clear();
    run.marks.clear();
    run.by.clear();
    let agency = (Kind::Agency, RULEBOOK.agency.rule.id.to_string());
    Some(vec![expected("events-not-recorded", vec![agency])])
}

pub fn no_actions(run: &mut Generated, rng: &mut Rng) -> Found {
    strip(
        run,
        rng,
        |event| event.action.is_some(),
        |event| event.action = None,
    )?;
    code("actions-not-recorded")
}

pub fn no_times(run: &mut Generated, rng: &mut Rng) -> Found {
    strip(run, rng, |event| event.at.is_some(), |event| event.at = None)?;
    code("times-not-recorded")
}

pub fn no_group(run: &mut Generated, rng: &mut Rng) -> Found {
    care_line(run, rng)?;
    run.group = None;
    code("group-not-recorded")
}

pub fn no_conditions(run: &mut Generated, rng: &mut Rng) -> Found {
    care_line(run, rng)?;
    run.conditions = None;
    code("conditions-not-recorded")
}

/// A newborn: its target depends on the minutes of life.
pub fn newborn(run: &mut Generated, rng: &mut Rng) -> Found {
    let (line, _) = care_line(run, rng)?;
    if !run.conditions.as_ref()?.is_empty() || device_at(run, line)? != device::NASAL_CANNULA {
        return None;
    }
    run.group = Some(group::NEWBORN);
    code("minute-of-life-not-recorded")
}

/// Two conditions of which neither target outranks the other.
pub fn two_targets(run: &mut Generated, rng: &mut Rng) -> Found {
    care_line(run, rng)?;
    if run.group? != group::ADULT {
        return None;
    }
    run.conditions = Some(vec![condition::HEART_ATTACK, condition::STROKE]);
    code("no-target")
}

pub fn no_device(run: &mut Generated, rng: &mut Rng) -> Found {
    strip(
        run,
        rng,
        |event| event.device.is_some(),
        |event| event.device = None,
    )?;
    code("device-not-recorded")
}

pub fn no_flow(run: &mut Generated, rng: &mut Rng) -> Found {
    strip(run, rng, |event| event.flow.is_some(), |event| event.flow = None)?;
    code("flow-not-recorded")
}

pub fn no_cylinder(run: &mut Generated, rng: &mut Rng) -> Found {
    strip(
        run,
        rng,
        |event| event.cylinder.is_some(),
        |event| event.cylinder = None,
    )?;
    code("cylinder-not-recorded")
}

pub fn no_pressure(run: &mut Generated, rng: &mut Rng) -> Found {
    strip(
        run,
        rng,
        |event| event.pressure.is_some(),
        |event| event.pressure = None,
    )?;
    code("pressure-not-recorded")
}

/// No saturation, in a patient whose saturation guides what is done.
pub fn no_saturation(run: &mut Generated, rng: &mut Rng) -> Found {
    if run.conditions.as_ref()?.contains(&condition::CARBON_MONOXIDE) {
        return None;
    }
    strip(run, rng, |event| event.spo2.is_some(), |event| event.spo2 = None)?;
    code("saturation-not-recorded")
}

pub fn no_temperature(run: &mut Generated, rng: &mut Rng) -> Found {
    care_line(run, rng)?;
    run.temperature_c = None;
    code("temperature-not-recorded")
}

/// What was done where the bag is filled can't be read.
pub fn no_reservoir(run: &mut Generated, _: &mut Rng) -> Found {
    let fill = step_line(run, procedure::APPLY_RESERVOIR_MASK, "fill")?;
    illegible(run, fill);
    Some(vec![
        expected("reservoir-not-recorded", vec![]),
        expected("hazard-unknown", vec![of_hazard(hazard::RESERVOIR_NOT_FILLED)]),
    ])
}

fn illegible(run: &mut Generated, line: usize) {
    let event = &mut run.events[line];
    event.action = None;
    event.unreadable = event.unreadable.with(Field::Do);
}

/// Nothing of what was done from the closing of the cylinder on can be read.
pub fn no_end(run: &mut Generated, _: &mut Rng) -> Found {
    let close = step_line(run, procedure::SHUT_DOWN, "close")?;
    for line in close..run.events.len() {
        illegible(run, line);
    }
    Some(vec![expected("end-not-recorded", vec![])])
}

/// A temperature at which nobody knows the density.
pub fn no_density(run: &mut Generated, rng: &mut Rng) -> Found {
    care_line(run, rng)?;
    let cold = rng.chance(0.5);
    run.temperature_c = Some(if cold {
        rng.whole(-58, -45)
    } else {
        rng.whole(66, 90)
    } as f64);
    code("density-not-known")
}

/// Nobody asked for conditions, and the device gives little oxygen: enough, unless it was carbon monoxide.
pub fn hazard_unknown(run: &mut Generated, rng: &mut Rng) -> Found {
    let (line, _) = care_line(run, rng)?;
    let device = device_at(run, line)?;
    if device == device::NON_REBREATHER || device == device::BAG_VALVE_MASK {
        return None;
    }
    run.conditions = None;
    Some(vec![expected(
        "hazard-unknown",
        vec![of_hazard(hazard::CARBON_MONOXIDE_LOW_OXYGEN)],
    )])
}

/// One line is twenty minutes earlier than the one before.
pub fn out_of_order(run: &mut Generated, rng: &mut Rng) -> Found {
    let line = 1 + rng.below(run.events.len() - 1);
    let minutes = rng.whole(15, 40);
    run.events[line].at = run.events[line - 1]
        .at
        .map(|at| at.plus_millis(-minutes * MINUTE));
    code("time-out-of-order")
}

/// After midnight the old date is written.
pub fn past_midnight(run: &mut Generated, _: &mut Rng) -> Found {
    let offset = offset_of(run.events.first()?.at?);
    let day = |line: usize| (run.millis(line) + offset * MINUTE).div_euclid(DAY);
    let first = day(0);
    let after = (0..run.events.len()).find(|line| day(*line) != first)?;
    run.delay(after, -DAY);
    code("time-past-midnight")
}

/// The clock jumps by days.
pub fn jump(run: &mut Generated, rng: &mut Rng) -> Found {
    let line = 1 + rng.below(run.events.len() - 1);
    let hours = rng.whole(50, 240);
    run.delay(line, hours * 60 * MINUTE);
    code("time-jump")
}

/// One line is written twice.
pub fn duplicate(run: &mut Generated, rng: &mut Rng) -> Found {
    let line = rng.below(run.events.len());
    let (event, by) = (run.events[line], run.by[line]);
    run.insert(line + 1, event);
    run.marks[line + 1] = Mark::Injected;
    run.by[line + 1] = by;
    code("event-duplicate")
}
