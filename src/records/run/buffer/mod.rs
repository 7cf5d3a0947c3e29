//! One run as it was read. The buffer is kept from line to line, so that reading an event allocates nothing.

mod values;

use super::{
    BadLine, Fault, MAX_EVENTS, MAX_PROBLEMS,
    key::{Key, Stranger},
    problem::{About, Problem},
    scan::Shape,
};
use crate::book::{ConditionId, GroupId};
use crate::check::review::{Event, Field, Moment, Run, Unreadable};
use crate::quantity::{Gauge, Pressure, Temperature};

/// A run as it was read, with what could not be understood.
#[derive(Debug, Default)]
pub struct RunBuffer<'n> {
    /// Texts of the run's name and of who did what.
    texts: String,
    name: Option<Span>,
    group: Option<GroupId>,
    pub(super) conditions: Vec<ConditionId>,
    pub(super) has_conditions: bool,
    temperature: Option<Temperature>,
    events: Vec<Event>,
    by: Vec<Option<Span>>,
    /// Lines of the events after the run's first, where they have lines of their own.
    lines: Vec<u32>,
    line: u64,
    problems: Vec<Problem<'n>>,
    omitted: u64,
    told_not_read: bool,
    /// The event being read.
    event: Event,
    psi: Option<Pressure<Gauge>>,
    bar: Option<Pressure<Gauge>>,
    event_by: Option<Span>,
    /// What the rows of CSV said of the run so far: name, group, conditions, temperature.
    cells: [Option<Span>; 4],
    told_differs: u16,
    /// Fields of unknown names that were met before: exports often have the same in every event.
    strangers: Vec<(String, Stranger)>,
    pub(super) scratch: String,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Span {
    from: u32,
    to: u32,
}

/// A value as JSON or a cell gives it.
#[derive(Clone, Copy, Debug)]
pub(super) enum Value<'t> {
    Null,
    Number(f64, &'t str),
    Text(&'t str),
    Other(Shape),
}

/// A place in a file, and the text of its line.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spot<'l> {
    pub text: &'l str,
    pub line: u64,
    pub byte: usize,
}

impl<'l> Spot<'l> {
    pub const fn at(self, byte: usize) -> Self {
        Self { byte, ..self }
    }

    fn column(self) -> usize {
        column(self.text.as_bytes(), self.byte)
    }
}

/// The character at a byte of a line, from 1.
pub(super) fn column(line: &[u8], byte: usize) -> usize {
    let before = line.get(..byte).unwrap_or(line);
    // Every byte but those that go on with a character.
    1 + before.iter().filter(|byte| **byte & 0xc0 != 0x80).count()
}

impl<'n> RunBuffer<'n> {
    /// An empty buffer.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// The run, to be reviewed.
    #[must_use]
    pub fn run(&self) -> Run<'_> {
        Run {
            group: self.group,
            conditions: self.has_conditions.then_some(&*self.conditions),
            temperature: self.temperature,
            events: &self.events,
        }
    }

    /// What the run is called, where it has a name that can be printed.
    #[must_use]
    pub fn name(&self) -> Option<&str> {
        self.text(self.name)
    }

    /// Who did an event, counted from 0, where it was written.
    #[must_use]
    pub fn by(&self, event: u32) -> Option<&str> {
        self.text(*self.by.get(event as usize)?)
    }

    /// The first who is named.
    #[must_use]
    pub fn first_by(&self) -> Option<&str> {
        self.text(*self.by.iter().find(|by| by.is_some())?)
    }

    /// The first time that is written.
    #[must_use]
    pub fn first_time(&self) -> Option<Moment> {
        self.events.iter().find_map(|event| event.at)
    }

    /// The last time that is written.
    #[must_use]
    pub fn last_time(&self) -> Option<Moment> {
        self.events.iter().rev().find_map(|event| event.at)
    }

    /// The line of the file of an event, or of the run's beginning, from 1.
    #[must_use]
    pub fn line(&self, event: Option<u32>) -> u64 {
        let after = event.and_then(|event| self.lines.get(event as usize));
        self.line + after.map_or(0, |after| u64::from(*after))
    }

    /// What could not be understood, in the order of the line.
    #[must_use]
    pub fn problems(&self) -> &[Problem<'n>] {
        &self.problems
    }

    fn text(&self, span: Option<Span>) -> Option<&str> {
        let Span { from, to } = span?;
        self.texts.get(from as usize..to as usize)
    }

    /// Empties it for a run that begins on this line.
    pub(super) fn begin(&mut self, line: u64) {
        self.texts.clear();
        self.name = None;
        self.group = None;
        self.conditions.clear();
        self.has_conditions = false;
        self.temperature = None;
        self.events.clear();
        self.by.clear();
        self.lines.clear();
        self.line = line;
        self.problems.clear();
        self.omitted = 0;
        self.told_not_read = false;
        self.cells = [None; 4];
        self.told_differs = 0;
        // A single large run doesn't keep its room for ever.
        const USUAL: usize = 4096;
        self.events.shrink_to(USUAL);
        self.by.shrink_to(USUAL);
        self.lines.shrink_to(USUAL);
        self.texts.shrink_to(USUAL * 16);
        self.scratch.shrink_to(USUAL * 16);
        self.begin_event();
    }

    /// Says what concerns the run as a whole, once it was read.
    pub(super) fn end(&mut self, spot: Spot<'_>) {
        if self.name.is_none() && !self.problems.iter().any(|problem| problem.is_about_name()) {
            self.problem_of(None, About::NotNamed, spot);
        }
        if self.omitted > 0 {
            let about = About::Omitted(self.omitted);
            self.problems.push(Problem {
                about,
                event: None,
                line: spot.line,
                byte: 0,
                column: 1,
            });
        }
    }

    pub(super) fn begin_event(&mut self) {
        self.event = Event::default();
        self.psi = None;
        self.bar = None;
        self.event_by = None;
    }

    /// Adds the event that was read. `line` where events have lines of their own.
    pub(super) fn end_event(&mut self, own_line: bool, spot: Spot<'_>) -> Result<(), BadLine> {
        match (self.psi, self.bar) {
            (Some(psi), Some(bar)) => {
                // Gauges are read to 1 bar at best; the lower reading promises less.
                if (psi.as_bar() - bar.as_bar()).abs() <= 1.0 {
                    self.event.pressure = Some(if psi < bar { psi } else { bar });
                } else {
                    self.refuse(Key::PressurePsi, About::PressuresDisagree, spot);
                }
            }
            (one, other) => self.event.pressure = one.or(other),
        }
        if self.event.unreadable != Unreadable::default() {
            self.only_what_is_certain();
        }
        if self.events.len() >= MAX_EVENTS {
            return Err(BadLine::new(spot.byte, Fault::TooManyEvents));
        }
        self.events.push(self.event);
        self.by.push(self.event_by);
        if own_line {
            self.lines
                .push(u32::try_from(spot.line - self.line).unwrap_or(u32::MAX));
        }
        Ok(())
    }

    /// Takes back what is written twice in different ways: one of them could not be understood.
    fn only_what_is_certain(&mut self) {
        let event = &mut self.event;
        let lost = event.unreadable;
        event.at = event.at.filter(|_| !lost.has(Field::At));
        event.action = event.action.filter(|_| !lost.has(Field::Do));
        event.cylinder = event.cylinder.filter(|_| !lost.has(Field::Cylinder));
        event.pressure = event.pressure.filter(|_| !lost.has(Field::Pressure));
        event.flow = event.flow.filter(|_| !lost.has(Field::Flow));
        event.device = event.device.filter(|_| !lost.has(Field::Device));
        event.spo2 = event.spo2.filter(|_| !lost.has(Field::Spo2));
    }

    fn problem_of(&mut self, event: Option<u32>, about: About<'n>, spot: Spot<'_>) {
        if self.problems.len() >= MAX_PROBLEMS {
            self.omitted += 1;
            return;
        }
        self.problems.push(Problem {
            about,
            event,
            line: spot.line,
            byte: spot.byte,
            column: spot.column(),
        });
    }

    fn number_of_event(&self) -> Option<u32> {
        u32::try_from(self.events.len()).ok()
    }

    /// A problem of the run.
    pub(super) fn problem(&mut self, about: About<'n>, spot: Spot<'_>) {
        self.problem_of(None, about, spot);
    }

    /// A problem of the event being read.
    pub(super) fn event_problem(&mut self, about: About<'n>, spot: Spot<'_>) {
        self.problem_of(self.number_of_event(), about, spot);
    }

    /// A problem with a field, which is unknown from then on.
    pub(super) fn refuse(&mut self, key: Key, about: About<'n>, spot: Spot<'_>) {
        if key.is_of_run() {
            self.forget(key);
            self.problem(about, spot);
        } else {
            if let Some(field) = key.field() {
                self.event.unreadable = self.event.unreadable.with(field);
            }
            self.forget(key);
            self.event_problem(about, spot);
        }
    }

    /// Takes back what a field said.
    fn forget(&mut self, key: Key) {
        match key {
            Key::Group => self.group = None,
            Key::Conditions => {
                self.conditions.clear();
                self.has_conditions = false;
            }
            Key::Temperature => self.temperature = None,
            Key::Run => self.name = None,
            Key::At => self.event.at = None,
            Key::Do => self.event.action = None,
            Key::Cylinder => self.event.cylinder = None,
            Key::PressurePsi => self.psi = None,
            Key::PressureBar => self.bar = None,
            Key::Flow => self.event.flow = None,
            Key::Device => self.event.device = None,
            Key::Spo2 => self.event.spo2 = None,
            Key::By => self.event_by = None,
            Key::Events => {
                self.events.clear();
                self.by.clear();
                self.lines.clear();
            }
        }
    }

    /// An event whose shape is wrong: what it said is unknown.
    pub(super) fn strange_event(&mut self, found: Shape, spot: Spot<'_>) -> Result<(), BadLine> {
        self.event_problem(About::EventShape(found), spot);
        self.lost_event(false, spot)
    }

    /// An event of which nothing is known but that there was one.
    pub(super) fn lost_event(&mut self, own_line: bool, spot: Spot<'_>) -> Result<(), BadLine> {
        self.begin_event();
        for key in Key::COLUMNS {
            if let Some(field) = key.field() {
                self.event.unreadable = self.event.unreadable.with(field);
            }
        }
        self.end_event(own_line, spot)
    }

    /// Whether a cell of the run says what an earlier row said; kept where none did.
    pub(super) fn cell(&mut self, key: Key, text: &str) -> Cell {
        let Some(known) = self.cells.get(key as usize).copied() else {
            return Cell::Same;
        };
        match self.text(known) {
            None => {
                let from = self.texts.len();
                self.texts.push_str(text);
                let span = u32::try_from(from).ok().zip(u32::try_from(self.texts.len()).ok());
                if let Some(cell) = self.cells.get_mut(key as usize) {
                    *cell = span.map(|(from, to)| Span { from, to });
                }
                Cell::First
            }
            Some(known) if known == text => Cell::Same,
            Some(_) if self.told_differs & key.bit() != 0 => Cell::Same,
            Some(_) => {
                self.told_differs |= key.bit();
                Cell::Differs
            }
        }
    }

    /// That a cell of an unread column was there.
    pub(super) fn lost_cell(&mut self, key: Key) {
        if let Some(field) = key.field() {
            self.event.unreadable = self.event.unreadable.with(field);
        }
    }
}

/// What a cell of the run says beside an earlier row's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Cell {
    First,
    Same,
    Differs,
}

impl Problem<'_> {
    const fn is_about_name(&self) -> bool {
        match self.about {
            About::UnfitName(key)
            | About::Twice(key)
            | About::WrongType { key, .. }
            | About::NamedOtherwise(key) => matches!(key, Key::Run),
            _ => false,
        }
    }
}
