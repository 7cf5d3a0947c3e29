//! Pin positions and connection numbers.

use oxyfolio::RULEBOOK;
use oxyfolio::book::ConnectionId;
use oxyfolio::connection::*;
use oxyfolio::cylinder;

use super::facts::fact;
use super::support::connection;

/// Every pin-index connection of the book, with its pin row and its number row.
const PINS: [(ConnectionId, &str, &str); 11] = [
    (PIN_INDEX_OXYGEN, "pin-o2", "cga-o2"),
    (PIN_INDEX_NITROUS_OXIDE, "pin-n2o", "cga-n2o"),
    (PIN_INDEX_AIR, "pin-air", "cga-air"),
    (PIN_INDEX_OXYGEN_CARBON_DIOXIDE, "pin-co2-low", "cga-co2-low"),
    (PIN_INDEX_CARBON_DIOXIDE, "pin-co2-high", "cga-co2-high"),
    (PIN_INDEX_HELIUM_MIXTURE, "pin-o2he", "cga-o2he"),
    (PIN_INDEX_HELIUM, "pin-he", "cga-he"),
    (PIN_INDEX_CYCLOPROPANE, "pin-cyclopropane", "cga-cyclopropane"),
    (PIN_INDEX_ETHYLENE, "pin-ethylene", "cga-ethylene"),
    (PIN_INDEX_NITROGEN, "pin-n2", "cga-n2"),
    (PIN_INDEX_NITROUS_OXIDE_OXYGEN, "pin-n2o-o2", "cga-n2o-o2"),
];

fn assert_pins(id: ConnectionId, row: &str) {
    let connection = connection(id);
    let fact = fact(row);
    assert_eq!(
        &*connection.pins,
        fact.pins(),
        "pins of {}: {fact}",
        connection.rule.id
    );
}

fn assert_number(id: ConnectionId, series: &str, row: &str) {
    let connection = connection(id);
    let fact = fact(row);
    assert_eq!(
        connection.number.as_deref(),
        Some(format!("{series} {}", fact.value).as_str()),
        "number of {}: {fact}",
        connection.rule.id
    );
}

#[test]
fn oxygen_is_pins_2_and_5() {
    assert_pins(PIN_INDEX_OXYGEN, "pin-o2");
    assert_eq!(&*connection(PIN_INDEX_OXYGEN).pins, [2, 5]);
}

#[test]
fn pins_of_every_gas_are_the_published_ones() {
    for (id, pins, _) in PINS {
        assert_pins(id, pins);
    }
}

#[test]
fn a_second_list_of_pins_agrees() {
    for (id, row) in [
        (PIN_INDEX_OXYGEN, "pin-blog-o2"),
        (PIN_INDEX_NITROUS_OXIDE, "pin-blog-n2o"),
        (PIN_INDEX_AIR, "pin-blog-air"),
        (PIN_INDEX_CARBON_DIOXIDE, "pin-blog-co2"),
        (PIN_INDEX_HELIUM_MIXTURE, "pin-blog-o2he"),
    ] {
        assert_pins(id, row);
    }
}

#[test]
fn the_book_has_no_pins_that_are_not_published() {
    for connection in RULEBOOK.connections.iter().filter(|one| !one.pins.is_empty()) {
        assert!(
            PINS.iter()
                .any(|(id, _, _)| RULEBOOK.connection(*id) == Some(connection)),
            "no published row for the pins of {}",
            connection.rule.id
        );
    }
}

#[test]
fn no_two_gases_share_their_pins() {
    for (place, one) in RULEBOOK.connections.iter().enumerate() {
        for other in RULEBOOK.connections.iter().skip(place + 1) {
            assert!(
                one.pins.is_empty() || one.pins != other.pins,
                "{} and {} have the same pins: {}",
                one.rule.id,
                other.rule.id,
                fact("pin-o2")
            );
        }
    }
}

#[test]
fn sources_disagree_on_helium_and_the_book_says_so() {
    let note = connection(PIN_INDEX_HELIUM).note.as_deref().unwrap_or("");
    assert!(
        note.contains("disagree"),
        "expected the note of the helium connection to name the disagreement, found `{note}`: {} and {}",
        fact("pin-he"),
        fact("pin-he-alt")
    );
}

#[test]
fn connection_numbers_are_the_ones_remembered() {
    for (id, _, number) in PINS {
        assert_number(id, "CGA", number);
    }
    assert_number(LARGE_CYLINDER_OXYGEN, "CGA", "cga540");
    assert_number(LOW_PRESSURE_OXYGEN, "DISS", "diss-o2");
}

#[test]
fn oxygen_yoke_is_870() {
    assert_number(PIN_INDEX_OXYGEN, "CGA", "cga870-seen");
}

#[test]
fn threads_of_oxygen_are_the_ones_remembered() {
    for (id, row) in [
        (LARGE_CYLINDER_OXYGEN, "cga540-thread"),
        (LOW_PRESSURE_OXYGEN, "diss-o2-thread"),
    ] {
        let (connection, fact) = (connection(id), fact(row));
        let thread = connection.thread.as_deref().unwrap_or("");
        assert!(
            thread.starts_with(fact.value),
            "thread of {} is `{thread}`: {fact}",
            connection.rule.id
        );
    }
}

#[test]
fn only_oxygen_may_be_mated() {
    for connection in &RULEBOOK.connections {
        assert_eq!(
            connection.may_be_mated,
            &*connection.gas == "oxygen",
            "{} is for {}; only oxygen's own connections may be mated: {}",
            connection.rule.id,
            connection.gas,
            fact("pin-o2")
        );
    }
    // The mixtures that begin with the word are not oxygen.
    assert!(!connection(PIN_INDEX_OXYGEN_CARBON_DIOXIDE).may_be_mated);
    assert!(!connection(PIN_INDEX_NITROUS_OXIDE_OXYGEN).may_be_mated);
}

#[test]
fn every_cylinder_has_a_connection_of_oxygen_that_may_be_mated() {
    for cylinder in &RULEBOOK.cylinders {
        let connection = connection(cylinder.connection);
        assert!(
            &*connection.gas == "oxygen" && connection.may_be_mated,
            "cylinder {} has the connection {} of {}: {}",
            cylinder.rule.id,
            connection.rule.id,
            connection.gas,
            fact("pin-o2")
        );
    }
}

#[test]
fn small_cylinders_have_the_yoke_and_large_ones_the_thread() {
    let (yoke, thread) = (fact("cga870-seen"), fact("cga540"));
    for (id, expected, fact) in [
        (cylinder::D, PIN_INDEX_OXYGEN, &yoke),
        (cylinder::JUMBO_D, PIN_INDEX_OXYGEN, &yoke),
        (cylinder::E, PIN_INDEX_OXYGEN, &yoke),
        (cylinder::M, LARGE_CYLINDER_OXYGEN, &thread),
        (cylinder::G, LARGE_CYLINDER_OXYGEN, &thread),
        (cylinder::H_K, LARGE_CYLINDER_OXYGEN, &thread),
    ] {
        let cylinder = RULEBOOK.cylinder(id).unwrap();
        assert_eq!(cylinder.connection, expected, "{}: {fact}", cylinder.rule.id);
    }
    let low = fact("diss-o2");
    for cylinder in &RULEBOOK.cylinders {
        assert_ne!(
            cylinder.connection, LOW_PRESSURE_OXYGEN,
            "{} has an outlet for 50 psi: {low}",
            cylinder.rule.id
        );
    }
}
