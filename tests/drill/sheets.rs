//! The sheets taken apart, and the program from outside.

use std::fs;
use std::path::Path;
use std::process::Command;

use oxyfolio::RULEBOOK;
use oxyfolio::drill::{Terms, exercises};

use crate::common::{json, oxyfolio};

/// The text of a PDF in reading order, by poppler.
fn text_of(pdf: &Path) -> String {
    let output = Command::new("pdftotext")
        .args(["-enc", "UTF-8"])
        .arg(pdf)
        .arg("-")
        .output()
        .unwrap();
    assert!(output.status.success());
    // A line break within a sentence is the page's, not the book's.
    String::from_utf8(output.stdout)
        .unwrap()
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
}

#[test]
fn a_practice_sheet_holds_no_answer_and_the_answer_sheet_all() {
    let folder = tempfile::tempdir().unwrap();
    let (sheet, answers) = (folder.path().join("p.pdf"), folder.path().join("a.pdf"));
    let run = oxyfolio(&[
        "drill",
        "--seed",
        "12",
        "--sheet",
        sheet.to_str().unwrap(),
        "--answers",
        answers.to_str().unwrap(),
    ]);
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
    let (practice, solved) = (text_of(&sheet), text_of(&answers));
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    for one in exercises(&RULEBOOK, &Terms::new(12)).exercises {
        // Subscripts and quotation marks are set by the templates.
        let plain = |text: &str| flat(text).replace(['`', '“', '”'], "");
        if !one.answer.contains('₂') {
            assert!(
                plain(&solved).contains(&plain(&one.answer)),
                "{}\n{solved}",
                one.answer
            );
        }
        for line in &one.working {
            assert!(!practice.contains(&flat(line)), "{line}");
        }
        if !one.question.contains('₂') {
            assert!(
                practice.contains(&flat(&one.question)),
                "{}\n{practice}",
                one.question
            );
        }
    }
    assert!(!practice.contains("For example") && !practice.contains("Put right"));
    for text in [&practice, &solved] {
        for said in [
            "Local protocol and medical direction come first.",
            "not a medical device",
            "No flame, no smoking.",
            "made up, for the classroom",
            &RULEBOOK.short_digest,
            "seed 12",
        ] {
            assert!(text.contains(said), "{said}\n{text}");
        }
    }
    // The same again is the same file.
    let again = folder.path().join("again.pdf");
    oxyfolio(&["drill", "--seed", "12", "--sheet", again.to_str().unwrap()]);
    assert_eq!(fs::read(sheet).unwrap(), fs::read(again).unwrap());
}

#[test]
fn many_exercises_run_over_pages_and_letter_paper() {
    let folder = tempfile::tempdir().unwrap();
    let sheet = folder.path().join("p.pdf");
    let run = oxyfolio(&[
        "drill",
        "--count",
        "48",
        "--level",
        "hard",
        "--paper",
        "letter",
        "--sheet",
        sheet.to_str().unwrap(),
    ]);
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
    let info = Command::new("pdfinfo").arg(&sheet).output().unwrap();
    let info = String::from_utf8(info.stdout).unwrap();
    assert!(info.contains("612 x 792 pts (letter)"), "{info}");
    assert!(text_of(&sheet).contains("48 Find what is wrong in this log"));
}

#[test]
fn programs_get_questions_and_answers() {
    let (code, answer) = json(&["drill", "--seed", "3", "--count", "8"]);
    assert_eq!(code, 0);
    let sheet = exercises(&RULEBOOK, &Terms::new(3).count(8));
    let listed = answer["exercises"].as_array().unwrap();
    assert_eq!(listed.len(), 8);
    for (one, told) in sheet.exercises.iter().zip(listed) {
        assert_eq!(told["kind"], one.kind().word());
        assert_eq!(told["question"], one.question);
        assert_eq!(told["answer"], one.answer);
        assert_eq!(told["lines"].as_array().unwrap().len(), one.lines.len());
        assert_eq!(told["before"].is_array(), one.kind().word() == "order");
    }
    assert_eq!(answer["seed"], 3);
    assert_eq!(answer["missing"], serde_json::json!([]));
}

/// Flash cards, read by another CSV library.
#[test]
fn flash_cards_are_a_question_and_an_answer_in_each_row() {
    let run = oxyfolio(&["drill", "--seed", "3", "--count", "20", "--format", "csv"]);
    assert!(run.status.success());
    let mut reader = csv::Reader::from_reader(&run.stdout[..]);
    assert_eq!(reader.headers().unwrap(), vec!["question", "answer"]);
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), 20);
    for (row, one) in rows
        .iter()
        .zip(exercises(&RULEBOOK, &Terms::new(3).count(20)).exercises)
    {
        assert!(row[0].contains(&one.question) && row[1].starts_with(&one.answer));
        assert!(one.lines.iter().all(|line| row[0].contains(&line.1)));
    }
}

#[test]
fn what_the_book_lacks_is_told() {
    // Two procedures of this book are long enough for a hard order; without them none is left.
    let copy = crate::common::copy_of_rules();
    let chapter = copy.path().join("01-about-this-book.md");
    let only = fs::read_to_string(&chapter).unwrap();
    for entry in fs::read_dir(copy.path()).unwrap() {
        let path = entry.unwrap().path();
        if path != chapter {
            fs::remove_file(path).unwrap();
        }
    }
    fs::write(&chapter, only).unwrap();
    let run = oxyfolio(&["drill", "--rules", copy.path().to_str().unwrap()]);
    // A book with the agency alone isn't in order: that is said in place of a sheet.
    assert_eq!(run.status.code(), Some(1));
    assert!(!String::from_utf8_lossy(&run.stdout).contains("Answers"));
}

#[test]
fn what_cannot_be_asked() {
    for (arguments, said) in [
        (&["drill", "--count", "0"][..], "1..=200"),
        (&["drill", "--kind", "colour"], "duration, order, setup, log"),
        (&["drill", "--format", "ndjson"], "only `review` answers so"),
        (
            &["drill", "--sheet", "a.pdf", "--answers", "a.pdf"],
            "another file",
        ),
    ] {
        let run = oxyfolio(arguments);
        assert_eq!(run.status.code(), Some(2), "{arguments:?}");
        let told = String::from_utf8_lossy(&run.stderr).into_owned();
        assert!(told.contains(said), "{told}");
    }
    assert!(!Path::new("a.pdf").exists());
}
