//! Which book a face belongs to, and what the program says of a code.

use oxyfolio::RULEBOOK;
use oxyfolio::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS};
use oxyfolio::cards::code::{Code, InvalidCode};

use super::common;
use super::printed::{alone, on_letter, pages, printed, squashed};

fn identity() -> Vec<String> {
    let agency = &RULEBOOK.agency;
    let mut texts = vec![
        agency.rule.name.to_string(),
        format!("edition {}", agency.edition),
        format!("effective {}", agency.effective),
        format!("review {}", agency.review),
        RULEBOOK.short_digest.to_string(),
    ];
    texts.extend(ALWAYS_DISCLAIMERS.map(str::to_owned));
    texts.iter().map(|text| squashed(text)).collect()
}

#[test]
fn every_face_carries_identity_and_both_disclaimers() {
    let mut faces = 0;
    for printed in alone() {
        for (number, page) in pages(printed).iter().enumerate() {
            faces += 1;
            for text in identity() {
                assert!(
                    page.contains(&text),
                    "{} page {}: {text}",
                    printed.name,
                    number + 1
                );
            }
            let card = printed.document.cards.iter().find(|card| {
                page.contains(&squashed(&format!("{}·", card.count))) || page.contains(&squashed(&card.count))
            });
            let card = card.unwrap_or_else(|| panic!("{} page {}: no number", printed.name, number + 1));
            if card.pressurised {
                for caution in ALWAYS_CAUTIONS {
                    assert!(
                        page.contains(&squashed(caution)),
                        "{} page {}",
                        printed.name,
                        number + 1
                    );
                }
            }
        }
    }
    assert!(faces > 200, "{faces}");
    // On a sheet of cards, as often as there are faces on it; the code once more in the small print.
    for printed in on_letter() {
        let total = format!("of{}", printed.document.cards.len());
        let mut all = 0;
        for page in pages(printed) {
            let is_count = |at: usize| {
                let before = page[..at].trim_end_matches(|sign: char| sign.is_ascii_digit());
                before.len() < at && before.ends_with("card")
            };
            let faces = page.match_indices(&total).filter(|(at, _)| is_count(*at)).count();
            all += faces;
            for text in ALWAYS_DISCLAIMERS {
                assert_eq!(page.matches(&squashed(text)).count(), faces, "{}", printed.name);
            }
            let codes = page.matches(&*RULEBOOK.short_digest).count();
            assert_eq!(codes, faces + 1, "{}", printed.name);
        }
        let alone = printed.name.replace("letter", "alone");
        assert_eq!(
            all,
            pages(&super::printed::printed()[&alone]).len(),
            "{}",
            printed.name
        );
    }
}

#[test]
fn every_page_of_every_sheet_carries_identity_disclaimers_and_cautions() {
    for name in [
        "check-off-letter",
        "inspection-log-letter",
        "shut-down-poster-tabloid",
    ] {
        for page in pages(&printed()[name]) {
            for text in identity() {
                assert!(page.contains(&text), "{name}: {text}");
            }
            for caution in ALWAYS_CAUTIONS {
                assert!(page.contains(&squashed(caution)), "{name}: {caution}");
            }
        }
    }
}

#[test]
fn a_code_is_read_as_people_write_it() {
    let code = RULEBOOK.short_digest.to_string();
    let bare = code.replace('-', "");
    let spoken: String = bare.chars().map(|sign| format!("{sign} ")).collect();
    for written in [
        code.clone(),
        code.to_lowercase(),
        bare,
        spoken,
        format!("{code}\n3/25 Stop"),
    ] {
        let read: Code = written.parse().unwrap();
        assert!(read.belongs_to(&RULEBOOK), "{written:?}");
        assert_eq!(read.to_string(), code);
    }
    for sign in "0O1IL2Z5S8BUV".chars() {
        assert_eq!(
            format!("{sign}AAA-AAAA").parse::<Code>(),
            Err(InvalidCode::Sign(sign)),
            "signs that look alike are in no code"
        );
    }
    assert_eq!("AAAA-AAA".parse::<Code>(), Err(InvalidCode::Length(7)));
}

#[test]
fn the_program_says_whether_a_card_belongs_and_of_which_edition_it_is() {
    let code = RULEBOOK.short_digest.to_string();
    let output = common::oxyfolio(&["cards", "--matches", &code]);
    let said = String::from_utf8(output.stdout).unwrap();
    assert_eq!(output.status.code(), Some(0), "{said}");
    assert!(said.contains("belongs to this rulebook"), "{said}");

    // Next year's book: the card of today's is an old one.
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "01-about-this-book.md",
        "edition: \"1\"",
        "edition: \"2\"",
    );
    let folder = copy.path().to_str().unwrap();
    let today = common::rules();
    let output = common::oxyfolio(&["cards", "--matches", &code, "--rules", folder]);
    let said = String::from_utf8(output.stdout).unwrap();
    assert_eq!(output.status.code(), Some(1), "{said}");
    assert!(
        said.contains("does not belong") && said.contains("--older"),
        "{said}"
    );
    let with_older = [
        "cards",
        "--matches",
        &code,
        "--rules",
        folder,
        "--older",
        today.to_str().unwrap(),
    ];
    let output = common::oxyfolio(&with_older);
    let said = String::from_utf8(output.stdout).unwrap();
    assert_eq!(output.status.code(), Some(1), "{said}");
    assert!(
        said.contains("It is of edition 1, effective 2026-11-01"),
        "{said}"
    );
    let (status, answer) = common::json(&with_older);
    assert_eq!((status, &answer["belongs"]), (1, &serde_json::json!(false)));
    assert_eq!(answer["belongs_to_older"]["edition"], "1");
    // A code of neither.
    let output = common::oxyfolio(&[
        "cards",
        "--matches",
        "AAAA-AAAA",
        "--older",
        today.to_str().unwrap(),
    ]);
    let said = String::from_utf8(output.stdout).unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(said.contains("none of the older rulebooks"), "{said}");
    // No code at all is refused in words.
    let output = common::oxyfolio(&["cards", "--matches", "O0O0-1111"]);
    assert_eq!(output.status.code(), Some(2));
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(said.contains("a code has no `O`"), "{said}");
}
