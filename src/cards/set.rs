//! The whole set: which documents it has, and all of them set at once.

use std::{
    num::NonZero,
    path::{Path, PathBuf},
    sync::{
        Mutex,
        atomic::{AtomicUsize, Ordering},
    },
};

use super::{
    CardsError, Form, Paper,
    data::{self, Document, Maker},
    format, glyphs,
    impose::{Backs, Shift},
    output,
    typst::{Program, TypstError},
};
use crate::book::{CardSize, Date, Layout, Rulebook};

/// A part of the set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The pocket cards.
    Cards,
    /// The sheets for examining procedures.
    CheckOff,
    /// The sheets for inspections of cylinders.
    Log,
    /// The posters.
    Poster,
}

impl Part {
    /// Every part.
    pub const ALL: [Self; 4] = [Self::Cards, Self::CheckOff, Self::Log, Self::Poster];

    const fn of(layout: &Layout) -> Self {
        match layout {
            Layout::CheckOff { .. } => Self::CheckOff,
            Layout::Log { .. } => Self::Log,
            Layout::Poster { .. } => Self::Poster,
            _ => Self::Cards,
        }
    }
}

/// What is to be printed, and how.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// The parts of the set.
    pub parts: Vec<Part>,
    /// The sizes of cards; when empty, every size that a card of the book names.
    pub sizes: Vec<CardSize>,
    /// The papers; when empty, the agency's. Sheets are not printed alone.
    pub papers: Vec<Paper>,
    /// How backs come behind their fronts.
    pub backs: Backs,
    /// What the printer's backs are moved by.
    pub shift: Shift,
    /// The kind of files.
    pub form: Form,
}

impl Default for Wanted {
    /// Everything the book has, on the agency's paper, as PDF.
    fn default() -> Self {
        Self {
            parts: Part::ALL.to_vec(),
            sizes: Vec::new(),
            papers: Vec::new(),
            backs: Backs::default(),
            shift: Shift::default(),
            form: Form::Pdf,
        }
    }
}

/// The documents of a set with their names, without ending: `cards-id-1-a4`, `check-off-letter`.
///
/// # Errors
///
/// [`CardsError`] when the book has nothing of what is wanted, or something in it can't be printed.
pub fn documents(book: &Rulebook, wanted: &Wanted) -> Result<Vec<(String, Document)>, CardsError> {
    let maker = Maker::new(book).map_err(CardsError::Messages)?;
    let papers = if wanted.papers.is_empty() {
        vec![Paper::from(book.agency.paper)]
    } else {
        wanted.papers.clone()
    };
    let mut documents = Vec::new();
    if wanted.parts.contains(&Part::Cards) {
        let named = |size: &CardSize| book.cards.iter().any(|card| card.sizes.contains(size));
        let sizes: Vec<CardSize> = if wanted.sizes.is_empty() {
            CardSize::ALL.into_iter().filter(named).collect()
        } else {
            wanted.sizes.clone()
        };
        for size in sizes {
            if !named(&size) {
                return Err(CardsError::NoCards(size));
            }
            for paper in &papers {
                let document = maker
                    .cards(size, *paper, wanted.backs, wanted.shift)
                    .map_err(|card| CardsError::TooLongForQr { card })?;
                if let Some(page) = format::of_paper(*paper)
                    && (document.one_sided.is_none() || document.two_sided.is_none())
                {
                    let paper = page.label;
                    return Err(CardsError::TooLarge { size, paper });
                }
                let name = format!("cards-{}-{}", format::of_card(size).id, paper.word());
                documents.push((name, document));
            }
        }
    }
    for rule in &book.cards {
        if !data::is_sheet(&rule.layout) || !wanted.parts.contains(&Part::of(&rule.layout)) {
            continue;
        }
        for paper in &papers {
            if let Some(document) = maker.sheets(rule, *paper) {
                documents.push((format!("{}-{}", rule.rule.id, document.size.id), document));
            }
        }
    }
    if documents.is_empty() {
        return Err(CardsError::Nothing);
    }
    for (_, document) in &documents {
        glyphs::check(document)?;
    }
    Ok(documents)
}

/// Sets what is wanted of a rulebook's cards and sheets, and puts the files into a folder: one file for each document, or,
/// as SVG and PNG, one for each page.
///
/// Gives the files' paths. Either all files are new or, after an error, all are as they were.
///
/// # Errors
///
/// [`CardsError`] when a card can't be set or a file can't be written.
pub fn print(
    book: &Rulebook,
    wanted: &Wanted,
    typst: &Program,
    folder: &Path,
) -> Result<Vec<PathBuf>, CardsError> {
    let documents = documents(book, wanted)?;
    let mut files = Vec::new();
    for (pages, (name, _)) in set(&documents, typst, book.agency.effective, wanted.form)?
        .into_iter()
        .zip(&documents)
    {
        let ending = wanted.form.word();
        if wanted.form == Form::Pdf {
            files.extend(pages.into_iter().map(|page| (format!("{name}.{ending}"), page)));
        } else {
            let numbered = (1..).zip(pages);
            files.extend(numbered.map(|(number, page)| (format!("{name}-{number:02}.{ending}"), page)));
        }
    }
    output::replace_all(folder, &files)
}

/// What became of a document, by its place in the set.
type Made = (usize, Result<Vec<Vec<u8>>, TypstError>);

/// Sets documents side by side, as many at once as the machine has processors.
fn set(
    documents: &[(String, Document)],
    typst: &Program,
    date: Date,
    form: Form,
) -> Result<Vec<Vec<Vec<u8>>>, TypstError> {
    let workers = std::thread::available_parallelism()
        .map_or(1, NonZero::get)
        .min(documents.len());
    let next = AtomicUsize::new(0);
    let made: Mutex<Vec<Made>> = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..workers {
            scope.spawn(|| {
                loop {
                    let index = next.fetch_add(1, Ordering::Relaxed);
                    let Some((_, document)) = documents.get(index) else {
                        break;
                    };
                    let pages = typst.set(document, date, form);
                    let Ok(mut made) = made.lock() else {
                        break;
                    };
                    let failed = pages.is_err();
                    made.push((index, pages));
                    if failed {
                        // What is set already is of no use now.
                        next.store(documents.len(), Ordering::Relaxed);
                    }
                }
            });
        }
    });
    let mut made = made.into_inner().map_err(|_| TypstError::Interrupted)?;
    made.sort_by_key(|(index, _)| *index);
    // The first error in the order of the set, so that the same book gets the same message.
    let made = made
        .into_iter()
        .map(|(_, pages)| pages)
        .collect::<Result<Vec<_>, _>>()?;
    if made.len() == documents.len() {
        Ok(made)
    } else {
        Err(TypstError::Interrupted)
    }
}
