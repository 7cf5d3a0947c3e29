//! How long the gas lasts; hard: which reading or flow the minutes need.

use alloc::{format, string::String, vec, vec::Vec};

use super::{
    Difficulty, Exercise, Task,
    chance::Chance,
    draw::{step, whole_flow},
    words::{clock, lower},
};
use crate::book::{Cited, Cylinder, CylinderId, Device, Rulebook};
use crate::check::duration::{Bound, Duration, Supply, USUAL_TEMPERATURE};
use crate::quantity::{Flow, Gauge, Pressure, PressureUnit, Temperature};
use crate::rounding::down;

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Asked {
    /// How many whole minutes the reading lasts at the flow.
    Minutes,
    /// The least reading, in full steps of the gauge, that lasts the minutes at the flow.
    Reading,
    /// The greatest whole flow at which the reading lasts the minutes.
    Flow,
}

/// A cylinder, a reading, a flow and the minutes that belong together. One of the last three is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lasting {
    /// The cylinder's size.
    pub cylinder: CylinderId,
    /// The reading.
    pub pressure: Pressure<Gauge>,
    /// The cylinder's temperature.
    pub temperature: Temperature,
    /// The flow.
    pub flow: Flow,
    /// The minutes: those it lasts, or those wanted.
    pub minutes: u32,
    /// Which is asked for.
    pub asked: Asked,
}

/// The unit of the cylinder's gauge: that of its factor.
fn gauge_unit(cylinder: &Cylinder) -> PressureUnit {
    cylinder.factor.written().1
}

/// What may be asked.
pub(super) const fn asked(difficulty: Difficulty) -> &'static [Asked] {
    match difficulty {
        Difficulty::Hard => &[Asked::Reading, Asked::Flow],
        _ => &[Asked::Minutes],
    }
}

pub(super) fn exercise<'b>(
    book: &'b Rulebook,
    difficulty: Difficulty,
    asked: Asked,
    chance: &mut Chance,
) -> Option<Exercise<'b>> {
    let id = CylinderId(u16::try_from(chance.below(book.cylinders.len())).ok()?);
    let cylinder = book.cylinder(id)?;
    let device = chance.pick(&book.devices)?;
    let flow = whole_flow(device.flow, device.usual, chance)?;
    let pressure = some_reading(book, cylinder, difficulty, chance)?;
    let temperature = if difficulty == Difficulty::Easy {
        USUAL_TEMPERATURE
    } else {
        Temperature::celsius(f64::from(chance.within(-2, 8) * 5)).ok()?
    };
    let supply = Supply::of(book, cylinder).temperature(temperature);
    let lasts = supply.lasts(pressure, flow).ok()?;
    // Less than a few minutes teaches rounding, more than a day teaches nothing.
    if !(3..=24 * 60).contains(&lasts.minutes) {
        return None;
    }
    let about = About {
        book,
        cylinder,
        device,
        supply,
        unit: gauge_unit(cylinder),
    };
    let lasting = Lasting {
        cylinder: id,
        pressure,
        temperature,
        flow,
        minutes: lasts.minutes,
        asked,
    };
    match asked {
        Asked::Minutes => about.minutes(difficulty, lasting, &lasts, chance),
        Asked::Reading => about.reading(difficulty, lasting, chance),
        Asked::Flow => about.flow(difficulty, lasting, chance),
    }
}

/// A reading between the residual and the service pressure, easy ones in round hundreds.
fn some_reading(
    book: &Rulebook,
    cylinder: &Cylinder,
    difficulty: Difficulty,
    chance: &mut Chance,
) -> Option<Pressure<Gauge>> {
    let unit = gauge_unit(cylinder);
    let step = step(unit) * if difficulty == Difficulty::Easy { 10.0 } else { 5.0 };
    let least = book.policies.residual_pressure.as_unit(unit) / step;
    let most = cylinder.service_pressure.as_unit(unit) / step;
    let steps = chance.within(least.ceil() as i32 + 1, most.floor() as i32);
    let reading = Pressure::in_unit(f64::from(steps) * step, unit).ok()?;
    (reading <= cylinder.service_pressure && reading > book.policies.residual_pressure).then_some(reading)
}

struct About<'b> {
    book: &'b Rulebook,
    cylinder: &'b Cylinder,
    device: &'b Device,
    supply: Supply,
    unit: PressureUnit,
}

impl<'b> About<'b> {
    fn cylinder(&self) -> String {
        let factor = self.cylinder.factor.written();
        let mut words = format!(
            "Its size is {}, its water capacity {}",
            self.cylinder.rule.name, self.cylinder.water_capacity
        );
        if factor.0 > 0.0 {
            words += &format!(", its factor {}", self.cylinder.factor);
        }
        words + "."
    }

    fn warmth(&self, temperature: Temperature) -> String {
        format!("at {}", self.book.agency.temperature_unit.show(temperature))
    }

    fn residual(&self) -> String {
        let residual = self.book.policies.residual_pressure;
        let written = self.book.agency.pressure_unit;
        if self.unit == written {
            format!("The residual pressure is {}.", written.show(residual))
        } else {
            format!(
                "The residual pressure is {}, {}.",
                written.show(residual),
                self.upward(residual)
            )
        }
    }

    /// The residual in the gauge's unit, to a tenth, rounded up: a sum by hand with it never promises more.
    fn upward(&self, residual: Pressure<Gauge>) -> String {
        let tenths = (residual.as_unit(self.unit) * 10.0 - 1e-9).ceil();
        format!("{} {}", tenths / 10.0, self.unit.symbol())
    }

    fn rules(&self) -> Vec<Cited<'b>> {
        let residual = self.book.policies.find("residual-pressure");
        let mut rules = vec![Cited::from(&self.cylinder.rule)];
        rules.extend(residual.map(|policy| Cited::from(&policy.rule)));
        rules
    }

    /// How the minutes of a reading come about, method by method.
    fn worked(&self, pressure: Pressure<Gauge>, flow: Flow, lasts: &Duration) -> Vec<String> {
        let residual = self.book.policies.residual_pressure;
        let mut lines = Vec::new();
        if let Some(factor) = lasts.by_factor {
            lines.push(format!(
                "By factor: ({} − {}) × {} = {} L; ÷ {} = {} min.",
                self.unit.show(pressure),
                self.upward(residual),
                self.cylinder.factor,
                down(factor.usable.as_litres(), 10.0),
                flow,
                factor.minutes,
            ));
        }
        lines.push(format!(
            "By the density of oxygen {}: {} L above the residual; ÷ {} = {} min.",
            self.warmth(lasts.temperature),
            down(lasts.by_density.usable.as_litres(), 10.0),
            flow,
            lasts.by_density.minutes,
        ));
        if lasts.by_factor.is_some() {
            let bound = match lasts.bound {
                Bound::Density => "density",
                Bound::Factor => "factor",
            };
            lines.push(format!(
                "The lower counts, here by {bound}: {} min, rounded down to whole minutes.",
                lasts.minutes
            ));
        }
        lines
    }

    fn done(
        self,
        difficulty: Difficulty,
        lasting: Lasting,
        question: String,
        answer: String,
        working: Vec<String>,
    ) -> Exercise<'b> {
        Exercise {
            difficulty,
            task: Task::Duration(lasting),
            question,
            lines: Vec::new(),
            answer,
            working,
            rules: self.rules(),
        }
    }

    fn minutes(
        self,
        difficulty: Difficulty,
        lasting: Lasting,
        lasts: &Duration,
        chance: &mut Chance,
    ) -> Option<Exercise<'b>> {
        let Lasting {
            pressure,
            flow,
            temperature,
            ..
        } = lasting;
        let mut question = format!(
            "The gauge of a cylinder reads {} {}. {} The flow is {flow} ({}). {} How many whole minutes does the gas last?",
            self.unit.show(pressure),
            self.warmth(temperature),
            self.cylinder(),
            lower(&self.device.rule.name),
            self.residual(),
        );
        let mut answer = format!("{} min.", lasts.minutes);
        let mut working = self.worked(pressure, flow, lasts);
        if difficulty != Difficulty::Easy {
            let now = chance.below(24 * 12) as u64 * 5;
            let end = now + u64::from(lasts.minutes);
            question += &format!(
                " It is {}: when is the gas above the residual used up at the latest?",
                clock(now)
            );
            let days = match end / (24 * 60) {
                0 => "",
                _ => " the next day",
            };
            answer += &format!(" Used up at {}{days}.", clock(end));
            working.push(format!(
                "{} + {} min = {}{days}.",
                clock(now),
                lasts.minutes,
                clock(end)
            ));
        }
        Some(self.done(difficulty, lasting, question, answer, working))
    }

    fn reading(self, difficulty: Difficulty, lasting: Lasting, chance: &mut Chance) -> Option<Exercise<'b>> {
        // The minutes of a reading, or somewhat fewer, so that the answer isn't always a round number.
        let fewer = chance.below(4) as u32 + 1;
        let minutes = lasting
            .minutes
            .checked_sub(fewer)
            .filter(|minutes| *minutes > 0)?;
        let exactly = self.supply.pressure_for(minutes, lasting.flow).ok()?;
        let step = step(self.unit);
        let steps = (exactly.as_unit(self.unit) / step).ceil();
        let at = |steps: f64| Pressure::in_unit(steps * step, self.unit).ok();
        let (reading, below) = (at(steps)?, at(steps - 1.0)?);
        let lasts = self.supply.lasts(reading, lasting.flow).ok()?;
        let short = self.supply.lasts(below, lasting.flow).ok()?;
        if lasts.minutes < minutes || short.minutes >= minutes {
            return None;
        }
        let question = format!(
            "The gas of a cylinder must last {minutes} min {} at a flow of {} ({}). {} {} What must the gauge read at \
             least, to the next full {} {}?",
            self.warmth(lasting.temperature),
            lasting.flow,
            lower(&self.device.rule.name),
            self.cylinder(),
            self.residual(),
            step,
            self.unit.symbol(),
        );
        let mut working = self.worked(reading, lasting.flow, &lasts);
        working.push(format!(
            "At {} it would last {} min only.",
            self.unit.show(below),
            short.minutes
        ));
        let answer = format!("{} (it lasts {} min).", self.unit.show(reading), lasts.minutes);
        let lasting = Lasting {
            pressure: reading,
            minutes,
            ..lasting
        };
        Some(self.done(difficulty, lasting, question, answer, working))
    }

    fn flow(self, difficulty: Difficulty, lasting: Lasting, chance: &mut Chance) -> Option<Exercise<'b>> {
        let fewer = chance.below(3) as u32;
        let minutes = lasting
            .minutes
            .checked_sub(fewer)
            .filter(|minutes| *minutes > 0)?;
        let exactly = self.supply.flow_for(lasting.pressure, minutes).ok()?;
        let whole = exactly.as_litres_per_minute().floor();
        let at = |flow: f64| Flow::litres_per_minute(flow).ok();
        let (flow, above) = (at(whole).filter(|flow| *flow > Flow::ZERO)?, at(whole + 1.0)?);
        let lasts = self.supply.lasts(lasting.pressure, flow).ok()?;
        let short = self.supply.lasts(lasting.pressure, above).ok()?;
        if lasts.minutes < minutes || short.minutes >= minutes {
            return None;
        }
        let question = format!(
            "The gauge of a cylinder reads {} {}. {} {} The gas must last {minutes} min. What is the greatest flow, in \
             whole litres a minute?",
            self.unit.show(lasting.pressure),
            self.warmth(lasting.temperature),
            self.cylinder(),
            self.residual(),
        );
        let mut working = self.worked(lasting.pressure, flow, &lasts);
        working.push(format!("At {above} it would last {} min only.", short.minutes));
        working.push("Whether that flow is enough for the patient is another question.".into());
        let answer = format!("{flow} (it lasts {} min).", lasts.minutes);
        let lasting = Lasting {
            flow,
            minutes,
            ..lasting
        };
        Some(self.done(difficulty, lasting, question, answer, working))
    }
}
