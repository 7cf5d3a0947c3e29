//! The tree of a guard, in a form that can be `const`: its operations in postfix order.

use super::{ConditionId, DeviceId, GroupId, List, PolicyId, Text, Value};

/// How many values a guard may hold at once while it is evaluated.
pub const MAX_GUARD_DEPTH: usize = 32;

/// A condition over equipment and patient.
#[derive(Clone, Debug, PartialEq)]
pub struct Guard {
    /// As it is written in the book.
    pub text: Text,
    /// In postfix order: operands before their operator. Never deeper than [`MAX_GUARD_DEPTH`].
    pub ops: List<GuardOp>,
}

impl Guard {
    /// Whether it speaks of the state of equipment or surroundings, beyond what a set-up tells.
    #[must_use]
    pub fn depends_on_equipment(&self) -> bool {
        self.ops.iter().any(|op| {
            matches!(op, GuardOp::Fact(fact) if !matches!(fact, Fact::DeviceOnPatient | Fact::DeviceHasReservoir))
        })
    }
}

/// One operation of a guard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GuardOp {
    /// Compares what is measured with a value.
    Compare(Measure, Comparison, Operand),
    /// Whether what is measured lies in a range (a range-valued [`Value`]).
    Within(Measure, Value),
    /// A yes-or-no observation.
    Fact(Fact),
    /// Whether this device is used.
    DeviceIs(DeviceId),
    /// Whether the patient belongs to this group.
    GroupIs(GroupId),
    /// Whether the patient has this condition.
    HasCondition(ConditionId),
    /// Turns the last value round.
    Not,
    /// Both of the last two values.
    And,
    /// At least one of the last two values.
    Or,
}

/// How two quantities are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Comparison {
    /// `=`
    Equal,
    /// `!=`
    NotEqual,
    /// `<`
    Less,
    /// `<=`
    AtMost,
    /// `>`
    Greater,
    /// `>=`
    AtLeast,
}

/// What a measured quantity is compared with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Operand {
    /// A quantity.
    Value(Value),
    /// Something else that is measured.
    Measure(Measure),
    /// A policy's quantity.
    Policy(PolicyId),
    /// The low end of a policy's range.
    PolicyLow(PolicyId),
    /// The high end of a policy's range.
    PolicyHigh(PolicyId),
    /// The low end of the patient's saturation target.
    TargetLow,
    /// The high end of the patient's saturation target.
    TargetHigh,
    /// The least flow of the device in use.
    DeviceLeastFlow,
    /// The greatest flow of the device in use.
    DeviceMostFlow,
}

macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($item:ident $word:literal: $meaning:literal, unknown $unknown:literal;)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum $name {$(
            #[doc = concat!("`", $word, "`: ", $meaning, "; unknown ", $unknown, ".")]
            $item,
        )+}

        impl $name {
            /// Every one.
            pub const ALL: &'static [Self] = &[$(Self::$item),+];

            /// The words used in the book.
            #[must_use]
            pub const fn words(self) -> &'static str {
                match self {$(Self::$item => $word,)+}
            }

            /// What it says, as a phrase.
            #[must_use]
            pub const fn meaning(self) -> &'static str {
                match self {$(Self::$item => $meaning,)+}
            }

            /// When it is unknown, as a phrase.
            #[must_use]
            pub const fn unknown(self) -> &'static str {
                match self {$(Self::$item => $unknown,)+}
            }
        }
    };
}

words! {
    /// What is measured, or asked.
    Measure {
        Flow "flow": "the flow set on the regulator", unknown "when no flow was recorded";
        Pressure "pressure": "the cylinder's pressure, by its gauge", unknown "when the gauge was not read";
        Temperature "temperature": "the cylinder's temperature", unknown "when it was not measured";
        Spo2 "spo2": "the patient's oxygen saturation by pulse oximeter", unknown "when it was not measured";
        MinutesLeft "minutes left": "how long the gas lasts at the flow set, in whole minutes, rounded down",
            unknown "when cylinder, pressure or flow is unknown, or no gas flows";
        MinutesWanted "minutes wanted": "how long the gas must last", unknown "when nobody said";
    }
}

words! {
    /// A yes-or-no observation of equipment and surroundings.
    Fact {
        DeviceOnPatient "device on patient": "the device is on the patient", unknown "until it is recorded";
        DeviceHasReservoir "device has reservoir": "the device in use has a bag that must be filled, by the book",
            unknown "when the device is unknown";
        ReservoirFilled "reservoir filled": "the reservoir bag is full", unknown "until it is recorded";
        CylinderOpen "cylinder open": "the cylinder valve is open", unknown "until it is recorded";
        CylinderSecured "cylinder secured": "the cylinder is held, strapped or racked",
            unknown "until it is recorded";
        CylinderLaidDown "cylinder laid down": "the cylinder lies on its side", unknown "until it is recorded";
        CylinderStandingFree "cylinder standing free": "the cylinder stands with nothing holding it",
            unknown "until it is recorded";
        OutletClear "outlet clear": "the outlet was blown clear", unknown "until it is recorded";
        WasherFitted "washer fitted": "one good sealing washer is in place", unknown "until it is recorded";
        RegulatorSeated "regulator seated": "the regulator is on the outlet", unknown "until it is recorded";
        RegulatorPressurised "regulator pressurised": "gas under pressure is in the regulator",
            unknown "until it is recorded";
        FlameNear "flame near": "a flame, a spark or a cigarette is near", unknown "until it is recorded";
        GreaseNear "grease near": "oil or grease is on hands or equipment", unknown "until it is recorded";
    }
}
