//! `oxyfolio check`.

use std::{io::Write, path::Path};

use super::{
    CannotRun, Outcome,
    answers::{self, Frame, check::Counts},
    args::{Check, Common, Format},
    book, words,
};
use crate::compile::{Compiled, Uncovered, drawn, source::Sources, uncovered};

/// Checks the rulebook.
pub fn run(command: &Check, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let read = if command.uncovered {
        book::sources(common.rules.as_deref())
            .and_then(uncovered)
            .map(|(compiled, left)| (book::dated(compiled, command.today), Some(left)))
    } else {
        book::read(common.rules.as_deref(), command.today).map(|compiled| (compiled, None))
    };
    match read {
        Ok((compiled, left)) => tell(&compiled, left.as_deref(), common.format, out),
        Err(rejected) => {
            let rules = common
                .rules
                .as_deref()
                .unwrap_or(Path::new("the built-in rulebook"));
            book::print_rejected(&rejected, rules, common.format, out)?;
            Ok(Outcome::Findings)
        }
    }
}

/// Tells of a rulebook that can be used; `left` is what no worked case would notice changing, where that was asked.
pub fn tell(
    compiled: &Compiled,
    left: Option<&[Uncovered]>,
    format: Format,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    let book = &compiled.book;
    let counts = counts(compiled);
    match format {
        Format::Text => {
            words::heading(out, book)?;
            write!(
                out,
                "{}",
                drawn(&compiled.notes, compiled.omitted, &compiled.sources, true)
            )?;
            writeln!(out, "No errors: {}.", counts.words().join(", "))?;
            if let Some(left) = left {
                print_uncovered(left, &compiled.sources, out)?;
            }
            words::footing(out)?;
        }
        Format::Json => {
            let answer = answers::check::Check {
                ok: true,
                counts,
                diagnostics: answers::diagnostic::told(&compiled.notes, &compiled.sources),
                complete: compiled.omitted == 0,
                uncovered: left.map(|left| uncovered_objects(left, &compiled.sources)),
            };
            words::json(out, &Frame::of(book).round(answer))?;
        }
    }
    Ok(match left {
        Some(left) if !left.is_empty() => Outcome::Findings,
        _ => Outcome::Fine,
    })
}

fn counts(compiled: &Compiled) -> Counts {
    let book = &compiled.book;
    Counts {
        chapters: compiled.sources.iter().count(),
        groups: book.groups.len(),
        devices: book.devices.len(),
        cylinders: book.cylinders.len(),
        connections: book.connections.len(),
        policies: book.policies.all.len(),
        targets: book.targets.len(),
        procedures: book.procedures.len(),
        steps: book
            .procedures
            .iter()
            .map(|procedure| procedure.steps.len())
            .sum(),
        hazards: book.hazards.len(),
        cards: book.cards.len(),
    }
}

fn print_uncovered(left: &[Uncovered], sources: &Sources, out: &mut dyn Write) -> std::io::Result<()> {
    if left.is_empty() {
        return writeln!(
            out,
            "Every number, hazard and `after` is covered by a case or a proof."
        );
    }
    writeln!(out, "\nNo worked case would notice a change of:\n")?;
    for one in left {
        let place = sources.line_column(one.span);
        let path = sources.get(one.span.file).map_or("", |source| &source.path);
        writeln!(out, "{path}:{}:{}: {}", place.line, place.column, one.what)?;
    }
    writeln!(
        out,
        "\n{} left: write a case for each (see the page `language`, under `case`).",
        left.len()
    )
}

fn uncovered_objects(left: &[Uncovered], sources: &Sources) -> Vec<answers::check::Uncovered> {
    left.iter()
        .map(|one| {
            let place = sources.line_column(one.span);
            let source = sources.get(one.span.file);
            answers::check::Uncovered {
                file: source.map_or_else(String::new, |source| source.path.clone()),
                line: place.line,
                column: place.column,
                what: one.what.to_string(),
            }
        })
        .collect()
}
