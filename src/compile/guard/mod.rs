//! Reads guards: `device on patient and flow = 0 L/min`.
//!
//! A small recursive descent over words. `not` belongs to the next condition alone; where `and` and `or` meet, brackets
//! say what belongs together. Names, units and kinds of quantity are checked while reading, so a guard that was read
//! can be evaluated. [`print()`] writes it back, [`vocabulary`] lists what it can speak of.

mod conditions;
mod hints;
mod infix;
mod operand;
mod print;
mod types;
pub mod vocabulary;
mod words;

use super::{
    diagnostic::Diagnostics,
    names::Names,
    source::Span,
    written::{self, Mistake},
};
use crate::book::{Guard, List, MAX_GUARD_DEPTH, Policy, Text};

pub(super) use infix::{Signs, infix};
pub use print::print;
pub(super) use types::{dimension_of, dimension_of_measure, is_range};
use words::Words;

/// What a guard's names mean.
#[derive(Clone, Copy, Debug)]
pub struct Vocabulary<'a> {
    /// The names of the book.
    pub names: &'a Names,
    /// The policies, for the kinds of their quantities.
    pub policies: &'a [Policy],
}

/// Reads a guard.
///
/// # Errors
///
/// [`Mistake`] at the word that can't be understood: a name that isn't known, a quantity of another kind, `and` beside
/// `or` without brackets, more than [`MAX_GUARD_DEPTH`] levels.
///
/// ```
/// use oxyfolio::compile::{guard::{read, Vocabulary}, names::Names};
///
/// let (names, policies) = (Names::default(), []);
/// let vocabulary = Vocabulary { names: &names, policies: &policies };
/// let guard = read("device on patient and (flow = 0 L/min or not cylinder open)", &vocabulary)?;
/// assert_eq!(guard.ops.len(), 6);
///
/// let mistake = read("flame near or grease near and cylinder open", &vocabulary).unwrap_err();
/// assert_eq!(mistake.code, "mixed-and-or");
/// # Ok::<(), oxyfolio::compile::written::Mistake>(())
/// ```
pub fn read(text: &str, vocabulary: &Vocabulary<'_>) -> Result<Guard, Mistake> {
    let mut reader = Reader {
        words: Words::new(text),
        vocabulary,
        ops: Vec::new(),
        nesting: 0,
    };
    reader.any_of()?;
    if let Some(word) = reader.words.peek() {
        return Err(hints::after_condition(
            &reader.words,
            word,
            "the end of the guard",
        ));
    }
    if types::depth(&reader.ops) > MAX_GUARD_DEPTH {
        return Err(too_deep(text));
    }
    Ok(Guard {
        text: Text::from(text.trim().to_owned()),
        ops: List::from(reader.ops),
    })
}

/// Words with which something in a guard begins; a condition or policy called so could not be told from them.
const RESERVED: [&str; 16] = [
    "and",
    "or",
    "not",
    "in",
    "is",
    "flow",
    "pressure",
    "temperature",
    "spo2",
    "minutes",
    "device",
    "group",
    "cylinder",
    "regulator",
    "reservoir",
    "target",
];

/// Refuses an id that a guard would take for something else.
pub fn refuse_reserved(id: &str, at: Span, found: &mut Diagnostics) {
    if RESERVED.contains(&id) {
        found
            .error(
                "reserved-word",
                at,
                format!("expected a name of its own, found `{id}`, a word of guards"),
            )
            .hint(format!("say more, for example `least-{id}`"));
    }
}

/// Reads a guard from its first word to its last. Each part of it has a room: `conditions` for what stands between
/// `and` and `or`, `operand` for what a measure is compared with.
struct Reader<'a> {
    words: Words<'a>,
    vocabulary: &'a Vocabulary<'a>,
    ops: Vec<crate::book::GuardOp>,
    nesting: usize,
}

fn too_deep(text: &str) -> Mistake {
    Mistake::new(
        "nested-too-deep",
        0..text.len(),
        format!("expected at most {MAX_GUARD_DEPTH} levels in a guard, found more"),
    )
    .hint("write two hazards, or take out brackets that change nothing")
}
