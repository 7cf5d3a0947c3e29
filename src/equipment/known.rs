//! What is known of the equipment when not all of it is: for each part, the values it may have.

use core::fmt;

use super::{
    Bottle, Holding, Loss, Part, Refusal, Regulator, State, Values,
    part::{
        BLOWN, CLOSED, CONNECTED, CYLINDER, EMPTY, EVERY, FILLED, FLOW_ON, FLOW_ZERO, GAS, IN_HAND,
        LAID_DOWN, NO_PRESSURE, NO_SPARE, NOT_BLOWN, NOT_CONNECTED, NOT_FILLED, OFF, OFF_PATIENT, ON_PATIENT,
        OPEN, PRESSURE, SEATED, SECURED, SPARE, SPARE_ABOVE, SPARE_GONE, SPARE_STANDS_FREE, STANDS_FREE,
        TIGHT, WASHER_GOOD, WASHER_UNSEEN,
    },
    table::{self, Case, DANGERS, Danger, Effect},
};
use crate::book::{Action, Fact};

/// What is known of the equipment: for each [`Part`] the values it may have.
///
/// A run's record that begins in the middle doesn't say how the equipment was. So a review starts with
/// [`Known::NOTHING`], and learns: what was done must have been possible.
///
/// What holds of every state that is possible is known; for the rest the answer is `None`, never a guess. The parts are
/// kept apart, so that "either this or that of two parts" is not remembered: then more is possible than need be, never
/// less.
///
/// ```
/// use oxyfolio::book::{Action, Fact};
/// use oxyfolio::equipment::Known;
///
/// let known = Known::NOTHING;
/// assert_eq!(known.fact(Fact::RegulatorSeated), None);
/// // Who sets a flow has a regulator on an open cylinder.
/// let known = known.after(Action::SetFlow)?;
/// assert_eq!(known.fact(Fact::RegulatorSeated), Some(true));
/// assert_eq!(known.fact(Fact::CylinderOpen), Some(true));
/// // Whether the outlet was blown clear before, the record doesn't tell.
/// assert_eq!(known.fact(Fact::OutletClear), None);
/// // Bleeding can't come next, whatever else is so.
/// let refused = known.after(Action::BleedRegulator).unwrap_err();
/// assert_eq!(refused.to_string(), "the valve is open: bleeding would empty the cylinder");
/// # Ok::<(), oxyfolio::equipment::Refusal>(())
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Known(u64);

/// Whether the equipment was left safe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Off the patient, valve closed, nothing under pressure, flow at zero, nothing standing free.
    Safe,
    /// Surely not, and why: the words of [`State::unsafe_end`].
    Unsafe(&'static str),
    /// That can't be told, and what was not recorded; the first of [`Known::unrecorded`].
    Unknown(&'static str),
}

impl Known {
    /// Everything is possible.
    pub const NOTHING: Self = Self(EVERY);

    /// This state and no other.
    #[must_use]
    pub const fn exactly(state: State) -> Self {
        let spare = match state.spare {
            Some(spare) => bottle(spare) << SPARE_ABOVE,
            None => SPARE_GONE,
        };
        let regulator = match state.regulator {
            Regulator::Off => OFF,
            Regulator::Seated => SEATED,
            Regulator::Tight => TIGHT,
        };
        Self(
            bottle(state.cylinder)
                | spare
                | regulator.bits
                | either(state.washer_good, WASHER_GOOD, WASHER_UNSEEN)
                | either(state.pressurised, PRESSURE, NO_PRESSURE)
                | either(state.flow_on, FLOW_ON, FLOW_ZERO)
                | either(state.device_connected, CONNECTED, NOT_CONNECTED)
                | either(state.reservoir_filled, FILLED, NOT_FILLED)
                | either(state.on_patient, ON_PATIENT, OFF_PATIENT),
        )
    }

    /// The state, when only one is possible.
    #[must_use]
    pub const fn state(self) -> Option<State> {
        if self.0.count_ones() as usize == Part::ALL.len() {
            Some(self.least())
        } else {
            None
        }
    }

    /// The state of the first value of every part: the only state, when only one is possible.
    pub(super) const fn least(self) -> State {
        State {
            cylinder: filled(self.0),
            spare: if self.may(NO_SPARE) {
                None
            } else {
                Some(filled(self.0 >> SPARE_ABOVE))
            },
            regulator: if self.may(OFF) {
                Regulator::Off
            } else if self.may(SEATED) {
                Regulator::Seated
            } else {
                Regulator::Tight
            },
            washer_good: !self.may(WASHER_UNSEEN),
            pressurised: !self.may(NO_PRESSURE),
            flow_on: !self.may(FLOW_ZERO),
            device_connected: !self.may(NOT_CONNECTED),
            reservoir_filled: !self.may(NOT_FILLED),
            on_patient: !self.may(OFF_PATIENT),
        }
    }

    /// Whether this may be the state.
    #[must_use]
    pub const fn allows(self, state: State) -> bool {
        Self::exactly(state).0 & !self.0 == 0
    }

    /// What is possible here or there.
    #[must_use]
    pub const fn or(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// Whether a part may have one of these values.
    #[must_use]
    pub const fn may(self, values: Values) -> bool {
        self.0 & values.bits != 0
    }

    /// Whether a part surely has one of these values.
    #[must_use]
    pub const fn surely(self, values: Values) -> bool {
        !self.may(values.not())
    }

    /// What a guard can observe, where every possible state gives the same answer; otherwise `None`. The meanings are
    /// those of [`State::fact`].
    #[must_use]
    pub const fn fact(&self, fact: Fact) -> Option<bool> {
        let Some((values, or_spare)) = seen(fact) else {
            return None;
        };
        let surely = self.surely(values) || (or_spare && self.surely(SPARE_STANDS_FREE));
        let may = self.may(values) || (or_spare && self.may(SPARE_STANDS_FREE));
        match (surely, may) {
            (true, _) => Some(true),
            // Nobody having looked at the washer, it may be good or bad.
            (false, false) if !matches!(fact, Fact::WasherFitted) => Some(false),
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

    /// What is known after an action. It was done, so it was possible: states in which it would have been refused are
    /// left out.
    ///
    /// # Errors
    ///
    /// [`Refusal`] when it would have been refused in every possible state.
    pub const fn after(self, action: Action) -> Result<Self, Refusal> {
        self.follow(table::row(action))
    }

    /// What is known when gas has gone wherever it can, as [`State::run_out`] has it.
    #[must_use]
    pub const fn run_out(self, by: Loss) -> Self {
        match self.follow(table::run_out(by)) {
            Ok(known) => known,
            // Time is never refused: its rows need nothing.
            Err(_) => self,
        }
    }

    /// What is known when gas may have run out meanwhile, or not.
    #[must_use]
    pub const fn may_run_out(self, by: Loss) -> Self {
        self.or(self.run_out(by))
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

    /// Whether the equipment is left safe.
    #[must_use]
    pub const fn end(self) -> End {
        let mut left = DANGERS;
        let mut unknown = None;
        while let Some((danger, others)) = left.split_first() {
            match self.danger(danger) {
                Some(true) => return End::Unsafe(danger.left),
                None if unknown.is_none() => unknown = Some(danger.unrecorded),
                _ => {}
            }
            left = others;
        }
        match unknown {
            Some(what) => End::Unknown(what),
            None => End::Safe,
        }
    }

    /// Everything that was not recorded and on which a safe end depends.
    pub fn unrecorded(self) -> impl Iterator<Item = &'static str> {
        DANGERS
            .iter()
            .filter(move |danger| self.danger(danger).is_none())
            .map(|danger| danger.unrecorded)
    }

    const fn danger(self, danger: &Danger) -> Option<bool> {
        match self.split(danger.when) {
            (None, _) => Some(false),
            (Some(_), None) => Some(true),
            (Some(_), Some(_)) => None,
        }
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

    /// The part has one of these values: those of them that were possible, or else any of them.
    const fn settled(self, values: Values) -> Self {
        if self.may(values) {
            self.narrowed(values)
        } else {
            self.becomes(values)
        }
    }

    /// Leaves out the part's other values; the part must possibly have one of these.
    const fn narrowed(self, values: Values) -> Self {
        Self(self.0 & !values.not().bits).tidied()
    }

    /// Of a spare that surely isn't there nothing else is told.
    const fn tidied(self) -> Self {
        if self.may(NO_SPARE.not()) {
            self
        } else {
            Self((self.0 & !SPARE) | SPARE_GONE)
        }
    }

    const fn becomes(self, values: Values) -> Self {
        Self((self.0 & !values.part().bits()) | values.bits)
    }

    const fn spare_takes_place(self) -> Self {
        let there = self.0 & SPARE & !NO_SPARE.bits;
        Self((self.0 & !(CYLINDER | SPARE)) | (there >> SPARE_ABOVE) | SPARE_GONE)
    }

    /// What of this fits all of `when`, and the rest. Where two parts are in doubt the rest is more than need be.
    const fn split(self, when: &[Values]) -> (Option<Self>, Option<Self>) {
        let (mut fits, mut rest, mut in_doubt) = (self, self, 0);
        let mut left = when;
        while let Some((values, others)) = left.split_first() {
            if !self.may(*values) {
                return (None, Some(self));
            }
            if !self.surely(*values) {
                in_doubt += 1;
                rest = if in_doubt == 1 {
                    self.narrowed(values.not())
                } else {
                    self
                };
                fits = fits.narrowed(*values);
            }
            left = others;
        }
        (Some(fits), if in_doubt == 0 { None } else { Some(rest) })
    }

    /// Walks a row: the first case that fits, or all that may be the first.
    const fn follow(self, row: &[Case]) -> Result<Self, Refusal> {
        let mut found: Option<Self> = None;
        let mut refused: Option<Refusal> = None;
        let mut left = row;
        let mut rest = Some(self);
        while let (Some((case, others)), Some(here)) = (left.split_first(), rest) {
            let (fits, remains) = here.split(case.when);
            if let Some(fits) = fits {
                match fits.done(case) {
                    Ok(next) => {
                        found = Some(match found {
                            Some(known) => known.or(next),
                            None => next,
                        });
                    }
                    Err(refusal) if refused.is_none() => refused = Some(refusal),
                    Err(_) => {}
                }
            }
            (left, rest) = (others, remains);
        }
        // What no case fits stays as it is.
        match (found, rest, refused) {
            (Some(known), Some(same), _) => Ok(known.or(same)),
            (Some(known), None, _) | (None, Some(known), _) => Ok(known),
            (None, None, Some(refusal)) => Err(refusal),
            (None, None, None) => Ok(self),
        }
    }

    const fn done(self, case: &Case) -> Result<Self, Refusal> {
        let mut known = self;
        let mut needs = case.needs;
        while let Some((need, others)) = needs.split_first() {
            if !known.may(need.of) {
                return Err(Refusal(need.otherwise));
            }
            known = known.narrowed(need.of);
            needs = others;
        }
        let mut effects = case.does;
        while let Some((effect, others)) = effects.split_first() {
            known = match effect {
                Effect::Becomes(values) => known.becomes(*values),
                Effect::SpareTakesPlace => known.spare_takes_place(),
            };
            effects = others;
        }
        Ok(known)
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

const fn either(holds: bool, yes: Values, no: Values) -> u64 {
    if holds { yes.bits } else { no.bits }
}

const fn bottle(bottle: Bottle) -> u64 {
    let holding = match bottle.holding {
        Holding::StandingFree => STANDS_FREE,
        Holding::InHand => IN_HAND,
        Holding::Secured => SECURED,
        Holding::LaidDown => LAID_DOWN,
    };
    holding.bits
        | either(bottle.open, OPEN, CLOSED)
        | either(bottle.outlet_clear, BLOWN, NOT_BLOWN)
        | either(bottle.empty, EMPTY, GAS)
}

/// The first value of each part of a cylinder whose bits are those of the cylinder in use.
const fn filled(bits: u64) -> Bottle {
    let known = Known(bits);
    Bottle {
        holding: if known.may(STANDS_FREE) {
            Holding::StandingFree
        } else if known.may(IN_HAND) {
            Holding::InHand
        } else if known.may(SECURED) {
            Holding::Secured
        } else {
            Holding::LaidDown
        },
        open: !known.may(CLOSED),
        outlet_clear: !known.may(NOT_BLOWN),
        empty: known.may(EMPTY),
    }
}

impl fmt::Debug for Known {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut list = f.debug_map();
        for part in Part::ALL {
            let mut values = [""; 5];
            let says = part.values().iter().filter(|(bit, _)| self.0 & bit != 0);
            for (place, (_, words)) in values.iter_mut().zip(says) {
                *place = words;
            }
            list.entry(
                part,
                &values.split(|words| words.is_empty()).next().unwrap_or(&[]),
            );
        }
        list.finish()
    }
}
