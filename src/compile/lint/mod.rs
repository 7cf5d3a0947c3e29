//! Contradictions and gaps that nobody finds by reading, looked for in a book that has no other error.
//!
#![doc = include_str!("lints.md")]

mod allow;
mod cards;
mod contradictions;
mod cylinders;
mod dates;
mod devices;
mod groups;
mod guards;
mod links;
mod numbers;
mod oxygen;
mod places;
mod policies;
mod prose;
mod search;
mod targets;
mod unused;
mod words;

pub use allow::{ALLOW, Allowed, take};
pub use dates::{Signature, today};
pub use places::{Places, Written};

use std::collections::BTreeSet;

use super::{
    chapter::Block,
    diagnostic::{Diagnostic, Diagnostics, Level},
    source::{Sources, Span},
};
use crate::book::Rulebook;
use places::RuleRef;
use prose::Prose;

/// Something to look for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lint {
    /// Its name in kebab-case: the diagnostic's code, and the key under `allow`.
    pub name: &'static str,
    /// Whether a book in which it finds something can't be used.
    pub level: Level,
}

impl Lint {
    const fn error(name: &'static str) -> Self {
        Self {
            name,
            level: Level::Error,
        }
    }

    const fn note(name: &'static str) -> Self {
        Self {
            name,
            level: Level::Note,
        }
    }
}

/// Every lint, in the order of the page above.
pub const LINTS: [Lint; 42] = [
    groups::AGE_WITHOUT_GROUP,
    groups::NO_GENERAL_TARGET,
    targets::TARGET_NEVER_CHOSEN,
    targets::MINUTES_NOT_IN_ORDER,
    targets::TARGET_FALLS,
    targets::TARGET_NARROW,
    targets::LADDER_NOT_RISING,
    targets::RUNG_REPEATED,
    targets::URGENT_START_WEAKER,
    policies::MINIMUM_ABOVE_FILLING,
    policies::USE_OUTSIDE_STORAGE,
    cards::ROW_BELOW_RESIDUAL,
    cards::ROW_ABOVE_FILLING,
    cards::ROWS_STOP_EARLY,
    contradictions::HAZARD_FORBIDS_RECOMMENDED,
    contradictions::TARGET_FORBIDDEN,
    contradictions::POLICY_OUTSIDE_DEVICE,
    guards::HAZARD_NEVER_FIRES,
    guards::HAZARD_ALWAYS_FIRES,
    guards::NOT_DECIDED,
    unused::DEVICE_NOT_PLACED,
    unused::POLICY_NEVER_READ,
    unused::CONNECTION_NEVER_USED,
    cylinders::FACTOR_OVER_PROMISES,
    cylinders::FACTOR_WASTES,
    cylinders::CONTENTS_AGAINST_WATER,
    cylinders::CONTENTS_ABOVE_FILLING,
    devices::RESERVOIR_STARVED,
    devices::RESERVOIR_SCANT,
    devices::ENTRAINMENT_RATIO,
    devices::TOTAL_FLOW_LOW,
    devices::OXYGEN_FALLS_WITH_FLOW,
    devices::OXYGEN_OUTSIDE_RANGE,
    dates::REVIEW_PASSED,
    dates::NOT_YET_EFFECTIVE,
    dates::SIGNED_LATE,
    dates::SIGNED_IN_FUTURE,
    links::CHAPTER_NOT_THERE,
    links::BROKEN_LINK,
    words::ABBREVIATION_NOT_EXPLAINED,
    numbers::NUMBER_WRITTEN_TWICE,
    UNUSED_ALLOW,
];

/// An `allow` that allows nothing.
const UNUSED_ALLOW: Lint = Lint::note("unused-allow");

/// What a lint found, and the rules that may allow it.
struct Finding {
    owners: Vec<RuleRef>,
    diagnostic: Diagnostic,
}

/// What the lints look at, and what they found.
struct Room<'a> {
    book: &'a Rulebook,
    places: &'a Places,
    sources: &'a Sources,
    prose: &'a Prose,
    findings: Vec<Finding>,
    /// How many more evaluations of guards may be spent on the whole book.
    evaluations: u64,
}

impl Room<'_> {
    /// Adds a finding at a place; each of the owners may allow it.
    fn find(
        &mut self,
        lint: Lint,
        owners: &[RuleRef],
        at: Span,
        message: impl Into<String>,
    ) -> &mut Diagnostic {
        let finding = Finding {
            owners: owners.to_vec(),
            diagnostic: diagnostic(lint, at, message.into()),
        };
        &mut self.findings.push_mut(finding).diagnostic
    }
}

fn diagnostic(lint: Lint, at: Span, message: String) -> Diagnostic {
    Diagnostic {
        code: lint.name,
        level: lint.level,
        message,
        span: Some(at),
        labels: Vec::new(),
        hints: Vec::new(),
    }
}

/// How many evaluations of guards are spent on one book: a tenth of a second's work.
const EVALUATIONS: u64 = 2_000_000;

/// Runs every lint that needs no date, and reports what was found.
pub fn run(book: &Rulebook, places: &Places, blocks: &[Block], sources: &Sources, found: &mut Diagnostics) {
    let prose = Prose::read(sources, blocks);
    let mut room = Room {
        book,
        places,
        sources,
        prose: &prose,
        findings: Vec::new(),
        evaluations: EVALUATIONS,
    };
    groups::look(&mut room);
    targets::look(&mut room);
    policies::look(&mut room);
    cards::look(&mut room);
    cylinders::look(&mut room);
    devices::look(&mut room);
    guards::look(&mut room);
    contradictions::look(&mut room);
    unused::look(&mut room);
    links::look(&mut room);
    words::look(&mut room);
    numbers::look(&mut room);
    dates::look(&mut room);
    let findings = room.findings;
    report(findings, places, found);
}

/// Reports findings; those that are allowed become notes with the reason, and an `allow` without a finding is one too.
fn report(findings: Vec<Finding>, places: &Places, found: &mut Diagnostics) {
    let mut used = BTreeSet::new();
    for Finding {
        owners,
        mut diagnostic,
    } in findings
    {
        let allowed = owners
            .iter()
            .filter_map(|owner| places.written(*owner))
            .flat_map(|written| &written.allowed)
            .filter(|allowed| allowed.lint == diagnostic.code);
        let mut reason = None;
        for allowed in allowed {
            used.insert(allowed.at);
            reason.get_or_insert(allowed);
        }
        if let Some(allowed) = reason {
            diagnostic.level = Level::Note;
            diagnostic.hints = vec![format!("allowed: {}", allowed.reason)];
            diagnostic.label(allowed.at, "allowed here");
        }
        push(diagnostic, found);
    }
    for (_, written) in places.all() {
        for allowed in &written.allowed {
            // Whether a date has passed is not known here.
            if !used.contains(&allowed.at) && !dates::depends_on_the_day(allowed.lint) {
                let message = format!("`{}` finds nothing here that this could allow", allowed.lint);
                let mut unused = diagnostic(UNUSED_ALLOW, allowed.at, message);
                unused.hint("take it out");
                push(unused, found);
            }
        }
    }
}

fn push(diagnostic: Diagnostic, found: &mut Diagnostics) {
    let Some(span) = diagnostic.span else {
        return;
    };
    let kept = match diagnostic.level {
        Level::Error => found.error(diagnostic.code, span, diagnostic.message),
        Level::Note => found.note(diagnostic.code, span, diagnostic.message),
    };
    for (at, words) in diagnostic.labels {
        kept.label(at, words);
    }
    for hint in diagnostic.hints {
        kept.hint(hint);
    }
}
