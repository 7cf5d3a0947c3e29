//! Sizes of cards and sheets of paper.

use serde::Serialize;

use crate::book::{CardSize, OfficePaper};

/// All card sizes.
pub const SIZES: [CardSize; 4] = CardSize::ALL;

/// A sheet of paper that cards are printed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216 A4: 210 × 297 mm; posters on A3: 297 × 420 mm.
    A4,
    /// US Letter: 8.5 × 11 in; posters on Tabloid: 11 × 17 in.
    Letter,
    /// None: each face of a card is a page of the card's own size.
    Alone,
}

impl Paper {
    /// The papers a home printer has.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// The word used on the command line and in file names.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
            Self::Alone => "alone",
        }
    }
}

impl From<OfficePaper> for Paper {
    fn from(paper: OfficePaper) -> Self {
        match paper {
            OfficePaper::A4 => Self::A4,
            OfficePaper::Letter => Self::Letter,
        }
    }
}

/// A size as the templates need it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
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
#[must_use]
pub const fn of_card(size: CardSize) -> Format {
    let (id, width_mm, height_mm, corner_mm) = match size {
        // ISO/IEC 7810, ID-1; the corner's radius is the nominal one.
        CardSize::Id1 => ("id-1", 85.60, 53.98, 3.18),
        CardSize::ThreeByFive => ("3x5", 5.0 * MILLIMETRES_PER_INCH, 3.0 * MILLIMETRES_PER_INCH, 0.0),
        // ISO 216.
        CardSize::A7 => ("a7", 105.0, 74.0, 0.0),
        CardSize::A6 => ("a6", 148.0, 105.0, 0.0),
    };
    Format {
        id,
        label: size.label(),
        width_mm,
        height_mm,
        corner_mm,
    }
}

/// A paper's size; none for [`Paper::Alone`].
#[must_use]
pub const fn of_paper(paper: Paper) -> Option<Format> {
    match paper {
        Paper::A4 => Some(of_office_paper(OfficePaper::A4)),
        Paper::Letter => Some(of_office_paper(OfficePaper::Letter)),
        Paper::Alone => None,
    }
}

/// The size of an office's paper.
#[must_use]
pub const fn of_office_paper(paper: OfficePaper) -> Format {
    let (id, label, width_mm, height_mm) = match paper {
        OfficePaper::A4 => ("a4", "A4", 210.0, 297.0),
        OfficePaper::Letter => (
            "letter",
            "Letter",
            8.5 * MILLIMETRES_PER_INCH,
            11.0 * MILLIMETRES_PER_INCH,
        ),
    };
    Format {
        id,
        label,
        width_mm,
        height_mm,
        corner_mm: 0.0,
    }
}

/// The size of a poster where the cards are on this paper: twice the paper.
#[must_use]
pub const fn of_poster(paper: Paper) -> Option<Format> {
    let (id, label, width_mm, height_mm) = match paper {
        Paper::A4 => ("a3", "A3", 297.0, 420.0),
        Paper::Letter => (
            "tabloid",
            "Tabloid",
            11.0 * MILLIMETRES_PER_INCH,
            17.0 * MILLIMETRES_PER_INCH,
        ),
        Paper::Alone => return None,
    };
    Some(Format {
        id,
        label,
        width_mm,
        height_mm,
        corner_mm: 0.0,
    })
}
