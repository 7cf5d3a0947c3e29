//! Quantities that are hard to print: every one reads back to the same bits, in the plainest spelling that does.

use crate::world::{print, read};

#[test]
fn quantities_are_printed_so_that_they_read_back() {
    for (written, printed) in [
        ("pressure < 2000 psi", "pressure < 2000 psi"),
        ("pressure < 137 bar", "pressure < 137 bar"),
        ("pressure < 13790 kPa", "pressure < 137.9 bar"),
        ("pressure < 13.7 MPa", "pressure < 137 bar"),
        ("pressure < 0.123456789 MPa", "pressure < 123.456789 kPa"),
        ("temperature > 70 °F", "temperature > 70 °F"),
        ("temperature > −20 °C", "temperature > -20 °C"),
        ("temperature > 33.33333333 °F", "temperature > 33.33333333 °F"),
        ("flow = 500 mL/min", "flow = 0.5 L/min"),
        ("flow = 0.123456 L/min", "flow = 123.456 mL/min"),
        ("flow = 0.000000012345 L/min", "flow = 0.000000012345 L/min"),
        ("minutes left < 1 day", "minutes left < 1 day"),
        ("minutes wanted >= 1.23456 h", "minutes wanted >= 1.23456 h"),
        ("spo2 in 88 to 92.5 %", "spo2 in 88 % to 92.5 %"),
        ("spo2 in over 88 %", "spo2 in over 88 %"),
        ("pressure in 50 bar to 2000 psi", "pressure in 50 bar to 2000 psi"),
    ] {
        let ops = read(written).unwrap().ops;
        assert_eq!(print(&ops).as_deref(), Some(printed), "{written}");
        assert_eq!(read(printed).unwrap().ops, ops, "{printed}");
    }
}

#[test]
fn brackets_are_printed_where_they_are_needed() {
    for (written, printed) in [
        ("((flame near))", "flame near"),
        (
            "(flame near and grease near) and wheezes",
            "flame near and grease near and wheezes",
        ),
        (
            "flame near and (grease near and wheezes)",
            "flame near and (grease near and wheezes)",
        ),
        (
            "flame near and (grease near or (wheezes))",
            "flame near and (grease near or wheezes)",
        ),
        ("not (not (flame near))", "not not flame near"),
        (
            "not(flame near or grease near)",
            "not (flame near or grease near)",
        ),
    ] {
        assert_eq!(
            print(&read(written).unwrap().ops).as_deref(),
            Some(printed),
            "{written}"
        );
    }
}
