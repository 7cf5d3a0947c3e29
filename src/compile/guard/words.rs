//! The words and signs of a guard, one after the other.

use core::ops::Range as Bytes;

use super::written::Mistake;

/// The signs of comparisons that are written with two characters.
const PAIRS: [&str; 3] = ["<=", ">=", "!="];

/// A text and how far it was read.
#[derive(Clone, Copy)]
pub struct Words<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Words<'a> {
    pub const fn new(text: &'a str) -> Self {
        Self { text, at: 0 }
    }

    pub const fn text(&self) -> &'a str {
        self.text
    }

    /// The byte after the last word taken.
    pub const fn at(&self) -> usize {
        self.at
    }

    /// Goes on reading at another place.
    pub const fn go_to(&mut self, at: usize) {
        self.at = at;
    }

    /// What wasn't read yet.
    pub fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or("")
    }

    /// Where the next word begins, or the text ends.
    pub fn start(&self) -> usize {
        self.text.len() - self.rest().trim_start().len()
    }

    /// The next word or sign.
    pub fn peek(&self) -> Option<Bytes<usize>> {
        let start = self.start();
        let rest = self.rest().trim_start();
        let first = rest.chars().next()?;
        let is_word = |c: char| c.is_alphanumeric() || matches!(c, '-' | '.' | '%' | '°' | '/');
        let length = if is_word(first) {
            rest.find(|c: char| !is_word(c)).unwrap_or(rest.len())
        } else if PAIRS.iter().any(|pair| rest.starts_with(pair)) {
            2
        } else {
            first.len_utf8()
        };
        Some(start..start + length)
    }

    /// The word after the next.
    pub fn peek_second(&self) -> Option<Bytes<usize>> {
        let mut after = *self;
        after.at = self.peek()?.end;
        after.peek()
    }

    pub fn piece(&self, at: &Bytes<usize>) -> &'a str {
        self.text.get(at.clone()).unwrap_or("")
    }

    /// The next word's text; empty at the end.
    pub fn next_piece(&self) -> &'a str {
        self.peek().map_or("", |at| self.piece(&at))
    }

    /// Takes a phrase if it comes next, word by word.
    pub fn take(&mut self, phrase: &str) -> bool {
        let before = self.at;
        for expected in phrase.split(' ') {
            match self.peek() {
                Some(word) if self.piece(&word) == expected => self.at = word.end,
                _ => {
                    self.at = before;
                    return false;
                }
            }
        }
        true
    }

    /// The guard ends where something is still missing.
    pub fn unfinished(&self, expected: &str) -> Mistake {
        let written = self.text.trim_end();
        let last = written.chars().next_back().map_or(0, char::len_utf8);
        Mistake::new(
            "unfinished-guard",
            written.len() - last..written.len(),
            format!("expected {expected}, found the end of the guard"),
        )
        .hint(format!(
            "write {expected} after this, or take out what leads to it"
        ))
    }
}
