//! Steps of procedures, and hazards.

use serde::Serialize;

use super::{Body, Maker};
use crate::book::{HazardId, Procedure, Severity, Step};

/// One step.
#[derive(Clone, Debug, Serialize)]
pub struct StepLine {
    /// The step's identifier, for messages.
    pub id: String,
    /// Its number.
    pub number: String,
    /// The instruction.
    pub text: String,
    /// The reason.
    pub why: String,
    /// The hazards it prevents, as a sentence; empty where the book names none.
    pub prevents: String,
    /// Whether it is critical.
    pub critical: bool,
}

/// One hazard.
#[derive(Clone, Debug, Serialize)]
pub struct CautionLine {
    /// The rule's identifier, for messages.
    pub id: String,
    /// `STOP`, `WARN` or `NOTE`, in the agency's language.
    pub severity: String,
    /// How bad it is: `stop`, `warn` or `note`.
    pub level: &'static str,
    /// What is wrong.
    pub say: String,
    /// What to do.
    #[serde(rename = "do")]
    pub remedy: String,
}

impl Maker<'_> {
    pub(super) fn steps(&self, procedure: &Procedure) -> Body {
        Body::Steps {
            procedure: procedure.rule.name.to_string(),
            purpose: procedure.purpose.to_string(),
            not_when: procedure.not_when.iter().map(ToString::to_string).collect(),
            steps: self
                .step_lines(procedure)
                .into_iter()
                // A card gives the reasons of critical steps; the others' stand in the book.
                .map(|step| StepLine {
                    why: if step.critical { step.why } else { String::new() },
                    ..step
                })
                .collect(),
        }
    }

    pub(super) fn poster(&self, procedure: &Procedure) -> Body {
        Body::Poster {
            purpose: procedure.purpose.to_string(),
            not_when: procedure.not_when.iter().map(ToString::to_string).collect(),
            steps: self.step_lines(procedure),
        }
    }

    fn step_lines(&self, procedure: &Procedure) -> Vec<StepLine> {
        let line = |(index, step): (usize, &Step)| StepLine {
            id: step.id.to_string(),
            number: (index + 1).to_string(),
            text: step.say.to_string(),
            why: step.why.to_string(),
            prevents: self.prevented(step),
            critical: step.critical,
        };
        procedure.steps.iter().enumerate().map(line).collect()
    }

    fn prevented(&self, step: &Step) -> String {
        let names: Vec<&str> = step
            .prevents
            .iter()
            .filter_map(|id| self.book.hazard(*id))
            .map(|hazard| &*hazard.rule.name)
            .collect();
        if names.is_empty() {
            return String::new();
        }
        self.messages.with("prevents", &[("hazards", &names.join("; "))])
    }

    pub(super) fn cautions(&self, hazards: &[HazardId]) -> Body {
        Body::Cautions {
            items: hazards
                .iter()
                .filter_map(|id| self.book.hazard(*id))
                .map(|hazard| {
                    let level = match hazard.severity {
                        Severity::Stop => "stop",
                        Severity::Warn => "warn",
                        Severity::Note => "note",
                    };
                    CautionLine {
                        id: hazard.rule.id.to_string(),
                        severity: self.messages.get(level),
                        level,
                        say: hazard.say.to_string(),
                        remedy: hazard.remedy.to_string(),
                    }
                })
                .collect(),
        }
    }
}
