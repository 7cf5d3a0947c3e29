//! `oxyfolio stock` from outside.

use std::{
    fs,
    io::Write as _,
    process::{Command, Stdio},
};

use super::common::{self, json, oxyfolio};
use super::support::TODAY;
use oxyfolio::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS};

pub fn example(name: &str) -> String {
    format!("{}/tests/stock/{name}", env!("CARGO_MANIFEST_DIR"))
}

fn text_of(arguments: &[&str]) -> (i32, String, String) {
    let output = oxyfolio(&[&["stock", "--today", TODAY], arguments].concat());
    (
        output.status.code().unwrap(),
        String::from_utf8(output.stdout).unwrap(),
        String::from_utf8(output.stderr).unwrap(),
    )
}

#[test]
fn the_example_is_answered_for_people() {
    let (code, said, wrong) = text_of(&[&example("larkmere.csv")]);
    assert_eq!((code, &*wrong), (1, ""), "{said}");
    for words in [
        "12 cylinders, 5 fit for service, 9 to swap or clear up.",
        "   1. LV-DEMO-1044, Jumbo D, Larkmere station 1 (invented), shelf (line 5): overfilled or hot",
        "   2. LV-DEMO-1043, D, Larkmere station 1 (invented), shelf (line 4): past its test date (2026-10)",
        "policy `requalification-interval`, Cylinders and connections › How often a cylinder is tested",
        "Longest time between cylinder tests: 5 years",
        "note: The star mark and other longer periods are not used by this service.",
        "the star is not used by this book",
        "Minutes on hand at 21 °C (assumed), each device at its usual flow, cylinder after cylinder down to 200 psi:",
        "1 (reading not known): LV-DEMO-2005",
        "Larkmere Valley Ambulance Service, edition 1",
    ] {
        assert!(said.contains(words), "{words}\n{said}");
    }
    for line in ALWAYS_DISCLAIMERS.iter().chain(&ALWAYS_CAUTIONS) {
        assert!(said.contains(line), "{line}\n{said}");
    }
    assert_eq!(
        said,
        text_of(&[&example("larkmere.csv")]).1,
        "the same every time"
    );
}

#[test]
fn a_stock_in_order_exits_0() {
    let (code, said, wrong) = text_of(&[&example("in-order.csv"), "--temperature", "18 °C"]);
    assert_eq!((code, &*wrong), (0, ""), "{said}");
    assert!(said.contains("Nothing against the book was found."), "{said}");
    assert!(said.contains("Minutes on hand at 18 °C, each"), "{said}");
    assert!(!said.contains("Swap first"), "{said}");
}

#[test]
fn rows_that_cannot_be_read_exit_3_and_the_others_are_answered() {
    let (code, said, wrong) = text_of(&[&example("mistakes.csv")]);
    assert_eq!(code, 3, "{said}{wrong}");
    assert!(
        said.contains("3 rows COULD NOT BE READ, and are not in this answer."),
        "{said}"
    );
    assert!(
        said.contains("LV-DEMO-3004") && said.contains("test-past"),
        "{said}"
    );
    for words in [
        "mistakes.csv:2:14",
        "did you mean `jumbo-d`?",
        "mistakes.csv:3:21",
        "write `2021-11`",
        "mistakes.csv:4:",
    ] {
        assert!(wrong.contains(words), "{words}\n{wrong}");
    }
    let (code, answer) = json(&["stock", "--today", TODAY, &example("mistakes.csv")]);
    assert_eq!((code, &answer["ok"]), (3, &serde_json::Value::Bool(false)));
    assert_eq!(answer["rows_not_read"], 3);
    assert_eq!(answer["diagnostics"].as_array().unwrap().len(), 3);
}

#[test]
fn a_list_of_which_nothing_could_be_read_is_never_called_in_order() {
    let folder = tempfile::tempdir().unwrap();
    let (list, sheet) = (folder.path().join("bad.csv"), folder.path().join("sheet.pdf"));
    let text = "serial,size,pressure_psi,tested,marks,location\n,D,2000,2025-01,,\n";
    fs::write(&list, text).unwrap();
    let (code, said, _) = text_of(&[list.to_str().unwrap(), "--sheet", sheet.to_str().unwrap()]);
    assert_eq!(code, 3);
    assert!(said.contains("0 cylinders, 0 fit for service"), "{said}");
    assert!(
        said.contains("1 row COULD NOT BE READ, and is not in this answer."),
        "{said}"
    );
    assert!(
        said.contains("was found in the rows that could be read."),
        "{said}"
    );
    let printed = common::poppler("pdftotext", &["-raw"], &sheet);
    assert!(
        printed.contains("Nothing among the rows that could be read."),
        "{printed}"
    );
    assert!(
        printed.contains("1 row of the list could not be read"),
        "{printed}"
    );
}

#[test]
fn what_is_no_list_exits_2() {
    let (code, said, wrong) = text_of(&["Cargo.toml"]);
    assert_eq!((code, &*said), (2, ""));
    assert!(
        wrong.contains("error[missing-column]") && wrong.contains("the list can't be read"),
        "{wrong}"
    );
    let (code, _, wrong) = text_of(&["no-such-list.csv"]);
    assert_eq!(code, 2);
    assert!(
        wrong.starts_with("error: cannot read no-such-list.csv: "),
        "{wrong}"
    );
    for (option, value, words) in [
        ("--temperature", "70 °C", "from -40 to 60 °C"),
        ("--temperature", "20", "expected a unit"),
        ("--due-within", "3", "expected a unit"),
        ("--today", "Nov 25", "YYYY-MM-DD"),
    ] {
        let output = oxyfolio(&["stock", &example("in-order.csv"), option, value]);
        let wrong = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(2), "{option} {value}");
        assert!(wrong.contains(words), "{wrong}");
    }
}

#[test]
fn a_list_is_read_from_standard_input() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
        .args(["stock", "-", "--today", TODAY])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let list = fs::read(example("in-order.csv")).unwrap();
    child.stdin.take().unwrap().write_all(&list).unwrap();
    let output = child.wait_with_output().unwrap();
    let said = String::from_utf8(output.stdout).unwrap();
    assert_eq!(output.status.code(), Some(0), "{said}");
    assert!(said.contains("standard input, 2026-11-25: 3 cylinders"), "{said}");
}

#[test]
fn the_book_of_the_folder_decides() {
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "03-cylinders-and-connections.md",
        "value: 5 years",
        "value: 10 years",
    );
    let twice = copy.path().join("14-figures-twice.md");
    let without = common::without_cases(&fs::read_to_string(&twice).unwrap());
    fs::write(&twice, without).unwrap();
    let rules = copy.path().to_str().unwrap();
    let (_, answer) = json(&[
        "stock",
        "--today",
        TODAY,
        &example("larkmere.csv"),
        "--rules",
        rules,
    ]);
    let codes: Vec<&str> = answer["cylinders"][2]["findings"]
        .as_array()
        .unwrap()
        .iter()
        .map(|found| found["code"].as_str().unwrap())
        .collect();
    assert!(codes.is_empty(), "{codes:?}");
    assert_eq!(answer["cylinders"][2]["due"], "2031-10");
}

#[test]
fn figures_for_programs_are_those_for_people() {
    let (code, answer) = json(&["stock", "--today", TODAY, &example("larkmere.csv")]);
    assert_eq!((code, &answer["ok"]), (1, &serde_json::Value::Bool(false)));
    assert_eq!(answer["swap"][0]["serial"], "LV-DEMO-1044");
    assert_eq!(answer["swap"].as_array().unwrap().len(), 9);
    assert_eq!(answer["on_hand_in_all"]["counted"], 5);
    let (_, said, _) = text_of(&[&example("larkmere.csv")]);
    for one in answer["on_hand_in_all"]["minutes"].as_array().unwrap() {
        let line = format!(
            "{} L/min {:>8} min",
            one["flow_lpm"].as_f64().unwrap(),
            one["minutes"].as_u64().unwrap()
        );
        assert!(said.contains(&line), "{line}\n{said}");
    }
}
