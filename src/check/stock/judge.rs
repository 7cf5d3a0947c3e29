//! One cylinder against the book.

use alloc::{string::String, vec::Vec};
use core::{cmp::Ordering, fmt::Write as _};

use super::{About, Finding, Month, STAR_INTERVAL, Stocked, Terms, month, policy};
use crate::book::{Cylinder, Kind, Rulebook, Value};
use crate::check::duration::{GaugeReading, Supply, USUAL_TEMPERATURE};
use crate::check::{About as SetupAbout, Level, Missing};
use crate::oxygen::Contents;
use crate::quantity::{Flow, Gauge, Pressure, Temperature, Volume};

/// Why a cylinder is to be swapped, the most pressing first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reason {
    /// It is overfilled or hot.
    Unsafe,
    /// It is past its test date.
    PastTest,
    /// Whether its test holds is not known.
    TestUnknown,
    /// Its reading is below the residual pressure.
    BelowResidual,
    /// Its reading is not known, or nobody knows what it means.
    ReadingUnknown,
    /// Its reading is at or below the change-over pressure.
    ChangeOver,
    /// Its reading is below the in-service minimum.
    BelowInServiceMinimum,
    /// Its serial stands in more than one row.
    ListedTwice,
    /// Its test is due in this month or soon. It is still counted.
    TestDue,
}

impl Reason {
    /// Every reason, the most pressing first.
    pub const ALL: [Self; 9] = [
        Self::Unsafe,
        Self::PastTest,
        Self::TestUnknown,
        Self::BelowResidual,
        Self::ReadingUnknown,
        Self::ChangeOver,
        Self::BelowInServiceMinimum,
        Self::ListedTwice,
        Self::TestDue,
    ];

    /// A stable name in kebab-case.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Unsafe => "unsafe",
            Self::PastTest => "past-test",
            Self::TestUnknown => "test-unknown",
            Self::BelowResidual => "below-residual",
            Self::ReadingUnknown => "reading-unknown",
            Self::ChangeOver => "change-over",
            Self::BelowInServiceMinimum => "below-in-service-minimum",
            Self::ListedTwice => "listed-twice",
            Self::TestDue => "test-due",
        }
    }

    /// The reason in words, as they follow a cylinder's serial.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Unsafe => "overfilled or hot",
            Self::PastTest => "past its test date",
            Self::TestUnknown => "test date not known",
            Self::BelowResidual => "below the residual pressure",
            Self::ReadingUnknown => "reading not known",
            Self::ChangeOver => "at or below the change-over pressure",
            Self::BelowInServiceMinimum => "below the in-service minimum",
            Self::ListedTwice => "serial listed more than once",
            Self::TestDue => "test due",
        }
    }

    /// Whether the cylinder's gas is not counted.
    #[must_use]
    pub const fn keeps_from_counting(self) -> bool {
        !matches!(self, Self::TestDue)
    }
}

/// What was found about one cylinder.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged<'b> {
    /// Its size.
    pub cylinder: &'b Cylinder,
    /// The findings, the most serious first.
    pub findings: Vec<Finding<'b>>,
    /// The most it may be filled to at 70 °F.
    pub filled_at_most: Pressure<Gauge>,
    /// The month in which its test is due, where the last is known.
    pub due: Option<Month>,
    /// The gas above the residual pressure, where it is known: the lower of density and factor.
    pub usable: Option<Volume>,
    /// Why it is to be swapped, the most pressing reason first; empty where it is fit for service and no test is due.
    pub reasons: Vec<Reason>,
}

impl Judged<'_> {
    /// The most pressing reason to swap it.
    #[must_use]
    pub fn first(&self) -> Option<Reason> {
        self.reasons.first().copied()
    }

    /// Why it is to be swapped, in words, the most pressing reason first; empty where there is none.
    #[must_use]
    pub fn words(&self) -> String {
        let mut words = String::new();
        for (index, reason) in self.reasons.iter().enumerate() {
            if index > 0 {
                words.push_str("; ");
            }
            words.push_str(reason.words());
            if let (Reason::PastTest | Reason::TestDue, Some(due)) = (reason, self.due) {
                // Writing to a String cannot fail.
                let _ = write!(words, " ({due})");
            }
        }
        words
    }

    /// Whether its gas is counted.
    #[must_use]
    pub fn is_counted(&self) -> bool {
        !self.first().is_some_and(Reason::keeps_from_counting)
    }
}

impl<'b> Judged<'b> {
    /// Judges a cylinder whose serial stands in some number of rows; none for another book's size.
    pub(super) fn new(book: &'b Rulebook, one: &Stocked, terms: &Terms, rows: usize) -> Option<Self> {
        let cylinder = book.cylinder(one.size)?;
        let mut judging = Judging {
            book,
            cylinder,
            one,
            terms,
            findings: Vec::new(),
            reasons: Vec::new(),
        };
        let filled_at_most = judging.limit();
        let due = judging.test();
        let usable = judging.reading(filled_at_most);
        if rows > 1 {
            let about = About::SerialMoreThanOnce { rows };
            judging.about_list(Level::Unknown, about);
            judging.because(Reason::ListedTwice);
        }
        if one.location.is_empty() {
            judging.about_list(Level::Note, About::LocationNotGiven);
        }
        let (mut findings, mut reasons) = (judging.findings, judging.reasons);
        reasons.sort();
        reasons.dedup();
        // The gravest first; within a level in the order they were found.
        findings.sort_by_key(|finding| core::cmp::Reverse(finding.level));
        Some(Self {
            cylinder,
            findings,
            filled_at_most,
            due,
            usable,
            reasons,
        })
    }
}

struct Judging<'b, 's> {
    book: &'b Rulebook,
    cylinder: &'b Cylinder,
    one: &'s Stocked,
    terms: &'s Terms,
    findings: Vec<Finding<'b>>,
    reasons: Vec<Reason>,
}

impl<'b> Judging<'b, '_> {
    fn because(&mut self, reason: Reason) {
        self.reasons.push(reason);
    }

    fn policy(&mut self, level: Level, id: &str, about: About<'b>) {
        self.findings.push(policy(self.book, level, id, about));
    }

    /// A finding about the list, for which the book has no rule.
    fn about_list(&mut self, level: Level, about: About<'b>) {
        self.findings.push(Finding {
            level,
            kind: Kind::Agency,
            rule: &self.book.agency.rule,
            note: None,
            about,
            pressure_unit: self.book.agency.pressure_unit,
        });
    }

    /// A finding about how full the size may be: its own limit, or the policy's.
    fn filling(&mut self, level: Level, about: About<'b>) {
        if self.cylinder.fill_limit.is_none() {
            self.policy(level, "fill-limit", about);
            return;
        }
        self.findings.push(Finding {
            level,
            kind: Kind::Cylinder,
            rule: &self.cylinder.rule,
            note: None,
            about,
            pressure_unit: self.book.agency.pressure_unit,
        });
    }

    /// The most it may be filled to: above its service pressure only with a plus.
    fn limit(&mut self) -> Pressure<Gauge> {
        let with_plus = self.book.filled_at_most(self.cylinder);
        let service = self.cylinder.service_pressure;
        let without = if with_plus < service { with_plus } else { service };
        let marks = self.one.marks;
        if !marks.plus {
            return without;
        }
        if marks.aluminium {
            self.filling(Level::Warn, About::PlusOnAluminium);
            return without;
        }
        if with_plus <= service {
            self.filling(Level::Note, About::PlusNotUsed);
        }
        with_plus
    }

    /// The test: gives the month in which it is due.
    fn test(&mut self) -> Option<Month> {
        let interval = "requalification-interval";
        let Some(tested) = self.one.tested else {
            self.policy(Level::Unknown, interval, About::TestNotGiven);
            self.because(Reason::TestUnknown);
            return None;
        };
        let star = self.book.policies.find(STAR_INTERVAL).map(|policy| policy.value);
        let (id, time) = match (self.one.marks.star, star) {
            (false, _) => (interval, self.book.policies.requalification_interval),
            (true, _) if self.one.marks.aluminium => {
                self.policy(Level::Warn, interval, About::StarOnAluminium);
                (interval, self.book.policies.requalification_interval)
            }
            (true, Some(Value::Time(time))) => (STAR_INTERVAL, time),
            (true, _) => {
                self.policy(Level::Note, interval, About::StarNotUsed);
                (interval, self.book.policies.requalification_interval)
            }
        };
        let this_month = Month::of(self.terms.today);
        if tested > this_month {
            self.policy(Level::Unknown, id, About::TestInFuture { tested });
            self.because(Reason::TestUnknown);
            return None;
        }
        let due = tested.later(month::whole_months(time));
        if due < this_month {
            self.policy(Level::Stop, id, About::TestPast { tested, due });
            self.because(Reason::PastTest);
        } else if due == this_month {
            self.policy(Level::Warn, id, About::TestDueThisMonth { due });
            self.because(Reason::TestDue);
        } else if month::begins_within(due, self.terms.today, self.terms.due_within) {
            self.policy(Level::Note, id, About::TestDue { due });
            self.because(Reason::TestDue);
        }
        Some(due)
    }

    /// The reading: gives the gas above the residual pressure.
    fn reading(&mut self, most: Pressure<Gauge>) -> Option<Volume> {
        let Some(pressure) = self.one.pressure else {
            self.about_list(Level::Unknown, About::PressureNotGiven);
            self.because(Reason::ReadingUnknown);
            return None;
        };
        self.filled(pressure, most);
        let policies = &self.book.policies;
        if pressure < policies.residual_pressure {
            let residual = policies.residual_pressure;
            let about = SetupAbout::BelowResidual { pressure, residual };
            self.policy(Level::Stop, "residual-pressure", About::Setup(about));
            self.because(Reason::BelowResidual);
        } else if pressure <= policies.change_over_pressure {
            let change_over = policies.change_over_pressure;
            let about = SetupAbout::ChangeCylinder {
                pressure,
                change_over,
            };
            self.policy(Level::Warn, "change-over-pressure", About::Setup(about));
            self.because(Reason::ChangeOver);
        } else if pressure < policies.in_service_minimum {
            let minimum = policies.in_service_minimum;
            let about = SetupAbout::BelowInServiceMinimum { pressure, minimum };
            self.policy(Level::Warn, "in-service-minimum", About::Setup(about));
            self.because(Reason::BelowInServiceMinimum);
        }
        let temperature = self.terms.temperature.unwrap_or(USUAL_TEMPERATURE);
        let supply = Supply::of(self.book, self.cylinder).temperature(temperature);
        // Which flow doesn't matter: only the gas is asked for.
        match supply.lasts(pressure, Flow::tabled(1.0)) {
            Ok(lasts) => Some(lasts.usable),
            Err(_) => {
                let about = About::Setup(SetupAbout::Missing(Missing::Density));
                self.filling(Level::Unknown, about);
                self.because(Reason::ReadingUnknown);
                None
            }
        }
    }

    /// Whether it is overfilled. Where the temperature is known, the gas in it decides and not the gauge alone: limits are
    /// for 70 °F, a warm cylinder reads more without holding more, and a cold one hides what it holds.
    fn filled(&mut self, pressure: Pressure<Gauge>, most: Pressure<Gauge>) {
        let of_limit = self
            .terms
            .temperature
            .and_then(|temperature| Some((temperature, of_limit(pressure, temperature, most)?)));
        match of_limit {
            Some((temperature, share)) if pressure <= most && share > 1.0 => {
                let about = About::OverfilledAndCold {
                    pressure,
                    most,
                    temperature,
                };
                // A gauge is no finer than this.
                if share > 1.0 + GaugeReading::FAIR_WITHIN {
                    self.filling(Level::Stop, about);
                    self.because(Reason::Unsafe);
                } else {
                    self.filling(Level::Note, about);
                }
            }
            Some((temperature, share)) if pressure > most && share <= 1.0 => {
                let about = About::OnlyWarm {
                    pressure,
                    most,
                    temperature,
                };
                self.filling(Level::Note, about);
            }
            _ if pressure > most => {
                let about = About::Overfilled {
                    pressure,
                    most,
                    has_plus: self.one.marks.plus && !self.one.marks.aluminium,
                };
                self.filling(Level::Stop, about);
                self.because(Reason::Unsafe);
            }
            _ => {}
        }
    }
}

/// What a cylinder holds at a reading and a temperature, as a share of what it holds at its limit at 21 °C; none where no
/// density is known.
fn of_limit(pressure: Pressure<Gauge>, temperature: Temperature, most: Pressure<Gauge>) -> Option<f64> {
    let litre = Volume::tabled(1.0);
    let held = Contents::new(litre, temperature).ok()?.at(pressure).ok()?;
    let allowed = Contents::new(litre, USUAL_TEMPERATURE).ok()?.at(most).ok()?;
    Some(held / allowed)
}

/// Which of two cylinders is swapped first.
pub fn swapped_first(
    (left, left_one): (&Judged<'_>, &Stocked),
    (right, right_one): (&Judged<'_>, &Stocked),
) -> Ordering {
    // What is not known counts as the worst.
    let litres = |one: &Judged<'_>| one.usable.map_or(0.0, Volume::as_litres);
    let emptiest = litres(left).total_cmp(&litres(right));
    let soonest = left.due.cmp(&right.due);
    let within = match left.first() {
        Some(Reason::TestDue) => soonest.then(emptiest),
        _ => emptiest.then(soonest),
    };
    left.first()
        .cmp(&right.first())
        .then(within)
        .then_with(|| left_one.location.cmp(&right_one.location))
        .then_with(|| left_one.serial.cmp(&right_one.serial))
}
