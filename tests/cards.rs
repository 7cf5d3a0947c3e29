//! The printed cards, taken apart again: every number, the paper's size, the least type, nothing outside or on top of
//! something else. Needs typst and Debian's poppler-utils; a machine without them fails.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;
#[path = "cards/type_sizes.rs"]
mod type_sizes;
#[path = "cards/words.rs"]
mod words;

use std::{path::PathBuf, sync::OnceLock};

use oxyfolio::RULEBOOK;
use oxyfolio::book::CardSize;
use oxyfolio::cards::{Paper, data};
use oxyfolio::check::duration;
use oxyfolio::quantity::{Flow, Pressure, PressureUnit};

/// The least type that may be printed, in points.
const LEAST_TYPE: f64 = 5.5;

struct Printed {
    size: CardSize,
    paper: Paper,
    file: PathBuf,
}

/// All four files, printed once by the program itself.
fn printed() -> &'static [Printed] {
    static PRINTED: OnceLock<(tempfile::TempDir, Vec<Printed>)> = OnceLock::new();
    let (_, files) = PRINTED.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let out = folder.path().join("cards");
        let output = common::oxyfolio(&["cards", "--out", out.to_str().unwrap()]);
        assert!(
            output.status.success(),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
        let mut files = Vec::new();
        for (size, word) in [(CardSize::Id1, "id-1"), (CardSize::ThreeByFive, "3x5")] {
            for paper in Paper::ALL {
                let file = out.join(format!("cards-{word}-{}.pdf", paper.word()));
                assert!(file.is_file(), "{} was not printed", file.display());
                files.push(Printed { size, paper, file });
            }
        }
        (folder, files)
    });
    files
}

fn tokens(printed: &Printed) -> Vec<String> {
    let text = common::poppler("pdftotext", &["-raw"], &printed.file);
    text.replace('\u{200B}', "")
        .split_whitespace()
        .map(str::to_owned)
        .collect()
}

fn has_in_order(tokens: &[String], wanted: &[String]) -> bool {
    tokens.windows(wanted.len()).any(|window| window == wanted)
}

#[test]
fn every_minute_of_every_table_is_printed_and_is_the_checkers() {
    for printed in printed() {
        let tokens = tokens(printed);
        let sheet = data::Sheet::new(&RULEBOOK, printed.size, printed.paper);
        let mut tables = 0;
        for card in &sheet.cards {
            let data::Body::Durations {
                cylinder,
                pressure_unit,
                flows,
                rows,
                ..
            } = &card.body
            else {
                continue;
            };
            tables += 1;
            let cylinder = RULEBOOK
                .cylinders
                .iter()
                .find(|known| *known.rule.name == **cylinder)
                .unwrap();
            let unit = if pressure_unit == "psi" {
                PressureUnit::Psi
            } else {
                PressureUnit::Bar
            };
            for row in rows {
                let pressure = Pressure::in_unit(row.pressure.parse().unwrap(), unit).unwrap();
                for (flow, minutes) in flows.iter().zip(&row.minutes) {
                    let flow = Flow::litres_per_minute(flow.parse().unwrap()).unwrap();
                    let lasts = duration::of_cylinder(&RULEBOOK, cylinder, pressure, flow).unwrap();
                    assert_eq!(&lasts.minutes.to_string(), minutes);
                }
                let line: Vec<String> = std::iter::once(row.pressure.clone())
                    .chain(row.minutes.iter().cloned())
                    .collect();
                assert!(has_in_order(&tokens, &line), "{:?} lacks {line:?}", printed.file);
            }
        }
        assert_eq!(tables, 5, "four cylinders with letters and one metric");
    }
}

#[test]
fn every_device_row_is_printed() {
    for printed in printed() {
        let tokens = tokens(printed);
        let sheet = data::Sheet::new(&RULEBOOK, printed.size, printed.paper);
        let rows = sheet.cards.iter().find_map(|card| match &card.body {
            data::Body::Devices { rows, .. } => Some(rows),
            _ => None,
        });
        for row in rows.unwrap() {
            let figures = &row[1..4];
            assert!(has_in_order(&tokens, figures), "{:?} lacks {row:?}", printed.file);
        }
    }
}

#[test]
fn every_step_and_caution_is_printed_whole() {
    let words = |text: &str| -> Vec<String> { text.split_whitespace().map(str::to_owned).collect() };
    for printed in printed() {
        let tokens = tokens(printed);
        for card in data::Sheet::new(&RULEBOOK, printed.size, printed.paper).cards {
            let texts: Vec<String> = match card.body {
                data::Body::Steps { steps, .. } => {
                    steps.into_iter().flat_map(|step| [step.text, step.why]).collect()
                }
                data::Body::Cautions { items } => items
                    .into_iter()
                    .flat_map(|item| [item.say, item.remedy])
                    .collect(),
                _ => Vec::new(),
            };
            for text in texts {
                assert!(
                    has_in_order(&tokens, &words(&text)),
                    "{:?} lacks {text:?}",
                    printed.file
                );
            }
        }
    }
}

#[test]
fn every_card_carries_identity_and_disclaimers() {
    for printed in printed() {
        let text = tokens(printed).join(" ");
        let cards = text.matches("card 1 of ").count();
        assert_eq!(cards, 1);
        let total: usize = text
            .split("card 1 of ")
            .nth(1)
            .unwrap()
            .split(' ')
            .next()
            .unwrap()
            .parse()
            .unwrap();
        let agency = &RULEBOOK.agency;
        for words in [
            agency.rule.name.to_string(),
            format!("edition {}", agency.edition),
            format!("effective {}", agency.effective),
            format!("book {}", RULEBOOK.short_digest),
            oxyfolio::book::ALWAYS_DISCLAIMERS[0].to_owned(),
            oxyfolio::book::ALWAYS_DISCLAIMERS[1].to_owned(),
        ] {
            let times = text.matches(&words).count();
            assert!(
                times >= total,
                "{words:?} stands {times} times on {total} cards of {:?}",
                printed.file
            );
        }
    }
}

#[test]
fn sheets_have_the_size_of_their_paper() {
    for printed in printed() {
        let document = lopdf::Document::load(&printed.file).unwrap();
        // ISO 216 A4, and US Letter of 8.5 x 11 in; either way up.
        let (short, long) = match printed.paper {
            Paper::A4 => (210.0, 297.0),
            Paper::Letter => (215.9, 279.4),
        };
        for (number, page) in document.get_pages() {
            let page = document.get_dictionary(page).unwrap();
            let media = page.get(b"MediaBox").unwrap().as_array().unwrap();
            let side = |index: usize| f64::from(media[index].as_float().unwrap()) * 25.4 / 72.0;
            let mut sides = [side(2) - side(0), side(3) - side(1)];
            sides.sort_by(f64::total_cmp);
            assert!(
                (sides[0] - short).abs() < 0.1 && (sides[1] - long).abs() < 0.1,
                "page {number}: {sides:?}"
            );
        }
    }
}

#[test]
fn no_type_is_smaller_than_the_least() {
    for printed in printed() {
        let sizes = type_sizes::of(&printed.file);
        assert!(sizes.len() > 100, "text was found in {:?}", printed.file);
        let least = sizes.iter().copied().fold(f64::INFINITY, f64::min);
        assert!(least >= LEAST_TYPE, "{:?}: type of {least} pt", printed.file);
    }
}

#[test]
fn no_word_lies_on_another_or_leaves_the_sheet() {
    for printed in printed() {
        for (number, page) in words::pages(&printed.file).iter().enumerate() {
            assert!(!page.words.is_empty());
            page.assert_inside(17.0, number + 1);
            page.assert_apart(number + 1);
        }
    }
}

#[test]
fn the_same_rulebook_prints_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("again");
    let output = common::oxyfolio(&[
        "cards",
        "--out",
        out.to_str().unwrap(),
        "--size",
        "id-1",
        "--paper",
        "a4",
    ]);
    assert!(output.status.success());
    let again = std::fs::read(out.join("cards-id-1-a4.pdf")).unwrap();
    assert!(again == std::fs::read(&printed()[0].file).unwrap());
    assert_eq!(
        std::fs::read_dir(&out).unwrap().count(),
        1,
        "only what was asked for"
    );
}

#[test]
fn a_sign_the_font_lacks_is_refused_by_name() {
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "13-pocket-cards.md",
        "title: Devices at a glance",
        "title: Devices ✓ at a glance",
    );
    let out = copy.path().join("out");
    let output = common::oxyfolio(&[
        "cards",
        "--rules",
        copy.path().to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
    ]);
    assert_eq!(output.status.code(), Some(2));
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(said.contains("cannot print `✓` (U+2713)"), "{said}");
    assert!(said.contains("Devices ✓ at a glance"), "{said}");
    assert!(!out.exists());
}
