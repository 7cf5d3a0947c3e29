//! The punctuation of blocks.

use crate::book::mistakes;

mistakes! {
    tab_for_indent [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "flow-for:\n  infant: 6 to 8 L/min" => "flow-for:\n\t‹i›nfant: 6 to 8 L/min",
    }
    quotation_never_closed [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "too-high: \"Above the most flow oxygen is wasted and little is gained.\""
            => "too-high: ‹\"›Above the most flow oxygen is wasted and little is gained.",
    }
    colon_in_bare_text [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "too-high: \"Above the most flow oxygen is wasted and little is gained.\""
            => "too-high: Above the most flow‹:› oxygen is wasted.",
    }
    list_never_closed [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %\nfits: [adult, child, infant]\nreservoir: yes\nchosen-when: \"The patient breathes but"
            => "oxygen: 60 to 95 %\nfits: [adult, child, infant\nreservoir‹:› yes\nchosen-when: \"The patient breathes but",
    }
    colon_left_out [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %\nfits: [adult, child, infant]"
            => "‹o›xygen 60 to 95 %\nfits: [adult, child, infant]",
    }
    space_after_colon_left_out [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %\nfits: [adult, child, infant]"
            => "‹o›xygen:60 to 95 %\nfits: [adult, child, infant]",
    }
    indent_one_too_many [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple mask\n flow‹:› 6 to 10 L/min",
    }
    indent_of_a_step_lost [Marked("unreadable-yaml")] {
        "09-stopping-and-shutting-down.md":
            "    do: tag-cylinder\n    say: \"See that the tag is on and true.\""
            => "   ‹d›o: tag-cylinder\n    say: \"See that the tag is on and true.\"",
    }
    dash_of_a_list_lost [Marked("unreadable-yaml")] {
        "06-saturation-targets.md": "  - air-entrainment-31 at 6 L/min\n" => "  ‹a›ir-entrainment-31 at 6 L/min\n",
    }
    anchor_and_alias [Marked("yaml-shorthand")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple mask\nflow: &mask ‹6 to 10 L/min›",
    }
    text_that_begins_with_a_star [Marked("unreadable-yaml")] {
        "02-handling-cylinders-safely.md": "say: \"There is a flame, a spark or smoking near the oxygen.\""
            => "say: ‹*›Flame* near the oxygen.",
    }
    text_that_begins_with_an_exclamation_mark [Marked("yaml-shorthand")] {
        "02-handling-cylinders-safely.md": "say: \"There is a flame, a spark or smoking near the oxygen.\""
            => "say: ! ‹There is a flame.›",
    }
    line_of_dashes [Marked("two-documents")] {
        "10-how-long-it-lasts.md": "note: \"Never counted in the minutes.\"\n- id: change-over-pressure"
            => "note: \"Never counted in the minutes.\"\n‹---›\n- id: change-over-pressure",

    }
    curly_quotation_marks [Marked("unreadable-yaml")] {
        "02-handling-cylinders-safely.md": "say: \"A cylinder is standing free.\"" => "say: “Stop‹:› it stands free.”",
    }
    quotation_inside_a_quotation [Marked("unreadable-yaml")] {
        "02-handling-cylinders-safely.md": "say: \"A cylinder is standing free.\"" => "say: \"It is \"‹j›ust for a moment\".\"",
    }
}
