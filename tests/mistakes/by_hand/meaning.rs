//! What is done about quantities, guards, and rules that don't fit together.

use crate::followed::Deed;

pub const DEEDS: &[Deed] = &[
    // Write the unit.
    (
        "policy_unreadable_and_guard_misspelled",
        &[("value: 15\n", "value: 15 min\n")],
    ),
    ("unit_with_spaces", &[("1 to 6 L / min", "1 to 6 L/min")]),
    // Quantities.
    (
        "contents_of_nothing",
        &[("contents: 0 L at 2200 psi", "contents: 350 L at 2200 psi")],
    ),
    (
        "contents_without_a_pressure",
        &[("contents: 350 L\n", "contents: 350 L at 2200 psi\n")],
    ),
    (
        "contents_the_wrong_way_round",
        &[("contents: 2200 psi at 350 L", "contents: 350 L at 2200 psi")],
    ),
    (
        "curly_quotes_from_a_text_processor",
        &[("“60 to 95 %”", "60 to 95 %")],
    ),
    (
        "date_in_another_order",
        &[("signed-off: 10/20/2026", "signed-off: 2026-10-20")],
    ),
    (
        "date_that_does_not_exist",
        &[("effective: 2026-11-31", "effective: 2026-11-30")],
    ),
    (
        "factor_without_its_pressure",
        &[("factor: 0.16 L\n", "factor: 0.16 L/psi\n")],
    ),
    ("ratio_with_a_colon", &[("entrains: 25:1", "entrains: 25 to 1")]),
    (
        "list_kept_in_quotes",
        &[("oxygen: \"[60 %, 95 %]\"", "oxygen: 60 to 95 %")],
    ),
    (
        "flow_ten_times_too_high",
        &[("flow: 10 to 150 L/min", "flow: 10 to 15 L/min")],
    ),
    (
        "recheck_misread_and_quoted",
        &[("recheck: five minutes", "recheck: 5 min")],
    ),
    (
        "device_without_its_flow",
        &[("- Venturi mask 6 L/min", "- air-entrainment-31 at 6 L/min")],
    ),
    ("number_in_words", &[("value: five minutes", "value: 5 min")]),
    (
        "number_with_sign_for_at_least",
        &[("saturation: ≥ 94 %", "saturation: 94 to 98 %")],
    ),
    (
        "one_flow_where_a_range_belongs",
        &[(
            "reservoir mask]\nflow: 15 L/min",
            "reservoir mask]\nflow: 10 to 15 L/min",
        )],
    ),
    ("oxygen_above_a_hundred", &[("85 to 110 %", "85 to 100 %")]),
    (
        "oxygen_below_that_of_air",
        &[("oxygen: 2 to 40 %", "oxygen: 22 to 40 %")],
    ),
    (
        "pressure_where_a_flow_belongs",
        &[("flow: 10 to 15 psi", "flow: 10 to 15 L/min")],
    ),
    (
        "range_where_one_flow_belongs",
        &[("usual: 12 to 15 L/min", "usual: 15 L/min")],
    ),
    (
        "range_with_up_to",
        &[("flow: up to 10 L/min", "flow: 6 to 10 L/min")],
    ),
    (
        "range_without_a_floor",
        &[("flow: at most 10 L/min", "flow: 6 to 10 L/min")],
    ),
    (
        "remark_after_a_quantity",
        &[("value: 500 psi (about 34 bar)", "value: 500 psi")],
    ),
    (
        "saturation_above_100_percent_in_a_case",
        &[("spo2: 193 %", "spo2: 93 %")],
    ),
    (
        "saturation_above_a_hundred",
        &[("saturation: 94 to 108 %", "saturation: 94 to 98 %")],
    ),
    ("unit_before_the_number", &[("value: psi 200", "value: 200 psi")]),
    // Guards.
    (
        "range_compared_without_in",
        &[(
            "temperature > use-temperature\"",
            "temperature > use-temperature.high\"",
        )],
    ),
    (
        "bracket_never_closed",
        &[(
            "not (device is non-rebreather or device is bag-valve-mask\"",
            "not (device is non-rebreather or device is bag-valve-mask)\"",
        )],
    ),
    (
        "bracket_never_opened",
        &[(
            "not device is non-rebreather or device is bag-valve-mask)",
            "not (device is non-rebreather or device is bag-valve-mask)",
        )],
    ),
    (
        "guard_that_stops_short",
        &[(
            "device on patient and\"",
            "device on patient and spo2 > target.high\"",
        )],
    ),
    ("one_quantity_after_in", &[("spo2 in 94 %", "spo2 in 94 to 98 %")]),
    (
        "range_written_out_without_in",
        &[("spo2 = 94 to 98 %", "spo2 in 94 to 98 %")],
    ),
    (
        "policy_that_nobody_defined",
        &[("pressure <= reserve", "pressure <= residual-pressure")],
    ),
    (
        "pressure_compared_with_a_time",
        &[("pressure <= call-ahead-time", "pressure <= change-over-pressure")],
    ),
    (
        "pressure_compared_with_a_flow",
        &[("pressure <= 500 L/min", "pressure <= 500 psi")],
    ),
    // Numbers that contradict each other.
    (
        "ages_that_overlap",
        &[("age: 28 days to 2 years", "age: 28 days to 1 year")],
    ),
    (
        "ages_with_a_gap",
        &[("age: at least 13 years", "age: at least 12 years")],
    ),
    (
        "factor_per_bar_for_psi",
        &[("factor: 0.16 L/bar", "factor: 0.16 L/psi")],
    ),
    (
        "factor_ten_times_too_large",
        &[("factor: 1.6 L/psi", "factor: 0.16 L/psi")],
    ),
    (
        "water_capacity_ten_times_too_large",
        &[(
            "name: \"2 L\"\n  series: metric\n  use: portable\n  water-capacity: 20 L\n",
            "name: \"2 L\"\n  series: metric\n  use: portable\n  water-capacity: 2 L\n",
        )],
    ),
    (
        "oxygen_with_the_pins_of_nitrous_oxide",
        &[("gas: oxygen\n  pins: [3, 5]", "gas: oxygen\n  pins: [2, 5]")],
    ),
    (
        "target_with_its_digits_swapped",
        &[("saturation: 49 to 98 %", "saturation: 94 to 98 %")],
    ),
    (
        "two_targets_for_one_patient",
        &[(
            "name: \"Adult with a suspected stroke\"\ngroups: [adult]\n",
            "name: \"Adult with a suspected stroke\"\ngroups: [adult]\ncondition: stroke\ncondition-name: \"Suspected stroke\"\n",
        )],
    ),
    ("list_of_groups_empty", &[("groups: []", "groups: [infant]")]),
    // Rules that don't fit together.
    (
        "agency_twice",
        &[(
            "\n\nOurs.\n\n```yaml agency\nname: Upper Larkmere Rescue\n```\n",
            "\n",
        )],
    ),
    (
        "card_flows_from_high_to_low",
        &[("flows: [15 L/min, 10 L/min]", "flows: [10 L/min, 15 L/min]")],
    ),
    (
        "card_pressures_not_in_order",
        &[("500 psi, 750 psi]", "750 psi, 500 psi]")],
    ),
    (
        "card_with_an_empty_list",
        &[("procedures: []", "procedures: [fit-regulator]")],
    ),
    (
        "card_without_its_list",
        &[(
            "title: Fit the regulator\n  layout: steps\n  sizes: [ID-1, 3 x 5 in, A7, A6]\n",
            "title: Fit the regulator\n  layout: steps\n  procedures: [fit-regulator]\n  sizes: [ID-1, 3 x 5 in, A7, A6]\n",
        )],
    ),
    (
        "condition_name_without_a_condition",
        &[(
            "condition-name: \"Suspected stroke\"",
            "condition: stroke\ncondition-name: \"Suspected stroke\"",
        )],
    ),
    (
        "condition_named_two_ways",
        &[(
            "condition: heart-attack\ncondition-name: \"Suspected stroke\"",
            "condition: stroke\ncondition-name: \"Suspected stroke\"",
        )],
    ),
    (
        "connection_that_nothing_tells_apart",
        &[(
            "gas: cyclopropane\n",
            "gas: cyclopropane\n  pins: [3, 6]\n  number: \"CGA 920\"\n",
        )],
    ),
    (
        "cylinder_with_a_connection_of_air",
        &[("connection: pin-index-air", "connection: pin-index-oxygen")],
    ),
    (
        "flow_for_a_group_that_it_does_not_fit",
        &[("  newborn: 4 to 5 L/min\n", "")],
    ),
    (
        "flow_tolerance_that_is_no_share",
        &[("value: 2 L/min", "value: 15 %")],
    ),
    (
        "gauge_tolerance_that_is_no_pressure",
        &[(
            "name: Gauge tolerance\n  value: 50 %",
            "name: Gauge tolerance\n  value: 50 psi",
        )],
    ),
    (
        "ladder_device_that_does_not_fit",
        &[(
            "  - partial-rebreather at 10 L/min\n  - non-rebreather at 10 L/min\n",
            "  - non-rebreather at 10 L/min\n",
        )],
    ),
    (
        "ladder_flow_outside_the_limits_of_a_group",
        &[(
            "  - nasal-cannula at 4 L/min\n  - simple-mask at 6 L/min\n  - non-rebreather at 10",
            "  - nasal-cannula at 2 L/min\n  - simple-mask at 6 L/min\n  - non-rebreather at 10",
        )],
    ),
    (
        "nitrous_oxide_may_be_mated",
        &[(
            "number: \"CGA 910\"\n  may-be-mated: yes",
            "number: \"CGA 910\"\n  may-be-mated: no",
        )],
    ),
    (
        "oxygen_by_flow_not_rising",
        &[(
            "  4 L/min: 36 %\n  3 L/min: 32 %\n",
            "  3 L/min: 32 %\n  4 L/min: 36 %\n",
        )],
    ),
    (
        "oxygen_for_a_flow_outside_the_range",
        &[("  7 L/min: 48 %\n", "")],
    ),
    ("pin_eight", &[("pins: [2, 8]", "pins: [2, 5]")]),
    (
        "policy_in_another_kind_of_quantity",
        &[("value: 10 min", "value: 50 %")],
    ),
    ("policy_missing", &[("id: filling-limit", "id: fill-limit")]),
    ("pressures_not_rising", &[("value: 600 psi", "value: 200 psi")]),
    (
        "review_before_effective",
        &[("review: 2025-11-01", "review: 2027-11-01")],
    ),
    (
        "start_not_on_the_ladder",
        &[(
            "start: nasal-cannula at 1.5 L/min",
            "start: nasal-cannula at 1 L/min",
        )],
    ),
    (
        "step_after_a_later_step",
        &[("after: [flames, pins]", "after: [flames]")],
    ),
    (
        "step_after_itself",
        &[("after: [device-off, close, gauge]", "after: [device-off, gauge]")],
    ),
    (
        "step_given_twice",
        &[(
            "  - id: zero\n    do: cap-outlet",
            "  - id: cap\n    do: cap-outlet",
        )],
    ),
    (
        "step_in_a_ring",
        &[(
            "after: [device-off, secure, bleed]",
            "after: [device-off, secure]",
        )],
    ),
    (
        "urgent_start_without_its_line",
        &[(
            "start: air-entrainment-28 at 4 L/min\nurgent-start",
            "start: air-entrainment-28 at 4 L/min\nurgent-below: 80 %\nurgent-start",
        )],
    ),
    (
        "usual_flow_of_a_group_outside_its_range",
        &[("  infant: 9 L/min", "  infant: 6 L/min")],
    ),
    (
        "usual_flow_outside_the_range",
        &[(
            "name: Simple mask\nflow: 6 to 10 L/min\nusual: 12 L/min\n",
            "name: Simple mask\nflow: 6 to 10 L/min\nusual: 8 L/min\n",
        )],
    ),
];
