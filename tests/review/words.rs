//! What a finding of a review says by itself: its words, what the book advises, the line of the rule, how long it lasted.

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, Device, Hazard, Kind, Procedure, Rule, Target};
use oxyfolio::check::Level;
use oxyfolio::check::review::{
    About, Fault, Field, Finding, Mismatch, Moment, NotRecorded, Scene, Unreadable,
};
use oxyfolio::equipment::State;
use oxyfolio::quantity::{Flow, Percent, Pressure, PressureUnit};

fn finding<'b>(rule: &'b Rule, about: About<'b>) -> Finding<'b> {
    Finding {
        level: Level::Warn,
        kind: Kind::Agency,
        rule,
        about,
        event: None,
        from: None,
        until: None,
        pressure_unit: PressureUnit::Psi,
    }
}

fn device(id: &str) -> &'static Device {
    RULEBOOK.device(RULEBOOK.find_device(id).unwrap()).unwrap()
}

fn target(id: &str) -> &'static Target {
    RULEBOOK
        .targets
        .iter()
        .find(|target| *target.rule.id == *id)
        .unwrap()
}

fn hazard(id: &str) -> &'static Hazard {
    RULEBOOK
        .hazards
        .iter()
        .find(|hazard| *hazard.rule.id == *id)
        .unwrap()
}

fn procedure(id: &str) -> &'static Procedure {
    let of = |procedure: &&Procedure| *procedure.rule.id == *id;
    RULEBOOK.procedures.iter().find(of).unwrap()
}

fn psi(value: f64) -> Pressure<oxyfolio::quantity::Gauge> {
    Pressure::psi(value).unwrap()
}

const NO_SCENE: Scene<'static> = Scene {
    device: None,
    on_patient: None,
    flow: None,
    open: None,
    pressurised: None,
    pressure: None,
};

/// Everything that may not have been recorded: its name for programs, and what could not be checked for want of it.
#[test]
fn what_was_not_recorded_has_a_name_and_words() {
    let agency = &RULEBOOK.agency.rule;
    for (what, code, words) in [
        (
            NotRecorded::Events,
            "events-not-recorded",
            "the run has no events",
        ),
        (
            NotRecorded::Actions,
            "actions-not-recorded",
            "no event says what was done",
        ),
        (NotRecorded::Times, "times-not-recorded", "times are missing"),
        (
            NotRecorded::Group,
            "group-not-recorded",
            "the patient's group was not recorded",
        ),
        (
            NotRecorded::Conditions,
            "conditions-not-recorded",
            "the patient's conditions were not recorded",
        ),
        (
            NotRecorded::MinuteOfLife,
            "minute-of-life-not-recorded",
            "the minutes of life",
        ),
        (
            NotRecorded::Target,
            "no-target",
            "the book has none, or more than one",
        ),
        (
            NotRecorded::Device,
            "device-not-recorded",
            "the device on the patient was not recorded",
        ),
        (
            NotRecorded::Flow,
            "flow-not-recorded",
            "the flow to the patient was not recorded",
        ),
        (
            NotRecorded::Cylinder,
            "cylinder-not-recorded",
            "the cylinder's size was not recorded",
        ),
        (
            NotRecorded::Pressure,
            "pressure-not-recorded",
            "no gauge reading was recorded",
        ),
        (
            NotRecorded::Spo2,
            "saturation-not-recorded",
            "no saturation was recorded on oxygen",
        ),
        (
            NotRecorded::Temperature,
            "temperature-not-recorded",
            "gas is reckoned at 21 °C",
        ),
        (
            NotRecorded::Reservoir,
            "reservoir-not-recorded",
            "whether the bag was filled",
        ),
        (
            NotRecorded::End,
            "end-not-recorded",
            "whether the equipment was left safe",
        ),
        (
            NotRecorded::Density,
            "density-not-known",
            "from -40 to 60 °C and to 300 bar only",
        ),
    ] {
        let found = finding(agency, About::NotRecorded(what));
        assert_eq!(found.code(), code);
        assert!(found.to_string().contains(words), "{code}: {found}");
        assert_eq!(found.remedy(), None);
    }
}

/// What to do is the book's: for too little what it says of too little, for a step what the step is for.
#[test]
fn the_advice_is_the_books() {
    let (mask, adult) = (device("non-rebreather"), target("adult-general"));
    let (flow, range, spo2) = (Flow::ZERO, mask.flow, Percent::new(90.0).unwrap());
    let aim = match adult.saturation {
        oxyfolio::book::Saturation::Range(range) => range,
        oxyfolio::book::Saturation::NotReliable => panic!("adults have a range"),
    };
    let fit = procedure("fit-regulator");
    let step = |id: &str| fit.steps.iter().find(|step| *step.id == *id).unwrap();
    let (zero, open) = (step("zero"), step("open"));
    assert!(zero.line > fit.rule.place.line && open.line > zero.line);
    let empty = hazard("nearly-empty");
    // Nothing flows before the regulator is on an open cylinder.
    let refused = State::beginning(&fit.begins_with)
        .after(Action::SetFlow)
        .unwrap_err();
    for (rule, about, remedy, line) in [
        (
            &mask.rule,
            About::FlowTooLow {
                device: mask,
                flow,
                range,
            },
            Some(&*mask.too_low),
            None,
        ),
        (
            &mask.rule,
            About::FlowTooHigh {
                device: mask,
                flow,
                range,
            },
            Some(&*mask.too_high),
            None,
        ),
        (
            &adult.rule,
            About::TargetMissed {
                spo2,
                target: adult,
                range: aim,
            },
            Some(&*adult.step_up),
            None,
        ),
        (
            &adult.rule,
            About::TargetExceeded {
                spo2,
                target: adult,
                range: aim,
            },
            Some(&*adult.step_down),
            None,
        ),
        (
            &empty.rule,
            About::Hazard {
                hazard: empty,
                scene: NO_SCENE,
            },
            Some(&*empty.remedy),
            None,
        ),
        // Why the step comes first, at the line of the step that came too early.
        (
            &fit.rule,
            About::TooEarly {
                procedure: fit,
                step: open,
                first: zero,
            },
            Some(&*zero.why),
            Some(open.line),
        ),
        (
            &fit.rule,
            About::Skipped {
                procedure: fit,
                step: zero,
                already_so: false,
            },
            Some(&*zero.why),
            Some(zero.line),
        ),
        (
            &fit.rule,
            About::Refused {
                action: Action::SetFlow,
                refusal: refused,
            },
            None,
            None,
        ),
    ] {
        let found = finding(rule, about);
        assert_eq!(found.remedy(), remedy, "{}", found.code());
        assert_eq!(found.line(), line.unwrap_or(rule.place.line), "{}", found.code());
        assert!(found.line() > 1 && remedy != Some(""));
    }
}

#[test]
fn how_long_it_lasted_is_told_where_both_ends_are_known() {
    let mut found = finding(&RULEBOOK.agency.rule, About::Record(Fault::OutOfOrder));
    assert_eq!(found.minutes(), None);
    found.from = Some(Moment::new(0, 0));
    assert_eq!(found.minutes(), None);
    found.until = Some(Moment::new(150_000, 0));
    assert_eq!(found.minutes(), Some(2.5));
    found.from = None;
    assert_eq!(found.minutes(), None);
}

/// A hazard is told with what the equipment was like: what is known of it, and what isn't.
#[test]
fn a_hazard_is_told_with_its_scene() {
    let empty = hazard("nearly-empty");
    let said = |scene: Scene<'static>, unit: PressureUnit| {
        let mut found = finding(&empty.rule, About::Hazard { hazard: empty, scene });
        found.pressure_unit = unit;
        let words = found.to_string();
        assert!(words.starts_with(&*empty.say), "{words}");
        words[empty.say.len()..].to_owned()
    };
    let whole = Scene {
        device: Some(device("non-rebreather")),
        on_patient: Some(true),
        flow: Some(Flow::litres_per_minute(15.0).unwrap()),
        open: Some(true),
        pressurised: Some(true),
        pressure: Some(psi(199.6)),
    };
    assert_eq!(
        said(whole, PressureUnit::Psi),
        " (non-rebreather mask on the patient, flow 15 L/min, valve open, regulator under pressure, about 200 psi)"
    );
    // 199.6 psi are 13.76 bar.
    assert!(said(whole, PressureUnit::Bar).ends_with(", about 13.8 bar)"));
    assert!(said(whole, PressureUnit::Mpa).ends_with(", about 1.38 MPa)"));
    assert_eq!(
        said(NO_SCENE, PressureUnit::Psi),
        " (no device known, on the patient or not, flow not known, valve not known)"
    );
    let off = Scene {
        on_patient: Some(false),
        open: Some(false),
        pressurised: Some(false),
        ..NO_SCENE
    };
    assert_eq!(
        said(off, PressureUnit::Psi),
        " (no device known not on the patient, flow not known, valve closed, regulator without pressure)"
    );
}

/// A leak is what more was used, over the time; none is told for a pressure that fell too slowly, or in no time.
#[test]
fn a_leak_is_what_more_was_used_over_the_time() {
    let e = RULEBOOK.cylinder(RULEBOOK.find_cylinder("e").unwrap()).unwrap();
    let mismatch = |used: f64, expected: f64, minutes: f64| Mismatch {
        cylinder: e,
        before: psi(2000.0),
        after: psi(1000.0),
        minutes,
        used,
        expected,
        uncertainty: 40.0,
        would_fit: None,
    };
    for (used, expected, minutes, leak) in [
        (280.0, 180.0, 20.0, Some((5.0, 2.0))),
        (180.0, 180.0, 20.0, None),
        (100.0, 180.0, 20.0, None),
        (-41.0, 180.0, 20.0, None),
        (280.0, 180.0, 0.0, None),
    ] {
        assert_eq!(
            mismatch(used, expected, minutes).leak(),
            leak,
            "{used} L, {minutes} min"
        );
    }
    let said = |mismatch| finding(&e.rule, About::FellTooSlow(mismatch)).to_string();
    // Numbers to the nearest, those below zero too.
    let words = said(mismatch(-40.6, 179.5, 20.4));
    for part in [
        "in 20 min",
        "-41 L of a E were used",
        "by the flow 180 L",
        "may differ by 40 L",
    ] {
        assert!(words.contains(part), "{part}: {words}");
    }
    assert!(
        words.ends_with("a cylinder changed or a flow not given all the time"),
        "{words}"
    );
}

#[test]
fn what_could_not_be_read_stays_so_however_often_it_is_said() {
    let none = Unreadable::default();
    let flow = none.with(Field::Flow);
    assert!(!none.has(Field::Flow) && flow.has(Field::Flow) && !flow.has(Field::Spo2));
    let both = flow.with(Field::Spo2).with(Field::Flow);
    assert!(both.has(Field::Flow) && both.has(Field::Spo2) && !both.has(Field::At));
}

/// Against a general-purpose calendar (jiff): the first and the last day of each month of a thousand years, east and west.
#[test]
fn moments_are_printed_by_the_calendar() {
    assert!(Moment::new(60_000, 0).is_whole_minute() && Moment::new(-60_000, 0).is_whole_minute());
    assert!(!Moment::new(61_000, 0).is_whole_minute() && !Moment::new(60_001, 90).is_whole_minute());
    let mut days = 0;
    for year in 1590_i16..=2610 {
        for month in 1_i8..=12 {
            let first = jiff::civil::date(year, month, 1);
            for date in [first, first.last_of_month()] {
                for offset in [0_i8, 11, -9] {
                    let at = date.at(23, 59, 59, 0);
                    let timestamp = jiff::tz::offset(offset).to_timestamp(at).unwrap();
                    let moment = Moment::new(timestamp.as_millisecond(), i16::from(offset) * 60);
                    let sign = match offset {
                        0 => "Z".to_owned(),
                        east if east > 0 => format!("+{east:02}:00"),
                        west => format!("-{:02}:00", -west),
                    };
                    assert_eq!(moment.to_string(), format!("{date}T23:59:59{sign}"));
                    assert_eq!(moment.month(), (i64::from(year), u8::try_from(month).unwrap()));
                    days += 1;
                }
            }
        }
    }
    assert_eq!(days, 1021 * 12 * 2 * 3);
}
