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
    // A space between day and time is what section 5.6 allows for being read.
    let Some(
        [
            y1,
            y2,
            y3,
            y4,
            b'-',
            m1,
            m2,
            b'-',
            d1,
            d2,
            b'T' | b't' | b' ',
            h1,
            h2,
            b':',
            n1,
            n2,
            b':',
            s1,
            s2,
        ],
    ) = bytes.first_chunk::<19>()
    else {
        return Err(shorter(bytes));
    };
    let year = two(y1, y2)? * 100 + two(y3, y4)?;
    let (month, day) = (two(m1, m2)?, two(d1, d2)?);
    let (hour, minute, second) = (two(h1, h2)?, two(n1, n2)?, two(s1, s2)?);
    let mut rest = bytes.get(19..).unwrap_or_default();
    let mut thousandths = 0;
    if let [b'.', parts @ ..] = rest {
        let digits = parts.iter().take_while(|byte| byte.is_ascii_digit()).count();
        if digits == 0 {
            return Err(TimeFault::Form);
        }
        for (digit, worth) in parts.iter().take(digits).zip([100, 10, 1]) {
            thousandths += i64::from(digit - b'0') * worth;
        }
        rest = parts.get(digits..).unwrap_or_default();
    }
    let offset = match rest {
        [] => return Err(TimeFault::NoOffset),
        [b'Z' | b'z'] => 0,
        [sign @ (b'+' | b'-'), h1, h2, b':', m1, m2] => {
            let (hours, minutes) = (two(h1, h2)?, two(m1, m2)?);
            if hours > 23 || minutes > 59 {
                return Err(TimeFault::NoSuchTime);
            }
            let offset = hours * 60 + minutes;
            if *sign == b'-' { -offset } else { offset }
        }
        _ => return Err(TimeFault::Form),
    };
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

/// What is missing of a text that isn't long enough or has other signs between its digits.
const fn shorter(bytes: &[u8]) -> TimeFault {
    match bytes {
        [_, _, _, _, b'-', _, _, b'-', _, _, _, _, _, b':', _, _]
        | [
            _,
            _,
            _,
            _,
            b'-',
            _,
            _,
            b'-',
            _,
            _,
            _,
            _,
            _,
            b':',
            _,
            _,
            b'Z' | b'z' | b'+' | b'-',
            ..,
        ] => TimeFault::NoSeconds,
        _ => TimeFault::Form,
    }
}

const fn two(tens: &u8, ones: &u8) -> Result<i64, TimeFault> {
    let (tens, ones) = (tens.wrapping_sub(b'0'), ones.wrapping_sub(b'0'));
    if tens > 9 || ones > 9 {
        return Err(TimeFault::Form);
    }
    Ok(tens as i64 * 10 + ones as i64)
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
