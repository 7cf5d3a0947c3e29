//! The one-page summary of a review: counts, and bars with their numbers written on them.

use std::path::Path;

use serde::Serialize;

use super::{CardsError, glyphs, identity::Frame, output, typst};
use crate::book::{Kind, OfficePaper, Rulebook};
use crate::check::Level;
use crate::compile::suggest::counted;
use crate::records::run::{GroupSum, Row, Tally};

/// The most bars by rule.
const MOST_RULES: usize = 12;
/// The most bars by month: a year and a half.
const MOST_MONTHS: usize = 18;
/// The most lines of what could not be checked.
const MOST_UNKNOWN: usize = 8;

const TEMPLATES: &[(&str, &str)] = &[
    ("main.typ", include_str!("../../cards/review.typ")),
    ("style.typ", include_str!("../../cards/style.typ")),
    ("words.typ", include_str!("../../cards/words.typ")),
];

/// What stands on the page, ready to print.
#[derive(Clone, Debug, Serialize)]
pub struct Page {
    #[serde(flatten)]
    frame: Frame,
    /// From the earliest time to the latest; empty where no time was written.
    span: String,
    counts: Vec<Count>,
    rules: Vec<Bar>,
    months: Vec<Bar>,
    unknown: Vec<Bar>,
    /// What the page doesn't show.
    notes: Vec<String>,
}

#[derive(Clone, Debug, Serialize)]
struct Count {
    what: &'static str,
    number: String,
}

/// A bar, and what is written on it.
#[derive(Clone, Debug, Serialize)]
struct Bar {
    label: String,
    /// What kind of finding; empty where the label says all.
    mark: &'static str,
    number: String,
    /// Its length, 0 to 1.
    share: f64,
}

impl Page {
    /// The page of a review.
    #[must_use]
    pub fn new(book: &Rulebook, tally: &Tally<'_>, files: usize, paper: OfficePaper) -> Self {
        let rows = tally.by_rule();
        let (unknown, found): (Vec<_>, Vec<_>) =
            rows.into_iter().partition(|row| row.level == Level::Unknown);
        let mut notes = Vec::new();
        let found = most_frequent(found, MOST_RULES, ["rule", "rules"], &mut notes);
        let unknown = most_frequent(
            unknown,
            MOST_UNKNOWN,
            ["thing not checked", "things not checked"],
            &mut notes,
        );
        let months = months(tally, &mut notes);
        if tally.bad_lines > 0 {
            notes.push(format!(
                "{} could not be read, and nothing is known of {}.",
                counted(tally.bad_lines, "line", "lines"),
                if tally.bad_lines == 1 { "it" } else { "them" }
            ));
        }
        if !tally.failed.is_empty() {
            notes.push(format!(
                "{} could not be read to {} end.",
                counted(tally.failed.len(), "file", "files"),
                if tally.failed.len() == 1 { "its" } else { "their" }
            ));
        }
        let count = |what, number: u64| Count {
            what,
            number: number.to_string(),
        };
        Self {
            frame: Frame::of(book, paper),
            span: match (tally.first, tally.last) {
                (Some(first), Some(last)) => format!("{first} to {last}"),
                _ => String::new(),
            },
            counts: vec![
                count("files", files as u64),
                count("runs", tally.runs),
                count("runs with something wrong or not checked", tally.runs_wrong),
                count("events", tally.events),
                count("stops", tally.levels.stop),
                count("warnings", tally.levels.warn),
                count("not checked", tally.levels.unknown),
                count("notes", tally.levels.note),
                count("lines not read", tally.bad_lines),
            ],
            rules: bars(&found),
            months,
            unknown: bars(&unknown),
            notes,
        }
    }
}

/// The most frequent rows, in the order of their counts, and a note of the others.
fn most_frequent<'r, 'b>(
    mut rows: Vec<&'r Row<'b>>,
    most: usize,
    [one, more]: [&str; 2],
    notes: &mut Vec<String>,
) -> Vec<&'r Row<'b>> {
    // Stable: the gravest first among those as frequent.
    rows.sort_by_key(|row| core::cmp::Reverse(row.findings));
    if rows.len() > most {
        let left = rows.len() - most;
        notes.push(if left == 1 {
            format!("1 more {one} is not shown.")
        } else {
            format!("{left} more {more} are not shown.")
        });
        rows.truncate(most);
    }
    rows
}

fn share(number: u64, most: u64) -> f64 {
    number as f64 / most.max(1) as f64
}

fn bars(rows: &[&Row<'_>]) -> Vec<Bar> {
    let most = rows.iter().map(|row| row.findings).max().unwrap_or(0);
    let bar = |row: &&Row<'_>| Bar {
        label: match row.code {
            "hazard" => row.rule.name.to_string(),
            code if row.kind == Kind::Agency => format!("Records: {}", code.replace('-', " ")),
            code => format!("{}: {}", row.rule.name, code.replace('-', " ")),
        },
        mark: match row.level {
            Level::Stop => "STOP",
            Level::Warn => "WARN",
            Level::Note => "NOTE",
            Level::Unknown => "",
        },
        number: format!("{} in {} {}", row.findings, row.runs, runs(row.runs)),
        share: share(row.findings, most),
    };
    rows.iter().map(bar).collect()
}

const fn runs(number: u64) -> &'static str {
    if number == 1 { "run" } else { "runs" }
}

fn months(tally: &Tally<'_>, notes: &mut Vec<String>) -> Vec<Bar> {
    let all: Vec<(String, GroupSum)> = tally
        .months
        .known
        .iter()
        .map(|(month, sum)| {
            let label = match month {
                Some((year, month)) => format!("{year:04}-{month:02}"),
                None => "no time".to_owned(),
            };
            (label, *sum)
        })
        .collect();
    let left = all.len().saturating_sub(MOST_MONTHS);
    if left > 0 {
        notes.push(if left == 1 {
            "The first month is not shown.".to_owned()
        } else {
            format!("The first {left} months are not shown.")
        });
    }
    let shown = all.get(left..).unwrap_or_default();
    let most = shown.iter().map(|(_, sum)| sum.levels.wrong()).max().unwrap_or(0);
    let bar = |(label, sum): &(String, GroupSum)| Bar {
        label: label.clone(),
        mark: "",
        number: format!("{} in {} {}", sum.levels.wrong(), sum.runs, runs(sum.runs)),
        share: share(sum.levels.wrong(), most),
    };
    shown.iter().map(bar).collect()
}

/// Sets the page and writes it: whole or not at all.
///
/// # Errors
///
/// [`CardsError`] when it can't be set or written; a file that was there before is then as it was.
pub fn print(page: &Page, book: &Rulebook, typst: &typst::Program, path: &Path) -> Result<(), CardsError> {
    glyphs::check(page)?;
    let pdf = typst
        .set_document(TEMPLATES, page, book.agency.effective)
        .map_err(CardsError::Typst)?;
    let folder = match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    let Some(name) = path.file_name() else {
        let error = std::io::Error::from(std::io::ErrorKind::IsADirectory);
        let path = path.to_owned();
        return Err(CardsError::Output { path, error });
    };
    output::replace_all(folder, &[(name, pdf)]).map(drop)
}
