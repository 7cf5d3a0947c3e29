//! How many full cylinders of a size would make a plan enough.

use super::{super::duration::USUAL_TEMPERATURE, NoPlan, OnBoard, Order, Plan, answer::Prepared, walk};
use crate::book::{CylinderId, Rulebook};

/// As many cylinders are added at the most.
pub const MOST_ADDED: usize = 100;

/// The fewest cylinders of a size, each full to its service pressure, that make a plan enough; `None` when
/// [`MOST_ADDED`] of them don't. 0 when it is enough already. A plan without cylinders may be asked about.
///
/// Service pressure is marked for 70 °F: a full cylinder is taken as read at 21 °C, or at the temperature of the plan's
/// own gauges where that is higher.
///
/// # Errors
///
/// [`NoPlan`] as [`Answer::to`](super::Answer::to).
pub fn fewest_to_add(
    book: &Rulebook,
    plan: &Plan,
    order: Order,
    size: CylinderId,
) -> Result<Option<usize>, NoPlan> {
    let prepared = Prepared::new(book, plan)?;
    let service = book.cylinder(size).ok_or(NoPlan::NotThisBook)?.service_pressure;
    let full = OnBoard::new(size, service);
    let read_at = if prepared.read_at > USUAL_TEMPERATURE {
        prepared.read_at
    } else {
        USUAL_TEMPERATURE
    };
    let enough = |added: usize| -> Result<bool, NoPlan> {
        if plan.cylinders.is_empty() && added == 0 {
            return Ok(false);
        }
        let mut tanks = match plan.cylinders.as_slice() {
            [] => alloc::vec::Vec::new(),
            cylinders => prepared.tanks(cylinders)?,
        };
        for _ in 0..added {
            tanks.push(prepared.tank(full, read_at)?);
        }
        let (last, with_margin) = walk::best(&tanks, &prepared.with_margin, order);
        let expected = walk::walk(&tanks, &prepared.expected, order, last);
        Ok(with_margin.broken.is_none() && expected.broken.is_none())
    };
    if enough(0)? {
        return Ok(Some(0));
    }
    // So many are not enough, and so many are: doubled until they are, then halved between.
    let (mut few, mut many) = (0, 1);
    while !enough(many)? {
        if many >= MOST_ADDED {
            return Ok(None);
        }
        (few, many) = (many, (many * 2).min(MOST_ADDED));
    }
    while many - few > 1 {
        let middle = usize::midpoint(few, many);
        if enough(middle)? {
            many = middle;
        } else {
            few = middle;
        }
    }
    Ok(Some(many))
}
