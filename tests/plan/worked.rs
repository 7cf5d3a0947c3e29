//! Sums done by hand. By factor a D gives 0.16 L, an E 0.28 L and an M 1.56 L for each psi; the demo book changes at
//! 500 psi, keeps 200 psi, and adds 50 %. At 2000 psi and 21 °C the factor is the lower method for all of them.

use oxyfolio::{
    RULEBOOK,
    check::duration::Supply,
    check::plan::{Answer, Caution, Leg, NoPlan, OnBoard, Order, Plan, Use, fewest_to_add},
    cylinder, device,
    oxygen::free_gas,
    quantity::{Gauge, Pressure},
};

use super::support::{answer, celsius, flow, leg, minutes, near, plan, psi};

#[test]
fn one_cylinder_is_used_to_the_residual_pressure() {
    // (2000 - 200) x 0.16 = 288 L. 10 min x 1.5 x 15 L/min = 225 L. 63 L left: 4 min at 15 L/min.
    let plan = plan(&[(10.0, 15.0)], &[(cylinder::D, 2000.0)]);
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    assert!(answer.enough && answer.enough_without_margin);
    near(answer.needed_litres, 225.0);
    near(answer.expected_litres, 150.0);
    near(answer.spare_litres, 63.0);
    assert_eq!(answer.spare_minutes, 4);
    assert_eq!((answer.breaks, answer.change_overs.len()), (None, 0));
    // After 150 L: 288 - 150 = 138 L; 2000 - 150 / 0.16 = 1062.5 psi.
    near(answer.left[0].usable_litres, 138.0);
    near(answer.left[0].pressure.as_psi(), 1062.5);
}

#[test]
fn what_lacks_is_rounded_up_and_the_leg_is_named() {
    // 14 min x 1.5 x 15 = 315 L of 288: 27 L lack, 1.8 min. It lasts 19.2 min, in the second leg (from 1.5 x 5 min on).
    let plan = plan(&[(5.0, 15.0), (9.0, 15.0)], &[(cylinder::D, 2000.0)]);
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    assert!(!answer.enough && answer.enough_without_margin);
    near(answer.short_litres, 27.0);
    assert_eq!((answer.short_minutes, answer.spare_minutes), (2, 0));
    let broken = answer.breaks.unwrap();
    assert_eq!(broken.leg, 1);
    near(broken.at_minutes, 19.2);
    assert_eq!(answer.breaks_without_margin, None);
}

#[test]
fn without_margin_it_breaks_too_and_the_course_ends_there() {
    let plan = plan(&[(30.0, 15.0)], &[(cylinder::D, 2000.0)]);
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    near(answer.breaks_without_margin.unwrap().at_minutes, 19.2);
    near(answer.segments.last().unwrap().to_minutes, 19.2);
    near(answer.left[0].pressure.as_psi(), 200.0);
}

#[test]
fn a_cylinder_is_changed_at_the_change_over_pressure_while_another_is_left() {
    // E to 500 psi: 420 L, 28 min at 15 L/min. The second, the last, gives 504 L to 200 psi: 924 L in all.
    let plan = plan(&[(36.0, 15.0)], &[(cylinder::E, 2000.0), (cylinder::E, 2000.0)]);
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    let change = answer.change_overs[0];
    assert_eq!((change.from, change.to, answer.last), (0, 1, 1));
    near(change.at_minutes, 28.0);
    near(answer.segments[0].pressure_after.as_psi(), 500.0);
    // 36 x 1.5 x 15 = 810 L; 924 - 810 = 114 L, 7 min.
    near(answer.spare_litres, 114.0);
    assert_eq!(answer.spare_minutes, 7);
}

#[test]
fn delay_counts_like_time_and_gets_the_margin_too() {
    let late = Plan::new()
        .leg(leg(6.0, 15.0).delay(minutes(4.0)))
        .cylinder(OnBoard::new(cylinder::D, psi(2000.0)));
    near(answer(&RULEBOOK, &late, Order::FewestChanges).spare_litres, 63.0);
}

#[test]
fn all_patients_and_what_drives_a_ventilator_are_on_one_supply() {
    let road = Leg::new("road", minutes(10.0))
        .uses(Use::device(device::NON_REBREATHER, flow(15.0)))
        .uses(Use {
            drive_gas: flow(6.0),
            ..Use::device(device::NASAL_CANNULA, flow(2.0))
        })
        .uses(Use::driven(flow(5.0)));
    near(road.litres_per_minute(), 28.0);
    let plan = Plan::new()
        .leg(road)
        .cylinder(OnBoard::new(cylinder::M, psi(2000.0)));
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    // 28 x 15 = 420 L of 1800 x 1.56 = 2808 L; 2388 / 28 = 85.3 min.
    near(answer.spare_litres, 2388.0);
    assert_eq!(answer.spare_minutes, 85);
    assert!(answer.cautions.is_empty());
}

#[test]
fn order_decides_which_cylinder_is_on_first() {
    // E at 1900 psi to 500: 392 L. D at 2000 psi to 500: 240 L.
    let plan = plan(&[(20.0, 15.0)], &[(cylinder::D, 2000.0), (cylinder::E, 1900.0)]);
    let fewest = answer(&RULEBOOK, &plan, Order::FewestChanges);
    assert_eq!(fewest.segments[0].cylinder, Some(1));
    assert_eq!(fewest.change_overs.len(), 0);
    let emptiest = answer(&RULEBOOK, &plan, Order::EmptiestFirst);
    assert_eq!(emptiest.segments[0].cylinder, Some(0));
    near(emptiest.change_overs[0].at_minutes, 16.0);
}

#[test]
fn a_cylinder_below_change_over_is_of_use_as_the_last_only() {
    // M at 450 psi gives nothing to 500 psi; to 200 psi the density of 21.5 L of water is the lower.
    let two = plan(&[(20.0, 15.0)], &[(cylinder::M, 450.0), (cylinder::D, 2000.0)]);
    let found = answer(&RULEBOOK, &two, Order::FewestChanges);
    assert_eq!((found.last, found.change_overs.len()), (0, 1));
    let m = RULEBOOK.cylinder(cylinder::M).unwrap();
    let last = Supply::of(&RULEBOOK, m).lasts(psi(450.0), flow(15.0)).unwrap();
    // 20 x 1.5 x 15 = 450 L; the D gives 240 L before.
    near(found.spare_litres, 240.0 + last.usable.as_litres() - 450.0);
}

#[test]
fn one_cylinder_lasts_as_long_as_the_duration_code_says() {
    for (reading, celsius_read) in [(2000.0, 21.0), (900.0, -20.0), (2100.0, 45.0), (300.0, 10.0)] {
        let e = RULEBOOK.cylinder(cylinder::E).unwrap();
        let lasts = Supply::of(&RULEBOOK, e)
            .temperature(celsius(celsius_read))
            .lasts(psi(reading), flow(10.0))
            .unwrap();
        let alone = plan(&[(2000.0, 10.0)], &[(cylinder::E, reading)]).read_at(celsius(celsius_read));
        let broken = answer(&RULEBOOK, &alone, Order::FewestChanges)
            .breaks_without_margin
            .unwrap();
        near(broken.at_minutes * 10.0, lasts.usable.as_litres());
    }
}

#[test]
fn a_cold_leg_keeps_more_in_the_cylinder() {
    // At 800 psi the density is the lower method. Held at 20 °C, kept at -20 °C.
    let e = RULEBOOK.cylinder(cylinder::E).unwrap();
    let plan = Plan::new()
        .leg(leg(600.0, 1.0).temperature(celsius(-20.0)))
        .cylinder(OnBoard::new(cylinder::E, psi(800.0)))
        .read_at(celsius(20.0));
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    let gas = |reading: f64, at: f64| {
        free_gas(e.water_capacity, psi(reading), celsius(at))
            .unwrap()
            .as_litres()
    };
    let usable = (gas(800.0, 20.0) - gas(200.0, -20.0)) * (1.0 - 1e-4);
    near(answer.breaks_without_margin.unwrap().at_minutes, usable);
    // The gauge of a cylinder gone cold shows less from the start.
    assert!(answer.segments[0].pressure_before < psi(700.0));
    near(answer.left[0].pressure.as_psi(), 200.0);
}

#[test]
fn gauges_read_nobody_knows_when_are_taken_as_read_in_the_heat() {
    let warm = Plan::new()
        .leg(leg(5.0, 10.0).temperature(celsius(-5.0)))
        .leg(leg(5.0, 10.0).temperature(celsius(40.0)))
        .cylinder(OnBoard::new(cylinder::E, psi(1000.0)));
    let assumed = answer(&RULEBOOK, &warm, Order::FewestChanges);
    assert_eq!((assumed.read_at, assumed.read_at_assumed), (celsius(40.0), true));
    let known = answer(&RULEBOOK, &warm.read_at(celsius(10.0)), Order::FewestChanges);
    assert_eq!((known.read_at, known.read_at_assumed), (celsius(10.0), false));
    assert!(known.spare_litres > assumed.spare_litres);
}

#[test]
fn the_fewest_to_add() {
    // 32 min x 1.5 x 15 = 720 L. One full E (2015 psi) as the last gives 508.2 L, two give 424.2 + 508.2 = 932.4 L.
    let none = plan(&[(32.0, 15.0)], &[]);
    let add = |plan: &Plan, size| fewest_to_add(&RULEBOOK, plan, Order::FewestChanges, size).unwrap();
    assert_eq!(add(&none, cylinder::E), Some(2));
    assert_eq!(add(&none, cylinder::M), Some(1));
    let one = plan(&[(32.0, 15.0)], &[(cylinder::E, 2000.0)]);
    assert_eq!(add(&one, cylinder::E), Some(1));
    // 242.4 L for each D but the last: 720 - 504 = 216 L, or the E first: 420 + 290.4 = 710.4 L is not enough, but
    // 242.4 L from the D and then 504 L from the E are.
    assert_eq!(add(&one, cylinder::D), Some(1));
    let much = plan(&[(14_000.0, 100.0)], &[(cylinder::E, 2000.0)]);
    assert_eq!(add(&much, cylinder::D), None);
    let enough = plan(&[(10.0, 15.0)], &[(cylinder::E, 2000.0)]);
    assert_eq!(add(&enough, cylinder::D), Some(0));
}

#[test]
fn a_leg_without_flow_uses_nothing() {
    let plan = plan(
        &[(10.0, 0.0), (10.0, 15.0), (300.0, 0.0)],
        &[(cylinder::D, 2000.0)],
    );
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    near(answer.spare_litres, 63.0);
    // Minutes at the last flow that there is.
    assert_eq!(answer.spare_minutes, 4);
    assert_eq!(answer.segments[0].cylinder, None);
    assert_eq!(answer.segments.len(), 3);
}

#[test]
fn what_speaks_against_a_plan_is_said() {
    let plan = Plan::new()
        .leg(
            Leg::new("road", minutes(5.0))
                .temperature(celsius(-35.0))
                .uses(Use::device(device::NON_REBREATHER, flow(6.0))),
        )
        .cylinder(OnBoard::new(
            cylinder::METRIC_2_L,
            Pressure::<Gauge>::bar(201.0).unwrap(),
        ));
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    assert!(matches!(answer.cautions[0], Caution::FlowOutside { leg: 0, .. }));
    assert!(matches!(
        answer.cautions[1],
        Caution::OutsideUseTemperature { leg: 0, .. }
    ));
    assert!(matches!(
        answer.cautions[2],
        Caution::Overfilled { cylinder: 0, .. }
    ));
    // There is gas enough, but not by anything that can be right.
    assert!(answer.enough && !answer.can_be_relied_on());
    assert!(answer.cautions.iter().all(Caution::spoils_the_answer));
}

#[test]
fn a_cylinder_that_would_not_go_into_service_is_named() {
    let minimum = RULEBOOK.policies.in_service_minimum.as_psi().round();
    let plan = plan(
        &[(5.0, 2.0)],
        &[(cylinder::E, minimum), (cylinder::E, minimum - 1.0)],
    );
    let answer = answer(&RULEBOOK, &plan, Order::FewestChanges);
    assert!(matches!(
        answer.cautions[..],
        [Caution::BelowInServiceMinimum { cylinder: 1, .. }]
    ));
    // Too little to go into service with, but what is in it is there.
    assert!(!answer.cautions[0].spoils_the_answer());
    assert!(answer.enough && answer.can_be_relied_on());
}

#[test]
fn what_cannot_be_planned_is_refused() {
    let to = |plan: &Plan| Answer::to(&RULEBOOK, plan, Order::FewestChanges).unwrap_err();
    assert_eq!(to(&plan(&[], &[(cylinder::D, 2000.0)])), NoPlan::NoLegs);
    assert_eq!(to(&plan(&[(5.0, 1.0)], &[])), NoPlan::NoCylinders);
    assert_eq!(to(&plan(&[(5.0, 0.0)], &[(cylinder::D, 2000.0)])), NoPlan::NoFlow);
    let other = oxyfolio::book::CylinderId(u16::MAX);
    assert_eq!(to(&plan(&[(5.0, 1.0)], &[(other, 2000.0)])), NoPlan::NotThisBook);
    let cold = plan(&[(5.0, 1.0)], &[(cylinder::D, 2000.0)]).read_at(celsius(-50.0));
    assert!(matches!(to(&cold), NoPlan::OutsideDomain(_)));
    // Each says what was expected and what was found instead.
    for (refused, words) in [
        (
            NoPlan::NoLegs,
            "expected a plan with at least one leg, found none",
        ),
        (
            NoPlan::NoCylinders,
            "expected a plan with at least one cylinder, found none",
        ),
        (
            NoPlan::NoFlow,
            "expected a leg on which gas flows for some time, found none",
        ),
        (
            NoPlan::NotThisBook,
            "expected identifiers of this rulebook, found one of another",
        ),
        (
            to(&cold),
            "expected a temperature (for the density of oxygen) from -40 to 60 °C, found -50 °C",
        ),
    ] {
        assert_eq!(refused.to_string(), words);
    }
}

#[test]
fn orders_have_the_words_of_the_command_line() {
    assert_eq!(Order::FewestChanges.word(), "fewest-changes");
    assert_eq!(Order::EmptiestFirst.word(), "emptiest-first");
}
