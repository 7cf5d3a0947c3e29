//! Cylinders. Less gas to count on is stricter.

use super::{
    super::change::{Changes, Direction, Sense},
    each, strings,
};
use crate::book::{Cylinder, Kind, Rulebook};

pub fn changes(changes: &mut Changes<'_>) {
    each(
        changes,
        Kind::Cylinder,
        |book| &book.cylinders,
        |cylinder| &cylinder.rule,
        |_, cylinder| {
            let short = format!("{}, {}", cylinder.rule.name, cylinder.contents.volume);
            (short, Direction::Other)
        },
        cylinder,
    );
}

fn cylinder(changes: &mut Changes<'_>, old: &Cylinder, new: &Cylinder) {
    changes.value(
        "water capacity",
        &old.water_capacity,
        &new.water_capacity,
        Sense::LessIsStricter,
    );
    changes.value("factor", &old.factor, &new.factor, Sense::LessIsStricter);
    changes.value(
        "contents",
        &old.contents.volume,
        &new.contents.volume,
        Sense::LessIsStricter,
    );
    changes.value(
        "contents are at",
        &old.contents.at,
        &new.contents.at,
        Sense::Neither,
    );
    changes.value(
        "service pressure",
        &old.service_pressure,
        &new.service_pressure,
        Sense::LessIsStricter,
    );
    match (old.fill_limit, new.fill_limit) {
        (Some(old), Some(new)) => changes.value("fill limit", &old, &new, Sense::LessIsStricter),
        (old, new) if old != new => {
            let own = |book: &Rulebook, limit: Option<crate::quantity::Percent>| {
                let limit = limit.unwrap_or(book.policies.fill_limit);
                (limit, limit.to_string())
            };
            let (was, was_words) = own(&changes.old.book, old);
            let (is, is_words) = own(&changes.new.book, new);
            let direction = Direction::of(&was, &is, Sense::LessIsStricter);
            let named = |words: String, own: bool| {
                if own {
                    words
                } else {
                    format!("the policy's ({words})")
                }
            };
            changes.tell(
                "fill limit",
                Some(named(was_words, old.is_some())),
                Some(named(is_words, new.is_some())),
                direction,
            );
        }
        _ => {}
    }
    let outlet = |book: &Rulebook, cylinder: &Cylinder| {
        let connection = book.connection(cylinder.connection);
        connection.map_or_else(String::new, |connection| connection.rule.id.to_string())
    };
    let (was, is) = (outlet(&changes.old.book, old), outlet(&changes.new.book, new));
    changes.plain("outlet", &was, &is);
    changes.plain("use", old.used.word(), new.used.word());
    changes.plain("series", &old.series, &new.series);
    changes.set(
        "other name",
        &strings(&old.also),
        &strings(&new.also),
        Sense::Neither,
    );
}
