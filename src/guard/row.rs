//! What was observed, flat: the form in which all guards are asked at once.

use super::{Facts, Observed, compare::Comparable};
use crate::book::{ConditionId, DeviceId, Fact, GroupId, Measure};
use crate::quantity::{Flow, Gauge, Limit, Percent, Pressure, Range, Temperature, Time, TimeUnit};

/// What was observed, as bare numbers and bits; kept by who asks often and changes little in between.
///
/// It says the same as [`Observed`], from which it is made. At first nothing is known.
///
/// ```
/// use oxyfolio::guard::{Evaluator, Observed, Row};
/// use oxyfolio::quantity::{Flow, Temperature};
/// use oxyfolio::{device, group, hazard};
///
/// let mut row = Row::from(&Observed {
///     device: Some(device::NASAL_CANNULA),
///     flow: Some(Flow::litres_per_minute(2.0)?),
///     ..Observed::default()
/// });
/// assert!(hazard::Guards.broken_row(&row).unknown.contains(hazard::TOO_HOT));
/// row.set_temperature(Some(Temperature::celsius(59.0)?));
/// assert!(hazard::Guards.broken_row(&row).there.contains(hazard::TOO_HOT));
/// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Row {
    // Numbers as guards compare them; not a number where nothing is known, which no quantity is.
    flow: f64,
    pressure: f64,
    temperature: f64,
    spo2: f64,
    minutes_left: f64,
    minutes_wanted: f64,
    target_low: f64,
    target_high: f64,
    // One more than the identifier; 0 where it isn't known.
    device: u32,
    group: u32,
    facts: Facts,
    // A bit for each condition the patient has; and all bits where conditions were asked for, else none.
    conditions: u64,
    asked: u64,
}

/// The most conditions a book may name.
pub const MAX_CONDITIONS: usize = 64;

impl Row {
    /// Nothing is known.
    pub const UNKNOWN: Self = Self {
        flow: f64::NAN,
        pressure: f64::NAN,
        temperature: f64::NAN,
        spo2: f64::NAN,
        minutes_left: f64::NAN,
        minutes_wanted: f64::NAN,
        target_low: f64::NAN,
        target_high: f64::NAN,
        device: 0,
        group: 0,
        facts: Facts::NONE,
        conditions: 0,
        asked: 0,
    };

    /// Records the flow set, or that it isn't known any more.
    #[inline]
    pub fn set_flow(&mut self, flow: Option<Flow>) {
        self.flow = number(flow);
    }

    /// Records the gauge reading.
    #[inline]
    pub fn set_pressure(&mut self, pressure: Option<Pressure<Gauge>>) {
        self.pressure = number(pressure);
    }

    /// Records the cylinder's temperature.
    #[inline]
    pub fn set_temperature(&mut self, temperature: Option<Temperature>) {
        self.temperature = number(temperature);
    }

    /// Records the patient's oxygen saturation. What can't be one, more than 100 %, is not known.
    #[inline]
    pub fn set_spo2(&mut self, spo2: Option<Percent>) {
        self.spo2 = number(spo2.filter(|spo2| spo2.is_saturation()));
    }

    /// Records how long the gas lasts.
    #[inline]
    pub fn set_minutes_left(&mut self, time: Option<Time>) {
        self.minutes_left = number(time);
    }

    /// Records how long the gas must last.
    #[inline]
    pub fn set_minutes_wanted(&mut self, time: Option<Time>) {
        self.minutes_wanted = number(time);
    }

    /// Records the saturation aimed at.
    #[inline]
    pub fn set_target(&mut self, target: Option<Range<Percent>>) {
        self.target_low = number(target.and_then(|range| range.low.value()));
        self.target_high = number(target.and_then(|range| range.high.value()));
    }

    /// Records the device.
    #[inline]
    pub fn set_device(&mut self, device: Option<DeviceId>) {
        self.device = device.map_or(0, |id| u32::from(id.0) + 1);
    }

    /// Records the patient's group.
    #[inline]
    pub fn set_group(&mut self, group: Option<GroupId>) {
        self.group = group.map_or(0, |id| u32::from(id.0) + 1);
    }

    /// Records the patient's conditions, when they were asked for; an empty list means none. No book has more than
    /// [`MAX_CONDITIONS`]; an identifier past them is left out.
    #[inline]
    pub fn set_conditions(&mut self, conditions: Option<&[ConditionId]>) {
        self.asked = if conditions.is_some() { u64::MAX } else { 0 };
        self.conditions = conditions
            .unwrap_or_default()
            .iter()
            .fold(0, |bits, id| bits | condition_bit(*id));
    }

    /// Records all yes-or-no observations; what is unknown in `facts` isn't known any more.
    #[inline]
    pub fn set_facts(&mut self, facts: Facts) {
        self.facts = facts;
    }

    /// Records one yes-or-no observation.
    #[inline]
    pub fn set_fact(&mut self, fact: Fact, holds: Option<bool>) {
        self.facts = match holds {
            Some(holds) => self.facts.with(fact, holds),
            None => self.facts.without(fact),
        };
    }

    /// The yes-or-no observations.
    #[inline]
    #[must_use]
    pub const fn facts(&self) -> Facts {
        self.facts
    }

    /// What was measured, in the unit of [`Comparable::number`]; not a number where it isn't known.
    #[inline]
    #[must_use]
    pub const fn number(&self, measure: Measure) -> f64 {
        match measure {
            Measure::Flow => self.flow,
            Measure::Pressure => self.pressure,
            Measure::Temperature => self.temperature,
            Measure::Spo2 => self.spo2,
            Measure::MinutesLeft => self.minutes_left,
            Measure::MinutesWanted => self.minutes_wanted,
        }
    }

    /// The low end of the saturation aimed at, in percent; not a number where there is none.
    #[inline]
    #[must_use]
    pub const fn target_low(&self) -> f64 {
        self.target_low
    }

    /// The high end of the saturation aimed at, in percent; not a number where there is none.
    #[inline]
    #[must_use]
    pub const fn target_high(&self) -> f64 {
        self.target_high
    }

    /// A place in a table of devices that begins with "not known" and, after the devices of the book, ends with "not
    /// of this book".
    #[inline]
    #[must_use]
    pub const fn device_place(&self, devices: u32) -> usize {
        place(self.device, devices)
    }

    /// A place in a table of groups, made as that of [`device_place`](Self::device_place).
    #[inline]
    #[must_use]
    pub const fn group_place(&self, groups: u32) -> usize {
        place(self.group, groups)
    }

    /// A bit for each condition that the patient has.
    #[inline]
    #[must_use]
    pub const fn has(&self) -> u64 {
        self.conditions
    }

    /// A bit for each condition that the patient is known not to have.
    #[inline]
    #[must_use]
    pub const fn has_not(&self) -> u64 {
        self.asked & !self.conditions
    }

    /// Asks about the same in the form of [`Observed`].
    pub fn observed<T>(&self, ask: impl FnOnce(&Observed<'_>) -> T) -> T {
        let mut all = [ConditionId(0); MAX_CONDITIONS];
        let mut count = 0;
        for id in (0..).map(ConditionId).take(MAX_CONDITIONS) {
            if self.conditions & condition_bit(id) != 0
                && let Some(place) = all.get_mut(count)
            {
                *place = id;
                count += 1;
            }
        }
        let limit = |end: f64| known(end).map_or(Limit::None, |end| Limit::Included(Percent::tabled(end)));
        let target = Range {
            low: limit(self.target_low),
            high: limit(self.target_high),
        };
        let minutes = |number| known(number).map(|number| Time::tabled(number, TimeUnit::Minute));
        ask(&Observed {
            flow: known(self.flow).map(Flow::tabled),
            pressure: known(self.pressure).map(Pressure::tabled),
            temperature: known(self.temperature).map(Temperature::tabled),
            spo2: known(self.spo2).map(Percent::tabled),
            minutes_left: minutes(self.minutes_left),
            minutes_wanted: minutes(self.minutes_wanted),
            device: identifier(self.device).map(DeviceId),
            group: identifier(self.group).map(GroupId),
            conditions: all.get(..count).filter(|_| self.asked != 0),
            target: Some(target).filter(|target| target.low != Limit::None || target.high != Limit::None),
            facts: self.facts,
        })
    }
}

impl Default for Row {
    fn default() -> Self {
        Self::UNKNOWN
    }
}

impl From<&Observed<'_>> for Row {
    #[inline]
    fn from(seen: &Observed<'_>) -> Self {
        let mut row = Self::UNKNOWN;
        row.set_flow(seen.flow);
        row.set_pressure(seen.pressure);
        row.set_temperature(seen.temperature);
        row.set_spo2(seen.spo2);
        row.set_minutes_left(seen.minutes_left);
        row.set_minutes_wanted(seen.minutes_wanted);
        row.set_target(seen.target);
        row.set_device(seen.device);
        row.set_group(seen.group);
        row.set_conditions(seen.conditions);
        row.set_facts(seen.facts);
        row
    }
}

#[inline]
fn number<Q: Comparable>(known: Option<Q>) -> f64 {
    known.map_or(f64::NAN, Q::number)
}

fn known(number: f64) -> Option<f64> {
    Some(number).filter(|number| !number.is_nan())
}

const fn place(one_more: u32, count: u32) -> usize {
    let place = if one_more > count { count + 1 } else { one_more };
    place as usize
}

fn identifier(one_more: u32) -> Option<u16> {
    u16::try_from(one_more.checked_sub(1)?).ok()
}

const fn condition_bit(id: ConditionId) -> u64 {
    if id.index() < MAX_CONDITIONS { 1 << id.0 } else { 0 }
}
