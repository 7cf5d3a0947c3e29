//! DEVELOPERS and the page of tables are true: paths exist, dependencies have reasons, samples are what is written.
//! README has `tests/tours.rs`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

use std::{fs, path::Path};

fn document(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(name)).unwrap()
}

#[test]
fn every_path_named_in_developers_exists() {
    let text = document("DEVELOPERS.md");
    let mut paths = 0;
    for word in text.split('`').skip(1).step_by(2) {
        let is_path = word.starts_with("src/")
            || word.starts_with("tests/")
            || word.starts_with("cards/")
            || word.starts_with("rules/")
            || word.starts_with(".ci/")
            || word == "build.rs"
            || word == "deny.toml";
        if is_path && !word.contains('*') {
            paths += 1;
            assert!(
                Path::new(env!("CARGO_MANIFEST_DIR")).join(word).exists(),
                "{word} does not exist"
            );
        }
    }
    assert!(paths > 20, "paths were found");
}

#[test]
fn every_room_and_test_is_on_the_map() {
    let text = document("DEVELOPERS.md");
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    for (folder, keep) in [("src", "dir"), ("tests", "rs")] {
        for entry in fs::read_dir(root.join(folder)).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_str().unwrap().to_owned();
            let wanted = match keep {
                "dir" => path.is_dir().then(|| format!("`{folder}/{name}/`")),
                _ => name.ends_with(".rs").then(|| format!("`{folder}/{name}`")),
            };
            if let Some(wanted) = wanted {
                assert!(text.contains(&wanted), "{wanted} is not on the map");
            }
        }
    }
}

#[test]
fn every_dependency_has_its_reason() {
    let text = document("DEVELOPERS.md");
    let manifest = document("Cargo.toml");
    let mut section = "";
    for line in manifest.lines() {
        if line.starts_with('[') {
            section = line;
        } else if section.contains("dependencies")
            && let Some((name, _)) = line.split_once(" = ")
            && !line.starts_with('#')
        {
            assert!(text.contains(name), "{name} has no reason in DEVELOPERS.md");
        }
    }
}

/// What the page shows of rules stands in the chapters, and what it shows of tables is what the emitter writes.
#[test]
fn the_page_of_tables_shows_what_is_written() {
    let page = document("src/compile/tables.md");
    let chapters = oxyfolio::CHAPTERS
        .iter()
        .map(|(_, text)| *text)
        .collect::<String>();
    let tables = oxyfolio::compile::emit::rust(&oxyfolio::RULEBOOK);
    for (fence, shown, expected) in [
        ("````markdown\n", &chapters, 1),
        ("\n```yaml hazard\n", &chapters, 1),
        ("\n```text\n", &tables, 6),
    ] {
        let mut count = 0;
        for block in page.split(fence).skip(1) {
            let end = if fence.starts_with("````") {
                "\n````"
            } else {
                "\n```"
            };
            let (block, _) = block.split_once(end).unwrap();
            assert!(shown.contains(block), "nobody writes:\n{block}");
            count += 1;
        }
        assert_eq!(count, expected, "{fence}");
    }
}
