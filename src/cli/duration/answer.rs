//! The three answers, for people and for programs.

use std::io::Write;

use super::{
    super::{
        CannotRun, Outcome,
        answers::{Frame, duration as told},
        words,
    },
    clock::Clock,
};
use crate::book::{Cylinder, Rulebook};
use crate::check::duration::{Duration, GaugeReading, Supply};
use crate::quantity::{Factor, Flow, Gauge, Number, Pressure, Temperature, Volume};
use crate::rounding::down;

type Answered = Result<Outcome, CannotRun>;

/// What every question holds.
pub struct Asked<'b> {
    pub book: &'b Rulebook,
    pub supply: Supply,
    pub cylinder: Option<&'b Cylinder>,
    pub water_capacity: Volume,
    pub factor: Option<Factor>,
    pub residual: Pressure<Gauge>,
    pub temperature: Temperature,
    pub temperature_given: bool,
}

impl Asked<'_> {
    /// The reading at which the cylinder is changed: the book's, or a residual that was asked for above it.
    pub fn change_over(&self) -> Pressure<Gauge> {
        let book = self.book.policies.change_over_pressure;
        if self.residual > book { self.residual } else { book }
    }

    /// The most the cylinder may be filled to, where its size is known.
    pub fn filled_at_most(&self) -> Option<Pressure<Gauge>> {
        self.cylinder.map(|cylinder| self.book.filled_at_most(cylinder))
    }

    /// Whether a reading is above what the cylinder may be filled to: then nothing can be relied on.
    fn overfilled(&self, pressure: Pressure<Gauge>) -> bool {
        self.filled_at_most().is_some_and(|most| pressure > most)
    }

    fn warn_overfilled(&self, pressure: Pressure<Gauge>, out: &mut dyn Write) -> std::io::Result<()> {
        match self.filled_at_most() {
            Some(most) if pressure > most => writeln!(
                out,
                "CAUTION: {pressure} is above the {most} this size may be filled to: overfilled, hot, or the wrong size \
                 or unit. Do not rely on this answer."
            ),
            _ => Ok(()),
        }
    }

    /// `a D cylinder`, `a cylinder of 4.6 L of water`.
    fn name(&self) -> String {
        match self.cylinder {
            Some(cylinder) => format!("a {} cylinder", cylinder.rule.name),
            None => format!("a cylinder of {} of water", self.water_capacity),
        }
    }

    /// `at 21 °C (assumed)`.
    fn at_temperature(&self) -> String {
        let assumed = if self.temperature_given { "" } else { " (assumed)" };
        format!("at {}{assumed}", self.temperature)
    }

    /// The lines before the footing.
    fn close(&self, gauge: Option<GaugeReading>, out: &mut dyn Write) -> Result<(), CannotRun> {
        if let Some(sentence) = gauge.and_then(GaugeReading::sentence) {
            writeln!(out, "At {} {sentence}.", self.temperature)?;
        }
        if let Some(cylinder) = self.cylinder {
            writeln!(
                out,
                "Sizes: {}. Read what is stamped on the cylinder.",
                cylinder.series
            )?;
        }
        words::footing(out)?;
        Ok(())
    }

    /// The fields of every answer for programs.
    fn told(&self) -> told::Asked<'_> {
        told::Asked {
            cylinder: self.cylinder.map(|cylinder| &*cylinder.rule.id),
            series: self.cylinder.map(|cylinder| &*cylinder.series),
            water_capacity_litres: self.water_capacity.as_litres(),
            factor: self.factor.map(|factor| factor.to_string()),
            residual_psi: self.residual.as_psi(),
            residual_bar: self.residual.as_bar(),
            temperature_c: self.temperature.as_celsius(),
            temperature_assumed: !self.temperature_given,
        }
    }

    fn json(&self, answer: told::Duration<'_>, out: &mut dyn Write) -> Result<(), CannotRun> {
        words::json(out, &Frame::of(self.book).round(answer))?;
        Ok(())
    }
}

/// `12 L/min`, `12 L/min and a leak of 0.5 L/min`.
fn flows(flow: Flow, leak: Flow) -> String {
    match (flow > Flow::ZERO, leak > Flow::ZERO) {
        (true, true) => format!("{flow} and a leak of {leak}"),
        (false, true) => format!("a leak of {leak}"),
        (_, false) => flow.to_string(),
    }
}

/// `90 min (1 h 30 min)`.
fn long(minutes: u32) -> String {
    match minutes / 60 {
        0 => format!("{minutes} min"),
        hours => format!("{minutes} min ({hours} h {} min)", minutes % 60),
    }
}

/// How long a reading lasts.
pub struct Lasts {
    pub pressure: Pressure<Gauge>,
    pub flow: Flow,
    pub leak: Flow,
    pub lasts: Duration,
    /// Minutes until the gauge shows the book's change-over pressure.
    pub change_over: u32,
    pub wanted: Option<u32>,
    pub now: Option<Clock>,
}

impl Lasts {
    fn enough(&self) -> Option<bool> {
        self.wanted.map(|wanted| self.lasts.minutes >= wanted)
    }

    fn change_now(&self, asked: &Asked<'_>) -> bool {
        self.pressure <= asked.change_over()
    }

    fn outcome(&self, asked: &Asked<'_>) -> Answered {
        Ok(match self.enough() {
            _ if asked.overfilled(self.pressure) => Outcome::Findings,
            Some(false) => Outcome::Findings,
            Some(true) | None => Outcome::Fine,
        })
    }

    pub fn text(&self, asked: &Asked<'_>, out: &mut dyn Write) -> Answered {
        let Self { pressure, lasts, .. } = self;
        let (change_over, residual) = (asked.change_over(), asked.residual);
        words::heading(out, asked.book)?;
        writeln!(
            out,
            "{} at {} from {} at {pressure} {}, {residual} kept as residual.",
            long(lasts.minutes),
            flows(self.flow, self.leak),
            asked.name(),
            asked.at_temperature()
        )?;
        writeln!(
            out,
            "By density of real oxygen {} min ({} L of {} L usable).",
            lasts.by_density.minutes,
            tenth(lasts.by_density.usable),
            tenth(lasts.free)
        )?;
        match (lasts.by_factor, asked.factor) {
            (Some(method), Some(factor)) => writeln!(
                out,
                "By factor {} min: ({pressure} - {residual}) x {factor} = {} L.",
                method.minutes,
                tenth(method.usable)
            )?,
            _ => writeln!(out, "No factor was given, so density alone.")?,
        }
        if lasts.by_factor.is_some() {
            writeln!(
                out,
                "The lower counts, here the {}; rounded down.",
                lasts.bound.word()
            )?;
        }
        asked.warn_overfilled(*pressure, out)?;
        if self.change_now(asked) {
            writeln!(
                out,
                "The book changes the cylinder at {change_over}: change it now."
            )?;
        } else {
            write!(
                out,
                "Change the cylinder at {change_over}, in {} min",
                self.change_over
            )?;
            if let Some(now) = self.now {
                write!(out, ": at {}", now.after(self.change_over))?;
            }
            writeln!(out, ".")?;
        }
        if let Some(now) = self.now {
            writeln!(out, "At {} it is at its residual.", now.after(lasts.minutes))?;
        }
        match (self.enough(), self.wanted) {
            (Some(true), Some(wanted)) => {
                writeln!(out, "Enough for {wanted} min; no planning margin is added here.")?;
            }
            (Some(false), Some(wanted)) => writeln!(out, "NOT ENOUGH for {wanted} min.")?,
            _ => {}
        }
        asked.close(Some(lasts.gauge), out)?;
        self.outcome(asked)
    }

    pub fn json(&self, asked: &Asked<'_>, out: &mut dyn Write) -> Answered {
        let lasts = &self.lasts;
        let own = told::Minutes {
            asked: asked.told(),
            pressure_psi: self.pressure.as_psi(),
            pressure_bar: self.pressure.as_bar(),
            flow_lpm: self.flow.as_litres_per_minute(),
            leak_lpm: self.leak.as_litres_per_minute(),
            minutes: lasts.minutes,
            free_litres: lasts.free.as_litres(),
            usable_litres: lasts.usable.as_litres(),
            by_density_minutes: lasts.by_density.minutes,
            by_density_litres: lasts.by_density.usable.as_litres(),
            by_factor_minutes: lasts.by_factor.map(|method| method.minutes),
            by_factor_litres: lasts.by_factor.map(|method| method.usable.as_litres()),
            bound_by: lasts.bound.into(),
            gauge: lasts.gauge.into(),
            gauge_note: lasts.gauge.sentence(),
            change_cylinder_now: self.change_now(asked),
            above_fill_limit: asked.overfilled(self.pressure),
            change_over_psi: asked.change_over().as_psi(),
            change_over_minutes: self.change_over,
            change_over_at: self.now.map(|now| now.after(self.change_over).to_string()),
            ends_at: self.now.map(|now| now.after(lasts.minutes).to_string()),
            minutes_wanted: self.wanted,
            enough: self.enough(),
        };
        asked.json(told::Duration::Minutes(own), out)?;
        self.outcome(asked)
    }
}

/// The reading needed.
pub struct Needed {
    pub minutes: u32,
    pub flow: Flow,
    pub leak: Flow,
    /// Rounded up to whole psi; nothing where 300 bar is not enough.
    pub psi: Option<Pressure<Gauge>>,
    /// Rounded up to a tenth of a bar.
    pub bar: Option<Pressure<Gauge>>,
    /// Whether the cylinder may be filled so far.
    pub possible: bool,
    /// The most this size may be filled to, where that is known.
    pub most: Option<Pressure<Gauge>>,
}

impl Needed {
    fn outcome(&self) -> Answered {
        Ok(if self.possible {
            Outcome::Fine
        } else {
            Outcome::Findings
        })
    }

    pub fn text(&self, asked: &Asked<'_>, out: &mut dyn Write) -> Answered {
        words::heading(out, asked.book)?;
        match (self.psi, self.bar) {
            (Some(psi), Some(bar)) => write!(
                out,
                "{} psi ({} bar) or more",
                Number(psi.as_psi()),
                Number(bar.as_bar())
            )?,
            _ => write!(out, "More than 300 bar")?,
        }
        writeln!(
            out,
            " is needed on the gauge of {} {} for {} at {}, {} kept as residual.",
            asked.name(),
            asked.at_temperature(),
            long(self.minutes),
            flows(self.flow, self.leak),
            asked.residual
        )?;
        match self.most {
            Some(most) if !self.possible => {
                writeln!(
                    out,
                    "NOT POSSIBLE: this size may be filled to {most} at the most."
                )?;
            }
            _ if !self.possible => writeln!(out, "NOT POSSIBLE.")?,
            _ => {}
        }
        writeln!(out, "Rounded up; no planning margin is added here.")?;
        asked.close(None, out)?;
        self.outcome()
    }

    pub fn json(&self, asked: &Asked<'_>, out: &mut dyn Write) -> Answered {
        let own = told::Pressure {
            asked: asked.told(),
            minutes: self.minutes,
            flow_lpm: self.flow.as_litres_per_minute(),
            leak_lpm: self.leak.as_litres_per_minute(),
            pressure_needed_psi: self.psi.map(|psi| psi.as_psi()),
            pressure_needed_bar: self.bar.map(|bar| bar.as_bar()),
            possible: self.possible,
            filled_at_most_psi: self.most.map(|most| most.as_psi()),
        };
        asked.json(told::Duration::Pressure(own), out)?;
        self.outcome()
    }
}

/// The greatest flow.
pub struct Greatest {
    pub pressure: Pressure<Gauge>,
    pub minutes: u32,
    /// Rounded down.
    pub flow: Flow,
    pub lasts: Duration,
}

impl Greatest {
    pub fn text(&self, asked: &Asked<'_>, out: &mut dyn Write) -> Answered {
        let Self { pressure, flow, .. } = self;
        words::heading(out, asked.book)?;
        writeln!(
            out,
            "{flow} at the most for {} from {} at {pressure} {}, {} kept as residual.",
            long(self.minutes),
            asked.name(),
            asked.at_temperature(),
            asked.residual
        )?;
        writeln!(
            out,
            "{} L are usable by the {}; rounded down; no planning margin is added here.",
            tenth(self.lasts.usable),
            self.lasts.bound.word()
        )?;
        writeln!(
            out,
            "Not every device may be set to this flow: the book's limits come first."
        )?;
        asked.warn_overfilled(*pressure, out)?;
        asked.close(Some(self.lasts.gauge), out)?;
        Ok(self.outcome(asked))
    }

    pub fn json(&self, asked: &Asked<'_>, out: &mut dyn Write) -> Answered {
        let own = told::Flow {
            asked: asked.told(),
            pressure_psi: self.pressure.as_psi(),
            pressure_bar: self.pressure.as_bar(),
            minutes: self.minutes,
            greatest_flow_lpm: self.flow.as_litres_per_minute(),
            free_litres: self.lasts.free.as_litres(),
            usable_litres: self.lasts.usable.as_litres(),
            bound_by: self.lasts.bound.into(),
            gauge: self.lasts.gauge.into(),
            gauge_note: self.lasts.gauge.sentence(),
            above_fill_limit: asked.overfilled(self.pressure),
        };
        asked.json(told::Duration::Flow(own), out)?;
        Ok(self.outcome(asked))
    }

    fn outcome(&self, asked: &Asked<'_>) -> Outcome {
        if asked.overfilled(self.pressure) {
            Outcome::Findings
        } else {
            Outcome::Fine
        }
    }
}

/// Litres to a tenth, rounded down.
fn tenth(volume: Volume) -> Number {
    Number(down(volume.as_litres(), 10.0))
}
