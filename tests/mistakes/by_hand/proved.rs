//! What is done about worked cases, orders of steps, and guards that are not what was meant.

use crate::followed::Deed;

pub const DEEDS: &[Deed] = &[
    // Cases.
    (
        "case_that_expects_nothing",
        &[("expect: {}", "expect: {findings: [stop hazard standing-free]}")],
    ),
    (
        "case_with_a_finding_by_its_id_alone",
        &[(
            "findings: [standing-free]",
            "findings: [stop hazard standing-free]",
        )],
    ),
    (
        "case_that_misses_a_finding",
        &[(
            "state: [cylinder standing free]}\n  expect: no finding",
            "state: [cylinder standing free]}\n  expect: {findings: [stop hazard standing-free]}",
        )],
    ),
    (
        "case_that_expects_too_much",
        &[(
            "state: [not grease near]}\n  expect: {findings: [stop hazard grease-near]}",
            "state: [not grease near]}\n  expect: no finding",
        )],
    ),
    (
        "case_with_a_step_that_comes_too_early",
        &[(
            "zero, gauge]\n  expect: {refused: [gauge]}",
            "zero, gauge]\n  expect: {too-early: [gauge], refused: [gauge]}",
        )],
    ),
    (
        "case_with_an_end_that_is_not_safe",
        &[(
            "too-early: [bleed], refused: [bleed], ends: safe}",
            "too-early: [bleed], refused: [bleed], ends: unsafe}",
        )],
    ),
    (
        "case_about_nothing",
        &[(
            "check-left-with-the-flow-open\n",
            "check-left-with-the-flow-open\n  procedure: check-cylinder\n",
        )],
    ),
    // Orders.
    (
        "step_free_to_come_too_early",
        &[(
            "after: [flames, label, test-date, tighten]\n",
            "after: [flames, label, test-date, tighten, zero]\n",
        )],
    ),
    (
        "step_free_to_come_before_what_it_relies_on",
        &[("after: leaks\n", "after: [leaks, gauge]\n")],
    ),
    (
        "beginning_that_must_never_be",
        &[(
            "[cylinder standing free, regulator seated]",
            "[cylinder secured, regulator seated]",
        )],
    ),
    (
        "step_that_is_never_possible",
        &[(
            "begins-with: [cylinder secured]\n",
            "begins-with: [cylinder secured, regulator seated]\n",
        )],
    ),
    (
        "end_that_is_not_safe",
        &[(
            "and fools the reader.\"\n    after: close\n    critical: yes\n    prevents: left-pressurised\n",
            "and fools the reader.\"\n    after: close\n    critical: yes\n    prevents: left-pressurised\n  - id: zero-again\n    do: zero-flow\n    say: \"Turn the flow to zero again.\"\n    why: \"You opened it to bleed.\"\n    after: bleed\n    critical: yes\n",
        )],
    ),
    (
        "procedure_that_never_begins",
        &[(
            "follows: [check-cylinder]",
            "begins-with: [cylinder secured, regulator seated]",
        )],
    ),
    // Guards.
    (
        "and_beside_or_without_brackets",
        &[(
            "cylinder open and not device on patient or pressure < in-service-minimum",
            "cylinder open and (not device on patient or pressure < in-service-minimum)",
        )],
    ),
    (
        "measure_compared_with_itself",
        &[("pressure < pressure", "pressure < in-service-minimum")],
    ),
    (
        "end_that_a_range_lacks",
        &[("value: at least 5 °C", "value: 5 to 30 °C")],
    ),
    (
        "guard_of_too_many_levels",
        &[(
            "(((((((((((((((((((((((((((((((((((((((cylinder standing free)))))))))))))))))))))))))))))))))))))))",
            "cylinder standing free",
        )],
    ),
    // Names, keys and rules.
    (
        "policy_called_like_a_word_of_guards",
        &[
            ("- id: pressure\n", "- id: least-pressure\n"),
            ("{line-pressure}", "{least-pressure}"),
            ("rule: policy line-pressure", "rule: policy least-pressure"),
        ],
    ),
    (
        "quoted_value_never_closed",
        &[("{in-service-minimum it", "{in-service-minimum} it")],
    ),
    (
        "key_that_is_a_mapping",
        &[("{name: x}: In-service", "name: In-service")],
    ),
    ("general_target_that_outranks", &[("outranks: [stroke]\n", "")]),
    (
        "agency_left_out",
        &[("```\nname: Larkmere", "```yaml agency\nname: Larkmere")],
    ),
    (
        "value_not_decided",
        &[("undecided (seconds, up to 10 min)", "90 s")],
    ),
];
