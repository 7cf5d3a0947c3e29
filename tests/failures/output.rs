//! Where the output goes: full, forbidden, or used by two at once.

use std::{fs, os::unix::fs::PermissionsExt as _, process::Stdio};

use crate::{files, in_shell, program, refused};

/// No more may be written, as on a full disk: `/dev/full` says so to every write (Linux, full(4)).
#[test]
fn a_full_disk_under_standard_output() {
    for arguments in [
        &["check"][..],
        &["drill", "--format", "csv"],
        &[
            "duration",
            "--cylinder",
            "D",
            "--pressure",
            "1500 psi",
            "--flow",
            "15 L/min",
        ],
        &["review", "--format", "ndjson", "tests/runs/faults.ndjson"],
        &["review", "--format", "json", "tests/runs/faults.ndjson"],
    ] {
        let output = in_shell("exec \"$@\" > /dev/full", arguments).output().unwrap();
        let said = refused(&output);
        assert!(said.contains("No space left on device"), "{said}");
    }
}

/// Files may not grow beyond some blocks of 512 bytes (`ulimit -f`), so the first large write fails as on a full disk.
#[test]
fn a_full_disk_under_the_cards() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    fs::create_dir(&out).unwrap();
    fs::write(out.join("cards-id-1-a4.pdf"), "last year's cards").unwrap();
    let before = files(&out);
    let typst = crate::in_place_of_typst(folder.path(), "head -c 100 /dev/zero > \"$last\"");
    // The typesetting program writes little, we much: its file is small, ours are fonts and data.
    let output = in_shell(
        "trap '' XFSZ; ulimit -f 64; exec \"$@\"",
        &["cards", "--out", out.to_str().unwrap(), "--typst", &typst],
    )
    .output()
    .unwrap();
    refused(&output);
    assert_eq!(
        files(&out),
        before,
        "old cards stay, and nothing half-written is left"
    );
    // Without the limit the same run goes through.
    let output = in_shell(
        "exec \"$@\"",
        &["cards", "--out", out.to_str().unwrap(), "--typst", &typst],
    )
    .output()
    .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    assert_ne!(files(&out), before);
}

/// Whoever runs the tests, the program runs as nobody: root may write everywhere.
#[test]
fn a_folder_that_may_not_be_written() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    fs::create_dir(&out).unwrap();
    fs::write(out.join("sheet.pdf"), "last year's sheet").unwrap();
    for path in [folder.path(), &out] {
        fs::set_permissions(path, fs::Permissions::from_mode(0o555)).unwrap();
    }
    let before = files(&out);
    let typst = tempfile::tempdir().unwrap();
    fs::set_permissions(typst.path(), fs::Permissions::from_mode(0o755)).unwrap();
    let typst = crate::in_place_of_typst(typst.path(), "echo pdf > \"$last\"");
    let sheet = out.join("sheet.pdf");
    let new = out.join("more");
    for arguments in [
        &["drill", "--typst", &typst, "--sheet", sheet.to_str().unwrap()][..],
        &["cards", "--typst", &typst, "--out", out.to_str().unwrap()],
        &["cards", "--typst", &typst, "--out", new.to_str().unwrap()],
        &["manual", "--out", new.to_str().unwrap()],
    ] {
        let nobody = "if [ \"$(id -u)\" = 0 ]; then exec setpriv --reuid=65534 --regid=65534 --clear-groups \"$@\"; fi; exec \"$@\"";
        // A copy that nobody may run, wherever the tests are built.
        let bin = tempfile::tempdir().unwrap();
        fs::set_permissions(bin.path(), fs::Permissions::from_mode(0o755)).unwrap();
        let copy = bin.path().join("oxyfolio");
        fs::copy(env!("CARGO_BIN_EXE_oxyfolio"), &copy).unwrap();
        let output = std::process::Command::new("sh")
            .args(["-c", nobody, "sh"])
            .arg(&copy)
            .args(arguments)
            .output()
            .unwrap();
        let said = refused(&output);
        assert!(said.contains("Permission denied"), "{arguments:?}: {said}");
        assert_eq!(files(&out), before);
    }
    for path in [folder.path(), &out] {
        fs::set_permissions(path, fs::Permissions::from_mode(0o755)).unwrap();
    }
}

#[test]
fn two_runs_at_once_into_one_folder() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    let start = || {
        program()
            .args([
                "cards",
                "--size",
                "id-1",
                "--paper",
                "alone",
                "--out",
                out.to_str().unwrap(),
            ])
            .stdout(Stdio::null())
            .spawn()
            .unwrap()
    };
    let mut runs = [start(), start()];
    for run in &mut runs {
        assert!(run.wait().unwrap().success());
    }
    // Both wrote the same, and each file is whole.
    let both = files(&out);
    let alone = folder.path().join("alone");
    let run = program()
        .args([
            "cards",
            "--size",
            "id-1",
            "--paper",
            "alone",
            "--out",
            alone.to_str().unwrap(),
        ])
        .output()
        .unwrap();
    assert!(run.status.success());
    let names = |folder: &std::path::Path| -> Vec<(std::ffi::OsString, Vec<u8>)> {
        files(folder)
            .into_iter()
            .map(|(path, bytes)| (path.file_name().unwrap().to_owned(), bytes))
            .collect()
    };
    assert_eq!(names(&out), names(&alone));
    assert!(!both.is_empty());
}
