//! Which cylinder is on when, and which is kept for last. By factor a D gives 0.16 L, an E 0.28 L and an M 1.56 L for each
//! psi; the demo book changes at 500 psi and keeps 200 psi. Margins are 0 here.

use oxyfolio::{
    RULEBOOK,
    book::{CylinderId, Rulebook},
    check::plan::{Answer, Caution, Order, Plan, fewest_to_add},
    cylinder,
    quantity::Factor,
};

use super::support::{answer, book, celsius, leg, near, plan, psi};

const EMPTIEST: Order = Order::EmptiestFirst;
const FEWEST: Order = Order::FewestChanges;

/// One leg that uses so many litres at 10 L/min.
fn using(litres: f64, cylinders: &[(CylinderId, f64)]) -> Plan {
    plan(&[(litres / 10.0, 10.0)], cylinders)
}

/// What is asked, the order, litres, the cylinders; and what comes of it: which were on, and which is kept for last.
type Case = (
    &'static str,
    Order,
    f64,
    &'static [(CylinderId, f64)],
    &'static [usize],
    usize,
);

/// The cylinders in the order in which they were on, and the one that was kept for last.
fn used(found: &Answer<'_>) -> (Vec<usize>, usize) {
    let mut on: Vec<usize> = found
        .segments
        .iter()
        .filter_map(|segment| segment.cylinder)
        .collect();
    on.dedup();
    (on, found.last)
}

#[test]
fn which_is_on_when() {
    const D: CylinderId = cylinder::D;
    const E: CylinderId = cylinder::E;
    const M: CylinderId = cylinder::M;
    let book = book(0.0);
    let cases: [Case; 10] = [
        // An M at 550 psi gives 78 L before a change, and much as the last; a D 240 L before one.
        (
            "one lasts alone",
            FEWEST,
            100.0,
            &[(M, 550.0), (D, 2000.0)],
            &[1],
            0,
        ),
        // Used up first, though a change is the price.
        (
            "the emptier first",
            EMPTIEST,
            100.0,
            &[(D, 2000.0), (M, 550.0)],
            &[0],
            1,
        ),
        (
            "the emptier first",
            EMPTIEST,
            300.0,
            &[(E, 2000.0), (D, 2000.0)],
            &[1, 0],
            0,
        ),
        // To the change-over pressure 280, 240 and 420 L.
        (
            "from the emptiest on",
            EMPTIEST,
            600.0,
            &[(E, 1500.0), (D, 2000.0), (E, 2000.0)],
            &[1, 0, 2],
            2,
        ),
        (
            "from the fullest on",
            FEWEST,
            800.0,
            &[(E, 1500.0), (D, 2000.0), (E, 2000.0)],
            &[2, 0, 1],
            1,
        ),
        // Of cylinders alike the one named first is on first, and the one named last is kept.
        ("alike", FEWEST, 1000.0, &[(E, 2000.0); 3], &[0, 1, 2], 2),
        ("alike", EMPTIEST, 1000.0, &[(E, 2000.0); 3], &[0, 1, 2], 2),
        // The last gives 84 L more if it is an E, 48 if it is a D: 420 + 240 + 504 = 1164 L, just enough.
        (
            "alike, and one of them must be the last",
            FEWEST,
            1160.0,
            &[(E, 2000.0), (E, 2000.0), (D, 2000.0)],
            &[0, 2, 1],
            1,
        ),
        // 84 L more from the full E, 56 from the one at 400 psi, 48 from the D: only the first way gives 744 L.
        (
            "of one size, but not alike",
            FEWEST,
            730.0,
            &[(E, 2000.0), (E, 400.0), (D, 2000.0)],
            &[2, 0],
            0,
        ),
        // An M below the change-over pressure is of use as the last only; a D gives 288 L alone.
        (
            "of no use before the last",
            EMPTIEST,
            280.0,
            &[(M, 450.0), (D, 2000.0)],
            &[1],
            1,
        ),
    ];
    for (what, order, litres, cylinders, on, last) in cases {
        let found = answer(&book, &using(litres, cylinders), order);
        assert!(found.enough, "{what}: {litres} L of {cylinders:?}");
        assert_eq!(
            used(&found),
            (on.to_vec(), last),
            "{what}: {litres} L of {cylinders:?}"
        );
        assert_eq!(found.change_overs.len() + 1, on.len());
    }
}

#[test]
fn where_none_gives_anything_the_order_keeps_its_rule() {
    // All at the residual pressure or below: it lasts no minute, whatever comes last.
    let empty = [(cylinder::D, 200.0), (cylinder::E, 100.0), (cylinder::M, 0.0)];
    let book = book(0.0);
    let found = answer(&book, &using(100.0, &empty), FEWEST);
    assert_eq!((found.last, found.segments.len()), (2, 0));
    // Ten minutes are asked for, and ten lack: not eleven.
    assert_eq!(found.short_minutes, 10);
    near(found.short_litres, 100.0);
}

/// The demo book where an E is like a D in all but its factor, which is half of it.
fn twins() -> Rulebook {
    let mut book = book(0.0);
    let mut sizes: Vec<_> = book.cylinders.iter().cloned().collect();
    let (d, e) = (cylinder::D.0 as usize, cylinder::E.0 as usize);
    sizes[e].water_capacity = sizes[d].water_capacity;
    sizes[e].factor = Factor::litres_per_psi(0.08).unwrap();
    book.cylinders = sizes.into();
    book
}

#[test]
fn two_sizes_with_the_same_room_are_not_alike() {
    // As the last, the D gives 48 L more and the E 24 L: 120 + 288 L, or 240 + 144 L. The third is kept by the order's rule.
    let cylinders = [
        (cylinder::D, 2000.0),
        (cylinder::E, 2000.0),
        (cylinder::E, 1000.0),
    ];
    let book = twins();
    let found = answer(&book, &using(445.0, &cylinders), FEWEST);
    // 288 + 120 + 40 L.
    assert!(found.enough);
    assert_eq!(found.last, 0);
}

#[test]
fn what_is_spare_is_in_all_cylinders() {
    // 200 L of the E's 420; then the second E gives 420 L to the change-over pressure, and the D as the last 288 L.
    let cylinders = [
        (cylinder::E, 2000.0),
        (cylinder::E, 2000.0),
        (cylinder::D, 2000.0),
    ];
    let book = book(0.0);
    let found = answer(&book, &using(200.0, &cylinders), FEWEST);
    near(found.spare_litres, 220.0 + 420.0 + 288.0);
    assert_eq!(found.spare_minutes, 92);
    near(found.segments[0].usable_litres, 220.0);
    let left: Vec<f64> = found.left.iter().map(|left| left.usable_litres).collect();
    near(left[0], 304.0);
    near(left[1], 504.0);
    near(left[2], 288.0);
}

#[test]
fn a_cylinder_shows_at_the_start_of_a_leg_what_it_showed_at_the_end_of_the_one_before() {
    let legs = [(5.0, 4.0), (5.0, 12.0), (20.0, 15.0), (5.0, 0.0)];
    let book = book(0.0);
    let found = answer(
        &book,
        &plan(&legs, &[(cylinder::D, 2000.0), (cylinder::E, 2000.0)]),
        FEWEST,
    );
    // The E from 2000 psi: 20 L, 60 L and 300 L at 0.28 L/psi; it is changed at 500 psi after 420 L.
    let shown: Vec<(f64, f64, f64)> = found
        .segments
        .iter()
        .map(|one| {
            (
                one.pressure_before.as_psi(),
                one.pressure_after.as_psi(),
                one.usable_litres,
            )
        })
        .collect();
    assert_eq!(shown.len(), 4);
    for ((before, after, usable), litres) in
        shown
            .iter()
            .zip([(0.0, 20.0), (20.0, 80.0), (80.0, 380.0), (380.0, 380.0)])
    {
        near(*before, 2000.0 - litres.0 / 0.28);
        near(*after, 2000.0 - litres.1 / 0.28);
        near(*usable, 420.0 - litres.1);
    }
}

#[test]
fn as_the_last_a_cylinder_can_give_what_lies_above_the_residual_pressure() {
    let book = book(0.0);
    let found = answer(&book, &using(100.0, &[(cylinder::D, 2000.0)]), FEWEST);
    near(found.segments[0].usable_litres, 188.0);
}

#[test]
fn a_cylinder_used_up_to_the_minute_in_the_cold_gives_what_the_warmth_frees() {
    // At 800 psi density is the lower method, and a gauge that is kept at -20 °C keeps more gas back than one at 20 °C.
    let cold = leg(600.0, 10.0).temperature(celsius(-20.0));
    let one = Plan::new().cylinder(plan(&[], &[(cylinder::E, 800.0)]).cylinders[0]);
    let book = book(0.0);
    let at = |plan: Plan| answer(&book, &plan.read_at(celsius(20.0)), FEWEST);
    let minutes = at(one.clone().leg(cold.clone())).breaks.unwrap().at_minutes;
    let cold = super::support::leg(minutes, 10.0).temperature(celsius(-20.0));
    let warm = leg(0.1, 10.0).temperature(celsius(20.0));
    assert!(at(one.clone().leg(cold.clone())).enough);
    assert!(at(one.clone().leg(cold.clone()).leg(warm)).enough);
    // In the cold there is no more.
    let more = leg(0.1, 10.0).temperature(celsius(-20.0));
    assert!(!at(one.leg(cold).leg(more)).enough);
}

#[test]
fn a_full_cylinder_added_is_as_cold_as_a_room_or_as_hot_as_the_gauges_were() {
    // A size for which density is the lower method: its factor says a litre for each psi.
    let mut book = book(0.0);
    let mut sizes: Vec<_> = book.cylinders.iter().cloned().collect();
    sizes[cylinder::E.0 as usize].factor = Factor::litres_per_psi(1.0).unwrap();
    book.cylinders = sizes.into();
    let full = book.cylinder(cylinder::E).unwrap().service_pressure.as_psi();
    let holds = |read_at: f64| {
        let alone = plan(&[(10_000.0, 10.0)], &[(cylinder::E, full)]).read_at(celsius(read_at));
        let mut alone = alone;
        alone.legs[0].temperature = Some(celsius(21.0));
        answer(&book, &alone, FEWEST).breaks.unwrap().at_minutes * 10.0
    };
    let (cold, room, hot) = (holds(-10.0), holds(21.0), holds(45.0));
    assert!(cold > room + 50.0 && room > hot + 50.0, "{cold} {room} {hot}");
    let added = |litres: f64, read_at: Option<f64>| {
        let mut plan = using(litres, &[]);
        plan.legs[0].temperature = Some(celsius(21.0));
        plan.read_at = read_at.map(celsius);
        fewest_to_add(&book, &plan, FEWEST, cylinder::E).unwrap()
    };
    // Between what it holds at 21 °C and what it would hold were it read in the heat or in the cold.
    let below_room = f64::midpoint(room, hot);
    assert_eq!(added(below_room, Some(45.0)), Some(2));
    assert_eq!(added(below_room, None), Some(1));
    assert_eq!(added(below_room, Some(-10.0)), Some(1));
    let above_room = f64::midpoint(room, cold);
    assert_eq!(added(above_room, Some(-10.0)), Some(2));
}

#[test]
fn filled_to_its_limit_is_not_overfilled() {
    let most = RULEBOOK.filled_at_most(RULEBOOK.cylinder(cylinder::E).unwrap());
    let plan = |reading| {
        let mut plan = using(10.0, &[(cylinder::E, 2000.0)]);
        plan.cylinders[0].pressure = reading;
        plan
    };
    let cautions = |reading| answer(&RULEBOOK, &plan(reading), FEWEST).cautions;
    assert_eq!(cautions(most), []);
    let more = cautions(psi(most.as_psi() + 1.0));
    assert!(matches!(more[..], [Caution::Overfilled { cylinder: 0, .. }]));
}
