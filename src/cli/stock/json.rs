//! The answer for programs.

use serde_json::{Value, json};

use super::{
    super::{diagnostics, words},
    Answered,
};
use crate::check::stock::{Finding, OnHand};
use crate::quantity::Volume;

impl Answered<'_> {
    pub fn json(&self) -> Value {
        let (report, listed) = (self.report, self.listed);
        json!({
            "ok": !report.is_wrong() && listed.not_read == 0,
            "list": self.path,
            "today": self.terms.today.to_string(),
            "due_within": self.terms.due_within.to_string(),
            "temperature_c": report.temperature.as_celsius(),
            "temperature_assumed": report.temperature_assumed,
            "rows_read": listed.rows.len(),
            "rows_not_read": listed.not_read,
            "diagnostics": diagnostics::objects(&listed.diagnostics, &listed.sources),
            "complete": listed.omitted == 0,
            "cylinders": (0..self.stock.len()).map(|index| self.cylinder_object(index)).collect::<Vec<_>>(),
            "findings": report.findings.iter().map(object).collect::<Vec<_>>(),
            // Once for each rule: a long list has thousands of findings against the same few.
            "rules": self.rules().into_iter().map(|finding| json!({
                "kind": finding.kind.word(),
                "id": &*finding.rule.id,
                "value": self.value(finding).map(|value| value.to_string()),
                "note": finding.note,
                "rationale": &*finding.rule.rationale,
            })).collect::<Vec<_>>(),
            "swap": report.swap.iter().filter_map(|index| {
                let (row, judged) = (listed.rows.get(*index)?, report.judged.get(*index)?);
                Some(json!({
                    "cylinder": index + 1,
                    "line": row.line,
                    "serial": row.stocked.serial,
                    "location": row.stocked.location,
                    "reasons": judged.reasons.iter().map(|reason| reason.word()).collect::<Vec<_>>(),
                }))
            }).collect::<Vec<_>>(),
            "on_hand": report.locations.iter().map(on_hand).collect::<Vec<_>>(),
            "on_hand_in_all": on_hand(&report.all),
            "residual_psi": self.book.policies.residual_pressure.as_psi(),
            "sheet": self.sheet.map(|sheet| sheet.display().to_string()),
        })
    }

    fn cylinder_object(&self, index: usize) -> Value {
        let (Some(row), Some(judged)) = (self.listed.rows.get(index), self.report.judged.get(index)) else {
            return Value::Null;
        };
        let one = &row.stocked;
        let marks = [
            ("plus", one.marks.plus),
            ("star", one.marks.star),
            ("aluminium", one.marks.aluminium),
        ];
        let marks: Vec<&str> = marks
            .iter()
            .filter_map(|(word, is_marked)| is_marked.then_some(*word))
            .collect();
        json!({
            "line": row.line,
            "serial": one.serial,
            "size": &*judged.cylinder.rule.id,
            "series": &*judged.cylinder.series,
            "location": one.location,
            "pressure_psi": one.pressure.map(|pressure| pressure.as_psi()),
            "pressure_bar": one.pressure.map(|pressure| pressure.as_bar()),
            "tested": one.tested.map(|month| month.to_string()),
            "due": judged.due.map(|month| month.to_string()),
            "marks": marks,
            "filled_at_most_psi": judged.filled_at_most.as_psi(),
            "filled_at_most_bar": judged.filled_at_most.as_bar(),
            "usable_litres": judged.usable.map(Volume::as_litres),
            "counted": judged.is_counted(),
            "reasons": judged.reasons.iter().map(|reason| reason.word()).collect::<Vec<_>>(),
            "findings": judged.findings.iter().map(object).collect::<Vec<_>>(),
        })
    }
}

fn on_hand(here: &OnHand<'_>) -> Value {
    json!({
        "location": here.location,
        "counted": here.counted,
        "not_counted": here.not_counted,
        "usable_litres": here.usable_litres,
        "minutes": here.minutes.iter().map(|one| json!({
            "device": &*one.device.rule.id,
            "flow_lpm": one.device.usual.as_litres_per_minute(),
            "minutes": one.minutes,
        })).collect::<Vec<_>>(),
    })
}

fn object(finding: &Finding<'_>) -> Value {
    json!({
        "code": finding.code(),
        "level": finding.level.code(),
        "message": finding.to_string(),
        "rule": words::rule(finding.kind, finding.rule),
    })
}
