//! Folders that can't be read, mended as their hints say.
#![cfg(unix)]

use std::{fs, os::unix::fs::symlink, path::Path};

use oxyfolio::compile::{Rejected, folder::load};

use crate::book::demo;

/// What is done to a folder.
type Done = fn(&Path);

/// The code, what is done to the demonstration's folder, the hint, and what is done by whoever reads it.
const MENDED: [(&str, Done, &str, Done); 10] = [
    (
        "no-chapters",
        |folder| rename_all(folder, ".md", ".txt"),
        "rename `01-about-this-book.txt` to `01-about-this-book.md`: the names of chapters end in `.md`",
        |folder| rename_all(folder, ".txt", ".md"),
    ),
    (
        "chapter-not-read",
        |folder| rename(folder, "05-delivery-devices.md", "05-delivery-devices.md.txt"),
        "rename `05-delivery-devices.md.txt` to `05-delivery-devices.md`: the names of chapters end in `.md`; or move it out of the folder",
        |folder| rename(folder, "05-delivery-devices.md.txt", "05-delivery-devices.md"),
    ),
    (
        "unreadable-chapter",
        |folder| fs::create_dir(folder.join("90-annexes.md")).unwrap(),
        "put a text file that may be read in its place, or move it out of the folder",
        |folder| rename(folder, "90-annexes.md", "../annexes"),
    ),
    (
        "unreadable-chapter",
        |folder| symlink("nowhere.md", folder.join("90-annex.md")).unwrap(),
        "put a text file that may be read in its place, or move it out of the folder",
        |folder| {
            fs::remove_file(folder.join("90-annex.md")).unwrap();
            fs::write(folder.join("90-annex.md"), "# Annex\n").unwrap();
        },
    ),
    (
        "chapter-name",
        |folder| fs::write(folder.join("90-\u{202E}xenna.md"), "# Annex\n").unwrap(),
        "rename the file with plain letters and digits",
        |folder| rename(folder, "90-\u{202E}xenna.md", "90-annex.md"),
    ),
    (
        "link-outside",
        |folder| {
            fs::write(folder.join("../annex.md"), "# Annex\n").unwrap();
            symlink("../annex.md", folder.join("90-annex.md")).unwrap();
        },
        "copy the file into the folder in place of the link",
        |folder| {
            fs::remove_file(folder.join("90-annex.md")).unwrap();
            fs::copy(folder.join("../annex.md"), folder.join("90-annex.md")).unwrap();
        },
    ),
    (
        "not-utf-8",
        |folder| fs::write(folder.join("90-annex.md"), b"# Annex\n\n5 \xB0C\n").unwrap(),
        "save the chapter as UTF-8",
        |folder| fs::write(folder.join("90-annex.md"), "# Annex\n\n5 °C\n").unwrap(),
    ),
    (
        "lone-return",
        |folder| fs::write(folder.join("90-annex.md"), "# Annex\r\rOne.\r").unwrap(),
        "save the chapter with the line ends of Unix or Windows",
        |folder| fs::write(folder.join("90-annex.md"), "# Annex\r\n\r\nOne.\r\n").unwrap(),
    ),
    (
        "not-text",
        |folder| fs::write(folder.join("90-annex.md"), "# Annex\n\nOne \0 two.\n").unwrap(),
        "delete it, or save the chapter as plain text",
        |folder| fs::write(folder.join("90-annex.md"), "# Annex\n\nOne two.\n").unwrap(),
    ),
    (
        "chapter-too-long",
        |folder| {
            let text = "# Annex\n".to_owned() + &"One more line.\n".repeat(300_000);
            fs::write(folder.join("90-annex.md"), text).unwrap();
        },
        "make two chapters of it",
        |folder| {
            let text = fs::read_to_string(folder.join("90-annex.md")).unwrap();
            let (one, other) = text.split_at(text.len() / 2);
            fs::write(folder.join("90-annex.md"), one).unwrap();
            fs::write(folder.join("91-annex.md"), other).unwrap();
        },
    ),
];

fn rename(folder: &Path, from: &str, to: &str) {
    fs::rename(folder.join(from), folder.join(to)).unwrap();
}

fn rename_all(folder: &Path, from: &str, to: &str) {
    for (name, _) in demo() {
        let stem = name.strip_suffix(".md").unwrap();
        rename(folder, &format!("{stem}{from}"), &format!("{stem}{to}"));
    }
}

fn told(rejected: &Rejected) -> Vec<(&'static str, Vec<String>)> {
    let one = |found: &oxyfolio::compile::diagnostic::Diagnostic| (found.code, found.hints.clone());
    rejected.diagnostics.iter().map(one).collect()
}

#[test]
fn a_folder_is_mended_as_its_hint_says() {
    for (code, damage, hint, mend) in MENDED {
        let place = tempfile::tempdir().unwrap();
        let folder = place.path().join("rules");
        fs::create_dir(&folder).unwrap();
        for (name, text) in demo() {
            fs::write(folder.join(name), text).unwrap();
        }
        damage(&folder);
        let Err(rejected) = load(&folder) else {
            panic!("{code}: nothing is wrong");
        };
        assert_eq!(told(&rejected), [(code, vec![hint.to_owned()])]);
        mend(&folder);
        if let Err(still) = load(&folder) {
            panic!("{code}: {}", still.render(false));
        }
    }
}

#[test]
fn the_folder_that_was_meant_is_named() {
    let place = tempfile::tempdir().unwrap();
    let folder = place.path().join("rules");
    fs::create_dir(&folder).unwrap();
    for (name, text) in demo() {
        fs::write(folder.join(name), text).unwrap();
    }
    for (code, other) in [("unreadable-folder", "rulez"), ("no-chapters", "")] {
        let Err(rejected) = load(&place.path().join(other)) else {
            panic!("{other:?} is read");
        };
        let hint = "name the folder that holds the rulebook".to_owned();
        assert_eq!(told(&rejected), [(code, vec![hint])]);
    }
    assert!(load(&folder).is_ok());
}
