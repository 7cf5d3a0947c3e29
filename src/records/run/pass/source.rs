//! The files of a pass, one after the other.

use std::io::{self, Read};

use super::Slot;
use crate::records::run::{Input, input::Lines};

/// The files one after the other.
pub(super) struct Source<'s> {
    pub left: core::iter::Enumerate<core::slice::Iter<'s, Input>>,
    pub inputs: &'s [Input],
    pub now: Option<(usize, Lines<'static>)>,
    pub failed: Vec<(String, String)>,
    pub watch: Option<fn(u64)>,
}

impl Source<'_> {
    /// Fills batches; how many.
    pub fn fill_all(&mut self, slots: &mut [Slot<'_>]) -> usize {
        let mut filled = 0;
        for slot in slots {
            if !self.fill(slot) {
                break;
            }
            filled += 1;
        }
        filled
    }

    /// Fills a batch; whether there was anything left.
    pub fn fill(&mut self, slot: &mut Slot<'_>) -> bool {
        loop {
            let Some((index, lines)) = &mut self.now else {
                let Some((index, input)) = self.left.next() else {
                    return false;
                };
                let watch = self.watch;
                let is_csv = matches!(input, Input::File(path) if is_csv(path));
                match input
                    .open()
                    .and_then(|from| Lines::new(Watched { from, watch }, is_csv))
                {
                    Ok(lines) => self.now = Some((index, lines)),
                    Err(error) => self.fail(index, 1, &error),
                }
                continue;
            };
            let index = *index;
            match lines.fill(&mut slot.batch) {
                Ok(true) => {
                    slot.file = index;
                    return true;
                }
                Ok(false) => self.now = None,
                Err(error) => {
                    let line = lines.line();
                    self.now = None;
                    self.fail(index, line, &error);
                }
            }
        }
    }

    fn fail(&mut self, index: usize, line: u64, error: &io::Error) {
        let name = self.inputs.get(index).map(Input::shown).unwrap_or_default();
        let why = match error.kind() {
            io::ErrorKind::UnexpectedEof => "the packed file breaks off".to_owned(),
            _ => error.to_string(),
        };
        self.failed
            .push((name, format!("cannot be read from line {line} on: {why}")));
    }
}

/// Whether a file's name says that it is CSV, packed or not.
fn is_csv(path: &std::path::Path) -> bool {
    let name = path
        .file_name()
        .and_then(|name| name.to_str())
        .unwrap_or_default();
    let name = name.to_lowercase();
    [".csv", ".csv.gz", ".csv.zst"]
        .iter()
        .any(|end| name.ends_with(end))
}

/// Tells how much is read.
struct Watched<R> {
    from: R,
    watch: Option<fn(u64)>,
}

impl<R: Read> Read for Watched<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let read = self.from.read(buffer)?;
        if let Some(watch) = self.watch {
            watch(read as u64);
        }
        Ok(read)
    }
}
