//! Reads a list of cylinders in stock from CSV.
//!
//! ```csv
//! serial,size,pressure_psi,tested,marks,location
//! LV-1041,D,2000,2024-03,plus,Station 1
//! LV-1042,D,1900,2021-10,,"Station 1, shelf 2"
//! ```
//!
//! The first line names the columns, in any order:
//!
//! | column | field |
//! | --- | --- |
//! | `serial` | as stamped; never empty |
//! | `size` | as the book names it: id, name or other name |
//! | `pressure_psi`, `pressure_bar` | the reading, a number without its unit; one of the two columns, or both with one filled in each row; empty where nobody read it |
//! | `tested` | the month of the last test, `YYYY-MM`; empty where it can't be read |
//! | `marks` | `plus` (or `+`), `star` (or `*`, `★`), `steel` (or `3AA`), `aluminium` (or `aluminum`, `3AL`), with spaces between them; empty for none |
//! | `location` | where it is |
//!
//! Other columns are passed over, and named in a note. Fields are separated by commas; a field that holds a comma stands in
//! quotation marks. Lines end in LF or CR LF; the text is UTF-8, with or without a byte-order mark.

mod fields;
mod head;

use super::{bytes, table};
use crate::book::Rulebook;
use crate::check::stock::Stocked;
use crate::compile::{
    Rejected,
    diagnostic::{Diagnostic, Diagnostics},
    source::{FileId, Sources},
};

/// A list is no longer than this, in bytes.
pub const MOST_BYTES: usize = 16 * bytes::MEGABYTE;

/// A list has no more rows than this.
pub const MOST_ROWS: usize = 100_000;

/// A list as it was read.
#[derive(Debug)]
pub struct Listed {
    /// The rows that could be read.
    pub rows: Vec<Placed>,
    /// How many could not.
    pub not_read: usize,
    /// What is wrong with those, and notes, in the order of the list.
    pub diagnostics: Vec<Diagnostic>,
    /// How many more diagnostics there were than are kept.
    pub omitted: usize,
    /// The text they point into.
    pub sources: Sources,
}

/// A row that could be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// Its line, counted from 1.
    pub line: usize,
    /// What it says.
    pub stocked: Stocked,
}

/// Reads a list for a book. The path stands in what is said about mistakes.
///
/// A row with a mistake doesn't keep the others from being read: they are in [`Listed::rows`], the mistakes in
/// [`Listed::diagnostics`].
///
/// # Errors
///
/// [`Rejected`] when no row can be read for what is wrong with the file or its first line: it is not text, too long, empty,
/// separated by something else than commas, or lacks a column.
///
/// ```
/// use oxyfolio::{RULEBOOK, records::stock};
/// let text = "serial,size,pressure_psi,tested,marks,location\n\
///             LV-1,D,2000,2024-03,plus,Station 1\n\
///             LV-2,jumbo-c,1900,Nov 2021,,Station 1\n";
/// let listed = stock::read(&RULEBOOK, "stock.csv", text.as_bytes()).unwrap();
/// assert_eq!((listed.rows.len(), listed.not_read), (1, 1));
/// assert_eq!(listed.diagnostics[0].hints, ["did you mean `jumbo-d`?"]);
/// assert_eq!(listed.diagnostics[1].code, "not-a-month");
/// ```
pub fn read(book: &Rulebook, path: &str, bytes: &[u8]) -> Result<Listed, Box<Rejected>> {
    let decoded = bytes::decode(path, bytes, MOST_BYTES)?;
    let (sources, file) = (decoded.sources, decoded.file);
    let mut found = Diagnostics::default();
    let mut rows = Vec::new();
    let mut not_read = 0;
    let is_read = {
        let text = sources.text(file);
        let mut lines = table::rows(text);
        let columns = head::columns(lines.next(), &sources, file, &decoded.broken, &mut found);
        columns.is_some_and(|columns| {
            let mut reading = fields::Reading {
                book,
                sources: &sources,
                file,
                broken: decoded.broken.as_slice(),
                columns: &columns,
                found: &mut found,
            };
            for row in lines.filter(|row| !row.is_empty()) {
                if rows.len() + not_read == MOST_ROWS {
                    too_many(&sources, file, &row, &mut found);
                    return false;
                }
                match reading.row(&row) {
                    Some(stocked) => rows.push(Placed {
                        line: row.line,
                        stocked,
                    }),
                    None => not_read += 1,
                }
            }
            let is_empty = rows.is_empty() && not_read == 0;
            if is_empty {
                let end = sources.span(file, text.trim_end().len()..text.len());
                found
                    .error(
                        "empty-list",
                        end,
                        "expected a row for each cylinder, found none below the names of the columns",
                    )
                    .hint("write a row for each cylinder: `LV-1041,D,2000,2024-03,plus,Station 1`");
            }
            !is_empty
        })
    };
    let omitted = found.omitted();
    let diagnostics = found.into_sorted();
    if is_read {
        Ok(Listed {
            rows,
            not_read,
            diagnostics,
            omitted,
            sources,
        })
    } else {
        Err(Box::new(Rejected {
            sources,
            diagnostics,
            omitted,
            unusable: None,
        }))
    }
}

fn too_many(sources: &Sources, file: FileId, row: &table::Row, found: &mut Diagnostics) {
    found
        .error(
            "too-many",
            sources.span(file, row.at.clone()),
            format!("expected at most {MOST_ROWS} rows, found more"),
        )
        .hint("split the list, a part for each place");
}
