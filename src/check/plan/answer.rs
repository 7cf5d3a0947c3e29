//! The answer to a plan.

use alloc::vec::Vec;

use super::{
    NoPlan, OnBoard, Order, Plan,
    gas::{self, Tank},
    walk::{self, Stretch, Walked},
};
use crate::book::{Cylinder, Device, Rulebook};
use crate::quantity::{Flow, Gauge, Pressure, Range, Temperature};

/// Whether the gas is enough, and how it is used.
///
/// Minutes run from the start of the plan in the time expected, without the margin, unless a field says otherwise.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer<'b> {
    /// Whether the gas lasts through all legs with the book's planning margin.
    pub enough: bool,
    /// Whether it lasts through all legs without the margin.
    pub enough_without_margin: bool,
    /// What the legs need with the margin.
    pub needed_litres: f64,
    /// What the legs need without the margin.
    pub expected_litres: f64,
    /// How long the legs take with the margin.
    pub needed_minutes: f64,
    /// How long the legs take without the margin.
    pub expected_minutes: f64,
    /// Beyond the margin: whole minutes at the flow of the last leg on which gas flows, rounded down. 0 when it isn't
    /// enough.
    pub spare_minutes: u32,
    /// Beyond the margin: litres that the cylinders can still give in this order. 0 when it isn't enough.
    pub spare_litres: f64,
    /// What lacks to the legs with the margin: whole minutes, rounded up. 0 when it is enough.
    pub short_minutes: u32,
    /// What lacks to the legs with the margin. 0 when it is enough.
    pub short_litres: f64,
    /// Where the gas runs out with the margin.
    pub breaks: Option<Break>,
    /// Where it runs out even without the margin.
    pub breaks_without_margin: Option<Break>,
    /// Which cylinder is on when; to where the gas runs out.
    pub segments: Vec<Segment>,
    /// When the cylinder is changed.
    pub change_overs: Vec<ChangeOver>,
    /// What is left in each cylinder at the end, in the order of the plan.
    pub left: Vec<Left<'b>>,
    /// The cylinder that may be used to the residual pressure, once no other is left.
    pub last: usize,
    /// In which order the cylinders are used.
    pub order: Order,
    /// The temperature at which the gauges are taken as read.
    pub read_at: Temperature,
    /// Whether that temperature was assumed.
    pub read_at_assumed: bool,
    /// What speaks against the plan besides its gas.
    pub cautions: Vec<Caution<'b>>,
}

/// Where the gas runs out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Break {
    /// The leg, counted from 0.
    pub leg: usize,
    /// Minutes from the start: lengthened by the margin where that is in question.
    pub at_minutes: f64,
}

/// A time during which leg and cylinder stay the same.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// The leg, counted from 0.
    pub leg: usize,
    /// When it begins.
    pub from_minutes: f64,
    /// When it ends.
    pub to_minutes: f64,
    /// The cylinder that is on, counted from 0; none before the first is used.
    pub cylinder: Option<usize>,
    /// What flows.
    pub litres_per_minute: f64,
    /// What the gauge shows at the least when it begins; 0 where no cylinder is on.
    pub pressure_before: Pressure<Gauge>,
    /// What the gauge shows at the least when it ends; 0 where no cylinder is on.
    pub pressure_after: Pressure<Gauge>,
    /// What the cylinder can then still give on this leg, before it is changed.
    pub usable_litres: f64,
}

/// A change of cylinder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChangeOver {
    /// When it comes.
    pub at_minutes: f64,
    /// The leg on which it comes, counted from 0.
    pub leg: usize,
    /// The cylinder taken off, counted from 0.
    pub from: usize,
    /// The cylinder put on, counted from 0.
    pub to: usize,
}

/// What is left in a cylinder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Left<'b> {
    /// Its size.
    pub cylinder: &'b Cylinder,
    /// What it gave.
    pub used_litres: f64,
    /// What its gauge shows at the least.
    pub pressure: Pressure<Gauge>,
    /// The gas above the residual pressure.
    pub usable_litres: f64,
}

/// What speaks against a plan besides its gas.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Caution<'b> {
    /// A flow that the book doesn't give for the device.
    FlowOutside {
        /// The leg, counted from 0.
        leg: usize,
        /// The device.
        device: &'b Device,
        /// The flow.
        flow: Flow,
        /// What the book gives in general; a flow beyond it is right, if at all, only for a group the book names apart.
        range: Range<Flow>,
    },
    /// A cylinder filled above its limit.
    Overfilled {
        /// The cylinder, counted from 0.
        cylinder: usize,
        /// Its limit.
        most: Pressure<Gauge>,
    },
    /// A cylinder at a reading at which the book puts none into service.
    BelowInServiceMinimum {
        /// The cylinder, counted from 0.
        cylinder: usize,
        /// The book's minimum.
        minimum: Pressure<Gauge>,
    },
    /// A leg at a temperature at which the book doesn't let cylinders be used.
    OutsideUseTemperature {
        /// The leg, counted from 0.
        leg: usize,
        /// Its temperature.
        temperature: Temperature,
        /// The book's range.
        range: Range<Temperature>,
    },
}

impl Caution<'_> {
    /// Whether the answer can't be relied on while it stands: a reading, a flow or a temperature that can't be right.
    #[must_use]
    pub const fn spoils_the_answer(&self) -> bool {
        !matches!(self, Self::BelowInServiceMinimum { .. })
    }
}

impl<'b> Answer<'b> {
    /// Whether there is enough, and no caution says that the answer rests on something that can't be right.
    #[must_use]
    pub fn can_be_relied_on(&self) -> bool {
        self.enough && !self.cautions.iter().any(Caution::spoils_the_answer)
    }

    /// Answers a plan by a book.
    ///
    /// # Errors
    ///
    /// [`NoPlan`] when there are no legs, no cylinders or no flow, when an identifier is another book's, and when the
    /// density of oxygen isn't known at a reading or a temperature (-40 to 60 °C, to 300 bar).
    pub fn to(book: &'b Rulebook, plan: &Plan, order: Order) -> Result<Self, NoPlan> {
        let prepared = Prepared::new(book, plan)?;
        let tanks = prepared.tanks(&plan.cylinders)?;
        let (mut last, mut with_margin) = walk::best(&tanks, &prepared.with_margin, order);
        let mut expected = walk::walk(&tanks, &prepared.expected, order, last);
        if with_margin.broken.is_some() && expected.broken.is_some() {
            // Not enough either way that was best with the margin: tell the order that is best without it.
            (last, expected) = walk::best(&tanks, &prepared.expected, order);
            with_margin = walk::walk(&tanks, &prepared.with_margin, order, last);
        }
        let mut answer = Self::of(&prepared, last, &with_margin, &expected, order);
        answer.cautions = prepared.cautions(plan)?;
        answer.tell(&prepared, &tanks, &expected)?;
        Ok(answer)
    }

    fn of(
        prepared: &Prepared<'_>,
        last: usize,
        with_margin: &Walked,
        expected: &Walked,
        order: Order,
    ) -> Self {
        // Where legs differ in temperature, less use could meet the cold on another cylinder: both must last.
        let is_worse = with_margin.broken.is_none() && expected.broken.is_some();
        let with_margin = if is_worse { expected } else { with_margin };
        let enough = with_margin.broken.is_none();
        let total = |legs: &[Stretch]| -> (f64, f64) {
            legs.iter().fold((0.0, 0.0), |(minutes, litres), leg| {
                (minutes + leg.minutes, litres + leg.minutes * leg.per_minute)
            })
        };
        let (needed_minutes, needed_litres) = total(&prepared.with_margin);
        let (expected_minutes, expected_litres) = total(&prepared.expected);
        let given: f64 = with_margin.used.iter().sum();
        let at_last = prepared.expected.iter().rev().find(|leg| leg.per_minute > 0.0);
        let per_minute = at_last.map_or(f64::INFINITY, |leg| leg.per_minute);
        let breaks = |walked: &Walked| {
            walked.broken.map(|leg| Break {
                leg,
                at_minutes: walked.minutes,
            })
        };
        Self {
            enough,
            enough_without_margin: expected.broken.is_none(),
            needed_litres,
            expected_litres,
            needed_minutes,
            expected_minutes,
            // `as` rounds down.
            spare_minutes: if enough {
                (with_margin.spare / per_minute) as u32
            } else {
                0
            },
            spare_litres: if enough { with_margin.spare } else { 0.0 },
            short_minutes: if enough {
                0
            } else {
                up(needed_minutes - with_margin.minutes).max(1)
            },
            short_litres: if enough {
                0.0
            } else {
                (needed_litres - given).max(0.0)
            },
            breaks: breaks(with_margin),
            breaks_without_margin: breaks(expected),
            segments: Vec::new(),
            change_overs: Vec::new(),
            left: Vec::new(),
            last,
            order,
            read_at: prepared.read_at,
            read_at_assumed: prepared.read_at_assumed,
            cautions: Vec::new(),
        }
    }

    /// Tells the time expected: segments, change-overs, what is left.
    fn tell(&mut self, prepared: &Prepared<'_>, tanks: &[Tank<'b>], expected: &Walked) -> Result<(), NoPlan> {
        let mut from_minutes = 0.0;
        let mut before: Option<usize> = None;
        for piece in &expected.pieces {
            let temperature = prepared.temperature(piece.leg);
            let to_minutes = from_minutes + piece.minutes;
            let (mut pressures, mut usable_litres) = ((Pressure::ZERO, Pressure::ZERO), 0.0);
            if let Some((index, tank)) = piece.cylinder.and_then(|index| Some((index, tanks.get(index)?))) {
                let drawn = piece.minutes * piece.per_minute;
                pressures = (
                    tank.pressure((piece.used - drawn).max(0.0), temperature)?,
                    tank.pressure(piece.used, temperature)?,
                );
                usable_litres = (tank.budget(piece.leg).of(index == self.last) - piece.used).max(0.0);
                if let Some(from) = before.filter(|before| *before != index) {
                    self.change_overs.push(ChangeOver {
                        at_minutes: from_minutes,
                        leg: piece.leg,
                        from,
                        to: index,
                    });
                }
                before = Some(index);
            }
            self.segments.push(Segment {
                leg: piece.leg,
                from_minutes,
                to_minutes,
                cylinder: piece.cylinder,
                litres_per_minute: piece.per_minute,
                pressure_before: pressures.0,
                pressure_after: pressures.1,
                usable_litres,
            });
            from_minutes = to_minutes;
        }
        let end = prepared.expected.len().saturating_sub(1);
        for (tank, used) in tanks.iter().zip(&expected.used) {
            self.left.push(Left {
                cylinder: tank.cylinder,
                used_litres: *used,
                pressure: tank.pressure(*used, prepared.temperature(end))?,
                usable_litres: (tank.budget(end).to_residual - used).max(0.0),
            });
        }
        Ok(())
    }
}

/// Whole minutes, rounded up.
fn up(minutes: f64) -> u32 {
    let whole = minutes as u32;
    if f64::from(whole) < minutes {
        whole.saturating_add(1)
    } else {
        whole
    }
}

/// A plan with its legs as the walk needs them.
pub struct Prepared<'b> {
    pub book: &'b Rulebook,
    pub expected: Vec<Stretch>,
    pub with_margin: Vec<Stretch>,
    temperatures: Vec<Temperature>,
    pub read_at: Temperature,
    read_at_assumed: bool,
}

impl<'b> Prepared<'b> {
    pub fn new(book: &'b Rulebook, plan: &Plan) -> Result<Self, NoPlan> {
        if plan.legs.is_empty() {
            return Err(NoPlan::NoLegs);
        }
        let lengthened = 1.0 + book.policies.planning_margin.as_percent() / 100.0;
        let stretch = |by: f64| -> Vec<Stretch> {
            let one = |leg: &super::Leg| Stretch {
                minutes: leg.minutes() * by,
                per_minute: leg.litres_per_minute(),
            };
            plan.legs.iter().map(one).collect()
        };
        let expected = stretch(1.0);
        if !expected
            .iter()
            .any(|leg| leg.per_minute > 0.0 && leg.minutes > 0.0)
        {
            return Err(NoPlan::NoFlow);
        }
        Ok(Self {
            book,
            expected,
            with_margin: stretch(lengthened),
            temperatures: gas::temperatures(plan),
            read_at: gas::read_at(plan),
            read_at_assumed: plan.read_at.is_none(),
        })
    }

    pub fn tanks(&self, cylinders: &[OnBoard]) -> Result<Vec<Tank<'b>>, NoPlan> {
        if cylinders.is_empty() {
            return Err(NoPlan::NoCylinders);
        }
        cylinders
            .iter()
            .map(|one| self.tank(*one, self.read_at))
            .collect()
    }

    pub fn tank(&self, one: OnBoard, read_at: Temperature) -> Result<Tank<'b>, NoPlan> {
        Tank::new(self.book, one, read_at, &self.temperatures)
    }

    fn temperature(&self, leg: usize) -> Temperature {
        self.temperatures.get(leg).copied().unwrap_or(self.read_at)
    }

    fn cautions(&self, plan: &Plan) -> Result<Vec<Caution<'b>>, NoPlan> {
        let policies = &self.book.policies;
        let mut found = Vec::new();
        for (index, leg) in plan.legs.iter().enumerate() {
            for patient in &leg.uses {
                let Some(id) = patient.device else { continue };
                let device = self.book.device(id).ok_or(NoPlan::NotThisBook)?;
                // A plan knows no group: a flow that is right for some group alone is worth a caution.
                if !device.flow.holds(patient.flow) {
                    found.push(Caution::FlowOutside {
                        leg: index,
                        device,
                        flow: patient.flow,
                        range: device.flow,
                    });
                }
            }
            let range = policies.use_temperature;
            if let Some(temperature) = leg.temperature.filter(|temperature| !range.holds(*temperature)) {
                found.push(Caution::OutsideUseTemperature {
                    leg: index,
                    temperature,
                    range,
                });
            }
        }
        for (index, one) in plan.cylinders.iter().enumerate() {
            let cylinder = self.book.cylinder(one.size).ok_or(NoPlan::NotThisBook)?;
            let most = self.book.filled_at_most(cylinder);
            if one.pressure > most {
                found.push(Caution::Overfilled {
                    cylinder: index,
                    most,
                });
            }
            let minimum = policies.in_service_minimum;
            if one.pressure < minimum {
                found.push(Caution::BelowInServiceMinimum {
                    cylinder: index,
                    minimum,
                });
            }
        }
        Ok(found)
    }
}
