//! Numbers written in a text that could be quoted from the rule that holds them.

use super::{
    super::{
        source::Span,
        suggest::listed,
        written,
        yaml::{Node, Value as Yaml},
    },
    Lint, Room,
    places::{self, RuleRef},
};
use crate::book::{Kind, Rulebook, Saturation, Target, Value};
use crate::quantity::Flow;

/// A number in a text that a rule holds as well.
pub const NUMBER_WRITTEN_TWICE: Lint = Lint::note("number-written-twice");

/// The keys whose texts can quote, by kind of rule.
const QUOTING: [(Kind, &[&str]); 4] = [
    (Kind::Procedure, &["say", "why"]),
    (Kind::Hazard, &["say", "do"]),
    (Kind::Target, &["step-up", "step-down"]),
    (Kind::Card, &["notes"]),
];

pub fn look(room: &mut Room<'_>) {
    let (book, rules, sources) = (room.book, room.places, room.sources);
    let mut twice: Vec<(RuleRef, Span, String, Vec<String>)> = Vec::new();
    for (rule, written) in rules.all() {
        let Some((_, keys)) = QUOTING.iter().find(|(kind, _)| *kind == rule.kind) else {
            continue;
        };
        let target = (rule.kind == Kind::Target)
            .then(|| book.targets.get(rule.index))
            .flatten();
        places::texts(written, &mut |key, node| {
            let Yaml::Text { text, verbatim } = &node.value else {
                return;
            };
            if !keys.contains(&key) {
                return;
            }
            for (value, at) in quantities(text) {
                let names = holders(book, target, &value, text);
                if !names.is_empty() {
                    let span = place(node, *verbatim, &at);
                    let span = sources.span(span.file, span.start..span.end);
                    twice.push((rule, span, value.to_string(), names));
                }
            }
        });
    }
    for (rule, at, value, names) in twice {
        let listed = listed(names.iter().map(String::as_str).take(3), "and");
        let quoted = names.first().map_or("", String::as_str);
        room.find(
            NUMBER_WRITTEN_TWICE,
            &[rule],
            at,
            format!("found {value}, which is also the value of {listed}"),
        )
        .hint(format!(
            "if it is the same number, write `{{{quoted}}}`: an edit of the rule then changes both"
        ));
    }
}

fn place(node: &Node, verbatim: Option<usize>, at: &core::ops::Range<usize>) -> Span {
    match verbatim {
        Some(start) => Span {
            file: node.span.file,
            start: start + at.start,
            end: start + at.end,
        },
        None => node.span,
    }
}

/// The quantities written out in a text.
fn quantities(text: &str) -> Vec<(Value, core::ops::Range<usize>)> {
    let mut found = Vec::new();
    let (mut at, mut quoted) = (0, false);
    while let Some(c) = text.get(at..).and_then(|rest| rest.chars().next()) {
        match c {
            '{' => quoted = true,
            '}' => quoted = false,
            _ => {}
        }
        let word = text
            .get(..at)
            .is_some_and(|head| head.ends_with(|c: char| c.is_alphanumeric() || c == '.'));
        if c.is_ascii_digit() && !quoted && !word {
            let rest = text.get(at..).unwrap_or("");
            if let Ok((value, length)) = written::leading(rest) {
                found.push((value, at..at + length));
                at += length.max(1);
                continue;
            }
            at += rest
                .bytes()
                .take_while(|byte| byte.is_ascii_digit() || *byte == b'.')
                .count()
                .max(1);
            continue;
        }
        at += c.len_utf8();
    }
    found
}

/// The names under which a value could be quoted in a text.
fn holders(book: &Rulebook, target: Option<&Target>, value: &Value, text: &str) -> Vec<String> {
    let mut names = Vec::new();
    if let Some(target) = target {
        let mut own = |name: &str, held: Option<Value>| {
            if held.as_ref() == Some(value) {
                names.push(format!("target.{name}"));
            }
        };
        if let Saturation::Range(range) = target.saturation {
            own("low", range.low.value().map(Value::Percent));
            own("high", range.high.value().map(Value::Percent));
        }
        own(
            "urgent-below",
            target.urgent.map(|urgent| Value::Percent(urgent.below)),
        );
        own("recheck", Some(Value::Time(target.recheck)));
    }
    let policies = book.policies.all.iter().filter(|policy| policy.value == *value);
    names.extend(policies.map(|policy| policy.rule.id.to_string()));
    if let Value::Flow(flow) = value {
        // Half the flows of the book are some device's: only those of a device the text speaks of are meant.
        let text = text.to_lowercase();
        for device in &book.devices {
            let called = core::iter::once(&device.rule.name).chain(&device.also);
            let mut heads = called.map(|name| name.to_lowercase());
            if !heads.any(|name| text.contains(&name) || speaks_of(&text, &name)) {
                continue;
            }
            let parts: [(&str, Option<Flow>); 3] = [
                ("least-flow", device.flow.low.value()),
                ("most-flow", device.flow.high.value()),
                ("usual-flow", Some(device.usual)),
            ];
            for (part, held) in parts {
                if held == Some(*flow) {
                    names.push(format!("{}.{part}", device.rule.id));
                }
            }
        }
    }
    names
}

/// Whether a text speaks of a device by the first word of its name: a non-rebreather, for `non-rebreather mask`.
fn speaks_of(text: &str, name: &str) -> bool {
    name.split(' ')
        .next()
        .is_some_and(|first| first.contains('-') && text.contains(first))
}
