//! `oxyfolio compare`.

mod text;

use std::{
    io::Write,
    path::{Path, PathBuf},
};

use super::{
    CannotRun, Outcome,
    answers::{self, Frame, diagnostic},
    args::{Common, Compare, Format},
    reader::aside,
    words,
};
use crate::cards::{reprint, signoff, typst};
use crate::compare::{
    self,
    edition::{CannotRead, Where},
};
use crate::compile::edition::Edition;

/// Compares two editions.
pub fn run(command: &Compare, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    if command.schema {
        let schemas = answers::schemas();
        let schema = schemas.iter().find(|(command, _)| *command == "compare");
        write!(out, "{}", schema.map_or("", |(_, schema)| schema))?;
        return Ok(Outcome::Fine);
    }
    let (old, new, rules) = asked(command, common)?;
    let old = match read(&old, &rules, common.format, out)? {
        Ok(edition) => edition,
        Err(outcome) => return Ok(outcome),
    };
    let new = match read(&new, &rules, common.format, out)? {
        Ok(edition) => edition,
        Err(outcome) => return Ok(outcome),
    };
    let comparison = compare::compare(&old, &new);
    let cards = reprint::cards(&old, &new)
        .map_err(|wrong| CannotRun(format!("cannot compare the cards: {wrong}")))?;
    let unchanged = comparison.is_empty() && !reprint::any(&cards);
    if let Some(path) = &command.report {
        let paper = command.paper.map_or(new.book.agency.paper, Into::into);
        let page = signoff::Page::new(&new.book, &comparison, &cards, paper);
        let program = typst::Program::find(command.typst.clone())?;
        signoff::print(&page, &new.book, &program, path)?;
    }
    match common.format {
        Format::Text => {
            words::heading(out, &new.book)?;
            text::print(&comparison, &cards, unchanged, out)?;
            if let Some(path) = &command.report {
                writeln!(out, "\nWritten: {}", path.display())?;
            }
            words::footing(out)?;
        }
        Format::Json => {
            let answer = answers::compare::Compare {
                ok: unchanged,
                comparison,
                cards,
            };
            words::json(out, &Frame::of(&new.book).round(answer))?;
        }
    }
    Ok(if unchanged {
        Outcome::Fine
    } else {
        Outcome::Findings
    })
}

/// The two editions, and the folder whose repository is asked for a revision.
fn asked(command: &Compare, common: &Common) -> Result<(Where, Where, PathBuf), CannotRun> {
    let old = Where::from_words(command.old.as_deref().unwrap_or(""));
    let new = match (&command.new, &common.rules) {
        (Some(new), _) => Where::from_words(new),
        (None, Some(rules)) => Where::Folder(rules.clone()),
        (None, None) => {
            return Err(CannotRun(
                "expected the new edition; name its folder, or git:REV, after the old one, or give --rules"
                    .to_owned(),
            ));
        }
    };
    for one in [&old, &new] {
        if matches!(one, Where::Revision(revision) if revision.is_empty()) {
            return Err(CannotRun(
                "expected a revision after `git:`; write for example git:HEAD".to_owned(),
            ));
        }
    }
    let rules = match (&common.rules, &new, &old) {
        (Some(rules), ..) => rules.clone(),
        (None, Where::Folder(folder), _) | (None, _, Where::Folder(folder)) => folder.clone(),
        (None, ..) => {
            return Err(CannotRun(
                "expected the rulebook's folder, to know in which repository the revisions are; give --rules DIR".to_owned(),
            ));
        }
    };
    Ok((old, new, rules))
}

/// Reads an edition; `Err` holds the outcome after its errors were printed.
fn read(
    edition: &Where,
    rules: &Path,
    format: Format,
    out: &mut dyn Write,
) -> Result<Result<Edition, Outcome>, CannotRun> {
    match compare::edition::read(edition, rules) {
        Ok(edition) => Ok(Ok(edition)),
        Err(CannotRead::Rejected(rejected)) => {
            match format {
                Format::Text => {
                    let drawn = rejected.render(true);
                    aside(format_args!(
                        "{drawn}{edition}: no rulebook is left of it that could be compared\n"
                    ));
                }
                Format::Json => words::json(out, &diagnostic::Rejected::of(&rejected))?,
            }
            Ok(Err(Outcome::CouldNotRun))
        }
        Err(error) => Err(CannotRun(format!("{edition}: {error}"))),
    }
}
