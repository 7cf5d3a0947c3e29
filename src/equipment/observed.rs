//! What can be observed of what is known, and what an observation adds to it.

use super::{
    Known, Part, Values,
    part::{
        BLOWN, CONNECTED, EMPTY, FILLED, FLOW_ON, FLOW_ZERO, GAS, IN_HAND, LAID_DOWN, NO_PRESSURE, NO_SPARE,
        NOT_BLOWN, NOT_CONNECTED, NOT_FILLED, OFF, OFF_PATIENT, ON_PATIENT, OPEN, PRESSURE, SECURED, SPARE,
        SPARE_STANDS_FREE, STANDS_FREE, WASHER_GOOD, WASHER_UNSEEN,
    },
};
use crate::book::Fact;

impl Known {
    /// What a guard can observe, where every possible state gives the same answer; otherwise `None`. The meanings are
    /// those of [`State::fact`](super::State::fact).
    #[must_use]
    pub const fn fact(&self, fact: Fact) -> Option<bool> {
        match Sight::of(fact).told(*self) {
            (true, _) => Some(true),
            (_, true) => Some(false),
            _ => None,
        }
    }

    /// All of it at once, as [`fact`](Self::fact) has it: a bit, by its place in [`Fact::ALL`], for each fact that holds,
    /// and for each that surely doesn't.
    #[must_use]
    pub const fn facts(&self) -> (u32, u32) {
        let (mut holds, mut holds_not) = (0, 0);
        let mut left = SIGHTS.as_slice();
        let mut bit = 1;
        while let Some((sight, others)) = left.split_first() {
            let (does, does_not) = sight.told(*self);
            holds |= bit * does as u32;
            holds_not |= bit * does_not as u32;
            (left, bit) = (others, bit << 1);
        }
        (holds, holds_not)
    }

    /// Whether the flow is turned on, where that is known: no guard asks it as a fact.
    #[must_use]
    pub const fn flow_on(&self) -> Option<bool> {
        match (self.may(FLOW_ON), self.may(FLOW_ZERO)) {
            (true, false) => Some(true),
            (false, true) => Some(false),
            _ => None,
        }
    }

    /// What is known when a fact was seen to hold, or not to hold; `None` where the equipment doesn't tell that fact.
    ///
    /// Of what was possible, that stays which agrees. Where none does, what was seen outranks what was worked out:
    /// something was done that isn't recorded, and the part may have every value that agrees. What cannot be otherwise
    /// then is known too: a device on the patient is connected, a regulator under pressure is on the cylinder.
    ///
    /// Of a cylinder standing free it isn't said which; it is taken to be the one in use, where that can be.
    ///
    /// ```
    /// use oxyfolio::book::Fact;
    /// use oxyfolio::equipment::Known;
    /// let known = Known::NOTHING.with(Fact::RegulatorPressurised, true).unwrap();
    /// assert_eq!(known.fact(Fact::RegulatorSeated), Some(true));
    /// // Whether a flame is near is not the equipment's to tell.
    /// assert_eq!(known.with(Fact::FlameNear, true), None);
    /// ```
    #[must_use]
    pub const fn with(self, fact: Fact, holds: bool) -> Option<Self> {
        let Some((values, or_spare)) = seen(fact) else {
            return None;
        };
        if or_spare {
            return Some(match holds {
                true if !self.may(values) && self.may(SPARE_STANDS_FREE) => self.settled(SPARE_STANDS_FREE),
                true => self.settled(values),
                false => self.settled(values.not()).settled(SPARE_STANDS_FREE.not()),
            });
        }
        let seen = self.settled(if holds { values } else { values.not() });
        Some(match (fact, holds) {
            (Fact::DeviceOnPatient, true) => seen.settled(CONNECTED),
            (Fact::ReservoirFilled, true) => seen.settled(CONNECTED).settled(FLOW_ON),
            (Fact::RegulatorPressurised, true) => seen.on(),
            (Fact::RegulatorPressurised, false) => seen.becomes(NOT_FILLED),
            (Fact::RegulatorSeated, true) => self.on(),
            (Fact::RegulatorSeated, false) => self.off(),
            _ => seen,
        })
    }

    /// What is known when the flow was recorded, on or at zero, and no action that set it.
    #[must_use]
    pub const fn flow(self, on: bool) -> Self {
        if on {
            self.becomes(FLOW_ON)
        } else {
            self.becomes(FLOW_ZERO).becomes(NOT_FILLED)
        }
    }

    /// What is known when a device was recorded to be connected, or none to be, and no action that did it.
    #[must_use]
    pub const fn device(self, connected: bool) -> Self {
        if connected {
            self.becomes(CONNECTED)
        } else {
            self.becomes(NOT_CONNECTED)
                .becomes(NOT_FILLED)
                .becomes(OFF_PATIENT)
        }
    }

    /// What is known when the gauge was read: above zero, or at zero.
    ///
    /// A reading outranks what was worked out. Above zero, the regulator is on and under pressure, and an open
    /// cylinder holds gas. At zero there is no pressure, and a cylinder that is surely open under a regulator has run
    /// empty.
    #[must_use]
    pub const fn gauge(self, above_zero: bool) -> Self {
        if above_zero {
            let seen = self.becomes(PRESSURE).on();
            if seen.surely(OPEN) {
                seen.becomes(GAS)
            } else {
                seen
            }
        } else {
            let seen = self.becomes(NO_PRESSURE).becomes(NOT_FILLED);
            if self.surely(OPEN) && self.surely(OFF.not()) {
                seen.becomes(EMPTY)
            } else {
                seen
            }
        }
    }

    /// What is known when nothing is known of a part any more. With the spare goes all that is told of it.
    #[must_use]
    pub const fn forget(self, part: Part) -> Self {
        let bits = match part {
            Part::Spare => SPARE,
            _ => part.bits(),
        };
        Self(self.0 | bits).tidied()
    }

    /// A regulator seen on the cylinder. Where it was thought to be off, nobody knows what came before.
    const fn on(self) -> Self {
        if self.may(OFF.not()) {
            self.settled(OFF.not())
        } else {
            self.becomes(OFF.not()).forget(Part::Outlet).forget(Part::Washer)
        }
    }

    /// A regulator seen off the cylinder. Where it was thought to be on, nobody has looked at the washer since, and the
    /// cylinder may be the spare.
    const fn off(self) -> Self {
        if self.may(OFF) {
            return self.settled(OFF).becomes(NO_PRESSURE);
        }
        let seen = self
            .becomes(OFF)
            .becomes(NO_PRESSURE)
            .becomes(NOT_FILLED)
            .becomes(WASHER_UNSEEN);
        let same = seen.becomes(NOT_BLOWN);
        if seen.surely(NO_SPARE) {
            same
        } else {
            same.or(seen.spare_takes_place())
        }
    }
}

/// The values by which a fact holds, and whether a spare standing free makes it hold too; `None` for what the equipment
/// doesn't tell.
const fn seen(fact: Fact) -> Option<(Values, bool)> {
    Some(match fact {
        Fact::DeviceOnPatient => (ON_PATIENT, false),
        Fact::ReservoirFilled => (FILLED, false),
        Fact::CylinderOpen => (OPEN, false),
        Fact::CylinderSecured => (SECURED.or(IN_HAND), false),
        Fact::CylinderLaidDown => (LAID_DOWN, false),
        Fact::CylinderStandingFree => (STANDS_FREE, true),
        Fact::OutletClear => (BLOWN, false),
        Fact::WasherFitted => (WASHER_GOOD, false),
        Fact::RegulatorSeated => (OFF.not(), false),
        Fact::RegulatorPressurised => (PRESSURE, false),
        Fact::DeviceHasReservoir | Fact::FlameNear | Fact::GreaseNear => return None,
    })
}

/// The values that tell of a fact, as bits.
#[derive(Clone, Copy)]
struct Sight {
    for_it: u64,
    against: u64,
    /// Of the spare, where it counts too; else of every part, one of whose values is always possible.
    spare_against: u64,
    /// It can be told that it doesn't hold.
    can_be_missed: bool,
}

/// By place in [`Fact::ALL`].
const SIGHTS: [Sight; Fact::ALL.len()] = {
    let mut sights = [Sight::NEVER_TOLD; Fact::ALL.len()];
    let (mut places, mut facts) = (sights.as_mut_slice(), Fact::ALL);
    while let (Some((place, other_places)), Some((fact, other_facts))) =
        (places.split_first_mut(), facts.split_first())
    {
        *place = Sight::of(*fact);
        (places, facts) = (other_places, other_facts);
    }
    sights
};

impl Sight {
    /// Of what the equipment doesn't tell.
    const NEVER_TOLD: Self = Self {
        for_it: u64::MAX,
        against: u64::MAX,
        spare_against: u64::MAX,
        can_be_missed: false,
    };

    const fn of(fact: Fact) -> Self {
        let Some((values, or_spare)) = seen(fact) else {
            return Self::NEVER_TOLD;
        };
        let (spare, spare_against) = if or_spare {
            (SPARE_STANDS_FREE.bits, SPARE_STANDS_FREE.not().bits)
        } else {
            (0, u64::MAX)
        };
        Self {
            for_it: values.bits | spare,
            against: values.not().bits,
            spare_against,
            // Nobody having looked at the washer, it may be good or bad.
            can_be_missed: !matches!(fact, Fact::WasherFitted),
        }
    }

    /// Whether the fact surely holds, and whether it surely doesn't. Without branches: a review asks it at every event.
    const fn told(&self, known: Known) -> (bool, bool) {
        let holds = (known.0 & self.against == 0) | (known.0 & self.spare_against == 0);
        let may = known.0 & self.for_it != 0;
        (holds, !holds & !may & self.can_be_missed)
    }
}
