//! `oxyfolio cards`.

use std::io::Write;

use serde_json::json;

use super::{
    CannotRun, Outcome,
    args::{Cards, Common, Format},
    book, words,
};
use crate::book::CardSize;
use crate::cards::{self, Paper, typst::Program};

/// Prints the cards.
pub fn run(command: &Cards, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    let sizes = chosen(&command.size, &CardSize::ALL);
    let papers = chosen(&command.paper, &Paper::ALL);
    let typst = Program::find(command.typst.clone())?;
    let paths = cards::print(&book, &sizes, &papers, &typst, &command.out)?;
    match common.format {
        Format::Text => {
            words::heading(out, &book)?;
            for path in &paths {
                writeln!(out, "{}", path.display())?;
            }
            writeln!(
                out,
                "\nPrint at 100 % (\"actual size\"): the bar on each sheet is then 50 mm long."
            )?;
            words::footing(out)?;
        }
        Format::Json => {
            let files: Vec<String> = paths.iter().map(|path| path.display().to_string()).collect();
            words::json(out, &words::framed(&book, json!({ "files": files })))?;
        }
    }
    Ok(Outcome::Fine)
}

/// What was asked for, each once; everything when nothing was.
fn chosen<A: Copy + Into<T>, T: Copy + PartialEq>(asked: &[A], all: &[T]) -> Vec<T> {
    if asked.is_empty() {
        return all.to_vec();
    }
    let asked: Vec<T> = asked.iter().map(|one| (*one).into()).collect();
    all.iter().copied().filter(|one| asked.contains(one)).collect()
}
