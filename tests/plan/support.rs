//! Plans in a line.

use oxyfolio::{
    RULEBOOK,
    book::{CylinderId, Rulebook},
    check::plan::{Answer, Leg, OnBoard, Order, Plan, Use},
    quantity::{Flow, Percent, Pressure, Temperature, Time},
};

/// The demo book with another planning margin.
pub fn book(margin: f64) -> Rulebook {
    let mut book = RULEBOOK.clone();
    book.policies.planning_margin = Percent::new(margin).unwrap();
    book
}

pub fn psi(value: f64) -> Pressure<oxyfolio::quantity::Gauge> {
    Pressure::psi(value).unwrap()
}

pub fn flow(value: f64) -> Flow {
    Flow::litres_per_minute(value).unwrap()
}

pub fn celsius(value: f64) -> Temperature {
    Temperature::celsius(value).unwrap()
}

pub fn minutes(value: f64) -> Time {
    Time::minutes(value).unwrap()
}

/// A leg with one patient.
pub fn leg(time: f64, litres: f64) -> Leg {
    Leg::new("leg", minutes(time)).uses(Use {
        device: None,
        flow: flow(litres),
        drive_gas: Flow::ZERO,
    })
}

pub fn plan(legs: &[(f64, f64)], cylinders: &[(CylinderId, f64)]) -> Plan {
    Plan {
        legs: legs.iter().map(|(time, litres)| leg(*time, *litres)).collect(),
        cylinders: cylinders
            .iter()
            .map(|(size, reading)| OnBoard::new(*size, psi(*reading)))
            .collect(),
        read_at: None,
    }
}

pub fn answer<'b>(book: &'b Rulebook, plan: &Plan, order: Order) -> Answer<'b> {
    Answer::to(book, plan, order).unwrap()
}

pub fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-6, "{found} is not {expected}");
}
