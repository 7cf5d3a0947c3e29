//! Every state there is, and those that can come about.

use std::collections::{BTreeMap, BTreeSet};

use oxyfolio::book::Action;
use oxyfolio::equipment::{Bottle, Holding, Loss, Regulator, State};

const HOLDINGS: [Holding; 4] = [
    Holding::StandingFree,
    Holding::InHand,
    Holding::Secured,
    Holding::LaidDown,
];

/// A number of bits taken off one after the other.
struct Bits(u64);

impl Bits {
    fn one_of<T: Copy>(&mut self, of: &[T]) -> T {
        let count = of.len() as u64;
        let found = of[(self.0 % count) as usize];
        self.0 /= count;
        found
    }

    fn bit(&mut self) -> bool {
        self.one_of(&[false, true])
    }

    fn bottle(&mut self) -> Bottle {
        Bottle {
            holding: self.one_of(&HOLDINGS),
            open: self.bit(),
            outlet_clear: self.bit(),
            empty: self.bit(),
        }
    }
}

/// How many states can be written down: 32 cylinders, 33 spares, 3 places of the regulator, 6 times yes or no.
pub const WRITABLE: u64 = 32 * 33 * 3 * 64;

/// One of the states that can be written down, whether or not it can come about.
pub fn writable(number: u64) -> State {
    let mut bits = Bits(number % WRITABLE);
    let spare = match bits.0 % 33 {
        32 => None,
        _ => Some(Bits(bits.0 % 33).bottle()),
    };
    bits.0 /= 33;
    State {
        cylinder: bits.bottle(),
        spare,
        regulator: bits.one_of(&[Regulator::Off, Regulator::Seated, Regulator::Tight]),
        washer_good: bits.bit(),
        pressurised: bits.bit(),
        flow_on: bits.bit(),
        device_connected: bits.bit(),
        reservoir_filled: bits.bit(),
        on_patient: bits.bit(),
    }
}

/// What moves the equipment on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Move {
    Does(Action),
    RunsOut(Loss),
}

impl Move {
    pub fn all() -> impl Iterator<Item = Self> {
        let actions = Action::ALL.iter().copied().map(Self::Does);
        actions.chain(Loss::ALL.iter().copied().map(Self::RunsOut))
    }

    pub fn from(self, state: State) -> Option<State> {
        match self {
            Self::Does(action) => state.after(action).ok(),
            Self::RunsOut(by) => Some(state.run_out(by)),
        }
    }
}

/// Every state that can come about from put away, by any actions and with gas running out at any time.
pub fn reachable() -> BTreeSet<State> {
    let mut found = BTreeSet::from([State::PUT_AWAY]);
    let mut waiting = vec![State::PUT_AWAY];
    while let Some(state) = waiting.pop() {
        for next in Move::all().filter_map(|one| one.from(state)) {
            if found.insert(next) {
                waiting.push(next);
            }
        }
    }
    found
}

/// Every change of state there is between states that can come about.
pub fn changes() -> impl Iterator<Item = (State, Move, State)> {
    reachable().into_iter().flat_map(|state| {
        Move::all().filter_map(move |one| {
            let next = one.from(state)?;
            (next != state).then_some((state, one, next))
        })
    })
}

/// Counts by a key.
pub fn tally<K: Ord>(keys: impl Iterator<Item = K>) -> BTreeMap<K, usize> {
    keys.fold(BTreeMap::new(), |mut counts, key| {
        *counts.entry(key).or_default() += 1;
        counts
    })
}
