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
    ($(#[$doc:meta])* $name:ident { $($item:ident $word:literal $item_doc:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum $name {$(
            #[doc = $item_doc]
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
        }
    };
}

words! {
    /// What is measured, or asked.
    Measure {
        Flow "flow" "The flow set on the regulator, in L/min.",
        Pressure "pressure" "The gauge pressure of the cylinder.",
        Temperature "temperature" "The temperature of the cylinder.",
        Spo2 "spo2" "The patient's oxygen saturation.",
        MinutesLeft "minutes left" "How long the gas lasts at the flow set.",
        MinutesWanted "minutes wanted" "How long the gas must last.",
    }
}

words! {
    /// A yes-or-no observation of equipment and surroundings.
    Fact {
        DeviceOnPatient "device on patient" "The device is on the patient.",
        DeviceHasReservoir "device has reservoir" "The device has a reservoir bag.",
        ReservoirFilled "reservoir filled" "The reservoir bag is filled.",
        CylinderOpen "cylinder open" "The cylinder valve is open.",
        CylinderSecured "cylinder secured" "The cylinder is held, strapped or racked.",
        CylinderLaidDown "cylinder laid down" "The cylinder lies on its side.",
        CylinderStandingFree "cylinder standing free" "The cylinder stands with nothing holding it.",
        OutletClear "outlet clear" "The outlet was blown clear.",
        WasherFitted "washer fitted" "One good sealing washer is in place.",
        RegulatorSeated "regulator seated" "The regulator is on the outlet.",
        RegulatorPressurised "regulator pressurised" "There is gas under pressure in the regulator.",
        FlameNear "flame near" "There is a flame, spark or cigarette near.",
        GreaseNear "grease near" "There is oil or grease on hands or equipment.",
    }
}
