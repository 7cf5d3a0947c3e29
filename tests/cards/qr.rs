//! The QR codes, read back from the printed page as a camera would.

use std::{path::Path, process::Command};

use oxyfolio::RULEBOOK;
use oxyfolio::cards::code::Code;

use super::printed::{alone, pages, squashed};

/// A page as greys, at a resolution that a telephone's camera reaches at a hand's breadth.
struct Image {
    width: usize,
    height: usize,
    greys: Vec<u8>,
}

fn images(file: &Path) -> Vec<Image> {
    let folder = tempfile::tempdir().unwrap();
    let status = Command::new("pdftoppm")
        .args(["-r", "400", "-gray"])
        .arg(file)
        .arg(folder.path().join("page"))
        .status()
        .expect("pdftoppm is needed (Debian package poppler-utils)");
    assert!(status.success());
    let mut names: Vec<_> = std::fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    names.sort();
    names
        .iter()
        .map(|name| image(&std::fs::read(name).unwrap()))
        .collect()
}

/// A binary portable graymap.
fn image(bytes: &[u8]) -> Image {
    let mut at = 0;
    let mut field = || {
        let start = at
            + bytes[at..]
                .iter()
                .position(|byte| !byte.is_ascii_whitespace())
                .unwrap();
        let end = start + bytes[start..].iter().position(u8::is_ascii_whitespace).unwrap();
        at = end + 1;
        String::from_utf8(bytes[start..end].to_vec()).unwrap()
    };
    assert_eq!(field(), "P5");
    let (width, height) = (field().parse().unwrap(), field().parse().unwrap());
    assert_eq!(field(), "255");
    Image {
        width,
        height,
        greys: bytes[at..].to_vec(),
    }
}

fn decoded(image: &Image) -> Vec<String> {
    let mut prepared = rqrr::PreparedImage::prepare_from_greyscale(image.width, image.height, |x, y| {
        image.greys[y * image.width + x]
    });
    prepared
        .detect_grids()
        .iter()
        .map(|grid| grid.decode().unwrap().1)
        .collect()
}

#[test]
fn every_qr_code_reads_back_to_its_card() {
    for printed in alone() {
        let texts = pages(printed);
        // Blank backs have no text.
        let images: Vec<Image> = images(&printed.file)
            .into_iter()
            .filter(|image| image.greys.iter().any(|grey| *grey < 128))
            .collect();
        assert_eq!(texts.len(), images.len());
        let once = printed.name == "cards-id-1-alone";
        for (number, (text, image)) in texts.iter().zip(&images).enumerate() {
            let first = !text.contains("·face") || text.contains("·face1of");
            let found = decoded(image);
            let place = format!("{} page {}", printed.name, number + 1);
            assert_eq!(found.len(), usize::from(first || !once), "{place}");
            let Some(said) = found.first() else {
                continue;
            };
            assert!(
                said.parse::<Code>().unwrap().belongs_to(&RULEBOOK),
                "{place}: {said}"
            );
            let card = printed
                .document
                .cards
                .iter()
                .find(|card| card.qr.as_ref().is_some_and(|qr| qr.text == *said))
                .unwrap_or_else(|| panic!("{place}: {said}"));
            assert!(text.contains(&squashed(&card.title)), "{place}: {said}");
            let agency = &RULEBOOK.agency;
            for part in [
                &*agency.rule.name,
                &agency.edition,
                &agency.effective.to_string(),
                &agency.review.to_string(),
            ] {
                assert!(said.contains(part), "{place}: {said}");
            }
        }
    }
}
