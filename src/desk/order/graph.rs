//! The steps of a procedure as they are written, and which comes before which.

use super::super::{
    chapter::quoted,
    reading::{Reading, text_of},
};
use crate::compile::yaml::{Node, Value};

/// As many steps are drawn; the proof takes no more either.
pub const MOST: usize = 64;

/// A step.
pub struct Step {
    /// Its name.
    pub id: String,
    /// What is done.
    pub say: String,
    /// The steps it is written to be after.
    pub after: Vec<usize>,
    /// Whether leaving it out fails the procedure.
    pub critical: bool,
}

/// The steps and their order.
pub struct Graph {
    /// In the order of the page.
    pub steps: Vec<Step>,
    /// For each step whether each other one must come before it.
    before: Vec<Vec<bool>>,
}

impl Graph {
    /// From a procedure's rule. Names of steps that aren't there are passed over: the check tells of them.
    pub fn of(reading: &Reading, rule: &Node) -> Self {
        let nodes: &[Node] = match list(rule, "steps") {
            Some(Value::List(nodes)) => nodes.get(..nodes.len().min(MOST)).unwrap_or(nodes),
            _ => &[],
        };
        let ids: Vec<&str> = nodes
            .iter()
            .map(|node| text_of(node, "id").unwrap_or(""))
            .collect();
        let place = |name: &str| ids.iter().position(|id| *id == name);
        let steps: Vec<Step> = nodes
            .iter()
            .zip(&ids)
            .map(|(node, id)| {
                let after = match list(node, "after") {
                    Some(Value::Text { text, .. }) => place(text).into_iter().collect(),
                    Some(Value::List(names)) => names
                        .iter()
                        .filter_map(|name| match &name.value {
                            Value::Text { text, .. } => place(text),
                            _ => None,
                        })
                        .collect(),
                    _ => Vec::new(),
                };
                Step {
                    id: (*id).to_owned(),
                    say: quoted::plain(reading, text_of(node, "say").unwrap_or(id), rule),
                    after,
                    critical: matches!(text_of(node, "critical"), Some("yes" | "true")),
                }
            })
            .collect();
        let before = closed(&steps);
        Self { steps, before }
    }

    /// Whether a step must come before another.
    pub fn is_before(&self, earlier: usize, later: usize) -> bool {
        self.before
            .get(later)
            .and_then(|row| row.get(earlier))
            .copied()
            .unwrap_or(false)
    }

    /// The steps that may be done before or after a step.
    pub fn free_of(&self, step: usize) -> Vec<usize> {
        (0..self.steps.len())
            .filter(|other| *other != step && !self.is_before(*other, step) && !self.is_before(step, *other))
            .collect()
    }

    /// Pairs of steps of which the second follows the first with none between.
    pub fn lines(&self) -> Vec<(usize, usize)> {
        let all = 0..self.steps.len();
        let mut lines = Vec::new();
        for (later, step) in self.steps.iter().enumerate() {
            for &earlier in &step.after {
                let through = all
                    .clone()
                    .any(|other| self.is_before(earlier, other) && self.is_before(other, later));
                if !through && earlier != later && !lines.contains(&(earlier, later)) {
                    lines.push((earlier, later));
                }
            }
        }
        lines
    }

    /// How many steps at least come before each, one after the other. Steps in a ring are taken to be as far as there
    /// are steps.
    pub fn depths(&self) -> Vec<usize> {
        let count = self.steps.len();
        let mut depths = vec![0_usize; count];
        for _ in 0..count {
            let next: Vec<usize> = self
                .steps
                .iter()
                .map(|step| {
                    let before = step.after.iter().filter_map(|earlier| depths.get(*earlier));
                    before.max().map_or(0, |deepest| (deepest + 1).min(count))
                })
                .collect();
            if next == depths {
                break;
            }
            depths = next;
        }
        depths
    }
}

fn list<'a>(node: &'a Node, key: &str) -> Option<&'a Value> {
    let Value::Mapping(entries) = &node.value else {
        return None;
    };
    let entry = entries.iter().find(|entry| entry.key == key)?;
    Some(&entry.value.value)
}

/// Directly or through others.
fn closed(steps: &[Step]) -> Vec<Vec<bool>> {
    let count = steps.len();
    let mut before: Vec<Vec<bool>> = steps
        .iter()
        .map(|step| (0..count).map(|other| step.after.contains(&other)).collect())
        .collect();
    for _ in 0..count {
        let next: Vec<Vec<bool>> = before
            .iter()
            .map(|row| {
                let mut row = row.clone();
                for (through, _) in before.iter().zip(row.clone()).filter(|(_, is_before)| *is_before) {
                    for (known, more) in row.iter_mut().zip(through) {
                        *known |= *more;
                    }
                }
                row
            })
            .collect();
        if next == before {
            break;
        }
        before = next;
    }
    before
}
