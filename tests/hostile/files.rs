//! Folders that hold something else than chapters. Every one is a copy of the demonstration with one file more.
#![cfg(unix)]

use std::{
    ffi::OsStr,
    fs,
    os::unix::{ffi::OsStrExt as _, fs::symlink, net::UnixListener},
    path::{Path, PathBuf},
    process::Command,
};

use oxyfolio::compile::folder;

use crate::{common, in_time};

/// The codes and messages of what is wrong with a folder; none when it is read.
fn wrong(folder: &Path) -> Vec<(&'static str, String)> {
    let folder = folder.to_owned();
    in_time("folder", move || match folder::load(&folder) {
        Ok(_) => Vec::new(),
        Err(rejected) => rejected
            .diagnostics
            .iter()
            .map(|found| (found.code, found.message.clone()))
            .collect(),
    })
}

/// Makes a file beside the demonstration; the one thing wrong is this code, and the message names the file.
fn refused(name: &str, code: &str, words: &str, make: impl FnOnce(PathBuf)) {
    let copy = common::copy_of_rules();
    make(copy.path().join(name));
    let wrong = wrong(copy.path());
    let [(found, message)] = wrong.as_slice() else {
        panic!("{name}: {wrong:?}");
    };
    assert_eq!(*found, code, "{message}");
    assert!(message.contains(words), "{message}");
}

fn write(text: &'static str) -> impl FnOnce(PathBuf) {
    move |path| fs::write(path, text).unwrap()
}

#[test]
fn a_pipe_is_not_waited_for() {
    refused(
        "90-pipe.md",
        "unreadable-chapter",
        "90-pipe.md`: it is not a file",
        |path| {
            assert!(Command::new("mkfifo").arg(path).status().unwrap().success());
        },
    );
}

#[test]
fn a_socket_is_not_read() {
    refused("90-socket.md", "unreadable-chapter", "it is not a file", |path| {
        drop(UnixListener::bind(path).unwrap());
    });
}

#[test]
fn a_device_is_not_read() {
    refused("90-zero.md", "link-outside", "90-zero.md", |path| {
        symlink("/dev/zero", path).unwrap();
    });
}

#[test]
fn a_link_out_of_the_folder_is_refused_by_name() {
    let outside = tempfile::NamedTempFile::new().unwrap();
    refused("90-link.md", "link-outside", "90-link.md", |path| {
        symlink(outside.path(), path).unwrap();
    });
    refused("90-link.md", "link-outside", "90-link.md", |path| {
        symlink("../../../../../../../../etc/passwd", path).unwrap();
    });
}

#[test]
fn a_link_out_through_a_folder_is_refused() {
    let outside = tempfile::tempdir().unwrap();
    fs::write(outside.path().join("a.md"), "# A\n").unwrap();
    refused("90-link.md", "link-outside", "90-link.md", |path| {
        let inside = path.with_file_name("annexes");
        symlink(outside.path(), &inside).unwrap();
        symlink("annexes/a.md", path).unwrap();
    });
}

#[test]
fn links_inside_the_folder_and_to_the_folder_are_followed() {
    let copy = common::copy_of_rules();
    fs::create_dir(copy.path().join("annexes")).unwrap();
    fs::write(copy.path().join("annexes/a.md"), "# A\n").unwrap();
    symlink("annexes/a.md", copy.path().join("90-link.md")).unwrap();
    assert_eq!(wrong(copy.path()), []);
    let beside = tempfile::tempdir().unwrap();
    let link = beside.path().join("protocol");
    symlink(copy.path(), &link).unwrap();
    assert_eq!(wrong(&link), []);
}

#[test]
fn links_that_lead_nowhere() {
    refused(
        "90-link.md",
        "unreadable-chapter",
        "90-link.md`: it is a link",
        |path| {
            symlink("no-such-file", path).unwrap();
        },
    );
    refused(
        "90-link.md",
        "unreadable-chapter",
        "90-link.md`: it is a link",
        |path| {
            symlink("90-link.md", path).unwrap();
        },
    );
}

#[test]
fn names_that_cannot_be_printed() {
    for (name, shown) in [
        ("90\n-a.md", "`90\\n-a.md`"),
        ("90-\u{1b}[31ma.md", "`90-\\u{1b}[31ma.md`"),
        ("90-\u{202e}a.md", "`90-\\u{202e}a.md`"),
    ] {
        refused(name, "chapter-name", shown, write("# A\n"));
    }
    let copy = common::copy_of_rules();
    fs::write(copy.path().join(OsStr::from_bytes(b"90-\xE9.md")), "# A\n").unwrap();
    let wrong = wrong(copy.path());
    assert_eq!(wrong.len(), 1);
    assert!(wrong[0].1.contains("\"90-\\xE9.md\""), "{wrong:?}");
}

#[test]
fn text_that_is_none() {
    refused("90-a.md", "lone-return", "CR alone", write("# A\rtext\r"));
    refused("90-a.md", "lone-return", "CR alone", write("# A\r\r\ntext\r\r\n"));
    refused("90-a.md", "not-text", "NUL", write("# A\0\n"));
    refused("90-a.md", "not-utf-8", "on line 2 of", |path| {
        fs::write(path, b"# A\n\xFFtext\n").unwrap()
    });
    refused("90-a.md", "not-utf-8", "on line 1 of", |path| {
        let utf_16: Vec<u8> = "\u{FEFF}# A\n"
            .encode_utf16()
            .flat_map(u16::to_le_bytes)
            .collect();
        fs::write(path, utf_16).unwrap();
    });
    refused(
        "90-a.md",
        "hidden-character",
        "U+001B",
        write("# A\n\n\u{1b}[2Jtext\n"),
    );
    refused(
        "90-a.md",
        "hidden-character",
        "U+202E",
        write("# A\n\ngive \u{202e}51 L/min\n"),
    );
}

#[test]
fn text_that_is_little_but_fine() {
    for text in [
        "",
        "\u{FEFF}",
        "\n",
        "\u{FEFF}# A\r\n\r\ntext\r\n",
        "no line end",
        "\t\n",
    ] {
        let copy = common::copy_of_rules();
        fs::write(copy.path().join("90-a.md"), text).unwrap();
        assert_eq!(wrong(copy.path()), [], "{text:?}");
    }
}

#[test]
fn a_chapter_of_50_megabytes() {
    refused("90-a.md", "chapter-too-long", "found 50000000 in", |path| {
        fs::File::create(path).unwrap().set_len(50_000_000).unwrap();
    });
}

#[test]
fn a_folder_of_2000_chapters_and_2000_other_files() {
    let copy = common::copy_of_rules();
    for number in 0..2_000 {
        fs::write(copy.path().join(format!("annex-{number}.md")), "# A\n").unwrap();
        fs::write(
            copy.path().join(format!("annex-{number}.txt")),
            "```yaml device\n",
        )
        .unwrap();
    }
    assert_eq!(wrong(copy.path()), []);
}

#[test]
fn folders_that_are_none() {
    let folder = tempfile::tempdir().unwrap();
    let pipe = folder.path().join("pipe");
    assert!(Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    for path in [
        Path::new("/dev/zero"),
        Path::new("/dev/stdin"),
        &pipe,
        Path::new(""),
    ] {
        let wrong = wrong(path);
        assert_eq!(wrong.len(), 1);
        assert_eq!(wrong[0].0, "unreadable-folder", "{wrong:?}");
    }
}
