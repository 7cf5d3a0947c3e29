//! A set-up with exactly one thing wrong.
//!
//! A sound set-up is drawn until the checker finds nothing at all wrong with it, then one part of it is changed, and it is
//! taken when the checker then finds something. Who puts that part right has a sound set-up again.

use alloc::{format, string::String, vec::Vec};

use super::{
    Difficulty, Exercise, Task,
    chance::Chance,
    draw::{aimed_at, flow_of},
    words::{lower, sentence},
};
use crate::book::{Cited, CylinderId, DeviceId, GroupId, GuardOp, Kind, Measure, Operand, Rulebook};
use crate::check::duration::Supply;
use crate::check::{About, Finding, Level, Setup, check_setup};
use crate::quantity::{Flow, Gauge, Percent, Pressure, Temperature, Time};

/// A part of a set-up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The flow is too low or too high for the device.
    Flow,
    /// The device isn't made for the patient's group.
    Device,
    /// There is too little gas, or too much, in the cylinder.
    Pressure,
    /// It is too cold or too hot.
    Temperature,
    /// The gas doesn't last so long.
    Minutes,
}

impl Part {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Flow => "flow",
            Self::Device => "device",
            Self::Pressure => "pressure",
            Self::Temperature => "temperature",
            Self::Minutes => "minutes",
        }
    }
}

/// A set-up, with the part that is wrong. The patient has no condition that changes the target.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arranged {
    /// The device.
    pub device: DeviceId,
    /// The flow.
    pub flow: Flow,
    /// The patient's group.
    pub group: GroupId,
    /// The oxygen saturation.
    pub spo2: Percent,
    /// The cylinder's size.
    pub cylinder: CylinderId,
    /// The gauge reading.
    pub pressure: Pressure<Gauge>,
    /// The cylinder's temperature.
    pub temperature: Temperature,
    /// How long the gas must last, in whole minutes.
    pub minutes: u32,
    /// Which part is wrong; none of a sound one.
    pub wrong: Option<Part>,
}

impl Arranged {
    /// What the checker says of it: only what is wrong or could not be checked.
    #[must_use]
    pub fn found<'b>(&self, book: &'b Rulebook) -> Vec<Finding<'b>> {
        let mut found = Vec::new();
        let Ok(minutes) = Time::minutes(f64::from(self.minutes)) else {
            return found;
        };
        let setup = Setup::new(self.device, self.flow)
            .group(self.group)
            .conditions(&[])
            .spo2(self.spo2)
            .cylinder(self.cylinder)
            .pressure(self.pressure)
            .temperature(self.temperature)
            .minutes_wanted(minutes);
        // Identifiers are taken from this book's own tables.
        let _ = check_setup(book, &setup, |finding| {
            if finding.level.is_wrong() {
                found.push(finding);
            }
        });
        found
    }

    /// How long the gas lasts.
    fn lasts(&self, book: &Rulebook) -> Option<u32> {
        let cylinder = book.cylinder(self.cylinder)?;
        let supply = Supply::of(book, cylinder).temperature(self.temperature);
        supply
            .lasts(self.pressure, self.flow)
            .ok()
            .map(|lasts| lasts.minutes)
    }
}

/// What may be wrong.
pub(super) const fn parts(difficulty: Difficulty) -> &'static [Part] {
    match difficulty {
        Difficulty::Easy => &[Part::Flow, Part::Device],
        Difficulty::Medium => &[Part::Flow, Part::Pressure, Part::Temperature],
        Difficulty::Hard => &[Part::Minutes, Part::Pressure, Part::Flow],
    }
}

pub(super) fn exercise<'b>(
    book: &'b Rulebook,
    difficulty: Difficulty,
    part: Part,
    chance: &mut Chance,
) -> Option<Exercise<'b>> {
    let sound = sound(book, chance)?;
    if !sound.found(book).is_empty() {
        return None;
    }
    let wrong = spoilt(book, difficulty, part, sound, chance)?;
    let mut found = wrong.found(book);
    if found.is_empty() || !found.iter().all(|finding| is_about(book, part, finding)) {
        return None;
    }
    // The worst first; beside each other as the checker tells them.
    found.sort_by_key(|finding| core::cmp::Reverse(finding.level));
    let first = found.first()?;
    let mut working: Vec<String> = found
        .iter()
        .skip(1)
        .map(|finding| format!("Also: {}", sentence(finding)))
        .collect();
    working.push(format!("Put right, {}.", righted(book, part, &sound)?));
    let mut rules: Vec<Cited<'_>> = Vec::new();
    for finding in &found {
        if !rules.contains(&finding.rule) {
            rules.push(finding.rule);
        }
    }
    Some(Exercise {
        difficulty,
        task: Task::Setup(wrong),
        question: "One thing is wrong. Which, and why?".into(),
        lines: lines(book, &wrong)?,
        answer: sentence(first),
        working,
        rules,
    })
}

/// Whether a finding is about a part. What follows from it elsewhere, such as a flow so high that the gas ends early, would be
/// a second thing to find.
fn is_about(book: &Rulebook, part: Part, finding: &Finding<'_>) -> bool {
    let rule = finding.rule.id();
    match finding.kind {
        _ if finding.level == Level::Unknown => false,
        // The book's own words for what is wrong; of the minutes left only where they, or the gas, are what is wrong.
        Kind::Hazard => matches!(part, Part::Minutes | Part::Pressure) || !is_of_minutes(book, finding),
        Kind::Device => matches!(part, Part::Flow | Part::Device),
        Kind::Policy => match part {
            Part::Pressure => matches!(
                rule,
                "residual-pressure" | "change-over-pressure" | "in-service-minimum"
            ),
            Part::Temperature => rule == "use-temperature",
            Part::Minutes => rule == "planning-margin",
            Part::Flow | Part::Device => false,
        },
        _ => false,
    }
}

fn is_of_minutes(book: &Rulebook, finding: &Finding<'_>) -> bool {
    let About::Hazard(id) = finding.about else {
        return false;
    };
    let Some(hazard) = book.hazard(id) else {
        return false;
    };
    hazard.never.ops.iter().any(|op| match op {
        GuardOp::Compare(measure, _, operand) => {
            *measure == Measure::MinutesLeft || *operand == Operand::Measure(Measure::MinutesLeft)
        }
        GuardOp::Within(measure, _) => *measure == Measure::MinutesLeft,
        _ => false,
    })
}

fn sound(book: &Rulebook, chance: &mut Chance) -> Option<Arranged> {
    let device = DeviceId(u16::try_from(chance.below(book.devices.len())).ok()?);
    let chosen = book.device(device)?;
    let group = *chance.pick(&chosen.fits)?;
    let cylinder = CylinderId(u16::try_from(chance.below(book.cylinders.len())).ok()?);
    let unit = book.cylinder(cylinder)?.factor.written().1;
    let full = book.cylinder(cylinder)?.service_pressure.as_unit(unit);
    let pressure = full * f64::from(chance.within(55, 100)) / 100.0;
    let step = if pressure > 500.0 { 50.0 } else { 5.0 };
    let mut sound = Arranged {
        device,
        flow: flow_of(chosen, group, chance)?,
        group,
        spo2: aimed_at(book, group, chance)?,
        cylinder,
        pressure: Pressure::in_unit((pressure / step).floor() * step, unit).ok()?,
        temperature: Temperature::celsius(f64::from(chance.within(3, 5) * 5)).ok()?,
        minutes: 0,
        wrong: None,
    };
    // Well within what it lasts, in steps of five minutes.
    let most = sound.lasts(book)? * 2 / 3 / 5;
    let least = (most / 2).max(1);
    sound.minutes =
        u32::try_from(chance.within(i32::try_from(least).ok()?, i32::try_from(most).ok()?)).ok()? * 5;
    (sound.minutes > 0 && sound.minutes <= 180).then_some(sound)
}

/// The set-up with one part changed so that it may be wrong.
fn spoilt(
    book: &Rulebook,
    difficulty: Difficulty,
    part: Part,
    sound: Arranged,
    chance: &mut Chance,
) -> Option<Arranged> {
    let mut wrong = Arranged {
        wrong: Some(part),
        ..sound
    };
    let unit = book.cylinder(sound.cylinder)?.factor.written().1;
    match part {
        Part::Flow => {
            let range = book.device(sound.device)?.flow_for(sound.group);
            // Far off is easy to see, one litre isn't.
            let off = match difficulty {
                Difficulty::Easy => chance.within(4, 8),
                Difficulty::Medium => chance.within(2, 3),
                Difficulty::Hard => 1,
            };
            let end = |end: Option<Flow>| end.map(Flow::as_litres_per_minute);
            let flow = match (end(range.low.value()), end(range.high.value()), chance.below(2)) {
                (Some(low), _, 0) if low - f64::from(off) >= 1.0 => low - f64::from(off),
                (_, Some(high), _) => high + f64::from(off),
                (Some(low), None, _) => low - f64::from(off),
                (None, None, _) => return None,
            };
            wrong.flow = Flow::litres_per_minute(flow)
                .ok()
                .filter(|flow| *flow > Flow::ZERO)?;
        }
        Part::Device => {
            let other = chance.below(book.devices.len());
            let device = book.devices.get(other)?;
            // Only the fit may be wrong: its flow would be right.
            let flow_fits = device.flow.holds(sound.flow) && device.flow_for(sound.group).holds(sound.flow);
            if device.fits(sound.group) || !flow_fits {
                return None;
            }
            wrong.device = DeviceId(u16::try_from(other).ok()?);
        }
        Part::Pressure => {
            let policies = &book.policies;
            let most = policies.change_over_pressure.as_unit(unit);
            let step = if most > 100.0 { 10.0 } else { 1.0 };
            let reading = most * f64::from(chance.within(30, 100)) / 100.0;
            wrong.pressure = Pressure::in_unit((reading / step).floor() * step, unit).ok()?;
            // Still enough for the minutes: the reading alone is wrong, not what it lasts.
            wrong.minutes = (wrong.lasts(book)? / 2 / 5 * 5).min(sound.minutes);
            if wrong.minutes == 0 {
                return None;
            }
        }
        Part::Temperature => {
            let range = book.policies.use_temperature;
            let end = |end: Option<Temperature>| end.map(Temperature::as_celsius);
            let cold = end(range.low.value()).map(|low| low - f64::from(chance.within(1, 4) * 5));
            let hot = end(range.high.value()).map(|high| high + f64::from(chance.within(1, 3) * 5));
            let celsius = if chance.below(2) == 0 {
                cold.or(hot)
            } else {
                hot.or(cold)
            }?;
            wrong.temperature = Temperature::celsius(celsius).ok()?;
        }
        Part::Minutes => {
            let lasts = wrong.lasts(book)?;
            wrong.minutes = (lasts / 5 + u32::try_from(chance.within(1, 4)).ok()?) * 5;
        }
    }
    Some(wrong)
}

/// What is looked at, a line each.
fn lines(book: &Rulebook, setup: &Arranged) -> Option<Vec<(String, String)>> {
    let agency = &book.agency;
    let cylinder = book.cylinder(setup.cylinder)?;
    let unit = cylinder.factor.written().1;
    Some(
        [
            (
                "Patient",
                format!("{}, no condition", lower(&book.group(setup.group)?.rule.name)),
            ),
            ("SpO₂", format!("{}", setup.spo2)),
            ("Device", format!("{}", book.device(setup.device)?.rule.name)),
            ("Flow", format!("{}", setup.flow)),
            ("Cylinder", format!("{}", cylinder.rule.name)),
            ("Gauge", format!("{}", unit.show(setup.pressure))),
            (
                "Temperature",
                format!("{}", agency.temperature_unit.show(setup.temperature)),
            ),
            ("Must last", format!("{} min", setup.minutes)),
        ]
        .map(|(what, value)| (what.into(), value))
        .into(),
    )
}

/// What the part was before it was made wrong.
fn righted(book: &Rulebook, part: Part, sound: &Arranged) -> Option<String> {
    let unit = book.cylinder(sound.cylinder)?.factor.written().1;
    let name = match part {
        Part::Flow => format!("with {} nothing would be found", sound.flow),
        Part::Device => format!(
            "with a {} nothing would be found",
            lower(&book.device(sound.device)?.rule.name)
        ),
        Part::Pressure => format!("at {} nothing would be found", unit.show(sound.pressure)),
        Part::Temperature => format!(
            "at {} nothing would be found",
            book.agency.temperature_unit.show(sound.temperature)
        ),
        Part::Minutes => format!("for {} min nothing would be found", sound.minutes),
    };
    Some(name)
}
