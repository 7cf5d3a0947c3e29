//! The demo's cards and sheets, printed once by the program itself, beside the data they were set from.

use std::{collections::BTreeMap, path::PathBuf, sync::OnceLock};

use oxyfolio::RULEBOOK;
use oxyfolio::book::CardSize;
use oxyfolio::cards::{Paper, Wanted, data::Document, documents};

use super::{common, pdf};

pub struct Printed {
    pub name: String,
    pub document: Document,
    pub file: PathBuf,
    drawn: OnceLock<Vec<pdf::Drawn>>,
}

impl Printed {
    /// What its pages draw.
    pub fn drawn(&self) -> &[pdf::Drawn] {
        self.drawn.get_or_init(|| pdf::of(&self.file))
    }
}

pub fn collect(value: &serde_json::Value, texts: &mut Vec<String>) {
    match value {
        serde_json::Value::String(text) => texts.push(text.clone()),
        serde_json::Value::Array(items) => items.iter().for_each(|item| collect(item, texts)),
        serde_json::Value::Object(fields) => {
            for (key, value) in fields {
                if key != "svg" {
                    collect(value, texts);
                }
            }
        }
        _ => {}
    }
}

/// Cards of every size on Letter and alone, and the sheets.
pub fn printed() -> &'static BTreeMap<String, Printed> {
    static PRINTED: OnceLock<(tempfile::TempDir, BTreeMap<String, Printed>)> = OnceLock::new();
    let (_, files) = PRINTED.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let out = folder.path().join("cards");
        let output = common::oxyfolio(&[
            "cards",
            "--out",
            out.to_str().unwrap(),
            "--paper",
            "alone",
            "--paper",
            "letter",
        ]);
        assert!(
            output.status.success(),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
        let wanted = Wanted {
            papers: vec![Paper::Letter, Paper::Alone],
            ..Wanted::default()
        };
        let mut files = BTreeMap::new();
        for (name, document) in documents(&RULEBOOK, &wanted).unwrap() {
            let file = out.join(format!("{name}.pdf"));
            assert!(file.is_file(), "{} was not printed", file.display());
            let drawn = OnceLock::new();
            let printed = Printed {
                name: name.clone(),
                document,
                file,
                drawn,
            };
            files.insert(name, printed);
        }
        assert_eq!(std::fs::read_dir(&out).unwrap().count(), files.len());
        // Eight files of cards; check-off sheets, log and poster.
        assert_eq!(files.len(), 11);
        (folder, files)
    });
    files
}

/// Cards whose pages are the faces.
pub fn alone() -> impl Iterator<Item = &'static Printed> {
    printed()
        .values()
        .filter(|printed| printed.name.ends_with("-alone"))
}

/// Cards on Letter.
pub fn on_letter() -> impl Iterator<Item = &'static Printed> {
    printed()
        .values()
        .filter(|printed| printed.name.starts_with("cards-") && printed.name.ends_with("-letter"))
}

pub fn sizes() -> [(&'static str, CardSize, (f64, f64)); 4] {
    // ISO/IEC 7810 ID-1; 3 × 5 in at 25.4 mm to the inch; ISO 216 A7 and A6.
    [
        ("id-1", CardSize::Id1, (85.60, 53.98)),
        ("3x5", CardSize::ThreeByFive, (127.0, 76.2)),
        ("a7", CardSize::A7, (105.0, 74.0)),
        ("a6", CardSize::A6, (148.0, 105.0)),
    ]
}

/// Without spaces and with the digits that the font lowers raised, so that line breaks don't matter.
pub fn squashed(text: &str) -> String {
    text.chars()
        .filter(|sign| !sign.is_whitespace() && *sign != '\u{200B}')
        .map(|sign| match sign {
            '\u{2080}'..='\u{2089}' => char::from_digit(u32::from(sign) - 0x2080, 10).unwrap(),
            '\u{2010}' | '\u{2011}' => '-',
            sign => sign,
        })
        .collect()
}

/// The text of each page, squashed.
pub fn pages(printed: &Printed) -> Vec<String> {
    let text = common::poppler("pdftotext", &["-raw"], &printed.file);
    text.split('\u{c}')
        .map(squashed)
        .filter(|page| !page.is_empty())
        .collect()
}
