//! The rulebook compiler: from Markdown chapters to the typed rulebook, and from there to Rust tables.
//!
//! The stages in order, a module each: [`source`] keeps the chapters' text and positions; [`chapter`] finds rule
//! blocks; `yaml` reads a block, and `unreadable` says why it can't; `fields`, [`written`], [`guard`] and `quoted` read values; [`names`] and `resolve`
//! turn blocks into rules; [`emit`] writes Rust. [`diagnostic`] says what is wrong, [`render`] draws it.
//!
//! How a rule becomes a table is told in [`tables`], and the two ways to a rulebook of one's own are compared in [`ways`].
//!
//! `build.rs` and the program both use this room, so that what the build accepts is what the program accepts.

mod build;
mod cases;
pub mod chapter;
pub mod diagnostic;
pub mod digest;
#[cfg(feature = "compile")]
pub mod edition;
pub mod emit;
mod fence;
mod fields;
pub mod folder;
pub mod guard;
pub mod language;
mod lines;
pub mod lint;
pub(crate) mod misnamed;
pub mod names;
pub mod proof;
pub(crate) mod quoted;
pub mod render;
mod resolve;
#[cfg(feature = "compile")]
pub mod skeleton;
pub mod source;
pub mod suggest;
pub mod tables;
#[cfg(feature = "compile")]
pub mod transport;
pub mod undecided;
mod unreadable;
pub mod ways;
pub mod written;
pub(crate) mod yaml;

use diagnostic::{Diagnostic, Diagnostics};
use source::Sources;
use suggest::counted;

pub use build::build_script;
pub use cases::uncovered::Uncovered;

use crate::book::{Date, Rulebook};

/// A rulebook that was read without errors.
#[derive(Debug)]
#[non_exhaustive]
pub struct Compiled {
    /// The typed rulebook.
    pub book: Rulebook,
    /// The chapters it was read from.
    pub sources: Sources,
    /// What is worth the editor's attention, and what the book allows.
    pub notes: Vec<Diagnostic>,
    /// How many more notes there were than are kept.
    pub omitted: usize,
    /// The edition's dates, for [`on`](Self::on).
    signature: lint::Signature,
}

impl Compiled {
    /// Adds what is to be said of the edition's dates on a day. Without a day nothing depends on the clock, and a
    /// build can be repeated.
    ///
    /// ```
    /// use oxyfolio::compile::{compile, source::Sources};
    /// use oxyfolio::{CHAPTERS, book::Date};
    ///
    /// let mut sources = Sources::default();
    /// for (name, text) in CHAPTERS {
    ///     sources.add((*name).into(), (*name).into(), (*text).into());
    /// }
    /// let compiled = compile(sources).unwrap().on(Date::new(2099, 1, 1)?);
    /// assert!(compiled.notes.iter().any(|note| note.code == "review-passed"));
    /// # Ok::<(), oxyfolio::book::InvalidDate>(())
    /// ```
    #[must_use]
    pub fn on(mut self, today: Date) -> Self {
        self.notes.extend(self.signature.on(today, &self.book.agency));
        self.notes
            .sort_by_key(|note| (note.span.is_none(), note.span, note.level, note.code));
        self
    }
}

/// Why a rulebook can't be used: everything that is wrong, with its places.
///
/// ```
/// use oxyfolio::book::Rulebook;
///
/// let folder = tempfile::tempdir()?;
/// std::fs::write(folder.path().join("a.md"), "# Masks\n\nWhy.\n\n```yaml device\nid: mask\nflow: 15 to 10 L/min\n```\n")?;
/// let rejected = Rulebook::load(folder.path()).unwrap_err();
/// let reversed = rejected.diagnostics.iter().find(|one| one.code == "reversed-range").unwrap();
/// assert_eq!(reversed.hints, ["write `10 to 15 L/min`"]);
/// let at = rejected.sources.line_column(reversed.span.unwrap());
/// assert_eq!((at.line, at.column), (7, 7));
/// // As it prints: all of them, drawn with the lines of the chapter.
/// assert!(rejected.to_string().contains("a.md:7:7"));
/// # Ok::<(), std::io::Error>(())
/// ```
#[derive(Debug)]
#[non_exhaustive]
pub struct Rejected {
    /// The chapters as far as they could be read.
    pub sources: Sources,
    /// Everything that is wrong, in the order of the book.
    pub diagnostics: Vec<Diagnostic>,
    /// How many more were found than are kept. Above 0, reading stopped before the end of the book.
    pub omitted: usize,
    /// The typed rules, where all of them could be read and what is wrong is an order of steps, a worked case or
    /// a contradiction. To look at, to say what is wrong with them; not to be used.
    pub unusable: Option<Box<Rulebook>>,
}

/// As many diagnostics are drawn; nobody reads the two hundred and first before the first is put right.
pub const MAX_DRAWN: usize = 200;

impl Rejected {
    /// How much there is to do.
    #[must_use]
    pub fn to_do(&self) -> ToDo {
        ToDo::of(&self.diagnostics, self.omitted)
    }

    /// Draws the diagnostics up to [`MAX_DRAWN`], with an empty line after each, and says how many more there are.
    #[must_use]
    pub fn render(&self, colour: bool) -> String {
        drawn(&self.diagnostics, self.omitted, &self.sources, colour)
    }
}

/// How much is to be done before a rulebook can be used: values to decide apart from mistakes. As it prints, what is to be
/// decided comes first.
///
/// ```
/// use oxyfolio::compile::ToDo;
///
/// let to_do = |undecided, errors| ToDo { undecided, errors, and_more: false }.to_string();
/// assert_eq!(to_do(54, 2), "54 values to decide and 2 errors");
/// assert_eq!(to_do(1, 0), "1 value to decide");
/// assert_eq!(to_do(0, 1), "1 error");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ToDo {
    /// Values that are still marked as undecided.
    pub undecided: usize,
    /// Mistakes.
    pub errors: usize,
    /// Whether there are more than were kept.
    pub and_more: bool,
}

impl ToDo {
    /// Counts what was found; `omitted` is how many more there were than are kept.
    #[must_use]
    pub fn of<'d>(diagnostics: impl IntoIterator<Item = &'d Diagnostic>, omitted: usize) -> Self {
        let mut counted = Self {
            undecided: 0,
            errors: 0,
            and_more: omitted > 0,
        };
        for found in diagnostics {
            match found.level {
                diagnostic::Level::Error if found.is_undecided() => counted.undecided += 1,
                diagnostic::Level::Error => counted.errors += 1,
                diagnostic::Level::Note => {}
            }
        }
        counted
    }

    /// Whether anything is.
    #[must_use]
    pub const fn is_any(self) -> bool {
        self.undecided + self.errors > 0
    }

    fn words(self) -> String {
        let undecided = counted(self.undecided, "value to decide", "values to decide");
        let errors = counted(self.errors, "error", "errors");
        let words = match (self.undecided, self.errors) {
            (0, _) => errors,
            (_, 0) => undecided,
            _ => format!("{undecided} and {errors}"),
        };
        if self.and_more {
            format!("more than {words}")
        } else {
            words
        }
    }

    /// What that means for the rulebook: until when it can't be used.
    #[must_use]
    pub const fn until(self) -> &'static str {
        match (self.undecided, self.errors) {
            (0, 1) => "until it is put right",
            (0, _) => "until they are put right",
            (1, 0) => "until it is decided",
            (_, 0) => "until they are decided",
            _ => "until all are decided and put right",
        }
    }
}

impl core::fmt::Display for ToDo {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.words())
    }
}

/// Draws diagnostics up to [`MAX_DRAWN`], with an empty line after each, and says how many more there are. Values to decide
/// come first, so that mistakes stand together at the end; where not all are drawn, mistakes are.
#[must_use]
pub fn drawn(diagnostics: &[Diagnostic], omitted: usize, sources: &Sources, colour: bool) -> String {
    let (undecided, others): (Vec<_>, Vec<_>) = diagnostics.iter().partition(|found| found.is_undecided());
    let others = others.into_iter().take(MAX_DRAWN);
    let room = MAX_DRAWN - others.len();
    let shown = undecided.into_iter().take(room).chain(others);
    let mut drawn: String = shown
        .map(|diagnostic| render::render(diagnostic, sources, colour) + "\n\n")
        .collect();
    let more = diagnostics.len().saturating_sub(MAX_DRAWN);
    if omitted > 0 {
        drawn += &format!("… and more than {more} more\n\n");
    } else if more > 0 {
        drawn += &format!("… and {more} more\n\n");
    }
    drawn
}

impl core::fmt::Display for Rejected {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.render(false))
    }
}

impl std::error::Error for Rejected {}

/// Compiles chapters already in memory.
///
/// # Errors
///
/// [`Rejected`] with every error of the book.
///
/// ```
/// use oxyfolio::compile::{compile, source::Sources};
/// let mut sources = Sources::default();
/// sources.add("a.md".into(), "a.md".into(), "# Book\n\n```yaml devise\nid: x\n```\n".into());
/// let rejected = compile(sources).unwrap_err();
/// assert_eq!(rejected.diagnostics[0].code, "unknown-kind");
/// assert!(rejected.render(false).contains("did you mean `device`?"));
/// ```
pub fn compile(sources: Sources) -> Result<Compiled, Box<Rejected>> {
    compile_with(sources, Diagnostics::default())
}

/// Everything in a rulebook that no worked case would notice changing; see [`Uncovered`].
///
/// # Errors
///
/// [`Rejected`] when the rulebook has errors: what no case notices can be asked of a sound book only.
pub fn uncovered(sources: Sources) -> Result<(Compiled, Vec<Uncovered>), Box<Rejected>> {
    let compiled = compile(sources)?;
    let mut found = Diagnostics::default();
    let mut blocks = Vec::new();
    for (file, _) in compiled.sources.iter() {
        blocks.extend(chapter::blocks(&compiled.sources, file, &mut found));
    }
    let raws = resolve::raw_rules(&blocks, &compiled.sources, &mut found);
    let left = cases::uncovered::uncovered(&compiled.book, &raws, &compiled.sources);
    Ok((compiled, left))
}

/// Compiles chapters, with what was found while reading them.
fn compile_with(sources: Sources, mut found: Diagnostics) -> Result<Compiled, Box<Rejected>> {
    for (file, _) in sources.iter() {
        lines::check(&sources, file, &mut found);
    }
    // Without one of its chapters, the rest of the book would seem full of mistakes.
    if found.has_errors() {
        return Err(Box::new(Rejected {
            sources,
            omitted: found.omitted(),
            diagnostics: found.into_sorted(),
            unusable: None,
        }));
    }
    let mut blocks = Vec::new();
    for (file, _) in sources.iter() {
        if found.is_full() {
            break;
        }
        blocks.extend(chapter::blocks(&sources, file, &mut found));
    }
    let digest = digest::Digest::of(&sources);
    let raws = resolve::raw_rules(&blocks, &sources, &mut found);
    let book = resolve::build(&raws, &sources, &digest, &mut found);
    if let Some(book) = &book {
        resolve::prove(book, &raws, &mut found);
        cases::run_all(book, &raws, &mut found);
    }
    let resolved = book.map(|book| (book, resolve::places(raws)));
    if let Some((book, places)) = &resolved {
        lint::run(book, places, &blocks, &sources, &mut found);
    }
    let usable = !found.has_errors();
    let omitted = found.omitted();
    let diagnostics = found.into_sorted();
    match resolved {
        Some((book, places)) if usable => Ok(Compiled {
            signature: lint::Signature::new(&places),
            book,
            sources,
            notes: diagnostics,
            omitted,
        }),
        resolved => Err(Box::new(Rejected {
            sources,
            diagnostics,
            omitted,
            unusable: resolved.map(|(book, _)| Box::new(book)),
        })),
    }
}
