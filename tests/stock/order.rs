//! What is swapped first.

use oxyfolio::check::stock::{Reason, Stocked};
use proptest::prelude::*;

use super::support::{good, month, psi, report};

/// One cylinder for each reason, and some that are alike but for one thing.
fn all_reasons() -> Vec<Stocked> {
    let mut untested = good("untested");
    untested.tested = None;
    let mut unread = good("unread");
    unread.pressure = None;
    let mut elsewhere = good("below-minimum-b");
    elsewhere = elsewhere.pressure(psi(950.0));
    elsewhere.location = "Station 2".to_owned();
    vec![
        good("fine"),
        good("due-later").tested(month("2022-01")),
        good("due-sooner").tested(month("2021-12")),
        good("due-now").tested(month("2021-11")),
        good("twice"),
        good("twice"),
        elsewhere,
        good("below-minimum-c").pressure(psi(950.0)),
        good("below-minimum-a")
            .pressure(psi(950.0))
            .tested(month("2022-06")),
        good("lower").pressure(psi(700.0)),
        good("change-over").pressure(psi(450.0)),
        unread,
        good("empty").pressure(psi(100.0)),
        untested,
        good("past-and-full").tested(month("2021-01")),
        good("past-and-lower")
            .tested(month("2021-02"))
            .pressure(psi(1500.0)),
        good("overfilled").pressure(psi(2100.0)),
        good("overfilled-and-past")
            .pressure(psi(2100.0))
            .tested(month("2019-01")),
    ]
}

const ORDER: [&str; 17] = [
    // The same gas: the earlier test first.
    "overfilled-and-past",
    "overfilled",
    // Past: the emptiest first.
    "past-and-lower",
    "past-and-full",
    "untested",
    "empty",
    "unread",
    "change-over",
    "lower",
    // Alike but for the test, then for the place, then for the serial.
    "below-minimum-a",
    "below-minimum-c",
    "below-minimum-b",
    "twice",
    "twice",
    "due-now",
    "due-sooner",
    "due-later",
];

fn order(stock: &[Stocked]) -> Vec<String> {
    let report = report(stock);
    report
        .swap
        .iter()
        .map(|index| stock[*index].serial.clone())
        .collect()
}

#[test]
fn unsafe_then_past_then_low_then_due() {
    assert_eq!(order(&all_reasons()), ORDER);
}

#[test]
fn of_those_whose_test_is_due_the_sooner_comes_first_however_full() {
    let sooner = good("sooner").tested(month("2021-12"));
    let later = good("later").tested(month("2022-01")).pressure(psi(1200.0));
    assert_eq!(order(&[later.clone(), sooner.clone()]), ["sooner", "later"]);
    // Of those past their test the emptier does.
    let earlier = good("earlier").tested(month("2020-01"));
    let emptier = good("emptier").tested(month("2020-02")).pressure(psi(1200.0));
    assert_eq!(order(&[earlier, emptier]), ["emptier", "earlier"]);
}

#[test]
fn every_reason_has_its_place_and_its_words() {
    assert!(Reason::ALL.is_sorted());
    let mut words: Vec<_> = Reason::ALL.iter().map(|reason| reason.word()).collect();
    words.sort_unstable();
    words.dedup();
    assert_eq!(words.len(), Reason::ALL.len());
    let report = report(&all_reasons());
    for reason in Reason::ALL {
        let has = |one: &oxyfolio::check::stock::Judged<'_>| one.first() == Some(reason);
        assert!(report.judged.iter().any(has), "{reason:?}");
    }
    let both = report.judged.last().unwrap();
    assert_eq!(both.reasons, [Reason::Unsafe, Reason::PastTest]);
    assert_eq!(both.words(), "overfilled or hot; past its test date (2024-01)");
}

proptest! {
    /// However the list is written down, it is swapped in the same order.
    #[test]
    fn the_order_of_the_list_does_not_matter(stock in Just(all_reasons()).prop_shuffle()) {
        prop_assert_eq!(order(&stock), ORDER);
    }
}
