//! Calendar dates, for editions and tests of cylinders.

use core::fmt;

/// A date of the Gregorian calendar.
///
/// ```
/// use oxyfolio::book::Date;
/// assert_eq!(Date::new(2026, 11, 1)?.to_string(), "2026-11-01");
/// assert!(Date::new(2026, 2, 29).is_err());
/// assert_eq!("2026-11-01".parse(), Date::new(2026, 11, 1));
/// # Ok::<(), oxyfolio::book::InvalidDate>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    year: u16,
    month: u8,
    day: u8,
}

/// There is no such day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InvalidDate;

impl fmt::Display for InvalidDate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("expected a day of the calendar from 1900 to 9999, written YYYY-MM-DD")
    }
}

impl core::error::Error for InvalidDate {}

impl Date {
    /// From year, month and day.
    ///
    /// # Errors
    ///
    /// [`InvalidDate`] when there is no such day, or the year is not in 1900 to 9999.
    pub const fn new(year: u16, month: u8, day: u8) -> Result<Self, InvalidDate> {
        let leap = (year.is_multiple_of(4) && !year.is_multiple_of(100)) || year.is_multiple_of(400);
        let days = match month {
            1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
            4 | 6 | 9 | 11 => 30,
            2 if leap => 29,
            2 => 28,
            _ => 0,
        };
        if year >= 1900 && year <= 9999 && day >= 1 && day <= days {
            Ok(Self { year, month, day })
        } else {
            Err(InvalidDate)
        }
    }

    /// For generated tables, whose dates were checked when they were made.
    #[doc(hidden)]
    #[must_use]
    pub const fn tabled(year: u16, month: u8, day: u8) -> Self {
        Self { year, month, day }
    }

    /// Year, month and day.
    #[must_use]
    pub const fn parts(self) -> (u16, u8, u8) {
        (self.year, self.month, self.day)
    }

    /// Seconds from 1970-01-01 to the start of this day in universal time; 0 for earlier days.
    #[must_use]
    pub const fn unix_seconds(self) -> u64 {
        let (mut days, mut year) = (0_u64, 1970);
        while year < self.year {
            days += if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) {
                366
            } else {
                365
            };
            year += 1;
        }
        let mut month = 1;
        while month < self.month && self.year >= 1970 {
            // The last day of a month is the last that exists.
            let mut last = 31;
            while Self::new(self.year, month, last).is_err() {
                last -= 1;
            }
            days += last as u64;
            month += 1;
        }
        if self.year < 1970 {
            return 0;
        }
        (days + self.day as u64 - 1) * 86_400
    }
}

/// Reads `YYYY-MM-DD`.
impl core::str::FromStr for Date {
    type Err = InvalidDate;

    fn from_str(text: &str) -> Result<Self, InvalidDate> {
        let mut parts = text.split('-');
        let mut part = |width: usize| {
            parts
                .next()
                .filter(|digits| digits.len() == width && digits.bytes().all(|byte| byte.is_ascii_digit()))
                .and_then(|digits| digits.parse::<u16>().ok())
        };
        let (year, month, day) = (part(4), part(2), part(2));
        let small = |number: Option<u16>| number.and_then(|number| u8::try_from(number).ok());
        match (year, small(month), small(day), parts.next()) {
            (Some(year), Some(month), Some(day), None) => Self::new(year, month, day),
            _ => Err(InvalidDate),
        }
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}
