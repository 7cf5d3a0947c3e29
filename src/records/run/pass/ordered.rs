//! What is done in the order of the input: runs that come twice, sums, writing.

use std::io::Write;

use super::{Job, Named, PassError, Slot};
use crate::guard::Evaluator;
use crate::records::run::{
    problem::{About, Problem},
    tally::{Group, Tally},
    window::Window,
    write::Said,
};

/// What is done in the order of the input.
pub(super) struct Ordered<'o, 'b> {
    pub tally: Tally<'b>,
    pub window: Window,
    pub out: &'o mut dyn Write,
    pub is_list: bool,
    pub any: bool,
    pub scratch: (Vec<u8>, String),
}

impl<'b> Ordered<'_, 'b> {
    pub fn write(&mut self, bytes: &[u8], is_finding: bool) -> Result<(), PassError> {
        let bytes = if self.is_list && is_finding && !self.any && !bytes.is_empty() {
            self.any = true;
            // The first of a list has no comma before it.
            bytes.get(1..).unwrap_or_default()
        } else {
            bytes
        };
        self.out.write_all(bytes).map_err(PassError::Write)
    }

    pub fn take<E: Evaluator<'b> + Sync>(
        &mut self,
        job: &Job<'_, 'b, E>,
        slot: &mut Slot<'b>,
    ) -> Result<(), PassError> {
        let Slot { file, part, .. } = slot;
        self.tally.merge(&mut part.tally);
        let mut written = 0;
        for named in &part.named {
            if self.window.saw(named.hash) {
                self.write(part.out.get(written..named.out).unwrap_or_default(), true)?;
                written = named.out;
                self.twice(job, *file, named, &part.names)?;
            }
        }
        self.write(part.out.get(written..).unwrap_or_default(), true)
    }

    fn twice<E: Evaluator<'b> + Sync>(
        &mut self,
        job: &Job<'_, 'b, E>,
        file: usize,
        named: &Named,
        names: &str,
    ) -> Result<(), PassError> {
        let (begin, middle) = named.name;
        let name = names.get(begin..middle);
        let crew = named.crew.and_then(|end| names.get(middle..end));
        let file = job.files.get(file).and_then(Option::as_deref);
        let problem = Problem {
            about: About::RunTwice,
            event: None,
            line: named.line,
            byte: 0,
            column: 1,
        };
        let hint = problem.hint();
        let said = Said {
            run: name,
            file,
            line: file.map(|_| named.line),
            ..Said::of_record(
                job.book,
                problem.code(),
                problem.level(),
                &problem,
                hint.as_deref(),
            )
        };
        self.tally.again();
        let group = Group {
            month: named.month,
            crew: job.options.crews.then_some(crew),
        };
        self.tally.finding(&said, Some(group));
        self.tally.runs_wrong += u64::from(!named.is_wrong);
        if job.writer.writes() {
            let (mut bytes, mut text) = core::mem::take(&mut self.scratch);
            bytes.clear();
            job.writer.write(&mut bytes, &mut text, &said);
            let written = self.write(&bytes, true);
            self.scratch = (bytes, text);
            written?;
        }
        Ok(())
    }
}
