//! How each card and sheet looks, against pictures that a person has looked at and accepted.
//!
//! `OXYFOLIO_LOOKS=accept cargo test --test cards looks` accepts what is drawn now: look at the pictures first.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
    process::Command,
};

use oxyfolio::RULEBOOK;
use oxyfolio::cards::{
    Form,
    data::Document,
    typst::{arguments, lay_out_cards},
};

use super::common::oxyfolio;
use super::printed::{pages, printed, squashed};

/// Two renderings of one page may differ in so many levels of 255 at the edges of letters, for processors round differently,
const LEVELS: u8 = 40;
/// and in so many pixels more than that. A digit that changes, or a line that moves by a pixel, changes more.
const PIXELS: usize = 6;

/// A picture in greys.
#[derive(Clone)]
struct Picture {
    width: usize,
    greys: Vec<u8>,
}

impl Picture {
    fn read(file: &Path) -> Self {
        let bytes = fs::read(file).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        let mut decoder = png::Decoder::new(std::io::Cursor::new(bytes));
        decoder.set_transformations(png::Transformations::normalize_to_color8());
        let mut reader = decoder.read_info().unwrap();
        let mut samples = vec![0; reader.output_buffer_size().unwrap()];
        let info = reader.next_frame(&mut samples).unwrap();
        let channels = info.color_type.samples();
        // Everything is black, white or grey, and pages are opaque: one channel tells all.
        Self {
            width: info.width as usize,
            greys: samples.chunks_exact(channels).map(|pixel| pixel[0]).collect(),
        }
    }

    fn below(self, other: Self) -> Self {
        assert_eq!(self.width, other.width);
        Self {
            width: self.width,
            greys: [self.greys, other.greys].concat(),
        }
    }

    /// Sixteen greys are enough to see by, and small to keep.
    fn write(&self, file: &Path) {
        let rows = self.greys.chunks_exact(self.width);
        let height = u32::try_from(rows.len()).unwrap();
        let mut encoder = png::Encoder::new(
            fs::File::create(file).unwrap(),
            u32::try_from(self.width).unwrap(),
            height,
        );
        encoder.set_color(png::ColorType::Grayscale);
        encoder.set_depth(png::BitDepth::Four);
        encoder.set_compression(png::Compression::High);
        let packed: Vec<u8> = rows
            .flat_map(|row| row.chunks(2))
            .map(|pair| (level(pair[0]) << 4) | pair.get(1).map_or(0, |grey| level(*grey)))
            .collect();
        encoder.write_header().unwrap().write_image_data(&packed).unwrap();
    }

    /// In how many pixels two pictures differ by more than [`LEVELS`]; all, where they differ in size.
    fn differing(&self, other: &Self) -> usize {
        if (self.width, self.greys.len()) != (other.width, other.greys.len()) {
            return self.greys.len().max(other.greys.len());
        }
        let pairs = self.greys.iter().zip(&other.greys);
        pairs.filter(|(a, b)| a.abs_diff(**b) > LEVELS).count()
    }
}

fn level(grey: u8) -> u8 {
    u8::try_from((u16::from(grey) + 8) / 17).unwrap()
}

fn accepting() -> bool {
    std::env::var_os("OXYFOLIO_LOOKS").is_some_and(|word| word == "accept")
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cards/looks")
}

/// Prints as images and gives the files in their order.
fn images(out: &Path, options: &[&str]) -> Vec<PathBuf> {
    let fixed = ["cards", "--as", "png", "--out", out.to_str().unwrap()];
    let output = oxyfolio(&[&fixed[..], options].concat());
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    files(out)
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).unwrap();
    let mut files: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files
}

/// The pages of a document as typst draws them for the program.
///
/// Its code changes with every letter of the book, and the QR code with it: both are drawn as blanks of their size, so that
/// what is looked at is the look.
fn rendered(mut document: Document, dots_per_inch: u16) -> Vec<Picture> {
    document.identity.code = "2222-2222".to_owned();
    for card in &mut document.cards {
        if let Some(qr) = &mut card.qr {
            let side = qr.modules;
            qr.svg = format!(
                r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}"><rect width="{side}" height="{side}"/></svg>"#
            );
        }
    }
    let folder = tempfile::tempdir().unwrap();
    lay_out_cards(folder.path(), &document).unwrap();
    let made = folder.path().join("made");
    fs::create_dir(&made).unwrap();
    let form = Form::Png { dots_per_inch };
    let status = Command::new("typst")
        .args(arguments(folder.path(), RULEBOOK.agency.effective, form))
        .status()
        .unwrap();
    assert!(status.success());
    files(&made).iter().map(|file| Picture::read(file)).collect()
}

/// The faces of each card, one below the other, by card; each sheet by its page.
fn drawn() -> BTreeMap<String, Picture> {
    let mut pictures: BTreeMap<String, Picture> = BTreeMap::new();
    for size in ["id-1", "a6"] {
        let printed = &printed()[&format!("cards-{size}-alone")];
        let cards = &printed.document.cards;
        let images = rendered(printed.document.clone(), 72);
        let text = super::common::poppler("pdftotext", &["-raw"], &printed.file);
        let texts: Vec<String> = text.split('\u{c}').map(squashed).collect();
        assert_eq!(texts.len(), images.len() + 1, "a text and an image for each page");
        let mut faces = 0;
        for (text, face) in texts.iter().zip(images) {
            // Backs that stay empty.
            if text.is_empty() {
                continue;
            }
            let count = |number: usize| squashed(&format!("card {number} of {}", cards.len()));
            let number = (1..=cards.len())
                .find(|number| text.contains(&count(*number)))
                .unwrap();
            let name = format!("{size}-{number:02}-{}", cards[number - 1].id);
            faces += 1;
            let all = match pictures.remove(&name) {
                Some(before) => before.below(face),
                None => face,
            };
            pictures.insert(name, all);
        }
        assert_eq!(faces, pages(printed).len());
        let own = pictures.keys().filter(|name| name.starts_with(size));
        assert_eq!(own.count(), cards.len());
    }
    for name in [
        "check-off-letter",
        "inspection-log-letter",
        "shut-down-poster-tabloid",
    ] {
        for (index, page) in rendered(printed()[name].document.clone(), 48)
            .into_iter()
            .enumerate()
        {
            pictures.insert(format!("{name}-{:02}", index + 1), page);
        }
    }
    pictures
}

#[test]
fn every_card_and_sheet_looks_as_it_was_accepted() {
    let drawn = drawn();
    assert!(drawn.len() > 60, "{}", drawn.len());
    if accepting() {
        let _ = fs::remove_dir_all(folder());
        fs::create_dir_all(folder()).unwrap();
        for (name, picture) in &drawn {
            picture.write(&folder().join(format!("{name}.png")));
        }
    }
    let known: BTreeSet<String> = fs::read_dir(folder())
        .unwrap()
        .map(|entry| {
            entry
                .unwrap()
                .path()
                .file_stem()
                .unwrap()
                .to_str()
                .unwrap()
                .to_owned()
        })
        .collect();
    let names: BTreeSet<String> = drawn.keys().cloned().collect();
    let mut wrong: Vec<String> = known
        .symmetric_difference(&names)
        .map(|name| format!("{name}: accepted or drawn, but not both"))
        .collect();
    let shown = Path::new(env!("CARGO_TARGET_TMPDIR")).join("looks");
    for name in known.intersection(&names) {
        let accepted = Picture::read(&folder().join(format!("{name}.png")));
        let differing = accepted.differing(&drawn[name]);
        if differing > PIXELS {
            fs::create_dir_all(&shown).unwrap();
            drawn[name].write(&shown.join(format!("{name}.png")));
            wrong.push(format!("{name}: {differing} pixels differ"));
        }
    }
    assert!(
        wrong.is_empty(),
        "{}\nlook at {}; to accept: OXYFOLIO_LOOKS=accept cargo test --test cards looks",
        wrong.join("\n"),
        shown.display()
    );
}

#[test]
fn a_changed_digit_is_seen() {
    let accepted = Picture::read(&folder().join("id-1-16-minutes-us-letters.png"));
    assert_eq!(accepted.differing(&accepted), 0);
    // The least that a digit changes: two strokes of four pixels.
    let mut changed = accepted.clone();
    let paper = changed.greys.iter().position(|grey| *grey == 255).unwrap();
    for row in 0..4 {
        for column in [0, 2] {
            changed.greys[paper + row * changed.width + column] ^= 0xff;
        }
    }
    assert!(accepted.differing(&changed) > PIXELS);
    let longer = accepted.clone().below(accepted.clone());
    assert!(accepted.differing(&longer) > PIXELS);
}

/// The pictures in README are what the command beside them draws.
#[test]
fn the_pictures_in_readme_are_the_programs_own() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let readme = fs::read_to_string(root.join("README.md")).unwrap();
    let command = readme
        .lines()
        .find(|line| line.starts_with("oxyfolio cards") && line.contains("--dpi"))
        .expect("README tells the command");
    let options: Vec<&str> = command
        .split_whitespace()
        .skip(2)
        .take_while(|word| *word != "--out")
        .filter(|word| !["--as", "png"].contains(word))
        .collect();
    let out = tempfile::tempdir().unwrap();
    let drawn = images(out.path(), &options);
    let shown: Vec<&str> = readme
        .split("cards/demo/")
        .skip(1)
        .map(|rest| rest.split(['"', ')']).next().unwrap())
        .filter(|name| name.ends_with(".png"))
        .collect();
    assert!(shown.len() >= 4, "{shown:?}");
    let demo = root.join("cards/demo");
    let new = |name: &str| {
        let file = drawn.iter().find(|file| file.ends_with(name));
        file.unwrap_or_else(|| panic!("{command} draws no {name}"))
    };
    if accepting() {
        let _ = fs::remove_dir_all(&demo);
        fs::create_dir_all(&demo).unwrap();
        for name in &shown {
            fs::copy(new(name), demo.join(name)).unwrap();
        }
    }
    let kept: BTreeSet<PathBuf> = files(&demo).into_iter().collect();
    assert_eq!(kept, shown.iter().map(|name| demo.join(name)).collect());
    let mut size = 0;
    for name in shown {
        let old = demo.join(name);
        size += fs::metadata(&old).unwrap().len();
        let old = Picture::read(&old);
        let differing = old.differing(&Picture::read(new(name)));
        // The codes change with every letter of the book; a page that is set in another way changes more.
        assert!(
            differing * 50 <= old.greys.len(),
            "{name}: {differing} pixels differ; to accept: OXYFOLIO_LOOKS=accept cargo test --test cards looks"
        );
    }
    assert!(size < 400_000, "{size} bytes of pictures");
}
