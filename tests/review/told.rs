//! Runs written as short text, and findings as short lines, so that a test can be read.
//!
//! An event is a line: the time, what was done, then `key=value`. `14:05:00 set-flow flow=15 device=non-rebreather`. What could
//! not be read is `flow=?`.

use oxyfolio::book::{Action, ConditionId, GroupId};
use oxyfolio::check::review::{Event, Field, Finding, Moment, Notes, Reviewer, Run};
use oxyfolio::quantity::{Flow, Percent, Pressure, Temperature};
use oxyfolio::{RULEBOOK, hazard};

/// A run with what stands above its events.
pub struct Written {
    pub group: Option<GroupId>,
    pub conditions: Option<Vec<ConditionId>>,
    pub celsius: Option<f64>,
    pub events: Vec<Event>,
}

/// An adult without conditions at 20 °C.
pub fn adult(events: &str) -> Written {
    Written {
        group: RULEBOOK.find_group("adult"),
        conditions: Some(Vec::new()),
        celsius: Some(20.0),
        events: events
            .lines()
            .map(str::trim)
            .filter(|line| !line.is_empty())
            .map(event)
            .collect(),
    }
}

/// Milliseconds of the day of a time.
fn millis(time: &str) -> i64 {
    let parts: Vec<i64> = time
        .split(':')
        .map(|part| part.parse().expect("a number"))
        .collect();
    let [hour, minute, second] = parts[..] else {
        panic!("expected HH:MM:SS, found {time}")
    };
    ((hour * 60 + minute) * 60 + second) * 1000
}

/// The same run so many minutes later by a clock that forgets the date at midnight.
pub fn later(events: &str, minutes: i64) -> String {
    let shifted = events
        .lines()
        .map(str::trim)
        .filter(|line| !line.is_empty())
        .map(|line| {
            let (time, rest) = line.split_once(' ').expect("a time and what was done");
            let second = (millis(time) / 1000 + minutes * 60) % 86_400;
            format!(
                "{:02}:{:02}:{:02} {rest}\n",
                second / 3600,
                second / 60 % 60,
                second % 60
            )
        });
    shifted.collect()
}

fn event(line: &str) -> Event {
    let mut event = Event::default();
    let mut words = line.split_whitespace();
    let time = words.next().expect("a time");
    if time != "-" {
        event.at = Some(Moment::new(millis(time), 0));
    }
    for word in words {
        let Some((key, value)) = word.split_once('=') else {
            event.action = Action::ALL.iter().copied().find(|action| action.word() == word);
            assert!(event.action.is_some(), "no action `{word}`");
            continue;
        };
        if value == "?" {
            event.unreadable = event.unreadable.with(match key {
                "do" => Field::Do,
                "flow" => Field::Flow,
                "psi" => Field::Pressure,
                "spo2" => Field::Spo2,
                "device" => Field::Device,
                "cylinder" => Field::Cylinder,
                other => panic!("no key `{other}`"),
            });
            continue;
        }
        let number = || value.parse::<f64>().expect("a number");
        match key {
            "flow" => event.flow = Some(Flow::litres_per_minute(number()).unwrap()),
            "psi" => event.pressure = Some(Pressure::psi(number()).unwrap()),
            "spo2" => event.spo2 = Some(Percent::new(number()).unwrap()),
            "device" => event.device = Some(RULEBOOK.find_device(value).expect("a device")),
            "cylinder" => event.cylinder = Some(RULEBOOK.find_cylinder(value).expect("a cylinder")),
            other => panic!("no key `{other}`"),
        }
    }
    event
}

impl Written {
    /// Reviews it with the compiled-in guards, and sees that the book read as data says the same.
    pub fn review<T>(&self, tell: impl Fn(&Finding<'_>) -> T) -> Vec<T> {
        let run = Run {
            group: self.group,
            conditions: self.conditions.as_deref(),
            temperature: self.celsius.map(|celsius| Temperature::celsius(celsius).unwrap()),
            events: &self.events,
        };
        let (mut told, mut same) = (Vec::new(), Vec::new());
        let (mut first, mut second) = (Vec::new(), Vec::new());
        Reviewer::new(hazard::Guards).review(&run, &mut Notes::default(), |finding| {
            told.push(tell(&finding));
            first.push(finding.to_string());
        });
        Reviewer::new(&RULEBOOK).review(&run, &mut Notes::default(), |finding| {
            same.push(tell(&finding));
            second.push(finding.to_string());
        });
        assert_eq!(first, second, "the two evaluators differ");
        told
    }

    /// Each finding as `code rule`, with the time at which it began and ended where it has one.
    pub fn found(&self) -> Vec<String> {
        self.review(|finding| {
            let time = |moment: Option<Moment>| {
                moment.map_or_else(String::new, |moment| format!(" {}", &moment.to_string()[11..19]))
            };
            format!(
                "{} {}{}{}",
                finding.code(),
                finding.rule.id,
                time(finding.from),
                time(finding.until)
            )
        })
    }
}
