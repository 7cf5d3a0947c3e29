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
