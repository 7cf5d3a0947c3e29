//! The `never:` of hazards.

use crate::book::mistakes;

mistakes! {
    observation_misspelled [Marked("unknown-observation")] {
        "10-how-long-it-lasts.md": "never: \"device on patient and minutes left <= call-ahead-time\""
            => "never: \"‹device on pateint› and minutes left <= call-ahead-time\"",
    }
    observation_that_nobody_makes [Marked("unknown-observation")] {
        "02-handling-cylinders-safely.md": "never: \"flame near\"" => "never: \"‹someone› smokes\"",
    }
    measure_in_capitals [Marked("unknown-observation")] {
        "06-saturation-targets.md": "never: \"spo2 < target.low\"" => "never: \"‹SpO2› < target.low\"",
    }
    pressure_compared_with_a_flow [Marked("out-of-bounds")] {
        "08-changing-device.md": "pressure <= change-over-pressure" => "pressure <= ‹500› L/min",
    }
    pressure_compared_with_a_time [Marked("wrong-unit")] {
        "08-changing-device.md": "pressure <= change-over-pressure" => "pressure <= ‹call-ahead-time›",
    }
    pressure_compared_with_a_bare_number [Marked("missing-unit")] {
        "08-changing-device.md": "pressure <= change-over-pressure" => "pressure <= ‹500›",
    }
    policy_misspelled [Marked("unknown-name")] {
        "08-changing-device.md": "pressure <= change-over-pressure" => "pressure <= ‹changeover-pressure›",
    }
    policy_that_nobody_defined [Marked("unknown-name")] {
        "08-changing-device.md": "pressure <= change-over-pressure" => "pressure <= ‹reserve›",
    }
    range_compared_without_in [Marked("not-one-quantity")] {
        "02-handling-cylinders-safely.md": "temperature > use-temperature.high" => "temperature > ‹use-temperature›",
    }
    range_written_out_without_in [Marked("not-one-quantity")] {
        "06-saturation-targets.md": "never: \"spo2 < target.low\"" => "never: \"spo2 = ‹94 to 98 %›\"",
    }
    one_quantity_after_in [Marked("not-a-range")] {
        "06-saturation-targets.md": "never: \"spo2 < target.low\"" => "never: \"spo2 in ‹94 %›\"",
    }
    bracket_never_closed [Marked("unclosed-bracket")] {
        "06-saturation-targets.md": "not (device is non-rebreather or device is bag-valve-mask)"
            => "not ‹(›device is non-rebreather or device is bag-valve-mask",
    }
    bracket_never_opened [Marked("unexpected-word")] {
        "06-saturation-targets.md": "not (device is non-rebreather or device is bag-valve-mask)"
            => "not device is non-rebreather or device is bag-valve-mask‹)›",
    }
    comparison_left_out [Marked("missing-comparison")] {
        "06-saturation-targets.md": "never: \"spo2 < target.low\"" => "never: \"spo2 ‹target.low›\"",
    }
    comparison_in_words [Marked("missing-comparison")] {
        "06-saturation-targets.md": "never: \"spo2 < target.low\"" => "never: \"spo2 ‹below› target.low\"",
    }
    comparison_with_two_signs [Marked("not-a-quantity")] {
        "08-changing-device.md": "pressure <= change-over-pressure" => "pressure ‹=<› change-over-pressure",
    }
    comparison_as_in_a_program [Marked("not-a-quantity")] {
        "05-delivery-devices.md": "never: \"device on patient and flow = 0 L/min and not (" => "never: \"device on patient and flow ‹==› 0 L/min and not (",
    }
    comparison_with_a_typeset_sign [Marked("missing-comparison")] {
        "08-changing-device.md": "pressure <= change-over-pressure" => "pressure ‹≤› change-over-pressure",
    }
    guard_that_stops_short [Marked("unfinished-guard")] {
        "06-saturation-targets.md": "never: \"device on patient and spo2 > target.high\"" => "never: \"device on patient an‹d›\"",
    }
    capital_and [Marked("unexpected-word")] {
        "06-saturation-targets.md": "never: \"device on patient and spo2 > target.high\"" => "never: \"device on patient ‹AND› spo2 > target.high\"",
    }
    comma_for_and [Marked("unexpected-word")] {
        "06-saturation-targets.md": "never: \"device on patient and spo2 > target.high\"" => "never: \"device on patient‹,› spo2 > target.high\"",
    }
    device_by_its_name [Marked("unknown-name")] {
        "05-delivery-devices.md": "device is nasal-cannula and flow > cannula-comfort-flow" => "device is ‹cannula› and flow > cannula-comfort-flow",
    }
    device_is_not [Marked("unknown-name")] {
        "05-delivery-devices.md": "and not device is nasal-cannula and flow > device.most-flow" => "and ‹device is not nasal-cannula› and flow > device.most-flow",
    }
    and_beside_or_without_brackets [Marked("mixed-and-or")] {
        "11-shift-inspection.md": "cylinder open and not device on patient and pressure < in-service-minimum"
            => "‹cylinder open and not device on patient› or pressure < in-service-minimum",
    }
    measure_compared_with_itself [Marked("compares-itself")] {
        "11-shift-inspection.md": "pressure < in-service-minimum\"" => "pressure < ‹pressure›\"",
    }
    policy_before_the_measure [Marked("value-before-measure")] {
        "11-shift-inspection.md": "pressure < in-service-minimum\"" => "‹in-service-minimum > pressure›\"",
    }
    end_of_one_quantity [Marked("not-a-range")] {
        "02-handling-cylinders-safely.md": "temperature > use-temperature.high" => "temperature > ‹residual-temperature.high›",
        "11-shift-inspection.md": "- id: line-pressure\n  name" => "- id: residual-temperature\n  name: Residual\n  value: 5 °C\n- id: line-pressure\n  name",
    }
    end_that_a_range_lacks [Marked("no-such-end")] {
        "02-handling-cylinders-safely.md": "temperature > use-temperature.high" => "temperature > ‹room-temperature.high›",
        "11-shift-inspection.md": "- id: line-pressure\n  name" => "- id: room-temperature\n  name: Room\n  value: at least 5 °C\n- id: line-pressure\n  name",
    }
    guard_of_too_many_levels [Marked("nested-too-deep")] {
        "02-handling-cylinders-safely.md": "never: \"cylinder standing free\""
            => "never: \"‹(((((((((((((((((((((((((((((((((((((((cylinder standing free)))))))))))))))))))))))))))))))))))))))›\"",
    }
    folded_guard_with_a_misspelling [Marked("unknown-observation")] {
        "05-delivery-devices.md":
            ">-\n    device on patient and device has reservoir and flow < device.least-flow\n    and not (device is bag-valve-mask and group is newborn)\n  severity"
            => ">-\n    ‹device on patient and device has resevoir and flow < device.least-flow\n    and not (device is bag-valve-mask and group is newborn)›\n  severity",
    }
}
