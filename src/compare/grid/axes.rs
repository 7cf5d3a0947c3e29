//! The values from which set-ups are made: at the limits of both books, just below and just above.

use std::collections::BTreeSet;

use super::super::durations::{ends, sorted};
use crate::book::{Fact, Rulebook, Saturation};
use crate::quantity::{Flow, Gauge, Percent, Pressure, Temperature, Time};

/// A set-up in the words of both books.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point<'b> {
    pub device: &'b str,
    pub flow: Flow,
    pub group: Option<&'b str>,
    /// None of them asked for, none there, or the one that is there.
    pub condition: Option<Option<&'b str>>,
    pub since_birth: Option<Time>,
    pub spo2: Option<Percent>,
    pub cylinder: Option<&'b str>,
    pub pressure: Option<Pressure<Gauge>>,
    pub temperature: Option<Temperature>,
    pub wanted: Option<Time>,
    pub seen: Option<(Fact, bool)>,
}

/// The values.
pub struct Axes<'b> {
    devices: Vec<(&'b str, Flow)>,
    groups: Vec<&'b str>,
    conditions: Vec<Option<&'b str>>,
    births: Vec<Time>,
    saturations: Vec<Percent>,
    cylinders: Vec<&'b str>,
    pressures: Vec<Pressure<Gauge>>,
    temperatures: Vec<Temperature>,
    wanted: Vec<Time>,
    seen: Vec<Option<(Fact, bool)>>,
}

impl<'b> Axes<'b> {
    /// From what both books name, and the limits of either.
    pub fn of(old: &'b Rulebook, new: &'b Rulebook) -> Self {
        let books = [old, new];
        let flow = |litres: f64| Flow::litres_per_minute(litres).ok();
        let mut devices = Vec::new();
        let both = |one: BTreeSet<&'b str>, other: BTreeSet<&'b str>| -> Vec<&'b str> {
            one.intersection(&other).copied().collect()
        };
        let of = |book: &'b Rulebook| book.devices.iter().map(|device| &*device.rule.id).collect();
        for id in both(of(old), of(new)) {
            let mut flows = Vec::new();
            for device in books.iter().filter_map(|book| book.device(book.find_device(id)?)) {
                flows.push(device.usual);
                flows.extend(ends(device.flow));
                for group in &device.group_flows {
                    flows.push(group.usual);
                    flows.extend(ends(group.flow));
                }
            }
            let around = around(&flows, |flow| flow.as_litres_per_minute(), flow, 0.5);
            devices.extend(around.into_iter().map(|flow| (id, flow)));
        }
        let of = |book: &'b Rulebook| book.groups.iter().map(|group| &*group.rule.id).collect();
        let groups = both(of(old), of(new));
        let of = |book: &'b Rulebook| book.cylinders.iter().map(|cylinder| &*cylinder.rule.id).collect();
        let cylinders = both(of(old), of(new));
        let of = |book: &'b Rulebook| book.conditions.iter().map(|condition| &*condition.id).collect();
        let conditions = core::iter::once(None)
            .chain(both(of(old), of(new)).into_iter().map(Some))
            .collect();
        let (mut births, mut saturations, mut pressures, mut temperatures) = (
            vec![Time::minutes(5.0).ok()],
            vec![Percent::new(90.0).ok()],
            Vec::new(),
            vec![Some(crate::check::duration::USUAL_TEMPERATURE)],
        );
        for book in books {
            for target in &book.targets {
                births.push(target.minute_of_life);
                if let Saturation::Range(range) = target.saturation {
                    saturations.extend(ends(range).map(Some));
                }
                saturations.push(target.urgent.map(|urgent| urgent.below));
            }
            let policies = &book.policies;
            pressures.extend([
                policies.residual_pressure,
                policies.change_over_pressure,
                policies.in_service_minimum,
            ]);
            pressures.extend(
                book.cylinders
                    .iter()
                    .map(|cylinder| book.filled_at_most(cylinder)),
            );
            pressures.extend(book.cylinders.iter().map(|cylinder| cylinder.service_pressure));
            temperatures.extend(ends(policies.use_temperature).map(Some));
        }
        // A gauge is read in whole numbers.
        let whole = |psi: f64| Pressure::<Gauge>::psi(psi).ok();
        let mut readings = Vec::new();
        for limit in pressures {
            let psi = (limit.as_psi() * 1e6).round() / 1e6;
            readings.extend(whole(psi.ceil() - 1.0));
            readings.push(limit);
            readings.extend(whole(psi.floor() + 1.0));
        }
        let pressures = sorted(readings, Pressure::as_pascals);
        let shares = |share: f64| {
            Percent::new(share)
                .ok()
                .filter(|share| share.as_percent() <= 100.0)
        };
        Self {
            devices,
            groups,
            conditions,
            births: sorted(births.into_iter().flatten().collect(), |time| time.as_minutes()),
            saturations: around(
                &saturations.into_iter().flatten().collect::<Vec<_>>(),
                |share| share.as_percent(),
                shares,
                1.0,
            ),
            cylinders,
            pressures,
            temperatures: around(
                &temperatures.into_iter().flatten().collect::<Vec<_>>(),
                |temperature| temperature.as_celsius(),
                |degrees| Temperature::celsius(degrees).ok(),
                1.0,
            ),
            wanted: [10.0, 30.0, 60.0, 120.0]
                .into_iter()
                .filter_map(|minutes| Time::minutes(minutes).ok())
                .collect(),
            seen: seen(),
        }
    }

    /// How many set-ups there are in all.
    pub fn all(&self) -> u64 {
        self.lengths().iter().map(|length| *length as u64).product()
    }

    /// The set-up of a number below [`all`](Self::all).
    pub fn point(&self, number: u64) -> Option<Point<'b>> {
        let mut left = number;
        let mut next = |length: usize| {
            let length = (length as u64).max(1);
            let place = left % length;
            left /= length;
            usize::try_from(place).unwrap_or(0)
        };
        // What matters least is told apart first, so that the even spread is best where it matters most.
        let seen = *self.seen.get(next(self.seen.len()))?;
        let wanted = *self.wanted.get(next(self.wanted.len()))?;
        let temperature = *self.temperatures.get(next(self.temperatures.len()))?;
        let cylinder = *self.cylinders.get(next(self.cylinders.len()))?;
        let since_birth = *self.births.get(next(self.births.len()))?;
        let pressure = *self.pressures.get(next(self.pressures.len()))?;
        let spo2 = *self.saturations.get(next(self.saturations.len()))?;
        let condition = *self.conditions.get(next(self.conditions.len()))?;
        let group = *self.groups.get(next(self.groups.len()))?;
        let (device, flow) = *self.devices.get(next(self.devices.len()))?;
        Some(Point {
            device,
            flow,
            group: Some(group),
            condition: Some(condition),
            since_birth: Some(since_birth),
            spo2: Some(spo2),
            cylinder: Some(cylinder),
            pressure: Some(pressure),
            temperature: Some(temperature),
            wanted: Some(wanted),
            seen,
        })
    }

    const fn lengths(&self) -> [usize; 10] {
        [
            self.devices.len(),
            self.groups.len(),
            self.conditions.len(),
            self.births.len(),
            self.saturations.len(),
            self.cylinders.len(),
            self.pressures.len(),
            self.temperatures.len(),
            self.wanted.len(),
            self.seen.len(),
        ]
    }
}

/// Each value with one below and one above it.
fn around<Q: Copy>(
    limits: &[Q],
    number: impl Fn(Q) -> f64 + Copy,
    of: impl Fn(f64) -> Option<Q>,
    by: f64,
) -> Vec<Q> {
    let mut all = Vec::new();
    for limit in sorted(limits.to_vec(), number) {
        let at = number(limit);
        all.extend(of(at - by));
        all.push(limit);
        all.extend(of(at + by));
    }
    sorted(all, number)
}

/// Nothing seen, and each thing that can be seen, there and not there. A set-up is on its patient, and whether its device has
/// a bag the book says.
fn seen() -> Vec<Option<(Fact, bool)>> {
    let facts = Fact::ALL
        .iter()
        .filter(|fact| !matches!(fact, Fact::DeviceOnPatient | Fact::DeviceHasReservoir));
    let both = facts.flat_map(|fact| [Some((*fact, true)), Some((*fact, false))]);
    core::iter::once(None).chain(both).collect()
}
