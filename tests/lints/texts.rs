//! Chapters, links, abbreviations and numbers in texts.

use crate::book::findings;

findings! {
    chapter_in_a_note_that_is_not_there ["chapter-not-there"] {
        "13-pocket-cards.md": "See the device card and chapter 5.\"" => "See the device card and ‹chapter 25›.\"",
    }
    chapters_in_prose_that_are_not_there ["chapter-not-there", "chapter-not-there"] {
        "06-saturation-targets.md": "Ask in that order, then go up." => "Ask in that order, as chapters 4, ‹15› and ‹99› say. Wait 10\nminutes.",
    }
    chapter_over_the_end_of_a_line ["chapter-not-there"] {
        "06-saturation-targets.md": "Ask in that order, then go up." => "Ask in that order, as ‹chapter\n15› says.",
    }
    link_to_no_heading ["broken-link"] {
        "06-saturation-targets.md": "Ask in that order, then go up." => "Ask [in that order](#adlts), or [that](#adults), then go up.",
        "06-saturation-targets.md": "Ask [in that order](#adlts)" => "Ask ‹[in that order](#adlts)›",
    }
    link_to_no_chapter ["broken-link", "broken-link"] {
        "06-saturation-targets.md": "Ask in that order, then go up."
            => "Ask ‹[in that order](05-delivery-device.md)›, ‹[so](05-delivery-devices.md#nasal)›, [or so](05-delivery-devices.md#nasal-cannula), then go up.",
    }
    link_out_of_the_book [] {
        "06-saturation-targets.md": "Ask in that order, then go up." => "Ask [in that order](../readme.md#none), then go up.",
    }
    abbreviation_in_prose ["abbreviation-not-explained"] {
        "06-saturation-targets.md": "Ask in that order, then go up." => "Ask for ‹SpO₂›, and for SpO2 again. NEVER wait.",
    }
    abbreviation_in_a_step ["abbreviation-not-explained"] {
        "06-saturation-targets.md": "say: \"The saturation is very low.\"" => "say: \"The ‹SPO2› is very low.\"",
    }
    abbreviation_written_out [] {
        "06-saturation-targets.md": "Ask in that order, then go up."
            => "Ask for the oxygen saturation (SpO₂), for CPR (chest compressions, pulse, rhythm), then for SpO2s.",
    }
    abbreviation_in_a_list [] {
        "06-saturation-targets.md": "Ask in that order, then go up." => "Ask for the ECG.\n\n- **ECG**: heart tracing\n",
    }
    number_of_a_policy_in_a_hazard ["number-written-twice"] {
        "10-how-long-it-lasts.md": "say: \"Few minutes of oxygen are left.\"" => "say: \"Only ‹15 min› of oxygen are left.\"",
    }
    number_of_a_device_in_a_hazard ["number-written-twice"] {
        "06-saturation-targets.md": "do: \"Non-rebreather at {non-rebreather.usual-flow} (newborn" => "do: \"Non-rebreather at ‹15 L/min› (newborn",
    }
    number_of_the_target_itself ["number-written-twice"] {
        "06-saturation-targets.md": "\"Below {target.low}: start, or go" => "\"Below ‹90 %›: start, or go",
    }
    number_of_another_device [] {
        "10-how-long-it-lasts.md": "say: \"Few minutes of oxygen are left.\"" => "say: \"At 15 L/min few minutes are left.\"",
    }
}
