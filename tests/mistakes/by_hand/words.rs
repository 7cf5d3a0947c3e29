//! What is done about blocks, keys, names and the signs of the notation.

use crate::followed::Deed;

pub const DEEDS: &[Deed] = &[
    // Blocks.
    ("kind_of_another_trade", &[("```yaml mask", "```yaml device")]),
    ("agency_misspelled", &[("```yml agency", "```yaml agency")]),
    ("yaml_with_a_colon", &[("```yaml: device", "```yaml device")]),
    ("yml_for_yaml", &[("```yml device", "```yaml device")]),
    (
        "word_after_the_kind",
        &[("```yaml device tracheostomy-mask", "```yaml device")],
    ),
    (
        "block_without_a_rule",
        &[(
            "```yaml hazard\n```",
            "```yaml hazard\nid: lying-about\nnever: \"cylinder standing free\"\nseverity: stop\nname: Lying about\nsay: \"It stands free.\"\ndo: \"Secure it.\"\n```",
        )],
    ),
    (
        "kind_deleted",
        &[("```yaml\nid: flame-near", "```yaml hazard\nid: flame-near")],
    ),
    (
        "hidden_kind_deleted",
        &[("```yaml\nid: too-hot", "```yaml hazard\nid: too-hot")],
    ),
    (
        "hidden_yaml_deleted",
        &[("```hazard\nid: too-hot", "```yaml hazard\nid: too-hot")],
    ),
    (
        "hidden_no_word_at_all",
        &[("```\nid: too-hot", "```yaml hazard\nid: too-hot")],
    ),
    (
        "closing_fence_deleted",
        &[(
            "close the cylinder and leave.\"\n",
            "close the cylinder and leave.\"\n```\n",
        )],
    ),
    (
        "last_closing_fence_deleted",
        &[("that is set.\"\n", "that is set.\"\n```\n")],
    ),
    (
        "opening_fence_deleted",
        &[(
            "\n\n\n- id: gauge-tolerance",
            "\n\n```yaml policy\n- id: gauge-tolerance",
        )],
    ),
    ("nul_character", &[("\u{0}", "")]),
    (
        "rule_in_a_list",
        &[(
            "  ```yaml policy\n  id: call-ahead-time\n  name: Call for more oxygen\n  value: 15 min\n  note: \"Minutes left at which the crew asks for another source.\"\n  ```",
            "```yaml policy\nid: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\nnote: \"Minutes left at which the crew asks for another source.\"\n```",
        )],
    ),
    (
        "rule_in_a_quotation",
        &[(
            "> ```yaml policy\n> id: call-ahead-time\n> name: Call for more oxygen\n> value: 15 min\n> ```",
            "```yaml policy\nid: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\n```",
        )],
    ),
    (
        "rule_taken_out_with_html",
        &[
            (
                "<!--\n```yaml hazard\nid: too-cold",
                "```yaml hazard\nid: too-cold",
            ),
            ("\n```\n-->\n", "\n```\n"),
        ],
    ),
    (
        "hidden_by_an_indent",
        &[(
            "    ```yaml policy\n    id: call-ahead-time\n    name: Call for more oxygen\n    value: 15 min\n    ```",
            "```yaml policy\nid: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\n```",
        )],
    ),
    (
        "hidden_in_a_comment",
        &[("<!-- ```yaml policy", "```yaml policy"), ("\n``` -->", "\n```")],
    ),
    (
        "hidden_two_backticks",
        &[(
            "``yaml policy\n- id: storage-temperature\n- id: use-temperature\n``",
            "```yaml policy\n- id: storage-temperature\n  name: Keeping\n  value: \"-30 to 50 °C\"\n- id: use-temperature\n  name: Using\n  value: \"-20 to 50 °C\"\n```",
        )],
    ),
    (
        "hidden_after_a_number_sign",
        &[(
            "say: It stands free. Use bracket #2, never the bench.",
            "say: \"It stands free. Use bracket #2, never the bench.\"",
        )],
    ),
    // Keys.
    (
        "card_without_a_size",
        &[(
            "layout: devices\ndevices: [nasal-cannula]",
            "layout: devices\nsizes: [A6]\ndevices: [nasal-cannula]",
        )],
    ),
    (
        "id_left_out_in_a_list",
        &[(
            "- name: Length of the leak test",
            "- id: leak-test-time\n  name: Length of the leak test",
        )],
    ),
    (
        "key_given_twice",
        &[("usual: 8 L/min\nflow: 5 to 10 L/min", "usual: 8 L/min")],
    ),
    (
        "key_left_out",
        &[(
            "name: Simple mask\nflow: 6 to 10 L/min\n",
            "name: Simple mask\nflow: 6 to 10 L/min\nusual: 8 L/min\n",
        )],
    ),
    (
        "key_of_a_step_left_out",
        &[(
            "say: \"See that the tag is on and true.\"\n",
            "say: \"See that the tag is on and true.\"\n    why: \"They look the same.\"\n",
        )],
    ),
    ("key_of_another_layout", &[("  hazards: [flame-near]\n", "")]),
    (
        "key_without_a_value",
        &[(
            "flow: 6 to 10 L/min\nusual:\n",
            "flow: 6 to 10 L/min\nusual: 8 L/min\n",
        )],
    ),
    (
        "size_of_a_sheet",
        &[("  layout: poster\n  sizes: [A6]\n", "  layout: poster\n")],
    ),
    (
        "text_where_a_list_of_steps_belongs",
        &[(
            "  - Keep the cylinder in your hand.\n",
            "  - id: hold\n    do: secure-cylinder\n    say: \"Keep the cylinder in your hand.\"\n    why: \"It falls.\"\n    critical: yes\n    prevents: standing-free\n",
        )],
    ),
    // Names.
    (
        "condition_without_a_name",
        &[(
            "condition: stroke\n",
            "condition: stroke\ncondition-name: \"Suspected stroke\"\n",
        )],
    ),
    (
        "groups_without_brackets",
        &[("fits: adult, child, infant\n", "fits: [adult, child, infant]\n")],
    ),
    (
        "id_given_twice",
        &[(
            "id: nasal-cannula\nname: Simple mask",
            "id: simple-mask\nname: Simple mask",
        )],
    ),
    (
        "id_that_begins_with_a_digit",
        &[("- id: 2-l\n", "- id: metric-2-l\n")],
    ),
    (
        "device_without_its_flow_on_a_ladder",
        &[("air-entrainment-24 2 L/min", "air-entrainment-24 at 2 L/min")],
    ),
    // Signs of the notation.
    (
        "anchor_and_alias",
        &[("flow: &mask 6 to 10 L/min", "flow: 6 to 10 L/min")],
    ),
    (
        "colon_in_bare_text",
        &[(
            "too-high: Above the most flow: oxygen is wasted.",
            "too-high: \"Above the most flow: oxygen is wasted.\"",
        )],
    ),
    ("colon_left_out", &[("oxygen 60 to 95 %", "oxygen: 60 to 95 %")]),
    (
        "curly_quotation_marks",
        &[("say: “Stop: it stands free.”", "say: \"Stop: it stands free.\"")],
    ),
    (
        "dash_of_a_list_lost",
        &[(
            "  air-entrainment-31 at 6 L/min\n",
            "  - air-entrainment-31 at 6 L/min\n",
        )],
    ),
    (
        "indent_of_a_step_lost",
        &[(
            "   do: tag-cylinder\n    say: \"See that the tag",
            "    do: tag-cylinder\n    say: \"See that the tag",
        )],
    ),
    (
        "indent_one_too_many",
        &[("name: Simple mask\n flow:", "name: Simple mask\nflow:")],
    ),
    (
        "line_of_dashes",
        &[("\n---\n- id: change-over", "\n- id: change-over")],
    ),
    (
        "list_never_closed",
        &[("fits: [adult, child, infant\n", "fits: [adult, child, infant]\n")],
    ),
    (
        "quotation_inside_a_quotation",
        &[(
            "say: \"It is \"just for a moment\".\"",
            "say: \"It is 'just for a moment'.\"",
        )],
    ),
    (
        "quotation_never_closed",
        &[(
            "wasted and little is gained.\n",
            "wasted and little is gained.\"\n",
        )],
    ),
    (
        "space_after_colon_left_out",
        &[("oxygen:60 to 95 %", "oxygen: 60 to 95 %")],
    ),
    ("tab_for_indent", &[("\tinfant: 6 to 8", "  infant: 6 to 8")]),
    (
        "text_that_begins_with_a_star",
        &[(
            "say: *Flame* near the oxygen.",
            "say: \"*Flame* near the oxygen.\"",
        )],
    ),
    (
        "text_that_begins_with_an_exclamation_mark",
        &[("say: ! There is a flame.", "say: \"! There is a flame.\"")],
    ),
    (
        "quotation_closed_by_the_next_text",
        &[("name: \"Simple mask\n", "name: \"Simple mask\"\n")],
    ),
    (
        "quotation_never_opened",
        &[(
            "say: A cylinder is standing free.\"",
            "say: \"A cylinder is standing free.\"",
        )],
    ),
    (
        "quotation_of_an_item_closed_by_the_next",
        &[(
            "- \"The nose is blocked or bleeding.\n",
            "- \"The nose is blocked or bleeding.\"\n",
        )],
    ),
    (
        "quotation_that_takes_in_keys",
        &[
            (
                "say: \"A cylinder is standing free.\n",
                "say: \"A cylinder is standing free.\"\n",
            ),
            (
                "do: Take it in your hand, secure",
                "do: \"Take it in your hand, secure",
            ),
        ],
    ),
    (
        "tab_before_a_key",
        &[("\tflow: 6 to 10 L/min", "flow: 6 to 10 L/min")],
    ),
    (
        "tab_before_an_item",
        &[(
            "\t- air-entrainment-31 at 6 L/min",
            "  - air-entrainment-31 at 6 L/min",
        )],
    ),
    (
        "only_agency_unreadable",
        &[("\teffective: 2026-11-01", "effective: 2026-11-01")],
    ),
    ("blank_of_a_word_processor_after_a_colon", &[("\u{a0}", " ")]),
    ("blank_of_a_word_processor_after_a_quotation", &[("\u{a0}", " ")]),
    ("blank_of_a_word_processor_in_a_short_mapping", &[("\u{a0}", " ")]),
    (
        "blank_of_a_word_processor_in_an_indent",
        &[("\u{a0}\u{a0}infant", "  infant")],
    ),
    (
        "blanks_of_a_word_processor_twice",
        &[("\u{2003}", " "), ("\u{a0}", " ")],
    ),
    ("space_of_no_width_in_a_value", &[("\u{200b}", "")]),
];
