//! Any text as a quantity and as a guard: reading never panics, and what was read is read again from its print.
#![no_main]

use std::sync::LazyLock;

use libfuzzer_sys::fuzz_target;
use oxyfolio::{
    RULEBOOK,
    book::Rule,
    compile::{
        diagnostic::Diagnostics,
        guard::{self, Vocabulary},
        names::{Names, Table},
        source::{FileId, Span},
        written::{self, Mistake},
    },
    quantity::{Flow, Gauge, Percent, Pressure, Temperature, Time},
};

/// The names of the demonstration, in the order of its tables.
static NAMES: LazyLock<Names> = LazyLock::new(|| {
    let book = &RULEBOOK;
    let mut names = Names::default();
    fill(&mut names.groups, book.groups.iter().map(|group| &group.rule));
    fill(&mut names.devices, book.devices.iter().map(|device| &device.rule));
    fill(
        &mut names.policies,
        book.policies.all.iter().map(|policy| &policy.rule),
    );
    for condition in &book.conditions {
        names
            .conditions
            .add(&condition.id, NOWHERE, &mut Diagnostics::default());
    }
    names
});

const NOWHERE: Span = Span {
    file: FileId(0),
    start: 0,
    end: 0,
};

fn fill<'a>(table: &mut Table, rules: impl Iterator<Item = &'a Rule>) {
    for rule in rules {
        assert!(table.add(&rule.id, NOWHERE, &mut Diagnostics::default()));
    }
}

fuzz_target!(|bytes: &[u8]| {
    // The reader gives out no longer value.
    let Some(text) = std::str::from_utf8(bytes)
        .ok()
        .filter(|text| text.len() <= 10_000)
    else {
        return;
    };
    match written::any(text) {
        Ok(value) => {
            let printed = value.to_string();
            match written::any(&printed) {
                Ok(again) => assert_eq!(again.to_string(), printed, "{text:?}"),
                Err(mistake) => panic!("{text:?} prints as {printed:?}: {mistake}"),
            }
        }
        Err(mistake) => inside(text, &mistake),
    }
    for mistake in [
        written::one::<Flow>(text).err(),
        written::one::<Pressure<Gauge>>(text).err(),
        written::one::<Temperature>(text).err(),
        written::range::<Percent>(text).err(),
        written::range::<Time>(text).err(),
        written::ratio(text).err(),
    ]
    .into_iter()
    .flatten()
    {
        inside(text, &mistake);
    }
    let vocabulary = Vocabulary {
        names: &NAMES,
        policies: &RULEBOOK.policies.all,
    };
    match guard::read(text, &vocabulary) {
        Ok(read) => {
            let printed = guard::print(&read.ops, &RULEBOOK).expect("a guard that was read can be printed");
            match guard::read(&printed, &vocabulary) {
                Ok(again) => assert_eq!(
                    guard::print(&again.ops, &RULEBOOK).as_deref(),
                    Some(&*printed),
                    "{text:?}"
                ),
                Err(mistake) => panic!("{text:?} prints as {printed:?}: {mistake}"),
            }
        }
        Err(mistake) => inside(text, &mistake),
    }
});

/// A mistake points into the text, and has words.
fn inside(text: &str, mistake: &Mistake) {
    assert!(!mistake.message.is_empty() && !mistake.code.is_empty());
    assert!(
        mistake.at.start <= mistake.at.end && mistake.at.end <= text.len(),
        "{text:?}: {mistake:?}"
    );
    assert!(text.get(mistake.at.clone()).is_some(), "{text:?}: {mistake:?}");
}
