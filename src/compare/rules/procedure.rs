//! Procedures: steps added, taken out, changed, listed elsewhere, and which may now be done in any order.

use std::collections::BTreeSet;

use super::{
    super::{
        change::{Changes, Direction, Sense},
        order::{Order, moved},
    },
    each, ids,
};
use crate::book::{HazardId, Kind, Procedure, Rulebook, Step};
use crate::compile::suggest::counted;

pub fn changes(changes: &mut Changes<'_>) {
    each(
        changes,
        Kind::Procedure,
        |book| &book.procedures,
        |procedure| &procedure.rule,
        |_, procedure| {
            let short = format!(
                "{}, {}",
                procedure.rule.name,
                counted(procedure.steps.len(), "step", "steps")
            );
            (short, Direction::Other)
        },
        procedure,
    );
}

fn procedure(changes: &mut Changes<'_>, old: &Procedure, new: &Procedure) {
    let (old_book, new_book) = (&changes.old.book, &changes.new.book);
    changes.yes_or_no("ends safe", old.ends_safe, new.ends_safe, Sense::MoreIsStricter);
    let devices =
        |book: &Rulebook, one: &Procedure| ids(&one.devices, |id| Some(book.device(id)?.rule.id.to_string()));
    changes.set(
        "device",
        &devices(old_book, old),
        &devices(new_book, new),
        Sense::Neither,
    );
    let follows = |book: &Rulebook, one: &Procedure| {
        ids(&one.follows, |id| Some(book.procedure(id)?.rule.id.to_string()))
    };
    changes.set(
        "follows",
        &follows(old_book, old),
        &follows(new_book, new),
        Sense::Neither,
    );
    let begins = |one: &Procedure| -> Vec<String> {
        let words = one.begins_with.iter();
        words
            .map(|(fact, holds)| format!("{}{}", if *holds { "" } else { "not " }, fact.words()))
            .collect()
    };
    changes.set("begins with", &begins(old), &begins(new), Sense::Neither);
    steps(changes, old, new);
    orders(changes, old, new);
    changes.text("purpose", &["purpose"], &old.purpose, &new.purpose);
    changes.text("who may do it", &["who"], &old.who, &new.who);
    changes.texts("when not to", &["not-when"], &old.not_when, &new.not_when);
}

fn steps(changes: &mut Changes<'_>, old: &Procedure, new: &Procedure) {
    let find = |one: &'_ Procedure, id: &str| one.steps.iter().position(|step| &*step.id == id);
    for step in &new.steps {
        match find(old, &step.id).and_then(|place| old.steps.get(place)) {
            Some(before) => one_step(changes, before, step),
            None => changes.tell(
                format!("step `{}`", step.id),
                None,
                Some(in_short(step)),
                if step.critical {
                    Direction::Stricter
                } else {
                    Direction::Other
                },
            ),
        }
    }
    for step in old.steps.iter().filter(|step| find(new, &step.id).is_none()) {
        changes.tell(
            format!("step `{}`", step.id),
            Some(in_short(step)),
            None,
            if step.critical {
                Direction::Looser
            } else {
                Direction::Other
            },
        );
    }
}

fn in_short(step: &Step) -> String {
    format!("{}{}", step.say, if step.critical { " (critical)" } else { "" })
}

fn one_step(changes: &mut Changes<'_>, old: &Step, new: &Step) {
    let (old_book, new_book) = (&changes.old.book, &changes.new.book);
    let id = &new.id;
    let of = |what: &str| format!("step `{id}`, {what}");
    changes.plain(of("action"), old.action.word(), new.action.word());
    changes.yes_or_no(&of("critical"), old.critical, new.critical, Sense::MoreIsStricter);
    let hazards =
        |book: &Rulebook, list: &[HazardId]| ids(list, |id| Some(book.hazard(id)?.rule.id.to_string()));
    changes.set(
        &of("prevents"),
        &hazards(old_book, &old.prevents),
        &hazards(new_book, &new.prevents),
        Sense::Neither,
    );
    let key = format!("#{id}");
    changes.text(&of("what it says"), &["steps", &key, "say"], &old.say, &new.say);
    changes.text(&of("why"), &["steps", &key, "why"], &old.why, &new.why);
}

/// What must come before what, of the steps that both editions have; and where they stand in the list.
fn orders(changes: &mut Changes<'_>, old: &Procedure, new: &Procedure) {
    let names =
        |one: &'_ Procedure| -> Vec<String> { one.steps.iter().map(|step| step.id.to_string()).collect() };
    let (old_names, new_names) = (names(old), names(new));
    let both: BTreeSet<&str> = old_names
        .iter()
        .filter(|id| new_names.contains(id))
        .map(String::as_str)
        .collect();
    let (before, now) = (Order::of(old), Order::of(new));
    let first = |one: &str, other: &str| format!("`{one}` before `{other}`");
    // Told by their names in a fixed order, so that the change the other way is told in the same words.
    let pair = |one: &str, other: &str| {
        let (a, b) = if one <= other { (one, other) } else { (other, one) };
        format!("order of `{a}` and `{b}`")
    };
    let free = || Some("any order".to_owned());
    let mut turned = BTreeSet::new();
    for (one, other) in before.next_to_each_other(&both) {
        if now.holds(other, one) {
            turned.insert((one, other));
        } else if !now.holds(one, other) {
            changes.tell(
                pair(one, other),
                Some(first(one, other)),
                free(),
                Direction::Looser,
            );
        }
    }
    for (one, other) in now.next_to_each_other(&both) {
        if before.holds(other, one) {
            turned.insert((other, one));
        } else if !before.holds(one, other) {
            changes.tell(
                pair(one, other),
                free(),
                Some(first(one, other)),
                Direction::Stricter,
            );
        }
    }
    for (one, other) in turned {
        changes.tell(
            pair(one, other),
            Some(first(one, other)),
            Some(first(other, one)),
            Direction::Other,
        );
    }
    let kept = |names: &'_ [String]| -> Vec<String> {
        names
            .iter()
            .filter(|id| both.contains(id.as_str()))
            .cloned()
            .collect()
    };
    let (was, is) = (kept(&old_names), kept(&new_names));
    fn refs(names: &[String]) -> Vec<&str> {
        names.iter().map(String::as_str).collect()
    }
    let (was, is) = (refs(&was), refs(&is));
    let place = |list: &[&str], id: &str| {
        let at = list.iter().position(|other| *other == id).unwrap_or(0);
        match at.checked_sub(1).and_then(|before| list.get(before)) {
            Some(before) => format!("listed after `{before}`"),
            None => "listed first".to_owned(),
        }
    };
    let mut listed = moved(&was, &is);
    listed.sort_unstable();
    for id in listed {
        changes.tell(
            format!("place of `{id}`"),
            Some(place(&was, id)),
            Some(place(&is, id)),
            Direction::Other,
        );
    }
}
