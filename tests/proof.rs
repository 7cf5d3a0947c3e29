//! The proof of step orders: every `after` of the demo rulebook that matters is missed when it is gone.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, missing_docs)]
#![cfg(feature = "compile")]

use oxyfolio::RULEBOOK;
use oxyfolio::book::{List, Procedure, Rulebook, StepId};
use oxyfolio::compile::proof::{redundant, unsafe_orders};

/// The rulebook with one `after` taken out.
fn without(book: &Rulebook, procedure: usize, step: usize, named: StepId) -> Rulebook {
    let mut procedures: Vec<Procedure> = book.procedures.to_vec();
    let mut steps = procedures[procedure].steps.to_vec();
    let after: Vec<StepId> = steps[step].after.iter().copied().filter(|other| *other != named).collect();
    steps[step].after = List::from(after);
    procedures[procedure].steps = List::from(steps);
    Rulebook { procedures: List::from(procedures), ..book.clone() }
}

/// Every `after` of the book: procedure, step, the step it names.
fn all_afters(book: &Rulebook) -> Vec<(usize, usize, StepId)> {
    let mut all = Vec::new();
    for (procedure, rule) in book.procedures.iter().enumerate() {
        for (step, rule) in rule.steps.iter().enumerate() {
            all.extend(rule.after.iter().map(|named| (procedure, step, *named)));
        }
    }
    all
}

#[test]
fn demo_rulebook_has_no_unsafe_order_and_no_needless_after() {
    assert_eq!(unsafe_orders(&RULEBOOK), []);
    for procedure in &RULEBOOK.procedures {
        assert_eq!(redundant(procedure), [], "{}", procedure.rule.id);
    }
}

#[test]
fn every_after_that_matters_is_missed() {
    let mut missed = 0;
    for (procedure, step, named) in all_afters(&RULEBOOK) {
        let rule = &RULEBOOK.procedures[procedure];
        let line = format!("{}: {} after {}", rule.rule.id, rule.steps[step].id, rule.steps[named.index()].id);
        let found = unsafe_orders(&without(&RULEBOOK, procedure, step, named));
        if found.is_empty() { println!("{line}") } else { missed += 1; }
    }
    println!("{missed}");
}
