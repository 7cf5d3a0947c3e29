//! What is so in every state that can come about.

use oxyfolio::equipment::{Regulator, State};

/// A law of the model: what it says, and whether it holds of a state.
pub type Law = (&'static str, fn(State) -> bool);

/// The laws, in the words of the page.
pub const LAWS: &[Law] = &[
    (
        "A regulator under pressure is on the cylinder, and tight.",
        |state| !state.pressurised || state.regulator == Regulator::Tight,
    ),
    (
        "A cylinder whose regulator is under pressure holds gas.",
        |state| !state.pressurised || !state.cylinder.empty,
    ),
    (
        "A tight regulator on an open cylinder that holds gas is under pressure.",
        |state| {
            let open = state.cylinder.open && state.regulator == Regulator::Tight && !state.cylinder.empty;
            !open || state.pressurised
        },
    ),
    (
        "A valve is never open under a regulator that isn't tight.",
        |state| !state.cylinder.open || state.regulator != Regulator::Seated,
    ),
    (
        "A regulator is only ever put on with a washer that was looked at.",
        |state| state.regulator == Regulator::Off || state.washer_good,
    ),
    ("A device on the patient is connected.", |state| {
        !state.on_patient || state.device_connected
    }),
    (
        "A full reservoir belongs to a connected device, and the flow is on and the regulator under pressure.",
        |state| !state.reservoir_filled || (state.device_connected && state.flow_on && state.pressurised),
    ),
    (
        "A spare stands beside a cylinder whose regulator is on.",
        |state| state.spare.is_none() || state.regulator != Regulator::Off,
    ),
    ("A spare's valve is closed.", |state| {
        state.spare.is_none_or(|spare| !spare.open)
    }),
    ("No action leaves a cylinder standing free.", |state| {
        use oxyfolio::equipment::Holding::StandingFree;
        state.cylinder.holding != StandingFree
            && state.spare.is_none_or(|spare| spare.holding != StandingFree)
    }),
];

/// The first law that a state breaks.
pub fn broken(state: State) -> Option<&'static str> {
    LAWS.iter()
        .find(|(_, holds)| !holds(state))
        .map(|(says, _)| *says)
}
