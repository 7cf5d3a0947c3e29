//! Rows with a mistake, mended as the hint says. A hint that gives the text to write is followed to the letter.

use oxyfolio::RULEBOOK;
use oxyfolio::records::stock::{self, Listed};

const HEAD: &str = "serial,size,pressure_psi,tested,marks,location\n";

/// The code, the mistaken row with the field `«so»`, and what a person types there; none where the hint gives the text.
const ROWS: &[(&str, &str, Option<&str>)] = &[
    ("no-serial", "«»,D,2000,2024-03,,S", Some("tag 7")),
    ("unknown-size", "a,«jumbo-c»,2000,2024-03,,S", None),
    ("unknown-size", "a,«Zeppelin»,2000,2024-03,,S", Some("d")),
    ("not-a-number", "a,D,«2000 psi»,2024-03,,S", None),
    ("not-a-number", "a,D,«\"2,000\"»,2024-03,,S", Some("2000")),
    ("not-a-number", "a,D,«full»,2024-03,,S", None),
    ("out-of-bounds", "a,D,«20000»,2024-03,,S", Some("2000")),
    ("not-a-month", "a,D,2000,«Nov 2021»,,S", None),
    ("not-a-month", "a,D,2000,«2021-1»,,S", None),
    ("not-a-month", "a,D,2000,«05/11/2021»,,S", Some("2021-11")),
    ("unknown-mark", "a,D,2000,2024-03,«pluss»,S", None),
    ("unknown-mark", "a,D,2000,2024-03,«plus 7»,S", Some("plus")),
    ("two-metals", "a,D,2000,2024-03,«3AA 3AL»,S", Some("3AA")),
    ("wrong-count", "a,D,2000,2024-03«»", Some(",,S")),
    (
        "wrong-count",
        "a,D,2000,2024-03,,«Bay 1, shelf 2»",
        Some("\"Bay 1, shelf 2\""),
    ),
    ("open-quotation", "a,D,2000,2024-03,,«\"Bay 1»", Some("\"Bay 1\"")),
    ("hidden-character", "a,D,2000,2024-03,,S«\u{202E}»1", Some("")),
];

fn read(row: &str) -> Listed {
    let text = format!("{HEAD}{row}\n");
    stock::read(&RULEBOOK, "stock.csv", text.as_bytes()).unwrap_or_else(|rejected| panic!("{rejected}"))
}

#[test]
fn a_row_is_mended_as_its_hint_says() {
    for (code, row, typed) in ROWS {
        let (before, rest) = row.split_once('«').unwrap();
        let (wrong, after) = rest.split_once('»').unwrap();
        let listed = read(&format!("{before}{wrong}{after}"));
        let [found] = listed.diagnostics.as_slice() else {
            panic!("{row}: {:?}", listed.diagnostics);
        };
        assert_eq!(found.code, *code, "{row}");
        let given = found.hints[0].split('`').nth(1);
        let typed = typed
            .or(given)
            .unwrap_or_else(|| panic!("{row}: {:?}", found.hints));
        let mended = read(&format!("{before}{typed}{after}"));
        assert_eq!(
            (mended.rows.len(), mended.diagnostics.len()),
            (1, 0),
            "{row}: {typed:?} {:?}",
            mended.diagnostics
        );
    }
}
