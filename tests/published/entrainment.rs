//! Air entrainment: the mixing law and the nominal ratios.

use oxyfolio::RULEBOOK;
use oxyfolio::book::DeviceId;
use oxyfolio::device::*;

use super::facts::{Fact, fact};
use super::support::{agree, assert_in_union, device, flow_ends, percent, percent_ends};

/// Every air-entrainment device of the book, its nominal share, and the row of its nominal ratio.
const MASKS: [(DeviceId, f64, &str); 7] = [
    (AIR_ENTRAINMENT_24, 24.0, "ent-24"),
    (AIR_ENTRAINMENT_28, 28.0, "ent-28"),
    (AIR_ENTRAINMENT_31, 31.0, "ent-31"),
    (AIR_ENTRAINMENT_35, 35.0, "ent-35"),
    (AIR_ENTRAINMENT_40, 40.0, "ent-40"),
    (AIR_ENTRAINMENT_50, 50.0, "ent-50"),
    (AIR_ENTRAINMENT_60, 60.0, "ent-60"),
];

fn ratio(id: DeviceId) -> f64 {
    device(id).entrains.unwrap().as_parts_of_air()
}

/// Parts of air to one of oxygen, by the mixing law: (100 − F) / (F − air).
fn parts_of_air(share: f64, air: &Fact) -> f64 {
    (100.0 - share) / (share - air.number())
}

/// The share of the mixture, by the same law.
fn share(parts: f64, air: &Fact) -> f64 {
    (100.0 + parts * air.number()) / (parts + 1.0)
}

#[test]
fn ratios_are_the_nominal_ones() {
    for (id, _, row) in MASKS {
        let fact = fact(row);
        assert!(
            agree(ratio(id), fact.number(), 1e-12),
            "{} to 1: {fact}",
            ratio(id)
        );
    }
}

#[test]
fn a_mask_that_entrains_is_one_of_the_published_settings() {
    for device in RULEBOOK.devices.iter().filter(|one| one.entrains.is_some()) {
        assert!(
            MASKS
                .iter()
                .any(|(id, _, _)| RULEBOOK.device(*id) == Some(device)),
            "no published row for {}",
            device.rule.id
        );
    }
}

/// Nominal ratios are rounded: to whole parts below 50 %, to tenths above.
#[test]
fn ratios_follow_the_mixing_law_with_21_percent_within_rounding() {
    let air = fact("ent-air");
    for (id, nominal, _) in MASKS {
        let exact = parts_of_air(nominal, &air);
        let rounding = if nominal < 50.0 { 0.5 } else { 0.05 };
        assert!(
            (ratio(id) - exact).abs() <= rounding,
            "{nominal} %: {} to 1, the law gives {exact}: {air}",
            ratio(id)
        );
    }
}

#[test]
fn ratios_follow_the_mixing_law_with_20_percent_from_40_percent_on() {
    let air = fact("ent-air-40");
    for (id, nominal, _) in MASKS.into_iter().filter(|(_, nominal, _)| *nominal >= 40.0) {
        let exact = parts_of_air(nominal, &air);
        assert!(
            (ratio(id) - exact).abs() <= 0.05,
            "{nominal} %: {} to 1, the law gives {exact}: {air}",
            ratio(id)
        );
    }
    let (forty, seventy) = (fact("ent-40-seen"), fact("ent-70-seen"));
    assert!(agree(ratio(AIR_ENTRAINMENT_40), forty.number(), 1e-12), "{forty}");
    assert!(
        agree(parts_of_air(70.0, &air), seventy.number(), 1e-12),
        "{seventy}"
    );
}

#[test]
fn the_ratio_of_a_mask_mixes_its_share_within_a_point() {
    let air = fact("ent-air");
    for (id, nominal, _) in MASKS {
        let mixed = share(ratio(id), &air);
        assert!(
            (mixed - nominal).abs() <= 1.0,
            "{} to 1 mixes {mixed} %, and the mask is called {nominal} %: {air}",
            ratio(id)
        );
        let oxygen = device(id).oxygen;
        assert!(
            oxygen.holds(percent(mixed)) && oxygen.holds(percent(nominal)),
            "the book gives {oxygen} to a mask that mixes {mixed} %: {air}"
        );
        let (low, high) = percent_ends(oxygen);
        assert!(
            high - low <= 7.0,
            "{oxygen} is no longer a steady share for a {nominal} % mask: {air}"
        );
    }
}

#[test]
fn more_oxygen_means_fewer_parts_of_air() {
    for pair in MASKS.windows(2) {
        assert!(
            ratio(pair[0].0) > ratio(pair[1].0),
            "{} and {}",
            fact(pair[0].2),
            fact(pair[1].2)
        );
    }
}

#[test]
fn total_flow_is_oxygen_times_one_more_than_the_parts_of_air() {
    for (row, id, oxygen) in [
        ("ent-28-4", AIR_ENTRAINMENT_28, 4.0),
        ("ent-24-2", AIR_ENTRAINMENT_24, 2.0),
    ] {
        let fact = fact(row);
        let total = oxygen * (ratio(id) + 1.0);
        assert!(agree(total, fact.number(), 1e-12), "{total} L/min: {fact}");
        assert!(
            (device(id).usual.as_litres_per_minute() - oxygen).abs() < 1e-12,
            "the usual flow of {}: {fact}",
            device(id).rule.id
        );
    }
}

/// 24 % at 2 to 3 L/min and 28 % at 4 L/min; half as much again for a patient who breathes fast.
#[test]
fn flows_at_24_and_28_percent_are_those_of_the_adult_guideline() {
    let more = fact("bts-v-rr");
    for (id, row) in [(AIR_ENTRAINMENT_24, "bts-v24"), (AIR_ENTRAINMENT_28, "bts-v28")] {
        let fact = fact(row);
        let (least, most) = fact.range();
        let (low, high) = flow_ends(device(id).flow);
        assert!((low - least).abs() < 1e-12, "from {low} L/min: {fact}");
        assert!(
            high >= most && high <= most * (1.0 + more.number() / 100.0),
            "to {high} L/min: {fact} and {more}"
        );
        let usual = device(id).usual.as_litres_per_minute();
        assert_in_union(&device(id).rule.id, (usual, usual), &[row]);
    }
}
