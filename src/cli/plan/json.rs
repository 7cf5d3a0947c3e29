//! The answer for programs.

use serde_json::{Value, json};

use super::Answered;
use crate::check::plan::Break;

impl Answered<'_> {
    pub fn json(&self, chart: Option<String>) -> Value {
        let (answer, policies) = (self.answer, &self.book.policies);
        let place = |broken: &Break| {
            json!({
                "leg": broken.leg + 1,
                "name": self.leg(broken.leg),
                "at_minutes": broken.at_minutes,
            })
        };
        json!({
            "ok": answer.can_be_relied_on(),
            "name": self.transport.name,
            "enough": answer.enough,
            "enough_without_margin": answer.enough_without_margin,
            "planning_margin_percent": policies.planning_margin.as_percent(),
            "needed_litres": answer.needed_litres,
            "needed_minutes": answer.needed_minutes,
            "expected_litres": answer.expected_litres,
            "expected_minutes": answer.expected_minutes,
            "spare_litres": answer.spare_litres,
            "spare_minutes": answer.spare_minutes,
            "short_litres": answer.short_litres,
            "short_minutes": answer.short_minutes,
            "breaks": answer.breaks.as_ref().map(place),
            "breaks_without_margin": answer.breaks_without_margin.as_ref().map(place),
            "order": answer.order.word(),
            "change_over_psi": policies.change_over_pressure.as_psi(),
            "residual_psi": policies.residual_pressure.as_psi(),
            "last_cylinder": answer.last + 1,
            "temperature_c": answer.read_at.as_celsius(),
            "temperature_assumed": answer.read_at_assumed,
            "segments": answer.segments.iter().map(|segment| json!({
                "leg": segment.leg + 1,
                "name": self.leg(segment.leg),
                "from_minutes": segment.from_minutes,
                "to_minutes": segment.to_minutes,
                "cylinder": segment.cylinder.map(|cylinder| cylinder + 1),
                "flow_lpm": segment.litres_per_minute,
                "pressure_before_psi": segment.cylinder.map(|_| segment.pressure_before.as_psi()),
                "pressure_before_bar": segment.cylinder.map(|_| segment.pressure_before.as_bar()),
                "pressure_after_psi": segment.cylinder.map(|_| segment.pressure_after.as_psi()),
                "pressure_after_bar": segment.cylinder.map(|_| segment.pressure_after.as_bar()),
                "usable_litres": segment.usable_litres,
            })).collect::<Vec<_>>(),
            "change_overs": answer.change_overs.iter().map(|change| json!({
                "at_minutes": change.at_minutes,
                "leg": change.leg + 1,
                "from_cylinder": change.from + 1,
                "to_cylinder": change.to + 1,
            })).collect::<Vec<_>>(),
            "cylinders": answer.left.iter().enumerate().map(|(index, left)| json!({
                "cylinder": index + 1,
                "size": &*left.cylinder.rule.id,
                "series": &*left.cylinder.series,
                "used_litres": left.used_litres,
                "pressure_psi": left.pressure.as_psi(),
                "pressure_bar": left.pressure.as_bar(),
                "usable_litres": left.usable_litres,
            })).collect::<Vec<_>>(),
            "add": self.added.iter().map(|added| json!({
                "size": &*added.cylinder.rule.id,
                "full_psi": added.cylinder.service_pressure.as_psi(),
                "fewest": added.fewest,
            })).collect::<Vec<_>>(),
            "plan_cautions": answer.cautions.iter().map(|caution| self.caution(caution)).collect::<Vec<_>>(),
            "chart": chart,
        })
    }
}
