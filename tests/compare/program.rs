//! `oxyfolio compare` from outside.

use std::process::Command;

use crate::{common, repository::Repository};

#[test]
fn nothing_changed() {
    let rules = common::rules();
    let rules = rules.to_str().unwrap();
    let output = common::oxyfolio(&["compare", rules, rules]);
    assert_eq!(output.status.code(), Some(0));
    assert!(
        String::from_utf8(output.stdout)
            .unwrap()
            .contains("\nNothing changed.\n")
    );
}

/// One edit of a limit and one of an order, told whole.
#[test]
fn an_edit_in_words() {
    let repository = Repository::new();
    let rules = repository.rules();
    common::edit(
        &rules,
        "10-how-long-it-lasts.md",
        "value: 50 %\n",
        "value: 75 %\n",
    );
    common::edit(
        &rules,
        "07-giving-oxygen.md",
        "    after: [fill, explain, gauge]",
        "    after: [fill, gauge]",
    );
    let output = common::oxyfolio(&["compare", "git:HEAD", "--rules", rules.to_str().unwrap()]);
    let text = String::from_utf8(output.stdout).unwrap();
    assert_eq!(output.status.code(), Some(1), "{text}");
    for key in [
        "value: 50 % → 75 % (stricter)",
        "order of `explain` and `place`: `explain` before `place` → any order (looser)",
        "MINUTES: none moves",
        "e-for-a-journey-of-26",
        "of 100000 generated ones",
    ] {
        assert!(text.contains(key), "{key}: {text}");
    }
    insta::assert_snapshot!(text);
}

#[test]
fn the_answer_for_programs_keeps_to_its_schema() {
    let (code, schema) = {
        let output = common::oxyfolio(&["compare", "--schema"]);
        (
            output.status.code(),
            serde_json::from_slice(&output.stdout).unwrap(),
        )
    };
    assert_eq!(code, Some(0));
    let schema: serde_json::Value = schema;
    let validator = jsonschema::validator_for(&schema).unwrap();
    let copy = common::copy_of_rules();
    common::edit(
        copy.path(),
        "10-how-long-it-lasts.md",
        "value: 200 psi\n",
        "value: 250 psi\n",
    );
    // Left out, so that every list of the answer holds something.
    common::edit(
        copy.path(),
        "13-pocket-cards.md",
        "layout: newborn",
        "layout: newborns",
    );
    let rules = common::rules();
    // An edition of which nothing is left is answered too.
    let empty = tempfile::tempdir().unwrap();
    let (code, answer) = common::json(&["compare", empty.path().to_str().unwrap(), rules.to_str().unwrap()]);
    assert_eq!((code, &answer["ok"]), (2, &serde_json::Value::Bool(false)));
    assert!(validator.is_valid(&answer), "{answer:#}");
    for new in [copy.path(), &rules] {
        let (code, answer) = common::json(&["compare", rules.to_str().unwrap(), new.to_str().unwrap()]);
        let wrong: Vec<String> = validator
            .iter_errors(&answer)
            .map(|error| error.to_string())
            .collect();
        assert_eq!(wrong, Vec::<String>::new());
        assert_eq!(code, i32::from(new == copy.path()));
        assert_eq!(answer["ok"], new == rules);
    }
    // It refuses something.
    assert!(!validator.is_valid(&serde_json::json!({ "ok": true })));
}

#[test]
fn what_can_not_be_run() {
    let repository = Repository::new();
    let rules = repository.rules();
    let rules = rules.to_str().unwrap();
    let error = |arguments: &[&str]| {
        let output = common::oxyfolio(&[&["compare"], arguments].concat());
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        String::from_utf8(output.stderr).unwrap()
    };
    assert!(error(&["git:HEAD"]).contains("expected the new edition"));
    assert!(error(&["git:HEAD", "git:one"]).contains("give --rules DIR"));
    assert!(error(&["git:", rules]).contains("expected a revision after `git:`"));
    assert!(error(&["git:nowhere", rules]).contains("no revision `nowhere`"));
    assert!(error(&["nowhere", rules]).contains("there is no such folder"));
    let output = Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
        .args(["compare", "git:HEAD", rules])
        .env("PATH", "/nowhere")
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(
        String::from_utf8(output.stderr)
            .unwrap()
            .contains("cannot run `git`")
    );
}
