//! The answer for programs.

use super::{super::answers::plan as told, Answered};
use crate::check::plan::Break;

impl Answered<'_> {
    pub fn json(&self, chart: Option<String>) -> told::Plan<'_> {
        let (answer, policies) = (self.answer, &self.book.policies);
        told::Plan {
            ok: answer.can_be_relied_on(),
            name: self.transport.name.as_deref(),
            enough: answer.enough,
            enough_without_margin: answer.enough_without_margin,
            planning_margin_percent: policies.planning_margin.as_percent(),
            needed_litres: answer.needed_litres,
            needed_minutes: answer.needed_minutes,
            expected_litres: answer.expected_litres,
            expected_minutes: answer.expected_minutes,
            spare_litres: answer.spare_litres,
            spare_minutes: answer.spare_minutes,
            short_litres: answer.short_litres,
            short_minutes: answer.short_minutes,
            breaks: answer.breaks.as_ref().map(|broken| self.broken(broken)),
            breaks_without_margin: answer
                .breaks_without_margin
                .as_ref()
                .map(|broken| self.broken(broken)),
            order: answer.order.into(),
            change_over_psi: policies.change_over_pressure.as_psi(),
            residual_psi: policies.residual_pressure.as_psi(),
            last_cylinder: answer.last + 1,
            temperature_c: answer.read_at.as_celsius(),
            temperature_assumed: answer.read_at_assumed,
            segments: self.segments(),
            change_overs: answer
                .change_overs
                .iter()
                .map(|change| told::ChangeOver {
                    at_minutes: change.at_minutes,
                    leg: change.leg + 1,
                    from_cylinder: change.from + 1,
                    to_cylinder: change.to + 1,
                })
                .collect(),
            cylinders: self.left(),
            add: self
                .added
                .iter()
                .map(|added| told::Added {
                    size: &added.cylinder.rule.id,
                    full_psi: added.cylinder.service_pressure.as_psi(),
                    fewest: added.fewest,
                })
                .collect(),
            plan_cautions: answer
                .cautions
                .iter()
                .map(|caution| self.caution(caution))
                .collect(),
            chart,
        }
    }

    fn broken(&self, broken: &Break) -> told::Break<'_> {
        told::Break {
            leg: broken.leg + 1,
            name: self.leg(broken.leg),
            at_minutes: broken.at_minutes,
        }
    }

    fn segments(&self) -> Vec<told::Segment<'_>> {
        let segments = self.answer.segments.iter();
        segments
            .map(|segment| {
                let before = segment.cylinder.map(|_| segment.pressure_before);
                let after = segment.cylinder.map(|_| segment.pressure_after);
                told::Segment {
                    leg: segment.leg + 1,
                    name: self.leg(segment.leg),
                    from_minutes: segment.from_minutes,
                    to_minutes: segment.to_minutes,
                    cylinder: segment.cylinder.map(|cylinder| cylinder + 1),
                    flow_lpm: segment.litres_per_minute,
                    pressure_before_psi: before.map(|pressure| pressure.as_psi()),
                    pressure_before_bar: before.map(|pressure| pressure.as_bar()),
                    pressure_after_psi: after.map(|pressure| pressure.as_psi()),
                    pressure_after_bar: after.map(|pressure| pressure.as_bar()),
                    usable_litres: segment.usable_litres,
                }
            })
            .collect()
    }

    fn left(&self) -> Vec<told::Left<'_>> {
        (1..)
            .zip(&self.answer.left)
            .map(|(cylinder, left)| told::Left {
                cylinder,
                size: &left.cylinder.rule.id,
                series: &left.cylinder.series,
                used_litres: left.used_litres,
                pressure_psi: left.pressure.as_psi(),
                pressure_bar: left.pressure.as_bar(),
                usable_litres: left.usable_litres,
            })
            .collect()
    }
}
