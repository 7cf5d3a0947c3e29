//! Flows and oxygen shares of the devices.
//!
//! A flow range of the book lies in the union of the published ranges and holds the published usual flow. The pocket
//! mask, the tracheostomy mask and blow-by have no published row here: the book calls theirs a choice or from memory.

use oxyfolio::book::{GroupId, PolicyId, Value};
use oxyfolio::device::*;
use oxyfolio::{RULEBOOK, group, policy};

use super::facts::fact;
use super::support::{assert_in_union, device, flow, flow_ends, percent, percent_ends, policy as rule};

const GROUPS: [GroupId; 4] = [group::NEWBORN, group::INFANT, group::CHILD, group::ADULT];

#[test]
fn cannula_runs_from_1_to_6() {
    let cannula = device(NASAL_CANNULA);
    assert_in_union(
        "cannula",
        flow_ends(cannula.flow),
        &[
            "dev-cann-openrn-flow",
            "dev-cann-bts",
            "dev-cann-out-flow",
            "dev-cann-usual",
        ],
    );
    let whole = fact("dev-cann-openrn-flow");
    assert_eq!(flow_ends(cannula.flow), whole.range(), "{whole}");
    for row in ["bts-cann-copd", "dev-cann-bts", "dev-cann-usual"] {
        let fact = fact(row);
        let usual = cannula.usual.as_litres_per_minute();
        assert!(fact.holds(usual, 0.0), "usual {usual} L/min: {fact}");
    }
}

#[test]
fn cannula_never_above_6_in_any_group() {
    let most = fact("dev-cann-most");
    let cannula = device(NASAL_CANNULA);
    for group in GROUPS {
        let (_, high) = flow_ends(cannula.flow_for(group));
        assert!(high <= most.number(), "{high} L/min in group {group:?}: {most}");
    }
}

#[test]
fn cannula_of_a_child_follows_the_published_manual() {
    let cannula = device(NASAL_CANNULA);
    for (group, rows) in [
        (group::NEWBORN, &["dev-prongs-who-newborn"][..]),
        (group::INFANT, &["dev-prongs-who-infant"]),
        (group::CHILD, &["dev-prongs-who-child", "dev-prongs-child"]),
    ] {
        let range = cannula.flow_for(group);
        assert_in_union("cannula of a child", flow_ends(range), rows);
        let usual = cannula.usual_for(group);
        assert!(range.holds(usual), "{usual} in {range}: {}", fact(rows[0]));
    }
}

#[test]
fn cannula_gives_about_four_points_a_litre() {
    let cannula = device(NASAL_CANNULA);
    let rows = [
        (1.0, "dev-cann-1"),
        (2.0, "dev-cann-2"),
        (3.0, "dev-cann-3"),
        (4.0, "dev-cann-4"),
        (5.0, "dev-cann-5"),
        (6.0, "dev-cann-6"),
    ];
    assert_eq!(cannula.oxygen_by_flow.len(), rows.len(), "a share for each litre");
    for (litres, row) in rows {
        let fact = fact(row);
        let share = cannula
            .oxygen_by_flow
            .iter()
            .find(|(at, _)| *at == flow(litres))
            .unwrap_or_else(|| panic!("no share at {litres} L/min: {fact}"))
            .1;
        assert!(fact.holds(share.as_percent(), 2.0), "{share}: {fact}");
        assert!(
            cannula.oxygen.holds(share),
            "{share} in {}: {fact}",
            cannula.oxygen
        );
    }
}

#[test]
fn cannula_share_is_24_to_44() {
    let (low, high) = percent_ends(device(NASAL_CANNULA).oxygen);
    let fact_ends = fact("dev-cann-openrn-o2");
    let (least, most) = fact_ends.range();
    assert!(
        (low - least).abs() <= 2.0 && (high - most).abs() <= 2.0,
        "{low} to {high} %: {fact_ends}"
    );
    // A second text is narrower; the book must at least reach over it.
    let other = fact("dev-cann-out-o2");
    assert!(low <= other.range().0 && high >= other.range().1, "{other}");
}

#[test]
fn cannula_comfort_limit_is_4() {
    let Value::Flow(limit) = rule(policy::CANNULA_COMFORT_FLOW).value else {
        panic!("expected a flow");
    };
    for row in ["dev-cann-irrit", "dev-humid"] {
        let fact = fact(row);
        assert_eq!(limit, flow(fact.number()), "{fact}");
    }
}

#[test]
fn simple_mask_runs_from_a_floor_of_5_or_6() {
    let mask = device(SIMPLE_MASK);
    let rows = [
        "dev-mask-bts",
        "dev-mask-openrn-flow",
        "dev-mask-alt-flow",
        "dev-mask-text-flow",
    ];
    assert_in_union("simple mask", flow_ends(mask.flow), &rows);
    let floor = fact("dev-mask-text-floor");
    let (low, _) = flow_ends(mask.flow);
    assert!(floor.holds(low, 0.0), "from {low} L/min: {floor}");
    for row in rows {
        let fact = fact(row);
        let usual = mask.usual.as_litres_per_minute();
        assert!(fact.holds(usual, 0.0), "usual {usual} L/min: {fact}");
    }
}

#[test]
fn a_mask_is_washed_through_by_5_or_more_in_every_group() {
    let floor = fact("dev-mask-floor");
    for id in [SIMPLE_MASK, PARTIAL_REBREATHER, NON_REBREATHER, TRACHEOSTOMY_MASK] {
        for group in GROUPS {
            let (low, _) = flow_ends(device(id).flow_for(group));
            assert!(
                low >= floor.number(),
                "{} from {low} L/min in group {group:?}: {floor}",
                device(id).rule.id
            );
        }
    }
}

#[test]
fn simple_mask_share_is_a_published_one() {
    assert_in_union(
        "simple mask",
        percent_ends(device(SIMPLE_MASK).oxygen),
        &["dev-mask-openrn-o2", "dev-mask-alt-o2", "dev-mask-text-o2"],
    );
    let text = fact("dev-mask-text-o2");
    assert_eq!(percent_ends(device(SIMPLE_MASK).oxygen), text.range(), "{text}");
}

#[test]
fn reservoir_mask_runs_from_10_to_15() {
    let mask = device(NON_REBREATHER);
    assert_in_union(
        "non-rebreather mask",
        flow_ends(mask.flow),
        &["dev-nrb-open", "dev-resv-bts08", "dev-resv-bts17"],
    );
    for row in ["dev-nrb-open", "dev-resv-bts08"] {
        let whole = fact(row);
        assert_eq!(flow_ends(mask.flow), whole.range(), "{whole}");
    }
    let usual = fact("dev-resv-bts17");
    assert_eq!(mask.usual, flow(usual.number()), "usual: {usual}");
    let (least, most) = (fact("cp-resv-least"), fact("cp-resv-most"));
    for id in [NON_REBREATHER, PARTIAL_REBREATHER] {
        for group in GROUPS {
            let (low, high) = flow_ends(device(id).flow_for(group));
            assert!(least.holds(low, 0.0), "from {low} L/min: {least}");
            assert!(high <= most.number(), "to {high} L/min: {most}");
        }
    }
}

#[test]
fn reservoir_mask_can_give_the_share_that_a_state_asks() {
    let mask = device(NON_REBREATHER);
    let asked = fact("dev-nrb-va");
    assert!(
        mask.oxygen.holds(percent(asked.number())),
        "{}: {asked}",
        mask.oxygen
    );
    assert_in_union(
        "non-rebreather mask",
        percent_ends(mask.oxygen),
        &["dev-nrb-text"],
    );
}

#[test]
fn partial_rebreather_is_in_the_published_ranges() {
    let mask = device(PARTIAL_REBREATHER);
    let rows = ["dev-prb-flow", "dev-prb-flow-more"];
    assert_in_union("partial rebreather mask", flow_ends(mask.flow), &rows);
    // The one flow that both families of texts share.
    for row in rows {
        let fact = fact(row);
        assert!(
            fact.holds(mask.usual.as_litres_per_minute(), 0.0),
            "usual: {fact}"
        );
    }
    assert_in_union(
        "partial rebreather mask",
        percent_ends(mask.oxygen),
        &["dev-prb-o2"],
    );
}

#[test]
fn hand_bag_is_used_at_15_and_gives_85_percent_or_more() {
    let bag = device(BAG_VALVE_MASK);
    let usual = fact("dev-bvm-flow");
    assert_eq!(bag.usual, flow(usual.number()), "usual: {usual}");
    let (_, high) = flow_ends(bag.flow);
    assert!(high <= usual.number(), "to {high} L/min: {usual}");
    for row in ["dev-bvm-astm", "dev-bvm-iso"] {
        let fact = fact(row);
        let (low, _) = percent_ends(bag.oxygen);
        assert!(low >= fact.number(), "from {low} %: {fact}");
    }
    assert!(bag.reservoir, "the shares are with a reservoir: {usual}");
}

#[test]
fn devices_with_a_bag_say_so() {
    let step = fact("step-fill");
    for device in &RULEBOOK.devices {
        let has_bag = ["partial-rebreather", "non-rebreather", "bag-valve-mask"].contains(&&*device.rule.id);
        assert_eq!(device.reservoir, has_bag, "{}: {step}", device.rule.id);
    }
}

#[test]
fn no_device_asks_more_than_a_flowmeter_gives() {
    for row in ["meter-kkk", "meter-or"] {
        let most = fact(row);
        for device in &RULEBOOK.devices {
            for group in GROUPS {
                let (low, high) = flow_ends(device.flow_for(group));
                assert!(
                    low > 0.0 && high <= most.number(),
                    "{} from {low} to {high} L/min: {most}",
                    device.rule.id
                );
            }
        }
    }
}

#[test]
fn usual_flows_are_in_their_ranges_in_every_group() {
    for device in &RULEBOOK.devices {
        assert!(device.flow.holds(device.usual), "{}", device.rule.id);
        for group in GROUPS {
            let (range, usual) = (device.flow_for(group), device.usual_for(group));
            assert!(range.holds(usual), "{}: {usual} in {range}", device.rule.id);
        }
    }
}

#[test]
fn comfort_limit_lies_within_the_range_of_the_cannula() {
    let limit: PolicyId = policy::CANNULA_COMFORT_FLOW;
    let Value::Flow(limit) = rule(limit).value else {
        panic!("expected a flow");
    };
    let range = device(NASAL_CANNULA).flow;
    assert!(
        range.holds(limit),
        "{limit} in {range}: {}",
        fact("dev-cann-irrit")
    );
}
