//! The grammar of written quantities, in nom.

use core::ops::Range as Bytes;

use nom::{
    IResult, Parser,
    branch::alt,
    bytes::complete::{tag, take_while, take_while1},
    character::complete::{char, digit1, one_of, space0, space1},
    combinator::{opt, recognize},
    sequence::{preceded, terminated},
};

use super::{
    super::suggest::{listed, nearest},
    Mistake,
    advice::ANY_EXAMPLE,
    unit::{OTHER_SPELLINGS, UNITS, Unit},
};
use crate::book::Value;
use crate::quantity::{Limit, Ratio};

/// A number with its unit, each with its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    pub number: f64,
    pub number_at: Bytes<usize>,
    pub unit: Unit,
    pub unit_at: Bytes<usize>,
}

#[derive(Clone, Debug, PartialEq)]
pub enum Written {
    One(Amount),
    Range(Limit<Box<Amount>>, Limit<Box<Amount>>),
}

/// A quantity or range at the start of a text, and where it ends.
pub fn written(text: &str) -> Result<(Written, usize), Mistake> {
    let at = |rest: &str| text.len() - rest.len();
    let (rest, prefix) = optional(text, prefix);
    match prefix {
        None => {}
        Some(prefix) => {
            let (amount, end) = amount(text, at(rest))?;
            let amount = Box::new(amount);
            let (low, high) = match prefix {
                "at least" => (Limit::Included(amount), Limit::None),
                "over" => (Limit::Excluded(amount), Limit::None),
                "at most" => (Limit::None, Limit::Included(amount)),
                _ => (Limit::None, Limit::Excluded(amount)),
            };
            return Ok((Written::Range(low, high), end));
        }
    }
    let start = at(rest);
    let Ok((after_number, first)) = number(rest) else {
        return Err(no_number(text, start));
    };
    let first_at = number_place(text, rest, after_number);
    reject_separator(text, &first_at, after_number)?;
    // `10 to 15 L/min`: the unit may be left to the second number.
    if let Ok((second, _)) = to_word(after_number)
        && number(second).is_ok()
    {
        let (high, end) = amount(text, at(second))?;
        let low = Amount {
            number: first,
            number_at: first_at,
            unit: high.unit,
            unit_at: high.unit_at.clone(),
        };
        let range = Written::Range(Limit::Included(Box::new(low)), Limit::Included(Box::new(high)));
        return Ok((range, end));
    }
    let (low, end) = amount(text, start)?;
    let after = text.get(end..).unwrap_or("");
    if let Ok((second, _)) = to_word(after) {
        let (high, end) = amount(text, at(second))?;
        if high.unit.dimension() != low.unit.dimension() {
            return Err(Mistake::new(
                "wrong-unit",
                high.unit_at,
                format!(
                    "expected {}, found {}",
                    low.unit.dimension().words(),
                    high.unit.dimension().words()
                ),
            )
            .hint("write both ends of a range in units of one kind"));
        }
        let range = Written::Range(Limit::Included(Box::new(low)), Limit::Included(Box::new(high)));
        return Ok((range, end));
    }
    Ok((Written::One(low), end))
}

/// A number and its unit, starting at a place in the text.
fn amount(text: &str, start: usize) -> Result<(Amount, usize), Mistake> {
    let input = text.get(start..).unwrap_or("");
    let Ok((rest, value)) = number(input) else {
        return Err(no_number(text, start));
    };
    let number_at = number_place(text, input, rest);
    reject_separator(text, &number_at, rest)?;
    let Ok((after, unit)) = preceded(space0::<_, nom::error::Error<&str>>, unit_word).parse(rest) else {
        return Err(Mistake::new(
            "missing-unit",
            number_at.clone(),
            format!(
                "expected a unit after {}",
                text.get(number_at).unwrap_or("the number")
            ),
        )
        .hint("write the unit, for example `L/min`, `psi`, `%` or `min`"));
    };
    let end = text.len() - after.len();
    let unit_at = end - unit.len()..end;
    match UNITS.iter().find(|(spelling, _)| *spelling == unit) {
        Some((_, found)) => Ok((
            Amount {
                number: value,
                number_at,
                unit: *found,
                unit_at,
            },
            end,
        )),
        None => Err(unknown_unit(unit, unit_at)),
    }
}

fn unknown_unit(unit: &str, at: Bytes<usize>) -> Mistake {
    let mistake = Mistake::new("unknown-unit", at, format!("expected a unit, found `{unit}`"));
    let lowered = unit.to_lowercase();
    let spelling = OTHER_SPELLINGS
        .iter()
        .find(|(other, _)| *other == lowered)
        .map(|(_, ours)| *ours)
        .or_else(|| nearest(unit, UNITS.iter().map(|(spelling, _)| *spelling)));
    match spelling {
        Some(spelling) => mistake.hint(format!("write `{spelling}`")),
        None => mistake.hint(format!(
            "the units are {}",
            listed(UNITS.iter().map(|(spelling, _)| *spelling), "and")
        )),
    }
}

/// There is no number where one should be.
pub fn no_number(text: &str, start: usize) -> Mistake {
    let rest = text.get(start..).unwrap_or("");
    let start = start + rest.len() - rest.trim_start().len();
    let rest = rest.trim();
    if rest.is_empty() {
        return Mistake::new(
            "not-a-quantity",
            0..text.len(),
            "expected a number with its unit, found nothing",
        )
        .hint(ANY_EXAMPLE);
    }
    let word = rest.split_whitespace().next().unwrap_or(rest);
    Mistake::new(
        "not-a-quantity",
        start..start + word.len(),
        format!("expected a number with its unit, found `{word}`"),
    )
    .hint(match word.chars().next() {
        // As a text processor writes them.
        Some('“' | '”' | '„' | '‘' | '’' | '«' | '»') => {
            "this is a curly quotation mark: write a straight one (\"), or none"
        }
        Some('[') => "this is a list: take the quotation marks round it away",
        _ => ANY_EXAMPLE,
    })
}

/// `1,000`, `1 000`, `0,16` and `10-15` are written otherwise here.
fn reject_separator(text: &str, number_at: &Bytes<usize>, rest: &str) -> Result<(), Mistake> {
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let so_far = text.get(number_at.clone()).unwrap_or("");
    let loose = rest.trim_start();
    let spaces = rest.len() - loose.len();
    let Some(mark) = loose.chars().next() else {
        return Ok(());
    };
    let after = loose.get(mark.len_utf8()..).unwrap_or("");
    let second = after.trim_start();
    let gap = after.len() - second.len();
    let more = second.get(..digits(second)).unwrap_or("");
    let end = number_at.end + spaces + mark.len_utf8() + gap + more.len();
    let separated = |end: usize, instead: String| {
        Err(Mistake::new(
            "thousands-separator",
            number_at.start..end,
            "expected a plain number, found a separator in it",
        )
        .hint(format!("write `{instead}`")))
    };
    match mark {
        ',' if spaces + gap == 0 && !more.is_empty() && (more.len() != 3 || so_far == "0") => {
            separated(end, format!("{so_far}.{more}"))
        }
        ',' | '\'' if spaces + gap == 0 && !more.is_empty() => separated(end, format!("{so_far}{more}")),
        _ if mark.is_ascii_digit() && spaces > 0 => {
            let more = loose.get(..digits(loose)).unwrap_or("");
            separated(number_at.end + spaces + more.len(), format!("{so_far}{more}"))
        }
        '-' | '–' | '—' | '−' | '…' if !more.is_empty() => Err(Mistake::new(
            "not-a-range",
            number_at.start..end,
            format!("expected `to` between {so_far} and {more}, found `{mark}`"),
        )
        .hint(format!("write `{so_far} to {more}`"))),
        _ => Ok(()),
    }
}

fn number_place(text: &str, input: &str, rest: &str) -> Bytes<usize> {
    let (start, end) = (text.len() - input.len(), text.len() - rest.len());
    let spaces = input.len() - input.trim_start().len();
    start + spaces..end
}

type Parsed<'a, T> = IResult<&'a str, T>;

fn number(input: &str) -> Parsed<'_, f64> {
    let (rest, (sign, digits)) = preceded(
        space0,
        (opt(one_of("-−")), recognize((digit1, opt((char('.'), digit1))))),
    )
    .parse(input)?;
    let magnitude: f64 = digits.parse().unwrap_or(f64::NAN);
    Ok((rest, if sign.is_some() { -magnitude } else { magnitude }))
}

fn prefix(input: &str) -> Parsed<'_, &str> {
    preceded(
        space0,
        terminated(
            alt((tag("at least"), tag("at most"), tag("under"), tag("over"))),
            space1,
        ),
    )
    .parse(input)
}

fn to_word(input: &str) -> Parsed<'_, &str> {
    preceded(space1, terminated(tag("to"), space1)).parse(input)
}

fn unit_word(input: &str) -> Parsed<'_, &str> {
    recognize((
        take_while1(|c: char| c.is_alphabetic() || matches!(c, '%' | '°')),
        take_while(|c: char| c.is_alphanumeric() || matches!(c, '/' | '³' | '°')),
    ))
    .parse(input)
    .and_then(|(rest, unit)| {
        // `to` belongs to a range whose unit is missing.
        if unit == "to" {
            Err(nom::Err::Error(nom::error::Error::new(
                rest,
                nom::error::ErrorKind::Tag,
            )))
        } else {
            Ok((rest, unit))
        }
    })
}

/// A ratio at the start of a text, where there is one.
pub fn ratio_at_start(text: &str) -> Option<Result<(Value, usize), Mistake>> {
    let (rest, parts) = number(text).ok()?;
    let at = number_place(text, text, rest);
    let (rest, _) = to_word(rest).ok()?;
    let rest = rest.strip_prefix('1')?;
    // `1 to 15 L/min` is a range: a ratio ends with its 1.
    if !rest.trim().is_empty() && !rest.starts_with([' ', ')']) || number(rest).is_ok() {
        return None;
    }
    if unit_word(rest.trim_start()).is_ok_and(|(_, word)| UNITS.iter().any(|(unit, _)| *unit == word)) {
        return None;
    }
    let end = text.len() - rest.len();
    Some(match Ratio::to_one(parts) {
        Ok(ratio) => Ok((Value::Ratio(ratio), end)),
        Err(bounds) => Err(Mistake::new("out-of-bounds", at, bounds.to_string()).hint(bounds.bounds.reason)),
    })
}

fn optional<'a, T>(input: &'a str, mut parser: impl FnMut(&'a str) -> Parsed<'a, T>) -> (&'a str, Option<T>) {
    match parser(input) {
        Ok((rest, value)) => (rest, Some(value)),
        Err(_) => (input, None),
    }
}
