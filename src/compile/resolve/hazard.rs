//! Hazards.

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        guard::{self, Vocabulary},
        quoted::Quotable,
    },
    Raw, Scope, rule,
};
use crate::book::{Hazard, Policy, Severity};

const KEYS: Keys = Keys {
    of: "hazard",
    required: &["id", "name", "never", "severity", "say", "do"],
    optional: &[],
};

/// Reads a hazard.
pub fn read(
    raw: &Raw,
    scope: &Scope<'_>,
    policies: &[Policy],
    quotable: Option<&Quotable<'_>>,
    found: &mut Diagnostics,
) -> Option<Hazard> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "name", found);
    let vocabulary = Vocabulary {
        names: &scope.names,
        policies,
    };
    let never = fields.read("never", found, |node, found| {
        let names = &scope.names;
        let has_unread = [&names.policies, &names.conditions, &names.devices, &names.groups]
            .iter()
            .any(|table| table.has_unread());
        match guard::read(fields::plain(node, found)?, &vocabulary) {
            Ok(guard) => Some(guard),
            // What it names may be the rule whose id can't be read.
            Err(mistake) if has_unread && matches!(mistake.code, "unknown-name" | "unknown-observation") => {
                None
            }
            Err(mistake) => {
                fields::report(node, mistake, found);
                None
            }
        }
    });
    let severity = fields.read("severity", found, |node, found| {
        fields::word(
            node,
            found,
            "severity",
            &[
                ("stop", Severity::Stop),
                ("warn", Severity::Warn),
                ("note", Severity::Note),
            ],
        )
    });
    let quoting = |node, found: &mut Diagnostics| fields::quoting(node, quotable, found);
    let say = fields.read("say", found, quoting);
    let remedy = fields.read("do", found, quoting);
    Some(Hazard {
        rule: rule?,
        never: never?,
        severity: severity?,
        say: say?,
        remedy: remedy?,
    })
}
