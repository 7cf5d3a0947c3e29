//! Words of our own: complete in each language, and all of them from the agency's.

use std::collections::BTreeSet;

use oxyfolio::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS, Language};
use oxyfolio::cards::messages::Messages;

use super::common;
use super::printed::squashed;

/// The names in braces.
fn values(text: &str) -> BTreeSet<&str> {
    text.split('{')
        .skip(1)
        .map(|part| part.split('}').next().unwrap())
        .collect()
}

#[test]
fn every_language_has_the_same_keys_and_values() {
    let english = Messages::of(Language::English).unwrap();
    for language in Language::ALL {
        let messages = Messages::of(language).unwrap();
        let keys = |messages: &Messages| messages.words.keys().cloned().collect::<Vec<_>>();
        assert_eq!(keys(&messages), keys(&english), "{}", language.word());
        for (key, text) in &messages.words {
            assert_eq!(
                values(text),
                values(&english.words[key]),
                "{} {key}",
                language.word()
            );
            assert!(!text.trim().is_empty(), "{} {key}", language.word());
        }
        for text in messages.disclaimers.iter().chain(&messages.cautions) {
            assert!(text.ends_with('.'), "{text}");
        }
    }
    assert_eq!(english.disclaimers, ALWAYS_DISCLAIMERS);
    assert_eq!(english.cautions, ALWAYS_CAUTIONS);
}

#[test]
fn every_key_is_used_and_every_key_used_is_there() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut source = String::new();
    for folder in ["cards", "src/cards", "src/cards/data"] {
        for entry in std::fs::read_dir(root.join(folder)).unwrap() {
            let path = entry.unwrap().path();
            if path
                .extension()
                .is_some_and(|ending| ending == "typ" || ending == "rs")
            {
                source.push_str(&std::fs::read_to_string(path).unwrap());
            }
        }
    }
    let words = Messages::of(Language::English).unwrap().words;
    for key in words.keys() {
        let built = key.starts_with("backs-");
        assert!(
            built || source.contains(&format!("\"{key}\"")),
            "{key} is used nowhere"
        );
    }
    for call in ["own(\"", "say(\"", "messages.get(\"", "get(\""] {
        for key in source
            .split(call)
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap())
        {
            assert!(
                words.contains_key(key) || key.ends_with('-') || key.starts_with("note"),
                "{call}{key}"
            );
        }
    }
}

#[test]
fn a_value_that_looks_like_a_name_stays_as_it_is() {
    let messages = Messages::of(Language::English).unwrap();
    assert_eq!(
        messages.with("card-of", &[("n", "{m}"), ("m", "7")]),
        "card {m} of 7"
    );
}

#[test]
fn cards_of_an_agency_that_speaks_german_are_german_but_for_the_rules() {
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "01-about-this-book.md",
        "language: en\npaper: Letter",
        "language: de\npaper: A4",
    );
    common::edit(
        copy.path(),
        "01-about-this-book.md",
        "pressure-unit: psi",
        "pressure-unit: bar",
    );
    let out = copy.path().join("out");
    let output = common::oxyfolio(&[
        "cards",
        "--rules",
        copy.path().to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
        "--only",
        "cards",
        "--only",
        "check-off",
        "--only",
        "log",
        "--only",
        "poster",
        "--size",
        "a6",
        "--size",
        "id-1",
    ]);
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let german = Messages::of(Language::German).unwrap();
    for (name, words) in [
        (
            "cards-a6-a4",
            "Karte 1 von 25|Gerät|Üblich|Beginn:|ENTSCHEIDEND|Verhütet:|NIE|HALT|gültig ab 2026-11-01|dieser Balken misst 50 mm|Bogen 1 von",
        ),
        (
            "cards-id-1-a4",
            "Karte 1 von 25|Seite 1 von|Fortsetzung|unter dem Mindestdruck für den Dienst",
        ),
        (
            "check-off-a4",
            "Prüfling|Prüfende Person|Bemerkungen|Platz in der Folge|bestanden",
        ),
        ("inspection-log-a4", "Flaschennummer|Uhrzeit|Kürzel|Maßnahme"),
        ("shut-down-poster-a3", "ENTSCHEIDEND|Verhütet:"),
    ] {
        let file = out.join(format!("{name}.pdf"));
        let text = squashed(&common::poppler("pdftotext", &["-raw"], &file));
        for word in words.split('|') {
            assert!(text.contains(&squashed(word)), "{name}: {word}");
        }
        for sentence in &german.disclaimers {
            assert!(text.contains(&squashed(sentence)), "{name}: {sentence}");
        }
        for english in [
            "CRITICAL",
            "effective",
            "substituteforlicensed",
            "Prevents",
            "continued",
            "Localprotocol",
        ] {
            assert!(!text.contains(english), "{name}: {english}");
        }
        let document = lopdf::Document::load(&file).unwrap();
        assert_eq!(
            document
                .catalog()
                .unwrap()
                .get(b"Lang")
                .unwrap()
                .as_str()
                .unwrap(),
            b"de"
        );
    }
    // Rows in psi aren't whole numbers in bar, so the gauge's own unit stays; the metric ones are in bar.
    let text = common::poppler("pdftotext", &["-raw"], &out.join("cards-a6-a4.pdf"));
    assert!(text.contains("bar ↓") && text.contains("psi ↓"));
    assert!(text.contains("200 bar"));
}
