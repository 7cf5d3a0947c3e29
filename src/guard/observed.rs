//! What was observed of equipment and patient.

use crate::book::{ConditionId, DeviceId, Fact, GroupId};
use crate::quantity::{Flow, Gauge, Percent, Pressure, Range, Temperature, Time};

/// What was observed; whatever is `None` was not recorded.
#[derive(Clone, Copy, Debug, Default)]
pub struct Observed<'a> {
    /// The flow set.
    pub flow: Option<Flow>,
    /// The gauge reading.
    pub pressure: Option<Pressure<Gauge>>,
    /// The cylinder's temperature.
    pub temperature: Option<Temperature>,
    /// The patient's oxygen saturation.
    pub spo2: Option<Percent>,
    /// How long the gas lasts.
    pub minutes_left: Option<Time>,
    /// How long it must last.
    pub minutes_wanted: Option<Time>,
    /// The device.
    pub device: Option<DeviceId>,
    /// The patient's group.
    pub group: Option<GroupId>,
    /// The patient's conditions, when they were asked for; an empty list means none.
    pub conditions: Option<&'a [ConditionId]>,
    /// The saturation aimed at.
    pub target: Option<Range<Percent>>,
    /// Yes-or-no observations.
    pub facts: Facts,
}

/// Yes-or-no observations; all unknown at first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Facts {
    known: u32,
    holds: u32,
}

impl Facts {
    /// Nothing was recorded.
    pub const NONE: Self = Self { known: 0, holds: 0 };

    const fn bit(fact: Fact) -> u32 {
        1 << fact as u32
    }

    /// Records an observation.
    #[must_use]
    pub const fn with(self, fact: Fact, holds: bool) -> Self {
        let bit = Self::bit(fact);
        Self {
            known: self.known | bit,
            holds: if holds {
                self.holds | bit
            } else {
                self.holds & !bit
            },
        }
    }

    /// An observation; `None` when it was not recorded.
    #[must_use]
    pub const fn get(self, fact: Fact) -> Option<bool> {
        let bit = Self::bit(fact);
        if self.known & bit == 0 {
            None
        } else {
            Some(self.holds & bit != 0)
        }
    }
}
