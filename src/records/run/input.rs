//! Cuts files into batches of whole lines, and whole runs where a run has many lines. Never holds a whole file.

use std::{
    fs::File,
    io::{self, Read},
    path::{Path, PathBuf},
    sync::Arc,
};

use super::{BadLine, Fault, MAX_LINE, csv::Head, unpack::unpacked};

/// About how much is read into a batch. Batches don't depend on the number of threads.
const BATCH: usize = 64 << 10;
/// Most lines of a batch: short lines, each with findings, make much of little.
const MOST_LINES: usize = 1024;

/// Where records come from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Input {
    /// Standard input.
    Standard,
    /// A file.
    File(PathBuf),
}

impl Input {
    /// From what stands on a command line: `-` is standard input.
    #[must_use]
    pub fn named(path: &Path) -> Self {
        if path == Path::new("-") {
            Self::Standard
        } else {
            Self::File(path.to_owned())
        }
    }

    /// Its name in findings; none for standard input, whose parts may come in any number.
    #[must_use]
    pub fn name(&self) -> Option<String> {
        match self {
            Self::Standard => None,
            Self::File(path) => Some(path.display().to_string()),
        }
    }

    /// Its name in messages.
    #[must_use]
    pub fn shown(&self) -> String {
        self.name().unwrap_or_else(|| "standard input".to_owned())
    }

    /// Opens it for reading.
    ///
    /// # Errors
    ///
    /// What the system says, for a folder too.
    pub fn open(&self) -> io::Result<Box<dyn Read + Send>> {
        match self {
            Self::Standard => Ok(Box::new(io::stdin())),
            Self::File(path) => {
                let file = File::open(path)?;
                if file.metadata()?.is_dir() {
                    return Err(io::ErrorKind::IsADirectory.into());
                }
                Ok(Box::new(file))
            }
        }
    }
}

/// What the lines of a file are.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Form {
    /// One run a line.
    Json,
    /// One event a row.
    Csv(Arc<Head>),
}

/// Whole lines of one file.
#[derive(Debug)]
pub(super) struct Batch {
    pub lines: Vec<u8>,
    /// The number of the first line, from 1.
    pub first: u64,
    pub form: Form,
    /// Whether it comes right after the head of the file.
    pub after_head: bool,
    /// A line that couldn't be held: it comes before the others.
    pub bad: Option<(u64, BadLine)>,
}

impl Default for Batch {
    fn default() -> Self {
        Self {
            lines: Vec::new(),
            first: 1,
            form: Form::Json,
            after_head: false,
            bad: None,
        }
    }
}

/// Lines of one file, batch by batch.
pub(super) struct Lines<'r> {
    from: Box<dyn Read + Send + 'r>,
    /// What was read and not given out.
    held: Vec<u8>,
    line: u64,
    form: Option<Form>,
    is_csv: bool,
    ended: bool,
    failed: Option<io::Error>,
    scratch: (String, String),
}

impl<'r> Lines<'r> {
    /// Of a file, packed or not; `is_csv` where its name says so.
    pub fn new(from: impl Read + Send + 'r, is_csv: bool) -> io::Result<Self> {
        Ok(Self {
            from: unpacked(from)?,
            held: Vec::new(),
            line: 1,
            form: None,
            is_csv,
            ended: false,
            failed: None,
            scratch: Default::default(),
        })
    }

    /// The number of the next line.
    pub const fn line(&self) -> u64 {
        self.line
    }

    /// Fills a batch; whether there was anything left. An error comes after the last whole line before it.
    pub fn fill(&mut self, batch: &mut Batch) -> io::Result<bool> {
        batch.lines.clear();
        batch.lines.shrink_to(4 * BATCH);
        batch.after_head = false;
        batch.bad = None;
        batch.first = self.line;
        if self.form.is_none() && !self.begin(batch)? {
            return self.over();
        }
        batch.form = self.form.clone().unwrap_or(Form::Json);
        let mut wanted = BATCH;
        loop {
            self.read_to(wanted);
            if self.held.is_empty() {
                // A file may have a head and no rows.
                return if batch.after_head { Ok(true) } else { self.over() };
            }
            let cut = self.cut();
            if cut > 0 {
                batch.first = self.line;
                batch.lines.extend(self.held.drain(..cut));
                self.line += newlines(&batch.lines);
                return Ok(true);
            }
            if self.held.len() > MAX_LINE {
                batch.bad = Some((self.line, BadLine::new(MAX_LINE, Fault::TooLong)));
                self.skip_line();
                return Ok(true);
            }
            wanted = (2 * wanted).min(MAX_LINE + BATCH);
        }
    }

    fn over(&mut self) -> io::Result<bool> {
        self.failed.take().map_or(Ok(false), Err)
    }

    /// Reads until so much is held, or to the end.
    fn read_to(&mut self, wanted: usize) {
        while self.held.len() < wanted && !self.ended {
            let room = (wanted - self.held.len()) as u64;
            match self.from.by_ref().take(room).read_to_end(&mut self.held) {
                Ok(0) => self.ended = true,
                Ok(_) => {}
                Err(error) => {
                    self.ended = true;
                    self.failed = Some(error);
                    // The last line isn't whole.
                    let whole = memchr::memrchr(b'\n', &self.held).map_or(0, |at| at + 1);
                    self.held.truncate(whole);
                }
            }
        }
        if self.held.capacity() > 8 * BATCH && self.held.len() < BATCH {
            self.held.shrink_to(2 * BATCH);
        }
    }

    /// The bytes of the whole lines held.
    fn whole(&self) -> usize {
        if self.ended {
            return self.held.len();
        }
        memchr::memrchr(b'\n', &self.held).map_or(0, |at| at + 1)
    }

    /// Where to cut: after whole lines, not too many, and before the rows of a run that may go on. 0 where more must be
    /// read first.
    fn cut(&mut self) -> usize {
        let whole = self.whole();
        let lines = self.held.get(..whole).unwrap_or_default();
        let Some(Form::Csv(head)) = &self.form else {
            return memchr::memchr_iter(b'\n', lines)
                .nth(MOST_LINES - 1)
                .map_or(whole, |at| at + 1);
        };
        let (scratch, run) = &mut self.scratch;
        run.clear();
        let (mut begin, mut at, mut rows) = (0, 0, 0);
        while at < whole {
            let rest = lines.get(at..).unwrap_or_default();
            let end = memchr::memchr(b'\n', rest).map_or(whole, |length| at + length + 1);
            let row = row_of(lines.get(at..end).unwrap_or_default());
            // A row that can't be read is taken to belong to the run before.
            if !is_blank(row)
                && let Some(found) = head.run_of(row, scratch)
                && (found != *run || at == 0)
            {
                begin = at;
                if rows >= MOST_LINES || at >= BATCH {
                    return at;
                }
                run.clear();
                run.push_str(found);
            }
            rows += 1;
            at = end;
        }
        if self.ended {
            whole
        } else if begin == 0 && self.held.len() > MAX_LINE {
            // The rows of one run are too many: what follows is told as another run of the same name.
            whole
        } else {
            begin
        }
    }

    /// Finds out what the file is by its first line; whether there is one.
    fn begin(&mut self, batch: &mut Batch) -> io::Result<bool> {
        let mut wanted = BATCH;
        let mut first = true;
        loop {
            self.read_to(wanted);
            if first && self.held.starts_with(b"\xef\xbb\xbf") {
                self.held.drain(..3);
            }
            first = false;
            // Blank lines at the beginning.
            while let Some(end) = memchr::memchr(b'\n', &self.held) {
                if !is_blank(self.held.get(..end).unwrap_or_default()) {
                    break;
                }
                self.held.drain(..=end);
                self.line += 1;
            }
            let end = memchr::memchr(b'\n', &self.held);
            if end.is_none() && !self.ended && self.held.len() <= MAX_LINE {
                wanted = (2 * wanted.max(self.held.len())).min(MAX_LINE + BATCH);
                continue;
            }
            if is_blank(&self.held) {
                return Ok(false);
            }
            let end = end.unwrap_or(self.held.len());
            let line = row_of(self.held.get(..end).unwrap_or_default());
            let begins_object = line.iter().find(|byte| !byte.is_ascii_whitespace()) == Some(&b'{');
            let head = str::from_utf8(line)
                .ok()
                .filter(|_| !begins_object && line.len() <= 4096)
                .and_then(|line| Head::read(line, self.line, self.is_csv));
            match head {
                None => self.form = Some(Form::Json),
                Some(Ok(head)) => {
                    self.form = Some(Form::Csv(Arc::new(head)));
                    batch.after_head = true;
                    let end = (end + 1).min(self.held.len());
                    self.held.drain(..end);
                    self.line += 1;
                }
                Some(Err(bad)) => {
                    // Without a head no row can be read.
                    let hint = bad.to_string();
                    self.ended = true;
                    self.held.clear();
                    return Err(io::Error::new(io::ErrorKind::InvalidData, hint));
                }
            }
            batch.first = self.line;
            return Ok(true);
        }
    }

    /// Leaves out the rest of a line that is too long, without holding it.
    fn skip_line(&mut self) {
        loop {
            if let Some(end) = memchr::memchr(b'\n', &self.held) {
                self.held.drain(..=end);
                break;
            }
            self.held.clear();
            self.read_to(BATCH);
            if self.held.is_empty() {
                break;
            }
        }
        self.line += 1;
    }
}

fn newlines(bytes: &[u8]) -> u64 {
    memchr::memchr_iter(b'\n', bytes).count() as u64
}

/// Whether a line holds nothing.
pub(super) fn is_blank(line: &[u8]) -> bool {
    line.iter().all(u8::is_ascii_whitespace)
}

/// A line without its end.
pub(super) fn row_of(line: &[u8]) -> &[u8] {
    let line = line.strip_suffix(b"\n").unwrap_or(line);
    line.strip_suffix(b"\r").unwrap_or(line)
}
