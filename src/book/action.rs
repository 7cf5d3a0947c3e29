//! The actions a step can do: a fixed list, because each has a meaning for the equipment.

use core::fmt;

macro_rules! actions {
    ($($name:ident $word:literal $doc:literal,)+) => {
        /// What a step does to the equipment or the patient.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[non_exhaustive]
        pub enum Action {$(
            #[doc = $doc]
            $name,
        )+}

        impl Action {
            /// Every action.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// The word used in the book.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self {$(Self::$name => $word,)+}
            }
        }
    };
}

actions! {
    PutOnGloves "put-on-gloves" "Put on gloves.",
    KeepFlamesAway "keep-flames-away" "Keep flames and sparks away.",
    AssessPatient "assess-patient" "Look at the patient and measure.",
    ChooseDevice "choose-device" "Choose the delivery device.",
    ExplainToPatient "explain-to-patient" "Tell the patient what happens.",
    SecureCylinder "secure-cylinder" "Secure the cylinder in a hand, rack or bag.",
    LayCylinderDown "lay-cylinder-down" "Lay the cylinder down.",
    CheckLabel "check-label" "Read the label: the gas and the size.",
    CheckTestDate "check-test-date" "Read the date of the last test.",
    InspectOutlet "inspect-outlet" "Look at the outlet for dirt and damage.",
    ClearOutlet "clear-outlet" "Open and close the valve briefly to blow the outlet clear.",
    InspectWasher "inspect-washer" "Look at the sealing washer.",
    CheckPins "check-pins" "Look at the pins and their holes.",
    InspectRegulator "inspect-regulator" "Look at the regulator.",
    SeatRegulator "seat-regulator" "Seat the regulator on the outlet.",
    TightenRegulator "tighten-regulator" "Tighten the regulator by hand.",
    ZeroFlow "zero-flow" "Turn the flow to zero.",
    OpenCylinder "open-cylinder" "Open the cylinder valve slowly and fully.",
    CheckLeaks "check-leaks" "Listen and feel for leaks.",
    ReadGauge "read-gauge" "Read the pressure.",
    WorkOutMinutes "work-out-minutes" "Work out how long the gas lasts.",
    ConnectDevice "connect-device" "Connect the device's tubing.",
    SetFlow "set-flow" "Set the flow.",
    FillReservoir "fill-reservoir" "Fill the reservoir bag.",
    PlaceDevice "place-device" "Put the device on the patient.",
    RouteTubing "route-tubing" "Lay the tubing where it can't be pulled or lain on.",
    WatchPatient "watch-patient" "Watch the patient and the bag.",
    RemoveDevice "remove-device" "Take the device off the patient.",
    DisconnectDevice "disconnect-device" "Disconnect the device's tubing.",
    CloseCylinder "close-cylinder" "Close the cylinder valve.",
    BleedRegulator "bleed-regulator" "Let the gas out of the regulator until the gauge reads zero.",
    RemoveRegulator "remove-regulator" "Take the regulator off the cylinder.",
    CapOutlet "cap-outlet" "Protect the outlet with its cap or seal.",
    TagCylinder "tag-cylinder" "Mark the cylinder full, in use or empty.",
    StowCylinder "stow-cylinder" "Put the cylinder away, secured.",
    DisposeDevice "dispose-device" "Dispose of a single-use device.",
    CleanEquipment "clean-equipment" "Clean what is used again.",
    WriteDown "write-down" "Write it down.",
    FetchCylinder "fetch-cylinder" "Bring a cylinder.",
    HandVentilate "hand-ventilate" "Support breathing by hand meanwhile.",
}

impl fmt::Display for Action {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}
