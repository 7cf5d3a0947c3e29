//! The answer for programs.

use super::{
    super::answers::{
        diagnostic,
        parts::Day,
        stock::{self as told, Mark, Month},
    },
    Answered,
};
use crate::check::stock::OnHand;
use crate::quantity::Volume;

impl Answered<'_> {
    pub fn json(&self) -> told::Stock<'_> {
        let (report, listed) = (self.report, self.listed);
        told::Stock {
            ok: !report.is_wrong() && listed.not_read == 0,
            list: self.path,
            today: Day(self.terms.today),
            due_within: self.terms.due_within.to_string(),
            temperature_c: report.temperature.as_celsius(),
            temperature_assumed: report.temperature_assumed,
            rows_read: listed.rows.len(),
            rows_not_read: listed.not_read,
            diagnostics: diagnostic::told(&listed.diagnostics, &listed.sources),
            complete: listed.omitted == 0,
            cylinders: (0..self.stock.len())
                .filter_map(|index| self.cylinder_object(index))
                .collect(),
            findings: report.findings.iter().map(told::Finding::of).collect(),
            rules: self.found_against(),
            swap: self.swap_objects(),
            on_hand: report.locations.iter().map(on_hand).collect(),
            on_hand_in_all: on_hand(&report.all),
            residual_psi: self.book.policies.residual_pressure.as_psi(),
            sheet: self.sheet.map(|sheet| sheet.display().to_string()),
        }
    }

    /// Once for each rule: a long list has thousands of findings against the same few.
    fn found_against(&self) -> Vec<told::FoundAgainst<'_>> {
        self.rules()
            .into_iter()
            .map(|finding| told::FoundAgainst {
                kind: finding.kind.word(),
                id: &finding.rule.id,
                value: self.value(finding).map(|value| value.to_string()),
                note: finding.note,
                rationale: &finding.rule.rationale,
            })
            .collect()
    }

    fn swap_objects(&self) -> Vec<told::Swap<'_>> {
        self.report
            .swap
            .iter()
            .filter_map(|index| {
                let (row, judged) = (self.listed.rows.get(*index)?, self.report.judged.get(*index)?);
                Some(told::Swap {
                    cylinder: index + 1,
                    line: row.line,
                    serial: &row.stocked.serial,
                    location: &row.stocked.location,
                    reasons: judged.reasons.iter().map(|reason| (*reason).into()).collect(),
                })
            })
            .collect()
    }

    fn cylinder_object(&self, index: usize) -> Option<told::Cylinder<'_>> {
        let (row, judged) = (self.listed.rows.get(index)?, self.report.judged.get(index)?);
        let one = &row.stocked;
        let marks = [
            (Mark::Plus, one.marks.plus),
            (Mark::Star, one.marks.star),
            (Mark::Aluminium, one.marks.aluminium),
        ];
        Some(told::Cylinder {
            line: row.line,
            serial: &one.serial,
            size: &judged.cylinder.rule.id,
            series: &judged.cylinder.series,
            location: &one.location,
            pressure_psi: one.pressure.map(|pressure| pressure.as_psi()),
            pressure_bar: one.pressure.map(|pressure| pressure.as_bar()),
            tested: one.tested.map(|month| Month(month.to_string())),
            due: judged.due.map(|month| Month(month.to_string())),
            marks: marks
                .into_iter()
                .filter_map(|(mark, is_marked)| is_marked.then_some(mark))
                .collect(),
            filled_at_most_psi: judged.filled_at_most.as_psi(),
            filled_at_most_bar: judged.filled_at_most.as_bar(),
            usable_litres: judged.usable.map(Volume::as_litres),
            counted: judged.is_counted(),
            reasons: judged.reasons.iter().map(|reason| (*reason).into()).collect(),
            findings: judged.findings.iter().map(told::Finding::of).collect(),
        })
    }
}

fn on_hand<'b>(here: &'b OnHand<'b>) -> told::OnHand<'b> {
    told::OnHand {
        location: &here.location,
        counted: here.counted,
        not_counted: here.not_counted,
        usable_litres: here.usable_litres,
        minutes: here
            .minutes
            .iter()
            .map(|one| told::DeviceMinutes {
                device: &one.device.rule.id,
                flow_lpm: one.device.usual.as_litres_per_minute(),
                minutes: one.minutes,
            })
            .collect(),
    }
}
