//! The files: whole or not at all, in every form; a typst that hangs or crashes.

use std::{fs, time::Instant};

use super::common::{self, oxyfolio};

#[test]
fn drawings_and_images_have_a_file_for_each_page() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().to_str().unwrap();
    for form in ["svg", "png"] {
        let output = oxyfolio(&[
            "cards", "--only", "log", "--only", "poster", "--as", form, "--out", out,
        ]);
        assert!(
            output.status.success(),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
    }
    let mut names: Vec<String> = fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    assert_eq!(
        names,
        [
            "inspection-log-letter-01.png",
            "inspection-log-letter-01.svg",
            "shut-down-poster-tabloid-01.png",
            "shut-down-poster-tabloid-01.svg",
        ]
    );
    let svg = fs::read_to_string(folder.path().join("inspection-log-letter-01.svg")).unwrap();
    assert!(svg.starts_with("<svg"), "{}", &svg[..60]);
    // 11 in wide at 300 dots to the inch.
    let png = fs::read(folder.path().join("inspection-log-letter-01.png")).unwrap();
    assert_eq!(&png[1..4], b"PNG");
    assert_eq!(u32::from_be_bytes(png[16..20].try_into().unwrap()), 3300);
}

#[test]
fn dots_to_the_inch_are_those_asked_for_and_only_of_images() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().to_str().unwrap();
    let log = ["cards", "--only", "log", "--out", out, "--dpi", "36"];
    let output = oxyfolio(&[&log[..], &["--as", "png"]].concat());
    assert!(output.status.success());
    let png = fs::read(folder.path().join("inspection-log-letter-01.png")).unwrap();
    assert_eq!(u32::from_be_bytes(png[16..20].try_into().unwrap()), 11 * 36);
    let output = oxyfolio(&log);
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(
        String::from_utf8(output.stderr).unwrap(),
        "error: --dpi is for images only; write `--as png` too, or leave it out\n"
    );
}

#[cfg(unix)]
mod broken {
    use std::os::unix::fs::PermissionsExt as _;
    use std::path::{Path, PathBuf};

    use super::*;

    /// A program in the place of typst: it tells its version and then does what the script says.
    fn typst(folder: &Path, script: &str) -> PathBuf {
        let program = folder.join("typst");
        let text =
            format!("#!/bin/sh\nif [ \"$1\" = --version ]; then echo 'typst 0.15.1'; exit; fi\n{script}\n");
        fs::write(&program, text).unwrap();
        fs::set_permissions(&program, fs::Permissions::from_mode(0o755)).unwrap();
        program
    }

    fn run(script: &str) -> (String, Vec<String>) {
        let folder = tempfile::tempdir().unwrap();
        let program = typst(folder.path(), script);
        let out = folder.path().join("out");
        fs::create_dir(&out).unwrap();
        fs::write(out.join("cards-id-1-letter.pdf"), "last year's cards").unwrap();
        let output = oxyfolio(&[
            "cards",
            "--size",
            "id-1",
            "--typst",
            program.to_str().unwrap(),
            "--time-limit",
            "1",
            "--out",
            out.to_str().unwrap(),
        ]);
        assert_eq!(output.status.code(), Some(2));
        let kept = fs::read_to_string(out.join("cards-id-1-letter.pdf")).unwrap();
        assert_eq!(
            kept, "last year's cards",
            "old cards stay until new ones are whole"
        );
        let names = fs::read_dir(&out)
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        (String::from_utf8(output.stderr).unwrap(), names)
    }

    #[test]
    fn a_typst_that_hangs_is_ended() {
        let started = Instant::now();
        let (said, names) = run("exec sleep 600");
        assert!(started.elapsed().as_secs() < 300, "it was ended");
        assert_eq!(
            said,
            "error: cannot set the cards: typst did not finish in 1 s and was ended; give it longer with --time-limit\n"
        );
        assert_eq!(names.len(), 1, "nothing half-written is left");
    }

    #[test]
    fn a_typst_that_crashes_is_named() {
        let (said, names) = run("kill -SEGV $$");
        assert!(
            said.starts_with("error: cannot set the cards: typst crashed (signal: 11"),
            "{said}"
        );
        assert_eq!(names.len(), 1);
    }

    #[test]
    fn a_typst_that_writes_nothing_is_no_success() {
        let (said, names) = run("exit 0");
        assert_eq!(said, "error: cannot set the cards: typst wrote no file\n");
        assert_eq!(names.len(), 1);
    }

    #[test]
    fn a_typst_that_never_tells_its_version_is_ended() {
        let folder = tempfile::tempdir().unwrap();
        let program = folder.path().join("typst");
        fs::write(&program, "#!/bin/sh\nexec sleep 600\n").unwrap();
        fs::set_permissions(&program, fs::Permissions::from_mode(0o755)).unwrap();
        let output = oxyfolio(&["cards", "--typst", program.to_str().unwrap(), "--time-limit", "1"]);
        assert_eq!(output.status.code(), Some(2));
        assert!(
            String::from_utf8(output.stderr)
                .unwrap()
                .contains("did not finish in 1 s")
        );
    }
}

#[test]
fn what_the_book_lacks_is_said() {
    let copy = common::copy_of_rules();
    let chapter = copy.path().join("13-pocket-cards.md");
    let text = fs::read_to_string(&chapter)
        .unwrap()
        .replace("3 x 5 in, A7, A6", "3 x 5 in, A7");
    let sheets = text.find("## Sheets").unwrap();
    fs::write(&chapter, &text[..sheets]).unwrap();
    let rules = copy.path().to_str().unwrap();
    for (arguments, said) in [
        (["--size", "a6"], "the rulebook has no card in the size A6"),
        (["--only", "poster"], "the rulebook has no such card or sheet"),
    ] {
        let output = oxyfolio(&[&["cards", "--rules", rules][..], &arguments].concat());
        assert_eq!(output.status.code(), Some(2));
        assert_eq!(
            String::from_utf8(output.stderr).unwrap(),
            format!("error: {said}\n")
        );
    }
}
