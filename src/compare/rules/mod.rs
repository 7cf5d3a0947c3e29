//! Rules matched by their ids, and what changed in each.

mod cylinder;
mod device;
mod ends;
mod hazard;
mod others;
mod policy;
mod procedure;
mod target;

use super::change::{Change, Changes, Direction, Reason};
use crate::book::{Kind, Rule, Rulebook};
use crate::compile::edition::Edition;

/// Everything that changed in the rules: what is decided for a patient first, then what it rests on.
pub(super) fn changes(old: &Edition, new: &Edition) -> (Vec<Change>, Vec<Reason>) {
    let mut changes = Changes::new(old, new);
    target::changes(&mut changes);
    device::changes(&mut changes);
    policy::changes(&mut changes);
    cylinder::changes(&mut changes);
    procedure::changes(&mut changes);
    hazard::changes(&mut changes);
    others::changes(&mut changes);
    (changes.found, changes.reasons)
}

/// Compares every rule of a kind with the one of the same id; tells those that only one edition has.
fn each<'e, T: 'e>(
    changes: &mut Changes<'e>,
    kind: Kind,
    list: impl Fn(&'e Rulebook) -> &'e [T],
    rule: impl Fn(&'e T) -> &'e Rule,
    // What stands for a rule that was added or removed, and whether having it is stricter.
    in_short: impl Fn(&'e Rulebook, &'e T) -> (String, Direction),
    mut compare: impl FnMut(&mut Changes<'e>, &'e T, &'e T),
) {
    let (old_book, new_book) = (&changes.old.book, &changes.new.book);
    let (old, new) = (list(old_book), list(new_book));
    let find = |list: &'e [T], id: &str| list.iter().find(|item| *rule(item).id == *id);
    for item in new {
        changes.about(kind, rule(item));
        match find(old, &rule(item).id) {
            Some(before) => {
                let since = changes.found.len();
                head(changes, rule(before), rule(item));
                compare(changes, before, item);
                changes.remind(rule(before), since);
            }
            // What could not be read in the old edition is not new.
            None if is_left_out(changes.old, kind, &rule(item).id) => {}
            None => {
                let (short, direction) = in_short(new_book, item);
                changes.tell("", None, Some(short), direction);
            }
        }
    }
    for item in old {
        let id = &rule(item).id;
        if find(new, id).is_none() && !is_left_out(changes.new, kind, id) {
            changes.about(kind, rule(item));
            let (short, direction) = in_short(old_book, item);
            changes.tell("", Some(short), None, direction.reversed());
        }
    }
}

fn is_left_out(edition: &Edition, kind: Kind, id: &str) -> bool {
    edition
        .left_out
        .iter()
        .any(|rule| rule.kind == kind && rule.id.as_deref() == Some(id))
}

/// What every rule has.
fn head(changes: &mut Changes<'_>, old: &Rule, new: &Rule) {
    changes.plain("name", &old.name, &new.name);
    if old.rationale != new.rationale {
        let some = |text: &str| (!text.is_empty()).then(|| text.to_owned());
        changes.reworded("reason", some(&old.rationale), some(&new.rationale));
    }
}

/// The ids behind identifiers, by which two books are compared.
fn ids<Id: Copy>(list: &[Id], id: impl Fn(Id) -> Option<String>) -> Vec<String> {
    list.iter().filter_map(|one| id(*one)).collect()
}

/// Texts as they are.
fn strings(list: &[crate::book::Text]) -> Vec<String> {
    list.iter().map(ToString::to_string).collect()
}
