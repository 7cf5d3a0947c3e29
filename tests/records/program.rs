//! `oxyfolio review` from outside: answers, exit codes, standard input, the page.

use std::{
    fs,
    io::Write as _,
    process::{Command, Output, Stdio},
};

use super::{
    common::{json, oxyfolio, poppler},
    support::{file, run},
};

fn text(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

fn code(output: &Output) -> i32 {
    output.status.code().unwrap()
}

fn piped(arguments: &[&str], input: &[u8]) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut stdin = child.stdin.take().unwrap();
    let bytes = input.to_vec();
    let writer = std::thread::spawn(move || stdin.write_all(&bytes));
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap().unwrap();
    output
}

const FAULTS: &str = "tests/runs/faults.ndjson";

#[test]
fn the_summary_says_what_was_found_and_what_was_not_read() {
    let output = oxyfolio(&["review", FAULTS, "tests/runs/faults.csv"]);
    assert_eq!(code(&output), 3);
    let said = text(&output);
    for part in [
        "2 files, 5 runs, 12 events,",
        "2 lines that could not be read",
        "agency name-unknown",
        "first in LV-0501, tests/runs/faults.ndjson:1: the rulebook has no device of this name",
        "did you mean `non-rebreather`?",
        "tests/runs/faults.ndjson:3:45: expected",
        "--format ndjson",
        "Local protocol and medical direction come first.",
        "No flame, no smoking.",
    ] {
        assert!(said.contains(part), "no {part:?} in\n{said}");
    }
}

#[test]
fn exit_codes() {
    let of = |text: &str| {
        let (_folder, path) = file("a.ndjson", text);
        code(&oxyfolio(&["review", path.to_str().unwrap()]))
    };
    assert_eq!(of(""), 0);
    assert_eq!(of(r#"{"run":"A","group":"adlut"}"#), 1);
    assert_eq!(of("{"), 3);
    assert_eq!(of("{\"run\":\"A\",\"group\":\"adlut\"}\n{"), 3);
    assert_eq!(code(&oxyfolio(&["review", "--exit-0", FAULTS])), 0);
    assert_eq!(code(&oxyfolio(&["review", "--exit-0", "no-such-file.ndjson"])), 2);
    let missing = oxyfolio(&["review", "no-such-file.ndjson"]);
    assert_eq!(code(&missing), 2);
    assert!(text(&missing).is_empty());
    let said = String::from_utf8(missing.stderr).unwrap();
    assert!(said.contains("cannot read no-such-file.ndjson"), "{said}");
    assert_eq!(code(&oxyfolio(&["review", "tests"])), 2);
    assert_eq!(code(&oxyfolio(&["review"])), 2);
    assert_eq!(code(&oxyfolio(&["review", "-", "-"])), 2);
    assert_eq!(
        code(&oxyfolio(&[
            "setup", "--device", "blow-by", "--flow", "8 L/min", "--format", "csv"
        ])),
        2
    );
    let (_folder, broken) = file("a.ndjson.gz", b"\x1f\x8b\x08");
    let output = oxyfolio(&["review", broken.to_str().unwrap(), FAULTS]);
    assert_eq!(code(&output), 2);
    assert!(text(&output).contains("3 runs"), "the other file was read");
}

#[test]
fn one_finding_a_line_and_nothing_else() {
    let output = oxyfolio(&["review", "--format", "ndjson", FAULTS]);
    let said = text(&output);
    assert!(said.lines().count() > 8);
    for line in said.lines() {
        let found: serde_json::Value = serde_json::from_str(line).unwrap();
        assert_eq!(found["file"], FAULTS);
        assert_eq!(found["book"], &*oxyfolio::RULEBOOK.short_digest);
    }
    let told = String::from_utf8(output.stderr).unwrap();
    assert!(
        told.starts_with("tests/runs/faults.ndjson:3:45: expected"),
        "{told}"
    );
}

#[test]
fn the_json_answer_is_one_object() {
    let (exit, answer) = json(&["review", FAULTS]);
    assert_eq!((exit, &answer["ok"]), (3, &false.into()));
    let findings = answer["findings"].as_array().unwrap();
    let sums = &answer["summary"]["findings"];
    let counted: u64 = ["stop", "warn", "unknown", "note"]
        .iter()
        .map(|level| sums[level].as_u64().unwrap())
        .sum();
    assert_eq!(findings.len() as u64, counted);
    assert_eq!(answer["disclaimers"].as_array().unwrap().len(), 2);
    assert_eq!(answer["cautions"].as_array().unwrap().len(), 3);
    assert_eq!(answer["summary"]["bad_lines"], 1);
    let (_folder, empty) = file("a.ndjson", "");
    let (exit, answer) = json(&["review", empty.to_str().unwrap(), "--by", "month"]);
    assert_eq!((exit, &answer["ok"]), (0, &true.into()));
    assert_eq!(answer["findings"], serde_json::json!([]));
    assert_eq!(answer["summary"]["by_month"], serde_json::json!([]));
}

#[test]
fn standard_input_can_be_cut_anywhere_between_runs() {
    let mut lines: Vec<String> = fs::read_to_string(FAULTS)
        .unwrap()
        .lines()
        .map(str::to_owned)
        .collect();
    // Without the run that is there twice: a part can't know of it.
    lines.pop();
    lines.extend((0..40).map(|number| run(number, 3).replace("non-rebreather", "rebreather")));
    let review = |lines: &[String]| {
        let output = piped(
            &["review", "--format", "ndjson", "-"],
            lines.join("\n").as_bytes(),
        );
        assert!([0, 1, 3].contains(&code(&output)));
        text(&output)
    };
    let whole = review(&lines);
    assert!(whole.lines().count() > 100);
    assert!(
        whole
            .lines()
            .all(|line| line.contains("\"file\":null") && line.contains("\"line\":null"))
    );
    for part in [1, 2, 7, 13] {
        let parts: String = lines.chunks(part).map(review).collect();
        assert!(parts == whole, "in parts of {part}");
    }
}

#[test]
fn by_month_and_by_crew() {
    let by_month = text(&oxyfolio(&["review", "--by", "month", FAULTS]));
    assert!(
        by_month.contains("2026-04") && by_month.contains("2026-05"),
        "{by_month}"
    );
    let by_crew = text(&oxyfolio(&["review", "--by", "crew", FAULTS]));
    assert!(
        by_crew.contains("crew-2") && by_crew.contains("crew-4"),
        "{by_crew}"
    );
}

#[test]
fn pseudonyms_are_printed_and_the_key_never() {
    let (_folder, key) = file("key", b"0123456789abcdef-secret");
    let key = key.to_str().unwrap();
    for format in ["text", "json", "ndjson", "csv"] {
        let output = oxyfolio(&[
            "review",
            FAULTS,
            "--by",
            "crew",
            "--pseudonymise",
            key,
            "--format",
            format,
        ]);
        let said = text(&output) + &String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(3));
        assert!(
            !said.contains("LV-05") && !said.contains("crew-") && !said.contains("secret"),
            "{said}"
        );
    }
    let (_folder, short) = file("key", b"short");
    let output = oxyfolio(&["review", FAULTS, "--pseudonymise", short.to_str().unwrap()]);
    assert_eq!(code(&output), 2);
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(
        said.contains("expected a key of 16 to") && !said.contains("short"),
        "{said}"
    );
}

#[test]
fn the_schema_is_printed() {
    let output = oxyfolio(&["review", "--schema"]);
    assert_eq!(code(&output), 0);
    assert_eq!(text(&output), oxyfolio::records::run::schema::RUN);
}

#[test]
fn the_page_holds_the_sums_on_either_paper() {
    // Full: every bar that the page has room for.
    let mut lines = String::new();
    for month in 1..=24 {
        let (year, month) = (2025 + month / 13, 1 + (month - 1) % 12);
        lines += &format!(
            r#"{{"run":"{year}-{month}","group":"x","temperature":3,"x":1,"events":[{{"at":"{year}-{month:02}-02T11:00:00Z","do":"y","flow":2,"by":"","spo2_percent":0.9}},7,{{"flow_lpm":"1","device":"z","pressure_psi":1,"pressure_bar":300,"cylinder":"q","at":1,"group":1}},{{"flow_lpm":400,"do":"set-flow","do":"set-flow"}}]}}"#
        );
        lines.push('\n');
    }
    let (folder, path) = file("a.ndjson", lines);
    for paper in ["a4", "letter"] {
        let page = folder.path().join(format!("{paper}.pdf"));
        let output = oxyfolio(&[
            "review",
            path.to_str().unwrap(),
            FAULTS,
            "--report",
            page.to_str().unwrap(),
            "--paper",
            paper,
        ]);
        assert_eq!(code(&output), 3, "{}", String::from_utf8_lossy(&output.stderr));
        let document = lopdf::Document::load(&page).unwrap();
        assert_eq!(document.get_pages().len(), 1, "{paper}");
        let said = poppler("pdftotext", &["-layout"], &page);
        for part in [
            "Review of run records",
            "edition 1",
            "XHPY-64EG",
            "Records: name unknown",
            "2026-04",
            "1 line could not be read",
            "Local protocol and medical direction come first.",
            "No flame, no smoking.",
            "is not a pass",
        ] {
            let part = part.replace("XHPY-64EG", &oxyfolio::RULEBOOK.short_digest);
            assert!(said.contains(&part), "no {part:?} in\n{said}");
        }
    }
}

#[test]
fn a_page_that_cannot_be_set_leaves_the_old_one() {
    let (folder, path) = file("page.pdf", b"old");
    let page = path.to_str().unwrap();
    let output = oxyfolio(&["review", FAULTS, "--report", page, "--typst", "no-such-program"]);
    assert_eq!(code(&output), 2);
    assert_eq!(fs::read(&path).unwrap(), b"old");
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}
