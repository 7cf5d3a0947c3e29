//! Pocket cards and sheets: which rules go on which.

use super::{ConnectionId, CylinderId, DeviceId, HazardId, List, ProcedureId, Rule, TargetId, Text};
use crate::quantity::{Flow, Gauge, Pressure};

/// A pocket card, or a sheet to print beside the cards.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// Title, place and reason.
    pub rule: Rule,
    /// What it shows.
    pub layout: Layout,
    /// The sizes in which a card is printed; a sheet has none, it has its paper's.
    pub sizes: List<CardSize>,
    /// Sentences at its foot.
    pub notes: List<Text>,
}

/// What a card or a sheet shows.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Layout {
    /// Devices with their flows.
    Devices {
        /// In this order.
        devices: List<DeviceId>,
    },
    /// Saturation targets: where to start, and when to step up or down.
    Targets {
        /// In this order.
        targets: List<TargetId>,
    },
    /// Saturation targets of the first minutes of life, a row for each.
    Newborn {
        /// In this order.
        targets: List<TargetId>,
    },
    /// Minutes left by pressure and flow; a card for each cylinder.
    Durations {
        /// In this order.
        cylinders: List<CylinderId>,
        /// Rows, from high to low.
        pressures: List<Pressure<Gauge>>,
        /// Columns, from low to high; where there are none, the least, usual and most flows of the book's devices.
        flows: List<Flow>,
    },
    /// Cylinders and connections: what they hold, what fits and what never does.
    Cylinders {
        /// In this order.
        cylinders: List<CylinderId>,
        /// In this order.
        connections: List<ConnectionId>,
    },
    /// The steps of procedures; a card for each.
    Steps {
        /// In this order.
        procedures: List<ProcedureId>,
    },
    /// What to look at or to write down, one after the other.
    Checklist {
        /// In this order.
        items: List<Text>,
    },
    /// Hazards and what to do.
    Cautions {
        /// In this order.
        hazards: List<HazardId>,
    },
    /// A sheet for teaching and examining each procedure.
    CheckOff {
        /// In this order.
        procedures: List<ProcedureId>,
    },
    /// A sheet on which inspections of cylinders are written down.
    Log {
        /// The sizes it is for.
        cylinders: List<CylinderId>,
        /// What is looked at: a column for each.
        items: List<Text>,
    },
    /// A wall poster of procedures.
    Poster {
        /// In this order.
        procedures: List<ProcedureId>,
    },
}

/// The size of a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum CardSize {
    /// ISO/IEC 7810 ID-1: 85.60 × 53.98 mm.
    Id1,
    /// An index card, 3 × 5 in.
    ThreeByFive,
    /// ISO 216 A7, its long side across: 105 × 74 mm.
    A7,
    /// ISO 216 A6, its long side across: 148 × 105 mm.
    A6,
}

impl CardSize {
    /// Every size.
    pub const ALL: [Self; 4] = [Self::Id1, Self::ThreeByFive, Self::A7, Self::A6];

    /// How the size is written in the book.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Id1 => "ID-1",
            Self::ThreeByFive => "3 x 5 in",
            Self::A7 => "A7",
            Self::A6 => "A6",
        }
    }
}

impl core::fmt::Display for CardSize {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.label())
    }
}
