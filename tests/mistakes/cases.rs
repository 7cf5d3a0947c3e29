//! Worked cases: what they can't say, and what a failing one tells.

use crate::book::mistakes;

mistakes! {
    case_that_expects_nothing [Marked("case-expects-nothing")] {
        "02-handling-cylinders-safely.md": "expect: {findings: [stop hazard standing-free]}" => "expect: ‹{}›",
    }
    case_with_a_level_of_its_own [Marked("not-a-finding")] {
        "02-handling-cylinders-safely.md": "expect: {findings: [stop hazard standing-free]}"
            => "expect: {findings: [‹halt› hazard standing-free]}",
    }
    case_with_a_finding_by_its_id_alone [Marked("not-a-finding")] {
        "02-handling-cylinders-safely.md": "expect: {findings: [stop hazard standing-free]}"
            => "expect: {findings: [‹standing-free›]}",
    }
    case_with_a_kind_misspelled [Marked("unknown-kind")] {
        "02-handling-cylinders-safely.md": "expect: {findings: [stop hazard standing-free]}"
            => "expect: {findings: [stop ‹hazzard› standing-free]}",
    }
    case_with_a_hazard_nobody_defined [Marked("unknown-name")] {
        "02-handling-cylinders-safely.md": "expect: {findings: [stop hazard standing-free]}"
            => "expect: {findings: [stop hazard ‹tree-fallen›]}",
    }
    case_that_misses_a_finding [Marked("case-failed")] {
        "02-handling-cylinders-safely.md": "expect: {findings: [stop hazard standing-free]}" => "expect: ‹no finding›",
    }
    case_that_expects_too_much [Marked("case-failed")] {
        "02-handling-cylinders-safely.md": "state: [not grease near]}\n  expect: no finding"
            => "state: [not grease near]}\n  expect: {findings: ‹[stop hazard grease-near]›}",
    }
    case_with_an_observation_nobody_knows [Marked("unknown-observation")] {
        "02-handling-cylinders-safely.md": "group: adult, state: [cylinder standing free]}"
            => "group: adult, state: [‹tree fallen›]}",
    }
    case_with_a_device_nobody_defined [Marked("unknown-name")] {
        "02-handling-cylinders-safely.md": "{device: nasal-cannula, flow: 2 L/min, group: adult, state: [cylinder standing free]}"
            => "{device: ‹tent›, flow: 2 L/min, group: adult, state: [cylinder standing free]}",
    }
    case_with_a_step_nobody_defined [Marked("unknown-name")] {
        "11-shift-inspection.md": "steps: [zero, regulator, flames," => "steps: [zero, ‹hammer›, flames,",
    }
    case_with_a_step_that_comes_too_early [Marked("case-failed")] {
        "11-shift-inspection.md": "tighten, zero, gauge]\n  expect: {too-early: [gauge], refused: [gauge]}"
            => "tighten, zero, gauge]\n  expect: ‹{refused: [gauge]}›",
    }
    case_with_an_end_that_is_not_safe [Marked("case-failed")] {
        "11-shift-inspection.md": "too-early: [bleed], refused: [bleed], ends: unsafe}"
            => "too-early: [bleed], refused: [bleed], ends: ‹safe›}",
    }
    case_about_nothing [Marked("case-without-subject")] {
        "11-shift-inspection.md":
            "- id: check-left-with-the-flow-open\n  procedure: check-cylinder\n  steps: [secure, flames, label, test-date, regulator, tighten, zero, open, leaks, gauge, close, bleed]\n  expect: {ends: unsafe}"
            => "- ‹id: check-left-with-the-flow-open\n  steps: [secure, flames, label, test-date, regulator, tighten, zero, open, leaks, gauge, close, bleed]\n  expect: {ends: unsafe}›",
    }
}
