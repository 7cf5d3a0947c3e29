//! The comparison the other way is the mirror of this one.

use oxyfolio::compare::{Change, Comes, Comparison, compare_over};
use proptest::prelude::*;

use crate::books::{Edit, edition};

const EDITS: &[Edit<'static>] = &[
    (
        "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %",
        "flow: 9 to 14 L/min\nusual: 12 L/min\noxygen: 60 to 95 %",
    ),
    (
        "flow-for:\n  child: 1 to 4 L/min",
        "flow-for:\n  child: 1 to 3 L/min",
    ),
    ("value: 200 psi\n", "value: 250 psi\n"),
    ("value: 50 %\n", "value: 25 %\n"),
    (
        "factor: 0.16 L/psi\n  connection",
        "factor: 0.155 L/psi\n  connection",
    ),
    ("    after: [fill, explain, gauge]", "    after: [fill, explain]"),
    (
        "  - id: explain\n    do: explain-to-patient\n    say: \"Tell the patient what is coming and how it will feel.\"\n    why: \"Cold air",
        "  - id: explain\n    do: explain-to-patient\n    say: \"Tell the patient.\"\n    critical: yes\n    why: \"Cold air",
    ),
    (
        "never: \"flame near\"\nseverity: stop",
        "never: \"flame near or grease near\"\nseverity: warn",
    ),
    (
        "saturation: 88 to 92 %\nstart: air-entrainment-28",
        "saturation: 88 to 90 %\nstart: air-entrainment-28",
    ),
    (
        "  - \"Nobody can stay and watch.\"\ndevices: [partial-rebreather",
        "devices: [partial-rebreather",
    ),
    ("edition: \"1\"", "edition: \"2\""),
];

fn key(change: &Change) -> (String, Option<String>, Option<String>, String) {
    (
        format!("{} {} {} {}", change.kind, change.id, change.what, change.wording),
        change.was.clone(),
        change.is.clone(),
        change.direction.word().to_owned(),
    )
}

fn reversed(change: &Change) -> Change {
    Change {
        was: change.is.clone(),
        is: change.was.clone(),
        direction: change.direction.reversed(),
        ..change.clone()
    }
}

fn sorted<T: Ord>(items: impl Iterator<Item = T>) -> Vec<T> {
    let mut items: Vec<T> = items.collect();
    items.sort();
    items
}

fn mirrored(there: &Comparison, back: &Comparison) {
    assert_eq!(
        sorted(there.changes.iter().map(key)),
        sorted(back.changes.iter().map(reversed).map(|change| key(&change)))
    );
    let reasons = |comparison: &Comparison| {
        let reasons = comparison.reasons.iter();
        sorted(reasons.map(|reason| (reason.kind, reason.id.clone())))
    };
    assert_eq!(reasons(there), reasons(back));
    assert_eq!(
        sorted(
            there
                .durations
                .iter()
                .map(|one| (&one.cylinder, one.asked, one.shorter, one.longer))
        ),
        sorted(
            back.durations
                .iter()
                .map(|one| (&one.cylinder, one.asked, one.longer, one.shorter))
        )
    );
    assert_eq!(
        sorted(
            there
                .cases
                .iter()
                .map(|case| (&case.id, case.asked, &case.goes, &case.appears))
        ),
        sorted(
            back.cases
                .iter()
                .map(|case| (&case.id, case.asked.reversed(), &case.appears, &case.goes))
        )
    );
    assert_eq!(
        (there.grid.setups, there.grid.changed),
        (back.grid.setups, back.grid.changed)
    );
    assert_eq!(
        sorted(
            there
                .grid
                .verdicts
                .iter()
                .map(|change| (change.was, change.is, change.setups))
        ),
        sorted(
            back.grid
                .verdicts
                .iter()
                .map(|change| (change.is, change.was, change.setups))
        )
    );
    let turned = |comes| match comes {
        Comes::Appears => Comes::Goes,
        Comes::Goes => Comes::Appears,
    };
    assert_eq!(
        sorted(there.grid.kinds.iter().map(|kind| (
            kind.comes,
            kind.level,
            kind.code,
            &kind.id,
            kind.setups
        ))),
        sorted(back.grid.kinds.iter().map(|kind| (
            turned(kind.comes),
            kind.level,
            kind.code,
            &kind.id,
            kind.setups
        )))
    );
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 10, ..ProptestConfig::default() })]

    #[test]
    fn the_other_way_is_the_mirror(one in proptest::sample::subsequence(EDITS, 0..=4), other in proptest::sample::subsequence(EDITS, 0..=4)) {
        let (one, other) = (edition(&one), edition(&other));
        let there = compare_over(&one, &other, 1_000);
        let back = compare_over(&other, &one, 1_000);
        mirrored(&there, &back);
    }

    #[test]
    fn a_book_is_the_same_as_itself(edits in proptest::sample::subsequence(EDITS, 0..=6)) {
        let one = edition(&edits);
        prop_assert!(compare_over(&one, &edition(&edits), 300).is_empty());
    }
}
