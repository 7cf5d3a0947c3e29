//! The one table: what each action needs, and what it does.
//!
//! All else follows from it: what becomes of a [`State`](super::State), what becomes of what is [`Known`](super::Known),
//! and the page for readers. A row is a list of cases, of which the first that fits counts; needs are asked in order,
//! and the first that isn't met gives the refusal its words. Actions that only look, say or write have no case: they
//! change nothing and are never refused.

use super::part::{
    BLOWN, CLOSED, CONNECTED, EMPTY, FILLED, FLOW_ON, FLOW_ZERO, GAS, IN_HAND, LAID_DOWN, NO_PRESSURE,
    NO_SPARE, NOT_BLOWN, NOT_CONNECTED, NOT_FILLED, OFF, OFF_PATIENT, ON_PATIENT, OPEN, PRESSURE, SEATED,
    SECURED, SPARE_BLOWN, SPARE_CLOSED, SPARE_GAS, SPARE_IN_HAND, SPARE_LAID_DOWN, SPARE_NOT_BLOWN,
    SPARE_SECURED, SPARE_STANDS_FREE, STANDS_FREE, TIGHT, Values, WASHER_GOOD, WASHER_UNSEEN,
};
use crate::book::Action;

/// One case of an action: when it applies, what it needs, and what it does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Case {
    /// What must be so for the case to apply; nothing for the case that takes all that is left.
    pub when: &'static [Values],
    /// What must be so for the action to be done, in the order in which it is asked.
    pub needs: &'static [Need],
    /// What it changes, all at once.
    pub does: &'static [Effect],
}

/// What an action needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Need {
    /// One of these values.
    pub of: Values,
    /// Why the action is refused otherwise.
    pub otherwise: &'static str,
}

/// What an action changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effect {
    /// A part gets this value.
    Becomes(Values),
    /// The spare takes the cylinder's place.
    SpareTakesPlace,
}

/// What lets gas out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Loss {
    /// The flow that is set; or an open valve with no regulator on it.
    Flow,
    /// A leak of the valve, the washer or the regulator.
    Leak,
}

impl Loss {
    /// Both.
    pub const ALL: &'static [Self] = &[Self::Flow, Self::Leak];
}

use Effect::{Becomes, SpareTakesPlace};

const fn need(of: Values, otherwise: &'static str) -> Need {
    Need { of, otherwise }
}

const FITTED: Values = OFF.not();

const HELD: Need = need(STANDS_FREE.not(), "the cylinder stands free");
const SPARE_HELD: Need = need(SPARE_STANDS_FREE.not(), "the cylinder stands free");
const TIGHTENED: Need = need(SEATED.not(), "the regulator is not tightened");
const SHUT: Need = need(CLOSED, "the valve is open");
const BLED: Need = need(NO_PRESSURE, "the regulator is under pressure");
const AT_ZERO: Need = need(FLOW_ZERO, "the flow is not at zero");

const NOTHING_TO_BLOW: &str = "no gas is left to blow the outlet clear with";
const NO_FLOW: &str = "no gas can flow: the regulator is not on an open cylinder";
const NO_FILL: &str = "no gas flows to the reservoir";
const IN_USE: &str = "the device is still in use";

const FETCH: &[Case] = &[
    Case {
        when: &[OFF],
        needs: &[],
        does: &[
            Becomes(IN_HAND),
            Becomes(CLOSED),
            Becomes(NOT_BLOWN),
            Becomes(GAS),
        ],
    },
    Case {
        when: &[],
        needs: &[],
        does: &[
            Becomes(SPARE_IN_HAND),
            Becomes(SPARE_CLOSED),
            Becomes(SPARE_NOT_BLOWN),
            Becomes(SPARE_GAS),
        ],
    },
];

const SECURE: &[Case] = &[
    Case {
        when: &[NO_SPARE],
        needs: &[],
        does: &[Becomes(SECURED)],
    },
    Case {
        when: &[],
        needs: &[],
        does: &[Becomes(SECURED), Becomes(SPARE_SECURED)],
    },
];

const LAY_DOWN: &[Case] = &[
    Case {
        when: &[NO_SPARE],
        needs: &[],
        does: &[Becomes(LAID_DOWN)],
    },
    Case {
        when: &[],
        needs: &[],
        does: &[Becomes(LAID_DOWN), Becomes(SPARE_LAID_DOWN)],
    },
];

const CLEAR: &[Case] = &[
    Case {
        when: &[NO_SPARE],
        needs: &[
            need(OFF, "a regulator is on the outlet that is to be blown clear"),
            HELD,
            need(GAS, NOTHING_TO_BLOW),
        ],
        does: &[Becomes(BLOWN)],
    },
    Case {
        when: &[],
        needs: &[SPARE_HELD, need(SPARE_GAS, NOTHING_TO_BLOW)],
        does: &[Becomes(SPARE_BLOWN)],
    },
];

const LOOK_AT_WASHER: &[Case] = &[Case {
    when: &[],
    needs: &[],
    does: &[Becomes(WASHER_GOOD)],
}];

const SEAT: &[Case] = &[Case {
    when: &[],
    needs: &[
        need(OFF, "a regulator is on the cylinder already"),
        SHUT,
        need(
            WASHER_GOOD,
            "nobody has looked at the washer since the regulator was off",
        ),
    ],
    does: &[Becomes(SEATED)],
}];

const TIGHTEN: &[Case] = &[Case {
    when: &[],
    needs: &[need(FITTED, "there is no regulator on the cylinder"), BLED],
    does: &[Becomes(TIGHT)],
}];

const TURN_TO_ZERO: &[Case] = &[Case {
    when: &[],
    needs: &[],
    does: &[Becomes(FLOW_ZERO), Becomes(NOT_FILLED)],
}];

// On an open cylinder it does no more; an empty one puts nothing under pressure.
const OPEN_VALVE: &[Case] = &[
    Case {
        when: &[OFF],
        needs: &[HELD],
        does: &[Becomes(OPEN)],
    },
    Case {
        when: &[EMPTY, OPEN],
        needs: &[HELD, TIGHTENED],
        does: &[],
    },
    Case {
        when: &[EMPTY],
        needs: &[HELD, TIGHTENED, AT_ZERO],
        does: &[Becomes(OPEN)],
    },
    Case {
        when: &[OPEN],
        needs: &[HELD, TIGHTENED],
        does: &[Becomes(PRESSURE)],
    },
    Case {
        when: &[],
        needs: &[HELD, TIGHTENED, AT_ZERO],
        does: &[Becomes(OPEN), Becomes(PRESSURE)],
    },
];

// The gauge of an empty cylinder that is open shows zero, and that is worth reading.
const READ: &[Case] = &[
    Case {
        when: &[EMPTY, OPEN, FITTED],
        needs: &[],
        does: &[],
    },
    Case {
        when: &[],
        needs: &[need(
            PRESSURE,
            "the gauge shows nothing: the valve has not been opened",
        )],
        does: &[],
    },
];

const LISTEN: &[Case] = &[Case {
    when: &[],
    needs: &[need(PRESSURE, "nothing can leak: the valve has not been opened")],
    does: &[],
}];

const CONNECT: &[Case] = &[Case {
    when: &[],
    needs: &[need(NOT_CONNECTED, "a device is connected already")],
    does: &[Becomes(CONNECTED), Becomes(NOT_FILLED)],
}];

const TURN_ON: &[Case] = &[Case {
    when: &[],
    needs: &[need(OPEN, NO_FLOW), need(PRESSURE, NO_FLOW), need(TIGHT, NO_FLOW)],
    does: &[Becomes(FLOW_ON)],
}];

const FILL: &[Case] = &[Case {
    when: &[],
    needs: &[
        need(CONNECTED, NO_FILL),
        need(FLOW_ON, NO_FILL),
        need(OPEN, NO_FILL),
        need(PRESSURE, NO_FILL),
        need(TIGHT, NO_FILL),
    ],
    does: &[Becomes(FILLED)],
}];

const PLACE: &[Case] = &[Case {
    when: &[],
    needs: &[need(CONNECTED, "the device is not connected")],
    does: &[Becomes(ON_PATIENT)],
}];

const TAKE_OFF: &[Case] = &[Case {
    when: &[],
    needs: &[],
    does: &[Becomes(OFF_PATIENT)],
}];

const DISCONNECT: &[Case] = &[Case {
    when: &[],
    needs: &[need(OFF_PATIENT, "the device is on the patient")],
    does: &[Becomes(NOT_CONNECTED), Becomes(NOT_FILLED)],
}];

const DISPOSE: &[Case] = &[Case {
    when: &[],
    needs: &[need(OFF_PATIENT, IN_USE), need(NOT_CONNECTED, IN_USE)],
    does: &[],
}];

const CLOSE_VALVE: &[Case] = &[Case {
    when: &[],
    needs: &[],
    does: &[Becomes(CLOSED)],
}];

// A regulator is bled through the flow, which stays on.
const BLEED: &[Case] = &[
    Case {
        when: &[OFF],
        needs: &[need(
            CLOSED,
            "the valve is open: bleeding would empty the cylinder",
        )],
        does: &[Becomes(NO_PRESSURE), Becomes(NOT_FILLED)],
    },
    Case {
        when: &[],
        needs: &[need(
            CLOSED,
            "the valve is open: bleeding would empty the cylinder",
        )],
        does: &[Becomes(NO_PRESSURE), Becomes(FLOW_ON), Becomes(NOT_FILLED)],
    },
];

const REMOVE: &[Case] = &[
    Case {
        when: &[NO_SPARE],
        needs: &[BLED, SHUT],
        does: &[Becomes(OFF), Becomes(WASHER_UNSEEN), Becomes(NOT_BLOWN)],
    },
    Case {
        when: &[],
        needs: &[BLED, SHUT],
        does: &[Becomes(OFF), Becomes(WASHER_UNSEEN), SpareTakesPlace],
    },
];

const CAP: &[Case] = &[Case {
    when: &[],
    needs: &[need(OFF, "a regulator is on the outlet")],
    does: &[],
}];

const STOW: &[Case] = &[
    Case {
        when: &[NO_SPARE],
        needs: &[SHUT, BLED],
        does: &[Becomes(SECURED)],
    },
    Case {
        when: &[],
        needs: &[SHUT, BLED],
        does: &[Becomes(SECURED), Becomes(SPARE_SECURED)],
    },
];

/// The row of an action; no case at all for one that changes nothing and is never refused.
#[must_use]
pub const fn row(action: Action) -> &'static [Case] {
    match action {
        Action::FetchCylinder => FETCH,
        Action::SecureCylinder => SECURE,
        Action::LayCylinderDown => LAY_DOWN,
        Action::ClearOutlet => CLEAR,
        Action::InspectWasher => LOOK_AT_WASHER,
        Action::SeatRegulator => SEAT,
        Action::TightenRegulator => TIGHTEN,
        Action::ZeroFlow => TURN_TO_ZERO,
        Action::OpenCylinder => OPEN_VALVE,
        Action::ReadGauge => READ,
        Action::CheckLeaks => LISTEN,
        Action::ConnectDevice => CONNECT,
        Action::SetFlow => TURN_ON,
        Action::FillReservoir => FILL,
        Action::PlaceDevice => PLACE,
        Action::RemoveDevice => TAKE_OFF,
        Action::DisconnectDevice => DISCONNECT,
        Action::DisposeDevice => DISPOSE,
        Action::CloseCylinder => CLOSE_VALVE,
        Action::BleedRegulator => BLEED,
        Action::RemoveRegulator => REMOVE,
        Action::CapOutlet => CAP,
        Action::StowCylinder => STOW,
        Action::PutOnGloves
        | Action::KeepFlamesAway
        | Action::AssessPatient
        | Action::ChooseDevice
        | Action::ExplainToPatient
        | Action::CheckLabel
        | Action::CheckTestDate
        | Action::InspectOutlet
        | Action::CheckPins
        | Action::InspectRegulator
        | Action::WorkOutMinutes
        | Action::RouteTubing
        | Action::WatchPatient
        | Action::TagCylinder
        | Action::CleanEquipment
        | Action::WriteDown
        | Action::HandVentilate => &[],
    }
}

// What a regulator holds behind a closed valve runs out; what it holds on an open one runs out with the cylinder.
const FLOWN_OUT: &[Case] = &[
    Case {
        when: &[OPEN, OFF],
        needs: &[],
        does: &[Becomes(EMPTY)],
    },
    Case {
        when: &[OFF],
        needs: &[],
        does: &[],
    },
    Case {
        when: &[FLOW_ZERO],
        needs: &[],
        does: &[],
    },
    Case {
        when: &[OPEN],
        needs: &[],
        does: &[Becomes(EMPTY), Becomes(NO_PRESSURE), Becomes(NOT_FILLED)],
    },
    Case {
        when: &[],
        needs: &[],
        does: &[Becomes(NO_PRESSURE), Becomes(NOT_FILLED)],
    },
];

const LEAKED_OUT: &[Case] = &[
    Case {
        when: &[OPEN],
        needs: &[],
        does: &[Becomes(EMPTY), Becomes(NO_PRESSURE), Becomes(NOT_FILLED)],
    },
    Case {
        when: &[],
        needs: &[],
        does: &[Becomes(NO_PRESSURE), Becomes(NOT_FILLED)],
    },
];

/// The row of gas that has gone wherever it can: what time does, given enough of it.
#[must_use]
pub const fn run_out(by: Loss) -> &'static [Case] {
    match by {
        Loss::Flow => FLOWN_OUT,
        Loss::Leak => LEAKED_OUT,
    }
}
