//! Which cards and sheets must be printed anew: those on which anything differs but the edition, its dates and its code.

use schemars::JsonSchema;
use serde::Serialize;

use super::data::{Face, Maker};
use crate::book::{Kind, Rulebook};
use crate::compile::edition::Edition;

/// A card or sheet of one of two editions.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Reprint {
    /// The id of its rule.
    pub id: String,
    /// Its title.
    pub title: String,
    /// What became of it.
    pub why: Why,
}

/// What became of a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Why {
    /// It says the same. Where the book's code changed, the code on it is another all the same.
    Same,
    /// It says something else.
    Changed,
    /// Only the new edition has it.
    New,
    /// Only the old edition has it: to be collected.
    Gone,
    /// Its rule can't be read in one of the editions.
    NotCompared,
}

impl Why {
    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Same => "the same",
            Self::Changed => "changed",
            Self::New => "new",
            Self::Gone => "gone, to be collected",
            Self::NotCompared => "can't be compared: its rule can't be read in one of the editions",
        }
    }
}

/// Whether any card differs.
#[must_use]
pub fn any(cards: &[Reprint]) -> bool {
    cards.iter().any(|card| card.why != Why::Same)
}

/// Every card and sheet of the new edition, in its order, then those it no longer has.
///
/// # Errors
///
/// What is wrong with the file of the words of a language.
///
/// ```
/// use oxyfolio::cards::reprint;
/// use oxyfolio::compile::edition::Edition;
///
/// let edition = Edition::load("rules".as_ref()).unwrap();
/// let cards = reprint::cards(&edition, &edition)?;
/// assert!(cards.len() > 20 && !reprint::any(&cards));
/// # Ok::<(), String>(())
/// ```
pub fn cards(old: &Edition, new: &Edition) -> Result<Vec<Reprint>, String> {
    let (before, now) = (Said::of(&old.book)?, Said::of(&new.book)?);
    let unread = |edition: &Edition, face: &Face| {
        edition.left_out.iter().any(|rule| {
            matches!(rule.kind, Kind::Card | Kind::Procedure) && rule.id.as_deref() == Some(&*face.id)
        })
    };
    // What stands on all of them: the agency, the disclaimers, the words of our own.
    let frame = before.frame == now.frame;
    let of_new = now.faces.iter().map(|(face, said)| {
        let why = match before.find(face) {
            Some(was) if was == said && frame => Why::Same,
            Some(_) => Why::Changed,
            None if unread(old, face) => Why::NotCompared,
            None => Why::New,
        };
        reprint(face, why)
    });
    let gone = before.faces.iter().filter(|(face, _)| now.find(face).is_none());
    Ok(of_new
        .chain(gone.map(|(face, _)| {
            let why = if unread(new, face) {
                Why::NotCompared
            } else {
                Why::Gone
            };
            reprint(face, why)
        }))
        .collect())
}

fn reprint(face: &Face, why: Why) -> Reprint {
    Reprint {
        id: face.id.clone(),
        title: face.title.clone(),
        why,
    }
}

/// What the cards of a book say.
struct Said {
    frame: String,
    faces: Vec<(Face, String)>,
}

impl Said {
    fn of(book: &Rulebook) -> Result<Self, String> {
        let maker = Maker::new(book)?;
        let frame = serde_json::json!(maker.frame()).to_string();
        let faces = book.cards.iter().flat_map(|card| {
            // In another size a card is another card.
            let sizes: Vec<&str> = card.sizes.iter().map(|size| size.label()).collect();
            maker
                .faces(card)
                .into_iter()
                .map(move |face| {
                    let said =
                        serde_json::json!([sizes, face.title, face.notes, face.pressurised, face.body]);
                    (face, said.to_string())
                })
                .collect::<Vec<_>>()
        });
        Ok(Self {
            frame,
            faces: faces.collect(),
        })
    }

    /// What the card says that has the same rule, and among several of the same rule the same title.
    fn find(&self, face: &Face) -> Option<&String> {
        // A card and a check-off sheet of the same procedure have the same id.
        let layout = core::mem::discriminant(&face.body);
        let of_rule = || {
            let faces = self.faces.iter();
            faces.filter(|(other, _)| other.id == face.id && core::mem::discriminant(&other.body) == layout)
        };
        let mut same_title = of_rule().filter(|(other, _)| other.title == face.title);
        let found = same_title.next().or_else(|| {
            let mut of_rule = of_rule();
            // A card of its own that was renamed.
            of_rule.next().filter(|_| of_rule.next().is_none())
        });
        found.map(|(_, said)| said)
    }
}
