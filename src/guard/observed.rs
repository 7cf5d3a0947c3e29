//! What was observed of equipment and patient.

use super::Truth;
use crate::book::{ConditionId, DeviceId, DeviceRules, Fact, GroupId, Rules};
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
    /// The patient's oxygen saturation. More than 100 % can't be one: see [`saturation`](Self::saturation).
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

/// What guards ask, beside what is measured.
impl Observed<'_> {
    /// A yes-or-no observation. What the book says of a device isn't one: see
    /// [`device_has_reservoir`](Self::device_has_reservoir).
    #[must_use]
    pub fn fact(&self, fact: Fact) -> Truth {
        self.facts.get(fact).into()
    }

    /// Whether this device is used.
    #[must_use]
    pub fn device_is(&self, device: DeviceId) -> Truth {
        self.device.map(|used| used == device).into()
    }

    /// Whether the patient belongs to this group.
    #[must_use]
    pub fn group_is(&self, group: GroupId) -> Truth {
        self.group.map(|own| own == group).into()
    }

    /// Whether the patient has this condition.
    #[must_use]
    pub fn has_condition(&self, condition: ConditionId) -> Truth {
        self.conditions.map(|all| all.contains(&condition)).into()
    }

    /// Whether the device in use has a reservoir bag.
    #[must_use]
    pub fn device_has_reservoir<'b>(&self, rules: impl Rules<'b>) -> Truth {
        let device = self.device.and_then(|device| rules.device(device));
        device.map(DeviceRules::reservoir).into()
    }

    /// The patient's oxygen saturation as guards see it: what can't be a saturation is not known.
    ///
    /// ```
    /// use oxyfolio::guard::Observed;
    /// use oxyfolio::quantity::Percent;
    ///
    /// let spo2 = |percent| Observed { spo2: Percent::new(percent).ok(), ..Observed::default() }.saturation();
    /// assert_eq!(spo2(100.0), Percent::new(100.0).ok());
    /// assert_eq!(spo2(150.0), None);
    /// ```
    #[inline]
    #[must_use]
    pub fn saturation(&self) -> Option<Percent> {
        self.spo2.filter(|spo2| spo2.is_saturation())
    }

    /// The low end of the saturation aimed at.
    #[must_use]
    pub fn target_low(&self) -> Option<Percent> {
        self.target?.low.value()
    }

    /// The high end of the saturation aimed at.
    #[must_use]
    pub fn target_high(&self) -> Option<Percent> {
        self.target?.high.value()
    }

    /// An answer that depends on the flow limits of the device in use. Where the patient's group is unknown, it is
    /// asked for the limits of every group of the book, and known only when all agree.
    ///
    /// ```
    /// use oxyfolio::guard::{Observed, Truth, compare::greater};
    /// use oxyfolio::quantity::Flow;
    /// use oxyfolio::{RULEBOOK, device, group};
    ///
    /// let flow = Some(Flow::litres_per_minute(3.0)?);
    /// let mut seen = Observed { device: Some(device::NASAL_CANNULA), flow, ..Observed::default() };
    /// let too_high = |seen: &Observed| seen.device_flow(&RULEBOOK, |limits| greater(seen.flow, limits.high.value()));
    /// // Too much for a newborn, and right for an adult.
    /// assert_eq!(too_high(&seen), Truth::Unknown);
    /// seen.group = Some(group::NEWBORN);
    /// assert_eq!(too_high(&seen), Truth::True);
    /// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
    /// ```
    #[must_use]
    pub fn device_flow<'b>(&self, rules: impl Rules<'b>, answer: impl Fn(Range<Flow>) -> Truth) -> Truth {
        let Some(device) = self.device.and_then(|device| rules.device(device)) else {
            return Truth::Unknown;
        };
        if let Some(group) = self.group {
            return answer(device.flow_for(group));
        }
        let mut answers = (0..rules.groups())
            .filter_map(|index| u16::try_from(index).ok())
            .map(|index| answer(device.flow_for(GroupId(index))));
        let first = answers.next().unwrap_or(Truth::Unknown);
        if answers.all(|other| other == first) {
            first
        } else {
            Truth::Unknown
        }
    }
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
    #[inline]
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

    /// Observations as bits, by their place in [`Fact::ALL`]: those that hold, and those that don't. What is said to be
    /// both holds.
    #[inline]
    #[must_use]
    pub const fn of(yes: u32, no: u32) -> Self {
        Self {
            known: yes | no,
            holds: yes,
        }
    }

    /// Forgets an observation.
    #[inline]
    #[must_use]
    pub const fn without(self, fact: Fact) -> Self {
        let bit = Self::bit(fact);
        Self {
            known: self.known & !bit,
            holds: self.holds & !bit,
        }
    }

    /// A bit for each observation that holds, by its place in [`Fact::ALL`].
    #[inline]
    #[must_use]
    pub const fn yes(self) -> u32 {
        self.holds
    }

    /// A bit for each observation that is known not to hold.
    #[inline]
    #[must_use]
    pub const fn no(self) -> u32 {
        self.known & !self.holds
    }

    /// An observation; `None` when it was not recorded.
    #[inline]
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
