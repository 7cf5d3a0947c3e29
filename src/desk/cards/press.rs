//! Sets cards, and keeps what was set while the text it belongs to is looked at.
//!
//! Each run of the typesetting program has a private folder of its own, which is gone when it ends; what it made is kept
//! in memory, so that nothing stays behind on the disk however the desk ends.

use std::{
    ffi::OsString,
    sync::{Arc, Mutex, PoisonError},
    time::Duration,
};

use axum::body::Bytes;

use crate::book::Rulebook;
use crate::cards::{
    Form,
    data::Document,
    typst::{Program, TypstError},
};

/// As many bytes are kept; the oldest go first.
const MOST: usize = 192 * 1024 * 1024;

/// The pages of a document.
pub type Pages = Arc<Vec<Bytes>>;

#[derive(Debug)]
struct Kept {
    digest: String,
    code: String,
    name: String,
    form: Form,
    pages: Pages,
}

/// The typesetting program with what it has made.
#[derive(Debug)]
pub struct Press {
    program: OsString,
    time_limit: Duration,
    kept: Mutex<Vec<Kept>>,
    /// Held while cards are set: one run at a time, and who comes meanwhile finds it done.
    at_work: Mutex<()>,
}

impl Press {
    /// A press that has made nothing.
    pub fn new(program: OsString, time_limit: Duration) -> Self {
        Self {
            program,
            time_limit,
            kept: Mutex::default(),
            at_work: Mutex::default(),
        }
    }

    /// The pages of a document of a book: one file as PDF, one for each page otherwise.
    pub fn pages(
        &self,
        book: &Rulebook,
        name: &str,
        form: Form,
        document: &Document,
    ) -> Result<Pages, TypstError> {
        let digest = &*book.digest;
        if let Some(pages) = self.find(digest, name, form) {
            return Ok(pages);
        }
        let _at_work = self.at_work.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(pages) = self.find(digest, name, form) {
            return Ok(pages);
        }
        let program = Program::find_within(self.program.clone(), self.time_limit)?;
        let set = program.set(document, book.agency.effective, form)?;
        let pages: Pages = Arc::new(set.into_iter().map(Bytes::from).collect());
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.push(Kept {
            digest: digest.to_owned(),
            code: book.short_digest.to_string(),
            name: name.to_owned(),
            form,
            pages: Arc::clone(&pages),
        });
        let size =
            |kept: &[Kept]| -> usize { kept.iter().flat_map(|one| one.pages.iter()).map(Bytes::len).sum() };
        while kept.len() > 1 && size(&kept) > MOST {
            kept.remove(0);
        }
        Ok(pages)
    }

    /// Pages that were made before, of whatever text has this code.
    pub fn kept(&self, code: &str, name: &str, form: Form) -> Option<Pages> {
        let kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.iter()
            .find(|one| one.code == code && one.name == name && one.form == form)
            .map(|one| Arc::clone(&one.pages))
    }

    fn find(&self, digest: &str, name: &str, form: Form) -> Option<Pages> {
        let kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.iter()
            .find(|one| one.digest == digest && one.name == name && one.form == form)
            .map(|one| Arc::clone(&one.pages))
    }
}
