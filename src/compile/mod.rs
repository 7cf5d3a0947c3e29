//! The rulebook compiler: from Markdown chapters to the typed rulebook, and from there to Rust tables.
//!
//! The stages in order, a module each: [`source`] keeps the chapters' text and positions; [`chapter`] finds rule
//! blocks; `yaml` reads a block; `fields`, [`written`], [`guard`] and `quoted` read values; [`names`] and `resolve`
//! turn blocks into rules; [`emit`] writes Rust. [`diagnostic`] says what is wrong, [`render`] draws it.
//!
//! `build.rs` and the program both use this room, so that what the build accepts is what the program accepts.

mod cases;
pub mod chapter;
pub mod diagnostic;
pub mod digest;
pub mod emit;
mod fields;
pub mod folder;
pub mod guard;
pub mod language;
pub mod names;
pub mod proof;
mod quoted;
pub mod render;
mod resolve;
pub mod source;
pub mod suggest;
pub mod written;
mod yaml;

use diagnostic::{Diagnostic, Diagnostics};
use source::Sources;

pub use cases::uncovered::Uncovered;

use crate::book::Rulebook;

/// A rulebook that was read without errors.
#[derive(Debug)]
pub struct Compiled {
    /// The typed rulebook.
    pub book: Rulebook,
    /// The chapters it was read from.
    pub sources: Sources,
    /// What is worth the editor's attention.
    pub notes: Vec<Diagnostic>,
}

/// Why a rulebook can't be used.
#[derive(Debug)]
pub struct Rejected {
    /// The chapters as far as they could be read.
    pub sources: Sources,
    /// Everything that is wrong, in the order of the book.
    pub diagnostics: Vec<Diagnostic>,
}

impl Rejected {
    /// Draws every diagnostic, with an empty line after each.
    #[must_use]
    pub fn render(&self, colour: bool) -> String {
        let drawn = self
            .diagnostics
            .iter()
            .map(|diagnostic| render::render(diagnostic, &self.sources, colour) + "\n\n");
        drawn.collect()
    }
}

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
    for (file, source) in sources.iter() {
        if let Some(nul) = source.text.find('\0') {
            found
                .error(
                    "not-text",
                    sources.span(file, nul..nul + 1),
                    "expected text, found a NUL character",
                )
                .hint("delete it, or save the chapter as plain text");
        }
    }
    // Without one of its chapters, the rest of the book would seem full of mistakes.
    if found.has_errors() {
        return Err(Box::new(Rejected {
            sources,
            diagnostics: found.into_sorted(),
        }));
    }
    let mut blocks = Vec::new();
    for (file, _) in sources.iter() {
        blocks.extend(chapter::blocks(&sources, file, &mut found));
    }
    let digest = digest::Digest::of(&sources);
    let raws = resolve::raw_rules(&blocks, &sources, &mut found);
    let mut book = resolve::build(&raws, &sources, &digest, &mut found);
    if let Some(built) = &book {
        resolve::prove(built, &raws, &mut found);
        cases::run_all(built, &raws, &mut found);
        if found.has_errors() {
            book = None;
        }
    }
    let diagnostics = found.into_sorted();
    match book {
        Some(book) => Ok(Compiled {
            book,
            sources,
            notes: diagnostics,
        }),
        None => Err(Box::new(Rejected { sources, diagnostics })),
    }
}
