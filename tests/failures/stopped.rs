//! Runs that are killed or interrupted.

use std::{
    fs,
    io::{BufRead as _, BufReader, Read as _, Write as _},
    path::Path,
    process::{Child, Command, Stdio},
    time::{Duration, Instant},
};

use crate::{files, in_place_of_typst, program};

fn signal(child: &Child, signal: &str) {
    let status = Command::new("kill")
        .args([signal, &child.id().to_string()])
        .status()
        .unwrap();
    assert!(status.success());
}

/// Waits until something is there; a machine may be slow, but not without end.
fn wait_for(path: &Path) {
    let start = Instant::now();
    while !path.exists() {
        assert!(start.elapsed() < Duration::from_secs(60), "{}", path.display());
        std::thread::sleep(Duration::from_millis(5));
    }
}

/// Killed while typst is at work: the old files are there, whole, and no others.
#[test]
fn a_run_killed_half_way_leaves_the_old_cards() {
    let folder = tempfile::tempdir().unwrap();
    let (out, begun) = (folder.path().join("out"), folder.path().join("begun"));
    fs::create_dir(&out).unwrap();
    fs::write(out.join("cards-id-1-a4.pdf"), "last year's cards").unwrap();
    let before = files(&out);
    let body = format!(
        "echo half > \"$last\"; touch '{}'; exec sleep 30",
        begun.display()
    );
    let typst = in_place_of_typst(folder.path(), &body);
    let mut run = program()
        .args(["cards", "--typst", &typst, "--out", out.to_str().unwrap()])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    wait_for(&begun);
    signal(&run, "-KILL");
    assert!(!run.wait().unwrap().success());
    assert_eq!(files(&out), before);
}

/// Interrupted while it writes: what came out are whole lines, and the exit code says that it isn't all.
#[test]
fn an_interrupted_review_leaves_whole_lines() {
    let record = fs::read_to_string("tests/runs/faults.ndjson").unwrap();
    for format in ["ndjson", "csv"] {
        let record = record.clone();
        let mut run = program()
            .args(["review", "--format", format, "-"])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut input = run.stdin.take().unwrap();
        // More than it will ever read; when it is gone the writing fails, and that is the end.
        let feeder = std::thread::spawn(move || while input.write_all(record.as_bytes()).is_ok() {});
        let mut output = BufReader::new(run.stdout.take().unwrap());
        let (mut all, mut line) = (Vec::new(), Vec::new());
        for _ in 0..500 {
            line.clear();
            assert!(output.read_until(b'\n', &mut line).unwrap() > 0);
            all.extend_from_slice(&line);
        }
        signal(&run, "-INT");
        output.read_to_end(&mut all).unwrap();
        assert_eq!(run.wait().unwrap().code(), Some(130));
        feeder.join().unwrap();
        assert!(
            all.ends_with(b"\n"),
            "{}",
            String::from_utf8_lossy(&all[all.len() - 200..])
        );
        let text = String::from_utf8(all).unwrap();
        assert!(text.lines().count() >= 500);
        for line in text.lines() {
            match format {
                "ndjson" => drop(serde_json::from_str::<serde_json::Value>(line).expect(line)),
                _ => assert!(line.split(',').count() >= 10, "{line}"),
            }
        }
    }
}

/// A reader that takes nothing more can't keep the program from ending.
#[test]
fn an_interrupt_ends_a_review_that_nobody_reads() {
    let record = fs::read_to_string("tests/runs/faults.ndjson").unwrap();
    let mut run = program()
        .args(["review", "--format", "ndjson", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut input = run.stdin.take().unwrap();
    let feeder = std::thread::spawn(move || while input.write_all(record.as_bytes()).is_ok() {});
    let mut first = [0; 1];
    run.stdout.as_mut().unwrap().read_exact(&mut first).unwrap();
    std::thread::sleep(Duration::from_millis(300));
    signal(&run, "-INT");
    assert_eq!(run.wait().unwrap().code(), Some(130));
    feeder.join().unwrap();
}
