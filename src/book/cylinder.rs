//! Cylinder sizes.

use super::{ConnectionId, List, Rule, Text};
use crate::quantity::{Factor, Gauge, Percent, Pressure, Volume};

/// A cylinder size.
#[derive(Clone, Debug, PartialEq)]
pub struct Cylinder {
    /// Name, place and reason.
    pub rule: Rule,
    /// Other names in use.
    pub also: List<Text>,
    /// Whose sizes these are: letters are national.
    pub series: Text,
    /// Where it is used.
    pub used: CylinderUse,
    /// The water that fills it.
    pub water_capacity: Volume,
    /// What it holds when full.
    pub contents: Contents,
    /// The pressure it is marked for, at 70 °F.
    pub service_pressure: Pressure<Gauge>,
    /// The most this size may be filled to, as a share of its service pressure, where it differs from the policy.
    pub fill_limit: Option<Percent>,
    /// Litres for each unit of pressure.
    pub factor: Factor,
    /// Its outlet.
    pub connection: ConnectionId,
}

/// Gas at 1 atm and 70 °F held at a gauge pressure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contents {
    /// The gas.
    pub volume: Volume,
    /// The gauge pressure at which the cylinder holds it.
    pub at: Pressure<Gauge>,
}

/// Where a cylinder is used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CylinderUse {
    /// Carried to the patient.
    Portable,
    /// Fixed in the vehicle.
    Vehicle,
    /// Either.
    Either,
}

impl CylinderUse {
    /// The word used in the book.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Portable => "portable",
            Self::Vehicle => "vehicle",
            Self::Either => "either",
        }
    }
}
