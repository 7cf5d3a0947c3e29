//! The answer for people.

use std::io::Write;

use super::{
    super::{CannotRun, words},
    Answered,
};
use crate::book::Kind;
use crate::check::Level;
use crate::check::stock::{Finding, OnHand, Reason};
use crate::compile::render::visible;
use crate::quantity::Flow;

impl Answered<'_> {
    pub fn text(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        words::heading(out, self.book)?;
        self.verdict(out)?;
        self.swap(out)?;
        self.findings(out)?;
        self.on_hand(out)?;
        self.not_counted(out)?;
        self.why(out)?;
        if let Some(sheet) = self.sheet {
            writeln!(
                out,
                "\nInspection sheet: {}",
                visible(&sheet.display().to_string())
            )?;
        }
        words::footing(out)?;
        Ok(())
    }

    fn verdict(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        let all = &self.report.all;
        let count = self.stock.len();
        writeln!(
            out,
            "{}, {}: {count} cylinder{}, {} fit for service, {} to swap or clear up.",
            visible(self.path),
            self.terms.today,
            if count == 1 { "" } else { "s" },
            all.counted,
            self.report.swap.len()
        )?;
        let not_read = self.listed.not_read;
        if not_read > 0 {
            writeln!(
                out,
                "{not_read} row{} COULD NOT BE READ, and {} not in this answer.",
                if not_read == 1 { "" } else { "s" },
                if not_read == 1 { "is" } else { "are" }
            )?;
        }
        if !self.report.is_wrong() {
            let among = if not_read > 0 {
                " in the rows that could be read"
            } else {
                ""
            };
            writeln!(out, "Nothing against the book was found{among}.")?;
        }
        Ok(())
    }

    /// A cylinder as a line names it: serial, size, location, line of the list.
    fn cylinder(&self, index: usize) -> String {
        let (Some(row), Some(judged)) = (self.listed.rows.get(index), self.report.judged.get(index)) else {
            return String::new();
        };
        let one = &row.stocked;
        let location = if one.location.is_empty() {
            "location not given"
        } else {
            &one.location
        };
        format!(
            "{}, {}, {} (line {})",
            visible(&one.serial),
            judged.cylinder.rule.name,
            visible(location),
            row.line
        )
    }

    fn swap(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        if self.report.swap.is_empty() {
            return Ok(());
        }
        writeln!(out, "\nSwap first, in this order:\n")?;
        for (place, index) in (1..).zip(&self.report.swap) {
            let words = self
                .report
                .judged
                .get(*index)
                .map_or(String::new(), |one| one.words());
            writeln!(out, "{place:>4}. {}: {words}", self.cylinder(*index))?;
        }
        Ok(())
    }

    fn findings(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        let report = self.report;
        let is_any = report.judged.iter().any(|one| !one.findings.is_empty());
        if !is_any && report.findings.is_empty() {
            return Ok(());
        }
        writeln!(out, "\nFindings:\n")?;
        for finding in &report.findings {
            print(finding, "all cylinders", out)?;
        }
        // Those to be swapped in that order, then what is worth knowing about the others in the order of the list.
        let is_other = |index: &usize| {
            report
                .judged
                .get(*index)
                .is_some_and(|one| one.reasons.is_empty())
        };
        let others = (0..report.judged.len()).filter(is_other);
        for index in report.swap.iter().copied().chain(others) {
            let name = self.cylinder(index);
            for finding in report.judged.get(index).map_or(&[][..], |one| &one.findings) {
                print(finding, &name, out)?;
            }
        }
        Ok(())
    }

    fn on_hand(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        let report = self.report;
        let assumed = if report.temperature_assumed {
            " (assumed)"
        } else {
            ""
        };
        writeln!(
            out,
            "\nMinutes on hand at {}{assumed}, each device at its usual flow, cylinder after cylinder down to {}:",
            report.temperature, self.book.policies.residual_pressure
        )?;
        for here in &report.locations {
            let location = if here.location.is_empty() {
                "location not given"
            } else {
                &here.location
            };
            print_on_hand(&visible(location), here, out)?;
        }
        if report.locations.len() > 1 {
            print_on_hand("In all", &report.all, out)?;
        }
        writeln!(
            out,
            "\nSizes: {}. Read what is stamped on the cylinder.",
            report.series().join(", ")
        )?;
        Ok(())
    }

    fn not_counted(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        let report = self.report;
        let mut is_first = true;
        for reason in Reason::ALL {
            let because: Vec<String> = (report.swap.iter())
                .filter(|index| {
                    let first = report.judged.get(**index).and_then(|one| one.first());
                    reason.keeps_from_counting() && first == Some(reason)
                })
                .filter_map(|index| self.stock.get(*index))
                .map(|one| visible(&one.serial).into_owned())
                .collect();
            if because.is_empty() {
                continue;
            }
            if is_first {
                writeln!(out, "\nNot counted:\n")?;
                is_first = false;
            }
            writeln!(
                out,
                "  {} ({}): {}",
                because.len(),
                reason.words(),
                because.join(", ")
            )?;
        }
        Ok(())
    }

    /// The book's words, once for each rule that something was found against.
    fn why(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        for (index, finding) in self.rules().into_iter().enumerate() {
            if index == 0 {
                writeln!(out, "\nIn the book's words:\n")?;
            }
            let value = self
                .value(finding)
                .map_or(String::new(), |value| format!(": {value}"));
            writeln!(out, "{}{value}, {}", finding.rule.name, finding.rule.place)?;
            if let Some(note) = finding.note {
                writeln!(out, "    note: {note}")?;
            }
            if !finding.rule.rationale.is_empty() {
                writeln!(
                    out,
                    "    why: {}",
                    finding.rule.rationale.replace("\n\n", "\n         ")
                )?;
            }
        }
        Ok(())
    }
}

fn print(finding: &Finding<'_>, about: &str, out: &mut dyn Write) -> Result<(), CannotRun> {
    let word = match finding.level {
        // The sentence says already that it could not be checked.
        Level::Unknown => "could not be checked",
        level => level.word(),
    };
    writeln!(out, "{word}: {about}: {finding} [{}]", finding.code())?;
    if finding.kind != Kind::Agency {
        writeln!(
            out,
            "    rule: {} `{}`, {}",
            finding.kind, finding.rule.id, finding.rule.place
        )?;
    }
    Ok(())
}

fn print_on_hand(name: &str, here: &OnHand<'_>, out: &mut dyn Write) -> Result<(), CannotRun> {
    writeln!(
        out,
        "\n  {name}: {} counted, {} not, {} L",
        here.counted,
        here.not_counted,
        // `as` rounds down.
        here.usable_litres as u64
    )?;
    // Devices at the same flow have the same minutes: a line for each flow.
    let mut flows: Vec<(Flow, Option<u64>, Vec<&str>)> = Vec::new();
    for one in &here.minutes {
        let name = &*one.device.rule.name;
        match flows.iter_mut().find(|(flow, ..)| *flow == one.device.usual) {
            Some((.., names)) => names.push(name),
            None => flows.push((one.device.usual, one.minutes, vec![name])),
        }
    }
    flows.sort_by(|(one, ..), (other, ..)| {
        one.as_litres_per_minute()
            .total_cmp(&other.as_litres_per_minute())
    });
    for (flow, minutes, names) in flows {
        let minutes = minutes.map_or("?".to_owned(), |minutes| minutes.to_string());
        writeln!(
            out,
            "    {:>9} {minutes:>8} min   {}",
            flow.to_string(),
            names.join(", ")
        )?;
    }
    Ok(())
}
