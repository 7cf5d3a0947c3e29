//! How rules read on the desk: quoted values filled in, sentences apart, what is undecided told as such.

use std::{fs, path::PathBuf};

use oxyfolio::{
    book::OfficePaper,
    compile::{folder, skeleton::Start},
    quantity::{PressureUnit, TemperatureUnit},
};

use super::{common, decided, support::open};

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

/// What a page says, without its marks.
fn text_of(page: &str) -> String {
    let mut text = String::new();
    let mut in_mark = false;
    for sign in page.chars() {
        match sign {
            '<' => in_mark = true,
            '>' => in_mark = false,
            sign if !in_mark => text.push(sign),
            _ => {}
        }
    }
    text
}

/// A fresh rulebook in a folder.
fn fresh() -> (tempfile::TempDir, PathBuf) {
    let parent = tempfile::tempdir().unwrap();
    let folder = parent.path().join("rules");
    Start::new(
        "Upper Vale",
        PressureUnit::Psi,
        TemperatureUnit::Celsius,
        OfficePaper::A4,
    )
    .unwrap()
    .write(&folder)
    .unwrap();
    (parent, folder)
}

fn decide(folder: &std::path::Path, chapter: &str, most: Option<usize>) {
    let path = folder.join(chapter);
    let text = fs::read_to_string(&path).unwrap();
    fs::write(&path, decided::filled(&text, most)).unwrap();
}

/// The demo's texts as the typed book has them, which the compiler filled: the desk fills from what is written.
#[test]
fn quoted_values_are_those_of_the_book() {
    let rules = common::rules();
    let book = folder::load(&rules).unwrap().book;
    let desk = open(&rules);
    let mut pages = String::new();
    for entry in fs::read_dir(&rules).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let page = desk.page(&format!("/chapter/{name}"));
        // The source of a rule is shown as it is written, with its braces.
        let without_source: String = page
            .split("<pre class=\"source-text\">")
            .map(|part| part.split_once("</pre>").map_or(part, |(_, rest)| rest))
            .collect();
        pages += &text_of(&without_source);
    }
    assert!(!pages.contains('{'), "no brace is left");
    assert!(!pages.contains("not filled in yet"));
    let mut texts: Vec<&str> = Vec::new();
    for procedure in &*book.procedures {
        texts.extend(procedure.steps.iter().flat_map(|step| [&*step.say, &*step.why]));
    }
    for hazard in &*book.hazards {
        texts.extend([&*hazard.say, &*hazard.remedy]);
    }
    for target in &*book.targets {
        texts.extend([&*target.step_up, &*target.step_down]);
    }
    for card in &*book.cards {
        texts.extend(card.notes.iter().map(|note| &**note));
    }
    assert!(texts.len() > 300);
    for text in texts {
        assert!(pages.contains(&escaped(text)), "{text}");
    }
    let procedure = book
        .procedures
        .iter()
        .find(|procedure| &*procedure.rule.id == "apply-reservoir-mask");
    let order = text_of(&desk.page("/order/apply-reservoir-mask"));
    for step in &*procedure.unwrap().steps {
        assert!(order.contains(&escaped(&step.say)), "{}", step.say);
    }
}

#[test]
fn what_is_not_decided_is_marked_where_it_is_quoted_and_filled_when_it_is() {
    let (_parent, folder) = fresh();
    let desk = open(&folder);
    let chapter = "/chapter/06-procedures.md";
    let page = text_of(&desk.page(chapter));
    assert!(
        page.contains("usually [not filled in yet: non-rebreather.usual-flow], never below [not filled in yet: non-rebreather.least-flow]."),
        "{page}"
    );
    assert!(desk.page(chapter).contains("<span class=\"missing\">"));
    let order = text_of(&desk.page("/order/apply-cannula"));
    assert!(
        order.contains("[not filled in yet: nasal-cannula.usual-flow]"),
        "{order}"
    );
    // The devices are decided, and the rest of the book isn't: their flows are there.
    decide(&folder, "02-devices.md", None);
    let page = desk.wait_for(chapter, |page| {
        text_of(page).contains("usually 15 L/min, never below 10 L/min.")
    });
    assert!(
        page.contains(
            "<span class=\"quoted\" title=\"quoted from non-rebreather.usual-flow\">15 L/min</span>"
        )
    );
    // A value that is there and can't be read is another thing.
    common::edit(&folder, "02-devices.md", "usual: 15 L/min", "usual: 15");
    desk.wait_for(chapter, |page| {
        text_of(page).contains("usually [can't be read: non-rebreather.usual-flow]")
    });
}

#[test]
fn sentences_of_a_list_stand_apart() {
    let desk = open(&common::rules());
    let page = desk.page("/chapter/05-delivery-devices.md");
    for item in [
        "The nose is blocked or bleeding.",
        "The patient is not breathing enough: ventilate by hand.",
    ] {
        assert!(page.contains(&format!("<li>{item}</li>")), "{item}: {page}");
    }
    // Names and numbers go on in a line.
    assert!(text_of(&page).contains("Adult, Child, Infant, Newborn"), "{page}");
}

#[test]
fn a_fresh_book_is_told_by_what_is_to_be_decided() {
    let (_parent, folder) = fresh();
    let desk = open(&folder);
    let front = desk.page("/");
    assert!(
        front.contains("56 values to decide</a>: the rulebook can't be used until they are decided."),
        "{front}"
    );
    assert!(front.contains("not yet decided: not to be signed or printed"));
    assert!(front.contains("Edition not decided yet, effective not decided yet, review not decided yet"));
    assert!(!text_of(&front).contains("undecided ("), "{}", text_of(&front));
    assert!(!text_of(&front).contains("error"), "{}", text_of(&front));
    let problems = desk.page("/problems");
    assert!(problems.contains("<h2>To decide</h2>") && problems.contains("56 values are still marked."));
    assert!(problems.contains("<strong>to decide</strong>"));
    assert!(
        desk.page("/cards")
            .contains("Not every value of the rulebook is decided yet, so no cards can be printed.")
    );
    // A mistake is told apart.
    common::edit(&folder, "05-hazards.md", "severity: warn", "severity: mild");
    let front = desk.wait_for("/", |page| page.contains("56 values to decide and 1 error</a>"));
    assert!(front.contains("until all are decided and put right."), "{front}");
    assert!(front.contains("has errors: not to be signed or printed"));
    let problems = desk.page("/problems");
    assert!(problems.contains("To put right or to look at"));
}
