//! What a record says that can't be understood: plain data, with its place. What was written is never repeated: it could
//! be anything, a patient's name too.

use core::fmt;

use super::{MAX_PROBLEMS, key::Key, scan::Shape, time::TimeFault};
use crate::check::Level;
use crate::quantity::Number;

/// A part of a record that could not be understood. The rest of the run is used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Problem<'n> {
    /// What is wrong.
    pub about: About<'n>,
    /// The event, counted from 0; none for what concerns the whole run.
    pub event: Option<u32>,
    /// The line of the file, from 1.
    pub line: u64,
    /// The byte in the line, from 0.
    pub byte: usize,
    /// The character in the line, from 1.
    pub column: usize,
}

/// What is wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum About<'n> {
    /// A value of another shape.
    WrongType {
        /// The field.
        key: Key,
        /// What was found.
        found: Shape,
    },
    /// A number outside what is measured.
    OutOfRange {
        /// The field.
        key: Key,
        /// The least.
        least: f64,
        /// The most.
        most: f64,
    },
    /// A saturation of 1 or less: a fraction, it seems.
    Fraction,
    /// A name that isn't the book's.
    UnknownName {
        /// The field.
        key: Key,
        /// A name of the book that is like it.
        near: Option<&'n str>,
        /// The names of the book in a sentence; empty where they are many.
        known: &'n str,
    },
    /// A measure without its unit, or in a unit that isn't read.
    NoUnit(Key),
    /// A field that is named otherwise, or mistyped.
    NamedOtherwise(Key),
    /// A field that isn't read, unlike any that is. Told once a run.
    NotRead,
    /// A field of the run in an event, or of an event in the run.
    Misplaced(Key),
    /// A field written twice.
    Twice(Key),
    /// Rows of one run differ in a field of the run.
    Differs(Key),
    /// A text that is no moment.
    Time(TimeFault),
    /// The readings in psi and in bar are not the same.
    PressuresDisagree,
    /// A name of a run or a crew that is empty, too long or has control characters.
    UnfitName(Key),
    /// The run has no name.
    NotNamed,
    /// An event that isn't an object.
    EventShape(Shape),
    /// More than [`MAX_PROBLEMS`].
    Omitted(u64),
    /// A run of this name was read before.
    RunTwice,
}

impl Problem<'_> {
    /// How serious it is.
    #[must_use]
    pub const fn level(&self) -> Level {
        match self.about {
            About::NotRead => Level::Note,
            _ => Level::Unknown,
        }
    }

    /// A stable name in kebab-case.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self.about {
            About::WrongType { .. } => "value-type",
            About::OutOfRange { .. } => "value-out-of-range",
            About::Fraction => "saturation-fraction",
            About::UnknownName { .. } => "name-unknown",
            About::NoUnit(_) => "unit-missing",
            About::NamedOtherwise(_) => "field-misnamed",
            About::NotRead => "field-not-read",
            About::Misplaced(_) => "field-misplaced",
            About::Twice(_) => "field-twice",
            About::Differs(_) => "rows-differ",
            About::Time(_) => "time-unreadable",
            About::PressuresDisagree => "pressures-disagree",
            About::UnfitName(_) => "name-unfit",
            About::NotNamed => "run-not-named",
            About::EventShape(_) => "event-not-object",
            About::Omitted(_) => "problems-omitted",
            About::RunTwice => "run-twice",
        }
    }

    /// What to write instead, where there is something to say.
    #[must_use]
    pub fn hint(&self) -> Option<String> {
        Some(match self.about {
            About::WrongType { key, found } => type_hint(key, found)?,
            About::Fraction => "write percent: 91, not 0.91".to_owned(),
            About::UnknownName { near: Some(near), .. } => format!("did you mean `{near}`?"),
            About::UnknownName { known: "", .. } => {
                "write an action as the rulebook's procedures do, such as `set-flow`".to_owned()
            }
            About::UnknownName { known, .. } => format!("the rulebook has {known}"),
            About::NoUnit(Key::PressurePsi) => "write `pressure_psi` or `pressure_bar`".to_owned(),
            About::NoUnit(Key::Temperature) => "write `temperature_c`, in °C".to_owned(),
            About::NoUnit(key) | About::NamedOtherwise(key) => format!("did you mean `{}`?", key.word()),
            About::Misplaced(key) if key.is_of_run() => "write it beside `events`".to_owned(),
            About::Misplaced(_) => "write it in an event".to_owned(),
            About::Twice(_) => "write it once; neither was used".to_owned(),
            About::Differs(_) => "write the same in every row of a run".to_owned(),
            About::Time(fault) => match fault {
                TimeFault::NoOffset => "add the offset from universal time: 2026-03-01T14:05:00+01:00",
                TimeFault::NoSeconds => "write the seconds too: 2026-03-01T14:05:00+01:00",
                TimeFault::Form | TimeFault::NoSuchTime => {
                    "write it as RFC 3339 does: 2026-03-01T14:05:00+01:00"
                }
            }
            .to_owned(),
            About::PressuresDisagree => "write one of them".to_owned(),
            About::UnfitName(_) => "write 1 to 100 bytes without control characters".to_owned(),
            About::NotNamed => "give each run a `run` of its own, to find it again".to_owned(),
            About::EventShape(_) => "write `{\"at\": …, \"do\": …}`".to_owned(),
            About::Omitted(_) => "put the others right first".to_owned(),
            About::RunTwice => "keep each run once; both were reviewed".to_owned(),
            About::OutOfRange { .. } | About::NotRead => return None,
        })
    }
}

fn type_hint(key: Key, found: Shape) -> Option<String> {
    Some(match (key, found) {
        (Key::Conditions, _) => "write a list of names: [\"retains-co2\"], or [] for none".to_owned(),
        (Key::Events, _) => "write a list of objects, one for each event".to_owned(),
        (Key::Temperature | Key::PressurePsi | Key::PressureBar | Key::Flow | Key::Spo2, Shape::Text) => {
            "write the number alone, without quotes or unit, with a point for decimals".to_owned()
        }
        _ => return None,
    })
}

fn article(key: Key) -> &'static str {
    match key {
        Key::Conditions | Key::Events => "a list",
        Key::Temperature | Key::PressurePsi | Key::PressureBar | Key::Flow | Key::Spo2 => "a number",
        _ => "a text",
    }
}

/// What is wrong, in words.
impl fmt::Display for Problem<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.about {
            About::WrongType { key, found } => {
                write!(
                    f,
                    "expected {} for `{}`, found {}",
                    article(key),
                    key.word(),
                    found.words()
                )
            }
            About::OutOfRange { key, least, most } => write!(
                f,
                "expected `{}` from {} to {}",
                key.word(),
                Number(least),
                Number(most)
            ),
            About::Fraction => write!(f, "expected `{}` above 1", Key::Spo2.word()),
            About::UnknownName { key, .. } => write!(
                f,
                "the rulebook has no {} of this name",
                match key {
                    Key::Do => "action",
                    Key::Conditions => "condition",
                    key => key.word(),
                }
            ),
            About::NoUnit(key) => write!(
                f,
                "the {} is written without a unit that is read",
                match key {
                    Key::PressurePsi => "pressure",
                    Key::Flow => "flow",
                    Key::Spo2 => "saturation",
                    _ => "temperature",
                }
            ),
            About::NamedOtherwise(_) => f.write_str("there is no field of this name"),
            About::NotRead => f.write_str("there is no field of this name; it was not read"),
            About::Misplaced(key) if key.is_of_run() => {
                write!(f, "`{}` belongs to the run, not to an event", key.word())
            }
            About::Misplaced(key) => write!(f, "`{}` belongs to an event, not to the run", key.word()),
            About::Twice(key) => write!(f, "`{}` is written twice", key.word()),
            About::Differs(key) => write!(f, "`{}` differs from an earlier row of the run", key.word()),
            About::Time(TimeFault::Form) => f.write_str("expected a time, found another text"),
            About::Time(TimeFault::NoOffset) => f.write_str("the time has no offset from universal time"),
            About::Time(TimeFault::NoSeconds) => f.write_str("the time has no seconds"),
            About::Time(TimeFault::NoSuchTime) => f.write_str("there is no such day or time of day"),
            About::PressuresDisagree => {
                f.write_str("`pressure_psi` and `pressure_bar` are not the same pressure")
            }
            About::UnfitName(key) => write!(f, "`{}` is no name that can be printed", key.word()),
            About::NotNamed => f.write_str("the run has no name"),
            About::EventShape(found) => write!(f, "expected an event as an object, found {}", found.words()),
            About::Omitted(count) => {
                let are = if count == 1 { "is" } else { "are" };
                write!(
                    f,
                    "{count} more than {MAX_PROBLEMS} mistakes in this run {are} not listed"
                )
            }
            About::RunTwice => f.write_str("a run of this name was read before"),
        }
    }
}
