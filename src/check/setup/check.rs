//! The checks of a set-up, one after the other.

use core::marker::PhantomData;

use super::{
    super::{
        duration::{self, GaugeReading, NoDuration, Supply},
        finding::{About, Finding, Level, Missing, Next},
    },
    Setup, target,
};
use crate::book::{
    CheckedPolicy, DeviceFlow, DeviceRules, Fact, HazardId, Rules, Saturation, Subject, TargetRules,
};
use crate::guard::{Evaluator, HazardSet, Observed, Truth};
use crate::quantity::{Flow, Gauge, Percent, Pressure, Range, Side, Time, bounds};

/// A set-up being checked.
pub struct Check<'b, 'a, 's, R: Rules<'b>, V> {
    pub rules: R,
    pub setup: &'a Setup<'s>,
    pub device: R::Device,
    pub visit: V,
    pub book: PhantomData<&'b ()>,
}

impl<'b, 's, R: Rules<'b>, V: FnMut(Finding<'b>)> Check<'b, '_, 's, R, V> {
    // Once in a program, and not at every check: what a visitor does may be long.
    #[inline(never)]
    fn find(&mut self, level: Level, subject: Subject, about: About<'b>) {
        (self.visit)(Finding {
            level,
            kind: subject.kind(),
            rule: self.rules.cite(subject),
            about,
            pressure_unit: self.rules.pressure_unit(),
        });
    }

    fn missing(&mut self, subject: Subject, missing: Missing) {
        self.find(Level::Unknown, subject, About::Missing(missing));
    }

    /// A finding about a policy; policies the checker needs are always in the book.
    fn policy(&mut self, level: Level, policy: CheckedPolicy, about: About<'b>) {
        self.find(level, Subject::Policy(policy), about);
    }

    /// The device against the group and the flow.
    pub fn device(&mut self) {
        let (id, device, flow) = (self.setup.device, self.device, self.setup.flow);
        let subject = Subject::Device(id);
        let range = match self.setup.group {
            Some(group) => {
                if !device.fits(group) {
                    let about = About::DeviceDoesNotFit {
                        device: id,
                        group: self.rules.group_name(group).unwrap_or_default(),
                    };
                    self.find(Level::Stop, subject, about);
                }
                device.flow_for(group)
            }
            None => {
                self.missing(subject, Missing::Group);
                device.flow()
            }
        };
        let on_air = flow == Flow::ZERO && self.setup.group.is_some_and(|group| device.gives_air(group));
        let about = match range.side(flow) {
            Side::Inside => return,
            Side::Below if on_air => return,
            Side::Below => About::FlowTooLow {
                device: id,
                flow,
                range,
            },
            Side::Above => About::FlowTooHigh {
                device: id,
                flow,
                range,
            },
        };
        self.find(Level::Stop, subject, about);
    }

    /// The cylinder and its gas. Gives how long the gas lasts, where that is known.
    pub fn cylinder(&mut self) -> Option<u32> {
        let policies = self.rules.limits();
        match self.setup.temperature {
            None => self.policy(
                Level::Unknown,
                CheckedPolicy::UseTemperature,
                About::Missing(Missing::Temperature),
            ),
            Some(temperature) if !policies.use_temperature.holds(temperature) => self.policy(
                Level::Warn,
                CheckedPolicy::UseTemperature,
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
        let known = self
            .setup
            .cylinder
            .and_then(|id| Some((id, self.rules.cylinder(id)?)));
        let Some((id, cylinder)) = known else {
            self.missing(Subject::Agency, Missing::Cylinder);
            return None;
        };
        let subject = Subject::Cylinder(id);
        let Some(pressure) = self.setup.pressure else {
            self.missing(subject, Missing::Pressure);
            return None;
        };
        let service = cylinder.service_pressure;
        let most = cylinder.filled_at_most(policies.fill_limit);
        if pressure > most {
            let about = About::Overfilled { pressure, most };
            self.find(Level::Warn, subject, about);
        } else if pressure > service {
            let about = About::AboveServicePressure { pressure, service };
            self.find(Level::Note, subject, about);
        }
        let temperature = self.setup.temperature.unwrap_or(duration::USUAL_TEMPERATURE);
        let lasts = Supply::new(cylinder.water_capacity, policies.residual_pressure)
            .factor(cylinder.factor)
            .temperature(temperature)
            .lasts(pressure, self.setup.flow);
        match lasts {
            Ok(lasts) => {
                if lasts.gauge != GaugeReading::Fair {
                    let about = About::GaugeMisleads {
                        gauge: lasts.gauge,
                        temperature,
                    };
                    self.find(Level::Note, subject, about);
                }
                self.minutes(lasts.minutes, subject);
                Some(lasts.minutes)
            }
            Err(NoDuration::OutsideDomain(_)) => {
                self.missing(subject, Missing::Density);
                None
            }
            // No flow is below every device's range and was found there.
            Err(_) => None,
        }
    }

    fn pressure(&mut self, pressure: Pressure<Gauge>) {
        let policies = self.rules.limits();
        if pressure < policies.residual_pressure {
            let residual = policies.residual_pressure;
            self.policy(
                Level::Stop,
                CheckedPolicy::ResidualPressure,
                About::BelowResidual { pressure, residual },
            );
        } else if pressure <= policies.change_over_pressure {
            let change_over = policies.change_over_pressure;
            self.policy(
                Level::Warn,
                CheckedPolicy::ChangeOverPressure,
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
                CheckedPolicy::InServiceMinimum,
                About::BelowInServiceMinimum { pressure, minimum },
            );
        }
    }

    fn minutes(&mut self, minutes_left: u32, cylinder: Subject) {
        self.find(Level::Note, cylinder, About::MinutesLeft { minutes_left });
        let Some(wanted) = self.setup.minutes_wanted else {
            self.policy(
                Level::Unknown,
                CheckedPolicy::PlanningMargin,
                About::Missing(Missing::MinutesWanted),
            );
            return;
        };
        let wanted = wanted.as_minutes();
        let margin = self.rules.limits().planning_margin.as_percent() / 100.0;
        let with_margin = wanted * (1.0 + margin);
        let left = f64::from(minutes_left);
        if left < wanted {
            self.policy(
                Level::Stop,
                CheckedPolicy::PlanningMargin,
                About::TooShort { minutes_left, wanted },
            );
        } else if left < with_margin {
            self.policy(
                Level::Warn,
                CheckedPolicy::PlanningMargin,
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
        let (id, target) = match target::choose(self.rules, self.setup) {
            Ok(target) => target,
            // The missing group was found with the device.
            Err(Missing::Group) => return None,
            Err(missing) => {
                self.missing(Subject::Agency, missing);
                if missing == Missing::ConditionTarget {
                    self.very_low();
                }
                return None;
            }
        };
        let subject = Subject::Target(id);
        let range = match target.saturation() {
            Saturation::NotReliable => {
                self.find(Level::Note, subject, About::SaturationNotReliable { target: id });
                return None;
            }
            Saturation::Range(range) => range,
        };
        let Some(spo2) = self.setup.saturation() else {
            // What was given and can't be one was found already.
            if self.setup.spo2.is_none() {
                self.missing(subject, Missing::Saturation);
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
                let urgent = target.urgent().filter(|urgent| spo2 < urgent.below);
                let next = urgent
                    .map(|urgent| urgent.start)
                    .filter(|start| *start != current)
                    .or_else(|| target::rung_above(target.ladder(), current));
                let next = next.and_then(|next| self.named(next));
                let about = About::BelowTarget {
                    spo2,
                    target: id,
                    range,
                    next,
                    ventilated: self.device.ventilates(),
                };
                let level = if urgent.is_some() {
                    Level::Stop
                } else {
                    Level::Warn
                };
                self.find(level, subject, about);
            }
            Side::Above => {
                let next = target::rung_below(target.ladder(), current).and_then(|next| self.named(next));
                let about = About::AboveTarget {
                    spo2,
                    target: id,
                    range,
                    next,
                    ventilated: self.device.ventilates(),
                };
                self.find(Level::Warn, subject, about);
            }
        }
        Some(range)
    }

    /// Whether the saturation given can be one, whatever the target.
    fn saturation(&mut self) {
        let given = self.setup.spo2.map(Percent::as_percent);
        if let Some(Err(error)) = given.map(|percent| bounds::SATURATION.accept(percent)) {
            let about = About::SaturationOutOfBounds(error);
            self.find(Level::Unknown, Subject::Agency, about);
        }
    }

    /// Where no target can be chosen because of a condition, a reading that is very low for the group in general is
    /// still a stop. Nothing is said of stepping down.
    fn very_low(&mut self) {
        let (Some(group), Some(spo2)) = (self.setup.group, self.setup.saturation()) else {
            return;
        };
        let Ok((id, target)) = target::general(self.rules, self.setup, group) else {
            return;
        };
        let Saturation::Range(range) = target.saturation() else {
            return;
        };
        let level = match target.urgent() {
            Some(urgent) if spo2 < urgent.below => Level::Stop,
            None if range.side(spo2) == Side::Below => Level::Warn,
            _ => return,
        };
        let about = About::BelowTarget {
            spo2,
            target: id,
            range,
            next: None,
            ventilated: self.device.ventilates(),
        };
        self.find(level, Subject::Target(id), about);
    }

    /// The next device and flow. A patient ventilated by hand is not moved to a device that only gives gas because of a
    /// reading.
    fn named(&self, DeviceFlow { device, flow }: DeviceFlow) -> Option<Next<'b>> {
        let ventilates = self.rules.device(device)?.ventilates();
        (!self.device.ventilates() || ventilates).then(|| Next {
            device,
            rule: self.rules.cite(Subject::Device(device)),
            flow,
        })
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
            self.hazard(id, broken.truth(id));
        }
        for id in super::past_any_set(self.rules) {
            self.hazard(id, evaluator.evaluate(id, observed));
        }
        broken.unknown
    }

    fn hazard(&mut self, hazard: HazardId, answer: Truth) {
        let Some(severity) = self.rules.severity(hazard) else {
            return;
        };
        let (level, about) = match answer {
            Truth::True => (severity.into(), About::Hazard(hazard)),
            Truth::Unknown if !self.rules.depends_on_equipment(hazard) => {
                (Level::Unknown, About::HazardUnknown(hazard))
            }
            Truth::Unknown | Truth::False => return,
        };
        self.find(level, Subject::Hazard(hazard), about);
    }
}
