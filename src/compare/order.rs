//! Which steps must come before which, in two editions of a procedure.

use std::collections::BTreeSet;

use crate::book::Procedure;

/// For every two steps, whether the first must come before the second, directly or through others.
pub(super) struct Order<'p> {
    pairs: BTreeSet<(&'p str, &'p str)>,
}

impl<'p> Order<'p> {
    pub(super) fn of(procedure: &'p Procedure) -> Self {
        let ids: Vec<&str> = procedure.steps.iter().map(|step| &*step.id).collect();
        // Before each step, closed over first: steps name earlier ones only in an order that has no circle.
        let mut pairs = BTreeSet::new();
        for step in &procedure.steps {
            let mut seen = BTreeSet::new();
            let mut open: Vec<usize> = step.after.iter().map(|id| id.index()).collect();
            while let Some(earlier) = open.pop() {
                if !seen.insert(earlier) {
                    continue;
                }
                if let Some(id) = ids.get(earlier) {
                    pairs.insert((*id, &*step.id));
                }
                if let Some(step) = procedure.steps.get(earlier) {
                    open.extend(step.after.iter().map(|id| id.index()));
                }
            }
        }
        Self { pairs }
    }

    /// Whether one must come before the other.
    pub(super) fn holds(&self, earlier: &str, later: &str) -> bool {
        self.pairs.contains(&(earlier, later))
    }

    /// The pairs among some steps that no third of them stands between: all others follow from these.
    pub(super) fn next_to_each_other(&self, among: &BTreeSet<&str>) -> Vec<(&'p str, &'p str)> {
        let inside = |(one, other): &&(&'p str, &'p str)| among.contains(one) && among.contains(other);
        self.pairs
            .iter()
            .filter(inside)
            .filter(|(one, other)| {
                !among
                    .iter()
                    .any(|between| self.holds(one, between) && self.holds(between, other))
            })
            .copied()
            .collect()
    }
}

/// The fewest items whose removal leaves the rest in the same order in both lists, which hold the same items; the same ones
/// whichever list is the old one.
pub(super) fn moved<'i>(old: &[&'i str], new: &[&'i str]) -> Vec<&'i str> {
    let (old, new) = if old <= new { (old, new) } else { (new, old) };
    let places: Vec<usize> = old
        .iter()
        .filter_map(|item| new.iter().position(|other| other == item))
        .collect();
    // The longest rising run of places, not necessarily without gaps: its items stay.
    let mut longest: Vec<(usize, Option<usize>)> = Vec::new();
    for (index, place) in places.iter().enumerate() {
        let before = (0..index)
            .filter(|earlier| places.get(*earlier).is_some_and(|earlier| earlier < place))
            .max_by_key(|earlier| {
                (
                    longest.get(*earlier).map_or(0, |(length, _)| *length),
                    core::cmp::Reverse(*earlier),
                )
            });
        let length = before
            .and_then(|before| longest.get(before))
            .map_or(0, |(length, _)| *length);
        longest.push((length + 1, before));
    }
    let mut stays = BTreeSet::new();
    let mut at = (0..longest.len()).max_by_key(|index| {
        (
            longest.get(*index).map_or(0, |(length, _)| *length),
            core::cmp::Reverse(*index),
        )
    });
    while let Some(index) = at {
        stays.insert(index);
        at = longest.get(index).and_then(|(_, before)| *before);
    }
    old.iter()
        .enumerate()
        .filter(|(index, _)| !stays.contains(index))
        .map(|(_, item)| *item)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::moved;

    #[test]
    fn the_fewest_are_moved() {
        let old = ["a", "b", "c", "d"];
        for (new, expected) in [
            (["a", "b", "c", "d"], vec![]),
            (["b", "c", "d", "a"], vec!["a"]),
            (["a", "d", "b", "c"], vec!["d"]),
            (["d", "c", "b", "a"], vec!["b", "c", "d"]),
        ] {
            assert_eq!(moved(&old, &new), expected, "{new:?}");
        }
    }
}
