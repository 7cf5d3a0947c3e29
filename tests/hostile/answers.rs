//! Answers stay short, quick to draw and safe to print, whatever the book is like.

use std::fs;

use oxyfolio::compile::MAX_DRAWN;

use crate::{block, common, read};

#[test]
fn a_hundred_thousand_errors_are_answered_with_two_hundred() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(
        folder.path().join("a.md"),
        "```yaml devise\n```\n".repeat(100_000),
    )
    .unwrap();
    let rules = folder.path().to_str().unwrap();
    let output = common::oxyfolio(&["check", "--rules", rules]);
    assert_eq!(output.status.code(), Some(1));
    let text = String::from_utf8(output.stdout).unwrap();
    assert_eq!(text.matches("error[unknown-kind]").count(), MAX_DRAWN);
    assert!(
        text.contains("\n… and more than 800 more\n"),
        "{}",
        &text[text.len() - 300..]
    );
    assert!(
        text.contains("\nmore than 1000 errors in "),
        "{}",
        &text[text.len() - 300..]
    );
    assert!(text.len() < 100_000);
    let (_, answer) = common::json(&["check", "--rules", rules]);
    assert_eq!(answer["diagnostics"].as_array().unwrap().len(), 1_000);
    assert_eq!(answer["complete"], false);
    let output = common::oxyfolio(&["check", "--rules", rules, "--format", "sarif"]);
    let log: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(log["runs"][0]["results"].as_array().unwrap().len(), 1_000);
    let notifications = &log["runs"][0]["invocations"][0]["toolExecutionNotifications"];
    assert_eq!(notifications.as_array().unwrap().len(), 1);
}

#[test]
fn between_two_hundred_and_a_thousand_the_others_are_counted() {
    let (rejected, drawn) = read("errors", "```yaml devise\n```\n".repeat(500)).unwrap_err();
    let more = rejected.diagnostics.len() - MAX_DRAWN;
    assert_eq!(rejected.omitted, 0);
    assert!(
        drawn.ends_with(&format!("\n… and {more} more\n\n")),
        "{}",
        &drawn[drawn.len() - 100..]
    );
}

#[test]
fn an_error_far_into_a_long_line_is_drawn_with_its_surroundings_only() {
    let text = block("device", &format!("{{{}flow: 5 psy}}", "a: b, ".repeat(1_000)));
    let (rejected, drawn) = read("a long line", text).unwrap_err();
    assert!(
        rejected
            .diagnostics
            .iter()
            .any(|found| found.code == "duplicate-key")
    );
    assert!(drawn.len() < 200_000, "{}", drawn.len());
    let heading = format!("# {}\n", "ä".repeat(300_000));
    let (rejected, drawn) = read("a long heading", heading).unwrap_err();
    assert_eq!(rejected.diagnostics[0].code, "heading-too-long");
    assert!(drawn.contains(" --> a.md:1:1\n"), "{}", &drawn[..300]);
    assert!(drawn.len() < 20_000, "{}", drawn.len());
}

#[test]
fn a_place_in_a_line_too_long_to_draw_has_its_true_column() {
    let (before, after) = ("ä".repeat(60_000), "b".repeat(60_000));
    let text = format!("# A\n\nline\n{before}\u{202e}{after}\n");
    let (rejected, drawn) = read("a long line", text).unwrap_err();
    assert_eq!(rejected.diagnostics[0].code, "hidden-character");
    assert!(drawn.contains(" --> a.md:4:60001\n"), "{drawn}");
    assert!(drawn.contains("\n4 | "), "{drawn}");
    assert!(drawn.contains("ä\\u{202e}b"), "{drawn}");
    assert!(drawn.len() < 3_000, "{}", drawn.len());
}

#[test]
fn places_far_apart_are_drawn_apart() {
    let rule = block("policy", "id: a\nname: A\nvalue: 5 min");
    let text = format!("{rule}{}{rule}", "text\n\n".repeat(20_000));
    let (rejected, drawn) = read("far apart", text).unwrap_err();
    let error = &rejected.diagnostics[0];
    assert_eq!(error.code, "duplicate-id");
    let first = drawn.split("\n\n").next().unwrap();
    assert!(first.contains("\n40015 | id: a\n"), "{first}");
    assert!(first.contains("\n    6 | id: a\n"), "{first}");
    assert!(first.contains("- first defined here"), "{first}");
}

#[test]
fn what_would_turn_or_clear_the_terminal_is_shown_as_an_escape() {
    for (hidden, shown) in [
        ("\u{202e}", "\\u{202e}"),
        ("\u{2066}", "\\u{2066}"),
        ("\u{200f}", "\\u{200f}"),
        ("\u{9b}31m", "\\u{9b}31m"),
        ("\u{1b}[2J", "␛[2J"),
    ] {
        let (rejected, drawn) = read("hidden", format!("# A\n\nGive {hidden}51 L/min.\n")).unwrap_err();
        assert_eq!(rejected.diagnostics[0].code, "hidden-character");
        assert!(drawn.contains(shown), "{drawn}");
        assert!(!drawn.contains(hidden), "{drawn}");
    }
    // Harmless in prose, shown where a name holds it.
    let (_, drawn) = read("hidden", block("policy", "id: a\u{200b}b")).unwrap_err();
    assert!(drawn.contains("a\\u{200b}b"), "{drawn}");
    assert!(!drawn.contains('\u{200b}'), "{drawn}");
}

#[test]
fn an_escape_in_quotation_marks_does_not_reach_a_card_or_a_terminal() {
    for escape in ["\\e[31m", "\\u202e", "\\u200f", "\\x07", "\\0"] {
        let text = block("policy", &format!("id: a\nname: \"A{escape}\"\nvalue: 5 min"));
        let (rejected, drawn) = read("escape", text).unwrap_err();
        let codes: Vec<_> = rejected.diagnostics.iter().map(|found| found.code).collect();
        assert!(codes.contains(&"hidden-character"), "{escape}: {codes:?}");
        assert!(drawn.contains(escape), "{drawn}");
    }
}

#[test]
fn long_texts_are_quoted_without_their_middle() {
    let text = block(
        "policy",
        &format!("id: {}\nname: A\nvalue: {}", "A".repeat(9_000), "b".repeat(9_000)),
    );
    let (rejected, _) = read("long", text).unwrap_err();
    for found in &rejected.diagnostics {
        assert!(found.message.len() <= 1_010, "{}", found.message.len());
        assert!(found.hints.iter().all(|hint| hint.len() <= 1_010));
    }
}

/// The worst chapters within the limits, in a process that may not take more.
#[cfg(target_os = "linux")]
#[test]
fn memory_is_bounded() {
    for piece in ["*a **a ", "[", "- a\n", "|a|b|\n|-|-|\n", "- id: a\n"] {
        let folder = tempfile::tempdir().unwrap();
        let text = piece.repeat(1_500_000 / piece.len());
        fs::write(folder.path().join("a.md"), text).unwrap();
        let output = std::process::Command::new("sh")
            .args(["-c", "ulimit -v 700000 && exec \"$0\" check --rules \"$1\""])
            .arg(env!("CARGO_BIN_EXE_oxyfolio"))
            .arg(folder.path())
            .output()
            .unwrap();
        assert_eq!(
            output.status.code(),
            Some(1),
            "{piece}: {}",
            String::from_utf8_lossy(&output.stderr)
        );
    }
}
