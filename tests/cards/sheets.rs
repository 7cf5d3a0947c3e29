//! Check-off sheets, the inspection log, the poster.

use oxyfolio::RULEBOOK;
use oxyfolio::book::Procedure;
use oxyfolio::cards::data::Body;

use super::printed::{pages, printed, squashed};

/// The first place at which a step can be done: everything that must come before it, in any order that `after` allows, and
/// then the step. The last place: everything but it and what must come after it, then the step. Both are played out.
fn extremes(procedure: &Procedure, step: usize) -> (usize, usize) {
    let ready = |done: &[usize], next: usize| {
        procedure.steps[next]
            .after
            .iter()
            .all(|earlier| done.contains(&earlier.index()))
    };
    let count = procedure.steps.len();
    // Needed: closed over `after`, one round after the other.
    let mut needed = vec![step];
    while let Some(more) = needed
        .iter()
        .flat_map(|of| procedure.steps[*of].after.iter().map(|earlier| earlier.index()))
        .find(|earlier| !needed.contains(earlier))
    {
        needed.push(more);
    }
    let mut done: Vec<usize> = Vec::new();
    while !done.contains(&step) {
        let next =
            (0..count).find(|next| needed.contains(next) && !done.contains(next) && ready(&done, *next));
        done.push(next.expect("an order that `after` allows"));
    }
    let first = done.len();
    let mut done: Vec<usize> = Vec::new();
    while let Some(next) =
        (0..count).find(|next| *next != step && !done.contains(next) && ready(&done, *next))
    {
        done.push(next);
    }
    assert!(ready(&done, step));
    (first, done.len() + 1)
}

#[test]
fn a_step_stands_at_the_places_where_the_book_allows_it() {
    let sheets = &printed()["check-off-letter"].document.cards;
    let mut free = 0;
    for (sheet, procedure) in sheets.iter().zip(&RULEBOOK.procedures) {
        let Body::CheckOff { steps, .. } = &sheet.body else {
            panic!("{} is no check-off sheet", sheet.id);
        };
        let procedure = RULEBOOK
            .procedures
            .iter()
            .find(|known| *known.rule.id == *sheet.id)
            .unwrap_or(procedure);
        for (index, step) in steps.iter().enumerate() {
            let (first, last) = extremes(procedure, index);
            let words = if first == last {
                format!("only {first}")
            } else if (first, last) == (1, steps.len()) {
                format!("any, 1 to {last}")
            } else {
                format!("{first} to {last}")
            };
            free += usize::from(first != last);
            assert_eq!(step.place, words, "{} {}", sheet.id, step.id);
            assert_eq!(step.critical, procedure.steps[index].critical);
        }
    }
    assert!(free > 40, "{free}");
}

#[test]
fn check_off_sheets_have_room_for_date_evaluator_and_remarks() {
    let pages = pages(&printed()["check-off-letter"]);
    for sheet in &printed()["check-off-letter"].document.cards {
        let own: Vec<&String> = pages
            .iter()
            .filter(|page| page.contains(&squashed(&sheet.title)))
            .collect();
        assert!(!own.is_empty(), "{}", sheet.id);
        let all: String = own.iter().map(|page| page.as_str()).collect();
        for words in [
            "Candidate",
            "Date (YYYY-MM-DD)",
            "Evaluator",
            "Remarks",
            "Signature",
            "Try 2",
            "passed",
        ] {
            assert!(all.contains(&squashed(words)), "{}: {words}", sheet.id);
        }
    }
}

/// A result on a second page gets lost.
#[test]
fn each_procedure_is_examined_on_one_page() {
    let sheets = &printed()["check-off-letter"];
    let pages = pages(sheets);
    assert_eq!(pages.len(), sheets.document.cards.len());
    for (page, sheet) in pages.iter().zip(&sheets.document.cards) {
        for words in [sheet.title.as_str(), "Result, Try 2", "page 1 of 1"] {
            assert!(page.contains(&squashed(words)), "{}: {words}", sheet.id);
        }
    }
}

#[test]
fn the_log_asks_for_the_least_reading_of_each_size() {
    let log = &pages(&printed()["inspection-log-letter"])[0];
    // 1000 psi are 68.95 bar (NIST SP 811: 6894.757 Pa to the psi): rounded up, so that none goes out with less.
    for words in [
        "D: at least 1000 psi",
        "M: at least 1000 psi",
        "2 L: at least 69 bar",
        "Action taken",
        "Initials",
    ] {
        assert!(log.contains(&squashed(words)), "{words}");
    }
}

#[test]
fn the_poster_is_one_page_with_every_step() {
    let poster = printed().get("shut-down-poster-tabloid").unwrap();
    let pages = pages(poster);
    assert_eq!(pages.len(), 1);
    let procedure = RULEBOOK
        .procedures
        .iter()
        .find(|procedure| &*procedure.rule.id == "shut-down")
        .unwrap();
    let mut at = 0;
    for step in &procedure.steps {
        let found = pages[0][at..].find(&squashed(&step.say));
        at += found.unwrap_or_else(|| panic!("{} is missing or out of order", step.id));
    }
}
