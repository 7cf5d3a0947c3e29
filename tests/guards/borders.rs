//! Every number of the demonstration's guards: at it, just beside it and unknown, for every device and group, all ways to
//! an answer agree.

use oxyfolio::{
    RULEBOOK,
    book::{ConditionId, DeviceId, Fact, GroupId, GuardOp, Measure, Operand, Rulebook, Value},
    guard::{Broken, Evaluator, Facts, Observed, Row, compare::Comparable},
    hazard,
    lookup::Lookup,
    quantity::{Flow, Percent, Pressure, Range, Temperature, Time, TimeUnit},
};

use crate::{all_at_once::one_by_one, world::BOOK};

/// Numbers at a border: two that only rounding keeps apart count as equal, so the answer changes a billionth away.
fn beside(number: f64) -> Vec<f64> {
    let mut all = vec![number, number - 0.25, number + 0.25];
    for edge in [
        number,
        number * (1.0 - 1e-9),
        number * (1.0 + 1e-9),
        number / (1.0 - 1e-9),
        number / (1.0 + 1e-9),
    ] {
        let (mut below, mut above) = (edge, edge);
        all.push(edge);
        for _ in 0..4 {
            (below, above) = (below.next_down(), above.next_up());
            all.extend([below, above]);
        }
    }
    all
}

fn single(value: &Value) -> Vec<f64> {
    fn ends<Q: Comparable>(range: &Range<Q>) -> Vec<f64> {
        range
            .low
            .value()
            .into_iter()
            .chain(range.high.value())
            .map(Q::number)
            .collect()
    }
    match value {
        Value::Flow(value) => vec![value.number()],
        Value::Pressure(value) => vec![value.number()],
        Value::Temperature(value) => vec![value.number()],
        Value::Percent(value) => vec![value.number()],
        Value::Time(value) => vec![value.number()],
        Value::FlowRange(range) => ends(range),
        Value::PressureRange(range) => ends(range),
        Value::TemperatureRange(range) => ends(range),
        Value::PercentRange(range) => ends(range),
        Value::TimeRange(range) => ends(range),
        _ => Vec::new(),
    }
}

/// The numbers that a book's guards compare a measure with.
fn numbers(book: &Rulebook, measure: Measure) -> Vec<f64> {
    let mut found = Vec::new();
    let policy = |id| single(&book.policy(id).unwrap().value);
    for op in book.hazards.iter().flat_map(|hazard| hazard.never.ops.iter()) {
        match op {
            GuardOp::Compare(asked, _, operand) if *asked == measure => match operand {
                Operand::Value(value) => found.extend(single(value)),
                Operand::Policy(id) | Operand::PolicyLow(id) | Operand::PolicyHigh(id) => {
                    found.extend(policy(*id))
                }
                Operand::DeviceLeastFlow | Operand::DeviceMostFlow => {
                    for device in &book.devices {
                        let flows = device.group_flows.iter().map(|own| own.flow).chain([device.flow]);
                        found.extend(flows.flat_map(|flow| single(&Value::FlowRange(flow))));
                    }
                }
                Operand::TargetLow | Operand::TargetHigh => found.extend([TARGET.0, TARGET.1]),
                Operand::Measure(_) => found.push(WANTED),
            },
            GuardOp::Within(asked, range) if *asked == measure => found.extend(single(range)),
            _ => {}
        }
    }
    found.sort_by(f64::total_cmp);
    found.dedup();
    found
}

const TARGET: (f64, f64) = (94.0, 98.0);
const WANTED: f64 = 40.0;

/// A way to the answer: from what was observed, and from a row of it.
type Ask<'a> = &'a dyn Fn(&Observed<'_>, &Row) -> [Broken; 2];

fn agree(book: &Rulebook, evaluators: &[Ask<'_>], seen: &Observed<'_>) {
    let expected = one_by_one(book, seen);
    let row = Row::from(seen);
    for ask in evaluators {
        assert_eq!(ask(seen, &row), [expected; 2], "{seen:?}");
    }
}

/// Asks at every border, with all else known or unknown, yes or no.
fn at_every_border(book: &Rulebook, evaluators: &[Ask<'_>]) -> usize {
    let conditions: Vec<ConditionId> = (0..).map(ConditionId).take(book.conditions.len()).collect();
    let all = |holds| {
        Fact::ALL
            .iter()
            .fold(Facts::NONE, |facts, fact| facts.with(*fact, holds))
    };
    let mut asked = 0;
    for measure in Measure::ALL {
        let values: Vec<f64> = numbers(book, *measure).into_iter().flat_map(beside).collect();
        for device in (0..=book.devices.len() + 1).map(|id| id.checked_sub(1).map(|id| DeviceId(id as u16))) {
            for group in (0..=book.groups.len() + 1).map(|id| id.checked_sub(1).map(|id| GroupId(id as u16)))
            {
                for number in values.iter().copied().map(Some).chain([None]) {
                    let with = asked % 4;
                    let mut seen = Observed {
                        device,
                        group,
                        conditions: [None, Some(&[][..]), Some(&conditions[..]), conditions.get(..1)][with],
                        target: (with != 0)
                            .then(|| Range::between(Percent::tabled(TARGET.0), Percent::tabled(TARGET.1))),
                        facts: [Facts::NONE, all(false), all(true), all(true)][(asked / 4) % 4],
                        minutes_wanted: (with != 1).then(|| Time::tabled(WANTED, TimeUnit::Minute)),
                        ..Observed::default()
                    };
                    match measure {
                        Measure::Flow => seen.flow = number.map(Flow::tabled),
                        Measure::Pressure => seen.pressure = number.map(Pressure::tabled),
                        Measure::Temperature => seen.temperature = number.map(Temperature::tabled),
                        Measure::Spo2 => seen.spo2 = number.map(Percent::tabled),
                        Measure::MinutesLeft => {
                            seen.minutes_left = number.map(|n| Time::tabled(n, TimeUnit::Minute))
                        }
                        Measure::MinutesWanted => {
                            seen.minutes_wanted = number.map(|n| Time::tabled(n, TimeUnit::Minute))
                        }
                    }
                    agree(book, evaluators, &seen);
                    asked += 1;
                }
            }
        }
    }
    asked
}

#[test]
fn at_every_border_of_the_demonstration_all_ways_agree() {
    let lookup = Lookup::new(&RULEBOOK);
    let asked = at_every_border(
        &RULEBOOK,
        &[
            &|seen, row| [hazard::Guards.broken(seen), hazard::Guards.broken_row(row)],
            &|seen, row| [lookup.broken(seen), lookup.broken_row(row)],
        ],
    );
    assert!(asked > 50_000, "{asked}");
}

#[test]
fn at_every_border_of_random_guards_all_ways_agree() {
    // A part of them, since each is asked by itself too.
    let mut book = BOOK.clone();
    book.hazards = oxyfolio::book::List::from(book.hazards.iter().take(40).cloned().collect::<Vec<_>>());
    let lookup = Lookup::new(&book);
    let asked = at_every_border(
        &book,
        &[&|seen, row| [lookup.broken(seen), lookup.broken_row(row)]],
    );
    assert!(asked > 10_000, "{asked}");
}
