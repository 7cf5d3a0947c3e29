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
    /// Where it stands: in the new edition where that has it.
    pub place: Place,
    /// What only the old book says of it.
    pub goes: Vec<String>,
    /// What only the new book says of it.
    pub appears: Vec<String>,
    /// Whether nothing but its minutes is otherwise.
    pub minutes_only: bool,
}

impl CaseChange {
    /// What goes and what appears, in a line.
    #[must_use]
    pub fn words(&self) -> String {
        let part = |what: &str, said: &[String]| {
            if said.is_empty() {
                String::new()
            } else {
                format!("{what} {}", said.join(", "))
            }
        };
        let parts = [part("goes:", &self.goes), part("appears:", &self.appears)];
        let parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        parts.join("; ")
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
    let left = of_old.iter().filter(|case| !twin(case, &of_new));
    let ask = |case: &Case<'_>| {
        let said = |said: Result<Vec<String>, String>| {
            said.unwrap_or_else(|why| vec![format!("can't be asked: {why}")])
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
            minutes_only: minutes(&goes) && minutes(&appears),
            goes,
            appears,
        })
    };
    of_new.iter().chain(left).filter_map(ask).collect()
}

fn is_minutes(said: &str) -> bool {
    said.strip_suffix(" min")
        .is_some_and(|number| number.bytes().all(|byte| byte.is_ascii_digit()))
}
