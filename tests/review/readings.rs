//! Two gauge readings and the flow between them: how far they may differ, which size would explain it, when the gas ended, and
//! what a gauge says of which cylinder. The sums are made here from what the equipment model says a cylinder holds and from the
//! table of tolerances in the review's documentation.

use oxyfolio::RULEBOOK;
use oxyfolio::book::Cylinder;
use oxyfolio::check::review::{About, Mismatch};
use oxyfolio::equipment::Gas;
use oxyfolio::quantity::{Pressure, Temperature};

use super::told::{Written, adult};
use super::worked::{READY, with};

fn size(id: &str) -> &'static Cylinder {
    RULEBOOK.cylinder(RULEBOOK.find_cylinder(id).unwrap()).unwrap()
}

fn litres(cylinder: &Cylinder, celsius: f64, psi: f64) -> f64 {
    let (at, reading) = (
        Temperature::celsius(celsius).unwrap(),
        Pressure::psi(psi).unwrap(),
    );
    Gas::new(cylinder.water_capacity, at, reading).unwrap().litres()
}

/// The one mismatch of a run.
fn mismatch(written: &Written) -> Option<(&'static str, Mismatch<'static>)> {
    let mut found = None;
    let (mut first, mut notes) = (true, oxyfolio::check::review::Notes::default());
    let run = oxyfolio::check::review::Run {
        group: written.group,
        conditions: written.conditions.as_deref(),
        temperature: written
            .celsius
            .map(|celsius| Temperature::celsius(celsius).unwrap()),
        events: &written.events,
    };
    oxyfolio::check::review::Reviewer::new(&RULEBOOK).review(&run, &mut notes, |finding| {
        if let About::FellTooFast(mismatch) | About::FellTooSlow(mismatch) = finding.about {
            assert!(first, "two of them");
            first = false;
            found = Some((finding.code(), mismatch));
        }
    });
    found
}

/// Everything that may be off is added up: both gauges, the flowmeter, the clock, the temperature.
#[test]
fn how_far_two_readings_may_differ_is_the_sum_of_what_may_be_off() {
    let e = size("e");
    // A time to the second is right to five, one to the minute to half a minute, at both ends.
    let (seconds, minute) = (2.0 * 5.0 / 60.0, 2.0 * 0.5);
    for (from, until, celsius, clock) in [
        ("10:00:00", "10:11:00", Some(20.0), minute),
        ("10:00:00", "10:11:01", Some(20.0), seconds),
        ("10:00:01", "10:11:00", Some(20.0), seconds),
        ("10:00:01", "10:11:01", Some(20.0), seconds),
        ("10:00:01", "10:11:01", None, seconds),
        ("10:00:00", "10:11:00", Some(45.0), minute),
    ] {
        // Fifteen litres for the most part of it, then six: it is the fifteen that half a minute makes much of.
        let mut written = adult(&format!(
            "{from} device=non-rebreather cylinder=e psi=2000 flow=15\n10:10:30 flow=6\n{until} psi=1000"
        ));
        written.celsius = celsius;
        let (code, found) = mismatch(&written).expect("more than by the flow");
        assert_eq!(code, "pressure-fell-too-fast");
        let begun = if from.ends_with('1') {
            10.5 - 1.0 / 60.0
        } else {
            10.5
        };
        let end = if until.ends_with('1') {
            0.5 + 1.0 / 60.0
        } else {
            0.5
        };
        let expected = begun * 15.0 + end * 6.0;
        assert!(
            (found.expected - expected).abs() < 1e-9,
            "{} against {expected}",
            found.expected
        );
        assert!((found.minutes - begun - end).abs() < 1e-9);
        let at = celsius.unwrap_or(21.0);
        let held = litres(e, at, 2000.0);
        let used = held - litres(e, at, 1000.0);
        assert!((found.used - used).abs() < 0.01, "{} against {used}", found.used);
        // Two gauges, 50 psi each; where the cylinder gains most, a tenth more than on the average.
        let gauges = 2.0 * 50.0 / 2000.0 * held * 1.1;
        let temperature = if celsius.is_some() { 0.02 } else { 0.15 } * used;
        let sum = gauges + 0.15 * expected + 15.0 * clock + temperature;
        assert!(
            (found.uncertainty - sum).abs() < 0.01,
            "{from} {until}: {} against {sum}",
            found.uncertainty
        );
        let (leak, about) = found.leak().expect("a leak");
        assert!((leak - (used - expected) / found.minutes).abs() < 0.01);
        assert!((about - sum / found.minutes).abs() < 0.01);
    }
}

/// Just within what may be off nothing is told, just beyond it is: too fast on the one side, too slow on the other.
#[test]
fn within_the_tolerance_nothing_is_told() {
    let e = size("e");
    let held = litres(e, 20.0, 2000.0);
    let expected = 15.0 * 20.0;
    for (after, told) in [(500, true), (2050, true), (930, false)] {
        let text =
            format!("10:00:30 device=non-rebreather cylinder=e psi=2000 flow=15\n10:20:30 psi={after}");
        let used = held - litres(e, 20.0, f64::from(after));
        let sum = 0.11 * held / 2.0 * 1.0 + 0.15 * expected + 15.0 * 10.0 / 60.0 + 0.02 * used.abs();
        let found = mismatch(&adult(&text));
        let beyond = used - expected;
        assert_eq!(beyond.abs() > sum, told, "{after}: {beyond} with {sum}");
        let code = match (told, beyond > 0.0) {
            (false, _) => None,
            (true, true) => Some("pressure-fell-too-fast"),
            (true, false) => Some("pressure-fell-too-slow"),
        };
        assert_eq!(found.map(|(code, _)| code), code, "{after} psi");
    }
    // Every reading from nothing to full: told exactly where the sum is passed.
    let mut told = 0;
    for after in (100..=2100).step_by(10) {
        let text =
            format!("10:00:30 device=non-rebreather cylinder=e psi=2000 flow=15\n10:20:30 psi={after}");
        let used = held - litres(e, 20.0, f64::from(after));
        let sum = 0.11 * held / 2.0 + 0.15 * expected + 2.5 + 0.02 * used.abs();
        let beyond = (used - expected).abs() > sum;
        assert_eq!(
            mismatch(&adult(&text)).is_some(),
            beyond,
            "{after} psi: {used}, {sum}"
        );
        told += u32::from(beyond);
    }
    assert!((20..180).contains(&told), "{told}");
}

/// The size that would explain it, where one does: the nearest, never the one written down.
#[test]
fn the_size_that_would_fit_is_the_nearest_of_the_book() {
    let fits = |id: &str, flow: u32, after: u32| {
        let text = format!(
            "10:00:30 device=non-rebreather cylinder={id} psi=2000 flow={flow}\n10:20:30 psi={after}"
        );
        let (code, found) = mismatch(&adult(&text))?;
        Some((code, found.would_fit.map(|size| &*size.rule.id)))
    };
    // 200 L: from a D 1250 psi, from a G 83, from an M 128.
    assert_eq!(fits("e", 10, 750), Some(("pressure-fell-too-fast", Some("d"))));
    assert_eq!(fits("d", 10, 1872), Some(("pressure-fell-too-slow", Some("m"))));
    // 300 L are 1875 psi of a D; 100 L are of no size's: from a metric 1 L cylinder they would be more than all.
    assert_eq!(fits("e", 15, 100), Some(("pressure-fell-too-fast", Some("d"))));
    assert_eq!(fits("e", 5, 100), Some(("pressure-fell-too-fast", None)));
    // A pressure that rose is no size's.
    assert_eq!(fits("e", 15, 2100), Some(("pressure-fell-too-slow", None)));
    // Of every reading: each size by its own gas and gauges, with the same flowmeter and clock.
    let (expected, mut told) = (300.0, 0);
    for after in (0..=2100).step_by(50) {
        let Some((_, found)) = fits("e", 15, after) else {
            continue;
        };
        let off = |size: &Cylinder| {
            let held = litres(size, 20.0, 2000.0);
            let used = held - litres(size, 20.0, f64::from(after));
            let may = 0.11 * held / 2.0 + 0.02 * used.abs() + 0.15 * expected + 2.5;
            let off = (used - expected).abs();
            (off <= may).then_some(off)
        };
        let nearest = RULEBOOK
            .cylinders
            .iter()
            .filter(|size| *size.rule.id != *"e")
            .filter_map(|size| Some((off(size)?, &*size.rule.id)))
            .min_by(|one, other| one.0.total_cmp(&other.0));
        assert_eq!(found, nearest.map(|(_, id)| id), "{after} psi");
        told += 1;
    }
    assert!(told > 20, "{told}");
}

/// A small gauge near its end: nothing is told of the last few psi.
#[test]
fn near_nothing_a_gauge_says_nothing() {
    let low = |before: u32, after: u32| {
        mismatch(&adult(&format!(
            "10:00:30 device=nasal-cannula cylinder=e psi={before} flow=1\n10:01:30 psi={after}"
        )))
        .map(|(code, _)| code)
    };
    assert_eq!(low(40, 0), None);
    assert_eq!(low(50, 0), None);
    assert_eq!(low(400, 0), Some("pressure-fell-too-fast"));
}

/// When the gas ended, by the flow at the end; where that was off already, by the flow before.
#[test]
fn how_long_ago_the_gas_ended_goes_by_the_flow_at_the_end() {
    let short = |change: &str| {
        let written = with(&[
            ("cylinder=e", "cylinder=d"),
            ("psi=2000", "psi=1000"),
            ("10:17:30 read-gauge psi=1411", "10:17:30 read-gauge"),
            (
                "10:15:00 assess-patient",
                &format!("{change}10:15:00 assess-patient"),
            ),
        ]);
        written
            .review(|finding| match finding.about {
                About::WouldRunOut { short, .. } => Some(short.as_minutes()),
                _ => None,
            })
            .into_iter()
            .flatten()
            .next()
    };
    // 1000 psi are 128 L above the residual by the factor, and no more by density. To 10:15:30 10 min 50 s at 15 L/min: 162.5 L,
    // less a little by density; 34.5 L too many are two minutes at fifteen.
    assert_eq!(short(""), Some(2.0));
    // From 10:14:30 on five: 152.5 L and 24.5 L too many, nearly five minutes.
    assert_eq!(short("10:14:30 set-flow flow=5\n"), Some(5.0));
    // Turned off at 10:14:50, with the mask still on: 152.5 L by then.
    assert_eq!(short("10:14:50 zero-flow\n"), Some(1.0));
}

/// A record that ends with the mask on ends with the gas, too; one with the mask off doesn't.
#[test]
fn a_record_that_ends_on_the_patient_is_asked_whether_the_gas_ended() {
    let run_out = |last: &str| {
        let text = format!("10:00:00 device=non-rebreather cylinder=d psi=1000 flow=15\n10:20:00 {last}");
        let found = adult(&text).found();
        found
            .iter()
            .filter(|found| found.starts_with("would-run-out"))
            .count()
    };
    assert_eq!(run_out("spo2=96"), 1);
    assert_eq!(run_out("psi=300"), 0);
}

/// A gauge on a cylinder just fetched, or on one that is closed, says nothing of it; one that is read as the valve is opened, or
/// before it is closed, does.
#[test]
fn a_gauge_says_something_of_an_open_cylinder_only() {
    let too = |edits: &[(&str, &str)]| {
        let found = with(edits).found();
        found
            .into_iter()
            .filter(|found| found.starts_with("pressure-fell"))
            .collect::<Vec<_>>()
    };
    assert_eq!(
        too(&[("fetch-cylinder cylinder=e", "fetch-cylinder cylinder=e psi=700")]),
        [""; 0]
    );
    assert_eq!(too(&[("check-pins", "check-pins psi=700")]), [""; 0]);
    // Opened with a reading, and none until the end.
    let opened = ("10:03:30 open-cylinder", "10:03:30 open-cylinder psi=2000");
    let unread = [
        ("10:03:50 read-gauge psi=2000", "10:03:50 read-gauge"),
        ("10:04:30 read-gauge psi=2000", "10:04:30 read-gauge"),
    ];
    let leak = ("10:17:30 read-gauge psi=1411", "10:17:30 read-gauge psi=1000");
    assert_eq!(
        too(&[opened, unread[0], unread[1], leak]),
        ["pressure-fell-too-fast e 10:17:30"]
    );
    // Read while it is closed.
    let closing = [
        ("10:17:30 read-gauge psi=1411", "10:17:30 read-gauge"),
        ("10:17:40 close-cylinder", "10:17:40 close-cylinder psi=1000"),
    ];
    assert_eq!(too(&closing), ["pressure-fell-too-fast e 10:17:40"]);
    let closed = [
        ("10:17:30 read-gauge psi=1411", "10:17:30 read-gauge"),
        ("10:17:50 bleed-regulator", "10:17:50 bleed-regulator psi=0"),
    ];
    assert_eq!(too(&closed), [""; 0]);
}

/// Below the residual pressure with the mask on is told once, at the reading; at it, or with the mask off, not at all.
#[test]
fn below_the_residual_is_told_once_and_on_the_patient() {
    let told = |line: &str, psi: u32| {
        let line = format!("{line} psi={psi}");
        let text = format!("{READY}{}\n{line}", super::worked::MASK);
        let found = adult(&text).found();
        found
            .into_iter()
            .filter(|found| found.starts_with("below-residual"))
            .collect::<Vec<_>>()
    };
    assert_eq!(
        told("10:06:00 read-gauge", 199),
        ["below-residual residual-pressure 10:06:00"]
    );
    assert_eq!(told("10:06:00 read-gauge", 200), [""; 0]);
    assert_eq!(told("10:06:00 remove-device\n10:06:10 read-gauge", 199), [""; 0]);
}

/// A reading outranks the sum, up and down; and a reading alone, without a size, is enough to say that the cylinder is due.
#[test]
fn a_new_reading_is_what_counts() {
    let due = |text: &str| {
        let mut found = adult(text).found();
        found.retain(|found| found.starts_with("hazard change-over-due"));
        found
    };
    let line = "10:00:00 device=nasal-cannula flow=2";
    assert_eq!(
        due(&format!(
            "{line} cylinder=e psi=400\n10:01:00 psi=2000\n10:02:00 spo2=96"
        )),
        ["hazard change-over-due 10:00:00 10:01:00"]
    );
    assert_eq!(
        due(&format!("{line} psi=2000\n10:01:00 psi=450\n10:02:00 psi=2000")),
        ["hazard change-over-due 10:01:00 10:02:00"]
    );
    // What the sum brought is told, though the line after it can't be read.
    for unread in ["psi=?", "flow=?", "device=?", "do=?"] {
        let found = due(&format!(
            "10:00:00 device=non-rebreather flow=15 cylinder=d psi=1000\n10:15:00 {unread}\n10:16:00 psi=2000"
        ));
        assert!(
            found.len() == 1 && found[0].starts_with("hazard change-over-due 10:05:"),
            "{unread}: {found:#?}"
        );
    }
    // At nothing on the gauge there is no pressure to hold a regulator fast.
    let off = |psi: u32| {
        let found = adult(&format!(
            "10:00:00 read-gauge psi={psi}\n10:01:00 close-cylinder\n10:01:00 remove-regulator"
        ))
        .found();
        found.iter().any(|found| found.starts_with("step-refused"))
    };
    assert!(off(100) && !off(0));
}
