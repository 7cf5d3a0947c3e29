//! Patient groups: every age has one, and every group a target.

use super::{Lint, Room, places::RuleRef};
use crate::book::{Group, GroupId};
use crate::quantity::{Limit, Time, bounds};

/// Ages below the youngest group or above the oldest.
pub const AGE_WITHOUT_GROUP: Lint = Lint::error("age-without-group");
/// A group without a target for a patient who has no condition.
pub const NO_GENERAL_TARGET: Lint = Lint::error("no-general-target");

pub fn look(room: &mut Room<'_>) {
    ends(room);
    general_targets(room);
}

/// The youngest group begins at birth, the oldest has no end. That neighbours meet is checked when groups are read.
fn ends(room: &mut Room<'_>) {
    let groups = || room.book.groups.iter().enumerate();
    let low = |group: &Group| group.age.low.value().map_or(0.0, Time::as_minutes);
    let high = |group: &Group| group.age.high.value().map_or(f64::INFINITY, Time::as_minutes);
    let youngest = groups().min_by(|(_, a), (_, b)| low(a).total_cmp(&low(b)));
    let oldest = groups().max_by(|(_, a), (_, b)| high(a).total_cmp(&high(b)));
    let (Some((youngest, first)), Some((oldest, last))) = (youngest, oldest) else {
        return;
    };
    let at_birth = match first.age.low {
        Limit::None => true,
        Limit::Included(low) => low.as_minutes() <= 0.0,
        Limit::Excluded(_) => false,
    };
    if !at_birth {
        let message = format!(
            "expected a group that begins at birth, found the youngest {}",
            first.age
        );
        let rule = place(youngest);
        let at = room.places.value(rule, "age");
        room.find(AGE_WITHOUT_GROUP, &[rule], at, message)
            .hint("write `under …` for the youngest group, or add one for those who are younger");
    }
    if high(last) < bounds::TIME.most {
        let message = format!(
            "expected a group without a greatest age, found the oldest {}",
            last.age
        );
        let rule = place(oldest);
        let at = room.places.value(rule, "age");
        room.find(AGE_WITHOUT_GROUP, &[rule], at, message)
            .hint("write `at least …` for the oldest group, or add one for those who are older");
    }
}

fn place(index: usize) -> RuleRef {
    RuleRef {
        kind: crate::book::Kind::Group,
        index,
    }
}

fn general_targets(room: &mut Room<'_>) {
    let book = room.book;
    let mut has_one = vec![false; book.groups.len()];
    for target in book.targets.iter().filter(|target| target.condition.is_none()) {
        for group in &target.groups {
            if let Some(has_one) = has_one.get_mut(group.index()) {
                *has_one = true;
            }
        }
    }
    for (index, group) in book.groups.iter().enumerate() {
        if has_one.get(index) != Some(&false) {
            continue;
        }
        let Ok(id) = u16::try_from(index).map(GroupId) else {
            continue;
        };
        let at = room.places.of(id.into());
        let message = format!(
            "expected a target without a condition for `{}`, found none",
            group.rule.id
        );
        room.find(NO_GENERAL_TARGET, &[id.into()], at, message)
            .hint("add a target for the group, without `condition`: most patients have none");
    }
}
