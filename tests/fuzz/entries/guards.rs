//! Any text as a guard: what was read is read again from its print, both give the same answers, and to know less never turns an
//! answer round.

use std::sync::LazyLock;

use oxyfolio::{
    RULEBOOK,
    book::{ConditionId, DeviceId, Fact, GroupId, Guard, Rule},
    compile::{
        diagnostic::Diagnostics,
        guard::{self, Vocabulary},
        names::{Names, Table},
        source::{FileId, Span},
    },
    guard::{Facts, Observed, Truth, evaluate},
    quantity::{Flow, Limit, Percent, Pressure, Range, Temperature, Time},
};

use super::places::inside;

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

/// Reads the bytes as a guard, and asks it.
pub fn run(bytes: &[u8]) {
    // The reader of chapters gives out no longer value.
    let text = std::str::from_utf8(bytes).ok();
    let Some(text) = text.filter(|text| text.len() <= 10_000) else {
        return;
    };
    let vocabulary = Vocabulary {
        names: &NAMES,
        policies: &RULEBOOK.policies.all,
    };
    let read = match guard::read(text, &vocabulary) {
        Ok(read) => read,
        Err(mistake) => return inside(text, &mistake),
    };
    let printed = guard::print(&read.ops, &RULEBOOK).expect("a guard that was read can be printed");
    let again = match guard::read(&printed, &vocabulary) {
        Ok(again) => again,
        Err(mistake) => panic!("{text:?} prints as {printed:?}: {mistake}"),
    };
    assert_eq!(
        guard::print(&again.ops, &RULEBOOK).as_deref(),
        Some(&*printed),
        "{text:?}"
    );
    // Of eight observations two, so that most of the time goes into reading.
    let first = u16::try_from(text.len() % 4).unwrap_or_default();
    for number in [first, first + 4] {
        asked(text, &read, &again, &seen(number));
    }
    let nothing = Observed::default();
    assert_eq!(
        evaluate(&read, &RULEBOOK, &nothing),
        evaluate(&again, &RULEBOOK, &nothing)
    );
}

/// Asks about all that was observed, and about parts of it.
fn asked(text: &str, read: &Guard, again: &Guard, all: &Observed<'_>) {
    let told = evaluate(read, &RULEBOOK, all);
    assert_eq!(told, evaluate(read, &RULEBOOK, all), "asked twice: {text:?}");
    assert_eq!(told, evaluate(again, &RULEBOOK, all), "read again: {text:?}");
    for part in 0..12 {
        let less = without(all, part);
        let answer = evaluate(read, &RULEBOOK, &less);
        assert!(
            answer == told || answer == Truth::Unknown,
            "{text:?} without {part}: {answer:?}, then {told:?}"
        );
    }
}

/// One of some observations, in which the numbers stand around the book's limits.
fn seen(number: u16) -> Observed<'static> {
    const CONDITIONS: [ConditionId; 2] = [ConditionId(0), ConditionId(1)];
    let choose = |numbers: [f64; 4]| numbers[usize::from(number % 4)];
    let facts = Fact::ALL
        .iter()
        .enumerate()
        .fold(Facts::NONE, |facts, (index, fact)| {
            facts.with(*fact, (index + usize::from(number)).is_multiple_of(3))
        });
    Observed {
        flow: Flow::litres_per_minute(choose([0.0, 6.0, 10.0, 25.0])).ok(),
        pressure: Pressure::psi(choose([0.0, 200.0, 500.0, 2000.0])).ok(),
        temperature: Temperature::celsius(choose([-30.0, 0.0, 21.0, 52.0])).ok(),
        spo2: Percent::new(choose([70.0, 88.0, 94.0, 100.0])).ok(),
        minutes_left: Time::minutes(choose([0.0, 10.0, 30.0, 600.0])).ok(),
        minutes_wanted: Time::minutes(choose([30.0, 10.0, 0.0, 60.0])).ok(),
        device: Some(DeviceId(number)),
        group: Some(GroupId(number % 4)),
        conditions: Some(&CONDITIONS[..usize::from(number % 3)]),
        target: aim(
            choose([88.0, 94.0, 90.0, 94.0]),
            choose([92.0, 98.0, 90.0, 100.0]),
        ),
        facts,
    }
}

fn aim(low: f64, high: f64) -> Option<Range<Percent>> {
    Some(Range {
        low: Limit::Included(Percent::new(low).ok()?),
        high: Limit::Included(Percent::new(high).ok()?),
    })
}

/// The same with a part of it not recorded.
fn without<'a>(all: &Observed<'a>, part: usize) -> Observed<'a> {
    let mut less = *all;
    match part {
        0 => less.flow = None,
        1 => less.pressure = None,
        2 => less.temperature = None,
        3 => less.spo2 = None,
        4 => less.minutes_left = None,
        5 => less.minutes_wanted = None,
        6 => less.device = None,
        7 => less.group = None,
        8 => less.conditions = None,
        9 => less.target = None,
        10 => less.facts = Facts::NONE,
        _ => less.facts = Facts::of(all.facts.yes() & 0x5555_5555, all.facts.no() & 0xaaaa_aaaa),
    }
    less
}
