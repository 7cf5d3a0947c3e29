//! Worked cases: what the book says should come out, run at every check and at every build.
//!
//! A case is one of three: a *set-up* with the findings and minutes it should give; a *list of steps* of a procedure,
//! done in the order written, with what should go wrong; or a *rule* with the figures it should hold, written down a
//! second time so that a slip of the pen in either is seen.
//!
//! - `expect`: what a case expects, compared with what came out.
//! - `setup`, [`steps`], [`figures`]: the three kinds.
//! - `uncovered`: which numbers no case would notice changing.

mod expect;
mod figures;
mod setup;
mod steps;
pub mod uncovered;

use super::{
    diagnostic::Diagnostics,
    fields::{Fields, Keys},
    resolve::Raw,
};
use crate::book::{Kind, Rulebook};

/// The keys of every case; each kind has keys of its own beside them.
const SETUP: Keys = Keys {
    of: "case",
    required: &["id", "setup", "expect"],
    optional: &["name"],
};

const STEPS: Keys = Keys {
    of: "case",
    required: &["id", "procedure", "steps", "expect"],
    optional: &["name", "device", "begins-with"],
};

const FIGURES: Keys = Keys {
    of: "case",
    required: &["id", "rule", "expect"],
    optional: &["name"],
};

type Runner = fn(&Rulebook, &Fields<'_>, &[Raw], &mut Diagnostics);

/// Runs every case; one that fails is an error at what it expects.
pub fn run_all(book: &Rulebook, raws: &[Raw], found: &mut Diagnostics) {
    for raw in raws.iter().filter(|raw| raw.kind == Kind::Case) {
        run(book, raw, raws, found);
    }
}

/// What a book says of a case's set-up or steps, one thing after the other, whatever the case expects; `Err` with the reason where the book
/// can't be asked. `None` for a case about figures, which asks nothing.
pub fn outcome(book: &Rulebook, raw: &Raw) -> Option<Result<Vec<String>, String>> {
    let mut found = Diagnostics::default();
    let super::yaml::Value::Mapping(entries) = &raw.node.value else {
        return None;
    };
    let has = |key: &str| entries.iter().any(|entry| entry.key == key);
    let said = if has("setup") {
        Fields::of(&raw.node, &SETUP, &mut found).and_then(|fields| setup::outcome(book, &fields, &mut found))
    } else if has("procedure") {
        Fields::of(&raw.node, &STEPS, &mut found).and_then(|fields| steps::outcome(book, &fields, &mut found))
    } else {
        return None;
    };
    Some(said.ok_or_else(|| {
        let first = found.into_sorted().into_iter().next();
        first.map_or_else(|| "the case can't be read".to_owned(), |why| why.message)
    }))
}

fn run(book: &Rulebook, raw: &Raw, raws: &[Raw], found: &mut Diagnostics) {
    let has = |key: &str| match &raw.node.value {
        super::yaml::Value::Mapping(entries) => entries.iter().any(|entry| entry.key == key),
        _ => false,
    };
    let kinds = ["setup", "procedure", "rule"].map(has);
    let (keys, runner): (&Keys, Runner) = match kinds {
        [true, false, false] => (&SETUP, setup::run),
        [false, true, false] => (&STEPS, steps::run),
        [false, false, true] => (&FIGURES, figures::run),
        _ => {
            found
                .error(
                    "case-without-subject",
                    raw.node.span,
                    "expected a case with one of `setup`, `procedure` and `rule`",
                )
                .hint("say what the case is about: a `setup`, the `steps` of a `procedure`, or the figures of a `rule`");
            return;
        }
    };
    if let Some(fields) = Fields::of(&raw.node, keys, found) {
        runner(book, &fields, raws, found);
    }
}
