//! One way through the legs, and the search for the best.

use alloc::{vec, vec::Vec};

use super::{Order, gas::Tank};

/// A leg as the walk needs it.
#[derive(Clone, Copy)]
pub struct Stretch {
    pub minutes: f64,
    pub per_minute: f64,
}

/// Gas from one cylinder, or from none, on one leg.
#[derive(Clone, Copy)]
pub struct Piece {
    pub leg: usize,
    pub cylinder: Option<usize>,
    pub minutes: f64,
    pub per_minute: f64,
    /// Litres used from the cylinder since it was put on.
    pub used: f64,
}

/// How a walk ended.
pub struct Walked {
    pub pieces: Vec<Piece>,
    /// Litres used from each cylinder.
    pub used: Vec<f64>,
    pub changes: usize,
    /// The leg on which the gas ran out.
    pub broken: Option<usize>,
    /// Minutes that the gas lasted.
    pub minutes: f64,
    /// Litres that could still be drawn in this order, at the last leg's temperature.
    pub spare: f64,
}

/// The cylinder that is on.
struct On<'t, 'b> {
    index: usize,
    tank: &'t Tank<'b>,
    drawn: f64,
    /// Whether it has given what it may on the leg on which it was looked at; what rounding left in it is no gas.
    is_spent: bool,
}

/// Walks through the legs with one cylinder kept for last.
pub fn walk(tanks: &[Tank<'_>], legs: &[Stretch], order: Order, last: usize) -> Walked {
    let mut on: Option<On<'_, '_>> = None;
    let mut fresh = vec![true; tanks.len()];
    let mut walked = Walked {
        pieces: Vec::new(),
        used: vec![0.0; tanks.len()],
        changes: 0,
        broken: None,
        minutes: 0.0,
        spare: 0.0,
    };
    for (leg, stretch) in legs.iter().enumerate() {
        if stretch.per_minute <= 0.0 {
            walked.add(leg, *stretch, on.as_ref());
            continue;
        }
        let mut left = stretch.minutes;
        while left > 0.0 {
            let available = on
                .as_ref()
                .filter(|on| !on.is_spent)
                .map_or(0.0, |on| on.tank.budget(leg).of(on.index == last) - on.drawn);
            let Some(current) = on.as_mut().filter(|_| available > 0.0) else {
                let Some((index, tank)) = next(tanks, &fresh, leg, order, last) else {
                    walked.broken = Some(leg);
                    return walked;
                };
                walked.changes += usize::from(on.is_some());
                on = Some(On {
                    index,
                    tank,
                    drawn: 0.0,
                    is_spent: false,
                });
                if let Some(fresh) = fresh.get_mut(index) {
                    *fresh = false;
                }
                continue;
            };
            let lasts = available / stretch.per_minute;
            let minutes = if lasts < left { lasts } else { left };
            current.is_spent = lasts < left;
            current.drawn += minutes * stretch.per_minute;
            left = if lasts < left { left - lasts } else { 0.0 };
            let piece = Stretch { minutes, ..*stretch };
            walked.add(leg, piece, on.as_ref());
        }
    }
    let end = legs.len().saturating_sub(1);
    let gives = |index: usize, tank: &Tank<'_>| tank.budget(end).of(index == last);
    walked.spare = on.map_or(0.0, |on| (gives(on.index, on.tank) - on.drawn).max(0.0));
    for ((index, tank), fresh) in tanks.iter().enumerate().zip(&fresh) {
        if *fresh {
            walked.spare += gives(index, tank);
        }
    }
    walked
}

impl Walked {
    fn add(&mut self, leg: usize, piece: Stretch, on: Option<&On<'_, '_>>) {
        self.minutes += piece.minutes;
        if let Some(on) = on
            && let Some(used) = self.used.get_mut(on.index)
        {
            *used = on.drawn;
        }
        self.pieces.push(Piece {
            leg,
            cylinder: on.map(|on| on.index),
            minutes: piece.minutes,
            per_minute: piece.per_minute,
            used: on.map_or(0.0, |on| on.drawn),
        });
    }
}

/// The cylinder to put on: the fullest or the emptiest of those that aren't kept for last, then that one.
fn next<'t, 'b>(
    tanks: &'t [Tank<'b>],
    fresh: &[bool],
    leg: usize,
    order: Order,
    last: usize,
) -> Option<(usize, &'t Tank<'b>)> {
    let gives = |tank: &Tank<'_>| tank.budget(leg).to_change_over;
    let mut best: Option<(usize, &Tank<'_>)> = None;
    for ((index, tank), fresh) in tanks.iter().enumerate().zip(fresh) {
        if !*fresh || index == last || gives(tank) <= 0.0 {
            continue;
        }
        let is_better = best.is_none_or(|(_, best)| match order {
            Order::FewestChanges => gives(tank) > gives(best),
            Order::EmptiestFirst => gives(tank) < gives(best),
        });
        if is_better {
            best = Some((index, tank));
        }
    }
    best.or_else(|| {
        let tank = tanks.get(last)?;
        let is_left = fresh.get(last).copied().unwrap_or(false) && tank.budget(leg).to_residual > 0.0;
        is_left.then_some((last, tank))
    })
}

/// The best walk, and which cylinder it keeps for last.
pub fn best(tanks: &[Tank<'_>], legs: &[Stretch], order: Order) -> (usize, Walked) {
    let natural = natural(tanks, order);
    let mut found = (natural, walk(tanks, legs, order, natural));
    if order == Order::EmptiestFirst && found.1.broken.is_none() {
        return found;
    }
    for (last, tank) in tanks.iter().enumerate() {
        // Of cylinders alike one is enough to try.
        let mut later = tanks.iter().skip(last + 1);
        if last == natural || later.any(|other| other.is_like(tank)) {
            continue;
        }
        let walked = walk(tanks, legs, order, last);
        if is_better(&walked, &found.1) {
            found = (last, walked);
        }
    }
    found
}

/// The cylinder that comes last by the order's own rule; of cylinders alike, the one named last. One that is of no use
/// before the last is passed over where there are others.
fn natural(tanks: &[Tank<'_>], order: Order) -> usize {
    let gives = |tank: &Tank<'_>| {
        let budget = tank.budget(0);
        (budget.to_change_over > 0.0, budget.to_residual)
    };
    let mut found: Option<(usize, (bool, f64))> = None;
    for (index, tank) in tanks.iter().enumerate() {
        let (is_of_use, litres) = gives(tank);
        let is_later = found.is_none_or(|(_, (was_of_use, most))| match order {
            _ if is_of_use != was_of_use => is_of_use,
            Order::FewestChanges => litres <= most,
            Order::EmptiestFirst => litres >= most,
        });
        if is_later {
            found = Some((index, (is_of_use, litres)));
        }
    }
    found.map_or(0, |(index, _)| index)
}

/// Lasting to the end first, then fewer changes; or, where neither lasts, the longer.
fn is_better(new: &Walked, old: &Walked) -> bool {
    match (new.broken, old.broken) {
        (None, Some(_)) => true,
        (Some(_), None) => false,
        (Some(_), Some(_)) => new.minutes > old.minutes,
        (None, None) => new.changes < old.changes,
    }
}
