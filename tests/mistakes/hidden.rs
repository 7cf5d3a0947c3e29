//! Rules and words that would be lost without a word, and numbers that contradict each other.

use crate::book::mistakes;

mistakes! {
    hidden_kind_deleted [Marked("unknown-kind")] {
        "02-handling-cylinders-safely.md": "```yaml hazard\nid: too-hot" => "‹```yaml›\nid: too-hot",
    }
    hidden_yaml_deleted [Marked("unknown-kind")] {
        "02-handling-cylinders-safely.md": "```yaml hazard\nid: too-hot" => "‹```hazard›\nid: too-hot",
    }
    hidden_no_word_at_all [Marked("unknown-kind")] {
        "02-handling-cylinders-safely.md": "```yaml hazard\nid: too-hot" => "‹```›\nid: too-hot",
    }
    hidden_two_backticks [Marked("hidden-rule")] {
        "02-handling-cylinders-safely.md":
            "```yaml policy\n- id: storage-temperature\n  name: Temperature for keeping cylinders\n  value: \"-30 to 50 °C\"\n  note: \"Cylinder closed and put away. The maker's own limits come first if they are narrower.\"\n- id: use-temperature\n  name: Temperature for using cylinders\n  value: \"-20 to 50 °C\"\n  note: \"Cylinder, regulator and tubing. The maker's own limits come first if they are narrower.\"\n```\n"
            => "‹``yaml policy›\n- id: storage-temperature\n- id: use-temperature\n``\n",
    }
    hidden_by_an_indent [Marked("hidden-rule")] {
        "10-how-long-it-lasts.md":
            "```yaml policy\nid: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\nnote: \"Minutes left at which the crew asks for another source.\"\n```\n"
            => "    ‹```yaml policy›\n    id: call-ahead-time\n    name: Call for more oxygen\n    value: 15 min\n    ```\n",
    }
    hidden_in_a_comment [Marked("hidden-rule")] {
        "10-how-long-it-lasts.md":
            "```yaml policy\nid: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\nnote: \"Minutes left at which the crew asks for another source.\"\n```\n"
            => "‹<!-- ```yaml policy›\nid: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\n``` -->\n",
    }
    hidden_after_a_number_sign [Marked("cut-short")] {
        "02-handling-cylinders-safely.md": "say: \"A cylinder is standing free.\""
            => "say: It stands free. Use bracket ‹#2, never the bench.›",
    }
    factor_ten_times_too_large [Marked("factor-and-contents-disagree")] {
        "03-cylinders-and-connections.md": "factor: 0.16 L/psi" => "factor: ‹1.6 L/psi›",
    }
    factor_per_bar_for_psi [Marked("factor-and-contents-disagree")] {
        "03-cylinders-and-connections.md": "factor: 0.16 L/psi" => "factor: ‹0.16 L/bar›",
    }
    water_capacity_ten_times_too_large [Marked("water-capacity-and-contents-disagree")] {
        "03-cylinders-and-connections.md": "water-capacity: 2 L\n" => "water-capacity: ‹20 L›\n",
    }
    ages_with_a_gap [Marked("ages-do-not-meet")] {
        "01-about-this-book.md": "age: at least 12 years" => "age: ‹at least 13 years›",
    }
    ages_that_overlap [Marked("ages-do-not-meet")] {
        "01-about-this-book.md": "age: 28 days to 1 year" => "age: 28 days to 2 years",
        "01-about-this-book.md": "age: 1 to 12 years" => "age: ‹1 to 12 years›",
    }
    oxygen_with_the_pins_of_nitrous_oxide [Marked("same-pins")] {
        "03-cylinders-and-connections.md": "gas: oxygen\n  pins: [2, 5]" => "gas: oxygen\n  pins: [3, 5]",
        "03-cylinders-and-connections.md": "gas: nitrous oxide\n  pins: [3, 5]" => "gas: nitrous oxide\n  pins: ‹[3, 5]›",
    }
    two_targets_for_one_patient [Marked("second-target")] {
        "06-saturation-targets.md": "groups: [adult]\ncondition: stroke\ncondition-name: \"Suspected stroke\"\n" => "groups: ‹[adult]›\n",
    }
    target_with_its_digits_swapped [Marked("urgent-inside-target")] {
        "06-saturation-targets.md": "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: 94 to 98 %\nstart: nasal-cannula at 2 L/min\nurgent-below: 85 %"
            => "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: 49 to 98 %\nstart: nasal-cannula at 2 L/min\nurgent-below: ‹85 %›",
    }
    list_of_groups_empty [Marked("empty-list")] {
        "06-saturation-targets.md": "groups: [infant]" => "groups: ‹[]›",
    }
}
