//! Patient groups.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
    },
    Raw, rule,
};
use crate::book::Group;
use crate::quantity::{Limit, Range, Time};

const KEYS: Keys = Keys {
    of: "group",
    required: &["id", "name", "age"],
    optional: &[],
};

/// Reads a group.
pub fn read(raw: &Raw, found: &mut Diagnostics) -> Option<Group> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "name", found);
    let age: Option<Range<Time>> = fields.read("age", found, fields::range);
    Some(Group {
        rule: rule?,
        age: age.map(half_open)?,
    })
}

/// `28 days to 1 year` holds 28 days and not 1 year, so that neighbouring groups don't overlap.
const fn half_open(age: Range<Time>) -> Range<Time> {
    match (age.low, age.high) {
        (Limit::Included(low), Limit::Included(high)) => Range {
            low: Limit::Included(low),
            high: Limit::Excluded(high),
        },
        _ => age,
    }
}
