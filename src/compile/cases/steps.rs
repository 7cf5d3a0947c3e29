//! A case about steps of a procedure, done in the order written: what should go wrong, or that nothing does.

use std::collections::BTreeSet;

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        proof::{Scene, World},
        resolve::Raw,
        suggest::instead,
        yaml::Node,
    },
    expect::{self, Named},
    setup::observation,
};
use crate::book::{Action, DeviceId, Kind, Procedure, Rulebook, StepId};
use crate::equipment::State;

const EXPECT: Keys = Keys {
    of: "expectation",
    required: &[],
    optional: &["too-early", "refused", "findings", "ends"],
};

/// What came of the steps.
#[derive(Default)]
struct Outcome {
    too_early: BTreeSet<String>,
    refused: BTreeSet<String>,
    findings: BTreeSet<Named>,
    unsafe_end: Option<&'static str>,
}

/// What comes of the case's steps by the book, one thing after the other; `None` after a mistake, which was reported.
pub fn outcome(book: &Rulebook, fields: &Fields<'_>, found: &mut Diagnostics) -> Option<Vec<String>> {
    let outcome = ask(book, fields, found)?;
    let mut said: Vec<String> = outcome.findings.iter().map(ToString::to_string).collect();
    said.extend(outcome.too_early.iter().map(|step| format!("`{step}` too early")));
    said.extend(outcome.refused.iter().map(|step| format!("`{step}` refused")));
    said.extend(outcome.unsafe_end.map(|why| format!("ends unsafe: {why}")));
    Some(said)
}

/// Plays the steps; `None` after a mistake, which was reported.
fn ask(book: &Rulebook, fields: &Fields<'_>, found: &mut Diagnostics) -> Option<Outcome> {
    let before = found.count();
    let procedure = fields.read("procedure", found, |node, found| {
        let id = fields::plain(node, found)?;
        expect::known(Kind::Procedure, id, node.span, book, found)?;
        book.procedure(book.find_procedure(id)?)
    });
    let device = fields.read("device", found, |node, found| {
        let id = fields::plain(node, found)?;
        expect::known(Kind::Device, id, node.span, book, found)?;
        book.find_device(id)
    });
    let begins = fields.read("begins-with", found, |node, found| {
        fields::each(node, found, observation)
    });
    let procedure = procedure?;
    let steps = fields.read("steps", found, |node, found| {
        fields::each(node, found, |item, found| step(item, procedure, found))
    })?;
    if found.count() > before {
        return None;
    }
    let given = begins.as_deref().unwrap_or(&procedure.begins_with);
    let start = State::beginning(given);
    let device = device.or_else(|| procedure.devices.first().copied());
    Some(play(book, procedure, device, start, &steps))
}

/// Runs the case.
pub fn run(book: &Rulebook, fields: &Fields<'_>, raws: &[Raw], found: &mut Diagnostics) {
    if let Some(wanted) = fields.get("expect")
        && let Some(outcome) = ask(book, fields, found)
    {
        compare(wanted, &outcome, book, raws, found);
    }
}

fn step(node: &Node, procedure: &Procedure, found: &mut Diagnostics) -> Option<StepId> {
    let id = fields::plain(node, found)?;
    let place = procedure.steps.iter().position(|step| &*step.id == id);
    if place.is_none() {
        found
            .error(
                "unknown-name",
                node.span,
                format!("expected a step of `{}`, found `{id}`", procedure.rule.id),
            )
            .hint(instead(
                id,
                procedure.steps.iter().map(|step| &*step.id),
                "its steps are",
            ));
    }
    place.and_then(|place| u16::try_from(place).ok()).map(StepId)
}

fn play(
    book: &Rulebook,
    procedure: &Procedure,
    device: Option<DeviceId>,
    start: State,
    steps: &[StepId],
) -> Outcome {
    let world = World::new(book);
    let mut outcome = Outcome::default();
    let mut scene = Scene {
        state: start,
        device: device.filter(|_| start.device_connected),
    };
    let mut done: Vec<StepId> = Vec::new();
    for id in steps {
        let Some(step) = procedure.steps.get(id.index()) else {
            continue;
        };
        if step.after.iter().any(|earlier| !done.contains(earlier)) {
            outcome.too_early.insert(step.id.to_string());
        }
        match scene.state.after(step.action) {
            Ok(state) => {
                scene.state = state;
                match step.action {
                    Action::ConnectDevice => scene.device = device,
                    Action::DisconnectDevice => scene.device = None,
                    _ => {}
                }
            }
            Err(_) => {
                outcome.refused.insert(step.id.to_string());
            }
        }
        for hazard in world.all_hazards(scene) {
            if let Some(hazard) = book.hazard(hazard) {
                outcome.findings.insert(Named {
                    level: hazard.severity.word().to_owned(),
                    kind: Kind::Hazard,
                    id: hazard.rule.id.to_string(),
                });
            }
        }
        done.push(*id);
    }
    outcome.unsafe_end = scene.state.unsafe_end();
    outcome
}

fn compare(wanted: &Node, outcome: &Outcome, book: &Rulebook, raws: &[Raw], found: &mut Diagnostics) {
    let nothing = BTreeSet::new();
    if expect::is_no_finding(wanted) {
        expect::compare(wanted.span, &BTreeSet::new(), &outcome.findings, raws, found);
        compare_steps("too early", wanted, &nothing, &outcome.too_early, found);
        compare_steps("refused", wanted, &nothing, &outcome.refused, found);
        return;
    }
    let Some(fields) = Fields::of(wanted, &EXPECT, found) else {
        return;
    };
    expect::something(wanted, found);
    let listed = |key: &str, found: &mut Diagnostics| -> BTreeSet<String> {
        let read = fields.read(key, found, |node, found| {
            fields::each(node, found, |item, found| {
                fields::plain(item, found).map(str::to_owned)
            })
        });
        read.map_or_else(BTreeSet::new, |list| list.iter().cloned().collect())
    };
    let too_early = listed("too-early", found);
    compare_steps(
        "too early",
        fields.get("too-early").unwrap_or(wanted),
        &too_early,
        &outcome.too_early,
        found,
    );
    let refused = listed("refused", found);
    compare_steps(
        "refused",
        fields.get("refused").unwrap_or(wanted),
        &refused,
        &outcome.refused,
        found,
    );
    let expected = fields.list("findings", found, |node, found| {
        fields::each(node, found, |item, found| expect::named(item, book, found))
    });
    if let Some(expected) = expected {
        let at = fields.get("findings").map_or(wanted.span, |node| node.span);
        expect::compare(
            at,
            &expected.iter().cloned().collect(),
            &outcome.findings,
            raws,
            found,
        );
    }
    if let Some(node) = fields.get("ends")
        && let Some(safe) = fields::word(node, found, "end", &[("safe", true), ("unsafe", false)])
        && safe != outcome.unsafe_end.is_none()
    {
        let actual = outcome.unsafe_end.unwrap_or("a safe end");
        found
            .error(
                "case-failed",
                node.span,
                format!("this case fails: found {actual}"),
            )
            .hint("correct the procedure, or, where the new answer is right, the case");
    }
}

fn compare_steps(
    what: &str,
    node: &Node,
    expected: &BTreeSet<String>,
    actual: &BTreeSet<String>,
    found: &mut Diagnostics,
) {
    if expected == actual {
        return;
    }
    let words = |set: &BTreeSet<String>| match set.len() {
        0 => "none".to_owned(),
        _ => set
            .iter()
            .map(|step| format!("`{step}`"))
            .collect::<Vec<_>>()
            .join(", "),
    };
    found
        .error(
            "case-failed",
            node.span,
            format!(
                "this case fails: expected these steps {what}: {}; found: {}",
                words(expected),
                words(actual)
            ),
        )
        .hint("correct the procedure, or, where the new answer is right, the case");
}
