//! Completions and manual pages, read by the programs they are for.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;

use std::{fs, process::Command};

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

/// A screen of 50 lines of 100 signs, as a window beside an editor is.
#[test]
fn every_help_fits_a_screen() {
    for command in commands() {
        let help = String::from_utf8(oxyfolio(&[&command, "--help"]).stdout).unwrap();
        assert!(
            help.lines().count() <= 50,
            "{command}: {} lines",
            help.lines().count()
        );
        assert!(help.lines().all(|line| line.chars().count() <= 110), "{command}");
    }
}
