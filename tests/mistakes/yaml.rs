//! The punctuation of blocks.

use crate::book::{compiled, demo, mistakes};

mistakes! {
    tab_for_indent [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "flow-for:\n  infant: 6 to 8 L/min" => "flow-for:\n‹\t›infant: 6 to 8 L/min",
    }
    tab_before_a_key [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple mask\n‹\t›flow: 6 to 10 L/min",
    }
    tab_before_an_item [Marked("unreadable-yaml")] {
        "06-saturation-targets.md": "  - air-entrainment-31 at 6 L/min\n" => "‹\t›- air-entrainment-31 at 6 L/min\n",
    }
    quotation_closed_by_the_next_text [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: ‹\"›Simple mask\nflow: 6 to 10 L/min",
    }
    quotation_of_an_item_closed_by_the_next [Marked("unreadable-yaml")] {
        "05-delivery-devices.md": "  - \"The nose is blocked or bleeding.\"" => "  - ‹\"›The nose is blocked or bleeding.",
    }
    quotation_that_takes_in_keys [Marked("unreadable-yaml")] {
        "02-handling-cylinders-safely.md":
            "say: \"A cylinder is standing free.\"\ndo: \"" => "say: ‹\"›A cylinder is standing free.\ndo: ",
    }
    quotation_never_opened [Marked("unreadable-yaml")] {
        "02-handling-cylinders-safely.md": "say: \"A cylinder is standing free.\"" => "say: A cylinder is standing free.‹\"›",
    }
    blank_of_a_word_processor_after_a_colon [Marked("odd-blank")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple mask\nflow:‹\u{a0}›6 to 10 L/min",
    }
    blank_of_a_word_processor_in_an_indent [Marked("odd-blank")] {
        "05-delivery-devices.md": "flow-for:\n  infant: 6 to 8 L/min" => "flow-for:\n‹\u{a0}›\u{a0}infant: 6 to 8 L/min",
    }
    blanks_of_a_word_processor_twice [Marked("odd-blank"), Marked("odd-blank")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name:‹\u{2003}›Simple mask\nflow:‹\u{a0}›6 to 10 L/min",
    }
    blank_of_a_word_processor_after_a_quotation [Marked("odd-blank")] {
        "02-handling-cylinders-safely.md": "say: \"A cylinder is standing free.\"" => "say: \"A cylinder is standing free.\"‹\u{a0}›",
    }
    blank_of_a_word_processor_in_a_short_mapping [Marked("odd-blank")] {
        "02-handling-cylinders-safely.md": "setup: {device: nasal-cannula, flow: 2 L/min, group: adult, temperature: 50 °C}"
            => "setup: {device: nasal-cannula, flow:‹\u{a0}›2 L/min, group: adult, temperature: 50 °C}",
    }
    space_of_no_width_in_a_value [Marked("hidden-character")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple‹\u{200b}› mask\nflow: 6 to 10 L/min",
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

/// In a value a blank of another kind can mean nothing but a space: the book is the same.
#[test]
fn blanks_of_a_word_processor_in_values_are_spaces() {
    let plain = compiled(&demo()).unwrap();
    let mut odd = demo();
    for (name, old, new) in [
        (
            "05-delivery-devices.md",
            "name: Simple mask\nflow: 6 to 10 L/min",
            "name: Simple\u{a0}mask\nflow: 6\u{2009}to\u{3000}10\u{202f}L/min\u{a0}",
        ),
        (
            "05-delivery-devices.md",
            "  - \"The nose is blocked or bleeding.\"",
            "  - \"The nose\u{a0}is blocked or bleeding.\"",
        ),
        (
            "02-handling-cylinders-safely.md",
            "say: \"A cylinder is standing free.\"",
            "say: \"A\u{a0}cylinder is\u{a0}standing free.\"",
        ),
        (
            "06-saturation-targets.md",
            "  - air-entrainment-31 at 6 L/min\n",
            "  - air-entrainment-31\u{a0}at 6\u{a0}L/min\n",
        ),
    ] {
        let (_, text) = odd.iter_mut().find(|(known, _)| known == name).unwrap();
        assert_eq!(text.matches(old).count(), 1, "{old:?}");
        *text = text.replacen(old, new, 1);
    }
    let odd = compiled(&odd).unwrap_or_else(|rejected| panic!("{}", rejected.render(false)));
    assert_ne!(odd.book.digest, plain.book.digest);
    let find = |book: &oxyfolio::book::Rulebook| {
        let mask = book.find_device("simple-mask").unwrap();
        let mask = book.device(mask).unwrap();
        (mask.rule.name.to_string(), mask.flow.to_string())
    };
    assert_eq!(find(&odd.book), find(&plain.book));
    let without_digest = |book: &oxyfolio::book::Rulebook| {
        format!("{book:?}")
            .replace(&*book.digest, "")
            .replace(&*book.short_digest, "")
    };
    assert_eq!(without_digest(&odd.book), without_digest(&plain.book));
}
