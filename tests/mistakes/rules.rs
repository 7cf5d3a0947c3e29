//! Rules that read well and cannot be right.

use crate::book::mistakes;

mistakes! {
    agency_left_out [Book("missing-kind")] {
        "01-about-this-book.md": "```yaml agency\nname: Larkmere" => "```\nname: Larkmere",
    }
    value_not_decided [Marked("undecided")] {
        "11-shift-inspection.md": "value: 90 s\n" => "value: ‹undecided (seconds, up to 10 min)›\n",
    }
    general_target_that_outranks [Marked("outranks-without-condition")] {
        "06-saturation-targets.md": "groups: [adult]\nsaturation: 94 to 98 %\nstart: nasal-cannula at 2 L/min\nurgent-below: 85 %"
            => "groups: [adult]\noutranks: ‹[stroke]›\nsaturation: 94 to 98 %\nstart: nasal-cannula at 2 L/min\nurgent-below: 85 %",
    }
    gauge_tolerance_that_is_no_pressure [Marked("wrong-unit")] {
        "12-what-to-write-down.md": "value: 50 psi" => "value: ‹50 %›",
    }
    flow_tolerance_that_is_no_share [Marked("wrong-unit")] {
        "12-what-to-write-down.md": "value: 15 %" => "value: ‹2 L/min›",
    }
    usual_flow_outside_the_range [Marked("outside-flow-range")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min\nusual: 8 L/min"
            => "name: Simple mask\nflow: 6 to 10 L/min\nusual: ‹12 L/min›",
    }
    usual_flow_of_a_group_outside_its_range [Marked("outside-flow-range")] {
        "05-delivery-devices.md": "usual-for:\n  infant: 6 L/min\nr" => "usual-for:\n  ‹infant: 9 L/min›\nr",
    }
    flow_for_a_group_that_it_does_not_fit [Marked("group-not-fitted"), Follows("outside-flow-range")] {
        "05-delivery-devices.md": "flow-for:\n  infant: 6 to 8 L/min\n" => "flow-for:\n  ‹newborn›: 4 to 5 L/min\n  infant: 6 to 8 L/min\n",
    }
    oxygen_for_a_flow_outside_the_range [Marked("outside-flow-range")] {
        "05-delivery-devices.md": "  6 L/min: 44 %\n" => "  6 L/min: 44 %\n  ‹7 L/min›: 48 %\n",
    }
    oxygen_by_flow_not_rising [Marked("not-rising")] {
        "05-delivery-devices.md": "  3 L/min: 32 %\n  4 L/min: 36 %\n" => "  4 L/min: 36 %\n  ‹3 L/min›: 32 %\n",
    }
    ladder_flow_outside_the_limits_of_a_group [Marked("outside-flow-range")] {
        "06-saturation-targets.md": "  - nasal-cannula at 2 L/min\n  - simple-mask at 6 L/min\n  - non-rebreather at 10 L/min\n"
            => "  - ‹nasal-cannula at 4 L/min›\n  - simple-mask at 6 L/min\n  - non-rebreather at 10 L/min\n",
    }
    ladder_device_that_does_not_fit [Marked("device-does-not-fit")] {
        "06-saturation-targets.md": "  - nasal-cannula at 2 L/min\n  - simple-mask at 6 L/min\n  - non-rebreather at 10 L/min\n"
            => "  - nasal-cannula at 2 L/min\n  - ‹partial-rebreather at 10 L/min›\n  - non-rebreather at 10 L/min\n",
    }
    start_not_on_the_ladder [Marked("start-not-on-ladder")] {
        "06-saturation-targets.md": "start: nasal-cannula at 1 L/min" => "start: ‹nasal-cannula at 1.5 L/min›",
    }
    urgent_start_without_its_line [Marked("half-a-pair")] {
        "06-saturation-targets.md": "start: air-entrainment-28 at 4 L/min\nurgent-below: 80 %\nurgent-start: non-rebreather at 15 L/min"
            => "start: air-entrainment-28 at 4 L/min\nurgent-start: ‹non-rebreather at 15 L/min›",
    }
    condition_named_two_ways [Marked("condition-renamed")] {
        "06-saturation-targets.md": "condition: stroke\ncondition-name: \"Suspected stroke\"" => "condition: ‹heart-attack›\ncondition-name: \"Suspected stroke\"",
    }
    condition_name_without_a_condition [Marked("name-without-condition")] {
        "06-saturation-targets.md": "condition: stroke\ncondition-name: \"Suspected stroke\"" => "‹condition-name›: \"Suspected stroke\"",
    }
    review_before_effective [Marked("review-not-after-effective")] {
        "01-about-this-book.md": "review: 2027-11-01" => "review: ‹2025-11-01›",
    }
    agency_twice [Marked("second-agency")] {
        "12-what-to-write-down.md": "## For the equipment\n"
            => "## For the equipment\n\nOurs.\n\n```yaml agency\n‹name: Upper Larkmere Rescue›\n```\n",
    }
    policy_missing [Book("missing-policy")] {
        "03-cylinders-and-connections.md": "id: fill-limit" => "id: filling-limit",
    }
    policy_in_another_kind_of_quantity [Marked("wrong-unit")] {
        "10-how-long-it-lasts.md": "value: 50 %" => "value: ‹10 min›",
    }
    pressures_not_rising [Marked("pressures-not-rising")] {
        "10-how-long-it-lasts.md": "value: 200 psi" => "value: ‹600 psi›",
    }
    nitrous_oxide_may_be_mated [Marked("only-oxygen-may-be-mated")] {
        "03-cylinders-and-connections.md": "number: \"CGA 910\"\n  may-be-mated: no" => "number: \"CGA 910\"\n  may-be-mated: ‹yes›",
    }
    pin_eight [Marked("not-pins")] {
        "03-cylinders-and-connections.md": "gas: oxygen\n  pins: [2, 5]" => "gas: oxygen\n  pins: [2, ‹8›]",
    }
    pins_not_rising [Marked("not-pins")] {
        "03-cylinders-and-connections.md": "gas: oxygen\n  pins: [2, 5]" => "gas: oxygen\n  pins: ‹[5, 2]›",
    }
    cylinder_with_a_connection_of_air [Marked("connection-not-mated")] {
        "03-cylinders-and-connections.md": "factor: 0.16 L/psi\n  connection: pin-index-oxygen" => "factor: 0.16 L/psi\n  connection: ‹pin-index-air›",
    }
    connection_that_nothing_tells_apart [Marked("missing-key")] {
        "03-cylinders-and-connections.md": "  gas: cyclopropane\n  pins: [3, 6]\n  number: \"CGA 920\"\n  may-be-mated: no\n  note: \"Flammable. No longer met in practice.\"\n- id: pin-index-ethylene"
            => "  gas: cyclopropane\n  may-be-mated: no\n- id: pin-index-ethylene",
        "03-cylinders-and-connections.md": "id: pin-index-cyclopropane\n  name: Cyclopropane pin-index yoke\n  gas: cyclopropane\n  may-be-mated: no\n-"
            => "‹id: pin-index-cyclopropane\n  name: Cyclopropane pin-index yoke\n  gas: cyclopropane\n  may-be-mated: no›\n-",
    }
    step_after_a_later_step [Marked("after-a-later-step")] {
        "04-fitting-the-regulator.md": "after: [flames, outlet]" => "after: [flames, ‹pins›]",
    }
    step_in_a_ring [Marked("steps-in-a-ring")] {
        "09-stopping-and-shutting-down.md": "after: [device-off, secure, gauge]" => "after: [device-off, secure, ‹bleed›]",
    }
    step_after_itself [Marked("steps-in-a-ring")] {
        "09-stopping-and-shutting-down.md": "after: [device-off, secure, gauge]" => "after: [device-off, ‹close›, gauge]",
    }
    step_given_twice [Marked("duplicate-id")] {
        "09-stopping-and-shutting-down.md": "  - id: cap\n" => "  - id: ‹zero›\n",
    }
    card_pressures_not_in_order [Marked("not-in-order")] {
        "13-pocket-cards.md": "1000 psi, 750 psi, 500 psi]" => "1000 psi, 500 psi, ‹750 psi›]",
    }
    card_flows_from_high_to_low [Marked("not-in-order")] {
        "13-pocket-cards.md":
            "34 bar]\n"
            => "34 bar]\nflows: [15 L/min, ‹10 L/min›]\n",
    }
    card_without_its_list [Marked("missing-key")] {
        "13-pocket-cards.md": "  sizes: [ID-1, 3 x 5 in, A7, A6]\n  procedures: [fit-regulator]\n" => "  sizes: [ID-1, 3 x 5 in, A7, A6]\n",
        "13-pocket-cards.md": "id: fit\n  title: Fit the regulator\n  layout: steps\n  sizes: [ID-1, 3 x 5 in, A7, A6]\n  notes:\n    - \"It does not go easily? Stop. It does not belong.\"\n"
            => "‹id: fit\n  title: Fit the regulator\n  layout: steps\n  sizes: [ID-1, 3 x 5 in, A7, A6]\n  notes:\n    - \"It does not go easily? Stop. It does not belong.\"›\n",
    }
    card_with_an_empty_list [Marked("empty-list")] {
        "13-pocket-cards.md": "procedures: [fit-regulator]" => "procedures: ‹[]›",
    }
}
