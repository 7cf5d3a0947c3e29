//! The pass over files: the same bytes whatever the threads, runs in their order, bounded memory.

use std::fmt::Write as _;

use oxyfolio::records::run::{Options, Pseudonyms, Written};

use super::support::{file, findings, pass, run};

/// Runs with faults here and there, some twice, bad lines between.
fn mixed(runs: u32) -> String {
    let mut text = String::new();
    for number in 0..runs {
        match number % 11 {
            3 => text.push_str("{broken\n"),
            5 => text.push('\n'),
            7 => writeln!(
                text,
                r#"{{"run":"LV-{number:05}","group":"adlut","events":[{{"flow":1}}]}}"#
            )
            .unwrap(),
            9 => writeln!(text, "{}", run(number - 9, 2)).unwrap(),
            _ => writeln!(text, "{}", run(number, number % 40)).unwrap(),
        }
    }
    text
}

#[test]
fn the_output_does_not_depend_on_the_number_of_threads() {
    let (_folder, path) = file("a.ndjson", mixed(600));
    let (_other, second) = file("b.ndjson", mixed(80));
    for written in [Written::Lines, Written::List, Written::Csv] {
        let said = |threads| {
            let options = Options {
                threads,
                written,
                crews: true,
                ..Options::default()
            };
            let (tally, out) = pass(&[path.clone(), second.clone()], &options);
            let shown = format!(
                "{:?} {:?} {:?} {:?}",
                tally.by_rule(),
                tally.months,
                tally.crews,
                tally.bad
            );
            (out, shown, tally.runs, tally.runs_wrong, tally.bad_lines)
        };
        let one = said(1);
        assert!(one.0.len() > 50_000 && one.4 > 40);
        for threads in [2, 5] {
            assert!(said(threads) == one, "{threads} threads, {written:?}");
        }
    }
}

#[test]
fn findings_come_in_the_order_of_the_input_with_their_lines() {
    let text = mixed(800);
    let (_, found) = findings("a.ndjson", &text);
    let lines: Vec<u64> = found
        .iter()
        .map(|found| found["line"].as_u64().unwrap())
        .collect();
    assert!(lines.is_sorted());
    let text: Vec<&str> = text.lines().collect();
    for found in &found {
        let line = text[found["line"].as_u64().unwrap() as usize - 1];
        match found["run"].as_str() {
            Some(name) => assert!(line.contains(name), "{found}"),
            None => assert_eq!(line, "{broken"),
        }
    }
}

#[test]
fn a_run_that_comes_twice_is_told_before_its_other_findings() {
    let one = r#"{"run":"A","group":"adlut"}"#;
    let (tally, found) = findings("a.ndjson", format!("{one}\n{one}\n{{\"run\":\"B\"}}\n{one}\n"));
    let told: Vec<(u64, &str)> = found
        .iter()
        .filter(|found| found["run"] == "A")
        .map(|found| (found["line"].as_u64().unwrap(), found["code"].as_str().unwrap()))
        .collect();
    let first: Vec<_> = told.iter().filter(|(line, _)| *line == 2).collect();
    assert_eq!(first[0].1, "run-twice");
    assert_eq!(told.iter().filter(|(_, code)| *code == "run-twice").count(), 2);
    let row = tally.rows.iter().find(|row| row.code == "run-twice").unwrap();
    assert_eq!((row.findings, row.runs), (2, 2));
}

#[test]
fn a_name_is_forgotten_after_many_others() {
    let named = |number: u32| format!("{{\"run\":{number},\"events\":[{{}}]}}\n");
    let text = |others: u32| -> String {
        let all = (0..=others).chain([0]);
        all.map(named).collect()
    };
    let twice = |text: String| {
        let (tally, _) = findings("a.ndjson", text);
        tally.rows.iter().any(|row| row.code == "run-twice")
    };
    assert!(twice(text(65_535)));
    assert!(!twice(text(65_536)));
}

#[test]
fn rows_of_a_run_stay_together_over_batches() {
    let mut text = String::from("run,at,do,by\n");
    let (mut runs, mut events) = (0, 0);
    // Runs of all lengths: some of several batches, many of one row.
    for length in (0..40)
        .map(|step| 1 + step * step * 3)
        .chain([9_000])
        .chain(vec![1; 3_000])
    {
        runs += 1;
        for _ in 0..length {
            events += 1;
            writeln!(text, "R{runs},2026-03-01T14:05:00Z,set-flow,crew-{}", runs % 5).unwrap();
        }
    }
    let (_folder, path) = file("a.csv", text);
    for threads in [1, 2, 5] {
        let options = Options {
            threads,
            ..Options::default()
        };
        let (tally, _) = pass(std::slice::from_ref(&path), &options);
        assert_eq!((tally.runs, tally.events), (runs, events));
        assert!(!tally.rows.iter().any(|row| row.code == "run-twice"));
    }
    let (tally, _) = findings("a.csv", "run,do\nA,set-flow\nB,set-flow\nA,set-flow\n");
    assert!(tally.rows.iter().any(|row| row.code == "run-twice"));
}

#[test]
fn crews_beyond_the_most_are_counted_together() {
    let text: String = (0..1500)
        .map(|number| format!("{{\"run\":{number},\"events\":[{{\"by\":\"crew-{number}\",\"flow\":1}}]}}\n"))
        .collect();
    let (_folder, path) = file("a.ndjson", text);
    let options = Options {
        crews: true,
        threads: 2,
        ..Options::default()
    };
    let (tally, _) = pass(&[path], &options);
    assert_eq!((tally.crews.known.len(), tally.crews.others.runs), (1000, 500));
    // Each: a flow without a unit, no times, nothing that was done.
    assert_eq!(tally.crews.others.levels.unknown, 3 * 500);
}

#[test]
fn a_pseudonym_hides_runs_and_crews_everywhere() {
    // RFC 4231, test cases 1 and 2, 4: the first eight bytes of HMAC-SHA-256.
    let of = |key: &[u8], text: &str| Pseudonyms::new(key).unwrap().of(text);
    assert_eq!(of(&[0x0b; 20], "Hi There"), "b0344c61d8db3853");
    let key: Vec<u8> = (1..=25).collect();
    let pseudonyms = Pseudonyms::new(&key).unwrap();
    assert_eq!(pseudonyms.of(""), of(&key, ""));
    // Test case 6: a key longer than a block.
    assert_eq!(
        of(
            &[0xaa; 131],
            "Test Using Larger Than Block-Size Key - Hash Key First"
        ),
        "60e431591ee0b67f"
    );
    for short in [0, 15] {
        assert!(Pseudonyms::new(&vec![1; short]).is_err());
    }
    let text = mixed(60);
    let (_folder, path) = file("a.ndjson", text);
    let options = Options {
        crews: true,
        pseudonyms: Some(&pseudonyms),
        ..Options::default()
    };
    let (tally, out) = pass(std::slice::from_ref(&path), &options);
    assert!(!out.contains("LV-") && !out.contains("crew-"), "{out}");
    assert!(!format!("{tally:?}").contains("crew-"));
    assert!(out.contains(&pseudonyms.of("LV-00007")), "{out}");
    assert!(tally.crews.known.contains_key(&Some(pseudonyms.of("crew-1"))));
    // And nothing else changes.
    let options = Options {
        pseudonyms: None,
        ..options
    };
    let (plain, _) = pass(&[path], &options);
    assert_eq!((plain.levels, plain.runs_wrong), (tally.levels, tally.runs_wrong));
}

#[test]
fn nothing_is_found_in_the_clean_sample() {
    let (tally, out) = pass(&["tests/runs/clean.ndjson".into()], &Options::default());
    assert_eq!(
        (tally.runs, tally.levels.all(), tally.bad_lines),
        (2, 0, 0),
        "{out}"
    );
}
