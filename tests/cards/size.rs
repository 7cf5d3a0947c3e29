//! True size, least type, contrast, embedded fonts, nothing outside the safe area or on top of something else.

use lopdf::Document;

use super::pdf;
use super::printed::{alone, on_letter, printed, sizes};
use super::words;

/// What a cutter may take off, and no text may reach, in millimetres.
const SAFE: f64 = 1.9;

#[test]
fn a_card_alone_has_the_size_of_its_page() {
    for (word, _, (width, height)) in sizes() {
        for (w, h) in pdf::boxes(&printed()[&format!("cards-{word}-alone")].file) {
            assert!(
                (w - width).abs() < 0.1 && (h - height).abs() < 0.1,
                "{word}: {w} x {h}"
            );
        }
    }
}

#[test]
fn sheets_have_the_size_of_their_paper() {
    for printed in printed()
        .values()
        .filter(|printed| !printed.name.ends_with("-alone"))
    {
        // US Letter is 8.5 × 11 in, Tabloid 11 × 17 in; either way up.
        let (short, long) = if printed.name.ends_with("-tabloid") {
            (279.4, 431.8)
        } else {
            (215.9, 279.4)
        };
        for (w, h) in pdf::boxes(&printed.file) {
            assert!(
                (w.min(h) - short).abs() < 0.1 && (w.max(h) - long).abs() < 0.1,
                "{}: {w} x {h}",
                printed.name
            );
        }
    }
}

#[test]
fn cards_on_paper_and_the_measuring_bar_have_true_size() {
    for (word, _, (width, height)) in sizes() {
        let name = format!("cards-{word}-letter");
        let mut outlines = 0;
        for (number, page) in printed()[&name].drawn().iter().enumerate() {
            let is = |stroke: &[f64; 4], w: f64, h: f64| {
                (stroke[2] - w).abs() < 0.1 && (stroke[3] - h).abs() < 0.1
            };
            outlines += page
                .strokes
                .iter()
                .filter(|stroke| is(stroke, width, height))
                .count();
            let bar = |stroke: &&[f64; 4]| is(stroke, 50.0, 0.0) || is(stroke, 0.0, 50.0);
            assert_eq!(
                page.strokes.iter().filter(bar).count(),
                1,
                "{name} page {}",
                number + 1
            );
        }
        let faces = super::printed::pages(&printed()[&format!("cards-{word}-alone")]).len();
        assert_eq!(outlines, faces, "{name}: an outline for each face");
    }
}

#[test]
fn no_type_is_smaller_than_the_least() {
    for printed in printed().values() {
        let least = if printed.name.starts_with("cards-id-1") {
            6.0
        } else {
            7.0
        };
        let sizes: Vec<f64> = printed
            .drawn()
            .iter()
            .flat_map(|page| page.sizes.clone())
            .collect();
        assert!(sizes.len() > 20, "text was found in {}", printed.name);
        let found = sizes.iter().copied().fold(f64::INFINITY, f64::min);
        assert!(found >= least - 1e-3, "{}: type of {found} pt", printed.name);
    }
}

/// The relative luminance of a grey of sRGB (IEC 61966-2-1).
fn luminance(shade: f64) -> f64 {
    if shade <= 0.04045 {
        shade / 12.92
    } else {
        ((shade + 0.055) / 1.055).powf(2.4)
    }
}

/// Contrast as WCAG 2.1 defines it, of letters darker than what is behind them.
fn contrast(dark: f64, light: f64) -> f64 {
    (luminance(light) + 0.05) / (luminance(dark) + 0.05)
}

#[test]
fn letters_are_greys_of_high_contrast() {
    // The darkest ground of dark letters is the grey of head rows and columns; white letters stand on black.
    const DARKEST_GROUND: f64 = 0.88;
    for printed in printed().values() {
        for page in printed.drawn() {
            for &shade in &page.shades {
                let enough = if shade > 0.99 {
                    contrast(0.0, shade)
                } else {
                    contrast(shade, DARKEST_GROUND)
                };
                assert!(enough >= 7.0, "{}: {enough}:1 of {shade}", printed.name);
            }
        }
    }
}

#[test]
fn every_font_is_embedded() {
    for printed in printed().values() {
        let document = Document::load(&printed.file).unwrap();
        let mut fonts = 0;
        for object in document.objects.values() {
            let Ok(dictionary) = object.as_dict() else {
                continue;
            };
            if dictionary.get(b"Type").and_then(|found| found.as_name()).ok() == Some(b"FontDescriptor") {
                fonts += 1;
                let embedded = [&b"FontFile"[..], b"FontFile2", b"FontFile3"];
                assert!(
                    embedded.iter().any(|key| dictionary.has(key)),
                    "{}: a font is not embedded",
                    printed.name
                );
                let name = dictionary.get(b"FontName").unwrap().as_name().unwrap();
                let name = String::from_utf8_lossy(name).into_owned();
                assert!(name.contains("NotoSans"), "{name}");
            }
        }
        assert!(fonts >= 2, "{}", printed.name);
    }
}

#[test]
fn no_word_of_a_card_is_outside_its_safe_area() {
    for printed in alone() {
        let mut words = 0;
        for (number, page) in words::pages(&printed.file).iter().enumerate() {
            words += page.words.len();
            page.assert_inside(SAFE * 72.0 / 25.4, number + 1);
            page.assert_apart(number + 1);
        }
        assert!(words > 1000, "{}", printed.name);
    }
}

#[test]
fn no_word_of_a_sheet_leaves_it_or_lies_on_another() {
    for printed in on_letter().chain([
        &printed()["check-off-letter"],
        &printed()["inspection-log-letter"],
        &printed()["shut-down-poster-tabloid"],
    ]) {
        for (number, page) in words::pages(&printed.file).iter().enumerate() {
            page.assert_inside(17.0, number + 1);
            page.assert_apart(number + 1);
        }
    }
}
