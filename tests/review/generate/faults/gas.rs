//! Faults of pressure and gas.

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Cylinder, CylinderId, Kind};
use oxyfolio::{hazard, policy, procedure};

use super::super::bottles::{
    Trace, litres_of_water, litres_per_psi, minutes_left, read_gauges, reading, trace,
};
use super::super::gas::Oxygen;
use super::super::rng::Rng;
use super::super::{Expected, Generated};
use super::{expected, hazard, of_policy, step_line};

type Found = Option<Vec<Expected>>;

/// How far two readings of a gauge may each be off, in psi.
const GAUGE_PSI: f64 = 50.0;
/// How far a flowmeter may be off.
const FLOWMETER: f64 = 0.1;
/// How many times what may be off a fault is at least.
const BEYOND_DOUBT: f64 = 3.0;

fn cylinder(run: &Generated, bottle: usize) -> &'static Cylinder {
    RULEBOOK.cylinder(run.bottles[bottle].cylinder).unwrap()
}

fn oxygen(run: &Generated) -> Oxygen {
    Oxygen::at(run.temperature_c.unwrap())
}

/// Fills the cylinder of a line so that its gauge reads a pressure there.
fn refill(run: &mut Generated, rng: &mut Rng, line: usize, psi: f64) -> Option<()> {
    let now = trace(run)[line];
    let cylinder = cylinder(run, now.bottle);
    let oxygen = oxygen(run);
    let full = oxygen.litres(cylinder.service_pressure.as_psi());
    let start = oxygen.litres(psi) + now.used / litres_of_water(cylinder);
    if start > full {
        return None;
    }
    run.bottles[now.bottle].start = oxygen.psi(start);
    read_gauges(run, rng, |_| 0.0)
}

/// The last gauge reading with the device on the patient.
fn last_on_patient(run: &Generated) -> Option<(usize, Trace)> {
    let traces = trace(run);
    let line = (0..run.events.len())
        .rev()
        .find(|line| run.events[*line].pressure.is_some() && traces[*line].on_patient)?;
    Some((line, traces[line]))
}

fn read_low(run: &mut Generated, rng: &mut Rng, low: f64, high: f64) -> Option<()> {
    let (line, _) = last_on_patient(run)?;
    let psi = rng.between(low, high);
    refill(run, rng, line, psi)
}

pub fn change_over_due(run: &mut Generated, rng: &mut Rng) -> Found {
    read_low(run, rng, 260.0, 350.0)?;
    Some(vec![hazard(hazard::CHANGE_OVER_DUE)])
}

pub fn nearly_empty(run: &mut Generated, rng: &mut Rng) -> Found {
    read_low(run, rng, 30.0, 50.0)?;
    Some(vec![hazard(hazard::NEARLY_EMPTY)])
}

pub fn below_residual(run: &mut Generated, rng: &mut Rng) -> Found {
    read_low(run, rng, 30.0, 50.0)?;
    Some(vec![expected(
        "below-residual",
        vec![of_policy(policy::RESIDUAL_PRESSURE)],
    )])
}

/// Between six and nine minutes are left, and the gauge is fine enough to say so.
pub fn call_for_more(run: &mut Generated, rng: &mut Rng) -> Found {
    let (line, now) = last_on_patient(run)?;
    let cylinder = cylinder(run, now.bottle);
    let wanted = rng.between(6.0, 9.0);
    if wanted + BEYOND_DOUBT * GAUGE_PSI * litres_per_psi(cylinder) / now.flow > 15.0 {
        return None;
    }
    let oxygen = oxygen(run);
    let psi = (210..2_000)
        .step_by(5)
        .map(f64::from)
        .find(|psi| minutes_left(&oxygen, cylinder, *psi, now.flow) >= wanted)?;
    refill(run, rng, line, psi)?;
    Some(vec![hazard(hazard::CALL_FOR_MORE)])
}

/// The cylinder is read too low for service when the patient is off it.
pub fn not_fit_for_service(run: &mut Generated, rng: &mut Rng) -> Found {
    let line = step_line(run, procedure::SHUT_DOWN, "gauge")?;
    let psi = rng.between(600.0, 830.0);
    refill(run, rng, line, psi)?;
    Some(vec![hazard(hazard::NOT_FIT_FOR_SERVICE)])
}

/// Two readings that follow one another on one cylinder, with oxygen used between.
fn pairs(run: &Generated, traces: &[Trace]) -> Vec<(usize, usize)> {
    let read: Vec<usize> = (0..run.events.len())
        .filter(|line| run.events[*line].pressure.is_some())
        .collect();
    let pairs = read.windows(2).map(|pair| (pair[0], pair[1]));
    pairs
        .filter(|(from, to)| {
            traces[*from].bottle == traces[*to].bottle && traces[*to].used > traces[*from].used
        })
        .collect()
}

/// How many litres two readings may be off from what the flow explains, with the size that is written.
fn may_differ(cylinder: &Cylinder, used: f64) -> f64 {
    // Twenty per cent on the trade's factor: at high pressure a litre of water holds more gas for each psi than the factor says.
    2.0 * GAUGE_PSI * litres_per_psi(cylinder) * 1.2 + FLOWMETER * used
}

fn mismatch(code: &'static str, written: &Cylinder) -> Found {
    // The book has no rule that two readings must agree; a review may quote the policy of the gauge or the size written.
    let rules = vec![
        (Kind::Policy, "gauge-tolerance".to_owned()),
        (Kind::Cylinder, written.rule.id.to_string()),
    ];
    Some(vec![expected(code, rules)])
}

/// Gas goes elsewhere between two readings, 3 to 10 L/min of it.
pub fn leak(run: &mut Generated, rng: &mut Rng) -> Found {
    let traces = trace(run);
    let pairs = pairs(run, &traces);
    if pairs.is_empty() {
        return None;
    }
    let (from, to) = *rng.pick(&pairs);
    let minutes = (run.millis(to) - run.millis(from)) as f64 / 60_000.0;
    let lost = rng.between(3.0, 10.0) * minutes;
    let bottle = traces[to].bottle;
    let cylinder = cylinder(run, bottle);
    if lost < BEYOND_DOUBT * may_differ(cylinder, traces[to].used - traces[from].used) {
        return None;
    }
    read_gauges(run, rng, |line| {
        if line >= to && traces[line].bottle == bottle {
            lost
        } else {
            0.0
        }
    })?;
    mismatch("pressure-fell-too-fast", cylinder)
}

/// The gauge sticks, or fell less than the flow takes, between two readings.
pub fn stuck_gauge(run: &mut Generated, rng: &mut Rng) -> Found {
    let traces = trace(run);
    let pairs = pairs(run, &traces);
    if pairs.is_empty() {
        return None;
    }
    let (from, to) = *rng.pick(&pairs);
    let used = traces[to].used - traces[from].used;
    let bottle = traces[to].bottle;
    let cylinder = cylinder(run, bottle);
    if used < BEYOND_DOUBT * may_differ(cylinder, used) {
        return None;
    }
    read_gauges(run, rng, |line| {
        if line >= to && traces[line].bottle == bottle {
            -used
        } else {
            0.0
        }
    })?;
    mismatch("pressure-fell-too-slow", cylinder)
}

/// Another size is written down than the one in use; `true` when it is the larger of the two.
fn another_size(run: &mut Generated, rng: &mut Rng, larger: bool) -> Option<&'static Cylinder> {
    // With a spare the one line in which a size is written could be either's.
    if run.bottles.len() > 1 {
        return None;
    }
    let traces = trace(run);
    let oxygen = oxygen(run);
    let real = cylinder(run, 0);
    let written = CylinderId(rng.below(RULEBOOK.cylinders.len()) as u16);
    let size = RULEBOOK.cylinder(written).unwrap();
    let beyond = pairs(run, &traces).into_iter().any(|(from, to)| {
        let used = traces[to].used - traces[from].used;
        let seen = used * litres_of_water(size) / litres_of_water(real);
        let more = if larger { seen - used } else { used - seen };
        more > BEYOND_DOUBT * may_differ(size, used)
    });
    // What is written must be able to read so high.
    let possible = oxygen.litres(run.bottles[0].start) <= oxygen.litres(size.service_pressure.as_psi());
    if !beyond || !possible {
        return None;
    }
    for event in &mut run.events {
        if event.cylinder.is_some() {
            event.cylinder = Some(written);
        }
    }
    Some(size)
}

pub fn larger_size_written(run: &mut Generated, rng: &mut Rng) -> Found {
    let size = another_size(run, rng, true)?;
    mismatch("pressure-fell-too-fast", size)
}

pub fn smaller_size_written(run: &mut Generated, rng: &mut Rng) -> Found {
    let size = another_size(run, rng, false)?;
    mismatch("pressure-fell-too-slow", size)
}

/// One reading at the start, and flows that it doesn't last for.
pub fn would_run_out(run: &mut Generated, _: &mut Rng) -> Found {
    let traces = trace(run);
    if run.bottles.len() > 1 {
        return None;
    }
    let first = run.events.iter().position(|event| event.pressure.is_some())?;
    let last_off = traces.iter().rposition(|now| now.on_patient)?;
    let cylinder = cylinder(run, 0);
    let used = traces[last_off].used - traces[first].used;
    if 0.6 * used < BEYOND_DOUBT * may_differ(cylinder, used) {
        return None;
    }
    let oxygen = oxygen(run);
    let residual = RULEBOOK.policies.residual_pressure.as_psi();
    let psi = oxygen.psi(oxygen.litres(residual) + 0.4 * used / litres_of_water(cylinder));
    if psi < residual + BEYOND_DOUBT * GAUGE_PSI {
        return None;
    }
    run.bottles[0].start = psi;
    for (line, event) in run.events.iter_mut().enumerate() {
        if event.pressure.is_some() {
            event.pressure = (line == first).then(|| reading(run.unit, psi));
        }
    }
    Some(vec![expected(
        "would-run-out",
        vec![of_policy(policy::RESIDUAL_PRESSURE)],
    )])
}
