//! Moments as RFC 3339 writes them.

use crate::check::review::Moment;

/// Why a text is no moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TimeFault {
    /// The form is another.
    Form,
    /// The offset from universal time is missing.
    NoOffset,
    /// The seconds are missing.
    NoSeconds,
    /// There is no such day or time of day.
    NoSuchTime,
}

/// Reads `2026-03-01T14:05:00+01:00`. Parts of a second beyond the thousandth are cut.
pub fn moment(text: &str) -> Result<Moment, TimeFault> {
    let bytes = text.as_bytes();
    let two = |at: usize| -> Result<i64, TimeFault> {
        match bytes.get(at..at + 2) {
            Some([tens @ b'0'..=b'9', ones @ b'0'..=b'9']) => {
                Ok(i64::from(tens - b'0') * 10 + i64::from(ones - b'0'))
            }
            _ => Err(TimeFault::Form),
        }
    };
    let sign = |at: usize, allowed: &[u8]| match bytes.get(at) {
        Some(byte) if allowed.contains(byte) => Ok(*byte),
        _ => Err(TimeFault::Form),
    };
    let year = two(0)? * 100 + two(2)?;
    sign(4, b"-")?;
    let month = two(5)?;
    sign(7, b"-")?;
    let day = two(8)?;
    // A space between day and time is what section 5.6 allows for being read.
    sign(10, b"Tt ")?;
    let hour = two(11)?;
    sign(13, b":")?;
    let minute = two(14)?;
    if !matches!(bytes.get(16), Some(b':')) {
        return Err(match bytes.get(16) {
            None | Some(b'Z' | b'z' | b'+' | b'-') => TimeFault::NoSeconds,
            Some(_) => TimeFault::Form,
        });
    }
    let second = two(17)?;
    let mut at = 19;
    let mut thousandths = 0;
    if bytes.get(at) == Some(&b'.') {
        at += 1;
        let begin = at;
        let mut worth = 100;
        while let Some(digit @ b'0'..=b'9') = bytes.get(at) {
            thousandths += i64::from(digit - b'0') * worth;
            worth /= 10;
            at += 1;
        }
        if at == begin {
            return Err(TimeFault::Form);
        }
    }
    let (offset, end) = match bytes.get(at) {
        None => return Err(TimeFault::NoOffset),
        Some(b'Z' | b'z') => (0, at + 1),
        Some(sign_byte @ (b'+' | b'-')) => {
            let hours = two(at + 1)?;
            sign(at + 3, b":")?;
            let minutes = two(at + 4)?;
            if hours > 23 || minutes > 59 {
                return Err(TimeFault::NoSuchTime);
            }
            let offset = hours * 60 + minutes;
            (if *sign_byte == b'-' { -offset } else { offset }, at + 6)
        }
        Some(_) => return Err(TimeFault::Form),
    };
    if end != bytes.len() {
        return Err(TimeFault::Form);
    }
    // 60 is a leap second.
    if !(1..=12).contains(&month)
        || day < 1
        || day > days_in(year, month)
        || hour > 23
        || minute > 59
        || second > 60
    {
        return Err(TimeFault::NoSuchTime);
    }
    let seconds = days(year, month, day) * 86_400 + hour * 3_600 + (minute - offset) * 60 + second;
    let offset = i16::try_from(offset).map_err(|_| TimeFault::NoSuchTime)?;
    Ok(Moment::new(seconds * 1_000 + thousandths, offset))
}

const fn days_in(year: i64, month: i64) -> i64 {
    match month {
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// Days since 1970 in the Gregorian calendar, by years that begin in March.
const fn days(year: i64, month: i64, day: i64) -> i64 {
    let year = if month <= 2 { year - 1 } else { year };
    let era = year.div_euclid(400);
    let year_of_era = year.rem_euclid(400);
    let day_of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    era * 146_097 + year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year - 719_468
}
