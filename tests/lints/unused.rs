//! Rules that nothing uses.

use crate::book::findings;

findings! {
    after_that_says_nothing_new ["redundant-after"] {
        "11-shift-inspection.md": "after: [leaks, gauge]" => "after: [leaks, gauge, ‹open›]",
    }
    rule_without_a_reason ["no-rationale"] {
        "11-shift-inspection.md": "```yaml policy\n- id: leak-test-allowance" => "## The line\n\n‹```yaml policy›\n- id: leak-test-allowance",
    }
    device_on_no_ladder_and_no_card ["device-not-placed"] {
        "05-delivery-devices.md": "id: pocket-mask" => "id: ‹pocket-mask›",
        "07-giving-oxygen.md": "  - pocket-mask\n" => "",
        "13-pocket-cards.md": "  - pocket-mask\n" => "",
    }
    policy_that_no_guard_compares ["policy-never-read"] {
        "05-delivery-devices.md": "id: cannula-comfort-flow" => "id: ‹cannula-comfort-flow›",
        "05-delivery-devices.md": "flow > cannula-comfort-flow" => "flow > 4 L/min",
    }
    policy_that_only_its_own_reason_names ["policy-never-read"] {
        "05-delivery-devices.md": "id: cannula-comfort-flow" => "id: ‹cannula-comfort-flow›",
        "05-delivery-devices.md": "flow > cannula-comfort-flow" => "flow > 4 L/min",
        "05-delivery-devices.md": "Six is what the device can do." => "The comfortable flow through a cannula is four.",
    }
    policy_that_prose_names [] {
        "05-delivery-devices.md": "flow > cannula-comfort-flow" => "flow > 4 L/min",
        "05-delivery-devices.md": "A middle step. It has no bag." => "Above the comfortable flow through a\ncannula. It has no bag.",
    }
    policy_that_a_range_reads [] {
        "05-delivery-devices.md": "flow > cannula-comfort-flow" => "flow > 4 L/min",
        "05-delivery-devices.md": "value: 4 L/min" => "value: at most 4 L/min",
        "02-handling-cylinders-safely.md": "never: \"temperature < use-temperature.low\""
            => "never: \"device is nasal-cannula and not flow in cannula-comfort-flow and temperature < use-temperature.low\"",
    }
    connection_that_only_its_own_reason_names ["connection-never-used"] {
        "03-cylinders-and-connections.md": "- id: low-pressure-oxygen\n" => "- id: ‹low-pressure-oxygen›\n",
        "03-cylinders-and-connections.md": "The large-cylinder thread and the low-pressure outlet, with" => "The oxygen low-pressure outlet and the large thread, with",
        "11-shift-inspection.md": "Each oxygen low-pressure outlet" => "Each outlet",
    }
    connection_that_no_cylinder_has ["connection-never-used"] {
        "03-cylinders-and-connections.md": "- id: pin-index-oxygen\n" => "- id: ‹spare›\n  name: Oxygen, a spare connection\n  gas: oxygen\n  number: \"1\"\n  may-be-mated: yes\n- id: pin-index-oxygen\n",
    }
}
