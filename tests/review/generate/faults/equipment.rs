//! Hazards that come of what is done with the equipment, and of its temperature.

use oxyfolio::book::Action;
use oxyfolio::check::review::Event;
use oxyfolio::{hazard, procedure};

use super::super::bottles::read_gauges;
use super::super::rng::Rng;
use super::super::script::{MINUTE, SECOND, flow};
use super::super::{Expected, Generated};
use super::{care_line, expected, hazard, of_device, of_hazard, of_procedure, step_line};

type Found = Option<Vec<Expected>>;

fn at(run: &Generated, line: usize, later: i64, action: Action) -> Event {
    Event {
        at: run.events[line].at.map(|at| at.plus_millis(later)),
        action: Some(action),
        ..Event::default()
    }
}

/// The flow is off for four minutes with the device on.
pub fn no_flow(run: &mut Generated, rng: &mut Rng) -> Found {
    let (line, now) = care_line(run, rng)?;
    run.delay(line + 1, 5 * MINUTE);
    let off = at(run, line, 20 * SECOND, Action::ZeroFlow);
    let on = at(run, line, 260 * SECOND, Action::SetFlow);
    run.insert(line + 1, off);
    run.insert(
        line + 2,
        Event {
            flow: Some(flow(now.flow)),
            ..on
        },
    );
    read_gauges(run, rng, |_| 0.0)?;
    Some(vec![hazard(hazard::NO_FLOW_ON_PATIENT)])
}

/// The cylinder is closed for four minutes with the device on.
pub fn closed_on_patient(run: &mut Generated, rng: &mut Rng) -> Found {
    let (line, _) = care_line(run, rng)?;
    run.delay(line + 1, 5 * MINUTE);
    let closed = at(run, line, 20 * SECOND, Action::CloseCylinder);
    let open = at(run, line, 260 * SECOND, Action::OpenCylinder);
    run.insert(line + 1, closed);
    run.insert(line + 2, open);
    read_gauges(run, rng, |_| 0.0)?;
    Some(vec![hazard(hazard::CLOSED_ON_PATIENT)])
}

/// The mask goes on, and only then is its bag filled.
pub fn mask_before_bag(run: &mut Generated, _: &mut Rng) -> Found {
    let fill = step_line(run, procedure::APPLY_RESERVOIR_MASK, "fill")?;
    let place = step_line(run, procedure::APPLY_RESERVOIR_MASK, "place")?;
    run.move_before(place, fill);
    let device = super::device_at(run, fill)?;
    Some(vec![
        hazard(hazard::RESERVOIR_NOT_FILLED),
        expected(
            "reservoir-not-filled",
            vec![of_hazard(hazard::RESERVOIR_NOT_FILLED), of_device(device)],
        ),
    ])
}

/// The hand bag is used, and only then is its reservoir filled.
pub fn hand_bag_before_reservoir(run: &mut Generated, _: &mut Rng) -> Found {
    let fill = step_line(run, procedure::VENTILATE_BY_HAND, "fill")?;
    let place = step_line(run, procedure::VENTILATE_BY_HAND, "place")?;
    run.move_before(place, fill);
    let device = super::device_at(run, fill)?;
    Some(vec![
        hazard(hazard::HAND_BAG_RESERVOIR_EMPTY),
        expected(
            "reservoir-not-filled",
            vec![of_hazard(hazard::HAND_BAG_RESERVOIR_EMPTY), of_device(device)],
        ),
    ])
}

/// The valve is opened with nothing on it, for a minute.
pub fn open_without_regulator(run: &mut Generated, _: &mut Rng) -> Found {
    let clear = step_line(run, procedure::FIT_REGULATOR, "clear")?;
    run.delay(clear + 1, 2 * MINUTE);
    let open = at(run, clear, 20 * SECOND, Action::OpenCylinder);
    let close = at(run, clear, 80 * SECOND, Action::CloseCylinder);
    run.insert(clear + 1, open);
    run.insert(clear + 2, close);
    Some(vec![hazard(hazard::OPEN_WITHOUT_REGULATOR)])
}

/// The outlet is blown clear when the regulator is on it already.
pub fn outlet_not_cleared(run: &mut Generated, _: &mut Rng) -> Found {
    let clear = step_line(run, procedure::FIT_REGULATOR, "clear")?;
    let tight = step_line(run, procedure::FIT_REGULATOR, "tighten")?;
    for line in clear..tight {
        run.move_before(line + 1, line);
    }
    Some(vec![hazard(hazard::OUTLET_NOT_CLEARED)])
}

/// The regulator is taken off before it is bled.
pub fn regulator_off_under_pressure(run: &mut Generated, _: &mut Rng) -> Found {
    let bleed = step_line(run, procedure::SHUT_DOWN, "bleed")?;
    let off = step_line(run, procedure::SHUT_DOWN, "regulator-off")?;
    run.move_before(off, bleed);
    Some(vec![
        hazard(hazard::REGULATOR_OFF_UNDER_PRESSURE),
        expected("step-refused", vec![of_procedure(procedure::SHUT_DOWN)]),
    ])
}

pub fn too_hot(run: &mut Generated, rng: &mut Rng) -> Found {
    run.temperature_c = Some(rng.whole(54, 59) as f64);
    run.group?;
    read_gauges(run, rng, |_| 0.0)?;
    Some(vec![hazard(hazard::TOO_HOT)])
}

pub fn too_cold(run: &mut Generated, rng: &mut Rng) -> Found {
    run.temperature_c = Some(rng.whole(-38, -24) as f64);
    run.group?;
    read_gauges(run, rng, |_| 0.0)?;
    Some(vec![hazard(hazard::TOO_COLD)])
}
