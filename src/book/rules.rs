//! What a check asks of a book, so that it can be asked of a whole [`Rulebook`] and of the [`Tables`](super::Tables) made of one.

use super::{
    Cited, ConditionId, Cylinder, CylinderId, Device, DeviceFlow, DeviceId, GroupId, HazardId, Kind,
    Policies, Rulebook, Saturation, Severity, Target, TargetId, Urgent,
    tables::{DeviceRow, TargetRow},
};
use crate::quantity::{
    Factor, Flow, Gauge, Percent, Pressure, PressureUnit, Range, Temperature, Time, Volume,
};

/// What a check of a set-up asks of a rulebook: its limits, and the rules it cites.
///
/// A reference to any [`Rulebook`] answers, and a reference to the [`Tables`](super::Tables) that a rulebook compiled into a
/// program brings besides: they hold nothing else, so a program that only checks needs no more of the book.
pub trait Rules<'b>: Copy {
    /// A device's limits.
    type Device: DeviceRules;
    /// A saturation target.
    type Target: TargetRules<'b>;

    /// The unit in which gauges read.
    fn pressure_unit(self) -> PressureUnit;

    /// The policies' quantities.
    fn limits(self) -> Limits;

    /// How many patient groups there are.
    fn groups(self) -> usize;

    /// A group's name; `None` when the identifier is another book's.
    fn group_name(self, group: GroupId) -> Option<&'b str>;

    /// Whether the book has a condition of this identifier.
    fn has_condition(self, condition: ConditionId) -> bool;

    /// A device; `None` when the identifier is another book's.
    fn device(self, device: DeviceId) -> Option<Self::Device>;

    /// A cylinder size; `None` when the identifier is another book's.
    fn cylinder(self, cylinder: CylinderId) -> Option<CylinderLimits>;

    /// All targets, in the order of the book.
    fn targets(self) -> impl Iterator<Item = (TargetId, Self::Target)>;

    /// How many hazards there are.
    fn hazards(self) -> usize;

    /// How bad a hazard is; `None` when the identifier is another book's.
    fn severity(self, hazard: HazardId) -> Option<Severity>;

    /// Whether a hazard's guard speaks of the state of equipment or surroundings, beyond what a set-up tells.
    fn depends_on_equipment(self, hazard: HazardId) -> bool;

    /// A rule, to be cited; the agency's, when the identifier is another book's.
    fn cite(self, subject: Subject) -> Cited<'b>;
}

/// The policies' quantities that a check needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Gas below this pressure is never counted on.
    pub residual_pressure: Pressure<Gauge>,
    /// The cylinder is changed at this reading.
    pub change_over_pressure: Pressure<Gauge>,
    /// A cylinder below this reading does not go into service.
    pub in_service_minimum: Pressure<Gauge>,
    /// Added to the time wanted when planning.
    pub planning_margin: Percent,
    /// The most a cylinder may be filled to, as a share of its service pressure.
    pub fill_limit: Percent,
    /// Temperatures at which cylinders are used.
    pub use_temperature: Range<Temperature>,
}

impl From<&Policies> for Limits {
    fn from(policies: &Policies) -> Self {
        Self {
            residual_pressure: policies.residual_pressure,
            change_over_pressure: policies.change_over_pressure,
            in_service_minimum: policies.in_service_minimum,
            planning_margin: policies.planning_margin,
            fill_limit: policies.fill_limit,
            use_temperature: policies.use_temperature,
        }
    }
}

/// What a check needs of a cylinder size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CylinderLimits {
    /// The water that fills it.
    pub water_capacity: Volume,
    /// The pressure it is marked for, at 70 °F.
    pub service_pressure: Pressure<Gauge>,
    /// The most this size may be filled to, as a share of its service pressure, where it differs from the policy.
    pub fill_limit: Option<Percent>,
    /// Litres for each unit of pressure.
    pub factor: Factor,
}

impl CylinderLimits {
    /// The highest reading to which it may be filled: its own limit, or the policy's, of its service pressure.
    #[must_use]
    pub fn filled_at_most(&self, policy: Percent) -> Pressure<Gauge> {
        let limit = self.fill_limit.unwrap_or(policy).as_percent() / 100.0;
        Pressure::tabled(self.service_pressure.as_pascals() * limit)
    }
}

impl From<&Cylinder> for CylinderLimits {
    fn from(cylinder: &Cylinder) -> Self {
        Self {
            water_capacity: cylinder.water_capacity,
            service_pressure: cylinder.service_pressure,
            fill_limit: cylinder.fill_limit,
            factor: cylinder.factor,
        }
    }
}

/// What a check needs of a device.
pub trait DeviceRules: Copy {
    /// Whether it fits a group.
    fn fits(self, group: GroupId) -> bool;

    /// The flows at which it may be used.
    fn flow(self) -> Range<Flow>;

    /// The flow limits for a group; the general ones where the book names no others.
    fn flow_for(self, group: GroupId) -> Range<Flow>;

    /// Whether no flow at all is right for a group: the device then gives air.
    fn gives_air(self, group: GroupId) -> bool;

    /// Whether the patient is ventilated with it by hand.
    fn ventilates(self) -> bool;

    /// Whether it has a reservoir bag.
    fn reservoir(self) -> bool;
}

/// What a check needs of a saturation target.
pub trait TargetRules<'b>: Copy {
    /// Whether it is for a group.
    fn is_for(self, group: GroupId) -> bool;

    /// The condition it is for; none for the group's general target.
    fn condition(self) -> Option<ConditionId>;

    /// Whether a condition's targets give way to this one.
    fn outranks(self, condition: ConditionId) -> bool;

    /// The time since birth from which it holds.
    fn minute_of_life(self) -> Option<Time>;

    /// What saturation is aimed at.
    fn saturation(self) -> Saturation;

    /// What to start with when the saturation is very low.
    fn urgent(self) -> Option<Urgent>;

    /// Devices and flows from least to most oxygen.
    fn ladder(self) -> &'b [DeviceFlow];
}

// The rows of tables have the fields of the rules that they are made of, and so their answers.
macro_rules! asked_of_fields {
    (devices: $($device:ty),+; targets: $($target:ty),+) => {
        $(impl DeviceRules for &$device {
            fn fits(self, group: GroupId) -> bool {
                self.fits.contains(&group)
            }

            fn flow(self) -> Range<Flow> {
                self.flow
            }

            fn flow_for(self, group: GroupId) -> Range<Flow> {
                let own = self.group_flows.iter().find(|limits| limits.group == group);
                own.map_or(self.flow, |limits| limits.flow)
            }

            fn gives_air(self, group: GroupId) -> bool {
                self.air_for.contains(&group)
            }

            fn ventilates(self) -> bool {
                self.ventilates
            }

            fn reservoir(self) -> bool {
                self.reservoir
            }
        })+
        $(impl<'b> TargetRules<'b> for &'b $target {
            fn is_for(self, group: GroupId) -> bool {
                self.groups.contains(&group)
            }

            fn condition(self) -> Option<ConditionId> {
                self.condition
            }

            fn outranks(self, condition: ConditionId) -> bool {
                self.outranks.contains(&condition)
            }

            fn minute_of_life(self) -> Option<Time> {
                self.minute_of_life
            }

            fn saturation(self) -> Saturation {
                self.saturation
            }

            fn urgent(self) -> Option<Urgent> {
                self.urgent
            }

            fn ladder(self) -> &'b [DeviceFlow] {
                &self.ladder
            }
        })+
    };
}

asked_of_fields!(devices: Device, DeviceRow; targets: Target, TargetRow);

/// A rule that a check can cite.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// The agency's, for what no other rule says.
    Agency,
    /// A policy's.
    Policy(CheckedPolicy),
    /// A device's.
    Device(DeviceId),
    /// A cylinder size's.
    Cylinder(CylinderId),
    /// A saturation target's.
    Target(TargetId),
    /// A hazard's.
    Hazard(HazardId),
}

impl Subject {
    /// The rule's kind.
    #[must_use]
    pub const fn kind(self) -> Kind {
        match self {
            Self::Agency => Kind::Agency,
            Self::Policy(_) => Kind::Policy,
            Self::Device(_) => Kind::Device,
            Self::Cylinder(_) => Kind::Cylinder,
            Self::Target(_) => Kind::Target,
            Self::Hazard(_) => Kind::Hazard,
        }
    }
}

/// The policies that a check of a set-up cites. They are in every book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CheckedPolicy {
    /// `residual-pressure`
    ResidualPressure,
    /// `change-over-pressure`
    ChangeOverPressure,
    /// `in-service-minimum`
    InServiceMinimum,
    /// `planning-margin`
    PlanningMargin,
    /// `use-temperature`
    UseTemperature,
}

impl CheckedPolicy {
    /// Each of them.
    pub const ALL: [Self; 5] = [
        Self::ResidualPressure,
        Self::ChangeOverPressure,
        Self::InServiceMinimum,
        Self::PlanningMargin,
        Self::UseTemperature,
    ];

    /// The name other rules use.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::ResidualPressure => "residual-pressure",
            Self::ChangeOverPressure => "change-over-pressure",
            Self::InServiceMinimum => "in-service-minimum",
            Self::PlanningMargin => "planning-margin",
            Self::UseTemperature => "use-temperature",
        }
    }
}

impl<'b> Rules<'b> for &'b Rulebook {
    type Device = &'b Device;
    type Target = &'b Target;

    fn pressure_unit(self) -> PressureUnit {
        self.agency.pressure_unit
    }

    fn limits(self) -> Limits {
        (&self.policies).into()
    }

    fn groups(self) -> usize {
        self.groups.len()
    }

    fn group_name(self, group: GroupId) -> Option<&'b str> {
        self.group(group).map(|group| &*group.rule.name)
    }

    fn has_condition(self, condition: ConditionId) -> bool {
        self.condition(condition).is_some()
    }

    fn device(self, device: DeviceId) -> Option<&'b Device> {
        self.device(device)
    }

    fn cylinder(self, cylinder: CylinderId) -> Option<CylinderLimits> {
        self.cylinder(cylinder).map(CylinderLimits::from)
    }

    fn targets(self) -> impl Iterator<Item = (TargetId, &'b Target)> {
        (0..=u16::MAX).map(TargetId).zip(&self.targets)
    }

    fn hazards(self) -> usize {
        self.hazards.len()
    }

    fn severity(self, hazard: HazardId) -> Option<Severity> {
        self.hazard(hazard).map(|hazard| hazard.severity)
    }

    fn depends_on_equipment(self, hazard: HazardId) -> bool {
        self.hazard(hazard)
            .is_some_and(|hazard| hazard.never.depends_on_equipment())
    }

    fn cite(self, subject: Subject) -> Cited<'b> {
        match subject {
            Subject::Agency => None,
            Subject::Policy(policy) => self
                .policies
                .find(policy.id())
                .map(|policy| (&policy.rule).into()),
            Subject::Device(id) => self.device(id).map(Cited::from),
            Subject::Cylinder(id) => self.cylinder(id).map(|cylinder| (&cylinder.rule).into()),
            Subject::Target(id) => self.target(id).map(Cited::from),
            Subject::Hazard(id) => self.hazard(id).map(Cited::from),
        }
        .unwrap_or_else(|| (&self.agency.rule).into())
    }
}
