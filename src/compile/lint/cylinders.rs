//! Cylinder sizes against the real gas.
//!
//! That the factor agrees with the stated contents is checked when a size is read. Here both are compared with what
//! the water capacity can hold, because two numbers that agree may both be wrong.

use super::{Lint, Room, oxygen::between};
use crate::book::{Cylinder, CylinderId};
use crate::quantity::{Gauge, Number, Pressure, STANDARD_ATMOSPHERE_PA};

/// A factor that promises gas which isn't there.
pub const FACTOR_OVER_PROMISES: Lint = Lint::error("factor-over-promises");
/// A factor that counts much less gas than there is.
pub const FACTOR_WASTES: Lint = Lint::note("factor-wastes");
/// Contents that the water capacity doesn't hold, or far exceeds.
pub const CONTENTS_AGAINST_WATER: Lint = Lint::error("contents-against-water");
/// Contents stated at a pressure to which the cylinder may not be filled.
pub const CONTENTS_ABOVE_FILLING: Lint = Lint::error("contents-above-filling");

/// How much more than the real gas a factor may count: the water capacity is stated to a tenth of a litre.
const OVER: f64 = 1.03;
/// How much of the real gas a factor must count at least.
const UNDER: f64 = 0.75;
/// How far the stated contents may be from the real gas; makers round to the next figure.
const CONTENTS: f64 = 0.10;

/// Compressibility of oxygen at 70 °F (21.11 °C) by absolute pressure in bar: the equation of state of Schmidt and
/// Wagner, Fluid Phase Equilibria 19 (1985) 175–200, at the pressures of `tests/published/oxygen-density.csv`.
const COMPRESSIBILITY: [(f64, f64); 12] = [
    (1.013_25, 0.999_310),
    (20.0, 0.986_844),
    (50.0, 0.969_293),
    (75.0, 0.957_136),
    (100.0, 0.947_636),
    (125.0, 0.941_103),
    (138.0, 0.938_952),
    (150.0, 0.937_744),
    (175.0, 0.937_647),
    (200.0, 0.940_779),
    (230.0, 0.948_594),
    (300.0, 0.981_714),
];

pub fn look(room: &mut Room<'_>) {
    for (index, cylinder) in (0_u16..).zip(&room.book.cylinders) {
        factor(room, CylinderId(index), cylinder);
        contents(room, CylinderId(index), cylinder);
        filling(room, CylinderId(index), cylinder);
    }
}

/// Litres at 1 atm and 70 °F in each litre of water capacity at a gauge pressure.
fn expansion(at: Pressure<Gauge>) -> f64 {
    let absolute = at.to_absolute();
    let room = COMPRESSIBILITY.first().map_or(1.0, |(_, room)| *room);
    absolute.as_pascals() / STANDARD_ATMOSPHERE_PA * room / compressibility(absolute.as_bar())
}

fn compressibility(bar: f64) -> f64 {
    let above = COMPRESSIBILITY.iter().find(|(at, _)| *at >= bar);
    let below = COMPRESSIBILITY.iter().rfind(|(at, _)| *at <= bar);
    match (below, above) {
        (Some(below), Some(above)) => between(*below, *above, bar),
        (Some(end), None) | (None, Some(end)) => end.1,
        (None, None) => 1.0,
    }
}

fn factor(room: &mut Room<'_>, id: CylinderId, cylinder: &Cylinder) {
    let at = cylinder.contents.at;
    let water = cylinder.water_capacity.as_litres();
    // The gas of the last atmosphere stays in the cylinder.
    let real = water * (expansion(at) - 1.0);
    let counted = cylinder.factor.contents(at).as_litres();
    let (lint, hint) = if counted > real * OVER {
        (
            FACTOR_OVER_PROMISES,
            "the minutes would promise oxygen that isn't there: check factor, water capacity and their units",
        )
    } else if counted < real * UNDER {
        (
            FACTOR_WASTES,
            "the minutes will be far too short: check factor, water capacity and their units",
        )
    } else {
        return;
    };
    let span = room.places.value(id.into(), "factor");
    let other = room.places.value(id.into(), "water-capacity");
    let message = format!(
        "expected a factor that counts about {} L at {at}, found one that counts {} L",
        whole(real),
        whole(counted)
    );
    room.find(lint, &[id.into()], span, message)
        .label(other, format!("real oxygen in {}", cylinder.water_capacity))
        .hint(hint);
}

fn contents(room: &mut Room<'_>, id: CylinderId, cylinder: &Cylinder) {
    let at = cylinder.contents.at;
    let real = cylinder.water_capacity.as_litres() * expansion(at);
    let stated = cylinder.contents.volume.as_litres();
    if (stated - real).abs() <= CONTENTS * real {
        return;
    }
    let span = room.places.value(id.into(), "contents");
    let other = room.places.value(id.into(), "water-capacity");
    let message = format!(
        "expected contents of about {} L at {at}, found {}",
        whole(real),
        cylinder.contents.volume
    );
    room.find(CONTENTS_AGAINST_WATER, &[id.into()], span, message)
        .label(other, format!("real oxygen in {}", cylinder.water_capacity))
        .hint("are the two figures of one maker, and the pressure that of these contents?");
}

fn filling(room: &mut Room<'_>, id: CylinderId, cylinder: &Cylinder) {
    let limit = cylinder.fill_limit.unwrap_or(room.book.policies.fill_limit);
    let most = cylinder.service_pressure.as_pascals() * limit.as_percent() / 100.0;
    let at = cylinder.contents.at;
    if at.as_pascals() <= most * (1.0 + 1e-9) {
        return;
    }
    let span = room.places.value(id.into(), "contents");
    let other = room.places.value(id.into(), "service-pressure");
    let shown: Pressure<Gauge> = Pressure::tabled(most);
    let message = format!("expected contents at {shown} at most, found them at {at}");
    room.find(CONTENTS_ABOVE_FILLING, &[id.into()], span, message)
        .label(other, format!("may be filled to {limit} of this"))
        .hint("state the contents at a pressure this cylinder may be filled to, with a factor to match");
}

fn whole(litres: f64) -> Number {
    Number((litres + 0.5).floor())
}
