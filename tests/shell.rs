//! The program among others in a shell: completions, manual pages, help on a screen, readers that go away.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;

use std::{
    fs,
    io::{Write as _, pipe},
    process::{Command, Output, Stdio},
};

use common::oxyfolio;

/// Commands as the program's own help lists them.
fn commands() -> Vec<String> {
    let help = String::from_utf8(oxyfolio(&["--help"]).stdout).unwrap();
    let list = help
        .split("Commands:")
        .nth(1)
        .unwrap()
        .split("\n\n")
        .next()
        .unwrap();
    let names = list
        .lines()
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    names
        .map(|line| line.split_whitespace().next().unwrap().to_owned())
        .filter(|name| name != "help")
        .collect()
}

#[test]
fn bash_completes_every_command() {
    let script = oxyfolio(&["completions", "bash"]).stdout;
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("oxyfolio");
    fs::write(&file, script).unwrap();
    // What bash would offer after `oxyfolio `.
    let ask = format!(
        ". '{}'; COMP_WORDS=(oxyfolio ''); COMP_CWORD=1; _oxyfolio oxyfolio '' oxyfolio; printf '%s\\n' \"${{COMPREPLY[@]}}\"",
        file.display()
    );
    let bash = Command::new("bash")
        .args(["--norc", "-c", &ask])
        .output()
        .unwrap();
    assert!(bash.status.success(), "{}", String::from_utf8_lossy(&bash.stderr));
    let offered = String::from_utf8(bash.stdout).unwrap();
    for command in commands() {
        assert!(
            offered.lines().any(|offer| offer == command),
            "{command}\n{offered}"
        );
    }
    for shell in ["zsh", "fish", "elvish", "powershell"] {
        let script = String::from_utf8(oxyfolio(&["completions", shell]).stdout).unwrap();
        for command in commands() {
            assert!(script.contains(&command), "{shell}: {command}");
        }
    }
}

#[test]
fn every_command_has_a_page_that_names_its_options() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("man1");
    let run = oxyfolio(&["manual", "--out", out.to_str().unwrap()]);
    assert!(run.status.success());
    assert!(
        fs::read_to_string(out.join("oxyfolio.1"))
            .unwrap()
            .starts_with(".ie")
    );
    for command in commands() {
        let page = fs::read_to_string(out.join(format!("oxyfolio-{command}.1"))).unwrap();
        let help = String::from_utf8(oxyfolio(&[&command, "--help"]).stdout).unwrap();
        let options = help.lines().filter_map(|line| line.trim().strip_prefix("--"));
        for option in options {
            let name = option.split([' ', '\n']).next().unwrap().replace('-', "\\-");
            assert!(page.contains(&name), "{command}: {name}");
        }
    }
}

/// A screen of 50 lines of 80 signs. What stands in the source as a line of its own, such as an example, is not broken to fit.
#[test]
fn every_help_fits_a_screen() {
    for command in commands().iter().map(String::as_str).chain([""]) {
        let help = |columns: &str| {
            let mut program = Command::new(env!("CARGO_BIN_EXE_oxyfolio"));
            program
                .args((!command.is_empty()).then_some(command))
                .arg("--help");
            String::from_utf8(program.env("COLUMNS", columns).output().unwrap().stdout).unwrap()
        };
        let narrow = help("80");
        assert!(
            narrow.lines().count() <= 50,
            "{command}: {} lines",
            narrow.lines().count()
        );
        assert!(narrow.lines().all(|line| line.chars().count() <= 80), "{command}");
        assert!(
            narrow.contains("oxyfolio ") && (command.is_empty() || narrow.contains("Example")),
            "{command}"
        );
        let exempt = ["completions", "manual"];
        assert!(
            exempt.contains(&command) || narrow.contains("Exit code: 0 "),
            "{command} tells its exit codes"
        );
        let wide = help("1000");
        for line in wide
            .lines()
            .filter(|line| line.starts_with("  ") && !line.contains("   "))
        {
            assert!(narrow.contains(&format!("{line}\n")), "{command} breaks {line:?}");
        }
    }
}

/// Runs the program with a pipe that nobody reads for standard output, and for standard error too where that is asked.
fn without_reader(arguments: &[&str], input: &str, hears_errors: bool) -> Output {
    let (reader, writer) = pipe().unwrap();
    drop(reader);
    let mut command = Command::new(env!("CARGO_BIN_EXE_oxyfolio"));
    command.args(arguments).stdin(Stdio::piped());
    if hears_errors {
        command.stderr(Stdio::piped());
    } else {
        command.stderr(writer.try_clone().unwrap());
    }
    let mut child = command.stdout(writer).spawn().unwrap();
    // Who answers nothing may not have read it.
    let _unread = child.stdin.take().unwrap().write_all(input.as_bytes());
    child.wait_with_output().unwrap()
}

/// As tools do that the system ends by its signal for a broken pipe: 128 and the signal's number, as a shell tells it.
#[test]
fn a_reader_that_goes_away_is_no_error() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let request = "{\"ask\": \"check\"}\n";
    let ways: &[&[&str]] = &[
        &["check"],
        &["check", "--format", "sarif"],
        &["setup", "--device", "nasal-cannula", "--flow", "8 L/min"],
        &[
            "duration",
            "--cylinder",
            "D",
            "--pressure",
            "1500 psi",
            "--flow",
            "15 L/min",
        ],
        &["plan", "tests/plans/transfer.yaml"],
        &["stock", "tests/stock/larkmere.csv"],
        &["stock", "tests/stock/larkmere.csv", "--format", "json"],
        &["drill"],
        &["drill", "--format", "csv"],
        &["compare", "rules", "tests/downstream/agency/rules"],
        &["compare", "--schema"],
        &["review", "tests/runs/faults.ndjson"],
        &["review", "tests/runs/faults.ndjson", "--format", "json"],
        &[
            "review",
            "tests/runs/faults.ndjson",
            "--format",
            "ndjson",
            "--exit-0",
        ],
        &["review", "tests/runs/faults.ndjson", "--format", "csv"],
        &["review", "--schema"],
        &["cards", "--matches", "KM7P-3QWD"],
        &[
            "new",
            &at("new"),
            "--agency",
            "Upper Vale",
            "--pressure",
            "bar",
            "--temperature",
            "celsius",
        ],
        &["desk"],
        &["completions", "bash"],
        &["answer"],
        &["answer", "--schema"],
    ];
    for arguments in ways {
        let output = without_reader(arguments, request, true);
        let said = String::from_utf8_lossy(&output.stderr);
        assert_eq!(said, "", "{arguments:?}");
        assert_eq!(output.status.code(), Some(141), "{arguments:?}");
    }
}

/// An error is told on standard error. Where nobody hears that either, the exit code alone tells it.
#[test]
fn errors_that_nobody_hears_keep_their_code() {
    let cases: &[(&[&str], i32)] = &[
        (&["stock", "tests/stock/nowhere.csv"], 2),
        (&["plan", "tests/stock/larkmere.csv"], 2),
        (
            &[
                "duration",
                "--cylinder",
                "Q",
                "--pressure",
                "1500 psi",
                "--flow",
                "15 L/min",
            ],
            2,
        ),
    ];
    for (arguments, code) in cases {
        let output = without_reader(arguments, "", false);
        assert_eq!(output.status.code(), Some(*code), "{arguments:?}");
    }
}
