//! The answer to the request `book`.

use schemars::JsonSchema;
use serde::Serialize;

use crate::book::Rulebook;

/// What the rulebook names: what requests may name.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Names<'b> {
    pub groups: Vec<Name<'b>>,
    pub conditions: Vec<Name<'b>>,
    pub devices: Vec<Name<'b>>,
    pub cylinders: Vec<Name<'b>>,
}

/// One of them.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Name<'b> {
    /// The name that requests use.
    id: &'b str,
    /// The name people use.
    name: &'b str,
}

impl<'b> Names<'b> {
    /// Those of a book, in its order.
    pub fn of(book: &'b Rulebook) -> Self {
        let name = |rule: &'b crate::book::Rule| Name {
            id: &rule.id,
            name: &rule.name,
        };
        Self {
            groups: book.groups.iter().map(|group| name(&group.rule)).collect(),
            conditions: book
                .conditions
                .iter()
                .map(|condition| Name {
                    id: &condition.id,
                    name: &condition.name,
                })
                .collect(),
            devices: book.devices.iter().map(|device| name(&device.rule)).collect(),
            cylinders: book
                .cylinders
                .iter()
                .map(|cylinder| name(&cylinder.rule))
                .collect(),
        }
    }
}
