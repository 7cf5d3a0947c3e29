//! The answer for programs.

use schemars::JsonSchema;
use serde::Serialize;
use serde_json::{Value, to_value};

use crate::cli::CannotRun;
use crate::drill::{Exercise, Sheet, Task};

/// Exercises with their answers.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Answer {
    /// The seed that gives them again with the same book.
    seed: u64,
    /// The exercises.
    exercises: Vec<One>,
    /// What the book gives no exercise for.
    missing: Vec<Lacking>,
}

/// One exercise.
#[derive(Debug, Serialize, JsonSchema)]
struct One {
    /// Its kind: duration, order, setup or log.
    kind: &'static str,
    /// How hard it is: easy, medium or hard.
    level: &'static str,
    /// What is asked.
    question: String,
    /// What is looked at.
    lines: Vec<Line>,
    /// The answer.
    answer: String,
    /// How it comes about.
    working: Vec<String>,
    /// Of steps: pairs of letters of which the first must come before the second.
    before: Option<Vec<(String, String)>>,
    /// The part that is wrong, of a set-up or log.
    wrong: Option<&'static str>,
    /// The rules behind it.
    rules: Vec<Cited>,
}

/// A line with the letter, name or time it goes by.
#[derive(Debug, Serialize, JsonSchema)]
struct Line {
    label: String,
    text: String,
}

/// A rule and its place.
#[derive(Debug, Serialize, JsonSchema)]
struct Cited {
    id: String,
    name: String,
    chapter: String,
    heading: String,
    file: String,
    line: u32,
}

/// What is missing.
#[derive(Debug, Serialize, JsonSchema)]
struct Lacking {
    kind: &'static str,
    level: &'static str,
    count: u16,
}

/// The answer of a sheet.
pub fn answer(seed: u64, sheet: &Sheet<'_>) -> Result<Value, CannotRun> {
    let missing = sheet.missing.iter().map(|(kind, level, count)| Lacking {
        kind: kind.word(),
        level: level.word(),
        count: *count,
    });
    Ok(to_value(Answer {
        seed,
        exercises: sheet.exercises.iter().map(one).collect(),
        missing: missing.collect(),
    })?)
}

fn one(exercise: &Exercise<'_>) -> One {
    let label = |place: usize| {
        let line = exercise.lines.get(place);
        line.map_or_else(String::new, |(label, _)| label.clone())
    };
    let (before, wrong) = match &exercise.task {
        Task::Order(steps) => {
            let pairs = steps.before.iter();
            let pairs = pairs.map(|(first, second)| (label(*first), label(*second)));
            (Some(pairs.collect()), None)
        }
        Task::Setup(setup) => (None, setup.wrong.map(|part| part.word())),
        Task::Log(log) => (None, log.wrong.map(|(change, _)| change.word())),
        Task::Duration(_) => (None, None),
    };
    One {
        kind: exercise.kind().word(),
        level: exercise.difficulty.word(),
        question: exercise.question.clone(),
        lines: exercise
            .lines
            .iter()
            .map(|(label, text)| Line {
                label: label.clone(),
                text: text.clone(),
            })
            .collect(),
        answer: exercise.answer.clone(),
        working: exercise.working.clone(),
        before,
        wrong,
        rules: exercise
            .rules
            .iter()
            .map(|rule| Cited {
                id: rule.id.to_string(),
                name: rule.name.to_string(),
                chapter: rule.place.chapter.to_string(),
                heading: rule.place.heading.to_string(),
                file: rule.place.file.to_string(),
                line: rule.place.line,
            })
            .collect(),
    }
}
