//! What becomes of a state: the [table](super::row) read for one that is wholly known.

use core::fmt;

use super::{Known, Loss, State, table};
use crate::book::Action;

/// Why an action can't or mustn't be done in a state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Refusal(pub(super) &'static str);

impl Refusal {
    /// Why, in words: lower case, no full stop.
    #[must_use]
    pub const fn words(self) -> &'static str {
        self.0
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

impl core::error::Error for Refusal {}

impl State {
    /// Whether an action concerns the equipment at all; the others change no state and are never refused.
    #[must_use]
    pub const fn concerns(action: Action) -> bool {
        !table::row(action).is_empty()
    }

    /// The state after an action.
    ///
    /// # Errors
    ///
    /// [`Refusal`] when the action's precondition doesn't hold: it would do harm, or can't be done.
    ///
    /// ```
    /// use oxyfolio::book::Action;
    /// use oxyfolio::equipment::State;
    ///
    /// let state = State::PUT_AWAY;
    /// // A regulator that isn't there can't be tightened.
    /// assert!(state.after(Action::TightenRegulator).is_err());
    /// let cleared = state.after(Action::ClearOutlet)?;
    /// assert!(cleared.cylinder.outlet_clear);
    /// # Ok::<(), oxyfolio::equipment::Refusal>(())
    /// ```
    pub const fn after(self, action: Action) -> Result<Self, Refusal> {
        match Known::exactly(self).after(action) {
            Ok(known) => Ok(known.least()),
            Err(refusal) => Err(refusal),
        }
    }

    /// The state when gas has gone wherever it can go; the same state where none can.
    ///
    /// A cylinder whose valve is open has run empty. What a regulator holds behind a closed valve has run out. The
    /// pressure is gone, and the reservoir is no longer full.
    ///
    /// ```
    /// use oxyfolio::book::Action;
    /// use oxyfolio::equipment::{Loss, State};
    ///
    /// let mut state = State::PUT_AWAY;
    /// for action in [
    ///     Action::SeatRegulator,
    ///     Action::TightenRegulator,
    ///     Action::ZeroFlow,
    ///     Action::OpenCylinder,
    /// ] {
    ///     state = state.after(action)?;
    /// }
    /// // With the flow at zero nothing runs out, unless something leaks.
    /// assert_eq!(state.run_out(Loss::Flow), state);
    /// assert!(state.run_out(Loss::Leak).cylinder.empty);
    /// # Ok::<(), oxyfolio::equipment::Refusal>(())
    /// ```
    #[must_use]
    pub const fn run_out(self, by: Loss) -> Self {
        Known::exactly(self).run_out(by).least()
    }
}
