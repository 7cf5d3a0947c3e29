//! Odd clocks, locales, homes and names.

use std::{fs, process::Command};

use crate::{common, program};

/// The program under another clock (libfaketime; Debian package faketime).
fn at(moment: &str, arguments: &[&str]) -> std::process::Output {
    Command::new("faketime")
        .arg(moment)
        .arg(env!("CARGO_BIN_EXE_oxyfolio"))
        .args(arguments)
        .output()
        .unwrap_or_else(|error| panic!("faketime is needed (Debian package faketime): {error}"))
}

/// A clock that stands at its beginning, or was set to a far year: what depends on the day says so; nothing else changes.
#[test]
fn a_wrong_clock() {
    let rules = common::rules();
    let rules = rules.to_str().unwrap();
    let said = |output: &std::process::Output| String::from_utf8(output.stdout.clone()).unwrap();
    let early = at(
        "1980-01-06 00:00:00",
        &["check", "--rules", rules, "--format", "json"],
    );
    let late = at(
        "2037-01-01 00:00:00",
        &["check", "--rules", rules, "--format", "json"],
    );
    // The edition isn't in effect yet, or its review is long due: both are told, and neither is a mistake of the book.
    for (output, word) in [(&early, "effective"), (&late, "review")] {
        assert_eq!(output.status.code(), Some(0), "{}", said(output));
        let answer: serde_json::Value = serde_json::from_str(&said(output)).unwrap();
        assert!(answer["diagnostics"].to_string().contains(word), "{answer:#}");
    }
    // Tests of cylinders are judged by the day; a cylinder tested in the future is no cylinder in order.
    let stock = at("1980-01-06 00:00:00", &["stock", "tests/stock/larkmere.csv"]);
    assert_eq!(stock.status.code(), Some(1), "{}", said(&stock));
    // What doesn't depend on the day is the same.
    let duration = [
        "duration",
        "--cylinder",
        "D",
        "--pressure",
        "1500 psi",
        "--flow",
        "15 L/min",
    ];
    assert_eq!(
        said(&at("1980-01-06 00:00:00", &duration)),
        said(&at("2037-01-01 00:00:00", &duration))
    );
    let review = ["review", "--format", "ndjson", "tests/runs/faults.ndjson"];
    assert_eq!(
        said(&at("1980-01-06 00:00:00", &review)),
        said(&at("2037-01-01 00:00:00", &review))
    );
}

/// The answers and the sheets don't depend on who asks where.
#[test]
fn locale_time_zone_and_home_change_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let sheet = folder.path().join("sheet.pdf");
    let run = |places: &[(&str, &str)], arguments: &[&str]| {
        let path = std::env::var_os("PATH").unwrap();
        let output = program()
            .env_clear()
            .env("PATH", path)
            .envs(places.iter().copied())
            .args(arguments)
            .output()
            .unwrap();
        (output.status.code(), output.stdout)
    };
    for arguments in [
        &["check"][..],
        &["review", "--by", "month", "tests/runs/faults.ndjson"],
        &["plan", "tests/plans/transfer.yaml"],
        &["drill", "--seed", "4", "--sheet", sheet.to_str().unwrap()],
    ] {
        let bare = run(&[], arguments);
        let bytes = fs::read(&sheet).ok();
        for places in [
            &[
                ("LC_ALL", "tr_TR.UTF-8"),
                ("LANG", "tr_TR.UTF-8"),
                ("TZ", "Pacific/Kiritimati"),
            ][..],
            &[
                ("LC_ALL", "C"),
                ("TZ", "Nowhere/At_All"),
                ("HOME", "/no/such/home"),
            ],
            &[
                ("LC_ALL", "de_DE@euro"),
                ("LC_NUMERIC", "de_DE"),
                ("TZ", ":"),
                ("HOME", ""),
            ],
        ] {
            assert_eq!(run(places, arguments), bare, "{arguments:?} {places:?}");
            assert_eq!(fs::read(&sheet).ok(), bytes);
        }
    }
}

#[test]
fn names_with_spaces_line_breaks_and_other_letters() {
    let folder = tempfile::tempdir().unwrap();
    for name in [
        "a b",
        "tab\tand 'quote\"",
        "Örtliche Regeln ü",
        "酸素",
        "line\nbreak",
        "-dash",
        "😀",
    ] {
        let rules = folder.path().join(format!("{name} rules"));
        fs::create_dir(&rules).unwrap();
        for entry in fs::read_dir(common::rules()).unwrap() {
            let path = entry.unwrap().path();
            fs::copy(&path, rules.join(path.file_name().unwrap())).unwrap();
        }
        let check = program()
            .arg("check")
            .arg("--rules")
            .arg(&rules)
            .output()
            .unwrap();
        assert_eq!(
            check.status.code(),
            Some(0),
            "{name:?}: {}",
            String::from_utf8_lossy(&check.stderr)
        );
        // A mistake is told with its file, on lines of their own.
        common::edit(
            &rules,
            "05-delivery-devices.md",
            "flow: 1 to 6 L/min",
            "flow: 6 to 1 L/min",
        );
        let check = program()
            .args(["check", "--format", "json", "--rules"])
            .arg(&rules)
            .output()
            .unwrap();
        assert_eq!(check.status.code(), Some(1));
        let answer: serde_json::Value = serde_json::from_slice(&check.stdout).unwrap();
        assert!(
            answer["diagnostics"][0]["place"]["file"]
                .as_str()
                .unwrap()
                .ends_with("05-delivery-devices.md")
        );
        // Records and what is made of them.
        let record = folder.path().join(format!("{name}.ndjson"));
        fs::copy("tests/runs/faults.ndjson", &record).unwrap();
        let review = program()
            .args(["review", "--format", "ndjson", "--"])
            .arg(&record)
            .output()
            .unwrap();
        assert_eq!(review.status.code(), Some(3), "{name:?}");
        for line in String::from_utf8(review.stdout).unwrap().lines() {
            let finding: serde_json::Value = serde_json::from_str(line).unwrap();
            assert_eq!(finding["file"], record.to_str().unwrap());
        }
        let sheet = folder.path().join(format!("{name}.pdf"));
        let drill = program()
            .args(["drill", "--count", "1", "--sheet"])
            .arg(&sheet)
            .output()
            .unwrap();
        assert_eq!(drill.status.code(), Some(0), "{name:?}");
        assert!(fs::read(&sheet).unwrap().starts_with(b"%PDF"));
        // Whatever the name, what is said to a terminal has no line break or control sign of it.
        let missing = program()
            .args(["review", "--"])
            .arg(folder.path().join(format!("{name}.none")))
            .output()
            .unwrap();
        assert_eq!(
            String::from_utf8_lossy(&missing.stderr).trim().lines().count(),
            1,
            "{name:?}"
        );
    }
}
