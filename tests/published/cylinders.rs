//! Cylinder factors and contents.

use oxyfolio::RULEBOOK;
use oxyfolio::book::CylinderId;
use oxyfolio::cylinder::*;
use oxyfolio::quantity::{LITRES_PER_CUBIC_FOOT, PressureUnit};

use super::facts::fact;
use super::support::{agree, assert_in_union, cylinder};

fn factor(id: CylinderId) -> f64 {
    cylinder(id).factor.as_litres_per(PressureUnit::Psi)
}

fn contents(id: CylinderId) -> f64 {
    cylinder(id).contents.volume.as_litres()
}

#[test]
fn factors_are_the_textbook_ones() {
    for (id, row) in [
        (D, "fac-d"),
        (E, "fac-e"),
        (M, "fac-m"),
        (G, "fac-g"),
        (H_K, "fac-hk"),
        (D, "fac-sheet-d"),
        (E, "fac-sheet-e"),
        (E, "fac-rt-e"),
        (M, "fac-sheet-m"),
        (H_K, "fac-sheet-hk"),
    ] {
        let fact = fact(row);
        assert_eq!(
            cylinder(id).factor.written(),
            (fact.number(), PressureUnit::Psi),
            "{}: {fact}",
            cylinder(id).rule.id
        );
    }
}

#[test]
fn factors_follow_from_cubic_feet_at_2200_psi_within_rounding() {
    let full = fact("fac-ft3-psi").number();
    for (id, row) in [(E, "fac-ft3-e"), (G, "fac-ft3-g"), (H_K, "fac-ft3-h")] {
        let fact = fact(row);
        for litres in [fact_litres(), LITRES_PER_CUBIC_FOOT] {
            let derived = litres * fact.number() / full;
            assert!(
                (factor(id) - derived).abs() <= 0.005,
                "{} has {} L/psi, the derivation gives {derived}: {fact}",
                cylinder(id).rule.id,
                factor(id)
            );
        }
    }
}

fn fact_litres() -> f64 {
    fact("fac-ft3-litres").number()
}

#[test]
fn nominal_contents_lie_in_the_published_spread() {
    for (id, rows) in [
        (D, &["cont-college-d", "cont-sheet-d", "cont-out-d"][..]),
        (E, &["cont-college-e", "cont-sheet-e", "cont-out-e", "cont-mgh-e"]),
        (M, &["cont-college-m", "cont-sheet-m"]),
        (G, &["cont-g"]),
        (H_K, &["cont-sheet-hk"]),
    ] {
        let litres = contents(id);
        assert_in_union(&cylinder(id).rule.id, (litres, litres), rows);
    }
    let most = fact("cont-college-d-most");
    assert!(contents(D) <= most.number(), "D: {most}");
    let over = fact("cont-college-g");
    assert!(
        contents(G) > over.number() && contents(G) <= over.number() * 1.07,
        "G: {over}"
    );
    let nearly = fact("cont-college-h");
    assert!(
        contents(H_K) < nearly.number() && contents(H_K) >= nearly.number() * 0.98,
        "H or K: {nearly}"
    );
}

/// The book takes one published figure for each size and does not average them.
#[test]
fn nominal_contents_are_one_published_figure() {
    for (id, row) in [
        (D, "cont-sheet-d"),
        (E, "cont-sheet-e"),
        (E, "cont-out-e"),
        (M, "cont-college-m"),
        (G, "cont-g"),
        (H_K, "cont-sheet-hk"),
    ] {
        let fact = fact(row);
        let (_, most) = fact.range();
        assert!(
            agree(contents(id), most, 1e-12),
            "{} states {} L: {fact}",
            cylinder(id).rule.id,
            contents(id)
        );
    }
}

#[test]
fn contents_in_cubic_feet_are_about_the_published_ones() {
    for (id, row) in [(E, "cont-ft3-e"), (H_K, "cont-ft3-h")] {
        let fact = fact(row);
        let litres = fact.number() * LITRES_PER_CUBIC_FOOT;
        assert!(
            agree(contents(id), litres, 0.05),
            "{} holds {} L, published {litres} L: {fact}",
            cylinder(id).rule.id,
            contents(id)
        );
    }
}

#[test]
fn a_full_cylinder_by_its_factor_is_its_stated_contents() {
    for cylinder in &RULEBOOK.cylinders {
        let stated = cylinder.contents.volume.as_litres();
        let by_factor = cylinder.factor.contents(cylinder.contents.at).as_litres();
        assert!(
            by_factor <= stated * 1.01 && by_factor >= stated * 0.95,
            "{}: {by_factor} L by the factor, {stated} L stated: one family of figures ({})",
            cylinder.rule.id,
            fact("fac-ft3-psi")
        );
    }
}

#[test]
fn the_e_is_not_mixed_from_two_families() {
    let (ratio, hours) = (fact("fac-e-ratio"), fact("fac-e-hours"));
    assert!(factor(E) < hours.number(), "{hours}");
    assert!(factor(E) < ratio.number(), "{ratio}");
    let e = cylinder(E);
    let stated = contents(E) / e.contents.at.as_psi();
    assert!(
        stated < hours.number(),
        "E states {stated} L/psi, as much as another family: {ratio} and {hours}"
    );
}

#[test]
fn the_jumbo_d_promises_no_more_than_an_e() {
    let e = fact("fac-e");
    assert!(factor(JUMBO_D) <= e.number(), "Jumbo D: {e}");
    assert!(
        contents(JUMBO_D) >= contents(E),
        "Jumbo D holds about as much: {e}"
    );
}

#[test]
fn letters_are_national_and_the_book_names_the_country() {
    let uk = fact("cont-uk-g");
    assert!(
        !agree(contents(G), uk.number(), 0.2),
        "G of the book is as the one of the United Kingdom: {uk}"
    );
    for id in [D, JUMBO_D, E, M, G, H_K] {
        let cylinder = cylinder(id);
        assert!(
            cylinder.series.starts_with("US ") && cylinder.also.iter().any(|name| name.starts_with("US ")),
            "{} does not say whose letter it is: {uk}",
            cylinder.rule.id
        );
    }
}

#[test]
fn a_steel_cylinder_is_marked_2015_psi_and_filled_to_2216_with_a_plus() {
    let (marked, plus) = (fact("steel-2015"), fact("steel-2216"));
    for id in [D, JUMBO_D, E, M, G, H_K] {
        let cylinder = cylinder(id);
        assert!(
            (cylinder.service_pressure.as_psi() - marked.number()).abs() < 1e-6,
            "{}: {marked}",
            cylinder.rule.id
        );
        assert!(
            cylinder.contents.at.as_psi() <= plus.number(),
            "{} states its contents at more than it may be filled to: {plus}",
            cylinder.rule.id
        );
    }
    let limit = RULEBOOK.policies.fill_limit.as_percent() / 100.0;
    assert!(
        (marked.number() * limit - plus.number()).abs() < 0.01,
        "fill limit {limit}: {plus}"
    );
}

#[test]
fn no_cylinder_is_marked_above_the_limit_for_oxygen_in_aluminium() {
    let fact = fact("cfr-al-o2");
    for cylinder in &RULEBOOK.cylinders {
        assert!(
            cylinder.service_pressure.as_psi() <= fact.number(),
            "{} is marked {}: {fact}",
            cylinder.rule.id,
            cylinder.service_pressure
        );
    }
}

#[test]
fn a_metric_cylinder_is_counted_by_its_water_and_no_more() {
    let definition = fact("u-bar-def");
    for cylinder in RULEBOOK.cylinders.iter().filter(|one| &*one.series == "metric") {
        assert_eq!(
            cylinder.factor.written(),
            (cylinder.water_capacity.as_litres(), PressureUnit::Bar),
            "{}: {definition}",
            cylinder.rule.id
        );
    }
}
