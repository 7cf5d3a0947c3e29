//! Ranges, end by end: 10 to 15 L/min that becomes 12 to 20 L/min is stricter below and looser above.

use core::{cmp::Ordering, fmt::Display};

use super::super::change::{Changes, Direction};
use crate::quantity::{Limit, Range};

/// Whether what is inside a range is right, so that a narrower one is stricter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Inside {
    /// Inside is right.
    Right,
    /// A range that says what something is.
    Neither,
}

/// Tells each end that moved.
pub fn range<Q: Copy + PartialOrd + Display>(
    changes: &mut Changes<'_>,
    what: [&str; 2],
    old: Range<Q>,
    new: Range<Q>,
    inside: Inside,
) {
    let [low, high] = what;
    let direction = |narrower: Ordering| match (inside, narrower) {
        (Inside::Right, Ordering::Greater) => Direction::Stricter,
        (Inside::Right, Ordering::Less) => Direction::Looser,
        _ => Direction::Other,
    };
    if old.low != new.low {
        let narrower = order(old.low, new.low, false).reverse();
        changes.tell(
            low,
            Some(shown(old.low, "over")),
            Some(shown(new.low, "over")),
            direction(narrower),
        );
    }
    if old.high != new.high {
        let narrower = order(old.high, new.high, true);
        changes.tell(
            high,
            Some(shown(old.high, "under")),
            Some(shown(new.high, "under")),
            direction(narrower),
        );
    }
}

fn shown<Q: Display>(limit: Limit<Q>, beyond: &str) -> String {
    match limit {
        Limit::None => "no limit".to_owned(),
        Limit::Included(value) => value.to_string(),
        Limit::Excluded(value) => format!("{beyond} {value}"),
    }
}

/// Which of two limits comes first on the line; no limit lies beyond all values.
fn order<Q: Copy + PartialOrd>(one: Limit<Q>, other: Limit<Q>, is_high: bool) -> Ordering {
    let beyond = if is_high {
        Ordering::Greater
    } else {
        Ordering::Less
    };
    match (one.value(), other.value()) {
        (None, None) => Ordering::Equal,
        (None, Some(_)) => beyond,
        (Some(_), None) => beyond.reverse(),
        (Some(a), Some(b)) => a.partial_cmp(&b).unwrap_or(Ordering::Equal).then_with(|| {
            match (one, other) {
                // A value left out ends the range a little earlier.
                (Limit::Included(_), Limit::Excluded(_)) => beyond,
                (Limit::Excluded(_), Limit::Included(_)) => beyond.reverse(),
                _ => Ordering::Equal,
            }
        }),
    }
}
