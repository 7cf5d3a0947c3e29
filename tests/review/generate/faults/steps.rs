//! Faults of order: too early, left out, impossible, out of place, and an end that isn't safe.

use std::ops::Range;

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, Kind, Procedure, ProcedureId};
use oxyfolio::check::review::Event;
use oxyfolio::{hazard, procedure};

use super::super::bottles::read_gauges;
use super::super::rng::Rng;
use super::super::script::SECOND;
use super::super::{Expected, Generated, Mark};
use super::{expected, of_hazard, of_procedure, step_line};

type Found = Option<Vec<Expected>>;

/// The lines of one performance of a procedure.
#[derive(Clone)]
struct Performance {
    id: ProcedureId,
    lines: Range<usize>,
}

impl Performance {
    fn procedure(&self) -> &'static Procedure {
        RULEBOOK.procedure(self.id).unwrap()
    }
}

fn performances(run: &Generated) -> Vec<Performance> {
    let mut all: Vec<(usize, Performance)> = Vec::new();
    for (line, mark) in run.marks.iter().enumerate() {
        if let Mark::Step { procedure, block, .. } = *mark {
            match all.last_mut() {
                Some((last, known)) if *last == block => known.lines.end = line + 1,
                _ => all.push((
                    block,
                    Performance {
                        id: procedure,
                        lines: line..line + 1,
                    },
                )),
            }
        }
    }
    all.into_iter().map(|(_, performance)| performance).collect()
}

fn line_of(run: &Generated, performance: &Performance, place: usize) -> usize {
    performance
        .lines
        .clone()
        .find(|line| matches!(run.marks[*line], Mark::Step { step, .. } if step == place))
        .unwrap()
}

/// Whether an action is also done by the neighbours of a performance, or in the care beside it: then nobody can say for which
/// of them it was done.
fn ambiguous(run: &Generated, all: &[Performance], index: usize, action: Action) -> bool {
    let from = index.checked_sub(1).map_or(0, |before| all[before].lines.start);
    let until = all.get(index + 1).map_or(run.events.len(), |next| next.lines.end);
    let own = &all[index].lines;
    let count = |lines: Range<usize>| {
        run.events[lines]
            .iter()
            .filter(|event| event.action == Some(action))
            .count()
    };
    count(from..until) != 1 || count(own.clone()) != 1
}

/// One step is done just before the one that comes first.
pub fn too_early(run: &mut Generated, rng: &mut Rng) -> Found {
    let all = performances(run);
    let index = rng.below(all.len());
    let performance = all[index].clone();
    let procedure = performance.procedure();
    let place = rng.below(procedure.steps.len());
    let step = &procedure.steps[place];
    let firsts: Vec<usize> = step.after.iter().map(|first| first.index()).collect();
    if firsts.is_empty() {
        return None;
    }
    let first = *rng.pick(&firsts);
    if ambiguous(run, &all, index, step.action) || ambiguous(run, &all, index, procedure.steps[first].action)
    {
        return None;
    }
    let (late, early) = (
        line_of(run, &performance, place),
        line_of(run, &performance, first),
    );
    run.move_before(late, early);
    Some(vec![Expected {
        step: Some(step.id.to_string()),
        ..expected("step-too-early", vec![of_procedure(performance.id)])
    }])
}

/// One critical step isn't there.
pub fn skipped(run: &mut Generated, rng: &mut Rng) -> Found {
    let all = performances(run);
    let index = rng.below(all.len());
    let performance = all[index].clone();
    let procedure = performance.procedure();
    let place = rng.below(procedure.steps.len());
    let step = &procedure.steps[place];
    let line = line_of(run, &performance, place);
    // Where the last line of the record is missing, the record may only have been cut.
    if !step.critical || ambiguous(run, &all, index, step.action) || line + 1 == run.events.len() {
        return None;
    }
    // What has no bag can't have it filled.
    let device = run.events[..line].iter().rev().find_map(|event| event.device);
    let bag = device
        .and_then(|device| RULEBOOK.device(device))
        .is_some_and(|device| device.reservoir);
    if step.action == Action::FillReservoir && !bag {
        return None;
    }
    // Every other step of stowing is one of the check done again, and a check needs no stowing after it.
    if performance.id == procedure::STOW && step.action == Action::StowCylinder && run.target.is_none() {
        return None;
    }
    run.remove(line);
    Some(vec![Expected {
        step: Some(step.id.to_string()),
        ..expected("step-skipped", vec![of_procedure(performance.id)])
    }])
}

/// Steps that can't be done, or do harm, before another.
const IMPOSSIBLE: &[(ProcedureId, &str, &str)] = &[
    (procedure::FIT_REGULATOR, "gauge", "open"),
    (procedure::FIT_REGULATOR, "leaks", "open"),
    (procedure::FIT_REGULATOR, "open", "tighten"),
    (procedure::CHECK_CYLINDER, "gauge", "open"),
    (procedure::CHECK_CYLINDER, "bleed", "close"),
    (procedure::APPLY_RESERVOIR_MASK, "fill", "set"),
    (procedure::CHANGE_DEVICE, "disconnect", "take-off"),
    (procedure::CHANGE_DEVICE, "connect", "disconnect"),
    // Not the regulator off before bleeding in a change-over: the flow that is still set has bled it by then.
    (procedure::REMOVE_DEVICE, "disconnect", "take-off"),
    (procedure::REMOVE_DEVICE, "dispose", "disconnect"),
    (procedure::SHUT_DOWN, "bleed", "close"),
    (procedure::SHUT_DOWN, "regulator-off", "bleed"),
];

/// One step is done where the equipment doesn't allow it.
pub fn refused(run: &mut Generated, rng: &mut Rng) -> Found {
    let (id, step, first) = *rng.pick(IMPOSSIBLE);
    let (late, early) = (step_line(run, id, step)?, step_line(run, id, first)?);
    run.move_before(late, early);
    let mut rules = vec![of_procedure(id)];
    if id == procedure::REMOVE_DEVICE {
        // Who disconnects first may be about to change the device: both procedures have the step.
        rules.push(of_procedure(procedure::CHANGE_DEVICE));
    }
    Some(vec![expected("step-refused", rules)])
}

/// Something is done on oxygen that belongs to quite another procedure, and changes nothing.
pub fn out_of_place(run: &mut Generated, rng: &mut Rng) -> Found {
    let (line, _) = super::care_line(run, rng)?;
    let Mark::Care { block } = run.marks[line] else {
        return None;
    };
    let current = run.marks.iter().find_map(|mark| match *mark {
        Mark::Step {
            procedure, block: of, ..
        } if of == block => Some(procedure),
        _ => None,
    })?;
    let (action, owners): (Action, &[ProcedureId]) = *rng.pick(&[
        // A look more than the book asks for is never out of place; these do something.
        (Action::CapOutlet, &[procedure::SHUT_DOWN] as &[ProcedureId]),
        (
            Action::SeatRegulator,
            &[procedure::FIT_REGULATOR, procedure::CHANGE_OVER_CYLINDER],
        ),
        (Action::StowCylinder, &[procedure::STOW]),
    ]);
    run.delay(line + 1, 30 * SECOND);
    let event = Event {
        at: run.events[line].at.map(|at| at.plus_millis(10 * SECOND)),
        action: Some(action),
        ..Event::default()
    };
    run.insert(line + 1, event);
    read_gauges(run, rng, |_| 0.0)?;
    let begun = owners.iter().map(|owner| of_procedure(*owner)).collect();
    let mut expect = vec![
        expected("step-out-of-place", vec![of_procedure(current)]),
        expected("procedure-does-not-follow", begun),
    ];
    // None of them can be done with the regulator on an open cylinder.
    expect.push(expected("step-refused", vec![]));
    Some(expect)
}

/// Oxygen is given without the regulator ever being fitted.
pub fn does_not_follow(run: &mut Generated, _: &mut Rng) -> Found {
    let all = performances(run);
    let index = all
        .iter()
        .position(|performance| performance.id == procedure::FIT_REGULATOR)?;
    let next = all.get(index + 1)?.id;
    if next == procedure::SHUT_DOWN {
        return None;
    }
    for line in all[index].lines.clone().rev() {
        run.remove(line);
    }
    Some(vec![expected(
        "procedure-does-not-follow",
        vec![of_procedure(next)],
    )])
}

fn cut(run: &mut Generated, lines: usize) {
    run.events.truncate(lines);
    run.marks.truncate(lines);
    run.by.truncate(lines);
}

fn unsafe_end(last: ProcedureId) -> Found {
    let rules = vec![
        of_procedure(last),
        of_procedure(procedure::SHUT_DOWN),
        of_procedure(procedure::STOW),
        of_hazard(hazard::LEFT_PRESSURISED),
        (Kind::Agency, RULEBOOK.agency.rule.id.to_string()),
    ];
    Some(vec![expected("unsafe-end", rules)])
}

/// The device is off, and the cylinder is left open.
pub fn left_open(run: &mut Generated, _: &mut Rng) -> Found {
    let all = performances(run);
    let last = all
        .iter()
        .rfind(|performance| performance.id == procedure::REMOVE_DEVICE)?;
    cut(run, last.lines.end);
    unsafe_end(procedure::REMOVE_DEVICE)
}

/// The cylinder is closed, and the regulator is never bled.
pub fn left_under_pressure(run: &mut Generated, _: &mut Rng) -> Found {
    let bleed = step_line(run, procedure::SHUT_DOWN, "bleed")?;
    cut(run, bleed);
    unsafe_end(procedure::SHUT_DOWN)
}
