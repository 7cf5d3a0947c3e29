//! The rows of duration cards against the policies and the cylinders.

use super::{Lint, Room};
use crate::book::{CardId, Layout};
use crate::quantity::{Gauge, Pressure};

/// A row at which the sum gives no minutes.
pub const ROW_BELOW_RESIDUAL: Lint = Lint::note("card-row-below-residual");
/// A row that no cylinder of the card may show.
pub const ROW_ABOVE_FILLING: Lint = Lint::note("card-row-above-filling");
/// Rows that end above the pressures at which a crew needs them.
pub const ROWS_STOP_EARLY: Lint = Lint::note("card-rows-stop-early");

pub fn look(room: &mut Room<'_>) {
    let book = room.book;
    let policies = &book.policies;
    for (index, card) in (0_u16..).zip(&book.cards) {
        let Layout::Durations {
            cylinders, pressures, ..
        } = &card.layout
        else {
            continue;
        };
        let rule = CardId(index).into();
        // The fullest of the card's cylinders.
        let most = cylinders
            .iter()
            .filter_map(|id| book.cylinder(*id))
            .map(|cylinder| {
                let limit = cylinder.fill_limit.unwrap_or(policies.fill_limit);
                cylinder.service_pressure.as_pascals() * limit.as_percent() / 100.0
            })
            .fold(0.0, f64::max);
        for (row, pressure) in pressures.iter().enumerate() {
            let at = room.places.item(rule, "pressures", row);
            if *pressure <= policies.residual_pressure {
                let message = format!(
                    "expected a row above the residual pressure, {}, found {pressure}",
                    policies.residual_pressure
                );
                room.find(ROW_BELOW_RESIDUAL, &[rule], at, message)
                    .hint("its row is all zeros: take it out");
            }
            if pressure.as_pascals() > most * (1.0 + 1e-9) {
                let limit: Pressure<Gauge> = Pressure::tabled(most);
                room.find(
                    ROW_ABOVE_FILLING,
                    &[rule],
                    at,
                    format!("expected a row of at most {limit}, found {pressure}"),
                )
                .hint("no cylinder of this card may be filled so far: is the unit right?");
            }
        }
        if let Some(last) = pressures.last()
            && *last > policies.in_service_minimum
        {
            let at = room
                .places
                .item(rule, "pressures", pressures.len().saturating_sub(1));
            room.find(
                ROWS_STOP_EARLY,
                &[rule],
                at,
                format!(
                    "expected rows down to the in-service minimum, {}, or below, found the last at {last}",
                    policies.in_service_minimum
                ),
            )
            .hint("the lower rows are those a crew looks up: add them");
        }
    }
}
