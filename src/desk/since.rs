//! Since the last edition: what an edit means, in the words of `oxyfolio compare`.

use std::{
    path::Path,
    process::{Command, Stdio},
    sync::{Arc, Mutex, PoisonError},
};

use maud::{Markup, html};

use super::{
    chapter,
    page::{Room, numbered, worded},
    query::{Query, escaped},
    reading::Reading,
    routes::{Desk, Page},
};
use crate::book::Kind;
use crate::cards::reprint::{self, Reprint, Why};
use crate::compare::{
    Change, Comparison, Example, GridChange, Side, compare,
    edition::{CannotRead, Where, read},
};
use crate::compile::{edition::Edition, render::visible};

/// The longest text of a rule that is told whole; of a longer one, what differs.
const WHOLE: usize = 400;

/// As many revisions are offered.
const REVISIONS: &str = "-20";

/// The last comparison: it belongs to two texts.
#[derive(Debug, Default)]
pub struct Compared(Mutex<Option<Arc<Told>>>);

#[derive(Debug)]
struct Told {
    comparison: Comparison,
    cards: Result<Vec<Reprint>, String>,
}

impl Compared {
    fn of(&self, old: &Edition, new: &Edition) -> Arc<Told> {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let is_it = |told: &&Arc<Told>| {
            let sides = (&told.comparison.old.digest, &told.comparison.new.digest);
            *sides.0 == *old.book.digest && *sides.1 == *new.book.digest
        };
        if let Some(told) = kept.as_ref().filter(is_it) {
            return Arc::clone(told);
        }
        let told = Arc::new(Told {
            comparison: compare(old, new),
            cards: reprint::cards(old, new),
        });
        *kept = Some(Arc::clone(&told));
        told
    }
}

/// The edition to compare with: the page's own choice, or that of the command line.
pub fn chosen<'a>(desk: &'a Desk, query: &'a Query) -> Option<&'a str> {
    query.get("with").or(desk.since.as_deref())
}

/// Reads the old edition.
pub fn old(desk: &Desk, words: &str) -> Result<Edition, String> {
    let place = Where::from_words(words);
    let Some(rules) = desk.rules() else {
        return match place {
            Where::Folder(folder) => {
                Edition::load(&folder).map_err(|rejected| why(&CannotRead::Rejected(rejected)))
            }
            Where::Revision(_) => Err(
                "the rulebook in this program is in no repository; give a folder that holds the old edition"
                    .to_owned(),
            ),
        };
    };
    read(&place, rules).map_err(|error| why(&error))
}

/// Why an edition can't be read; of a rejected one the first reason is enough.
fn why(error: &CannotRead) -> String {
    match error {
        CannotRead::Rejected(rejected) => {
            let first = rejected.diagnostics.first().map_or("", |found| &found.message);
            format!("no rulebook is left of it that could be compared: {first}")
        }
        other => other.to_string(),
    }
}

/// The page.
pub fn page(desk: &Desk, reading: &Reading, query: &Query) -> Page {
    let words = chosen(desk, query);
    let content = html! {
        h1 { "Since the last edition" }
        (choice(desk, words))
        div #since data-part {
            @if let Some(words) = words {
                @match compared(desk, reading, words) {
                    Ok(told) => (shown(reading, words, &told)),
                    Err(error) => div.refusal {
                        p { strong { "These editions can't be compared." } }
                        p { (visible(words)) ": " (worded(&error)) }
                    },
                }
            } @else {
                p { "Choose the edition that is in force now: what your edit changes is told here before you sign it." }
            }
        }
    };
    Page {
        title: "Since the last edition".to_owned(),
        room: Room::Since,
        content,
    }
}

fn compared(desk: &Desk, reading: &Reading, words: &str) -> Result<Arc<Told>, String> {
    let old = old(desk, words)?;
    let new = Edition::of(reading.sources.clone()).map_err(|rejected| {
        format!(
            "the edition on the desk: {}",
            why(&CannotRead::Rejected(rejected))
        )
    })?;
    Ok(desk.compared.of(&old, &new))
}

/// A folder or a revision, to be typed, and the last revisions to be clicked.
fn choice(desk: &Desk, words: Option<&str>) -> Markup {
    let revisions = desk.rules().map(revisions).unwrap_or_default();
    html! {
        form.choice action="/since" {
            p.field {
                label for="with" { "The edition to compare with: a folder, or " code { "git:" } " and a revision" }
                input #with type="text" name="with" value=(words.unwrap_or("")) autocomplete="off";
            }
            p { button type="submit" { "Compare" } }
        }
        @if !revisions.is_empty() {
            details data-keep="revisions" open[words.is_none()] {
                summary { "Revisions of this folder in its repository" }
                ul.revisions {
                    @for (revision, day, subject) in &revisions {
                        li {
                            a href={ "/since?with=git:" (escaped(revision)) } { code { (visible(revision)) } }
                            " " (visible(day)) " " (visible(subject))
                        }
                    }
                }
            }
        }
    }
}

/// The last revisions that touched the folder; none where there is no git or no repository.
fn revisions(rules: &Path) -> Vec<(String, String, String)> {
    let said = Command::new("git")
        .arg("-C")
        .arg(rules)
        .args([
            "log",
            REVISIONS,
            "--format=%h%x09%as%x09%s",
            "--no-show-signature",
            "--",
            ".",
        ])
        .env("GIT_OPTIONAL_LOCKS", "0")
        .env("GIT_TERMINAL_PROMPT", "0")
        .stdin(Stdio::null())
        .output();
    let Ok(said) = said.map(|said| String::from_utf8_lossy(&said.stdout).into_owned()) else {
        return Vec::new();
    };
    said.lines()
        .filter_map(|line| {
            let mut parts = line.splitn(3, '\t').map(str::to_owned);
            Some((parts.next()?, parts.next()?, parts.next()?))
        })
        .collect()
}

fn shown(reading: &Reading, words: &str, told: &Told) -> Markup {
    let comparison = &told.comparison;
    html! {
        @if let Some(said) = comparison.one_name_for_two() { p.wrong { (worded(&said)) } }
        dl.facts {
            @for (word, side) in [("Then", &comparison.old), ("Now", &comparison.new)] { dt { (word) } dd { (one_side(side)) } }
        }
        @if comparison.is_empty() && told.cards.as_ref().is_ok_and(|cards| !reprint::any(cards)) {
            p.fine { "Nothing changed in what the rulebook says." }
        } @else {
            (changes(reading, comparison))
            (durations(comparison))
            (cases(comparison))
            (grid(reading, comparison))
            (cards(words, &told.cards))
        }
    }
}

fn one_side(side: &Side) -> Markup {
    html! {
        "edition " (visible(&side.edition)) ", effective " (side.effective) ", book " span.code { (side.code) }
        @if side.errors > 0 {
            br; span.wrong { "It has " (numbered(side.errors, "error")) " today: it was compared as far as it can be read." }
        }
        @for rule in &side.left_out {
            br; span.wrong { "Not compared: " (rule.kind) " " (visible(rule.id.as_deref().unwrap_or("?"))) " (" (visible(&rule.file)) ":" (rule.line) ")" }
        }
    }
}

/// A sentence with its capital letter.
fn capital(words: &str) -> String {
    let mut signs = words.chars();
    let first = signs.next().map(|first| first.to_uppercase().to_string());
    first.unwrap_or_default() + signs.as_str()
}

fn rule_link(reading: &Reading, kind: &str, id: &str, name: &str) -> Markup {
    let kind = Kind::ALL.into_iter().find(|known| known.word() == kind);
    let address = kind.and_then(|kind| chapter::rule_address(reading, kind, id));
    html! {
        @match address {
            Some(address) => a href=(address) { (visible(name)) },
            None => (visible(name)),
        }
    }
}

fn changes(reading: &Reading, comparison: &Comparison) -> Markup {
    // Rules in the order of the book, each with what changed in it.
    let mut rules: Vec<Vec<&Change>> = Vec::new();
    for change in &comparison.changes {
        match rules.last_mut() {
            Some(rule)
                if rule
                    .first()
                    .is_some_and(|first| (first.kind, &first.id) == (change.kind, &change.id)) =>
            {
                rule.push(change)
            }
            _ => rules.push(vec![change]),
        }
    }
    html! {
        h2 { "Rules" }
        @if rules.is_empty() { p { "No rule changed." } }
        @for rule in &rules {
            @if let Some(first) = rule.first() {
                section.changed-rule {
                    h3 { (first.kind) " " (rule_link(reading, first.kind, &first.id, &first.name)) }
                    ul { @for change in rule { li { (visible(&change.in_short(WHOLE))) } } }
                    @for reason in comparison.reasons.iter().filter(|reason| reason.is_of(first)) {
                        p.reminder { (visible(&capital(&reason.words()))) }
                    }
                }
            }
        }
    }
}

fn durations(comparison: &Comparison) -> Markup {
    html! {
        h2 { "Minutes" }
        @if comparison.durations.is_empty() { p { "No duration moves by more than one minute." } }
        @else {
            div.wide tabindex="0" role="region" aria-label="Minutes that move" {
                table {
                    thead { tr {
                        th scope="col" { "Cylinder" } th scope="col" { "Shorter" } th scope="col" { "Longer" }
                        th scope="col" { "Most" }
                    } }
                    tbody { @for one in &comparison.durations { tr {
                        th scope="row" { (visible(&one.name)) }
                        td { (one.shorter) " of " (one.asked) }
                        td { (one.longer) " of " (one.asked) }
                        td { "at " (one.most.pressure) " and " (one.most.flow) ": " (one.most.was_minutes) " → " (one.most.is_minutes) " min" }
                    } } }
                }
            }
        }
    }
}

fn cases(comparison: &Comparison) -> Markup {
    html! {
        h2 { "Worked cases" }
        @if comparison.cases.is_empty() { p { "None comes out otherwise." } }
        @else {
            p { "Each was asked of both books, and is the same in both editions where nothing else is said." }
            ul { @for case in &comparison.cases { li {
                code { (visible(&case.id)) }
                @if let Some(remark) = case.remark() { ", " (remark) }
                ": " (visible(&case.words())) " "
                span.small { "(" (visible(&case.place.file)) ":" (case.place.line) ")" }
            } } }
        }
    }
}

fn grid(reading: &Reading, comparison: &Comparison) -> Markup {
    let grid = &comparison.grid;
    html! {
        h2 { "Set-ups" }
        @if grid.changed == 0 { p { "None of " (grid.setups) " generated set-ups is judged otherwise." } }
        @else {
            @let have = if grid.changed == 1 { "has" } else { "have" };
            p { "Of " (grid.setups) " generated set-ups, " (grid.changed) " " (have) " other findings now." }
            ul { @for change in &grid.verdicts { li {
                (change.was.words()) " → " (change.is.words()) ": " (change.setups)
            } } }
            ul.findings { @for kind in &grid.kinds { (grid_change(reading, kind)) } }
        }
    }
}

/// What appears or goes, with an example that can be tried.
fn grid_change(reading: &Reading, change: &GridChange) -> Markup {
    html! {
        li class={ "finding " (change.level) } {
            p {
                strong { (change.level_words()) " " (change.comes.word()) } " in " (change.setups) ": " (visible(&change.example.message)) " "
                "(" (change.kind) " " (rule_link(reading, change.kind, &change.id, &change.id)) ")"
            }
            p.small {
                "Smallest example: " (visible(&change.example.setup)) ". "
                @if reading.is_sound { a href=(try_address(&change.example)) { "Try it" } }
            }
        }
    }
}

/// An example as a question of the page on which set-ups are tried.
fn try_address(example: &Example) -> String {
    let mut query = form_urlencoded::Serializer::new(String::new());
    let number = |number: &f64| number.to_string();
    query.append_pair("device", &example.device);
    query.append_pair("flow", &number(&example.flow_lpm));
    for (name, value) in [
        ("group", example.group.clone()),
        ("since-birth", example.since_birth_minutes.as_ref().map(number)),
        ("spo2", example.spo2_percent.as_ref().map(number)),
        ("cylinder", example.cylinder.clone()),
        ("pressure", example.pressure.clone()),
        // The form's own unit is the agency's; this one is degrees Celsius.
        (
            "temperature",
            example.temperature_c.map(|degrees| format!("{degrees} °C")),
        ),
        ("minutes", example.minutes_wanted.as_ref().map(number)),
    ] {
        if let Some(value) = value {
            query.append_pair(name, &value);
        }
    }
    match example.conditions.as_deref() {
        None => {}
        Some([]) => {
            query.append_pair("condition", "none");
        }
        Some(conditions) => {
            for condition in conditions {
                query.append_pair("condition", condition);
            }
        }
    }
    format!("/try?{}", query.finish())
}

fn cards(words: &str, cards: &Result<Vec<Reprint>, String>) -> Markup {
    html! {
        h2 { "Cards" }
        @match cards {
            Err(error) => p.wrong { (worded(error)) },
            Ok(cards) => {
                @let differ: Vec<&Reprint> = cards.iter().filter(|card| !matches!(card.why, Why::Same)).collect();
                @if differ.is_empty() { p { "What the cards say is the same." } }
                @else {
                    p { "To be printed anew:" }
                    ul { @for card in differ { li { (visible(&card.title)) ": " (card.why.words()) } } }
                }
                p { "Every card carries the code of its text: with another text, print the whole set and collect the old one. "
                    a href={ "/cards?with=" (escaped(words)) } { "See the cards beside the old ones" } "." }
            }
        }
    }
}
