//! One row: from texts to a cylinder in stock.

use core::ops::Range;

use super::super::table::{Cell, Row};
use super::head::{Column, Columns};
use crate::book::{CylinderId, Rulebook};
use crate::check::stock::{Marks, Month, Stocked};
use crate::compile::{
    diagnostic::{Diagnostic, Diagnostics},
    render::is_hidden,
    source::{FileId, Sources},
    suggest::{listed, nearest},
};
use crate::oxygen;
use crate::quantity::{Gauge, Pressure, PressureUnit};

/// The longest text of a field, in characters: it must be read on a sheet.
const LONGEST: usize = 200;

/// What reading a row needs.
pub struct Reading<'a> {
    pub book: &'a Rulebook,
    pub sources: &'a Sources,
    pub file: FileId,
    /// Where bytes stood that are no UTF-8.
    pub broken: &'a [Range<usize>],
    pub columns: &'a Columns,
    pub found: &'a mut Diagnostics,
}

impl Reading<'_> {
    /// Reads a row; none when something is wrong with it, all of which was found.
    pub fn row(&mut self, row: &Row) -> Option<Stocked> {
        if let Some(at) = self.broken.iter().find(|at| row.at.contains(&at.start)) {
            self.error(
                "not-utf-8",
                at,
                "expected text in UTF-8, found other bytes".to_owned(),
            )
            .hint("save the list as \"CSV UTF-8\"");
            return None;
        }
        let cells = match &row.cells {
            Ok(cells) => cells,
            Err(open) => {
                let message = "expected a second quotation mark on this line, found none".to_owned();
                self.error("open-quotation", open, message).hint(
                    "close the quotation on the same line; a quotation mark inside one is written twice",
                );
                return None;
            }
        };
        self.count(row, cells)?;
        // Every field is looked at, so that all that is hidden is told at once.
        let hidden = cells.iter().filter(|cell| !self.is_shown(cell)).count();
        let serial = self.serial(cells);
        let size = self.size(cells);
        let pressure = self.pressure(row, cells);
        let tested = self.tested(cells);
        let marks = self.marks(cells);
        let location = self.text(Column::Location, cells);
        Some(Stocked {
            serial: serial.filter(|_| hidden == 0)?,
            size: size?,
            pressure: pressure?,
            tested: tested?,
            marks: marks?,
            location: location?,
        })
    }

    fn error(&mut self, code: &'static str, at: &Range<usize>, message: String) -> &mut Diagnostic {
        let span = self.sources.span(self.file, at.clone());
        self.found.error(code, span, message)
    }

    fn count(&mut self, row: &Row, cells: &[Cell]) -> Option<()> {
        let wanted = self.columns.count();
        if cells.len() == wanted {
            return Some(());
        }
        let fields = if cells.len() == 1 { "field" } else { "fields" };
        let message = format!("expected {wanted} fields, found {} {fields}", cells.len());
        // The first field too many, or the whole row.
        let at = cells.get(wanted).map_or(&row.at, |cell| &cell.at);
        self.error("wrong-count", at, message)
            .hint(if cells.len() > wanted {
                "put a field that holds a comma in quotation marks: `\"Station 1, shelf 2\"`"
            } else {
                "write a comma for every column, also where a field is empty"
            });
        None
    }

    fn is_shown(&mut self, cell: &Cell) -> bool {
        let raw = self.sources.text(self.file).get(cell.at.clone()).unwrap_or("");
        let Some((at, hidden)) = raw
            .char_indices()
            .find(|(_, sign)| is_hidden(*sign) || *sign == '\t')
        else {
            return true;
        };
        let at = cell.at.start + at;
        let message = format!(
            "expected text that shows as it is written, found the character U+{:04X}",
            u32::from(hidden)
        );
        self.error("hidden-character", &(at..at + hidden.len_utf8()), message)
            .hint("delete the character: it can't be seen, and may show the text around it in another order");
        false
    }

    fn text(&mut self, column: Column, cells: &[Cell]) -> Option<String> {
        let cell = self.columns.cell(column, cells)?;
        let length = cell.text.chars().count();
        if length <= LONGEST {
            return Some(cell.text.clone());
        }
        let message = format!(
            "expected a {} of at most {LONGEST} characters, found {length}",
            column.name()
        );
        self.error("too-long", &cell.at, message)
            .hint("shorten it: it must be read on a sheet");
        None
    }

    fn serial(&mut self, cells: &[Cell]) -> Option<String> {
        let serial = self.text(Column::Serial, cells)?;
        if serial.is_empty()
            && let Some(cell) = self.columns.cell(Column::Serial, cells)
        {
            self.error("no-serial", &cell.at, "expected a serial, found nothing".to_owned())
                .hint("write what is stamped on the cylinder; where nothing can be read, a name of your own that is on its tag");
            return None;
        }
        Some(serial)
    }

    fn size(&mut self, cells: &[Cell]) -> Option<CylinderId> {
        let book = self.book;
        let cell = self.columns.cell(Column::Size, cells)?;
        let name = &cell.text;
        let same = |known: &str| known.eq_ignore_ascii_case(name);
        let sizes = || book.cylinders.iter();
        let index = sizes()
            .position(|one| same(&one.rule.id))
            .or_else(|| sizes().position(|one| same(&one.rule.name)))
            .or_else(|| sizes().position(|one| one.also.iter().any(|other| same(other))));
        if let Some(index) = index {
            return u16::try_from(index).ok().map(CylinderId);
        }
        let ids = || sizes().map(|one| &*one.rule.id);
        let found = if name.is_empty() {
            "nothing".to_owned()
        } else {
            format!("`{name}`")
        };
        let error = self.error(
            "unknown-size",
            &cell.at,
            format!("expected a size of the rulebook, found {found}"),
        );
        match nearest(name, ids()) {
            Some(near) => error.hint(format!("did you mean `{near}`?")),
            None => error.hint(format!("the rulebook has {}", listed(ids(), "and"))),
        };
        None
    }

    /// The reading: some of none where none was taken.
    fn pressure(&mut self, row: &Row, cells: &[Cell]) -> Option<Option<Pressure<Gauge>>> {
        let both = [(Column::Psi, PressureUnit::Psi), (Column::Bar, PressureUnit::Bar)];
        let mut filled = both.into_iter().filter_map(|(column, unit)| {
            let cell = self.columns.cell(column, cells)?;
            (!cell.text.is_empty()).then_some((cell, unit))
        });
        let Some((cell, unit)) = filled.next() else {
            return Some(None);
        };
        if filled.next().is_some() {
            let message = "expected a reading in psi or in bar, found both".to_owned();
            self.error("two-readings", &row.at, message)
                .hint("keep the one that the gauge shows, and leave the other field empty");
            return None;
        }
        self.reading(cell, unit).map(Some)
    }

    fn reading(&mut self, cell: &Cell, unit: PressureUnit) -> Option<Pressure<Gauge>> {
        let text = cell.text.as_str();
        let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
        let (whole, part) = text.split_once('.').unwrap_or((text, "0"));
        if !(digits(whole) && digits(part)) {
            let bare = text
                .to_lowercase()
                .trim_end_matches(unit.symbol())
                .trim()
                .to_owned();
            let hint = if digits(&bare) {
                format!("write `{bare}`: the unit stands in the name of the column")
            } else if text.contains(',') {
                "write a decimal point, and nothing between thousands: `1500` or `103.5`".to_owned()
            } else {
                format!(
                    "write the reading in {} as a number: `{}`",
                    unit.symbol(),
                    match unit {
                        PressureUnit::Psi => "1500",
                        _ => "103.5",
                    }
                )
            };
            self.error(
                "not-a-number",
                &cell.at,
                format!("expected a number, found `{text}`"),
            )
            .hint(hint);
            return None;
        }
        let value = text.parse::<f64>().unwrap_or(f64::INFINITY);
        let read = Pressure::in_unit(value, unit)
            .and_then(|pressure| oxygen::GAUGE_PRESSURE.accept(pressure.as_bar()).map(|_| pressure));
        match read {
            Ok(pressure) => Some(pressure),
            Err(missed) => {
                let hint = match unit {
                    PressureUnit::Bar => "is the reading in psi? then it belongs in a column `pressure_psi`",
                    _ => missed.bounds.reason,
                };
                self.error("out-of-bounds", &cell.at, missed.to_string())
                    .hint(hint);
                None
            }
        }
    }

    /// The month of the test: some of none where it is not known.
    fn tested(&mut self, cells: &[Cell]) -> Option<Option<Month>> {
        let cell = self.columns.cell(Column::Tested, cells)?;
        let text = &cell.text;
        if text.is_empty() {
            return Some(None);
        }
        if let Ok(month) = text.parse::<Month>() {
            return Some(Some(month));
        }
        let message = format!("expected a month as YYYY-MM, found `{text}`");
        let hint = match meant(text) {
            Some(month) => format!("write `{month}`"),
            None => "write year and month with a hyphen: `2021-11`".to_owned(),
        };
        self.error("not-a-month", &cell.at, message).hint(hint).hint(
            "make the column text before typing into it, or a spreadsheet writes the month its own way again",
        );
        None
    }

    fn marks(&mut self, cells: &[Cell]) -> Option<Marks> {
        const KNOWN: [&str; 4] = ["plus", "star", "steel", "aluminium"];
        let cell = self.columns.cell(Column::Marks, cells)?;
        let mut marks = Marks::default();
        let (mut is_read, mut steel) = (true, false);
        for word in cell
            .text
            .split([' ', ',', ';', '/'])
            .filter(|word| !word.is_empty())
        {
            match &*word.to_lowercase() {
                "plus" | "+" => marks.plus = true,
                "star" | "*" | "★" => marks.star = true,
                "+*" | "*+" | "+★" | "★+" => (marks.plus, marks.star) = (true, true),
                "steel" | "3aa" => steel = true,
                "aluminium" | "aluminum" | "3al" => marks.aluminium = true,
                other => {
                    let near = nearest(other, KNOWN);
                    let error = self.error(
                        "unknown-mark",
                        &cell.at,
                        format!("expected a mark, found `{word}`"),
                    );
                    match near {
                        Some(near) => error.hint(format!("did you mean `{near}`?")),
                        None => error.hint(format!(
                            "the marks are {}, with spaces between them",
                            listed(KNOWN, "and")
                        )),
                    };
                    is_read = false;
                }
            }
        }
        if steel && marks.aluminium {
            self.error(
                "two-metals",
                &cell.at,
                "expected steel or aluminium, found both".to_owned(),
            )
            .hint("read the stamp: 3AA is steel, 3AL is aluminium");
            is_read = false;
        }
        is_read.then_some(marks)
    }
}

/// The month that was meant, where it is written in a way that can't mean another.
fn meant(text: &str) -> Option<Month> {
    const NAMES: [&str; 12] = [
        "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec",
    ];
    let text = text.to_lowercase();
    let parts: Vec<&str> = text
        .split(|sign: char| !sign.is_ascii_alphanumeric())
        .filter(|part| !part.is_empty())
        .collect();
    let year = |part: &str| part.parse::<u16>().ok().filter(|_| part.len() == 4);
    let month = |part: &str| -> Option<u8> {
        let named = part
            .get(..3)
            .and_then(|start| NAMES.iter().position(|name| *name == start))
            .and_then(|index| u8::try_from(index + 1).ok());
        named.or_else(|| part.parse().ok().filter(|_| part.len() <= 2))
    };
    let (year, month) = match parts.as_slice() {
        [first, second] => match (year(first), year(second)) {
            (Some(year), None) => (year, month(second)?),
            (None, Some(year)) => (year, month(first)?),
            _ => return None,
        },
        // A whole date with the year first; with the year last, day and month can be mistaken for each other.
        [first, second, day] if day.len() <= 2 && day.parse::<u8>().is_ok() => (year(first)?, month(second)?),
        [only] if only.len() == 6 => (year(only.get(..4)?)?, only.get(4..)?.parse().ok()?),
        _ => return None,
    };
    Month::new(year, month).ok()
}
