//! The program as people run it: exit codes, answers, errors, and outputs that are whole or untouched.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;
#[path = "common/decided.rs"]
mod decided;
#[path = "cli/durations.rs"]
mod durations;
#[path = "cli/mended.rs"]
mod mended;

use std::fs;

use common::{json, oxyfolio};
use serde_json::json;

fn code(arguments: &[&str]) -> i32 {
    oxyfolio(arguments).status.code().unwrap()
}

fn stderr(arguments: &[&str]) -> String {
    String::from_utf8(oxyfolio(arguments).stderr).unwrap()
}

#[test]
fn check_passes_the_demo_rulebook_both_ways() {
    let rules = common::rules();
    assert_eq!(code(&["check"]), 0);
    assert_eq!(code(&["check", "--rules", rules.to_str().unwrap()]), 0);
    let (built_in, read) = (
        json(&["check"]).1,
        json(&["check", "--rules", rules.to_str().unwrap()]).1,
    );
    assert_eq!(built_in["counts"], read["counts"]);
    assert_eq!(built_in["book"]["digest"], read["book"]["digest"]);
    assert_eq!(read["ok"], true);
}

#[test]
fn check_reports_all_errors_with_places_and_exits_1() {
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "05-delivery-devices.md",
        "usual: 2 L/min\noxygen: 24",
        "usual: 2 psi\noxygen: 24",
    );
    common::edit(
        copy.path(),
        "01-about-this-book.md",
        "effective: 2026-11-01",
        "effective: 2026-13-01",
    );
    let (code, answer) = json(&["check", "--rules", copy.path().to_str().unwrap()]);
    assert_eq!(code, 1);
    assert_eq!(answer["ok"], false);
    let found = answer["diagnostics"].as_array().unwrap();
    let codes: Vec<&str> = found
        .iter()
        .map(|found| found["code"].as_str().unwrap())
        .collect();
    assert_eq!(codes, ["not-a-date", "wrong-unit"]);
    let text = fs::read_to_string(copy.path().join("05-delivery-devices.md")).unwrap();
    let line = text.lines().position(|line| line == "usual: 2 psi").unwrap() + 1;
    assert_eq!(found[1]["place"]["line"], line);
    assert_eq!(found[1]["place"]["column"], "usual: 2 ".len() + 1);
}

#[test]
fn a_missing_folder_is_said_plainly() {
    let output = oxyfolio(&["check", "--rules", "no-such-folder"]);
    assert_eq!(output.status.code(), Some(1));
    assert!(
        String::from_utf8(output.stdout)
            .unwrap()
            .contains("cannot read the folder `no-such-folder`")
    );
}

#[test]
fn duration_answers_the_textbook_question() {
    // AAOS table's example: D, 2000 psi, residual 200 psi, 0.5 L/min: 576 min.
    let (code, answer) = json(&[
        "duration",
        "--cylinder",
        "D",
        "--pressure",
        "2000 psi",
        "--flow",
        "0.5 L/min",
    ]);
    assert_eq!(code, 0);
    assert_eq!(answer["by_factor_minutes"], 576);
    // The real gas at 21 °C would last 577 min: the lower is the answer.
    assert_eq!(answer["by_density_minutes"], 577);
    assert_eq!(
        (&answer["minutes"], &answer["bound_by"]),
        (&json!(576), &json!("factor"))
    );
    assert_eq!(answer["temperature_c"], 21.0);
    assert_eq!(answer["temperature_assumed"], true);
    assert_eq!(answer["edition"], "1");
    assert_eq!(answer["cautions"].as_array().unwrap().len(), 3);
}

#[test]
fn duration_refuses_what_cannot_be() {
    for (pressure, flow, words) in [
        ("9000 psi", "10 L/min", "expected a pressure from 0 to 310 bar"),
        ("2000", "10 L/min", "expected a unit after 2000"),
        ("2000 psi", "400 L/min", "expected a flow from 0 to 120 L/min"),
        ("2000 psi", "0 L/min", "expected a flow above 0 L/min"),
        ("2000 psi", "NaN L/min", "expected a number with its unit"),
        ("2000 L/min", "10 L/min", "expected a pressure in psi or bar"),
        ("-5 psi", "10 L/min", "expected a pressure from 0 to 310 bar"),
    ] {
        let arguments = [
            "duration",
            "--cylinder",
            "D",
            &format!("--pressure={pressure}"),
            &format!("--flow={flow}"),
        ];
        assert_eq!(code(&arguments), 2, "{pressure} {flow}");
        let said = stderr(&arguments);
        assert!(said.contains(words), "{said}");
    }
    let said = stderr(&[
        "duration",
        "--cylinder",
        "jumbo-c",
        "--pressure",
        "1 bar",
        "--flow",
        "1 L/min",
    ]);
    assert!(said.contains("did you mean `jumbo-d`?"), "{said}");
}

#[test]
fn a_good_setup_exits_0_and_a_bad_one_1() {
    let good = [
        "setup",
        "--device",
        "non-rebreather",
        "--flow",
        "15 L/min",
        "--group",
        "adult",
        "--condition",
        "none",
        "--spo2",
        "95 %",
        "--cylinder",
        "M",
        "--pressure",
        "2000 psi",
        "--temperature",
        "20 °C",
        "--minutes",
        "30",
    ];
    let (code, answer) = json(&good);
    assert_eq!(
        (code, &answer["ok"]),
        (0, &serde_json::Value::Bool(true)),
        "{answer:#}"
    );
    let bad: Vec<&str> = good
        .iter()
        .map(|word| if *word == "15 L/min" { "8 L/min" } else { word })
        .collect();
    let (code, answer) = json(&bad);
    assert_eq!(code, 1);
    let finding = &answer["findings"][0];
    assert_eq!(finding["code"], "flow-too-low");
    assert_eq!(finding["level"], "stop");
    assert_eq!(finding["rule"]["id"], "non-rebreather");
    assert_eq!(finding["rule"]["file"], "05-delivery-devices.md");
    assert!(finding["rule"]["rationale"].as_str().unwrap().len() > 20);
}

#[test]
fn what_was_not_given_is_unknown_and_never_a_pass() {
    let (code, answer) = json(&["setup", "--device", "nasal-cannula", "--flow", "2 L/min"]);
    assert_eq!(code, 1);
    let levels: Vec<&str> = answer["findings"]
        .as_array()
        .unwrap()
        .iter()
        .map(|found| found["level"].as_str().unwrap())
        .collect();
    assert!(levels.contains(&"unknown"));
    assert!(!answer["hazards_not_judged"].as_array().unwrap().is_empty());
}

#[test]
fn every_text_answer_carries_edition_disclaimers_and_cautions() {
    for arguments in [
        &["check"][..],
        &[
            "duration",
            "--cylinder",
            "E",
            "--pressure",
            "1500 psi",
            "--flow",
            "10 L/min",
        ],
        &["setup", "--device", "nasal-cannula", "--flow", "2 L/min"],
    ] {
        let text = String::from_utf8(oxyfolio(arguments).stdout).unwrap();
        assert!(
            text.contains(&format!("edition {}", oxyfolio::RULEBOOK.agency.edition)),
            "{text}"
        );
        assert!(text.contains(&*oxyfolio::RULEBOOK.short_digest), "{text}");
        for line in oxyfolio::book::ALWAYS_DISCLAIMERS
            .iter()
            .chain(&oxyfolio::book::ALWAYS_CAUTIONS)
        {
            assert!(text.contains(line), "{line} is missing in {text}");
        }
    }
}

#[test]
fn help_fits_a_terminal() {
    for arguments in [
        &["--help"][..],
        &["check", "--help"],
        &["cards", "--help"],
        &["duration", "--help"],
        &["setup", "--help"],
        &["plan", "--help"],
    ] {
        let text = String::from_utf8(oxyfolio(arguments).stdout).unwrap();
        assert!(text.contains("oxyfolio"), "{text}");
        for line in text.lines() {
            assert!(line.chars().count() <= 100, "{arguments:?}: {line}");
        }
    }
}

#[test]
fn a_missing_or_old_typst_is_one_sentence_with_the_command_that_installs_it() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    let missing = stderr(&[
        "cards",
        "--out",
        out.to_str().unwrap(),
        "--typst",
        "no-such-typst",
    ]);
    assert_eq!(
        missing.trim(),
        "error: cannot find the typesetting program `no-such-typst`; install it with: cargo install --locked typst-cli@0.15.1"
    );
    assert!(!out.exists(), "nothing is made by a run that fails");
    #[cfg(unix)]
    {
        let old = script(folder.path(), "echo 'typst 0.11.0 (abc)'");
        let said = stderr(&["cards", "--out", out.to_str().unwrap(), "--typst", &old]);
        assert!(
            said.contains("expected typst 0.15.1 or later, found `typst 0.11.0 (abc)`"),
            "{said}"
        );
        assert!(said.contains("cargo install --locked typst-cli@0.15.1"), "{said}");
        assert_eq!(said.trim().lines().count(), 1);
    }
}

#[cfg(unix)]
#[test]
fn a_failed_run_leaves_old_cards_untouched() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    fs::create_dir(&out).unwrap();
    let old = out.join("cards-id-1-a4.pdf");
    fs::write(&old, "last year's cards").unwrap();
    // A typst that works once and then breaks: the first file is set, the second is not.
    let breaks = script(
        folder.path(),
        "if [ \"$1\" = --version ]; then echo 'typst 0.15.1 (x)'; exit 0; fi\n\
         for last; do :; done\n\
         if mkdir \"$(dirname \"$0\")/once\" 2>/dev/null; then echo pdf > \"$last\"; exit 0; fi\n\
         echo 'error: panicked with: \"card «x» item 3 of 11 overflows by 4.2 mm on ID-1\"' >&2; exit 1",
    );
    let output = oxyfolio(&["cards", "--out", out.to_str().unwrap(), "--typst", &breaks]);
    assert_eq!(output.status.code(), Some(2));
    let said = String::from_utf8(output.stderr).unwrap();
    assert_eq!(
        said.trim(),
        "error: cannot set the cards: card «x» item 3 of 11 overflows by 4.2 mm on ID-1"
    );
    assert_eq!(fs::read_to_string(&old).unwrap(), "last year's cards");
    let names: Vec<_> = fs::read_dir(&out)
        .unwrap()
        .map(|entry| entry.unwrap().file_name())
        .collect();
    assert_eq!(names, ["cards-id-1-a4.pdf"], "nothing half-written is left");
}

#[cfg(unix)]
fn script(folder: &std::path::Path, body: &str) -> String {
    use std::os::unix::fs::PermissionsExt as _;
    let path = folder.join("typst-stand-in");
    fs::write(&path, format!("#!/bin/sh\n{body}\n")).unwrap();
    fs::set_permissions(&path, fs::Permissions::from_mode(0o755)).unwrap();
    path.to_str().unwrap().to_owned()
}

/// A patient ventilated by hand was told to change to a mask, and a condition without a target was dropped.
#[test]
fn a_reading_alone_takes_no_one_off_the_hand_bag() {
    let (_, answer) = json(&[
        "setup",
        "--device",
        "bag-valve-mask",
        "--flow",
        "15 L/min",
        "--group",
        "adult",
        "--condition",
        "none",
        "--spo2",
        "80 %",
    ]);
    let messages: Vec<&str> = answer["findings"]
        .as_array()
        .unwrap()
        .iter()
        .map(|found| found["message"].as_str().unwrap())
        .collect();
    assert!(
        messages
            .iter()
            .any(|words| words.contains("go on ventilating by hand")),
        "{messages:#?}"
    );
    assert!(
        !messages
            .iter()
            .any(|words| words.contains("next: non-rebreather")),
        "{messages:#?}"
    );
    let (code, answer) = json(&[
        "setup",
        "--device",
        "nasal-cannula",
        "--flow",
        "2 L/min",
        "--group",
        "child",
        "--condition",
        "retains-co2",
        "--spo2",
        "97 %",
    ]);
    let codes: Vec<&str> = answer["findings"]
        .as_array()
        .unwrap()
        .iter()
        .map(|found| found["code"].as_str().unwrap())
        .collect();
    assert!(codes.contains(&"no-target-for-condition"), "{codes:?}");
    assert_eq!(code, 1);
}

/// A plan that rests on an impossible reading, or on a flow no adult is given, was called enough.
#[test]
fn a_plan_that_rests_on_what_cannot_be_right_is_not_ok() {
    let folder = tempfile::tempdir().unwrap();
    for (name, text, code) in [
        (
            "right.yaml",
            "name: Tried\ncylinders: [{size: E, pressure: 2000 psi}]\nlegs: [{name: road, time: 5 min, device: simple-mask, flow: 8 L/min}]\n",
            0,
        ),
        (
            "overfilled.yaml",
            "name: Tried\ncylinders: [{size: E, pressure: 2900 psi}]\nlegs: [{name: road, time: 5 min, device: simple-mask, flow: 8 L/min}]\n",
            1,
        ),
        (
            "no-flow.yaml",
            "name: Tried\ncylinders: [{size: E, pressure: 2000 psi}]\nlegs: [{name: road, time: 5 min, device: nasal-cannula, flow: 2 L/min}, {name: road, time: 5 min, device: bag-valve-mask, flow: 0 L/min}]\n",
            1,
        ),
    ] {
        let path = folder.path().join(name);
        fs::write(&path, text).unwrap();
        let (found, answer) = json(&["plan", path.to_str().unwrap()]);
        assert_eq!(
            (found, &answer["ok"]),
            (code, &serde_json::Value::Bool(code == 0)),
            "{name}: {answer:#}"
        );
    }
}

/// A first-time user names the folder alone.
#[test]
fn a_folder_without_its_option_is_told_what_to_write() {
    let folder = tempfile::tempdir().unwrap();
    let named = folder.path().join("our rules");
    fs::create_dir(&named).unwrap();
    fs::write(named.join("01-book.md"), "# Book\n").unwrap();
    let shown = named.to_str().unwrap();
    for (arguments, command) in [
        (vec!["check", shown], "check"),
        (vec!["--format", "json", "desk", shown], "desk"),
        (vec!["cards", "--out", "x", shown], "cards"),
    ] {
        let said = stderr(&arguments);
        let tip = format!(
            "tip: to read the rulebook in that folder, write `oxyfolio {command} --rules \"{shown}\"`"
        );
        assert!(said.contains(&tip), "{said}");
        assert_eq!(code(&arguments), 2);
    }
    // A chapter stands for its folder.
    let said = stderr(&["check", named.join("01-book.md").to_str().unwrap()]);
    assert!(said.contains(&format!("--rules \"{shown}\"`")), "{said}");
    // An option that isn't known is no folder.
    assert!(!stderr(&["check", "--rule"]).contains("to read the rulebook"));
}

/// Counts with their words, one or several.
#[test]
fn one_of_a_kind_is_counted_as_one() {
    let text = |arguments: &[&str]| String::from_utf8(oxyfolio(arguments).stdout).unwrap();
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "05-delivery-devices.md",
        "usual: 2 L/min\noxygen: 24",
        "usual: 2 psi\noxygen: 24",
    );
    let rules = copy.path().to_str().unwrap();
    assert!(text(&["check", "--rules", rules]).ends_with(&format!(
        "1 error in {rules}: the rulebook can't be used until it is put right\n"
    )));
    common::edit(
        copy.path(),
        "01-about-this-book.md",
        "effective: 2026-11-01",
        "effective: 2026-13-01",
    );
    assert!(text(&["check", "--rules", rules]).ends_with(&format!(
        "2 errors in {rules}: the rulebook can't be used until they are put right\n"
    )));
    // A small book in order: one cylinder, one connection.
    let parent = tempfile::tempdir().unwrap();
    let small = parent.path().join("small");
    let small = small.to_str().unwrap();
    assert_eq!(
        code(&[
            "new",
            small,
            "--agency",
            "Upper Vale",
            "--pressure",
            "psi",
            "--temperature",
            "celsius"
        ]),
        0
    );
    for entry in fs::read_dir(small).unwrap() {
        let path = entry.unwrap().path();
        let chapter = fs::read_to_string(&path).unwrap();
        fs::write(path, decided::filled(&chapter, None)).unwrap();
    }
    let said = text(&["check", "--rules", small]);
    assert!(
        said.contains("No errors: 8 chapters, 2 groups, 2 devices, 1 cylinder, 1 connection, 8 policies, "),
        "{said}"
    );
}
