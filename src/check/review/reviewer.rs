//! The reviewer: what it needs of a book, made once, and the review of one run after the other.

use super::{About, Finding, NotRecorded, Run};
use crate::book::Kind;
use crate::check::Level;
use crate::guard::Evaluator;

/// Reviews runs against one book.
#[derive(Debug)]
pub struct Reviewer<E> {
    evaluator: E,
}

/// What a reviewer notes while it reads a run; kept from run to run, so that nothing is allocated for each.
#[derive(Debug, Default)]
pub struct Notes {}

impl<'b, E: Evaluator<'b>> Reviewer<E> {
    /// A reviewer for the book of an evaluator.
    pub fn new(evaluator: E) -> Self {
        Self { evaluator }
    }

    /// Reviews one run. Findings come in the order of the events at which they began.
    pub fn review(&self, run: &Run<'_>, notes: &mut Notes, mut visit: impl FnMut(Finding<'b>)) {
        let _ = notes;
        let book = self.evaluator.book();
        if run.events.is_empty() {
            visit(Finding {
                level: Level::Unknown,
                kind: Kind::Agency,
                rule: &book.agency.rule,
                about: About::NotRecorded(NotRecorded::Events),
                event: None,
                from: None,
                until: None,
                pressure_unit: book.agency.pressure_unit,
            });
        }
    }
}
