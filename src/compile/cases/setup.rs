//! A case about a set-up: the findings and the minutes it should give.

use std::collections::BTreeSet;

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        resolve::Raw,
        suggest::instead,
        written,
        yaml::Node,
    },
    expect::{self, Named},
};
use crate::book::{ConditionId, Fact, List, Rulebook};
use crate::check::{About, Finding, Level, Missing, Setup, check_setup};
use crate::quantity::{Flow, Time};

const SETUP: Keys = Keys {
    of: "set-up",
    required: &["device", "flow"],
    optional: &[
        "group",
        "condition",
        "since-birth",
        "spo2",
        "cylinder",
        "pressure",
        "temperature",
        "minutes-wanted",
        "state",
    ],
};

const EXPECT: Keys = Keys {
    of: "expectation",
    required: &[],
    optional: &["findings", "minutes", "not-checked"],
};

/// What came of a set-up.
#[derive(Default)]
struct Outcome {
    findings: BTreeSet<Named>,
    minutes: Option<u32>,
    no_target: Option<Missing>,
}

/// What the book says of the case's set-up, one thing after the other; `None` after a mistake, which was reported.
pub fn outcome(book: &Rulebook, fields: &Fields<'_>, found: &mut Diagnostics) -> Option<Vec<String>> {
    let given = Fields::of(fields.get("setup")?, &SETUP, found)?;
    let outcome = ask(book, &given, found)?;
    let mut said: Vec<String> = outcome.findings.iter().map(ToString::to_string).collect();
    if given.get("spo2").is_some()
        && let Some(missing) = outcome.no_target
    {
        said.push(format!("it could not be judged {missing}"));
    }
    said.extend(outcome.minutes.map(|minutes| format!("{minutes} min")));
    Some(said)
}

/// Asks the book about the set-up; `None` after a mistake, which was reported.
fn ask(book: &Rulebook, given: &Fields<'_>, found: &mut Diagnostics) -> Option<Outcome> {
    let before = found.count();
    let conditions = given.read("condition", found, |node, found| conditions(node, book, found));
    let setup = read(given, book, conditions.as_deref(), found);
    let setup = setup.filter(|_| found.count() == before)?;
    let mut outcome = Outcome::default();
    let visit = |finding: Finding<'_>| {
        match finding.about {
            About::MinutesLeft { minutes_left } => outcome.minutes = Some(minutes_left),
            // It says how the minutes came about, and belongs to them.
            About::GaugeMisleads { .. } => {}
            About::Missing(missing) if missing.is_about_target() => outcome.no_target = Some(missing),
            _ => outcome.findings.extend(name(&finding)),
        }
    };
    check_setup(book, &setup, visit).ok()?;
    Some(outcome)
}

/// Runs the case.
pub fn run(book: &Rulebook, fields: &Fields<'_>, raws: &[Raw], found: &mut Diagnostics) {
    let (Some(given), Some(wanted)) = (fields.get("setup"), fields.get("expect")) else {
        return;
    };
    let Some(given) = Fields::of(given, &SETUP, found) else {
        return;
    };
    let Some(outcome) = ask(book, &given, found) else {
        return;
    };
    let Outcome {
        findings: actual,
        minutes,
        no_target,
    } = outcome;
    // A saturation that was given and judged by no target is no pass.
    let missing = no_target.filter(|_| given.get("spo2").is_some());
    if expect::is_no_finding(wanted) {
        expect::compare(wanted.span, &BTreeSet::new(), &actual, raws, found);
        target_was_judged(wanted, missing, found);
        return;
    }
    let Some(fields) = Fields::of(wanted, &EXPECT, found) else {
        return;
    };
    expect::something(wanted, found);
    match fields.read("not-checked", found, |node, found| {
        fields::word(node, found, "word", &[("target", node)])
    }) {
        None => target_was_judged(wanted, missing, found),
        Some(node) if missing.is_none() => {
            found
                .error(
                    "case-failed",
                    node.span,
                    "this case fails: expected that no target could be chosen, found one",
                )
                .hint("take `not-checked` out, or expect what the target finds");
        }
        Some(_) => {}
    }
    let wanted = fields;
    if let Some(node) = wanted.get("findings") {
        let expected = if expect::is_no_finding(node) {
            Some(List::fixed(&[]))
        } else {
            fields::each(node, found, |item, found| expect::named(item, book, found))
        };
        if let Some(expected) = expected {
            let expected = expected.iter().cloned().collect();
            expect::compare(node.span, &expected, &actual, raws, found);
        }
    }
    if let Some(node) = wanted.get("minutes") {
        expect_minutes(node, minutes, &given, raws, found);
    }
}

fn target_was_judged(wanted: &Node, missing: Option<Missing>, found: &mut Diagnostics) {
    if let Some(missing) = missing {
        found
            .error(
                "case-failed",
                wanted.span,
                format!("this case gives a saturation, and it could not be checked {missing}"),
            )
            .hint("give what is missing, or write `not-checked: target` where that is what the case shows");
    }
}

fn expect_minutes(
    node: &Node,
    minutes: Option<u32>,
    given: &Fields<'_>,
    raws: &[Raw],
    found: &mut Diagnostics,
) {
    let Some(expected) = fields::quantity::<Time>(node, found) else {
        return;
    };
    if minutes.map(f64::from) == Some(expected.as_minutes()) {
        return;
    }
    let actual = minutes.map_or_else(|| "no duration".to_owned(), |minutes| format!("{minutes} min"));
    let error = found.error(
        "case-failed",
        node.span,
        format!("this case fails: expected {expected}, found {actual}"),
    );
    if let Some(cylinder) = given.get("cylinder")
        && let super::super::yaml::Value::Text { text, .. } = &cylinder.value
        && let Some(place) = expect::place_of(crate::book::Kind::Cylinder, text, raws)
    {
        error.label(place, "the cylinder is here");
    }
    error.hint("correct the rule, or, where the new answer is right, the case");
}

/// A finding's name in a case. What could not be checked has none: a case says what it expects of what it gives.
fn name(finding: &Finding<'_>) -> Option<Named> {
    let level = match finding.level {
        Level::Stop => "stop",
        Level::Warn => "warn",
        Level::Note => "note",
        Level::Unknown => return None,
    };
    Some(Named {
        level: level.to_owned(),
        kind: finding.kind,
        id: finding.rule.id().to_owned(),
    })
}

fn read<'a>(
    given: &Fields<'_>,
    book: &Rulebook,
    conditions: Option<&'a [ConditionId]>,
    found: &mut Diagnostics,
) -> Option<Setup<'a>> {
    let device = given.read("device", found, |node, found| {
        let id = fields::plain(node, found)?;
        lookup(
            book.find_device(id),
            "device",
            id,
            node,
            book.devices.iter().map(|device| &*device.rule.id),
            found,
        )
    });
    let flow: Option<Flow> = given.read("flow", found, fields::quantity);
    let mut setup = Setup::new(device?, flow?);
    if let Some(group) = given.read("group", found, |node, found| {
        let id = fields::plain(node, found)?;
        lookup(
            book.find_group(id),
            "group",
            id,
            node,
            book.groups.iter().map(|group| &*group.rule.id),
            found,
        )
    }) {
        setup = setup.group(group);
    }
    if let Some(cylinder) = given.read("cylinder", found, |node, found| {
        let id = fields::plain(node, found)?;
        let known = book.cylinders.iter().map(|cylinder| &*cylinder.rule.id);
        lookup(book.find_cylinder(id), "cylinder", id, node, known, found)
    }) {
        setup = setup.cylinder(cylinder);
    }
    if let Some(conditions) = conditions {
        setup = setup.conditions(conditions);
    }
    if let Some(time) = given.read("since-birth", found, fields::quantity) {
        setup = setup.minute_of_life(time);
    }
    if let Some(spo2) = given.read("spo2", found, |node, found| {
        fields::written_as(node, found, written::saturation)
    }) {
        setup = setup.spo2(spo2);
    }
    if let Some(pressure) = given.read("pressure", found, fields::quantity) {
        setup = setup.pressure(pressure);
    }
    if let Some(temperature) = given.read("temperature", found, fields::quantity) {
        setup = setup.temperature(temperature);
    }
    if let Some(time) = given.read("minutes-wanted", found, fields::quantity) {
        setup = setup.minutes_wanted(time);
    }
    let state = given.read("state", found, |node, found| {
        fields::each(node, found, observation)
    });
    for (fact, holds) in state.iter().flatten() {
        setup = setup.observed(*fact, *holds);
    }
    Some(setup)
}

/// Something observed of equipment or surroundings: `flame near`, `not washer fitted`.
pub fn observation(node: &Node, found: &mut Diagnostics) -> Option<(Fact, bool)> {
    let text = fields::plain(node, found)?;
    let (words, holds) = text
        .strip_prefix("not ")
        .map_or((text, true), |words| (words.trim(), false));
    let known = || Fact::ALL.iter().filter(|fact| **fact != Fact::DeviceHasReservoir);
    let fact = known().find(|fact| fact.words() == words);
    if fact.is_none() {
        found
            .error(
                "unknown-observation",
                node.span,
                format!("expected something that can be observed, found `{text}`"),
            )
            .hint(instead(
                words,
                known().map(|fact| fact.words()),
                "a case can speak of",
            ));
    }
    fact.map(|fact| (*fact, holds))
}

fn conditions(node: &Node, book: &Rulebook, found: &mut Diagnostics) -> Option<Vec<ConditionId>> {
    let items = fields::items(node);
    if let [only] = items
        && fields::plain(only, found)? == "none"
    {
        return Some(Vec::new());
    }
    let known = || book.conditions.iter().map(|condition| &*condition.id);
    items
        .iter()
        .map(|item| {
            let id = fields::plain(item, found)?;
            lookup(book.find_condition(id), "condition", id, item, known(), found)
        })
        .collect()
}

fn lookup<'a, Id>(
    id: Option<Id>,
    what: &str,
    name: &str,
    node: &Node,
    known: impl Iterator<Item = &'a str>,
    found: &mut Diagnostics,
) -> Option<Id> {
    if id.is_none() {
        found
            .error(
                "unknown-name",
                node.span,
                format!("expected the id of a {what}, found `{name}`"),
            )
            .hint(instead(name, known, "the book defines"));
    }
    id
}
