//! The smallest example of a difference: what doesn't matter for it is left out.

use super::{
    Comes, Example, Key,
    axes::Point,
    judge::{Judge, Judged},
};
use crate::book::Rulebook;

type Left = for<'b> fn(Point<'b>) -> Point<'b>;

/// What is left out, the most telling last.
const LEAVE_OUT: &[Left] = &[
    |point| Point { seen: None, ..point },
    |point| Point {
        wanted: None,
        ..point
    },
    |point| Point {
        temperature: None,
        ..point
    },
    |point| Point {
        cylinder: None,
        ..point
    },
    |point| Point {
        pressure: None,
        ..point
    },
    |point| Point { spo2: None, ..point },
    |point| Point {
        since_birth: None,
        ..point
    },
    |point| Point {
        condition: Some(None),
        ..point
    },
    |point| Point {
        condition: None,
        ..point
    },
    |point| Point { group: None, ..point },
];

pub fn example(
    old: &Judge<'_>,
    new: &Judge<'_>,
    comes: Comes,
    key: &Key<'_>,
    mut point: Point<'_>,
) -> Option<Example> {
    let (finds, misses) = match comes {
        Comes::Appears => (new, old),
        Comes::Goes => (old, new),
    };
    let mut judged = Judged::default();
    let mut other = Judged::default();
    let mut differs = |point: &Point<'_>| {
        finds.judge(point, &mut judged);
        misses.judge(point, &mut other);
        judged.findings.contains(key) && !other.findings.contains(key)
    };
    // A flow that is usual says more than one at a limit, where the flow doesn't matter.
    let usual = finds
        .book
        .find_device(point.device)
        .and_then(|id| finds.book.device(id))
        .map(|device| Point {
            flow: device.usual,
            ..point
        });
    if let Some(usual) = usual.filter(|usual| differs(usual)) {
        point = usual;
    }
    for leave_out in LEAVE_OUT {
        let less = leave_out(point);
        if differs(&less) {
            point = less;
        }
    }
    Some(Example {
        setup: words(finds.book, &point),
        message: finds.message(&point, key)?,
        device: point.device.to_owned(),
        flow_lpm: point.flow.as_litres_per_minute(),
        group: point.group.map(str::to_owned),
        conditions: point
            .condition
            .map(|condition| condition.into_iter().map(str::to_owned).collect()),
        since_birth_minutes: point.since_birth.map(|time| time.as_minutes()),
        spo2_percent: point.spo2.map(|share| share.as_percent()),
        cylinder: point.cylinder.map(str::to_owned),
        pressure: point
            .pressure
            .map(|reading| finds.book.agency.pressure_unit.show(reading).to_string()),
        temperature_c: point.temperature.map(|temperature| temperature.as_celsius()),
        minutes_wanted: point.wanted.map(|time| time.as_minutes()),
        seen: point.seen.map(|(fact, holds)| observation(fact, holds)),
    })
}

fn observation(fact: crate::book::Fact, holds: bool) -> String {
    format!("{}{}", if holds { "" } else { "not " }, fact.words())
}

fn words(book: &Rulebook, point: &Point<'_>) -> String {
    let device = book.find_device(point.device).and_then(|id| book.device(id));
    let name = device.map_or(point.device, |device| &device.rule.name);
    let mut words = format!("{name} at {}", point.flow);
    let mut add = |text: String| {
        words.push_str(", ");
        words.push_str(&text);
    };
    if let Some(group) = point.group {
        add(group.to_owned());
    }
    match point.condition {
        Some(Some(condition)) => add(condition.to_owned()),
        Some(None) if point.spo2.is_some() => add("no condition".to_owned()),
        _ => {}
    }
    if let Some(time) = point.since_birth {
        add(format!("{time} after birth"));
    }
    if let Some(spo2) = point.spo2 {
        add(format!("SpO₂ {spo2}"));
    }
    let reading = point
        .pressure
        .map(|reading| book.agency.pressure_unit.show(reading));
    match (point.cylinder, reading) {
        (Some(cylinder), Some(reading)) => add(format!("{cylinder} at {reading}")),
        (Some(cylinder), None) => add(cylinder.to_owned()),
        (None, Some(reading)) => add(format!("gauge at {reading}")),
        (None, None) => {}
    }
    if let Some(temperature) = point.temperature {
        add(temperature.to_string());
    }
    if let Some(wanted) = point.wanted {
        add(format!("{wanted} wanted"));
    }
    if let Some((fact, holds)) = point.seen {
        add(observation(fact, holds));
    }
    words
}
