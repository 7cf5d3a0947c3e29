//! Practice sheets and their answer sheets: what is printed on them, every string ready to print. The exercises and their
//! answers come from [`drill`](crate::drill).

use serde::Serialize;

use super::{
    CardsError,
    glyphs::{self, quotes},
    identity::Frame,
    typst,
};
use crate::book::{OfficePaper, Rulebook};
use crate::drill::{Exercise, Kind, Sheet};

/// The templates, by file name.
const TEMPLATES: &[(&str, &str)] = &[
    ("main.typ", include_str!("../../cards/drill.typ")),
    ("style.typ", include_str!("../../cards/style.typ")),
    ("words.typ", include_str!("../../cards/words.typ")),
];

/// The data of one document.
#[derive(Clone, Debug, Serialize)]
pub struct Page {
    #[serde(flatten)]
    frame: Frame,
    /// Practice or answers.
    title: &'static str,
    /// Whether it is the answer sheet.
    answers: bool,
    /// The seed that gives this sheet again.
    seed: String,
    exercises: Vec<Printed>,
}

/// An exercise on a sheet.
#[derive(Clone, Debug, Serialize)]
struct Printed {
    title: &'static str,
    difficulty: &'static str,
    question: String,
    /// What is looked at: the letter, name or time of each line, and the line.
    lines: Vec<(String, String)>,
    /// How wide the first of them is, in millimetres.
    label_mm: u8,
    /// Whether lines may stand in two columns.
    columns: bool,
    /// How many lines are left to write an answer on.
    room: u8,
    answer: String,
    working: Vec<String>,
    rules: Vec<String>,
}

/// Which of the two sheets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// For those who learn.
    Practice,
    /// For those who teach.
    Answers,
}

impl Page {
    /// The practice or the answer sheet of exercises.
    #[must_use]
    pub fn new(book: &Rulebook, sheet: &Sheet<'_>, seed: u64, side: Side, paper: OfficePaper) -> Self {
        let answers = side == Side::Answers;
        Self {
            frame: Frame::of(book, paper),
            title: if answers {
                "Oxygen drill: answers"
            } else {
                "Oxygen drill"
            },
            answers,
            seed: seed.to_string(),
            exercises: sheet.exercises.iter().map(|one| printed(one, answers)).collect(),
        }
    }

    /// Sets the sheet and gives the PDF.
    ///
    /// # Errors
    ///
    /// [`CardsError`] when the font lacks a sign, or the typesetting program refuses, takes too long or can't be run.
    pub fn set(&self, book: &Rulebook, typst: &typst::Program) -> Result<Vec<u8>, CardsError> {
        glyphs::check(self)?;
        typst
            .set_document(TEMPLATES, self, book.agency.effective)
            .map_err(CardsError::Typst)
    }
}

/// An exercise as it is printed: answers don't stand in the data of a practice sheet at all.
fn printed(one: &Exercise<'_>, answers: bool) -> Printed {
    let (label_mm, columns, room) = match one.kind() {
        Kind::Duration => (0, false, 3),
        Kind::Order => (7, false, 1),
        Kind::Setup => (28, true, 2),
        Kind::Log => (14, true, 2),
    };
    Printed {
        title: one.kind().title(),
        difficulty: one.difficulty.word(),
        question: one.question.clone(),
        // Letters are needed to read the answer; what they stand for is on the practice sheet.
        lines: if answers { Vec::new() } else { one.lines.clone() },
        label_mm,
        columns,
        room: if answers { 0 } else { room },
        answer: if answers {
            quotes(&one.answer)
        } else {
            String::new()
        },
        working: if answers {
            one.working.iter().map(|line| quotes(line)).collect()
        } else {
            Vec::new()
        },
        rules: if answers {
            one.rules
                .iter()
                .map(|rule| format!("{}: {}", rule.name(), rule.place()))
                .collect()
        } else {
            Vec::new()
        },
    }
}
