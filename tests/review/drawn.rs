//! Gas drawn down between readings: a limit is told when it is reached, however it is written in the book, and however often
//! the record says something else meanwhile.
//!
//! When it is reached is found here by looking at every second: what the equipment model's gas shows and how long it lasts
//! (tests/equipment and tests/oxygen hold both to CoolProp).

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Cylinder, Rulebook};
use oxyfolio::check::duration::Supply;
use oxyfolio::check::review::{About, Notes, Reviewer, Run};
use oxyfolio::compile::{compile, source::Sources};
use oxyfolio::equipment::Gas;
use oxyfolio::quantity::{Flow, Pressure, Temperature, Time};

use super::told::{Written, adult};

/// Limits of 500 psi and 15 minutes in every form a guard may have; one chapter added to the demonstration's book.
const LIMITS: &[(&str, &str)] = &[
    ("pressure-at-most", "device on patient and pressure <= 500 psi"),
    ("pressure-under", "device on patient and pressure < 500 psi"),
    (
        "pressure-not-above",
        "device on patient and not pressure > 500 psi",
    ),
    (
        "pressure-within",
        "device on patient and pressure in 0 to 500 psi",
    ),
    (
        "pressure-policy",
        "device on patient and pressure <= change-over-pressure",
    ),
    (
        "pressure-range",
        "device on patient and pressure < limit-range.low",
    ),
    (
        "pressure-top",
        "device on patient and not pressure > limit-top.high",
    ),
    ("minutes-at-most", "device on patient and minutes left <= 15 min"),
    (
        "minutes-within",
        "device on patient and minutes left in 0 to 15 min",
    ),
    (
        "minutes-policy",
        "device on patient and minutes left <= call-ahead-time",
    ),
    (
        "minutes-range",
        "device on patient and minutes left <= limit-minutes.low",
    ),
    ("minutes-under", "device on patient and minutes left < 16 min"),
    // Of the patient and of the gas at once.
    (
        "patient-and-gas",
        "device on patient and spo2 < 99 % and pressure <= 500 psi",
    ),
];

fn book() -> Rulebook {
    let mut sources = Sources::default();
    for (name, text) in oxyfolio::CHAPTERS {
        // Its worked cases know nothing of these limits.
        let text = text.replace("```yaml case", "```text");
        sources.add((*name).into(), (*name).into(), text);
    }
    let mut chapter = String::from(
        "# Limits\n\n## Limits\n\nLimits in every form.\n\n```yaml policy\n\
        - id: limit-range\n  name: Limit\n  value: 500 to 900 psi\n\
        - id: limit-top\n  name: Limit\n  value: 100 to 500 psi\n\
        - id: limit-minutes\n  name: Limit\n  value: 15 to 20 min\n```\n\nWhy it matters.\n\n```yaml hazard\n",
    );
    for (id, never) in LIMITS {
        chapter.push_str(&format!(
            "- id: {id}\n  name: Limit {id}\n  never: \"{never}\"\n  severity: stop\n  say: \"It is reached.\"\n  \
             do: \"Change the cylinder.\"\n"
        ));
    }
    chapter.push_str("```\n");
    sources.add("15-limits.md".into(), "15-limits.md".into(), chapter);
    match compile(sources) {
        Ok(compiled) => compiled.book,
        Err(rejected) => panic!("{}", rejected.render(false)),
    }
}

/// A line each seven seconds that changes nothing: now a look at the patient, now a cylinder secured once more.
fn busy(seconds: u32) -> String {
    (1..seconds / 7)
        .map(|line| {
            let at = line * 7;
            let what = if line % 2 == 0 {
                "watch-patient"
            } else {
                "secure-cylinder"
            };
            format!(
                "{:02}:{:02}:{:02} {what}\n",
                10 + at / 3600,
                at / 60 % 60,
                at % 60
            )
        })
        .collect()
}

/// When each limit was reached, in seconds since the mask was on; by its rule.
fn reached(book: &Rulebook, written: &Written) -> Vec<(String, f64)> {
    let run = Run {
        group: written.group,
        conditions: written.conditions.as_deref(),
        temperature: written
            .celsius
            .map(|celsius| Temperature::celsius(celsius).unwrap()),
        events: &written.events,
    };
    let begin = written.events[0].at.unwrap();
    let mut all = Vec::new();
    Reviewer::new(book).review(&run, &mut Notes::default(), |finding| {
        if let About::Hazard { .. } = finding.about
            && LIMITS.iter().any(|(id, _)| *id == &*finding.rule.id)
        {
            let seconds = finding.from.unwrap().minutes_since(begin) * 60.0;
            all.push((finding.rule.id.to_string(), seconds));
        }
    });
    all
}

/// The seconds after which the gauge shows no more than 500 psi, and 15 minutes or fewer are left.
fn truth(cylinder: &Cylinder, celsius: f64, psi: f64, litres_per_minute: f64) -> (u32, u32) {
    let temperature = Temperature::celsius(celsius).unwrap();
    let flow = Flow::litres_per_minute(litres_per_minute).unwrap();
    let gas = Gas::new(cylinder.water_capacity, temperature, Pressure::psi(psi).unwrap()).unwrap();
    let supply = Supply::of(&RULEBOOK, cylinder).temperature(temperature);
    let after = |seconds: u32| {
        let time = Time::minutes(f64::from(seconds) / 60.0).unwrap();
        gas.draw(flow, Flow::ZERO, time).pressure()
    };
    let first = |holds: &dyn Fn(Pressure<_>) -> bool| (0..7200).find(|second| holds(after(*second))).unwrap();
    (
        first(&|reading| reading <= Pressure::psi(500.0).unwrap()),
        first(&|reading| supply.lasts(reading, flow).unwrap().minutes <= 15),
    )
}

#[test]
fn a_limit_is_told_at_the_second_however_it_is_written_and_whatever_else_is() {
    let book = book();
    // In the cold the factor tells how long the gas lasts, in the heat the density.
    for (size, celsius, psi, litres) in [
        ("e", 20.0, 2000.0, 15.0),
        ("e", -15.0, 1900.0, 10.0),
        ("e", 50.0, 2000.0, 12.0),
        ("d", 45.0, 2000.0, 6.0),
    ] {
        let cylinder = &RULEBOOK.cylinders[RULEBOOK.find_cylinder(size).unwrap().index()];
        let (low, short) = truth(cylinder, celsius, psi, litres);
        let last = low.max(short) + 120;
        for busy in [true, false] {
            let lines = if busy { self::busy(last) } else { String::new() };
            let mut written = adult(&format!(
                "10:00:00 place-device device=non-rebreather cylinder={size} flow={litres} psi={psi} spo2=98\n{lines}\
                 {:02}:{:02}:{:02} work-out-minutes",
                10 + last / 3600,
                last / 60 % 60,
                last % 60
            ));
            written.celsius = Some(celsius);
            let found = reached(&book, &written);
            assert_eq!(found.len(), LIMITS.len(), "{size}, {celsius} °C: {found:#?}");
            for (id, seconds) in found {
                let truth = f64::from(if id.starts_with("minutes") { short } else { low });
                // What is of the patient too is seen at the line after, like everything that is not of the gas alone.
                let (early, late) = match (id.as_str(), busy) {
                    ("patient-and-gas", true) => (-1.0, 7.01),
                    ("patient-and-gas", false) => (-1.0, f64::from(last) - truth + 0.01),
                    (_, true) => (-1.01, 0.01),
                    (_, false) => (-1.01, 0.6),
                };
                let off = seconds - truth;
                assert!(
                    off >= early && off <= late,
                    "{id}, {size}, {celsius} °C, busy {busy}: {seconds} against {truth}"
                );
            }
        }
    }
}
