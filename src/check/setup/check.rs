//! The checks of a set-up, one after the other.

use super::{
    super::{
        duration::{self, GaugeReading, NoDuration},
        finding::{About, Finding, Level, Missing},
    },
    Setup, target,
};
use crate::book::{Device, DeviceFlow, Fact, Hazard, Kind, Rule, Rulebook, Saturation};
use crate::guard::{self, Evaluator, HazardSet, Observed, Truth};
use crate::quantity::{Flow, Gauge, Percent, Pressure, Range, Side, Time, bounds};

/// A set-up being checked.
pub struct Check<'b, 'a, 's, V> {
    pub book: &'b Rulebook,
    pub setup: &'a Setup<'s>,
    pub device: &'b Device,
    pub visit: V,
}

impl<'b, 's, V: FnMut(Finding<'b>)> Check<'b, '_, 's, V> {
    fn find(&mut self, level: Level, kind: Kind, rule: &'b Rule, about: About<'b>) {
        (self.visit)(Finding {
            level,
            kind,
            rule,
            about,
            pressure_unit: self.book.agency.pressure_unit,
        });
    }

    fn missing(&mut self, kind: Kind, rule: &'b Rule, missing: Missing) {
        self.find(Level::Unknown, kind, rule, About::Missing(missing));
    }

    /// A finding about a policy; policies the checker needs are always in the book.
    fn policy(&mut self, level: Level, id: &str, about: About<'b>) {
        let rule = self
            .book
            .policies
            .find(id)
            .map_or(&self.book.agency.rule, |policy| &policy.rule);
        self.find(level, Kind::Policy, rule, about);
    }

    /// The device against the group and the flow.
    pub fn device(&mut self) {
        let (device, flow) = (self.device, self.setup.flow);
        let range = match self.setup.group {
            Some(group) => {
                if !device.fits(group) {
                    let name = self.book.group(group).map_or("", |group| &*group.rule.name);
                    self.find(
                        Level::Stop,
                        Kind::Device,
                        &device.rule,
                        About::DeviceDoesNotFit { device, group: name },
                    );
                }
                device.flow_for(group)
            }
            None => {
                self.missing(Kind::Device, &device.rule, Missing::Group);
                device.flow
            }
        };
        let on_air = flow == Flow::ZERO
            && self
                .setup
                .group
                .is_some_and(|group| device.air_for.contains(&group));
        let about = match range.side(flow) {
            Side::Inside => return,
            Side::Below if on_air => return,
            Side::Below => About::FlowTooLow { device, flow, range },
            Side::Above => About::FlowTooHigh { device, flow, range },
        };
        self.find(Level::Stop, Kind::Device, &device.rule, about);
    }

    /// The cylinder and its gas. Gives how long the gas lasts, where that is known.
    pub fn cylinder(&mut self) -> Option<u32> {
        let policies = &self.book.policies;
        match self.setup.temperature {
            None => self.policy(
                Level::Unknown,
                "use-temperature",
                About::Missing(Missing::Temperature),
            ),
            Some(temperature) if !policies.use_temperature.holds(temperature) => self.policy(
                Level::Warn,
                "use-temperature",
                About::OutsideUseTemperature {
                    temperature,
                    range: policies.use_temperature,
                },
            ),
            Some(_) => {}
        }
        if let Some(pressure) = self.setup.pressure {
            self.pressure(pressure);
        }
        let Some(cylinder) = self.setup.cylinder.and_then(|id| self.book.cylinder(id)) else {
            self.missing(Kind::Agency, &self.book.agency.rule, Missing::Cylinder);
            return None;
        };
        let Some(pressure) = self.setup.pressure else {
            self.missing(Kind::Cylinder, &cylinder.rule, Missing::Pressure);
            return None;
        };
        let service = cylinder.service_pressure;
        let most = self.book.filled_at_most(cylinder);
        if pressure > most {
            let about = About::Overfilled { pressure, most };
            self.find(Level::Warn, Kind::Cylinder, &cylinder.rule, about);
        } else if pressure > service {
            let about = About::AboveServicePressure { pressure, service };
            self.find(Level::Note, Kind::Cylinder, &cylinder.rule, about);
        }
        let temperature = self.setup.temperature.unwrap_or(duration::USUAL_TEMPERATURE);
        let lasts = duration::of_cylinder_at(self.book, cylinder, pressure, temperature, self.setup.flow);
        match lasts {
            Ok(lasts) => {
                if lasts.gauge != GaugeReading::Fair {
                    let about = About::GaugeMisleads {
                        gauge: lasts.gauge,
                        temperature,
                    };
                    self.find(Level::Note, Kind::Cylinder, &cylinder.rule, about);
                }
                self.minutes(lasts.minutes, &cylinder.rule);
                Some(lasts.minutes)
            }
            Err(NoDuration::OutsideDomain(_)) => {
                self.missing(Kind::Cylinder, &cylinder.rule, Missing::Density);
                None
            }
            // No flow is below every device's range and was found there.
            Err(_) => None,
        }
    }

    fn pressure(&mut self, pressure: Pressure<Gauge>) {
        let policies = &self.book.policies;
        if pressure < policies.residual_pressure {
            let residual = policies.residual_pressure;
            self.policy(
                Level::Stop,
                "residual-pressure",
                About::BelowResidual { pressure, residual },
            );
        } else if pressure <= policies.change_over_pressure {
            let change_over = policies.change_over_pressure;
            self.policy(
                Level::Warn,
                "change-over-pressure",
                About::ChangeCylinder {
                    pressure,
                    change_over,
                },
            );
        } else if pressure < policies.in_service_minimum {
            let minimum = policies.in_service_minimum;
            // A cylinder that is giving oxygen may finish its call; it doesn't go into service again.
            let in_use = self.setup.facts.get(Fact::DeviceOnPatient) == Some(true);
            let level = if in_use { Level::Note } else { Level::Warn };
            self.policy(
                level,
                "in-service-minimum",
                About::BelowInServiceMinimum { pressure, minimum },
            );
        }
    }

    fn minutes(&mut self, minutes_left: u32, cylinder: &'b Rule) {
        self.find(
            Level::Note,
            Kind::Cylinder,
            cylinder,
            About::MinutesLeft { minutes_left },
        );
        let Some(wanted) = self.setup.minutes_wanted else {
            self.policy(
                Level::Unknown,
                "planning-margin",
                About::Missing(Missing::MinutesWanted),
            );
            return;
        };
        let wanted = wanted.as_minutes();
        let margin = self.book.policies.planning_margin.as_percent() / 100.0;
        let with_margin = wanted * (1.0 + margin);
        let left = f64::from(minutes_left);
        if left < wanted {
            self.policy(
                Level::Stop,
                "planning-margin",
                About::TooShort { minutes_left, wanted },
            );
        } else if left < with_margin {
            self.policy(
                Level::Warn,
                "planning-margin",
                About::NoMargin {
                    minutes_left,
                    with_margin,
                },
            );
        }
    }

    /// Finds the target that holds, compares the saturation, and gives what is aimed at.
    pub fn target(&mut self) -> Option<Range<Percent>> {
        self.saturation();
        let target = match target::choose(self.book, self.setup) {
            Ok(target) => target,
            // The missing group was found with the device.
            Err(Missing::Group) => return None,
            Err(missing) => {
                self.missing(Kind::Agency, &self.book.agency.rule, missing);
                if missing == Missing::ConditionTarget {
                    self.very_low();
                }
                return None;
            }
        };
        let range = match target.saturation {
            Saturation::NotReliable => {
                self.find(
                    Level::Note,
                    Kind::Target,
                    &target.rule,
                    About::SaturationNotReliable { target },
                );
                return None;
            }
            Saturation::Range(range) => range,
        };
        let Some(spo2) = self.setup.saturation() else {
            // What was given and can't be one was found already.
            if self.setup.spo2.is_none() {
                self.missing(Kind::Target, &target.rule, Missing::Saturation);
            }
            return Some(range);
        };
        let current = DeviceFlow {
            device: self.setup.device,
            flow: self.setup.flow,
        };
        match range.side(spo2) {
            Side::Inside => {}
            Side::Below => {
                let urgent = target.urgent.filter(|urgent| spo2 < urgent.below);
                let next = urgent
                    .map(|urgent| urgent.start)
                    .filter(|start| *start != current)
                    .or_else(|| target::rung_above(target, current));
                let next = next.and_then(|next| self.named(next));
                let about = About::BelowTarget {
                    spo2,
                    target,
                    range,
                    next,
                    ventilated: self.device.ventilates,
                };
                let level = if urgent.is_some() {
                    Level::Stop
                } else {
                    Level::Warn
                };
                self.find(level, Kind::Target, &target.rule, about);
            }
            Side::Above => {
                let next = target::rung_below(target, current).and_then(|next| self.named(next));
                let about = About::AboveTarget {
                    spo2,
                    target,
                    range,
                    next,
                    ventilated: self.device.ventilates,
                };
                self.find(Level::Warn, Kind::Target, &target.rule, about);
            }
        }
        Some(range)
    }

    /// Whether the saturation given can be one, whatever the target.
    fn saturation(&mut self) {
        let given = self.setup.spo2.map(Percent::as_percent);
        if let Some(Err(error)) = given.map(|percent| bounds::SATURATION.accept(percent)) {
            let about = About::SaturationOutOfBounds(error);
            self.find(Level::Unknown, Kind::Agency, &self.book.agency.rule, about);
        }
    }

    /// Where no target can be chosen because of a condition, a reading that is very low for the group in general is
    /// still a stop. Nothing is said of stepping down.
    fn very_low(&mut self) {
        let (Some(group), Some(spo2)) = (self.setup.group, self.setup.saturation()) else {
            return;
        };
        let Ok(target) = target::general(self.book, self.setup, group) else {
            return;
        };
        let Saturation::Range(range) = target.saturation else {
            return;
        };
        let level = match target.urgent {
            Some(urgent) if spo2 < urgent.below => Level::Stop,
            None if range.side(spo2) == Side::Below => Level::Warn,
            _ => return,
        };
        let ventilated = self.device.ventilates;
        let about = About::BelowTarget {
            spo2,
            target,
            range,
            next: None,
            ventilated,
        };
        self.find(level, Kind::Target, &target.rule, about);
    }

    /// The next device and flow. A patient ventilated by hand is not moved to a device that only gives gas because of a
    /// reading.
    fn named(&self, next: DeviceFlow) -> Option<(&'b Device, Flow)> {
        let device = self.book.device(next.device)?;
        (!self.device.ventilates || device.ventilates).then_some((device, next.flow))
    }

    /// What a set-up lets one observe.
    pub fn observed(&self, minutes_left: Option<u32>, target: Option<Range<Percent>>) -> Observed<'s> {
        let setup = self.setup;
        Observed {
            flow: Some(setup.flow),
            pressure: setup.pressure,
            temperature: setup.temperature,
            spo2: setup.saturation(),
            minutes_left: minutes_left.and_then(|minutes| Time::minutes(f64::from(minutes)).ok()),
            minutes_wanted: setup.minutes_wanted,
            device: Some(setup.device),
            group: setup.group,
            conditions: setup.conditions,
            target,
            facts: setup.facts,
        }
    }

    /// The hazards of the book. Gives those of which it can't be told, as far as a set holds them.
    pub fn hazards(&mut self, evaluator: &impl Evaluator<'b>, observed: &Observed<'_>) -> HazardSet {
        let broken = evaluator.broken(observed);
        for id in broken.there | broken.unknown {
            if let Some(hazard) = self.book.hazard(id) {
                self.hazard(hazard, broken.truth(id));
            }
        }
        for (id, hazard) in super::past_any_set(self.book) {
            self.hazard(hazard, evaluator.evaluate(id, observed));
        }
        broken.unknown
    }

    fn hazard(&mut self, hazard: &'b Hazard, answer: Truth) {
        let (level, about) = match answer {
            Truth::True => (hazard.severity.into(), About::Hazard(hazard)),
            Truth::Unknown if !guard::depends_on_equipment(&hazard.never) => {
                (Level::Unknown, About::HazardUnknown(hazard))
            }
            Truth::Unknown | Truth::False => return,
        };
        self.find(level, Kind::Hazard, &hazard.rule, about);
    }
}
