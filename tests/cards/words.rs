//! The words of a PDF with their boxes, as poppler sees them.

use std::path::Path;

use super::common;

/// A page with its words.
pub struct Page {
    width: f64,
    height: f64,
    /// The words.
    pub words: Vec<Word>,
}

/// A word and its box in points.
pub struct Word {
    text: String,
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

/// All pages of a file.
pub fn pages(file: &Path) -> Vec<Page> {
    let text = common::poppler("pdftotext", &["-bbox"], file);
    let mut pages: Vec<Page> = Vec::new();
    for line in text.lines().map(str::trim) {
        let number = |name: &str| -> f64 {
            line.split(&format!("{name}=\""))
                .nth(1)
                .unwrap()
                .split('"')
                .next()
                .unwrap()
                .parse()
                .unwrap()
        };
        if line.starts_with("<page ") {
            pages.push(Page {
                width: number("width"),
                height: number("height"),
                words: Vec::new(),
            });
        } else if line.starts_with("<word ") {
            let text = line
                .split('>')
                .nth(1)
                .unwrap()
                .trim_end_matches("</word")
                .to_owned();
            pages.last_mut().unwrap().words.push(Word {
                text,
                left: number("xMin"),
                top: number("yMin"),
                right: number("xMax"),
                bottom: number("yMax"),
            });
        }
    }
    pages
}

impl Page {
    /// Every word keeps a distance from the edge of the paper.
    pub fn assert_inside(&self, margin: f64, number: usize) {
        for word in &self.words {
            // Boxes reach above and below the letters themselves.
            let slack = 3.0;
            assert!(
                word.left >= margin - slack
                    && word.top >= margin - slack
                    && word.right <= self.width - margin + slack
                    && word.bottom <= self.height - margin + slack,
                "page {number}: {:?} is too near the edge",
                word.text
            );
        }
    }

    /// No word covers part of another.
    pub fn assert_apart(&self, number: usize) {
        for (index, word) in self.words.iter().enumerate() {
            for other in &self.words[index + 1..] {
                // Line boxes of neighbouring lines touch; letters that overlap share more than half a line.
                let wide = word.right.min(other.right) - word.left.max(other.left);
                let high = word.bottom.min(other.bottom) - word.top.max(other.top);
                let line = (word.bottom - word.top).min(other.bottom - other.top);
                let column = (word.right - word.left).min(other.right - other.left);
                assert!(
                    wide <= 0.05 * column || high <= 0.5 * line,
                    "page {number}: {:?} lies on {:?}",
                    word.text,
                    other.text
                );
            }
        }
    }
}
