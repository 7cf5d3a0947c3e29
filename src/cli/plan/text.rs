//! The answer for people.

use std::{io::Write, path::Path};

use super::{
    super::{CannotRun, words},
    Added, Answered,
};
use crate::check::plan::{Break, Caution, MOST_ADDED, Segment};
use crate::compile::render::visible;
use crate::quantity::Number;
use crate::rounding::{down, up};

impl Answered<'_> {
    pub fn text(&self, chart: Option<&Path>, out: &mut dyn Write) -> Result<(), CannotRun> {
        words::heading(out, self.book)?;
        if let Some(name) = &self.transport.name {
            writeln!(out, "{}\n", visible(name))?;
        }
        self.verdict(out)?;
        for caution in &self.answer.cautions {
            writeln!(out, "Caution: {}.", self.caution(caution))?;
        }
        for added in self.added {
            writeln!(out, "{}", self.added(added))?;
        }
        self.course(out)?;
        self.rest(out)?;
        self.rules(out)?;
        if let Some(chart) = chart {
            writeln!(out, "Chart: {}", chart.display())?;
        }
        words::footing(out)?;
        Ok(())
    }

    fn verdict(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        let answer = self.answer;
        let margin = self.book.policies.planning_margin;
        if answer.enough {
            writeln!(
                out,
                "ENOUGH, with the planning margin of {margin}; beyond it {} L are left, {} min at the last flow.",
                Number(down(answer.spare_litres, 10.0)),
                answer.spare_minutes
            )?;
        } else {
            writeln!(
                out,
                "NOT ENOUGH: with the planning margin of {margin} there lack {} min, {} L.",
                answer.short_minutes,
                Number(up(answer.short_litres, 10.0))
            )?;
        }
        if let Some(broken) = &answer.breaks {
            writeln!(out, "With the margin the gas runs out {}.", self.place(broken))?;
        }
        match &answer.breaks_without_margin {
            Some(broken) => {
                writeln!(
                    out,
                    "Even without the margin the gas runs out {}.",
                    self.place(broken)
                )?;
            }
            None if !answer.enough => writeln!(out, "Without any margin it would last.")?,
            None => {}
        }
        writeln!(
            out,
            "Needed: {} L in {} min with the margin; {} L in {} min are expected.",
            Number(up(answer.needed_litres, 10.0)),
            Number(up(answer.needed_minutes, 1.0)),
            Number(up(answer.expected_litres, 10.0)),
            Number(up(answer.expected_minutes, 1.0))
        )?;
        Ok(())
    }

    /// `on leg 2 (on the road), after 31 min`.
    fn place(&self, broken: &Break) -> String {
        format!(
            "on leg {} ({}), after {} min",
            broken.leg + 1,
            visible(self.leg(broken.leg)),
            Number(down(broken.at_minutes, 1.0))
        )
    }

    pub(super) fn caution(&self, caution: &Caution<'_>) -> String {
        match caution {
            Caution::FlowOutside {
                leg,
                device,
                flow,
                range,
            } => format!(
                "on leg {} {flow} is not what the book gives for the {}: {range}",
                leg + 1,
                device.rule.name
            ),
            Caution::Overfilled { cylinder, most } => format!(
                "cylinder {} is filled above its limit of {}; tag it and send it back, unless it is simply warm",
                self.cylinder(*cylinder),
                self.reading(*most)
            ),
            Caution::BelowInServiceMinimum { cylinder, minimum } => format!(
                "cylinder {} is below {}, the least with which the book puts one into service",
                self.cylinder(*cylinder),
                self.reading(*minimum)
            ),
            Caution::OutsideUseTemperature {
                leg,
                temperature,
                range,
            } => format!(
                "on leg {} it is {temperature}; the book lets cylinders be used at {range}",
                leg + 1
            ),
        }
    }

    fn added(&self, added: &Added<'_>) -> String {
        let cylinder = added.cylinder;
        let full = format!("{} full to {}", cylinder.rule.name, cylinder.service_pressure);
        match added.fewest {
            Some(0) => format!("Nothing need be added ({full})."),
            Some(count) => format!("To add, at the least: {count} x {full}."),
            None => format!("Not even {MOST_ADDED} x {full} would make it enough."),
        }
    }

    fn course(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        writeln!(out, "\nIn the time expected, without the margin:\n")?;
        let mut change_overs = self.answer.change_overs.iter().peekable();
        for segment in &self.answer.segments {
            if let Some(change) = change_overs.next_if(|change| {
                segment.cylinder == Some(change.to) && change.at_minutes <= segment.from_minutes
            }) {
                writeln!(
                    out,
                    "  {:>4} min          CHANGE from cylinder {} to cylinder {}",
                    down(change.at_minutes, 1.0) as u64,
                    self.cylinder(change.from),
                    self.cylinder(change.to)
                )?;
            }
            writeln!(out, "{}", self.segment(segment))?;
        }
        Ok(())
    }

    fn segment(&self, segment: &Segment) -> String {
        let (from, to) = (
            down(segment.from_minutes, 1.0) as u64,
            down(segment.to_minutes, 1.0) as u64,
        );
        let leg = format!("leg {} ({})", segment.leg + 1, visible(self.leg(segment.leg)));
        let begin = format!("  {from:>4} to {to:>4} min  {leg}");
        match segment.cylinder {
            Some(cylinder) if segment.litres_per_minute > 0.0 => format!(
                "{begin}: cylinder {} at {} L/min, {} to {}, then {} L usable",
                self.cylinder(cylinder),
                Number(segment.litres_per_minute),
                self.reading(segment.pressure_before),
                self.reading(segment.pressure_after),
                Number(down(segment.usable_litres, 10.0))
            ),
            _ => format!("{begin}: no gas is used"),
        }
    }

    fn rest(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        let when = match self.answer.breaks_without_margin {
            Some(_) => "When the gas runs out",
            None => "At the end",
        };
        writeln!(out, "\n{when}:\n")?;
        for (index, left) in self.answer.left.iter().enumerate() {
            writeln!(
                out,
                "  cylinder {}: {}, {} L usable above {}; {} L were used",
                self.cylinder(index),
                self.reading(left.pressure),
                Number(down(left.usable_litres, 10.0)),
                self.book.policies.residual_pressure,
                Number(down(left.used_litres, 10.0))
            )?;
        }
        writeln!(out)?;
        Ok(())
    }

    fn rules(&self, out: &mut dyn Write) -> Result<(), CannotRun> {
        let (answer, policies) = (self.answer, &self.book.policies);
        let assumed = if answer.read_at_assumed { " (assumed)" } else { "" };
        writeln!(
            out,
            "Cylinders are changed at {} while another is left; the last, cylinder {}, may be used to {}.",
            policies.change_over_pressure,
            self.cylinder(answer.last),
            policies.residual_pressure
        )?;
        if !self.last_is_used() {
            writeln!(out, "That one stays unused in the time expected.")?;
        }
        writeln!(
            out,
            "Order: {}. The gauges are taken as read at {}{assumed}.",
            answer.order.word(),
            answer.read_at
        )?;
        writeln!(
            out,
            "Gas is the lower of density and factor; gas and minutes are rounded to the safe side."
        )?;
        let mut series: Vec<&str> = Vec::new();
        for left in &answer.left {
            if !series.contains(&&*left.cylinder.series) {
                series.push(&left.cylinder.series);
            }
        }
        writeln!(
            out,
            "Sizes: {}. Read what is stamped on the cylinder.",
            series.join(", ")
        )?;
        writeln!(
            out,
            "Do the sum again at every change of flow, and read the gauges."
        )?;
        Ok(())
    }
}
