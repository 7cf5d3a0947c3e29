//! Rules that can't both be kept, and guards that can't be there or can't rest.

use crate::book::findings;

findings! {
    hazard_that_forbids_a_usual_flow ["hazard-forbids-recommended"] {
        "05-delivery-devices.md": "never: \"device on patient and device is nasal-cannula and flow > device.most-flow\""
            => "never: ‹\"device on patient and device is pocket-mask and flow >= device.most-flow\"›",
    }
    hazard_that_forbids_a_rung ["hazard-forbids-recommended"] {
        "05-delivery-devices.md": "never: \"device on patient and device is nasal-cannula and flow > device.most-flow\""
            => "never: ‹\"retains-co2 and device is air-entrainment-40 and group is adult\"›",
    }
    hazard_in_the_target ["target-forbidden"] {
        "06-saturation-targets.md": "value: 85 %" => "value: 91 %",
        "06-saturation-targets.md": "never: \"spo2 < urgent-saturation and not group is newborn and not (group is adult and retains-co2)\""
            => "never: ‹\"spo2 < urgent-saturation and not group is newborn and not (group is adult and retains-co2)\"›",
    }
    policy_that_the_device_cannot_have ["policy-outside-device"] {
        "05-delivery-devices.md": "value: 4 L/min" => "value: ‹8 L/min›",
    }
    hazard_of_two_parts_that_exclude_each_other ["hazard-never-fires"] {
        "02-handling-cylinders-safely.md": "never: \"temperature < use-temperature.low\""
            => "never: ‹\"temperature < use-temperature.low and temperature > use-temperature.high\"›",
    }
    hazard_beyond_what_can_be_measured ["hazard-never-fires"] {
        "06-saturation-targets.md": "never: \"device on patient and spo2 > target.high\""
            => "never: ‹\"device on patient and spo2 > 100 %\"›",
    }
    hazard_by_a_target_that_is_never_known ["hazard-never-fires"] {
        "06-saturation-targets.md": "never: \"device on patient and spo2 > target.high\""
            => "never: ‹\"carbon-monoxide and group is adult and spo2 > target.high\"›",
    }
    hazard_that_is_always_there ["hazard-always-fires"] {
        "02-handling-cylinders-safely.md": "never: \"temperature < use-temperature.low\""
            => "never: ‹\"temperature <= use-temperature.low or temperature > use-temperature.low\"›",
    }
    hazard_with_too_many_cases ["not-decided"] {
        "02-handling-cylinders-safely.md": "never: \"temperature < use-temperature.low\""
            => "never: ‹\"temperature < use-temperature.low and retains-co2 and critical-illness and return-of-circulation and heart-attack and stroke and carbon-monoxide and not stroke\"›",
    }
}
