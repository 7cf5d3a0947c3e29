//! What each cylinder can give on each leg.

use alloc::vec::Vec;

use super::{super::duration::USUAL_TEMPERATURE, NoPlan, OnBoard, Plan};
use crate::book::{Cylinder, Rulebook};
use crate::oxygen::{Contents, MARGIN};
use crate::quantity::{Gauge, Pressure, Temperature};

/// A cylinder with what it can give.
pub struct Tank<'b> {
    pub cylinder: &'b Cylinder,
    /// What its gauge showed.
    reading: Pressure<Gauge>,
    /// What it held then, in litres.
    held: f64,
    /// For each leg: litres down to the change-over pressure and down to the residual pressure.
    budgets: Vec<Budget>,
}

/// Litres that a full-of-its-reading cylinder can give on a leg.
#[derive(Clone, Copy, Default)]
pub struct Budget {
    pub to_change_over: f64,
    pub to_residual: f64,
}

impl Budget {
    pub const fn of(self, is_last: bool) -> f64 {
        if is_last {
            self.to_residual
        } else {
            self.to_change_over
        }
    }
}

impl<'b> Tank<'b> {
    pub fn new(
        book: &'b Rulebook,
        on_board: OnBoard,
        read_at: Temperature,
        temperatures: &[Temperature],
    ) -> Result<Self, NoPlan> {
        let cylinder = book.cylinder(on_board.size).ok_or(NoPlan::NotThisBook)?;
        let reading = on_board.pressure;
        let held = Contents::new(cylinder.water_capacity, read_at)?.at(reading)?;
        let residual = book.policies.residual_pressure;
        let change_over = book.policies.change_over_pressure;
        // A change below the residual pressure would use what is never counted.
        let change_over = if change_over < residual {
            residual
        } else {
            change_over
        };
        let mut budgets: Vec<Budget> = Vec::with_capacity(temperatures.len());
        let mut before: Option<(Temperature, Budget)> = None;
        for temperature in temperatures {
            let budget = match before {
                Some((same, budget)) if same == *temperature => budget,
                _ => {
                    let contents = Contents::new(cylinder.water_capacity, *temperature)?;
                    let above = |floor: Pressure<Gauge>| -> Result<f64, NoPlan> {
                        let by_density = (held - contents.at(floor)?) * (1.0 - MARGIN);
                        let factor = cylinder.factor;
                        let by_factor =
                            factor.contents(reading).as_litres() - factor.contents(floor).as_litres();
                        Ok(by_density.min(by_factor).max(0.0))
                    };
                    Budget {
                        to_change_over: above(change_over)?,
                        to_residual: above(residual)?,
                    }
                }
            };
            before = Some((*temperature, budget));
            budgets.push(budget);
        }
        Ok(Self {
            cylinder,
            reading,
            held,
            budgets,
        })
    }

    pub fn budget(&self, leg: usize) -> Budget {
        self.budgets.get(leg).copied().unwrap_or_default()
    }

    /// Whether another one gives the same on every leg.
    pub fn is_like(&self, other: &Self) -> bool {
        core::ptr::eq(self.cylinder, other.cylinder)
            && self.reading == other.reading
            && self.held.to_bits() == other.held.to_bits()
    }

    /// What the gauge shows at the least after some litres were used: the lower of both methods.
    pub fn pressure(&self, used: f64, temperature: Temperature) -> Result<Pressure<Gauge>, NoPlan> {
        let contents = Contents::new(self.cylinder.water_capacity, temperature)?;
        let left = self.held - used / (1.0 - MARGIN);
        let all = self.cylinder.factor.contents(self.reading).as_litres();
        let share = if all > 0.0 {
            (1.0 - used / all).max(0.0)
        } else {
            0.0
        };
        let (mut low, mut high) = (0.0, self.reading.as_pascals() * share);
        if contents.at(Pressure::tabled(high))? <= left {
            return Ok(Pressure::tabled(high));
        }
        for _ in 0..40 {
            let middle = f64::midpoint(low, high);
            if contents.at(Pressure::tabled(middle))? <= left {
                low = middle;
            } else {
                high = middle;
            }
        }
        Ok(Pressure::tabled(low))
    }
}

/// The temperature at which the gauges are taken as read.
pub fn read_at(plan: &Plan) -> Temperature {
    plan.read_at.unwrap_or_else(|| {
        let legs = plan.legs.iter().filter_map(|leg| leg.temperature);
        legs.fold(
            USUAL_TEMPERATURE,
            |hottest, leg| if leg > hottest { leg } else { hottest },
        )
    })
}

/// The temperature of each leg.
pub fn temperatures(plan: &Plan) -> Vec<Temperature> {
    let otherwise = plan.read_at.unwrap_or(USUAL_TEMPERATURE);
    plan.legs
        .iter()
        .map(|leg| leg.temperature.unwrap_or(otherwise))
        .collect()
}
