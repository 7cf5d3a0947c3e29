//! The page on which a medical director signs for an edit: what it changes, most telling first, and lines for name,
//! signature and date. What there is no room for is counted.

use std::path::Path;

use serde::Serialize;

use super::{
    CardsError,
    glyphs::{self, quotes},
    identity::Frame,
    output,
    reprint::{Reprint, Why},
    typst,
};
use crate::book::{OfficePaper, Rulebook};
use crate::compare::{Change, Comparison, Direction, Reason, Side};
use crate::compile::suggest::counted;

/// The most lines of changed rules.
const MOST_CHANGES: usize = 18;
/// So many lines each other part has at least, and more where few rules changed.
const MOST_LINES: usize = 5;
/// The longest text that is told whole, in characters.
const WHOLE: usize = 60;

const TEMPLATES: &[(&str, &str)] = &[
    ("main.typ", include_str!("../../cards/signoff.typ")),
    ("style.typ", include_str!("../../cards/style.typ")),
    ("words.typ", include_str!("../../cards/words.typ")),
];

/// What stands on the page, ready to print.
#[derive(Clone, Debug, Serialize)]
pub struct Page {
    #[serde(flatten)]
    frame: Frame,
    /// The old edition, in a line.
    old: String,
    /// The new edition, in a line.
    new: String,
    /// What must be known of the two editions before anything is believed.
    warnings: Vec<String>,
    counts: Vec<Count>,
    parts: Vec<Part>,
}

#[derive(Clone, Debug, Serialize)]
struct Count {
    what: &'static str,
    number: String,
}

/// A heading with its lines.
#[derive(Clone, Debug, Serialize)]
struct Part {
    heading: &'static str,
    lines: Vec<Line>,
    /// What there was no room for, or that there is nothing.
    rest: String,
}

#[derive(Clone, Debug, Serialize)]
struct Line {
    /// `STRICTER`, `LOOSER`, or empty.
    mark: &'static str,
    /// What it is about.
    about: String,
    text: String,
}

impl Page {
    /// The page of a comparison.
    #[must_use]
    pub fn new(book: &Rulebook, comparison: &Comparison, cards: &[Reprint], paper: OfficePaper) -> Self {
        let grid = &comparison.grid;
        let count = |what, number: usize| Count {
            what,
            number: number.to_string(),
        };
        let rules = || comparison.changes.iter().filter(|change| !change.wording);
        let of = |direction| rules().filter(|change| change.direction == direction).count();
        let verdicts: u32 = grid.verdicts.iter().map(|change| change.setups).sum();
        let share = |number: u32| format!("{number} of {}", grid.setups);
        let room = Room::of(comparison);
        Self {
            frame: Frame::of(book, paper),
            old: side(&comparison.old),
            new: side(&comparison.new),
            warnings: warnings(comparison)
                .iter()
                .map(|warning| quotes(warning))
                .collect(),
            counts: vec![
                count("stricter", of(Direction::Stricter)),
                count("looser", of(Direction::Looser)),
                count("other changes of rules", of(Direction::Other)),
                count(
                    "wordings",
                    comparison.changes.iter().filter(|change| change.wording).count(),
                ),
                count(
                    "worked cases otherwise",
                    comparison.cases.iter().filter(|case| !case.minutes_only).count(),
                ),
                Count {
                    what: "set-ups with another verdict",
                    number: share(verdicts),
                },
            ],
            parts: vec![
                changes(comparison),
                durations(comparison, room.durations),
                cases(comparison, room.cases),
                setups(comparison, room.setups),
                reprints(cards, comparison),
            ],
        }
    }
}

/// How many lines each part may have.
struct Room {
    durations: usize,
    cases: usize,
    setups: usize,
}

impl Room {
    /// Room that changed rules leave goes round the other parts in turn; half of it, because a line may need two.
    fn of(comparison: &Comparison) -> Self {
        let wanted = [
            comparison.grid.kinds.len(),
            comparison.cases.iter().filter(|case| !case.minutes_only).count(),
            comparison.durations.len(),
        ];
        let mut given = wanted.map(|lines| lines.min(MOST_LINES));
        let mut spare = MOST_CHANGES.saturating_sub(comparison.changes.len()) / 2;
        while spare > 0 && given != wanted {
            for (given, wanted) in given.iter_mut().zip(wanted) {
                if *given < wanted && spare > 0 {
                    *given += 1;
                    spare -= 1;
                }
            }
        }
        let [setups, cases, durations] = given;
        Self {
            durations,
            cases,
            setups,
        }
    }
}

fn side(side: &Side) -> String {
    format!(
        "edition {}, effective {}, book {}",
        side.edition, side.effective, side.code
    )
}

fn warnings(comparison: &Comparison) -> Vec<String> {
    let mut warnings: Vec<String> = comparison.one_name_for_two().into_iter().collect();
    for (word, side) in [("old", &comparison.old), ("new", &comparison.new)] {
        if side.errors > 0 {
            warnings.push(format!(
                "The check finds {} in the {word} edition: it was compared as far as it can be read.",
                counted(side.errors, "error", "errors")
            ));
        }
        if !side.left_out.is_empty() {
            warnings.push(format!(
                "{} of the {word} edition could not be read, and {} not compared.",
                counted(side.left_out.len(), "rule", "rules"),
                if side.left_out.len() == 1 { "was" } else { "were" }
            ));
        }
    }
    warnings
}

impl Part {
    /// A further sentence below the lines.
    fn add(&mut self, sentence: &str) {
        if !self.rest.is_empty() {
            self.rest.push(' ');
        }
        self.rest.push_str(&quotes(sentence));
    }
}

/// Some lines, and how many more there are.
fn part(heading: &'static str, mut lines: Vec<Line>, most: usize, nothing: &str) -> Part {
    let rest = match lines.len().checked_sub(most) {
        _ if lines.is_empty() => nothing.to_owned(),
        Some(more) if more > 0 => format!("… and {more} more: see the text of the comparison."),
        _ => String::new(),
    };
    lines.truncate(most);
    for line in &mut lines {
        line.text = quotes(&line.text);
    }
    Part { heading, lines, rest }
}

/// Changes of rules before wordings; of those, what makes the book looser first, because it lets more pass.
fn changes(comparison: &Comparison) -> Part {
    let mut changes: Vec<&Change> = comparison.changes.iter().collect();
    changes.sort_by_key(|change| {
        let rank = match change.direction {
            Direction::Looser => 0,
            Direction::Stricter => 1,
            Direction::Other => 2,
        };
        (change.wording, rank)
    });
    let line = |change: &&Change| Line {
        mark: match change.direction {
            Direction::Stricter => "STRICTER",
            Direction::Looser => "LOOSER",
            Direction::Other => "",
        },
        about: format!("{} {}", change.kind, change.name),
        text: Change {
            direction: Direction::Other,
            ..(*change).clone()
        }
        .in_short(WHOLE),
    };
    let lines = changes.iter().map(line).collect();
    let mut part = part("Rules", lines, MOST_CHANGES, "No rule changed.");
    if !comparison.reasons.is_empty() {
        let names: Vec<String> = comparison.reasons.iter().take(MOST_LINES).map(reason).collect();
        let more = comparison.reasons.len() - names.len();
        let more = if more > 0 {
            format!("; and {more} more")
        } else {
            String::new()
        };
        part.add(&format!(
            "A number changed and the reason above it did not: read again whether it still holds, for {}{more}.",
            names.join("; ")
        ));
    }
    part
}

fn reason(reason: &Reason) -> String {
    let still = match reason.still_says.as_slice() {
        [] => String::new(),
        said => format!(" (it still says {})", said.join(" and ")),
    };
    format!("{} {}{still}", reason.kind, reason.name)
}

fn plain(about: String, text: String) -> Line {
    Line {
        mark: "",
        about,
        text,
    }
}

fn durations(comparison: &Comparison, room: usize) -> Part {
    let lines = comparison.durations.iter().map(|one| {
        plain(
            one.name.clone(),
            format!(
                "{} of {} shorter, {} longer; most at {} and {}: {} → {} min",
                one.shorter,
                one.asked,
                one.longer,
                one.most.pressure,
                one.most.flow,
                one.most.was_minutes,
                one.most.is_minutes
            ),
        )
    });
    part(
        "Minutes that move by more than one",
        lines.collect(),
        room,
        "None.",
    )
}

fn cases(comparison: &Comparison, room: usize) -> Part {
    let (minutes, verdicts): (Vec<_>, Vec<_>) = comparison.cases.iter().partition(|case| case.minutes_only);
    let lines = verdicts.iter().map(|case| {
        plain(
            case.id.clone(),
            match case.remark() {
                Some(remark) => format!("{remark}: {}", case.words()),
                None => case.words(),
            },
        )
    });
    let mut part = part(
        "Worked cases that come out otherwise",
        lines.collect(),
        room,
        "None.",
    );
    if !minutes.is_empty() {
        part.add(&format!(
            "With other minutes and nothing else: {}.",
            minutes.len()
        ));
    }
    part
}

fn setups(comparison: &Comparison, room: usize) -> Part {
    let lines = comparison.grid.kinds.iter().map(|kind| {
        let comes = kind.comes.word();
        plain(
            format!("{} {} {comes}", kind.level_words(), kind.id),
            format!("in {}; for example {}", kind.setups, kind.example.setup),
        )
    });
    part(
        "Generated set-ups that are judged otherwise",
        lines.collect(),
        room,
        "None.",
    )
}

/// Cards in one paragraph: their titles say enough.
fn reprints(cards: &[Reprint], comparison: &Comparison) -> Part {
    let mut lines = Vec::new();
    for why in [Why::Changed, Why::New, Why::Gone, Why::NotCompared] {
        let titles: Vec<&str> = cards
            .iter()
            .filter(|card| card.why == why)
            .map(|card| card.title.as_str())
            .collect();
        let more = titles.len().saturating_sub(2 * MOST_LINES);
        let shown: Vec<&str> = titles.iter().take(2 * MOST_LINES).copied().collect();
        if !shown.is_empty() {
            let more = if more > 0 {
                format!("; and {more} more: see the text")
            } else {
                String::new()
            };
            lines.push(plain(
                why.words().to_owned(),
                format!("{}{more}", shown.join("; ")),
            ));
        }
    }
    let mut part = part(
        "Cards and sheets to be printed anew",
        lines,
        4,
        "None by what they say.",
    );
    let code = &comparison.new.code;
    if comparison.old.code != *code {
        part.add(&format!(
            "All carry another code ({code}): print the whole set, and collect the old one."
        ));
    }
    part
}

/// Sets the page and writes it: whole or not at all.
///
/// # Errors
///
/// [`CardsError`] when it can't be set or written; a file that was there before is then as it was.
pub fn print(page: &Page, book: &Rulebook, typst: &typst::Program, path: &Path) -> Result<(), CardsError> {
    glyphs::check(page)?;
    let pdf = typst
        .set_document(TEMPLATES, page, book.agency.effective)
        .map_err(CardsError::Typst)?;
    output::replace(path, &pdf).map_err(|error| CardsError::Output {
        path: path.to_owned(),
        error,
    })
}
