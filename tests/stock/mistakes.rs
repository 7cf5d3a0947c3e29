//! What a wrong list is told: the place, what is wrong, what to write instead; all at once, and the other rows are read.

use oxyfolio::RULEBOOK;
use oxyfolio::compile::drawn;
use oxyfolio::records::stock::{self, Listed};
use oxyfolio::records::table;

use super::support::{bar, month, psi};

const HEAD: &str = "serial,size,pressure_psi,tested,marks,location\n";
const GOOD: &str = "LV-9,D,2000,2024-03,,Station 1\n";

fn read(text: &str) -> Listed {
    stock::read(&RULEBOOK, "stock.csv", text.as_bytes()).unwrap_or_else(|rejected| panic!("{rejected}"))
}

fn refused(bytes: &[u8]) -> String {
    stock::read(&RULEBOOK, "stock.csv", bytes)
        .unwrap_err()
        .render(false)
}

/// A text with its marked span taken out, and the line and column at which it begins and how long it is.
fn marked(text: &str) -> (String, usize, usize, usize) {
    let from = text.find('«').expect("a marked span");
    let before = &text[..from];
    let inside = text[from..].split('»').next().unwrap().trim_start_matches('«');
    let line = before.matches('\n').count() + 1;
    let column = before.rsplit('\n').next().unwrap().chars().count() + 1;
    (text.replace(['«', '»'], ""), line, column, inside.chars().count())
}

#[test]
fn a_good_list_is_read() {
    let text = "location,tested,serial,marks,SIZE,pressure_bar,pressure_psi,vendor\n\
                \"Station 1, \"\"the\"\" shelf\",2024-03, LV-1 ,+ *,us d,,1999.5,x\n\
                ,,LV-2,3AL,2 L,150.5,,\n";
    let listed = read(text);
    assert_eq!((listed.rows.len(), listed.not_read), (2, 0));
    let (first, second) = (&listed.rows[0], &listed.rows[1]);
    assert_eq!((first.line, &*first.stocked.serial), (2, "LV-1"));
    assert_eq!(first.stocked.location, "Station 1, \"the\" shelf");
    assert_eq!(first.stocked.size, oxyfolio::cylinder::D);
    assert_eq!(first.stocked.pressure, Some(psi(1999.5)));
    assert_eq!(first.stocked.tested, Some(month("2024-03")));
    assert!(first.stocked.marks.plus && first.stocked.marks.star && !first.stocked.marks.aluminium);
    assert_eq!(second.stocked.size, oxyfolio::cylinder::METRIC_2_L);
    assert_eq!(second.stocked.pressure, Some(bar(150.5)));
    assert_eq!((second.stocked.tested, &*second.stocked.location), (None, ""));
    assert!(second.stocked.marks.aluminium);
    // A column that isn't read is said to be.
    assert_eq!(listed.diagnostics.len(), 1);
    assert_eq!(listed.diagnostics[0].message, "the column `vendor` is not read");
}

#[test]
fn every_spelling_of_lines_is_the_same_list() {
    let plain = read(&format!("{HEAD}{GOOD}"));
    for text in [
        format!("\u{FEFF}{HEAD}{GOOD}"),
        format!("{HEAD}{GOOD}").replace('\n', "\r\n"),
        format!("{HEAD}{GOOD}").trim_end().to_owned(),
        format!("{HEAD}{GOOD},,,,,\n\n,,,,,\n"),
        format!("{HEAD}{}", GOOD.replace("LV-9", "\"LV-9\"")),
    ] {
        assert_eq!(read(&text).rows, plain.rows, "{text:?}");
        assert!(read(&text).diagnostics.is_empty());
    }
    let spaced = read(&format!("{HEAD}\n\n{GOOD}"));
    assert_eq!(spaced.rows[0].line, 4);
}

#[test]
fn each_mistake_has_its_place_and_what_to_write() {
    for (row, code, words, hint) in [
        (
            "«»,D,2000,2024-03,,S",
            "no-serial",
            "expected a serial, found nothing",
            "a name of your own",
        ),
        (
            "a,«jumbo-c»,2000,2024-03,,S",
            "unknown-size",
            "found `jumbo-c`",
            "did you mean `jumbo-d`?",
        ),
        (
            "a,«Zeppelin»,2000,2024-03,,S",
            "unknown-size",
            "found `Zeppelin`",
            "the rulebook has `d`, `jumbo-d`",
        ),
        (
            "a,«»,2000,2024-03,,S",
            "unknown-size",
            "found nothing",
            "the rulebook has `d`",
        ),
        (
            "a,D,«2000 psi»,2024-03,,S",
            "not-a-number",
            "found `2000 psi`",
            "write `2000`: the unit stands in the name",
        ),
        (
            "a,D,«\"2,000\"»,2024-03,,S",
            "not-a-number",
            "found `2,000`",
            "a decimal point",
        ),
        (
            "a,D,«full»,2024-03,,S",
            "not-a-number",
            "found `full`",
            "as a number: `1500`",
        ),
        ("a,D,«-5»,2024-03,,S", "not-a-number", "found `-5`", "as a number"),
        (
            "a,D,«NaN»,2024-03,,S",
            "not-a-number",
            "found `NaN`",
            "as a number",
        ),
        (
            "a,D,«1e3»,2024-03,,S",
            "not-a-number",
            "found `1e3`",
            "as a number",
        ),
        (
            "a,D,«20000»,2024-03,,S",
            "out-of-bounds",
            "from 0 to 310 bar",
            "300 bar at the most",
        ),
        (
            "a,D,«4400»,2024-03,,S",
            "out-of-bounds",
            "from 0 to 300 bar",
            "300 bar",
        ),
        (
            "a,D,2000,«Nov 2021»,,S",
            "not-a-month",
            "found `Nov 2021`",
            "write `2021-11`",
        ),
        (
            "a,D,2000,«November-2021»,,S",
            "not-a-month",
            "found `November-2021`",
            "write `2021-11`",
        ),
        (
            "a,D,2000,«11/2021»,,S",
            "not-a-month",
            "found `11/2021`",
            "write `2021-11`",
        ),
        (
            "a,D,2000,«2021/11»,,S",
            "not-a-month",
            "found `2021/11`",
            "write `2021-11`",
        ),
        (
            "a,D,2000,«2021-11-05»,,S",
            "not-a-month",
            "found `2021-11-05`",
            "write `2021-11`",
        ),
        (
            "a,D,2000,«2021-1»,,S",
            "not-a-month",
            "found `2021-1`",
            "write `2021-01`",
        ),
        // Could be a day of November or the year: nothing is guessed.
        (
            "a,D,2000,«Nov-21»,,S",
            "not-a-month",
            "found `Nov-21`",
            "year and month with a hyphen",
        ),
        (
            "a,D,2000,«05/11/2021»,,S",
            "not-a-month",
            "found `05/11/2021`",
            "year and month with a hyphen",
        ),
        (
            "a,D,2000,«2021-13»,,S",
            "not-a-month",
            "found `2021-13`",
            "year and month with a hyphen",
        ),
        (
            "a,D,2000,«44501»,,S",
            "not-a-month",
            "found `44501`",
            "year and month with a hyphen",
        ),
        (
            "a,D,2000,2024-03,«pluss»,S",
            "unknown-mark",
            "found `pluss`",
            "did you mean `plus`?",
        ),
        (
            "a,D,2000,2024-03,«plus 7»,S",
            "unknown-mark",
            "found `7`",
            "`plus`, `star`, `steel` and `aluminium`",
        ),
        (
            "a,D,2000,2024-03,«3AA 3AL»,S",
            "two-metals",
            "found both",
            "3AL is aluminium",
        ),
        (
            "«a,D,2000,2024-03,»",
            "wrong-count",
            "expected 6 fields, found 5 fields",
            "a comma for every column",
        ),
        (
            "a,D,2000,2024-03,,Bay 1,« shelf 2»",
            "wrong-count",
            "expected 6 fields, found 7 fields",
            "in quotation marks",
        ),
        (
            "a,D,2000,2024-03,,«\"»Bay 1",
            "open-quotation",
            "expected a second quotation mark",
            "on the same line",
        ),
        (
            "a,D,2000,2024-03,,S«\u{202E}»1",
            "hidden-character",
            "U+202E",
            "delete the character",
        ),
        (
            "a,D,2000,2024-03,,S«\u{0}»1",
            "hidden-character",
            "U+0000",
            "delete the character",
        ),
        (
            "a,D,2000,2024-03,,S«\u{1B}»[31m",
            "hidden-character",
            "U+001B",
            "delete the character",
        ),
    ] {
        let (text, line, column, length) = marked(&format!("{HEAD}{GOOD}{row}\n{GOOD}"));
        let listed = read(&text);
        assert_eq!(
            (listed.rows.len(), listed.not_read),
            (2, 1),
            "{row}: the others are read"
        );
        assert_eq!(listed.diagnostics.len(), 1, "{row}: {:?}", listed.diagnostics);
        let found = &listed.diagnostics[0];
        let place = listed.sources.line_column(found.span.unwrap());
        assert_eq!(found.code, code, "{row}");
        assert!(found.message.contains(words), "{row}: {}", found.message);
        assert!(
            found.hints.iter().any(|said| said.contains(hint)),
            "{row}: {:?}",
            found.hints
        );
        assert_eq!(place.line, line, "{row}");
        let trimmed_off = row
            .split('«')
            .nth(1)
            .map_or(0, |rest| rest.len() - rest.trim_start().len());
        // An empty field has no width: its place is the comma after it, or what stands before.
        if length > 0 {
            assert_eq!(place.column, column + trimmed_off, "{row}");
        } else {
            assert!(place.column.abs_diff(column) <= 1, "{row}");
        }
        let drawn = drawn(&listed.diagnostics, 0, &listed.sources, false);
        assert!(
            drawn.contains(&format!("stock.csv:{line}:{}", place.column)),
            "{drawn}"
        );
        assert!(
            !drawn.contains('\u{1B}') && !drawn.contains('\u{202E}') && !drawn.contains('\0'),
            "{drawn:?}"
        );
    }
}

#[test]
fn a_field_that_no_sheet_could_show_is_told() {
    let long = "x".repeat(201);
    let listed = read(&format!(
        "{HEAD}a,D,2000,2024-03,,{long}\nb,D,2000,2024-03,,{}\n",
        &long[1..]
    ));
    assert_eq!((listed.rows.len(), listed.not_read), (1, 1));
    assert_eq!(listed.diagnostics[0].code, "too-long");
    assert!(!listed.diagnostics[0].hints.is_empty());
}

#[test]
fn all_mistakes_of_all_rows_are_told_at_once() {
    let text = format!("{HEAD},X9,full,soon,new,S\n{GOOD}b,D,1 bar,2024,,S\n");
    let listed = read(&text);
    let codes: Vec<&str> = listed.diagnostics.iter().map(|found| found.code).collect();
    assert_eq!(
        codes,
        [
            "no-serial",
            "unknown-size",
            "not-a-number",
            "not-a-month",
            "unknown-mark",
            "not-a-number",
            "not-a-month"
        ]
    );
    assert_eq!((listed.rows.len(), listed.not_read), (1, 2));
}

#[test]
fn two_readings_of_one_cylinder_contradict_each_other() {
    let head = "serial,size,pressure_psi,pressure_bar,tested,marks,location\n";
    let listed = read(&format!(
        "{head}a,D,2000,138,2024-03,,S\nb,D,,138,2024-03,,S\nc,D,,350,2024-03,,S\n"
    ));
    let codes: Vec<&str> = listed.diagnostics.iter().map(|found| found.code).collect();
    assert_eq!(codes, ["two-readings", "out-of-bounds"]);
    assert!(listed.diagnostics[1].hints[0].contains("is the reading in psi?"));
    assert_eq!(listed.rows[0].stocked.pressure, Some(bar(138.0)));
}

#[test]
fn the_names_of_the_columns_are_held_to() {
    for (head, code, words, hint) in [
        (
            "serial,size,«pressure»,tested,marks,location",
            "column-without-unit",
            "found `pressure`",
            "the unit of the readings",
        ),
        (
            "serial,size,«Pressure (psi)»,tested,marks,location",
            "column-without-unit",
            "`pressure_psi` or `pressure_bar`",
            "the unit",
        ),
        (
            "«seriel»,size,pressure_psi,tested,marks,location",
            "unknown-column",
            "found `seriel`",
            "did you mean `serial`?",
        ),
        (
            "«serial,size,pressure_psi,marks,location»",
            "missing-column",
            "this list lacks `tested`",
            "add the column",
        ),
        (
            "serial,size,pressure_psi,tested,marks,location,«serial»",
            "column-twice",
            "found `serial` again",
            "",
        ),
        (
            "«serial;size;pressure_psi;tested;marks;location»",
            "not-commas",
            "found `;`",
            "with a comma as separator",
        ),
        (
            "«serial\tsize\tpressure_psi\ttested\tmarks\tlocation»",
            "not-commas",
            "found tabulators",
            "with a comma",
        ),
        (
            "«LV-9,D,2000,2024-03,,Station 1»",
            "missing-column",
            "lacks `serial`, `size`, `pressure_psi`, `tested`",
            "write the names of the columns first",
        ),
        (
            "serial,size,pressure_psi,tested,marks,«\"»location",
            "open-quotation",
            "second quotation mark",
            "no quotation marks",
        ),
    ] {
        let (head, line, column, _) = marked(head);
        let said = refused(format!("{head}\n{GOOD}").as_bytes());
        assert!(said.contains(&format!("error[{code}]")), "{said}");
        assert!(said.contains(words) && said.contains(hint), "{said}");
        assert!(said.contains(&format!("stock.csv:{line}:{column}")), "{said}");
    }
    let two = refused(b"seriel,size,pressure,tested,marks,location\n");
    assert!(
        two.contains("did you mean `serial`?") && two.contains("column-without-unit"),
        "{two}"
    );
}

#[test]
fn what_is_no_list_is_refused_whole() {
    let huge = vec![b'a'; stock::MOST_BYTES + 1];
    let lone = format!("{HEAD}{GOOD}").replace('\n', "\r");
    for (bytes, code) in [
        (&b""[..], "empty-list"),
        (b"\n \n", "empty-list"),
        (HEAD.as_bytes(), "empty-list"),
        (b"\xFF\xFEs\0e\0", "not-utf-8"),
        (b"PK\x03\x04workbook", "not-text"),
        (&huge, "too-long"),
        (lone.as_bytes(), "lone-return"),
    ] {
        let said = refused(bytes);
        assert!(
            said.contains(&format!("error[{code}]")) && said.contains("help: "),
            "{said}"
        );
    }
}

#[test]
fn bytes_that_are_no_utf_8_cost_their_row_and_no_other() {
    let mut bytes = format!("{HEAD}{GOOD}").into_bytes();
    bytes.extend_from_slice(b"LV-2,D,2000,2024-03,,Caf\xE9 post\nLV-3,D,2000,2024-03,,Post\n");
    let listed = stock::read(&RULEBOOK, "stock.csv", &bytes).unwrap();
    assert_eq!((listed.rows.len(), listed.not_read), (2, 1));
    let found = &listed.diagnostics[0];
    let place = listed.sources.line_column(found.span.unwrap());
    assert_eq!((found.code, place.line, place.column), ("not-utf-8", 3, 25));
}

#[test]
fn a_list_has_an_end() {
    let row = "a,D,2000,2024-03,,S\n";
    let text = format!("{HEAD}{}", row.repeat(stock::MOST_ROWS + 1));
    let said = refused(text.as_bytes());
    assert!(
        said.contains("expected at most 100000 rows, found more"),
        "{said}"
    );
    assert!(said.contains("stock.csv:100002:1"), "{said}");
    let bad = format!("{HEAD}{}", "a,D\n".repeat(5_000));
    let listed = read(&bad);
    assert_eq!((listed.rows.len(), listed.not_read), (0, 5_000));
    assert_eq!((listed.diagnostics.len(), listed.omitted), (1_000, 4_000));
}

#[test]
fn fields_have_their_places() {
    let text = "a, \"b \"\"c\"\" \" ,,d\r\n\nx\n";
    let rows: Vec<_> = table::rows(text).collect();
    let cells = rows[0].cells.as_ref().unwrap();
    let texts: Vec<&str> = cells.iter().map(|cell| &*cell.text).collect();
    let raw: Vec<&str> = cells.iter().map(|cell| &text[cell.at.clone()]).collect();
    // A quotation mark after a space is a plain sign (RFC 4180 has quotation marks at the ends of a field only).
    assert_eq!(texts, ["a", "\"b \"\"c\"\" \"", "", "d"]);
    assert_eq!(raw, ["a", "\"b \"\"c\"\" \"", "", "d"]);
    assert_eq!((rows.len(), rows[1].line), (2, 3));
}
