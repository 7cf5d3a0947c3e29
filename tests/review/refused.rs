//! What was recorded against the equipment model: it is refused once, and then taken to have been done. What follows is judged
//! by it, not refused again.

use super::told::adult;
use super::worked::{MASK, OFF, READY, whole, with};

fn refused(found: &[String]) -> Vec<&str> {
    let refused = found.iter().filter(|found| found.starts_with("step-refused"));
    refused.map(|found| &found[found.len() - 8..]).collect()
}

#[test]
fn what_was_done_against_the_equipment_is_refused_once() {
    for (what, edits, times) in [
        // Seated on an open valve: seated it is, and is tightened.
        (
            "seat",
            &[(
                "10:03:00 seat-regulator",
                "10:02:55 open-cylinder\n10:03:00 seat-regulator",
            )][..],
            &["10:03:00"][..],
        ),
        // Taken off under pressure: off it is, and the outlet is capped.
        ("bleed", &[("10:17:50 bleed-regulator\n", "")], &["10:18:10"]),
        // Bled with the valve open, then closed: without pressure all the same.
        (
            "open",
            &[
                ("10:17:40 close-cylinder", "10:17:40 bleed-regulator"),
                ("10:17:50 bleed-regulator", "10:17:50 close-cylinder"),
            ],
            &["10:17:40"],
        ),
        // Turned on before the valve is: the flow is on when it is opened.
        (
            "flow",
            &[(
                "10:03:30 open-cylinder",
                "10:03:25 set-flow\n10:03:30 open-cylinder",
            )],
            &["10:03:25", "10:03:30"],
        ),
        // Blown clear with the regulator on.
        (
            "clear",
            &[
                ("10:02:30 clear-outlet\n", ""),
                (
                    "10:03:10 tighten-regulator",
                    "10:03:05 clear-outlet\n10:03:10 tighten-regulator",
                ),
            ],
            &["10:03:05"],
        ),
        // Off the regulator before it is off the patient: off the patient is what it is.
        (
            "device",
            &[
                ("10:15:30 remove-device", "10:15:30 disconnect-device"),
                ("10:15:50 disconnect-device", "10:15:50 remove-device"),
            ],
            &["10:15:30"],
        ),
        // Connected twice.
        (
            "twice",
            &[(
                "10:04:30 read-gauge",
                "10:04:25 connect-device\n10:04:30 read-gauge",
            )],
            &["10:04:25"],
        ),
    ] {
        let found = with(edits).found();
        assert_eq!(refused(&found), times, "{what}: {found:#?}");
    }
    assert_eq!(refused(&adult(&whole()).found()), [""; 0]);
}

/// A mask that was put on is on, though nothing was ever connected: its bag and its flow are judged.
#[test]
fn a_mask_put_on_is_on() {
    let mask = MASK
        .replace(
            "10:04:20 connect-device device=non-rebreather\n",
            "10:04:20 device=non-rebreather\n",
        )
        .replace("flow=15", "flow=6");
    let mask = mask.replace(
        "10:04:50 fill-reservoir",
        "10:04:50 disconnect-device\n10:04:55 device=non-rebreather",
    );
    let found = adult(&[READY, &mask].concat()).found();
    assert!(
        found
            .iter()
            .any(|found| found.starts_with("step-refused") && found.ends_with("10:05:00")),
        "{found:#?}"
    );
    assert!(
        found.contains(&"flow-too-low non-rebreather 10:05:00".to_owned()),
        "{found:#?}"
    );
}

/// Hazards of the equipment last as long as what was done says.
#[test]
fn hazards_follow_what_was_done() {
    let hazards = |edits: &[(&str, &str)]| {
        let mut found = with(edits).found();
        found.retain(|found| found.starts_with("hazard "));
        found
    };
    let clear = [
        ("10:02:30 clear-outlet\n", ""),
        (
            "10:03:10 tighten-regulator",
            "10:03:05 clear-outlet\n10:03:10 tighten-regulator",
        ),
    ];
    let found = hazards(&clear);
    assert!(
        found.len() == 1 && found[0].ends_with(" 10:03:00 10:03:05"),
        "{found:#?}"
    );
    // A device taken off the regulator is none: what is put on afterwards is not known to be it.
    let text = [READY, MASK, OFF].concat().replace(
        "10:16:00 dispose-device",
        "10:16:00 connect-device\n10:16:05 place-device",
    );
    let found = adult(&text).found();
    assert!(
        found.contains(&"device-not-recorded agency".to_owned()),
        "{found:#?}"
    );
}
