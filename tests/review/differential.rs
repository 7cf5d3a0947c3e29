//! 10,000 runs through the reviewer: every fault that was put in is found with its rule, and nothing is found where none was.

use std::collections::BTreeMap;

use oxyfolio::check::review::{About, Finding, Notes, Reviewer};
use oxyfolio::hazard::Guards;

use super::generate::faults::KINDS;
use super::generate::{Expected, Generated};

const RUNS: u64 = 5_000;
/// How many failures are shown of each kind.
const SHOWN: usize = 2;

fn findings(run: &Generated) -> Vec<Finding<'static>> {
    let mut notes = Notes::default();
    let mut found = Vec::new();
    Reviewer::new(Guards).review(&run.as_run(), &mut notes, |finding| found.push(finding));
    found
}

fn is(expected: &Expected, finding: &Finding<'_>) -> bool {
    let step = match finding.about {
        About::Skipped { step, .. } | About::TooEarly { step, .. } => Some(&*step.id),
        _ => None,
    };
    let rule = (finding.kind, finding.rule.id.to_string());
    finding.code() == expected.code
        && (expected.rules.is_empty() || expected.rules.contains(&rule))
        && (expected.step.is_none() || expected.step.as_deref() == step)
}

fn told(finding: &Finding<'_>) -> String {
    format!(
        "      {} {} {} `{}` at line {:?}: {finding}\n",
        finding.level.word(),
        finding.code(),
        finding.kind,
        finding.rule.id,
        finding.event,
    )
}

fn report(run: &Generated, found: &[Finding<'_>]) -> String {
    let mut text = format!("    seed {}\n", run.seed);
    if let Some(injected) = &run.injected {
        for expected in &injected.expect {
            text += &format!("      expected {expected:?}\n");
        }
    }
    for finding in found {
        text += &told(finding);
    }
    if found.is_empty() {
        text += "      nothing was found\n";
    }
    text + "      " + &run.ndjson() + "\n"
}

/// Counts failures by kind and keeps the first few of each.
#[derive(Default)]
struct Failures(BTreeMap<String, (usize, String)>);

impl Failures {
    fn add(&mut self, kind: String, report: impl FnOnce() -> String) {
        let (count, text) = self.0.entry(kind).or_default();
        *count += 1;
        if *count <= SHOWN {
            *text += &report();
        }
    }

    fn none_or_panic(self, what: &str, of: u64) {
        let failed: usize = self.0.values().map(|(count, _)| count).sum();
        let mut text = String::new();
        for (kind, (count, shown)) in &self.0 {
            text += &format!("  {kind}: {count}\n{shown}");
        }
        assert!(failed == 0, "{what}: {failed} of {of}\n{text}");
    }
}

#[test]
fn nothing_is_found_in_a_clean_run() {
    let mut failures = Failures::default();
    let mut runs = 0;
    for seed in 0..RUNS {
        let run = Generated::clean(seed);
        let found = findings(&run);
        runs += 1;
        // One run may have several; it counts once for each code, so that the sum shows what to look at first.
        let mut kinds: Vec<String> = found
            .iter()
            .map(|finding| format!("{} {} {}", finding.code(), finding.kind, finding.rule.id))
            .collect();
        kinds.sort();
        kinds.dedup();
        for kind in kinds {
            failures.add(kind, || report(&run, &found));
        }
    }
    assert_eq!(runs, RUNS);
    failures.none_or_panic("something was found where nothing is wrong", RUNS);
}

#[test]
fn every_injected_fault_is_found_with_its_rule() {
    let mut failures = Failures::default();
    let mut of_kind: BTreeMap<&str, usize> = BTreeMap::new();
    for seed in 0..RUNS {
        let run = Generated::faulty(seed);
        let injected = run.injected.as_ref().unwrap();
        *of_kind.entry(injected.kind).or_default() += 1;
        let found = findings(&run);
        let hit = found
            .iter()
            .any(|finding| injected.expect.iter().any(|expected| is(expected, finding)));
        if !hit {
            failures.add(injected.kind.to_owned(), || report(&run, &found));
        }
    }
    assert_eq!(of_kind.len(), KINDS.len());
    assert_eq!(of_kind.values().sum::<usize>(), RUNS as usize);
    failures.none_or_panic("a fault was not found", RUNS);
}
