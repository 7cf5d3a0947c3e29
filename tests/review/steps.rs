//! Steps of a record along the procedures of the demonstration's book: what is missing, out of order, or in the wrong place.

use super::told::adult;
use super::worked::{DOWN, MASK, OFF, READY, with};

/// The findings about steps.
fn steps(text: &str) -> Vec<String> {
    let mut found = adult(text).found();
    found.retain(|found| found.starts_with("step-") || found.starts_with("procedure-"));
    found
}

fn edited(edits: &[(&str, &str)]) -> Vec<String> {
    let mut found = with(edits).found();
    found.retain(|found| found.starts_with("step-") || found.starts_with("procedure-"));
    found
}

/// A critical step left out is told where its procedure ends: at the step that begins the next, or at the end of the record.
#[test]
fn a_critical_step_left_out_at_the_end_of_a_procedure_is_told() {
    for (left_out, found) in [
        (
            "10:03:50 read-gauge psi=2000\n",
            "step-skipped fit-regulator 10:04:00",
        ),
        (
            "10:05:30 watch-patient spo2=95\n",
            "step-skipped apply-reservoir-mask 10:15:00",
        ),
        (
            "10:16:10 watch-patient spo2=96\n",
            "step-skipped remove-device 10:17:00",
        ),
        ("10:17:20 keep-flames-away\n", "step-skipped shut-down 10:18:40"),
    ] {
        assert_eq!(edited(&[(left_out, "")]), [found], "{left_out}");
    }
    // Nothing but the first step: all the rest that is critical.
    assert_eq!(
        steps("10:00:00 put-on-gloves"),
        ["step-skipped make-ready 10:00:00"; 4]
    );
}

/// A critical look left out is never "so already": nobody knows what would have been seen. A deed is, where the record shows it
/// done; else not.
#[test]
fn what_is_left_out_was_so_already_only_where_the_record_shows_it() {
    let told = |left_out: &str| {
        with(&[(left_out, "")])
            .review(|finding| {
                (finding.code() == "step-skipped")
                    .then(|| (finding.level.word(), finding.to_string().ends_with("so already")))
            })
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
    };
    assert_eq!(told("10:02:00 secure-cylinder\n"), [("note", true)]);
    assert_eq!(told("10:03:50 read-gauge psi=2000\n"), [("warning", false)]);
    assert_eq!(told("10:05:30 watch-patient spo2=95\n"), [("warning", false)]);
    assert_eq!(told("10:03:10 tighten-regulator\n"), [("warning", false)]);
}

/// A look out of order is out of order like a deed, also where nothing critical comes after it.
#[test]
fn a_look_after_what_it_comes_before_is_told() {
    assert_eq!(
        edited(&[
            ("10:04:10 explain-to-patient\n", ""),
            (
                "10:05:10 route-tubing",
                "10:05:05 explain-to-patient\n10:05:10 route-tubing"
            ),
        ]),
        ["step-too-early apply-reservoir-mask 10:05:00"]
    );
    assert_eq!(
        edited(&[
            ("10:02:20 inspect-outlet\n", ""),
            (
                "10:02:40 inspect-washer",
                "10:02:35 inspect-outlet\n10:02:40 inspect-washer"
            ),
        ]),
        ["step-too-early fit-regulator 10:02:30"]
    );
}

/// A bag is filled in a procedure for devices that have one. With a cannula it has no place.
#[test]
fn a_step_of_another_devices_procedure_is_out_of_place() {
    let cannula = MASK
        .replace("non-rebreather", "nasal-cannula")
        .replace("flow=15", "flow=2");
    let down = DOWN.replace("psi=1411", "psi=1920");
    let found = steps(&[READY, &cannula, OFF, &down].concat());
    assert_eq!(found, ["step-out-of-place apply-cannula 10:04:50"]);
}

/// What a procedure doesn't follow is told, whichever it is.
#[test]
fn a_procedure_that_does_not_follow_is_told() {
    // Everything put away, and then the mask once more, without a cylinder fetched or opened.
    let again = super::told::later(MASK, 20);
    let found = steps(&[READY, MASK, OFF, DOWN, &again].concat());
    assert!(
        found.contains(&"procedure-does-not-follow apply-reservoir-mask 10:24:00".to_owned()),
        "{found:#?}"
    );
}

/// A record that begins with a procedure which follows others begins in the middle: what was before is unknown, and not taken
/// to be as in the book.
#[test]
fn a_record_that_begins_in_the_middle_knows_nothing_of_before() {
    let found = adult(&[MASK, OFF, DOWN].concat()).found();
    assert!(
        found.iter().any(|found| found.starts_with("hazard-unknown ")),
        "{found:#?}"
    );
    let whole = adult(&[READY, MASK, OFF, DOWN].concat()).found();
    assert_eq!(whole, [""; 0]);
}

/// A step done before many that come first is too early once, at its own time.
#[test]
fn a_step_before_many_is_too_early_once() {
    let late = "10:05:01 explain-to-patient\n10:05:02 read-gauge psi=2000\n10:05:03 fill-reservoir\n10:05:10 route-tubing";
    let edits = [
        ("10:04:10 explain-to-patient\n", ""),
        ("10:04:30 read-gauge psi=2000\n", ""),
        ("10:04:50 fill-reservoir\n", ""),
        ("10:05:10 route-tubing", late),
    ];
    assert_eq!(edited(&edits), ["step-too-early apply-reservoir-mask 10:05:00"]);
}

/// No procedure of the book lays a cylinder down: nowhere is that wrong, nor does it hide what is.
#[test]
fn what_is_in_no_procedure_is_wrong_nowhere() {
    let down = "10:00:00 lay-cylinder-down\n";
    let ready = READY.replace("10:00:00", "10:00:01");
    assert_eq!(steps(&[down, &ready, MASK, OFF, DOWN].concat()), [""; 0]);
    assert_eq!(
        edited(&[(
            "10:05:40 write-down",
            "10:05:40 write-down\n10:05:50 lay-cylinder-down"
        )]),
        [""; 0]
    );
    // Begun in the middle after it, and the bag filled too late.
    let mask = MASK.replace("10:04:50 fill-reservoir\n", "").replace(
        "10:05:10 route-tubing",
        "10:05:05 fill-reservoir\n10:05:10 route-tubing",
    );
    assert_eq!(
        steps(&[down, &mask, OFF, DOWN].concat()),
        ["step-too-early apply-reservoir-mask 10:05:00"]
    );
}
