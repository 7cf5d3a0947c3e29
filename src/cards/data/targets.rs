//! Saturation targets: where to begin, and when to step up or down.

use serde::Serialize;

use super::{Body, Maker};
use crate::book::{Saturation, Target, TargetId};
use crate::quantity::Number;

/// One target.
#[derive(Clone, Debug, Serialize)]
pub struct TargetLine {
    /// The rule's identifier, for messages.
    pub id: String,
    /// Whom it is for.
    pub name: String,
    /// What is aimed at.
    pub aim: String,
    /// What to begin with, the ladder, when to go up or down: a label and a text each.
    pub lines: Vec<[String; 2]>,
}

/// One minute of life.
#[derive(Clone, Debug, Serialize)]
pub struct NewbornRow {
    /// The rule's identifier, for messages.
    pub id: String,
    /// The time since birth.
    pub from: String,
    /// What is aimed at.
    pub aim: String,
    /// When to go up.
    pub up: String,
    /// When to go down.
    pub down: String,
}

/// One sentence after the other, the first closed where the book left it open.
fn sentences(first: &str, then: &str) -> String {
    let first = first.trim_end();
    let stop = if first.ends_with(['.', '!', '?']) { "" } else { "." };
    format!("{first}{stop} {then}")
}

impl Maker<'_> {
    fn aim(&self, target: &Target) -> String {
        match target.saturation {
            Saturation::Range(range) => {
                let range = format!("{} %", self.numbers(range, |share| share.as_percent()));
                self.messages.with("aim", &[("range", &range)])
            }
            Saturation::NotReliable => self.messages.get("no-aim"),
        }
    }

    fn begin(&self, target: &Target) -> Vec<[String; 2]> {
        let mut lines = vec![[self.messages.get("start"), self.device_flow(target.start)]];
        if let Some(urgent) = target.urgent {
            lines.push([
                self.messages
                    .with("urgent", &[("value", &urgent.below.to_string())]),
                self.device_flow(urgent.start),
            ]);
        }
        // Rungs of one device are named together: `nasal cannula at 2, 4 L/min`.
        let rungs: Vec<String> = target
            .ladder
            .chunk_by(|a, b| a.device == b.device)
            .map(|rungs| {
                let flows: Vec<String> = rungs
                    .iter()
                    .map(|rung| Number(rung.flow.as_litres_per_minute()).to_string())
                    .collect();
                let flows = format!("{} L/min", flows.join(", "));
                let device = rungs.first().map(|rung| self.device_name(rung.device));
                self.messages
                    .with("at-flow", &[("device", device.unwrap_or("?")), ("flow", &flows)])
            })
            .collect();
        lines.push([self.messages.get("ladder"), rungs.join(" → ")]);
        lines
    }

    pub(super) fn targets(&self, targets: &[TargetId]) -> Body {
        let line = |target: &Target| {
            let mut lines = self.begin(target);
            let again = self
                .messages
                .with("recheck", &[("time", &target.recheck.to_string())]);
            lines.push([self.messages.get("up"), target.step_up.to_string()]);
            lines.push([self.messages.get("down"), sentences(&target.step_down, &again)]);
            TargetLine {
                id: target.rule.id.to_string(),
                name: target.rule.name.to_string(),
                aim: self.aim(target),
                lines,
            }
        };
        Body::Targets {
            items: self.targets_of(targets).map(line).collect(),
        }
    }

    /// What all targets begin with is said once.
    pub(super) fn newborn(&self, targets: &[TargetId]) -> Body {
        let mut lead: Vec<[String; 2]> = Vec::new();
        for target in self.targets_of(targets) {
            for line in self.begin(target) {
                if !lead.contains(&line) {
                    lead.push(line);
                }
            }
        }
        let row = |target: &Target| NewbornRow {
            id: target.rule.id.to_string(),
            from: target.minute_of_life.map_or_else(
                || target.rule.name.to_string(),
                |time| self.messages.with("from-time", &[("time", &time.to_string())]),
            ),
            aim: match target.saturation {
                Saturation::Range(range) => {
                    format!("{} %", self.numbers(range, |share| share.as_percent()))
                }
                Saturation::NotReliable => self.messages.get("no-aim"),
            },
            up: target.step_up.to_string(),
            down: target.step_down.to_string(),
        };
        Body::Newborn {
            lead,
            rows: self.targets_of(targets).map(row).collect(),
        }
    }

    fn targets_of<'a>(&'a self, targets: &'a [TargetId]) -> impl Iterator<Item = &'a Target> {
        targets.iter().filter_map(|id| self.book.target(*id))
    }
}
