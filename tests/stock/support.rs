//! Makes the tests short.

use oxyfolio::book::{CylinderId, Date, Rulebook};
use oxyfolio::check::stock::{Marks, Month, Report, Stocked, Terms};
use oxyfolio::quantity::{Gauge, Pressure};
use oxyfolio::{RULEBOOK, cylinder};

/// The day on which stock is looked at, unless a test says otherwise.
pub const TODAY: &str = "2026-11-25";

pub fn day(text: &str) -> Date {
    text.parse().unwrap()
}

pub fn month(text: &str) -> Month {
    text.parse().unwrap()
}

pub fn psi(reading: f64) -> Pressure<Gauge> {
    Pressure::psi(reading).unwrap()
}

pub fn bar(reading: f64) -> Pressure<Gauge> {
    Pressure::<Gauge>::bar(reading).unwrap()
}

pub const NO_MARKS: Marks = Marks {
    plus: false,
    star: false,
    aluminium: false,
};

/// A D that nothing is wrong with, at 2000 psi.
pub fn good(serial: &str) -> Stocked {
    sized(serial, cylinder::D)
}

/// A cylinder of a size that nothing is wrong with, at 2000 psi.
pub fn sized(serial: &str, size: CylinderId) -> Stocked {
    Stocked::new(serial, size, "Station 1")
        .pressure(psi(2000.0))
        .tested(month("2025-06"))
}

/// What is found by the demo rulebook on the usual day.
pub fn report(stock: &[Stocked]) -> Report<'static> {
    report_on(&RULEBOOK, stock, TODAY)
}

pub fn report_on<'b>(book: &'b Rulebook, stock: &[Stocked], today: &str) -> Report<'b> {
    Report::of(book, stock, &Terms::on(day(today))).unwrap()
}

/// The codes found about one cylinder alone.
pub fn codes(one: &Stocked) -> Vec<&'static str> {
    codes_on(&RULEBOOK, one, TODAY)
}

pub fn codes_on(book: &Rulebook, one: &Stocked, today: &str) -> Vec<&'static str> {
    let report = report_on(book, core::slice::from_ref(one), today);
    report.judged[0]
        .findings
        .iter()
        .map(|finding| finding.code())
        .collect()
}
