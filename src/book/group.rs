//! Patient groups.

use super::Rule;
use crate::quantity::{Range, Time};

/// A patient group, by age.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Name, place and reason.
    pub rule: Rule,
    /// The ages it holds; where a range is written `A to B`, A belongs to it and B does not.
    pub age: Range<Time>,
}
