//! The inspection sheet of a stock: what is printed on it, every string ready to print. What is wrong with which cylinder
//! comes from the checker.

use serde::Serialize;

use super::{
    CardsError,
    format::{self, Format},
    glyphs, identity, typst,
};
use crate::book::{ALWAYS_CAUTIONS, Date, Kind, OfficePaper, Rulebook};
use crate::check::stock::{Finding, Judged, Reason, Report, Stocked};

/// A sheet holds no more cylinders: a longer one is no sheet, and would take the typesetting program too long.
pub const MOST_CYLINDERS: usize = 2_000;

/// The templates, by file name.
const TEMPLATES: &[(&str, &str)] = &[
    ("main.typ", include_str!("../../cards/stock-main.typ")),
    ("stock.typ", include_str!("../../cards/stock.typ")),
    ("style.typ", include_str!("../../cards/style.typ")),
    ("words.typ", include_str!("../../cards/words.typ")),
];

/// What is looked at on every cylinder, a box to tick for each.
const LOOKS: [&str; 5] = ["Label", "Valve", "Outlet, washer", "Gauge", "Leak"];

/// The data of one document.
#[derive(Clone, Debug, Serialize)]
pub struct Sheet {
    /// The agency's name.
    pub agency: String,
    /// Edition, date of effect and digest of the book, in a line.
    pub edition: String,
    /// The book's digest.
    pub digest: String,
    /// The day of the sheet, `YYYY-MM-DD`.
    pub today: String,
    /// What the sheet is made from and how much is on it.
    pub summary: String,
    /// What must be known before the sheet is used: rows that could not be read, the temperature of the readings.
    pub notes: Vec<String>,
    /// What is looked at on every cylinder.
    pub looks: Vec<&'static str>,
    /// The cylinders by location.
    pub places: Vec<Place>,
    /// What to swap, in that order.
    pub swap: Vec<Swap>,
    /// What stands in place of the list where nothing is to be swapped.
    pub nothing: String,
    /// The rules behind it, in the book's words.
    pub rules: Vec<Ruled>,
    /// The disclaimers of every page, then the agency's own.
    pub disclaimers: Vec<String>,
    /// The cautions of every page.
    pub cautions: Vec<String>,
    /// The paper.
    pub paper: Format,
}

/// The cylinders of a location.
#[derive(Clone, Debug, Serialize)]
pub struct Place {
    /// The location.
    pub name: String,
    /// How many, and how many of them are fit for service.
    pub summary: String,
    /// A line for each.
    pub lines: Vec<Line>,
}

/// One cylinder.
#[derive(Clone, Debug, Serialize)]
pub struct Line {
    /// The serial.
    pub serial: String,
    /// The size's name, with its marks.
    pub size: String,
    /// The reading.
    pub reading: String,
    /// The month of the last test.
    pub tested: String,
    /// The month in which the next is due.
    pub due: String,
    /// What is to be done, in capitals; empty where nothing is.
    pub state: &'static str,
    /// How the line is marked beside its words: `out`, `check`, `swap`, `due`, or empty.
    pub mark: &'static str,
    /// Why.
    pub remarks: String,
}

/// A cylinder to be swapped.
#[derive(Clone, Debug, Serialize)]
pub struct Swap {
    /// Its serial.
    pub serial: String,
    /// Its size's name.
    pub size: String,
    /// Where it is.
    pub location: String,
    /// What is to be done, in capitals.
    pub state: &'static str,
    /// How it is marked beside its words.
    pub mark: &'static str,
    /// Why.
    pub remarks: String,
}

/// A rule that a reason rests on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Ruled {
    /// The rule's name.
    pub rule: String,
    /// The policy's value; empty for a rule of another kind.
    pub value: String,
    /// What the book notes about it; empty where it notes nothing.
    pub note: String,
    /// Chapter, heading, file and line.
    pub place: String,
}

/// What is known about a sheet beside the report.
#[derive(Clone, Copy, Debug)]
pub struct About<'a> {
    /// Where the list was read from.
    pub list: &'a str,
    /// How many of its rows could not be read.
    pub not_read: usize,
    /// The day.
    pub today: Date,
    /// The paper.
    pub paper: OfficePaper,
}

impl Sheet {
    /// The sheet of a stock and what was found about it.
    #[must_use]
    pub fn new(book: &Rulebook, stock: &[Stocked], report: &Report<'_>, about: &About<'_>) -> Self {
        let agency = &book.agency;
        let rows = || stock.iter().zip(&report.judged);
        let places = report.locations.iter().map(|here| Place {
            name: named(&here.location),
            summary: format!(
                "{} · {} fit for service",
                counted(here.counted + here.not_counted, "cylinder"),
                here.counted
            ),
            lines: rows()
                .filter(|(one, _)| one.location == here.location)
                .map(|(one, judged)| line(one, judged))
                .collect(),
        });
        let swap = report.swap.iter().filter_map(|index| {
            let (one, judged) = (stock.get(*index)?, report.judged.get(*index)?);
            let (state, mark) = state(judged.first());
            Some(Swap {
                serial: one.serial.clone(),
                size: judged.cylinder.rule.name.to_string(),
                location: named(&one.location),
                state,
                mark,
                remarks: judged.words(),
            })
        });
        Self {
            agency: agency.rule.name.to_string(),
            edition: format!(
                "edition {} · effective {} · book {}",
                agency.edition, agency.effective, book.short_digest
            ),
            digest: book.short_digest.to_string(),
            today: about.today.to_string(),
            summary: format!(
                "From the list {}: {}, {} fit for service, {} to swap or clear up.",
                about.list,
                counted(stock.len(), "cylinder"),
                report.all.counted,
                report.swap.len()
            ),
            notes: notes(report, about.not_read),
            looks: LOOKS.to_vec(),
            places: places.collect(),
            swap: swap.collect(),
            nothing: if about.not_read > 0 {
                "Nothing among the rows that could be read.".to_owned()
            } else {
                "Nothing: every cylinder of the list is fit for service, and no test is due.".to_owned()
            },
            rules: rules(book, report),
            disclaimers: identity::disclaimers(book),
            cautions: ALWAYS_CAUTIONS.map(str::to_owned).to_vec(),
            paper: format::of_office_paper(about.paper),
        }
    }

    /// Sets the sheet and gives the PDF.
    ///
    /// # Errors
    ///
    /// [`CardsError`] when the font lacks a sign, or the typesetting program refuses, takes too long or can't be run.
    pub fn set(&self, typst: &typst::Program, today: Date) -> Result<Vec<u8>, CardsError> {
        glyphs::check(self)?;
        typst
            .set_document(TEMPLATES, self, today)
            .map_err(CardsError::Typst)
    }
}

fn notes(report: &Report<'_>, not_read: usize) -> Vec<String> {
    let mut notes = Vec::new();
    if not_read > 0 {
        let were = if not_read == 1 { "row" } else { "rows" };
        notes.push(format!(
            "{not_read} {were} of the list could not be read and are NOT on this sheet. Look for cylinders that are missing here."
        ));
    }
    let assumed = if report.temperature_assumed {
        "taken as read at"
    } else {
        "read at"
    };
    notes.push(format!(
        "Readings are {assumed} {}. Sizes: {}; read what is stamped.",
        report.temperature,
        report.series().join(", ")
    ));
    notes
}

fn counted(count: usize, what: &str) -> String {
    let s = if count == 1 { "" } else { "s" };
    format!("{count} {what}{s}")
}

fn named(location: &str) -> String {
    if location.is_empty() {
        "Location not given".to_owned()
    } else {
        location.to_owned()
    }
}

fn line(one: &Stocked, judged: &Judged<'_>) -> Line {
    let or_unknown = |text: Option<String>| text.unwrap_or_else(|| "not given".to_owned());
    let (state, mark) = state(judged.first());
    let mut size = judged.cylinder.rule.name.to_string();
    for (is_marked, word) in [
        (one.marks.plus, "plus"),
        (one.marks.star, "star"),
        (one.marks.aluminium, "aluminium"),
    ] {
        if is_marked {
            size += ", ";
            size += word;
        }
    }
    Line {
        serial: one.serial.clone(),
        size,
        reading: or_unknown(one.pressure.map(|pressure| pressure.to_string())),
        tested: or_unknown(one.tested.map(|month| month.to_string())),
        due: judged
            .due
            .map_or("not known".to_owned(), |month| month.to_string()),
        state,
        mark,
        remarks: judged.words(),
    }
}

/// What is to be done, and the pattern that says it a second time.
const fn state(first: Option<Reason>) -> (&'static str, &'static str) {
    match first {
        None => ("", ""),
        Some(Reason::Unsafe | Reason::PastTest | Reason::BelowResidual) => ("TAKE OUT", "out"),
        Some(Reason::TestUnknown | Reason::ReadingUnknown | Reason::ListedTwice) => ("CLEAR UP", "check"),
        Some(Reason::ChangeOver | Reason::BelowInServiceMinimum) => ("SWAP", "swap"),
        Some(Reason::TestDue) => ("TEST DUE", "due"),
    }
}

/// The rules that findings rest on, each once, in the order in which they are met.
fn rules(book: &Rulebook, report: &Report<'_>) -> Vec<Ruled> {
    let mut rules: Vec<Ruled> = Vec::new();
    let of_each = report.judged.iter().flat_map(|one| &one.findings);
    for finding in of_each.chain(&report.findings) {
        // What concerns the list alone rests on no rule of the book.
        if finding.kind == Kind::Agency {
            continue;
        }
        let ruled = Ruled {
            rule: finding.rule.name.to_string(),
            value: value(book, finding),
            note: finding.note.unwrap_or("").to_owned(),
            place: finding.rule.place.to_string(),
        };
        if !rules.contains(&ruled) {
            rules.push(ruled);
        }
    }
    rules
}

fn value(book: &Rulebook, finding: &Finding<'_>) -> String {
    match finding.kind {
        Kind::Policy => book
            .policies
            .find(&finding.rule.id)
            .map_or(String::new(), |policy| policy.value.to_string()),
        _ => String::new(),
    }
}
