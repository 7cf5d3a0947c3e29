//! What a person does who follows a lint's hint, finding by finding.

use crate::followed::Deed;

pub const DEEDS: &[Deed] = &[
    // Groups and targets.
    ("nobody_just_born", &[("age: 1 to 28 days", "age: under 28 days")]),
    (
        "nobody_very_old",
        &[("age: 12 to 100 years", "age: at least 12 years")],
    ),
    (
        "group_without_a_target",
        &[
            (
                "```yaml target\nid: adult-general\n",
                "```yaml target\nid: youth-general\nname: Youth\ngroups: [youth]\nsaturation: 94 to 98 %\nstart: simple-mask at 8 L/min\nladder:\n  - simple-mask at 8 L/min\nstep-up: \"Call for help.\"\nstep-down: \"Try without.\"\nrecheck: 5 min\n```\n\nAdults.\n\n```yaml target\nid: adult-general\n",
            ),
            (
                "oxygen: 35 to 60 %\nfits: [adult, child, infant]\n",
                "oxygen: 35 to 60 %\nfits: [adult, youth, child, infant]\n",
            ),
        ],
    ),
    (
        "target_without_its_minute",
        &[(
            "name: \"Newborn, after the first hour\"\n  groups: [newborn]\n",
            "name: \"Newborn, after the first hour\"\n  groups: [newborn]\n  minute-of-life: 60 min\n",
        )],
    ),
    (
        "condition_told_apart_by_the_minute",
        &[(
            "condition: heart-attack\nminute-of-life: 60 min\n",
            "condition: stroke\ncondition-name: \"Suspected stroke\"\n",
        )],
    ),
    (
        "newborn_minutes_not_in_order",
        &[(
            "minute-of-life: 0.5 min\n  saturation: 55 to 60 %",
            "minute-of-life: 2 min\n  saturation: 65 to 70 %",
        )],
    ),
    (
        "newborn_target_that_falls",
        &[(
            "3 min\n  saturation: 60 to 65 %",
            "3 min\n  saturation: 70 to 75 %",
        )],
    ),
    (
        "target_too_narrow",
        &[("saturation: 88 to 89 %", "saturation: 88 to 92 %")],
    ),
    (
        "ladder_with_a_weaker_device",
        &[(
            "  - air-entrainment-28 at 4 L/min\n  - air-entrainment-24 at 2 L/min\n",
            "  - air-entrainment-24 at 2 L/min\n  - air-entrainment-28 at 4 L/min\n",
        )],
    ),
    (
        "ladder_with_a_lower_flow",
        &[(
            "  - simple-mask at 10 L/min\n  - simple-mask at 6 L/min\n",
            "  - simple-mask at 6 L/min\n  - simple-mask at 10 L/min\n",
        )],
    ),
    (
        "ladder_with_a_rung_twice",
        &[(
            "  - non-rebreather at 15 L/min\n  - non-rebreather at 15 L/min\n",
            "  - non-rebreather at 15 L/min\n",
        )],
    ),
    (
        "urgent_start_with_less_oxygen",
        &[(
            "urgent-below: 80 %\nurgent-start: air-entrainment-24 at 2 L/min",
            "urgent-below: 80 %\nurgent-start: non-rebreather at 15 L/min",
        )],
    ),
    // Hazards.
    (
        "hazard_that_forbids_a_usual_flow",
        &[(
            "device is pocket-mask and flow >= device.most-flow",
            "device is pocket-mask and flow > device.most-flow",
        )],
    ),
    (
        "hazard_that_forbids_a_rung",
        &[(
            "\"retains-co2 and device is air-entrainment-40 and group is adult\"",
            "\"retains-co2 and device is air-entrainment-40 and group is adult and spo2 > target.high\"",
        )],
    ),
    ("hazard_in_the_target", &[("value: 91 %", "value: 85 %")]),
    (
        "policy_that_the_device_cannot_have",
        &[("value: 8 L/min", "value: 4 L/min")],
    ),
    (
        "hazard_of_two_parts_that_exclude_each_other",
        &[(
            "temperature < use-temperature.low and temperature > use-temperature.high",
            "temperature < use-temperature.low",
        )],
    ),
    (
        "hazard_beyond_what_can_be_measured",
        &[("spo2 > 100 %", "spo2 > target.high")],
    ),
    (
        "hazard_by_a_target_that_is_never_known",
        &[(
            "carbon-monoxide and group is adult and spo2 > target.high",
            "device on patient and spo2 > target.high",
        )],
    ),
    (
        "hazard_that_is_always_there",
        &[(
            "temperature <= use-temperature.low or temperature > use-temperature.low",
            "temperature < use-temperature.low",
        )],
    ),
    (
        "hazard_with_too_many_cases",
        &[(
            "temperature < use-temperature.low and retains-co2 and critical-illness and return-of-circulation and heart-attack and stroke and carbon-monoxide and not stroke",
            "temperature < use-temperature.low",
        )],
    ),
    // Cylinders, pressures and rows.
    (
        "minimum_that_a_full_cylinder_does_not_reach",
        &[("contents: 50 L at 50 bar", "contents: 200 L at 200 bar")],
    ),
    ("use_hotter_than_storage", &[("-20 to 60 °C", "-20 to 50 °C")]),
    ("use_colder_than_storage", &[("-40 to 50 °C", "-20 to 50 °C")]),
    ("card_row_of_zeros", &[("500 psi, 200 psi]", "500 psi]")]),
    (
        "card_row_above_filling",
        &[("[200 bar, 2000 psi", "[2200 psi, 2000 psi")],
    ),
    (
        "card_rows_that_stop_early",
        &[("1200 psi]", "1200 psi, 1000 psi, 750 psi, 500 psi]")],
    ),
    (
        "factor_that_promises_too_much",
        &[(
            "water-capacity: 2.1 L\n  contents: 350 L at 2200 psi",
            "water-capacity: 2.2 L\n  contents: 350 L at 2200 psi",
        )],
    ),
    (
        "factor_that_wastes",
        &[(
            "contents: 290 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 0.119 L/psi",
            "contents: 350 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 0.16 L/psi",
        )],
    ),
    (
        "contents_that_do_not_fit_in",
        &[(
            "contents: 3100 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 1.42 L/psi",
            "contents: 3450 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 1.56 L/psi",
        )],
    ),
    (
        "contents_above_the_filling_limit",
        &[(
            "contents: 200 L at 200 bar\n  service-pressure: 150 bar",
            "contents: 150 L at 150 bar\n  service-pressure: 150 bar",
        )],
    ),
    // Devices.
    (
        "reservoir_that_collapses",
        &[(
            "flow: 5 to 15 L/min\nusual: 15 L/min\noxygen: 60",
            "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60",
        )],
    ),
    (
        "reservoir_that_collapses_in_one_group",
        &[("child: 5 to 15 L/min", "child: 8 to 15 L/min")],
    ),
    (
        "reservoir_that_may_collapse_in_an_adult",
        &[(
            "flow: 8 to 15 L/min\nusual: 15 L/min\noxygen: 60",
            "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60",
        )],
    ),
    (
        "ratio_that_mixes_to_another_share",
        &[("entrains: 16 to 1", "entrains: 10.3 to 1")],
    ),
    (
        "total_flow_too_low",
        &[(
            "usual: 12 L/min\n  oxygen: 55 to 62 %",
            "usual: 15 L/min\n  oxygen: 55 to 62 %",
        )],
    ),
    (
        "oxygen_that_falls_with_flow",
        &[("  3 L/min: 26 %", "  3 L/min: 32 %")],
    ),
    (
        "oxygen_outside_the_range",
        &[("  6 L/min: 48 %", "  6 L/min: 44 %")],
    ),
    // Chapters, links and words.
    (
        "chapter_in_a_note_that_is_not_there",
        &[(
            "the device card and chapter 25.",
            "the device card and chapter 5.",
        )],
    ),
    (
        "chapters_in_prose_that_are_not_there",
        &[("as chapters 4, 15 and 99 say", "as chapters 4, 13 and 14 say")],
    ),
    (
        "chapter_over_the_end_of_a_line",
        &[("as chapter\n15 says", "as chapter\n13 says")],
    ),
    (
        "link_to_no_chapter",
        &[
            ("](05-delivery-device.md)", "](05-delivery-devices.md)"),
            (
                "](05-delivery-devices.md#nasal)",
                "](05-delivery-devices.md#nasal-cannula)",
            ),
        ],
    ),
    (
        "abbreviation_in_prose",
        &[("Ask for SpO₂, and", "Ask for the oxygen saturation (SpO₂), and")],
    ),
    (
        "abbreviation_in_a_step",
        &[(
            "The SPO2 is very low.",
            "The oxygen saturation (SPO2) is very low.",
        )],
    ),
    (
        "number_of_a_policy_in_a_hazard",
        &[("Only 15 min of oxygen", "Only {call-ahead-time} of oxygen")],
    ),
    (
        "number_of_a_device_in_a_hazard",
        &[(
            "Non-rebreather at 15 L/min (newborn",
            "Non-rebreather at {non-rebreather.most-flow} (newborn",
        )],
    ),
    (
        "number_of_the_target_itself",
        &[("Below 90 %: start", "Below {target.low}: start")],
    ),
    // Rules that nothing uses.
    (
        "device_on_no_ladder_and_no_card",
        &[(
            "devices:\n  - nasal-cannula\n",
            "devices:\n  - pocket-mask\n  - nasal-cannula\n",
        )],
    ),
    (
        "policy_that_no_guard_compares",
        &[(
            "A middle step. It has no bag.",
            "Above the comfortable flow through a cannula. It has no bag.",
        )],
    ),
    (
        "policy_that_only_its_own_reason_names",
        &[(
            "A middle step. It has no bag.",
            "Above the comfortable flow through a cannula. It has no bag.",
        )],
    ),
    (
        "connection_that_only_its_own_reason_names",
        &[("Each outlet", "Each oxygen low-pressure outlet")],
    ),
    (
        "connection_that_no_cylinder_has",
        &[(
            "- id: spare\n  name: Oxygen, a spare connection\n  gas: oxygen\n  number: \"1\"\n  may-be-mated: yes\n",
            "",
        )],
    ),
    // Allowing.
    (
        "allow_that_allows_nothing",
        &[("  allow:\n    connection-never-used: \"No longer so.\"\n", "")],
    ),
    (
        "allow_without_a_reason",
        &[("  allow:\n    connection-never-used: \"\"\n", "")],
    ),
    (
        "allow_of_a_lint_that_nobody_knows",
        &[("  allow:\n    everything: \"It is right.\"\n", "")],
    ),
    ("allow_as_a_list", &[("  allow: [connection-never-used]\n", "")]),
    (
        "signed_after_it_took_effect",
        &[("signed-off: 2026-12-01", "signed-off: 2026-10-20")],
    ),
    // Notes of the readers.
    (
        "after_that_says_nothing_new",
        &[("after: [leaks, gauge, open]", "after: [leaks, gauge]")],
    ),
    (
        "rule_without_a_reason",
        &[(
            "## The line\n\n```yaml policy",
            "## The line\n\nOurs.\n\n```yaml policy",
        )],
    ),
];
