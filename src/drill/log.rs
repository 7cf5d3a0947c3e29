//! A log of a run with exactly one thing wrong.
//!
//! A sound log goes from a procedure that follows none to one that ends safe, step by step as the book has them, with
//! readings that fit the flow. It is taken when the reviewer finds nothing about it. Then one thing is changed, and it is
//! taken when the reviewer finds one thing alone; of a flow out of its range, what it says of that flow.

use alloc::{format, string::String, vec, vec::Vec};

use super::{
    Difficulty, Exercise, Task,
    chance::Chance,
    draw::{aimed_at, flow_of, reading_in},
    words::{clock, lower, sentence},
};
use crate::book::{
    Action, CylinderId, Device, DeviceId, GroupId, Kind, Procedure, ProcedureId, Rulebook, Step,
};
use crate::check::Level;
use crate::check::review::{Event, Finding, Moment, Notes, Reviewer, Run};
use crate::equipment::{Gas, State};
use crate::quantity::{Flow, Percent, PressureUnit, Temperature};

/// What was changed in a sound log.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// A step was left out.
    LeftOut,
    /// A step was done before the one ahead of it.
    Swapped,
    /// The flow was set outside the device's range.
    Flow,
    /// A gauge reading doesn't fit the flow.
    Reading,
}

impl Change {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::LeftOut => "left-out",
            Self::Swapped => "swapped",
            Self::Flow => "flow",
            Self::Reading => "reading",
        }
    }
}

/// A log. The patient has no condition that changes the target.
#[derive(Clone, Debug, PartialEq)]
pub struct Log {
    /// The patient's group.
    pub group: GroupId,
    /// The cylinder's temperature.
    pub temperature: Temperature,
    /// What was done and read.
    pub events: Vec<Event>,
    /// What was changed, and at which event, counted from 0; of a step left out, the event before which it belongs.
    pub wrong: Option<(Change, usize)>,
}

impl Log {
    /// The log as a run to be reviewed.
    #[must_use]
    pub fn run(&self) -> Run<'_> {
        Run {
            group: Some(self.group),
            conditions: Some(&[]),
            temperature: Some(self.temperature),
            events: &self.events,
        }
    }
}

/// Makes logs from a book.
pub(super) struct Maker<'b> {
    pub book: &'b Rulebook,
    pub reviewer: Reviewer<'b, &'b Rulebook>,
}

/// What may be changed.
pub(super) const fn changes(difficulty: Difficulty) -> &'static [Change] {
    match difficulty {
        Difficulty::Easy => &[Change::LeftOut, Change::Flow],
        Difficulty::Medium => &[Change::Swapped, Change::LeftOut, Change::Flow],
        Difficulty::Hard => &[Change::Reading, Change::Swapped, Change::Flow],
    }
}

/// Most lines of a log.
const fn most_lines(difficulty: Difficulty) -> usize {
    match difficulty {
        Difficulty::Easy => 24,
        Difficulty::Medium => 44,
        Difficulty::Hard => 64,
    }
}

/// Midnight of 2026-01-01; logs show the time of day only.
const DAY: i64 = 1_767_225_600_000;
const MINUTE: i64 = 60_000;

impl<'b> Maker<'b> {
    pub fn exercise(
        &self,
        difficulty: Difficulty,
        change: Change,
        chance: &mut Chance,
        notes: &mut Notes<'b>,
    ) -> Option<Exercise<'b>> {
        let sound = self.sound(difficulty, chance)?;
        if !self.found(&sound, notes).is_empty() {
            return None;
        }
        // A sound log is dear; several things are tried with it.
        (0..12).find_map(|_| self.spoilt(difficulty, change, &sound, chance, notes))
    }

    /// What the reviewer finds wrong, or could not check.
    fn found(&self, log: &Log, notes: &mut Notes<'b>) -> Vec<Finding<'b>> {
        let mut found = Vec::new();
        self.reviewer.review(&log.run(), notes, |finding| {
            if finding.level.is_wrong() {
                found.push(finding);
            }
        });
        found
    }

    fn spoilt(
        &self,
        difficulty: Difficulty,
        change: Change,
        sound: &Log,
        chance: &mut Chance,
        notes: &mut Notes<'b>,
    ) -> Option<Exercise<'b>> {
        let mut log = sound.clone();
        let fits = |event: &Event| match change {
            Change::Flow => event.flow.is_some_and(|flow| flow > Flow::ZERO),
            Change::Reading => event.pressure.is_some(),
            Change::LeftOut | Change::Swapped => true,
        };
        let places: Vec<usize> = (0..)
            .zip(&log.events)
            .filter(|(_, event)| fits(event))
            .map(|(at, _)| at)
            .collect();
        let at = *chance.pick(&places)?;
        match change {
            Change::LeftOut => {
                // The last line left out would leave a log that ends early, and the first one that begins late.
                if at == 0 || at + 1 == log.events.len() {
                    return None;
                }
                log.events.remove(at);
            }
            Change::Swapped => {
                let (first, second) = (log.events.get(at).copied()?, log.events.get(at + 1).copied()?);
                *log.events.get_mut(at)? = Event {
                    at: first.at,
                    ..second
                };
                *log.events.get_mut(at + 1)? = Event {
                    at: second.at,
                    ..first
                };
            }
            Change::Flow => {
                let off = if difficulty == Difficulty::Easy { 4.0 } else { 2.0 };
                let event = log.events.get_mut(at)?;
                let flow = event
                    .flow
                    .filter(|flow| *flow > Flow::ZERO)?
                    .as_litres_per_minute();
                let device = sound.events.iter().find_map(|event| event.device);
                let range = self.book.device(device?)?.flow_for(sound.group);
                let low = range.low.value().map_or(0.0, Flow::as_litres_per_minute);
                let high = range.high.value().map_or(flow, Flow::as_litres_per_minute);
                let to = if low - off >= 1.0 { low - off } else { high + off };
                event.flow = Flow::litres_per_minute(to).ok();
            }
            Change::Reading => {
                // The first reading is what the others are measured by.
                let first = log.events.iter().position(|event| event.pressure.is_some());
                if first == Some(at) {
                    return None;
                }
                let unit = self.unit(sound)?;
                let event = log.events.get_mut(at)?;
                let reading = event.pressure?.as_unit(unit);
                let part = f64::from(chance.within(55, 75)) / 100.0;
                event.pressure = reading_in(unit, reading * part);
            }
        }
        log.wrong = Some((change, at));
        let found = self.found(&log, notes);
        let only = found.first()?;
        // The book may say of one flow both what the device allows and what comes of it.
        let alike = |other: &Finding<'_>| {
            change == Change::Flow
                && other.event == only.event
                && matches!(other.kind, Kind::Device | Kind::Hazard)
        };
        if !found.iter().skip(1).all(alike) {
            return None;
        }
        // About the record itself, or something that could not be checked: nothing a crew did wrong.
        if found
            .iter()
            .any(|one| one.kind == Kind::Agency || one.level == Level::Unknown)
        {
            return None;
        }
        let mut working: Vec<String> = (found.iter().skip(1))
            .map(|other| format!("Also: {}", sentence(other)))
            .collect();
        if let Some(event) = only
            .event
            .and_then(|event| log.events.get(usize::try_from(event).ok()?))
        {
            working.push(format!("Look at {}.", time_of(event)));
        }
        Some(Exercise {
            difficulty,
            question: format!(
                "A log of a run: {}, no condition, {}. One thing is wrong. Which, and where?",
                lower(&self.book.group(log.group)?.rule.name),
                self.book.agency.temperature_unit.show(log.temperature),
            ),
            lines: log.events.iter().map(|event| self.line(event)).collect(),
            answer: sentence(only),
            working,
            rules: vec![only.rule.into()],
            task: Task::Log(log),
        })
    }

    fn unit(&self, log: &Log) -> Option<PressureUnit> {
        let cylinder = log.events.iter().find_map(|event| event.cylinder)?;
        Some(self.book.cylinder(cylinder)?.factor.written().1)
    }

    /// A log with nothing wrong, as far as its maker knows.
    fn sound(&self, difficulty: Difficulty, chance: &mut Chance) -> Option<Log> {
        let book = self.book;
        let chain = self.chain(chance)?;
        // Harder ones have a patient in them.
        let gives = chain
            .iter()
            .filter_map(|id| self.book.procedure(*id))
            .any(gives_oxygen);
        if !gives && difficulty != Difficulty::Easy {
            return None;
        }
        let device = self.device(&chain, chance)?;
        let worn = book.device(device)?;
        let group = *chance.pick(&worn.fits)?;
        let cylinder = CylinderId(u16::try_from(chance.below(book.cylinders.len())).ok()?);
        let size = book.cylinder(cylinder)?;
        let unit = size.factor.written().1;
        let full = size.service_pressure.as_unit(unit) * f64::from(chance.within(80, 98)) / 100.0;
        let temperature = Temperature::celsius(f64::from(chance.within(3, 5) * 5)).ok()?;
        let gas = Gas::new(size.water_capacity, temperature, reading_in(unit, full)?).ok()?;
        let mut writer = Writer {
            now: DAY + i64::from(chance.within(6 * 60, 20 * 60)) * MINUTE,
            gas,
            unit,
            open: false,
            flow: Flow::ZERO,
            events: Vec::new(),
            device: (device, worn),
            set: flow_of(worn, group, chance)?,
            spo2: aimed_at(book, group, chance)?,
        };
        for id in chain {
            for step in &book.procedure(id)?.steps {
                writer.step(step, chance)?;
            }
            writer.pause(chance.within(1, 4));
        }
        let fetched = writer
            .events
            .iter()
            .position(|event| event.action == Some(Action::FetchCylinder));
        writer.events.get_mut(fetched.unwrap_or(0))?.cylinder = Some(cylinder);
        (writer.events.len() <= most_lines(difficulty)).then_some(Log {
            group,
            temperature,
            events: writer.events,
            wrong: None,
        })
    }

    /// Procedures one after the other, from one that follows none to one that ends safe.
    fn chain(&self, chance: &mut Chance) -> Option<Vec<ProcedureId>> {
        let all = || (0_u16..).map(ProcedureId).zip(&self.book.procedures);
        let first: Vec<ProcedureId> = all()
            .filter(|(_, procedure)| procedure.follows.is_empty())
            .map(|(id, _)| id)
            .collect();
        let mut chain = vec![*chance.pick(&first)?];
        while chain.len() < 8 {
            let last = *chain.last()?;
            let ends_safe = self.book.procedure(last)?.ends_safe;
            let next: Vec<ProcedureId> = all()
                .filter(|(id, procedure)| procedure.follows.contains(&last) && !chain.contains(id))
                .map(|(id, _)| id)
                .collect();
            if ends_safe && (next.is_empty() || chance.below(3) == 0) {
                return Some(chain);
            }
            chain.push(*chance.pick(&next)?);
        }
        None
    }

    /// A device that every procedure of a chain is for.
    fn device(&self, chain: &[ProcedureId], chance: &mut Chance) -> Option<DeviceId> {
        let fits = |device: &DeviceId| {
            chain.iter().all(|id| {
                self.book.procedure(*id).is_some_and(|procedure| {
                    procedure.devices.is_empty() || procedure.devices.contains(device)
                })
            })
        };
        let devices: Vec<DeviceId> = (0_u16..)
            .map(DeviceId)
            .take(self.book.devices.len())
            .filter(fits)
            .collect();
        chance.pick(&devices).copied()
    }

    fn line(&self, event: &Event) -> (String, String) {
        let mut parts: Vec<String> = Vec::new();
        if let Some(action) = event.action {
            parts.push(action.word().replace('-', " "));
        }
        if let Some(cylinder) = event.cylinder.and_then(|id| self.book.cylinder(id)) {
            parts.push(format!("{} cylinder", cylinder.rule.name));
        }
        if let Some(device) = event.device.and_then(|id| self.book.device(id)) {
            parts.push(lower(&device.rule.name));
        }
        if let Some(pressure) = event.pressure {
            parts.push(format!("{pressure}"));
        }
        if let Some(flow) = event.flow {
            parts.push(format!("{flow}"));
        }
        if let Some(spo2) = event.spo2 {
            parts.push(format!("SpO₂ {spo2}"));
        }
        (time_of(event), parts.join(", "))
    }
}

fn gives_oxygen(procedure: &Procedure) -> bool {
    procedure
        .steps
        .iter()
        .any(|step| step.action == Action::PlaceDevice)
}

/// Writes a sound log, step by step.
struct Writer<'b> {
    now: i64,
    gas: Gas,
    unit: PressureUnit,
    open: bool,
    flow: Flow,
    events: Vec<Event>,
    device: (DeviceId, &'b Device),
    set: Flow,
    spo2: Percent,
}

impl Writer<'_> {
    /// Time passes, so that a step left out doesn't show by a gap alone.
    fn pause(&mut self, minutes: i32) {
        self.now += i64::from(minutes) * MINUTE;
        if self.open {
            self.gas = self
                .gas
                .less(self.flow.as_litres_per_minute() * f64::from(minutes));
        }
    }

    fn step(&mut self, step: &Step, chance: &mut Chance) -> Option<()> {
        let tells = matches!(
            step.action,
            Action::ReadGauge | Action::SetFlow | Action::ConnectDevice
        );
        // Who keeps a log on paper doesn't write down every look.
        if !step.critical && !tells && !State::concerns(step.action) {
            return Some(());
        }
        if step.action == Action::FillReservoir && !self.device.1.reservoir {
            return Some(());
        }
        let mut event = Event {
            at: Some(Moment::new(self.now, 0)),
            action: Some(step.action),
            ..Event::default()
        };
        match step.action {
            Action::OpenCylinder => self.open = true,
            Action::CloseCylinder => self.open = false,
            Action::SetFlow => {
                self.flow = self.set;
                event.flow = Some(self.set);
            }
            Action::ZeroFlow => self.flow = Flow::ZERO,
            Action::ReadGauge if self.open => {
                event.pressure = reading_in(self.unit, self.gas.pressure().as_unit(self.unit));
            }
            Action::ChooseDevice | Action::ConnectDevice => event.device = Some(self.device.0),
            Action::WatchPatient => event.spo2 = Some(self.spo2),
            _ => {}
        }
        self.events.push(event);
        self.pause(chance.within(0, 1));
        Some(())
    }
}

/// The time of day of an event.
fn time_of(event: &Event) -> String {
    let minutes = event.at.map_or(0, |at| (at.unix_millis() - DAY) / MINUTE);
    clock(minutes.unsigned_abs())
}
