//! Kinds of faults. Each takes a clean run, does one thing wrong to it, and says what the review must find. A fault may have
//! consequences of its own; those are not asserted. Every amount is well beyond what gauges, flowmeters and clocks may be off.

#[path = "faults/care.rs"]
mod care;
#[path = "faults/equipment.rs"]
mod equipment;
#[path = "faults/gas.rs"]
mod gas;
#[path = "faults/record.rs"]
mod record;
#[path = "faults/steps.rs"]
mod steps;

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, DeviceId, HazardId, Kind, PolicyId, ProcedureId, TargetId};

use super::bottles::{Trace, trace};
use super::care::clean;
use super::rng::Rng;
use super::{Expected, Generated, Injected, Mark};

/// Puts a fault into a run; nothing when the run doesn't lend itself to it.
type Inject = fn(&mut Generated, &mut Rng) -> Option<Vec<Expected>>;

/// Every kind of fault, by name.
pub const KINDS: &[(&str, Inject)] = &[
    ("hazard no-flow-on-patient", equipment::no_flow),
    ("hazard closed-on-patient", equipment::closed_on_patient),
    ("hazard reservoir-not-filled", equipment::mask_before_bag),
    (
        "hazard hand-bag-reservoir-empty",
        equipment::hand_bag_before_reservoir,
    ),
    ("hazard open-without-regulator", equipment::open_without_regulator),
    ("hazard outlet-not-cleared", equipment::outlet_not_cleared),
    (
        "hazard regulator-off-under-pressure",
        equipment::regulator_off_under_pressure,
    ),
    ("hazard too-hot", equipment::too_hot),
    ("hazard too-cold", equipment::too_cold),
    ("hazard reservoir-flow-too-low", care::hazard_reservoir_flow),
    ("hazard flow-too-low", care::hazard_flow_too_low),
    ("hazard cannula-flow-too-high", care::hazard_cannula_too_high),
    ("hazard cannula-uncomfortable", care::hazard_cannula_uncomfortable),
    ("hazard flow-too-high", care::hazard_flow_too_high),
    ("hazard carbon-monoxide-low-oxygen", care::carbon_monoxide),
    ("hazard co2-too-much-oxygen", care::co2_too_much),
    ("hazard very-low-saturation", care::very_low),
    ("hazard change-over-due", gas::change_over_due),
    ("hazard nearly-empty", gas::nearly_empty),
    ("hazard call-for-more", gas::call_for_more),
    ("hazard not-fit-for-service", gas::not_fit_for_service),
    ("flow-too-low", care::flow_too_low),
    ("flow-too-high", care::flow_too_high),
    ("device-does-not-fit", care::device_does_not_fit),
    ("target-missed", care::target_missed),
    ("target-exceeded", care::target_exceeded),
    ("step-too-early", steps::too_early),
    ("step-skipped", steps::skipped),
    ("step-refused", steps::refused),
    ("step-out-of-place", steps::out_of_place),
    ("procedure-does-not-follow", steps::does_not_follow),
    ("unsafe-end open", steps::left_open),
    ("unsafe-end under pressure", steps::left_under_pressure),
    ("pressure-fell-too-fast by a leak", gas::leak),
    ("pressure-fell-too-fast by another size", gas::larger_size_written),
    ("pressure-fell-too-slow by a stuck gauge", gas::stuck_gauge),
    (
        "pressure-fell-too-slow by another size",
        gas::smaller_size_written,
    ),
    ("below-residual", gas::below_residual),
    ("would-run-out", gas::would_run_out),
    ("events-not-recorded", record::no_events),
    ("actions-not-recorded", record::no_actions),
    ("times-not-recorded", record::no_times),
    ("group-not-recorded", record::no_group),
    ("conditions-not-recorded", record::no_conditions),
    ("minute-of-life-not-recorded", record::newborn),
    ("no-target", record::two_targets),
    ("device-not-recorded", record::no_device),
    ("flow-not-recorded", record::no_flow),
    ("cylinder-not-recorded", record::no_cylinder),
    ("pressure-not-recorded", record::no_pressure),
    ("saturation-not-recorded", record::no_saturation),
    ("temperature-not-recorded", record::no_temperature),
    ("reservoir-not-recorded", record::no_reservoir),
    ("end-not-recorded", record::no_end),
    ("density-not-known", record::no_density),
    ("hazard-unknown", record::hazard_unknown),
    ("time-out-of-order", record::out_of_order),
    ("time-past-midnight", record::past_midnight),
    ("time-jump", record::jump),
    ("event-duplicate", record::duplicate),
];

/// A run with one thing wrong; kinds take turns.
pub fn faulty(seed: u64) -> Generated {
    let (kind, inject) = KINDS[(seed % KINDS.len() as u64) as usize];
    let mut rng = Rng::new(seed ^ 0x5EED_00FA_0017);
    for _ in 0..20_000 {
        let mut run = clean(rng.next(), false);
        if let Some(expect) = inject(&mut run, &mut rng) {
            run.seed = seed;
            run.run = format!("run-{seed:06}");
            run.injected = Some(Injected { kind, expect });
            return run;
        }
    }
    panic!("no clean run lends itself to {kind}");
}

fn expected(code: &'static str, rules: Vec<(Kind, String)>) -> Expected {
    Expected {
        code,
        rules,
        step: None,
    }
}

fn hazard(id: HazardId) -> Expected {
    let rule = &RULEBOOK.hazard(id).unwrap().rule;
    expected("hazard", vec![(Kind::Hazard, rule.id.to_string())])
}

fn of_hazard(id: HazardId) -> (Kind, String) {
    (Kind::Hazard, RULEBOOK.hazard(id).unwrap().rule.id.to_string())
}

fn of_device(id: DeviceId) -> (Kind, String) {
    (Kind::Device, RULEBOOK.device(id).unwrap().rule.id.to_string())
}

fn of_policy(id: PolicyId) -> (Kind, String) {
    (Kind::Policy, RULEBOOK.policy(id).unwrap().rule.id.to_string())
}

fn of_target(id: TargetId) -> (Kind, String) {
    (Kind::Target, RULEBOOK.target(id).unwrap().rule.id.to_string())
}

fn of_procedure(id: ProcedureId) -> (Kind, String) {
    (
        Kind::Procedure,
        RULEBOOK.procedure(id).unwrap().rule.id.to_string(),
    )
}

/// The device named last, at or before a line.
fn device_at(run: &Generated, line: usize) -> Option<DeviceId> {
    run.events[..=line].iter().rev().find_map(|event| event.device)
}

/// A care line after which the patient stays on oxygen, and the trace there.
fn care_line(run: &Generated, rng: &mut Rng) -> Option<(usize, Trace)> {
    let traces = trace(run);
    let lines: Vec<usize> = (0..run.events.len().saturating_sub(1))
        .filter(|line| super::care::is_care(run.marks[*line]) && traces[*line].on_patient)
        .collect();
    if lines.is_empty() {
        return None;
    }
    let line = *rng.pick(&lines);
    Some((line, traces[line]))
}

/// The line of a step in the first performance of a procedure.
fn step_line(run: &Generated, id: ProcedureId, step: &str) -> Option<usize> {
    let place = RULEBOOK
        .procedure(id)
        .unwrap()
        .steps
        .iter()
        .position(|known| &*known.id == step)
        .unwrap_or_else(|| panic!("no step {step}"));
    run.marks.iter().position(
        |mark| matches!(mark, Mark::Step { procedure, step, .. } if *procedure == id && *step == place),
    )
}

/// Whether an action begins or changes what the patient gets.
fn changes_oxygen(action: Option<Action>) -> bool {
    matches!(
        action,
        Some(
            Action::SetFlow
                | Action::ZeroFlow
                | Action::ConnectDevice
                | Action::PlaceDevice
                | Action::RemoveDevice
                | Action::OpenCylinder
                | Action::CloseCylinder
        )
    )
}
