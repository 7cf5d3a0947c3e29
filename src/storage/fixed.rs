//! Text and lists of a program without an allocator: always part of the program itself.

/// Text of a rulebook.
#[derive(Clone)]
pub struct Text(&'static str);

impl Text {
    /// Text that is part of the program.
    #[must_use]
    pub const fn fixed(text: &'static str) -> Self {
        Self(text)
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
        self.0
    }
}

/// A list in a rulebook.
pub struct List<T: 'static>(&'static [T]);

impl<T> List<T> {
    /// A list that is part of the program.
    #[must_use]
    pub const fn fixed(items: &'static [T]) -> Self {
        Self(items)
    }

    /// The items.
    #[must_use]
    pub const fn as_slice(&self) -> &[T] {
        self.0
    }
}

impl<T> Clone for List<T> {
    fn clone(&self) -> Self {
        Self(self.0)
    }
}
