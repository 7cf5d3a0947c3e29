//! Which cylinders a run uses and what their gauge reads, from the gas that its flows take.

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, Cylinder, CylinderId};
use oxyfolio::quantity::{Gauge, Pressure, PressureUnit};

use super::gas::{Oxygen, PSI_PER_BAR};
use super::rng::Rng;
use super::{Bottle, Generated, Unit};

/// A cylinder that is named when the whole run is known.
pub const TO_BE_NAMED: Option<CylinderId> = Some(CylinderId(0));

/// A clean run never goes below this while a valve is open: the book's line for a cylinder in service is 1000 psi, and it holds
/// whenever the device is off the patient, if only for a change.
const LEAST_PSI: f64 = 1_100.0;
/// A clean run has at least this many minutes left on the patient; the book calls for more at 15.
const LEAST_MINUTES: f64 = 18.0;
const RESIDUAL_PSI: f64 = 200.0;

/// The equipment and the gas at the moment of one line, before what the line does.
#[derive(Clone, Copy, Debug, Default)]
pub struct Trace {
    /// The cylinder in use, counted from 0.
    pub bottle: usize,
    /// Litres taken from it since it was opened.
    pub used: f64,
    /// Whether its valve is open, after the line.
    pub open: bool,
    /// Whether a device is on the patient, after the line.
    pub on_patient: bool,
    /// Litres a minute, up to the line.
    pub flow_before: f64,
    /// Litres a minute, from the line on.
    pub flow: f64,
}

/// Follows a run of which every time and flow is recorded.
pub fn trace(run: &Generated) -> Vec<Trace> {
    let mut now = Trace::default();
    let mut seated = !run
        .events
        .iter()
        .any(|event| event.action == Some(Action::SeatRegulator));
    let mut spare = false;
    let mut before = None;
    let mut all = Vec::with_capacity(run.events.len());
    for event in &run.events {
        let at = event.at.unwrap();
        let minutes = before.map_or(0.0, |before| at.minutes_since(before));
        before = Some(at);
        if now.open && seated {
            now.used += now.flow * minutes;
        }
        now.flow_before = now.flow;
        match event.action {
            Some(Action::FetchCylinder) if seated => spare = true,
            Some(Action::SeatRegulator) => seated = true,
            Some(Action::OpenCylinder) => now.open = true,
            Some(Action::CloseCylinder) => now.open = false,
            Some(Action::SetFlow) => now.flow = event.flow.unwrap().as_litres_per_minute(),
            Some(Action::ZeroFlow) => now.flow = 0.0,
            Some(Action::PlaceDevice) => now.on_patient = true,
            Some(Action::RemoveDevice) => now.on_patient = false,
            _ => {}
        }
        all.push(now);
        if event.action == Some(Action::RemoveRegulator) {
            seated = false;
            if std::mem::take(&mut spare) {
                now.bottle += 1;
                now.used = 0.0;
            }
        }
    }
    all
}

pub fn litres_of_water(cylinder: &Cylinder) -> f64 {
    cylinder.water_capacity.as_litres()
}

/// The trade's litres for each psi.
pub fn litres_per_psi(cylinder: &Cylinder) -> f64 {
    match cylinder.factor.written() {
        (litres, PressureUnit::Psi) => litres,
        (litres, PressureUnit::Bar) => litres / PSI_PER_BAR,
        other => panic!("a factor in another unit: {other:?}"),
    }
}

/// Minutes left at a pressure: the lower of the trade's sum and of what real gas gives above the residual.
pub fn minutes_left(oxygen: &Oxygen, cylinder: &Cylinder, psi: f64, flow: f64) -> f64 {
    let sum = (psi - RESIDUAL_PSI) * litres_per_psi(cylinder);
    let real = (oxygen.litres(psi) - oxygen.litres(RESIDUAL_PSI)) * litres_of_water(cylinder);
    sum.min(real) / flow
}

/// The least litres a cylinder must hold at the start for nothing to be wrong.
fn least(run: &Generated, traces: &[Trace], bottle: usize, oxygen: &Oxygen, cylinder: &Cylinder) -> f64 {
    let water = litres_of_water(cylinder);
    let mut flows: Vec<(f64, f64)> = Vec::new();
    let mut least = oxygen.litres(LEAST_PSI + 20.0) * water;
    for (line, now) in traces.iter().enumerate().filter(|(_, now)| now.bottle == bottle) {
        let was_open = line > 0 && traces[line - 1].open && traces[line - 1].bottle == bottle;
        if now.open || was_open {
            least = least.max(now.used + oxygen.litres(LEAST_PSI) * water);
        }
        let was_on = line > 0 && traces[line - 1].on_patient;
        if now.on_patient || was_on {
            for flow in [now.flow, now.flow_before] {
                if flow > 0.0 {
                    match flows.iter_mut().find(|(known, _)| *known == flow) {
                        Some((_, used)) => *used = used.max(now.used),
                        None => flows.push((flow, now.used)),
                    }
                }
            }
        }
    }
    assert!(run.temperature_c.is_some());
    for (flow, used) in flows {
        let real = LEAST_MINUTES * flow / water + oxygen.litres(RESIDUAL_PSI);
        let sum = oxygen.litres(LEAST_MINUTES * flow / litres_per_psi(cylinder) + RESIDUAL_PSI);
        least = least.max(used + real.max(sum) * water);
    }
    least
}

/// Chooses the cylinders and fills in what was left open.
pub fn choose(run: &mut Generated, rng: &mut Rng) {
    let oxygen = Oxygen::at(run.temperature_c.unwrap());
    let traces = trace(run);
    let count = traces.iter().map(|now| now.bottle).max().unwrap() + 1;
    let mut sizes: Vec<u16> = (0..RULEBOOK.cylinders.len() as u16).collect();
    rng.shuffle(&mut sizes);
    let mut chosen: Vec<Bottle> = Vec::new();
    for bottle in 0..count {
        let found = sizes.iter().find_map(|id| {
            let cylinder = RULEBOOK.cylinder(CylinderId(*id)).unwrap();
            // One regulator fits the first and the spare.
            let fits = chosen.first().is_none_or(|first| {
                RULEBOOK.cylinder(first.cylinder).unwrap().connection == cylinder.connection
            });
            // Never above the service pressure, whatever the gauge is off.
            let most = cylinder.service_pressure.as_psi() - 30.0;
            let full = oxygen.litres(most) * litres_of_water(cylinder);
            let least = least(run, &traces, bottle, &oxygen, cylinder);
            (fits && least < full).then(|| Bottle {
                cylinder: CylinderId(*id),
                start: oxygen.psi(rng.between(least, full) / litres_of_water(cylinder)),
            })
        });
        // A second cylinder needs another kind of outlet when the first kind has none big enough: then begin again.
        match found {
            Some(found) => chosen.push(found),
            None => {
                assert!(!chosen.is_empty(), "no cylinder is big enough");
                chosen.clear();
                rng.shuffle(&mut sizes);
                return choose(run, rng);
            }
        }
    }
    run.bottles = chosen;
    let metric = RULEBOOK
        .cylinder(run.bottles[0].cylinder)
        .unwrap()
        .factor
        .written()
        .1
        == PressureUnit::Bar;
    run.unit = if metric != rng.chance(0.06) {
        Unit::Bar
    } else {
        Unit::Psi
    };
    name(run);
    read_gauges(run, rng, |_| 0.0).unwrap();
}

/// Writes the sizes where the record names them.
fn name(run: &mut Generated) {
    let mut next = 0;
    for event in &mut run.events {
        if event.cylinder.is_some() {
            event.cylinder = Some(run.bottles[next.min(run.bottles.len() - 1)].cylinder);
            next += 1;
        }
    }
}

/// Reads every gauge of the run anew; `lost` says how many litres more than the flow took were gone at a line. Nothing when a
/// cylinder would be empty.
pub fn read_gauges(run: &mut Generated, rng: &mut Rng, lost: impl Fn(usize) -> f64) -> Option<()> {
    let oxygen = Oxygen::at(run.temperature_c.unwrap());
    let traces = trace(run);
    for (line, now) in traces.iter().enumerate() {
        let bottle = run.bottles[now.bottle];
        let water = litres_of_water(RULEBOOK.cylinder(bottle.cylinder).unwrap());
        let left = oxygen.litres(bottle.start) - (now.used + lost(line)) / water;
        if left <= oxygen.litres(15.0) {
            return None;
        }
        if run.events[line].pressure.is_some() {
            run.events[line].pressure = Some(reading(run.unit, oxygen.psi(left) + rng.between(-10.0, 10.0)));
        }
    }
    Some(())
}

/// What a person reads: to 10 psi or to 1 bar.
pub fn reading(unit: Unit, psi: f64) -> Pressure<Gauge> {
    match unit {
        Unit::Psi => Pressure::<Gauge>::psi((psi / 10.0).round().max(0.0) * 10.0).unwrap(),
        Unit::Bar => Pressure::<Gauge>::bar((psi / PSI_PER_BAR).round().max(0.0)).unwrap(),
    }
}
