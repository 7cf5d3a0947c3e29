//! Protocol text is text: it can't become typst code, read a file, turn a line round, or push others off the card.

use std::{fs, path::Path};

use super::common::{self, copy_of_rules, edit, oxyfolio};
use super::printed::squashed;
use super::{pdf, words};

const CHAPTER: &str = "13-pocket-cards.md";

fn print(rules: &Path) -> (Option<i32>, String) {
    let out = rules.join("out");
    let output = oxyfolio(&[
        "cards",
        "--rules",
        rules.to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
        "--size",
        "id-1",
        "--paper",
        "alone",
    ]);
    (output.status.code(), String::from_utf8(output.stderr).unwrap())
}

fn printed(rules: &Path) -> String {
    let (status, said) = print(rules);
    assert_eq!(status, Some(0), "{said}");
    squashed(&common::poppler(
        "pdftotext",
        &["-raw"],
        &rules.join("out/cards-id-1-alone.pdf"),
    ))
}

#[test]
fn markup_and_code_are_printed_as_they_are_written() {
    for text in [
        "#read(\\\"/etc/passwd\\\") #import \\\"x\\\": *",
        "*bold* _under_ $x^2$ <label> @reference // no comment",
        "#panic() #while true {} \\\\u{41} [raw] = heading - list + enum",
        "</script> {{braces}} {not-a-key} %s $(sh) ; | & ~",
    ] {
        let copy = copy_of_rules();
        // A name in braces is the book's own way to quote a number; doubled or unknown ones are an error there.
        let text = text.replace("{{braces}} {not-a-key}", "((braces))");
        let text = text.replace("{}", "()").replace("{41}", "(41)");
        edit(
            copy.path(),
            CHAPTER,
            "\"Look at the patient before the number.\"",
            &format!("\"{text}\""),
        );
        let all = printed(copy.path());
        let plain = text.replace("\\\"", "\"").replace("\\\\", "\\");
        assert!(all.contains(&squashed(&plain)), "{plain}");
        assert!(!all.contains("root:x:0"), "no file was read");
    }
}

#[test]
fn markup_in_names_of_the_agency_reaches_title_and_qr_code_as_text() {
    let copy = copy_of_rules();
    let name = "A & B <#read> *Rescue* $1 @home";
    edit(
        copy.path(),
        "01-about-this-book.md",
        "name: Larkmere Valley Ambulance Service",
        &format!("name: \"{name}\""),
    );
    assert!(printed(copy.path()).contains(&squashed(name)));
}

#[test]
fn signs_that_the_font_lacks_or_that_turn_text_are_refused_by_name() {
    // A tick, an emoji, Hebrew, Arabic, a mark that turns the direction, a zero-width joiner.
    for (sign, shown) in [
        ("✓", "`✓` (U+2713)"),
        ("🚑", "`🚑` (U+1F691)"),
        ("א", "`א` (U+05D0)"),
        ("ع", "`ع` (U+0639)"),
        ("\\u202e", "`\\u{202e}` (U+202E)"),
        ("\\u200d", "`\\u{200d}` (U+200D)"),
    ] {
        let copy = copy_of_rules();
        edit(
            copy.path(),
            CHAPTER,
            "title: Devices at a glance",
            &format!("title: \"Devices {sign} 12\""),
        );
        let (status, said) = print(copy.path());
        if status == Some(1) {
            // The reader itself refuses some of them, with the line.
            continue;
        }
        assert_eq!(status, Some(2), "{said}");
        assert!(said.contains(&format!("cannot print {shown}")), "{said}");
        assert!(
            !said.contains('\u{202e}'),
            "the message itself isn't turned round"
        );
        assert!(!copy.path().join("out").exists());
    }
}

#[test]
fn a_word_of_ten_thousand_letters_flows_or_fails_but_is_never_cut() {
    let word = "Sauerstoff".repeat(1000);
    // In a caution it can't fit any card: the run fails and says which rule it is and by how much.
    let copy = copy_of_rules();
    edit(
        copy.path(),
        "02-handling-cylinders-safely.md",
        "say: \"A cylinder is standing free.\"",
        &format!("say: \"{word}\""),
    );
    let (status, said) = print(copy.path());
    assert_eq!(status, Some(2), "{said}");
    assert!(said.contains("card «cautions» (13-pocket-cards.md:"), "{said}");
    assert!(said.contains("rule «standing-free» overflows by "), "{said}");
    assert!(said.trim_end().ends_with("mm on ID-1"), "{said}");
    let millimetres: f64 = said
        .split("overflows by ")
        .nth(1)
        .unwrap()
        .split(' ')
        .next()
        .unwrap()
        .parse()
        .unwrap();
    assert!(millimetres > 100.0, "{said}");
    assert!(!copy.path().join("out").exists());
}

#[test]
fn a_long_text_goes_on_further_faces() {
    let copy = copy_of_rules();
    let word = "Rohrschlauchverbindungsstueck".repeat(12);
    let items: String = (0..12)
        .map(|number| format!("  - \"{number} {word}\"\n"))
        .collect();
    edit(
        copy.path(),
        CHAPTER,
        "items:\n  - \"Reading and look of the patient before oxygen, if without delay.\"\n",
        &format!("items:\n{items}"),
    );
    let all = printed(copy.path());
    for number in 0..12 {
        assert!(all.contains(&format!("{number}{word}")), "{number}");
    }
    let file = copy.path().join("out/cards-id-1-alone.pdf");
    for (number, page) in words::pages(&file).iter().enumerate() {
        page.assert_inside(1.9 * 72.0 / 25.4, number + 1);
    }
    assert!(
        pdf::of(&file)
            .iter()
            .all(|page| page.sizes.iter().all(|size| *size >= 5.999))
    );
}

#[test]
fn a_folder_with_a_hostile_name_is_only_a_name() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("#read(1) $x \u{202e} *");
    let output = oxyfolio(&["cards", "--only", "log", "--out", out.to_str().unwrap()]);
    assert_eq!(
        output.status.code(),
        Some(0),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    assert!(fs::read_dir(&out).unwrap().count() == 1);
}
