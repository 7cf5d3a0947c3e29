//! Reports what the proof of step orders found, at the steps it concerns.

use super::{
    super::{
        diagnostic::Diagnostics,
        proof::{self, Unsafe, Wrong},
    },
    Raw, procedure,
};
use crate::book::{Kind, Procedure, ProcedureId, Rulebook, StepId};

/// Proves every procedure and reports what can go wrong; notes needless `after` lines.
pub fn report(book: &Rulebook, raws: &[Raw], found: &mut Diagnostics) {
    let procedures: Vec<&Raw> = raws.iter().filter(|raw| raw.kind == Kind::Procedure).collect();
    for one in proof::unsafe_orders(book) {
        let raw = procedures.get(one.procedure.index());
        if let (Some(raw), Some(procedure)) = (raw, book.procedure(one.procedure)) {
            report_one(&one, book, procedure, raw, found);
        }
    }
    for (raw, procedure) in procedures.iter().zip(&book.procedures) {
        let places = procedure::after_places(raw);
        for (step, named) in proof::redundant(procedure) {
            let (later, earlier) = (name(procedure, step), name(procedure, named));
            if let Some(at) = places.get(step.index()).and_then(|after| after.get(&*earlier)) {
                found
                    .note(
                        "redundant-after",
                        *at,
                        format!("`{later}` comes after `{earlier}` without this"),
                    )
                    .hint(format!(
                        "another step it is `after` comes after `{earlier}` itself: take this one out"
                    ));
            }
        }
    }
}

fn report_one(one: &Unsafe, book: &Rulebook, procedure: &Procedure, raw: &Raw, found: &mut Diagnostics) {
    let places = procedure::step_places(raw);
    let last = one.steps.last().copied();
    let at = last
        .and_then(|step| places.get(step.index()).copied())
        .unwrap_or(raw.node.span);
    let id = &procedure.rule.id;
    let last_name = last.map_or_else(String::new, |step| name(procedure, step));
    let (code, message) = match &one.wrong {
        Wrong::Hazard(hazard) => {
            let says = book
                .hazard(*hazard)
                .map_or("", |hazard| hazard.say.trim_end_matches('.'));
            (
                "unsafe-order",
                format!("`{id}` allows an order in which `{last_name}` does harm: {says}"),
            )
        }
        Wrong::Refused(why) => (
            "unsafe-order",
            format!("`{id}` allows an order in which `{last_name}` comes too early: {why}"),
        ),
        Wrong::NeverPossible(why) => (
            "step-never-possible",
            format!("`{id}` has no order in which `{last_name}` can be done: {why}"),
        ),
        Wrong::UnsafeEnd(why) => (
            "unsafe-end",
            format!("`{id}` promises a safe end and allows an order in which {why}"),
        ),
        Wrong::TooEarly(on) => (
            "step-too-early",
            format!(
                "`{id}` allows `{last_name}` before `{}`, on which it relies",
                name(procedure, *on)
            ),
        ),
        Wrong::BeginsWith(hazard) => {
            let says = book
                .hazard(*hazard)
                .map_or("", |hazard| hazard.say.trim_end_matches('.'));
            (
                "unsafe-beginning",
                format!("`{id}` begins with a state that must never be: {says}"),
            )
        }
        Wrong::NeverBegins => (
            "procedure-never-begins",
            format!("`{id}` begins only after procedures that never begin, so its orders were not proved"),
        ),
        Wrong::TooManyOrders => (
            "order-not-proved",
            format!("`{id}` allows too many orders to look at them all"),
        ),
        Wrong::TooManySteps => (
            "order-not-proved",
            format!(
                "expected at most 64 steps, found {} in `{id}`",
                procedure.steps.len()
            ),
        ),
    };
    let order = in_words(one, book, procedure);
    let error = found.error(code, at, message);
    if !order.is_empty() {
        error.hint(order);
    }
    match (one.forbid, &one.wrong) {
        (Some((later, earlier)), _) => {
            let (later_name, earlier_name) = (name(procedure, later), name(procedure, earlier));
            if later != last.unwrap_or(later)
                && let Some(place) = places.get(later.index())
            {
                error.label(*place, format!("this step must be after `{earlier_name}`"));
            }
            error.hint(format!(
                "add `{earlier_name}` to the `after` of the step `{later_name}`"
            ));
        }
        (None, Wrong::NeverBegins) => {
            error.hint("say what holds at its start with `begins-with`, or take a name out of its `follows`");
        }
        (None, Wrong::BeginsWith(_)) => {
            error.hint("correct its `begins-with`");
        }
        (None, Wrong::TooManyOrders | Wrong::TooManySteps) => {
            error.hint("order more of the steps with `after`, or make two procedures of it");
        }
        (None, _) => {
            error.hint("no single `after` forbids it: look at the order as a whole, or at what the procedure `follows`");
        }
    }
}

/// The order in numbered steps, as a crew would do them.
fn in_words(one: &Unsafe, book: &Rulebook, procedure: &Procedure) -> String {
    if one.steps.is_empty() {
        return String::new();
    }
    let mut words = String::from("the order that shows it");
    if let Some(follows) = one.follows.and_then(|id: ProcedureId| book.procedure(id)) {
        words.push_str(&format!(", begun after `{}`", follows.rule.id));
    }
    if let Some(device) = one.device.and_then(|id| book.device(id)) {
        words.push_str(&format!(", with the device `{}`", device.rule.id));
    }
    words.push(':');
    for (number, step) in one.steps.iter().enumerate() {
        let says = procedure.steps.get(step.index()).map_or("", |step| &step.say);
        words.push_str(&format!(
            "\n{:>3}. {}: {says}",
            number + 1,
            name(procedure, *step)
        ));
    }
    words
}

fn name(procedure: &Procedure, step: StepId) -> String {
    procedure
        .steps
        .get(step.index())
        .map_or_else(String::new, |step| step.id.to_string())
}
