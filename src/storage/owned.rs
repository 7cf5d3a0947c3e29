//! Text and lists of a program with an allocator: part of the program, or read at run time.

use alloc::{string::String, vec::Vec};

/// Text of a rulebook.
#[derive(Clone)]
pub struct Text(TextRepr);

#[derive(Clone)]
enum TextRepr {
    Fixed(&'static str),
    Owned(String),
}

impl Text {
    /// Text that is part of the program.
    #[must_use]
    pub const fn fixed(text: &'static str) -> Self {
        Self(TextRepr::Fixed(text))
    }

    /// A part of a text that is part of the program, for generated tables.
    #[doc(hidden)]
    #[must_use]
    pub const fn part(whole: &'static str, start: usize, length: usize) -> Self {
        Self::fixed(whole.split_at(start).1.split_at(length).0)
    }

    /// The text.
    #[must_use]
    pub const fn as_str(&self) -> &str {
        match &self.0 {
            TextRepr::Fixed(text) => text,
            TextRepr::Owned(text) => text.as_str(),
        }
    }
}

impl From<String> for Text {
    fn from(text: String) -> Self {
        Self(TextRepr::Owned(text))
    }
}

/// A list in a rulebook.
#[derive(Clone)]
pub struct List<T: 'static>(ListRepr<T>);

#[derive(Clone)]
enum ListRepr<T: 'static> {
    Fixed(&'static [T]),
    Owned(Vec<T>),
}

impl<T> List<T> {
    /// A list that is part of the program.
    #[must_use]
    pub const fn fixed(items: &'static [T]) -> Self {
        Self(ListRepr::Fixed(items))
    }

    /// The items.
    #[must_use]
    pub const fn as_slice(&self) -> &[T] {
        match &self.0 {
            ListRepr::Fixed(items) => items,
            ListRepr::Owned(items) => items.as_slice(),
        }
    }
}

impl<T> From<Vec<T>> for List<T> {
    fn from(items: Vec<T>) -> Self {
        Self(ListRepr::Owned(items))
    }
}
