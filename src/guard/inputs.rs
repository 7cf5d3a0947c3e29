//! What a guard asks.

use core::ops::{BitOr, BitOrAssign};

use crate::book::{Fact, Guard, GuardOp, Measure, Operand};

/// A set of the observations that guards ask for: what is measured, facts, device, group, conditions and target.
///
/// ```
/// use oxyfolio::book::{Fact, Measure};
/// use oxyfolio::guard::{Evaluator, Inputs};
/// use oxyfolio::hazard;
///
/// let asked = hazard::Guards.depends_on(hazard::CHANGE_OVER_DUE);
/// assert_eq!(asked, Inputs::measure(Measure::Pressure) | Inputs::fact(Fact::DeviceOnPatient));
/// assert!(!hazard::Guards.hazards_that_ask(Inputs::CONDITIONS).contains(hazard::CHANGE_OVER_DUE));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Inputs(u32);

const FACTS: u32 = Fact::ALL.len() as u32;
const MEASURES: u32 = Measure::ALL.len() as u32;

impl Inputs {
    /// Nothing.
    pub const NONE: Self = Self(0);
    /// The device in use.
    pub const DEVICE: Self = Self::other(0);
    /// The patient's group.
    pub const GROUP: Self = Self::other(1);
    /// The patient's conditions.
    pub const CONDITIONS: Self = Self::other(2);
    /// The saturation aimed at.
    pub const TARGET: Self = Self::other(3);

    const fn other(place: u32) -> Self {
        Self(1 << (FACTS + MEASURES + place))
    }

    /// Something measured.
    #[must_use]
    pub const fn measure(measure: Measure) -> Self {
        Self(1 << (FACTS + measure as u32))
    }

    /// A yes-or-no observation. What the book says of the device, [`Fact::DeviceHasReservoir`], is the device.
    #[must_use]
    pub const fn fact(fact: Fact) -> Self {
        match fact {
            Fact::DeviceHasReservoir => Self::DEVICE,
            fact => Self(1 << fact as u32),
        }
    }

    /// Everything that a guard asks.
    #[must_use]
    pub fn of(guard: &Guard) -> Self {
        guard
            .ops
            .iter()
            .fold(Self::NONE, |asked, op| asked | Self::asked(op))
    }

    fn asked(op: &GuardOp) -> Self {
        match op {
            GuardOp::Compare(measure, _, operand) => {
                let other = match operand {
                    Operand::Measure(other) => Self::measure(*other),
                    Operand::TargetLow | Operand::TargetHigh => Self::TARGET,
                    Operand::DeviceLeastFlow | Operand::DeviceMostFlow => Self::DEVICE | Self::GROUP,
                    Operand::Value(_)
                    | Operand::Policy(_)
                    | Operand::PolicyLow(_)
                    | Operand::PolicyHigh(_) => Self::NONE,
                };
                Self::measure(*measure) | other
            }
            GuardOp::Within(measure, _) => Self::measure(*measure),
            GuardOp::Fact(fact) => Self::fact(*fact),
            GuardOp::DeviceIs(_) => Self::DEVICE,
            GuardOp::GroupIs(_) => Self::GROUP,
            GuardOp::HasCondition(_) => Self::CONDITIONS,
            GuardOp::Not | GuardOp::And | GuardOp::Or => Self::NONE,
        }
    }

    /// Whether some input is in both.
    #[must_use]
    pub const fn shares(self, other: Self) -> bool {
        self.0 & other.0 != 0
    }

    /// Whether every input of the other is in this.
    #[must_use]
    pub const fn contains(self, other: Self) -> bool {
        self.0 & other.0 == other.0
    }
}

impl BitOr for Inputs {
    type Output = Self;
    fn bitor(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }
}

impl BitOrAssign for Inputs {
    fn bitor_assign(&mut self, other: Self) {
        self.0 |= other.0;
    }
}
