//! Signs as they are printed, and whether the card font has every one that a card or a sheet needs. A missing sign would
//! print as an empty box.

use serde::Serialize;

use super::CardsError;

/// Lowered digits, which the templates set as small digits, two hyphens, which they set as the common one, and arrows and
/// a triangle, which they draw.
const SET_BY_TEMPLATES: [core::ops::RangeInclusive<char>; 2] =
    ['\u{2080}'..='\u{2089}', '\u{2010}'..='\u{2011}'];

/// Checks every text of what is to be printed.
pub fn check(sheet: &impl Serialize) -> Result<(), CardsError> {
    // The font comes with the program; should it not be readable, Typst says so.
    let Ok(font) = ttf_parser::Face::parse(notosans::REGULAR_TTF, 0) else {
        return Ok(());
    };
    let printable = |sign: char| {
        sign.is_whitespace()
            || SET_BY_TEMPLATES.iter().any(|set| set.contains(&sign))
            || (!is_invisible(sign) && font.glyph_index(sign).is_some())
    };
    let Ok(data) = serde_json::to_value(sheet) else {
        return Ok(());
    };
    match first_unprintable(&data, &printable) {
        None => Ok(()),
        Some((sign, text)) => Err(CardsError::NoGlyph {
            sign,
            text: text.chars().take(60).collect(),
        }),
    }
}

/// Controls and marks that change the direction of text can make a number read otherwise.
fn is_invisible(sign: char) -> bool {
    sign.is_control()
        || matches!(sign, '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{2069}' | '\u{FEFF}')
}

fn first_unprintable<'a>(
    value: &'a serde_json::Value,
    printable: &impl Fn(char) -> bool,
) -> Option<(char, &'a str)> {
    match value {
        serde_json::Value::String(text) => {
            let sign = text.chars().find(|sign| !printable(*sign))?;
            Some((sign, text))
        }
        serde_json::Value::Array(items) => items.iter().find_map(|item| first_unprintable(item, printable)),
        serde_json::Value::Object(fields) => fields
            .values()
            .find_map(|item| first_unprintable(item, printable)),
        _ => None,
    }
}

/// A text for a message: signs that can't be seen, or that turn what is around them, as numbers.
pub fn visible(text: &str) -> String {
    text.chars()
        .map(|sign| {
            if is_invisible(sign) {
                format!("\\u{{{:x}}}", sign as u32)
            } else {
                sign.to_string()
            }
        })
        .collect()
}

/// Names in the marks that print uses, for those that a terminal shows: a backtick would be set as an accent on the letter
/// after it.
pub fn quotes(text: &str) -> String {
    let mut parts = text.split('`');
    let mut all = String::from(parts.next().unwrap_or_default());
    for (place, part) in parts.enumerate() {
        all.push(if place % 2 == 0 { '“' } else { '”' });
        all.push_str(part);
    }
    all
}
