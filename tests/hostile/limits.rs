//! Every limit of the language page: what is at the limit is read, and one more is refused with the page's code.

use std::{collections::BTreeMap, fs};

use oxyfolio::compile::folder;

use crate::{block, codes, in_time, read};

/// The page's table: what, at most, code.
fn table() -> BTreeMap<&'static str, (usize, &'static str)> {
    let page = include_str!("../../src/compile/language.md");
    let (_, limits) = page.split_once("\n## Limits\n").unwrap();
    let row = |line: &'static str| {
        let cells: Vec<&str> = line.trim_matches('|').split(" | ").map(str::trim).collect();
        let number = cells.get(1)?.parse().ok()?;
        Some((cells[0], (number, cells[2].trim_matches('`'))))
    };
    limits.lines().filter_map(row).collect()
}

/// The codes of a folder that holds these files.
fn folder_codes(files: Vec<(String, Vec<u8>)>) -> Vec<&'static str> {
    in_time("folder", move || {
        let folder = tempfile::tempdir().unwrap();
        for (name, bytes) in files {
            fs::write(folder.path().join(name), bytes).unwrap();
        }
        let rejected = folder::load(folder.path()).unwrap_err();
        rejected.diagnostics.iter().map(|found| found.code).collect()
    })
}

fn named(name: &str, bytes: Vec<u8>) -> (String, Vec<u8>) {
    (name.to_owned(), bytes)
}

/// What a limit is about, `count` of it.
fn made(what: &str, count: usize) -> Vec<&'static str> {
    let text = match what {
        "chapters in a folder" => {
            return folder_codes(
                (0..count)
                    .map(|number| (format!("{number}.md"), Vec::new()))
                    .collect(),
            );
        }
        // No text at all, so that it is quickly refused.
        "bytes in a chapter" => return folder_codes(vec![named("a.md", vec![0xFF; count])]),
        "bytes in all chapters" => {
            let whole = 4 * 1024 * 1024;
            let mut files: Vec<_> = (0..count / whole)
                .map(|number| (format!("{number}.md"), vec![0xFF; whole]))
                .collect();
            files.push(named("z.md", vec![0xFF; count % whole]));
            return folder_codes(files);
        }
        "rules in a book" => {
            let rule = |number: &usize| format!("- {{id: a{number}, value: 1 s}}\n");
            let numbers: Vec<usize> = (0..count).collect();
            let blocks = numbers.chunks(1_500);
            blocks
                .map(|numbers| block("policy", &numbers.iter().map(rule).collect::<String>()))
                .collect()
        }
        "hazards in a book" => {
            let hazard = |number| format!("- {{id: a{number}, never: flame near}}\n");
            block("hazard", &(0..count).map(hazard).collect::<String>())
        }
        "conditions in a book" => {
            let target = |number| format!("- {{id: a{number}, condition: c{number}, condition-name: C}}\n");
            block("target", &(0..count).map(target).collect::<String>())
        }
        "quotation and list marks at the start of a line" => ">".repeat(count) + " a\n",
        "column of the last of these marks" => " ".repeat(count - 1) + "- a\n",
        "bytes in a heading" => format!("# {}\n", "a".repeat(count)),
        "bytes in the reason above a block" => {
            format!("# A\n\n{}\n\n```yaml policy\nid: a\n```\n", "a".repeat(count))
        }
        // The mapping, its key, and the list with its items.
        "keys, values and lists in a block" => block("policy", &format!("id: [{}]", "a, ".repeat(count - 3))),
        "levels of lists and keys in a block" => block(
            "policy",
            &"- "
                .repeat(count - 1)
                .replace("- ", "[")
                .chars()
                .chain("a".chars())
                .chain("]".repeat(count - 1).chars())
                .collect::<String>(),
        ),
        "bytes in a value" => block("policy", &format!("id: a\nname: {}", "a".repeat(count))),
        _ => panic!("no test of {what}"),
    };
    codes(what, text)
}

#[test]
fn what_is_at_a_limit_is_read_and_one_more_is_refused() {
    let table = table();
    assert_eq!(table.len(), 13);
    for (what, (most, code)) in table {
        let at = made(what, most);
        assert!(!at.contains(&code), "{what}: {most} is refused: {at:?}");
        let over = made(what, most + 1);
        assert!(over.contains(&code), "{what}: {} is read: {over:?}", most + 1);
    }
}

#[test]
fn the_first_one_too_many_is_shown() {
    for (kind, rule, most, code) in [
        ("hazard", "never: flame near", 256, "too-many-hazards"),
        (
            "target",
            "condition: cN, condition-name: C",
            64,
            "too-many-conditions",
        ),
    ] {
        let rule = |number: usize| {
            format!(
                "- {{id: a{number}, {}}}\n",
                rule.replace('N', &number.to_string())
            )
        };
        let text = block(kind, &(0..=most + 1).map(rule).collect::<String>());
        let first = text
            .lines()
            .position(|line| line.contains(&format!("a{most},")))
            .unwrap()
            + 1;
        let (rejected, _) = read(kind, text).unwrap_err();
        let found: Vec<_> = rejected
            .diagnostics
            .iter()
            .filter(|found| found.code == code)
            .collect();
        assert_eq!(found.len(), 1, "{kind}");
        assert_eq!(
            rejected.sources.line_column(found[0].span.unwrap()).line,
            first,
            "{kind}"
        );
        assert!(!found[0].hints.is_empty(), "{kind}");
    }
}
