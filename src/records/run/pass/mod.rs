//! One pass over files: batches of lines are read, reviewed on all cores, and written in the order of the input.
//!
//! Batches depend on the input alone, and whatever depends on more than one batch (runs that come twice, sums) is done in
//! order. So the output is the same whatever the number of threads. The number of batches at a time is bounded.

mod ordered;
mod source;

use std::{
    io::{self, Write},
    sync::{Arc, Mutex, PoisonError},
};

use ordered::Ordered;
use source::Source;

use super::{
    BadLine, Input, Names, Pseudonyms, RunBuffer, Written,
    buffer::column,
    csv::Head,
    input::{Batch, Form, is_blank, row_of},
    problem::Problem,
    tally::{BadNote, Group, Tally},
    window::{self, Window},
    write::{Said, Writer},
};
use crate::book::Rulebook;
use crate::check::review::{Notes, Reviewer};
use crate::guard::Evaluator;

/// Batches read at a time for each thread.
const FOR_EACH_THREAD: usize = 2;

/// How to go over the records.
#[derive(Clone, Copy, Debug)]
pub struct Options<'o> {
    /// Threads that review; 0 for as many as the machine has.
    pub threads: usize,
    /// How findings are written.
    pub written: Written,
    /// What hides the names of runs and crews.
    pub pseudonyms: Option<&'o Pseudonyms>,
    /// Whether to count by crew.
    pub crews: bool,
    /// Is told how many bytes of the files were read.
    pub watch: Option<fn(u64)>,
}

impl Default for Options<'_> {
    fn default() -> Self {
        Self {
            threads: 0,
            written: Written::Lines,
            pseudonyms: None,
            crews: false,
            watch: None,
        }
    }
}

/// Why a pass could not be made or ended early.
#[derive(Debug)]
pub enum PassError {
    /// A file can't be opened. Nothing was written.
    Open(Input, io::Error),
    /// The output can't be written.
    Write(io::Error),
    /// Threads can't be started.
    Threads(String),
}

impl core::fmt::Display for PassError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Open(input, error) => write!(f, "cannot read {}: {error}", input.shown()),
            Self::Write(error) => write!(f, "cannot write: {error}"),
            Self::Threads(error) => write!(f, "cannot start threads: {error}"),
        }
    }
}

impl std::error::Error for PassError {}

/// Reviews every run of some files, and writes the findings in the order of the input.
///
/// ```
/// use oxyfolio::RULEBOOK;
/// use oxyfolio::check::review::Reviewer;
/// use oxyfolio::records::run::{Input, Options, review};
///
/// let mut findings = Vec::new();
/// let files = [Input::File("tests/runs/faults.ndjson".into())];
/// let reviewer = Reviewer::new(&RULEBOOK);
/// let sums = review(&RULEBOOK, &reviewer, &files, &Options::default(), &mut findings)?;
/// assert!(sums.levels.wrong() > 0);
/// assert!(findings.starts_with(b"{\"run\":"));
/// # Ok::<(), oxyfolio::records::run::PassError>(())
/// ```
///
/// # Errors
///
/// [`PassError`] when a file can't be opened or the output can't be written. A file that breaks off while it is read is
/// noted among the sums, and the others are read.
pub fn review<'b, E: Evaluator<'b> + Sync>(
    book: &'b Rulebook,
    reviewer: &Reviewer<'b, E>,
    inputs: &[Input],
    options: &Options<'_>,
    out: &mut dyn Write,
) -> Result<Tally<'b>, PassError> {
    for input in inputs {
        // Told before anything is written. Not held open: there may be more files than may be open at once.
        if let Input::File(_) = input {
            input
                .open()
                .map_err(|error| PassError::Open(input.clone(), error))?;
        }
    }
    let names = Names::new(book);
    let files: Vec<Option<String>> = inputs.iter().map(Input::name).collect();
    let job = Job {
        book,
        reviewer,
        names: &names,
        files: &files,
        writer: Writer::new(book, options.written),
        options,
        states: Mutex::new(Vec::new()),
    };
    let mut sums = Ordered {
        tally: Tally::default(),
        window: Window::default(),
        out,
        is_list: options.written == Written::List,
        any: false,
        scratch: (Vec::new(), String::new()),
    };
    sums.write(job.writer.head().as_bytes(), false)?;
    let mut source = Source {
        left: inputs.iter().enumerate(),
        inputs,
        now: None,
        failed: Vec::new(),
        watch: options.watch,
    };
    let threads = match options.threads {
        0 => std::thread::available_parallelism().map_or(1, usize::from),
        threads => threads,
    };
    if threads == 1 {
        let mut slot = Slot::default();
        while source.fill(&mut slot) {
            job.work(&mut slot);
            sums.take(&job, &mut slot)?;
        }
    } else {
        job.in_parallel(threads, &mut source, &mut sums)?;
    }
    sums.tally.failed = source.failed;
    Ok(sums.tally)
}

/// What every thread needs.
struct Job<'j, 'b, E> {
    book: &'b Rulebook,
    reviewer: &'j Reviewer<'b, E>,
    names: &'j Names<'b>,
    files: &'j [Option<String>],
    writer: Writer,
    options: &'j Options<'j>,
    /// Kept from batch to batch; there are never more than threads.
    states: Mutex<Vec<State<'j, 'b>>>,
}

#[derive(Default)]
struct State<'n, 'b> {
    buffer: RunBuffer<'n>,
    notes: Notes<'b>,
}

/// A batch and what came of it.
#[derive(Default)]
struct Slot<'b> {
    batch: Batch,
    file: usize,
    part: Part<'b>,
}

/// What came of a batch.
#[derive(Default)]
struct Part<'b> {
    out: Vec<u8>,
    tally: Tally<'b>,
    named: Vec<Named>,
    names: String,
    scratch: String,
}

/// A run with a name: where its findings begin, to tell one that comes twice.
#[derive(Clone, Copy)]
struct Named {
    hash: u64,
    out: usize,
    line: u64,
    month: Option<(i64, u8)>,
    /// Its name, then its crew, in the texts.
    name: (usize, usize),
    crew: Option<usize>,
    is_wrong: bool,
}

impl<'j, 'b: 'j, E: Evaluator<'b> + Sync> Job<'j, 'b, E> {
    fn in_parallel(
        &self,
        threads: usize,
        source: &mut Source<'_>,
        sums: &mut Ordered<'_, 'b>,
    ) -> Result<(), PassError> {
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .map_err(|error| PassError::Threads(error.to_string()))?;
        let slots = || (0..threads.saturating_mul(FOR_EACH_THREAD)).map(|_| Slot::default());
        let (mut now, mut next): (Vec<Slot<'b>>, Vec<_>) = (slots().collect(), slots().collect());
        let mut filled = source.fill_all(&mut next);
        while filled > 0 {
            core::mem::swap(&mut now, &mut next);
            let full = now.get_mut(..filled).unwrap_or_default();
            pool.in_place_scope(|scope| {
                for slot in &mut *full {
                    scope.spawn(move |_| self.work(slot));
                }
                filled = source.fill_all(&mut next);
            });
            for slot in full {
                sums.take(self, slot)?;
            }
        }
        Ok(())
    }

    fn work(&self, slot: &mut Slot<'b>) {
        let taken = self.states.lock().unwrap_or_else(PoisonError::into_inner).pop();
        let mut state = taken.unwrap_or_default();
        self.batch(slot, &mut state);
        self.states
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .push(state);
    }

    fn batch(&self, slot: &mut Slot<'b>, state: &mut State<'j, 'b>) {
        let Slot { batch, file, part } = slot;
        part.out.clear();
        part.named.clear();
        part.names.clear();
        let file = *file;
        if let (true, Form::Csv(head)) = (batch.after_head, &batch.form) {
            for problem in head.problems() {
                self.problem(part, file, problem, None, None, None);
            }
        }
        if let Some((line, bad)) = batch.bad {
            self.bad(part, file, line, &bad, bad.byte + 1);
        }
        match &batch.form {
            Form::Json => self.lines(part, file, batch, state),
            Form::Csv(head) => self.rows(part, file, batch, head, state),
        }
    }

    fn lines(&self, part: &mut Part<'b>, file: usize, batch: &Batch, state: &mut State<'j, 'b>) {
        for (number, line) in (batch.first..).zip(lines(&batch.lines)) {
            if is_blank(line) {
                continue;
            }
            match state.buffer.read_json(line, number, self.names) {
                Ok(()) => self.run(part, file, state),
                Err(bad) => self.bad(part, file, number, &bad, column(line, bad.byte)),
            }
        }
    }

    fn rows(
        &self,
        part: &mut Part<'b>,
        file: usize,
        batch: &Batch,
        head: &Arc<Head>,
        state: &mut State<'j, 'b>,
    ) {
        // The run that the rows belong to, once there is one.
        let mut scratch = String::new();
        let (mut in_run, mut name) = (false, String::new());
        for (number, row) in (batch.first..).zip(lines(&batch.lines)) {
            if is_blank(row) {
                continue;
            }
            match head.run_of(row, &mut scratch) {
                Some(run) if !in_run || run != name => {
                    if in_run {
                        state.buffer.end_rows();
                        self.run(part, file, state);
                    }
                    in_run = true;
                    name.clear();
                    name.push_str(run);
                    state.buffer.begin(number);
                }
                _ => {}
            }
            if !in_run {
                // Nobody can tell whose row it is: read to tell what is wrong with it.
                state.buffer.begin(number);
            }
            if let Err(bad) = state.buffer.read_row(row, number, head, self.names) {
                self.bad(part, file, number, &bad, column(row, bad.byte));
                // Something happened there that isn't known.
                state.buffer.lost_row(number);
            }
        }
        if in_run {
            state.buffer.end_rows();
            self.run(part, file, state);
        }
    }

    /// Reviews the run in the buffer.
    fn run(&self, part: &mut Part<'b>, file: usize, state: &mut State<'j, 'b>) {
        let State { buffer, notes } = state;
        let run = buffer.run();
        let first = buffer.first_time();
        let month = first.map(|at| at.month());
        let hidden = |name: Option<&str>| match self.options.pseudonyms {
            Some(pseudonyms) => name.map(|name| pseudonyms.of(name)),
            None => None,
        };
        let (hidden_name, hidden_crew) = (hidden(buffer.name()), hidden(buffer.first_by()));
        let name = hidden_name.as_deref().or(buffer.name());
        let crew = hidden_crew.as_deref().or(buffer.first_by());
        let crews = self.options.crews;
        let whole = Group {
            month,
            crew: crews.then_some(crew),
        };
        part.tally.begin_run(run.events.len(), whole);
        part.tally.span(first.into_iter().chain(buffer.last_time()));
        let named = part.named.len();
        if let (Some(real), Some(name)) = (buffer.name(), name) {
            let begin = part.names.len();
            part.names.push_str(name);
            let middle = part.names.len();
            let crew = crew.map(|crew| {
                part.names.push_str(crew);
                part.names.len()
            });
            part.named.push(Named {
                hash: window::hash(real),
                out: part.out.len(),
                line: buffer.line(None),
                month,
                name: (begin, middle),
                crew,
                is_wrong: false,
            });
        }
        let before = part.tally.levels.wrong();
        for problem in buffer.problems() {
            let by = problem.event.and_then(|event| buffer.by(event));
            let hidden_by = hidden(by);
            let by = hidden_by.as_deref().or(by);
            self.problem(part, file, problem, name, by, Some(whole));
        }
        let file_name = self.files.get(file).and_then(Option::as_deref);
        // Only a crew that differs from the run's first has to be hidden anew.
        let mut last: Option<(&str, String)> = None;
        self.reviewer.review(&run, notes, |finding| {
            let by = finding.event.and_then(|event| buffer.by(event));
            let by = match (by, self.options.pseudonyms) {
                (Some(by), Some(pseudonyms)) => {
                    if last.as_ref().is_none_or(|(known, _)| *known != by) {
                        last = Some((by, pseudonyms.of(by)));
                    }
                    last.as_ref().map(|(_, hidden)| &**hidden)
                }
                (by, _) => by,
            };
            self.say(
                part,
                &Said {
                    run: name,
                    by,
                    file: file_name,
                    line: file_name.map(|_| buffer.line(finding.event)),
                    column: None,
                    event: finding.event,
                    code: finding.code(),
                    level: finding.level,
                    message: &finding,
                    remedy: finding.remedy().filter(|remedy| !remedy.is_empty()),
                    from: finding.from,
                    until: finding.until,
                    minutes: finding.minutes(),
                    kind: finding.kind,
                    rule: finding.rule,
                    rule_line: finding.line(),
                },
                Some(Group {
                    month,
                    crew: crews.then_some(by.or(crew)),
                }),
            );
        });
        let is_wrong = part.tally.levels.wrong() > before;
        part.tally.runs_wrong += u64::from(is_wrong);
        if let Some(named) = part.named.get_mut(named) {
            named.is_wrong = is_wrong;
        }
    }

    fn say(&self, part: &mut Part<'b>, said: &Said<'_, 'b>, group: Option<Group<'_>>) {
        part.tally.finding(said, group);
        if self.writer.writes() {
            self.writer.write(&mut part.out, &mut part.scratch, said);
        }
    }

    /// A finding of the reader, about the rule that says whose records these are.
    fn problem(
        &self,
        part: &mut Part<'b>,
        file: usize,
        problem: &Problem<'_>,
        run: Option<&str>,
        by: Option<&str>,
        group: Option<Group<'_>>,
    ) {
        let file = self.files.get(file).and_then(Option::as_deref);
        let hint = problem.hint();
        let said = Said {
            run,
            by,
            file,
            line: file.map(|_| problem.line),
            column: Some(problem.column),
            event: problem.event,
            ..Said::of_record(
                self.book,
                problem.code(),
                problem.level(),
                problem,
                hint.as_deref(),
            )
        };
        let group = group.map(|group| Group {
            crew: group.crew.map(|crew| by.or(crew)),
            ..group
        });
        self.say(part, &said, group);
    }

    fn bad(&self, part: &mut Part<'b>, file: usize, line: u64, bad: &BadLine, column: usize) {
        let name = self.files.get(file).and_then(Option::as_deref);
        part.tally.bad_lines += 1;
        if part.tally.bad.len() < super::tally::MOST_BAD {
            part.tally.bad.push(BadNote {
                file: name.unwrap_or("standard input").to_owned(),
                line,
                column,
                message: format!("{bad}; {}", bad.hint()),
            });
        }
        let said = Said {
            file: name,
            line: name.map(|_| line),
            column: Some(column),
            ..Said::of_record(
                self.book,
                bad.code(),
                crate::check::Level::Unknown,
                bad,
                Some(bad.hint()),
            )
        };
        self.say(part, &said, None);
    }
}

fn lines(bytes: &[u8]) -> impl Iterator<Item = &[u8]> {
    let mut rest = bytes;
    core::iter::from_fn(move || {
        if rest.is_empty() {
            return None;
        }
        let end = memchr::memchr(b'\n', rest).map_or(rest.len(), |at| at + 1);
        let (line, after) = rest.split_at(end);
        rest = after;
        Some(row_of(line))
    })
}
