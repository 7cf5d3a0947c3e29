//! Who can be a patient of a clean run.

use oxyfolio::book::{ConditionId, GroupId, TargetId};
use oxyfolio::{condition, group, target};

/// Group, conditions, and the target that holds. Newborns are left out, because a record
/// has no place for the minutes of life.
pub const PATIENTS: &[(GroupId, &[ConditionId], TargetId)] = &[
    (group::ADULT, &[], target::ADULT_GENERAL),
    (group::ADULT, &[], target::ADULT_GENERAL),
    (group::ADULT, &[condition::RETAINS_CO2], target::ADULT_RETAINS_CO2),
    (
        group::ADULT,
        &[condition::HEART_ATTACK],
        target::ADULT_HEART_ATTACK,
    ),
    (group::ADULT, &[condition::STROKE], target::ADULT_STROKE),
    (
        group::ADULT,
        &[condition::RETURN_OF_CIRCULATION],
        target::ADULT_RETURN_OF_CIRCULATION,
    ),
    (
        group::ADULT,
        &[condition::CRITICAL_ILLNESS],
        target::CRITICAL_ILLNESS,
    ),
    (
        group::ADULT,
        &[condition::CRITICAL_ILLNESS, condition::RETAINS_CO2],
        target::CRITICAL_ILLNESS,
    ),
    (
        group::ADULT,
        &[condition::HEART_ATTACK, condition::CRITICAL_ILLNESS],
        target::CRITICAL_ILLNESS,
    ),
    (
        group::ADULT,
        &[condition::CARBON_MONOXIDE],
        target::CARBON_MONOXIDE,
    ),
    (group::CHILD, &[], target::CHILD_GENERAL),
    (
        group::CHILD,
        &[condition::CRITICAL_ILLNESS],
        target::CRITICAL_ILLNESS,
    ),
    (
        group::CHILD,
        &[condition::CARBON_MONOXIDE],
        target::CARBON_MONOXIDE,
    ),
    (group::INFANT, &[], target::INFANT_GENERAL),
    (
        group::INFANT,
        &[condition::CRITICAL_ILLNESS],
        target::CRITICAL_ILLNESS,
    ),
    (
        group::INFANT,
        &[condition::CARBON_MONOXIDE],
        target::CARBON_MONOXIDE,
    ),
];
