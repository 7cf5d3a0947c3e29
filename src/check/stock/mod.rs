//! Cylinders in stock: which must be taken out or swapped, whose test is due, and how many minutes are on hand.
//!
//! ```
//! use oxyfolio::book::Date;
//! use oxyfolio::check::stock::{Month, Report, Stocked, Terms};
//! use oxyfolio::quantity::Pressure;
//! use oxyfolio::{RULEBOOK, cylinder};
//!
//! let stock = [
//!     Stocked::new("LV-1041", cylinder::D, "Station 1")
//!         .pressure(Pressure::psi(2000.0)?)
//!         .tested(Month::new(2024, 3)?),
//!     Stocked::new("LV-1042", cylinder::D, "Station 1")
//!         .pressure(Pressure::psi(1900.0)?)
//!         .tested(Month::new(2021, 10)?),
//! ];
//! let report = Report::of(&RULEBOOK, &stock, &Terms::on(Date::new(2026, 11, 25)?))?;
//! // The second is past its test date: it is to be swapped, and its minutes are not counted.
//! assert_eq!(report.swap, [1]);
//! assert_eq!(report.judged[1].findings[0].code(), "test-past");
//! assert_eq!((report.all.counted, report.all.not_counted), (1, 1));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # When is a test past?
//!
//! The book says how long a test holds (policy `requalification-interval`); a cylinder is stamped with the month of its
//! test and no day. With five years, one stamped 2021-11 is due in 2026-11.
//!
//! - By the regulator's own reading, a cylinder may be requalified "at any time before or during the month and year the
//!   requalification is due" (PHMSA Interpretation 11-0131, on 49 CFR 180.205(c)). So it is **past from 2026-12-01**.
//! - By a stricter reading the five years may be over on any day from 2026-11-01, because nobody knows the day of the test.
//!   From then on the cylinder is reported as **due in this month**, a warning, and never passed in silence.
//!
//! A cylinder that was filled before its test became due may under United States rules stay in service until it is emptied
//! (PHMSA Interpretations 09-0148 and 11-0131). This checker doesn't know when a cylinder was filled, and doesn't count one
//! that is past its test date.
//!
//! Times that are no whole months are rounded down: a test is then due early.
//!
//! # Marks
//!
//! - **Plus**, after the latest test date: a steel cylinder may be filled to the book's fill limit for its size. Without it
//!   the service pressure is the limit. Where the book gives a size no room above its service pressure, a plus changes
//!   nothing, and that is said.
//! - **Star**, after the test date: where the book has a policy [`STAR_INTERVAL`], a time, that time counts between tests.
//!   Where it has none, the star is noted as not used by the book.
//! - **Aluminium**: neither plus nor star is used, and the contradiction is a finding.
//!
//! Fill limits are for 70 °F. Without a temperature the gauge alone is compared with the limit. With one, the gas is: a
//! cylinder that reads above its limit only because it is warm gets a note, and one that reads within it only because it is
//! cold is overfilled all the same.
//!
//! # What is counted
//!
//! Minutes on hand are those of the cylinders that are fit for service by the book: read, tested, not overfilled, at or
//! above the in-service minimum, listed once. Each is used at one device's usual flow down to the residual pressure, and
//! its minutes are rounded down before they are added. What is not counted has a [`Reason`].
//!
//! # In which order is it swapped?
//!
//! By [`Reason`], then the emptiest first, then the one whose test is due first; for tests that are due, the other way
//! round. What is still equal goes by location and serial, so that the same list is always answered alike.

mod finding;
mod judge;
mod month;
mod on_hand;

use alloc::{borrow::ToOwned as _, collections::BTreeMap, string::String, vec::Vec};
use core::fmt;

pub use finding::{About, Finding};
pub use judge::{Judged, Reason};
pub use month::{InvalidMonth, Month};
pub use on_hand::{Minutes, OnHand};

use super::duration::{GaugeReading, USUAL_TEMPERATURE};
use super::{Level, finding::About as SetupAbout};
use crate::book::{CylinderId, Date, Kind, Rulebook};
use crate::oxygen::{self, OutsideDomain};
use crate::quantity::{Gauge, Pressure, Temperature, Time, TimeUnit};

/// The policy that gives a cylinder with a star a longer time between tests. A book may do without.
pub const STAR_INTERVAL: &str = "star-requalification-interval";

/// What is stamped on a cylinder beside its dates.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Marks {
    /// A plus after the latest test date.
    pub plus: bool,
    /// A star after the latest test date.
    pub star: bool,
    /// Whether it is of aluminium; the stamp of such a cylinder names 3AL.
    pub aluminium: bool,
}

/// A cylinder in stock, as it was listed.
#[derive(Clone, Debug, PartialEq)]
pub struct Stocked {
    /// The serial stamped on it.
    pub serial: String,
    /// Its size.
    pub size: CylinderId,
    /// What its gauge shows.
    pub pressure: Option<Pressure<Gauge>>,
    /// The month of its last test.
    pub tested: Option<Month>,
    /// What else is stamped on it.
    pub marks: Marks,
    /// Where it is; empty where nobody said.
    pub location: String,
}

impl Stocked {
    /// A cylinder of which neither reading nor test is known.
    #[must_use]
    pub fn new(serial: &str, size: CylinderId, location: &str) -> Self {
        Self {
            serial: serial.to_owned(),
            size,
            pressure: None,
            tested: None,
            marks: Marks::default(),
            location: location.to_owned(),
        }
    }

    /// With a reading.
    #[must_use]
    pub const fn pressure(mut self, pressure: Pressure<Gauge>) -> Self {
        self.pressure = Some(pressure);
        self
    }

    /// With the month of the last test.
    #[must_use]
    pub const fn tested(mut self, tested: Month) -> Self {
        self.tested = Some(tested);
        self
    }

    /// With marks.
    #[must_use]
    pub const fn marks(mut self, marks: Marks) -> Self {
        self.marks = marks;
        self
    }
}

/// On which terms stock is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Terms {
    /// The day.
    pub today: Date,
    /// A test that is due within this time is said to be due.
    pub due_within: Time,
    /// The temperature of the cylinders, -40 to 60 °C; where nobody knows it, 21 °C is taken.
    pub temperature: Option<Temperature>,
}

impl Terms {
    /// On a day, with tests told three months ahead.
    #[must_use]
    pub const fn on(today: Date) -> Self {
        Self {
            today,
            due_within: Time::tabled(3.0, TimeUnit::Month),
            temperature: None,
        }
    }

    /// With tests told another time ahead.
    #[must_use]
    pub const fn due_within(mut self, time: Time) -> Self {
        self.due_within = time;
        self
    }

    /// At a temperature.
    #[must_use]
    pub const fn temperature(mut self, temperature: Temperature) -> Self {
        self.temperature = Some(temperature);
        self
    }
}

/// Why stock could not be looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoReport {
    /// A size belongs to another rulebook.
    NotThisBook,
    /// The density of oxygen isn't known at the temperature.
    OutsideDomain(OutsideDomain),
}

impl fmt::Display for NoReport {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotThisBook => f.write_str("expected sizes of this rulebook, found one of another"),
            Self::OutsideDomain(outside) => outside.fmt(f),
        }
    }
}

impl core::error::Error for NoReport {}

/// What was found about a stock.
#[derive(Clone, Debug, PartialEq)]
pub struct Report<'b> {
    /// What was found about each cylinder, in the order of the list.
    pub judged: Vec<Judged<'b>>,
    /// What was found about all of them together.
    pub findings: Vec<Finding<'b>>,
    /// What is on hand at each location, in the order in which they are first named.
    pub locations: Vec<OnHand<'b>>,
    /// What is on hand in all.
    pub all: OnHand<'b>,
    /// Which cylinders are to be swapped, in the order in which to do it; by their place in the list, from 0.
    pub swap: Vec<usize>,
    /// The temperature of the cylinders, known or assumed.
    pub temperature: Temperature,
    /// Whether it was assumed.
    pub temperature_assumed: bool,
}

impl<'b> Report<'b> {
    /// Looks at a stock.
    ///
    /// # Errors
    ///
    /// [`NoReport`] when a size is another book's, and when the density of oxygen isn't known at the temperature (-40 to
    /// 60 °C).
    pub fn of(book: &'b Rulebook, stock: &[Stocked], terms: &Terms) -> Result<Self, NoReport> {
        let temperature = terms.temperature.unwrap_or(USUAL_TEMPERATURE);
        oxygen::TEMPERATURE
            .accept(temperature.as_celsius())
            .map_err(|missed| NoReport::OutsideDomain(missed.into()))?;
        let mut serials: BTreeMap<String, usize> = BTreeMap::new();
        for one in stock {
            *serials.entry(one.serial.to_lowercase()).or_default() += 1;
        }
        let mut judged = Vec::with_capacity(stock.len());
        for one in stock {
            let rows = serials.get(&one.serial.to_lowercase()).copied().unwrap_or(1);
            judged.push(Judged::new(book, one, terms, rows).ok_or(NoReport::NotThisBook)?);
        }
        let mut swap: Vec<usize> = (0..stock.len())
            .filter(|index| judged.get(*index).is_some_and(|one| one.first().is_some()))
            .collect();
        swap.sort_by(|left, right| {
            match (
                judged.get(*left).zip(stock.get(*left)),
                judged.get(*right).zip(stock.get(*right)),
            ) {
                (Some(left), Some(right)) => judge::swapped_first(left, right),
                _ => core::cmp::Ordering::Equal,
            }
        });
        let (locations, all) = on_hand::sums(book, stock, &judged, temperature);
        Ok(Self {
            judged,
            findings: general(book, terms.temperature),
            locations,
            all,
            swap,
            temperature,
            temperature_assumed: terms.temperature.is_none(),
        })
    }

    /// Whose sizes the cylinders have, each once: letters are national.
    #[must_use]
    pub fn series(&self) -> Vec<&'b str> {
        let mut series: Vec<&str> = Vec::new();
        for one in &self.judged {
            if !series.contains(&&*one.cylinder.series) {
                series.push(&one.cylinder.series);
            }
        }
        series
    }

    /// Whether anything is wrong or could not be checked.
    #[must_use]
    pub fn is_wrong(&self) -> bool {
        let of_each = self.judged.iter().flat_map(|one| &one.findings);
        of_each
            .chain(&self.findings)
            .any(|finding| finding.level.is_wrong())
    }
}

/// What is found about the temperature, for all cylinders at once.
fn general(book: &Rulebook, temperature: Option<Temperature>) -> Vec<Finding<'_>> {
    let Some(temperature) = temperature else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let range = book.policies.storage_temperature;
    if !range.holds(temperature) {
        let about = About::OutsideStorageTemperature { temperature, range };
        found.push(policy(book, Level::Warn, "storage-temperature", about));
    }
    // At a common reading: 100 bar.
    let gauge = GaugeReading::of(Pressure::tabled(1e7), temperature).unwrap_or(GaugeReading::Fair);
    if gauge != GaugeReading::Fair {
        let about = About::Setup(SetupAbout::GaugeMisleads { gauge, temperature });
        found.push(policy(book, Level::Note, "use-temperature", about));
    }
    found
}

/// A finding about a policy; policies the checker needs are always in the book.
fn policy<'b>(book: &'b Rulebook, level: Level, id: &str, about: About<'b>) -> Finding<'b> {
    let policy = book.policies.find(id);
    Finding {
        level,
        kind: policy.map_or(Kind::Agency, |_| Kind::Policy),
        rule: policy.map_or(&book.agency.rule, |policy| &policy.rule),
        note: policy.and_then(|policy| policy.note.as_deref()),
        about,
        pressure_unit: book.agency.pressure_unit,
    }
}
