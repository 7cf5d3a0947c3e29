//! What is known of the equipment when not all of it is: for each part, the values it may have.

use core::fmt;

use super::{
    Bottle, Holding, Loss, Part, Refusal, Regulator, State, Values,
    part::{
        BLOWN, CLOSED, CONNECTED, CYLINDER, EMPTY, EVERY, FILLED, FLOW_ON, FLOW_ZERO, GAS, IN_HAND,
        LAID_DOWN, NO_PRESSURE, NO_SPARE, NOT_BLOWN, NOT_CONNECTED, NOT_FILLED, OFF, OFF_PATIENT, ON_PATIENT,
        OPEN, PRESSURE, SEATED, SECURED, SPARE, SPARE_ABOVE, SPARE_GONE, STANDS_FREE, TIGHT, WASHER_GOOD,
        WASHER_UNSEEN,
    },
    table::{self, Case, Effect},
};
use crate::book::Action;

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
pub struct Known(pub(super) u64);

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

    /// What may be so of a part, in words that end a sentence begun with [`Part::words`].
    pub fn words(self, part: Part) -> impl Iterator<Item = &'static str> {
        let values = part.values().iter();
        values
            .filter(move |(bits, _)| bits & self.0 != 0)
            .map(|(_, words)| *words)
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

    /// The part has one of these values: those of them that were possible, or else any of them.
    pub(super) const fn settled(self, values: Values) -> Self {
        if self.may(values) {
            self.narrowed(values)
        } else {
            self.becomes(values)
        }
    }

    /// Leaves out the part's other values; the part must possibly have one of these.
    pub(super) const fn narrowed(self, values: Values) -> Self {
        Self(self.0 & !values.not().bits).tidied()
    }

    /// Of a spare that surely isn't there nothing else is told.
    pub(super) const fn tidied(self) -> Self {
        if self.may(NO_SPARE.not()) {
            self
        } else {
            Self((self.0 & !SPARE) | SPARE_GONE)
        }
    }

    pub(super) const fn becomes(self, values: Values) -> Self {
        Self((self.0 & !values.part().bits()) | values.bits)
    }

    pub(super) const fn spare_takes_place(self) -> Self {
        let there = self.0 & SPARE & !NO_SPARE.bits;
        Self((self.0 & !(CYLINDER | SPARE)) | (there >> SPARE_ABOVE) | SPARE_GONE)
    }

    /// What of this fits all of `when`, and the rest. Where two parts are in doubt the rest is more than need be.
    pub(super) const fn split(self, when: &[Values]) -> (Option<Self>, Option<Self>) {
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
