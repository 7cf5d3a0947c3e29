//! The QR code of a card: the same identity as in words, for a telephone's camera.

use std::fmt::Write as _;

use qrcode::{Color, EcLevel, QrCode};
use serde::Serialize;

/// A QR code, drawn.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Qr {
    /// What it says.
    pub text: String,
    /// Modules along a side, without the border.
    pub modules: usize,
    /// The drawing, one unit to a module, without the border, as an SVG image.
    pub svg: String,
}

impl Qr {
    /// Draws a text; `None` where it is longer than any QR code holds.
    ///
    /// The level of correction is M, which bears the loss of about 15 % of the code (ISO/IEC 18004): cards are scratched.
    #[must_use]
    pub fn new(text: String) -> Option<Self> {
        let code = QrCode::with_error_correction_level(text.as_bytes(), EcLevel::M).ok()?;
        let modules = code.width();
        let mut path = String::new();
        for (row, colors) in code.to_colors().chunks(modules).enumerate() {
            let mut column = 0;
            // Dark modules side by side are one rectangle.
            for run in colors.chunk_by(|a, b| a == b) {
                if run.first() == Some(&Color::Dark) {
                    let long = run.len();
                    // Writing into a string doesn't fail.
                    let _ = write!(path, "M{column} {row}h{long}v1h-{long}z");
                }
                column += run.len();
            }
        }
        Some(Self {
            text,
            modules,
            svg: format!(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {modules} {modules}\" width=\"{modules}\" height=\"{modules}\"><path d=\"{path}\" fill=\"#000\"/></svg>"
            ),
        })
    }
}
