//! What a guard can speak of, with its meaning: the reader's words and the documentation's table come from here.

use core::fmt::Write as _;

use super::{super::written::Dimension, types::dimension_of_measure};
use crate::book::{Comparison, Fact, Measure, Operand};

/// The signs of comparisons; those of two characters first.
pub(super) const COMPARISONS: [(&str, Comparison); 6] = [
    ("<=", Comparison::AtMost),
    (">=", Comparison::AtLeast),
    ("!=", Comparison::NotEqual),
    ("<", Comparison::Less),
    (">", Comparison::Greater),
    ("=", Comparison::Equal),
];

/// Stands before the id of a device.
pub(super) const DEVICE_IS: &str = "device is";
/// Stands before the id of a group.
pub(super) const GROUP_IS: &str = "group is";

/// A value that has a name and isn't the same for every patient.
pub(super) struct NamedValue {
    pub words: &'static str,
    pub operand: Operand,
    pub dimension: Dimension,
    pub meaning: &'static str,
    pub unknown: &'static str,
}

/// What a measure can be compared with, beside quantities, policies and measures.
pub(super) const NAMED_VALUES: [NamedValue; 4] = [
    NamedValue {
        words: "target.low",
        operand: Operand::TargetLow,
        dimension: Dimension::Percent,
        meaning: "the low end of the patient's saturation target",
        unknown: "when no one target is known for the patient, the reading can't be trusted, or the target has no low end",
    },
    NamedValue {
        words: "target.high",
        operand: Operand::TargetHigh,
        dimension: Dimension::Percent,
        meaning: "the high end of the patient's saturation target",
        unknown: "as with `target.low`, or when the target has no high end",
    },
    NamedValue {
        words: "device.least-flow",
        operand: Operand::DeviceLeastFlow,
        dimension: Dimension::Flow,
        meaning: "the least flow of the device in use, for the patient's group",
        unknown: "when the device is unknown or has no such limit; or the group is, and the groups' limits disagree",
    },
    NamedValue {
        words: "device.most-flow",
        operand: Operand::DeviceMostFlow,
        dimension: Dimension::Flow,
        meaning: "the greatest flow of the device in use, for the patient's group",
        unknown: "as with `device.least-flow`",
    },
];

/// Something a guard can speak of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Word {
    /// How it is written; what differs from guard to guard in capitals.
    pub form: &'static str,
    /// What kind of answer it gives: a quantity with its units, or yes or no.
    pub gives: &'static str,
    /// What it says, as a phrase.
    pub meaning: &'static str,
    /// When it is unknown, as a phrase.
    pub unknown: &'static str,
}

const TRUTH: &str = "yes or no";

/// Everything a guard can speak of: what is measured, what it is compared with, what is asked.
#[must_use]
pub fn words() -> Vec<Word> {
    let measures = Measure::ALL.iter().map(|measure| Word {
        form: measure.words(),
        gives: dimension_of_measure(*measure).words(),
        meaning: measure.meaning(),
        unknown: measure.unknown(),
    });
    let policies = [
        ("POLICY", "the quantity of the policy with this id"),
        ("POLICY.low", "the low end of the policy's range"),
        ("POLICY.high", "the high end of the policy's range"),
    ]
    .map(|(form, meaning)| Word {
        form,
        gives: "a quantity of the policy's kind",
        meaning,
        unknown: "never",
    });
    let values = NAMED_VALUES.iter().map(|value| Word {
        form: value.words,
        gives: value.dimension.words(),
        meaning: value.meaning,
        unknown: value.unknown,
    });
    let identities = [
        (
            "device is DEVICE",
            "the device in use is the one with this id",
            "when the device is unknown",
        ),
        (
            "group is GROUP",
            "the patient belongs to the group with this id",
            "when the group is unknown",
        ),
        (
            "CONDITION",
            "the patient has this condition",
            "until the conditions were asked for",
        ),
    ]
    .map(|(form, meaning, unknown)| Word {
        form,
        gives: TRUTH,
        meaning,
        unknown,
    });
    let facts = Fact::ALL.iter().map(|fact| Word {
        form: fact.words(),
        gives: TRUTH,
        meaning: fact.meaning(),
        unknown: fact.unknown(),
    });
    measures
        .chain(policies)
        .chain(values)
        .chain(identities)
        .chain(facts)
        .collect()
}

/// [`words`] as a Markdown table, as it stands in [the language page](crate::compile::language).
///
/// ```
/// let table = oxyfolio::compile::guard::vocabulary::table();
/// assert!(table.starts_with("| in a guard | gives | meaning | unknown |\n"));
/// assert!(table.contains("| `flow` | a flow in L/min | the flow set on the regulator | when no flow was recorded |\n"));
/// ```
#[must_use]
pub fn table() -> String {
    let mut table = String::from("| in a guard | gives | meaning | unknown |\n| --- | --- | --- | --- |\n");
    for Word {
        form,
        gives,
        meaning,
        unknown,
    } in words()
    {
        // Writing to a String cannot fail.
        let _ = writeln!(table, "| `{form}` | {gives} | {meaning} | {unknown} |");
    }
    table
}
