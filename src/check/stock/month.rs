//! Months, as they are stamped on a cylinder.

use core::fmt;

use crate::book::Date;
use crate::quantity::{Time, TimeUnit};

/// A month of the Gregorian calendar: a test is stamped with no finer date.
///
/// ```
/// use oxyfolio::check::stock::Month;
/// let tested: Month = "2021-11".parse()?;
/// assert_eq!(tested, Month::new(2021, 11)?);
/// assert_eq!(tested.later(60).to_string(), "2026-11");
/// assert!("2021-13".parse::<Month>().is_err());
/// # Ok::<(), oxyfolio::check::stock::InvalidMonth>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Month {
    year: u16,
    month: u8,
}

/// There is no such month.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InvalidMonth;

impl fmt::Display for InvalidMonth {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("expected a month of the calendar from 1900 to 9999, written YYYY-MM")
    }
}

impl core::error::Error for InvalidMonth {}

impl Month {
    /// From year and month.
    ///
    /// # Errors
    ///
    /// [`InvalidMonth`] when there is no such month, or the year is not in 1900 to 9999.
    pub const fn new(year: u16, month: u8) -> Result<Self, InvalidMonth> {
        if year >= 1900 && year <= 9999 && month >= 1 && month <= 12 {
            Ok(Self { year, month })
        } else {
            Err(InvalidMonth)
        }
    }

    /// The month in which a day lies.
    #[must_use]
    pub const fn of(day: Date) -> Self {
        let (year, month, _) = day.parts();
        Self { year, month }
    }

    /// Some months later.
    #[must_use]
    pub fn later(self, months: u32) -> Self {
        let all = u32::from(self.year) * 12 + u32::from(self.month) - 1;
        let all = all.saturating_add(months);
        Self {
            year: u16::try_from(all / 12).unwrap_or(u16::MAX),
            // A remainder of 12 always fits.
            month: u8::try_from(all % 12).unwrap_or(0) + 1,
        }
    }

    /// Its first day.
    #[must_use]
    pub const fn first_day(self) -> Date {
        Date::tabled(self.year, self.month, 1)
    }
}

/// Reads `YYYY-MM`.
impl core::str::FromStr for Month {
    type Err = InvalidMonth;

    fn from_str(text: &str) -> Result<Self, InvalidMonth> {
        let (year, month) = text.split_once('-').ok_or(InvalidMonth)?;
        let number = |digits: &str, width: usize| {
            let is_number = digits.len() == width && digits.bytes().all(|byte| byte.is_ascii_digit());
            digits.parse::<u16>().ok().filter(|_| is_number)
        };
        let month = number(month, 2).and_then(|month| u8::try_from(month).ok());
        match (number(year, 4), month) {
            (Some(year), Some(month)) => Self::new(year, month),
            _ => Err(InvalidMonth),
        }
    }
}

impl fmt::Display for Month {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}", self.year, self.month)
    }
}

/// A time between tests in whole months, rounded down: a test that is due early is on the safe side.
pub fn whole_months(time: Time) -> u32 {
    // A billionth, so that 12 months don't become 11.
    (months(time) * (1.0 + 1e-9)) as u32
}

/// Twelve months are a year to the minute, so whole years and months stay whole.
fn months(time: Time) -> f64 {
    const MINUTES: f64 = 30.4375 * 24.0 * 60.0;
    time.as_minutes() / MINUTES
}

/// Whether a month begins no later than some time after a day. Months and years are counted on the calendar and rounded
/// up, shorter times by the day: to be told early is on the safe side.
pub fn begins_within(month: Month, today: Date, ahead: Time) -> bool {
    if let (_, TimeUnit::Year | TimeUnit::Month) = ahead.written() {
        let whole = whole_months(ahead);
        let up = u32::from(f64::from(whole) < months(ahead));
        return month <= Month::of(today).later(whole.saturating_add(up));
    }
    let until = month
        .first_day()
        .unix_seconds()
        .saturating_sub(today.unix_seconds());
    // Exact: both are far below 2^53.
    until as f64 <= ahead.as_minutes() * 60.0
}
