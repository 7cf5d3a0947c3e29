//! The policies the checker needs, against one another and against the cylinders.

use super::{Lint, Room};
use crate::book::{CylinderId, PolicyId};
use crate::quantity::Temperature;

/// An in-service minimum that a full cylinder doesn't reach.
pub const MINIMUM_ABOVE_FILLING: Lint = Lint::error("minimum-above-filling");
/// Use allowed at a temperature at which cylinders may not be kept.
pub const USE_OUTSIDE_STORAGE: Lint = Lint::note("use-outside-storage");

pub fn look(room: &mut Room<'_>) {
    minimum(room);
    temperatures(room);
}

fn policy(room: &Room<'_>, id: &str) -> Option<PolicyId> {
    let index = room
        .book
        .policies
        .all
        .iter()
        .position(|policy| &*policy.rule.id == id)?;
    u16::try_from(index).ok().map(PolicyId)
}

fn minimum(room: &mut Room<'_>) {
    let (book, least) = (room.book, room.book.policies.in_service_minimum);
    let Some(policy) = policy(room, "in-service-minimum") else {
        return;
    };
    for (index, cylinder) in (0_u16..).zip(&book.cylinders) {
        let full = cylinder.contents.at;
        if full > least {
            continue;
        }
        let cylinder = CylinderId(index);
        let at = room.places.value(policy.into(), "value");
        let other = room.places.value(cylinder.into(), "contents");
        room.find(
            MINIMUM_ABOVE_FILLING,
            &[policy.into(), cylinder.into()],
            at,
            format!("expected an in-service minimum below {full}, found {least}"),
        )
        .label(other, "this size is full at that pressure")
        .hint("a full cylinder must be fit for service: check both pressures and their units");
    }
}

fn temperatures(room: &mut Room<'_>) {
    let policies = &room.book.policies;
    let (storage, used) = (policies.storage_temperature, policies.use_temperature);
    let low = |limit: Option<Temperature>| limit.map_or(f64::NEG_INFINITY, Temperature::as_celsius);
    let high = |limit: Option<Temperature>| limit.map_or(f64::INFINITY, Temperature::as_celsius);
    let inside = low(used.low.value()) >= low(storage.low.value())
        && high(used.high.value()) <= high(storage.high.value());
    let (Some(use_id), Some(storage_id)) = (
        policy(room, "use-temperature"),
        policy(room, "storage-temperature"),
    ) else {
        return;
    };
    if !inside {
        let at = room.places.value(use_id.into(), "value");
        let other = room.places.value(storage_id.into(), "value");
        room.find(
            USE_OUTSIDE_STORAGE,
            &[use_id.into(), storage_id.into()],
            at,
            format!("expected use within the temperatures of keeping, {storage}, found {used}"),
        )
        .label(other, "cylinders are kept within this")
        .hint("a cylinder in use waits in the same places: should one of the ranges be wider or narrower?");
    }
}
