//! Gas drawn down between readings: a limit is told when it is reached, however it is written in the book, and however often
//! the record says something else meanwhile.
//!
//! When it is reached is found here by halving the time: what the equipment model's gas shows and how long it lasts
//! (tests/equipment and tests/oxygen hold both to CoolProp).

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Action, Cylinder, Rulebook};
use oxyfolio::check::duration::Supply;
use oxyfolio::check::review::{About, Event, Moment, Notes, Reviewer, Run};
use oxyfolio::compile::{compile, source::Sources};
use oxyfolio::equipment::Gas;
use oxyfolio::quantity::{Flow, Gauge, Percent, Pressure, Temperature, Time};

/// Until when a limit is kept.
#[derive(Clone, Copy)]
enum Limit {
    /// The gauge shows more than so many psi.
    Psi(f64),
    /// More than so many whole minutes are left.
    Minutes(u32),
}

/// Limits in every form a guard may have, each at another number: none is found because another is asked for.
const LIMITS: &[(&str, &str, Limit)] = &[
    ("at-most", "pressure <= 500 psi", Limit::Psi(500.0)),
    ("under", "pressure < 520 psi", Limit::Psi(520.0)),
    ("not-above", "not pressure > 540 psi", Limit::Psi(540.0)),
    ("within", "pressure in 0 to 560 psi", Limit::Psi(560.0)),
    ("policy", "pressure <= limit-pressure", Limit::Psi(580.0)),
    ("range", "pressure < limit-range.low", Limit::Psi(600.0)),
    ("top", "not pressure > limit-top.high", Limit::Psi(620.0)),
    ("within-policy", "pressure in limit-within", Limit::Psi(640.0)),
    ("minutes-at-most", "minutes left <= 15 min", Limit::Minutes(15)),
    (
        "minutes-within",
        "minutes left in 0 to 12 min",
        Limit::Minutes(12),
    ),
    (
        "minutes-policy",
        "minutes left <= limit-minutes",
        Limit::Minutes(9),
    ),
    (
        "minutes-range",
        "minutes left <= limit-times.low",
        Limit::Minutes(18),
    ),
    ("minutes-under", "minutes left < 22 min", Limit::Minutes(21)),
    // Of the patient and of the gas at once.
    (
        "patient-and-gas",
        "spo2 < 99 % and pressure <= 700 psi",
        Limit::Psi(700.0),
    ),
];

/// The demonstration's book with places written otherwise, and a chapter more.
fn edited(edits: &[(&str, &str)], chapter: String) -> Rulebook {
    let mut sources = Sources::default();
    for (name, text) in oxyfolio::CHAPTERS {
        // Its worked cases know nothing of what is new.
        let text = text.replace("```yaml case", "```text");
        let text = edits.iter().fold(text, |text, (old, new)| text.replace(old, new));
        sources.add((*name).into(), (*name).into(), text);
    }
    sources.add("15-limits.md".into(), "15-limits.md".into(), chapter);
    match compile(sources) {
        Ok(compiled) => compiled.book,
        Err(rejected) => panic!("{}", rejected.render(false)),
    }
}

fn book() -> Rulebook {
    let mut chapter = String::from("# Limits\n\n## Limits\n\nLimits in every form.\n\n```yaml policy\n");
    for (id, value) in [
        ("limit-pressure", "580 psi"),
        ("limit-range", "600 to 900 psi"),
        ("limit-top", "100 to 620 psi"),
        ("limit-within", "0 to 640 psi"),
        ("limit-minutes", "9 min"),
        ("limit-times", "18 to 60 min"),
    ] {
        chapter.push_str(&format!("- id: {id}\n  name: Limit\n  value: {value}\n"));
    }
    chapter.push_str("```\n\nWhy they matter.\n\n```yaml hazard\n");
    for (id, never, _) in LIMITS {
        chapter.push_str(&format!(
            "- id: {id}\n  name: Limit {id}\n  never: \"device on patient and {never}\"\n  severity: stop\n  \
             say: \"It is reached.\"\n  do: \"Change the cylinder.\"\n"
        ));
    }
    chapter.push_str("```\n");
    edited(&[], chapter)
}

/// A supply at a flow.
struct Drawn {
    cylinder: &'static Cylinder,
    temperature: Temperature,
    reading: Pressure<Gauge>,
    flow: Flow,
}

impl Drawn {
    fn of(size: &str, celsius: f64, psi: f64, litres_per_minute: f64) -> Self {
        Self {
            cylinder: RULEBOOK.cylinder(RULEBOOK.find_cylinder(size).unwrap()).unwrap(),
            temperature: Temperature::celsius(celsius).unwrap(),
            reading: Pressure::psi(psi).unwrap(),
            flow: Flow::litres_per_minute(litres_per_minute).unwrap(),
        }
    }

    fn after(&self, millis: i64) -> Pressure<Gauge> {
        let gas = Gas::new(self.cylinder.water_capacity, self.temperature, self.reading).unwrap();
        let time = Time::minutes(millis as f64 / 60_000.0).unwrap();
        gas.draw(self.flow, Flow::ZERO, time).pressure()
    }

    /// The milliseconds after which a limit is reached.
    fn reaches(&self, limit: Limit) -> i64 {
        let supply = Supply::of(&RULEBOOK, self.cylinder).temperature(self.temperature);
        let reached = |millis| match limit {
            Limit::Psi(psi) => self.after(millis) <= Pressure::psi(psi).unwrap(),
            Limit::Minutes(most) => supply.lasts(self.after(millis), self.flow).unwrap().minutes <= most,
        };
        let (mut early, mut late) = (0, 7_200_000);
        assert!(!reached(early) && reached(late));
        while late - early > 1 {
            let middle = i64::midpoint(early, late);
            if reached(middle) {
                late = middle
            } else {
                early = middle
            }
        }
        late
    }

    /// A record of a mask at this flow, with lines that change nothing at these milliseconds: now a look at the patient, now a
    /// cylinder secured once more.
    fn record(&self, lines: &[i64], last: i64) -> Vec<Event> {
        let line = |millis, action| Event {
            at: Some(Moment::new(millis, 0)),
            action: Some(action),
            ..Event::default()
        };
        let mut events = vec![Event {
            device: RULEBOOK.find_device("non-rebreather"),
            cylinder: RULEBOOK.find_cylinder(&self.cylinder.rule.id),
            pressure: Some(self.reading),
            flow: Some(self.flow),
            spo2: Some(Percent::new(98.0).unwrap()),
            ..line(0, Action::PlaceDevice)
        }];
        let looks = [Action::WatchPatient, Action::SecureCylinder];
        events.extend(
            lines
                .iter()
                .zip(looks.iter().cycle())
                .map(|(at, look)| line(*at, *look)),
        );
        events.push(line(last, Action::WorkOutMinutes));
        events
    }

    /// The milliseconds at which a review says each limit was reached.
    fn told(&self, book: &Rulebook, events: &[Event]) -> Vec<(&'static str, f64)> {
        let run = Run {
            group: RULEBOOK.find_group("adult"),
            conditions: Some(&[]),
            temperature: Some(self.temperature),
            events,
        };
        let mut told = Vec::new();
        Reviewer::new(book).review(&run, &mut Notes::default(), |finding| {
            let limit = LIMITS.iter().find(|(id, ..)| **id == *finding.rule.id);
            if let (About::Hazard { scene, .. }, Some((id, _, limit))) = (finding.about, limit) {
                let at = finding.from.unwrap().unix_millis();
                told.push((*id, at as f64));
                // What the gauge showed then is told with it.
                let shown = scene.pressure.unwrap().as_psi();
                let (truth, psi) = (self.after(at).as_psi(), self.reading.as_psi());
                assert!(
                    (shown - truth).abs() < 0.01,
                    "{id}: {shown} against {truth} psi, from {psi}"
                );
                if let (Limit::Psi(psi), false) = (limit, id.starts_with("patient")) {
                    assert!((shown - psi).abs() < 1.0, "{id}: {shown}");
                }
            }
        });
        told
    }
}

/// In the cold the factor tells how long the gas lasts, in the heat the density.
#[test]
fn a_limit_is_told_when_it_is_reached_however_it_is_written_and_whatever_else_is() {
    let book = book();
    for drawn in [
        Drawn::of("e", 20.0, 2000.0, 15.0),
        Drawn::of("e", -15.0, 1900.0, 10.0),
        Drawn::of("e", 50.0, 2000.0, 12.0),
        Drawn::of("d", 45.0, 2000.0, 6.0),
    ] {
        let truths: Vec<i64> = LIMITS.iter().map(|(_, _, limit)| drawn.reaches(*limit)).collect();
        let last = truths.iter().max().unwrap() + 120_000;
        // A line each seven seconds; one each 25 ms about the moments looked for; none at all.
        let often: Vec<i64> = (1..last / 7_000).map(|line| line * 7_000).collect();
        let mut closely: Vec<i64> = truths
            .iter()
            .flat_map(|truth| (-20..40).map(move |line| truth + line * 25))
            .collect();
        closely.sort_unstable();
        closely.dedup();
        for (lines, most) in [(often, 7_000.0), (closely, 25.0), (Vec::new(), last as f64)] {
            let told = drawn.told(&book, &drawn.record(&lines, last));
            assert_eq!(told.len(), LIMITS.len(), "{told:#?}");
            for (id, at) in told {
                let place = LIMITS.iter().position(|(limit, ..)| *limit == id).unwrap();
                let truth = truths[place] as f64;
                // Between two lines the moment is found by halving; what is of the patient too is seen at the line after.
                let late = if id.starts_with("patient") {
                    most
                } else {
                    most / 4_096.0
                };
                assert!(
                    at >= truth - 2.0 && at <= truth + late + 2.0,
                    "{id}, {} at {}, a line each {most} ms: {at} ms against {truth} ms",
                    drawn.cylinder.rule.name,
                    drawn.temperature
                );
            }
        }
    }
}

/// How far gauge and flowmeter may be off is the book's to say: each may make of a leak what is still within.
#[test]
fn what_gauge_and_flowmeter_may_be_off_is_the_books() {
    let (gauge, flow) = ("value: 50 psi\n", "value: 15 %\n");
    let uncertainty = |edits: &[(&str, &str)]| {
        let book = edited(edits, "# More\n".to_owned());
        let drawn = Drawn::of("e", 20.0, 2000.0, 15.0);
        let mut events = drawn.record(&[], 600_000);
        events[1].pressure = Some(Pressure::psi(300.0).unwrap());
        let run = Run {
            group: RULEBOOK.find_group("adult"),
            conditions: Some(&[]),
            temperature: Some(drawn.temperature),
            events: &events,
        };
        let mut told = None;
        Reviewer::new(&book).review(&run, &mut Notes::default(), |finding| {
            if let About::FellTooFast(mismatch) = finding.about {
                told = Some(mismatch.uncertainty);
            }
        });
        told.expect("far more than by the flow")
    };
    let as_it_is = uncertainty(&[]);
    // Twice as much for each gauge: the same again of what the gauges make, 0.11 of half of what the cylinder holds.
    let held = Gas::new(
        RULEBOOK
            .cylinder(RULEBOOK.find_cylinder("e").unwrap())
            .unwrap()
            .water_capacity,
        Temperature::celsius(20.0).unwrap(),
        Pressure::psi(2000.0).unwrap(),
    )
    .unwrap()
    .litres();
    let gauges = uncertainty(&[(gauge, "value: 100 psi\n")]) - as_it_is;
    assert!((gauges - 0.11 * held / 2.0).abs() < 0.01, "{gauges} of {held}");
    // Fifteen in a hundred more of 150 L.
    let flowmeter = uncertainty(&[(flow, "value: 30 %\n")]) - as_it_is;
    assert!((flowmeter - 22.5).abs() < 1e-6, "{flowmeter}");
}
