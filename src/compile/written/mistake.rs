//! What is wrong with a text in a rule, and where in it.

use core::ops::Range as Bytes;

use super::advice::Wanted;

/// What is wrong with a written quantity, and where in it.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Mistake {
    /// A stable name in kebab-case.
    pub code: &'static str,
    /// The bytes that are wrong.
    pub at: Bytes<usize>,
    /// What is wrong.
    pub message: String,
    /// What to write instead.
    pub hint: Option<String>,
    /// What belongs at the place, where that decides what to write.
    pub(in crate::compile) wanted: Option<Wanted>,
}

impl Mistake {
    /// A mistake without advice.
    pub fn new(code: &'static str, at: Bytes<usize>, message: impl Into<String>) -> Self {
        Self {
            code,
            at,
            message: message.into(),
            hint: None,
            wanted: None,
        }
    }

    /// Says what to write instead.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = Some(hint.into());
        // Whoever gives advice of their own knows better than the kind of quantity does.
        self.wanted = None;
        self
    }

    /// The same mistake, found `by` bytes further into a longer text.
    #[must_use]
    pub fn shifted(mut self, by: usize) -> Self {
        self.at = self.at.start + by..self.at.end + by;
        self
    }
}

impl core::error::Error for Mistake {}

impl core::fmt::Display for Mistake {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.message)?;
        if let Some(hint) = &self.hint {
            write!(f, " ({hint})")?;
        }
        Ok(())
    }
}
