//! `oxyfolio plan`: is the gas on board enough for a transport?

mod chart;
mod json;
mod text;

use std::{fs::File, io::Read as _, io::Write, path::Path};

use super::{
    CannotRun, Outcome,
    answers::Frame,
    args::{Common, Format, Plan},
    book, diagnostics, words,
};
use crate::book::{Cylinder, CylinderId, CylinderUse, Rulebook};
use crate::cards::output;
use crate::check::plan::{Answer, Order, fewest_to_add};
use crate::compile::{
    Rejected,
    transport::{self, Transport},
};
use crate::quantity::{Gauge, Number, Pressure, PressureUnit};
use crate::rounding::down;

/// A plan is no longer than this, in bytes.
const MOST_BYTES: u64 = 1024 * 1024;

/// What was asked and what is the answer.
struct Answered<'b> {
    book: &'b Rulebook,
    transport: &'b Transport,
    answer: &'b Answer<'b>,
    added: &'b [Added<'b>],
}

/// How many cylinders of a size are to be added.
struct Added<'b> {
    cylinder: &'b Cylinder,
    /// None when not even the most make it enough.
    fewest: Option<usize>,
}

/// Answers a plan.
pub fn run(command: &Plan, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    let path = command.file.display().to_string();
    let text = read(&command.file).map_err(|why| CannotRun(format!("cannot read `{path}`: {why}")))?;
    tell(command, &book, &path, &text, common.format, out)
}

/// Answers the text of a plan; the path stands in what is said about mistakes.
pub fn tell(
    command: &Plan,
    book: &Rulebook,
    path: &str,
    text: &str,
    format: Format,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    let transport = match transport::read(book, path, text) {
        Ok(transport) => transport,
        Err(rejected) => return reject(book, &rejected, path, format, out),
    };
    let order: Order = command.order.into();
    let plan = &transport.plan;
    let answer = Answer::to(book, plan, order)?;
    let mut added = Vec::new();
    for size in sizes(book, &command.add)? {
        if let Some(cylinder) = book.cylinder(size) {
            added.push(Added {
                cylinder,
                fewest: fewest_to_add(book, plan, order, size)?,
            });
        }
    }
    let answered = Answered {
        book,
        transport: &transport,
        answer: &answer,
        added: &added,
    };
    if let Some(chart) = &command.chart {
        output::replace(chart, chart::svg(&answered).as_bytes())
            .map_err(|error| CannotRun(format!("cannot write `{}`: {error}", chart.display())))?;
    }
    match format {
        Format::Text => answered.text(command.chart.as_deref(), out)?,
        Format::Json => {
            let file = command.chart.as_ref().map(|chart| chart.display().to_string());
            words::json(out, &Frame::of(book).round(answered.json(file)))?;
        }
    }
    Ok(if answer.can_be_relied_on() {
        Outcome::Fine
    } else {
        Outcome::Findings
    })
}

/// The text of a file of a reasonable length.
fn read(path: &Path) -> Result<String, String> {
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(|error| error.to_string())?;
    file.take(MOST_BYTES + 1)
        .read_to_end(&mut bytes)
        .map_err(|error| error.to_string())?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err("expected at most 1 MB, found more".to_owned());
    }
    String::from_utf8(bytes).map_err(|_| "expected text in UTF-8, found other bytes".to_owned())
}

/// Tells what is wrong with the plan's file.
fn reject(
    book: &Rulebook,
    rejected: &Rejected,
    path: &str,
    format: Format,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    let count = rejected.diagnostics.len();
    let word = if count == 1 { "error" } else { "errors" };
    let closing = format!("{count} {word} in {path}: the plan can't be read");
    diagnostics::reject(book, rejected, &closing, format, out)
}

/// The sizes asked for, each once; `portable` and `vehicle` stand for all of that use.
pub fn sizes(book: &Rulebook, asked: &[String]) -> Result<Vec<CylinderId>, CannotRun> {
    let mut sizes = Vec::new();
    for name in asked {
        let wanted = [CylinderUse::Portable, CylinderUse::Vehicle]
            .into_iter()
            .find(|used| name == used.word());
        match wanted {
            Some(wanted) => {
                let all = (0..=u16::MAX).map(CylinderId).zip(&book.cylinders);
                let fits = all.filter(|(_, one)| one.used == wanted || one.used == CylinderUse::Either);
                sizes.extend(fits.map(|(id, _)| id));
            }
            None => sizes.push(book::cylinder_for("--add", book, name)?),
        }
    }
    let mut once = Vec::new();
    for size in sizes {
        if !once.contains(&size) {
            once.push(size);
        }
    }
    Ok(once)
}

impl Answered<'_> {
    fn leg(&self, leg: usize) -> &str {
        self.transport.plan.legs.get(leg).map_or("", |leg| &leg.name)
    }

    /// `2 (E)`.
    fn cylinder(&self, index: usize) -> String {
        let name = self
            .answer
            .left
            .get(index)
            .map_or("", |left| &*left.cylinder.rule.name);
        format!("{} ({name})", index + 1)
    }

    /// The cylinder that may be used to the residual pressure, when the time expected comes to it.
    fn last_is_used(&self) -> bool {
        let last = self.answer.last;
        self.answer
            .segments
            .iter()
            .any(|segment| segment.cylinder == Some(last))
    }

    /// A reading in the agency's unit, rounded down.
    fn reading(&self, pressure: Pressure<Gauge>) -> String {
        let unit = self.book.agency.pressure_unit;
        format!("{} {}", Number(rounded(pressure, unit)), unit.symbol())
    }
}

/// Rounded down to what a gauge shows: whole psi and kPa, tenths of a bar.
fn rounded(pressure: Pressure<Gauge>, unit: PressureUnit) -> f64 {
    let steps = match unit {
        PressureUnit::Psi | PressureUnit::Kpa => 1.0,
        PressureUnit::Bar => 10.0,
        PressureUnit::Mpa => 100.0,
    };
    down(pressure.as_unit(unit), steps)
}
