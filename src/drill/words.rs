//! Small words that several kinds of exercise need.

use alloc::{format, string::String};

/// The letter of a line: A to Z, then AA.
pub fn letter(place: usize) -> String {
    let of = |place: usize| char::from(b'A' + u8::try_from(place % 26).unwrap_or(0));
    let mut letters = String::new();
    if place >= 26 {
        letters.push(of(place / 26 - 1));
    }
    letters.push(of(place));
    letters
}

/// A name within a sentence; one that begins with several capitals stays.
pub fn lower(name: &str) -> String {
    let mut signs = name.chars();
    match (signs.next(), signs.next()) {
        (Some(first), Some(second)) if second.is_lowercase() => {
            first.to_lowercase().chain(name.chars().skip(1)).collect()
        }
        _ => name.into(),
    }
}

/// The time of day so many minutes after midnight.
pub fn clock(minutes: u64) -> String {
    format!("{:02}:{:02}", minutes / 60 % 24, minutes % 60)
}

/// A finding as a sentence: with a capital, and one full stop.
pub fn sentence(finding: &impl core::fmt::Display) -> String {
    let words = format!("{finding}");
    let words = words.trim_end_matches('.');
    let mut signs = words.chars();
    let first = signs.next().into_iter().flat_map(char::to_uppercase);
    first.chain(signs).chain(['.']).collect()
}
