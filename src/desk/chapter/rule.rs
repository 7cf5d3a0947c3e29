//! Rule blocks as people read them: tables of keys and values, procedures as ordered steps.
//!
//! Shown is what is written, key by key, whether the rule can be used or not; so nothing depends on the rest of the book
//! being in order.

use maud::{Markup, html};

use super::super::{
    order,
    query::escaped,
    reading::{Reading, Written, text_of},
};
use super::{
    names::{anchor, linked},
    quoted, source,
};
use crate::book::Kind;
use crate::compile::{
    render::visible,
    yaml::{Entry, Node, Value},
};

/// Texts up to this length stand beside each other.
const SHORT: usize = 40;

/// A block: its rules, and its source on demand.
pub fn shown(reading: &Reading, written: &Written) -> Markup {
    let block = &written.block;
    let whole = block.fence.start..block.body.end;
    let has_problem = reading.diagnostics.iter().any(|found| {
        found
            .span
            .is_some_and(|span| span.file == block.file && whole.contains(&span.start))
    });
    html! {
        div class={ "rule rule-" (block.kind.word()) } {
            @match table_of(written) {
                Some(columns) => (together(reading, written, &columns)),
                None => @for (rule, id) in written.rules() { (one(reading, block.kind, rule, id)) },
            }
            @if written.node.is_none() {
                p.kind { (title(block.kind.word())) }
                p { "This block can't be read. Its source is below." }
            }
            details.source open[has_problem || written.node.is_none()] data-keep=(format!("{}-{}", block.file.0, first_id(written))) {
                summary { "Source" }
                (source::lines(reading, block.file, block.body.clone()))
            }
        }
    }
}

fn first_id(written: &Written) -> String {
    let first = written.rules().find_map(|(_, id)| id);
    let id = first.unwrap_or(written.block.kind.word());
    anchor(written.block.kind, id)
}

/// The columns of a list of rules that are all short and flat; none where they are anything else.
fn table_of(written: &Written) -> Option<Vec<&str>> {
    let Some(Value::List(rules)) = written.node.as_ref().map(|node| &node.value) else {
        return None;
    };
    let mut columns: Vec<&str> = Vec::new();
    for rule in rules {
        let Value::Mapping(entries) = &rule.value else {
            return None;
        };
        for entry in entries {
            if !matches!(&entry.value.value, Value::Text { .. }) {
                return None;
            }
            if !matches!(entry.key.as_str(), "id" | "name") && !columns.contains(&entry.key.as_str()) {
                columns.push(&entry.key);
            }
        }
    }
    (rules.len() > 1 && columns.len() <= 2).then_some(columns)
}

/// Several short rules as one table.
fn together(reading: &Reading, written: &Written, columns: &[&str]) -> Markup {
    let kind = written.block.kind;
    html! {
        table.rules {
            caption { (title(kind.word())) }
            thead { tr {
                th scope="col" { "Name" }
                @for column in columns { th scope="col" { (title(column)) } }
            } }
            tbody {
                @for (rule, id) in written.rules() {
                    tr id=[id.map(|id| anchor(kind, id))] {
                        th scope="row" { (visible(text_of(rule, "name").or(id).unwrap_or(""))) }
                        @for column in columns {
                            td { @if let Some(text) = text_of(rule, column) { (linked(reading, column, text)) } }
                        }
                    }
                }
            }
        }
    }
}

fn one(reading: &Reading, kind: Kind, rule: &Node, id: Option<&str>) -> Markup {
    let name = text_of(rule, "name").or(id).unwrap_or("");
    let Value::Mapping(entries) = &rule.value else {
        return html! { p { (value(&Within { reading, kind, rule }, "", rule)) } };
    };
    let within = Within { reading, kind, rule };
    let is_shown = |entry: &&Entry| match entry.key.as_str() {
        "id" | "name" => false,
        "steps" => kind != Kind::Procedure,
        _ => true,
    };
    html! {
        div.one id=[id.map(|id| anchor(kind, id))] {
            table.keys {
                caption {
                    span.kind { (title(kind.word())) } " " (visible(name))
                    @if let Some(id) = id.filter(|id| *id != name) { " " code { (visible(id)) } }
                }
                tbody {
                    @for entry in entries.iter().filter(is_shown) {
                        tr {
                            th scope="row" { (title(&entry.key)) }
                            td { (value(&within, &entry.key, &entry.value)) }
                        }
                    }
                }
            }
            @if kind == Kind::Procedure {
                @if let Some(Value::List(steps)) = entries.iter().find(|entry| entry.key == "steps").map(|entry| &entry.value.value) {
                    ol.steps { @for step in steps { (self::step(&within, step)) } }
                }
                @if let Some(id) = id {
                    p { a href={ "/order/" (escaped(id)) } { "The order of these steps as a diagram" } }
                }
            }
        }
    }
}

/// The rule in which a value stands.
struct Within<'a> {
    reading: &'a Reading,
    kind: Kind,
    rule: &'a Node,
}

/// A step of a procedure.
fn step(within: &Within<'_>, step: &Node) -> Markup {
    let Value::Mapping(entries) = &step.value else {
        return html! { li { (value(within, "", step)) } };
    };
    let says = |key: &str| text_of(step, key);
    html! {
        li {
            p.say {
                (text(within, "say", says("say").or(says("id")).unwrap_or("")))
                @if says("critical").is_some_and(|critical| matches!(critical, "yes" | "true")) {
                    " " span.critical { "critical" }
                }
            }
            @if let Some(why) = says("why") { p.why { (text(within, "why", why)) } }
            p.small {
                @if let Some(id) = says("id") { code { (visible(id)) } }
                @for entry in entries.iter().filter(|entry| !matches!(entry.key.as_str(), "id" | "say" | "why" | "critical")) {
                    " · " (order::key_words(&entry.key)) " " (value(within, &entry.key, &entry.value))
                }
            }
        }
    }
}

/// A text, with what it quotes filled in and names as links.
fn text(within: &Within<'_>, key: &str, text: &str) -> Markup {
    if quoted::may_quote(within.kind, key) {
        quoted::filled(within.reading, text, within.rule)
    } else {
        linked(within.reading, key, text)
    }
}

/// Whether an item of a list is a name or a number, and no sentence.
fn is_short(item: &Node) -> bool {
    match &item.value {
        Value::Text { text, .. } => text.len() <= SHORT && !text.ends_with(['.', '!', '?', ':']),
        _ => false,
    }
}

/// A value: text, a list, or keys and values.
fn value(within: &Within<'_>, key: &str, node: &Node) -> Markup {
    match &node.value {
        Value::Text { text, .. } => self::text(within, key, text),
        Value::List(items) => html! {
            @if items.iter().all(is_short) && !matches!(key, "ladder" | "notes" | "items") {
                @for (index, item) in items.iter().enumerate() {
                    @if index > 0 { ", " }
                    (value(within, key, item))
                }
            } @else {
                ul { @for item in items { li { (value(within, key, item)) } } }
            }
        },
        Value::Mapping(entries) => html! {
            ul.pairs {
                @for entry in entries {
                    li { span.key { (visible(&entry.key)) } ": " (value(within, &entry.key, &entry.value)) }
                }
            }
        },
    }
}

/// A key as a heading: `too-low` as `Too low`.
fn title(key: &str) -> String {
    let words = key.replace('-', " ");
    let mut characters = words.chars();
    let first = characters.next().map(|first| first.to_uppercase().to_string());
    visible(&(first.unwrap_or_default() + characters.as_str())).into_owned()
}
