//! Whether the equipment is left safe.

use super::{
    Known, Values,
    part::{FLOW_ON, OFF, ON_PATIENT, OPEN, PRESSURE, SPARE_STANDS_FREE, STANDS_FREE},
};

/// Whether the equipment was left safe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Off the patient, valve closed, nothing under pressure, flow at zero, nothing standing free.
    Safe,
    /// Surely not, and why: the words of [`State::unsafe_end`](super::State::unsafe_end).
    Unsafe(&'static str),
    /// That can't be told, and what was not recorded; the first of [`Known::unrecorded`].
    Unknown(&'static str),
}

impl Known {
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
}

/// One way in which an end isn't safe: all of `when` is so.
struct Danger {
    when: &'static [Values],
    left: &'static str,
    unrecorded: &'static str,
}

/// What makes an end unsafe, in the order in which it is told.
const DANGERS: &[Danger] = &[
    Danger {
        when: &[ON_PATIENT],
        left: "the device is still on the patient",
        unrecorded: "whether the device is off the patient was not recorded",
    },
    Danger {
        when: &[OPEN],
        left: "the cylinder is left open",
        unrecorded: "whether the cylinder is closed was not recorded",
    },
    Danger {
        when: &[PRESSURE],
        left: "the regulator is left under pressure",
        unrecorded: "whether the regulator was bled was not recorded",
    },
    Danger {
        when: &[FLOW_ON, OFF.not()],
        left: "the flow is left turned on",
        unrecorded: "whether the flow is at zero was not recorded",
    },
    Danger {
        when: &[STANDS_FREE],
        left: "a cylinder is left standing free",
        unrecorded: "whether the cylinder is kept from falling was not recorded",
    },
    Danger {
        when: &[SPARE_STANDS_FREE],
        left: "a cylinder is left standing free",
        unrecorded: "whether the spare cylinder is kept from falling was not recorded",
    },
];
