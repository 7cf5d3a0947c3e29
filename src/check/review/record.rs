//! A run as it was recorded: what a crew did, read and set, in time.

use core::fmt;

use crate::book::{Action, ConditionId, CylinderId, DeviceId, GroupId};
use crate::quantity::{Flow, Gauge, Percent, Pressure, Temperature};

/// A moment, with the offset from universal time at which it was written.
///
/// ```
/// use oxyfolio::check::review::Moment;
/// // 2026-03-01T14:05:00+01:00
/// let at = Moment::new(1_772_370_300_000, 60);
/// assert_eq!(at.to_string(), "2026-03-01T14:05:00+01:00");
/// assert_eq!(Moment::new(1_772_370_330_500, 0).minutes_since(at), 30.5 / 60.0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment {
    millis: i64,
    offset_minutes: i16,
}

const DAY: i64 = 86_400_000;

impl Moment {
    /// From milliseconds since 1970 in universal time, and minutes east of it.
    #[must_use]
    pub const fn new(unix_millis: i64, offset_minutes: i16) -> Self {
        Self {
            millis: unix_millis,
            offset_minutes,
        }
    }

    /// Milliseconds since 1970 in universal time.
    #[must_use]
    pub const fn unix_millis(self) -> i64 {
        self.millis
    }

    /// Minutes from an earlier moment to this one; negative when the other is later.
    #[must_use]
    pub const fn minutes_since(self, earlier: Self) -> f64 {
        self.millis.saturating_sub(earlier.millis) as f64 / 60_000.0
    }

    /// A later moment; earlier for a negative number.
    #[must_use]
    pub const fn plus_millis(self, millis: i64) -> Self {
        Self::new(self.millis.saturating_add(millis), self.offset_minutes)
    }

    /// Whether it was written to the minute only.
    #[must_use]
    pub const fn is_whole_minute(self) -> bool {
        self.millis.rem_euclid(60_000) == 0
    }

    /// Year and month, by the clock it was written by.
    #[must_use]
    pub const fn month(self) -> (i64, u8) {
        let (year, month, _) = civil(self.local().div_euclid(DAY));
        (year, month)
    }

    const fn local(self) -> i64 {
        self.millis.saturating_add(self.offset_minutes as i64 * 60_000)
    }
}

/// Day of the Gregorian calendar from days since 1970, by years that begin in March.
const fn civil(days: i64) -> (i64, u8, u8) {
    let days = days + 719_468;
    let era = days.div_euclid(146_097);
    let day_of_era = days.rem_euclid(146_097);
    let year_of_era = (day_of_era - day_of_era / 1_460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let shifted = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * shifted + 2) / 5 + 1;
    let month = if shifted < 10 { shifted + 3 } else { shifted - 9 };
    let year = year_of_era + era * 400 + (month <= 2) as i64;
    (year, month as u8, day as u8)
}

/// As RFC 3339 writes it, to the second.
impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let local = self.local();
        let (year, month, day) = civil(local.div_euclid(DAY));
        let second = local.rem_euclid(DAY) / 1_000;
        let (hour, minute, second) = (second / 3_600, second / 60 % 60, second % 60);
        write!(
            f,
            "{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}"
        )?;
        if self.offset_minutes == 0 {
            return f.write_str("Z");
        }
        let sign = if self.offset_minutes < 0 { '-' } else { '+' };
        let offset = self.offset_minutes.unsigned_abs();
        write!(f, "{sign}{:02}:{:02}", offset / 60, offset % 60)
    }
}

/// The parts of an event that can be written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// When it was.
    At,
    /// What was done.
    Do,
    /// The cylinder's size.
    Cylinder,
    /// The gauge reading.
    Pressure,
    /// The flow set.
    Flow,
    /// The device.
    Device,
    /// The oxygen saturation.
    Spo2,
}

/// Parts of an event that were written and could not be understood: what they said is unknown from then on, and nothing
/// older stands in for it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Unreadable(u8);

impl Unreadable {
    /// With one more.
    #[must_use]
    pub const fn with(self, field: Field) -> Self {
        Self(self.0 | 1 << field as u8)
    }

    /// Whether this part could not be understood.
    #[must_use]
    pub const fn has(self, field: Field) -> bool {
        self.0 & (1 << field as u8) != 0
    }
}

/// One line of a run: what was done, read or set at a moment. Whatever is `None` was not recorded.
///
/// What an event says besides its action holds from the action on: `do: set-flow` with a flow sets that flow. A gauge reading
/// and a saturation are those at that moment. A cylinder named while a spare stands beside the one in use is the spare.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Event {
    /// When it was.
    pub at: Option<Moment>,
    /// What was done.
    pub action: Option<Action>,
    /// The cylinder's size.
    pub cylinder: Option<CylinderId>,
    /// The gauge reading.
    pub pressure: Option<Pressure<Gauge>>,
    /// The flow set.
    pub flow: Option<Flow>,
    /// The device.
    pub device: Option<DeviceId>,
    /// The patient's oxygen saturation. More than 100 % can't be one, and is taken for one that could not be read.
    pub spo2: Option<Percent>,
    /// What was written and could not be understood.
    pub unreadable: Unreadable,
}

/// A run: one patient, one crew, from fetching the cylinder to putting it away, or whatever part of it was recorded.
#[derive(Clone, Copy, Debug, Default)]
pub struct Run<'a> {
    /// The patient's group.
    pub group: Option<GroupId>,
    /// The patient's conditions, when they were recorded; an empty list means none.
    pub conditions: Option<&'a [ConditionId]>,
    /// The cylinder's temperature.
    pub temperature: Option<Temperature>,
    /// What was done, read and set, in the order it was written down.
    pub events: &'a [Event],
}
