//! Hazards that can never be there, and hazards that always are.

use super::{
    Lint, Room,
    search::{Outcome, OwnTargets, can_be},
};
use crate::book::HazardId;
use crate::guard::Truth;

/// A hazard that no state can show.
pub const HAZARD_NEVER_FIRES: Lint = Lint::error("hazard-never-fires");
/// A hazard that every state shows.
pub const HAZARD_ALWAYS_FIRES: Lint = Lint::error("hazard-always-fires");
/// A guard with more cases than are tried.
pub const NOT_DECIDED: Lint = Lint::note("not-decided");

pub fn look(room: &mut Room<'_>) {
    let book = room.book;
    let own = OwnTargets::of(book);
    for (index, hazard) in (0_u16..).zip(&book.hazards) {
        let id = HazardId(index);
        let mut left = room.evaluations;
        let fires = can_be(&hazard.never, book, &own, Truth::True, &mut left);
        let rests = match fires {
            Outcome::Can => can_be(&hazard.never, book, &own, Truth::False, &mut left),
            other => other,
        };
        room.evaluations = left;
        let at = room.places.value(id.into(), "never");
        let (lint, message, hint) = match (fires, rests) {
            (Outcome::Never, _) => (
                HAZARD_NEVER_FIRES,
                "expected a state in which this hazard is there, found none",
                "do two of its parts exclude each other, or a number what can be measured?",
            ),
            (_, Outcome::Never) => (
                HAZARD_ALWAYS_FIRES,
                "expected a state in which this hazard is not there, found none",
                "a hazard that is always there warns of nothing: which part is missing?",
            ),
            (Outcome::NotDecided, _) | (_, Outcome::NotDecided) => (
                NOT_DECIDED,
                "this guard has too many cases to try whether it can be there and not be there",
                "split it into several hazards",
            ),
            (Outcome::Can, Outcome::Can) => continue,
        };
        room.find(lint, &[id.into()], at, message).hint(hint);
    }
}
