//! Keys of rules, and the plain words they take.

use crate::book::mistakes;

mistakes! {
    key_that_is_a_mapping [Marked("key-not-text")] {
        "11-shift-inspection.md": "name: In-service minimum\n" => "‹{name: x}›: In-service minimum\n",
    }
    key_misspelled [Marked("unknown-key")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min\nusual: 8 L/min"
            => "name: Simple mask\nflow: 6 to 10 L/min\n‹usaul›: 8 L/min",
    }
    key_of_another_kind [Marked("unknown-key")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple mask\n‹colour›: green\nflow: 6 to 10 L/min",
    }
    key_with_a_capital [Marked("unknown-key")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple mask\n‹Flow›: 6 to 10 L/min",
    }
    key_left_out [Marked("missing-key")] {
        "05-delivery-devices.md": "id: simple-mask\nname: Simple mask\nflow: 6 to 10 L/min\nusual: 8 L/min"
            => "‹id›: simple-mask\nname: Simple mask\nflow: 6 to 10 L/min",
    }
    key_given_twice [Marked("duplicate-key")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min\nusual: 8 L/min"
            => "name: Simple mask\nflow: 6 to 10 L/min\nusual: 8 L/min\n‹flow›: 5 to 10 L/min",
    }
    key_without_a_value [Marked("not-text")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min\nusual: 8 L/min"
            => "name: Simple mask\nflow: 6 to 10 L/min\nusual‹:›",
    }
    id_left_out_in_a_list [Marked("missing-key")] {
        "11-shift-inspection.md": "- id: leak-test-time\n  name: Length of the leak test"
            => "- ‹name›: Length of the leak test",
    }
    key_of_a_step_left_out [Marked("missing-key")] {
        "09-stopping-and-shutting-down.md":
            "  - id: tag\n    do: tag-cylinder\n    say: \"See that the tag is on and true.\"\n    why: \"Full, in use and empty look the same.\"\n"
            => "  - ‹id›: tag\n    do: tag-cylinder\n    say: \"See that the tag is on and true.\"\n",
    }
    true_for_yes [Marked("unknown-word")] {
        "05-delivery-devices.md": "reservoir: yes\nchosen-when: \"The patient breathes but is very ill"
            => "reservoir: ‹true›\nchosen-when: \"The patient breathes but is very ill",
    }
    capital_yes [Marked("unknown-word")] {
        "05-delivery-devices.md": "reservoir: yes\nchosen-when: \"The patient breathes but is very ill"
            => "reservoir: ‹Yes›\nchosen-when: \"The patient breathes but is very ill",
    }
    severity_that_nobody_knows [Marked("unknown-word")] {
        "02-handling-cylinders-safely.md": "never: \"flame near\"\nseverity: stop" => "never: \"flame near\"\nseverity: ‹danger›",
    }
    severity_misspelled [Marked("unknown-word")] {
        "02-handling-cylinders-safely.md": "never: \"flame near\"\nseverity: stop" => "never: \"flame near\"\nseverity: ‹stopp›",
    }
    unit_for_cards_that_nobody_knows [Marked("unknown-word")] {
        "01-about-this-book.md": "pressure-unit: psi" => "pressure-unit: ‹PSI›",
    }
    use_of_a_cylinder_that_nobody_knows [Marked("unknown-word")] {
        "03-cylinders-and-connections.md":
            "also: [\"US D\"]\n  series: US letters\n  use: portable" => "also: [\"US D\"]\n  series: US letters\n  use: ‹hand›",
    }
    text_where_a_list_of_steps_belongs [Marked("not-a-mapping"), Follows("unknown-name")] {
        "09-stopping-and-shutting-down.md":
            "  - id: hold\n    do: secure-cylinder\n    say: \"Keep the cylinder in your hand or lying down all the way.\"\n    why: \"Most cylinders fall on the way to the bracket.\"\n    critical: yes\n    prevents: standing-free\n"
            => "  - ‹Keep the cylinder in your hand.›\n",
    }
    layout_that_nobody_knows [Marked("unknown-word")] {
        "13-pocket-cards.md": "title: What must never be\nlayout: cautions" => "title: What must never be\nlayout: ‹warnings›",
    }
    key_of_another_layout [Marked("unused-key")] {
        "13-pocket-cards.md": "  procedures: [fit-regulator]\n" => "  procedures: [fit-regulator]\n  hazards: ‹[flame-near]›\n",
    }
    card_size_that_nobody_knows [Marked("unknown-word")] {
        "13-pocket-cards.md": "title: Fit the regulator\n  layout: steps\n  sizes: [ID-1, 3 x 5 in, A7, A6]"
            => "title: Fit the regulator\n  layout: steps\n  sizes: [ID-1, ‹3x5›]",
    }
    size_of_a_sheet [Marked("unused-key")] {
        "13-pocket-cards.md": "  layout: poster\n" => "  layout: poster\n  sizes: ‹[A6]›\n",
    }
    card_without_a_size [Marked("missing-key")] {
        "13-pocket-cards.md": "title: Devices at a glance\nlayout: devices\nsizes: [ID-1, 3 x 5 in, A7, A6]\ndevices:\n  - nasal-cannula\n  - simple-mask\n  - partial-rebreather\n  - non-rebreather\n  - air-entrainment-24\n  - air-entrainment-28\n  - air-entrainment-31\n  - air-entrainment-35\n  - air-entrainment-40\n  - air-entrainment-50\n  - air-entrainment-60\n  - bag-valve-mask\n  - pocket-mask\n  - tracheostomy-mask\n  - blow-by\nnotes:\n  - \"Oxygen share is approximate: go by the patient. Newborn: air first.\""
            => "title: Devices at a glance\nlayout: devices\ndevices: [nasal-cannula]",
        "13-pocket-cards.md": "id: devices\ntitle: Devices at a glance\nlayout: devices\ndevices: [nasal-cannula]"
            => "‹id: devices\ntitle: Devices at a glance\nlayout: devices\ndevices: [nasal-cannula]›",
    }
    language_that_nobody_translated [Marked("unknown-word")] {
        "01-about-this-book.md": "language: en\n" => "language: ‹fr›\n",
    }
    paper_that_no_office_has [Marked("unknown-word")] {
        "01-about-this-book.md": "paper: Letter\n" => "paper: ‹A6›\n",
    }
    hazard_misspelled_in_a_step [Marked("unknown-name")] {
        "09-stopping-and-shutting-down.md": "    prevents: closed-on-patient\n" => "    prevents: ‹closed-on-the-patient›\n",
    }
}
