//! `oxyfolio drill`: practice sheets and their answers.

mod json;

use std::io::Write;

use super::{
    CannotRun, Outcome,
    answers::Frame,
    args::{AskedFormat, Common, Drill},
    book, words,
};
use crate::book::Rulebook;
use crate::cards::{
    drill::{Page, Side},
    output,
    typst::Program,
};
use crate::drill::{Difficulty, Kind, Sheet, Terms, exercises};

/// Makes exercises.
pub fn run(
    command: &Drill,
    common: &Common,
    asked: AskedFormat,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    let book: &Rulebook = &book;
    let kinds: Vec<Kind> = command.kind.iter().map(|kind| Kind::from(*kind)).collect();
    let mut terms = Terms::new(command.seed).count(command.count).kinds(&kinds);
    if let Some(level) = command.level {
        terms = terms.difficulty(Difficulty::from(level));
    }
    let sheet = exercises(book, &terms);
    print(book, &sheet, command)?;
    match asked {
        AskedFormat::Json => words::json(out, &Frame::of(book).round(json::answer(command.seed, &sheet)))?,
        AskedFormat::Csv => csv(&sheet, out)?,
        _ => text(book, &sheet, command, out)?,
    }
    Ok(if sheet.missing.is_empty() {
        Outcome::Fine
    } else {
        Outcome::Findings
    })
}

/// Prints the sheets that were asked for: both are set before either is written.
fn print(book: &Rulebook, sheet: &Sheet<'_>, command: &Drill) -> Result<(), CannotRun> {
    let wanted = [
        (&command.sheet, Side::Practice),
        (&command.answers, Side::Answers),
    ];
    if command.sheet.is_some() && command.sheet == command.answers {
        return Err(CannotRun(
            "--answers: expected another file than that of --sheet".to_owned(),
        ));
    }
    if wanted.iter().all(|(path, _)| path.is_none()) {
        return Ok(());
    }
    let typst = Program::find(command.typst.clone())?;
    let mut made = Vec::new();
    for (path, side) in wanted {
        if let Some(path) = path {
            let page = Page::new(book, sheet, command.seed, side, command.paper.into());
            made.push((path, page.set(book, &typst)?));
        }
    }
    for (path, pdf) in made {
        output::replace(path, &pdf)
            .map_err(|error| CannotRun(format!("cannot write `{}`: {error}", path.display())))?;
    }
    Ok(())
}

fn text(book: &Rulebook, sheet: &Sheet<'_>, command: &Drill, out: &mut dyn Write) -> Result<(), CannotRun> {
    words::heading(out, book)?;
    let printed = command.sheet.is_some() || command.answers.is_some();
    let files = [&command.sheet, &command.answers];
    for path in files.into_iter().flatten() {
        writeln!(out, "{}", path.display())?;
    }
    if !printed {
        writeln!(
            out,
            "Exercises, seed {}. Figures and logs are made up.",
            command.seed
        )?;
        for (place, one) in (1..).zip(&sheet.exercises) {
            writeln!(
                out,
                "\n{place}. {} ({})\n{}",
                one.kind().title(),
                one.difficulty.word(),
                one.question
            )?;
            for (label, line) in &one.lines {
                writeln!(out, "   {label:<12} {line}")?;
            }
        }
        writeln!(out, "\n\nAnswers")?;
        for (place, one) in (1..).zip(&sheet.exercises) {
            writeln!(out, "\n{place}. {}", one.answer)?;
            for line in &one.working {
                writeln!(out, "   {line}")?;
            }
            for rule in &one.rules {
                writeln!(out, "   rule: `{}`, {}", rule.id(), rule.place())?;
            }
        }
    }
    for (kind, level, count) in &sheet.missing {
        writeln!(
            out,
            "\n{count} missing: the book has no {} exercise of kind {}",
            level.word(),
            kind.word()
        )?;
    }
    words::footing(out)?;
    Ok(())
}

/// Questions and answers, a row each: RFC 4180, the way flash cards are taken in.
fn csv(sheet: &Sheet<'_>, out: &mut dyn Write) -> Result<(), CannotRun> {
    writeln!(out, "question,answer\r")?;
    for one in &sheet.exercises {
        let mut question = format!("{}: {}", one.kind().title(), one.question);
        for (label, line) in &one.lines {
            question += &format!("\n{label}  {line}");
        }
        let mut answer = one.answer.clone();
        for line in &one.working {
            answer += &format!("\n{line}");
        }
        writeln!(out, "{},{}\r", cell(&question), cell(&answer))?;
    }
    Ok(())
}

fn cell(text: &str) -> String {
    // A text that begins like this would be taken for a formula.
    let guard = if text.starts_with(['=', '+', '-', '@']) {
        "'"
    } else {
        ""
    };
    format!("\"{guard}{}\"", text.replace('"', "\"\""))
}
