//! `oxyfolio stock`: which cylinders are to be taken out or swapped, and how many minutes are on hand?

mod json;
mod text;

use std::{
    fs::File,
    io::{Read, Write},
    path::Path,
};

use super::{
    CannotRun, Outcome,
    answers::Frame,
    args::{Common, Format, Stock},
    book, diagnostics,
    reader::aside,
    words,
};
use crate::book::{Date, Kind, Rulebook, Value};
use crate::cards::{
    output,
    stock::{About, MOST_CYLINDERS, Sheet},
    typst::Program,
};
use crate::check::stock::{Finding, Report, Stocked, Terms};
use crate::compile::{drawn, lint};
use crate::quantity::Time;
use crate::records::stock::{self, Listed, MOST_BYTES};

/// What was asked and what was found.
struct Answered<'b> {
    book: &'b Rulebook,
    path: &'b str,
    listed: &'b Listed,
    stock: &'b [Stocked],
    report: &'b Report<'b>,
    terms: &'b Terms,
    sheet: Option<&'b Path>,
}

/// Looks at a stock.
pub fn run(command: &Stock, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    let path = if command.file.as_os_str() == "-" {
        "standard input".to_owned()
    } else {
        command.file.display().to_string()
    };
    let bytes = read(&command.file).map_err(|why| CannotRun(format!("cannot read {path}: {why}")))?;
    tell(command, &book, &path, &bytes, common.format, out)
}

/// Answers the bytes of a list; the path stands in what is said about mistakes.
pub fn tell(
    command: &Stock,
    book: &Rulebook,
    path: &str,
    bytes: &[u8],
    format: Format,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    let terms = terms(command)?;
    let listed = match stock::read(book, path, bytes) {
        Ok(listed) => listed,
        Err(rejected) => {
            let closing = format!("{path}: the list can't be read");
            return diagnostics::reject(book, &rejected, &closing, format, out);
        }
    };
    let stock: Vec<Stocked> = listed.rows.iter().map(|row| row.stocked.clone()).collect();
    let report = Report::of(book, &stock, &terms)?;
    let answered = Answered {
        book,
        path,
        listed: &listed,
        stock: &stock,
        report: &report,
        terms: &terms,
        sheet: command.sheet.as_deref(),
    };
    if let Some(sheet) = &command.sheet {
        answered.print(sheet, command)?;
    }
    match format {
        Format::Text => {
            aside(drawn(&listed.diagnostics, listed.omitted, &listed.sources, true));
            answered.text(out)?;
        }
        Format::Json => words::json(out, &Frame::of(book).round(answered.json()))?,
    }
    Ok(if listed.not_read > 0 {
        Outcome::SomeUnread
    } else if report.is_wrong() {
        Outcome::Findings
    } else {
        Outcome::Fine
    })
}

fn terms(command: &Stock) -> Result<Terms, CannotRun> {
    let today: Date = command.today.or_else(lint::today).ok_or_else(|| {
        CannotRun("the clock shows no day of the calendar; write --today YYYY-MM-DD".to_owned())
    })?;
    let due_within: Time = book::quantity("--due-within", &command.due_within)?;
    let terms = Terms::on(today).due_within(due_within);
    Ok(
        match book::maybe("--temperature", command.temperature.as_ref())? {
            Some(temperature) => terms.temperature(temperature),
            None => terms,
        },
    )
}

/// The bytes of a file or of standard input, one more than a list may have at the most.
fn read(path: &Path) -> std::io::Result<Vec<u8>> {
    let most = MOST_BYTES as u64 + 1;
    let mut bytes = Vec::new();
    if path.as_os_str() == "-" {
        std::io::stdin().lock().take(most).read_to_end(&mut bytes)?;
    } else {
        File::open(path)?.take(most).read_to_end(&mut bytes)?;
    }
    Ok(bytes)
}

impl<'b> Answered<'b> {
    /// A finding for each rule that something was found against, in the order in which they are met.
    fn rules(&self) -> Vec<&'b Finding<'b>> {
        let mut rules: Vec<&Finding<'_>> = Vec::new();
        let of_each = self.report.judged.iter().flat_map(|one| &one.findings);
        for finding in of_each.chain(&self.report.findings) {
            let is_told = rules.iter().any(|told| core::ptr::eq(told.rule, finding.rule));
            // What concerns the list alone rests on no rule of the book.
            if finding.kind != Kind::Agency && !is_told {
                rules.push(finding);
            }
        }
        rules
    }

    /// The value of the policy that a finding is about.
    fn value(&self, finding: &Finding<'_>) -> Option<Value> {
        let policy = self.book.policies.find(&finding.rule.id)?;
        (finding.kind == Kind::Policy).then_some(policy.value)
    }

    /// Prints the inspection sheet.
    fn print(&self, path: &Path, command: &Stock) -> Result<(), CannotRun> {
        if self.stock.len() > MOST_CYLINDERS {
            return Err(CannotRun(format!(
                "--sheet: expected at most {MOST_CYLINDERS} cylinders, found {}; split the list, a part for each place",
                self.stock.len()
            )));
        }
        let typst = Program::find(command.typst.clone())?;
        let about = About {
            list: self.path,
            not_read: self.listed.not_read,
            today: self.terms.today,
            paper: command.paper.into(),
        };
        let sheet = Sheet::new(self.book, self.stock, self.report, &about);
        let pdf = sheet.set(&typst, self.terms.today)?;
        output::replace(path, &pdf)
            .map_err(|error| CannotRun(format!("cannot write `{}`: {error}", path.display())))
    }
}
