//! The parts of the equipment that a state tells of, and the values each can have.
//!
//! A value is one bit, so that any set of values, of one part or of all, is one number. The cylinder in use and the
//! spare have their bits in the same order, ten apart: the spare takes the cylinder's place by a shift.

/// Some values of one part: what a row of the table asks for, or what a part becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Values {
    part: Part,
    pub(super) bits: u64,
}

impl Values {
    const fn one(part: Part, bit: u32) -> Self {
        Self { part, bits: 1 << bit }
    }

    /// These values or those of another set, which is of the same part.
    pub(super) const fn or(self, other: Self) -> Self {
        Self {
            part: self.part,
            bits: self.bits | (other.bits & self.part.bits()),
        }
    }

    /// All other values of the part.
    pub(super) const fn not(self) -> Self {
        Self {
            part: self.part,
            bits: self.part.bits() & !self.bits,
        }
    }

    /// The part they are values of.
    #[must_use]
    pub const fn part(self) -> Part {
        self.part
    }

    /// What each of them says of the part: `is open`.
    pub fn words(self) -> impl Iterator<Item = &'static str> {
        self.part
            .values()
            .iter()
            .filter(move |(bits, _)| bits & self.bits != 0)
            .map(|(_, words)| *words)
    }
}

macro_rules! parts {
    ($($part:ident $doc:literal $words:literal { $($value:ident $bit:literal $says:literal,)+ })+) => {
        /// A part of what a [`State`](super::State) tells.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Part {$(
            #[doc = $doc]
            $part,
        )+}

        impl Part {
            /// Every part.
            pub const ALL: &'static [Self] = &[$(Self::$part),+];

            /// What is spoken of, as the beginning of a sentence that a value ends.
            #[must_use]
            pub const fn words(self) -> &'static str {
                match self {$(Self::$part => $words,)+}
            }

            /// The bits of all its values.
            pub(super) const fn bits(self) -> u64 {
                match self {$(Self::$part => $((1 << $bit))|+,)+}
            }

            /// Each value's bit, and what it says.
            pub(super) const fn values(self) -> &'static [(u64, &'static str)] {
                match self {$(Self::$part => &[$((1 << $bit, $says)),+],)+}
            }
        }

        // The spare's values are all written, though no row asks for each.
        $($(#[allow(dead_code)] pub(super) const $value: Values = Values::one(Part::$part, $bit);)+)+

        /// Every value of every part.
        pub(super) const EVERY: u64 = $($((1 << $bit))|+)|+;
    };
}

parts! {
    Holding "How the cylinder in use is kept from falling." "the cylinder" {
        STANDS_FREE 0 "stands free",
        IN_HAND 1 "is in a hand or its carrier",
        SECURED 2 "is secured",
        LAID_DOWN 3 "lies on its side",
    }
    Valve "The valve of the cylinder in use." "the valve" {
        CLOSED 4 "is closed",
        OPEN 5 "is open",
    }
    Outlet "The outlet of the cylinder in use." "the outlet" {
        NOT_BLOWN 6 "has not been blown clear",
        BLOWN 7 "has been blown clear",
    }
    Contents "The gas in the cylinder in use." "the cylinder" {
        EMPTY 8 "has run empty",
        GAS 9 "holds gas",
    }
    Spare "A second cylinder, and how it is kept from falling." "the spare cylinder" {
        SPARE_STANDS_FREE 10 "stands free",
        SPARE_IN_HAND 11 "is in a hand or its carrier",
        SPARE_SECURED 12 "is secured",
        SPARE_LAID_DOWN 13 "lies on its side",
        NO_SPARE 20 "is not there",
    }
    SpareValve "The spare's valve." "the spare's valve" {
        SPARE_CLOSED 14 "is closed",
        SPARE_OPEN 15 "is open",
    }
    SpareOutlet "The spare's outlet." "the spare's outlet" {
        SPARE_NOT_BLOWN 16 "has not been blown clear",
        SPARE_BLOWN 17 "has been blown clear",
    }
    SpareContents "The gas in the spare." "the spare" {
        SPARE_EMPTY 18 "has run empty",
        SPARE_GAS 19 "holds gas",
    }
    Regulator "Where the regulator is." "the regulator" {
        OFF 21 "is off the cylinder",
        SEATED 22 "is seated but not tight",
        TIGHT 23 "is tight",
    }
    Washer "The sealing washer." "the washer" {
        WASHER_UNSEEN 24 "has not been looked at since the regulator was off",
        WASHER_GOOD 25 "is good",
    }
    Pressure "Whether gas under pressure is in the regulator." "the regulator" {
        NO_PRESSURE 26 "is without pressure",
        PRESSURE 27 "is under pressure",
    }
    Flow "Whether the flow is turned on." "the flow" {
        FLOW_ZERO 28 "is at zero",
        FLOW_ON 29 "is on",
    }
    Device "Whether a device's tubing is connected." "the device" {
        NOT_CONNECTED 30 "is not connected",
        CONNECTED 31 "is connected",
    }
    Reservoir "Whether the reservoir bag is full." "the reservoir" {
        NOT_FILLED 32 "is not full",
        FILLED 33 "is full",
    }
    Patient "Whether the device is on the patient." "the device" {
        OFF_PATIENT 34 "is off the patient",
        ON_PATIENT 35 "is on the patient",
    }
}

/// How far the spare's bits lie above the cylinder's.
pub(super) const SPARE_ABOVE: u32 = 10;
/// The bits of the cylinder in use.
pub(super) const CYLINDER: u64 =
    Part::Holding.bits() | Part::Valve.bits() | Part::Outlet.bits() | Part::Contents.bits();
/// The bits of the spare.
pub(super) const SPARE: u64 =
    Part::Spare.bits() | Part::SpareValve.bits() | Part::SpareOutlet.bits() | Part::SpareContents.bits();
/// No spare. What else would be told of it has one value, so that a state is written in one way only.
pub(super) const SPARE_GONE: u64 = NO_SPARE.bits | SPARE_CLOSED.bits | SPARE_NOT_BLOWN.bits | SPARE_GAS.bits;
