//! The patient of a run: the target's time, what counts as a change of oxygen, a newborn on air, readings without a word of what
//! was done. Five minutes are the adult target's (tests/published).

use oxyfolio::RULEBOOK;

use super::told::adult;
use super::worked::{MASK, READY, with};

/// The findings of a run with the mask on from 10:05:00 that are about the target.
fn about_target(edits: &[(&str, &str)]) -> Vec<String> {
    let mut found = with(edits).found();
    found.retain(|found| found.starts_with("target-"));
    found
}

const LOW: (&str, &str) = ("10:05:30 watch-patient spo2=95", "10:05:30 watch-patient spo2=89");
const HIGH: (&str, &str) = ("10:05:30 watch-patient spo2=95", "10:05:30 watch-patient spo2=99");

/// With something at one time and a reading at another, both before the mask comes off.
fn then(first: (&str, &str), lines: &str) -> Vec<String> {
    let after = format!("10:05:40 write-down\n{lines}");
    about_target(&[first, ("10:05:40 write-down", &after)])
}

/// "Look again within" five minutes: at five minutes it is in time, a second later it isn't. So for the hazard.
#[test]
fn the_targets_time_is_over_after_it_and_not_at_it() {
    assert_eq!(then(LOW, "10:10:00 watch-patient spo2=95"), [""; 0]);
    assert_eq!(
        then(LOW, "10:10:01 watch-patient spo2=95"),
        ["target-missed adult-general 10:05:00 10:10:01"]
    );
    let hazard = |at: &str| {
        let lines = format!("10:05:40 write-down\n{at} watch-patient spo2=95");
        let found = with(&[LOW, ("10:05:40 write-down", &lines)]).found();
        found.iter().any(|found| found.starts_with("hazard below-target"))
    };
    assert!(!hazard("10:10:00"));
    assert!(hazard("10:10:01"));
}

/// More flow against too little, less against too much: then the time begins anew. The other way round it doesn't.
#[test]
fn a_change_the_right_way_begins_the_time_anew() {
    const MORE: &str = "10:05:40 set-flow flow=12\n10:09:00 set-flow flow=15\n";
    const LESS: &str = "10:09:00 set-flow flow=10\n";
    const SAME: &str = "10:09:00 set-flow flow=15\n";
    for (first, change, last, found) in [
        (LOW, MORE, "spo2=95", None),
        (
            LOW,
            LESS,
            "spo2=95",
            Some("target-missed adult-general 10:05:00 10:13:50"),
        ),
        (
            LOW,
            SAME,
            "spo2=95",
            Some("target-missed adult-general 10:05:00 10:13:50"),
        ),
        (HIGH, LESS, "spo2=97", None),
        (
            HIGH,
            SAME,
            "spo2=97",
            Some("target-exceeded adult-general 10:05:30 10:13:50"),
        ),
        // Ventilating by hand, and another device: more or less, who knows; something was done.
        (LOW, "10:09:00 hand-ventilate\n", "spo2=95", None),
        (LOW, "10:09:00 device=simple-mask\n", "spo2=95", None),
        (HIGH, "10:09:00 device=simple-mask\n", "spo2=97", None),
    ] {
        let lines = format!("{change}10:13:50 watch-patient {last}");
        let expected: Vec<&str> = found.into_iter().collect();
        assert_eq!(then(first, &lines), expected, "{change}");
    }
    // Twelve at first, fifteen from 10:09 on: more oxygen is no answer to too much.
    let more = "10:09:00 set-flow flow=15\n10:13:50 watch-patient spo2=97";
    let lines = format!("10:05:40 write-down\n{more}");
    assert_eq!(
        about_target(&[
            HIGH,
            ("set-flow flow=15", "set-flow flow=12"),
            ("10:05:40 write-down", &lines)
        ]),
        ["target-exceeded adult-general 10:05:30 10:13:50"]
    );
}

/// Too much oxygen is over when it is stopped, once and for all. Too little isn't, and lasts to the end of the record.
#[test]
fn stopping_ends_too_much_and_not_too_little() {
    const NO_MORE: [(&str, &str); 3] = [
        ("10:15:00 assess-patient spo2=96", "10:15:00 assess-patient"),
        ("10:16:10 watch-patient spo2=96", "10:16:10 watch-patient"),
        ("10:18:40 write-down", "10:25:00 write-down"),
    ];
    let [assess, watch, write] = NO_MORE;
    assert_eq!(
        about_target(&[HIGH, assess, watch, write]),
        ["target-exceeded adult-general 10:05:30 10:15:30"]
    );
    assert_eq!(
        about_target(&[LOW, assess, watch, write]),
        ["target-missed adult-general 10:05:00"]
    );
    const LOWERED: (&str, &str) = (
        "10:05:40 write-down",
        "10:05:40 write-down\n10:10:40 set-flow flow=10",
    );
    // Lowered and not stopped: what was too long before is told, and the time begins anew.
    assert_eq!(
        about_target(&[
            HIGH,
            assess,
            watch,
            write,
            LOWERED,
            ("10:15:30 remove-device", "10:15:45 remove-device"),
            ("10:15:40 zero-flow", "10:15:50 zero-flow"),
        ]),
        [
            "target-exceeded adult-general 10:05:30 10:10:40",
            "target-exceeded adult-general 10:10:40 10:15:45",
        ]
    );
    // And where no more than its time passes after it, nothing more is told.
    assert_eq!(
        about_target(&[HIGH, assess, watch, write, LOWERED,]),
        ["target-exceeded adult-general 10:05:30 10:10:40"]
    );
}

/// A saturation that could not be read, or can't be one, is unknown from then on: the one before doesn't stand in for it.
#[test]
fn an_unreadable_saturation_ends_what_was_known() {
    let low = ("10:05:30 watch-patient spo2=95", "10:05:30 watch-patient spo2=80");
    for unread in ["spo2=?", "spo2=101"] {
        let lines = format!("10:05:40 write-down\n10:06:30 watch-patient {unread}");
        let found = with(&[low, ("10:05:40 write-down", &lines)]).found();
        assert!(
            found.contains(&"hazard very-low-saturation 10:05:30 10:06:30".to_owned()),
            "{unread}: {found:#?}"
        );
    }
}

/// A newborn is ventilated with air first: a hand bag without flow is right then, and only then, and only for a newborn.
#[test]
fn a_newborn_may_be_ventilated_with_air() {
    const CODES: [&str; 3] = [
        "flow-too-low",
        "reservoir-not-filled",
        "hazard no-flow-on-patient",
    ];
    let codes = |group: &str, flow: &str| {
        let mut written = adult(&format!(
            "{READY}
            10:04:00 connect-device device=bag-valve-mask
            10:04:10 flow={flow}
            10:04:20 place-device
            10:04:30 hand-ventilate"
        ));
        written.group = RULEBOOK.find_group(group);
        let found = written.found();
        CODES.map(|code| found.iter().any(|found| found.starts_with(code)))
    };
    assert_eq!(codes("newborn", "0"), [false, false, false]);
    // The book says 5 to 10 L/min for a newborn, 10 to 15 for others.
    assert_eq!(codes("newborn", "3"), [true, true, false]);
    assert_eq!(codes("newborn", "8"), [false, true, false]);
    assert_eq!(codes("adult", "0"), [true, true, true]);
}

/// Without a word of what was done a flow above zero is taken to be to the patient, and every line is judged anew.
#[test]
fn readings_alone_are_judged_line_by_line() {
    let hazards = |text: &str| {
        let mut found = adult(text).found();
        found.retain(|found| found.starts_with("hazard "));
        found
    };
    // On from the second line on: the hazard of a mask with a bag begins there.
    assert_eq!(
        hazards("10:00:00 cylinder=e psi=2000\n10:01:00 device=non-rebreather flow=6\n10:02:00 flow=12"),
        ["hazard reservoir-flow-too-low 10:01:00 10:02:00"]
    );
    // The same flow is too little for another device.
    assert_eq!(
        hazards("10:00:00 device=simple-mask flow=6\n10:05:00 device=non-rebreather\n10:06:00 flow=10"),
        ["hazard reservoir-flow-too-low 10:05:00 10:06:00"]
    );
    // At no flow the device is taken to be off.
    assert_eq!(
        hazards("10:00:00 device=nasal-cannula flow=2\n10:05:00 flow=0"),
        [""; 0]
    );
}

/// A mask put on without a flow ever set: by the record the flow is at zero, not unknown.
#[test]
fn a_flow_never_turned_on_is_no_flow() {
    let mask = MASK.replace("10:04:40 set-flow flow=15\n", "");
    assert!(!mask.contains("set-flow"));
    // Begun in the middle: a regulator is opened with its flow at zero, or the cylinder would not have been.
    let middle = "10:03:00 close-cylinder\n10:03:10 tighten-regulator\n10:03:30 open-cylinder\n";
    for ready in [READY, middle] {
        let found = adult(&[ready, &mask].concat()).found();
        for line in [
            "flow-too-low non-rebreather 10:05:00",
            "hazard no-flow-on-patient 10:05:00",
        ] {
            assert!(found.iter().any(|found| found == line), "no {line} in {found:#?}");
        }
        assert!(
            !found.iter().any(|found| found.starts_with("flow-not-recorded")),
            "{found:#?}"
        );
    }
}

/// A line that says the flow is on says so even where the last thing done was to turn it off.
#[test]
fn a_flow_written_down_outranks_the_last_thing_done() {
    let found = with(&[(
        "10:05:40 write-down",
        "10:05:40 write-down\n10:07:00 zero-flow\n10:09:00 watch-patient flow=15",
    )])
    .found();
    assert!(
        found.contains(&"hazard no-flow-on-patient 10:07:00 10:09:00".to_owned()),
        "{found:#?}"
    );
}

/// What was not recorded is told with the rule it would have been checked by: the target for a saturation, the procedure that
/// leaves the equipment safe for the end. A hazard that asks for the saturation is not passed either.
#[test]
fn what_is_missing_is_told_by_the_rule_that_needs_it() {
    let none = with(&[
        ("10:00:20 assess-patient spo2=90", "10:00:20 assess-patient"),
        ("10:05:30 watch-patient spo2=95", "10:05:30 watch-patient"),
        ("10:15:00 assess-patient spo2=96", "10:15:00 assess-patient"),
        ("10:16:10 watch-patient spo2=96", "10:16:10 watch-patient"),
    ])
    .found();
    for line in [
        "saturation-not-recorded adult-general",
        "hazard-unknown very-low-saturation",
        "hazard-unknown below-target",
    ] {
        assert!(none.contains(&line.to_owned()), "no {line} in {none:#?}");
    }
    // Begun in the middle, with nothing said of the equipment.
    let looked = adult("10:00:00 watch-patient spo2=96").found();
    assert!(
        looked.contains(&"end-not-recorded shut-down".to_owned()),
        "{looked:#?}"
    );
}

/// After something that can't be read nothing older stands in: not the flow, which it may have changed, nor the device. What
/// the line itself says holds.
#[test]
fn after_an_unreadable_deed_flow_and_device_are_unknown() {
    let blanks = |line: &str| {
        let mut found = adult(&format!(
            "10:00:00 connect-device device=non-rebreather
            10:01:00 set-flow flow=15
            10:01:30 fill-reservoir
            10:02:00 place-device
            10:02:10 watch-patient spo2=96
            10:02:30 {line}
            10:03:00 place-device
            10:05:00 watch-patient spo2=96"
        ))
        .found();
        found.retain(|found| found.starts_with("flow-") || found.starts_with("device-"));
        found
    };
    let (flow, device) = ("flow-not-recorded agency", "device-not-recorded agency");
    assert_eq!(blanks("write-down"), [""; 0]);
    assert_eq!(blanks("do=?"), [device, flow]);
    assert_eq!(blanks("do=? flow=12"), [device]);
    assert_eq!(blanks("do=? device=non-rebreather"), [flow]);
    // A flow above the mask's is told from the line on that says so.
    assert_eq!(
        blanks("do=? device=non-rebreather flow=25"),
        ["flow-too-high non-rebreather 10:03:00"]
    );
}
