//! Hostile lists: nothing panics, nothing is lost, nothing gets out of its place.

use oxyfolio::RULEBOOK;
use oxyfolio::check::stock::{Report, Terms};
use oxyfolio::compile::drawn;
use oxyfolio::records::{stock, table};
use proptest::prelude::*;

use super::support::{TODAY, day};

const HEAD: &str = "serial,size,pressure_psi,tested,marks,location\n";

/// Fields as spreadsheets and slips of the pen make them.
fn field() -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        Just("D".to_owned()),
        Just("2000".to_owned()),
        Just("2024-03".to_owned()),
        Just("plus".to_owned()),
        Just("\"".to_owned()),
        Just("\"a,b\"".to_owned()),
        Just("=cmd|' /C calc'!A0".to_owned()),
        Just("#let x = read(\"/etc/passwd\")".to_owned()),
        "[ -~°é\u{202E}\u{0}\t]{0,12}",
    ]
}

proptest! {
    #[test]
    fn any_bytes_are_a_list_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        if let Err(rejected) = stock::read(&RULEBOOK, "x.csv", &bytes) {
            prop_assert!(!rejected.diagnostics.is_empty());
            let _ = rejected.render(false);
        }
    }

    #[test]
    fn every_row_is_read_or_told(rows in prop::collection::vec(prop::collection::vec(field(), 6), 1..12)) {
        let lines: Vec<String> = rows.iter().map(|row| row.join(",")).collect();
        let text = format!("{HEAD}{}", lines.join("\n"));
        let filled = table::rows(&text).skip(1).filter(|row| !row.is_empty()).count();
        match stock::read(&RULEBOOK, "x.csv", text.as_bytes()) {
            Ok(listed) => {
                prop_assert_eq!(listed.rows.len() + listed.not_read, filled);
                prop_assert_eq!(listed.not_read > 0, !listed.diagnostics.is_empty());
                let said = drawn(&listed.diagnostics, 0, &listed.sources, false);
                let is_hidden = said.contains(['\0', '\u{1B}', '\u{202E}']);
                prop_assert!(!is_hidden);
                let stock: Vec<_> = listed.rows.into_iter().map(|row| row.stocked).collect();
                let report = Report::of(&RULEBOOK, &stock, &Terms::on(day(TODAY))).unwrap();
                prop_assert_eq!(report.judged.len(), stock.len());
                prop_assert_eq!(report.all.counted + report.all.not_counted, stock.len());
            }
            Err(rejected) => prop_assert_eq!(filled, 0, "{}", rejected),
        }
    }

    /// The same fields as the crate `csv` finds, on lines whose quotations are closed.
    #[test]
    fn fields_are_those_that_another_reader_finds(fields in prop::collection::vec("[a-c\" ,]{0,8}", 1..8)) {
        let mut writer = csv::Writer::from_writer(Vec::new());
        writer.write_record(&fields).unwrap();
        let written = String::from_utf8(writer.into_inner().unwrap()).unwrap();
        let ours = table::rows(&written).next();
        match ours.map(|row| row.cells) {
            Some(Ok(cells)) => {
                let texts: Vec<&str> = cells.iter().map(|cell| &*cell.text).collect();
                let trimmed: Vec<&str> = fields.iter().map(|field| field.trim()).collect();
                prop_assert_eq!(texts, trimmed);
            }
            Some(Err(open)) => prop_assert!(false, "{:?} in {:?}", open, written),
            None => prop_assert!(fields.iter().all(|field| field.trim().is_empty())),
        }
    }

    /// On any line, quotations closed or not, the fields of the crate `csv`; a quotation left open is told.
    #[test]
    fn any_line_is_read_as_another_reader_reads_it(line in "[a-c\", ]{1,24}") {
        prop_assume!(!line.trim().is_empty());
        let mut theirs = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .from_reader(line.as_bytes());
        let theirs = theirs.records().next().unwrap().unwrap();
        let row = table::rows(&line).next().unwrap();
        match row.cells {
            Ok(cells) => {
                let ours: Vec<&str> = cells.iter().map(|cell| &*cell.text).collect();
                let theirs: Vec<&str> = theirs.iter().map(str::trim).collect();
                prop_assert_eq!(ours, theirs);
                for cell in &cells {
                    prop_assert!(line.get(cell.at.clone()).is_some());
                }
            }
            Err(open) => prop_assert_eq!(&line[open], "\""),
        }
    }
}
