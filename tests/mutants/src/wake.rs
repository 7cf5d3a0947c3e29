//! Wakes one mutant after the other and runs the tests until one of them fails.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};
use std::{env, fs, thread};

/// A program of tests, with what it fails in when all mutants are asleep.
struct Tests {
    name: String,
    program: PathBuf,
    fails: Vec<String>,
    took: Duration,
}

struct Asleep {
    number: String,
    file: String,
    name: String,
}

/// `TESTS` holds lines of a part of a file name, a test's name and its program; a mutant is tried on those whose part is in
/// its file's name. What happened is added to `TREE/woken.tsv`; what stands there isn't tried again.
pub fn wake(tree: &Path, tests: &Path, only: &[&str]) -> Result<(), String> {
    let read =
        |path: PathBuf| fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()));
    let mut of_part: Vec<(String, String)> = Vec::new();
    let mut programs: BTreeMap<String, Tests> = BTreeMap::new();
    for line in read(tests.to_owned())?.lines() {
        let [part, name, program] = line.split('\t').collect::<Vec<_>>()[..] else {
            return Err(format!("expected a part, a name and a program, found {line:?}"));
        };
        of_part.push((part.to_owned(), name.to_owned()));
        if !programs.contains_key(name) {
            let known = asleep(tree, name, Path::new(program))?;
            programs.insert(name.to_owned(), known);
        }
    }
    let log = tree.join("woken.tsv");
    let done: BTreeSet<String> = fs::read_to_string(&log)
        .unwrap_or_default()
        .lines()
        .filter_map(|line| line.split('\t').next().map(str::to_owned))
        .collect();
    let mut waiting = Vec::new();
    for line in read(tree.join("woven.tsv"))?.lines() {
        let [number, "woven", file, name] = line.split('\t').collect::<Vec<_>>()[..] else {
            continue;
        };
        if !done.contains(number) && (only.is_empty() || only.iter().any(|part| file.contains(part))) {
            waiting.push(Asleep {
                number: number.into(),
                file: file.into(),
                name: name.into(),
            });
        }
    }
    // In an order by chance, the same each time, so that what is done when the run is stopped is a fair sample.
    waiting.sort_by_cached_key(|one| shuffled(&one.name));
    let out = fs::OpenOptions::new()
        .create(true)
        .append(true)
        .open(&log)
        .map_err(|error| error.to_string())?;
    let (waiting, out) = (Mutex::new(waiting), Mutex::new(out));
    // Which tests caught mutants of a file: these are tried first.
    let caught: Mutex<BTreeMap<(String, String), u32>> = Mutex::default();
    let threads = env::var("JOBS")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(1);
    thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                loop {
                    let next = waiting.lock().ok().and_then(|mut waiting| waiting.pop());
                    let Some(one) = next else { return };
                    let mut names: Vec<&String> = of_part
                        .iter()
                        .filter(|(part, _)| one.file.contains(part.as_str()))
                        .map(|(_, name)| name)
                        .collect();
                    if let Ok(caught) = caught.lock() {
                        names.sort_by_key(|name| {
                            let times = caught
                                .get(&(one.file.clone(), (*name).clone()))
                                .copied()
                                .unwrap_or(0);
                            let took = programs[*name].took.as_millis() + 20;
                            // The greatest chance for each moment first.
                            (u128::MAX / 2 - u128::from(times * 4 + 1) * 1_000_000 / took, took)
                        });
                    }
                    names.dedup();
                    let by = names
                        .into_iter()
                        .find_map(|name| tried(tree, &programs[name], &one.number).map(|how| (name, how)));
                    let told = match &by {
                        Some((name, how)) => {
                            if let Ok(mut caught) = caught.lock() {
                                *caught.entry((one.file.clone(), (*name).clone())).or_default() += 1;
                            }
                            format!("caught\t{name}: {how}")
                        }
                        None => "missed\t".into(),
                    };
                    if let Ok(mut out) = out.lock() {
                        let _ = writeln!(out, "{}\t{told}\t{}", one.number, one.name);
                    }
                }
            });
        }
    });
    Ok(())
}

/// FNV-1a, which is the same on every machine.
fn shuffled(name: &str) -> u64 {
    let step = |hash: u64, byte: u8| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    // Its low bits mix best.
    name.bytes().fold(0xcbf2_9ce4_8422_2325, step).swap_bytes()
}

/// Runs with all mutants asleep, once for each build: `TREE/asleep.tsv` keeps how that went.
fn asleep(tree: &Path, name: &str, program: &Path) -> Result<Tests, String> {
    let log = tree.join("asleep.tsv");
    let kept = fs::read_to_string(&log).unwrap_or_default();
    let shown = program.display().to_string();
    for line in kept.lines() {
        let mut cells = line.split('\t');
        if cells.next() == Some(&shown)
            && let Some(took) = cells.next().and_then(|cell| cell.parse().ok())
        {
            return Ok(Tests {
                name: name.into(),
                program: program.into(),
                fails: cells.map(str::to_owned).collect(),
                took: Duration::from_millis(took),
            });
        }
    }
    let start = Instant::now();
    let output = command(tree, program, "0")
        .output()
        .map_err(|error| format!("{shown}: {error}"))?;
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    let fails: Vec<String> = text.lines().filter_map(failed).map(str::to_owned).collect();
    if !output.status.success() && fails.is_empty() {
        let said = String::from_utf8_lossy(&output.stderr);
        return Err(format!("{name} doesn't run:\n{text}\n{said}"));
    }
    let took = start.elapsed();
    eprintln!("{name}: {:.1} s", took.as_secs_f64());
    for test in &fails {
        eprintln!("{name}: {test} fails without a mutant, and is left out");
    }
    let cells = [shown.clone(), took.as_millis().to_string()];
    let line = cells.into_iter().chain(fails.iter().cloned()).collect::<Vec<_>>();
    fs::write(&log, format!("{kept}{}\n", line.join("\t"))).map_err(|error| error.to_string())?;
    Ok(Tests {
        name: name.into(),
        program: program.into(),
        fails,
        took,
    })
}

fn command(tree: &Path, program: &Path, number: &str) -> Command {
    let mut command = Command::new(program);
    command
        .env("OXYFOLIO_MUTANT", number)
        .env("RUST_BACKTRACE", "0")
        .env("INSTA_UPDATE", "no")
        .env("PROPTEST_FAILURE_PERSISTENCE", "off")
        .current_dir(tree)
        .stdin(Stdio::null());
    command
}

fn failed(line: &str) -> Option<&str> {
    line.strip_prefix("test ")?.strip_suffix(" ... FAILED")
}

/// How a program of tests catches a mutant.
fn tried(tree: &Path, tests: &Tests, number: &str) -> Option<String> {
    let mut command = command(tree, &tests.program, number);
    for test in &tests.fails {
        command.args(["--skip", test]);
    }
    let Ok(child) = command.stdout(Stdio::piped()).stderr(Stdio::null()).spawn() else {
        return None;
    };
    let child = Arc::new(Mutex::new(child));
    let ended = Arc::new(AtomicBool::new(false));
    let late = Arc::new(AtomicBool::new(false));
    let patience = Duration::from_secs(20) + tests.took * 6;
    let watch = {
        let (child, ended, late) = (Arc::clone(&child), Arc::clone(&ended), Arc::clone(&late));
        thread::spawn(move || {
            let start = Instant::now();
            while !ended.load(Ordering::Relaxed) {
                if start.elapsed() > patience {
                    late.store(true, Ordering::Relaxed);
                    return end(&child);
                }
                thread::sleep(Duration::from_millis(50));
            }
        })
    };
    let stdout = child.lock().ok().and_then(|mut child| child.stdout.take());
    let mut how = None;
    for line in stdout.into_iter().flat_map(|out| BufReader::new(out).lines()) {
        if let Some(test) = line.as_deref().ok().and_then(failed) {
            how = Some(test.to_owned());
            end(&child);
            break;
        }
    }
    let status = wait(&child);
    ended.store(true, Ordering::Relaxed);
    let _ = watch.join();
    if late.load(Ordering::Relaxed) {
        return Some(format!("no end within {} s", patience.as_secs()));
    }
    how.or_else(|| (!status).then(|| format!("{} ended badly", tests.name)))
}

fn end(child: &Mutex<Child>) {
    if let Ok(mut child) = child.lock() {
        let _ = child.kill();
    }
}

/// Waits without keeping the child from being ended by another.
fn wait(child: &Mutex<Child>) -> bool {
    loop {
        match child.lock().map(|mut child| child.try_wait()) {
            Ok(Ok(Some(status))) => return status.success(),
            Ok(Ok(None)) => thread::sleep(Duration::from_millis(5)),
            _ => return false,
        }
    }
}
