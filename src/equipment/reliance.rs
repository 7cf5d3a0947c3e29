//! Which actions rely on which: a look that comes too late is no look.
//!
//! Where a procedure has both actions, the book must say which comes first; where the look is a matter of safety it
//! must come first. What a procedure doesn't have is taken to be done before it began.

use crate::book::Action;

/// How an action relies on another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reliance {
    /// The other comes first, always.
    First,
    /// One of the two comes first, and the book says which.
    Ordered,
}

use Action as A;
use Reliance::{First, Ordered};

/// The actions that an action relies on.
#[must_use]
pub const fn relies_on(action: Action) -> &'static [(Action, Reliance)] {
    match action {
        A::AssessPatient | A::FetchCylinder | A::InspectRegulator => &[(A::PutOnGloves, Ordered)],
        A::ChooseDevice => &[(A::AssessPatient, Ordered)],
        A::SecureCylinder | A::LayCylinderDown => &[(A::FetchCylinder, Ordered)],
        A::CheckLabel | A::CheckTestDate | A::InspectOutlet => &[(A::SecureCylinder, Ordered)],
        A::ClearOutlet => &[
            (A::SecureCylinder, First),
            (A::KeepFlamesAway, First),
            (A::CheckLabel, First),
            (A::InspectOutlet, First),
        ],
        A::InspectWasher => &[(A::RemoveRegulator, Ordered)],
        A::SeatRegulator => &[
            (A::ClearOutlet, First),
            (A::InspectWasher, First),
            (A::CheckPins, First),
        ],
        A::TightenRegulator => &[(A::SecureCylinder, First), (A::InspectRegulator, First)],
        A::OpenCylinder => &[
            (A::SecureCylinder, First),
            (A::KeepFlamesAway, First),
            (A::CheckLabel, First),
            (A::CheckTestDate, First),
            (A::InspectRegulator, First),
        ],
        A::WorkOutMinutes => &[(A::ReadGauge, First), (A::SetFlow, First)],
        A::ConnectDevice => &[(A::ChooseDevice, First), (A::DisconnectDevice, Ordered)],
        A::SetFlow => &[(A::KeepFlamesAway, First), (A::ConnectDevice, First)],
        A::FillReservoir => &[(A::SetFlow, First)],
        A::PlaceDevice => &[
            (A::FillReservoir, First),
            (A::SetFlow, First),
            (A::ExplainToPatient, First),
            (A::AssessPatient, First),
            (A::PutOnGloves, First),
        ],
        A::RouteTubing => &[(A::PlaceDevice, Ordered)],
        A::HandVentilate => &[(A::PlaceDevice, Ordered), (A::RemoveDevice, First)],
        A::WatchPatient => &[
            (A::PlaceDevice, Ordered),
            (A::RemoveDevice, Ordered),
            (A::HandVentilate, Ordered),
        ],
        A::WriteDown => &[
            (A::PlaceDevice, Ordered),
            (A::RemoveDevice, Ordered),
            (A::ReadGauge, Ordered),
        ],
        A::RemoveDevice => &[
            (A::AssessPatient, First),
            (A::ExplainToPatient, First),
            (A::ChooseDevice, First),
            (A::ClearOutlet, First),
        ],
        A::DisconnectDevice => &[(A::RemoveDevice, First), (A::ZeroFlow, Ordered)],
        A::DisposeDevice => &[(A::DisconnectDevice, First)],
        A::CloseCylinder => &[
            (A::RemoveDevice, Ordered),
            (A::SecureCylinder, Ordered),
            (A::HandVentilate, Ordered),
            (A::ReadGauge, Ordered),
            (A::CheckLeaks, Ordered),
        ],
        A::BleedRegulator => &[(A::CloseCylinder, First), (A::KeepFlamesAway, First)],
        A::RemoveRegulator => &[(A::BleedRegulator, First), (A::ZeroFlow, Ordered)],
        A::CapOutlet => &[(A::RemoveRegulator, First)],
        A::TagCylinder => &[(A::SecureCylinder, Ordered)],
        A::CleanEquipment => &[(A::SecureCylinder, Ordered), (A::BleedRegulator, Ordered)],
        A::StowCylinder => &[
            (A::SecureCylinder, First),
            (A::CloseCylinder, First),
            (A::BleedRegulator, First),
            (A::ZeroFlow, First),
            (A::CleanEquipment, First),
            (A::TagCylinder, First),
        ],
        _ => &[],
    }
}
