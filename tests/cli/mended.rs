//! Commands with a mistake, mended as the program says.

use super::common::oxyfolio;

/// The command, the mistaken arguments, a part of what is said, and the arguments of whoever followed it.
const COMMANDS: &[(&str, &[&str], &str, &[&str])] = &[
    (
        "duration",
        &["--cylinder", "Q"],
        "the rulebook has: d, jumbo-d",
        &["--cylinder", "d"],
    ),
    (
        "duration",
        &["--cylindr", "D"],
        "a similar argument exists: '--cylinder'",
        &["--cylinder", "D"],
    ),
    (
        "duration",
        &["--cylinder", "D", "--leak", "1"],
        "(write `1 L/min`)",
        &["--cylinder", "D", "--leak", "1 L/min"],
    ),
    (
        "duration",
        &["--cylinder", "D", "--leak", "1 lpm"],
        "(write `L/min`)",
        &["--cylinder", "D", "--leak", "1 L/min"],
    ),
    (
        "duration",
        &["--cylinder", "D", "--leak", "1 psi"],
        "(write a flow in L/min)",
        &["--cylinder", "D", "--leak", "1 L/min"],
    ),
    (
        "duration",
        &["--cylinder", "D", "--residual", "200"],
        "(write `200 psi` or `200 bar`, as your gauges show it)",
        &["--cylinder", "D", "--residual", "200 psi"],
    ),
    (
        "duration",
        &["--cylinder", "D", "--residual", "1,000 psi"],
        "(write `1000`)",
        &["--cylinder", "D", "--residual", "1000 psi"],
    ),
    (
        "duration",
        &["--cylinder", "D", "--temperature", "20 C"],
        "(write `°C`)",
        &["--cylinder", "D", "--temperature", "20 °C"],
    ),
    (
        "duration",
        &["--cylinder", "D", "--now", "2 pm"],
        "from 00:00 to 23:59",
        &["--cylinder", "D", "--now", "14:00"],
    ),
    (
        "setup",
        &["--device", "tent"],
        "the rulebook has: nasal-cannula",
        &["--device", "nasal-cannula"],
    ),
    (
        "setup",
        &["--device", "nasal-cannula", "--group", "elder"],
        "child, adult",
        &["--device", "nasal-cannula", "--group", "adult"],
    ),
    (
        "setup",
        &["--device", "nasal-cannula", "--condition", "flu"],
        "carbon-monoxide, none",
        &["--device", "nasal-cannula", "--condition", "none"],
    ),
    (
        "setup",
        &["--device", "nasal-cannula", "--spo2", "93"],
        "(write `93 %`)",
        &["--device", "nasal-cannula", "--spo2", "93 %"],
    ),
    (
        "check",
        &["--today", "10/20/2026"],
        "written YYYY-MM-DD",
        &["--today", "2026-10-20"],
    ),
    (
        "check",
        &["--format", "xml"],
        "[possible values: text, json,",
        &["--format", "json"],
    ),
    ("chek", &[], "a similar subcommand exists: 'check'", &[]),
    (
        "drill",
        &["--kind", "sums"],
        "[possible values: duration,",
        &["--kind", "duration"],
    ),
    ("drill", &["--count", "500"], "1..=200", &["--count", "20"]),
];

/// What a command needs beside the arguments that are looked at.
fn rest(command: &str) -> &'static [&'static str] {
    match command {
        "duration" => &["--pressure", "1500 psi", "--flow", "15 L/min"],
        "setup" => &["--flow", "2 L/min"],
        _ => &[],
    }
}

fn run(command: &str, arguments: &[&str]) -> (i32, String) {
    let all: Vec<&str> = [&[command], arguments, rest(command)].concat();
    let output = oxyfolio(&all);
    (
        output.status.code().unwrap(),
        String::from_utf8(output.stderr).unwrap(),
    )
}

#[test]
fn a_command_is_mended_as_the_program_says() {
    for (command, wrong, said, right) in COMMANDS {
        let (code, stderr) = run(command, wrong);
        assert_eq!(code, 2, "{command} {wrong:?}: {stderr}");
        assert!(stderr.contains(said), "{command} {wrong:?}: {stderr}");
        let command = if *command == "chek" { "check" } else { command };
        let (code, stderr) = run(command, right);
        assert_ne!(code, 2, "{command} {right:?}: {stderr}");
    }
}

/// To write a misspelled option behind `--` would make a file of it.
#[test]
fn no_option_is_said_to_be_a_file() {
    for command in ["review", "stock", "plan", "new"] {
        let (code, stderr) = run(command, &["x", "--zeppelin"]);
        assert_eq!(code, 2, "{command}: {stderr}");
        assert!(stderr.contains("unexpected argument '--zeppelin'"), "{stderr}");
        assert!(!stderr.contains("as a value"), "{stderr}");
    }
}
