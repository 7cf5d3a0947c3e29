//! Ids, and references to them.

use crate::book::mistakes;

mistakes! {
    policy_called_like_a_word_of_guards [Marked("reserved-word"), Marked("unknown-name")] {
        "11-shift-inspection.md": "- id: line-pressure" => "- id: ‹pressure›",
        "13-pocket-cards.md": "clean, {line-pressure} where" => "clean, ‹{line-pressure}› where",
    }
    quoted_value_never_closed [Marked("unclosed-quotation")] {
        "11-shift-inspection.md": "Below {in-service-minimum} it" => "Below ‹{›in-service-minimum it",
    }
    id_given_twice [Marked("duplicate-id"), Follows("unknown-name")] {
        "05-delivery-devices.md": "id: simple-mask\n" => "id: ‹nasal-cannula›\n",
    }
    id_with_capitals [Marked("not-an-id")] {
        "05-delivery-devices.md": "id: tracheostomy-mask\n" => "id: ‹Tracheostomy Mask›\n",
    }
    id_that_begins_with_a_digit [Marked("not-an-id")] {
        "03-cylinders-and-connections.md": "- id: metric-2-l\n" => "- id: ‹2-l›\n",
    }
    group_misspelled [Marked("unknown-name")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %\nfits: [adult, child, infant]"
            => "oxygen: 60 to 95 %\nfits: [adult, ‹chlid›, infant]",
    }
    group_that_nobody_defined [Marked("unknown-name")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %\nfits: [adult, child, infant]"
            => "oxygen: 60 to 95 %\nfits: [adult, ‹elderly›, infant]",
    }
    groups_without_brackets [Marked("unknown-name")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %\nfits: [adult, child, infant]"
            => "oxygen: 60 to 95 %\nfits: ‹adult, child, infant›",
    }
    device_misspelled_on_a_ladder [Marked("unknown-name")] {
        "06-saturation-targets.md": "ladder:\n  - air-entrainment-24 at 2 L/min"
            => "ladder:\n  - ‹air-entrainement-24› at 2 L/min",
    }
    device_by_its_name_on_a_ladder [Marked("unknown-name")] {
        "06-saturation-targets.md": "ladder:\n  - air-entrainment-24 at 2 L/min"
            => "ladder:\n  - ‹Venturi mask› at 2 L/min",
    }
    device_without_its_flow_on_a_ladder [Marked("not-a-pair")] {
        "06-saturation-targets.md": "ladder:\n  - air-entrainment-24 at 2 L/min"
            => "ladder:\n  - ‹air-entrainment-24 2 L/min›",
    }
    step_misspelled [Marked("unknown-name")] {
        "09-stopping-and-shutting-down.md": "after: [close, flames]" => "after: [‹clsoe›, flames]",
    }
    step_by_its_action [Marked("unknown-name")] {
        "09-stopping-and-shutting-down.md": "after: [close, flames]" => "after: [‹close-cylinder›, flames]",
    }
    action_misspelled [Marked("unknown-word")] {
        "09-stopping-and-shutting-down.md":
            "do: close-cylinder\n    say: \"Close the cylinder valve. Firm by hand"
            => "do: ‹close-cilinder›\n    say: \"Close the cylinder valve. Firm by hand",
    }
    action_that_nobody_knows [Marked("unknown-word")] {
        "09-stopping-and-shutting-down.md":
            "do: close-cylinder\n    say: \"Close the cylinder valve. Firm by hand"
            => "do: ‹shut it›\n    say: \"Close the cylinder valve. Firm by hand",
    }
    connection_misspelled [Marked("unknown-name")] {
        "03-cylinders-and-connections.md": "factor: 0.16 L/psi\n  connection: pin-index-oxygen"
            => "factor: 0.16 L/psi\n  connection: ‹pin-index-oxigen›",
    }
    condition_misspelled_where_it_is_named [Marked("unknown-name"), Marked("unknown-observation"), Marked("unknown-observation")] {
        "06-saturation-targets.md": "condition: retains-co2\n" => "condition: retain-co2\n",
        "06-saturation-targets.md": "outranks: [retains-co2, heart-attack]" => "outranks: [‹retains-co2›, heart-attack]",
        "06-saturation-targets.md": "and not group is newborn and not (group is adult and retains-co2)\"" => "and not group is newborn and not (group is adult and ‹retains-co2›)\"",
        "06-saturation-targets.md": "device on patient and retains-co2 and" => "device on patient and ‹retains-co2› and",
    }
    condition_without_a_name [Marked("condition-not-named")] {
        "06-saturation-targets.md": "condition: stroke\ncondition-name: \"Suspected stroke\"\n"
            => "condition: ‹stroke›\n",
    }
    hazard_misspelled_on_a_card [Marked("unknown-name")] {
        "13-pocket-cards.md": "  - grease-near\n" => "  - ‹greese-near›\n",
    }
    device_renamed_in_its_block_only [
        Marked("unknown-name"), Follows("unknown-name")
    ] {
        "05-delivery-devices.md": "id: blow-by\n" => "id: blow-by-oxygen\n",
        "06-saturation-targets.md":
            "name: \"Newborn, from 1 minute\"\n  groups: [newborn]\n  minute-of-life: 1 min\n  saturation: 60 to 65 %\n  start: blow-by at 5 L/min"
            => "name: \"Newborn, from 1 minute\"\n  groups: [newborn]\n  minute-of-life: 1 min\n  saturation: 60 to 65 %\n  start: ‹blow-by› at 5 L/min",
    }
}
