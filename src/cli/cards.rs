//! `oxyfolio cards`.

use std::{io::Write, time::Duration};

use super::{
    CannotRun, Outcome,
    answers::{
        Frame,
        cards::{Cards, Matched, Printed},
        parts::Book,
    },
    args::{self, Common, Format},
    book, words,
};
use crate::book::Rulebook;
use crate::cards::{self, Form, Paper, Part, Wanted, code::Code, typst::Program};
use crate::compile::folder;

/// Prints the cards, or says which edition a card is of.
pub fn run(command: &args::Cards, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    if let Some(code) = &command.matches {
        return matches(code, command, common, &book, out);
    }
    let form = command.form().map_err(|wrong| CannotRun(wrong.to_owned()))?;
    let wanted = wanted(command, form);
    let typst = Program::find_within(command.typst.clone(), Duration::from_secs(command.time_limit))?;
    let paths = cards::print(&book, &wanted, &typst, &command.out)?;
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
            words::json(out, &Frame::of(&book).round(Cards::Printed(Printed { files })))?;
        }
    }
    Ok(Outcome::Fine)
}

/// What was asked for, each once and in the order of the set; everything when nothing was.
fn wanted(command: &args::Cards, form: Form) -> Wanted {
    let parts = match (command.only.is_empty(), command.size.is_empty()) {
        (true, true) => Part::ALL.to_vec(),
        (true, false) => vec![Part::Cards],
        _ => Part::ALL
            .into_iter()
            .filter(|part| command.only.iter().any(|only| Part::from(*only) == *part))
            .collect(),
    };
    let papers = [Paper::A4, Paper::Letter, Paper::Alone]
        .into_iter()
        .filter(|paper| command.paper.iter().any(|asked| Paper::from(*asked) == *paper))
        .collect();
    let sizes = cards::SIZES
        .into_iter()
        .filter(|size| {
            command
                .size
                .iter()
                .any(|asked| crate::book::CardSize::from(*asked) == *size)
        })
        .collect();
    Wanted {
        parts,
        sizes,
        papers,
        backs: command.backs.into(),
        shift: command.back_shift,
        form,
    }
}

/// Says whether a card belongs to the rulebook, and if not, to which of the older ones.
fn matches(
    code: &Code,
    command: &args::Cards,
    common: &Common,
    book: &Rulebook,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    let belongs = code.belongs_to(book);
    let mut of_older = None;
    for rules in &command.older {
        let older = match folder::load(rules) {
            Ok(compiled) => compiled.book,
            Err(rejected) => {
                book::print_rejected(&rejected, rules, common.format, out)?;
                return Ok(Outcome::CouldNotRun);
            }
        };
        if code.belongs_to(&older) {
            of_older = Some((rules, older));
            break;
        }
    }
    match common.format {
        Format::Text => {
            words::heading(out, book)?;
            match &of_older {
                _ if belongs => writeln!(out, "{code} belongs to this rulebook: the card may be used.")?,
                Some((rules, older)) => {
                    let agency = &older.agency;
                    writeln!(
                        out,
                        "{code} does not belong to this rulebook: throw the card away.\n\
                         It is of edition {}, effective {}, of {} ({}).",
                        agency.edition,
                        agency.effective,
                        agency.rule.name,
                        rules.display()
                    )?;
                }
                None => {
                    writeln!(
                        out,
                        "{code} does not belong to this rulebook: throw the card away."
                    )?;
                    if command.older.is_empty() {
                        writeln!(
                            out,
                            "Which edition it is of: give the older rulebook's folder with --older."
                        )?;
                    } else {
                        writeln!(
                            out,
                            "It is of none of the older rulebooks either: read the code again."
                        )?;
                    }
                }
            }
            words::footing(out)?;
        }
        Format::Json => {
            let of = of_older
                .as_ref()
                .filter(|_| !belongs)
                .map(|(_, older)| Book::of(older));
            let answer = Cards::Matched(Matched {
                code: code.to_string(),
                belongs,
                belongs_to_older: of,
            });
            words::json(out, &Frame::of(book).round(answer))?;
        }
    }
    Ok(if belongs { Outcome::Fine } else { Outcome::Findings })
}
