//! Sheets: examining a procedure, inspecting cylinders.

use serde::Serialize;

use super::{
    Body, Maker,
    figures::{gauge_unit, rounded_up},
};
use crate::book::{CylinderId, Procedure, Text};

/// One step of a check-off sheet.
#[derive(Clone, Debug, Serialize)]
pub struct CheckStep {
    /// The step's identifier, for messages.
    pub id: String,
    /// Its number.
    pub number: String,
    /// The instruction.
    pub text: String,
    /// Whether it is critical.
    pub critical: bool,
    /// The places in the order at which the book allows it.
    pub place: String,
    /// The steps it comes after; empty where there are none.
    pub after: String,
}

/// A size of cylinder with its least reading.
#[derive(Clone, Debug, Serialize)]
pub struct LogRow {
    /// `D: at least 1000 psi`.
    pub text: String,
}

impl Maker<'_> {
    pub(super) fn check_off(&self, procedure: &Procedure) -> Body {
        let places = places(procedure);
        let last = procedure.steps.len();
        let step = |(index, step): (usize, &crate::book::Step)| {
            let (from, to) = places.get(index).copied().unwrap_or((1, last));
            let values: [(&str, &str); 2] = [("from", &from.to_string()), ("to", &to.to_string())];
            let place = match (from, to) {
                (from, to) if from == to => self.messages.with("only-place", &values),
                (1, to) if to == last => self.messages.with("any-place", &values),
                _ => self.messages.with("between", &values),
            };
            let after: Vec<String> = step
                .after
                .iter()
                .map(|earlier| (earlier.index() + 1).to_string())
                .collect();
            CheckStep {
                id: step.id.to_string(),
                number: (index + 1).to_string(),
                text: step.say.to_string(),
                critical: step.critical,
                place,
                after: if after.is_empty() {
                    String::new()
                } else {
                    self.messages.with("after-steps", &[("steps", &after.join(", "))])
                },
            }
        };
        Body::CheckOff {
            purpose: procedure.purpose.to_string(),
            who: procedure.who.to_string(),
            not_when: procedure.not_when.iter().map(ToString::to_string).collect(),
            steps: procedure.steps.iter().enumerate().map(step).collect(),
        }
    }

    pub(super) fn log(&self, cylinders: &[CylinderId], items: &[Text]) -> Body {
        let minimum = self.book.policies.in_service_minimum;
        let head = |key: &str| self.messages.get(key);
        let mut columns = vec![
            head("date"),
            head("time"),
            head("serial"),
            head("size"),
            head("reading"),
        ];
        columns.extend(items.iter().map(ToString::to_string));
        columns.extend([head("action"), head("initials")]);
        let size = |id: &CylinderId| {
            let cylinder = self.book.cylinder(*id)?;
            // The gauge of a metric cylinder is in bar whatever the agency's unit.
            let unit = gauge_unit(
                self.book.agency.pressure_unit,
                cylinder,
                std::iter::once(cylinder.contents.at),
            );
            let least = unit.show(rounded_up(minimum, unit)).to_string();
            Some(LogRow {
                text: self
                    .messages
                    .with("least", &[("name", &cylinder.rule.name), ("pressure", &least)]),
            })
        };
        Body::Log {
            columns,
            sizes: cylinders.iter().filter_map(size).collect(),
        }
    }
}

/// The first and the last place at which each step may be done: after every step that must come before it, and before
/// every step that must come after it.
fn places(procedure: &Procedure) -> Vec<(usize, usize)> {
    let count = procedure.steps.len();
    // Steps stand in an order that `after` allows, so one pass closes the order over.
    let mut before: Vec<Vec<bool>> = Vec::with_capacity(count);
    for step in &procedure.steps {
        let mut own = vec![false; count];
        for earlier in &step.after {
            let index = earlier.index();
            if let Some(known) = own.get_mut(index) {
                *known = true;
            }
            for (mine, theirs) in own.iter_mut().zip(before.get(index).into_iter().flatten()) {
                *mine |= *theirs;
            }
        }
        before.push(own);
    }
    (0..count)
        .map(|step| {
            let earlier = before
                .get(step)
                .map_or(0, |own| own.iter().filter(|is| **is).count());
            let later = before
                .iter()
                .filter(|own| own.get(step).copied().unwrap_or(false))
                .count();
            (earlier + 1, count - later)
        })
        .collect()
}
