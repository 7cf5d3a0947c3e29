//! Rulebooks in a folder: what cannot be read, and what may differ without being another book.

use std::{fs, path::Path};

use oxyfolio::compile::{
    Compiled, Rejected,
    folder::{MAX_CHAPTER_BYTES, load},
};

use crate::book::demo;

/// A folder that holds the demonstration, each chapter written by `write`.
fn folder(write: impl Fn(&str, &str) -> Vec<u8>) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in demo() {
        fs::write(folder.path().join(&name), write(&name, &text)).unwrap();
    }
    folder
}

fn as_it_is(_: &str, text: &str) -> Vec<u8> {
    text.as_bytes().to_vec()
}

fn accepted(folder: &Path) -> Compiled {
    match load(folder) {
        Ok(compiled) => compiled,
        Err(rejected) => panic!("{}", rejected.render(false)),
    }
}

fn rejected(folder: &Path) -> Box<Rejected> {
    match load(folder) {
        Err(rejected) => rejected,
        Ok(_) => panic!("the compiler sees no mistake"),
    }
}

/// The first error's code is `code`; the drawing of the first few is the snapshot.
fn check(name: &str, folder: &Path, code: &str) {
    let mut rejected = rejected(folder);
    for diagnostic in &mut rejected.diagnostics {
        let shown = folder.display().to_string();
        diagnostic.message = diagnostic.message.replace(&shown, "FOLDER");
    }
    assert_eq!(rejected.diagnostics[0].code, code, "\n{}", rejected.render(false));
    crate::book::snapshot(name, *rejected, 1);
}

#[test]
fn empty_folder() {
    let folder = tempfile::tempdir().unwrap();
    check("folder_empty", folder.path(), "no-chapters");
}

#[test]
fn folder_with_other_files_only() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("protocol.docx"), "PK").unwrap();
    fs::write(folder.path().join(".hidden.md"), "# Hidden\n").unwrap();
    assert_eq!(rejected(folder.path()).diagnostics[0].code, "no-chapters");
}

#[test]
fn missing_folder() {
    let folder = tempfile::tempdir().unwrap();
    let missing = folder.path().join("rulez");
    check("folder_missing", &missing, "unreadable-folder");
}

#[test]
fn file_for_a_folder() {
    let folder = folder(as_it_is);
    let file = folder.path().join("01-about-this-book.md");
    check("folder_is_a_file", &file, "unreadable-folder");
}

#[test]
fn chapter_in_another_encoding() {
    // As an old word processor saves it: one byte for the degree sign.
    let folder = folder(|name, text| {
        if name.starts_with("02-") {
            text.chars().map(|c| u8::try_from(c).unwrap_or(b'?')).collect()
        } else {
            as_it_is(name, text)
        }
    });
    check("folder_not_utf_8", folder.path(), "not-utf-8");
}

#[test]
fn chapter_too_long() {
    let folder = folder(as_it_is);
    let long = fs::File::create(folder.path().join("14-annex.md")).unwrap();
    long.set_len(MAX_CHAPTER_BYTES + 1).unwrap();
    check("folder_chapter_too_long", folder.path(), "chapter-too-long");
}

#[test]
fn folder_named_like_a_chapter() {
    let folder = folder(as_it_is);
    fs::create_dir(folder.path().join("x.md")).unwrap();
    check("folder_named_like_a_chapter", folder.path(), "unreadable-chapter");
}

#[test]
fn chapter_with_a_nul_character() {
    let folder = folder(as_it_is);
    fs::write(folder.path().join("14-annex.md"), "# Annex\n\nOne \0 two.\n").unwrap();
    assert_eq!(rejected(folder.path()).diagnostics[0].code, "not-text");
}

#[test]
fn chapter_without_a_heading_is_cited_by_its_file() {
    let folder = folder(as_it_is);
    let rule = "Ours.\n\n```yaml policy\nid: our-own\nname: Our own\nvalue: 5 min\n```\n";
    fs::write(folder.path().join("14-annex.md"), rule).unwrap();
    let compiled = accepted(folder.path());
    let policy = compiled
        .book
        .policies
        .all
        .iter()
        .find(|policy| &*policy.rule.id == "our-own")
        .unwrap();
    assert_eq!(&*policy.rule.place.chapter, "14-annex");
    assert_eq!(&*policy.rule.place.heading, "14-annex");
    assert_eq!(policy.rule.place.line, 4);
}

#[test]
fn line_ends_and_byte_order_mark_do_not_make_another_book() {
    let plain = folder(as_it_is);
    let dressed = folder(|_, text| format!("\u{FEFF}{}", text.replace('\n', "\r\n")).into_bytes());
    let (plain, dressed) = (accepted(plain.path()), accepted(dressed.path()));
    assert_eq!(plain.book.digest, dressed.book.digest);
    assert_eq!(plain.book.short_digest, dressed.book.short_digest);
    // Not only the digest: rationale, texts and line numbers too.
    assert_eq!(format!("{:?}", plain.book), format!("{:?}", dressed.book));
    assert!(dressed.notes.is_empty());
}

#[test]
fn a_mistake_stands_at_the_same_place_whatever_the_line_ends() {
    let edited = |text: &str| text.replace("factor: 0.16 L/psi", "factor: 0.16 L/pis");
    let plain = folder(|_, text| edited(text).into_bytes());
    let dressed = folder(|_, text| format!("\u{FEFF}{}", edited(text).replace('\n', "\r\n")).into_bytes());
    let places = [plain.path(), dressed.path()].map(|folder| {
        let rejected = rejected(folder);
        let first = rejected.diagnostics[0].clone();
        (first.code, rejected.sources.line_column(first.span.unwrap()))
    });
    assert_eq!(places[0].0, "unknown-unit");
    assert_eq!(places[0], places[1]);
}

#[test]
fn every_other_character_makes_another_book() {
    let plain = folder(as_it_is);
    let longer = folder(|name, text| {
        let end = if name.starts_with("12-") { "\n" } else { "" };
        format!("{text}{end}").into_bytes()
    });
    let digests = [plain.path(), longer.path()].map(|folder| accepted(folder).book.digest);
    assert_ne!(digests[0], digests[1]);
}

#[cfg(unix)]
#[test]
fn chapter_whose_name_is_not_unicode() {
    use std::{ffi::OsStr, os::unix::ffi::OsStrExt};
    let folder = folder(as_it_is);
    let name = OsStr::from_bytes(b"14-\xE9.md");
    fs::write(folder.path().join(name), "# Annex\n").unwrap();
    let rejected = rejected(folder.path());
    assert_eq!(rejected.diagnostics[0].code, "unreadable-chapter");
}

/// A rule in a file that is no chapter would be a rule that nobody reads.
#[test]
fn chapters_saved_under_another_ending() {
    let hints = |folder: &Path| {
        let rejected = rejected(folder);
        let one = &rejected.diagnostics[0];
        (one.code, one.message.clone(), one.hints.join(" "))
    };
    // The only chapter, under each ending.
    for (name, hint) in [
        (
            "01-book.txt",
            "rename `01-book.txt` to `01-book.md`: the names of chapters end in `.md`",
        ),
        (
            "01-book.md.txt",
            "rename `01-book.md.txt` to `01-book.md`: the names of chapters end in `.md`",
        ),
        (
            "01-book.odt",
            "save `01-book.odt` as plain text under the name `01-book.md`: the names of chapters end in `.md`",
        ),
        ("01-book.pdf", "name the folder that holds the rulebook"),
    ] {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join(name), "# Book\n").unwrap();
        let (code, _, said) = hints(folder.path());
        assert_eq!((code, said.as_str()), ("no-chapters", hint));
    }
    // Beside the others: an error where it holds rules.
    let book = folder(as_it_is);
    let (from, to) = ("05-delivery-devices.md", "05-delivery-devices.md.txt");
    fs::rename(book.path().join(from), book.path().join(to)).unwrap();
    let rejected = rejected(book.path());
    let about: Vec<_> = rejected
        .diagnostics
        .iter()
        .map(|found| (found.code, found.message.as_str()))
        .collect();
    assert_eq!(
        about,
        [(
            "chapter-not-read",
            "`05-delivery-devices.md.txt` holds rules and is not read as a chapter"
        )],
        "nothing is said to be missing because of it"
    );
    assert_eq!(
        rejected.diagnostics[0].hints,
        [
            "rename `05-delivery-devices.md.txt` to `05-delivery-devices.md`: the names of chapters end in `.md`; or move it out of the folder"
        ]
    );
    // Without rules it may be left there; with rules, or with two endings, it is a note.
    let book = folder(as_it_is);
    fs::write(book.path().join("old.txt"), "```yaml device\nid: x\n```\n").unwrap();
    let notes = accepted(book.path()).notes;
    let told: Vec<_> = notes
        .iter()
        .filter(|note| note.code == "chapter-not-read")
        .collect();
    assert_eq!(
        told[0].message,
        "`old.txt` holds rules and is not read as a chapter"
    );
    fs::remove_file(book.path().join("old.txt")).unwrap();
    fs::write(book.path().join("notes.txt"), "Call the maker.\n").unwrap();
    let codes = |folder: &Path| {
        accepted(folder)
            .notes
            .iter()
            .map(|note| note.code)
            .collect::<Vec<_>>()
    };
    assert!(!codes(book.path()).contains(&"chapter-not-read"));
    fs::write(book.path().join("00-foreword.md.txt"), "# Foreword\n").unwrap();
    assert!(codes(book.path()).contains(&"chapter-not-read"));
}
