//! The optimum against trying every order, worked out a second way: in litres, from the duration code.

use oxyfolio::{
    RULEBOOK,
    book::{CylinderId, Rulebook},
    check::duration::Supply,
    check::plan::{Order, fewest_to_add},
    cylinder,
};
use proptest::prelude::*;

use super::support::{answer, book, flow, plan, psi};

pub const SIZES: [CylinderId; 4] = [cylinder::D, cylinder::E, cylinder::METRIC_3_L, cylinder::M];

/// Litres to the change-over pressure and to the residual pressure.
fn gas(book: &Rulebook, (size, reading): (CylinderId, f64)) -> (f64, f64) {
    let supply = Supply::of(book, book.cylinder(size).unwrap());
    let down_to = |supply: Supply| supply.lasts(psi(reading), flow(1.0)).unwrap().usable.as_litres();
    (
        down_to(supply.residual(book.policies.change_over_pressure)),
        down_to(supply),
    )
}

/// For every order of the cylinders: litres in all, and the changes before `need` litres are drawn.
fn every_order(gas: &[(f64, f64)], need: f64) -> Vec<(f64, Option<usize>)> {
    fn orders(left: Vec<usize>, before: Vec<usize>, all: &mut Vec<Vec<usize>>) {
        if left.is_empty() {
            all.push(before);
            return;
        }
        for next in &left {
            let rest = left.iter().copied().filter(|one| one != next).collect();
            orders(rest, [&before[..], &[*next]].concat(), all);
        }
    }
    let mut all = Vec::new();
    orders((0..gas.len()).collect(), Vec::new(), &mut all);
    all.iter()
        .map(|order| {
            let (mut drawn, mut on, mut enough) = (0.0, 0_usize, None);
            for (place, index) in order.iter().enumerate() {
                let is_last = place + 1 == order.len();
                let litres = if is_last { gas[*index].1 } else { gas[*index].0 };
                if litres <= 0.0 {
                    continue;
                }
                on += 1;
                drawn += litres;
                if enough.is_none() && drawn >= need {
                    enough = Some(on - 1);
                }
            }
            (drawn, enough)
        })
        .collect()
}

fn stock(most: usize) -> impl Strategy<Value = Vec<(CylinderId, f64)>> {
    let one = (
        0..SIZES.len(),
        prop_oneof![Just(2000.0), Just(1500.0), 150.0..2100.0],
    );
    proptest::collection::vec(one.prop_map(|(size, reading)| (SIZES[size], reading)), 1..=most)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn no_order_lasts_longer_or_needs_fewer_changes(
        cylinders in stock(5),
        legs in proptest::collection::vec((1.0..60.0, 1.0..25.0), 1..4),
    ) {
        let book = book(0.0);
        let need: f64 = legs.iter().map(|(time, litres): &(f64, f64)| time * litres).sum();
        let gas: Vec<(f64, f64)> = cylinders.iter().map(|one| gas(&book, *one)).collect();
        let tried = every_order(&gas, need);
        let most = tried.iter().map(|(litres, _)| *litres).fold(0.0, f64::max);
        prop_assume!(tried.iter().all(|(litres, _)| (litres - need).abs() > 1e-6));
        let found = answer(&book, &plan(&legs, &cylinders), Order::FewestChanges);
        prop_assert_eq!(found.enough, most >= need);
        if found.enough {
            let fewest = tried.iter().filter_map(|(_, changes)| *changes).min();
            prop_assert_eq!(Some(found.change_overs.len()), fewest);
        } else {
            prop_assert!((found.short_litres - (need - most)).abs() < 1e-6);
        }
        // Another order can't be enough where this one isn't, and is where it is.
        prop_assert_eq!(answer(&book, &plan(&legs, &cylinders), Order::EmptiestFirst).enough, found.enough);
    }

    #[test]
    fn no_fewer_cylinders_added_are_enough(
        cylinders in stock(3),
        size in 0..SIZES.len(),
        time in 10.0..200.0,
        litres in 1.0..30.0,
    ) {
        let need = time * litres * 1.5;
        let full = (SIZES[size], RULEBOOK.cylinder(SIZES[size]).unwrap().service_pressure.as_psi());
        let most = |added: usize| {
            let all = [&cylinders[..], &vec![full; added][..]].concat();
            let gas: Vec<(f64, f64)> = all.iter().map(|one| gas(&RULEBOOK, *one)).collect();
            let changed: f64 = gas.iter().map(|(to_change, _)| to_change).sum();
            changed + gas.iter().map(|(change, residual)| residual - change).fold(0.0, f64::max)
        };
        let expected = (0..=100).find(|added| most(*added) >= need);
        prop_assume!((0..=100).all(|added| (most(added) - need).abs() > 1e-6));
        let plan = plan(&[(time, litres)], &cylinders);
        prop_assert_eq!(
            fewest_to_add(&RULEBOOK, &plan, Order::FewestChanges, SIZES[size]).unwrap(),
            expected
        );
    }
}
