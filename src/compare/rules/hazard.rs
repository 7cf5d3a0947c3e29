//! Hazards. One more, or a graver one, is stricter.

use super::{
    super::{
        change::{Changes, Direction, Sense},
        polarity,
    },
    each,
};
use crate::book::{Hazard, Kind};

pub fn changes(changes: &mut Changes<'_>) {
    each(
        changes,
        Kind::Hazard,
        |book| &book.hazards,
        |hazard| &hazard.rule,
        |_, hazard| {
            let short = format!("{}: {}", hazard.severity.word(), hazard.say);
            (short, Direction::Stricter)
        },
        hazard,
    );
}

fn hazard(changes: &mut Changes<'_>, old: &Hazard, new: &Hazard) {
    if old.severity != new.severity {
        let direction = Direction::of(&old.severity, &new.severity, Sense::MoreIsStricter);
        let word = |hazard: &Hazard| Some(hazard.severity.word().to_owned());
        changes.tell("severity", word(old), word(new), direction);
    }
    let between = polarity::between(&old.never, &changes.old.book, &new.never, &changes.new.book);
    if let Some(direction) = between {
        let words = |hazard: &Hazard| Some(hazard.never.text.to_string());
        changes.tell("never", words(old), words(new), direction);
    }
    changes.text("what it says", &["say"], &old.say, &new.say);
    changes.text("what to do", &["do"], &old.remedy, &new.remedy);
}
