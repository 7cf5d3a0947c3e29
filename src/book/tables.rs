//! A rulebook as checks need it: limits in rows, and all words in one text.
//!
//! A text kept as a reference costs a program sixteen bytes, and where it may be loaded anywhere, twenty-four more to mend the
//! address when it starts. Here a text is a place in one long one. What a check never asks (procedures, cards, other policies'
//! reasons) isn't there.

use super::{
    Cited, CitedPlace, ConditionId, CylinderId, CylinderLimits, DeviceFlow, DeviceId, GroupFlow, GroupId,
    HazardId, Limits, List, Rules, Saturation, Severity, Subject, TargetId, Text, Urgent,
    rules::CheckedPolicy,
};
use crate::quantity::{Flow, PressureUnit, Range, Time};

/// What a check of a set-up needs of a rulebook, and nothing more. The compiler of rulebooks writes it beside the
/// [`Rulebook`](super::Rulebook); the two always say the same.
#[derive(Clone, Debug, PartialEq)]
pub struct Tables {
    #[doc(hidden)]
    pub text: Text,
    #[doc(hidden)]
    pub edition: Span,
    #[doc(hidden)]
    pub digest: Span,
    #[doc(hidden)]
    pub short_digest: Span,
    #[doc(hidden)]
    pub pressure_unit: PressureUnit,
    #[doc(hidden)]
    pub limits: Limits,
    #[doc(hidden)]
    pub groups: List<NameRow>,
    #[doc(hidden)]
    pub conditions: List<NameRow>,
    #[doc(hidden)]
    pub devices: List<DeviceRow>,
    #[doc(hidden)]
    pub cylinders: List<CylinderLimits>,
    #[doc(hidden)]
    pub targets: List<TargetRow>,
    /// How bad each is, and whether it depends on the equipment.
    #[doc(hidden)]
    pub hazards: List<(Severity, bool)>,
    #[doc(hidden)]
    pub places: List<PlaceRow>,
    /// The agency, the policies in the order of [`CheckedPolicy::ALL`], devices, cylinders, targets, hazards.
    #[doc(hidden)]
    pub rules: List<RuleRow>,
}

/// A part of the text: where it begins, and how long it is, in bytes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Span(pub u32, pub u32);

/// What is only named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NameRow {
    /// The name other rules use.
    pub id: Span,
    /// The name people use.
    pub name: Span,
}

/// A rule to be cited.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RuleRow {
    /// The name other rules use.
    pub id: Span,
    /// The name people use.
    pub name: Span,
    /// Its place in the list of places.
    pub place: u32,
    /// The line in its chapter.
    pub line: u32,
    /// What else it says; by its kind.
    pub words: [Span; 3],
}

/// What rules that stand together have in common.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlaceRow {
    /// The chapter's title.
    pub chapter: Span,
    /// The heading.
    pub heading: Span,
    /// The chapter's file name.
    pub file: Span,
    /// The reason above the rules.
    pub rationale: Span,
}

/// A device; as [`Device`](super::Device).
#[derive(Clone, Debug, PartialEq)]
pub struct DeviceRow {
    /// The flows at which it may be used.
    pub flow: Range<Flow>,
    /// The groups it fits.
    pub fits: List<GroupId>,
    /// Limits of single groups, where they differ.
    pub group_flows: List<GroupFlow>,
    /// The groups for whom no flow at all is right.
    pub air_for: List<GroupId>,
    /// Whether the patient is ventilated with it by hand.
    pub ventilates: bool,
    /// Whether it has a reservoir bag.
    pub reservoir: bool,
}

/// A saturation target; as [`Target`](super::Target).
#[derive(Clone, Debug, PartialEq)]
pub struct TargetRow {
    /// The groups it is for.
    pub groups: List<GroupId>,
    /// The condition it is for.
    pub condition: Option<ConditionId>,
    /// Conditions whose targets give way to this one.
    pub outranks: List<ConditionId>,
    /// The time since birth from which it holds.
    pub minute_of_life: Option<Time>,
    /// What saturation is aimed at.
    pub saturation: Saturation,
    /// What to start with when the saturation is very low.
    pub urgent: Option<Urgent>,
    /// Devices and flows from least to most oxygen.
    pub ladder: List<DeviceFlow>,
}

impl Tables {
    /// The edition's name. Who publishes it, the rule of [`Subject::Agency`] says.
    #[must_use]
    pub fn edition(&self) -> &str {
        self.part(self.edition)
    }

    /// SHA-256 of the chapters, in hexadecimal.
    #[must_use]
    pub fn digest(&self) -> &str {
        self.part(self.digest)
    }

    /// The digest's short form, printed on cards.
    #[must_use]
    pub fn short_digest(&self) -> &str {
        self.part(self.short_digest)
    }

    /// Finds a patient group by the name other rules use.
    ///
    /// ```
    /// use oxyfolio::{TABLES, condition, cylinder, device, group};
    /// assert_eq!(TABLES.find_group("adult"), Some(group::ADULT));
    /// assert_eq!(TABLES.find_condition("retains-co2"), Some(condition::RETAINS_CO2));
    /// assert_eq!(TABLES.find_device("nasal-cannula"), Some(device::NASAL_CANNULA));
    /// assert_eq!(TABLES.find_cylinder("D"), None); // `d` is the name that rules use
    /// assert_eq!(TABLES.find_cylinder("d"), Some(cylinder::D));
    /// ```
    #[must_use]
    pub fn find_group(&self, id: &str) -> Option<GroupId> {
        self.find(self.groups.iter().map(|row| row.id), id).map(GroupId)
    }

    /// Finds a condition by the name other rules use.
    #[must_use]
    pub fn find_condition(&self, id: &str) -> Option<ConditionId> {
        self.find(self.conditions.iter().map(|row| row.id), id)
            .map(ConditionId)
    }

    /// Finds a device by the name other rules use.
    #[must_use]
    pub fn find_device(&self, id: &str) -> Option<DeviceId> {
        let first = self.row(Subject::Device(DeviceId(0)));
        let rows = self.rules.iter().skip(first).take(self.devices.len());
        self.find(rows.map(|row| row.id), id).map(DeviceId)
    }

    /// Finds a cylinder size by the name other rules use.
    #[must_use]
    pub fn find_cylinder(&self, id: &str) -> Option<CylinderId> {
        let first = self.row(Subject::Cylinder(CylinderId(0)));
        let rows = self.rules.iter().skip(first).take(self.cylinders.len());
        self.find(rows.map(|row| row.id), id).map(CylinderId)
    }

    fn find(&self, ids: impl Iterator<Item = Span>, id: &str) -> Option<u16> {
        (0..=u16::MAX)
            .zip(ids)
            .find(|(_, span)| self.part(*span) == id)
            .map(|(index, _)| index)
    }

    /// A part of the text; nothing where a table written by hand points past it.
    pub(super) fn part(&self, Span(start, length): Span) -> &str {
        let (start, length) = (start as usize, length as usize);
        self.text
            .get(start..start.saturating_add(length))
            .unwrap_or_default()
    }

    pub(super) fn place(&self, row: &RuleRow) -> CitedPlace<'_> {
        let part = |of: fn(&PlaceRow) -> Span| {
            self.places
                .get(row.place as usize)
                .map_or("", |row| self.part(of(row)))
        };
        CitedPlace {
            chapter: part(|place| place.chapter),
            heading: part(|place| place.heading),
            file: part(|place| place.file),
            line: row.line,
        }
    }

    pub(super) fn rationale(&self, row: &RuleRow) -> &str {
        self.places
            .get(row.place as usize)
            .map_or("", |place| self.part(place.rationale))
    }

    /// The row of a rule, in the order in which [`rules`](Self::rules) holds them.
    fn row(&self, subject: Subject) -> usize {
        // A kind's identifier past its rows would be another kind's.
        let within = |index: usize, count: usize| (index < count).then_some(index);
        let first = 1 + CheckedPolicy::ALL.len();
        let (devices, cylinders, targets) = (self.devices.len(), self.cylinders.len(), self.targets.len());
        let row = match subject {
            Subject::Agency => None,
            Subject::Policy(policy) => Some(1 + policy as usize),
            Subject::Device(id) => within(id.index(), devices).map(|index| first + index),
            Subject::Cylinder(id) => within(id.index(), cylinders).map(|index| first + devices + index),
            Subject::Target(id) => {
                within(id.index(), targets).map(|index| first + devices + cylinders + index)
            }
            Subject::Hazard(id) => within(id.index(), self.hazards.len())
                .map(|index| first + devices + cylinders + targets + index),
        };
        row.unwrap_or(0)
    }
}

impl<'b> Rules<'b> for &'b Tables {
    type Device = &'b DeviceRow;
    type Target = &'b TargetRow;

    fn pressure_unit(self) -> PressureUnit {
        self.pressure_unit
    }

    fn limits(self) -> Limits {
        self.limits
    }

    fn groups(self) -> usize {
        self.groups.len()
    }

    fn group_name(self, group: GroupId) -> Option<&'b str> {
        self.groups.get(group.index()).map(|row| self.part(row.name))
    }

    fn has_condition(self, condition: ConditionId) -> bool {
        condition.index() < self.conditions.len()
    }

    fn device(self, device: DeviceId) -> Option<&'b DeviceRow> {
        self.devices.get(device.index())
    }

    fn cylinder(self, cylinder: CylinderId) -> Option<CylinderLimits> {
        self.cylinders.get(cylinder.index()).copied()
    }

    fn targets(self) -> impl Iterator<Item = (TargetId, &'b TargetRow)> {
        (0..=u16::MAX).map(TargetId).zip(&self.targets)
    }

    fn hazards(self) -> usize {
        self.hazards.len()
    }

    fn severity(self, hazard: HazardId) -> Option<Severity> {
        self.hazards.get(hazard.index()).map(|(severity, _)| *severity)
    }

    fn depends_on_equipment(self, hazard: HazardId) -> bool {
        self.hazards
            .get(hazard.index())
            .is_some_and(|(_, depends)| *depends)
    }

    fn cite(self, subject: Subject) -> Cited<'b> {
        static NOTHING: RuleRow = RuleRow {
            id: Span(0, 0),
            name: Span(0, 0),
            place: u32::MAX,
            line: 0,
            words: [Span(0, 0); 3],
        };
        let row = self.rules.get(self.row(subject)).unwrap_or(&NOTHING);
        Cited::tabled(self, row)
    }
}
