//! Times of a record: what is the same line twice, past midnight, a jump; and what time alone does.

use super::told::adult;
use super::worked::{READY, with};

fn has(found: &[String], line: &str) -> bool {
    found.iter().any(|found| found == line)
}

#[test]
fn two_things_in_one_second_are_two_things() {
    let found = with(&[
        ("10:02:10 keep-flames-away", "10:02:00 keep-flames-away"),
        ("10:03:10 tighten-regulator", "10:03:00 tighten-regulator"),
    ])
    .found();
    assert_eq!(found, [""; 0]);
}

/// By a clock that tells minutes only two readings may well be the same; by one that tells seconds they are one, and something
/// done is.
#[test]
fn the_same_reading_in_the_same_minute_is_none_written_twice() {
    let twice = |line: &str| {
        let found = adult(&format!(
            "10:04:00 device=non-rebreather flow=15\n{line}\n{line}\n"
        ))
        .found();
        found
            .iter()
            .filter(|found| found.starts_with("event-duplicate"))
            .count()
    };
    assert_eq!(twice("10:05:00 spo2=96"), 0);
    assert_eq!(twice("10:05:30 spo2=96"), 1);
    assert_eq!(twice("10:05:00 watch-patient spo2=96"), 1);
    assert_eq!(twice("- spo2=96"), 0);
}

/// Twelve hours are still a pause; more are a clock that was set. Of the hours one tenth is told.
#[test]
fn a_pause_of_more_than_twelve_hours_is_a_jump() {
    let later = |time: &str| {
        adult(&format!("10:04:00 write-down\n{time} write-down\n"))
            .review(|finding| (finding.code(), finding.to_string()))
            .into_iter()
            .filter(|(code, _)| code.starts_with("time-"))
            .collect::<Vec<_>>()
    };
    assert_eq!(later("22:04:00"), []);
    let jump = |hours: &str| {
        let words = format!(
            "this line is {hours} h later than the one before: the clock was set or the date is wrong; nothing is reckoned \
             across it"
        );
        vec![("time-jump", words)]
    };
    assert_eq!(later("22:04:01"), jump("12"));
    assert_eq!(later("23:34:00"), jump("13.5"));
    assert_eq!(later("35:10:00"), jump("25.1"));
}

/// Past midnight with the old date a line seems up to a day earlier, and from twelve hours on it is taken for that. A whole
/// day earlier it would have taken no time at all.
#[test]
fn between_twelve_hours_and_a_day_earlier_is_past_midnight() {
    for (time, code) in [
        ("23:59:59", "time-out-of-order"),
        ("22:00:01", "time-out-of-order"),
        ("22:00:00", "time-past-midnight"),
        ("10:00:01", "time-past-midnight"),
        ("10:00:00", "time-out-of-order"),
        ("09:00:00", "time-out-of-order"),
    ] {
        let found = adult(&format!("34:00:00 write-down\n{time} watch-patient\n")).found();
        let times: Vec<&str> = found
            .iter()
            .filter_map(|found| found.split(' ').next())
            .filter(|code| code.starts_with("time-"))
            .collect();
        assert_eq!(times, [code], "{time}");
    }
}

/// A closed cylinder's regulator is empty at once where the flow is on, but not in no time.
#[test]
fn with_the_flow_on_a_closed_regulator_runs_out_by_itself() {
    let taken_off = |at: &str| {
        let text = format!(
            "{READY}
            10:10:00 set-flow flow=1
            10:10:10 close-cylinder
            {at} remove-regulator"
        );
        has(&adult(&text).found(), &format!("step-refused shut-down {at}"))
            || has(&adult(&text).found(), &format!("step-refused fit-regulator {at}"))
    };
    assert!(taken_off("10:10:10"));
    assert!(!taken_off("10:10:11"));
    // With the flow at zero it stays under pressure.
    let closed = format!("{READY}\n10:10:10 close-cylinder\n10:12:00 remove-regulator");
    let found = adult(&closed).found();
    assert!(
        found
            .iter()
            .any(|found| found.starts_with("step-refused") && found.ends_with(" 10:12:00")),
        "{found:#?}"
    );
}

/// What changed the flow at an unknown time spoils the sum: no leak is made of it, and nothing ran out by it.
#[test]
fn what_was_done_at_an_unknown_time_spoils_the_sum_of_gas() {
    let leak = ("read-gauge psi=1411", "read-gauge psi=1179");
    let code = |line: &str| {
        let at = ("10:05:40 write-down", format!("10:05:40 write-down\n{line}"));
        let found = with(&[leak, (at.0, &at.1)]).found();
        found
            .iter()
            .any(|found| found.starts_with("pressure-fell-too-fast"))
    };
    assert!(code("10:06:00 flow=15"));
    assert!(code("10:06:00 watch-patient"));
    assert!(!code("- flow=15"));
    assert!(!code("- watch-patient"));
    assert!(!code("10:06:00 flow=?"));
    assert!(!code("10:06:00 psi=?"));
    // A look without a time that does nothing and sets nothing spoils nothing.
    assert!(code("- spo2=96"));
    let ran_out = |line: &str| {
        let found = with(&[
            ("cylinder=e", "cylinder=d"),
            ("psi=2000", "psi=1000"),
            ("10:17:30 read-gauge psi=1411", "10:17:30 read-gauge"),
            (
                "10:15:00 assess-patient",
                &format!("{line}\n10:15:00 assess-patient"),
            ),
        ])
        .found();
        found.iter().any(|found| found.starts_with("would-run-out"))
    };
    assert!(ran_out("10:14:50 watch-patient"));
    assert!(!ran_out("- watch-patient"));
}
