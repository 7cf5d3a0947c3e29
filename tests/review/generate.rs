//! Made-up runs for the review: half of them with nothing wrong by the demo rulebook, half with one thing wrong on purpose.
//!
//! Nothing here shares code with the checker. The order of steps is drawn from the book's `after`, gas is reckoned from the
//! published table of densities, and what an event does to the equipment is followed with a few flags of our own. The same
//! seed gives the same run on every machine. Crews, patients and times are invented.
#![allow(dead_code)]

#[path = "generate/bottles.rs"]
mod bottles;
#[path = "generate/care.rs"]
mod care;
#[path = "generate/faults.rs"]
pub mod faults;
#[path = "generate/gas.rs"]
pub mod gas;
#[path = "generate/order.rs"]
pub mod order;
#[path = "generate/patients.rs"]
mod patients;
#[path = "generate/rng.rs"]
pub mod rng;
#[path = "generate/script.rs"]
mod script;
#[path = "generate/written.rs"]
mod written;

use oxyfolio::book::{ConditionId, CylinderId, GroupId, Kind, ProcedureId, TargetId};
use oxyfolio::check::review::{Event, Moment, Run};
use oxyfolio::quantity::Temperature;

#[allow(unused_imports)]
pub use written::CSV_HEADER;

/// A run, and what was done to it.
#[derive(Clone, Debug)]
pub struct Generated {
    /// What it was made from.
    pub seed: u64,
    /// Its name in the record.
    pub run: String,
    /// The patient's group; none for a cylinder checked without a patient.
    pub group: Option<GroupId>,
    /// The patient's conditions, when they are recorded.
    pub conditions: Option<Vec<ConditionId>>,
    /// The cylinder's temperature in degrees Celsius, when it is recorded.
    pub temperature_c: Option<f64>,
    /// What the record holds, line by line.
    pub events: Vec<Event>,
    /// Who did it, line by line.
    pub by: Vec<&'static str>,
    /// What is wrong with it; none in a clean run.
    pub injected: Option<Injected>,
    /// Which step of which procedure each line is. Known to whoever made the run, and to nobody who reads it.
    pub marks: Vec<Mark>,
    /// The target that holds for the patient.
    pub target: Option<TargetId>,
    /// The cylinders in the order in which they are used.
    pub bottles: Vec<Bottle>,
    /// The unit of the gauge.
    pub unit: Unit,
    /// Whether times are written to the minute only.
    pub whole_minutes: bool,
}

/// A cylinder and the true pressure in it when it is first opened, in psi.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bottle {
    pub cylinder: CylinderId,
    pub start: f64,
}

/// The unit in which a crew reads its gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    Psi,
    Bar,
}

/// What a line of the run is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A step of a procedure; the block tells one performance of a procedure from the next.
    Step {
        procedure: ProcedureId,
        step: usize,
        block: usize,
    },
    /// Something done, read or set while the patient is on oxygen, after a block.
    Care { block: usize },
    /// A line that a fault put in.
    Injected,
}

/// One thing wrong, and what the review must find for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Injected {
    /// The kind of fault.
    pub kind: &'static str,
    /// What must be found: one of these, and mostly there is one only.
    pub expect: Vec<Expected>,
}

/// A finding that is expected.
#[derive(Clone, Debug, PartialEq)]
pub struct Expected {
    /// As `Finding::code` says it.
    pub code: &'static str,
    /// The rule it quotes: one of these; any rule where the list is empty, because the book doesn't say which.
    pub rules: Vec<(Kind, String)>,
    /// The step, where it is about one.
    pub step: Option<String>,
}

impl Generated {
    /// A run with nothing wrong.
    pub fn clean(seed: u64) -> Self {
        care::clean(seed, true)
    }

    /// A run with one thing wrong; the seed tells which kind.
    pub fn faulty(seed: u64) -> Self {
        faults::faulty(seed)
    }

    /// What the review reads.
    pub fn as_run(&self) -> Run<'_> {
        Run {
            group: self.group,
            conditions: self.conditions.as_deref(),
            temperature: self
                .temperature_c
                .map(|degrees| Temperature::celsius(degrees).unwrap()),
            events: &self.events,
        }
    }

    /// Milliseconds of a line's time, while every line has one.
    pub fn millis(&self, line: usize) -> i64 {
        self.events[line].at.unwrap().unix_millis()
    }

    /// Makes every line from this one on later.
    pub fn delay(&mut self, from: usize, millis: i64) {
        for event in &mut self.events[from..] {
            event.at = event.at.map(|at| at.plus_millis(millis));
        }
    }

    /// Puts a line in, at its own time.
    pub fn insert(&mut self, at: usize, event: Event) {
        self.events.insert(at, event);
        self.marks.insert(at, Mark::Injected);
        self.by.insert(at, "attendant");
    }

    /// Takes a line out.
    pub fn remove(&mut self, line: usize) -> Event {
        self.marks.remove(line);
        self.by.remove(line);
        self.events.remove(line)
    }

    /// Does the thing of one line earlier, at the place of another; the times stay where they are.
    pub fn move_before(&mut self, line: usize, earlier: usize) {
        assert!(earlier < line);
        let times: Vec<Option<Moment>> = self.events[earlier..=line].iter().map(|event| event.at).collect();
        self.events[earlier..=line].rotate_right(1);
        self.marks[earlier..=line].rotate_right(1);
        for (event, at) in self.events[earlier..=line].iter_mut().zip(times) {
            event.at = at;
        }
    }
}
