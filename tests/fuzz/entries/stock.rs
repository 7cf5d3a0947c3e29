//! Any bytes as a list of cylinders: each row is read or counted as not read, what is wrong has its place, and a stock that was read
//! can be judged.

use oxyfolio::{
    RULEBOOK,
    book::Date,
    check::stock::{Report, Stocked, Terms},
    compile::diagnostic::Level,
    records::{
        stock::{self, Listed},
        table,
    },
};

use super::places;

/// Reads the bytes as a list, and judges what was read.
pub fn run(bytes: &[u8]) {
    let listed = match stock::read(&RULEBOOK, "stock.csv", bytes) {
        Ok(listed) => listed,
        Err(rejected) => {
            assert!(!rejected.diagnostics.is_empty(), "rejected without a reason");
            return places::check(&rejected.diagnostics, &rejected.sources);
        }
    };
    places::check(&listed.diagnostics, &listed.sources);
    every_row(&listed);
    let stock: Vec<Stocked> = listed.rows.iter().map(|row| row.stocked.clone()).collect();
    for today in [Date::new(2026, 3, 1), Date::new(2400, 12, 31)] {
        let terms = Terms::on(today.expect("a day"));
        let report = Report::of(&RULEBOOK, &stock, &terms).expect("its own sizes at the usual temperature");
        assert_eq!(report.judged.len(), stock.len());
        let mut swapped = report.swap.clone();
        swapped.sort_unstable();
        swapped.dedup();
        assert_eq!(swapped.len(), report.swap.len(), "none is swapped twice");
        assert!(swapped.iter().all(|place| *place < stock.len()));
        assert!(
            report
                .findings
                .iter()
                .all(|finding| !finding.to_string().is_empty())
        );
    }
}

/// Every row below the head that isn't empty is read or counted, in order; whatever isn't read is said to be wrong.
fn every_row(listed: &Listed) {
    let (_, source) = listed.sources.iter().next().expect("the list");
    let rows = table::rows(&source.text).skip(1).filter(|row| !row.is_empty());
    assert_eq!(listed.rows.len() + listed.not_read, rows.count());
    assert!(listed.rows.is_sorted_by(|one, next| one.line < next.line));
    let errors = listed
        .diagnostics
        .iter()
        .filter(|found| found.level == Level::Error)
        .count();
    assert_eq!(listed.not_read == 0, errors == 0, "{:?}", listed.diagnostics);
    for row in &listed.rows {
        assert!(!row.stocked.serial.trim().is_empty());
    }
}
