//! Steps to be put in order. Any order that the book allows is right.

use alloc::{format, string::String, vec, vec::Vec};

use super::{Difficulty, Exercise, Task, chance::Chance, words::letter};
use crate::book::{Procedure, ProcedureId, Rulebook, StepId};

/// Steps of a procedure, shuffled.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ordering {
    /// The procedure.
    pub procedure: ProcedureId,
    /// The steps in the order in which they are shown: the first is A.
    pub shown: Vec<StepId>,
    /// Which must come before which, by their places in `shown`, directly or through steps that aren't shown; what follows from
    /// others isn't repeated.
    pub before: Vec<(usize, usize)>,
}

impl Ordering {
    /// Whether an order is right: places in [`shown`](Self::shown), each once.
    ///
    /// ```
    /// use oxyfolio::RULEBOOK;
    /// use oxyfolio::drill::{Kind, Task, Terms, exercises};
    ///
    /// let sheet = exercises(&RULEBOOK, &Terms::new(1).count(1).kinds(&[Kind::Order]));
    /// let Task::Order(steps) = &sheet.exercises[0].task else { unreachable!() };
    /// let (first, second) = steps.before[0];
    /// let mut order: Vec<usize> = (0..steps.shown.len()).collect();
    /// // The order of the page is always right.
    /// order.sort_by_key(|place| steps.shown[*place]);
    /// assert!(steps.is_right(&order));
    /// order.retain(|place| *place != first);
    /// order.push(first);
    /// assert!(!steps.is_right(&order), "{first} must come before {second}");
    /// ```
    #[must_use]
    pub fn is_right(&self, order: &[usize]) -> bool {
        let place = |step: usize| order.iter().position(|other| *other == step);
        order.len() == self.shown.len()
            && (0..self.shown.len()).all(|step| place(step).is_some())
            && self
                .before
                .iter()
                .all(|(first, second)| place(*first) < place(*second))
    }
}

/// How many steps are shown; `None` for all of them.
const fn many(difficulty: Difficulty) -> Option<usize> {
    match difficulty {
        Difficulty::Easy => Some(5),
        Difficulty::Medium => Some(8),
        Difficulty::Hard => None,
    }
}

pub(super) fn exercise<'b>(
    book: &'b Rulebook,
    difficulty: Difficulty,
    chance: &mut Chance,
) -> Option<Exercise<'b>> {
    let id = ProcedureId(u16::try_from(chance.below(book.procedures.len())).ok()?);
    let procedure = book.procedure(id)?;
    let all = procedure.steps.len();
    let mut shown: Vec<usize> = (0..all).collect();
    chance.shuffle(&mut shown);
    match many(difficulty) {
        Some(many) if many <= all => shown.truncate(many),
        // The whole of it is hard only when it is long.
        None if all > 8 => {}
        _ => return None,
    }
    let before = pairs(procedure, &shown);
    // Without a few things that must come first, any order is right.
    if before.len() + 1 < shown.len() / 2 {
        return None;
    }
    let order = one_order(&shown);
    // Shown in a right order already, it asks nothing.
    if before.iter().all(|(first, second)| first < second) {
        return None;
    }
    let say = |place: usize| {
        let step = shown.get(place).and_then(|step| procedure.steps.get(*step));
        step.map_or_else(String::new, |step| String::from(&*step.say))
    };
    let lines = (0..shown.len())
        .map(|place| (letter(place), say(place)))
        .collect();
    let mut working = vec![String::from("Any order is right in which")];
    for second in 0..shown.len() {
        let firsts = || before.iter().filter(|pair| pair.1 == second).map(|pair| pair.0);
        if firsts().next().is_none() {
            continue;
        }
        let after: Vec<String> = firsts().map(letter).collect();
        let step = shown.get(second).and_then(|step| procedure.steps.get(*step))?;
        // Its reason is told where it is the reason: not of what only comes before through other steps.
        let direct = firsts().any(|first| {
            let first = shown.get(first).copied();
            step.after
                .iter()
                .any(|StepId(after)| first == Some(usize::from(*after)))
        });
        let why = if direct { &*step.why } else { "" };
        let line = format!("{} comes after {}. {why}", letter(second), after.join(" and "));
        working.push(line.trim_end().into());
    }
    let free: Vec<String> = (0..shown.len())
        .filter(|place| {
            !before
                .iter()
                .any(|(first, second)| first == place || second == place)
        })
        .map(letter)
        .collect();
    if !free.is_empty() {
        working.push(format!("At any time: {}.", free.join(", ")));
    }
    let letters: Vec<String> = order.iter().map(|place| letter(*place)).collect();
    let steps = u16::try_from(all).ok()?;
    let part = if shown.len() < all {
        format!("These are {} of its {steps} steps.", shown.len())
    } else {
        String::from("These are all of its steps.")
    };
    Some(Exercise {
        difficulty,
        task: Task::Order(Ordering {
            procedure: id,
            shown: shown
                .iter()
                .filter_map(|step| u16::try_from(*step).ok().map(StepId))
                .collect(),
            before,
        }),
        question: format!(
            "Procedure: {}. {part} Write the letters in an order in which they may be done.",
            procedure.rule.name
        ),
        lines,
        answer: format!("For example {}.", letters.join(", ")),
        working,
        rules: vec![(&procedure.rule).into()],
    })
}

/// An order that is right: that of the page.
fn one_order(shown: &[usize]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..shown.len()).collect();
    order.sort_by_key(|place| shown.get(*place).copied());
    order
}

/// Which of the steps shown must come before which, without what follows from others.
fn pairs(procedure: &Procedure, shown: &[usize]) -> Vec<(usize, usize)> {
    let earlier: Vec<Vec<bool>> = closure(procedure);
    let before = |first: usize, second: usize| {
        shown
            .get(first)
            .zip(shown.get(second))
            .and_then(|(first, second)| earlier.get(*second)?.get(*first).copied())
            .unwrap_or(false)
    };
    let places = 0..shown.len();
    let mut pairs = Vec::new();
    for second in places.clone() {
        for first in places.clone() {
            let through = |between: usize| before(first, between) && before(between, second);
            if before(first, second) && !places.clone().any(through) {
                pairs.push((first, second));
            }
        }
    }
    pairs
}

/// For each step, which come before it, directly or through others. Steps stand on the page in an order that their `after`
/// allows, so those before a step are complete when it is met.
fn closure(procedure: &Procedure) -> Vec<Vec<bool>> {
    let mut earlier: Vec<Vec<bool>> = Vec::with_capacity(procedure.steps.len());
    for step in &procedure.steps {
        let mut mine = vec![false; procedure.steps.len()];
        for StepId(after) in &step.after {
            let after = usize::from(*after);
            if let Some(it) = mine.get_mut(after) {
                *it = true;
            }
            if let Some(theirs) = earlier.get(after) {
                for (mine, theirs) in mine.iter_mut().zip(theirs) {
                    *mine |= theirs;
                }
            }
        }
        earlier.push(mine);
    }
    earlier
}
