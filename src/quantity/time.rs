//! Spans of time, kept in the unit they were written in.

use core::{cmp::Ordering, fmt};

use super::{Number, OutOfBounds, Quantity, bounds};

/// A unit of time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum TimeUnit {
    /// Seconds.
    Second,
    /// Minutes.
    Minute,
    /// Hours.
    Hour,
    /// Days.
    Day,
    /// Calendar months; 30.4375 days where a length is needed.
    Month,
    /// Calendar years; 365.25 days where a length is needed.
    Year,
}

impl TimeUnit {
    const fn minutes(self) -> f64 {
        const DAY: f64 = 24.0 * 60.0;
        match self {
            Self::Second => 1.0 / 60.0,
            Self::Minute => 1.0,
            Self::Hour => 60.0,
            Self::Day => DAY,
            Self::Month => 30.4375 * DAY,
            Self::Year => 365.25 * DAY,
        }
    }

    const fn words(self) -> (&'static str, &'static str) {
        match self {
            Self::Second => ("s", "s"),
            Self::Minute => ("min", "min"),
            Self::Hour => ("h", "h"),
            Self::Day => ("day", "days"),
            Self::Month => ("month", "months"),
            Self::Year => ("year", "years"),
        }
    }
}

/// A span of time: minutes of gas, an age, a test interval. Years stay years, so that a five-year interval ends
/// on a calendar date.
///
/// ```
/// use oxyfolio::quantity::{Time, TimeUnit};
/// let interval = Time::of(5.0, TimeUnit::Year)?;
/// assert_eq!(interval.to_string(), "5 years");
/// assert!(Time::of(28.0, TimeUnit::Day)? < Time::of(1.0, TimeUnit::Month)?);
/// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Time {
    amount: f64,
    unit: TimeUnit,
}

impl Time {
    /// No time.
    pub const ZERO: Self = Self::tabled(0.0, TimeUnit::Minute);

    /// From an amount and its unit.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite, negative or above 120 years.
    pub const fn of(amount: f64, unit: TimeUnit) -> Result<Self, OutOfBounds> {
        match bounds::TIME.accept(amount * unit.minutes()) {
            Ok(_) => Ok(Self { amount, unit }),
            Err(error) => Err(error),
        }
    }

    /// From minutes.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] when the number is not finite, negative or above 120 years.
    pub const fn minutes(amount: f64) -> Result<Self, OutOfBounds> {
        Self::of(amount, TimeUnit::Minute)
    }

    /// For generated tables, whose numbers were checked when they were made.
    #[doc(hidden)]
    #[must_use]
    pub const fn tabled(amount: f64, unit: TimeUnit) -> Self {
        Self { amount, unit }
    }

    /// The number as written, and its unit.
    #[must_use]
    pub const fn written(self) -> (f64, TimeUnit) {
        (self.amount, self.unit)
    }

    /// In minutes; months and years by their mean length.
    #[must_use]
    pub const fn as_minutes(self) -> f64 {
        self.amount * self.unit.minutes()
    }
}

impl PartialEq for Time {
    fn eq(&self, other: &Self) -> bool {
        self.as_minutes() == other.as_minutes()
    }
}

impl PartialOrd for Time {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        self.as_minutes().partial_cmp(&other.as_minutes())
    }
}

impl Quantity for Time {
    fn fmt_before(&self, other: &Self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.unit == other.unit {
            write!(f, "{}", Number(self.amount))
        } else {
            fmt::Display::fmt(self, f)
        }
    }
}

impl fmt::Display for Time {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (one, many) = self.unit.words();
        let word = if self.amount == 1.0 { one } else { many };
        write!(f, "{} {word}", Number(self.amount))
    }
}
