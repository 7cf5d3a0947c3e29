//! Procedures and their steps.

use std::collections::BTreeMap;

use super::{
    super::{
        diagnostic::Diagnostics,
        fields::{self, Fields, Keys},
        names::Table,
        quoted::Quotable,
        source::Span,
        suggest::{listed, nearest},
        yaml::Node,
    },
    Raw, Scope, line_of, rule,
};
use crate::book::{Action, DeviceId, Fact, HazardId, List, Procedure, ProcedureId, Step, StepId, Text};
use crate::equipment::State;

const KEYS: Keys = Keys {
    of: "procedure",
    required: &["id", "name", "purpose", "who", "ends-safe", "steps"],
    optional: &["not-when", "devices", "follows", "begins-with"],
};

const STEP_KEYS: Keys = Keys {
    of: "step",
    required: &["id", "do", "say", "why"],
    optional: &["after", "critical", "prevents"],
};

/// Reads a procedure.
pub fn read(
    raw: &Raw,
    scope: &Scope<'_>,
    quotable: Option<&Quotable<'_>>,
    found: &mut Diagnostics,
) -> Option<Procedure> {
    let fields = Fields::of(&raw.node, &KEYS, found)?;
    let rule = rule(raw, &fields, "name", found);
    let purpose = fields.read("purpose", found, fields::text);
    let who = fields.read("who", found, fields::text);
    let not_when = fields.list("not-when", found, fields::texts);
    let devices = fields.list("devices", found, |node, found| {
        fields::each(node, found, |item, found| {
            scope.names.devices.reference(item, found, DeviceId)
        })
    });
    let follows = fields.list("follows", found, |node, found| {
        fields::each(node, found, |item, found| {
            scope.names.procedures.reference(item, found, ProcedureId)
        })
    });
    let begins_with = fields.list("begins-with", found, |node, found| {
        fields::each(node, found, beginning)
    });
    let ends_safe = fields.read("ends-safe", found, fields::yes_or_no);
    let steps = fields.read("steps", found, |node, found| steps(node, scope, quotable, found));
    Some(Procedure {
        rule: rule?,
        purpose: purpose?,
        who: who?,
        not_when: not_when?,
        devices: devices?,
        follows: follows?,
        begins_with: begins_with?,
        ends_safe: ends_safe?,
        steps: steps?,
    })
}

/// A fact that holds at the start: `regulator seated`, `not cylinder open`.
fn beginning(node: &Node, found: &mut Diagnostics) -> Option<(Fact, bool)> {
    let text = fields::plain(node, found)?;
    let (words, holds) = match text.strip_prefix("not ") {
        Some(words) => (words.trim(), false),
        None => (text, true),
    };
    let known = || {
        Fact::ALL
            .iter()
            .filter(|fact| State::PUT_AWAY.with(**fact, true).is_some())
    };
    let fact = known().find(|fact| fact.words() == words);
    if fact.is_none() {
        let error = found.error(
            "unknown-observation",
            node.span,
            format!("expected a state of the equipment, found `{text}`"),
        );
        match nearest(words, known().map(|fact| fact.words())) {
            Some(near) => error.hint(format!("did you mean `{near}`?")),
            None => error.hint(format!(
                "write one of {}",
                listed(known().map(|fact| fact.words()), "or")
            )),
        };
    }
    fact.map(|fact| (*fact, holds))
}

fn steps(
    node: &Node,
    scope: &Scope<'_>,
    quotable: Option<&Quotable<'_>>,
    found: &mut Diagnostics,
) -> Option<List<Step>> {
    let items = fields::items(node);
    let read: Vec<Option<Fields<'_>>> = items
        .iter()
        .map(|item| Fields::of(item, &STEP_KEYS, found))
        .collect();
    let mut names = Table::new("step");
    for fields in read.iter().flatten() {
        let Some(node) = fields.get("id") else {
            names.leave_unread();
            continue;
        };
        match fields::id(node, found) {
            Some(id) => {
                names.add(id, node.span, found);
            }
            None if super::meant_id(node).is_none() => names.leave_unread(),
            None => {}
        }
    }
    let afters: Vec<Vec<u16>> = read
        .iter()
        .map(|fields| {
            let after = fields.as_ref().and_then(|fields| fields.get("after"));
            after
                .map_or(&[][..], |after| fields::items(after))
                .iter()
                .filter_map(|item| text_of(item))
                .collect()
        })
        .map(|named: Vec<&str>| named.into_iter().filter_map(|name| names.index(name)).collect())
        .collect();
    let steps: Vec<Option<Step>> = read
        .iter()
        .map(|fields| step(fields.as_ref()?, &names, &afters, scope, quotable, found))
        .collect();
    Some(List::from(steps.into_iter().collect::<Option<Vec<_>>>()?))
}

fn text_of(node: &Node) -> Option<&str> {
    match &node.value {
        super::Value::Text { text, .. } => Some(text),
        _ => None,
    }
}

/// Whether a step comes after another, directly or through others.
fn leads_to(afters: &[Vec<u16>], from: u16, to: u16) -> bool {
    let (mut waiting, mut seen) = (vec![from], vec![false; afters.len()]);
    while let Some(step) = waiting.pop() {
        if step == to {
            return true;
        }
        if let Some(seen) = seen.get_mut(usize::from(step))
            && !core::mem::replace(seen, true)
        {
            waiting.extend(afters.get(usize::from(step)).into_iter().flatten());
        }
    }
    false
}

fn step(
    fields: &Fields<'_>,
    names: &Table,
    afters: &[Vec<u16>],
    scope: &Scope<'_>,
    quotable: Option<&Quotable<'_>>,
    found: &mut Diagnostics,
) -> Option<Step> {
    let id = fields.get("id").and_then(|node| match &node.value {
        super::Value::Text { text, .. } => Some(text.clone()),
        _ => None,
    });
    let words: Vec<(&str, Action)> = Action::ALL
        .iter()
        .map(|action| (action.word(), *action))
        .collect();
    let action = fields.read("do", found, |node, found| {
        fields::word(node, found, "action", &words)
    });
    let quoting = |node, found: &mut Diagnostics| fields::quoting(node, quotable, found);
    let say = fields.read("say", found, quoting);
    let why = fields.read("why", found, quoting);
    // A step whose id was given before has no place of its own.
    let own_place = id
        .as_deref()
        .and_then(|id| names.index(id))
        .filter(|place| names.span(usize::from(*place)) == fields.get("id").map(|node| node.span));
    let after = fields.list("after", found, |node, found| {
        fields::each(node, found, |item, found| {
            let earlier = names.reference(item, found, StepId)?;
            if own_place.is_some_and(|own| earlier.0 >= own) {
                let name = id.as_deref().unwrap_or("");
                let other = names.names().nth(earlier.index()).unwrap_or("");
                if own_place == Some(earlier.0) {
                    found
                        .error(
                            "steps-in-a-ring",
                            item.span,
                            format!("found `{name}` after itself"),
                        )
                        .hint("take it out");
                } else if own_place.is_some_and(|own| leads_to(afters, earlier.0, own)) {
                    found
                        .error(
                            "steps-in-a-ring",
                            item.span,
                            format!("found `{name}` after `{other}`, which comes after `{name}` itself"),
                        )
                        .hint("neither could ever be done: take one `after` of the ring out");
                } else {
                    found
                        .error(
                            "after-a-later-step",
                            item.span,
                            format!("expected a step above `{name}`, found `{other}`, which is below it"),
                        )
                        .hint("write the steps in an order that `after` allows");
                }
            }
            Some(earlier)
        })
    });
    let critical = fields.maybe("critical", found, fields::yes_or_no);
    let prevents = fields.list("prevents", found, |node, found| {
        fields::each(node, found, |item, found| {
            scope.names.hazards.reference(item, found, HazardId)
        })
    });
    Some(Step {
        id: Text::from(id?),
        action: action?,
        say: say?,
        why: why?,
        after: after?,
        critical: critical?.unwrap_or(false),
        prevents: prevents?,
        line: line_of(scope.sources, fields.span),
    })
}

/// Where each step names the steps it comes after.
pub fn after_places(raw: &Raw) -> Vec<BTreeMap<String, Span>> {
    steps_of(raw)
        .iter()
        .map(|item| {
            let after = entry_of(item, "after");
            let named = after.map_or(&[][..], |after| fields::items(after));
            named
                .iter()
                .filter_map(|item| match &item.value {
                    super::Value::Text { text, .. } => Some((text.clone(), item.span)),
                    _ => None,
                })
                .collect()
        })
        .collect()
}

/// Where a procedure's steps stand: each step's id, for diagnostics about its place in the order.
pub fn step_places(raw: &Raw) -> Vec<Span> {
    steps_of(raw)
        .iter()
        .map(|item| entry_of(item, "id").map_or(item.span, |id| id.span))
        .collect()
}

fn steps_of(raw: &Raw) -> &[Node] {
    entry_of(&raw.node, "steps").map_or(&[], fields::items)
}

fn entry_of<'a>(node: &'a Node, key: &str) -> Option<&'a Node> {
    match &node.value {
        super::Value::Mapping(entries) => entries
            .iter()
            .find(|entry| entry.key == key)
            .map(|entry| &entry.value),
        _ => None,
    }
}
