//! When a test is due, and when it is past.
//!
//! Sources:
//! - 49 CFR 180.209(a), Table 1 (a copy): 3AL "5 or 12", 3AA "5, 10, or 12" years; each larger figure hangs on a named
//!   paragraph, so 5 is what holds without one.
//! - PHMSA Interpretation Response 11-0131 (1 September 2011), on 49 CFR 180.205(c): "a cylinder may be requalified at any
//!   time before or during the month and year the requalification is due"; one filled before "may remain in service until it
//!   is emptied". <https://www.phmsa.dot.gov/regulations/title49/interp/11-0131>
//! - PHMSA Interpretation Response 09-0148 (7 August 2009): "a cylinder past its test date may not be filled or topped off".
//!   <https://www.phmsa.dot.gov/node/52186>
//! - From memory: 49 CFR 180.209(b), a star on a 3A or 3AA makes it ten years; 3AL is not named there.

use std::fs;

use oxyfolio::check::Level;
use oxyfolio::check::stock::{Marks, Month, Reason, Report, Terms};
use oxyfolio::compile::folder;
use oxyfolio::quantity::{Time, TimeUnit};
use oxyfolio::{RULEBOOK, book::Rulebook};
use proptest::prelude::*;

use super::common;
use super::support::{NO_MARKS, codes, codes_on, day, good, month, report_on};

const STAR: Marks = Marks {
    star: true,
    ..NO_MARKS
};

/// A book in which a test holds another time.
fn holding(amount: f64, unit: TimeUnit) -> Rulebook {
    let mut book = RULEBOOK.clone();
    book.policies.requalification_interval = Time::of(amount, unit).unwrap();
    book
}

#[test]
fn five_years_by_the_day() {
    let one = good("a").tested(month("2021-11"));
    for (today, code, level, counted) in [
        ("2026-07-31", None, None, true),
        // Three months ahead, the default.
        ("2026-08-01", Some("test-due"), Some(Level::Note), true),
        ("2026-10-31", Some("test-due"), Some(Level::Note), true),
        // By the strictest reading it may be past from here on: never in silence.
        ("2026-11-01", Some("test-due-this-month"), Some(Level::Warn), true),
        ("2026-11-30", Some("test-due-this-month"), Some(Level::Warn), true),
        // The month is over: past by every reading.
        ("2026-12-01", Some("test-past"), Some(Level::Stop), false),
        ("2031-01-01", Some("test-past"), Some(Level::Stop), false),
    ] {
        let report = report_on(&RULEBOOK, core::slice::from_ref(&one), today);
        let judged = &report.judged[0];
        assert_eq!(judged.due, Some(month("2026-11")), "{today}");
        assert_eq!(judged.findings.first().map(|found| found.code()), code, "{today}");
        assert_eq!(judged.findings.first().map(|found| found.level), level, "{today}");
        assert_eq!(judged.is_counted(), counted, "{today}");
    }
}

#[test]
fn a_finding_quotes_the_rule_its_note_and_its_place() {
    let report = report_on(&RULEBOOK, &[good("a").tested(month("2019-01"))], "2026-11-25");
    let found = &report.judged[0].findings[0];
    assert_eq!(&*found.rule.id, "requalification-interval");
    assert!(found.rule.rationale.contains("49 CFR 180.209"), "{found:?}");
    assert!(found.note.unwrap().contains("star"), "{found:?}");
    assert_eq!(
        found.to_string(),
        "its test of 2019-01 held to 2024-01: past its test date, not to be filled again before it is tested"
    );
}

#[test]
fn the_book_decides_whether_a_star_counts() {
    let one = good("a").tested(month("2020-03")).marks(STAR);
    // The demo's policy says that longer periods are not used.
    assert_eq!(codes(&one), ["test-past", "star-not-used"]);
    // A book that uses the star: ten years.
    let copy = common::copy_of_rules();
    let annex = "# Stars\n\nTen years, on the conditions of the rule for it.\n\n```yaml policy\n\
                 id: star-requalification-interval\nname: Longest time between tests with a star\nvalue: 10 years\n```\n";
    fs::write(copy.path().join("90-stars.md"), annex).unwrap();
    let compiled = folder::load(copy.path()).unwrap();
    assert!(
        !compiled.notes.iter().any(|note| note.code == "policy-never-read"),
        "{:?}",
        compiled.notes
    );
    let book = compiled.book;
    assert_eq!(codes_on(&book, &one, "2030-03-31"), ["test-due-this-month"]);
    let past = report_on(&book, core::slice::from_ref(&one), "2030-04-01");
    assert_eq!(past.judged[0].findings[0].code(), "test-past");
    assert_eq!(
        &*past.judged[0].findings[0].rule.id,
        "star-requalification-interval"
    );
    // Without the star the other policy holds in the same book.
    assert_eq!(
        codes_on(&book, &one.clone().marks(NO_MARKS), "2030-03-31"),
        ["test-past"]
    );
    // Aluminium never has it.
    let aluminium = one.marks(Marks {
        aluminium: true,
        ..STAR
    });
    assert_eq!(
        codes_on(&book, &aluminium, "2026-11-25"),
        ["test-past", "star-on-aluminium"]
    );

    fs::write(
        copy.path().join("90-stars.md"),
        annex.replace("10 years", "10 bar"),
    )
    .unwrap();
    let rejected = folder::load(copy.path()).unwrap_err().render(false);
    assert!(
        rejected.contains("`star-requalification-interval` is a time, found 10 bar"),
        "{rejected}"
    );
}

#[test]
fn what_is_not_known_is_never_passed() {
    let mut unknown = good("a");
    unknown.tested = None;
    assert_eq!(codes(&unknown), ["test-not-given"]);
    let future = good("a").tested(month("2026-12"));
    assert_eq!(codes(&future), ["test-in-future"]);
    for one in [unknown, future] {
        let report = report_on(&RULEBOOK, &[one], "2026-11-25");
        let judged = &report.judged[0];
        assert_eq!((judged.due, judged.first()), (None, Some(Reason::TestUnknown)));
        assert_eq!(judged.findings[0].level, Level::Unknown);
        assert!(report.is_wrong() && !judged.is_counted());
    }
    // Tested in this month is no riddle.
    assert!(codes(&good("a").tested(month("2026-11"))).is_empty());
}

#[test]
fn other_intervals_round_to_the_early_side() {
    for (amount, unit, due) in [
        (5.0, TimeUnit::Year, "2026-01"),
        (2.5, TimeUnit::Year, "2023-07"),
        (18.0, TimeUnit::Month, "2022-07"),
        // Five years of 365 days lack a day or two: 59 whole months.
        (1825.0, TimeUnit::Day, "2025-12"),
        (0.0, TimeUnit::Year, "2021-01"),
        (120.0, TimeUnit::Year, "2141-01"),
    ] {
        let book = holding(amount, unit);
        let report = report_on(&book, &[good("a").tested(month("2021-01"))], "2021-01-15");
        assert_eq!(report.judged[0].due, Some(month(due)), "{amount} {unit:?}");
    }
}

#[test]
fn due_within_can_be_days_or_months() {
    let one = [good("a").tested(month("2022-01"))];
    for (amount, unit, today, is_told) in [
        (30.0, TimeUnit::Day, "2026-12-02", true),
        (30.0, TimeUnit::Day, "2026-12-01", false),
        (1.0, TimeUnit::Month, "2026-12-01", true),
        (1.0, TimeUnit::Month, "2026-11-30", false),
        // Half a month is told as one: early is the safe side.
        (0.5, TimeUnit::Month, "2026-12-01", true),
        (0.0, TimeUnit::Day, "2026-12-31", false),
        (1.0, TimeUnit::Year, "2026-01-31", true),
    ] {
        let terms = Terms::on(day(today)).due_within(Time::of(amount, unit).unwrap());
        let report = Report::of(&RULEBOOK, &one, &terms).unwrap();
        let told = report.judged[0]
            .findings
            .iter()
            .any(|found| found.code() == "test-due");
        assert_eq!(told, is_told, "{amount} {unit:?} on {today}");
    }
}

#[test]
fn months_of_the_calendar_and_no_others() {
    assert_eq!(Month::new(2024, 12).unwrap().later(1).to_string(), "2025-01");
    assert_eq!(Month::of(day("2024-02-29")), month("2024-02"));
    for text in [
        "2024-00",
        "2024-13",
        "1899-12",
        "24-01",
        "2024-1",
        "2024-01-01",
        "+024-01",
        "",
    ] {
        assert!(text.parse::<Month>().is_err(), "{text}");
    }
}

proptest! {
    /// From the first day of the month in which five years are over, a cylinder is never passed without a word; from the
    /// first day of the next it is a stop. The months are counted here a second time, in another way.
    #[test]
    fn no_cylinder_that_may_be_past_is_passed_in_silence(
        year in 2000_u16..2035, stamped in 1_u8..=12, today_year in 2000_u16..2045, today_month in 1_u8..=12,
        today_day in 1_u8..=28,
    ) {
        let one = good("a").tested(Month::new(year, stamped).unwrap());
        let today = oxyfolio::book::Date::new(today_year, today_month, today_day).unwrap();
        let report = Report::of(&RULEBOOK, &[one], &Terms::on(today)).unwrap();
        let found: Vec<_> = report.judged[0].findings.iter().map(|found| found.code()).collect();
        let (first, now) = ((year + 5, stamped), (today_year, today_month));
        if (year, stamped) > now {
            prop_assert_eq!(found, ["test-in-future"]);
        } else if now > first {
            prop_assert_eq!(found, ["test-past"]);
        } else if now == first {
            prop_assert_eq!(found, ["test-due-this-month"]);
        } else {
            prop_assert!(!report.is_wrong());
        }
    }
}

/// A test of 2021-11 is due in 2026-11. "Within a year" begins to tell of it in 2025-11, by the calendar; so many days before,
/// by the day.
#[test]
fn how_far_ahead_is_told_in_years_months_and_days() {
    let one = good("a").tested(month("2021-11"));
    for (amount, unit, last_silent, first_told) in [
        (1.0, TimeUnit::Year, "2025-10-31", "2025-11-01"),
        (2.0, TimeUnit::Month, "2026-08-31", "2026-09-01"),
        // A part of a month counts for a whole one: to be told early is on the safe side.
        (1.5, TimeUnit::Month, "2026-08-31", "2026-09-01"),
        (30.0, TimeUnit::Day, "2026-10-01", "2026-10-02"),
    ] {
        let ahead = Time::of(amount, unit).unwrap();
        let told = |today: &str| {
            let terms = Terms::on(day(today)).due_within(ahead);
            let report = Report::of(&RULEBOOK, core::slice::from_ref(&one), &terms).unwrap();
            report.judged[0]
                .findings
                .iter()
                .any(|found| found.code() == "test-due")
        };
        assert!(!told(last_silent), "{ahead} before, on {last_silent}");
        assert!(told(first_told), "{ahead} before, on {first_told}");
    }
}
