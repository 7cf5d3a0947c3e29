//! A fresh rulebook: nothing in it is decided, every mark is listed with what to write, and once all are filled it passes and
//! prints.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

mod common;
#[path = "common/decided.rs"]
mod decided;

use std::{
    fs,
    path::{Path, PathBuf},
    process::{Command, Stdio},
};

use oxyfolio::book::OfficePaper;
use oxyfolio::cards::{self, Wanted};
use oxyfolio::compile::{folder, skeleton::Start};
use oxyfolio::quantity::{PressureUnit, TemperatureUnit};

use decided::{filled, marks};

fn start(agency: &str) -> Start {
    Start::new(
        agency,
        PressureUnit::Psi,
        TemperatureUnit::Celsius,
        OfficePaper::Letter,
    )
    .unwrap()
}

fn fill(folder: &Path) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let text = fs::read_to_string(&path).unwrap();
        fs::write(path, filled(&text, None)).unwrap();
    }
}

fn made(agency: &str) -> (tempfile::TempDir, PathBuf) {
    let parent = tempfile::tempdir().unwrap();
    let folder = parent.path().join("rules");
    start(agency).write(&folder).unwrap();
    (parent, folder)
}

#[test]
fn every_mark_is_listed_with_what_to_write_and_nothing_else() {
    let (_parent, folder) = made("Upper Vale Ambulance");
    let rejected = folder::load(&folder).unwrap_err();
    let mut listed = Vec::new();
    for found in &rejected.diagnostics {
        assert_eq!(found.code, "undecided", "{}", found.message);
        let span = found.span.unwrap();
        let source = rejected.sources.get(span.file).unwrap();
        assert!(source.text[span.start..span.end].starts_with("\"undecided ("));
        listed.push(
            found.hints[0]
                .trim_start_matches("write in its place: ")
                .to_owned(),
        );
    }
    let expected: Vec<String> = start("x")
        .chapters()
        .iter()
        .flat_map(|(_, text)| marks(text))
        .map(|(_, what)| what)
        .collect();
    assert!(expected.len() > 50);
    assert_eq!(listed, expected);
    assert_eq!(rejected.omitted, 0);
}

#[test]
fn one_mark_left_is_the_only_error() {
    for (missing, line) in [
        ("5 years", "requalification-interval"),
        ("24 to 44 %", "nasal-cannula"),
        ("2015 psi", "carried"),
    ] {
        let (_parent, folder) = made("Upper Vale Ambulance");
        fill(&folder);
        let chapter = if line == "nasal-cannula" {
            "02-devices.md"
        } else {
            "04-cylinders.md"
        };
        let path = folder.join(chapter);
        let text = fs::read_to_string(&path).unwrap();
        assert_eq!(text.matches(missing).count(), 1, "{missing}");
        fs::write(&path, text.replace(missing, "undecided")).unwrap();
        let rejected = folder::load(&folder).unwrap_err();
        let codes: Vec<&str> = rejected
            .diagnostics
            .iter()
            .filter(|found| found.level == oxyfolio::compile::diagnostic::Level::Error)
            .map(|found| found.code)
            .collect();
        assert_eq!(codes, ["undecided"], "{}", rejected.render(false));
        assert!(
            rejected
                .render(false)
                .contains("write the value in place of `undecided`")
        );
    }
}

#[test]
fn filled_it_passes_and_prints() {
    let (_parent, folder) = made("Upper Vale Ambulance");
    fill(&folder);
    let compiled = folder::load(&folder).unwrap_or_else(|rejected| panic!("{}", rejected.render(false)));
    let notes: Vec<String> = compiled
        .notes
        .iter()
        .map(|note| format!("{}: {}", note.code, note.message))
        .collect();
    assert_eq!(notes, Vec::<String>::new());
    assert_eq!(&*compiled.book.agency.rule.name, "Upper Vale Ambulance");
    assert!(
        !cards::documents(&compiled.book, &Wanted::default())
            .unwrap()
            .is_empty()
    );
    let out = folder.parent().unwrap().join("cards");
    let output = common::oxyfolio(&[
        "cards",
        "--rules",
        folder.to_str().unwrap(),
        "--out",
        out.to_str().unwrap(),
    ]);
    assert_eq!(
        output.status.code(),
        Some(0),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    assert!(fs::read_dir(&out).unwrap().count() >= 2);
}

#[test]
fn a_name_stays_a_name() {
    for name in [
        "A \"quoted\" service \\ with a backslash",
        "@PRESSURE@ & {residual-pressure}",
        "name: x # y",
        "<script>alert(1)</script>",
        "``` yaml hazard",
        "- [x](y) *bold* %d",
        "\u{dc}bertal & S\u{f6}hne",
    ] {
        let (_parent, folder) = made(name);
        fill(&folder);
        let compiled =
            folder::load(&folder).unwrap_or_else(|rejected| panic!("{name}: {}", rejected.render(false)));
        assert_eq!(&*compiled.book.agency.rule.name, name);
    }
    let refused = |name: &str| {
        let (unit, degrees) = (PressureUnit::Bar, TemperatureUnit::Celsius);
        Start::new(name, unit, degrees, OfficePaper::A4).unwrap_err()
    };
    for name in [
        "",
        " ",
        "two\nlines",
        "hidden\u{202e}sign",
        "undecided",
        "undecided (later)",
        &"long".repeat(50),
    ] {
        assert!(refused(name).starts_with("expected "), "{name:?}");
    }
}

#[test]
fn nothing_is_overwritten() {
    let parent = tempfile::tempdir().unwrap();
    let folder = parent.path().join("rules");
    fs::create_dir(&folder).unwrap();
    // An empty folder may be filled, one that holds anything may not.
    start("x").write(&folder).unwrap();
    let before: Vec<_> = fs::read_dir(&folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    let error = start("y").write(&folder).unwrap_err();
    assert!(
        error
            .to_string()
            .contains("holds something already, and nothing is overwritten"),
        "{error}"
    );
    let after: Vec<_> = fs::read_dir(&folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    assert_eq!(before, after);
    assert!(fs::read_to_string(&after[0]).is_ok());
    let file = parent.path().join("file");
    fs::write(&file, "kept").unwrap();
    assert!(start("x").write(&file).is_err());
    assert_eq!(fs::read_to_string(&file).unwrap(), "kept");
    assert!(start("x").write(Path::new("/")).is_err());
    // Nothing half-made is left beside it.
    assert_eq!(fs::read_dir(parent.path()).unwrap().count(), 2);
}

#[test]
fn units_reach_every_mark() {
    for (pressure, temperature, absent) in [
        (PressureUnit::Psi, TemperatureUnit::Fahrenheit, ["bar", "°C"]),
        (PressureUnit::Bar, TemperatureUnit::Celsius, ["psi", "°F"]),
        (PressureUnit::Kpa, TemperatureUnit::Celsius, ["psi", "°F"]),
    ] {
        let start = Start::new("x", pressure, temperature, OfficePaper::A4).unwrap();
        for (name, text) in start.chapters() {
            assert!(!text.contains('@'), "{name}");
            for (_, what) in marks(&text) {
                assert!(!absent.iter().any(|unit| what.contains(unit)), "{what}");
            }
        }
    }
}

#[test]
fn the_program_takes_flags_where_nobody_can_be_asked() {
    let parent = tempfile::tempdir().unwrap();
    let folder = parent.path().join("rules");
    let run = |arguments: &[&str]| {
        let output = Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
            .arg("new")
            .arg(&folder)
            .args(arguments)
            .stdin(Stdio::null())
            .output()
            .unwrap();
        let texts = [output.stdout, output.stderr].map(|bytes| String::from_utf8(bytes).unwrap());
        (output.status.code().unwrap(), texts.concat())
    };
    let (code, said) = run(&["--pressure", "bar"]);
    assert_eq!(code, 2);
    assert!(
        said.contains("add --agency NAME and --temperature celsius or fahrenheit"),
        "{said}"
    );
    assert!(!folder.exists());
    let (code, said) = run(&[
        "--agency",
        "two\nlines",
        "--pressure",
        "bar",
        "--temperature",
        "C",
    ]);
    assert_eq!(code, 2);
    assert!(
        said.contains("--agency: expected a name that can be printed"),
        "{said}"
    );
    let all = [
        "--agency",
        "Upper Vale",
        "--pressure",
        "KPA",
        "--temperature",
        "fahrenheit",
    ];
    let (code, said) = run(&all);
    assert_eq!(code, 0, "{said}");
    assert!(
        said.contains("8 chapters are in") && said.contains("56 values are to be decided"),
        "{said}"
    );
    let (code, said) = run(&all);
    assert_eq!(code, 2);
    assert!(said.contains("nothing is overwritten"), "{said}");
    let output = common::oxyfolio(&["check", "--rules", folder.to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(1));
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(
        text.starts_with("56 values to decide; nothing else is wrong\n\nto decide[undecided]: "),
        "{text}"
    );
    assert!(text.contains("\n56 values to decide in "), "{text}");
    assert!(
        text.ends_with(": the rulebook can't be used until they are decided\n"),
        "{text}"
    );
    assert!(!text.contains("error"), "{text}");
    // Mistakes are counted apart, and stand last.
    common::edit(&folder, "05-hazards.md", "severity: warn", "severity: mild");
    let output = common::oxyfolio(&["check", "--rules", folder.to_str().unwrap()]);
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(text.starts_with("56 values to decide and 1 error\n\n"), "{text}");
    let last_mark = text.rfind("to decide[undecided]").unwrap();
    assert!(last_mark < text.find("error[unknown-word]").unwrap(), "{text}");
    assert!(
        text.ends_with(": the rulebook can't be used until all are decided and put right\n"),
        "{text}"
    );
}

#[test]
fn the_answer_for_programs_keeps_to_its_schema() {
    let parent = tempfile::tempdir().unwrap();
    let folder = parent.path().join("rules");
    let (code, answer) = common::json(&[
        "new",
        folder.to_str().unwrap(),
        "--agency",
        "Upper Vale",
        "--pressure",
        "bar",
        "--temperature",
        "celsius",
    ]);
    assert_eq!(
        (code, &answer["undecided"]),
        (0, &serde_json::json!(56)),
        "{answer:#}"
    );
    assert_eq!(answer["files"].as_array().unwrap().len(), 8);
    let schema = include_str!("schemas/new.schema.json");
    let validator = jsonschema::validator_for(&serde_json::from_str(schema).unwrap()).unwrap();
    assert!(validator.is_valid(&answer), "{answer:#}");
    assert!(!validator.is_valid(&serde_json::json!({ "ok": true })));
}
