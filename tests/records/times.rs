//! Times are read as a general-purpose library reads them (jiff), and refused where it refuses.

use jiff::{Timestamp, fmt::temporal::DateTimeParser};
use oxyfolio::RULEBOOK;
use oxyfolio::check::review::Moment;
use oxyfolio::records::run::{Names, RunBuffer};
use proptest::prelude::*;

fn read(text: &str) -> Option<Moment> {
    let names = Names::new(&RULEBOOK);
    let mut buffer = RunBuffer::new();
    let line = serde_json::json!({"run": "A", "events": [{"at": text}]}).to_string();
    buffer.read_json(line.as_bytes(), 1, &names).unwrap();
    buffer.run().events[0].at
}

fn by_jiff(text: &str) -> Option<i64> {
    static PARSER: DateTimeParser = DateTimeParser::new();
    let at: Timestamp = PARSER.parse_timestamp(text).ok()?;
    Some(at.as_millisecond())
}

#[test]
fn the_examples_of_rfc_3339() {
    // RFC 3339, section 5.8.
    for text in [
        "1985-04-12T23:20:50.52Z",
        "1996-12-19T16:39:57-08:00",
        "1937-01-01T12:00:27.87+00:20",
    ] {
        assert_eq!(read(text).map(Moment::unix_millis), by_jiff(text), "{text}");
    }
    // A leap second is the first of the next minute; jiff cuts it to the last of this one.
    assert_eq!(
        read("1990-12-31T23:59:60Z").map(Moment::unix_millis),
        by_jiff("1991-01-01T00:00:00Z")
    );
}

#[test]
fn what_is_no_time() {
    for text in [
        "",
        "2026",
        "2026-03-01",
        "2026-03-01T14:05:00",
        "2026-03-01T14:05Z",
        "2026-13-01T14:05:00Z",
        "2026-00-01T14:05:00Z",
        "2026-04-31T14:05:00Z",
        "2025-02-29T14:05:00Z",
        "1900-02-29T14:05:00Z",
        "2026-03-01T24:00:00Z",
        "2026-03-01T14:60:00Z",
        "2026-03-01T14:05:61Z",
        "2026-03-01T14:05:00.Z",
        "2026-03-01T14:05:00+0100",
        "2026-03-01T14:05:00+24:00",
        "2026-03-01T14:05:00Z ",
        "2026-03-01T14:05:00Zx",
        "2026-03-01X14:05:00Z",
        "+2026-03-01T14:05:00Z",
        "２026-03-01T14:05:00Z",
        "2026-03-01T14:05:00,5Z",
    ] {
        assert_eq!(read(text), None, "{text}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_time_is_the_time_that_jiff_reads(
        year in 1700..2300_i32, month in 1..=12_u8, day in 1..=31_u8, hour in 0..24_u8, minute in 0..60_u8,
        second in 0..60_u8, thousandths in 0..1000_u16, offset in -18 * 60..=18 * 60_i32,
    ) {
        let sign = if offset < 0 { '-' } else { '+' };
        let away = offset.abs();
        let text = format!(
            "{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}.{thousandths:03}{sign}{:02}:{:02}",
            away / 60, away % 60
        );
        prop_assert_eq!(read(&text).map(Moment::unix_millis), by_jiff(&text), "{}", text);
    }
}
