//! Sizes of cards and sheets of paper.

use serde::Serialize;

use crate::book::CardSize;

/// All card sizes.
pub const SIZES: [CardSize; 2] = CardSize::ALL;

/// A sheet of paper that cards are printed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216 A4: 210 × 297 mm.
    A4,
    /// US Letter: 8.5 × 11 in.
    Letter,
}

impl Paper {
    /// Both papers.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// The word used on the command line and in file names.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }
}

/// A size as the templates need it.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Format {
    /// The word used on the command line and in file names.
    pub id: &'static str,
    /// The name people use.
    pub label: &'static str,
    /// The width in millimetres.
    pub width_mm: f64,
    /// The height in millimetres.
    pub height_mm: f64,
    /// The radius of the corners in millimetres.
    pub corner_mm: f64,
}

const MILLIMETRES_PER_INCH: f64 = 25.4;

/// A card's size.
pub const fn of_card(size: CardSize) -> Format {
    match size {
        // ISO/IEC 7810, ID-1; the corner's radius is the nominal one.
        CardSize::Id1 => Format {
            id: "id-1",
            label: size.label(),
            width_mm: 85.60,
            height_mm: 53.98,
            corner_mm: 3.18,
        },
        CardSize::ThreeByFive => Format {
            id: "3x5",
            label: size.label(),
            width_mm: 5.0 * MILLIMETRES_PER_INCH,
            height_mm: 3.0 * MILLIMETRES_PER_INCH,
            corner_mm: 0.0,
        },
    }
}

/// A paper's size.
pub const fn of_paper(paper: Paper) -> Format {
    let (label, width_mm, height_mm) = match paper {
        Paper::A4 => ("A4", 210.0, 297.0),
        Paper::Letter => ("Letter", 8.5 * MILLIMETRES_PER_INCH, 11.0 * MILLIMETRES_PER_INCH),
    };
    Format {
        id: paper.word(),
        label,
        width_mm,
        height_mm,
        corner_mm: 0.0,
    }
}

/// The file that holds the cards of one size on one paper.
pub fn file_name(size: CardSize, paper: Paper) -> String {
    format!("cards-{}-{}.pdf", of_card(size).id, paper.word())
}
