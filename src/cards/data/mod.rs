//! What is printed on cards and sheets: every string ready to print, every number from the checker.
//!
//! A file for each kind of content. The words of our own come from [`Messages`]; the rest is the book's.

mod cylinders;
mod devices;
mod durations;
mod figures;
mod sheets;
mod steps;
mod targets;

pub use cylinders::{ConnectionRow, CylinderRow};
pub use durations::DurationRow;
pub use sheets::{CheckStep, LogRow};
pub use steps::{CautionLine, StepLine};
pub use targets::{NewbornRow, TargetLine};

use std::collections::BTreeMap;

use serde::Serialize;

use super::format::{self, Format, Paper};
use super::impose::{Backs, Imposition, Shift};
use super::messages::Messages;
use super::qr::Qr;
use crate::book::{Card, CardSize, Layout, Rulebook};

/// The data of one document: cards of one size on one paper, or sheets.
#[derive(Clone, Debug, Serialize)]
pub struct Document {
    /// The language of our own words, ISO 639-1.
    pub language: &'static str,
    /// Our own words, by key.
    pub words: BTreeMap<String, String>,
    /// The document's title.
    pub title: String,
    /// Which book it belongs to.
    pub identity: Identity,
    /// The disclaimers of every card, then the agency's own.
    pub disclaimers: Vec<String>,
    /// The cautions of what is about oxygen under pressure.
    pub cautions: Vec<String>,
    /// The cards' size; the paper's for sheets.
    pub size: Format,
    /// The paper; none where each face is a page of its own.
    pub paper: Option<Format>,
    /// The cards in the order of the book, or the sheets.
    pub cards: Vec<Face>,
    /// Where cards stand on the paper when each has one face.
    pub one_sided: Option<Imposition>,
    /// Where cards stand on the paper when some have two.
    pub two_sided: Option<Imposition>,
}

/// Which book a card belongs to, each part as it is printed.
#[derive(Clone, Debug, Serialize)]
pub struct Identity {
    /// The agency's name.
    pub agency: String,
    /// The edition: `edition 1`.
    pub edition: String,
    /// From when it holds: `effective 2026-11-01`.
    pub effective: String,
    /// When it is reviewed: `review 2027-11-01`.
    pub review: String,
    /// The rulebook's short code.
    pub code: String,
}

/// One card or sheet of the book; what doesn't fit on one face goes on further ones.
#[derive(Clone, Debug, Serialize)]
pub struct Face {
    /// The identifier of its rule, for messages.
    pub id: String,
    /// Where the rule stands.
    pub place: String,
    /// Its title.
    pub title: String,
    /// Its number in the set: `card 3 of 20`.
    pub count: String,
    /// Whether it is about oxygen under pressure, and carries the cautions.
    pub pressurised: bool,
    /// Sentences at its foot.
    pub notes: Vec<String>,
    /// The QR code; sheets have none.
    pub qr: Option<Qr>,
    /// What it shows.
    pub body: Body,
}

/// What a card or sheet shows.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "layout", rename_all = "kebab-case")]
pub enum Body {
    /// Devices with their flows.
    Devices {
        /// The columns' heads.
        columns: Vec<String>,
        /// Their units; empty for words.
        units: Vec<String>,
        /// A row for each device.
        rows: Vec<Vec<String>>,
    },
    /// Saturation targets.
    Targets {
        /// In the order of the card.
        items: Vec<TargetLine>,
    },
    /// Saturation targets of the first minutes of life.
    Newborn {
        /// What all rows begin with, where it is the same.
        lead: Vec<[String; 2]>,
        /// A row for each.
        rows: Vec<NewbornRow>,
    },
    /// Minutes left by pressure and flow.
    Durations {
        /// The cylinder's name.
        cylinder: String,
        /// Its contents and factor.
        facts: String,
        /// The unit of the rows.
        pressure_unit: String,
        /// The unit of the columns.
        flow_unit: String,
        /// The columns.
        flows: Vec<String>,
        /// The rows.
        rows: Vec<DurationRow>,
        /// How the minutes were worked out.
        basis: String,
    },
    /// Cylinders and connections.
    Cylinders {
        /// A row for each cylinder.
        cylinders: Vec<CylinderRow>,
        /// A row for each connection.
        connections: Vec<ConnectionRow>,
    },
    /// The steps of a procedure.
    Steps {
        /// Its name.
        procedure: String,
        /// What it is for.
        purpose: String,
        /// When not to.
        not_when: Vec<String>,
        /// The steps.
        steps: Vec<StepLine>,
    },
    /// What to look at, one after the other.
    Checklist {
        /// A line for each.
        items: Vec<String>,
    },
    /// Hazards.
    Cautions {
        /// A line for each.
        items: Vec<CautionLine>,
    },
    /// A sheet for examining a procedure.
    CheckOff {
        /// What it is for.
        purpose: String,
        /// Who may do it.
        who: String,
        /// When not to.
        not_when: Vec<String>,
        /// The steps.
        steps: Vec<CheckStep>,
    },
    /// A sheet for inspections of cylinders.
    Log {
        /// The columns' heads.
        columns: Vec<String>,
        /// The sizes with their least reading.
        sizes: Vec<LogRow>,
    },
    /// A poster of a procedure.
    Poster {
        /// What it is for.
        purpose: String,
        /// When not to.
        not_when: Vec<String>,
        /// The steps.
        steps: Vec<StepLine>,
    },
}

impl Body {
    /// Whether it is printed on a sheet of its own and not on a card.
    #[must_use]
    pub const fn is_sheet(&self) -> bool {
        matches!(
            self,
            Self::CheckOff { .. } | Self::Log { .. } | Self::Poster { .. }
        )
    }
}

/// Whether a rule of the book is a sheet and not a card.
#[must_use]
pub const fn is_sheet(layout: &Layout) -> bool {
    matches!(
        layout,
        Layout::CheckOff { .. } | Layout::Log { .. } | Layout::Poster { .. }
    )
}

/// What every face of a book is made with.
pub(super) struct Maker<'b> {
    pub(super) book: &'b Rulebook,
    pub(super) messages: Messages,
}

impl<'b> Maker<'b> {
    /// The words of the book's agency.
    ///
    /// # Errors
    ///
    /// What is wrong with the language's file.
    pub(super) fn new(book: &'b Rulebook) -> Result<Self, String> {
        Ok(Self {
            book,
            messages: Messages::of(book.agency.language)?,
        })
    }

    /// The cards of one size, on one paper.
    ///
    /// # Errors
    ///
    /// The identifier of a card whose identity is longer than a QR code holds.
    pub(super) fn cards(
        &self,
        size: CardSize,
        paper: Paper,
        backs: Backs,
        shift: Shift,
    ) -> Result<Document, String> {
        let of_size = |card: &&Card| card.sizes.contains(&size) && !is_sheet(&card.layout);
        let mut cards: Vec<Face> = self
            .book
            .cards
            .iter()
            .filter(of_size)
            .flat_map(|card| self.faces(card))
            .collect();
        let total = cards.len();
        for (number, card) in (1..).zip(&mut cards) {
            self.number(number, total, card)?;
        }
        let (card, page) = (format::of_card(size), format::of_paper(paper));
        let impose = |two_sided| page.and_then(|page| Imposition::new(&card, &page, backs, two_sided, shift));
        let title = |identity: &Identity| {
            self.messages.with(
                "title-cards",
                &[
                    ("size", card.label),
                    ("agency", &identity.agency),
                    ("edition", &self.book.agency.edition),
                    ("code", &identity.code),
                ],
            )
        };
        Ok(Document {
            one_sided: impose(false),
            two_sided: impose(true),
            ..self.document(title, card, page, cards)
        })
    }

    /// The sheets of one rule of the book, on one paper.
    pub(super) fn sheets(&self, rule: &Card, paper: Paper) -> Option<Document> {
        let page = match rule.layout {
            Layout::Poster { .. } => format::of_poster(paper),
            _ => format::of_paper(paper),
        }?;
        let title = |identity: &Identity| {
            self.messages.with(
                "title-sheet",
                &[
                    ("title", &rule.rule.name),
                    ("agency", &identity.agency),
                    ("edition", &self.book.agency.edition),
                    ("code", &identity.code),
                ],
            )
        };
        let faces = self.faces(rule);
        Some(self.document(title, page, Some(page), faces))
    }

    fn document(
        &self,
        title: impl Fn(&Identity) -> String,
        size: Format,
        paper: Option<Format>,
        cards: Vec<Face>,
    ) -> Document {
        let identity = self.identity();
        let own = self.book.agency.disclaimers.iter().map(ToString::to_string);
        Document {
            language: self.book.agency.language.word(),
            words: self.messages.words.clone(),
            title: title(&identity),
            identity,
            disclaimers: self.messages.disclaimers.iter().cloned().chain(own).collect(),
            cautions: self.messages.cautions.to_vec(),
            size,
            paper,
            cards,
            one_sided: None,
            two_sided: None,
        }
    }

    fn identity(&self) -> Identity {
        let agency = &self.book.agency;
        let dated = |key, date: crate::book::Date| self.messages.with(key, &[("date", &date.to_string())]);
        Identity {
            agency: agency.rule.name.to_string(),
            edition: self.messages.with("edition", &[("edition", &agency.edition)]),
            effective: dated("effective", agency.effective),
            review: dated("review", agency.review),
            code: self.book.short_digest.to_string(),
        }
    }

    /// Gives a card its number and its QR code: the code on a line of its own, then everything that names the card.
    fn number(&self, number: usize, total: usize, card: &mut Face) -> Result<(), String> {
        let agency = &self.book.agency;
        card.count = self.messages.with(
            "card-of",
            &[("n", &number.to_string()), ("m", &total.to_string())],
        );
        let text = format!(
            "{}\n{number}/{total} {}\n{}\n{} {}/{}",
            self.book.short_digest,
            card.title,
            agency.rule.name,
            agency.edition,
            agency.effective,
            agency.review
        );
        card.qr = Some(Qr::new(text).ok_or_else(|| card.id.clone())?);
        Ok(())
    }

    /// What stands on every card, beside the edition: the agency, the disclaimers, the cautions.
    #[cfg(feature = "compare")]
    pub(super) fn frame(&self) -> impl Serialize + use<> {
        let agency = &self.book.agency;
        let own: Vec<String> = agency.disclaimers.iter().map(ToString::to_string).collect();
        let messages = self.messages.clone();
        (
            agency.rule.name.to_string(),
            own,
            messages.disclaimers,
            messages.cautions,
            messages.words,
        )
    }

    /// The faces of one rule of the book, without number and QR code.
    pub(super) fn faces(&self, card: &Card) -> Vec<Face> {
        let face = |id: &str, title: String, pressurised: bool, body: Body| Face {
            id: id.to_owned(),
            place: format!("{}:{}", card.rule.place.file, card.rule.place.line),
            title,
            count: String::new(),
            pressurised,
            notes: card.notes.iter().map(ToString::to_string).collect(),
            qr: None,
            body,
        };
        let own = &*card.rule.id;
        let title = || card.rule.name.to_string();
        match &card.layout {
            Layout::Devices { devices } => vec![face(own, title(), false, self.device_table(devices))],
            Layout::Targets { targets } => vec![face(own, title(), false, self.targets(targets))],
            Layout::Newborn { targets } => vec![face(own, title(), false, self.newborn(targets))],
            Layout::Durations {
                cylinders,
                pressures,
                flows,
            } => cylinders
                .iter()
                .filter_map(|id| self.book.cylinder(*id))
                .map(|cylinder| {
                    let names = [("title", &*card.rule.name), ("name", &*cylinder.rule.name)];
                    let title = self.messages.with("minutes-of", &names);
                    face(own, title, true, self.duration_table(cylinder, pressures, flows))
                })
                .collect(),
            Layout::Cylinders {
                cylinders,
                connections,
            } => vec![face(
                own,
                title(),
                true,
                self.cylinder_facts(cylinders, connections),
            )],
            Layout::Checklist { items } => {
                let items = items.iter().map(ToString::to_string).collect();
                vec![face(own, title(), true, Body::Checklist { items })]
            }
            Layout::Cautions { hazards } => vec![face(own, title(), true, self.cautions(hazards))],
            Layout::Steps { procedures }
            | Layout::CheckOff { procedures }
            | Layout::Poster { procedures } => {
                procedures
                    .iter()
                    .filter_map(|id| self.book.procedure(*id))
                    .map(|procedure| {
                        // One procedure goes by the card's title; several go by their own names.
                        let alone = procedures.len() == 1;
                        let (id, name) = match &card.layout {
                            Layout::CheckOff { .. } => (
                                &procedure.rule.id,
                                format!("{}: {}", title(), procedure.rule.name),
                            ),
                            _ if alone => (&card.rule.id, title()),
                            _ => (&procedure.rule.id, procedure.rule.name.to_string()),
                        };
                        let body = match &card.layout {
                            Layout::Steps { .. } => self.steps(procedure),
                            Layout::Poster { .. } => self.poster(procedure),
                            _ => self.check_off(procedure),
                        };
                        face(id, name, true, body)
                    })
                    .collect()
            }
            Layout::Log { cylinders, items } => {
                vec![face(own, title(), true, self.log(cylinders, items))]
            }
        }
    }
}
