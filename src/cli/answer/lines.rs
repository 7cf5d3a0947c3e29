//! Lines of bounded length: what is longer is read past and never kept.

use std::io::{self, BufRead};

/// The longest line, in bytes, without its end.
pub const MOST_BYTES: usize = 1024 * 1024;

/// What was read.
#[derive(Debug, PartialEq)]
pub enum Read<'l> {
    /// A line that isn't empty.
    Line(&'l str),
    /// A line of more than [`MOST_BYTES`].
    TooLong,
    /// A line that is no UTF-8, with the first column that isn't.
    NoText { column: usize },
}

/// The lines of an input.
pub struct Lines<R> {
    input: R,
    line: Vec<u8>,
    number: u64,
}

impl<R: BufRead> Lines<R> {
    pub const fn of(input: R) -> Self {
        Self {
            input,
            line: Vec::new(),
            number: 0,
        }
    }

    /// The next line that isn't empty, with its number from 1; none at the end of the input.
    pub fn next(&mut self) -> io::Result<Option<(u64, Read<'_>)>> {
        let is_whole = loop {
            match self.read()? {
                None => return Ok(None),
                Some(true) if self.line.trim_ascii().is_empty() => {}
                Some(is_whole) => break is_whole,
            }
        };
        if !is_whole {
            return Ok(Some((self.number, Read::TooLong)));
        }
        let read = match core::str::from_utf8(&self.line) {
            Ok(line) => Read::Line(line),
            Err(error) => {
                let good = self.line.get(..error.valid_up_to()).unwrap_or_default();
                let column = String::from_utf8_lossy(good).chars().count() + 1;
                Read::NoText { column }
            }
        };
        Ok(Some((self.number, read)))
    }

    /// Reads a line without its end; false where it was too long to be kept.
    fn read(&mut self) -> io::Result<Option<bool>> {
        self.line.clear();
        let (mut any, mut is_whole) = (false, true);
        loop {
            let ready = match self.input.fill_buf() {
                Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
                ready => ready?,
            };
            if ready.is_empty() {
                break;
            }
            any = true;
            let end = memchr::memchr(b'\n', ready);
            let (part, used) = end.map_or((ready, ready.len()), |end| {
                (ready.get(..end).unwrap_or_default(), end + 1)
            });
            // One more than may be, for the carriage return.
            if self.line.len() + part.len() > MOST_BYTES + 1 {
                is_whole = false;
            } else if is_whole {
                self.line.extend_from_slice(part);
            }
            self.input.consume(used);
            if end.is_some() {
                break;
            }
        }
        if !any {
            return Ok(None);
        }
        self.number += 1;
        if self.line.last() == Some(&b'\r') {
            self.line.pop();
        }
        if self.number == 1 && self.line.starts_with(b"\xEF\xBB\xBF") {
            self.line.drain(..3);
        }
        Ok(Some(is_whole && self.line.len() <= MOST_BYTES))
    }
}

#[cfg(test)]
mod tests {
    use std::io::BufReader;

    use super::*;

    #[test]
    fn lines_are_told_apart_whatever_the_buffer() {
        let long = "x".repeat(MOST_BYTES);
        let text = format!("\u{FEFF}{{1}}\r\n\n \t\n{long}\n{long}\r\n{long}y\n°é\n\rlast");
        for size in [1, 7, 4096] {
            let mut lines = Lines::of(BufReader::with_capacity(size, text.as_bytes()));
            let mut seen = Vec::new();
            while let Some((number, read)) = lines.next().unwrap() {
                let told = match read {
                    Read::Line(line) => format!("{} {}", line.len(), line.chars().next().unwrap()),
                    other => format!("{other:?}"),
                };
                seen.push((number, told));
            }
            let whole = format!("{MOST_BYTES} x");
            let expected = [
                (1, "3 {"),
                (4, &whole),
                (5, &whole),
                (6, "TooLong"),
                (7, "4 °"),
                (8, "5 \r"),
            ];
            let expected = expected.map(|(number, told)| (number, told.to_owned()));
            assert_eq!(seen, expected, "{size}");
        }
        let mut lines = Lines::of(&b"a\xC2\xB0\xFFb\nc"[..]);
        assert_eq!(lines.next().unwrap(), Some((1, Read::NoText { column: 3 })));
        assert_eq!(lines.next().unwrap(), Some((2, Read::Line("c"))));
        assert_eq!(lines.next().unwrap(), None);
    }
}
