//! Which look comes before what, written down a second time and by what is done rather than by action. Common practice, no
//! source; the chapters of the demo book say the same in words.

use std::collections::BTreeSet;

use oxyfolio::book::Action as A;
use oxyfolio::equipment::{Reliance, relies_on};

/// What must have been done before, always.
const FIRST: &[(A, &[A])] = &[
    // Nobody lets gas out of a cylinder that may fall, near a flame, or of which the label was not read.
    (
        A::ClearOutlet,
        &[
            A::SecureCylinder,
            A::KeepFlamesAway,
            A::CheckLabel,
            A::InspectOutlet,
        ],
    ),
    (
        A::SeatRegulator,
        &[A::ClearOutlet, A::InspectWasher, A::CheckPins],
    ),
    (A::TightenRegulator, &[A::SecureCylinder, A::InspectRegulator]),
    (
        A::OpenCylinder,
        &[
            A::SecureCylinder,
            A::KeepFlamesAway,
            A::CheckLabel,
            A::CheckTestDate,
            A::InspectRegulator,
        ],
    ),
    // Nothing is worked out from a reading or a flow nobody knows.
    (A::WorkOutMinutes, &[A::ReadGauge, A::SetFlow]),
    (A::ConnectDevice, &[A::ChooseDevice]),
    (A::SetFlow, &[A::KeepFlamesAway, A::ConnectDevice]),
    (A::FillReservoir, &[A::SetFlow]),
    // A mask without flow, or with an empty bag, takes breath instead of giving it.
    (
        A::PlaceDevice,
        &[
            A::FillReservoir,
            A::SetFlow,
            A::ExplainToPatient,
            A::AssessPatient,
            A::PutOnGloves,
        ],
    ),
    (A::HandVentilate, &[A::RemoveDevice]),
    // Oxygen is taken from nobody who has not been looked at, and not before the next source is ready.
    (
        A::RemoveDevice,
        &[
            A::AssessPatient,
            A::ExplainToPatient,
            A::ChooseDevice,
            A::ClearOutlet,
        ],
    ),
    (A::DisconnectDevice, &[A::RemoveDevice]),
    (A::DisposeDevice, &[A::DisconnectDevice]),
    (A::BleedRegulator, &[A::CloseCylinder, A::KeepFlamesAway]),
    (A::RemoveRegulator, &[A::BleedRegulator]),
    (A::CapOutlet, &[A::RemoveRegulator]),
    (
        A::StowCylinder,
        &[
            A::SecureCylinder,
            A::CloseCylinder,
            A::BleedRegulator,
            A::ZeroFlow,
            A::CleanEquipment,
            A::TagCylinder,
        ],
    ),
];

/// Of these two the book says which comes first: it hangs on the procedure.
const ORDERED: &[(A, &[A])] = &[
    (A::AssessPatient, &[A::PutOnGloves]),
    (A::FetchCylinder, &[A::PutOnGloves]),
    (A::InspectRegulator, &[A::PutOnGloves]),
    (A::ChooseDevice, &[A::AssessPatient]),
    (A::SecureCylinder, &[A::FetchCylinder]),
    (A::LayCylinderDown, &[A::FetchCylinder]),
    (A::CheckLabel, &[A::SecureCylinder]),
    (A::CheckTestDate, &[A::SecureCylinder]),
    (A::InspectOutlet, &[A::SecureCylinder]),
    // A washer is seen when the regulator is off.
    (A::InspectWasher, &[A::RemoveRegulator]),
    (A::ConnectDevice, &[A::DisconnectDevice]),
    (A::RouteTubing, &[A::PlaceDevice]),
    (A::HandVentilate, &[A::PlaceDevice]),
    (
        A::WatchPatient,
        &[A::PlaceDevice, A::RemoveDevice, A::HandVentilate],
    ),
    (A::WriteDown, &[A::PlaceDevice, A::RemoveDevice, A::ReadGauge]),
    (A::DisconnectDevice, &[A::ZeroFlow]),
    // Nobody closes the cylinder of a patient who breathes from it.
    (
        A::CloseCylinder,
        &[
            A::RemoveDevice,
            A::SecureCylinder,
            A::HandVentilate,
            A::ReadGauge,
            A::CheckLeaks,
        ],
    ),
    (A::RemoveRegulator, &[A::ZeroFlow]),
    (A::TagCylinder, &[A::SecureCylinder]),
    (A::CleanEquipment, &[A::SecureCylinder, A::BleedRegulator]),
];

#[test]
fn what_relies_on_what_is_what_a_second_hand_wrote() {
    let pairs = |table: &[(A, &[A])]| -> BTreeSet<(&str, &str)> {
        let each = table
            .iter()
            .flat_map(|(later, looks)| looks.iter().map(|look| (later.word(), look.word())));
        each.collect()
    };
    for (how, written) in [
        (Reliance::First, pairs(FIRST)),
        (Reliance::Ordered, pairs(ORDERED)),
    ] {
        let found: BTreeSet<(&str, &str)> = A::ALL
            .iter()
            .flat_map(|later| {
                relies_on(*later)
                    .iter()
                    .map(move |(look, how)| (later.word(), look.word(), *how))
            })
            .filter(|(_, _, found)| *found == how)
            .map(|(later, look, _)| (later, look))
            .collect();
        assert_eq!(found, written, "{how:?}");
    }
}

#[test]
fn nothing_relies_on_itself_in_the_end() {
    // A look that always comes first can't rely on what comes after it, by however many steps.
    for begun in A::ALL {
        let (mut reached, mut waiting) = (BTreeSet::new(), vec![*begun]);
        while let Some(one) = waiting.pop() {
            for (look, how) in relies_on(one) {
                if *how == Reliance::First && reached.insert(look.word()) {
                    waiting.push(*look);
                }
            }
        }
        assert!(!reached.contains(begun.word()), "{begun}");
    }
}
