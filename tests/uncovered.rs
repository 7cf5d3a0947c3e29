//! Worked cases of the demo rulebook: nothing in it can change unnoticed, and a case that fails says why.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "compile")]

use oxyfolio::compile::{compile, diagnostic::Level, source::Sources, uncovered};
use oxyfolio::{CHAPTERS, RULEBOOK};

/// The demo rulebook's chapters, by file name.
fn demo() -> Vec<(String, String)> {
    let owned = |(name, text): &(&str, &str)| ((*name).to_owned(), (*text).to_owned());
    CHAPTERS.iter().map(owned).collect()
}

fn sources(chapters: &[(String, String)]) -> Sources {
    let mut sources = Sources::default();
    for (name, text) in chapters {
        sources.add(name.clone(), format!("rules/{name}"), text.clone());
    }
    sources
}

/// The demo rulebook with one place of a chapter written otherwise; gives the line of that place too.
fn edited(chapter: &str, find: &str, write: &str) -> (Vec<(String, String)>, usize) {
    let mut chapters = demo();
    let (_, text) = chapters
        .iter_mut()
        .find(|(name, _)| name == chapter)
        .expect("the chapter is in the book");
    assert_eq!(text.matches(find).count(), 1, "{find:?} stands once in {chapter}");
    let line = text[..text.find(find).unwrap()].matches('\n').count() + 1;
    *text = text.replacen(find, write, 1);
    (chapters, line)
}

/// What the compiler draws of chapters it refuses; every error must be a case that fails.
fn failed_cases(chapters: &[(String, String)]) -> String {
    let rejected = compile(sources(chapters)).expect_err("a case fails");
    for diagnostic in rejected
        .diagnostics
        .iter()
        .filter(|found| found.level == Level::Error)
    {
        assert_eq!(diagnostic.code, "case-failed", "{}", rejected.render(false));
    }
    rejected.render(false)
}

#[track_caller]
fn assert_says(drawn: &str, words: &[&str]) {
    for word in words {
        assert!(drawn.contains(word), "{word:?} is not in:\n{drawn}");
    }
}

/// The text of all case blocks.
fn case_blocks() -> String {
    let mut text = String::new();
    for (_, chapter) in CHAPTERS {
        let mut inside = false;
        for line in chapter.lines() {
            match line {
                "```yaml case" => inside = true,
                "```" => inside = false,
                line if inside => {
                    text.push_str(line);
                    text.push('\n');
                }
                _ => {}
            }
        }
    }
    text
}

/// How often a case names a rule by words: `device: e` isn't named by `device: east`.
fn times(text: &str, words: &str) -> usize {
    text.match_indices(words)
        .filter(|(at, _)| {
            let next = text[at + words.len()..].chars().next();
            next.is_none_or(|next| !(next.is_alphanumeric() || next == '-'))
        })
        .count()
}

#[test]
fn demo_rulebook_leaves_nothing_uncovered() {
    let (_, left) =
        uncovered(sources(&demo())).unwrap_or_else(|rejected| panic!("{}", rejected.render(false)));
    let what: Vec<&str> = left.iter().map(|one| one.what.as_str()).collect();
    assert_eq!(what, [""; 0]);
}

#[test]
fn without_its_cases_the_demo_rulebook_leaves_much_uncovered() {
    let without: Vec<(String, String)> = demo()
        .into_iter()
        .map(|(name, text)| (name, text.replace("```yaml case", "```text")))
        .collect();
    let (_, left) =
        uncovered(sources(&without)).unwrap_or_else(|rejected| panic!("{}", rejected.render(false)));
    assert!(left.len() > 400, "{} left", left.len());
}

#[test]
fn every_device_hazard_and_procedure_has_a_case() {
    let cases = case_blocks();
    for device in &RULEBOOK.devices {
        let id = &device.rule.id;
        // At least its floor and its ceiling, from both sides.
        assert!(times(&cases, &format!("device: {id}")) >= 4, "device {id}");
    }
    for hazard in &RULEBOOK.hazards {
        let id = &hazard.rule.id;
        let level = hazard.severity.word();
        assert!(
            times(&cases, &format!("{level} hazard {id}")) >= 1,
            "hazard {id} is never expected to be found"
        );
    }
    for procedure in &RULEBOOK.procedures {
        let id = &procedure.rule.id;
        // The order of the page and at least one wrong order.
        assert!(times(&cases, &format!("procedure: {id}")) >= 2, "procedure {id}");
    }
    for cylinder in &RULEBOOK.cylinders {
        let id = &cylinder.rule.id;
        assert!(times(&cases, &format!("cylinder: {id}")) >= 3, "cylinder {id}");
    }
    for target in &RULEBOOK.targets {
        let id = &target.rule.id;
        assert!(times(&cases, &format!("target {id}")) >= 2, "target {id}");
    }
}

#[test]
fn every_procedure_is_done_in_the_order_of_the_page() {
    let cases = case_blocks();
    // Steps of a case may stand on two lines.
    let cases = cases.split_whitespace().collect::<Vec<_>>().join(" ");
    for procedure in &RULEBOOK.procedures {
        let ids: Vec<&str> = procedure.steps.iter().map(|step| &*step.id).collect();
        let page = format!("steps: [{}]", ids.join(", "));
        assert!(cases.contains(&page), "no case has {page}");
    }
}

#[test]
fn a_limit_that_moves_fails_the_cases_at_it_and_names_the_device() {
    const CHAPTER: &str = "05-delivery-devices.md";
    let find =
        "id: non-rebreather\nname: Non-rebreather mask\nalso: [NRB, reservoir mask]\nflow: 10 to 15 L/min";
    let (chapters, line) = edited(CHAPTER, find, &find.replace("10 to 15", "9 to 15"));
    let drawn = failed_cases(&chapters);
    assert_says(
        &drawn,
        &[
            "error[case-failed]: this case fails: expected",
            "`stop device non-rebreather`",
            &format!("{line} | id: non-rebreather"),
            "stop device non-rebreather: expected, and not found",
            "stop hazard reservoir-flow-too-low: expected, and not found",
            "correct the rule; or, where the new answer is right, move the case to just beyond the new limit, or write `no finding` in it",
        ],
    );
}

#[test]
fn a_figure_that_moves_fails_where_it_is_written_twice_and_shows_both() {
    let find = "contents: 350 L at 2200 psi";
    let (chapters, line) = edited(
        "03-cylinders-and-connections.md",
        find,
        "contents: 360 L at 2200 psi",
    );
    let drawn = failed_cases(&chapters);
    assert_says(
        &drawn,
        &[
            "expected `350 L at 2200 psi`, found `360 L at 2200 psi`",
            "rules/14-figures-twice.md:",
            &format!("rules/03-cylinders-and-connections.md:{line}:"),
            "the rule says it here",
        ],
    );
}

#[test]
fn a_factor_that_moves_changes_minutes_and_names_the_cylinder() {
    let find = "- id: m\n  name: \"M\"";
    let (mut chapters, line) = edited("03-cylinders-and-connections.md", find, find);
    let (_, text) = chapters
        .iter_mut()
        .find(|(name, _)| name.starts_with("03-"))
        .unwrap();
    *text = text.replacen("factor: 1.56 L/psi", "factor: 1.57 L/psi", 1);
    let drawn = failed_cases(&chapters);
    assert_says(
        &drawn,
        &[
            "this case fails: expected 280 min, found 282 min",
            &format!("rules/03-cylinders-and-connections.md:{line}:"),
            "the cylinder is here",
            "expected `1.56 L/psi`, found `1.57 L/psi`",
        ],
    );
}

#[test]
fn a_procedure_that_loses_an_after_fails_the_case_of_that_slip() {
    // The proof has nothing against explaining first: only a case has.
    let find = "you will do. Ask if they agree.\"\n    why: \"A mask on the face frightens people. A calm word slows the breathing.\"\n    after: assess";
    let write = find.replace("after: assess", "after: gloves");
    let (chapters, _) = edited("04-fitting-the-regulator.md", find, &write);
    let drawn = failed_cases(&chapters);
    assert_says(
        &drawn,
        &[
            "expected these steps too early: `explain`; found: none",
            "correct the procedure, or, where the new answer is right, the case",
        ],
    );
}

#[test]
fn steps_that_go_wrong_say_what_went_wrong() {
    let mut chapters = demo();
    let case = "# More cases\n\n## A mask too soon\n\nThe mask goes on before its bag is full.\n\n```yaml case\n\
        - id: mask-too-soon\n  procedure: apply-reservoir-mask\n  device: non-rebreather\n  \
        begins-with: [cylinder secured, regulator seated, cylinder open, regulator pressurised]\n  \
        steps: [flames, explain, connect, gauge, set, place]\n  expect: no finding\n\
        - id: gauge-too-soon\n  procedure: fit-regulator\n  steps: [secure, gauge]\n  expect: {ends: unsafe}\n```\n";
    chapters.push(("15-more-cases.md".to_owned(), case.to_owned()));
    let drawn = failed_cases(&chapters);
    assert_says(
        &drawn,
        &[
            "expected these steps too early: none; found: `place`",
            "this case fails: expected no finding, found `stop hazard reservoir-not-filled`",
            "stop hazard reservoir-not-filled: found, and not expected",
            "rules/05-delivery-devices.md:",
            "expected these steps too early: none; found: `gauge`",
            "expected these steps refused: none; found: `gauge`",
            "this case fails: found a safe end",
            "rules/15-more-cases.md:13:11",
        ],
    );
}
