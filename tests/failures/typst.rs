//! The typesetting program: killed, missing, of another version, printing rubbish.

use std::fs;

use crate::{files, in_place_of_typst, program, refused};

#[test]
fn whatever_typst_does_old_cards_stay_and_one_sentence_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    fs::create_dir(&out).unwrap();
    fs::write(out.join("cards-id-1-a4.pdf"), "last year's cards").unwrap();
    let before = files(&out);
    for (body, said) in [
        ("kill -KILL $$", "typst"),
        ("kill -SEGV $$", "typst"),
        ("exit 0", "typst"),
        (
            "printf '\\033[31mred\\007\\377\\376\\302\\233\\000 %.0s' $(seq 1 3000) >&2; exit 1",
            "\\u{1b}[31mred\\u{7}",
        ),
        ("echo 'error: no such font' >&2; exit 1", "no such font"),
        ("printf 'line\\n%.0s' $(seq 1 5000) >&2; exit 3", "line"),
    ] {
        let typst = in_place_of_typst(folder.path(), body);
        let output = program()
            .args(["cards", "--typst", &typst, "--out", out.to_str().unwrap()])
            .output()
            .unwrap();
        let told = String::from_utf8(output.stderr.clone()).unwrap();
        assert_eq!(output.status.code(), Some(2), "{body}: {told}");
        assert!(
            told.starts_with("error: ") && told.len() < 4_000,
            "{body}: {told}"
        );
        assert!(
            told.contains(said) || told.contains("typesetting"),
            "{body}: {told}"
        );
        assert!(
            !told.contains('\u{fffd}') || !told.contains('\u{1b}'),
            "{body}: {told}"
        );
        assert_eq!(files(&out), before, "{body}");
    }
}

#[test]
fn a_version_that_cannot_be_told_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    for said in [
        "typst",
        "",
        "0.15.1",
        "typst 99999999999999999999.1.1",
        "bash 5.2",
    ] {
        let path = folder.path().join("typst-other");
        fs::write(&path, format!("#!/bin/sh\necho '{said}'\n")).unwrap();
        std::os::unix::fs::PermissionsExt::set_mode(&mut fs::metadata(&path).unwrap().permissions(), 0o755);
        let mut permissions = fs::metadata(&path).unwrap().permissions();
        std::os::unix::fs::PermissionsExt::set_mode(&mut permissions, 0o755);
        fs::set_permissions(&path, permissions).unwrap();
        let output = program()
            .args(["drill", "--sheet", "never.pdf", "--typst", path.to_str().unwrap()])
            .output()
            .unwrap();
        refused(&output);
    }
    assert!(!std::path::Path::new("never.pdf").exists());
}
