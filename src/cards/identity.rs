//! Who a page is of, for pages that aren't cards: the inspection sheet and the summary of a review.

use serde::Serialize;

use super::format::{self, Format};
use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS, OfficePaper, Rulebook};

/// Whose rulebook it is, and which edition.
#[derive(Clone, Debug, Serialize)]
pub struct Identity {
    /// The agency's name.
    pub agency: String,
    /// Where it works.
    pub place: String,
    /// Who signs the protocol.
    pub medical_director: String,
    /// The edition's name.
    pub edition: String,
    /// From when it holds.
    pub effective: String,
    /// When it is reviewed.
    pub review: String,
    /// When it was signed.
    pub signed_off: String,
    /// The rulebook's short code.
    pub digest: String,
}

impl Identity {
    /// That of a rulebook.
    #[must_use]
    pub fn of(book: &Rulebook) -> Self {
        let agency = &book.agency;
        Self {
            agency: agency.rule.name.to_string(),
            place: agency.location.to_string(),
            medical_director: agency.medical_director.to_string(),
            edition: agency.edition.to_string(),
            effective: agency.effective.to_string(),
            review: agency.review.to_string(),
            signed_off: agency.signed_off.to_string(),
            digest: book.short_digest.to_string(),
        }
    }
}

/// What every page of office paper has beside what it is about.
#[derive(Clone, Debug, Serialize)]
pub struct Frame {
    /// Whose page it is.
    pub identity: Identity,
    /// The disclaimers of everything printed, then the agency's own.
    pub disclaimers: Vec<String>,
    /// The cautions of everything printed.
    pub cautions: Vec<String>,
    /// The paper.
    pub paper: Format,
}

impl Frame {
    /// That of a rulebook's pages on a paper.
    #[must_use]
    pub fn of(book: &Rulebook, paper: OfficePaper) -> Self {
        Self {
            identity: Identity::of(book),
            disclaimers: disclaimers(book),
            cautions: ALWAYS_CAUTIONS.map(str::to_owned).to_vec(),
            paper: format::of_office_paper(paper),
        }
    }
}

/// The disclaimers of everything printed, then the agency's own.
pub fn disclaimers(book: &Rulebook) -> Vec<String> {
    let own = book.agency.disclaimers.iter().map(ToString::to_string);
    ALWAYS_DISCLAIMERS
        .map(str::to_owned)
        .into_iter()
        .chain(own)
        .collect()
}
