//! Saturation targets.

use super::{
    super::change::{Changes, Direction, Sense},
    each,
    ends::{Inside, range},
    ids,
};
use crate::book::{ConditionId, DeviceFlow, Kind, Rulebook, Saturation, Target};

pub fn changes(changes: &mut Changes<'_>) {
    each(
        changes,
        Kind::Target,
        |book| &book.targets,
        |target| &target.rule,
        |_, target| {
            let short = format!("{}, {}", target.rule.name, saturation(target.saturation));
            (short, Direction::Other)
        },
        target,
    );
}

fn saturation(saturation: Saturation) -> String {
    match saturation {
        Saturation::Range(range) => range.to_string(),
        Saturation::NotReliable => "the reading doesn't guide treatment".to_owned(),
    }
}

fn start(book: &Rulebook, start: DeviceFlow) -> String {
    let device = book.device(start.device).map_or("", |device| &*device.rule.id);
    format!("{device} at {}", start.flow)
}

fn target(changes: &mut Changes<'_>, old: &Target, new: &Target) {
    let (old_book, new_book) = (&changes.old.book, &changes.new.book);
    match (old.saturation, new.saturation) {
        (Saturation::Range(was), Saturation::Range(is)) => range(
            changes,
            ["least saturation", "most saturation"],
            was,
            is,
            Inside::Right,
        ),
        (was, is) => changes.plain("saturation", &saturation(was), &saturation(is)),
    }
    let groups = |book: &Rulebook, target: &Target| {
        ids(&target.groups, |id| Some(book.group(id)?.rule.id.to_string()))
    };
    changes.set(
        "group",
        &groups(old_book, old),
        &groups(new_book, new),
        Sense::Neither,
    );
    let condition = |book: &Rulebook, id: ConditionId| Some(book.condition(id)?.id.to_string());
    let named = |book: &Rulebook, target: &Target| {
        target
            .condition
            .and_then(|id| condition(book, id))
            .unwrap_or_default()
    };
    changes.plain("condition", &named(old_book, old), &named(new_book, new));
    let outranked = |book: &Rulebook, target: &Target| ids(&target.outranks, |id| condition(book, id));
    changes.set(
        "condition it outranks",
        &outranked(old_book, old),
        &outranked(new_book, new),
        Sense::Neither,
    );
    let life = |target: &Target| {
        target
            .minute_of_life
            .map_or_else(String::new, |time| time.to_string())
    };
    changes.plain("holds from, after birth", &life(old), &life(new));
    changes.plain("start", &start(old_book, old.start), &start(new_book, new.start));
    match (&old.urgent, &new.urgent) {
        (Some(was), Some(is)) => {
            changes.value("urgent below", &was.below, &is.below, Sense::MoreIsStricter);
            changes.plain(
                "start when urgent",
                &start(old_book, was.start),
                &start(new_book, is.start),
            );
        }
        (None, None) => {}
        (was, is) => {
            let words = |book: &Rulebook, urgent: &Option<crate::book::Urgent>| {
                let urgent = urgent.as_ref()?;
                Some(format!("below {}: {}", urgent.below, start(book, urgent.start)))
            };
            let direction = if is.is_some() {
                Direction::Stricter
            } else {
                Direction::Looser
            };
            changes.tell(
                "urgent start",
                words(old_book, was),
                words(new_book, is),
                direction,
            );
        }
    }
    let ladder = |book: &Rulebook, target: &Target| -> Vec<String> {
        target.ladder.iter().map(|rung| start(book, *rung)).collect()
    };
    changes.list(
        "rung",
        &ladder(old_book, old),
        &ladder(new_book, new),
        Sense::Neither,
    );
    changes.value(
        "look again within",
        &old.recheck,
        &new.recheck,
        Sense::LessIsStricter,
    );
    changes.text("step up", &["step-up"], &old.step_up, &new.step_up);
    changes.text("step down", &["step-down"], &old.step_down, &new.step_down);
}
