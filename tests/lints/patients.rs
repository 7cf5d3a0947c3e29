//! Groups, targets and ladders.

use crate::book::findings;

findings! {
    nobody_just_born ["age-without-group"] {
        "01-about-this-book.md": "age: under 28 days" => "age: ‹1 to 28 days›",
    }
    nobody_very_old ["age-without-group"] {
        "01-about-this-book.md": "age: at least 12 years" => "age: ‹12 to 100 years›",
    }
    group_without_a_target ["no-general-target"] {
        "01-about-this-book.md": "  name: Adult\n  age: at least 12 years\n"
            => "  name: Adult\n  age: at least 18 years\n- id: ‹youth›\n  name: Youth\n  age: 12 to 18 years\n",
    }
    target_without_its_minute ["target-never-chosen"] {
        "06-saturation-targets.md": "- id: newborn-general\n  name: \"Newborn, after the first hour\"\n  groups: [newborn]\n  minute-of-life: 60 min\n"
            => "- id: ‹newborn-general›\n  name: \"Newborn, after the first hour\"\n  groups: [newborn]\n",
    }
    condition_told_apart_by_the_minute ["target-never-chosen"] {
        "06-saturation-targets.md": "condition: stroke\ncondition-name: \"Suspected stroke\"\n"
            => "condition: ‹heart-attack›\nminute-of-life: 60 min\n",
    }
    newborn_minutes_not_in_order ["minutes-not-in-order"] {
        "06-saturation-targets.md": "minute-of-life: 2 min\n  saturation: 65 to 70 %"
            => "minute-of-life: ‹0.5 min›\n  saturation: 55 to 60 %",
    }
    newborn_target_that_falls ["target-falls"] {
        "06-saturation-targets.md": "saturation: 70 to 75 %" => "saturation: ‹60 to 65 %›",
    }
    target_too_narrow ["target-narrow"] {
        "06-saturation-targets.md": "saturation: 88 to 92 %" => "saturation: ‹88 to 89 %›",
    }
    ladder_with_a_weaker_device ["ladder-not-rising"] {
        "06-saturation-targets.md": "  - air-entrainment-24 at 2 L/min\n  - air-entrainment-28 at 4 L/min\n"
            => "  - air-entrainment-28 at 4 L/min\n  - ‹air-entrainment-24 at 2 L/min›\n",
    }
    ladder_with_a_lower_flow ["ladder-not-rising"] {
        "06-saturation-targets.md": "  - simple-mask at 6 L/min\n  - simple-mask at 10 L/min\n  - non-rebreather at 15 L/min\n  - bag"
            => "  - simple-mask at 10 L/min\n  - ‹simple-mask at 6 L/min›\n  - non-rebreather at 15 L/min\n  - bag",
    }
    ladder_with_a_rung_twice ["rung-repeated"] {
        "06-saturation-targets.md": "  - bag-valve-mask at 15 L/min\nstep-up: \"Not breathing enough: ventilate by hand with"
            => "  - ‹non-rebreather at 15 L/min›\n  - bag-valve-mask at 15 L/min\nstep-up: \"Not breathing enough: ventilate by hand with",
    }
    urgent_start_with_less_oxygen ["urgent-start-weaker"] {
        "06-saturation-targets.md": "urgent-below: 80 %\nurgent-start: non-rebreather at 15 L/min"
            => "urgent-below: 80 %\nurgent-start: ‹air-entrainment-24 at 2 L/min›",
    }
}
