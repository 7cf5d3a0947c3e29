//! Where cards stand on sheets of paper, fronts and backs: geometry, in millimetres from the upper left corner.

use serde::Serialize;

use super::format::Format;

/// Nothing is printed nearer to the edge of the paper.
const MARGIN: f64 = 6.0;
/// Between cards, where the paper allows it.
const GUTTER: f64 = 4.0;
/// Between cards, at least: room for the cut marks.
const LEAST_GUTTER: f64 = 2.0;
/// Kept clear round the cards for the outer cut marks.
const OUTER: f64 = 2.6;

/// How the backs of cards come behind their fronts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Backs {
    /// A printer that turns the paper on its long edge.
    #[default]
    LongEdge,
    /// A printer that turns the paper on its short edge.
    ShortEdge,
    /// Printed below their fronts on the same side, to be folded behind them.
    Fold,
}

impl Backs {
    /// Every way.
    pub const ALL: [Self; 3] = [Self::LongEdge, Self::ShortEdge, Self::Fold];

    /// The word used on the command line.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::LongEdge => "long-edge",
            Self::ShortEdge => "short-edge",
            Self::Fold => "fold",
        }
    }
}

/// By how much a printer's backs are moved against its fronts, in millimetres, as one looks at the back.
#[derive(Clone, Copy, Debug, PartialEq, Default, Serialize)]
pub struct Shift {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

impl Shift {
    /// More than this is a paper laid in askew, and not a printer's habit.
    pub const MOST: f64 = 10.0;
}

/// The upper left corner of a face.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Corner {
    /// From the left edge of the page.
    pub x: f64,
    /// From the upper edge of the page.
    pub y: f64,
}

/// The place of one card: where its front stands, and where its back stands on the page that holds it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Slot {
    /// The front.
    pub front: Corner,
    /// The back: on the next page, or, to be folded, on the same.
    pub back: Corner,
}

/// The places of cards on a sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Imposition {
    /// The page's width, the paper turned as it is used.
    pub width: f64,
    /// The page's height.
    pub height: f64,
    /// Cards side by side.
    pub columns: usize,
    /// Cards one below the other; a front and its fold-out back count once.
    pub rows: usize,
    /// What is cut out: a card, or a card with the back that is folded behind it.
    pub piece_width: f64,
    /// Its height.
    pub piece_height: f64,
    /// Between pieces side by side.
    pub gap_x: f64,
    /// Between pieces one below the other.
    pub gap_y: f64,
    /// The first piece.
    pub origin: Corner,
    /// The way of the backs.
    pub backs: &'static str,
    /// Whether the backs stand on their heads.
    pub back_turned: bool,
    /// What the printer's backs are moved by.
    pub shift: Shift,
    /// The places, row by row.
    pub slots: Vec<Slot>,
}

impl Imposition {
    /// As many cards as a paper holds, upright or on its side; `None` where not one fits.
    ///
    /// The backs are placed so that a card, once cut out, reads upright when it is turned like a page, from right to left.
    #[must_use]
    pub fn new(card: &Format, paper: &Format, backs: Backs, two_sided: bool, shift: Shift) -> Option<Self> {
        let fold = two_sided && backs == Backs::Fold;
        let piece = (
            card.width_mm,
            if fold {
                2.0 * card.height_mm
            } else {
                card.height_mm
            },
        );
        let upright = Grid::on(paper.width_mm, paper.height_mm, piece);
        let aside = Grid::on(paper.height_mm, paper.width_mm, piece);
        let (grid, turned) = if aside.count() > upright.count() {
            (aside, true)
        } else {
            (upright, false)
        };
        (grid.count() > 0).then(|| grid.place(card, backs, turned, fold, shift))
    }

    /// How many cards a sheet holds.
    #[must_use]
    pub fn count(&self) -> usize {
        self.slots.len()
    }
}

struct Grid {
    page: (f64, f64),
    piece: (f64, f64),
    across: Line,
    down: Line,
}

/// Pieces along one side of the page.
struct Line {
    count: usize,
    gap: f64,
    start: f64,
}

impl Line {
    fn along(room: f64, one: f64) -> Self {
        let free = room - 2.0 * MARGIN;
        let mut count = 0_u16;
        let taken = |count: u16| f64::from(count) * (one + LEAST_GUTTER) - LEAST_GUTTER;
        // A hair, so that a card as long as the room fits it.
        while taken(count + 1) <= free + 1e-9 && count < 1000 {
            count += 1;
        }
        let gaps = f64::from(count.saturating_sub(1));
        let cards = f64::from(count) * one;
        let gap = if count < 2 {
            0.0
        } else {
            ((free - cards - 2.0 * OUTER) / gaps).clamp(LEAST_GUTTER, GUTTER)
        };
        Self {
            count: usize::from(count),
            gap,
            start: (room - cards - gaps * gap) / 2.0,
        }
    }

    fn at(&self, index: usize, one: f64) -> f64 {
        let index = u16::try_from(index).unwrap_or(u16::MAX);
        self.start + f64::from(index) * (one + self.gap)
    }
}

impl Grid {
    fn on(width: f64, height: f64, piece: (f64, f64)) -> Self {
        Self {
            page: (width, height),
            piece,
            across: Line::along(width, piece.0),
            down: Line::along(height, piece.1),
        }
    }

    const fn count(&self) -> usize {
        self.across.count * self.down.count
    }

    fn place(self, card: &Format, backs: Backs, turned: bool, fold: bool, shift: Shift) -> Imposition {
        let (width, height) = self.page;
        // The axis about which the printer turns the page as it lies: its long edge is upright unless the paper lies on
        // its side.
        let about_upright_axis = (backs == Backs::LongEdge) != turned;
        let mut slots = Vec::new();
        for row in 0..self.down.count {
            for column in 0..self.across.count {
                let front = Corner {
                    x: self.across.at(column, self.piece.0),
                    y: self.down.at(row, self.piece.1),
                };
                let back = if fold {
                    Corner {
                        x: front.x,
                        y: front.y + card.height_mm,
                    }
                } else if about_upright_axis {
                    Corner {
                        x: width - front.x - self.piece.0 + shift.x,
                        y: front.y + shift.y,
                    }
                } else {
                    Corner {
                        x: front.x + shift.x,
                        y: height - front.y - self.piece.1 + shift.y,
                    }
                };
                slots.push(Slot { front, back });
            }
        }
        Imposition {
            width,
            height,
            columns: self.across.count,
            rows: self.down.count,
            piece_width: self.piece.0,
            piece_height: self.piece.1,
            gap_x: self.across.gap,
            gap_y: self.down.gap,
            origin: Corner {
                x: self.across.start,
                y: self.down.start,
            },
            backs: backs.word(),
            back_turned: fold || !about_upright_axis,
            shift: if fold { Shift::default() } else { shift },
            slots,
        }
    }
}
