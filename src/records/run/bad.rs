//! Lines that could not be read at all.

use core::fmt;

use super::{MAX_EVENTS, MAX_LINE, scan::MAX_DEPTH};

/// A line that could not be read. It is told and counted, and the next line is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BadLine {
    /// The byte of the line at which reading stopped, from 0.
    pub byte: usize,
    /// Why.
    pub fault: Fault,
}

/// Why a line could not be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Fault {
    /// It isn't UTF-8.
    NotUtf8,
    /// The form is broken: what was expected.
    Syntax(&'static str),
    /// It isn't an object.
    NotObject,
    /// Lists or objects are inside each other too deep.
    TooDeep,
    /// It has too many bytes.
    TooLong,
    /// It has too many events.
    TooManyEvents,
    /// A row of CSV has another number of cells than the head.
    Cells {
        /// Those of the head.
        expected: usize,
        /// Those of the row.
        found: usize,
    },
}

impl BadLine {
    /// A line that stopped being readable at a byte.
    #[must_use]
    pub const fn new(byte: usize, fault: Fault) -> Self {
        Self { byte, fault }
    }

    /// A stable name in kebab-case.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self.fault {
            Fault::NotUtf8 => "line-not-utf-8",
            Fault::Syntax(_) => "line-broken",
            Fault::NotObject => "line-not-object",
            Fault::TooDeep => "line-too-deep",
            Fault::TooLong => "line-too-long",
            Fault::TooManyEvents => "line-too-many-events",
            Fault::Cells { .. } => "row-cells",
        }
    }

    /// What to write instead.
    #[must_use]
    pub const fn hint(&self) -> &'static str {
        match self.fault {
            Fault::NotUtf8 => "save the file as UTF-8",
            Fault::Syntax(_) => "write one run a line as a JSON object, or CSV with one event a row",
            Fault::NotObject => "write one run a line as a JSON object",
            Fault::TooDeep => "write a run as the schema says: `oxyfolio review --schema`",
            Fault::TooLong | Fault::TooManyEvents => "write each run on a line of its own",
            Fault::Cells { .. } => {
                "put a text with a separator in quotes, and leave a cell empty for what was not recorded"
            }
        }
    }
}

/// Why, in words.
impl fmt::Display for BadLine {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.fault {
            Fault::NotUtf8 => f.write_str("expected UTF-8"),
            Fault::Syntax(what) => write!(f, "expected {what}"),
            Fault::NotObject => f.write_str("expected a run as a JSON object"),
            Fault::TooDeep => write!(
                f,
                "expected at most {MAX_DEPTH} lists and objects inside each other"
            ),
            Fault::TooLong => write!(f, "expected at most {} MiB on a line", MAX_LINE >> 20),
            Fault::TooManyEvents => write!(f, "expected at most {MAX_EVENTS} events in a run"),
            Fault::Cells { expected, found } => {
                write!(f, "expected {expected} cells as in the head, found {found}")
            }
        }
    }
}

impl core::error::Error for BadLine {}
