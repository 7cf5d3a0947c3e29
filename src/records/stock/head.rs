//! The first line: which column holds what.

use core::ops::Range;

use super::super::table::{Cell, Row};
use crate::compile::{
    diagnostic::Diagnostics,
    source::{FileId, Sources},
    suggest::{listed, nearest},
};

/// A column that is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Column {
    Serial,
    Size,
    Psi,
    Bar,
    Tested,
    Marks,
    Location,
}

impl Column {
    const ALL: [Self; 7] = [
        Self::Serial,
        Self::Size,
        Self::Psi,
        Self::Bar,
        Self::Tested,
        Self::Marks,
        Self::Location,
    ];

    pub const fn name(self) -> &'static str {
        match self {
            Self::Serial => "serial",
            Self::Size => "size",
            Self::Psi => "pressure_psi",
            Self::Bar => "pressure_bar",
            Self::Tested => "tested",
            Self::Marks => "marks",
            Self::Location => "location",
        }
    }
}

/// Which field of a row is in which column.
pub struct Columns {
    names: Vec<Option<Column>>,
}

impl Columns {
    pub const fn count(&self) -> usize {
        self.names.len()
    }

    pub fn cell<'r>(&self, column: Column, cells: &'r [Cell]) -> Option<&'r Cell> {
        let index = self.names.iter().position(|name| *name == Some(column))?;
        cells.get(index)
    }
}

const EXAMPLE: &str =
    "write the names of the columns first: `serial,size,pressure_psi,tested,marks,location`";

/// Reads the names of the columns.
pub fn columns(
    row: Option<Row>,
    sources: &Sources,
    file: FileId,
    broken: &[Range<usize>],
    found: &mut Diagnostics,
) -> Option<Columns> {
    let Some(row) = row else {
        found
            .error(
                "empty-list",
                sources.span(file, 0..0),
                "expected a list of cylinders, found nothing",
            )
            .hint(EXAMPLE);
        return None;
    };
    let line = sources.span(file, row.at.clone());
    let cells = match row.cells {
        Ok(cells) => cells,
        Err(open) => {
            found
                .error(
                    "open-quotation",
                    sources.span(file, open),
                    "expected a second quotation mark on this line, found none",
                )
                .hint("names of columns need no quotation marks");
            return None;
        }
    };
    if let [only] = cells.as_slice()
        && let Some(sign) = [';', '\t', '|']
            .into_iter()
            .find(|sign| only.text.contains(*sign))
    {
        let sign = if sign == '\t' {
            "tabulators".to_owned()
        } else {
            format!("`{sign}`")
        };
        found
            .error(
                "not-commas",
                line,
                format!("expected fields separated by commas, found {sign}"),
            )
            .hint(
                "save the list with a comma as separator, and numbers with a point; a field that holds a comma goes in quotation marks",
            );
        return None;
    }
    if let Some(at) = broken.iter().find(|at| at.start < row.at.end) {
        found
            .error(
                "not-utf-8",
                sources.span(file, at.clone()),
                "expected text in UTF-8, found other bytes",
            )
            .hint("save the list as \"CSV UTF-8\"");
        return None;
    }
    let mut columns = Columns { names: Vec::new() };
    let mut others: Vec<&Cell> = Vec::new();
    let mut twice = false;
    for cell in &cells {
        let column = Column::ALL
            .into_iter()
            .find(|column| cell.text.eq_ignore_ascii_case(column.name()));
        if let Some(first) =
            column.and_then(|column| columns.names.iter().position(|name| *name == Some(column)))
        {
            let error = found.error(
                "column-twice",
                sources.span(file, cell.at.clone()),
                format!("expected each column once, found `{}` again", cell.text),
            );
            if let Some(first) = cells.get(first) {
                error.label(sources.span(file, first.at.clone()), "first here");
            }
            twice = true;
        }
        if column.is_none() {
            others.push(cell);
        }
        columns.names.push(column);
    }
    let has = |column: Column| columns.names.contains(&Some(column));
    let missing: Vec<Column> = Column::ALL
        .into_iter()
        .filter(|column| match column {
            Column::Psi => !has(Column::Psi) && !has(Column::Bar),
            Column::Bar => false,
            other => !has(*other),
        })
        .collect();
    let mut mended: Vec<Column> = Vec::new();
    for cell in others {
        let at = sources.span(file, cell.at.clone());
        let name = cell.text.to_lowercase().replace([' ', '-'], "_");
        let is_pressure = name.contains("pressure") || matches!(&*name, "psi" | "bar" | "psig");
        if is_pressure && missing.contains(&Column::Psi) {
            found
                .error(
                    "column-without-unit",
                    at,
                    format!("expected `pressure_psi` or `pressure_bar`, found `{}`", cell.text),
                )
                .hint("the unit of the readings stands in the name of the column");
            mended.push(Column::Psi);
            continue;
        }
        let names = missing.iter().map(|column| column.name());
        let near = nearest(&name, names);
        match near.and_then(|near| missing.iter().find(|column| column.name() == near)) {
            Some(near) => {
                found
                    .error(
                        "unknown-column",
                        at,
                        format!("expected the name of a column, found `{}`", cell.text),
                    )
                    .hint(format!("did you mean `{}`?", near.name()));
                mended.push(*near);
            }
            None => {
                let named = if cell.text.is_empty() {
                    "a column without a name is not read".to_owned()
                } else {
                    format!("the column `{}` is not read", cell.text)
                };
                found.note("column-not-read", at, named);
            }
        }
    }
    let lacking: Vec<&str> = missing
        .iter()
        .filter(|column| !mended.contains(column))
        .map(|column| match column {
            Column::Psi => "pressure_psi",
            other => other.name(),
        })
        .collect();
    if !lacking.is_empty() {
        let error = found.error(
            "missing-column",
            line,
            format!("this list lacks {}", listed(lacking.iter().copied(), "and")),
        );
        if lacking.len() > 3 {
            error.hint(EXAMPLE);
        } else {
            error.hint("add the column to the first line; its fields may be empty where nothing is known, but for `serial` and `size`");
        }
    }
    (missing.is_empty() && !twice).then_some(columns)
}
