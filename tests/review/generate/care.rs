//! A whole run with nothing wrong: which patient, which device, what happens on oxygen, and how it ends.

use oxyfolio::book::{
    Action, ConditionId, Device, DeviceFlow, DeviceId, GroupId, ProcedureId, Saturation, TargetId,
};
use oxyfolio::check::review::Event;
use oxyfolio::{RULEBOOK, condition, device, group, procedure};

use super::patients::PATIENTS;
use super::rng::Rng;
use super::script::{MINUTE, Patient, Reading, SECOND, Script, TO_BE_READ, flow};
use super::{Generated, Mark, Unit, bottles};

/// 2026-01-01T00:00:00Z.
const YEAR: i64 = 1_767_225_600_000;

pub fn clean(seed: u64, may_be_whole_minutes: bool) -> Generated {
    let mut rng = Rng::new(seed);
    let whole_minutes = rng.chance(0.12) && may_be_whole_minutes;
    let offset = *rng.pick(&[0, 60, 120, -300, -480, 330]);
    // One run in five begins shortly before midnight on the crew's clock, and goes past it.
    let minute_of_day = if rng.chance(0.2) {
        rng.whole(23 * 60 + 35, 23 * 60 + 55)
    } else {
        rng.whole(0, 23 * 60)
    };
    let day = rng.whole(0, 360);
    let start = YEAR + (day * 1_440 + minute_of_day - i64::from(offset)) * MINUTE;
    let start = start + rng.whole(0, 59) * SECOND;
    let mut run = Generated {
        seed,
        run: format!("run-{seed:06}"),
        group: None,
        conditions: None,
        temperature_c: Some(rng.whole(-10, 40) as f64),
        events: Vec::new(),
        by: Vec::new(),
        injected: None,
        marks: Vec::new(),
        target: None,
        bottles: Vec::new(),
        unit: Unit::Psi,
        whole_minutes,
    };
    let pace = *rng.pick(&[(3.0, 8.0), (4.0, 15.0), (8.0, 25.0), (10.0, 45.0)]);
    let mut script = Script {
        now: start,
        offset_minutes: offset,
        pace,
        events: Vec::with_capacity(96),
        marks: Vec::with_capacity(96),
        patient: None,
        device: device::NASAL_CANNULA,
        flow: 0.0,
        reading: Reading::Inside,
        on_patient: false,
        outside_since: None,
        block: 0,
        rng: &mut rng,
    };
    if script.rng.chance(0.08) {
        script.perform(procedure::CHECK_CYLINDER);
        script.perform(procedure::STOW);
    } else {
        let (group, conditions, target) = *script.rng.pick(PATIENTS);
        run.group = Some(group);
        run.conditions = Some(conditions.to_vec());
        run.target = Some(target);
        call(&mut script, group, conditions, target);
    }
    (run.events, run.marks) = (script.events, script.marks);
    run.by = run
        .marks
        .iter()
        .map(|_| *rng.pick(&["attendant", "driver"]))
        .collect();
    if whole_minutes {
        for event in &mut run.events {
            let at = event.at.unwrap();
            let over = at.unix_millis().rem_euclid(MINUTE);
            event.at = Some(at.plus_millis(if over < 30 * SECOND { -over } else { MINUTE - over }));
        }
    }
    bottles::choose(&mut run, &mut rng);
    // To the minute two lines can look the same though they were two, such as the gauge read at the end of one procedure and
    // again at the beginning of the next. Then the crew wrote down seconds.
    if whole_minutes && run.events.windows(2).any(|pair| pair[0] == pair[1]) {
        return clean(seed, false);
    }
    run
}

/// From making ready to putting away.
fn call(script: &mut Script<'_>, group: GroupId, conditions: &[ConditionId], target: TargetId) {
    let retains = conditions.contains(&condition::RETAINS_CO2);
    let target = RULEBOOK.target(target).unwrap();
    script.patient = Some(Patient {
        target,
        // The hazard of a very low saturation leaves out adults who retain carbon dioxide; their urgent line is 80 %.
        never_below: if retains && group == group::ADULT {
            81.0
        } else {
            86.0
        },
    });
    let start = beginning(script, group, target);
    script.device = start.0;
    script.flow = start.1;
    script.reading = match target.saturation {
        Saturation::Range(_) => Reading::Low,
        Saturation::NotReliable => Reading::Inside,
    };
    script.perform(procedure::MAKE_READY);
    script.perform(procedure::FIT_REGULATOR);
    if script.rng.chance(0.04) {
        // The patient turned out to need none.
        script.perform(procedure::SHUT_DOWN);
        script.perform(procedure::STOW);
        return;
    }
    let mut care = Care {
        group,
        retains,
        can_guide: matches!(target.saturation, Saturation::Range(_)),
        changed_cylinder: false,
    };
    care.give(script);
    care.reading_before_oxygen(script);
    care.on_oxygen(script);
    if script.rng.chance(0.08) && care.can_guide {
        // It falls again without oxygen.
        script.wait(60.0, 200.0);
        script.reading = Reading::Low;
        let spo2 = script.spo2();
        script.look(Event {
            action: Some(Action::WatchPatient),
            spo2,
            ..Event::default()
        });
        let pace = script.pace;
        script.pace = (3.0, 11.0);
        care.give(script);
        script.pace = pace;
        care.on_oxygen(script);
    }
    script.wait(20.0, 120.0);
    script.perform(procedure::SHUT_DOWN);
    if script.rng.chance(0.85) {
        script.perform(procedure::STOW);
    }
}

/// The device and flow to begin with: as the target says, another step of its ladder, or another device that fits.
fn beginning(
    script: &mut Script<'_>,
    group: GroupId,
    target: &'static oxyfolio::book::Target,
) -> (DeviceId, f64) {
    let plain = |step: DeviceFlow| (step.device, step.flow.as_litres_per_minute());
    let carbon_monoxide = target.condition == Some(condition::CARBON_MONOXIDE);
    let draw = script.rng.unit();
    if draw < 0.4 || carbon_monoxide && draw < 0.7 {
        return plain(target.start);
    }
    if draw < 0.75 || target.condition.is_some() {
        let ladder: Vec<DeviceFlow> = target.ladder.iter().copied().collect();
        return plain(*script.rng.pick(&ladder));
    }
    let fitting: Vec<u16> = (0..RULEBOOK.devices.len() as u16)
        .filter(|id| RULEBOOK.device(DeviceId(*id)).unwrap().fits(group))
        .collect();
    let id = DeviceId(*script.rng.pick(&fitting));
    let (low, high) = flows(id, group);
    let flow = (script.rng.between(low, high) * 2.0).floor() / 2.0;
    (id, flow.max(low))
}

/// The flows a clean run may set: the book's for the group, and for a cannula no more than is comfortable.
pub fn flows(id: DeviceId, group: GroupId) -> (f64, f64) {
    let range = RULEBOOK.device(id).unwrap().flow_for(group);
    let low = range.low.value().unwrap().as_litres_per_minute();
    let high = range.high.value().unwrap().as_litres_per_minute();
    (
        low,
        if id == device::NASAL_CANNULA {
            high.min(4.0)
        } else {
            high
        },
    )
}

fn giving(id: DeviceId) -> ProcedureId {
    let device: &Device = RULEBOOK.device(id).unwrap();
    [
        procedure::APPLY_RESERVOIR_MASK,
        procedure::APPLY_CANNULA,
        procedure::GIVE_BY_OTHER_MASK,
        procedure::VENTILATE_BY_HAND,
    ]
    .into_iter()
    .find(|procedure| RULEBOOK.procedure(*procedure).unwrap().devices.contains(&id))
    .unwrap_or_else(|| panic!("nothing gives oxygen by {}", device.rule.id))
}

struct Care {
    group: GroupId,
    retains: bool,
    /// Whether the saturation guides what is done.
    can_guide: bool,
    changed_cylinder: bool,
}

impl Care {
    fn give(&mut self, script: &mut Script<'_>) {
        let procedure = giving(script.device);
        script.perform(procedure);
    }

    /// The reading before oxygen, where oxygen followed soon enough.
    fn reading_before_oxygen(&self, script: &mut Script<'_>) {
        let find = |action| {
            script
                .events
                .iter()
                .position(|event| event.action == Some(action))
        };
        let (Some(assessed), Some(placed)) = (find(Action::AssessPatient), find(Action::PlaceDevice)) else {
            return;
        };
        let at = |line: usize| script.events[line].at.unwrap();
        if self.can_guide && at(placed).minutes_since(at(assessed)) <= 3.3 {
            let now = std::mem::replace(&mut script.reading, Reading::Low);
            let spo2 = script.spo2();
            script.reading = now;
            script.events[assessed].spo2 = spo2;
        }
    }

    fn on_oxygen(&mut self, script: &mut Script<'_>) {
        if script.reading != Reading::Inside || script.outside_since.is_some() {
            self.good_reading(script, 40.0, 150.0);
        }
        for _ in 0..script.rng.whole(1, 4) {
            self.stretch(script);
        }
        script.wait(20.0, 300.0);
        script.perform(procedure::REMOVE_DEVICE);
    }

    /// Some minutes of watching, and at times something that changes.
    fn stretch(&mut self, script: &mut Script<'_>) {
        match script.rng.below(7) {
            0 if self.can_guide => {
                script.wait(60.0, 400.0);
                script.reading = Reading::Low;
                self.watch(script);
                if script.rng.chance(0.7) && self.step(script, true) {
                    self.good_reading(script, 60.0, 150.0);
                } else {
                    // The tubing was bent: straightened, and it comes back.
                    self.good_reading(script, 60.0, 190.0);
                }
            }
            // Too much oxygen is a hazard of its own for those who retain carbon dioxide.
            1 if self.can_guide && !self.retains => {
                script.wait(60.0, 400.0);
                script.reading = Reading::High;
                self.watch(script);
                self.step(script, false);
                self.good_reading(script, 60.0, 150.0);
            }
            2 if self.can_guide => {
                script.wait(120.0, 420.0);
                self.watch(script);
                self.step(script, false);
                self.good_reading(script, 60.0, 190.0);
            }
            3 if !self.changed_cylinder && follows(script, procedure::CHANGE_OVER_CYLINDER) => {
                self.changed_cylinder = true;
                script.wait(60.0, 400.0);
                let pace = std::mem::replace(&mut script.pace, (3.0, 11.0));
                script.perform(procedure::CHANGE_OVER_CYLINDER);
                script.pace = pace;
                self.good_reading(script, 60.0, 150.0);
            }
            _ => {
                for _ in 0..script.rng.whole(1, 3) {
                    self.good_reading(script, 60.0, 420.0);
                }
            }
        }
    }

    fn good_reading(&mut self, script: &mut Script<'_>, low: f64, high: f64) {
        script.wait_for_answer(low, high);
        script.reading = Reading::Inside;
        self.watch(script);
    }

    /// Looks at the patient, and often at the gauge too.
    fn watch(&mut self, script: &mut Script<'_>) {
        let spo2 = script.spo2();
        let action = *script.rng.pick(&[Action::WatchPatient, Action::AssessPatient]);
        script.look(Event {
            action: Some(action),
            spo2,
            ..Event::default()
        });
        if script.reading != Reading::Inside {
            return;
        }
        if script.rng.chance(0.4) {
            script.wait(4.0, 20.0);
            script.look(Event {
                action: Some(Action::ReadGauge),
                pressure: TO_BE_READ,
                ..Event::default()
            });
        }
        if script.rng.chance(0.3) {
            script.wait(4.0, 20.0);
            let spo2 = script.spo2();
            script.look(Event {
                action: Some(Action::WriteDown),
                device: Some(script.device),
                flow: Some(flow(script.flow)),
                pressure: TO_BE_READ,
                spo2,
                ..Event::default()
            });
        }
    }

    /// One step up or down: the next of the ladder, or a flow of the same device. Says whether there was one.
    fn step(&mut self, script: &mut Script<'_>, up: bool) -> bool {
        let Some((next, litres)) = self.next_step(script, up) else {
            return false;
        };
        let same = next == script.device;
        if !same && !follows(script, procedure::CHANGE_DEVICE) {
            return false;
        }
        script.wait(8.0, 45.0);
        (script.device, script.flow) = (next, litres);
        if same {
            script.outside_since = None;
            script.look(Event {
                action: Some(Action::SetFlow),
                flow: Some(flow(litres)),
                ..Event::default()
            });
        } else {
            let pace = std::mem::replace(&mut script.pace, (3.0, 10.0));
            script.perform(procedure::CHANGE_DEVICE);
            script.pace = pace;
        }
        script.reading = Reading::Inside;
        if script.rng.chance(0.5) {
            script.wait(5.0, 30.0);
            script.look(Event {
                action: Some(Action::WorkOutMinutes),
                ..Event::default()
            });
        }
        true
    }

    fn next_step(&self, script: &mut Script<'_>, up: bool) -> Option<(DeviceId, f64)> {
        let target = script.patient.as_ref()?.target;
        let ladder: Vec<(DeviceId, f64)> = target
            .ladder
            .iter()
            .map(|step| (step.device, step.flow.as_litres_per_minute()))
            .collect();
        let rung = ladder
            .iter()
            .position(|(device, flow)| *device == script.device && (*flow - script.flow).abs() < 0.01);
        let next = match (rung, up) {
            (Some(rung), true) => ladder.get(rung + 1),
            (Some(rung), false) => rung.checked_sub(1).and_then(|rung| ladder.get(rung)),
            (None, _) => None,
        };
        // Ventilating by hand begins from a removed device, not by a change.
        if let Some((device, flow)) = next
            && (*device != device::BAG_VALVE_MASK || script.device == device::BAG_VALVE_MASK)
        {
            return Some((*device, *flow));
        }
        let (low, high) = flows(script.device, self.group);
        let other = if up { script.flow + 1.0 } else { script.flow - 1.0 };
        (low..=high).contains(&other).then_some((script.device, other))
    }
}

/// Whether the book lets a procedure follow the one done last.
fn follows(script: &Script<'_>, next: ProcedureId) -> bool {
    let last = script.marks.iter().rev().find_map(|mark| match mark {
        Mark::Step { procedure, .. } => Some(*procedure),
        _ => None,
    });
    last.is_some_and(|last| RULEBOOK.procedure(next).unwrap().follows.contains(&last))
}

/// Whether a line is part of the care between two procedures.
pub fn is_care(mark: Mark) -> bool {
    matches!(mark, Mark::Care { .. })
}
