//! Pocket cards: which rules go on which card.

use super::{CylinderId, DeviceId, HazardId, List, ProcedureId, Rule, Text};
use crate::quantity::{Flow, Gauge, Pressure};

/// A pocket card.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// Title, place and reason.
    pub rule: Rule,
    /// What it shows.
    pub layout: Layout,
    /// The sizes in which it is printed.
    pub sizes: List<CardSize>,
    /// Sentences at its foot.
    pub notes: List<Text>,
}

/// What a card shows.
#[derive(Clone, Debug, PartialEq)]
pub enum Layout {
    /// Devices with their flows.
    Devices {
        /// In this order.
        devices: List<DeviceId>,
    },
    /// Minutes left by pressure and flow; a card for each cylinder.
    Durations {
        /// In this order.
        cylinders: List<CylinderId>,
        /// Rows, from high to low.
        pressures: List<Pressure<Gauge>>,
        /// Columns, from low to high.
        flows: List<Flow>,
    },
    /// The steps of procedures; a card for each.
    Steps {
        /// In this order.
        procedures: List<ProcedureId>,
    },
    /// Hazards and what to do.
    Cautions {
        /// In this order.
        hazards: List<HazardId>,
    },
}

/// The size of a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CardSize {
    /// ISO/IEC 7810 ID-1: 85.60 × 53.98 mm.
    Id1,
    /// An index card, 3 × 5 in.
    ThreeByFive,
}

impl CardSize {
    /// Every size.
    pub const ALL: [Self; 2] = [Self::Id1, Self::ThreeByFive];

    /// How the size is written in the book.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Id1 => "ID-1",
            Self::ThreeByFive => "3 x 5 in",
        }
    }
}
