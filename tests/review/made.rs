//! The made-up runs themselves, looked at by other means than those that made them.

use std::collections::{BTreeMap, BTreeSet};

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, ProcedureId, Saturation};
use oxyfolio::check::review::Event;
use oxyfolio::quantity::Side;

use super::generate::faults::KINDS;
use super::generate::gas::{Oxygen, PSI_PER_BAR};
use super::generate::{CSV_HEADER, Generated, Mark};

const RUNS: u64 = 1_500;
/// A denser table of the same source, by CoolProp.
const DENSE: &str = include_str!("../oxygen/density.csv");

fn clean() -> impl Iterator<Item = Generated> {
    (0..RUNS).map(Generated::clean)
}

fn minutes(from: &Event, to: &Event) -> f64 {
    (to.at.unwrap().unix_millis() - from.at.unwrap().unix_millis()) as f64 / 60_000.0
}

#[test]
fn the_same_seed_gives_the_same_run() {
    let mut lines = BTreeSet::new();
    for seed in 0..200 {
        for make in [Generated::clean, Generated::faulty] {
            let line = make(seed).ndjson();
            assert_eq!(line, make(seed).ndjson());
            assert!(lines.insert(line), "seed {seed} gives the run of another");
        }
    }
}

/// Every procedure is done once through, all its steps and only those, in an order that `after` allows; and each follows one
/// that it may.
#[test]
fn a_clean_run_is_a_chain_of_whole_procedures() {
    for run in clean() {
        let mut blocks: BTreeMap<usize, (ProcedureId, Vec<usize>)> = BTreeMap::new();
        for (event, mark) in run.events.iter().zip(&run.marks) {
            let Mark::Step {
                procedure,
                step,
                block,
            } = *mark
            else {
                continue;
            };
            let steps = &RULEBOOK.procedure(procedure).unwrap().steps;
            assert_eq!(event.action, Some(steps[step].action));
            blocks
                .entry(block)
                .or_insert((procedure, Vec::new()))
                .1
                .push(step);
        }
        let mut before: Option<ProcedureId> = None;
        for (id, order) in blocks.values() {
            let procedure = RULEBOOK.procedure(*id).unwrap();
            let mut sorted = order.clone();
            sorted.sort_unstable();
            assert!(sorted.into_iter().eq(0..procedure.steps.len()), "{}", run.run);
            for (place, step) in order.iter().enumerate() {
                let done = &order[..place];
                let after = &procedure.steps[*step].after;
                assert!(
                    after.iter().all(|first| done.contains(&first.index())),
                    "{}",
                    run.run
                );
            }
            match before {
                None => assert!(procedure.follows.is_empty(), "{}", run.run),
                Some(before) => assert!(procedure.follows.contains(&before), "{}", run.run),
            }
            before = Some(*id);
        }
        let last = RULEBOOK.procedure(before.unwrap()).unwrap();
        assert!(last.ends_safe, "{}", run.run);
    }
}

#[test]
fn interpolation_agrees_with_a_denser_table() {
    let rows: Vec<[f64; 3]> = DENSE
        .lines()
        .filter(|line| line.starts_with(|c: char| c == '-' || c.is_ascii_digit()))
        .map(|line| {
            let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
            cells.try_into().unwrap()
        })
        .collect();
    // Free gas: 1 atm, 21.11 °C, from the published table.
    let free = 1.325_9;
    let mut compared = 0;
    for [celsius, bar, density] in rows {
        if !(5.0..=300.0).contains(&bar) || !(-40.0..=60.0).contains(&celsius) {
            continue;
        }
        let litres = Oxygen::at(celsius).litres((bar - 1.01325) * PSI_PER_BAR);
        let off = litres * free / density - 1.0;
        assert!(off.abs() < 1e-3, "{celsius} °C, {bar} bar: {off}");
        compared += 1;
    }
    assert!(compared > 1_000);
}

/// Litres by the gauge against the sum of flow and time, a second way: straight from the actions.
#[test]
fn pressures_agree_with_flow_and_time() {
    let mut compared = 0;
    for run in clean() {
        let oxygen = Oxygen::at(run.temperature_c.unwrap());
        let (mut open, mut flow, mut used, mut last) = (false, 0.0, 0.0, None::<f64>);
        let mut sizes = run.events.iter().filter_map(|event| event.cylinder);
        let mut water = 0.0;
        let mut next = || {
            RULEBOOK
                .cylinder(sizes.next().unwrap())
                .unwrap()
                .water_capacity
                .as_litres()
        };
        for (line, event) in run.events.iter().enumerate() {
            if line > 0 && open {
                used += flow * minutes(&run.events[line - 1], event);
            }
            match event.action.unwrap() {
                Action::OpenCylinder => {
                    open = true;
                    (used, last, water) = (0.0, None, next());
                }
                Action::CloseCylinder => open = false,
                Action::SetFlow => flow = event.flow.unwrap().as_litres_per_minute(),
                Action::ZeroFlow => flow = 0.0,
                _ => {}
            }
            let Some(pressure) = event.pressure else {
                continue;
            };
            assert!(open, "{}: a gauge that shows nothing was read", run.run);
            let holds = oxygen.litres(pressure.as_psi()) * water;
            if let Some(last) = last {
                // 10 psi of noise, and 5 psi or half a bar of rounding, at both ends.
                let noise = 2.0 * (oxygen.litres(1_018.0) - oxygen.litres(1_000.0)) * water * 1.2;
                assert!((last - holds - used).abs() < noise, "{}: line {line}", run.run);
                compared += 1;
            }
            (last, used) = (Some(holds), 0.0);
        }
    }
    assert!(compared > 3_000);
}

/// Nothing that the book calls a hazard, as far as a record shows it, asked in this file's own words.
#[test]
fn a_clean_run_enters_no_hazard() {
    for run in clean() {
        let name = &run.run;
        let (mut open, mut on, mut filled, mut flow, mut device) = (false, false, false, 0.0, None);
        for (line, event) in run.events.iter().enumerate() {
            let action = event.action.unwrap();
            if let Some(set) = event.flow {
                flow = set.as_litres_per_minute();
            }
            device = event.device.or(device);
            match action {
                Action::OpenCylinder => open = true,
                Action::CloseCylinder => open = false,
                Action::ZeroFlow => (flow, filled) = (0.0, false),
                Action::FillReservoir => filled = true,
                Action::ConnectDevice | Action::DisconnectDevice | Action::BleedRegulator => filled = false,
                Action::PlaceDevice => on = true,
                Action::RemoveDevice => on = false,
                _ => {}
            }
            if let Some(pressure) = event.pressure {
                assert!(pressure.as_psi() >= 1_050.0, "{name}: {line}");
            }
            if on {
                let device = RULEBOOK.device(device.unwrap()).unwrap();
                let group = run.group.unwrap();
                assert!(open && flow > 0.0, "{name}: {line}");
                assert!(device.fits(group), "{name}: {line}");
                let set = event
                    .flow
                    .unwrap_or(oxyfolio::quantity::Flow::litres_per_minute(flow).unwrap());
                assert!(device.flow_for(group).holds(set), "{name}: {line}: {set}");
                assert!(
                    &*device.rule.id != "nasal-cannula" || flow <= 4.0,
                    "{name}: {line}"
                );
                assert!(!device.reservoir || filled, "{name}: {line}");
                let conditions = run.conditions.as_ref().unwrap();
                let smoke = oxyfolio::condition::CARBON_MONOXIDE;
                let most = ["non-rebreather", "bag-valve-mask"].contains(&&*device.rule.id);
                assert!(!conditions.contains(&smoke) || most, "{name}: {line}");
            }
        }
        assert!(!open && !on, "{name}");
        assert!((-10.0..=40.0).contains(&run.temperature_c.unwrap()), "{name}");
    }
}

/// A reading outside the target is followed by a change of oxygen or by a good reading within the five minutes of every target.
#[test]
fn a_clean_run_answers_readings_in_time() {
    let (mut low, mut high) = (0, 0);
    for run in clean() {
        let Some(target) = run.target else { continue };
        let target = RULEBOOK.target(target).unwrap();
        assert_eq!(target.recheck.as_minutes(), 5.0);
        let Saturation::Range(range) = target.saturation else {
            continue;
        };
        let mut since: Option<usize> = None;
        for (line, event) in run.events.iter().enumerate() {
            if let Some(first) = since {
                let waited = minutes(&run.events[first], event);
                assert!(waited < 5.0, "{}: line {line} after {waited} min", run.run);
            }
            if event.action == Some(Action::SetFlow) {
                since = None;
            }
            match event.spo2.map(|spo2| range.side(spo2)) {
                Some(Side::Inside) => since = None,
                Some(side) => {
                    since = since.or(Some(line));
                    if side == Side::Below {
                        low += 1
                    } else {
                        high += 1
                    };
                    assert!(event.spo2.unwrap().as_percent() >= 81.0);
                }
                None => {}
            }
        }
        assert_eq!(since, None, "{}", run.run);
    }
    assert!(low > 500 && high > 50, "{low} low and {high} high readings");
}

#[test]
fn times_go_forward_and_no_line_is_written_twice() {
    for run in clean() {
        for pair in run.events.windows(2) {
            assert!(minutes(&pair[0], &pair[1]) >= 0.0, "{}", run.run);
            assert!(minutes(&pair[0], &pair[1]) < 12.0, "{}", run.run);
            assert_ne!(pair[0], pair[1], "{}", run.run);
        }
    }
}

#[test]
fn clean_runs_are_of_many_kinds() {
    let (mut devices, mut cylinders, mut procedures) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
    let (mut groups, mut conditions, mut units) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
    let (mut midnight, mut whole, mut spares, mut events) = (0, 0, 0, 0);
    for run in clean() {
        devices.extend(run.events.iter().filter_map(|event| event.device));
        cylinders.extend(run.events.iter().filter_map(|event| event.cylinder));
        procedures.extend(run.marks.iter().filter_map(|mark| match mark {
            Mark::Step { procedure, .. } => Some(*procedure),
            _ => None,
        }));
        groups.insert(run.group);
        conditions.insert(run.conditions.clone());
        units.insert(run.ndjson().contains("pressure_bar"));
        let day = |event: &Event| event.at.unwrap().to_string()[..10].to_owned();
        midnight += usize::from(day(&run.events[0]) != day(run.events.last().unwrap()));
        whole += usize::from(run.whole_minutes);
        spares += run.bottles.len() - 1;
        events += run.events.len();
    }
    assert_eq!(devices.len(), RULEBOOK.devices.len());
    assert_eq!(cylinders.len(), RULEBOOK.cylinders.len());
    assert_eq!(procedures.len(), RULEBOOK.procedures.len());
    // No patient, adult, child, infant.
    assert_eq!(groups.len(), 4);
    assert_eq!(conditions.len(), 10);
    assert_eq!(units.len(), 2);
    assert!(
        midnight > 100 && whole > 100 && spares > 100,
        "{midnight} {whole} {spares}"
    );
    let mean = events as f64 / RUNS as f64;
    assert!((50.0..80.0).contains(&mean), "{mean} events in a run");
}

#[test]
fn a_line_of_json_says_what_the_run_holds() {
    for run in clean().take(200).chain((0..200).map(Generated::faulty)) {
        let read: serde_json::Value = serde_json::from_str(&run.ndjson()).unwrap();
        assert_eq!(read["run"], run.run.as_str());
        let group = run.group.map(|id| &*RULEBOOK.group(id).unwrap().rule.id);
        assert_eq!(read["group"].as_str(), group);
        assert_eq!(
            read["conditions"].as_array().map(Vec::len),
            run.conditions.as_ref().map(Vec::len)
        );
        assert_eq!(read["temperature_c"].as_f64(), run.temperature_c);
        let events = read["events"].as_array().unwrap();
        assert_eq!(events.len(), run.events.len());
        let mut csv = csv::of(&run);
        for (line, event) in events.iter().zip(&run.events) {
            let row = csv.next().unwrap();
            let text = |name: &str| line[name].as_str();
            let number = |name: &str| line[name].as_f64();
            assert_eq!(text("at").map(str::to_owned), event.at.map(|at| at.to_string()));
            if event.unreadable == Default::default() {
                assert_eq!(text("do"), event.action.map(Action::word));
            }
            let device = event.device.map(|id| &*RULEBOOK.device(id).unwrap().rule.id);
            assert_eq!(text("device"), device);
            let cylinder = event.cylinder.map(|id| &*RULEBOOK.cylinder(id).unwrap().rule.id);
            assert_eq!(text("cylinder"), cylinder);
            assert_eq!(
                number("flow_lpm"),
                event.flow.map(|flow| flow.as_litres_per_minute())
            );
            assert_eq!(number("spo2_percent"), event.spo2.map(|spo2| spo2.as_percent()));
            let psi = number("pressure_psi").or(number("pressure_bar").map(|bar| bar * PSI_PER_BAR));
            match (psi, event.pressure) {
                (Some(psi), Some(pressure)) => assert!((psi - pressure.as_psi()).abs() < 0.01),
                (psi, pressure) => assert_eq!(psi.is_none(), pressure.is_none()),
            }
            for (name, cell) in &row {
                let same = match (name.as_str(), &line[name.as_str()]) {
                    ("run" | "group" | "conditions" | "temperature_c", _) => continue,
                    (_, serde_json::Value::Null) => String::new(),
                    (_, serde_json::Value::String(text)) => text.clone(),
                    (_, serde_json::Value::Number(number)) => number.to_string(),
                    (name, other) => panic!("{name} is {other}"),
                };
                assert_eq!(*cell, same, "{name}");
            }
        }
        assert!(csv.next().is_none());
    }
}

mod csv {
    use super::{CSV_HEADER, Generated};

    /// Rows by the names of their columns.
    pub fn of(run: &Generated) -> impl Iterator<Item = Vec<(String, String)>> + use<> {
        let rows: Vec<Vec<(String, String)>> = run
            .csv()
            .lines()
            .map(|row| {
                let cells: Vec<&str> = row.split(',').collect();
                let names: Vec<&str> = CSV_HEADER.split(',').collect();
                assert_eq!(cells.len(), names.len());
                names
                    .into_iter()
                    .map(str::to_owned)
                    .zip(cells.into_iter().map(str::to_owned))
                    .collect()
            })
            .collect();
        rows.into_iter()
    }
}

#[test]
fn every_kind_of_fault_is_made() {
    let names: BTreeSet<&str> = KINDS.iter().map(|(name, _)| *name).collect();
    assert_eq!(names.len(), KINDS.len(), "names are unique");
    let mut made = BTreeSet::new();
    for seed in 0..4 * KINDS.len() as u64 {
        let run = Generated::faulty(seed);
        let injected = run.injected.unwrap();
        assert!(!injected.expect.is_empty());
        // A kind that is one code, or a hazard, is named so.
        let code = injected.expect[0].code;
        let named = injected.kind.starts_with(code);
        assert!(named, "{} expects {code}", injected.kind);
        made.insert(injected.kind);
    }
    assert_eq!(made, names);
}
