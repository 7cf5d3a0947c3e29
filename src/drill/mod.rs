//! Exercises for those who teach and learn the skill, made from a rulebook.
//!
//! Four kinds: how long the gas lasts, putting steps in order, finding what is wrong in a set-up, and in a log. A seed and a
//! book always give the same sheet; another seed gives another. Every answer is the checker's own: of the gas by
//! [`Supply`](crate::check::duration::Supply), of steps by the `after` of the book, of a set-up by
//! [`check_setup`](crate::check::check_setup), of a log by [`Reviewer`].
//!
//! **Exactly one thing is wrong** in a set-up or log: a sound one, in which the checker finds nothing, is changed in one place,
//! and is taken only when the checker then finds that, and nothing elsewhere.
//!
//! Exercises are for a classroom. Figures in them are made up.
//!
//! ```
//! use oxyfolio::RULEBOOK;
//! use oxyfolio::drill::{Kind, Terms, exercises};
//!
//! let sheet = exercises(&RULEBOOK, &Terms::new(7).count(4));
//! assert_eq!(sheet.exercises.len(), 4);
//! assert_eq!(sheet.exercises[0].kind(), Kind::Duration);
//! // The same seed gives the same sheet.
//! assert_eq!(exercises(&RULEBOOK, &Terms::new(7).count(4)), sheet);
//! ```

mod chance;
mod draw;
mod duration;
mod log;
mod order;
mod setup;
mod words;

use alloc::{string::String, vec::Vec};

use chance::Chance;
pub use duration::{Asked, Lasting};
pub use log::{Change as LogChange, Log};
pub use order::Ordering;
pub use setup::{Arranged, Part};

use crate::book::{Cited, Rulebook};
use crate::check::review::{Notes, Reviewer};

/// A sheet never has more exercises.
pub const MOST: u16 = 200;

/// A kind of exercise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// How long the gas lasts, or what reading or flow is needed.
    Duration,
    /// Put these steps in order.
    Order,
    /// Find what is wrong in this set-up.
    Setup,
    /// Find what is wrong in this log.
    Log,
}

impl Kind {
    /// Every kind, in the order of a mixed sheet.
    pub const ALL: [Self; 4] = [Self::Duration, Self::Order, Self::Setup, Self::Log];

    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Duration => "duration",
            Self::Order => "order",
            Self::Setup => "setup",
            Self::Log => "log",
        }
    }

    /// What stands above an exercise.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Duration => "How long does it last?",
            Self::Order => "Put these steps in order",
            Self::Setup => "Find what is wrong in this set-up",
            Self::Log => "Find what is wrong in this log",
        }
    }
}

/// How hard an exercise is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Difficulty {
    /// One thought.
    Easy,
    /// Two.
    Medium,
    /// Several, or the question turned round.
    Hard,
}

impl Difficulty {
    /// From easy to hard.
    pub const ALL: [Self; 3] = [Self::Easy, Self::Medium, Self::Hard];

    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Easy => "easy",
            Self::Medium => "medium",
            Self::Hard => "hard",
        }
    }
}

/// What is wanted of a sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
#[must_use]
pub struct Terms {
    seed: u64,
    count: u16,
    kinds: Vec<Kind>,
    difficulty: Option<Difficulty>,
}

impl Terms {
    /// Twelve exercises of every kind, from easy to hard.
    pub fn new(seed: u64) -> Self {
        Self {
            seed,
            count: 12,
            kinds: Kind::ALL.to_vec(),
            difficulty: None,
        }
    }

    /// How many exercises, 1 to [`MOST`]; what is beyond counts as that.
    pub fn count(mut self, count: u16) -> Self {
        self.count = count.clamp(1, MOST);
        self
    }

    /// Only these kinds, in turn. An empty list stands for all.
    pub fn kinds(mut self, kinds: &[Kind]) -> Self {
        self.kinds = if kinds.is_empty() {
            Kind::ALL.to_vec()
        } else {
            kinds.to_vec()
        };
        self
    }

    /// All of one difficulty.
    pub fn difficulty(mut self, difficulty: Difficulty) -> Self {
        self.difficulty = Some(difficulty);
        self
    }

    /// The seed.
    #[must_use]
    pub const fn seed(&self) -> u64 {
        self.seed
    }

    /// The difficulty of an exercise of a sheet: the first third easy, the last hard, unless one was asked for.
    fn difficulty_of(&self, place: u16) -> Difficulty {
        self.difficulty
            .unwrap_or(match u32::from(place) * 3 / u32::from(self.count.max(1)) {
                0 => Difficulty::Easy,
                1 => Difficulty::Medium,
                _ => Difficulty::Hard,
            })
    }
}

/// What an exercise is about, for programs.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Task {
    /// How long the gas lasts, or the question turned round.
    Duration(Lasting),
    /// Steps to be put in order.
    Order(Ordering),
    /// A set-up with one thing wrong.
    Setup(Arranged),
    /// A log with one thing wrong.
    Log(Log),
}

/// One exercise with its answer, ready to print.
#[derive(Clone, Debug, PartialEq)]
pub struct Exercise<'b> {
    /// How hard it is.
    pub difficulty: Difficulty,
    /// What it is about.
    pub task: Task,
    /// What is asked.
    pub question: String,
    /// What is looked at: steps, a set-up, a log; each line with the letter or time it goes by.
    pub lines: Vec<(String, String)>,
    /// The answer.
    pub answer: String,
    /// How it comes about.
    pub working: Vec<String>,
    /// The rules behind it.
    pub rules: Vec<Cited<'b>>,
}

impl Exercise<'_> {
    /// Its kind.
    #[must_use]
    pub const fn kind(&self) -> Kind {
        match self.task {
            Task::Duration(_) => Kind::Duration,
            Task::Order(_) => Kind::Order,
            Task::Setup(_) => Kind::Setup,
            Task::Log(_) => Kind::Log,
        }
    }
}

/// A sheet of exercises.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Sheet<'b> {
    /// The exercises.
    pub exercises: Vec<Exercise<'b>>,
    /// What the book gives no exercise for, with how many are missing.
    pub missing: Vec<(Kind, Difficulty, u16)>,
}

/// So often another set-up, log or cylinder is tried before an exercise is given up.
const TRIES: u32 = 400;

/// Exercises from a book. A kind and difficulty for which the book has nothing (no procedure long enough, no sound set-up) is
/// told in [`Sheet::missing`], never filled with another.
pub fn exercises<'b>(book: &'b Rulebook, terms: &Terms) -> Sheet<'b> {
    let mut sheet = Sheet {
        exercises: Vec::new(),
        missing: Vec::new(),
    };
    let logs = log::Maker {
        book,
        reviewer: Reviewer::new(book),
    };
    let mut notes = Notes::default();
    for (place, kind) in (0..terms.count).zip(terms.kinds.iter().cycle()) {
        let difficulty = terms.difficulty_of(place);
        // Each exercise has a seed of its own, so that it doesn't depend on how often the ones before it were tried.
        let mut chance = Chance::new(terms.seed, place);
        let chance = &mut chance;
        let made = match kind {
            Kind::Duration => tried(duration::asked(difficulty), chance, |asked, chance| {
                duration::exercise(book, difficulty, asked, chance)
            }),
            Kind::Order => tried(&[()], chance, |(), chance| {
                order::exercise(book, difficulty, chance)
            }),
            Kind::Setup => tried(setup::parts(difficulty), chance, |part, chance| {
                setup::exercise(book, difficulty, part, chance)
            }),
            Kind::Log => tried(log::changes(difficulty), chance, |change, chance| {
                logs.exercise(difficulty, change, chance, &mut notes)
            }),
        };
        match made {
            Some(exercise) => sheet.exercises.push(exercise),
            None => sheet.lacks(*kind, difficulty),
        }
    }
    sheet
}

/// The first variant for which an exercise comes about; which is tried first is chance, so that each has its turn, however
/// easily it comes about.
fn tried<'b, V: Copy>(
    variants: &[V],
    chance: &mut Chance,
    mut make: impl FnMut(V, &mut Chance) -> Option<Exercise<'b>>,
) -> Option<Exercise<'b>> {
    let mut variants = variants.to_vec();
    chance.shuffle(&mut variants);
    variants
        .into_iter()
        .find_map(|variant| (0..TRIES).find_map(|_| make(variant, chance)))
}

impl Sheet<'_> {
    fn lacks(&mut self, kind: Kind, difficulty: Difficulty) {
        let told = self
            .missing
            .iter_mut()
            .find(|told| (told.0, told.1) == (kind, difficulty));
        match told {
            Some((_, _, count)) => *count += 1,
            None => self.missing.push((kind, difficulty, 1)),
        }
    }
}
