//! What a book finds in a set-up.

use super::{Key, Verdict, axes::Point};
use crate::book::Rulebook;
use crate::check::{About, Finding, Level, Setup, check_setup};
use crate::lookup::Lookup;

/// A book that is asked.
pub struct Judge<'b> {
    pub book: &'b Rulebook,
    lookup: Lookup<'b>,
}

/// What it finds.
#[derive(Default)]
pub struct Judged<'b> {
    /// In a fixed order.
    pub findings: Vec<Key<'b>>,
    /// The gravest of them.
    pub verdict: Verdict,
}

impl<'b> Judge<'b> {
    pub fn new(book: &'b Rulebook) -> Self {
        Self {
            book,
            lookup: Lookup::new(book),
        }
    }

    /// Asks the book. The minutes themselves are compared elsewhere, and so is what the cold makes of a gauge.
    pub fn judge(&self, point: &Point<'_>, judged: &mut Judged<'b>) {
        judged.findings.clear();
        self.visit(point, |finding| {
            if let Some(key) = key(&finding) {
                judged.findings.push(key);
            }
        });
        judged.findings.sort_unstable();
        judged.findings.dedup();
        let gravest = judged.findings.iter().map(|key| key.level).max();
        judged.verdict = match gravest {
            None | Some(Level::Note) => Verdict::InOrder,
            Some(Level::Unknown) => Verdict::NotChecked,
            Some(Level::Warn) => Verdict::Warning,
            Some(Level::Stop) => Verdict::Stop,
        };
    }

    /// What the book says where it finds this.
    pub fn message(&self, point: &Point<'_>, wanted: &Key<'_>) -> Option<String> {
        let mut message = None;
        self.visit(point, |finding| {
            if message.is_none() && key(&finding).is_some_and(|key| key == *wanted) {
                message = Some(finding.to_string());
            }
        });
        message
    }

    fn visit(&self, point: &Point<'_>, visit: impl FnMut(Finding<'b>)) {
        let book = self.book;
        let Some(device) = book.find_device(point.device) else {
            return;
        };
        let condition = point
            .condition
            .map(|condition| condition.and_then(|id| book.find_condition(id)));
        let mut setup = Setup::new(device, point.flow);
        if let Some(condition) = &condition {
            setup = setup.conditions(condition.as_slice());
        }
        if let Some(group) = point.group.and_then(|id| book.find_group(id)) {
            setup = setup.group(group);
        }
        if let Some(cylinder) = point.cylinder.and_then(|id| book.find_cylinder(id)) {
            setup = setup.cylinder(cylinder);
        }
        if let Some(time) = point.since_birth {
            setup = setup.minute_of_life(time);
        }
        if let Some(spo2) = point.spo2 {
            setup = setup.spo2(spo2);
        }
        if let Some(pressure) = point.pressure {
            setup = setup.pressure(pressure);
        }
        if let Some(temperature) = point.temperature {
            setup = setup.temperature(temperature);
        }
        if let Some(wanted) = point.wanted {
            setup = setup.minutes_wanted(wanted);
        }
        if let Some((fact, holds)) = point.seen {
            setup = setup.observed(fact, holds);
        }
        // All identifiers were found in this very book.
        let _ = check_setup(&self.lookup, &setup, visit);
    }
}

fn key<'b>(finding: &Finding<'b>) -> Option<Key<'b>> {
    match finding.about {
        About::MinutesLeft { .. } | About::GaugeMisleads { .. } => None,
        _ => Some(Key {
            level: finding.level,
            code: finding.code(),
            kind: finding.kind,
            id: finding.rule.id(),
        }),
    }
}
