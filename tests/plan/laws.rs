//! What holds for every plan.

use oxyfolio::{
    RULEBOOK,
    check::plan::{OnBoard, Order, Plan},
};
use proptest::prelude::*;

use super::{
    brute::SIZES,
    support::{answer, celsius, leg, psi},
};

fn order() -> impl Strategy<Value = Order> {
    prop_oneof![Just(Order::FewestChanges), Just(Order::EmptiestFirst)]
}

fn plans(at: impl Strategy<Value = Option<f64>> + Clone + 'static) -> impl Strategy<Value = Plan> {
    let legs = proptest::collection::vec((1.0..60.0, 0.0..25.0, at), 1..6);
    let cylinders = proptest::collection::vec((0..SIZES.len(), 0.0..2200.0), 1..7);
    (legs, cylinders, proptest::option::of(-20.0..45.0))
        .prop_map(|(legs, cylinders, read_at)| Plan {
            legs: legs
                .into_iter()
                .map(|(time, litres, at)| {
                    let mut leg = leg(time, litres);
                    leg.temperature = at.map(celsius);
                    leg
                })
                .collect(),
            cylinders: cylinders
                .into_iter()
                .map(|(size, reading)| OnBoard::new(SIZES[size], psi(reading)))
                .collect(),
            read_at: read_at.map(celsius),
        })
        .prop_filter("gas must flow", |plan| {
            plan.legs.iter().any(|leg| leg.litres_per_minute() > 0.0)
        })
}

fn any_temperature() -> impl Strategy<Value = Option<f64>> + Clone {
    prop_oneof![Just(None), (-30.0..45.0).prop_map(Some)]
}

fn one_temperature() -> impl Strategy<Value = Option<f64>> + Clone {
    Just(None)
}

/// How far it comes with the margin.
fn lasts(plan: &Plan, order: Order) -> f64 {
    let answer = answer(&RULEBOOK, plan, order);
    answer.breaks.map_or(f64::INFINITY, |broken| broken.at_minutes)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn gas_used_is_the_sum_of_flows(plan in plans(any_temperature()), order in order()) {
        let answer = answer(&RULEBOOK, &plan, order);
        let flowed: f64 = answer
            .segments
            .iter()
            .map(|segment| (segment.to_minutes - segment.from_minutes) * segment.litres_per_minute)
            .sum();
        let used: f64 = answer.left.iter().map(|left| left.used_litres).sum();
        prop_assert!((flowed - used).abs() < 1e-6, "{flowed} {used}");
        if answer.enough_without_margin {
            prop_assert!((used - answer.expected_litres).abs() < 1e-6);
        }
    }

    #[test]
    fn segments_follow_one_another_and_changes_lie_between(plan in plans(any_temperature()), order in order()) {
        let answer = answer(&RULEBOOK, &plan, order);
        let mut at = 0.0;
        for segment in &answer.segments {
            prop_assert_eq!(segment.from_minutes, at);
            // What rounding leaves in a cylinder is no gas: no segment is as short as that.
            prop_assert!(segment.to_minutes > at + 1e-9);
            prop_assert!(segment.pressure_after <= segment.pressure_before);
            at = segment.to_minutes;
        }
        for change in &answer.change_overs {
            let mut on = answer.segments.iter().filter(|segment| segment.cylinder == Some(change.to));
            prop_assert_eq!(on.next().map(|segment| segment.from_minutes), Some(change.at_minutes));
        }
    }

    #[test]
    fn nothing_is_drawn_below_its_limit(plan in plans(any_temperature()), order in order()) {
        let answer = answer(&RULEBOOK, &plan, order);
        let policies = &RULEBOOK.policies;
        for segment in answer.segments.iter().filter(|segment| segment.litres_per_minute > 0.0) {
            let floor = if segment.cylinder == Some(answer.last) {
                policies.residual_pressure
            } else {
                policies.change_over_pressure
            };
            prop_assert!(segment.pressure_after.as_psi() >= floor.as_psi() * (1.0 - 1e-9));
        }
    }

    #[test]
    fn enough_with_the_margin_is_enough_without(plan in plans(any_temperature()), order in order()) {
        let answer = answer(&RULEBOOK, &plan, order);
        prop_assert!(!answer.enough || answer.enough_without_margin);
        prop_assert_eq!(answer.enough, answer.breaks.is_none());
        prop_assert_eq!(answer.enough, answer.short_minutes == 0);
    }

    #[test]
    fn more_pressure_never_makes_it_worse(
        plan in plans(one_temperature()),
        order in order(),
        which in any::<prop::sample::Index>(),
        more in 0.0..1500.0_f64,
    ) {
        let before = lasts(&plan, order);
        let mut fuller = plan;
        let one = which.index(fuller.cylinders.len());
        let reading: f64 = fuller.cylinders[one].pressure.as_psi();
        fuller.cylinders[one].pressure = psi((reading + more).min(2300.0));
        prop_assert!(lasts(&fuller, order) >= before - 1e-9);
    }

    #[test]
    fn one_more_cylinder_never_makes_it_worse(
        plan in plans(one_temperature()),
        order in order(),
        size in 0..SIZES.len(),
        reading in 0.0..2200.0,
    ) {
        let before = lasts(&plan, order);
        let more = plan.cylinder(OnBoard::new(SIZES[size], psi(reading)));
        prop_assert!(lasts(&more, order) >= before - 1e-9);
    }

    #[test]
    fn one_more_leg_never_helps(
        plan in plans(any_temperature()),
        time in 1.0..30.0,
        litres in 0.0..25.0,
        at in any_temperature(),
    ) {
        let before = answer(&RULEBOOK, &plan, Order::FewestChanges);
        let mut further = leg(time, litres);
        further.temperature = at.map(celsius);
        let after = answer(&RULEBOOK, &plan.leg(further), Order::FewestChanges);
        prop_assert!(before.enough || !after.enough);
        prop_assert!(after.needed_litres >= before.needed_litres);
    }
}
