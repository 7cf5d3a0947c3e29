//! A time of day, and the time some minutes later.

use core::fmt;

use super::CannotRun;

const MINUTES_PER_DAY: u32 = 24 * 60;

/// Minutes since midnight of the day on which the question is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clock(u32);

impl Clock {
    /// Reads `HH:MM`, 24 hours.
    pub fn read(text: &str) -> Result<Self, CannotRun> {
        let part = |text: &str, most: u32| -> Option<u32> {
            let digits = (1..=2).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit());
            text.parse().ok().filter(|number| digits && *number <= most)
        };
        text.trim()
            .split_once(':')
            .and_then(|(hours, minutes)| Some(Self(part(hours, 23)? * 60 + part(minutes, 59)?)))
            .ok_or_else(|| {
                CannotRun(format!(
                    "--now \"{text}\": expected a time from 00:00 to 23:59, found another text"
                ))
            })
    }

    /// Some minutes later.
    pub const fn after(self, minutes: u32) -> Self {
        Self(self.0.saturating_add(minutes))
    }
}

/// `14:05`, and for another day `14:05 (1 day later)`.
impl fmt::Display for Clock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (days, minutes) = (self.0 / MINUTES_PER_DAY, self.0 % MINUTES_PER_DAY);
        write!(f, "{:02}:{:02}", minutes / 60, minutes % 60)?;
        match days {
            0 => Ok(()),
            1 => f.write_str(" (1 day later)"),
            days => write!(f, " ({days} days later)"),
        }
    }
}
