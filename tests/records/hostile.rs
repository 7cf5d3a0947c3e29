//! Broken and hostile records: never a crash, always told, and the next line is read.

use std::io::Write as _;

use super::support::{file, findings, pass, run};
use oxyfolio::records::run::{MAX_EVENTS, MAX_LINE, Options};

fn codes(found: &[serde_json::Value]) -> Vec<&str> {
    found
        .iter()
        .map(|found| found["code"].as_str().unwrap())
        .collect()
}

/// Told by one bad line of this code, between two runs that are read.
fn told(line: &[u8], code: &str) {
    let text = [b"{\"run\":\"a\"}\n", line, b"\n{\"run\":\"b\"}"].concat();
    let (tally, found) = findings("a.ndjson", text);
    assert_eq!((tally.runs, tally.bad_lines), (2, 1), "{code}");
    assert!(codes(&found).contains(&code), "{code}: {found:#?}");
}

#[test]
fn nesting_beyond_all_sense() {
    for depth in [100, 100_000] {
        told(
            format!("{{\"x\":{}{}}}", "[".repeat(depth), "]".repeat(depth)).as_bytes(),
            "line-too-deep",
        );
        told(
            format!("{{\"x\":{}1{}}}", "{\"a\":".repeat(depth), "}".repeat(depth)).as_bytes(),
            "line-too-deep",
        );
    }
}

#[test]
fn bytes_that_are_no_text() {
    told(b"{\"run\":\"\xff\"}", "line-not-utf-8");
    // Cut in the middle of a sign of three bytes.
    told(b"{\"run\":\"\xe2\x82", "line-not-utf-8");
    told(b"\0\0\0\0", "line-broken");
    told(b"{\"run\":\"a\0\"}", "line-broken");
}

#[test]
fn a_line_that_is_too_long_is_passed_over() {
    let mut long = b"{\"x\":\"".to_vec();
    long.resize(MAX_LINE + 3_000_000, b'x');
    told(&long, "line-too-long");
    // As the last of a file, without its end.
    let (tally, _) = findings("a.ndjson", [&b"{\"run\":\"a\"}\n"[..], &long].concat());
    assert_eq!((tally.runs, tally.bad_lines), (1, 1));
    // The longest that is read.
    let mut most = format!("{{\"x\":\"{}\"}}", "x".repeat(MAX_LINE - 8)).into_bytes();
    assert_eq!(most.len(), MAX_LINE);
    most.push(b'\n');
    let (tally, _) = findings("a.ndjson", most);
    assert_eq!((tally.runs, tally.bad_lines), (1, 0));
}

#[test]
fn events_beyond_the_most() {
    let events = |count: usize| format!("{{\"run\":\"x\",\"events\":[{}]}}", vec!["{}"; count].join(","));
    told(events(MAX_EVENTS + 1).as_bytes(), "line-too-many-events");
    let (tally, _) = findings("a.ndjson", events(MAX_EVENTS));
    assert_eq!((tally.events, tally.bad_lines), (MAX_EVENTS as u64, 0));
}

#[test]
fn names_and_numbers_beyond_all_sense() {
    let name = "n".repeat(10_000);
    let (tally, found) = findings(
        "a.ndjson",
        format!(
            r#"{{"run":"{name}","{name}":1,"group":"{name}","events":[{{"device":"{name}","by":"{name}"}}]}}"#
        ),
    );
    assert_eq!(tally.runs, 1);
    assert_eq!(
        codes_of_reading(&found),
        [
            "name-unfit",
            "field-not-read",
            "name-unknown",
            "name-unknown",
            "name-unfit"
        ]
    );
    let digits = "9".repeat(10_000);
    let (_, found) = findings(
        "a.ndjson",
        format!(r#"{{"run":"a","events":[{{"flow_lpm":{digits}}}]}}"#),
    );
    assert_eq!(codes_of_reading(&found), ["value-out-of-range"]);
    // What turns the direction of a text, or a terminal's colours, is no name.
    for name in ["\\u202eabc", "\\u001b[31m"] {
        let (_, found) = findings("a.ndjson", format!(r#"{{"run":"{name}","events":[{{}}]}}"#));
        assert_eq!(codes_of_reading(&found), ["name-unfit"]);
    }
}

#[test]
fn line_ends_blank_lines_and_byte_order_marks() {
    for text in [
        "\u{feff}{\"run\":\"a\"}\r\n{\"run\":\"b\"}\r\n",
        "\n\n  \n{\"run\":\"a\"}\n\n\t\n{\"run\":\"b\"}",
        "\u{feff}\r\n\r\n{\"run\":\"a\"}\n{\"run\":\"b\"}\n\n",
        "\u{feff}run,at\r\na,\r\n\r\nb,\r\n",
        "\nrun,at\na,\nb,",
        "\"run\",\"at\"\n\"a\",\n\"b\",\"\"\n",
    ] {
        let (tally, found) = findings("a", text);
        assert_eq!((tally.runs, tally.bad_lines), (2, 0), "{text:?}");
        assert!(
            found
                .iter()
                .all(|found| found["run"] == "a" || found["run"] == "b"),
            "{text:?}: {found:#?}"
        );
    }
    for text in ["", "\n", " \r\n\n", "\u{feff}"] {
        let (tally, found) = findings("a", text);
        assert_eq!((tally.runs, tally.bad_lines, found.len()), (0, 0, 0), "{text:?}");
    }
    let (tally, _) = findings("a.csv", "run,at\n");
    assert_eq!((tally.runs, tally.bad_lines), (0, 0));
}

#[test]
fn a_forgotten_quote_swallows_one_row_only() {
    let (tally, found) = findings("a.csv", "run,do,by\na,set-flow,\"crew\nb,set-flow,crew\n");
    assert_eq!((tally.runs, tally.events, tally.bad_lines), (2, 2, 1));
    assert!(codes(&found).contains(&"line-broken"));
}

#[test]
fn rubbish_is_no_csv_and_each_line_is_told() {
    let (tally, _) = findings("a", "garbage\nmore garbage\n{\"run\":\"a\"}\n");
    assert_eq!((tally.runs, tally.bad_lines), (1, 2));
    // What calls itself CSV has no head that can be used.
    let (tally, _) = findings("a.csv", "garbage\nmore garbage\n");
    assert_eq!((tally.runs, tally.failed.len()), (0, 1));
    assert!(
        tally.failed[0].1.contains("expected the column `run`"),
        "{:?}",
        tally.failed
    );
}

fn gzip(bytes: &[u8]) -> Vec<u8> {
    let mut packer = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::fast());
    packer.write_all(bytes).unwrap();
    packer.finish().unwrap()
}

fn zstd(bytes: &[u8]) -> Vec<u8> {
    ruzstd::encoding::compress_to_vec(bytes, ruzstd::encoding::CompressionLevel::Fastest)
}

#[test]
fn packed_files_say_what_plain_ones_say() {
    let text: String = (0..300).map(|number| run(number, 9) + "\n").collect();
    let (head, tail) = text.split_at(text.len() / 2);
    // RFC 8878, 3.1.2: a frame that is to be skipped.
    let skipped = [&[0x50, 0x2a, 0x4d, 0x18, 3, 0, 0, 0][..], b"abc"].concat();
    let plain = findings("a.ndjson", &text).1;
    for packed in [
        gzip(text.as_bytes()),
        [gzip(head.as_bytes()), gzip(tail.as_bytes())].concat(),
        zstd(text.as_bytes()),
        [zstd(head.as_bytes()), skipped.clone(), zstd(tail.as_bytes())].concat(),
        [skipped, zstd(text.as_bytes())].concat(),
    ] {
        let (tally, found) = findings("a.ndjson", &packed);
        assert_eq!((tally.runs, tally.events, tally.failed.len()), (300, 2700, 0));
        assert_eq!(found.len(), plain.len());
    }
}

#[test]
fn a_packed_file_that_breaks_off_is_read_so_far_and_told() {
    let text: String = (0..2000).map(|number| run(number, 9) + "\n").collect();
    for packed in [gzip(text.as_bytes()), zstd(text.as_bytes())] {
        let (_folder, path) = file("a.ndjson", &packed[..packed.len() / 2]);
        let (_other, after) = file("b.ndjson", run(9999, 1));
        let (tally, _) = pass(&[path, after], &Options::default());
        assert_eq!(tally.failed.len(), 1);
        assert!(
            tally.failed[0].1.contains("cannot be read from line"),
            "{:?}",
            tally.failed
        );
        // Whole lines only, and the file after it.
        assert!(tally.runs > 1 && tally.runs < 2000, "{}", tally.runs);
        assert_eq!(tally.bad_lines, 0);
        assert_eq!(tally.events, (tally.runs - 1) * 9 + 1);
    }
}

#[test]
fn a_packed_file_with_a_wrong_byte_is_told() {
    let text: String = (0..200).map(|number| run(number, 9) + "\n").collect();
    for mut packed in [gzip(text.as_bytes()), zstd(text.as_bytes())] {
        // The last bytes are a checksum or a length.
        let at = packed.len() - 3;
        packed[at] ^= 0x40;
        let (tally, _) = findings("a.ndjson", &packed);
        assert_eq!(tally.failed.len(), 1);
    }
    for rubbish in [
        &b"\x1f\x8bxxxxxxxxxxxx"[..],
        b"\x28\xb5\x2f\xfdxxxxxxxx",
        b"\x1f\x8b",
        b"\x28\xb5\x2f\xfd",
    ] {
        let (tally, _) = findings("a", rubbish);
        assert_eq!((tally.failed.len(), tally.runs), (1, 0), "{rubbish:?}");
    }
}

#[test]
fn a_zstd_window_beyond_the_most_is_refused_and_not_held() {
    // RFC 8878, 3.1.1.1: descriptor without content size, then a window of 2^(10+20) bytes.
    let frame = [0x28, 0xb5, 0x2f, 0xfd, 0x00, 20 << 3, 0x01, 0x00, 0x00];
    let (tally, _) = findings("a", frame);
    assert_eq!(tally.failed.len(), 1);
}

/// What the reader tells, without what the review then misses.
fn codes_of_reading(found: &[serde_json::Value]) -> Vec<&str> {
    let mut codes = codes(found);
    codes.retain(|code| !code.ends_with("-not-recorded"));
    codes
}
