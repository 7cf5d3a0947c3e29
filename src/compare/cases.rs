//! Worked cases that come out otherwise.
//!
//! Both books are asked the cases of both editions. A case that changed is two: what the old one asked, and what the new one
//! asks. Cases about a rule's figures ask nothing; the figures are told with their rule.

use schemars::JsonSchema;
use serde::Serialize;

use super::change::Place;
use crate::compile::edition::{Case, Edition};

/// A worked case that comes out otherwise.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct CaseChange {
    /// The case's id.
    pub id: String,
    /// Where it stands, in the edition whose text was asked: in the new one where both have the same.
    pub place: Place,
    /// Whose text of the case was asked of both books.
    pub asked: Asked,
    /// What only the old book says of it.
    pub goes: Vec<String>,
    /// What only the new book says of it.
    pub appears: Vec<String>,
    /// Whether nothing but its minutes is otherwise.
    pub minutes_only: bool,
}

/// Whose text of a case was asked of both books.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Asked {
    /// Both editions have the case, with the same text.
    InBoth,
    /// Both editions have the case, and the old one's text was asked.
    AsItWas,
    /// Both editions have the case, and the new one's text was asked.
    AsItIs,
    /// Only the old edition has the case.
    InOldOnly,
    /// Only the new edition has the case.
    InNewOnly,
}

impl Asked {
    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::InBoth => "the case is the same in both editions",
            Self::AsItWas => "the case was changed; asked was its old text",
            Self::AsItIs => "the case was changed; asked was its new text",
            Self::InOldOnly => "only the old edition has this case",
            Self::InNewOnly => "only the new edition has this case",
        }
    }

    /// Of the comparison the other way.
    #[must_use]
    pub const fn reversed(self) -> Self {
        match self {
            Self::InBoth => Self::InBoth,
            Self::AsItWas => Self::AsItIs,
            Self::AsItIs => Self::AsItWas,
            Self::InOldOnly => Self::InNewOnly,
            Self::InNewOnly => Self::InOldOnly,
        }
    }
}

impl CaseChange {
    /// Whose text was asked, where it is not the same in both editions.
    #[must_use]
    pub fn remark(&self) -> Option<&'static str> {
        (self.asked != Asked::InBoth).then(|| self.asked.words())
    }

    /// What each of the books says of it alone, in a line.
    #[must_use]
    pub fn words(&self) -> String {
        let (goes, appears) = (self.goes.join(", "), self.appears.join(", "));
        match (goes.as_str(), appears.as_str()) {
            (goes, "") => format!("only the old book says {goes}"),
            ("", appears) => format!("only the new book says {appears}"),
            (goes, appears) => format!("the old book says {goes}; the new book says {appears}"),
        }
    }
}

pub(super) fn cases(old: &Edition, new: &Edition) -> Vec<CaseChange> {
    let of_old: Vec<Case<'_>> = old.cases().collect();
    let of_new: Vec<Case<'_>> = new.cases().collect();
    let twin = |case: &Case<'_>, among: &[Case<'_>]| {
        among
            .iter()
            .any(|other| other.id() == case.id() && other.asks_as(case))
    };
    let has = |case: &Case<'_>, among: &[Case<'_>]| among.iter().any(|other| other.id() == case.id());
    let now = of_new.iter().map(|case| {
        let asked = if twin(case, &of_old) {
            Asked::InBoth
        } else if has(case, &of_old) {
            Asked::AsItIs
        } else {
            Asked::InNewOnly
        };
        (case, asked)
    });
    let left = of_old.iter().filter(|case| !twin(case, &of_new)).map(|case| {
        let asked = if has(case, &of_new) {
            Asked::AsItWas
        } else {
            Asked::InOldOnly
        };
        (case, asked)
    });
    let ask = |(case, asked): (&Case<'_>, Asked)| {
        let said = |said: Result<Vec<String>, String>| {
            said.unwrap_or_else(|why| vec![format!("it can't be asked: {why}")])
        };
        let (was, is) = (said(case.asked(&old.book)), said(case.asked(&new.book)));
        let only = |one: &[String], other: &[String]| -> Vec<String> {
            one.iter().filter(|item| !other.contains(item)).cloned().collect()
        };
        let (goes, appears) = (only(&was, &is), only(&is, &was));
        let minutes = |said: &[String]| said.iter().all(|item| is_minutes(item));
        (was != is).then(|| CaseChange {
            id: case.id().to_owned(),
            place: Place::from(case.place()),
            asked,
            minutes_only: minutes(&goes) && minutes(&appears),
            goes,
            appears,
        })
    };
    now.chain(left).filter_map(ask).collect()
}

fn is_minutes(said: &str) -> bool {
    said.strip_suffix(" min")
        .is_some_and(|number| number.bytes().all(|byte| byte.is_ascii_digit()))
}
