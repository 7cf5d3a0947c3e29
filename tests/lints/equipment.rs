//! Cylinders, devices, pressures, temperatures and the rows of cards.

use crate::book::findings;

findings! {
    minimum_that_a_full_cylinder_does_not_reach ["minimum-above-filling"] {
        "03-cylinders-and-connections.md": "contents: 200 L at 200 bar" => "contents: 50 L at 50 bar",
        "11-shift-inspection.md": "value: 1000 psi" => "value: ‹1000 psi›",
    }
    use_hotter_than_storage ["use-outside-storage"] {
        "02-handling-cylinders-safely.md": "value: \"-20 to 50 °C\"" => "value: ‹\"-20 to 60 °C\"›",
    }
    use_colder_than_storage ["use-outside-storage"] {
        "02-handling-cylinders-safely.md": "value: \"-20 to 50 °C\"" => "value: ‹\"-40 to 50 °C\"›",
    }
    card_row_of_zeros ["card-row-below-residual"] {
        "13-pocket-cards.md": "750 psi, 500 psi]" => "750 psi, 500 psi, ‹200 psi›]",
    }
    card_row_above_filling ["card-row-above-filling"] {
        "13-pocket-cards.md": "[2200 psi, 2000 psi" => "[‹200 bar›, 2000 psi",
    }
    card_rows_that_stop_early ["card-rows-stop-early"] {
        "13-pocket-cards.md": "1200 psi, 1000 psi, 750 psi, 500 psi]" => "‹1200 psi›]",
    }
    factor_that_promises_too_much ["factor-over-promises"] {
        "03-cylinders-and-connections.md": "water-capacity: 2.2 L\n  contents: 350 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 0.16 L/psi"
            => "water-capacity: 2.1 L\n  contents: 350 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: ‹0.16 L/psi›",
    }
    factor_that_wastes ["contents-against-water", "factor-wastes"] {
        "03-cylinders-and-connections.md": "contents: 350 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 0.16 L/psi"
            => "contents: ‹290 L at 2200 psi›\n  service-pressure: 2015 psi\n  factor: ‹0.119 L/psi›",
    }
    contents_that_do_not_fit_in ["contents-against-water"] {
        "03-cylinders-and-connections.md": "contents: 3450 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 1.56 L/psi"
            => "contents: ‹3100 L at 2200 psi›\n  service-pressure: 2015 psi\n  factor: 1.42 L/psi",
    }
    contents_above_the_filling_limit ["contents-above-filling"] {
        "03-cylinders-and-connections.md": "contents: 200 L at 200 bar\n  service-pressure: 200 bar"
            => "contents: ‹200 L at 200 bar›\n  service-pressure: 150 bar",
    }
    reservoir_that_collapses ["reservoir-starved"] {
        "05-delivery-devices.md": "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %"
            => "flow: ‹5 to 15 L/min›\nusual: 15 L/min\noxygen: 60 to 95 %",
    }
    reservoir_that_collapses_in_one_group ["reservoir-starved"] {
        "05-delivery-devices.md": "fits: [adult, child]\nreservoir: yes"
            => "fits: [adult, child]\nflow-for:\n  child: ‹5 to 15 L/min›\nreservoir: yes",
    }
    reservoir_that_may_collapse_in_an_adult ["reservoir-scant"] {
        "05-delivery-devices.md": "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %"
            => "flow: ‹8 to 15 L/min›\nusual: 15 L/min\noxygen: 60 to 95 %",
    }
    ratio_that_mixes_to_another_share ["entrainment-ratio"] {
        "05-delivery-devices.md": "entrains: 10 to 1" => "entrains: ‹16 to 1›",
    }
    total_flow_too_low ["total-flow-low"] {
        "05-delivery-devices.md": "usual: 15 L/min\n  oxygen: 55 to 62 %" => "usual: ‹12 L/min›\n  oxygen: 55 to 62 %",
    }
    oxygen_that_falls_with_flow ["oxygen-falls-with-flow"] {
        "05-delivery-devices.md": "  3 L/min: 32 %" => "  3 L/min: ‹26 %›",
    }
    oxygen_outside_the_range ["oxygen-outside-range"] {
        "05-delivery-devices.md": "  6 L/min: 44 %" => "  6 L/min: ‹48 %›",
    }
}
