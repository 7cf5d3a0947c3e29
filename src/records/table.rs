//! Lines of fields separated by commas (RFC 4180), each field with its place.
//!
//! A record is one line: a line break inside a quoted field is refused, because in these lists it is nearly always a
//! forgotten quotation mark, which would swallow the rows that follow. So one such slip costs one row.

use core::ops::Range;

use csv_core::{ReadFieldResult, Reader};

/// A field of a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cell {
    /// Its text, without quotation marks and without spaces around it.
    pub text: String,
    /// Where it stands in the whole text, with its quotation marks; empty for an empty field.
    pub at: Range<usize>,
}

/// A line with its fields.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Counted from 1.
    pub line: usize,
    /// Where it stands, without its end.
    pub at: Range<usize>,
    /// Its fields; or where a quotation mark stands that is never closed on this line.
    pub cells: Result<Vec<Cell>, Range<usize>>,
}

impl Row {
    /// Whether every field is empty, as in the rows that spreadsheets leave at the end.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.cells
            .as_ref()
            .is_ok_and(|cells| cells.iter().all(|cell| cell.text.is_empty()))
    }
}

/// The rows of a text whose lines end in LF or CR LF; lines with nothing on them are passed over.
///
/// ```
/// use oxyfolio::records::table::rows;
/// let text = "serial,location\nLV-1,\"Bay 2, shelf 1\"\n\n";
/// let rows: Vec<_> = rows(text).collect();
/// assert_eq!(rows.len(), 2);
/// let cells = rows[1].cells.as_ref().unwrap();
/// assert_eq!((rows[1].line, &*cells[1].text), (2, "Bay 2, shelf 1"));
/// assert_eq!(&text[cells[1].at.clone()], "\"Bay 2, shelf 1\"");
/// ```
pub fn rows(text: &str) -> impl Iterator<Item = Row> {
    let mut reader = Reader::new();
    let mut scratch = Vec::new();
    let mut start = 0;
    text.split_inclusive('\n')
        .enumerate()
        .filter_map(move |(index, line)| {
            let from = start;
            start += line.len();
            let line = line.strip_suffix('\n').unwrap_or(line);
            let line = line.strip_suffix('\r').unwrap_or(line);
            if line.trim().is_empty() {
                return None;
            }
            reader.reset();
            Some(Row {
                line: index + 1,
                at: from..from + line.len(),
                cells: cells(&mut reader, line, from, &mut scratch),
            })
        })
}

fn cells(
    reader: &mut Reader,
    line: &str,
    from: usize,
    scratch: &mut Vec<u8>,
) -> Result<Vec<Cell>, Range<usize>> {
    scratch.resize(line.len() + 8, 0);
    let mut cells = Vec::new();
    let (mut at, mut begun, mut written) = (0, 0, 0);
    loop {
        let rest = line.as_bytes().get(at..).unwrap_or(&[]);
        // The end of the line is given apart: what is still open after it, is a quotation.
        let is_end = rest.is_empty();
        let input = if is_end { b"\n" } else { rest };
        let output = scratch.get_mut(written..).unwrap_or(&mut []);
        let (result, read, wrote) = reader.read_field(input, output);
        written += wrote;
        match result {
            ReadFieldResult::Field { record_end } => {
                let end = if is_end { at } else { at + read };
                let raw = begun..if record_end { end } else { end.saturating_sub(1) };
                let value = scratch.get(..written).unwrap_or(&[]);
                cells.push(Cell {
                    text: String::from_utf8_lossy(value).trim().to_owned(),
                    at: trimmed(line, raw, from),
                });
                if record_end {
                    return Ok(cells);
                }
                (at, begun, written) = (end, end, 0);
            }
            ReadFieldResult::InputEmpty if !is_end => at += read,
            // Still inside a quotation after the end of the line; the other answers don't come with room to write.
            _ => {
                let open = line.get(begun..).and_then(|rest| rest.find('"')).unwrap_or(0);
                let open = from + begun + open;
                return Err(open..open + 1);
            }
        }
    }
}

/// A field's place without the spaces around it.
fn trimmed(line: &str, raw: Range<usize>, from: usize) -> Range<usize> {
    let text = line.get(raw.clone()).unwrap_or("");
    let start = raw.start + (text.len() - text.trim_start().len());
    let end = start + text.trim().len();
    from + start..from + end
}
