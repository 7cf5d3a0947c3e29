//! The example clients of tests/examples, in the languages they are written in.

use std::process::Command;

/// What a client prints; a machine without its language fails the test.
fn printed(language: &str, package: &str, client: &str) -> String {
    let output = Command::new(language)
        .arg(format!("{}/tests/examples/{client}", env!("CARGO_MANIFEST_DIR")))
        .arg(env!("CARGO_BIN_EXE_oxyfolio"))
        .env("PYTHONUTF8", "1")
        .output()
        .unwrap_or_else(|error| panic!("{language} is needed (Debian package {package}): {error}"));
    let stderr = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success() && stderr.is_empty(), "{client}: {stderr}");
    String::from_utf8(output.stdout).unwrap()
}

fn holds(printed: &str, middle: &[&str]) {
    let book = format!("edition 1, book {}", oxyfolio::RULEBOOK.short_digest);
    let mut expected = vec![&*book];
    expected.extend(middle);
    expected.extend(oxyfolio::book::ALWAYS_DISCLAIMERS);
    expected.extend(oxyfolio::book::ALWAYS_CAUTIONS);
    assert_eq!(printed.lines().collect::<Vec<_>>(), expected);
}

#[test]
fn a_program_in_python() {
    holds(
        &printed("python3", "python3", "ask.py"),
        &[
            "D at 1500 psi, 2 L/min: 103 min",
            "D at 1500 psi, 6 L/min: 34 min",
            "D at 1500 psi, 15 L/min: 13 min",
            "stop: 8 L/min is too low for the non-rebreather mask: the book says 10 to 15 L/min",
            "stop: The flow is too low for a device with a reservoir.",
            "in order: False; 12 could not be checked",
            "enough",
            "refused: pressure \"1500\": expected a unit after 1500 (write `1500 psi` or `1500 bar`, as your gauges show it)",
        ],
    );
}

#[test]
fn a_program_for_node() {
    holds(
        &printed("node", "nodejs", "ask.mjs"),
        &[
            "2.2 L at 120 bar, 2 L/min: 123 min",
            "2.2 L at 120 bar, 6 L/min: 41 min",
            "2.2 L at 120 bar, 15 L/min: 16 min",
            "stop: 8 L/min is too high for the nasal cannula: the book says 1 to 6 L/min",
            "warn: The flow is too high for a cannula.",
            "in order: false; 12 could not be checked",
            "swap DEMO-1: below-in-service-minimum",
            "refused: `duration` has no field `flwo`; did you mean `flow`?",
        ],
    );
}
