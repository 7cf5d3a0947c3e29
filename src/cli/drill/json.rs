//! The answer for programs.

use crate::cli::answers::drill as told;
use crate::drill::{Exercise, Sheet, Task};

/// The answer of a sheet.
pub fn answer<'s>(seed: u64, sheet: &'s Sheet<'_>) -> told::Drill<'s> {
    let missing = sheet.missing.iter();
    told::Drill {
        seed,
        exercises: sheet.exercises.iter().map(one).collect(),
        missing: missing
            .map(|(kind, level, count)| told::Missing {
                kind: (*kind).into(),
                level: (*level).into(),
                count: *count,
            })
            .collect(),
    }
}

fn one<'s>(exercise: &'s Exercise<'_>) -> told::Exercise<'s> {
    let label = |place: usize| {
        let line = exercise.lines.get(place);
        line.map_or("", |(label, _)| label.as_str())
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
    told::Exercise {
        kind: exercise.kind().into(),
        level: exercise.difficulty.into(),
        question: &exercise.question,
        lines: exercise
            .lines
            .iter()
            .map(|(label, text)| told::Line { label, text })
            .collect(),
        answer: &exercise.answer,
        working: &exercise.working,
        before,
        wrong,
        rules: exercise
            .rules
            .iter()
            .map(|rule| told::Cited {
                id: rule.id(),
                name: rule.name(),
                chapter: rule.place().chapter,
                heading: rule.place().heading,
                file: rule.place().file,
                line: rule.place().line,
            })
            .collect(),
    }
}
