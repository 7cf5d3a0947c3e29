//! Numbers, units and ranges.

use crate::book::{compiled, demo, mistakes};

mistakes! {
    range_backwards [Marked("reversed-range")] {
        "05-delivery-devices.md": "name: Partial rebreather mask\nflow: 10 to 15 L/min"
            => "name: Partial rebreather mask\nflow: ‹15 to 10 L/min›",
    }
    pressure_where_a_flow_belongs [Marked("wrong-unit")] {
        "05-delivery-devices.md": "name: Partial rebreather mask\nflow: 10 to 15 L/min"
            => "name: Partial rebreather mask\nflow: 10 to 15 ‹psi›",
    }
    dash_in_a_range [Marked("not-a-range")] {
        "05-delivery-devices.md": "name: Partial rebreather mask\nflow: 10 to 15 L/min"
            => "name: Partial rebreather mask\nflow: ‹10-15› L/min",
    }
    long_dash_in_a_range [Marked("not-a-range")] {
        "06-saturation-targets.md": "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: 94 to 98 %"
            => "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: ‹94–98› %",
    }
    spaced_dash_in_a_range [Marked("not-a-range")] {
        "06-saturation-targets.md": "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: 94 to 98 %"
            => "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: ‹94 - 98› %",
    }
    thousands_separator [Marked("thousands-separator")] {
        "03-cylinders-and-connections.md": "contents: 350 L at 2200 psi" => "contents: 350 L at ‹2,200› psi",
    }
    decimal_comma [Marked("thousands-separator")] {
        "03-cylinders-and-connections.md": "factor: 0.16 L/psi" => "factor: ‹0,16› L/psi",
    }
    unit_left_out [Marked("missing-unit")] {
        "05-delivery-devices.md": "name: Nasal cannula\nalso: [nasal prongs]\nflow: 1 to 6 L/min\nusual: 2 L/min"
            => "name: Nasal cannula\nalso: [nasal prongs]\nflow: 1 to 6 L/min\nusual: ‹2›",
    }
    unit_of_a_range_left_out [Marked("missing-unit")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %" => "oxygen: 60 to ‹95›",
    }
    unit_of_a_pressure_left_out [Marked("missing-unit")] {
        "10-how-long-it-lasts.md": "value: 200 psi" => "value: ‹200›",
    }
    unit_of_a_flow_after_a_device_left_out [Marked("missing-unit")] {
        "06-saturation-targets.md": "  - air-entrainment-31 at 6 L/min\n" => "  - air-entrainment-31 at ‹6›\n",
    }
    device_without_its_flow [Marked("not-a-pair")] {
        "06-saturation-targets.md": "  - air-entrainment-31 at 6 L/min\n" => "  - ‹Venturi mask 6 L/min›\n",
    }
    unit_lpm [Marked("unknown-unit")] {
        "05-delivery-devices.md": "name: Nasal cannula\nalso: [nasal prongs]\nflow: 1 to 6 L/min"
            => "name: Nasal cannula\nalso: [nasal prongs]\nflow: 1 to 6 ‹lpm›",
    }
    unit_with_spaces [Marked("unexpected-text")] {
        "05-delivery-devices.md": "name: Nasal cannula\nalso: [nasal prongs]\nflow: 1 to 6 L/min"
            => "name: Nasal cannula\nalso: [nasal prongs]\nflow: 1 to 6 L ‹/ min›",
    }
    unit_in_capitals [Marked("unknown-unit")] {
        "10-how-long-it-lasts.md": "value: 200 psi" => "value: 200 ‹PSI›",
    }
    unit_before_the_number [Marked("not-a-quantity")] {
        "10-how-long-it-lasts.md": "value: 200 psi" => "value: ‹psi› 200",
    }
    unit_of_temperature_without_degree [Marked("unknown-unit")] {
        "02-handling-cylinders-safely.md": "value: \"-30 to 50 °C\"" => "value: \"-30 to 50 ‹C›\"",
    }
    curly_quotes_from_a_text_processor [Marked("not-a-quantity")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %" => "oxygen: ‹“60› to 95 %”",
    }
    list_kept_in_quotes [Marked("not-a-quantity")] {
        "05-delivery-devices.md": "oxygen: 60 to 95 %" => "oxygen: \"‹[60› %, 95 %]\"",
    }
    number_in_words [Marked("not-a-quantity")] {
        "06-saturation-targets.md": "value: 5 min" => "value: ‹five› minutes",
    }
    number_with_sign_for_at_least [Marked("not-a-quantity")] {
        "06-saturation-targets.md": "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: 94 to 98 %"
            => "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: ‹≥› 94 %",
    }
    range_with_up_to [Marked("not-a-quantity")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple mask\nflow: ‹up› to 10 L/min",
    }
    range_without_a_floor [Marked("open-range")] {
        "05-delivery-devices.md": "name: Simple mask\nflow: 6 to 10 L/min" => "name: Simple mask\nflow: ‹at most 10 L/min›",
    }
    one_flow_where_a_range_belongs [Marked("not-a-range")] {
        "05-delivery-devices.md": "also: [NRB, reservoir mask]\nflow: 10 to 15 L/min" => "also: [NRB, reservoir mask]\nflow: ‹15 L/min›",
    }
    range_where_one_flow_belongs [Marked("not-one-quantity")] {
        "05-delivery-devices.md": "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %"
            => "flow: 10 to 15 L/min\nusual: ‹12 to 15 L/min›\noxygen: 60 to 95 %",
    }
    remark_after_a_quantity [Marked("unexpected-text")] {
        "10-how-long-it-lasts.md": "value: 500 psi" => "value: 500 psi ‹(about 34 bar)›",
    }
    flow_ten_times_too_high [Marked("out-of-bounds")] {
        "05-delivery-devices.md": "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %"
            => "flow: 10 to ‹150› L/min\nusual: 15 L/min\noxygen: 60 to 95 %",
    }
    oxygen_above_a_hundred [Marked("not-a-fraction")] {
        "05-delivery-devices.md": "oxygen: 85 to 100 %" => "oxygen: ‹85 to 110 %›",
    }
    oxygen_below_that_of_air [Marked("not-a-fraction")] {
        "05-delivery-devices.md": "oxygen: 22 to 40 %" => "oxygen: ‹2 to 40 %›",
    }
    saturation_above_a_hundred [Marked("out-of-bounds")] {
        "06-saturation-targets.md": "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: 94 to 98 %"
            => "id: adult-general\nname: Adult\ngroups: [adult]\nsaturation: ‹94 to 108 %›",
    }
    contents_without_a_pressure [Marked("not-a-pair")] {
        "03-cylinders-and-connections.md": "contents: 350 L at 2200 psi" => "contents: ‹350 L›",
    }
    contents_the_wrong_way_round [Marked("wrong-unit")] {
        "03-cylinders-and-connections.md": "contents: 350 L at 2200 psi" => "contents: 2200 ‹psi› at 350 L",
    }
    contents_of_nothing [Marked("zero-size")] {
        "03-cylinders-and-connections.md": "contents: 350 L at 2200 psi" => "contents: ‹0 L at 2200 psi›",
    }
    factor_without_its_pressure [Marked("wrong-unit")] {
        "03-cylinders-and-connections.md": "factor: 0.16 L/psi" => "factor: 0.16 ‹L›",
    }
    ratio_with_a_colon [Marked("not-a-ratio")] {
        "05-delivery-devices.md": "entrains: 25 to 1" => "entrains: ‹25:1›",
    }
    date_that_does_not_exist [Marked("not-a-date")] {
        "01-about-this-book.md": "effective: 2026-11-01" => "effective: ‹2026-11-31›",
    }
    date_in_another_order [Marked("not-a-date")] {
        "01-about-this-book.md": "signed-off: 2026-10-20" => "signed-off: ‹10/20/2026›",
    }
    saturation_above_100_percent_in_a_case [Marked("out-of-bounds")] {
        "06-saturation-targets.md": "setup: {device: nasal-cannula, flow: 2 L/min, group: adult, condition: none, spo2: 93 %}"
            => "setup: {device: nasal-cannula, flow: 2 L/min, group: adult, condition: none, spo2: ‹193 %›}",
    }
}

/// What to write instead is told in the units of the agency's own gauges and thermometers.
#[test]
fn a_unit_that_is_left_out_is_the_agencys() {
    for (pressure, temperature, hints) in [
        (
            "psi",
            "°C",
            ["write `200 psi`", "write `50 °C`", "write `0.16 L/psi`"],
        ),
        (
            "bar",
            "°F",
            ["write `200 bar`", "write `50 °F`", "write `0.16 L/bar`"],
        ),
        (
            "kPa",
            "°F",
            ["write `200 kPa`", "write `50 °F`", "write `0.16 L/bar`"],
        ),
    ] {
        let mut chapters = demo();
        for (chapter, old, new) in [
            (
                "01-about-this-book.md",
                "pressure-unit: psi",
                format!("pressure-unit: {pressure}"),
            ),
            (
                "01-about-this-book.md",
                "temperature-unit: °C",
                format!("temperature-unit: {temperature}"),
            ),
            (
                "10-how-long-it-lasts.md",
                "value: 200 psi",
                "value: 200".to_owned(),
            ),
            (
                "02-handling-cylinders-safely.md",
                "value: \"-20 to 50 °C\"",
                "value: \"-20 to 50\"".to_owned(),
            ),
            (
                "03-cylinders-and-connections.md",
                "factor: 0.16 L/psi",
                "factor: 0.16".to_owned(),
            ),
        ] {
            let (_, text) = chapters.iter_mut().find(|(name, _)| name == chapter).unwrap();
            assert_eq!(text.matches(old).count(), 1, "{old:?}");
            *text = text.replacen(old, &new, 1);
        }
        let rejected = compiled(&chapters).unwrap_err();
        let missing: Vec<&str> = rejected
            .diagnostics
            .iter()
            .filter(|found| found.code == "missing-unit")
            .flat_map(|found| found.hints.iter().map(String::as_str))
            .collect();
        for hint in hints {
            assert!(missing.contains(&hint), "{hint}: {missing:?}");
        }
        assert_eq!(missing.len(), hints.len(), "{missing:?}");
    }
}
