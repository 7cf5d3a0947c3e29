//! What is found about a cylinder in stock: plain data that quotes the rule it is about.

use core::fmt;

use super::Month;
use crate::book::{Cited, Kind, Rule};
use crate::check::{self, Level};
use crate::quantity::{Gauge, Pressure, PressureUnit, Range, Temperature};

/// One finding, with the rule it is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finding<'b> {
    /// How serious it is.
    pub level: Level,
    /// The rule's kind.
    pub kind: Kind,
    /// The rule: its name, its place and its reason.
    pub rule: &'b Rule,
    /// What else the book says beside the rule's value.
    pub note: Option<&'b str>,
    /// What was found.
    pub about: About<'b>,
    /// The unit in which pressures are printed.
    pub pressure_unit: PressureUnit,
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum About<'b> {
    /// What the check of a set-up would find too.
    Setup(check::About<'b>),
    /// The reading is above what this cylinder may be filled to.
    Overfilled {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The most it may be filled to, with or without its plus.
        most: Pressure<Gauge>,
        /// Whether it carries the plus.
        has_plus: bool,
    },
    /// The reading is within what the cylinder may be filled to, only because it is cold. A note where the difference is
    /// within 5 %, which a gauge can't show.
    OverfilledAndCold {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The most it may be filled to, at 70 °F.
        most: Pressure<Gauge>,
        /// The cylinder's temperature.
        temperature: Temperature,
    },
    /// The reading is above what the cylinder may be filled to, only because it is warm.
    OnlyWarm {
        /// The reading.
        pressure: Pressure<Gauge>,
        /// The most it may be filled to, at 70 °F.
        most: Pressure<Gauge>,
        /// The cylinder's temperature.
        temperature: Temperature,
    },
    /// The book gives this size no room above its service pressure, plus or not.
    PlusNotUsed,
    /// A plus on a cylinder of aluminium.
    PlusOnAluminium,
    /// The book has no longer time between tests for a cylinder with a star.
    StarNotUsed,
    /// A star on a cylinder of aluminium.
    StarOnAluminium,
    /// The month of the test is over.
    TestPast {
        /// The month of the last test.
        tested: Month,
        /// The month in which the next was due.
        due: Month,
    },
    /// The test is due in this month.
    TestDueThisMonth {
        /// The month.
        due: Month,
    },
    /// The test is due soon.
    TestDue {
        /// The month in which it is due.
        due: Month,
    },
    /// No month of a test was given.
    TestNotGiven,
    /// The month of the last test has not begun.
    TestInFuture {
        /// The month given.
        tested: Month,
    },
    /// No reading was given.
    PressureNotGiven,
    /// The serial stands in more than one row.
    SerialMoreThanOnce {
        /// In how many.
        rows: usize,
    },
    /// No location was given.
    LocationNotGiven,
    /// The place is too cold or too hot to keep cylinders.
    OutsideStorageTemperature {
        /// The temperature.
        temperature: Temperature,
        /// The book's range.
        range: Range<Temperature>,
    },
}

impl Finding<'_> {
    /// A stable name in kebab-case for what was found.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self.about {
            About::Setup(_) => self.as_setup_code(),
            About::Overfilled { .. } => "overfilled",
            About::OverfilledAndCold { .. } => "overfilled-and-cold",
            About::OnlyWarm { .. } => "only-warm",
            About::PlusNotUsed => "plus-not-used",
            About::PlusOnAluminium => "plus-on-aluminium",
            About::StarNotUsed => "star-not-used",
            About::StarOnAluminium => "star-on-aluminium",
            About::TestPast { .. } => "test-past",
            About::TestDueThisMonth { .. } => "test-due-this-month",
            About::TestDue { .. } => "test-due",
            About::TestNotGiven => "test-not-given",
            About::TestInFuture { .. } => "test-in-future",
            About::PressureNotGiven => "pressure-not-given",
            About::SerialMoreThanOnce { .. } => "serial-more-than-once",
            About::LocationNotGiven => "location-not-given",
            About::OutsideStorageTemperature { .. } => "outside-storage-temperature",
        }
    }

    const fn as_setup_code(&self) -> &'static str {
        match self.setup() {
            Some(finding) => finding.code(),
            None => "",
        }
    }

    /// The finding of a set-up's check that says the same.
    const fn setup(&self) -> Option<check::Finding<'_>> {
        match self.about {
            About::Setup(about) => Some(check::Finding {
                level: self.level,
                kind: self.kind,
                rule: Cited::of(self.rule),
                about,
                pressure_unit: self.pressure_unit,
            }),
            _ => None,
        }
    }
}

/// The finding in a sentence.
impl fmt::Display for Finding<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.pressure_unit;
        match self.about {
            About::Setup(_) => match self.setup() {
                Some(finding) => finding.fmt(f),
                None => Ok(()),
            },
            About::Overfilled {
                pressure,
                most,
                has_plus: true,
            } => write!(
                f,
                "the gauge reads {}, above the {} to which it may be filled with its plus: overfilled, hot, or the wrong size",
                unit.show(pressure),
                unit.show(most)
            ),
            About::Overfilled { pressure, most, .. } => write!(
                f,
                "the gauge reads {}, above the {} to which it may be filled without a plus: overfilled, hot, or the wrong size",
                unit.show(pressure),
                unit.show(most)
            ),
            About::OverfilledAndCold {
                pressure,
                most,
                temperature,
            } => write!(
                f,
                "the gauge reads {} at {temperature}: at 21 °C it will be above the {} to which it may be filled",
                unit.show(pressure),
                unit.show(most)
            ),
            About::OnlyWarm {
                pressure,
                most,
                temperature,
            } => write!(
                f,
                "the gauge reads {}, above the {} to which it may be filled, but only because it is at {temperature}: at 21 °C it is not overfilled",
                unit.show(pressure),
                unit.show(most)
            ),
            About::PlusNotUsed => f.write_str(
                "the plus is not used by this book for this size: it may be filled to its service pressure and no further",
            ),
            About::PlusOnAluminium => f.write_str(
                "a plus on an aluminium cylinder: the plus is for steel only, and one of the two marks is wrong",
            ),
            About::StarNotUsed => {
                f.write_str("the star is not used by this book: the test is due as without it")
            }
            About::StarOnAluminium => f.write_str(
                "a star on an aluminium cylinder: the star is for steel only; the test is due as without it",
            ),
            About::TestPast { tested, due } => write!(
                f,
                "its test of {tested} held to {due}: past its test date, not to be filled again before it is tested"
            ),
            About::TestDueThisMonth { due } => write!(
                f,
                "its test is due in this month, {due}: by the strictest reading it was due on the first; send it before it is filled again"
            ),
            About::TestDue { due } => write!(f, "its test is due in {due}"),
            About::TestNotGiven => {
                f.write_str("whether its test still holds: the month of the last test was not given")
            }
            About::TestInFuture { tested } => write!(
                f,
                "whether its test still holds: the month given, {tested}, has not begun"
            ),
            About::PressureNotGiven => f.write_str("whether it is full: no gauge reading was given"),
            About::SerialMoreThanOnce { rows } => write!(
                f,
                "its serial stands in {rows} rows: which of them is true can't be told, and none is counted"
            ),
            About::LocationNotGiven => f.write_str("where it is was not given"),
            About::OutsideStorageTemperature { temperature, range } => {
                write!(f, "{temperature} is outside the temperature of storage, {range}")
            }
        }
    }
}
