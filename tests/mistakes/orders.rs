//! Procedures that allow an order which does harm, and what would forbid it.

use crate::book::mistakes;

mistakes! {
    step_free_to_come_too_early [Marked("unsafe-order"), Follows("case-failed")] {
        "11-shift-inspection.md":
            "id: open\n    do: open-cylinder\n    say: \"Stand to one side. Open slowly, then fully.\"\n    why: \"A fast opening heats the gas.\"\n    after: [flames, label, test-date, tighten, zero]"
            => "id: ‹open›\n    do: open-cylinder\n    say: \"Stand to one side. Open slowly, then fully.\"\n    why: \"A fast opening heats the gas.\"\n    after: [flames, label, test-date, tighten]",
    }
    step_free_to_come_before_what_it_relies_on [Follows("unsafe-order"), Marked("step-too-early")] {
        "11-shift-inspection.md":
            "id: close\n    do: close-cylinder\n    say: \"Close the cylinder valve.\"\n    why: \"A set left open leaks away.\"\n    after: [leaks, gauge]"
            => "id: ‹close›\n    do: close-cylinder\n    say: \"Close the cylinder valve.\"\n    why: \"A set left open leaks away.\"\n    after: leaks",
    }
    beginning_that_must_never_be [Follows("unsafe-beginning"), Follows("case-failed")] {
        "11-shift-inspection.md": "begins-with: [cylinder secured, regulator seated]"
            => "begins-with: [cylinder standing free, regulator seated]",
    }
    beginning_nobody_knows [Marked("unknown-observation")] {
        "11-shift-inspection.md": "begins-with: [cylinder secured, regulator seated]"
            => "begins-with: [cylinder secured, ‹tree fallen›]",
    }
    step_that_is_never_possible [Marked("step-never-possible"), Follows("case-failed")] {
        "11-shift-inspection.md": "begins-with: [cylinder secured, regulator seated]" => "begins-with: [cylinder secured]",
        "11-shift-inspection.md": "  - id: tighten\n" => "  - id: ‹tighten›\n",
    }
    end_that_is_not_safe [Marked("unsafe-end"), Follows("unknown-name")] {
        "11-shift-inspection.md":
            "  - id: zero-again\n    do: zero-flow\n    say: \"Turn the flow to zero again.\"\n    why: \"You opened it to bleed.\"\n    after: bleed\n    critical: yes\n"
            => "",
        "11-shift-inspection.md": "  - id: bleed\n" => "  - id: ‹bleed›\n",
    }
    procedure_that_never_begins [Follows("procedure-never-begins"), Follows("case-failed")] {
        "11-shift-inspection.md": "begins-with: [cylinder secured, regulator seated]" => "follows: [check-cylinder]",
    }
}
