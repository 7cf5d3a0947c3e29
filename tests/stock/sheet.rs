//! The inspection sheet, taken apart again.

use std::{fs, path::PathBuf, sync::OnceLock};

use lopdf::Document;
use oxyfolio::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS};

use super::common::{self, oxyfolio};
use super::program::example;
use super::support::TODAY;
use super::{pdf, words};

/// The least type on the sheet, in points: it is read in a store room.
const LEAST_TYPE: f64 = 7.9;

struct Printed {
    _folder: tempfile::TempDir,
    file: PathBuf,
}

fn print(list: &str, paper: &str) -> Printed {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("sheet.pdf");
    let output = oxyfolio(&[
        "stock",
        list,
        "--today",
        TODAY,
        "--paper",
        paper,
        "--sheet",
        file.to_str().unwrap(),
    ]);
    let wrong = String::from_utf8(output.stderr).unwrap();
    assert!(file.is_file(), "{wrong}");
    assert_eq!(
        fs::read_dir(folder.path()).unwrap().count(),
        1,
        "nothing is left beside it"
    );
    Printed {
        _folder: folder,
        file,
    }
}

/// The demo on both papers.
fn printed() -> &'static [(&'static str, Printed)] {
    static PRINTED: OnceLock<Vec<(&str, Printed)>> = OnceLock::new();
    PRINTED.get_or_init(|| {
        ["a4", "letter"]
            .map(|paper| (paper, print(&example("larkmere.csv"), paper)))
            .into()
    })
}

/// A list of many cylinders at one place, that takes several pages.
fn long() -> &'static Printed {
    static PRINTED: OnceLock<Printed> = OnceLock::new();
    PRINTED.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let list = folder.path().join("long.csv");
        let mut text = "serial,size,pressure_psi,tested,marks,location\n".to_owned();
        for number in 0..120 {
            let (reading, tested) = if number % 3 == 0 {
                (2300, "2019-01")
            } else {
                (1990, "2025-01")
            };
            text += &format!("LV-DEMO-{number:04},Jumbo D,{reading},{tested},,The long store (invented)\n");
        }
        fs::write(&list, text).unwrap();
        print(list.to_str().unwrap(), "letter")
    })
}

fn raw(printed: &Printed) -> String {
    common::poppler("pdftotext", &["-raw"], &printed.file).replace('\u{200B}', "")
}

#[test]
fn every_cylinder_is_on_it_with_its_figures() {
    for (_, printed) in printed() {
        let text = raw(printed);
        let list = fs::read_to_string(example("larkmere.csv")).unwrap();
        for row in list.lines().skip(1) {
            let serial = row.split(',').next().unwrap();
            assert!(text.contains(serial), "{serial}\n{text}");
        }
        for words in [
            "Cylinder inspection sheet",
            "Larkmere Valley Ambulance Service",
            "Readings are taken as read at 21 °C. Sizes: US letters, metric; read what is stamped.",
            "What to swap first",
            "1 LV-DEMO-1044 Jumbo D",
            "TAKE OUT overfilled or hot",
            "past its test date (2026-10)",
            "2000 psi 2024-03 2029-03",
            "195 bar 2025-11 2030-11",
            "Label Valve Outlet, washer Gauge Leak",
            "Longest time between cylinder tests: 5 years",
        ] {
            let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(flat.contains(words), "{words}\n{flat}");
        }
    }
}

#[test]
fn every_page_carries_edition_disclaimers_cautions_and_its_number() {
    for printed in printed().iter().map(|(_, printed)| printed).chain([long()]) {
        let text = raw(printed);
        let pages: Vec<&str> = text
            .split('\u{C}')
            .filter(|page| !page.trim().is_empty())
            .collect();
        for (index, page) in pages.iter().enumerate() {
            let flat = page.split_whitespace().collect::<Vec<_>>().join(" ");
            for words in ALWAYS_DISCLAIMERS.iter().chain(&ALWAYS_CAUTIONS) {
                assert!(flat.contains(words), "page {}: {words}\n{flat}", index + 1);
            }
            let number = format!("page {} of {}", index + 1, pages.len());
            let digest = &*oxyfolio::RULEBOOK.short_digest;
            assert!(
                flat.contains(&number) && flat.contains("edition 1") && flat.contains(digest),
                "{flat}"
            );
            assert!(flat.contains(TODAY), "{flat}");
        }
    }
}

#[test]
fn the_paper_is_what_was_asked_for() {
    for (paper, printed) in printed() {
        let document = Document::load(&printed.file).unwrap();
        let (width, height) = if *paper == "a4" {
            (210.0, 297.0)
        } else {
            (215.9, 279.4)
        };
        for page in document.get_pages().into_values() {
            let page = document.get_dictionary(page).unwrap();
            let media = page.get(b"MediaBox").unwrap().as_array().unwrap();
            let side = |index: usize| f64::from(media[index].as_float().unwrap()) * 25.4 / 72.0;
            assert!((side(2) - width).abs() < 0.1 && (side(3) - height).abs() < 0.1);
        }
    }
}

#[test]
fn type_is_legible_and_nothing_lies_on_anything() {
    for printed in printed().iter().map(|(_, printed)| printed).chain([long()]) {
        let sizes: Vec<f64> = pdf::of(&printed.file)
            .into_iter()
            .flat_map(|page| page.sizes)
            .collect();
        let least = sizes.iter().copied().fold(f64::INFINITY, f64::min);
        assert!(sizes.len() > 100 && least >= LEAST_TYPE, "{least} pt");
        for (number, page) in words::pages(&printed.file).iter().enumerate() {
            page.assert_inside(20.0, number + 1);
            page.assert_apart(number + 1);
        }
    }
}

#[test]
fn it_is_black_and_grey_alone() {
    for printed in printed().iter().map(|(_, printed)| printed).chain([long()]) {
        let document = Document::load(&printed.file).unwrap();
        for page in document.get_pages().into_values() {
            let content = document.get_and_decode_page_content(page).unwrap();
            for operation in content.operations {
                let is_colour = matches!(&*operation.operator, "rg" | "RG" | "k" | "K");
                let several = matches!(&*operation.operator, "sc" | "SC" | "scn" | "SCN")
                    && operation
                        .operands
                        .iter()
                        .filter(|one| one.as_float().is_ok())
                        .count()
                        > 1;
                assert!(!is_colour && !several, "{operation:?}");
            }
        }
    }
}

#[test]
fn no_row_is_split_and_the_place_stands_on_every_page() {
    let text = raw(long());
    let pages: Vec<&str> = text
        .split('\u{C}')
        .filter(|page| !page.trim().is_empty())
        .collect();
    assert!(pages.len() > 3, "{}", pages.len());
    let mut rows = 0;
    for page in pages {
        let flat = page.split_whitespace().collect::<Vec<_>>().join(" ");
        for number in 0..120 {
            let serial = format!("LV-DEMO-{number:04} Jumbo D");
            // In the table of the place the whole row is on this page; in the list of what to swap it has no reading.
            let (bad, good) = (
                format!(
                    "{serial} 2300 psi 2019-01 2024-01 TAKE OUT overfilled or hot; past its test date (2024-01)"
                ),
                format!("{serial} 1990 psi 2025-01 2030-01"),
            );
            if flat.contains(&bad) || flat.contains(&good) {
                rows += 1;
                assert!(flat.contains("The long store (invented) 120 cylinders"), "{flat}");
            }
        }
    }
    assert_eq!(rows, 120);
}

#[test]
fn rows_that_could_not_be_read_are_said_to_be_missing() {
    let text = raw(&print(&example("mistakes.csv"), "a4"));
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        flat.contains("3 rows of the list could not be read and are NOT on this sheet."),
        "{flat}"
    );
}

#[test]
fn the_same_list_prints_the_same_bytes() {
    let again = print(&example("larkmere.csv"), "a4");
    assert!(fs::read(&again.file).unwrap() == fs::read(&printed()[0].1.file).unwrap());
}

#[test]
fn text_that_looks_like_code_is_printed_as_text() {
    let folder = tempfile::tempdir().unwrap();
    let list = folder.path().join("code.csv");
    let text = "serial,size,pressure_psi,tested,marks,location\n\
                \"#panic(\"\"x\"\")\",D,2000,2025-01,,*bold* _it_ $x$ [a] <l> @l \\ // c\n\
                a-very-long-serial-without-any-space-in-it-0123456789,D,2000,2025-01,,\n";
    fs::write(&list, text).unwrap();
    let printed = print(list.to_str().unwrap(), "a4");
    let flat = raw(&printed).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("#panic(\"x\")"), "{flat}");
    assert!(flat.contains("*bold* _it_ $x$ [a] <l> @l \\ // c"), "{flat}");
    assert!(
        flat.replace(' ', "")
            .contains("a-very-long-serial-without-any-space-in-it-0123456789"),
        "{flat}"
    );
    assert!(flat.contains("Location not given"), "{flat}");
    for (number, page) in words::pages(&printed.file).iter().enumerate() {
        page.assert_inside(20.0, number + 1);
        page.assert_apart(number + 1);
    }
}

#[test]
fn a_sign_the_font_lacks_is_refused_and_the_old_sheet_stays() {
    let folder = tempfile::tempdir().unwrap();
    let (list, sheet) = (folder.path().join("a.csv"), folder.path().join("sheet.pdf"));
    let text = "serial,size,pressure_psi,tested,marks,location\nLV-1,D,2000,2025-01,,Shelf ✓\n";
    fs::write(&list, text).unwrap();
    fs::write(&sheet, "old").unwrap();
    let arguments = [
        "stock",
        list.to_str().unwrap(),
        "--sheet",
        sheet.to_str().unwrap(),
    ];
    let output = oxyfolio(&arguments);
    let wrong = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(
        wrong.contains("cannot print `✓` (U+2713)") && wrong.contains("Shelf ✓"),
        "{wrong}"
    );
    assert_eq!(fs::read_to_string(&sheet).unwrap(), "old");
    let missing = oxyfolio(&[&arguments[..], &["--typst", "no-such-program"]].concat());
    assert_eq!(missing.status.code(), Some(2));
    assert_eq!(fs::read_to_string(&sheet).unwrap(), "old");
}
