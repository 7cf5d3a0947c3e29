//! The answers of some hundred sheets, found again.

use std::collections::BTreeSet;

use oxyfolio::RULEBOOK;
use oxyfolio::book::{Cylinder, CylinderId, ProcedureId};
use oxyfolio::check::review::Event;
use oxyfolio::drill::{
    Arranged, Asked, Difficulty, Exercise, Kind, Lasting, LogChange, Part, Task, Terms, exercises,
};
use oxyfolio::quantity::PressureUnit;

use crate::chapters;
use crate::gas::{Oxygen, PSI_PER_BAR};

const SHEETS: u64 = 60;

/// Exercises of one kind from many seeds.
fn many(kind: Kind) -> Vec<Exercise<'static>> {
    let sheets = (0..SHEETS).map(|seed| exercises(&RULEBOOK, &Terms::new(seed).count(9).kinds(&[kind])));
    let all: Vec<_> = sheets
        .flat_map(|sheet| {
            assert_eq!(sheet.missing, []);
            sheet.exercises
        })
        .collect();
    assert_eq!(all.len(), SHEETS as usize * 9);
    all
}

#[test]
fn a_seed_gives_the_same_sheet_and_another_seed_another() {
    let mut questions = BTreeSet::new();
    for seed in 0..200 {
        let sheet = exercises(&RULEBOOK, &Terms::new(seed).count(4));
        assert_eq!(sheet, exercises(&RULEBOOK, &Terms::new(seed).count(4)));
        let kinds: Vec<Kind> = sheet.exercises.iter().map(Exercise::kind).collect();
        assert_eq!(kinds, Kind::ALL);
        questions.insert(sheet.exercises[0].question.clone());
    }
    assert!(questions.len() > 190, "{}", questions.len());
    // Easy ones first, hard ones last, a third of each.
    let sheet = exercises(&RULEBOOK, &Terms::new(5));
    let levels: Vec<Difficulty> = sheet.exercises.iter().map(|one| one.difficulty).collect();
    assert!(levels.is_sorted());
    assert_eq!(
        levels.iter().filter(|level| **level == Difficulty::Easy).count(),
        4
    );
    assert_eq!(
        levels.iter().filter(|level| **level == Difficulty::Hard).count(),
        4
    );
}

/// What a cylinder lasts: by the trade's sum, and by the published densities.
fn minutes(cylinder: &Cylinder, psi: f64, celsius: f64, flow: f64) -> f64 {
    let residual = 200.0;
    let (litres, unit) = cylinder.factor.written();
    let per_psi = if unit == PressureUnit::Bar {
        litres / PSI_PER_BAR
    } else {
        litres
    };
    let oxygen = Oxygen::at(celsius);
    let held = (oxygen.litres(psi) - oxygen.litres(residual)) * cylinder.water_capacity.as_litres();
    ((psi - residual) * per_psi).min(held) / flow
}

fn of(lasting: &Lasting, psi: f64, flow: f64) -> f64 {
    let cylinder = RULEBOOK.cylinder(lasting.cylinder).unwrap();
    minutes(cylinder, psi, lasting.temperature.as_celsius(), flow)
}

/// An answer never promises more than the reference, and is never more than two parts in a thousand and the rounding short.
#[test]
fn minutes_are_those_of_the_published_densities_and_of_the_factor() {
    let mut asked = [0; 3];
    for one in many(Kind::Duration) {
        let Task::Duration(lasting) = &one.task else {
            panic!("{one:?}")
        };
        let (psi, flow) = (lasting.pressure.as_psi(), lasting.flow.as_litres_per_minute());
        let wanted = f64::from(lasting.minutes);
        let lasts = of(lasting, psi, flow);
        assert!(wanted <= lasts + 1e-6, "{one:#?}: {lasts}");
        let room = |minutes: f64| minutes * 1.002 + 0.01;
        let unit = RULEBOOK.cylinder(lasting.cylinder).unwrap().factor.written().1;
        match lasting.asked {
            Asked::Minutes => {
                asked[0] += 1;
                assert!(room(wanted + 1.0) > lasts, "{one:#?}: {lasts}");
                assert!(one.answer.starts_with(&format!("{} min.", lasting.minutes)));
            }
            Asked::Reading => {
                asked[1] += 1;
                let step = if unit == PressureUnit::Bar {
                    PSI_PER_BAR
                } else {
                    10.0
                };
                let less = of(lasting, psi - step, flow);
                assert!(less < room(wanted), "{one:#?}: {less}");
            }
            Asked::Flow => {
                asked[2] += 1;
                let less = of(lasting, psi, flow + 1.0);
                assert!(less < room(wanted), "{one:#?}: {less}");
            }
        }
    }
    assert!(asked.iter().all(|count| *count > 50), "{asked:?}");
}

/// A student who works a printed line out again finds the printed number: (500 − 200) × 0.16 is 48 and not 47.9.
#[test]
fn sums_by_factor_come_out_as_printed() {
    let mut seen = 0;
    for one in many(Kind::Duration) {
        for line in one.working.iter().filter(|line| line.starts_with("By factor: (")) {
            let numbers: Vec<f64> = line
                .split(|sign: char| !sign.is_ascii_digit() && sign != '.')
                .filter_map(|word| word.parse().ok())
                .collect();
            let [from, to, factor, litres, ..] = numbers[..] else {
                panic!("{line}")
            };
            if !line.contains("L/psi") {
                continue;
            }
            seen += 1;
            let exact = (from - to) * factor;
            assert!(
                litres < exact + 1e-6 && litres + 0.1 > exact + 1e-6,
                "{line}: {exact}"
            );
        }
    }
    assert!(seen > 50, "{seen}");
}

/// The example on the answer sheet, and what must come before what, by the `after` lines of the chapters.
#[test]
fn an_order_is_right_exactly_when_the_chapters_allow_it() {
    let procedures = chapters::entries("procedure");
    let mut seen = BTreeSet::new();
    for one in many(Kind::Order) {
        let Task::Order(ordering) = &one.task else {
            panic!("{one:?}")
        };
        let procedure = &RULEBOOK.procedure(ordering.procedure).unwrap();
        seen.insert(procedure.rule.id.to_string());
        let steps = chapters::steps(&procedures[&*procedure.rule.id]);
        assert_eq!(steps.len(), procedure.steps.len());
        let reach = chapters::before(&steps);
        let shown: Vec<usize> = ordering.shown.iter().map(|step| step.index()).collect();
        // The pairs told, closed over, are what the text says of the steps shown.
        let count = shown.len();
        let mut told = vec![vec![false; count]; count];
        for (first, second) in &ordering.before {
            told[*first][*second] = true;
        }
        for through in 0..count {
            for first in 0..count {
                for second in 0..count {
                    let path = told[first][through] && told[through][second];
                    told[first][second] |= path;
                }
            }
        }
        for first in 0..count {
            for second in 0..count {
                assert_eq!(
                    told[first][second], reach[shown[first]][shown[second]],
                    "{one:#?}"
                );
            }
        }
        // The example, letter by letter.
        let letters = one
            .answer
            .strip_prefix("For example ")
            .unwrap()
            .trim_end_matches('.');
        let order: Vec<usize> = letters
            .split(", ")
            .map(|letter| one.lines.iter().position(|line| line.0 == letter).unwrap())
            .collect();
        assert_eq!(order.iter().collect::<BTreeSet<_>>().len(), count);
        for (place, first) in order.iter().enumerate() {
            for second in &order[..place] {
                assert!(!reach[shown[*first]][shown[*second]], "{one:#?}");
            }
        }
        assert!(ordering.is_right(&order));
        // As shown it isn't right, nor are too few letters.
        assert!(!ordering.is_right(&(0..count).collect::<Vec<_>>()));
        assert!(!ordering.is_right(&order[1..]));
    }
    assert!(seen.len() > 6, "{seen:?}");
}

/// Which parts of a set-up are out of order, by the text of the chapters.
fn out_of_order(setup: &Arranged) -> Vec<Part> {
    let (devices, policies) = (chapters::entries("device"), chapters::entries("policy"));
    let group = &*RULEBOOK.group(setup.group).unwrap().rule.id;
    let device = &devices[&*RULEBOOK.device(setup.device).unwrap().rule.id];
    let value = |policy: &str| chapters::numbers(&policies[policy]["value"]);
    let flow = setup.flow.as_litres_per_minute();
    let (low, high) = chapters::flow_range(device, group);
    let mut wrong = Vec::new();
    if flow < low || flow > high {
        wrong.push(Part::Flow);
    }
    let fits = device["fits"].trim_matches(['[', ']']);
    if !fits.split(',').any(|name| name.trim() == group) {
        wrong.push(Part::Device);
    }
    if setup.pressure.as_psi() <= value("change-over-pressure")[0] + 1e-6 {
        wrong.push(Part::Pressure);
    }
    let (celsius, range) = (setup.temperature.as_celsius(), value("use-temperature"));
    if celsius < range[0] || celsius > range[1] {
        wrong.push(Part::Temperature);
    }
    let cylinder = RULEBOOK.cylinder(setup.cylinder).unwrap();
    let lasts = minutes(cylinder, setup.pressure.as_psi(), celsius, flow);
    let margin = 1.0 + value("planning-margin")[0] / 100.0;
    if lasts < f64::from(setup.minutes) * margin {
        wrong.push(Part::Minutes);
    }
    wrong
}

#[test]
fn in_a_set_up_exactly_one_thing_is_wrong() {
    let mut parts = std::collections::BTreeMap::new();
    for one in many(Kind::Setup) {
        let Task::Setup(setup) = &one.task else {
            panic!("{one:?}")
        };
        assert_eq!(out_of_order(setup), [setup.wrong.unwrap()], "{one:#?}");
        *parts.entry(setup.wrong.unwrap().word()).or_insert(0) += 1;
    }
    assert_eq!(parts.len(), 5, "{parts:?}");
    assert!(parts.values().all(|count| *count > 10), "{parts:?}");
}

/// What the readings of a log should be, from its first one: by the published densities and the flows recorded.
fn readings(events: &[Event], celsius: f64) -> Vec<(usize, f64, f64)> {
    let oxygen = Oxygen::at(celsius);
    let cylinder: CylinderId = events.iter().find_map(|event| event.cylinder).unwrap();
    let water = RULEBOOK.cylinder(cylinder).unwrap().water_capacity.as_litres();
    let (mut open, mut flow, mut litres, mut last) = (false, 0.0, None, events[0].at.unwrap());
    let mut all = Vec::new();
    for (place, event) in events.iter().enumerate() {
        let at = event.at.unwrap();
        if let Some(litres) = litres.as_mut().filter(|_| open) {
            *litres -= flow * at.minutes_since(last);
        }
        last = at;
        match event.action.unwrap().word() {
            "open-cylinder" => open = true,
            "close-cylinder" => open = false,
            "zero-flow" => flow = 0.0,
            "set-flow" => flow = event.flow.unwrap().as_litres_per_minute(),
            _ => {}
        }
        if let Some(pressure) = event.pressure {
            let litres = *litres.get_or_insert(oxygen.litres(pressure.as_psi()) * water);
            all.push((place, pressure.as_psi(), oxygen.psi(litres / water)));
        }
    }
    all
}

/// The name in the answer between two quotes of this kind, counted from 0.
fn named(answer: &str, which: usize) -> &str {
    answer.split('`').nth(which * 2 + 1).unwrap()
}

#[test]
fn in_a_log_exactly_one_thing_is_wrong() {
    let procedures = chapters::entries("procedure");
    let devices = chapters::entries("device");
    let hazards = chapters::entries("hazard");
    let mut steps_named = 0;
    let mut changes = std::collections::BTreeMap::new();
    for one in many(Kind::Log) {
        let Task::Log(log) = &one.task else {
            panic!("{one:?}")
        };
        let (change, at) = log.wrong.unwrap();
        *changes.entry(change.word()).or_insert(0) += 1;
        // Only a changed reading is away from what the flow takes; a reading is to 10 psi or to 1 bar.
        for (place, read, expected) in readings(&log.events, log.temperature.as_celsius()) {
            let is_off = (read - expected).abs() > 25.0 + expected * 0.01;
            let meant = change == LogChange::Reading && place == at;
            // Where the flow's own lines are what was changed, the flows recorded aren't those that were.
            let of_flow = ["(zero-flow)", "(set-flow)"]
                .iter()
                .any(|flow| one.answer.contains(flow));
            let by_flow = change == LogChange::Flow || change == LogChange::Swapped || of_flow;
            assert!(is_off == meant || by_flow, "{one:#?}: {read}, {expected}");
        }
        // Only a changed flow is outside the range in the text.
        let group = &*RULEBOOK.group(log.group).unwrap().rule.id;
        let device = log.events.iter().find_map(|event| event.device);
        for (place, event) in log.events.iter().enumerate() {
            if let Some(flow) = event.flow {
                let device = &devices[&*RULEBOOK.device(device.unwrap()).unwrap().rule.id];
                let (low, high) = chapters::flow_range(device, group);
                let is_off = !(low..=high).contains(&flow.as_litres_per_minute());
                assert_eq!(is_off, change == LogChange::Flow && place == at, "{one:#?}");
            }
        }
        // A step named in the answer is one of the text, and out of its place there.
        if matches!(change, LogChange::LeftOut | LogChange::Swapped) {
            let words = |event: &Event| event.action.unwrap().word();
            let Some(cited) = procedures.get(one.rules[0].id()) else {
                // A step in the wrong place can be a hazard, or leave a device out of order.
                let rule = one.rules[0].id();
                assert!(
                    hazards.contains_key(rule) || devices.contains_key(rule),
                    "{one:#?}"
                );
                continue;
            };
            steps_named += 1;
            let is_step = one.answer.contains('`') && one.answer.contains('(');
            let steps = chapters::steps(cited);
            let find = |name: &str| steps.iter().position(|step| step.id == name);
            if change == LogChange::LeftOut && is_step {
                let step = &steps[find(named(&one.answer, 0)).unwrap()];
                assert!(step.critical, "{one:#?}");
                assert!(words(&log.events[at]) != step.action, "{one:#?}");
            }
            if change == LogChange::Swapped && one.answer.contains("was done before") {
                let done = find(named(&one.answer, 0)).unwrap();
                let first = find(named(&one.answer, 1)).unwrap();
                assert!(chapters::before(&steps)[first][done], "{one:#?}");
                let pair = [&log.events[at], &log.events[at + 1]].map(words);
                assert_eq!(pair, [&*steps[done].action, &*steps[first].action], "{one:#?}");
            }
        }
    }
    let of_steps = changes["left-out"] + changes["swapped"];
    assert!(steps_named * 3 > of_steps * 2, "{steps_named} of {of_steps}");
    assert!(
        changes.len() == 4 && changes.values().all(|count| *count > 10),
        "{changes:?}"
    );
}

/// Every procedure of the book stands in a log or an order now and then, so none is left out of what can be practised.
#[test]
fn every_procedure_is_practised() {
    let mut seen = BTreeSet::new();
    for one in many(Kind::Order) {
        let Task::Order(ordering) = one.task else { panic!() };
        seen.insert(ordering.procedure);
    }
    let all: BTreeSet<ProcedureId> = (0..RULEBOOK.procedures.len() as u16).map(ProcedureId).collect();
    assert_eq!(seen, all);
}
