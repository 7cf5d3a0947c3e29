//! The gas of the cylinder in use, between one gauge reading and the next.
//!
//! Two readings of one cylinder say how much was used; flow and time say how much should have been. They may differ by what
//! gauge, flowmeter and clock can't tell. Where they differ by more, something else took the gas, or something was written
//! down wrongly.
//!
//! | what | how far it may be off |
//! | --- | --- |
//! | each gauge reading | the book's policy `gauge-tolerance`; where it has none, 50 psi (common practice, no source: half of the finest division of a small gauge) |
//! | the flow | the book's policy `flow-tolerance`; where it has none, 15 % (New Jersey Administrative Code 8:41-3.6(a)2 allows 2 L/min from 11 L/min on: 13 % at 15 L/min) |
//! | the clock | half a minute at each end where times are whole minutes, else five seconds |
//! | the temperature | 2 % of the gas; 15 % where no temperature was recorded (-20 to 50 °C against 21 °C) |
//!
//! They are added up, not averaged: a finding must hold even when all of them are off at once.

use super::{asking::Level, finding::Mismatch, record::Moment};
use crate::book::{Cylinder, Policies, Rulebook, Value};
use crate::check::duration::{Supply, USUAL_TEMPERATURE};
use crate::equipment::Gas;
use crate::oxygen::MARGIN;
use crate::quantity::{Flow, Gauge, Pressure, Temperature, Time};

/// How far gauge and flowmeter may be off.
#[derive(Clone, Copy, Debug)]
pub struct Tolerance {
    gauge: Pressure<Gauge>,
    flow: f64,
}

// 50 psi.
const USUAL_GAUGE: Pressure<Gauge> = Pressure::tabled(344_737.864_658_418_05);
const USUAL_FLOW: f64 = 0.15;
const TEMPERATURE: f64 = 0.02;
const NO_TEMPERATURE: f64 = 0.15;
const WHOLE_MINUTE: f64 = 0.5;
const SECONDS: f64 = 5.0 / 60.0;

impl Tolerance {
    /// What a book says, or what is usual.
    pub fn of(policies: &Policies) -> Self {
        let gauge = match policies.find("gauge-tolerance").map(|policy| policy.value) {
            Some(Value::Pressure(gauge)) => gauge,
            _ => USUAL_GAUGE,
        };
        let flow = match policies.find("flow-tolerance").map(|policy| policy.value) {
            Some(Value::Percent(share)) => share.as_percent() / 100.0,
            _ => USUAL_FLOW,
        };
        Self { gauge, flow }
    }
}

/// A gauge reading and what was used since, by the flow.
#[derive(Clone, Copy, Debug)]
struct Reading {
    pressure: Pressure<Gauge>,
    at: Option<Moment>,
    minutes: f64,
    used: f64,
    most_flow: f64,
    /// Not told any more: a flow or a time in between is unknown.
    lost: bool,
    gas: Option<Gas>,
    /// What the cylinder holds at the residual pressure.
    kept: Option<f64>,
}

/// What came of a reading.
#[derive(Clone, Copy, Debug)]
pub enum Compared<'b> {
    /// There is nothing to compare it with, or it agrees.
    Fine,
    /// More was used than the flow explains.
    TooFast(Mismatch<'b>),
    /// Less was used, or the pressure rose.
    TooSlow(Mismatch<'b>),
    /// The density isn't known.
    NoDensity,
}

/// The gas of the cylinder in use.
#[derive(Debug)]
pub struct Ledger<'b> {
    book: &'b Rulebook,
    tolerance: Tolerance,
    temperature: Option<Temperature>,
    cylinder: Option<&'b Cylinder>,
    reading: Option<Reading>,
    /// Another number whenever something else than use changes what is left.
    page: u32,
}

impl<'b> Ledger<'b> {
    pub const fn new(book: &'b Rulebook, tolerance: Tolerance, temperature: Option<Temperature>) -> Self {
        Self {
            book,
            tolerance,
            temperature,
            cylinder: None,
            reading: None,
            page: 0,
        }
    }

    /// Another number whenever something else than use changes what is left.
    pub const fn page(&self) -> u32 {
        self.page
    }

    /// What is left, in litres, where it is kept.
    pub fn litres(&self) -> Option<f64> {
        let reading = self.reading.as_ref().filter(|reading| !reading.lost)?;
        reading.gas.map(Gas::litres)
    }

    /// What the cylinder holds at a level, in litres.
    pub fn held(&self, level: Level) -> Option<f64> {
        let gas = self.reading.as_ref()?.gas?;
        match level {
            Level::Pressure(pressure) => gas.held_at(pressure),
            Level::Usable(litres) => {
                let residual = self.book.policies.residual_pressure;
                let by_density = self.kept()? + litres / (1.0 - MARGIN);
                let factor = self.cylinder?.factor;
                let per_pascal = factor.contents(Pressure::tabled(1e6)).as_litres() / 1e6;
                if per_pascal > 0.0 {
                    let by_factor =
                        gas.held_at(Pressure::tabled(residual.as_pascals() + litres / per_pascal));
                    // Beyond the highest known pressure there is no such level.
                    Some(by_factor.unwrap_or(by_density).max(by_density))
                } else {
                    Some(by_density)
                }
            }
        }
    }

    /// What the cylinder holds at the residual pressure, which is never counted on.
    fn kept(&self) -> Option<f64> {
        self.reading.as_ref()?.kept
    }

    fn temperature(&self) -> Temperature {
        self.temperature.unwrap_or(USUAL_TEMPERATURE)
    }

    /// The size of the cylinder in use.
    pub const fn cylinder(&self) -> Option<&'b Cylinder> {
        self.cylinder
    }

    /// Another cylinder is in use.
    pub fn change(&mut self, cylinder: Option<&'b Cylinder>) {
        self.cylinder = cylinder;
        self.reading = None;
        self.page += 1;
    }

    /// The size is named; another than before is another cylinder.
    pub fn named(&mut self, cylinder: &'b Cylinder) {
        if !self
            .cylinder
            .is_some_and(|before| core::ptr::eq(before, cylinder))
        {
            self.change(Some(cylinder));
        }
    }

    /// What was used since the last reading isn't known.
    pub fn lose(&mut self) {
        if let Some(reading) = &mut self.reading {
            reading.lost = true;
            self.page += 1;
        }
    }

    /// Gas flowed for a time.
    pub fn pass(&mut self, minutes: f64, flow: f64) {
        if let Some(reading) = &mut self.reading {
            reading.minutes += minutes;
            if flow > 0.0 {
                reading.used += flow * minutes;
                reading.most_flow = if flow > reading.most_flow {
                    flow
                } else {
                    reading.most_flow
                };
                if let Some(gas) = &mut reading.gas {
                    *gas = gas.less(flow * minutes);
                }
            }
        }
    }

    /// The pressure now: read, or reckoned from the last reading and the flow since.
    pub fn pressure(&self) -> Option<Pressure<Gauge>> {
        let reading = self.reading.as_ref().filter(|reading| !reading.lost)?;
        if reading.used > 0.0 {
            Some(reading.gas?.pressure())
        } else {
            Some(reading.pressure)
        }
    }

    /// Pressure and litres while so much of the gas of the last stretch of time was still to be used.
    pub fn before(&self, litres: f64) -> Option<(Pressure<Gauge>, f64)> {
        let reading = self.reading.as_ref().filter(|reading| !reading.lost)?;
        let gas = Gas::new(
            self.cylinder?.water_capacity,
            self.temperature(),
            reading.pressure,
        )
        .ok()?;
        let gas = gas.less((reading.used - litres).max(0.0));
        Some((gas.pressure(), gas.litres()))
    }

    /// Whether it can be told how much is left.
    pub fn is_kept(&self) -> bool {
        self.reading
            .as_ref()
            .is_some_and(|reading| !reading.lost && reading.gas.is_some())
    }

    /// How long so many litres last at a flow, in whole minutes.
    pub fn minutes_left(&self, pressure: Pressure<Gauge>, held: f64, flow: Flow) -> Option<Time> {
        let supply = Supply::of(self.book, self.cylinder?);
        let minutes = supply.minutes_of((held, self.kept()?), pressure, flow).ok()?;
        Time::minutes(f64::from(minutes)).ok()
    }

    /// By the last reading and the flow since, how long ago the gas above the residual pressure ended.
    pub fn short(&self, flow: f64) -> Option<(Pressure<Gauge>, Time)> {
        let reading = self
            .reading
            .as_ref()
            .filter(|reading| !reading.lost && reading.used > 0.0)?;
        let cylinder = self.cylinder?;
        let residual = self.book.policies.residual_pressure;
        let by_density = reading.gas?.held_at(reading.pressure)? - reading.kept?;
        let factor = cylinder.factor;
        let by_factor = factor.contents(reading.pressure).as_litres() - factor.contents(residual).as_litres();
        let usable = if factor.written().0 > 0.0 && by_factor < by_density {
            by_factor
        } else {
            by_density
        };
        let over = reading.used - usable.max(0.0);
        let flow = if flow > 0.0 { flow } else { reading.most_flow };
        // Less than a minute is within what a clock tells.
        let minutes = (over / flow) as u32;
        let short = Time::minutes(f64::from(minutes)).ok()?;
        (minutes > 0).then_some((reading.pressure, short))
    }

    /// A reading of the cylinder in use; compared with the one before, which it replaces.
    pub fn read(&mut self, pressure: Pressure<Gauge>, at: Option<Moment>) -> Compared<'b> {
        let gas = self
            .cylinder
            .map(|cylinder| Gas::new(cylinder.water_capacity, self.temperature(), pressure));
        let unknown = matches!(gas, Some(Err(_)));
        let gas = gas.and_then(Result::ok);
        self.page += 1;
        let before = self.reading.replace(Reading {
            pressure,
            at,
            minutes: 0.0,
            used: 0.0,
            most_flow: 0.0,
            lost: false,
            gas,
            kept: gas.and_then(|gas| gas.held_at(self.book.policies.residual_pressure)),
        });
        if unknown {
            return Compared::NoDensity;
        }
        before
            .filter(|before| !before.lost)
            .and_then(|before| self.compare(&before, pressure, at))
            .unwrap_or(Compared::Fine)
    }

    fn compare(&self, before: &Reading, after: Pressure<Gauge>, at: Option<Moment>) -> Option<Compared<'b>> {
        let cylinder = self.cylinder?;
        let (first, last) = (before.gas?, self.reading.as_ref()?.gas?);
        let held = first.held_at(before.pressure)?;
        let used = held - last.litres();
        // What a gauge's tolerance is in litres. A cylinder gains up to a tenth more with a pressure than on the average.
        let gauge = self.tolerance.gauge;
        let per_pascal = if before.pressure > gauge {
            held / before.pressure.as_pascals()
        } else {
            first.held_at(gauge)? / gauge.as_pascals()
        };
        let gauges = 2.0 * 1.1 * per_pascal * gauge.as_pascals();
        let whole = |moment: Option<Moment>| moment.is_none_or(Moment::is_whole_minute);
        let clock = if whole(before.at) && whole(at) {
            WHOLE_MINUTE
        } else {
            SECONDS
        } * 2.0;
        let share = if self.temperature.is_some() {
            TEMPERATURE
        } else {
            NO_TEMPERATURE
        };
        // What gauge and temperature leave open grows with the size; what flowmeter and clock do doesn't.
        let of_size = gauges + share * used.abs();
        let of_flow = self.tolerance.flow * before.used + before.most_flow * clock;
        let uncertainty = of_size + of_flow;
        let more = used - before.used;
        if more.abs() <= uncertainty {
            return Some(Compared::Fine);
        }
        let fits = |other: &&'b Cylinder| {
            let scale = other.water_capacity.as_litres() / cylinder.water_capacity.as_litres();
            !core::ptr::eq(*other, cylinder)
                && (used * scale - before.used).abs() <= of_size * scale + of_flow
        };
        let off = |other: &&'b Cylinder| {
            let scale = other.water_capacity.as_litres() / cylinder.water_capacity.as_litres();
            (used * scale - before.used).abs()
        };
        let mismatch = Mismatch {
            cylinder,
            before: before.pressure,
            after,
            minutes: before.minutes,
            used,
            expected: before.used,
            uncertainty,
            would_fit: self
                .book
                .cylinders
                .iter()
                .filter(fits)
                .min_by(|a, b| off(a).total_cmp(&off(b))),
        };
        Some(if more > 0.0 {
            Compared::TooFast(mismatch)
        } else {
            Compared::TooSlow(mismatch)
        })
    }
}
