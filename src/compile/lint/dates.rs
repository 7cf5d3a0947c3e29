//! The edition's dates. Those that depend on the day are looked at only when the day is given: a build must give the
//! same tables tomorrow.

use super::{
    super::diagnostic::{Diagnostic, Diagnostics},
    Finding, Lint, Places, Room, diagnostic,
    places::RuleRef,
};
use crate::book::{Agency, Date};

/// The edition is to be looked at again.
pub const REVIEW_PASSED: Lint = Lint::note("review-passed");
/// The edition doesn't hold yet.
pub const NOT_YET_EFFECTIVE: Lint = Lint::note("not-yet-effective");
/// The edition took effect before it was signed.
pub const SIGNED_LATE: Lint = Lint::note("signed-late");
/// The signature bears a day that hasn't come.
pub const SIGNED_IN_FUTURE: Lint = Lint::note("signed-in-future");

/// Whether a lint needs to know what day it is.
pub fn depends_on_the_day(lint: &str) -> bool {
    [REVIEW_PASSED, NOT_YET_EFFECTIVE, SIGNED_IN_FUTURE]
        .iter()
        .any(|dated| dated.name == lint)
}

pub fn look(room: &mut Room<'_>) {
    let agency = &room.book.agency;
    if agency.signed_off > agency.effective {
        let at = room.places.value(RuleRef::AGENCY, "signed-off");
        let other = room.places.value(RuleRef::AGENCY, "effective");
        room.find(
            SIGNED_LATE,
            &[RuleRef::AGENCY],
            at,
            format!(
                "expected a signature by the day it takes effect, {}, found {}",
                agency.effective, agency.signed_off
            ),
        )
        .label(other, "it takes effect here")
        .hint("between the two days crews would work by a book nobody signed");
    }
}

/// The dates of an edition and where they stand, for the lints that need the day.
#[derive(Clone, Debug)]
pub struct Signature {
    /// The agency alone, with what it allows.
    places: Places,
}

impl Signature {
    /// Keeps what is needed of a book's places.
    #[must_use]
    pub fn new(places: &Places) -> Self {
        let mut agency = places.written(RuleRef::AGENCY).cloned();
        if let Some(agency) = &mut agency {
            agency.allowed.retain(|allowed| depends_on_the_day(allowed.lint));
        }
        Self {
            places: Places::new(agency.into_iter()),
        }
    }

    /// What is to be said of the edition on a day.
    #[must_use]
    pub fn on(&self, today: Date, agency: &Agency) -> Vec<Diagnostic> {
        let (mut found, mut findings) = (Diagnostics::default(), Vec::new());
        let mut find = |lint, key, message, hint: &str| {
            let mut diagnostic = diagnostic(lint, self.places.value(RuleRef::AGENCY, key), message);
            diagnostic.hint(hint);
            findings.push(Finding {
                owners: vec![RuleRef::AGENCY],
                diagnostic,
            });
        };
        if agency.review < today {
            find(
                REVIEW_PASSED,
                "review",
                format!(
                    "the day of review, {}, has passed: today is {today}",
                    agency.review
                ),
                "have the book looked at again; then set new dates and sign",
            );
        }
        if agency.effective > today {
            find(
                NOT_YET_EFFECTIVE,
                "effective",
                format!(
                    "this edition takes effect on {}: today is {today}",
                    agency.effective
                ),
                "until then the edition before it holds",
            );
        }
        if agency.signed_off > today {
            find(
                SIGNED_IN_FUTURE,
                "signed-off",
                format!(
                    "expected a signature by today, {today}, found {}",
                    agency.signed_off
                ),
                "is the year right?",
            );
        }
        super::report(findings, &self.places, &mut found);
        found.into_sorted()
    }
}

/// Today by the system's clock, in universal time; `None` when the clock stands before 1970 or after 9999.
#[must_use]
pub fn today() -> Option<Date> {
    let since = std::time::SystemTime::now()
        .duration_since(std::time::UNIX_EPOCH)
        .ok()?
        .as_secs();
    // From the year and month by the mean length of both, then on to the day: at most a few steps.
    let days = since / 86_400;
    let mut year = u16::try_from(1970 + days / 366).ok()?;
    while Date::new(year.checked_add(1)?, 1, 1).ok()?.unix_seconds() <= since {
        year += 1;
    }
    let month =
        (1..=12).rfind(|month| Date::new(year, *month, 1).is_ok_and(|date| date.unix_seconds() <= since))?;
    (1..=31)
        .filter_map(|day| Date::new(year, month, day).ok())
        .rfind(|date| date.unix_seconds() <= since)
}
