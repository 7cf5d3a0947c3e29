//! The demonstration as it stands, and mistakes in several places at once.

use crate::book::{compiled, demo, mistakes};

#[test]
fn the_demonstration_has_no_errors_and_no_notes() {
    let compiled = match compiled(&demo()) {
        Ok(compiled) => compiled,
        Err(rejected) => panic!("{}", rejected.render(false)),
    };
    let notes: Vec<String> = compiled
        .notes
        .iter()
        .map(|note| oxyfolio::compile::render::render(note, &compiled.sources, false))
        .collect();
    assert!(notes.is_empty(), "{}", notes.join("\n\n"));
}

mistakes! {
    two_chapters_in_the_order_of_the_book [Marked("unknown-word"), Marked("unknown-observation")] {
        "10-how-long-it-lasts.md": "never: \"minutes left < minutes wanted\"" => "never: \"‹minuets left› < minutes wanted\"",
        "02-handling-cylinders-safely.md": "never: \"flame near\"\nseverity: stop" => "never: \"flame near\"\nseverity: ‹halt›",
    }
    three_mistakes_in_one_block [Marked("unknown-key"), Marked("missing-unit"), Marked("unknown-word")] {
        "05-delivery-devices.md": "name: Tracheostomy mask\nflow: 6 to 10 L/min\nusual: 8 L/min\noxygen: 35 to 60 %\nfits: [adult, child]\nreservoir: no"
            => "name: Tracheostomy mask\n‹flows›: 6 to 10 L/min\nusual: ‹8›\noxygen: 35 to 60 %\nfits: [adult, child]\nreservoir: ‹none›",
    }
    policy_unreadable_and_guard_misspelled [Marked("missing-unit"), Marked("unknown-observation")] {
        "10-how-long-it-lasts.md": "value: 15 min" => "value: ‹15›",
        "11-shift-inspection.md": "never: \"cylinder open and not device on patient and" => "never: \"‹cylinder opened› and not device on patient and",
    }
    device_unreadable_and_ladder_out_of_limits [Marked("missing-unit")] {
        "05-delivery-devices.md": "name: Tracheostomy mask\nflow: 6 to 10 L/min\nusual: 8 L/min" => "name: Tracheostomy mask\nflow: 6 to 10 L/min\nusual: ‹8›",
        "06-saturation-targets.md": "  - nasal-cannula at 2 L/min\n  - simple-mask at 6 L/min\n  - non-rebreather at 10 L/min\n"
            => "  - nasal-cannula at 4 L/min\n  - simple-mask at 6 L/min\n  - non-rebreather at 10 L/min\n",
    }
    agency_misspelled [Marked("unknown-kind")] {
        "01-about-this-book.md": "```yaml agency" => "```‹yml› agency",
    }
}
