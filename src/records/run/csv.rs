//! Rows of CSV (RFC 4180) into a buffer: one event a row, the rows of a run together.
//!
//! A row is a line: a text in quotes doesn't go on on the next, so that a forgotten quote can't swallow the rest of a file.

use super::{
    BadLine, Fault, Names, RunBuffer,
    buffer::{Cell, Spot, Value},
    key::{Key, Stranger, stranger},
    problem::{About, Problem},
    scan::Shape,
};

/// The head of a CSV file: what its columns are.
#[derive(Clone, Debug, PartialEq)]
pub struct Head {
    separator: u8,
    columns: Vec<Column>,
    run: usize,
    problems: Vec<Problem<'static>>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Column {
    Is(Key),
    /// It seems to be this one, and isn't read.
    Lost(Key),
    NotRead,
}

impl Head {
    /// Reads the first line of a file; nothing where it is no head of such a file.
    pub(super) fn read(text: &str, line: u64, certain: bool) -> Option<Result<Self, BadLine>> {
        let separator = separator(text);
        let mut cells = Cells::new(text, separator);
        let mut scratch = String::new();
        let (mut columns, mut problems) = (Vec::new(), Vec::new());
        let problem = |about, byte| Problem {
            about,
            event: None,
            line,
            byte,
            column: super::buffer::column(text.as_bytes(), byte),
        };
        loop {
            let (byte, name) = match cells.next(&mut scratch) {
                Ok(Some(cell)) => cell,
                Ok(None) => break,
                Err(bad) => return certain.then_some(Err(bad)),
            };
            let name = name.trim();
            let known = Key::find(&name.to_lowercase()).filter(|key| *key != Key::Events);
            columns.push(match known {
                Some(key) if columns.contains(&Column::Is(key)) => {
                    problems.push(problem(About::Twice(key), byte));
                    Column::Lost(key)
                }
                Some(key) => Column::Is(key),
                None => {
                    let (about, column) = match stranger(name) {
                        Stranger::NoUnit(key) => (About::NoUnit(key), Column::Lost(key)),
                        Stranger::Near(key) => (About::NamedOtherwise(key), Column::Lost(key)),
                        Stranger::Unknown => (About::NotRead, Column::NotRead),
                    };
                    problems.push(problem(about, byte));
                    column
                }
            });
        }
        let is_one = certain || columns.iter().any(|column| matches!(column, Column::Is(_)));
        if !is_one {
            return None;
        }
        // What stands in two columns is in neither.
        let twice = |key| columns.contains(&Column::Is(key)) && columns.contains(&Column::Lost(key));
        let doubtful: Vec<Key> = Key::COLUMNS.into_iter().filter(|key| twice(*key)).collect();
        for column in &mut columns {
            if let Column::Is(key) = *column
                && key != Key::Run
                && problems.iter().any(|problem| problem.about == About::Twice(key))
                && doubtful.contains(&key)
            {
                *column = Column::Lost(key);
            }
        }
        let run = columns.iter().position(|column| *column == Column::Is(Key::Run));
        Some(
            run.map(|run| Self {
                separator,
                columns,
                run,
                problems,
            })
            .ok_or(BadLine::new(0, Fault::Syntax("the column `run` in the head"))),
        )
    }

    /// What could not be understood in the head.
    #[must_use]
    pub fn problems(&self) -> &[Problem<'static>] {
        &self.problems
    }

    /// The run that a row belongs to; nothing where the row can't be read so far.
    pub(super) fn run_of<'t>(&self, row: &'t [u8], scratch: &'t mut String) -> Option<&'t str> {
        let text = str::from_utf8(row).ok()?;
        let mut cells = Cells::new(text, self.separator);
        for _ in 0..self.run {
            cells.next(scratch).ok()??;
        }
        cells.next(scratch).ok()?.map(|(_, text)| text.trim())
    }
}

/// The one of `,` and `;` that is there more often; a comma where neither is.
fn separator(head: &str) -> u8 {
    let count = |sign| head.bytes().filter(|byte| *byte == sign).count();
    if count(b';') > count(b',') { b';' } else { b',' }
}

/// The cells of a row, each with the byte it begins at.
struct Cells<'l> {
    text: &'l str,
    at: Option<usize>,
    separator: u8,
}

impl<'l> Cells<'l> {
    const fn new(text: &'l str, separator: u8) -> Self {
        Self {
            text,
            at: Some(0),
            separator,
        }
    }

    /// The next cell; its text is in the scratch where it has quotes in quotes.
    fn next<'t>(&mut self, scratch: &'t mut String) -> Result<Option<(usize, &'t str)>, BadLine>
    where
        'l: 't,
    {
        let Some(begin) = self.at else {
            return Ok(None);
        };
        let bytes = self.text.as_bytes();
        if bytes.get(begin) != Some(&b'"') {
            let rest = bytes.get(begin..).unwrap_or_default();
            let length = memchr::memchr(self.separator, rest);
            let end = length.map_or(bytes.len(), |length| begin + length);
            self.at = length.map(|_| end + 1);
            return Ok(Some((begin, self.text.get(begin..end).unwrap_or_default())));
        }
        let (mut at, mut from, mut whole) = (begin + 1, begin + 1, true);
        loop {
            let rest = bytes.get(at..).unwrap_or_default();
            let Some(length) = memchr::memchr(b'"', rest) else {
                return Err(BadLine::new(
                    begin,
                    Fault::Syntax("a closing quote in the same row"),
                ));
            };
            at += length + 1;
            if bytes.get(at) != Some(&b'"') {
                break;
            }
            if whole {
                scratch.clear();
                whole = false;
            }
            // With one of the two quotes.
            scratch.push_str(self.text.get(from..at).unwrap_or_default());
            at += 1;
            from = at;
        }
        let last = self.text.get(from..at - 1).unwrap_or_default();
        self.at = match bytes.get(at) {
            None => None,
            Some(byte) if *byte == self.separator => Some(at + 1),
            Some(_) => {
                return Err(BadLine::new(
                    at,
                    Fault::Syntax("a separator after the closing quote"),
                ));
            }
        };
        if whole {
            return Ok(Some((begin, last)));
        }
        scratch.push_str(last);
        Ok(Some((begin, scratch)))
    }
}

impl<'n> RunBuffer<'n> {
    /// Reads a row of the run that the buffer holds, as an event.
    pub(super) fn read_row(
        &mut self,
        row: &[u8],
        line: u64,
        head: &Head,
        names: &'n Names<'_>,
    ) -> Result<(), BadLine> {
        let text = str::from_utf8(row).map_err(|error| BadLine::new(error.valid_up_to(), Fault::NotUtf8))?;
        let mut scratch = core::mem::take(&mut self.scratch);
        let read = self.cells_of(text, line, head, names, &mut scratch);
        self.scratch = scratch;
        read
    }

    fn cells_of(
        &mut self,
        text: &str,
        line: u64,
        head: &Head,
        names: &'n Names<'_>,
        scratch: &mut String,
    ) -> Result<(), BadLine> {
        let spot = Spot { text, line, byte: 0 };
        // Looked at as a whole first: half an event is worse than none.
        let mut cells = Cells::new(text, head.separator);
        let mut found = 0;
        while cells.next(scratch)?.is_some() {
            found += 1;
        }
        let expected = head.columns.len();
        if found != expected {
            return Err(BadLine::new(0, Fault::Cells { expected, found }));
        }
        self.begin_event();
        let mut cells = Cells::new(text, head.separator);
        for column in &head.columns {
            let Some((byte, cell)) = cells.next(scratch)? else {
                break;
            };
            let cell = cell.trim();
            if cell.is_empty() {
                continue;
            }
            match *column {
                Column::Is(key) if key.is_of_run() => match self.cell(key, cell) {
                    Cell::First if key == Key::Conditions => self.condition_cell(cell, names, spot.at(byte)),
                    Cell::First => self.set(key, value(key, cell), names, spot.at(byte)),
                    Cell::Same => {}
                    Cell::Differs => self.refuse(key, About::Differs(key), spot.at(byte)),
                },
                Column::Is(key) => self.set(key, value(key, cell), names, spot.at(byte)),
                Column::Lost(key) => self.lost_cell(key),
                Column::NotRead => {}
            }
        }
        self.end_event(true, spot)
    }

    /// A row that can't be read: something happened that isn't known.
    pub(super) fn lost_row(&mut self, line: u64) {
        let spot = Spot {
            text: "",
            line,
            byte: 0,
        };
        // Beyond the most events the run is told to be too long at each row.
        let _ = self.lost_event(true, spot);
    }

    /// `none`, or conditions separated by `;`.
    fn condition_cell(&mut self, cell: &str, names: &'n Names<'_>, spot: Spot<'_>) {
        self.has_conditions = true;
        if cell == "none" {
            return;
        }
        for name in cell.split(';') {
            self.has_conditions &= self.condition(name.trim(), names, spot);
        }
    }

    /// Says what concerns the run as a whole, after its last row.
    pub(super) fn end_rows(&mut self) {
        let line = self.line(None);
        self.end(Spot {
            text: "",
            line,
            byte: 0,
        });
    }
}

/// A cell as a value: a number where one is expected and written.
fn value(key: Key, cell: &str) -> Value<'_> {
    let is_number = matches!(
        key,
        Key::Temperature | Key::PressurePsi | Key::PressureBar | Key::Flow | Key::Spo2
    );
    // `parse` also takes words such as `inf`.
    let looks_like_one = |text: &str| {
        text.bytes()
            .all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'-' | b'+' | b'e' | b'E'))
    };
    match cell.parse() {
        Ok(number) if is_number && looks_like_one(cell) => Value::Number(number, cell),
        _ if is_number => Value::Other(Shape::Text),
        _ => Value::Text(cell),
    }
}
