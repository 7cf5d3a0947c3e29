//! Quantities, ranges and rules of the book, made short for the tests.

use oxyfolio::RULEBOOK;
use oxyfolio::book::{
    Connection, ConnectionId, Cylinder, CylinderId, Device, DeviceId, Policy, PolicyId, Procedure,
    ProcedureId, Target, TargetId,
};
use oxyfolio::check::{Finding, Setup, check_setup};
use oxyfolio::quantity::{Flow, Gauge, Percent, Pressure, Range};

use super::facts::{Fact, fact, list};

pub fn psi(value: f64) -> Pressure<Gauge> {
    Pressure::psi(value).unwrap()
}

pub fn bar(value: f64) -> Pressure<Gauge> {
    Pressure::<Gauge>::bar(value).unwrap()
}

pub fn flow(value: f64) -> Flow {
    Flow::litres_per_minute(value).unwrap()
}

pub fn percent(value: f64) -> Percent {
    Percent::new(value).unwrap()
}

macro_rules! getters {
    ($($get:ident $id:ident $item:ident,)+) => {$(
        pub fn $get(id: $id) -> &'static $item {
            RULEBOOK.$get(id).unwrap()
        }
    )+};
}

getters! {
    connection ConnectionId Connection,
    cylinder CylinderId Cylinder,
    device DeviceId Device,
    policy PolicyId Policy,
    procedure ProcedureId Procedure,
    target TargetId Target,
}

/// Both ends of a range that has both.
pub fn ends<Q: Copy>(range: Range<Q>) -> (Q, Q) {
    (range.low.value().unwrap(), range.high.value().unwrap())
}

/// The ends of a range of flow, in L/min.
pub fn flow_ends(range: Range<Flow>) -> (f64, f64) {
    let (low, high) = ends(range);
    (low.as_litres_per_minute(), high.as_litres_per_minute())
}

/// The ends of a range of shares, in per cent.
pub fn percent_ends(range: Range<Percent>) -> (f64, f64) {
    let (low, high) = ends(range);
    (low.as_percent(), high.as_percent())
}

/// Asserts that a range of the book lies in the union of published ranges, without a gap.
pub fn assert_in_union(what: &str, (low, high): (f64, f64), ids: &[&str]) {
    let facts: Vec<Fact> = ids.iter().map(|id| fact(id)).collect();
    let mut reached = low;
    let covers = |point: f64| {
        facts
            .iter()
            .map(Fact::range)
            .filter(|(from, to)| *from <= point && *to >= point)
            .map(|(_, to)| to)
            .fold(None, |best: Option<f64>, to| {
                Some(best.map_or(to, |best| best.max(to)))
            })
    };
    loop {
        let Some(to) = covers(reached) else {
            panic!("{what}: {low} to {high} has {reached} outside {}", list(&facts));
        };
        if to >= high {
            return;
        }
        assert!(
            to > reached,
            "{what}: {low} to {high} goes beyond {to}, the most of {}",
            list(&facts)
        );
        reached = to;
    }
}

/// Whether two numbers agree within a share of the second.
pub fn agree(found: f64, published: f64, share: f64) -> bool {
    (found - published).abs() <= published.abs() * share
}

/// Everything the checker finds in a set-up.
pub fn findings(setup: &Setup<'_>) -> Vec<Finding<'static>> {
    let mut all = Vec::new();
    check_setup(&RULEBOOK, setup, |finding| all.push(finding)).unwrap();
    all
}
